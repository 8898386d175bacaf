"""Drawing the whole viewport: ground, nights, lanes, folds, now line, gutter, header."""

from dataclasses import dataclass

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QTransform

from studio_log.language.words import tr
from studio_log.present.text_room import fitted
from studio_log.present.ticks import TickRows
from studio_log.present.timeline_layout import LaneLayout, Sheet, night_bands
from studio_log.present.timeline_shared_layout import SharedLayout
from studio_log.ui.timeline.lane_painter import draw_bars, draw_on_top
from studio_log.ui.timeline.pencils import Pencils
from studio_log.ui.timeline.shared_painter import draw_clashes, draw_shared_name, draw_takings
from studio_log.ui.timeline.sheet_state import SheetState
from studio_log.ui.timeline.walk import Spot

_FOLD_WIDTH = 13.0
_BAND = 24.0
"""Qt hands a shade of 96 spans or more to a pool of threads, which wakes them all each time; a
line with smooth ends is three spans."""


@dataclass(frozen=True)
class Place:
    """Where things lie in the viewport, in pixels."""

    width: float
    height: float
    gutter: float
    """Width of the lot codes at the left."""
    names: bool
    """Whether the gutter has room for the names of the lots."""
    days: float
    """Height of the row of days, and so on down to the flag of now."""
    hours: float
    flag: float
    scroll_x: int
    scroll_y: int

    @property
    def header(self) -> float:
        """Height above the first lane."""
        return self.days + self.hours + self.flag

    @property
    def window(self) -> tuple[float, float]:
        """What is seen of the sheet's x."""
        return (float(self.scroll_x), self.scroll_x + self.width - self.gutter)

    def to_view(self, x: float) -> float:
        """Sheet's x -> viewport's x."""
        return x - self.scroll_x + self.gutter

    def to_sheet(self, x: float) -> float:
        """Viewport's x -> sheet's x."""
        return x + self.scroll_x - self.gutter


@dataclass(frozen=True)
class Scene:
    """All that one picture needs."""

    state: SheetState
    place: Place
    sheet: Sheet
    rows: tuple[tuple[int, LaneLayout], ...]
    shared: tuple[tuple[int, SharedLayout], ...]
    """Vessels, line and heat, below the lanes."""
    ticks: TickRows
    chosen: int | None
    spot: Spot | None
    """Where the keyboard is, while the view has it."""
    focus: QRectF | None
    """Around the thing that has the keyboard: x on the sheet, y from the lane's top."""


