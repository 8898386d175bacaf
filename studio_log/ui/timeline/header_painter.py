"""Drawing the header: days, hours, the counts of the pleats, and the flag of now.

The flag has a strip of its own under the hours, so it never hides their labels.
"""

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from studio_log.language.words import tr
from studio_log.present.pleats import Pleat
from studio_log.ui.timeline.pencils import Pencils
from studio_log.ui.timeline.sheet_painter import Place, Scene, draw_folds
from studio_log.ui.timeline.sheet_state import SheetState
from studio_log.ui.timeline.walk import PLEAT_ROW


def draw_header(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    """Draw the header over everything that was scrolled under it."""
    place, colours = scene.place, pencils.colours
    painter.save()
    painter.fillRect(QRectF(0, 0, place.width, place.header), colours.panel)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setClipRect(QRectF(place.gutter, 0, place.width - place.gutter, place.header))
    _draw_ticks(painter, scene, pencils)
    _draw_pleats(painter, scene, pencils)
    _draw_hem(painter, scene, pencils)
    painter.setClipRect(QRectF(0, 0, place.width, place.header))
    _draw_flag(painter, scene, pencils)
    painter.restore()


def flag_place(scene: Scene, pencils: Pencils) -> QRectF:
    """Give where the flag of now lies; while now is out of sight `NowTab` takes its place."""
    place = scene.place
    width = pencils.tag(now_text(scene.state)) + 2 * pencils.theme.metrics.m - 2
    x = place.to_view(scene.sheet.now_x)
    left = min(max(x - width / 2, place.gutter), place.width - width - 1)
    return QRectF(left, place.days + place.hours, width, place.flag - 4)


def now_in_sight(scene: Scene) -> bool:
    """Whether the now line lies inside the window."""
    left, right = scene.place.window
    return left <= scene.sheet.now_x <= right


def now_text(state: SheetState) -> str:
    """Give the clock of now as the flag and the tab write it."""
    return state.now.astimezone(state.zone).strftime("%H:%M")


def pleat_span(scene: Scene, pleat: Pleat) -> tuple[float, float]:
    """Give left and right of a pleat in the viewport, folded or opened."""
    scale = scene.state.scale
    return (
        scene.place.to_view(scale.x(pleat.start)),
        scene.place.to_view(scale.x(pleat.end)),
    )


def pleat_tab(scene: Scene, pleat: Pleat, pencils: Pencils) -> QRectF:
    """Give where the count of days of a pleat is written; a click there toggles it.

    Of a folded pleat it is the whole width beside the days and hours, of an opened one a tab
    in the strip below them that stays in sight while any of the pleat is.
    """
    left, right = pleat_span(scene, pleat)
    place = scene.place
    if not pleat.opened:
        return QRectF(left, 0, right - left, place.days + place.hours)
    width = pencils.small(_opened_text(pleat)) + 2 * pencils.theme.metrics.m
    from_x = min(max(left, place.gutter), right - width)
    return QRectF(from_x, place.days + place.hours, width, place.flag - 4)


def _draw_ticks(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    place, colours = scene.place, pencils.colours
    for day in scene.ticks.days:
        ruler = pencils.bold if day.today else pencils.body
        painter.setFont(ruler.font)
        painter.setPen(colours.ink if day.today else colours.soft)
        ruler.draw(painter, place.to_view(day.x) + 4, place.days / 2, day.label)
    painter.setFont(pencils.small.font)
    painter.setPen(colours.soft)
    middle = place.days + place.hours / 2
    for tick in scene.ticks.hours:
        x = place.to_view(tick.x)
        if tick.label:
            pencils.small.draw(painter, x - pencils.small(tick.label) / 2, middle, tick.label)
    painter.setPen(pencils.day_line)
    xs = [round(place.to_view(tick.x)) + 0.5 for tick in scene.ticks.midnights]
    painter.drawLines([QLineF(x, 4, x, place.header) for x in xs])
    painter.setPen(pencils.hour_line)
    xs = [round(place.to_view(tick.x)) + 0.5 for tick in scene.ticks.hours]
    top = place.days + place.hours
    painter.drawLines([QLineF(x, top, x, place.header) for x in xs])


def _draw_pleats(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    for number, pleat in enumerate(scene.state.pleats):
        tab = pleat_tab(scene, pleat, pencils)
        left, right = pleat_span(scene, pleat)
        if right < scene.place.gutter or left > scene.place.width:
            continue
        if pleat.opened:
            _draw_opened(painter, scene, pleat, pencils)
        elif tab.width() >= pencils.pleat_width - 1:
            _draw_folded(painter, scene, pleat, pencils)
        spot = scene.spot
        if spot is not None and spot.row == PLEAT_ROW and spot.stop == number:
            painter.setPen(pencils.focus_pen)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(tab.adjusted(2, 3, -2, -1), 5, 5)


def _draw_folded(painter: QPainter, scene: Scene, pleat: Pleat, pencils: Pencils) -> None:
    """Write the count over the rod from which the gathered cloth hangs."""
    tab = pleat_tab(scene, pleat, pencils)
    colours, place = pencils.colours, scene.place
    painter.setPen(colours.ink)
    painter.setFont(pencils.tag.font)
    middle = place.days + place.hours / 2
    pencils.tag.draw(painter, tab.center().x() - pencils.tag(pleat.label) / 2, middle, pleat.label)
    top = place.days + place.hours + 4
    draw_folds(painter, (tab.left(), tab.right()), (top, place.header), pencils)
    painter.setPen(QPen(colours.outline, 2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
    painter.drawLine(QPointF(tab.left() + 1, top), QPointF(tab.right() - 1, top))


def _draw_opened(painter: QPainter, scene: Scene, pleat: Pleat, pencils: Pencils) -> None:
    """Mark an opened stretch by the holes of the seam that was unpicked."""
    left, right = pleat_span(scene, pleat)
    tab = pleat_tab(scene, pleat, pencils)
    colours = pencils.colours
    pen = QPen(colours.outline, 1.5)
    pen.setDashPattern([1, 3])
    painter.setPen(pen)
    y = tab.center().y()
    painter.drawLine(QLineF(left, y, right, y))
    painter.setPen(QPen(colours.outline, 1))
    painter.setBrush(colours.raised)
    painter.drawRoundedRect(tab.adjusted(0.5, 0.5, -0.5, -0.5), 5, 5)
    painter.setPen(colours.ink)
    painter.setFont(pencils.small.font)
    text = _opened_text(pleat)
    pencils.small.draw(painter, tab.center().x() - pencils.small(text) / 2, y, text)


def _draw_hem(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    place: Place = scene.place
    painter.setPen(QPen(pencils.colours.outline, 1))
    painter.drawLine(QLineF(place.gutter, place.header - 0.5, place.width, place.header - 0.5))


def _draw_flag(painter: QPainter, scene: Scene, pencils: Pencils) -> None:
    """Draw now as a cloth tag that hangs on its line."""
    if not now_in_sight(scene):
        return
    place, colours = flag_place(scene, pencils), pencils.colours
    x = scene.place.to_view(scene.sheet.now_x)
    path = QPainterPath()
    path.addRoundedRect(place, 4, 4)
    tip = QPainterPath(QPointF(x - 5, place.bottom() - 1))
    tip.lineTo(x + 5, place.bottom() - 1)
    tip.lineTo(x, place.bottom() + 4)
    tip.closeSubpath()
    path = path.united(tip)
    painter.setPen(QPen(colours.panel, 2))
    painter.drawPath(path)
    painter.fillPath(path, colours.danger)
    painter.setPen(colours.on_danger)
    painter.setFont(pencils.tag.font)
    text = now_text(scene.state)
    width = pencils.tag(text)
    pencils.tag.draw(painter, place.center().x() - width / 2, place.center().y(), text)


def _opened_text(pleat: Pleat) -> str:
    return tr("fold {label}", label=pleat.label)
