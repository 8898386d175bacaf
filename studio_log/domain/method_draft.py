"""A method's text changed field by field: all that is not touched stays as it was written.

Each change is made in one block only and then read again by tomllib: the fields have to be
what they were with that one change. Where they are not, nothing is changed and it is said so.
"""

import textwrap
import tomllib
from collections.abc import Mapping, Sequence
from contextlib import suppress
from typing import Any, Final

import tomlkit
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import Item

from studio_log.domain.errors import Refusal
from studio_log.domain.method_lines import Path
from studio_log.domain.method_parts import (
    OWN_WAY,
    Part,
    joined,
    parts_of,
    plain_data,
    spaced,
    with_tail,
)

SMALL_TABLES: Final = frozenset({"lasts", "gap", "tending", "ask_dry"})
"""Tables inside a step that are written on one line, and left out once they are empty."""
LISTS: Final = frozenset({"amounts", "readings", "views"})
BLOCKS: Final = frozenset({"amounts", "views"})
"""Lists whose tables are each written under a header of their own."""
PROSE: Final = frozenset({"summary", "source", "do", "if_late", "note"})
"""Fields in sentences: written over several lines where they are long."""
SHORT_PROSE: Final = 78
NEW_CURE: Final = """
[cure]
ready_title = "ready for use"
default_days = 14

[[cure.views]]
days = 14
title = "two weeks"
source = "common practice"
"""


def with_value(text: str, path: Path, value: object) -> str:
    """Give the text with one field written; None takes the field out.

    `path` as in method_lines. Raises Refusal where the text cannot be changed that way.
    """
    wanted = _wrapped(value) if path[-1] in PROSE and isinstance(value, str) else value
    expected = _expected(text, path, wanted)
    return text if expected is None else _changed(text, path, expected, wanted)


def with_row(text: str, path: Path, row: Mapping[str, object]) -> str:
    """Give the text with one more table at the end of a list, such as an amount of a step."""
    before = _at(plain_data(text), path)
    place = (*path, len(before) if isinstance(before, list) else 0)
    expected = _expected(text, place, dict(row))
    if expected is None:
        return text
    if path[-1] in BLOCKS:
        with suppress(Refusal):  # a list on one line is added to as it is written
            return _with_block(text, path, row, expected)
    return _changed(text, place, expected, dict(row))


def without_row(text: str, path: Path) -> str:
    """Give the text without one table of a list; `path` ends with its number."""
    return with_value(text, path, None)


def with_cure(text: str) -> str:
    """Give the text with a table for the cure at its end, where it has none."""
    data = plain_data(text)
    if "cure" in data:
        return text
    new = f"{text.rstrip()}\n{NEW_CURE}"
    return _sure(new, {**data, **tomllib.loads(NEW_CURE)})


def _expected(text: str, path: Path, value: object) -> dict[str, Any] | None:
    """Give the fields as they have to be afterwards, None where they are so already."""
    data = plain_data(text)
    try:
        return data if _put(data, path, value) else None
    except (KeyError, IndexError, TypeError, AttributeError):
        raise Refusal(OWN_WAY) from None


def _with_block(text: str, path: Path, row: Mapping[str, object], expected: dict[str, Any]) -> str:
    parts = parts_of(text)
    at = _part_of(parts, path)
    head = ".".join(str(name) for name in path if isinstance(name, str))
    lines = tomlkit.dumps({key: _written(value) for key, value in row.items()})
    parts[at] = with_tail(parts[at], f"[[{head}]]\n{lines}")
    return _sure(joined(parts), expected)


