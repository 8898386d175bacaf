"""Where everything stands on a tag: facts and a size become marks in mm.

Nothing here is in grey: a printer of small labels has black dots only and would turn grey
into a scatter of them. What matters less is smaller or thinner instead.
"""

import math
from dataclasses import dataclass, field

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts, TagRow
from studio_log.language.words import tr
from studio_log.present.label_layout import lay_out_label
from studio_log.present.qr import (
    QUIET,
    STURDY,
    QrSymbol,
    encode,
    printed_module,
    side_with_quiet,
)
from studio_log.present.tag_marks import (
    Box,
    CircleMark,
    FrameMark,
    LineMark,
    Mark,
    Measure,
    QrMark,
)
from studio_log.present.tag_text import Hand, Room, clean, fit_size, place, set_lines, wrap

MARGIN = 3.0
"""White inside the tag's edge, mm: a cut may stray, and small printers leave it white."""
_HOLE_RADIUS = 2.0
_HOLE_WHITE = 2.2
_THIN = 0.15
_RULE = 0.15
_LEAST_MODULE = 0.40
_QR_SHARE = 0.37
"""Of the tag's height, for the code with its white."""
# A hand needs the same room on a large tag and on a small one: rows do not scale.
_ROW_LEAST, _ROW_MOST = 4.9, 8.0
_ROW_GAP = 0.9
_FRAME_MOST = (10.0, 6.4)
_COLON = 2.2
_BLANK_SHARE = 0.66
_BAND_LEADING = 1.22


@dataclass(frozen=True)
class PlacedTag:
    """A tag ready to draw."""

    size: tuple[float, float]
    margin: Box
    """No mark reaches out of it."""
    marks: tuple[Mark, ...]
    cut: tuple[str, ...]
    """The fields whose words had to be cut short: longer than anything the log keeps."""
    rows_left_out: int
    left_out: tuple[str, ...] = ()
    """The fields that had no room on a small label, whole."""


@dataclass
class _Sheet:
    """The tag while it is being laid out."""

    facts: TagFacts
    margin: Box
    left: float
    scale: float
    measure: Measure
    marks: list[Mark] = field(default_factory=list)
    cut: list[str] = field(default_factory=list)

    @property
    def width(self) -> float:
        """Width right of the hole."""
        return self.margin.right - self.left

    def hand(self, size: float, least: float, *, bold: bool = False, right: bool = False) -> Hand:
        """Give a way of setting text whose sizes follow the size of the tag."""
        return Hand(size * self.scale, least * self.scale, bold, right)

    def write(self, what: str, text: str, room: Room, hand: Hand) -> bool:
        """Put words into the room of a line, and note where they had to be cut short."""
        marks, cut = set_lines(text, room, hand, self.measure)
        self.marks.extend(marks)
        if cut and what not in self.cut:
            self.cut.append(what)
        return bool(marks)


WRITABLE = (60.0, 40.0)
"""From this width and height in mm on there is room for times to be written by hand."""


def lay_out_any(
    facts: TagFacts, size: tuple[float, float], measure: Measure, dots: int = 300
) -> PlacedTag:
    """Lay out a tag with frames for times, or a label where it is too small for them."""
    if size[0] >= WRITABLE[0] and size[1] >= WRITABLE[1]:
        return lay_out_tag(facts, size, measure, dots)
    label = lay_out_label(facts, size, measure, dots)
    inner = Box(0, 0, *size)
    rows = ("rows",) if facts.rows else ()
    code = () if label.has_code else ("QR code",)
    return PlacedTag(size, inner, label.marks, (), 0, (*label.left_out, *rows, *code))


def lay_out_tag(
    facts: TagFacts, size: tuple[float, float], measure: Measure, dots: int = 300
) -> PlacedTag:
    """Lay out a tag of a width and height in mm for a printer of so many dots to the inch.

    No two marks overlap, none leaves the margin, and the code is never cut short.
    """
    width, height = size
    margin = Box(0, 0, width, height).grown(-MARGIN)
    scale = min(1.4, max(0.75, min(width / 80, height / 50)))
    left = margin.x + 2 * _HOLE_RADIUS + _HOLE_WHITE
    sheet = _Sheet(facts, margin, left, scale, measure)
    hole = CircleMark(margin.x + _HOLE_RADIUS, height / 2, _HOLE_RADIUS, _THIN)
    sheet.marks.append(hole)
    top = _head(sheet, _qr(sheet, dots))
    bottom = _foot(sheet)
    left_out = _rows(sheet, top, bottom)
    return PlacedTag(size, margin, tuple(sheet.marks), tuple(sheet.cut), left_out)


