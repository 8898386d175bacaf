"""Strict reading of one table of a written file, field by field.

A field that is missing or wrong becomes a fault and a harmless value in its place, so that
one reading finds all the faults of a file.
"""

import math
import re
from collections.abc import Mapping
from datetime import timedelta
from enum import StrEnum
from typing import Final, TypeVar

from studio_log.domain.method_faults import Faults, kind_words, nearest, shown
from studio_log.domain.method_lines import Path
from studio_log.domain.method_toml import hidden_in

LONGEST_TEXT: Final = 2_000
"""Most letters of a text in sentences."""
LONGEST_LINE: Final = 120
"""Most letters of a title or an order."""
LONGEST_SPAN: Final = timedelta(days=400)
_SLUG: Final = re.compile(r"[a-z0-9-]{1,40}")
_SPAN: Final = re.compile(r"([0-9]{1,6}) ?(min|h|d|w)")
_UNITS: Final = {
    "min": timedelta(minutes=1),
    "h": timedelta(hours=1),
    "d": timedelta(days=1),
    "w": timedelta(weeks=1),
}
_SLUG_FIX: Final = "write 1 to 40 small letters, digits and hyphens"
_SPAN_FIX: Final = 'write a whole number and min, h, d or w, such as "10 min" or "8 h"'

_Kind = TypeVar("_Kind", bound=StrEnum)


