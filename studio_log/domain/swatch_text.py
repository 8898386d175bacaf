"""Reading what is typed about a swatch: its code, a colour, a grade, what is looked for."""

import re
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import clean, quoted
from studio_log.domain.swatches import BLUE_STEPS, GREY_STEPS
from studio_log.language.words import tr
from studio_log.science.colour.lab import Lab

SWATCH_CODE: Final = re.compile(r"\s*[Ww](\d{2})\s*-\s*(\d{1,6})\s*\Z", re.ASCII)
LIGHTNESS: Final = (0.0, 110.0)
"""A little above 100: cloth that fluoresces is lighter than white."""
MOST_COLOUR: Final = 200.0
"""No surface is further from grey in a* or b*."""
MOST_2U: Final = 50.0
LONGEST: Final = 200
_FIGURE: Final = re.compile(r"-?[0-9]{1,6}(?:\.[0-9]{1,12})?")
_HALF_STEP: Final = re.compile(r"([1-5])\s*(?:-|–|/|\bto\b)\s*([1-5])")


def whole_swatch_code(text: str) -> str:
    """Give a swatch's code as it is written ("w26-1" is W26-001); Refusal where it is none."""
    found = SWATCH_CODE.match(text)
    if found is None:
        raise Refusal(
            tr("{typed} is no swatch’s code, such as W26-001. Nothing was changed.",
               typed=quoted(text.strip()[:40]))
        )  # fmt: skip
    return f"W{found[1]}-{int(found[2]):03d}"


def read_lab(typed: str) -> Lab:
    """Give the colour of "52.1,31.8,24.0"; or of "52,1;31,8;24", or with blanks."""
    plain = clean(typed, tr("the colour"), longest=LONGEST)
    words = plain.split()
    if ";" in plain:
        parts = plain.replace(",", ".").split(";")
    elif len(words) == 3 and not any(word.endswith(",") for word in words):
        parts = plain.replace(",", ".").split()
    else:
        parts = plain.split(",")
    parts = [part.strip() for part in parts]
    if len(parts) != 3 or not all(_FIGURE.fullmatch(part) for part in parts):
        raise Refusal(
            tr("{typed} is not read as a colour: L*, a* and b* such as 52.1, 31.8, 24.0. Nothing "
               "was changed.", typed=quoted(plain))
        )  # fmt: skip
    return check_lab(Lab(*(float(part) for part in parts)))


def check_lab(lab: Lab) -> Lab:
    """Give the colour back; Refusal of one that no surface has."""
    low, high = LIGHTNESS
    if not low <= lab.lightness <= high or max(abs(lab.a), abs(lab.b)) > MOST_COLOUR:
        raise Refusal(
            tr("{L}, {a}, {b} is no colour of a surface: L* is 0 to 100, a* and b* lie between "
               "-{most} and {most}. Nothing was changed.",
               L=f"{lab.lightness:g}", a=f"{lab.a:g}", b=f"{lab.b:g}", most=f"{MOST_COLOUR:g}")
        )  # fmt: skip
    return lab


def read_grade(typed: str, scale: str) -> str:
    """Give the step of a scale: "4-5", "3/4", "4 to 5", "4.5"; blue wool: "6"."""
    plain = clean(typed, tr("the grade"), longest=40).casefold().replace(",", ".")
    steps = BLUE_STEPS if scale == "blue-wool" else GREY_STEPS
    if scale != "blue-wool":
        plain = plain.replace(".5", "-" + str(int(plain[0]) + 1) if plain[:1].isdigit() else "")
        if found := _HALF_STEP.fullmatch(plain):
            low, high = sorted((int(found[1]), int(found[2])))
            plain = f"{low}-{high}"
    plain = plain.removesuffix(".0")
    if plain not in steps:
        raise Refusal(
            tr("{typed} is no step of the scale: {steps}. Nothing was changed.",
               typed=quoted(typed), steps=", ".join(reversed(steps)))
        )  # fmt: skip
    return plain