def _changed(text: str, path: Path, expected: dict[str, Any], value: object) -> str:
    """Write a value into the block that holds the path, and see that only it has changed."""
    parts = parts_of(text)
    at = _part_of(parts, path)
    part = parts[at]
    inner = (*part.inner, *path[len(part.path) :])
    try:
        document = tomlkit.parse(part.text)
        _put(document, inner, value, made=True)
        written = Part(part.path, tomlkit.dumps(document))
    except (TOMLKitError, ValueError, KeyError, IndexError, TypeError, AttributeError):
        raise Refusal(OWN_WAY) from None
    parts[at] = written if at == len(parts) - 1 else spaced(written)
    return _sure(joined(parts), expected)


def _part_of(parts: Sequence[Part], path: Path) -> int:
    """Give the number of the smallest block that holds a path."""
    holding = [at for at, part in enumerate(parts) if path[: len(part.path)] == part.path]
    return max(holding, key=lambda at: len(parts[at].path))


def _sure(text: str, expected: Mapping[str, Any]) -> str:
    """Give the text once it says what it is meant to say, and nothing else."""
    try:
        if tomllib.loads(text) == expected:
            return text
    except ValueError:
        pass
    raise Refusal(OWN_WAY)


def _at(data: Any, path: Path) -> Any:
    for part in path:
        if isinstance(data, Mapping):
            data = data.get(str(part))
        elif isinstance(data, list) and isinstance(part, int) and part < len(data):
            data = data[part]
        else:
            return None
    return data


def _put(root: Any, path: Path, value: object, *, made: bool = False) -> bool:
    """Write or take out one value; `made` for a document that keeps its writing. False: no need."""
    *way, last = path
    inside = root
    for at, part in enumerate(way):
        if isinstance(part, str) and part not in inside:
            if value is None:
                return False
            inside[part] = _begun(part, path[at + 1 :], value, made=made)
            return True
        inside = inside[part]
    if value is None:
        return _take_out(root, way, inside, last)
    if not made and _holds(inside, last) and _same(inside[last], value):
        return False
    written = _written(value) if made else value
    if isinstance(last, int) and last == len(inside):
        inside.append(written)
    else:
        inside[last] = written
    return True


def _take_out(root: Any, way: Sequence[str | int], inside: Any, last: str | int) -> bool:
    """Take out one value, and the small table or the list that it was the last of."""
    if not _holds(inside, last):
        return False
    del inside[last]
    if way and way[-1] in SMALL_TABLES | LISTS and not len(inside):
        around = root
        for part in way[:-1]:
            around = around[part]
        del around[way[-1]]
    return True


def _begun(name: str, rest: Path, value: object, *, made: bool) -> object:
    """Give a small table or a list that is not there yet, with its first value."""
    if name in SMALL_TABLES and len(rest) == 1:
        table = {str(rest[0]): value}
        return _inline(table) if made else table
    if name in LISTS and rest == (0,) and isinstance(value, dict):
        return tomlkit.value(f"[\n  {_inline(value).as_string()},\n]") if made else [value]
    raise Refusal(OWN_WAY)


def _holds(inside: Any, part: str | int) -> bool:
    return part < len(inside) if isinstance(part, int) else part in inside


def _same(one: object, other: object) -> bool:
    return type(one) is type(other) and one == other


def _written(value: object) -> object:
    """Give a value in the studio's way of writing: sentences on lines of their own."""
    if isinstance(value, str) and "\n" in value:
        quoted = tomlkit.string(value, multiline=True).as_string()
        return tomlkit.value(f'"""\n{quoted[3:]}')
    return _inline(value) if isinstance(value, dict) else value


def _inline(table: Mapping[str, object]) -> Item:
    """Give a table on one line, with room inside its braces."""
    fields = (f"{key} = {tomlkit.item(value).as_string()}" for key, value in table.items())
    return tomlkit.value(f"{{ {', '.join(fields)} }}")


def _wrapped(prose: str) -> str:
    """Give sentences as a file holds them: long ones over several lines."""
    words = " ".join(prose.split())
    if len(words) <= SHORT_PROSE:
        return words
    return f"{textwrap.fill(words, 95, break_long_words=False, break_on_hyphens=False)}\n"
