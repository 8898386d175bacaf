"""A colour as a screen shows it: "#rrggbb" of sRGB (IEC 61966-2-1), without any library.

A colour by another observer than that of sRGB is shown as if it were that one's: its L*, a* and
b* refer to the same daylight.
"""

from typing import Final

from studio_log.science.colour.lab import Lab, xyz_of_lab

LINEAR: Final = (
    (3.2406, -1.5372, -0.4986),
    (-0.9689, 1.8758, 0.0415),
    (0.0557, -0.2040, 1.0570),
)
"""Linear sRGB of X, Y, Z with Y of white 1 (IEC 61966-2-1)."""
JUST: Final = 0.002
"""A code this little outside 0 to 1 counts as shown."""


def shown_as(lab: Lab) -> tuple[str, bool]:
    """Give "#rrggbb", and whether it was cut off because a screen cannot show it."""
    x, y, z = (one / 100 for one in xyz_of_lab(lab))
    light = [row[0] * x + row[1] * y + row[2] * z for row in LINEAR]
    codes = [_code(one) for one in light]
    cut = any(not -JUST < one < 1 + JUST for one in codes)
    return "#" + "".join(f"{round(255 * min(1.0, max(0.0, one))):02x}" for one in codes), cut


def _code(light: float) -> float:
    if light <= 0.0031308:
        return 12.92 * light
    return float(1.055 * light ** (1 / 2.4) - 0.055)
