"""Words made to fit: cleaned of what would spoil a line, shrunk, shortened or wrapped."""

import unicodedata
from bisect import bisect_right
from collections.abc import Callable
from dataclasses import dataclass

from studio_log.present.tag_marks import Box, Measure, TextMark, TextSize

_JOINERS = "\u200c\u200d"
_MOST_ACCENTS = 2
_MOST_LETTERS = 2000
ELLIPSIS = "…"
MOST_LINES = 5
"""In the room of one: on the usual tag the letters are then 0.8 mm to the em."""
_TIGHT = 1.12


def clean(text: str) -> str:
    """Give a text as one line: no control or direction signs, no piles of accents.

    A direction sign in one field could turn round the words beside it; a pile of accents
    would run over the lines above and below.
    """
    kept: list[str] = []
    accents = 0
    for letter in unicodedata.normalize("NFC", text[:_MOST_LETTERS]):
        kind = unicodedata.category(letter)
        accents = accents + 1 if kind in {"Mn", "Me"} else 0
        if accents > _MOST_ACCENTS or (kind in {"Cf", "Cs", "Cn", "Co"} and letter not in _JOINERS):
            continue
        kept.append(" " if kind in {"Cc", "Zl", "Zp"} else letter)
    return " ".join("".join(kept).split())


@dataclass(frozen=True)
class Room:
    """The room a line of text may take, its baseline `ascent` below the top."""

    x: float
    top: float
    width: float
    ascent: float
    descent: float

    @property
    def bottom(self) -> float:
        """The lower edge."""
        return self.top + self.ascent + self.descent

    @property
    def baseline(self) -> float:
        """Where letters stand."""
        return self.top + self.ascent


@dataclass(frozen=True)
class Hand:
    """How a text is set: its size and the smallest it may shrink to, mm to the em."""

    size: float
    least: float
    bold: bool = False
    to_right: bool = False
    """Set against the right edge of its room."""


def fit_size(text: str, room: Room, hand: Hand, measure: Measure) -> float:
    """Give the greatest size, at most the wanted one, at which the text fits its room."""
    size = hand.size
    # Widths grow with the size all but evenly: two or three rounds settle it.
    for _ in range(8):
        share = _share(text, room, measure, size, bold=hand.bold)
        if share >= 1:
            break
        size *= share * 0.999
    return size


def _share(text: str, room: Room, measure: Measure, size: float, *, bold: bool) -> float:
    """Give what part of its size a text may keep in a room; 1 or more: it fits."""
    took = measure(text, size, bold=bold)
    pairs = (
        (room.width, took.width),
        (room.ascent, took.ascent),
        (room.descent, took.descent),
    )
    return min((have / need for have, need in pairs if need > 0), default=1.0)


def set_line(text: str, room: Room, hand: Hand, measure: Measure) -> tuple[TextMark | None, bool]:
    """Give the line as it is drawn, and whether it was cut short. None: nothing to draw.

    It shrinks to the smallest size allowed; what is too long then ends in an ellipsis.
    """
    whole = clean(text)
    if not whole or room.width <= 0:
        return None, bool(whole)
    size = fit_size(whole, room, hand, measure)
    shown = whole
    if size < hand.least:
        shown = shorten(whole, room.width, hand.least, measure, bold=hand.bold)
        size = fit_size(shown, room, Hand(hand.least, 0, hand.bold), measure)
    return place(shown, room, size, hand, measure), shown != whole


def set_lines(
    text: str, room: Room, hand: Hand, measure: Measure
) -> tuple[tuple[TextMark, ...], bool]:
    """Give a text as it is drawn in the room of one line, and whether it was cut short.

    The rule: it shrinks to the smallest size of its hand; then it is broken into as few lines as
    hold it, smaller and smaller; only what no line could hold any more ends in an ellipsis.
    """
    whole = clean(text)
    if whole and room.width > 0 and fit_size(whole, room, hand, measure) < hand.least:
        for count in range(2, MOST_LINES + 1):
            lines = _fitting(whole, room, count, hand, measure)
            if lines:
                return lines, False
    mark, cut = set_line(text, room, hand, measure)
    return ((mark,) if mark is not None else ()), cut


def _fitting(
    text: str, room: Room, count: int, hand: Hand, measure: Measure
) -> tuple[TextMark, ...]:
    """Set a text in so many lines; () where it takes more of them."""
    step = (room.ascent + room.descent) / count
    size = min(hand.least, step / _TIGHT)
    lines = wrap(text, room.width, size, _InBold(measure) if hand.bold else measure)
    if len(lines) > count:
        return ()
    marks = []
    for number, line in enumerate(lines):
        own = Room(room.x, room.top + number * step, room.width, 0.76 * step, 0.24 * step)
        small = Hand(size, 0, hand.bold, hand.to_right)
        marks.append(place(line, own, fit_size(line, own, small, measure), small, measure))
    return tuple(marks)


@dataclass(frozen=True)
class _InBold:
    """Measures in bold whatever is asked."""

    measure: Measure

    def __call__(self, text: str, size: float, *, bold: bool) -> TextSize:  # noqa: ARG002
        return self.measure(text, size, bold=True)


def place(text: str, room: Room, size: float, hand: Hand, measure: Measure) -> TextMark:
    """Put a text of a size that fits into its room."""
    took = measure(text, size, bold=hand.bold)
    x = room.x + room.width - took.width if hand.to_right else room.x
    box = Box(x, room.baseline - took.ascent, took.width, took.ascent + took.descent)
    return TextMark(text, x, room.baseline, size, hand.bold, box)


def shorten(text: str, width: float, size: float, measure: Measure, *, bold: bool = False) -> str:
    """Give the longest beginning that fits with an ellipsis; the text itself where it fits."""
    if measure(text, size, bold=bold).width <= width:
        return text
    longest = _longest(
        0, len(text), lambda length: measure(_cut(text, length), size, bold=bold).width <= width
    )
    return _cut(text, longest)


def _longest(low: int, high: int, fits: Callable[[int], bool]) -> int:
    """Give the greatest length of a range that fits, found by halving; `low` where none does."""
    longer = range(low + 1, high + 1)
    return low + bisect_right(longer, False, key=lambda one: not fits(one))  # noqa: FBT003 - a key


def _cut(text: str, length: int) -> str:
    """Cut between letters, not between a letter and its accent or joiner."""
    while length and length < len(text) and unicodedata.category(text[length]) in {"Mn", "Me"}:
        length -= 1
    return text[:length].rstrip(f" ·,;-{_JOINERS}") + ELLIPSIS


def wrap(text: str, width: float, size: float, measure: Measure) -> list[str]:
    """Break a cleaned text into lines no wider than `width`, between words where it can be."""
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and measure(longer, size, bold=False).width <= width:
            lines[-1] = longer
            continue
        lines += _pieces(word, width, size, measure)
    return lines


def _pieces(word: str, width: float, size: float, measure: Measure) -> list[str]:
    """Break a word that is wider than a line; mostly it is one piece."""
    found: list[str] = []
    while word:
        length = _line_length(word, width, size, measure)
        found.append(word[:length])
        word = word[length:]
    return found


def _line_length(word: str, width: float, size: float, measure: Measure) -> int:
    """Give how many letters of a word fit into a line, one at least."""

    def fits(length: int) -> bool:
        return measure(word[:length], size, bold=False).width <= width

    return len(word) if fits(len(word)) else _longest(1, len(word) - 1, fits)
