"""What tags are printed on: single tags and sheets, read from a table and checked."""

import math
import re
import tomllib
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from studio_log.domain.errors import Refusal
from studio_log.present.tag_marks import Box, LineMark

DEFAULT_SLUG = "tag-80x50"
LEAST_TAG = (15.0, 3.5)
"""Below this, width by height in mm, no code can be read."""
MOST_PAGE = 450.0
_MOST_BYTES = 64_000
_MOST_TAGS = 400
_SLUG = re.compile(r"[a-z0-9][a-z0-9-]{0,39}", re.ASCII)
_MM = r"(\d{1,3}(?:\.\d{1,3})?)"
_TYPED = re.compile(rf"tag-{_MM}x{_MM}(?:@(\d{{3,4}}))?", re.ASCII)
_TAPE = re.compile(rf"tape-{_MM}(?:x{_MM})?(?:@(\d{{3,4}}))?", re.ASCII)
_SHEET = re.compile(
    rf"sheet:{_MM}x{_MM}:{_MM}x{_MM}:(\d{{1,2}})x(\d{{1,2}}):{_MM},{_MM}:{_MM},{_MM}"
    r"(?:@(\d{3,4}))?",
    re.ASCII,
)
_HAIR = 0.06
TO_FIT = 60.0
"""Length of a tape until it is known what it says, mm."""
_TICK = 3.0
_TICK_GAP = 1.0
_TICK_WIDTH = 0.1


@dataclass(frozen=True)
class TagStock:
    """A page and the tags on it; all lengths in mm."""

    slug: str
    title: str
    page: tuple[float, float]
    across: int
    down: int
    margin: tuple[float, float, float, float]
    """Top, right, bottom, left."""
    gap: tuple[float, float]
    dots: int
    """Printer dots to the inch."""
    marks: bool
    fits: bool = False
    """A tape that is cut where the words end."""

    @property
    def count(self) -> int:
        """Tags on one page."""
        return self.across * self.down

    @property
    def tag(self) -> tuple[float, float]:
        """Width and height of one tag."""
        top, right, bottom, left = self.margin
        width = (self.page[0] - left - right - self.gap[0] * (self.across - 1)) / self.across
        height = (self.page[1] - top - bottom - self.gap[1] * (self.down - 1)) / self.down
        return width, height

    def cell(self, place: int) -> Box:
        """Give where the tag of a place lies on the page, places from 0 row by row."""
        row, column = divmod(place, self.across)
        width, height = self.tag
        x = self.margin[3] + column * (width + self.gap[0])
        y = self.margin[0] + row * (height + self.gap[1])
        return Box(x, y, width, height)


@dataclass(frozen=True)
class Place:
    """Which tag goes where on a page."""

    index: int
    cell: Box


def pages_of(count: int, stock: TagStock, start_at: int = 1) -> tuple[tuple[Place, ...], ...]:
    """Give, page by page, where `count` tags go, the first at place `start_at` from 1.

    Refusal where there is no such place.
    """
    if not 1 <= start_at <= stock.count:
        raise Refusal(
            f"{stock.title} has no place {start_at}: places run from 1 to {stock.count}. "
            "Nothing was printed."
        )
    pages: dict[int, list[Place]] = {}
    for index in range(count):
        page, place = divmod(start_at - 1 + index, stock.count)
        pages.setdefault(page, []).append(Place(index, stock.cell(place)))
    return tuple(tuple(places) for places in pages.values())


def cut_marks(stock: TagStock) -> tuple[LineMark, ...]:
    """Give the ticks in the page's margin along which the tags are cut apart."""
    if not stock.marks:
        return ()
    cells = [stock.cell(place) for place in range(stock.count)]
    area = Box.around(cells)
    ticks: list[LineMark] = []
    for x in sorted({round(edge, 4) for cell in cells for edge in (cell.x, cell.right)}):
        ticks += _ticks_down(x, area)
    for y in sorted({round(edge, 4) for cell in cells for edge in (cell.y, cell.bottom)}):
        ticks += _ticks_across(y, area)
    page = Box(0, 0, *stock.page)
    return tuple(tick for tick in ticks if page.holds(tick.box))


def _ticks_down(x: float, area: Box) -> list[LineMark]:
    """Give the ticks above and below one cut from top to bottom."""
    above, below = area.y - _TICK_GAP, area.bottom + _TICK_GAP
    return [
        LineMark(x, above - _TICK, x, above, _TICK_WIDTH),
        LineMark(x, below, x, below + _TICK, _TICK_WIDTH),
    ]


def _ticks_across(y: float, area: Box) -> list[LineMark]:
    """Give the ticks left and right of one cut from side to side."""
    left, right = area.x - _TICK_GAP, area.right + _TICK_GAP
    return [
        LineMark(left - _TICK, y, left, y, _TICK_WIDTH),
        LineMark(right, y, right + _TICK, y, _TICK_WIDTH),
    ]


def stock_file() -> Path:
    """Give the table's place, in the wheel or in the tree."""
    package = Path(__file__).resolve().parents[1]
    shipped = package / "_resources" / "tag_stock.toml"
    return shipped if shipped.exists() else package.parent / "resources" / "tag_stock.toml"


