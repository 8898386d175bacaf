"""A colour as a screen shows it: "#rrggbb" of sRGB (IEC 61966-2-1), without any library.

A colour by another observer than that of sRGB is shown as if it were that one's: its L*, a* and
b* refer to the same daylight.
"""

from typing import Final

from studio_log.science.colour.lab import Lab, lab_of_xyz, xyz_of_lab

LINEAR: Final = (
    (3.2406, -1.5372, -0.4986),
    (-0.9689, 1.8758, 0.0415),
    (0.0557, -0.2040, 1.0570),
)
"""Linear sRGB of X, Y, Z with Y of white 1 (IEC 61966-2-1)."""
XYZ: Final = ((0.4124, 0.3576, 0.1805), (0.2126, 0.7152, 0.0722), (0.0193, 0.1192, 0.9505))
"""X, Y, Z of linear sRGB (IEC 61966-2-1)."""
JUST: Final = 0.002
"""A code this little outside 0 to 1 counts as shown."""


def shown_as(lab: Lab) -> tuple[str, bool]:
    """Give "#rrggbb", and whether it was cut off because a screen cannot show it."""
    x, y, z = (one / 100 for one in xyz_of_lab(lab))
    light = [row[0] * x + row[1] * y + row[2] * z for row in LINEAR]
    codes = [_code(one) for one in light]
    cut = any(not -JUST < one < 1 + JUST for one in codes)
    return "#" + "".join(f"{round(255 * min(1.0, max(0.0, one))):02x}" for one in codes), cut


def lab_of_code(code: str) -> Lab:
    """Give CIELAB (D65, 2 degree) of "#rrggbb" as sRGB means it; ValueError for another text."""
    if len(code) != 7 or code[0] != "#":
        raise ValueError(f"{code!r} is no colour such as #b86555")
    light = [_light(int(code[at : at + 2], 16) / 255) for at in (1, 3, 5)]
    x, y, z = (100 * sum(f * one for f, one in zip(row, light, strict=True)) for row in XYZ)
    return lab_of_xyz((x, y, z))


def _light(code: float) -> float:
    return code / 12.92 if code <= 0.04045 else float(((code + 0.055) / 1.055) ** 2.4)


def _code(light: float) -> float:
    if light <= 0.0031308:
        return 12.92 * light
    return float(1.055 * light ** (1 / 2.4) - 0.055)
