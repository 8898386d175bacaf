"""The written parts of a method's text: its head, one block a step, the cure."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.method_faults import Faults
from studio_log.domain.method_lines import Path, lines_of
from studio_log.domain.method_toml import tables_of

_STEP: Final = re.compile(r"[ \t]*\[\[[ \t]*steps[ \t]*\]\]")
_CURE: Final = re.compile(r"[ \t]*\[[ \t]*cure[ \t]*\]")
NOT_READ: Final = (
    "The text cannot be read as it stands. Nothing was changed; mend it under “Text” first."
)
OWN_WAY: Final = (
    "The text writes this in a way of its own. Nothing was changed; change it under “Text”."
)


@dataclass(frozen=True)
class Part:
    """A block of lines and what it writes: () the head, ("steps", 2), ("cure",)."""

    path: Path
    text: str

    @property
    def inner(self) -> Path:
        """Where the block's fields stand when it is read by itself."""
        return ("steps", 0) if self.path[:1] == ("steps",) else self.path


def plain_data(text: str) -> dict[str, Any]:
    """Give the fields of a text as plain values; Refusal where it is no good TOML."""
    faults = Faults()
    data = tables_of(text, faults)
    if faults.found:
        raise Refusal(NOT_READ)
    return dict(data)


def parts_of(text: str) -> list[Part]:
    """Give the blocks of a good text in their order; joined they are the text.

    Comment lines that touch a block's header go with it. Refusal where the steps are not
    written one by one under [[steps]].
    """
    text = text.replace("\r\n", "\n")
    rows = text.splitlines(keepends=True)
    heads = _headers(text, rows)
    if not heads:
        return [Part((), text)]
    starts = [_with_comments(rows, line - 1) for line, _path in heads]
    ends = [*starts[1:], len(rows)]
    blocks = zip(starts, ends, heads, strict=True)
    found = [Part((), "".join(rows[: starts[0]]))]
    found += [Part(path, "".join(rows[at:end])) for at, end, (_line, path) in blocks]
    return found


def joined(parts: list[Part]) -> str:
    """Give the text of blocks."""
    return "".join(part.text for part in parts)


def spaced(part: Part) -> Part:
    """Give a block with an empty line at its end, so that another may follow."""
    return part if part.text.endswith("\n\n") else Part(part.path, f"{part.text.rstrip()}\n\n")


def with_tail(part: Part, more: str) -> Part:
    """Give a block with further lines at its end, before the comments that end it."""
    body, rest = body_and_end(part.text)
    return spaced(Part(part.path, f"{body}\n\n{more.strip()}\n\n{rest}"))


def body_and_end(block: str) -> tuple[str, str]:
    """Part a block from the comments at its end, which speak of what comes after it."""
    rows = block.splitlines(keepends=True)
    at = len(rows)
    while at and (not rows[at - 1].strip() or rows[at - 1].lstrip().startswith("#")):
        at -= 1
    return "".join(rows[:at]).rstrip(), "".join(rows[at:]).lstrip("\n")


def _headers(text: str, rows: list[str]) -> list[tuple[int, Path]]:
    """Give line and path of each block's header, in the order of the lines."""
    lines = lines_of(text)
    numbered = (path[1] for path in lines if len(path) == 2 and path[0] == "steps")
    count = sum(isinstance(one, int) for one in numbered)
    found = [_header(lines, rows, ("steps", at), _STEP) for at in range(count)]
    if None in found:
        raise Refusal(OWN_WAY)
    cure = _header(lines, rows, ("cure",), _CURE)
    return sorted(one for one in (*found, cure) if one is not None)


def _header(
    lines: Mapping[Path, int], rows: list[str], path: Path, pattern: re.Pattern[str]
) -> tuple[int, Path] | None:
    line = lines.get(path, 0)
    return (line, path) if line and pattern.match(rows[line - 1]) else None


def _with_comments(rows: list[str], at: int) -> int:
    """Give the first of the comment lines that touch a header."""
    while at and rows[at - 1].lstrip().startswith("#"):
        at -= 1
    return at
