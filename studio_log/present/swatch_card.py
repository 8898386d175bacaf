"""A card to glue a swatch on: where everything stands on it, in mm.

At the left a frame for the cloth, as large as the card allows; at the right code, QR code, lot,
methods, colour and dates. As on tags, nothing is in grey.
"""

from dataclasses import dataclass, field
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.present.qr import QUIET, encode, printed_module
from studio_log.present.tag_marks import Box, FrameMark, Mark, Measure, QrMark, TextMark
from studio_log.present.tag_text import Hand, Room, clean, fit_size, place, set_line, wrap

MARGIN: Final = 3.0
"""White inside the card's edge, mm."""
GAP: Final = 2.5
CLOTH: Final = 0.42
"""Part of the width that the frame for the cloth takes."""
FRAME: Final = 0.2
LEAST_MODULE: Final = 0.5
"""mm: with a phone or a wedge scanner it is read at arm's length."""
SIZES: Final = {"code": (6.6, 4.0), "name": (2.9, 1.7), "words": (2.4, 1.6), "small": (2.0, 1.5)}
"""Size and least size of letters, mm to the em, on a card of 80 × 50 mm."""
SHRUNK: Final = (1.0, 0.9, 0.8, 0.72)
"""Letters are made smaller, all alike, until everything stands on the card."""
LEADING: Final = 1.28
MOST_LINES: Final = 3
"""Of one field."""


@dataclass(frozen=True)
class CardFacts:
    """What stands on a card; "" leaves a line out."""

    code: str
    name: str = ""
    lot: str = ""
    chain: tuple[str, ...] = ()
    colour: str = ""
    even: str = ""
    cut: str = ""
    halves: str = ""
    studio: str = ""


@dataclass(frozen=True)
class PlacedCard:
    """A card ready to draw."""

    size: tuple[float, float]
    margin: Box
    cloth: Box
    """Where the swatch is glued."""
    marks: tuple[Mark, ...]
    cut: tuple[str, ...]
    """The fields whose words had to be cut short or left out."""


@dataclass
class _Sheet:
    margin: Box
    left: float
    scale: float
    share: float
    measure: Measure
    marks: list[Mark] = field(default_factory=list)
    cut: list[str] = field(default_factory=list)

    def hand(self, kind: str, *, bold: bool = False) -> Hand:
        size, least = SIZES[kind]
        share = 1.0 if kind == "code" else self.share
        return Hand(max(size * share, least) * self.scale, least * self.scale, bold)


def lay_out_card(
    facts: CardFacts, size: tuple[float, float], measure: Measure, dots: int = 300
) -> PlacedCard:
    """Lay out a card of a width and height in mm for a printer of so many dots to the inch.

    No two marks overlap but the words in the frame, which the cloth covers; the code is whole.
    """
    for share in SHRUNK[:-1]:
        found = _laid_out(facts, size, measure, dots, share)
        if not found.cut:
            return found
    return _laid_out(facts, size, measure, dots, SHRUNK[-1])


def _laid_out(
    facts: CardFacts, size: tuple[float, float], measure: Measure, dots: int, share: float
) -> PlacedCard:
    width, height = size
    margin = Box(0, 0, width, height).grown(-MARGIN)
    scale = min(1.5, max(0.75, min(width / 80, height / 50)))
    cloth = Box(margin.x, margin.y, CLOTH * margin.width, margin.height)
    sheet = _Sheet(margin, cloth.right + GAP, scale, share, measure)
    _cloth(sheet, cloth)
    qr = _qr(sheet, facts.code, dots)
    top = _code(sheet, facts.code, qr)
    bottom = _foot(sheet, facts)
    _body(sheet, facts, top, bottom)
    return PlacedCard(size, margin, cloth, tuple(sheet.marks), tuple(sheet.cut))


