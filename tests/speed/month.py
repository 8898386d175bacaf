"""Whether a month of use makes the program larger: memory after each simulated day.

A real studio, its worker, its bridge and its window (off-screen), with a clock moved by hand
from ring to ring: every reminder is raised and answered, the window follows each of them, and
a lot that has come to its cure makes way for a new one. The baseline is the memory of the same
process after the first simulated day; the last five days are taken by their median, since the C
library now and then keeps a few freed megabytes over a day's end.
"""

import argparse
import gc
import os
import subprocess
import sys
import threading
from collections import Counter
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import Any

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).parents[2]))

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication
from typing_extensions import override

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import AnswerReminder, ChangeSettings, Mark, NewLot, Outcome
from studio_log.services.ports import Delivery, NoticeText
from studio_log.services.worker import ThreadWorker
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.main_window import MainWindow
from studio_log.ui.theme import apply_theme
from tests.speed.report import resident_kib, verdict
from tests.support.builders import LONG, NINE
from tests.support.fixtures import PIECES, Workshop, open_workshop
from tests.support.hand_clock import HandClock, ListedNotice
from tests.ui.window_kit import HandTray, WrittenAsk

DAYS, LOTS, BAR_PERCENT = 30, 60, 2.0
LASTS = timedelta(days=10)
"""From a lot's beginning until it is sold and another takes its place."""
TOGETHER = timedelta(minutes=15)
"""The dyer comes by so long after a ring, and answers what has rung since as well."""


class CountedNotice(ListedNotice):
    """Counts what rings and keeps none of it."""

    count = 0

    @override
    def show(self, text: NoticeText) -> Sequence[Delivery]:
        self.count += len(text.keys)
        return (Delivery("count", ok=True, words="counted"),)

    @override
    def revise(self, keys: tuple[str, ...], text: NoticeText | None) -> None:
        """Nothing stands on a screen."""


class LastAlarm:
    """Keeps the last moment it was set to."""

    def __init__(self) -> None:
        self.at: datetime | None = None

    def set(self, at: datetime | None) -> None:
        self.at = at

    def close(self) -> None:
        self.at = None


class Month:
    """A dyer who answers whatever rings, before the window."""

    def __init__(self, shop: Workshop) -> None:
        self.shop = shop
        self.notice, self.alarm = CountedNotice(), LastAlarm()
        shop.studio.notice, shop.studio.alarm = self.notice, self.alarm  # type: ignore[assignment]
        self.worker = ThreadWorker()
        self.bridge = Bridge(self.worker, shop.studio, shop.clock)
        shop.studio.listeners.append(self._listen)
        self.window: MainWindow | None = None
        self.answered = self.refused = self.turns = 0
        self.changed = False

    def _listen(self, news: object) -> None:
        if isinstance(news, NoticeText):
            self.bridge.tell_raised(news)
        elif isinstance(news, Outcome):
            self.changed = True

    def settle(self) -> None:
        """Let the window follow a change, and everything that was asked come home."""
        if self.window is None:
            return
        if self.changed:
            self.changed = False
            self.bridge.tell_changed(FOREIGN)
        for _ in range(3):
            self.worker.submit(int).result()
            QApplication.processEvents()
            QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    def prepare(self, lots: int) -> None:
        """Begin the lots one after the other, so that there are lots of every age."""
        values = {"studio": "Harbour Lane Cloth Studio", "welcomed": True, "chime": False,
                  "look_ahead": "", "evening_look": ""}  # fmt: skip
        self.run(self.shop.studio.do, ChangeSettings(values))
        for _ in range(lots):
            self._new()
            self.pass_time(self.shop.clock.at + LASTS / lots)

    def open_window(self) -> None:
        """Open the window on the studio; it follows from now on."""
        tray = HandTray(available=True)
        self.window = MainWindow(self.bridge, ask=WrittenAsk(), tray=tray)  # type: ignore[arg-type]
        self.window.chime.on = False
        self.window.resize(1440, 900)
        self.window.show()
        self.window.start()
        self.run(self.shop.studio.set_alarm)
        self.settle()

    def run(self, act: "Callable[..., Any]", *args: object) -> Any:
        """Have something done on the studio's thread."""
        return self.worker.submit(act, *args).result()

    def _new(self) -> None:
        made = self.run(self.shop.studio.do, NewLot(LONG, "runners", PIECES))
        self.run(self.shop.studio.do, Mark(made.code, "1", Act.START, sure=True))

    def pass_time(self, until: datetime) -> None:
        """Go from ring to ring up to a moment."""
        while (at := self.alarm.at) is not None and at <= until:
            self.shop.clock.set(min(max(at, self.shop.clock.at) + TOGETHER, until))
            self.run(self.shop.studio.raise_due)
            self.answer()
            self.turns += 1
            if self.turns % 4 == 0 and self.window is not None:
                self.window.minute.strike()
                self.settle()
        self.shop.clock.set(until)
        self.renew()

    def answer(self) -> None:
        """Answer everything that has rung, as it stands on the bench."""
        for key in self.run(self._raised):
            self._answer(key)
        self.settle()

    def _raised(self) -> list[str]:
        with self.shop.studio.store.reading() as look:
            return [one.key for one in look.reminders.raised()]

    def _answer(self, key: str) -> None:
        for command in (
            AnswerReminder(key, "done", sure=True),
            AnswerReminder(key, "putoff", put_off=timedelta(hours=6), sure=True),
        ):
            error = self.worker.submit(self.shop.studio.do, command).exception()
            if error is None:
                self.answered += 1
                return
            if not isinstance(error, (Refusal, Question)):
                raise error
        self.refused += 1

    def renew(self) -> None:
        """Let lots that have been sold make way for new ones."""
        for code, step in self.run(self._sold):
            stop = Mark(code, step, Act.STOP, note="sold", sure=True)
            self.run(self.shop.studio.do, stop)
            self._new()
        self.settle()

    def _sold(self) -> list[tuple[str, str]]:
        """Give the lots that have rested long enough, each with its open step."""
        with self.shop.studio.store.reading() as look:
            desk = self.shop.studio.desk(look)
            lots = [desk.lot(code) for code in look.lots.live_codes()]
        old = [one for one in lots if one.begun is not None and one.begun <= desk.now - LASTS]
        return [(one.code, str(one.open_steps()[-1].number)) for one in old if one.open_steps()]

    def end(self) -> None:
        """Close in order."""
        if self.window is not None:
            self.window.minute.stop()
            self.window.end_session()
            self.window.close()
        self.bridge.close()
        self.worker.close()
        self.shop.studio.close()


