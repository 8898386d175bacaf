"""The rows of the legend, in any theme: under the timeline, on a picture, on paper."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QFontMetricsF, QLinearGradient, QPainter, QPen

from studio_log.domain.methods import StepKind
from studio_log.language.words import tr, tr_later
from studio_log.present.hues import KIND_WORDS
from studio_log.ui.theme import Theme
from studio_log.ui.timeline.shapes import draw_kind, drop_path, plain_weave, twill

Sign = StepKind | str
SIGNS: Final = {
    "dyed": tr_later("dyed: done"),
    "soft": tr_later("may end here"),
    "stitch": "tending",
    "planned": tr_later("as planned"),
    "quiet": tr_later("quiet hours"),
    "closed": tr_later("workshop closed"),
    "meet": tr_later("lots meet"),
}
"""What is neither a kind of step nor written out, in the order of the legend."""


@dataclass(frozen=True)
class Chip:
    """One entry: its sign and its word, and where both lie."""

    sign: Sign
    word: str
    place: QRectF


class LegendRows:
    """Lays out and draws the entries on as many rows as a width asks for."""

    def __init__(self, signs: Sequence[Sign], look: Theme, ratio: float) -> None:
        self._signs, self._look, self._ratio = tuple(signs), look, ratio
        self._metrics = QFontMetricsF(look.font("small"))

    @property
    def line(self) -> float:
        """Height of a row."""
        return self._metrics.height() + self._look.metrics.m

    def placed(self, width: float) -> list[Chip]:
        """Place every entry."""
        line, gap, found = self.line, self._look.metrics.l, list[Chip]()
        x = y = 0.0
        for sign in self._signs:
            word = tr(KIND_WORDS[sign] if isinstance(sign, StepKind) else SIGNS[sign])
            wide = line * 1.35 + self._metrics.horizontalAdvance(word)
            if x and x + wide > width:
                x, y = 0.0, y + line
            found.append(Chip(sign, word, QRectF(x, y, wide, line)))
            x += wide + gap
        return found

    def height(self, width: float) -> float:
        """Give the height that a width leads to."""
        chips = self.placed(width)
        return chips[-1].place.bottom() if chips else 0.0

    def draw(self, painter: QPainter, width: float) -> None:
        """Draw from the painter's origin."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for one in self.placed(width):
            side = one.place.height() - 6
            chip = QRectF(one.place.left(), one.place.top() + 3, side * 1.25, side)
            if isinstance(one.sign, StepKind):
                self._draw_kind(painter, one.sign, chip)
            else:
                _DRAW[one.sign](self, painter, chip)
            painter.setFont(self._look.font("small"))
            painter.setPen(self._look.colours.soft)
            text = one.place.adjusted(one.place.height() * 1.3, 0, 20, 0)
            flags = Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine
            painter.drawText(text, flags, one.word)

    def _draw_kind(self, painter: QPainter, kind: StepKind, chip: QRectF) -> None:
        hue, side = self._look.kind(kind), chip.height()
        if kind is StepKind.DIP:
            painter.fillPath(drop_path(chip.center(), side * 0.6, side * 0.95), hue.edge)
            return
        painter.setPen(QPen(hue.edge, 1))
        painter.setBrush(hue.fill)
        painter.drawRoundedRect(chip.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
        inner = QRectF(0, 0, side - 6, side - 6)
        inner.moveCenter(chip.center())
        draw_kind(painter, kind, inner, hue.on_fill)

    def _cloth(self, painter: QPainter, chip: QRectF, brush: QBrush) -> None:
        painter.setPen(QPen(self._look.colours.soft, 1.2))
        painter.setBrush(brush)
        painter.drawRoundedRect(chip.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)

    def _dyed(self, painter: QPainter, chip: QRectF) -> None:
        colours = self._look.colours
        half = QLinearGradient(chip.center().x() - 0.5, 0, chip.center().x() + 0.5, 0)
        half.setColorAt(0, colours.soft)
        half.setColorAt(1, colours.panel)
        self._cloth(painter, chip, QBrush(half))

    def _soft(self, painter: QPainter, chip: QRectF) -> None:
        colours = self._look.colours
        self._cloth(painter, chip, twill(colours.soft, colours.panel, self._ratio))

    def _quiet(self, painter: QPainter, chip: QRectF) -> None:
        self._cloth(painter, chip, QBrush(self._look.colours.night))

    def _closed(self, painter: QPainter, chip: QRectF) -> None:
        self._cloth(painter, chip, plain_weave(self._look.colours.outline, self._ratio))

    def _stitch(self, painter: QPainter, chip: QRectF) -> None:
        ink = self._look.colours.ink
        painter.setPen(QPen(ink, 4, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
        painter.drawLine(chip.center() - QPointF(4, 0), chip.center() + QPointF(4, 0))

    def _planned(self, painter: QPainter, chip: QRectF) -> None:
        painter.setPen(QPen(self._look.colours.soft, 1.5))
        y = chip.center().y()
        painter.drawLine(QPointF(chip.left() + 1, y), QPointF(chip.right() - 1, y))
        for x in (chip.left() + 1, chip.right() - 1):
            painter.drawLine(QPointF(x, y - 3), QPointF(x, y + 3))

    def _clash(self, painter: QPainter, chip: QRectF) -> None:
        danger, place = self._look.colours.danger, chip.adjusted(1, 1, -1, -1)
        painter.setPen(QPen(danger, 1.6))
        painter.setBrush(QBrush(danger, Qt.BrushStyle.DiagCrossPattern))
        painter.drawRect(place)
        painter.drawLine(place.topLeft(), place.bottomRight())
        painter.drawLine(place.topRight(), place.bottomLeft())


_DRAW: Final[Mapping[str, Callable[[LegendRows, QPainter, QRectF], None]]] = {
    "dyed": LegendRows._dyed,  # noqa: SLF001 - the table is part of the class
    "soft": LegendRows._soft,  # noqa: SLF001
    "stitch": LegendRows._stitch,  # noqa: SLF001
    "planned": LegendRows._planned,  # noqa: SLF001
    "quiet": LegendRows._quiet,  # noqa: SLF001
    "closed": LegendRows._closed,  # noqa: SLF001
    "meet": LegendRows._clash,  # noqa: SLF001
}
