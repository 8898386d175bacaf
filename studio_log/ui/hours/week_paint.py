"""Paints the week: seven rows on one axis, working hours as cloth, quiet hours as night."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen, QPixmap, QTransform

from studio_log.domain.hours_draft import HoursDraft, Layer
from studio_log.domain.methods import StepKind
from studio_log.domain.stretch_text import Stretch
from studio_log.present.week_axis import Axis
from studio_log.ui.theme.state import Theme

HOUR_LABELS: Final = (0, 6, 12, 18, 24)
_ROUND: Final = 4.0
_THREAD: Final = 4
"""Repeat of the weave of a bar, in pixels."""


@dataclass(frozen=True)
class Row:
    """One weekday: where it lies, top and height, and what is drawn in it."""

    weekday: int
    top: float
    high: float
    bars: tuple[Stretch, ...]
    """Of the layer in hand."""


@dataclass(frozen=True)
class Scene:
    """All that one picture of the week is made of."""

    draft: HoursDraft
    layer: Layer
    rows: Sequence[Row]
    axis: Axis
    at: tuple[int, int] | None
    """Row and bar that have the keyboard."""
    focused: bool
    ratio: float


def paint_week(painter: QPainter, scene: Scene, look: Theme, size: tuple[float, float]) -> None:
    """Draw everything, the header first."""
    painter.fillRect(QRectF(0, 0, *size), look.colours.ground)
    for row in scene.rows:
        _paint_ground(painter, scene, row, look)
    _paint_hours(painter, scene, look)
    for row in scene.rows:
        _paint_bars(painter, scene, row, look)
    if scene.focused:
        _paint_focus(painter, scene, look)


def _paint_ground(painter: QPainter, scene: Scene, row: Row, look: Theme) -> None:
    axis, colours = scene.axis, look.colours
    painter.fillRect(QRectF(axis.left, row.top, axis.width, row.high), colours.panel)
    for start, end in scene.draft.quiet[row.weekday]:
        painter.fillRect(_place(axis, row, (start, end), 0), _night(look))
    if any(scene.draft.waking) is not (scene.layer is Layer.WAKING):
        # In hand it is shown where nothing is said; beside others where something is.
        painter.setPen(QPen(colours.good_ink, 2))
        for start, end in scene.draft.awake[row.weekday]:
            y = row.top + row.high - 1.5
            painter.drawLine(QPointF(axis.x(start), y), QPointF(axis.x(end), y))


def _paint_hours(painter: QPainter, scene: Scene, look: Theme) -> None:
    """Draw a line each third hour and name each sixth above."""
    if not scene.rows:
        return
    axis = scene.axis
    first, last = scene.rows[0], scene.rows[-1]
    painter.setFont(look.font("small"))
    metrics = painter.fontMetrics()
    for hour in range(0, 25, 3):
        x = round(axis.x(hour * 60)) + 0.5
        painter.setPen(QPen(look.colours.line, 1))
        painter.drawLine(QPointF(x, first.top), QPointF(x, last.top + last.high))
        if hour in HOUR_LABELS:
            text = f"{hour:02d}:00"
            wide = metrics.horizontalAdvance(text)
            left = min(max(x - wide / 2, 0), axis.left + axis.width - wide + axis.left)
            painter.setPen(look.colours.soft)
            painter.drawText(QPointF(left, first.top - metrics.descent() - 3), text)


def _paint_bars(painter: QPainter, scene: Scene, row: Row, look: Theme) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if scene.layer is not Layer.WORKING:
        kind = look.kind(StepKind.SOAK)
        painter.setBrush(kind.tint)
        painter.setPen(QPen(kind.edge, 1))
        for bar in scene.draft.working[row.weekday]:
            painter.drawRoundedRect(_place(scene.axis, row, bar, row.high * 0.3), _ROUND, _ROUND)
    fill, edge, ink = _dress(scene.layer, look)
    painter.setFont(look.font("small", bold=True))
    for bar in row.bars:
        place = _place(scene.axis, row, bar, row.high * 0.14)
        painter.setPen(QPen(edge, 1.4))
        painter.setBrush(_cloth(fill.rgba(), scene.ratio))
        painter.drawRoundedRect(place, _ROUND, _ROUND)
        _paint_length(painter, bar, place, fill, ink)


def _paint_length(
    painter: QPainter, bar: Stretch, place: QRectF, fill: QColor, ink: QColor
) -> None:
    """Write into a bar how long it is, where there is room; on plain cloth, to be read."""
    hours, minutes = divmod(bar[1] - bar[0], 60)
    text = f"{hours}:{minutes:02d} h" if minutes else f"{hours} h"
    metrics = painter.fontMetrics()
    wide, high = metrics.horizontalAdvance(text) + 8, metrics.height()
    if wide + 12 > place.width() or high > place.height():
        return
    label = QRectF(0, 0, wide, high)
    label.moveCenter(place.center())
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(fill)
    painter.drawRoundedRect(label, 3, 3)
    painter.setPen(ink)
    painter.drawText(label, Qt.AlignmentFlag.AlignCenter, text)


def _paint_focus(painter: QPainter, scene: Scene, look: Theme) -> None:
    if scene.at is None or scene.at[0] >= len(scene.rows):
        return
    row = scene.rows[scene.at[0]]
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(look.colours.focus, 2))
    if 0 <= scene.at[1] < len(row.bars):
        ring = _place(scene.axis, row, row.bars[scene.at[1]], row.high * 0.06)
        painter.drawRoundedRect(ring.adjusted(-2, 0, 2, 0), _ROUND + 1, _ROUND + 1)
    else:
        whole = QRectF(scene.axis.left, row.top, scene.axis.width, row.high)
        painter.drawRect(whole.adjusted(1, 1, -1, -1))


def _place(axis: Axis, row: Row, bar: Stretch, inset: float) -> QRectF:
    left, right = axis.x(bar[0]), axis.x(bar[1])
    return QRectF(left, row.top + inset, right - left, row.high - 2 * inset)


def _night(look: Theme) -> QColor:
    """Give the ground of the night: a little deeper than the sheet's, for rows stand apart."""
    night = QColor(look.colours.outline)
    night.setAlphaF(0.34)
    return night


def _dress(layer: Layer, look: Theme) -> tuple[QColor, QColor, QColor]:
    """Give the dye of a layer's cloth, its edge, and the ink on it."""
    if layer is Layer.QUIET:
        kind = look.kind(StepKind.SPIN)
    else:
        kind = look.kind(StepKind.SOAK if layer is Layer.WORKING else StepKind.CURE)
    return kind.fill, kind.edge, kind.on_fill


@lru_cache(maxsize=32)
def _cloth(fill: int, ratio: float) -> QBrush:
    """Make a plain weave: threads a little lighter over those of the dye."""
    side = round(_THREAD * ratio)
    tile = QPixmap(side, side)
    tile.fill(QColor.fromRgba(fill))
    painter = QPainter(tile)
    thread = QColor(255, 255, 255, 40)
    half = side / 2
    painter.fillRect(QRectF(0, 0, half, half), thread)
    painter.fillRect(QRectF(half, half, half, half), thread)
    painter.end()
    brush = QBrush(tile)
    brush.setTransform(QTransform.fromScale(1 / ratio, 1 / ratio))
    return brush
