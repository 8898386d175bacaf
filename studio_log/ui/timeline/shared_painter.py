"""Drawing the rows for vessels, drying line and heat; the painter is moved to the row's start."""

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QBrush, QPainter

from studio_log.present.text_room import fitted
from studio_log.present.timeline_shared_layout import (
    PAD,
    TAG_PAD,
    ClashShape,
    SharedLayout,
    TakingShape,
)
from studio_log.ui.timeline.pencils import Pencils

_CROSS = Qt.BrushStyle.DiagCrossPattern


def draw_takings(painter: QPainter, layout: SharedLayout, pencils: Pencils) -> None:
    """Draw who takes it, in the hues of their steps: dyed what is done or begun, pale the rest."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setFont(pencils.small.font)
    for shape in layout.takings:
        _draw_taking(painter, shape, shape.taking.start <= layout.row.now, pencils)


def draw_clashes(painter: QPainter, layout: SharedLayout, pencils: Pencils) -> None:
    """Cross out where lots meet, and tag it with how much is wanted: seen without its colour."""
    for shape in layout.clashes:
        _draw_clash(painter, shape, pencils)


def draw_shared_name(
    painter: QPainter, layout: SharedLayout, room: tuple[float, float], pencils: Pencils
) -> None:
    """Write what it is and how much there is, in the gutter: left edge and width given."""
    sizes, row = pencils.sizes, layout.row
    left, width = room
    painter.setPen(pencils.colours.ink)
    painter.setFont(pencils.bold.font)
    title = fitted(row.title, width, pencils.bold)
    pencils.bold.draw(painter, left, sizes.bar_top + sizes.bar / 2, title)
    painter.setPen(pencils.colours.soft)
    painter.setFont(pencils.small.font)
    note = fitted(row.note, width, pencils.small)
    pencils.small.draw(painter, left, sizes.strip_top + sizes.strip / 2 - 1, note)


def _draw_taking(
    painter: QPainter,
    shape: TakingShape,
    begun: bool,  # noqa: FBT001
    pencils: Pencils,
) -> None:
    hue = pencils.dye(shape.taking.kind).hue
    x, width = round(shape.left), max(round(shape.right) - round(shape.left), 2)
    place = QRectF(x, round(shape.top), width, round(shape.high))
    painter.fillRect(place, hue.fill if begun else hue.tint)
    painter.setPen(pencils.pen(hue.edge, 1))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(place.adjusted(0, 0, -1, -1))
    if shape.label is not None:
        painter.setPen(hue.on_fill if begun else pencils.colours.ink)
        pencils.small.draw(painter, shape.label.x, place.center().y(), shape.label.text)


def _draw_clash(painter: QPainter, shape: ClashShape, pencils: Pencils) -> None:
    colours, sizes = pencils.colours, pencils.sizes
    place = QRectF(shape.left, PAD - 2, shape.right - shape.left, sizes.row - 2 * PAD + 3)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(pencils.pen(colours.danger, 2))
    painter.setBrush(QBrush(colours.danger, _CROSS))
    painter.drawRect(place)
    painter.drawLine(QLineF(place.topLeft(), place.bottomRight()))
    painter.drawLine(QLineF(place.topRight(), place.bottomLeft()))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    high = pencils.tag.metrics.height()
    tag = QRectF(
        shape.label.x - TAG_PAD, place.bottom() - high - 1,
        shape.label.width + 2 * TAG_PAD, high,
    )  # fmt: skip
    painter.setPen(pencils.pen(colours.panel, 1.5))
    painter.setBrush(colours.danger)
    painter.drawRoundedRect(tag, 4, 4)
    painter.setPen(colours.on_danger)
    painter.setFont(pencils.small.font)
    pencils.small.draw(painter, shape.label.x, tag.center().y(), shape.label.text)
