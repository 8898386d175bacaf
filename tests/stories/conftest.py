"""A person at the window: a real studio in a fresh folder, a hand-moved clock, written answers."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from studio_log.app.compose import open_studio
from studio_log.app.errand import StepClock
from studio_log.services.ports import NoticeText
from studio_log.services.worker import InlineWorker
from studio_log.ui.ask import SplitChoice
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.main_window import MainWindow
from tests.support.hand_clock import ListedNotice


class WrittenAnswers:
    """Answers the window's few boxes from what the test wrote down."""

    def __init__(self) -> None:
        self.split_choice: SplitChoice | None = None
        self.method_slug: str | None = None
        self.told: list[str] = []

    def split(self, *_args: Any) -> SplitChoice | None:
        return self.split_choice

    def method(self, *_args: Any) -> str | None:
        return self.method_slug

    def reason(self, *_args: Any) -> str | None:
        return "not needed"

    def moment(self, *_args: Any) -> None:
        return None

    def lot_change(self, *_args: Any) -> None:
        return None

    def tell(self, _parent: Any, title: str, _words: str) -> None:
        self.told.append(title)

    def closing(self, *_args: Any) -> str:
        return "keep"


class Person:
    """Drives the window as a person would, and moves the clock."""

    def __init__(self, qtbot: QtBot, folder: Path) -> None:
        self.qtbot = qtbot
        self.folder = folder
        self.clock = StepClock(datetime(2026, 6, 9, 8, 0, tzinfo=UTC), "Europe/London")
        self.answers = WrittenAnswers()
        self.notices = ListedNotice()
        self.open()

    def open(self) -> None:
        """Start the program."""
        self.studio = open_studio(self.folder, clock=self.clock)
        self.studio.notice = self.notices
        self.bridge = Bridge(InlineWorker(), self.studio, self.clock)
        self.studio.listeners.append(self._listen)
        self.window = MainWindow(self.bridge, ask=self.answers)  # type: ignore[arg-type]
        self.qtbot.addWidget(self.window)
        self.window.resize(1440, 900)
        self.window.start()
        self.window.show()
        self.settle()

    def _listen(self, news: object) -> None:
        if isinstance(news, NoticeText):
            self.bridge.tell_raised(news)

    def close(self) -> None:
        """End the program."""
        self.bridge.close()
        self.window.quit()
        self.studio.close()

    def settle(self) -> None:
        """Let everything that is on its way arrive."""
        for _ in range(8):
            self.qtbot.wait_for_idle() if hasattr(self.qtbot, "wait_for_idle") else None
            from PySide6.QtWidgets import QApplication

            QApplication.processEvents()
            QApplication.sendPostedEvents()

    def ring(self) -> None:
        """Let the alarm go off at its next moment."""
        at = self.studio.next_ring()
        assert at is not None, "nothing is ahead"
        self.move_to(at)

    def move_to(self, at: datetime) -> None:
        """Put the clock forward and let due reminders ring."""
        self.clock.jump(at)
        if self.studio.raise_due().reminders:
            self.bridge.tell_changed(FOREIGN)
        self.settle()

    def move(self, **span: float) -> None:
        self.move_to(self.clock.now() + timedelta(**span))


@pytest.fixture
def person(qtbot: QtBot, tmp_path: Path) -> Iterator[Person]:
    made = Person(qtbot, tmp_path / "studio")
    yield made
    made.close()
