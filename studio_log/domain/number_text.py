"""Numbers as people type them, and as they are shown; checks every typed line needs."""

import re
import unicodedata
from collections.abc import Mapping
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import Final

from studio_log.domain.errors import Question, Refusal
from studio_log.language.region import region

NUMBER: Final = (
    r"(?:[0-9]{1,9} [0-9]{1,3}/[0-9]{1,3}|[0-9]{1,3}/[0-9]{1,3}"
    r"|[0-9]{1,9}(?:[.,][0-9]{1,9})?|[.,][0-9]{1,9})(?![0-9.,/]*[0-9/])"
)
"""A number without sign: 412, 0.4, 0,4, 1/2, 1 1/2."""

NUMBER_START: Final = r"(?<![A-Za-z0-9.,/])"
"""Goes before NUMBER: never begin in the middle of a word or number (1e5 is neither)."""


NUMBER_WORDS: Final[Mapping[str, int]] = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
}  # fmt: skip

_FRACTIONS: Final[Mapping[str, str]] = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip

_ALIKE: Final = str.maketrans(
    {"²": "2", "×": "x", "✕": "x", "⁄": "/", "\u00a0": " ", "\u202f": " ", "\u2009": " ",
     "\t": " ", "’": "'", "′": "'", "″": '"', "“": '"', "”": '"', "−": "-"}
)  # fmt: skip
"""Characters that mean the same here, so that each is read once only."""


def clean(text: str, what: str, *, longest: int) -> str:
    """Give a typed line with single spaces and plain characters for look-alikes.

    Refuses an empty or overlong one and control characters; `what` names it: "the piece".
    """
    if len(text) > longest:
        raise Refusal(
            f"What was typed for {what} is {len(text)} characters long, more than {longest}. "
            "Nothing was changed. Say it shorter."
        )
    plain = text.translate(_ALIKE)
    if any(unicodedata.category(letter) in {"Cc", "Cf", "Cs", "Co"} for letter in plain):
        raise Refusal(
            f"What was typed for {what} holds an unprintable character. "
            "Nothing was changed. Type it again by hand."
        )
    for sign, written in _FRACTIONS.items():
        plain = plain.replace(sign, f" {written}")
    plain = " ".join(plain.split())
    if not plain:
        raise Refusal(f"Nothing was typed for {what}. Nothing was changed.")
    return plain


def read_number(text: str) -> float:
    """Give the value of a text that matches `NUMBER`, as `read_exact` does, as a float."""
    return float(read_exact(text))


def read_exact(text: str) -> Fraction:
    """Give the exact value of a text that matches `NUMBER`: 1/3 is a third, 0,1 a tenth.

    "1,800" raises a Question: it may be a thousand mark or a decimal comma. Where the place writes
    a decimal comma, "1.800" is the doubtful one.
    """
    sign, word = (".", "point") if region().decimal == "," else (",", "comma")
    if found := re.fullmatch(rf"([1-9][0-9]{{0,2}}){re.escape(sign)}([0-9]{{3}})", text):
        whole, rest = found.groups()
        part = region().decimal
        raise Question(
            f"Is {text} meant as {whole}{rest}, or as {whole}{part}{rest}? "
            f"Type it without the {word}."
        )
    whole, _, part = text.rpartition(" ")
    if "/" not in part:
        return Fraction(text.replace(",", "."))
    above, below = (int(figure) for figure in part.split("/"))
    if below == 0 or (whole and above >= below):
        raise Refusal(f"{text} is no fraction that can be measured. Nothing was changed.")
    return Fraction(above, below) + int(whole or 0)


def plain(value: float, places: int, *, up: bool = False) -> str:
    """Write a number as the place does, as `pointed` else: 149.85 g is "149.9", or "149,9"."""
    return pointed(value, places, up=up).replace(".", region().decimal)


def pointed(value: float, places: int, *, up: bool = False) -> str:
    """Write a number with at most so many decimals, without trailing noughts: for what is kept.

    Halves go away from nought as on paper: 149.85 is "149.9". `up` rounds towards more.
    """
    exact = Decimal(repr(round(value, 9)))
    step = Decimal(1).scaleb(-places)
    figure = exact.quantize(step, rounding=ROUND_CEILING if up else ROUND_HALF_UP)
    written = f"{figure:f}"
    if "." in written:
        written = written.rstrip("0").rstrip(".")
    return "0" if written in {"-0", ""} else written


def money(value: float) -> str:
    """Write a sum of money to the hundredth, as the place does, without a currency: "12.50"."""
    exact = Decimal(repr(round(value, 9))).quantize(Decimal("0.01"), rounding=ROUND_HALF_UP)
    return f"{exact:f}".replace(".", region().decimal)


def quoted(text: str, *, longest: int = 60) -> str:
    """Give a person's own words in quotation marks, cut where they are long."""
    return f"“{text}”" if len(text) <= longest else f"“{text[: longest - 1]}…”"
