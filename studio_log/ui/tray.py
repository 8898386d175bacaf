"""The tray icon: open, what is next, quit; only where the desktop has a tray."""

from functools import partial

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QSystemTrayIcon

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Hush
from studio_log.services.ports import NoticeText
from studio_log.services.questions import Bench
from studio_log.ui.hushes import HUSHES
from studio_log.ui.theme.icons import program_icon

NOTHING_NEXT = tr_later("Next: nothing")
LONGEST = 80
SHOWN_MS = 10_000


def next_words(bench: Bench) -> str:
    """Say what is next in one short line."""
    cards = (*bench.now, *bench.coming)
    if not cards:
        return tr(NOTHING_NEXT)
    first = cards[0]
    named = first.title if first.lot in first.title else f"{first.lot} {first.title}"
    words = (
        tr("Next: {named} · {due_words}", named=named, due_words=first.due_words)
        if first.due_words
        else tr("Next: {named}", named=named)
    )
    return words if len(words) <= LONGEST else f"{words[: LONGEST - 1]}…"


class Tray(QObject):
    """Keeps Studio Log within reach while its window is closed."""

    open_wanted = Signal()
    quit_wanted = Signal()
    hush_wanted = Signal(object)
    """A Hush: for how long nothing is to disturb."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._icon = QSystemTrayIcon(program_icon(), self)
        self._menu = QMenu()
        self._menu.addAction(tr("&Open")).triggered.connect(self.open_wanted)
        self.next = QAction(tr(NOTHING_NEXT), self)
        self.next.triggered.connect(self.open_wanted)
        self._menu.addAction(self.next)
        self._menu.addSeparator()
        for one in HUSHES:
            self._menu.addAction(tr(one.text)).triggered.connect(partial(self._hush, one.command))
        self._menu.addSeparator()
        self._menu.addAction(tr("&Quit")).triggered.connect(self.quit_wanted)
        self._icon.setContextMenu(self._menu)
        self._icon.setToolTip(tr("Studio Log"))
        self._icon.activated.connect(self._activated)

    @property
    def available(self) -> bool:
        """Whether the desktop has a tray just now."""
        return QSystemTrayIcon.isSystemTrayAvailable()

    def show(self) -> None:
        """Show the icon where there is a tray."""
        if self.available:
            self._icon.show()

    def hide(self) -> None:
        """Take the icon away."""
        self._icon.hide()

    def tell(self, notice: NoticeText) -> bool:
        """Show a reminder by the tray; False where there is none. Nobody tells if it is seen."""
        if not (self.available and self._icon.isVisible()):
            return False
        self._icon.showMessage(notice.title, notice.body, program_icon(), SHOWN_MS)
        return True

    def _hush(self, command: Hush) -> None:
        self.hush_wanted.emit(command)

    def show_bench(self, bench: Bench) -> None:
        """Say what is next."""
        self.next.setText(next_words(bench).replace("&", "&&"))
        self._icon.setToolTip(tr("Studio Log\n{next_words}", next_words=next_words(bench)))

    def _activated(self, reason: QSystemTrayIcon.ActivationReason) -> None:
        if reason is QSystemTrayIcon.ActivationReason.Trigger:
            self.open_wanted.emit()
