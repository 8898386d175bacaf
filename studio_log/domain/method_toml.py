"""Hostile text made into plain tables, in bounded time, or into one fault."""

import re
import tomllib
from collections.abc import Mapping
from typing import Final

from studio_log.domain.method_faults import Faults, printable
from studio_log.domain.method_lines import field_near

LARGEST: Final = 256 * 1024
"""Most bytes of a file."""
_DEEPEST: Final = 6
"""Most tables and lists inside each other; a method needs four."""
_AT: Final = re.compile(r"^(.*) \(at (?:line (\d+), column (\d+)|end of document)\)$", re.DOTALL)
_CHAIN: Final = re.compile(
    r"(?<![\w\"'-])(?:(?:[\w-]++|\"[^\"\n]*+\"|'[^'\n]*+')[ \t]*+\.[ \t]*+){8}", re.ASCII
)
"""Nine names joined by dots; tomllib's time grows with the square of their number."""
_HIDDEN: Final = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ud800-\udfff]"
    "|\r(?!\n)"
)
"""Control signs, half characters, and signs that turn the direction of writing."""
_PLAIN_WORDS: Final[Mapping[str, str]] = {
    "Cannot overwrite a value": "the same field is written twice",
    "Cannot declare": "the same table is written twice",
    "Cannot mutate": "a table is added to after it was closed",
    "Expected '=' after a key": "an equals sign is missing after the name of the field",
    "Expected newline or end of document": "something stands after the value",
    "Invalid value": "the value is not written as TOML asks (text needs quotation marks)",
    "Unterminated string": "a text has no closing quotation mark",
    'Expected "\'"': "a text has no closing quotation mark",
    "Illegal character '\\n'": "a text has no closing quotation mark on its line",
    "Unescaped '\\'": "a text has a backslash that stands for nothing (write two)",
    "Unclosed array": "a list has no closing bracket",
    "Unclosed inline table": "a table has no closing brace",
    "Invalid statement": "this is neither a field nor a table",
}


def decoded(data: bytes, faults: Faults) -> str:
    """Give the bytes of a file as text, without the mark some editors put in front."""
    if len(data) > LARGEST:
        _too_large(faults)
        return ""
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        faults.add((), "this is not UTF-8 text", "save the file as UTF-8", line=line)
        return ""


def tables_of(text: str, faults: Faults) -> dict[str, object]:
    """Give the tables of a TOML text; where it is not good TOML, a fault and no tables."""
    if not _is_bounded(text, faults):
        return {}
    try:
        data: dict[str, object] = tomllib.loads(text)
    except RecursionError:
        _too_deep(faults)
        return {}
    except ValueError as error:  # TOMLDecodeError, and numbers of more than 4,300 digits
        _not_toml(str(error), text, faults)
        return {}
    if _depth_passes(data, _DEEPEST):
        _too_deep(faults)
        return {}
    return data


def hidden_in(text: str) -> bool:
    """Tell that a text holds signs that do not show and do not belong there."""
    return _HIDDEN.search(text) is not None


def _is_bounded(text: str, faults: Faults) -> bool:
    if len(text) > LARGEST or len(text.encode("utf-8", "replace")) > LARGEST:
        _too_large(faults)
    elif hidden := _HIDDEN.search(text):
        what = f"a control character stands here (U+{ord(hidden.group()):04X})"
        faults.add((), what, "take it out", line=_line(text, hidden.start()))
    elif chain := _CHAIN.search(text):
        what = "more than eight names are joined by dots"
        faults.add((), what, "write the tables one by one", line=_line(text, chain.start()))
    else:
        return True
    return False


def _not_toml(message: str, text: str, faults: Faults) -> None:
    match = _AT.match(message)
    words, line, column = match.groups() if match else (message, None, None)
    plain = next((_PLAIN_WORDS[start] for start in _PLAIN_WORDS if words.startswith(start)), None)
    what = plain or f"this is not good TOML ({printable(words, longest=120)})"
    number = int(line) if line else _line(text.rstrip(), len(text))
    fix = f"mend the line near its column {column}" if line else "mend the end of the file"
    faults.add(field_near(text, number), what, fix, line=number)


def _too_large(faults: Faults) -> None:
    faults.add((), "the file is larger than 256 kB", "give a smaller file", line=1)


def _too_deep(faults: Faults) -> None:
    what = f"more than {_DEEPEST} tables or lists stand inside each other"
    faults.add((), what, "write it flatter", line=1)


def _line(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1


def _depth_passes(data: dict[str, object], most: int) -> bool:
    """Tell that tables and lists stand inside each other more than `most` deep."""
    level: list[dict[str, object] | list[object]] = [data]
    for _ in range(most + 1):
        level = [inner for outer in level for inner in _inside(outer)]
    return bool(level)


def _inside(outer: dict[str, object] | list[object]) -> list[dict[str, object] | list[object]]:
    """Give the tables and lists directly inside one."""
    values = outer.values() if isinstance(outer, dict) else outer
    return [value for value in values if isinstance(value, dict | list)]
