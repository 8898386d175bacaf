"""The cells of a paper's tables: words broken into lines, frames and boxes for a hand."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from studio_log.present.paper.blocks import Cell, Frames, Said, Size, Tick
from studio_log.present.tag_marks import Box, FrameMark, Mark, Measure, TextSize
from studio_log.present.tag_text import Hand, Room, clean, fit_size, place, wrap

SIZES: Final[dict[Size, float]] = {"body": 3.3, "small": 2.75, "large": 4.4}
"""mm to the em: 9.4, 7.8 and 12.5 points."""
_LEADING: Final = 1.32
_AT_ONCE: Final = 2000
"""Letters of a paragraph that are cleaned and broken in one go."""
FRAME: Final = (5.4, 7.0)
"""Width and height of a frame: a figure is written into it with a wet hand and a thick pen."""
_BETWEEN: Final = 1.9
_PAUSE: Final = 2.4
_THIN: Final = 0.15
TICK: Final = 5.0


@dataclass(frozen=True)
class Pen:
    """Sets single lines."""

    measure: Measure

    def line(  # noqa: PLR0913 - what a line is
        self,
        text: str,
        x: float,
        top: float,
        width: float,
        size: float,
        *,
        bold: bool = False,
        to_right: bool = False,
    ) -> list[Mark]:
        """Give a line whose room begins at `top`; it shrinks where it would be too wide."""
        said = clean(text)
        if not said:
            return []
        room = Room(x, top, width, size, size * (_LEADING - 1))
        hand = Hand(size, 0, bold, to_right)
        return [place(said, room, fit_size(said, room, hand, self.measure), hand, self.measure)]


@dataclass(frozen=True)
class _InWeight:
    """Measures in one weight whatever is asked: lines are broken as they will be drawn."""

    measure: Measure
    heavy: bool

    def __call__(self, text: str, size: float, *, bold: bool) -> TextSize:
        return self.measure(text, size, bold=bold or self.heavy)


def lines_of(
    text: str, width: float, size: float, measure: Measure, *, bold: bool = False
) -> list[str]:
    """Break a text into lines no wider than `width`; its own line breaks stay."""
    found: list[str] = []
    for paragraph in text.splitlines():
        for part in _parts(paragraph):
            said = clean(part)
            found += wrap(said, width, size, _InWeight(measure, bold)) if said else []
    return found


def _parts(paragraph: str) -> Iterator[str]:
    """Part a very long paragraph between words."""
    while len(paragraph) > _AT_ONCE:
        cut = paragraph.rfind(" ", 1, _AT_ONCE)
        cut = cut if cut > 0 else _AT_ONCE
        yield paragraph[:cut]
        paragraph = paragraph[cut:]
    yield paragraph


@dataclass(frozen=True)
class _Line:
    text: str
    bold: bool
    size: float


@dataclass(frozen=True)
class SetCell:
    """A cell of a known height."""

    pen: Pen
    width: float
    lines: tuple[_Line, ...] = ()
    frames: Frames | None = None
    tick: bool = False

    @property
    def height(self) -> float:
        """What it takes, in mm."""
        least = FRAME[1] if self.frames else TICK if self.tick else 0.0
        return max(least, sum(line.size * _LEADING for line in self.lines))

    def first(self, most: float) -> "SetCell":
        """Give as many lines as fit into `most` mm."""
        return self._cut(0, self._fitting(most))

    def rest(self, most: float) -> "SetCell":
        """Give the lines that did not fit; frames and boxes stand in the first part."""
        return SetCell(self.pen, self.width, self.lines[self._fitting(most) :])

    def _cut(self, start: int, end: int) -> "SetCell":
        return SetCell(self.pen, self.width, self.lines[start:end], self.frames, self.tick)

    def _fitting(self, most: float) -> int:
        took = 0.0
        for number, line in enumerate(self.lines):
            took += line.size * _LEADING
            if took > most:
                return max(1, number)
        return len(self.lines)

    def marks(self, x: float, y: float, height: float) -> list[Mark]:
        """Draw it with its top left corner there, in a row of a height."""
        if self.frames is not None:
            return self._frames(x, y + max(0.0, (height - FRAME[1]) / 2))
        if self.tick:
            box = Box(x, y + max(0.0, (height - TICK) / 2), TICK, TICK)
            return [FrameMark(box, 0.3)]
        marks: list[Mark] = []
        for line in self.lines:
            marks += self.pen.line(line.text, x, y, self.width, line.size, bold=line.bold)
            y += line.size * _LEADING
        return marks

    def _frames(self, x: float, y: float) -> list[Mark]:
        """Draw two frames for day and month where they are wanted, two for hour and minute."""
        assert self.frames is not None  # noqa: S101 - for the type checker
        signs = ("/", "", ":", None) if self.frames.day else (":", None)
        apart = sum(_BETWEEN if sign else _PAUSE for sign in signs[:-1])
        most = (self.width - apart) / len(signs)
        wide = min(FRAME[0], most)
        marks: list[Mark] = []
        for sign in signs:
            marks.append(FrameMark(Box(x, y, wide, FRAME[1]), _THIN))
            x += wide
            if sign:
                marks += self.pen.line(sign, x + 0.5, y + 1.6, _BETWEEN - 1.0, 3.3)
            x += _BETWEEN if sign else _PAUSE
        return marks


def set_cell(cell: Cell, width: float, pen: Pen) -> SetCell:
    """Break the words of a cell into lines, or give the frames or the box that it is."""
    if isinstance(cell, Frames):
        return SetCell(pen, width, frames=cell)
    if isinstance(cell, Tick):
        return SetCell(pen, width, tick=True)
    lines = [line for said in cell for line in _broken(said, width, pen)]
    return SetCell(pen, width, tuple(lines))


def _broken(said: Said, width: float, pen: Pen) -> list[_Line]:
    size = SIZES[said.size]
    lines = lines_of(said.text, width, size, pen.measure, bold=said.bold)
    return [_Line(line, said.bold, size) for line in lines]
