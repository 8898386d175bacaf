"""Faults of a written file, each said with the file, the line and the field."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Final

from studio_log.domain.errors import BadMethod
from studio_log.domain.method_lines import Path, line_at, lines_of

MOST_KEPT: Final = 200
"""Faults kept of one file; a file with more is not a file to mend fault by fault."""
MOST_SAID: Final = 20
"""Faults said at once when a file is refused."""
_LONGEST_SHOWN: Final = 40
_KINDS: Final[Mapping[type, str]] = {
    str: "text",
    bool: "true or false",
    int: "a whole number",
    float: "a number",
    list: "a list",
    dict: "a table",
}


@dataclass(frozen=True)
class Fault:
    """One fault: where, what is wrong, what to do. `line` where the path cannot tell it."""

    path: Path
    what: str
    fix: str
    line: int | None = None


class Faults:
    """The faults of one file, in the order in which they were found."""

    def __init__(self) -> None:
        self.found: list[Fault] = []

    @property
    def full(self) -> bool:
        """Tell that no more faults are kept."""
        return len(self.found) >= MOST_KEPT

    def add(self, path: Path, what: str, fix: str, *, line: int | None = None) -> None:
        """Keep a fault; `what` and `fix` are clauses without a full stop."""
        if not self.full:
            self.found.append(Fault(path, what, fix, line))

    def clear(self, *paths: Path) -> bool:
        """Tell that no fault lies at any of these fields, inside them or around them."""
        return not any(
            fault.path[: len(path)] == path or path[: len(fault.path)] == fault.path
            for fault in self.found
            for path in paths
        )


def said(faults: Faults, *, text: str, data: Mapping[str, object], name: str) -> list[str]:
    """Give each fault as a sentence, in order of its line."""
    return [
        f"{where}: {fault.what}; {fault.fix}."
        for where, fault in _placed(faults, text=text, data=data, name=name)
    ]


def first_line(faults: Faults, *, text: str) -> int:
    """Give the line of the fault that stands first in the text, 1 where there is none."""
    lines = lines_of(text) if any(fault.line is None for fault in faults.found) else {}
    return min((one.line or line_at(lines, one.path) for one in faults.found), default=1)


def refusal(faults: Faults, *, text: str, data: Mapping[str, object], name: str) -> BadMethod:
    """Give the refusal that says the faults, twenty at most, and that nothing was changed."""
    placed = _placed(faults, text=text, data=data, name=name)
    if len(placed) == 1:
        where, fault = placed[0]
        return BadMethod(f"{where}: {fault.what}. Nothing was changed; {fault.fix}.")
    lines = [f"{where}: {fault.what}; {fault.fix}." for where, fault in placed[:MOST_SAID]]
    if len(placed) > MOST_SAID:
        more = "more" if faults.full else str(len(placed) - MOST_SAID) + " more"
        lines.append(f"There are {more} faults.")
    lines.append("Nothing was changed.")
    return BadMethod("\n".join(lines))


def _placed(
    faults: Faults, *, text: str, data: Mapping[str, object], name: str
) -> list[tuple[str, Fault]]:
    lines = lines_of(text) if any(fault.line is None for fault in faults.found) else {}
    numbered = [(fault.line or line_at(lines, fault.path), fault) for fault in faults.found]
    numbered.sort(key=lambda pair: pair[0])
    file = printable(name, longest=80)
    return [
        (", ".join((file, f"line {line}", *place_words(fault.path, data))), fault)
        for line, fault in numbered
    ]


def place_words(path: Path, data: object) -> list[str]:
    """Give a path in words: ["steps 3 (first-soak)", "lasts.aim"]."""
    words: list[str] = []
    joins = False
    here = data
    for part in path:
        here = _inside(here, part)
        if isinstance(part, int):
            words[-1] += f" {part + 1}{_slug_words(here)}"
        elif joins:
            words[-1] += f".{printable(part)}"
        else:
            words.append(printable(part))
        joins = isinstance(part, str)
    return words


def _inside(here: object, part: str | int) -> object:
    if isinstance(here, Mapping):
        return here.get(part)
    if isinstance(here, Sequence) and isinstance(part, int) and part < len(here):
        return here[part]
    return None


def _slug_words(here: object) -> str:
    slug = here.get("slug") if isinstance(here, Mapping) else None
    return f" ({printable(slug)})" if isinstance(slug, str) and slug else ""


def printable(text: str, *, longest: int = _LONGEST_SHOWN) -> str:
    """Give a text that is safe to show on one line, cut where it is too long."""
    cut = text if len(text) <= longest else text[: longest - 1] + "…"
    return "".join(
        letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}" for letter in cut
    )


def shown(value: object) -> str:
    """Give a value from a file in words that fit into a sentence."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return f'"{printable(value)}"'
    if isinstance(value, int | float):
        # Beyond 4,300 digits Python refuses to write a number out.
        return "so large a number" if abs(value) > 10**15 else f"{value:g}"
    return kind_words(value)


def kind_words(value: object) -> str:
    """Give the kind of a value from a file: "a list", "a date"."""
    return _KINDS.get(type(value), "a date or time")


def nearest(word: str, known: Sequence[str]) -> str | None:
    """Give the known word that was probably meant, if any is near."""
    if len(word) > _LONGEST_SHOWN:
        return None
    close = get_close_matches(word.casefold(), known, n=1, cutoff=0.6)
    return close[0] if close else None
