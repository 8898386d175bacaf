"""A label too small to write times on, or a length of tape: the code, and what has room."""

import math
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts
from studio_log.language.words import tr
from studio_log.present.qr import QUIET, STURDY, QrSymbol, encode, printed_module
from studio_log.present.tag_marks import Box, Mark, Measure, QrMark, TextMark
from studio_log.present.tag_text import Hand, Room, clean, fit_size, place, wrap

EDGE, EDGE_SHARE = 1.0, 0.15
"""White inside the label's edge, mm, and at most this share of a narrow tape's width."""
_LEAST_MODULE: Final = 0.33
"""mm; whole printer dots from here on up."""
_MOST_MODULE: Final = 0.6
_LARGEST, _SMALLEST = 3.6, 1.45
"""Letters, mm to the em: about 10 and 4 points."""
_CODE_LARGEST: Final = 7.0
_LEADING: Final = 1.22
_STEPS: Final = 14
_GAP: Final = 1.0
MOST_TAPE: Final = 300.0
_ON_TAPE: Final = 2.0
"""Letters of a tape are no smaller, mm to the em: it only grows longer."""
_ALL: Final = 100
_STRIDE: Final = 8
"""Lengths are tried in such steps, mm, and then one by one."""


@dataclass(frozen=True)
class Label:
    """A label ready to draw."""

    size: tuple[float, float]
    marks: tuple[Mark, ...]
    left_out: tuple[str, ...]
    """The fields that had no room, whole; none is ever cut."""
    has_code: bool
    """Whether there was room for a QR code."""


@dataclass
class _Sheet:
    inner: Box
    measure: Measure
    smallest: float
    marks: list[Mark] = field(default_factory=list)


def inner_of(size: tuple[float, float]) -> Box:
    """Give the part of a label that words may take."""
    return Box(0, 0, *size).grown(-min(EDGE, EDGE_SHARE * size[1]))


def lay_out_label(
    facts: TagFacts,
    size: tuple[float, float],
    measure: Measure,
    dots: int = 300,
    *,
    smallest: float = _SMALLEST,
) -> Label:
    """Lay out a label of a width and height in mm for a printer of so many dots to the inch.

    All words share one size, the largest at which they fit from 3.6 mm down; where they do
    not fit at the smallest, whole fields stay away, the least needed first. Refusal where not
    even the lot's code can be read.
    """
    sheet = _Sheet(inner_of(size), measure, smallest)
    qr = _sturdiest(facts.code.upper(), size, dots)
    left = sheet.inner.x
    if qr is not None:
        sheet.marks.append(qr)
        left = qr.quiet.right
    room = Box.between(left, sheet.inner.y, sheet.inner.right, sheet.inner.bottom)
    top = _code(sheet, facts.code, room)
    rest = Box.between(room.x, top, room.right, room.bottom)
    left_out = _fields(sheet, facts, rest)
    return Label(size, tuple(sheet.marks), left_out, qr is not None)


def tape_length(
    facts: TagFacts, width: float, measure: Measure, dots: int = 300, least: float = 12.0
) -> float:
    """Give the shortest length of tape, in whole mm, at which all words have room.

    Of a tape so narrow that they never do, the length of the code alone counts.
    """
    lengths = [float(one) for one in range(math.ceil(least), int(MOST_TAPE) + 1)]
    coarse = lengths[::_STRIDE]
    missing = [_missing(facts, (length, width), measure, dots) for length in coarse]
    place = missing.index(min(missing))
    for length in lengths[max(0, (place - 1) * _STRIDE) : place * _STRIDE]:
        if _missing(facts, (length, width), measure, dots) <= missing[place]:
            return length
    return coarse[place]


def _missing(facts: TagFacts, size: tuple[float, float], measure: Measure, dots: int) -> int:
    """Count the fields that such a length leaves out; its QR code weighs more than all."""
    try:
        label = lay_out_label(facts, size, measure, dots, smallest=_ON_TAPE)
    except Refusal:
        return _ALL
    return len(label.left_out) + (0 if label.has_code else _ALL // 2)


def _sturdiest(code: str, size: tuple[float, float], dots: int) -> QrMark | None:
    """Give the code that takes most stains, as long as its modules are not too small."""
    for version in STURDY:
        with suppress(ValueError):  # a code too long for a small version
            found = _qr(encode(code, version=version), size, dots)
            if found is not None:
                return found
    return None


def _qr(symbol: QrSymbol, size: tuple[float, float], dots: int) -> QrMark | None:
    """Give the code at the left, as large as the height allows; None where it would be too small.

    Its quiet zone is white paper, so it may reach to the label's very edge.
    """
    whole = symbol.modules + 2 * QUIET
    fits = min(size[1] / whole, 0.45 * size[0] / whole)
    per_dot = 25.4 / dots
    module = math.floor(min(fits, _MOST_MODULE) / per_dot + 1e-9) * per_dot
    if module < printed_module(_LEAST_MODULE, dots)[1] - 1e-9:
        return None
    side = symbol.modules * module
    return QrMark(symbol, QUIET * module, (size[1] - side) / 2, module)


def _code(sheet: _Sheet, code: str, room: Box) -> float:
    """Set the lot's code as large as its share of the room; give where the rest begins."""
    height = min(_CODE_LARGEST, max(room.height * 0.34, min(room.height, 3.0)))
    line = Room(room.x, room.y, room.width, 0.8 * height, 0.2 * height)
    hand = Hand(height, 0, bold=True)
    size = fit_size(code, line, hand, sheet.measure)
    if size < _SMALLEST:
        raise Refusal(
            tr(
                "{code} could not be read on so small a label. Nothing was printed. "
                "Choose a larger one.",
                code=code,
            )
        )
    sheet.marks.append(place(code, line, size, hand, sheet.measure))
    return line.bottom


_NEEDED: Final = ("name", "caution", "weight", "method", "begun", "studio")
"""From the most needed on; they stand in this order too, the caution before the rest."""


def _fields(sheet: _Sheet, facts: TagFacts, room: Box) -> tuple[str, ...]:
    """Set the fields that have words; give those that had no room."""
    texts = {what: clean(getattr(facts, what)) for what in _NEEDED}
    wanted = [what for what in _NEEDED if texts[what]]
    for count in range(len(wanted), 0, -1):
        marks = _set(sheet, [texts[what] for what in wanted[:count]], room)
        if marks is not None:
            sheet.marks.extend(marks)
            return tuple(wanted[count:])
    return tuple(wanted)


def _set(sheet: _Sheet, texts: list[str], room: Box) -> list[TextMark] | None:
    """Set lines of one size, the largest that fits; None where none does."""
    if room.width <= 2 or room.height <= 0:
        return None
    for step in range(_STEPS + 1):
        size = _LARGEST * (sheet.smallest / _LARGEST) ** (step / _STEPS)
        lines = [line for text in texts for line in wrap(text, room.width, size, sheet.measure)]
        if len(lines) * size * _LEADING <= room.height + 1e-9:
            return _placed(sheet, lines, size, room)
    return None


def _placed(sheet: _Sheet, lines: list[str], size: float, room: Box) -> list[TextMark]:
    found = []
    for number, line in enumerate(lines):
        top = room.y + number * size * _LEADING
        own = Room(room.x, top, room.width, 0.95 * size, (_LEADING - 0.95) * size)
        hand = Hand(size, 0)
        fitting = fit_size(line, own, hand, sheet.measure)
        found.append(place(line, own, fitting, hand, sheet.measure))
    return found
