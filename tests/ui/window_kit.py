"""What the window's tests share: a written asker, and a bridge over the fake studio."""

from dataclasses import dataclass, field
from typing import Any

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from studio_log.services.questions import Bench
from studio_log.services.worker import InlineWorker
from studio_log.ui.ask import Dialogs
from studio_log.ui.bridge import Bridge
from tests.ui.fake_studio import FakeStudio, HandClock


@dataclass
class WrittenAsk:
    """Gives the answers written down for it, by the name of the question."""

    answers: dict[str, Any] = field(default_factory=dict)
    heard: list[tuple[str, tuple[Any, ...]]] = field(default_factory=list)

    def __getattr__(self, name: str) -> Any:
        if not hasattr(Dialogs, name):
            raise AttributeError(name)

        def answer(*args: Any) -> Any:
            self.heard.append((name, args[1:]))
            return self.answers.get(name)

        return answer


class HandTray(QObject):
    """A tray that is there or not, as the test says."""

    open_wanted = Signal()
    quit_wanted = Signal()

    def __init__(self, *, available: bool) -> None:
        super().__init__()
        self.available = available
        self.bench: Bench | None = None

    def show(self) -> None:
        """Nothing to show."""

    def hide(self) -> None:
        """Nothing to hide."""

    def show_bench(self, bench: Bench) -> None:
        """Note what is next."""
        self.bench = bench


def bridge_over(studio: FakeStudio, clock: HandClock | None = None) -> Bridge:
    """Give a bridge whose worker runs at once."""
    return Bridge(InlineWorker(), studio, clock or HandClock())


def settle() -> None:
    """Let everything that is queued come home."""
    for _ in range(8):
        QApplication.processEvents()
        # What was left to be deleted waits for a loop that tests do not run.
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def press(qtbot: QtBot, button: QWidget) -> None:
    """Click a button, and let what follows happen."""
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    settle()


def text(words: QLabel) -> str:
    """Give what a label says, without the marks at which it may be broken."""
    return words.text().replace("\u200b", "")
