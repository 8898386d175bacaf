"""A made-up language that shows what was not translated: letters as wide as ideographs.

Every text of the catalogue comes in the wide forms of Unicode (U+FF01 on), its {places} as they
were. So a plain letter in a sentence is a name out of the problem, a unit, or was forgotten.
"""

import re
from typing import Any

WIDE = {number: number + 0xFEE0 for number in (*range(65, 91), *range(97, 123))}
PLACE = re.compile(r"(\{[^}]*\})")
PLAIN = re.compile(r"[A-Za-z]+")
UNITS = frozenset({"h", "min", "m", "L"})


class Pseudo(dict[str, str]):
    """A catalogue that has every text."""

    def get(self, key: str, default: Any = None) -> str:  # type: ignore[override]  # noqa: ARG002
        parts = PLACE.split(key)
        return "".join(one if one.startswith("{") else one.translate(WIDE) for one in parts)


def forgotten(sentence: str, names: frozenset[str]) -> list[str]:
    """The plain words of a sentence that are no names of its problem and no units."""
    return [
        one for one in PLAIN.findall(sentence) if one.casefold() not in names and one not in UNITS
    ]
