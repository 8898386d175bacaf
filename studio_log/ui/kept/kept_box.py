"""A window about things with a journal each: one is chosen, acted on, and taken back."""

from collections.abc import Iterable
from functools import partial
from typing import Any, Final, Generic, Protocol, TypeVar

from PySide6.QtCore import QSize, Qt, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QDialog, QLayout, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.commands import Command, Outcome, Redo, Undo
from studio_log.services.questions import LotLines, LotLinesFor
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em

MARGIN: Final = QSize(60, 80)
"""Pixels of the screen that a window leaves free at first."""


class Page(Protocol):
    """One thing, whole: its line, and the words of what can be taken back or restored."""

    @property
    def line(self) -> Any: ...
    @property
    def undo(self) -> str: ...
    @property
    def redo(self) -> str: ...


PageT = TypeVar("PageT", bound=Page)


class KeptBox(QDialog, Generic[PageT]):
    """Shows what the studio answers; what a window shows of it is its own."""

    title: str
    """Of the window, in English."""
    lots: str = "live"
    """Which lots its forms offer by their names."""

    def __init__(self, bridge: Bridge, parent: QWidget | None, code: str) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr(self.title))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge, self._wanted = bridge, code
        self._names: dict[str, str] = {}
        self.page: PageT | None = None
        self.dialog: QDialog | None = None
        self.said = Words(tone="soft")
        self.message = MessageBar(bridge)
        self.undo, self.redo = button(tr("&Undo")), button(tr("Red&o"))
        self.leave = button(tr("C&lose"))
        self.undo.clicked.connect(partial(self._back, Undo))
        self.redo.clicked.connect(partial(self._back, Redo))
        self.leave.clicked.connect(self.reject)
        bridge.changed.connect(self.on_changed)

    @property
    def code(self) -> str:
        """Code of the chosen one, "" for none."""
        raise NotImplementedError

    def choose(self, code: str) -> None:
        """Choose one; a window that is not shown yet does it when it is."""
        self._wanted = code
        if self.isVisible():
            self.refresh()

    @Slot()
    def refresh(self) -> None:
        """Ask for the list, and through it for the chosen one."""
        raise NotImplementedError

    def on_changed(self, outcome: Outcome) -> None:
        """Ask anew where what is shown was touched, here or by another program."""
        raise NotImplementedError

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()
        self._bridge.ask(LotLinesFor(self.lots), self._learn_names)

    def lay_out(self, parts: Iterable[QLayout], size: QSize) -> None:
        """Set parts above message and buttons, the last gets the room; `size` is in em."""
        foot = FlowLayout(gap=10)
        for widget in (growing(self.said), self.undo, self.redo, self.leave):
            foot.addWidget(widget)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 12, 16, 12)
        for part in parts:
            whole.addLayout(part)
        whole.setStretch(whole.count() - 1, 1)
        whole.addWidget(self.message)
        whole.addLayout(foot)
        room = self.screen().availableGeometry().size() - MARGIN
        self.resize(QSize(em(self, size.width()), em(self, size.height())).boundedTo(room))

    def _learn_names(self, lines: LotLines) -> None:
        self._names = {one.code: one.name for one in lines.lines}

    def _open(self, box: QDialog) -> None:
        self.dialog = box
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.finished.connect(self._closed)
        box.open()

    @Slot()
    def _closed(self) -> None:
        self.dialog = None

    def _offer_back(self) -> None:
        """Offer what the chosen one's journal can take back."""
        page = self.page
        self.undo.setEnabled(bool(page and page.undo))
        self.redo.setEnabled(bool(page and page.redo))
        self.undo.setToolTip(tr("Take back: {words}", words=page.undo) if page else "")
        self.redo.setToolTip(tr("Restore: {words}", words=page.redo) if page and page.redo else "")

    def _do(self, command: Command) -> None:
        self.message.put_away()
        self._bridge.do(
            command, self._done, failed=self.message.refuse, asked=self.message.question
        )

    def _done(self, outcome: Outcome) -> None:
        self.said.setText(" ".join((outcome.words, *outcome.advice)))
        if outcome.code:
            self._wanted = outcome.code

    def _back(self, make: type[Undo] | type[Redo]) -> None:
        if self.page is not None:
            self._do(make(self.page.line.code))