def memory() -> int:
    """Give the KiB held once all that can be let go is let go."""
    for _ in range(3):
        gc.collect()
    return resident_kib()


def census() -> Counter[str]:
    """Count what is alive, by the name of its class: where growth is to be looked for."""
    return Counter(type(one).__name__ for one in gc.get_objects())


def main(argv: list[str] | None = None) -> list[str]:
    """Measure; gives the lines that were printed."""
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--seconds", type=float, default=1e9, help="stop after so long")
    words.add_argument("--days", type=int, default=DAYS)
    words.add_argument("--lots", type=int, default=LOTS)
    words.add_argument("--prepare", type=Path, help=argparse.SUPPRESS)
    words.add_argument("--census", action="store_true", help="name what has grown")
    options = words.parse_args(argv)
    app = QApplication.instance() or QApplication([])
    apply_theme(app, "light", 100, family="DejaVu Sans")  # type: ignore[arg-type]
    if options.prepare is not None:
        month = Month(open_workshop(options.prepare, HandClock(NINE)))
        month.prepare(options.lots)
        month.end()
        return []
    with TemporaryDirectory(prefix="studio-log-speed-") as home:
        folder = Path(home) / "studio"
        # In a process of its own: what it needed is no part of the measured one.
        command = [sys.executable, __file__, "--prepare", str(folder), "--lots", str(options.lots)]
        subprocess.run(command, check=True)
        month = Month(open_workshop(folder, HandClock(NINE + LASTS)))
        try:
            return _days(month, options)
        finally:
            month.end()


def _days(month: Month, options: argparse.Namespace) -> list[str]:
    month.open_window()
    begun, rung = perf_counter(), month.notice.count
    start = month.shop.clock.now()
    held: list[int] = []
    alive = census()
    for day in range(1, options.days + 1):
        month.pass_time(start + timedelta(days=day))
        held.append(memory())
        if day == 1:
            alive = census()
        told = f"{month.notice.count} rung, {month.answered} answered, {month.refused} refused"
        widgets = len(QApplication.allWidgets())
        print(
            f"day {day}: {held[-1]} KiB, {widgets} widgets, {threading.active_count()} threads, "
            f"{len(month.shop.studio.cache)} lots in the cache, {told}, "
            f"{perf_counter() - begun:.0f} s",
            flush=True,
        )
        if perf_counter() - begun > options.seconds:
            break
    if options.census:
        grown = census() - alive
        print("grown:", ", ".join(f"{name} {count}" for name, count in grown.most_common(25)))
    last = median(held[-5:])
    growth = (last - held[0]) * 100 / held[0]
    against = f"{held[0]} KiB after the first day, {last:.0f} in the last five, {max(held)} at most"
    what = f"growth in {len(held)} days of {month.notice.count - rung} reminders"
    return [verdict(what, growth, BAR_PERCENT, "%", against)]


if __name__ == "__main__":
    main()
