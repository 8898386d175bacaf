"""Drawing one lane: bars, soft ends, planned lines, and what lies on top of them.

The painter is already moved so that x = 0 is the scale's start and y = 0 the lane's top.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QLinearGradient, QPainter, QPen, QPixmap, QPolygonF

from studio_log.present.text_room import Interval
from studio_log.present.timeline_layout import BarShape, LaneLayout
from studio_log.ui.theme.state import KindColours
from studio_log.ui.timeline.pencils import Pencils
from studio_log.ui.timeline.shapes import draw_mark

_NO_PEN = Qt.PenStyle.NoPen
_ROUND = 4.0


def draw_bars(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    """Draw what lies under the now line and the folds: bars and planned lines."""
    for shape in layout.bars:
        hue = pencils.theme.kind(shape.bar.kind)
        if shape.planned is not None:
            _draw_planned(painter, shape.planned, hue, pencils)
        if shape.soft is not None:
            _draw_soft(painter, shape, shape.soft, pencils)
        if shape.right > shape.left:
            _draw_body(painter, shape, hue, pencils)


def draw_on_top(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    """Draw words, drops, stitches and marks."""
    painter.setFont(pencils.bar.font)
    for shape in layout.bars:
        _draw_words(painter, shape, pencils)
    _draw_warnings(painter, layout, pencils)
    _draw_stitches(painter, layout, pencils)
    _draw_drops(painter, layout, pencils)
    _draw_marks(painter, layout, pencils)


def _draw_body(painter: QPainter, shape: BarShape, hue: KindColours, pencils: Pencils) -> None:
    sizes = pencils.sizes
    if shape.bar.state == "done":
        painter.setPen(_NO_PEN if hue.edge == hue.fill else pencils.pen(hue.edge, 1))
        painter.setBrush(pencils.plain(hue.fill))
    else:
        broken = shape.bar.state == "broken"
        edge, width = (pencils.colours.danger, 2) if broken else (hue.edge, 1.2)
        painter.setPen(pencils.pen(edge, width))
        painter.setBrush(_dyed(shape, hue, pencils))
    place = QRectF(
        shape.left + 0.5, sizes.bar_top + 0.5, max(shape.right - shape.left - 1, 1), sizes.bar - 1
    )
    round_by = min(_ROUND, place.width() / 2)
    painter.drawRoundedRect(place, round_by, round_by)
    if shape.bar.state == "broken":
        _draw_tear(painter, place, pencils)


def _dyed(shape: BarShape, hue: KindColours, pencils: Pencils) -> QBrush:
    """Dye creeps along a running bar up to now; the cloth ahead is still pale."""
    if shape.dyed_to <= shape.left:
        return pencils.plain(hue.tint)
    if shape.dyed_to >= shape.right:
        return pencils.plain(hue.fill)
    front = QLinearGradient(shape.dyed_to - 1, 0, shape.dyed_to + 1, 0)
    front.setColorAt(0, hue.fill)
    front.setColorAt(1, hue.tint)
    return QBrush(front)


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
    sizes, hue = pencils.sizes, pencils.theme.kind(shape.bar.kind)
    joins = shape.right > shape.left
    left = soft[0] - (_ROUND if joins else 0)
    width = soft[1] - left - 1
    if width < 1:
        return
    # The pen is square to the pixels, so the brush may go without smoothing: a third of the time.
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(pencils.pen(hue.edge, 1))
    painter.setBrush(pencils.hatch(shape.bar.kind))
    painter.drawRect(QRectF(round(left), sizes.bar_top, round(width), sizes.bar - 1))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    place = QRectF(left + 0.5, sizes.bar_top + 0.5, width, sizes.bar - 1)
    if shape.aim is not None:
        painter.setPen(pencils.pen(pencils.colours.panel, 5))
        painter.drawLine(
            QPointF(shape.aim, place.top() + 1), QPointF(shape.aim, place.bottom() - 1)
        )
        painter.setPen(pencils.pen(hue.edge, 2))
        painter.drawLine(QPointF(shape.aim, place.top()), QPointF(shape.aim, place.bottom()))


def _draw_planned(painter: QPainter, planned: Interval, hue: KindColours, pencils: Pencils) -> None:
    sizes = pencils.sizes
    y = sizes.bar_top + sizes.bar + sizes.planned_gap + 0.5
    left, right = planned
    painter.setPen(pencils.pen(hue.edge, 1.5))
    painter.drawLine(QPointF(left, y), QPointF(right, y))
    for x in (left, right):
        painter.drawLine(QPointF(x, y - 2), QPointF(x, y + 2))


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
    hue, sizes = pencils.theme.kind(shape.bar.kind), pencils.sizes
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
    hue, sizes = pencils.theme.kind(shape.bar.kind), pencils.sizes
    middle = sizes.bar_top + sizes.bar / 2
    if shape.glyph_at is not None:
        picture = pencils.kind(shape.bar.kind, hue.on_fill if dyed else hue.edge)
        painter.drawPixmap(QPointF(shape.glyph_at, middle - sizes.glyph / 2), picture)
    if shape.label is not None:
        painter.setPen(hue.on_fill if dyed else pencils.colours.ink)
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
        _draw_centred(painter, pencils.drop(done=shape.drop.done), shape.x, middle)


def _draw_stitches(painter: QPainter, layout: LaneLayout, pencils: Pencils) -> None:
    middle = pencils.sizes.strip_top + pencils.sizes.strip / 2
    for shape in layout.stitches:
        _draw_centred(painter, pencils.stitch(done=shape.stitch.done), shape.x, middle)


def _draw_centred(painter: QPainter, picture: QPixmap, x: float, y: float) -> None:
    ratio = 2 * picture.devicePixelRatio()
    painter.drawPixmap(QPointF(x - picture.width() / ratio, y - picture.height() / ratio), picture)


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