def _cloth(sheet: _Sheet, cloth: Box) -> None:
    sheet.marks.append(FrameMark(cloth, FRAME))
    hand = sheet.hand("small")
    lines = wrap(tr("Glue the swatch here"), cloth.width - 4, hand.size, sheet.measure)
    step = hand.size * LEADING
    y = cloth.y + (cloth.height - len(lines) * step) / 2
    for line in lines:
        wide = sheet.measure(line, hand.size, bold=False).width
        left = cloth.x + max(2.0, (cloth.width - wide) / 2)
        room = Room(left, y, cloth.right - 1 - left, hand.size, step - hand.size)
        mark, _ = set_line(line, room, hand, sheet.measure)
        if mark is not None:
            sheet.marks.append(mark)
        y += step


def _qr(sheet: _Sheet, code: str, dots: int) -> QrMark:
    """Put the QR code into the top right corner; its quiet zone may lie in the margin."""
    symbol = encode(code.upper())
    _, module = printed_module(LEAST_MODULE * sheet.scale, dots)
    inset = max(0.0, QUIET * module - MARGIN)
    side = symbol.modules * module
    mark = QrMark(symbol, sheet.margin.right - inset - side, sheet.margin.y + inset, module)
    if mark.quiet.x < sheet.left + 8 or mark.quiet.bottom > sheet.margin.bottom:
        raise Refusal(
            tr("{code} makes a QR code too large for this card. Nothing was printed. Choose a "
               "larger one.", code=code)
        )  # fmt: skip
    sheet.marks.append(mark)
    return mark


def _code(sheet: _Sheet, code: str, qr: QrMark) -> float:
    """Set the code beside its QR code, whole, however small that makes it."""
    hand = sheet.hand("code", bold=True)
    room = Room(sheet.left, sheet.margin.y, qr.quiet.x - sheet.left, hand.size, hand.size * 0.28)
    size = fit_size(code, room, hand, sheet.measure)
    sheet.marks.append(place(code, room, size, hand, sheet.measure))
    return room.bottom


def _foot(sheet: _Sheet, facts: CardFacts) -> float:
    """Set halves and studio from the bottom up; give where they begin."""
    y = sheet.margin.bottom
    for what, text in (("studio", facts.studio), ("halves", facts.halves)):
        hand = sheet.hand("small")
        lines = _lines(sheet, text, hand, sheet.margin.right - sheet.left)[:MOST_LINES]
        y -= len(lines) * hand.size * LEADING
        _set(sheet, what, lines, hand, y, sheet.margin.right)
    return y


def _body(sheet: _Sheet, facts: CardFacts, top: float, bottom: float) -> None:
    """Set name, lot, colour, cut and methods; beside the QR code as long as it lies there."""
    rows = [
        ("name", facts.name, "name"),
        ("lot", facts.lot, "name"),
        *(("chain", one, "words") for one in facts.chain),
        ("colour", facts.colour, "words"),
        ("even", facts.even, "words"),
        ("cut", facts.cut, "words"),
    ]
    y = top
    qr = next(mark for mark in sheet.marks if isinstance(mark, QrMark)).quiet
    for what, text, kind in rows:
        hand = sheet.hand(kind)
        step = hand.size * LEADING
        right = qr.x if y < qr.bottom else sheet.margin.right
        lines = _lines(sheet, text, hand, right - sheet.left)
        fitting = min(len(lines), MOST_LINES, max(0, int((bottom - y) / step + 1e-6)))
        if fitting < len(lines) and what not in sheet.cut:
            sheet.cut.append(what)
        _set(sheet, what, lines[:fitting], hand, y, right)
        y += fitting * step


def _lines(sheet: _Sheet, text: str, hand: Hand, width: float) -> list[str]:
    whole = clean(text)
    return wrap(whole, width, hand.size, sheet.measure) if whole else []


def _set(sheet: _Sheet, what: str, lines: list[str], hand: Hand, top: float, right: float) -> None:
    step = hand.size * LEADING
    for at, line in enumerate(lines):
        room = Room(sheet.left, top + at * step, right - sheet.left, hand.size, step - hand.size)
        mark, cut = set_line(line, room, hand, sheet.measure)
        if isinstance(mark, TextMark):
            sheet.marks.append(mark)
        if cut and what not in sheet.cut:
            sheet.cut.append(what)
