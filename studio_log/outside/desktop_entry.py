"""The text of a desktop entry, and the command line that its Exec line holds.

Desktop Entry Specification 1.5, "Basic format of the file", "Possible value types" and
"The Exec key". An Exec line is escaped twice: first its words, then the value as a whole.
"""

import configparser
import re
from collections.abc import Mapping, Sequence
from typing import Final

from typing_extensions import override

GROUP: Final = "Desktop Entry"
_RESERVED: Final = re.compile(r"""[ \t\n"'\\><~|&;$*?#()`]""")
_TO_ESCAPE: Final = re.compile(r'["`$\\]')
_VALUE_SIGNS: Final = {"\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}
_SIGNS_READ: Final = {"s": " ", "n": "\n", "t": "\t", "r": "\r", "\\": "\\"}
_WORD: Final = re.compile(r'"((?:[^"\\]|\\.)*)"(?=[ ]|$)|([^ "]+)(?=[ ]|$)', re.DOTALL)


class _Keys(configparser.RawConfigParser):
    """Reads groups of keys as they are written: a key knows its case."""

    @override
    def optionxform(self, optionstr: str) -> str:
        return optionstr


def entry_text(keys: Mapping[str, str], note: str) -> str:
    """Give an entry's text: a comment, then the keys with their values escaped.

    ValueError for a sign that no value may hold.
    """
    for value in keys.values():
        if re.search(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]", value):
            raise ValueError("a control sign")
    lines = [f"{key}={_escaped(value)}" for key, value in keys.items()]
    return "\n".join([f"# {note}", f"[{GROUP}]", *lines, ""])


def read_entry(text: str) -> dict[str, str]:
    """Give the keys of an entry with their values unescaped; ValueError where it is none."""
    reader = _Keys(delimiters=("=",), comment_prefixes=("#",), strict=False)
    try:
        reader.read_string(text)
        return {key: _unescaped(value) for key, value in reader[GROUP].items()}
    except (configparser.Error, KeyError) as error:
        raise ValueError("no desktop entry") from error


def exec_value(words: Sequence[str]) -> str:
    """Give the value of Exec, before escaping, that starts exactly these words.

    ValueError where the program's name holds "=", which the specification does not allow, or
    "%", which GLib 2.74 and systemd 252 never start: they look for it while it is doubled.
    """
    if re.search("[=%]", words[0]):
        raise ValueError("an equals or percent sign in the program's name")
    return " ".join(_quoted(word) for word in words)


def exec_words(value: str) -> list[str]:
    """Give the words of an unescaped Exec value, its field codes left out.

    ValueError where the quotes do not fit.
    """
    words: list[str] = []
    rest = value.strip(" ")
    while rest:
        found = _WORD.match(rest)
        if found is None:
            raise ValueError("quotes that do not fit")
        quoted, plain = found.groups()
        raw = plain if quoted is None else re.sub(r"\\(.)", r"\1", quoted, flags=re.DOTALL)
        word = re.sub(r"%(.)", lambda code: "%" if code[1] == "%" else "", raw, flags=re.DOTALL)
        if word or word == raw:  # a field code alone is no word
            words.append(word)
        rest = rest[found.end() :].lstrip(" ")
    if not words:
        raise ValueError("no program")
    return words


def _quoted(word: str) -> str:
    doubled = word.replace("%", "%%")
    if word and not _RESERVED.search(word):
        return doubled
    return '"' + _TO_ESCAPE.sub(r"\\\g<0>", doubled) + '"'


def _escaped(value: str) -> str:
    text = "".join(_VALUE_SIGNS.get(sign, sign) for sign in value)
    return f"\\s{text[1:]}" if text.startswith(" ") else text


def _unescaped(value: str) -> str:
    return re.sub(r"\\(.)", lambda found: _SIGNS_READ.get(found[1], found[0]), value)
