"""Where everything stands on a paper: a document becomes pages of marks in mm."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.present.paper.blocks import (
    PAGES,
    Block,
    Document,
    Heading,
    Lines,
    PageName,
    Pictures,
    Said,
    Table,
    Words,
)
from studio_log.present.paper.cells import SIZES, Pen, SetCell, lines_of, set_cell
from studio_log.present.qr import STURDY, encode, printed_module
from studio_log.present.tag_marks import Box, LineMark, Mark, Measure, QrMark

MARGIN: Final = 14.0
"""White on every side, mm: no usual printer reaches closer than about 5."""
BAND: Final = 9.0
"""What head and foot take inside the margin."""
_RULE, _THIN = 0.25, 0.1
_TITLE: Final = 8.4
_LEAST_MODULE: Final = 0.5
"""A card on the wall is read from farther off than a tag."""
_PAD: Final = 1.2
MOST_PAGES: Final = 400


@dataclass(frozen=True)
class PictureMark:
    """Where a picture goes; who draws knows it by its key."""

    key: str
    box: Box


@dataclass
class Page:
    """One page: marks and pictures in mm from its top left corner."""

    size: tuple[float, float]
    marks: list[Mark] = field(default_factory=list)
    pictures: list[PictureMark] = field(default_factory=list)
    rows: list[Box] = field(default_factory=list)
    """Where rows of tables lie, for tests."""


def set_document(
    document: Document, measure: Measure, page: PageName = "a4", dots: int = 300
) -> tuple[Page, ...]:
    """Lay a document out; Refusal where it would be a book."""
    setter = _Setter(document, measure, PAGES[page], dots)
    for number, block in enumerate(document.blocks):
        setter.keep_with(document.blocks[number + 1 : number + 2])
        setter.put(block)
    return setter.finished()


class _Setter:
    """Fills page after page from above down."""

    def __init__(
        self, document: Document, measure: Measure, size: tuple[float, float], dots: int
    ) -> None:
        self._document, self._size, self._dots = document, size, dots
        self._pen = Pen(measure)
        self._left, self._width = MARGIN, size[0] - 2 * MARGIN
        self._bottom = size[1] - MARGIN - BAND
        self._next: tuple[Block, ...] = ()
        self.pages = [Page(size)]
        self._y = MARGIN
        self._title()

    def keep_with(self, following: tuple[Block, ...]) -> None:
        """Name the block that comes after the one put next."""
        self._next = following

    def put(self, block: Block) -> None:
        """Put one block where there is room for it."""
        match block:
            case Heading():
                self._heading(block)
            case Words():
                self._words(block)
            case Table():
                self._table(block)
            case Pictures():
                self._pictures(block)
            case Lines():
                self._lines(block)

    def finished(self) -> tuple[Page, ...]:
        """Put heads and feet on, now that the number of pages is known."""
        for number, page in enumerate(self.pages, 1):
            if number > 1:
                self._band(page, MARGIN, self._document.head, self._document.studio)
                self._rule(page, MARGIN + 5.2, _THIN)
            place = tr("page {n} of {count}", n=number, count=len(self.pages))
            self._band(page, self._size[1] - MARGIN - 4.2, self._document.printed, place)
            self._rule(page, self._size[1] - MARGIN - 5.4, _THIN)
        return tuple(self.pages)

    def _title(self) -> None:
        document, page = self._document, self.pages[0]
        room, low = self._width, self._y
        if document.code:
            mark = self._qr(document.code)
            page.marks.append(mark)
            room, low = mark.quiet.x - self._left, mark.quiet.bottom
        said = (Said(document.title, bold=True), *(Said(line) for line in document.under))
        for number, one in enumerate(said):
            size = _TITLE if not number else SIZES["body"]
            for line in lines_of(one.text, room, size, self._pen.measure, bold=one.bold):
                page.marks += self._pen.line(line, self._left, self._y, room, size, bold=one.bold)
                self._y += size * 1.3
        self._y = max(self._y, low) + 1.5
        self._rule(page, self._y, _RULE)
        self._y += 2.5

    def _qr(self, code: str) -> QrMark:
        symbol = encode(code.upper(), version=STURDY[0])
        _, module = printed_module(_LEAST_MODULE, self._dots)
        # The quiet zone lies in the margin, which is white anyway.
        side = symbol.modules * module
        return QrMark(symbol, self._left + self._width - side, self._y, module)

    def _band(self, page: Page, y: float, left: str, right: str) -> None:
        size, half = SIZES["small"], self._width * 0.5
        page.marks += self._pen.line(left, self._left, y, half + self._width * 0.2, size)
        page.marks += self._pen.line(
            right, self._left + self._width * 0.72, y, self._width * 0.28, size, to_right=True
        )

    def _rule(self, page: Page, y: float, width: float) -> None:
        page.marks.append(LineMark(self._left, y, self._left + self._width, y, width))

    def _turn(self) -> None:
        if len(self.pages) >= MOST_PAGES:
            raise Refusal(
                tr(
                    "This paper would have more than {count} pages. Nothing was made. "
                    "Export the studio instead: the folder holds everything.",
                    count=MOST_PAGES,
                )
            )
        self.pages.append(Page(self._size))
        self._y = MARGIN + BAND

    def _need(self, height: float) -> None:
        """Turn the page where so much does not fit; a full page is never turned for nothing."""
        if self._y + height > self._bottom and self._y > MARGIN + BAND:
            self._turn()

    def _heading(self, block: Heading) -> None:
        size = SIZES["large"]
        lines = lines_of(block.text, self._width, size, self._pen.measure, bold=True)
        self._need(len(lines) * size * 1.3 + 3 + self._first_height())
        self._y += 3.0
        for line in lines:
            marks = self._pen.line(line, self._left, self._y, self._width, size, bold=True)
            self.pages[-1].marks += marks
            self._y += size * 1.3
        self._y += 1.0

    def _first_height(self) -> float:
        """Give what must stand below a heading: the first of the block that follows."""
        for block in self._next:
            match block:
                case Table():
                    first = self._set_row(block, block.rows[0]) if block.rows else []
                    height = max((one.height for one in first), default=0.0)
                    return min(self._head_height(block) + height + 2 * _PAD, 90.0)
                case Pictures():
                    return block.high + 8
                case Words() | Heading() | Lines():
                    return 10.0
        return 0.0

    def _words(self, block: Words) -> None:
        size = SIZES[block.size]
        for line in lines_of(block.text, self._width, size, self._pen.measure, bold=block.bold):
            self._need(size * 1.35)
            marks = self._pen.line(line, self._left, self._y, self._width, size, bold=block.bold)
            self.pages[-1].marks += marks
            self._y += size * 1.35
        self._y += 1.2

    def _lines(self, block: Lines) -> None:
        for _ in range(block.count):
            self._need(9.0)
            self._y += 9.0
            self._rule(self.pages[-1], self._y, _THIN)
        self._y += 2.0

    def _pictures(self, block: Pictures) -> None:
        gap = 4.0
        room = (self._width - gap * (block.across - 1)) / block.across
        for start in range(0, len(block.pictures), block.across):
            row = block.pictures[start : start + block.across]
            sizes = [_fitted(one.ratio, room, block.high) for one in row]
            small = SIZES["small"]
            said = [lines_of(one.said, room, small, self._pen.measure) for one in row]
            high = max(size[1] for size in sizes)
            whole = high + max(len(lines) for lines in said) * small * 1.3 + 3
            self._need(whole)
            page = self.pages[-1]
            for column, (one, (wide, tall)) in enumerate(zip(row, sizes, strict=True)):
                x = self._left + column * (room + gap)
                page.pictures.append(PictureMark(one.key, Box(x, self._y, wide, tall)))
                y = self._y + high + 1
                for line in said[column]:
                    page.marks += self._pen.line(line, x, y, room, small)
                    y += small * 1.3
            self._y += whole

    def _widths(self, table: Table) -> list[float]:
        fixed = sum(column.mm for column in table.columns)
        shares = sum(column.share for column in table.columns) or 1.0
        free = self._width - fixed
        return [column.mm or free * column.share / shares for column in table.columns]

    def _set_row(self, table: Table, row: tuple[object, ...]) -> list[SetCell]:
        widths = self._widths(table)
        return [
            set_cell(one, width - 2 * _PAD, self._pen)  # type: ignore[arg-type]
            for one, width in zip(row, widths, strict=True)
        ]

    def _head_height(self, table: Table) -> float:
        return SIZES["small"] * 1.3 + 2.0 if table.heads else 0.0

    def _heads(self, table: Table) -> None:
        if not table.heads:
            return
        x, size = self._left, SIZES["small"]
        for column, width in zip(table.columns, self._widths(table), strict=True):
            page = self.pages[-1]
            page.marks += self._pen.line(
                column.head, x + _PAD, self._y, width - 2 * _PAD, size, bold=True
            )
            x += width
        self._y += self._head_height(table)
        self._rule(self.pages[-1], self._y, _RULE)

    def _table(self, table: Table) -> None:
        self._need(self._head_height(table) + 8)
        self._heads(table)
        full = self._bottom - MARGIN - BAND - self._head_height(table)
        for row in table.rows:
            for part in _parted(self._set_row(table, row), full - 2 * _PAD):
                self._row(table, part)
        self._y += 2.0

    def _row(self, table: Table, cells: list[SetCell]) -> None:
        height = max(max(one.height for one in cells) + 2 * _PAD, table.least)
        if self._y + height > self._bottom:
            self._turn()
            self._heads(table)
        page, x = self.pages[-1], self._left
        page.rows.append(Box(self._left, self._y, self._width, height))
        for one, width in zip(cells, self._widths(table), strict=True):
            page.marks += one.marks(x + _PAD, self._y + _PAD, height - 2 * _PAD)
            x += width
        self._y += height
        if table.ruled:
            self._rule(page, self._y, _THIN)


def _fitted(ratio: float, wide: float, high: float) -> tuple[float, float]:
    """Give the largest size of a picture inside a room."""
    return (wide, wide / ratio) if wide / ratio <= high else (high * ratio, high)


def _parted(cells: list[SetCell], most: float) -> Iterator[list[SetCell]]:
    """Cut a row that no page could hold; every other comes out as it is."""
    while max(one.height for one in cells) > most:
        yield [one.first(most) for one in cells]
        cells = [one.rest(most) for one in cells]
    yield cells
