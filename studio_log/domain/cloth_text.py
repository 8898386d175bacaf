"""Reading one measure of cloth as it is typed: its weight by area, its length, its area."""

import re
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import NUMBER, clean, quoted, read_exact
from studio_log.domain.piece_scan import LENGTH_WORDS, Line, gsm_of, take_density
from studio_log.science.units import convert_exactly

LONGEST: Final = 60
MOST_M: Final = 10_000.0
MOST_M2: Final = 100_000.0
_LENGTHS: Final = "|".join(re.escape(word) for word in sorted(LENGTH_WORDS, key=len)[::-1])
_AREAS: Final = (
    (r"(?:m ?\^?2|sq\.? ?m|sqm|square met(?:re|er)s?)", "m2"),
    (r"(?:cm ?\^?2|sq\.? ?cm|square centimet(?:re|er)s?)", "cm2"),
    (r"(?:yds? ?\^?2|sq\.? ?(?:yds?|yards?)|square (?:yds?|yards?))", "yd2"),
    (r"(?:ft ?\^?2|sq\.? ?ft|square (?:feet|foot))", "ft2"),
    (r"(?:in ?\^?2|sq\.? ?in|square inch(?:es)?)", "in2"),
)


def read_gsm(text: str, *, width_m: float | None = None) -> float:
    """Give g/m² of "150", "4.5 oz/yd2", "16 momme", "6 oz per running yard" and a width.

    A bare number means g/m². Asks where oz/yd may be square or running; a weight of the
    running length needs the width in metres.
    """
    plain = clean(text, "the weight of the cloth", longest=LONGEST)
    if re.fullmatch(NUMBER, plain):
        plain = f"{plain} g/m2"
    line = Line(plain)
    density = take_density(line)
    if density is None or line.rest.strip(" \n"):
        raise Refusal(
            f"{quoted(text)} cannot be read as the weight of cloth by area. Nothing was changed. "
            "Write it as 150, 150 g/m2, 4.5 oz/yd2 or 16 momme."
        )
    return gsm_of(density, width_m)


def read_metres(text: str, what: str = "the length") -> float:
    """Give the metres of "1.5 m", "45 in", "2 1/2 yd"; the unit has to be said."""
    plain = clean(text, what, longest=LONGEST).casefold()
    found = re.fullmatch(rf"({NUMBER}) ?({_LENGTHS})\.?", plain)
    value = (
        float(convert_exactly(read_exact(found[1]), LENGTH_WORDS[found[2]], "m")) if found else 0.0
    )
    if not 0 < value <= MOST_M:
        raise Refusal(
            f"{quoted(text)} cannot be read as {what}: above nought and with its unit, such as "
            "1.5 m, 150 cm, 45 in or 2 yd. Nothing was changed."
        )
    return value


def read_square_metres(text: str) -> float:
    """Give the m² of "2.5 m2", "3 sq yd" or of two sides, "180 x 45 cm"."""
    plain = clean(text, "the area", longest=LONGEST).casefold()
    value = _of_sides(plain) or _of_unit(plain)
    if not 0 < value <= MOST_M2:
        raise Refusal(
            f"{quoted(text)} cannot be read as an area. Nothing was changed. "
            "Write it as 2.5 m2, 3 sq yd or 180 x 45 cm."
        )
    return value


def _of_unit(plain: str) -> float:
    for pattern, unit in _AREAS:
        found = re.fullmatch(rf"({NUMBER}) ?{pattern}\.?", plain)
        if found:
            return float(convert_exactly(read_exact(found[1]), unit, "m2"))
    return 0.0


def _of_sides(plain: str) -> float:
    side = rf"({NUMBER}) ?({_LENGTHS})?"
    found = re.fullmatch(rf"{side} ?x ?({NUMBER}) ?({_LENGTHS})\.?", plain)
    if found is None:
        return 0.0
    last = LENGTH_WORDS[found[4]]
    first = LENGTH_WORDS[found[2]] if found[2] else last
    one = convert_exactly(read_exact(found[1]), first, "m")
    return float(one * convert_exactly(read_exact(found[3]), last, "m"))