@cache
def all_stock() -> tuple[TagStock, ...]:
    """Give the stock that comes with the program, the default first."""
    return load_stock(stock_file())


def find_stock(slug: str) -> TagStock:
    """Give the stock of a slug, or a single tag of any size from "tag-WIDTHxHEIGHT" in mm."""
    for stock in all_stock():
        if stock.slug == slug:
            return stock
    for form, read in _FORMS:
        typed = form.fullmatch(slug)
        if typed:
            return read(*(float(one) if one is not None else None for one in typed.groups()))
    known = ", ".join(stock.slug for stock in all_stock())
    raise Refusal(
        f"There is no tag stock “{slug[:40]}”. Nothing was printed. "
        f"Choose one of {known}, a single tag such as tag-90x55, a tape such as tape-24, or a "
        "sheet by its measures (see the help)."
    )


@dataclass(frozen=True)
class SheetSizes:
    """A sheet of labels as its maker gives it; mm, from the page's top left corner."""

    page: tuple[float, float]
    label: tuple[float, float]
    across: int
    down: int
    first: tuple[float, float]
    """Where the first label begins: from the left, from the top."""
    pitch: tuple[float, float]
    """From one label's edge to the same edge of the next: across, down."""
    dots: int = 300

    @property
    def slug(self) -> str:
        """How a command names it."""
        pairs = (self.page, self.label, (self.across, self.down))
        sizes = ":".join(f"{one:g}x{other:g}" for one, other in pairs)
        places = ":".join(f"{one:g},{other:g}" for one, other in (self.first, self.pitch))
        return f"sheet:{sizes}:{places}{_at(self.dots)}"


def own_sheet(sizes: SheetSizes) -> TagStock:
    """Give the stock of a sheet typed in by its measures; Refusal where they do not go together."""
    (wide, high), (label_wide, label_high) = sizes.page, sizes.label
    gap = (sizes.pitch[0] - label_wide, sizes.pitch[1] - label_high)
    right = wide - sizes.first[0] - sizes.pitch[0] * (sizes.across - 1) - label_wide
    bottom = high - sizes.first[1] - sizes.pitch[1] * (sizes.down - 1) - label_high
    where = f"A sheet of {sizes.across} × {sizes.down} labels"
    # A hair is allowed: makers round their measures to a tenth.
    if (sizes.across > 1 and gap[0] < -_HAIR) or (sizes.down > 1 and gap[1] < -_HAIR):
        raise _unfit(where, "the pitch", "is smaller than a label, so labels would overlap")
    if right < -_HAIR or bottom < -_HAIR:
        raise _unfit(where, "the last label", "would reach over the edge of the page")
    stock = TagStock(
        slug=sizes.slug,
        title=f"Sheet of {sizes.across} × {sizes.down}, {label_wide:g} × {label_high:g} mm",
        page=sizes.page,
        across=sizes.across,
        down=sizes.down,
        margin=(sizes.first[1], max(0.0, right), max(0.0, bottom), sizes.first[0]),
        gap=(gap[0] if sizes.across > 1 else 0.0, gap[1] if sizes.down > 1 else 0.0),
        dots=sizes.dots,
        marks=False,
    )
    _check_sizes(stock, where)
    return stock


def tape(width: float, length: float | None, dots: int = 300) -> TagStock:
    """Give a tape of a width in mm; without a length it follows from the longest label."""
    stock = single_tag(length or TO_FIT, width, dots)
    size = f"{width:g}" if length is None else f"{width:g}x{length:g}"
    title = f"Tape, {width:g} mm" if length is None else f"Tape, {width:g} mm, {length:g} mm long"
    return replace(stock, slug=f"tape-{size}{_at(dots)}", title=title, fits=length is None)


def _at(dots: int) -> str:
    return "" if dots == 300 else f"@{dots}"


def _typed_single(width: float, height: float, dots: float | None) -> TagStock:
    return single_tag(width, height, int(dots or 300))


def _typed_tape(width: float, length: float | None, dots: float | None) -> TagStock:
    return tape(width, length, int(dots or 300))


def _typed_sheet(*told: float | None) -> TagStock:
    page_w, page_h, label_w, label_h, nx, ny, x, y, dx, dy, dots = (one or 0.0 for one in told)
    sizes = SheetSizes((page_w, page_h), (label_w, label_h), int(nx), int(ny), (x, y), (dx, dy),
                       int(dots or 300))  # fmt: skip
    if sizes.across < 1 or sizes.down < 1:
        raise _unfit("A sheet", "the labels", "must be one or more across and down")
    return own_sheet(sizes)


_FORMS: Sequence[tuple["re.Pattern[str]", Callable[..., TagStock]]] = (
    (_TYPED, _typed_single),
    (_TAPE, _typed_tape),
    (_SHEET, _typed_sheet),
)


