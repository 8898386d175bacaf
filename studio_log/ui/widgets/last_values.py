"""The last values of a line: Down, or the mark at its end, offers what was typed there before."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, QPoint, QSize, Qt
from PySide6.QtGui import QAction, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QMenu
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.ui.theme.icons import icon
from studio_log.ui.theme.look import theme
from studio_log.ui.typed import typed

MARK: Final = "chevron-down"
GAP: Final = 4
"""Pixels between the mark and the edge of its line."""


class _Mark(QAbstractButton):
    """The mark at the end of a line; the keyboard has Down instead."""

    def __init__(self, line: QLineEdit) -> None:
        super().__init__(line)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        self.setToolTip(tr("Typed here before (Down)"))
        self.setAccessibleName(tr("Typed here before (Down)"))
        self.hide()

    @override
    def sizeHint(self) -> QSize:
        side = round(theme().metrics.line)
        return QSize(side + 2 * GAP, side)

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        side, ink = round(theme().metrics.line * 0.9), theme().colours.soft
        painter = QPainter(self)
        icon(MARK, ink, ink, side=side).paint(painter, self.rect())
        painter.end()


class LastValues(QObject):
    """Belongs to a line; without a slug it offers nothing."""

    def __init__(self, line: QLineEdit, slug: str) -> None:
        super().__init__(line)
        self._line = line
        self._slug = slug
        self.menu = QMenu(line)
        self.mark = _Mark(line)
        if slug:
            self.mark.clicked.connect(self.offer)
            line.installEventFilter(self)
            self.refresh()

    @property
    def values(self) -> tuple[str, ...]:
        """What is offered, the latest first."""
        return typed().last(self._slug) if self._slug else ()

    def remember(self) -> None:
        """Keep what stands in the line."""
        if self._slug:
            typed().note(self._slug, self._line.text())
            self.refresh()

    def refresh(self) -> None:
        """Show the mark where there is something to offer, and keep the text clear of it."""
        there = bool(self.values)
        wanted = self.mark.sizeHint()
        self.mark.setVisible(there)
        self.mark.setGeometry(
            self._line.width() - wanted.width() - GAP,
            (self._line.height() - wanted.height()) // 2,
            wanted.width(),
            wanted.height(),
        )
        self._line.setTextMargins(0, 0, wanted.width() if there else 0, 0)

    def offer(self) -> None:
        """Open the list of what was typed before, under the line."""
        self.menu.clear()
        for text in self.values:
            act = self.menu.addAction(text.replace("&", "&&"))
            act.setData(text)
            act.triggered.connect(self._take)
        if not self.menu.isEmpty():
            self.menu.setActiveAction(self.menu.actions()[0])
            self.menu.setMinimumWidth(self._line.width())
            self.menu.popup(self._line.mapToGlobal(QPoint(0, self._line.height())))

    @override
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.Resize, QEvent.Type.FocusIn, QEvent.Type.Show):
            self.refresh()
        elif (
            isinstance(event, QKeyEvent)
            and event.type() is QEvent.Type.KeyPress
            and event.key() == Qt.Key.Key_Down
            and self.values
        ):
            self.offer()
            return True
        return super().eventFilter(watched, event)

    def _take(self) -> None:
        act = self.sender()
        if isinstance(act, QAction):
            self._line.setText(str(act.data()))
        self._line.setFocus(Qt.FocusReason.OtherFocusReason)
