"""Drawing one lane: bars, soft ends, planned lines, and what lies on top of them.

The painter is already moved so that x = 0 is the scale's start and y = 0 the lane's top.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPixmap, QPolygonF

from studio_log.present.text_room import Interval
from studio_log.present.timeline_layout import PLAN_END, BarShape, LaneLayout
from studio_log.ui.timeline.pencils import Dye, Pencils
from studio_log.ui.timeline.ribbons import ROUND
from studio_log.ui.timeline.shapes import draw_mark

_NO_PEN = Qt.PenStyle.NoPen


def draw_bars(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    """Draw what lies under the now line and the folds: planned lines, soft ends and bars."""
    for shape in layout.bars:
        if shape.soft is not None:
            _draw_soft(painter, shape, shape.soft, pencils)
    for shape in layout.bars:
        if shape.planned is not None:
            _draw_planned(painter, shape.planned, pencils.dye(shape.bar.kind), pencils)
        if shape.right > shape.left:
            _draw_body(painter, shape, pencils)


def draw_on_top(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    """Draw words, drops, stitches and marks."""
    painter.setFont(pencils.bar.font)
    for shape in layout.bars:
        _draw_words(painter, shape, pencils)
    _draw_warnings(painter, layout, pencils)
    _draw_stitches(painter, layout, pencils)
    _draw_drops(painter, layout, pencils)
    _draw_marks(painter, layout, pencils)


def _draw_body(painter: QPainter, shape: BarShape, pencils: Pencils) -> None:
    dye, top = pencils.dye(shape.bar.kind), pencils.sizes.bar_top
    if shape.bar.state == "broken":
        _draw_broken(painter, shape, dye, pencils)
    elif shape.bar.state == "done":
        dye.done.draw(painter, shape.left, shape.right, top)
    elif shape.dyed_to <= shape.left:
        dye.pale.draw(painter, shape.left, shape.right, top)
    else:
        _draw_running(painter, shape, dye, pencils)


def _draw_running(painter: QPainter, shape: BarShape, dye: Dye, pencils: Pencils) -> None:
    """Dye creeps along a running bar up to now; the cloth ahead is still pale."""
    top, high = pencils.sizes.bar_top, pencils.sizes.bar
    dye.dyed.draw(painter, shape.left, shape.right, top)
    if shape.dyed_to < shape.right:
        painter.save()
        ahead = QRectF(round(shape.dyed_to), top, shape.right - shape.dyed_to + 1, high)
        painter.setClipRect(ahead, Qt.ClipOperation.IntersectClip)
        dye.pale.draw(painter, shape.left, shape.right, top)
        painter.restore()


def _draw_broken(painter: QPainter, shape: BarShape, dye: Dye, pencils: Pencils) -> None:
    place = QRectF(
        shape.left + 0.5,
        pencils.sizes.bar_top + 0.5,
        max(shape.right - shape.left - 1, 1),
        pencils.sizes.bar - 1,
    )
    painter.setPen(pencils.pen(pencils.colours.danger, 2))
    painter.setBrush(dye.hue.fill if shape.dyed_to > shape.left else dye.hue.tint)
    round_by = min(ROUND, place.width() / 2)
    painter.drawRoundedRect(place, round_by, round_by)
    _draw_tear(painter, place, pencils)


def _draw_tear(painter: QPainter, place: QRectF, pencils: Pencils) -> None:
    """Tear the right end, which says without colour that a limit was broken."""
    teeth = 4
    step = place.height() / teeth
    right = place.right() + 2
    points = [QPointF(right + 1, place.top() - 2)]
    points += [
        QPointF(right - (5 if n % 2 else 0), place.top() - 1 + n * (step + 0.5))
        for n in range(teeth + 1)
    ]
    points.append(QPointF(right + 1, place.bottom() + 2))
    painter.setPen(_NO_PEN)
    painter.setBrush(pencils.colours.panel)
    painter.drawPolygon(QPolygonF(points))
    painter.setPen(QPen(pencils.colours.danger, 2))
    painter.drawPolyline(QPolygonF(points[1:-1]))


def _draw_soft(painter: QPainter, shape: BarShape, soft: Interval, pencils: Pencils) -> None:
    sizes, dye = pencils.sizes, pencils.dye(shape.bar.kind)
    left = soft[0] - (ROUND if shape.right > shape.left else 0)
    if soft[1] - left < 2:
        return
    top, high = round(sizes.bar_top), round(sizes.bar)
    dye.soft.draw(painter, left, soft[1], top)
    if shape.aim is not None:
        aim = round(shape.aim)
        painter.fillRect(aim - 3, top + 1, 6, high - 2, pencils.colours.panel)
        painter.fillRect(aim - 1, top, 2, high, dye.hue.edge)


def _draw_planned(painter: QPainter, planned: Interval, dye: Dye, pencils: Pencils) -> None:
    y = pencils.sizes.planned_y
    left, right = planned
    painter.setPen(dye.planned_pen)
    painter.drawLine(QPointF(left, y), QPointF(right, y))
    for x in (left, right):
        painter.drawLine(QPointF(x, y - PLAN_END), QPointF(x, y + PLAN_END))


def _draw_words(painter: QPainter, shape: BarShape, pencils: Pencils) -> None:
    label = shape.label
    start = shape.glyph_at if shape.glyph_at is not None else label.x if label else None
    if start is None:
        return
    end = label.x + label.width if label else start
    if start < shape.dyed_to < end:
        _draw_crossing(painter, shape, end, pencils)
    else:
        _draw_glyph_and_title(painter, shape, start < shape.dyed_to, pencils)


def _draw_crossing(painter: QPainter, shape: BarShape, end: float, pencils: Pencils) -> None:
    """Draw a title over the edge of the dye; the now line passes behind it, as if woven in."""
    hue, sizes = pencils.dye(shape.bar.kind).hue, pencils.sizes
    place = QRectF(shape.left, sizes.bar_top + 2, end + 3 - shape.left, sizes.bar - 4)
    for dyed, left, right in (
        (True, place.left(), shape.dyed_to),
        (False, shape.dyed_to, place.right()),
    ):
        painter.save()
        half = QRectF(left, place.top(), right - left, place.height())
        painter.setClipRect(half, Qt.ClipOperation.IntersectClip)
        band = QRectF(shape.dyed_to - 2, place.top(), 4, place.height())
        painter.fillRect(band, hue.fill if dyed else hue.tint)
        _draw_glyph_and_title(painter, shape, dyed, pencils)
        painter.restore()


def _draw_glyph_and_title(
    painter: QPainter,
    shape: BarShape,
    dyed: bool,  # noqa: FBT001
    pencils: Pencils,
) -> None:
    dye, sizes = pencils.dye(shape.bar.kind), pencils.sizes
    middle = sizes.bar_top + sizes.bar / 2
    if shape.glyph_at is not None:
        picture = dye.glyph_on_fill if dyed else dye.glyph_on_tint
        painter.drawPixmap(round(shape.glyph_at), round(middle - sizes.glyph / 2), picture)
    if shape.label is not None:
        painter.setPen(dye.hue.on_fill if dyed else pencils.colours.ink)
        pencils.bar.draw(painter, shape.label.x, middle, shape.label.text)


def _draw_warnings(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    """Set a warning triangle behind a bar whose limit is broken."""
    sizes, colours = pencils.sizes, pencils.colours
    middle, half = sizes.bar_top + sizes.bar / 2, sizes.glyph * 0.58
    for shape in layout.bars:
        if shape.bar.state != "broken":
            continue
        x = shape.right + half + 7
        corners = [QPointF(x, middle - half), QPointF(x + half, middle + half * 0.85)]
        corners.append(QPointF(x - half, middle + half * 0.85))
        painter.setPen(QPen(colours.danger, 2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
        painter.setBrush(colours.danger)
        painter.drawPolygon(QPolygonF(corners))
        painter.setPen(QPen(colours.on_danger, 1.6))
        painter.drawLine(QPointF(x, middle - half * 0.35), QPointF(x, middle + half * 0.2))
        painter.drawPoint(QPointF(x, middle + half * 0.55))


def _draw_drops(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    middle = pencils.sizes.bar_top + pencils.sizes.bar / 2
    for shape in layout.drops:
        picture = pencils.drop(done=shape.drop.done)
        wide, high = _half(picture)
        painter.drawPixmap(round(shape.x - wide), round(middle - high), picture)


def _draw_stitches(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    sewn, hollow = pencils.stitch(done=True), pencils.stitch(done=False)
    wide, high = _half(sewn)
    top = round(pencils.sizes.stitch_y - high)
    draw = painter.drawPixmap
    for shape in layout.stitches:
        draw(round(shape.x - wide), top, sewn if shape.stitch.done else hollow)


def _half(picture: QPixmap) -> tuple[float, float]:
    ratio = 2 * picture.devicePixelRatio()
    return picture.width() / ratio, picture.height() / ratio


def _draw_marks(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    if not layout.marks:
        return
    sizes, colours = pencils.sizes, pencils.colours
    shades = {"paint": colours.ochre_ink, "ready": colours.good_ink, "resists": colours.danger_ink}
    middle = sizes.strip_top + sizes.strip / 2
    painter.setFont(pencils.small.font)
    for shape in layout.marks:
        place = QRectF(shape.x - sizes.mark / 2, middle - sizes.mark / 2, sizes.mark, sizes.mark)
        draw_mark(painter, shape.mark.kind, place, shades[shape.mark.kind])
        if shape.label is not None:
            painter.setPen(colours.soft)
            pencils.small.draw(painter, shape.label.x, middle, shape.label.text)
