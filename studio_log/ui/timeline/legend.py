"""The legend under the timeline: each hue with its shape and its word."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QBrush,
    QFontMetricsF,
    QLinearGradient,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget
from typing_extensions import override

from studio_log.domain.methods import StepKind
from studio_log.present.hues import KIND_WORDS
from studio_log.ui.theme import theme
from studio_log.ui.timeline.shapes import draw_kind, drop_path, plain_weave, twill

_SIGNS = (("dyed", "dyed: done"), ("soft", "may end here"), ("stitch", "tending"))


class Legend(QWidget):
    """Chips that wrap onto as many rows as the width asks for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kinds: tuple[StepKind, ...] = ()
        self._more: dict[str, str] = {}
        """Signs that are seen only at times, and their words."""
        self.setAccessibleName("Legend")
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_kinds(self, kinds: Sequence[StepKind]) -> None:
        """Show these kinds of step."""
        self._kinds = tuple(kinds)
        self.setAccessibleDescription(", ".join(KIND_WORDS[kind] for kind in kinds))
        self._fit()

    def show_clashes(self, shown: bool) -> None:  # noqa: FBT001 - follows a toggle
        """Tell what the crossed lattice is, while the lines are shown."""
        self._show_sign("meet", "lots meet", shown=shown)

    def show_ground(self, *, quiet: bool, closed: bool) -> None:
        """Tell what the ground shows: quiet hours, and hours in which the workshop is closed."""
        self._show_sign("quiet", "quiet hours", shown=quiet)
        self._show_sign("closed", "workshop closed", shown=closed)

    def _show_sign(self, sign: str, word: str, *, shown: bool) -> None:
        self._more.pop(sign, None)
        if shown:
            self._more[sign] = word
        self._fit()

    @override
    def hasHeightForWidth(self) -> bool:
        return True

    @override
    def heightForWidth(self, width: int) -> int:
        return round(self._rows(width) * self._line())

    @override
    def sizeHint(self) -> QSize:
        return QSize(320, self.heightForWidth(max(self.width(), 320)))

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for sign, word, place in self._placed(self.width()):
            self._draw(painter, sign, word, place)
        painter.end()

    def _fit(self) -> None:
        self.setFixedHeight(self.heightForWidth(max(self.width(), 1)))
        self.update()

    def _metrics(self) -> QFontMetricsF:
        return QFontMetricsF(theme().font("small"))

    def _line(self) -> float:
        return self._metrics().height() + theme().metrics.m

    def _rows(self, width: int) -> int:
        placed = self._placed(width)
        return 1 + round(placed[-1][2].top() / self._line()) if placed else 0

    def _placed(self, width: int) -> list[tuple[StepKind | str, str, QRectF]]:
        if not self._kinds:
            return []
        metrics, line, gap = self._metrics(), self._line(), theme().metrics.l
        wanted: list[tuple[StepKind | str, str]] = [(k, KIND_WORDS[k]) for k in self._kinds]
        wanted += [*_SIGNS, *self._more.items()]
        placed: list[tuple[StepKind | str, str, QRectF]] = []
        x = y = 0.0
        for sign, word in wanted:
            wide = line * 1.35 + metrics.horizontalAdvance(word)
            if x and x + wide > width:
                x, y = 0.0, y + line
            placed.append((sign, word, QRectF(x, y, wide, line)))
            x += wide + gap
        return placed

    def _draw(self, painter: QPainter, sign: StepKind | str, word: str, place: QRectF) -> None:
        side = place.height() - 6
        chip = QRectF(place.left(), place.top() + 3, side * 1.25, side)
        if isinstance(sign, StepKind):
            _draw_kind_chip(painter, sign, chip)
        elif sign == "meet":
            _draw_clash_chip(painter, chip)
        elif sign == "quiet":
            _draw_cloth_chip(painter, QBrush(theme().colours.night), chip)
        elif sign == "closed":
            weave = plain_weave(theme().colours.outline, self.devicePixelRatioF())
            _draw_cloth_chip(painter, weave, chip)
        elif sign == "stitch":
            _draw_stitch_chip(painter, chip)
        else:
            _draw_cloth_chip(painter, _half_dyed(chip) if sign == "dyed" else self._twill(), chip)
        painter.setFont(theme().font("small"))
        painter.setPen(theme().colours.soft)
        text = place.adjusted(place.height() * 1.3, 0, 0, 0)
        painter.drawText(text, Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine, word)

    def _twill(self) -> QBrush:
        colours = theme().colours
        return twill(colours.soft, colours.panel, self.devicePixelRatioF())


def _draw_kind_chip(painter: QPainter, kind: StepKind, chip: QRectF) -> None:
    hue, side = theme().kind(kind), chip.height()
    if kind is StepKind.DIP:
        painter.fillPath(drop_path(chip.center(), side * 0.6, side * 0.95), hue.edge)
        return
    painter.setPen(QPen(hue.edge, 1))
    painter.setBrush(hue.fill)
    painter.drawRoundedRect(chip.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
    inner = QRectF(0, 0, side - 6, side - 6)
    inner.moveCenter(chip.center())
    draw_kind(painter, kind, inner, hue.on_fill)


def _draw_stitch_chip(painter: QPainter, chip: QRectF) -> None:
    ink = theme().colours.ink
    painter.setPen(QPen(ink, 4, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
    painter.drawLine(chip.center() - QPointF(4, 0), chip.center() + QPointF(4, 0))


def _draw_clash_chip(painter: QPainter, chip: QRectF) -> None:
    danger = theme().colours.danger
    place = chip.adjusted(1, 1, -1, -1)
    painter.setPen(QPen(danger, 1.6))
    painter.setBrush(QBrush(danger, Qt.BrushStyle.DiagCrossPattern))
    painter.drawRect(place)
    painter.drawLine(place.topLeft(), place.bottomRight())
    painter.drawLine(place.topRight(), place.bottomLeft())


def _draw_cloth_chip(painter: QPainter, brush: QBrush, chip: QRectF) -> None:
    painter.setPen(QPen(theme().colours.soft, 1.2))
    painter.setBrush(brush)
    painter.drawRoundedRect(chip.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)


def _half_dyed(chip: QRectF) -> QBrush:
    colours = theme().colours
    half = QLinearGradient(chip.center().x() - 0.5, 0, chip.center().x() + 0.5, 0)
    half.setColorAt(0, colours.soft)
    half.setColorAt(1, colours.panel)
    return QBrush(half)
