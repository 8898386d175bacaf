"""What every text that a person reads goes through.

English stands in the code; a catalogue maps it to another language (see `catalogue.py`).
Commands never load one: their words and JSON are read by scripts.
"""

from collections.abc import Mapping, Sequence
from typing import Final

ENGLISH: Final[Mapping[str, str]] = {}

_spoken: Mapping[str, str] = ENGLISH


def speak(catalogue: Mapping[str, str]) -> None:
    """Use a catalogue from now on, in every thread; `ENGLISH` takes it away."""
    global _spoken  # noqa: PLW0603 - a program speaks one language at a time
    _spoken = catalogue


def tr(text: str, /, **values: object) -> str:
    """Give a text in the language in use, with values put into its {places}.

    `text` is a literal, or was marked where it stands: `tr(ROW.label)`. Without values nothing is
    put in, and braces are plain letters.
    """
    said = _spoken.get(text, text)
    return said.format_map(values) if values else said


def tr_later(text: str) -> str:
    """Give a text as it is and name it for translators: for tables, read before a language is."""
    return text


def counted(number: int, one: str, many: str, /, **values: object) -> str:
    """Say a number of things: `counted(n, tr_later("{n} lot"), tr_later("{n} lots"))`.

    Two forms serve English, German and their kin; a language with more needs a rule here.
    """
    return tr(one if number == 1 else many, n=number, **values)


def listed(names: Sequence[str]) -> str:
    """Give "A", "A and B" or "A, B and C" in the language in use; "" for none."""
    if len(names) < 2:
        return "".join(names)
    return tr("{first} and {last}", first=", ".join(names[:-1]), last=names[-1])