class Table:
    """One table of a file; each reading method remembers which field it asked for."""

    def __init__(self, data: Mapping[str, object], path: Path, faults: Faults) -> None:
        self.path = path
        self._data = data
        self._faults = faults
        self._asked: list[str] = []

    def done(self) -> None:
        """Find the fields that nothing asked for; to be called last."""
        for key in self._data:
            if key not in self._asked and not self._faults.full:
                near = nearest(key, self._asked)
                fix = f'write "{near}" instead' if near else "take it out or mend its name"
                self._fault(key, "there is no such field", fix)

    def line(self, key: str, *, most: int = LONGEST_LINE, needed: bool = True) -> str:
        """Give a text of one line, such as a title."""
        return self._text(key, most=most, needed=needed, breaks=False)

    def prose(self, key: str, *, needed: bool = True) -> str:
        """Give a text in sentences; its line breaks are only those of the file."""
        return " ".join(self._text(key, most=LONGEST_TEXT, needed=needed, breaks=True).split())

    def slug(self, key: str, *, needed: bool = True) -> str:
        """Give a short name of small letters, digits and hyphens."""
        value = self._text(key, most=LONGEST_LINE, needed=needed, breaks=False)
        if value and not is_slug(value):
            self._fault(key, f"{shown(value)} is no short name", _SLUG_FIX)
            return ""
        return value

    def slugs(self, key: str, *, most: int = 20) -> tuple[str, ...]:
        """Give a list of different short names."""
        names: list[str] = []
        for number, value in enumerate(self._list(key, most=most)):
            if not isinstance(value, str) or not is_slug(value):
                said = shown(value)
                self._fault_in(key, number, f"{said} is no short name", _SLUG_FIX)
            elif value in names:
                self._fault_in(key, number, f"{shown(value)} stands here twice", "take one out")
            else:
                names.append(value)
        return tuple(names)

    def lines(self, key: str, *, most: int = 20) -> tuple[str, ...]:
        """Give a list of texts of one line each."""
        found: list[str] = []
        for number, value in enumerate(self._list(key, most=most)):
            if not isinstance(value, str):
                what = f"this is {kind_words(value)}"
                self._fault_in(key, number, what, "write text in quotation marks")
            elif wrong := _text_fault(value, most=LONGEST_LINE, breaks=False):
                self._fault_in(key, number, *wrong)
            else:
                found.append(value.strip())
        return tuple(found)

    def numbers(self, key: str, *, most: float, longest: int = 2) -> tuple[float, ...]:
        """Give a list of numbers from 0 to `most`; none where the field is not written."""
        found: list[float] = []
        for number, value in enumerate(self._list(key, most=longest)):
            if type(value) in (int, float) and 0 <= value <= most:  # type: ignore[operator]
                found.append(float(value))  # type: ignore[arg-type]
            else:
                what = "this is no number" if _is_nan(value) else f"{shown(value)} cannot be here"
                self._fault_in(key, number, what, f"write a number from 0 to {most:g}")
        return tuple(found)

    def whole(self, key: str, *, least: int, most: int) -> int:
        """Give a whole number within its bounds."""
        value = self._take(key, needed=True)
        if type(value) is int and least <= value <= most:
            return value
        if value is not None:
            fix = f"write a whole number from {least} to {most}"
            self._fault(key, f"{shown(value)} cannot be used here", fix)
        return least

    def maybe_whole(self, key: str, *, least: int, most: int) -> int | None:
        """Give a whole number within its bounds, or None where the field is not written."""
        return self.whole(key, least=least, most=most) if self._has(key) else None

    def number(self, key: str, *, most: float) -> float:
        """Give a number from 0 to `most`."""
        value = self._take(key, needed=True)
        if type(value) in (int, float) and 0 <= value <= most:  # type: ignore[operator]
            return float(value)  # type: ignore[arg-type]
        if value is not None:
            what = "this is no amount" if _is_nan(value) else f"{shown(value)} cannot be used here"
            self._fault(key, what, f"write a number from 0 to {most:g}")
        return 0.0

    def maybe_number(self, key: str, *, most: float) -> float | None:
        """Give a number from 0 to `most`, or None where the field is not written."""
        return self.number(key, most=most) if self._has(key) else None

    def flag(self, key: str, *, usual: bool) -> bool:
        """Give true or false; `usual` where the field is not written."""
        value = self._take(key, needed=False)
        if value is None or isinstance(value, bool):
            return usual if value is None else value
        self._fault(key, f"this is {kind_words(value)}", "write true or false, without quotes")
        return usual

    def span(self, key: str, *, needed: bool = True) -> timedelta:
        """Give a length of time of 400 days at most."""
        value = self._take(key, needed=needed)
        return timedelta(0) if value is None else self._span((*self.path, key), value)

    def maybe_span(self, key: str) -> timedelta | None:
        """Give a length of time, or None where the field is not written."""
        return self.span(key) if self._has(key) else None

    def spans(self, key: str) -> tuple[timedelta, ...]:
        """Give a list of lengths of time."""
        path = (*self.path, key)
        values = enumerate(self._list(key, most=100))
        return tuple(self._span((*path, number), value) for number, value in values)

    def choice(self, key: str, kinds: type[_Kind]) -> _Kind:
        """Give one of a set of words."""
        words = [kind.value for kind in kinds]
        value = self._take(key, needed=True)
        if isinstance(value, str) and value in words:
            return kinds(value)
        if value is not None:
            near = nearest(value, words) if isinstance(value, str) else None
            fix = f'write "{near}"' if near else f"write one of {', '.join(words)}"
            self._fault(key, f"{shown(value)} is not known here", fix)
        return next(iter(kinds))

    def table(self, key: str) -> "Table | None":
        """Give the table inside this one, or None where it is not written."""
        value = self._take(key, needed=False)
        if isinstance(value, dict):
            return Table(value, (*self.path, key), self._faults)
        if value is not None:
            self._fault(key, f"this is {kind_words(value)}", "write a table here")
        return None

    def tables(self, key: str, *, most: int, needed: bool = False) -> list["Table"]:
        """Give the list of tables inside this one; none at all where one is no table."""
        values = self._list(key, most=most, needed=needed)
        for number, value in enumerate(values):
            if not isinstance(value, dict):
                self._fault_in(key, number, f"this is {kind_words(value)}", "write a table here")
                return []
        return [
            Table(value, (*self.path, key, number), self._faults)
            for number, value in enumerate(values)
            if isinstance(value, dict)
        ]

    def _has(self, key: str) -> bool:
        self._asked.append(key)
        return key in self._data

    def _take(self, key: str, *, needed: bool) -> object:
        if not self._has(key) and needed:
            self._fault(key, "this field is missing", "write it")
        return self._data.get(key)

    def _text(self, key: str, *, most: int, needed: bool, breaks: bool) -> str:
        value = self._take(key, needed=needed)
        if value is None:
            return ""
        if not isinstance(value, str):
            self._fault(key, f"this is {kind_words(value)}", "write text in quotation marks")
            return ""
        if wrong := _text_fault(value, most=most, breaks=breaks):
            self._fault(key, *wrong)
            return ""
        return value.strip()

    def _span(self, path: Path, value: object) -> timedelta:
        match = _SPAN.fullmatch(value) if isinstance(value, str) else None
        if match is None:
            self._faults.add(path, f"{shown(value)} is no length of time", _SPAN_FIX)
            return timedelta(0)
        span = int(match[1]) * _UNITS[match[2]]
        if span > LONGEST_SPAN:
            self._faults.add(path, f"{shown(value)} is longer than 400 d", "write a shorter time")
            return timedelta(0)
        return span

    def _list(self, key: str, *, most: int, needed: bool = False) -> list[object]:
        value = self._take(key, needed=needed)
        if value is None:
            return []
        if not isinstance(value, list):
            self._fault(key, f"this is {kind_words(value)}", "write a list")
            return []
        if len(value) > most or (needed and not value):
            self._fault(key, f"there are {len(value)} here", f"write 1 to {most}")
            return []
        return value

    def _fault(self, key: str, what: str, fix: str) -> None:
        self._faults.add((*self.path, key), what, fix)

    def _fault_in(self, key: str, number: int, what: str, fix: str) -> None:
        self._faults.add((*self.path, key, number), what, fix)


def is_slug(name: str) -> bool:
    """Tell that a name is 1 to 40 small letters, digits and hyphens."""
    return _SLUG.fullmatch(name) is not None


def _text_fault(value: str, *, most: int, breaks: bool) -> tuple[str, str] | None:
    """Give what is wrong with a text and what to do, or None."""
    if len(value) > most:
        return f"the text has {len(value):,} letters", f"write {most:,} at most"
    if hidden_in(value) or (not breaks and not value.isprintable()):
        return "a control character is in the text", "take it out"
    if not value.strip():
        return "there is nothing in the text", "write something or take the field out"
    return None


def _is_nan(value: object) -> bool:
    return isinstance(value, float) and math.isnan(value)


def span_words(span: timedelta) -> str:
    """Give a length of time as files write it: "90 min", "18 h", "90 d"."""
    minutes = round(span / _UNITS["min"])
    if minutes % 60 or minutes < 60:
        return f"{minutes} min"
    hours = minutes // 60
    return f"{hours} h" if hours % 24 or hours < 72 else f"{hours // 24} d"
