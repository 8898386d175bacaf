"""What can be typed into a field of the form, and what it becomes in the method's text.

What cannot be read goes into the text as it was typed: nothing is lost, and the fault is told
beside the field by whoever reads the text.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.method_fields import span_words
from studio_log.domain.number_text import plain
from studio_log.domain.span_text import read_span
from studio_log.present import words

_BETWEEN: Final = re.compile(r"[,;·]|\band\b")
_NUMBER: Final = re.compile(r"[0-9]{1,9}(?:[.,][0-9]{1,9})?")


@dataclass(frozen=True)
class Sort:
    """One sort of value: typed text to value (None for nothing), value to text and to words."""

    value: Callable[[str], object]
    text: Callable[[object], str]
    words: Callable[[object], str] = lambda _value: ""


def _line(typed: str) -> object:
    return typed.strip() or None


def _shown(value: object) -> str:
    return "" if value is None else str(value)


def _prose(value: object) -> str:
    return " ".join(value.split()) if isinstance(value, str) else _shown(value)


def _span(typed: str) -> object:
    """Give a length as files write it: "1h30" becomes "90 min"."""
    if not typed.strip():
        return None
    found = _read(typed)
    return typed.strip() if found is None else span_words(found)


def _read(typed: object) -> timedelta | None:
    """Give a length in whole minutes; None where it is no such length."""
    try:
        found = read_span(typed) if isinstance(typed, str) else None
    except Refusal:
        return None
    return None if found is None or found % timedelta(minutes=1) else found


def _span_words(value: object) -> str:
    found = _read(value)
    return "" if found is None else words.span(found)


def _spans(typed: str) -> object:
    return [_span(part) for part in _BETWEEN.split(typed) if part.strip()] or None


def _listed(value: object) -> str:
    return ", ".join(map(str, value)) if isinstance(value, list) else _shown(value)


def _spans_words(value: object) -> str:
    return ", ".join(map(_span_words, value)) if isinstance(value, list) else ""


def _names(typed: str) -> object:
    return [part.strip() for part in _BETWEEN.split(typed) if part.strip()] or None


def _number(typed: str) -> object:
    figure = typed.strip()
    if not _NUMBER.fullmatch(figure):
        return figure or None
    value = float(figure.replace(",", "."))
    return int(value) if value.is_integer() else value


def _figure(value: object) -> str:
    if isinstance(value, float):
        return plain(value, 6) if abs(value) < 10**9 else str(value)
    return _shown(value)


LINE: Final = Sort(_line, _shown)
PROSE: Final = Sort(_line, _prose)
SPAN: Final = Sort(_span, _shown, _span_words)
SPANS: Final = Sort(_spans, _listed, _spans_words)
NAMES: Final = Sort(_names, _listed)
NUMBER: Final = Sort(_number, _figure)
