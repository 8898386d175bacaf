"""The legend under the timeline: each hue with its shape and its word."""

from collections.abc import Sequence

from PySide6.QtCore import QSize
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget
from typing_extensions import override

from studio_log.domain.methods import StepKind
from studio_log.language.words import tr
from studio_log.present.hues import KIND_WORDS
from studio_log.ui.theme import theme
from studio_log.ui.timeline.legend_rows import SIGNS, LegendRows, Sign


class Legend(QWidget):
    """Chips that wrap onto as many rows as the width asks for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._signs: tuple[Sign, ...] = ()
        self.setAccessibleName(tr("Legend"))
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_signs(self, signs: Sequence[Sign]) -> None:
        """Show these kinds of step and other signs."""
        self._signs = tuple(signs)
        words = (tr(KIND_WORDS[one] if isinstance(one, StepKind) else SIGNS[one]) for one in signs)
        self.setAccessibleDescription(", ".join(words))
        self._fit()

    def rows(self) -> LegendRows:
        """Give the entries as they are drawn now."""
        return LegendRows(self._signs, theme(), self.devicePixelRatioF())

    @override
    def hasHeightForWidth(self) -> bool:
        return True

    @override
    def heightForWidth(self, width: int) -> int:
        return round(self.rows().height(width))

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
        self.rows().draw(painter, self.width())
        painter.end()

    def _fit(self) -> None:
        self.setFixedHeight(self.heightForWidth(max(self.width(), 1)))
        self.update()