def single_tag(width: float, height: float, dots: int = 300) -> TagStock:
    """Give a single tag of a size in mm that the dyer typed in; Refusal where unfit."""
    size = f"{width:g}x{height:g}"
    title = f"Single tag, {width:g} × {height:g} mm"
    stock = TagStock(
        slug=f"tag-{size}{_at(dots)}",
        title=title,
        page=(width, height),
        across=1,
        down=1,
        margin=(0, 0, 0, 0),
        gap=(0, 0),
        dots=dots,
        marks=False,
    )
    _check_sizes(stock, f"A tag of {width:g} × {height:g} mm")
    return stock


def load_stock(path: Path) -> tuple[TagStock, ...]:
    """Read and check a table of stock; Refusal naming the file and the field."""
    try:
        raw = path.read_bytes()
    except OSError as error:
        raise Refusal(
            f"The tag stock {path.name} cannot be read ({error.strerror}). Nothing was printed; "
            "install Studio Log again or mend the file."
        ) from error
    if len(raw) > _MOST_BYTES:
        raise _unfit(path.name, "the file", "is far too long")
    return read_stock(raw, path.name)


def read_stock(raw: bytes, name: str) -> tuple[TagStock, ...]:
    """Check the text of a table of stock; `name` is said in a Refusal."""
    try:
        table = tomllib.loads(raw.decode("utf-8"))
    except (UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError) as error:
        raise _unfit(name, "the file", f"is not TOML: {error}") from error
    entries = table.get("stock")
    if not isinstance(entries, list) or not entries:
        raise _unfit(name, "[[stock]]", "is missing")
    found = tuple(_one(entry, f"{name}, stock {n}") for n, entry in enumerate(entries, 1))
    slugs = [stock.slug for stock in found]
    if len(set(slugs)) != len(slugs):
        raise _unfit(name, "slug", "is used twice")
    return found


def _one(entry: object, where: str) -> TagStock:
    """Check one entry."""
    if not isinstance(entry, dict):
        raise _unfit(where, "the entry", "is not a table")
    unknown = sorted(set(entry) - set(TagStock.__dataclass_fields__) | set(entry) & {"fits"})
    if unknown:
        raise _unfit(where, unknown[0], "is not known")
    slug = _text(entry, "slug", where)
    if not _SLUG.fullmatch(slug):
        raise _unfit(where, "slug", "may have small letters, figures and hyphens only")
    marks = entry.get("marks")
    if not isinstance(marks, bool):
        raise _unfit(where, "marks", "must be true or false")
    page, gap = _lengths(entry, "page", 2, where), _lengths(entry, "gap", 2, where)
    margin = _lengths(entry, "margin", 4, where)
    stock = TagStock(
        slug=slug,
        title=_text(entry, "title", where),
        page=(page[0], page[1]),
        across=_whole(entry, "across", (1, _MOST_TAGS), where),
        down=_whole(entry, "down", (1, _MOST_TAGS), where),
        margin=(margin[0], margin[1], margin[2], margin[3]),
        gap=(gap[0], gap[1]),
        dots=_whole(entry, "dots", (150, 2400), where),
        marks=marks,
    )
    _check_sizes(stock, where)
    return stock


def _check_sizes(stock: TagStock, where: str) -> None:
    """Refuse pages and tags that cannot be printed or written on."""
    if not all(math.isfinite(side) and 0 < side <= MOST_PAGE for side in stock.page):
        raise _unfit(where, "page", f"must be above 0 and at most {MOST_PAGE:g} mm")
    if stock.count > _MOST_TAGS:
        raise _unfit(where, "across × down", f"is more than {_MOST_TAGS} tags")
    if stock.tag[0] < LEAST_TAG[0] or stock.tag[1] < LEAST_TAG[1]:
        raise _unfit(
            where, "a tag", f"must be {LEAST_TAG[0]:g} × {LEAST_TAG[1]:g} mm or more to be read"
        )


def _text(entry: dict[str, object], field: str, where: str) -> str:
    value = entry.get(field)
    if not isinstance(value, str) or not value.isprintable() or not 0 < len(value.strip()) <= 60:
        raise _unfit(where, field, "must be a short text")
    return value


def _whole(entry: dict[str, object], field: str, within: tuple[int, int], where: str) -> int:
    value = entry.get(field)
    if isinstance(value, bool) or not isinstance(value, int):
        raise _unfit(where, field, "must be a whole number")
    if not within[0] <= value <= within[1]:
        raise _unfit(where, field, f"must be {within[0]} to {within[1]}")
    return value


def _lengths(entry: dict[str, object], field: str, count: int, where: str) -> Sequence[float]:
    value = entry.get(field)
    if not isinstance(value, list) or len(value) != count or not all(map(_is_length, value)):
        raise _unfit(where, field, f"must be {count} lengths from 0 to {MOST_PAGE:g} mm")
    return [float(number) for number in value]


def _is_length(value: object) -> bool:
    """Say whether a value is a number of mm that a page may have."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return False
    return 0 <= value <= MOST_PAGE


def _unfit(where: str, field: str, words: str) -> Refusal:
    return Refusal(f"{where}: {field} {words}. Nothing was printed; mend it and try again.")