def _qr(sheet: _Sheet, dots: int) -> QrMark:
    """Put the QR code into the top right corner; its quiet zone may lie in the margin."""
    symbol, module = _sturdiest(sheet, dots)
    # At few dots to the inch, rounding up may make the quiet zone wider than the margin.
    inset = max(0.0, QUIET * module - MARGIN)
    side = symbol.modules * module
    mark = QrMark(symbol, sheet.margin.right - inset - side, sheet.margin.y + inset, module)
    if mark.quiet.height > sheet.margin.height / 2 or mark.quiet.width > sheet.width / 2:
        raise Refusal(
            tr(
                "{code} makes a QR code too large for this tag. Nothing was "
                "printed. Choose a larger tag.",
                code=sheet.facts.code,
            )
        )
    sheet.marks.append(mark)
    return mark


def _sturdiest(sheet: _Sheet, dots: int) -> tuple[QrSymbol, float]:
    """Give the symbol that takes most stains in its share of the tag, and its module in mm."""
    _, module = printed_module(_LEAST_MODULE * sheet.scale, dots)
    most = _QR_SHARE * (sheet.margin.height + 2 * MARGIN)
    for version in STURDY:
        try:
            symbol = encode(sheet.facts.code.upper(), version=version)
        except ValueError:  # too long for so small a version
            continue
        if side_with_quiet(symbol.modules, module) <= most:
            return symbol, module
    return encode(sheet.facts.code.upper()), module


def _head(sheet: _Sheet, qr: QrMark) -> float:
    """Set code, weight, name and method beside the QR code; give where the head ends."""
    facts, scale = sheet.facts, sheet.scale
    width = qr.quiet.x - sheet.left
    hand = sheet.hand(8.6, 0, bold=True)
    room = Room(sheet.left, sheet.margin.y, width, 6.5 * scale, 1.1 * scale)
    code = place(
        facts.code, room, fit_size(facts.code, room, hand, sheet.measure), hand, sheet.measure
    )
    sheet.marks.append(code)
    y = room.bottom
    beside = Room(
        code.box.right + 2.5 * scale,
        room.top,
        width - code.box.width - 2.5 * scale,
        room.ascent,
        room.descent,
    )
    hand = sheet.hand(3.6, 2.6, right=True)
    if clean(facts.weight) and _fits(sheet, facts.weight, beside, hand):
        sheet.write("weight", facts.weight, beside, hand)
        lines = [
            ("name", facts.name, sheet.hand(3.5, 2.5)),
            ("method", facts.method, sheet.hand(2.7, 2.0)),
        ]
    else:
        lines = [
            ("name", facts.name, sheet.hand(3.1, 2.4)),
            ("weight", facts.weight, sheet.hand(2.7, 1.7)),
            ("method", facts.method, sheet.hand(2.4, 1.7)),
        ]
    for what, text, hand in lines:
        room = Room(sheet.left, y, width, hand.size * 0.98, hand.size * 0.28)
        if sheet.write(what, text, room, hand):
            y = room.bottom + 0.15 * scale
    return max(y, qr.quiet.bottom)


def _fits(sheet: _Sheet, text: str, room: Room, hand: Hand) -> bool:
    """Say whether a text fits its room without being cut short."""
    if room.width <= 0:
        return False
    return fit_size(clean(text), room, hand, sheet.measure) >= hand.least


def _foot(sheet: _Sheet) -> float:
    """Set caution, begun and studio from the bottom up; give where the foot begins."""
    y = _caution_beside(sheet)
    if y is None:
        y = _caution_above(sheet)
    if clean(sheet.facts.caution):
        y -= 1.0 * sheet.scale
        line = LineMark(sheet.left + _RULE / 2, y, sheet.margin.right - _RULE / 2, y, _RULE)
        sheet.marks.append(line)
        y -= _RULE / 2
    return y


def _caution_beside(sheet: _Sheet) -> float | None:
    """Set a short caution left of begun and studio; None where it would take three lines."""
    hand = sheet.hand(2.35, 2.0)
    share = 0.6 * sheet.width
    lines = _caution_lines(sheet, hand, share)
    if lines is None or len(lines) > 2:
        return None
    step = hand.size * _BAND_LEADING
    top = sheet.margin.bottom - 2 * step
    # A single line stands level with the studio below, not with the date above it.
    first = sheet.margin.bottom - len(lines) * step
    for number, line in enumerate(lines):
        room = Room(sheet.left, first + number * step, share, hand.size, step - hand.size)
        sheet.write("caution", line, room, hand)
    x = sheet.left + share + 2 * sheet.scale
    for number, (what, text) in enumerate(_origin(sheet)):
        room = Room(x, top + number * step, sheet.margin.right - x, hand.size, step - hand.size)
        sheet.write(what, text, room, sheet.hand(2.0, 1.5, right=True))
    return top


def _origin(sheet: _Sheet) -> list[tuple[str, str]]:
    """Give what tells where the lot comes from."""
    return [("begun", sheet.facts.begun), ("studio", sheet.facts.studio)]


def _caution_lines(sheet: _Sheet, hand: Hand, width: float) -> list[str] | None:
    """Break the caution into lines; None where a script stands too tall for them."""
    text = clean(sheet.facts.caution)
    lines = wrap(text, width, hand.size, sheet.measure) if text else []
    room = Room(0, 0, width, hand.size, hand.size * (_BAND_LEADING - 1))
    if any(fit_size(line, room, hand, sheet.measure) < hand.size for line in lines):
        return None
    return lines