def draw_body(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    """Draw everything below the header and right of the gutter."""
    place = scene.place
    painter.save()
    painter.setClipRect(
        QRectF(place.gutter, place.header, place.width - place.gutter, place.height - place.header)
    )
    _draw_ground(painter, scene, pencils)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    base = painter.worldTransform()
    for row, layout in scene.rows:
        _move_to(painter, base, scene, row)
        draw_bars(painter, layout, pencils)
    for row, one in scene.shared:
        _move_to(painter, base, scene, row)
        draw_takings(painter, one, pencils)
    painter.setWorldTransform(base)
    _draw_folds(painter, scene, pencils, place.header, _bottom(scene))
    _draw_now_line(painter, scene, pencils)
    for row, layout in scene.rows:
        _move_to(painter, base, scene, row)
        draw_on_top(painter, layout, pencils)
    for row, one in scene.shared:
        _move_to(painter, base, scene, row)
        draw_clashes(painter, one, pencils)
    painter.setWorldTransform(base)
    _draw_focus(painter, scene, pencils)
    painter.restore()
    _draw_cut(painter, scene, pencils)


def draw_folds(
    painter: QPainter, across: tuple[float, float], down: tuple[float, float], pencils: Pencils
) -> None:
    """Shade one pleat as cloth that lies in folds."""
    left, right = across
    count = max(2, round((right - left) / _FOLD_WIDTH))
    step = (right - left) / count
    for number in range(count):
        from_x = left + number * step
        shade, top = pencils.fold_shade(from_x, from_x + step), down[0]
        while top < down[1]:
            high = min(_BAND, down[1] - top)
            painter.fillRect(QRectF(from_x, top, step, high), shade)
            top += high


def draw_gutter(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    """Draw the codes, and the names where there is room, over whatever was scrolled under."""
    place, colours, sizes = scene.place, pencils.colours, pencils.sizes
    metrics = pencils.theme.metrics
    painter.save()
    painter.setClipRect(QRectF(0, place.header, place.gutter, place.height - place.header))
    painter.fillRect(QRectF(0, place.header, place.gutter, place.height), colours.panel)
    for row, layout in scene.rows:
        top = _top(scene, row)
        if row == scene.chosen:
            painter.fillRect(QRectF(0, top, place.gutter, sizes.row), colours.chosen)
            painter.fillRect(QRectF(0, top, 4, sizes.row), colours.accent)
        middle = top + sizes.bar_top + sizes.bar / 2
        painter.setPen(colours.ink)
        painter.setFont(pencils.bold.font)
        pencils.bold.draw(painter, metrics.l, middle, layout.lane.code)
        if place.names:
            room = place.gutter - metrics.l - metrics.m
            painter.setPen(colours.soft)
            painter.setFont(pencils.small.font)
            middle = top + pencils.name_middle
            pencils.small.draw(
                painter, metrics.l, middle, fitted(layout.lane.name, room, pencils.small)
            )
        painter.setPen(pencils.row_line)
        painter.drawLine(QLineF(0, top + sizes.row - 0.5, place.gutter, top + sizes.row - 0.5))
    _draw_shared_names(painter, scene, pencils)
    _draw_selvedge(painter, scene, pencils)
    _draw_row_focus(painter, scene, pencils)
    painter.restore()


def _draw_shared_names(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    """Write the names of what lots share, under a seam that parts them from the lots."""
    place, left = scene.place, pencils.theme.metrics.l
    for row, layout in scene.shared:
        top = _top(scene, row)
        painter.save()
        painter.translate(0, top)
        draw_shared_name(painter, layout, (left, place.gutter - left - 4), pencils)
        painter.restore()
        first = row == len(scene.state.lanes)
        painter.setPen(pencils.pen(pencils.colours.outline, 2) if first else pencils.row_line)
        at = top + 1 if first else top + pencils.sizes.row - 0.5
        painter.drawLine(QLineF(0, at, place.gutter, at))


def _draw_ground(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    place, colours, sizes = scene.place, pencils.colours, pencils.sizes
    bottom = _bottom(scene)
    height = bottom - place.header
    bands = night_bands(scene.state.nights, scene.state.scale, place.window)
    places = [QRectF(place.to_view(one), place.header, other - one, height) for one, other in bands]
    for band in places:
        painter.fillRect(band, colours.night)
    if scene.chosen is not None:
        top = _top(scene, scene.chosen)
        chosen = QRectF(place.gutter, top, place.width, sizes.row)
        painter.fillRect(chosen, colours.chosen)
        for band in places:
            painter.fillRect(band.intersected(chosen), pencils.night_chosen)
    _draw_closed(painter, scene, pencils, height)
    for pen, ticks in (
        (pencils.hour_line, scene.ticks.hours),
        (pencils.day_line, scene.ticks.midnights),
    ):
        painter.setPen(pen)
        xs = [round(place.to_view(tick.x)) + 0.5 for tick in ticks]
        painter.drawLines([QLineF(x, place.header, x, bottom) for x in xs])
    painter.setPen(pencils.row_line)
    ends = [_top(scene, row + 1) - 0.5 for row, _ in (*scene.rows, *scene.shared)]
    painter.drawLines([QLineF(place.gutter, y, place.width, y) for y in ends])


def _draw_closed(painter: QPainter, scene: Scene, pencils: Pencils, height: float) -> None:
    """Weave a pattern over the hours in which the workshop is closed, still on the sheet."""
    place = scene.place
    painter.setBrushOrigin(QPointF(place.to_view(0) % 1200, place.header - place.scroll_y % 1200))
    for left, right in night_bands(scene.state.closed, scene.state.scale, place.window):
        band = QRectF(place.to_view(left), place.header, right - left, height)
        painter.fillRect(band, pencils.closed)
    painter.setBrushOrigin(QPointF(0, 0))


def foot_height(state: SheetState, pencils: Pencils) -> float:
    """Give the height of the line under the last row that says what is left out; else 0."""
    return pencils.sizes.row * 0.75 if state.cut_words else 0.0


def _draw_cut(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    words, high = scene.state.cut_words, foot_height(scene.state, pencils)
    if not words:
        return
    place, top = scene.place, _top(scene, scene.state.row_count)
    told = tr("{words}. The others stand in the list of lots.", words=words)
    painter.setPen(pencils.colours.ink)
    painter.setFont(pencils.bar.font)
    room = place.width - 2 * pencils.theme.metrics.l
    text = fitted(told, room, pencils.bar)
    pencils.bar.draw(painter, pencils.theme.metrics.l, top + high / 2, text)


def _draw_folds(
    painter: QPainter, scene: Scene, pencils: Pencils, top: float, bottom: float
) -> None:
    """Shade the pleats over the bars, as folded cloth darkens what is dyed on it."""
    for fold in scene.state.scale.folds:
        left, right = scene.place.to_view(fold.left), scene.place.to_view(fold.right)
        if right < scene.place.gutter or left > scene.place.width:
            continue
        draw_folds(painter, (left, right), (top, bottom), pencils)


def _draw_now_line(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    x = round(scene.place.to_view(scene.sheet.now_x))
    painter.setPen(pencils.now_pen)
    painter.drawLine(QLineF(x, scene.place.header - 2, x, _bottom(scene)))


def _draw_selvedge(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    """Sew the edge of the sheet with a running stitch."""
    x = scene.place.gutter - 1.5
    pen = QPen(pencils.colours.outline, 1)
    pen.setDashPattern([5, 4])
    painter.setPen(pen)
    painter.drawLine(QLineF(x, scene.place.header, x, _bottom(scene)))


def _draw_row_focus(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    spot = scene.spot
    if spot is None or spot.row < 0 or spot.stop is not None:
        return
    place = QRectF(2, _top(scene, spot.row) + 2, scene.place.gutter - 6, pencils.sizes.row - 5)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(pencils.focus_pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(place, 5, 5)


def _draw_focus(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    spot = scene.spot
    if spot is None or spot.row < 0 or scene.focus is None:
        return
    painter.setPen(pencils.focus_pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    place = scene.focus.translated(scene.place.to_view(0), _top(scene, spot.row))
    painter.drawRoundedRect(place, 6, 6)


def _move_to(painter: QPainter, base: QTransform, scene: Scene, row: int) -> None:
    """Let a row's own places begin at the painter's origin, wherever the sheet itself lies."""
    painter.setWorldTransform(base)
    painter.translate(QPointF(scene.place.to_view(0), _top(scene, row)))


def _top(scene: Scene, row: int) -> float:
    return scene.place.header + row * scene.sheet.sizes.row - scene.place.scroll_y


def _bottom(scene: Scene) -> float:
    return min(scene.place.height, _top(scene, scene.state.row_count))
