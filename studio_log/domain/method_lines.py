"""The line on which each field of a TOML text stands.

tomllib reads values and forgets where they stood. This walk goes over a text that tomllib
has already found good, so it only has to step over things, not to judge them.
"""

import re
import tomllib
from bisect import bisect_right
from collections.abc import Mapping
from contextlib import suppress
from typing import Final

Path = tuple[str | int, ...]
"""The way to a field: names, and numbers from 0 in lists: ("steps", 2, "lasts", "aim")."""

_BLANK: Final = re.compile(r"(?:[ \t\n]++|#[^\n]*+)*+")
_KEY: Final = re.compile(r"[A-Za-z0-9_-]++|\"(?:[^\"\\\n]|\\.)*+\"|'[^'\n]*+'")
# Not possessive as a whole: `re` of Python before 3.11.5, as Debian 12 has it, loses its place
# where such a group looks ahead. No sign can be taken in two ways, so it stays quick.
_LONG: Final = re.compile(
    r'"""(?:[^"\\]++|\\.|"(?!""))*"{3,5}'
    r"|'''(?:[^']++|'(?!''))*'{3,5}",
    re.DOTALL,
)
_SHORT: Final = re.compile(r"\"(?:[^\"\\\n]|\\.)*+\"|'[^'\n]*+'")
_FIELD: Final = re.compile(r"[ \t]*([A-Za-z0-9_-]{1,40})[ \t]*=")
_PLAIN: Final = re.compile(r"[^,\]}#\n]++")


def lines_of(text: str) -> Mapping[Path, int]:
    """Give the line, counted from 1, of every field of a good TOML text."""
    walk = _Walk(text.replace("\r\n", "\n"))
    with suppress(_LostError):  # what was found until then helps, the rest falls back
        walk.document()
    return walk.lines


def line_at(lines: Mapping[Path, int], path: Path) -> int:
    """Give the line of a field, or of the nearest table around it, or 1."""
    for length in range(len(path), 0, -1):
        if path[:length] in lines:
            return lines[path[:length]]
    return 1


def field_near(text: str, line: int) -> Path:
    """Give the field written on a line of a text that is not good TOML, as far as it shows."""
    before = text.replace("\r\n", "\n").split("\n", line)
    walk = _Walk("\n".join(before[: line - 1]))
    with suppress(_LostError):  # the tables until the lost place are known
        walk.document()
    match = _FIELD.match(before[line - 1]) if line <= len(before) else None
    return (*walk.base, match.group(1)) if match else walk.base


class _LostError(Exception):
    """The walk met something it cannot step over."""


class _Walk:
    """One walk over a text; `lines` fills as it goes, `base` is the table it is in."""

    def __init__(self, text: str) -> None:
        self.lines: dict[Path, int] = {}
        self.base: Path = ()
        self._text = text
        self._at = 0
        self._ends = [match.start() for match in re.finditer("\n", text)]
        self._counts: dict[Path, int] = {}

    def document(self) -> None:
        """Walk from the first line to the last."""
        self._take(_BLANK)
        while self._at < len(self._text):
            if self._sees("["):
                self.base = self._header()
            else:
                self._field(self.base)
            self._take(_BLANK)

    def _header(self) -> Path:
        start = self._at
        listed = self._text.startswith("[[", start)
        self._at += 2 if listed else 1
        keys = self._keys()
        self._at += 2 if listed else 1
        path = self._resolved(keys[:-1]) + keys[-1:]
        if listed:
            number = self._counts[path] = self._counts.get(path, 0) + 1
            self._note(path, start)
            path = (*path, number - 1)
        self._note(path, start)
        return path

    def _resolved(self, keys: tuple[str, ...]) -> Path:
        """Give the path of a header's names; a list of tables means its last table."""
        path: Path = ()
        for key in keys:
            path = (*path, key)
            if path in self._counts:
                path = (*path, self._counts[path] - 1)
        return path

    def _field(self, base: Path) -> None:
        start = self._at
        path = base
        for key in self._keys():
            path = (*path, key)
            self._note(path, start)
        self._step_over("=")
        self._value(path)

    def _keys(self) -> tuple[str, ...]:
        keys: list[str] = []
        while True:
            self._take(_BLANK)
            keys.append(_key_text(self._take(_KEY)))
            self._take(_BLANK)
            if not self._sees("."):
                return tuple(keys)
            self._at += 1

    def _value(self, path: Path) -> None:
        self._take(_BLANK)
        if self._sees("["):
            self._list(path)
        elif self._sees("{"):
            self._inline(path)
        elif self._text.startswith(('"""', "'''"), self._at):
            self._take(_LONG)
        else:
            self._take(_SHORT if self._sees('"') or self._sees("'") else _PLAIN)
        self._take(_BLANK)

    def _list(self, path: Path) -> None:
        self._step_over("[")
        number = 0
        while not self._sees("]"):
            self._note((*path, number), self._at)
            self._value((*path, number))
            number += 1
            self._pass_comma()
        self._step_over("]")

    def _inline(self, path: Path) -> None:
        self._step_over("{")
        while not self._sees("}"):
            self._field(path)
            self._pass_comma()
        self._step_over("}")

    def _pass_comma(self) -> None:
        if self._sees(","):
            self._step_over(",")

    def _step_over(self, sign: str) -> None:
        if not self._sees(sign):
            raise _LostError
        self._at += 1
        self._take(_BLANK)

    def _sees(self, sign: str) -> bool:
        return self._text.startswith(sign, self._at)

    def _take(self, pattern: re.Pattern[str]) -> str:
        match = pattern.match(self._text, self._at)
        if match is None:
            raise _LostError
        self._at = match.end()
        return match.group()

    def _note(self, path: Path, at: int) -> None:
        self.lines.setdefault(path, bisect_right(self._ends, at - 1) + 1)


def _key_text(written: str) -> str:
    """Give a name without its quotes."""
    if written[0] not in "\"'":
        return written
    return str(tomllib.loads(f"key = {written}")["key"])
