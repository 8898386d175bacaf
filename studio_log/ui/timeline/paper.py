"""The sheet as a picture or on paper: what is seen of time, every lot, with title and legend."""

from dataclasses import dataclass
from datetime import datetime
from typing import Final

from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPagedPaintDevice, QPainter

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.present.text_room import fitted
from studio_log.present.words import whole_moment
from studio_log.ui.theme import Theme
from studio_log.ui.timeline.header_painter import draw_header
from studio_log.ui.timeline.legend_rows import LegendRows, Sign
from studio_log.ui.timeline.pencils import Pencils
from studio_log.ui.timeline.scene_maker import Looking, make_scene, place_of
from studio_log.ui.timeline.sheet_painter import Place, draw_body, draw_gutter
from studio_log.ui.timeline.sheet_state import SheetState

MOST_ROWS: Final = 60
"""Rows of one picture: more would be a ribbon that no screen shows; paper has pages."""
_REFUSED: Final = tr_later(
    "The printer did not take the sheet. Nothing was printed. See "
    "that it is on, or save the sheet as a picture."
)


@dataclass(frozen=True)
class Stretch:
    """What is put on paper: a state, and the first and last moment that are seen of it."""

    state: SheetState
    first: datetime
    last: datetime
    title: str
    signs: tuple[Sign, ...]


class Paper:
    """Lays one stretch out for a width, and paints its rows page by page."""

    def __init__(self, stretch: Stretch, look: Theme, width: float, ratio: float) -> None:
        self._pencils = Pencils(look, ratio)
        self._width, self._title = width, stretch.title
        self._state = _fitted_state(stretch, self._pencils, width)
        self._left = self._state.scale.x(stretch.first)
        self._legend = LegendRows(stretch.signs, look, ratio)
        state = self._state
        self._note = tr(
            "as of {whole_moment}", whole_moment=whole_moment(state.now, state.zone.key)
        )

    @property
    def rows(self) -> int:
        """Lots, and the lines for what they share."""
        return self._state.row_count

    def height(self, rows: int) -> float:
        """Give the height of a page that holds so many rows."""
        return self._around() + rows * self._pencils.sizes.row

    def pages(self, height: float) -> list[range]:
        """Share the rows out on pages of a height; one a page at the very least."""
        room = max(1, int((height - self._around()) // self._pencils.sizes.row))
        return [range(at, min(at + room, self.rows)) for at in range(0, self.rows, room)]

    def paint(self, painter: QPainter, rows: range, note: str = "") -> None:
        """Paint title, header, the rows and the legend from the painter's origin down."""
        place, row = self._place(), self._pencils.sizes.row
        colours = self._pencils.colours
        painter.save()
        painter.fillRect(QRectF(0, 0, self._width, self.height(len(rows))), colours.panel)
        self._draw_title(painter, note)
        painter.translate(0, self._top())
        looking = self._looking(place.header + len(rows) * row, rows.start * row)
        scene = make_scene(self._state, looking, self._pencils)
        for draw in (draw_body, draw_gutter, draw_header):
            draw(painter, scene, self._pencils)
        painter.translate(0, place.header + len(rows) * row + self._pencils.theme.metrics.m)
        self._legend.draw(painter, self._width)
        painter.restore()

    def _draw_title(self, painter: QPainter, note: str) -> None:
        pencils = self._pencils
        middle = self._top() / 2 - pencils.theme.metrics.s
        told = ", ".join(part for part in (self._state.cut_words, self._note, note) if part)
        wide = pencils.small(told)
        painter.setPen(pencils.colours.ink)
        painter.setFont(pencils.bold.font)
        room = self._width - wide - pencils.theme.metrics.xl
        pencils.bold.draw(painter, 0, middle, fitted(self._title, room, pencils.bold))
        painter.setPen(pencils.colours.soft)
        painter.setFont(pencils.small.font)
        pencils.small.draw(painter, self._width - wide, middle, told)

    def _top(self) -> float:
        return round(self._pencils.bold.metrics.height() + 2 * self._pencils.theme.metrics.m)

    def _around(self) -> float:
        legend = self._legend.height(self._width) + self._pencils.theme.metrics.m
        return self._top() + self._place().header + legend

    def _looking(self, height: float, scroll_y: float) -> Looking:
        return Looking(self._width, height, round(self._left), round(scroll_y), "", None)

    def _place(self) -> Place:
        return place_of(self._state, self._looking(0, 0), self._pencils)


def picture_of(stretch: Stretch, look: Theme, width: float, ratio: float) -> QImage:
    """Give the sheet as one picture, `ratio` dots a pixel; of very many rows the first."""
    paper = Paper(stretch, look, width, ratio)
    rows = range(min(paper.rows, MOST_ROWS))
    note = (
        tr("the first {count} of {rows} rows", count=len(rows), rows=paper.rows)
        if len(rows) < paper.rows
        else ""
    )
    rim = look.metrics.xl
    high = paper.height(len(rows)) + 2 * rim
    picture = QImage(
        round((width + 2 * rim) * ratio), round(high * ratio), QImage.Format.Format_RGB32
    )
    picture.setDevicePixelRatio(ratio)
    picture.fill(look.colours.panel)
    painter = QPainter(picture)
    painter.translate(rim, rim)
    paper.paint(painter, rows, note)
    painter.end()
    return picture


def print_on(device: QPagedPaintDevice, stretch: Stretch, look: Theme, *, ratio: float = 4) -> int:
    """Print the sheet across the pages' width and give their number; Refusal where refused.

    The device counts its dots as the screen does, so that text has its size.
    """
    painter = QPainter()
    if not painter.begin(device):
        raise Refusal(tr(_REFUSED))
    try:
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        area = painter.viewport()
        paper = Paper(stretch, look, area.width(), ratio)
        pages = paper.pages(area.height())
        for number, rows in enumerate(pages, 1):
            if number > 1:
                device.newPage()
            paper.paint(
                painter, rows, tr("page {number} of {count}", number=number, count=len(pages))
            )
        return len(pages)
    finally:
        painter.end()


def _fitted_state(stretch: Stretch, pencils: Pencils, width: float) -> SheetState:
    """Give a state of its own in which the stretch takes the width exactly."""
    seen, made = stretch.state, SheetState()
    made.opened, made.pleat_width = seen.opened, pencils.pleat_width
    made.closed, made.all_shared = seen.closed, seen.all_shared
    made.shows_shared, made.left_out = seen.shows_shared, seen.left_out
    made.zoom = seen.zoom
    made.show(seen.lanes, seen.nights, seen.now, seen.zone)
    place = place_of(made, Looking(width, 0, 0, 0, "", None), pencils)
    room = width - place.gutter
    for _ in range(3):  # folds keep their width, so the first try may miss
        left, right = made.scale.x(stretch.first), made.scale.x(stretch.last)
        folded = sum(
            max(0.0, min(fold.right, right) - max(fold.left, left)) for fold in made.scale.folds
        )
        flat = right - left - folded
        if flat > 0 and room > folded:
            made.set_zoom(made.zoom * (room - folded) / flat)
    return made


def light_of(scheme_font: Theme) -> Theme:
    """Give the theme for paper: dark on white, at the size of text that the window has."""
    return Theme("strong-light", scheme_font.font())