def _caution_above(sheet: _Sheet) -> float:
    """Set a long caution over the full width, begun and studio on one line below it.

    It may take room from the rows, all but one; only then is it cut short.
    """
    hand = sheet.hand(2.0, 1.4)
    step = hand.size * _BAND_LEADING
    y = sheet.margin.bottom - step
    half = sheet.width / 2 - sheet.scale
    for number, (what, text) in enumerate(_origin(sheet)):
        x = sheet.left + number * (half + 2 * sheet.scale)
        room = Room(x, y, half, hand.size, step - hand.size)
        sheet.write(what, text, room, sheet.hand(1.9, 1.5, right=number == 1))
    lines = wrap(clean(sheet.facts.caution), sheet.width, hand.size, sheet.measure)
    most = max(1, math.floor((0.36 * sheet.margin.height) / step))
    if len(lines) > most:
        lines = [*lines[: most - 1], " ".join(lines[most - 1 :])]
    y -= len(lines) * step + 0.5 * sheet.scale
    for number, line in enumerate(lines):
        room = Room(sheet.left, y + number * step, sheet.width, hand.size, step - hand.size)
        sheet.write("caution", line, room, hand)
    return y


def _rows(sheet: _Sheet, top: float, bottom: float) -> int:
    """Set as many rows as a hand can fill in; give how many were left out, and say so."""
    rows = sheet.facts.rows
    top, bottom = top + 0.6, bottom - 0.8
    fitting = min(len(rows), _row_count(bottom - top))
    if fitting < len(rows):
        step = 2.6 * sheet.scale
        fitting = min(len(rows), _row_count(bottom - top - step))
        room = Room(sheet.left, bottom - step, sheet.width, 2.1 * sheet.scale, 0.5 * sheet.scale)
        words = tr("and {rest} more in the log", rest=len(rows) - fitting)
        sheet.write("rows", words, room, sheet.hand(2.0, 1.6))
        bottom -= step
    if fitting:
        height = min(_ROW_MOST, (bottom - top) / fitting)
        for number, row in enumerate(rows[:fitting]):
            _row(sheet, row, Box(sheet.left, top + number * height, sheet.width, height))
    return len(rows) - fitting


def _row_count(height: float) -> int:
    """Give how many rows of the least height fit."""
    return max(0, math.floor(height / _ROW_LEAST + 1e-6))


def _row(sheet: _Sheet, row: TagRow, box: Box) -> None:
    """Set one row: its title, and what is written or the blanks to write in."""
    height = min(_FRAME_MOST[1], box.height - _ROW_GAP)
    inner = Box(box.x, box.y + (box.height - height) / 2, box.width, height)
    frame, pause = _frame_widths(sheet, box.width)
    blank = 4 * frame + 2 * _COLON + pause
    left = box.right - blank
    hand = sheet.hand(2.9, 1.9)
    baseline = inner.y + inner.height / 2 + 0.36 * hand.size
    title = Room(box.x, inner.y, left - box.x - 1.5, baseline - inner.y, inner.bottom - baseline)
    sheet.write("rows", row.title, title, hand)
    if clean(row.written):
        room = Room(left, title.top, blank, title.ascent, title.descent)
        sheet.write("rows", row.written, room, sheet.hand(3.1, 1.9))
    else:
        _blanks(sheet, Box(left, inner.y, blank, height), frame, pause)


def _frame_widths(sheet: _Sheet, width: float) -> tuple[float, float]:
    """Give the width of one frame, and of the pause between date and time."""
    pause = 3.0 * sheet.scale
    return min(_FRAME_MOST[0], (width * _BLANK_SHARE - 2 * _COLON - pause) / 4), pause


def _blanks(sheet: _Sheet, box: Box, frame: float, pause: float) -> None:
    """Draw frames for day and month, a pause, and frames for hour and minute."""
    x = box.x
    for between in ("/", None, ":", ""):
        sheet.marks.append(FrameMark(Box(x, box.y, frame, box.height), _THIN))
        x += frame
        if between is None:
            x += pause
        elif between:
            _between(sheet, between, Box(x, box.y, _COLON, box.height))
            x += _COLON


def _between(sheet: _Sheet, sign: str, box: Box) -> None:
    """Set a stroke or colon in the middle between two frames."""
    size = 3.2
    took = sheet.measure(sign, size, bold=False)
    if took.width > 0:
        size *= min(1.0, 0.9 * box.width / took.width)
        took = sheet.measure(sign, size, bold=False)
    x = box.x + (box.width - took.width) / 2
    baseline = box.y + (box.height + took.ascent - took.descent) / 2
    room = Room(x, baseline - took.ascent, took.width, took.ascent, took.descent)
    sheet.marks.append(place(sign, room, size, Hand(size, size), sheet.measure))
