"""Reading what is typed about a bath: its code, its pH, its heat."""

import re
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import NUMBER, clean, quoted, read_exact
from studio_log.domain.room_text import read_celsius
from studio_log.language.words import tr

BATH_CODE: Final = re.compile(r"\s*[Bb](\d{2})\s*-\s*(\d{1,5})\s*\Z", re.ASCII)
LONGEST: Final = 40
LEAST_C: Final = 0.0
MOST_C: Final = 105.0
"""A bath of water and salts boils at little over 100 °C; above this a figure is a slip."""
MOST_PH: Final = 14.0


def read_bath_celsius(text: str) -> float:
    """Give °C for "50", "50 °C", "122 F"; a bare number means °C."""
    plain = clean(text, "the heat of a bath", longest=LONGEST)
    bare = re.fullmatch(NUMBER, plain) is not None
    celsius = read_celsius(f"{plain} C" if bare else plain, "the heat of a bath")
    if not LEAST_C <= celsius <= MOST_C:
        raise Refusal(
            tr("{typed} cannot be the heat of a bath: it lies between 0 and 105 °C. Nothing was "
               "changed; write 122 F where °F is meant.", typed=quoted(text))
        )  # fmt: skip
    return celsius


def read_ph(text: str) -> float:
    """Give the pH of "10.5", "pH 10,5": 0 to 14."""
    plain = clean(text, "the pH", longest=LONGEST).casefold()
    found = re.fullmatch(rf"(?:ph ?)?({NUMBER})", plain)
    value = float(read_exact(found[1])) if found else -1.0
    if not 0 <= value <= MOST_PH:
        raise Refusal(
            tr("{typed} is no pH: a figure from 0 to 14, as in 10.5. Nothing was changed.",
               typed=quoted(text))
        )  # fmt: skip
    return value


def whole_bath_code(text: str) -> str:
    """Give a bath's code as it is written ("b26-1" is B26-001); Refusal where it is none."""
    found = BATH_CODE.match(text)
    if found is None:
        raise Refusal(
            tr("{text} is no bath's code, such as B26-001. Nothing was changed.",
               text=repr(text.strip()[:40]))
        )  # fmt: skip
    return f"B{found[1]}-{int(found[2]):03d}"
