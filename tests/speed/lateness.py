"""How late reminders are raised: a real studio, its real alarm, the real clock.

Each reminder that rings is put off by a few seconds at once, so that it rings again; its
lateness is from the moment it was put off to until the notice is asked to show it. For each
moment a bare APScheduler date job is set to the same moment, in the same process.
"""

import argparse
import random
import sys
import threading
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from time import monotonic

sys.path.insert(0, str(Path(__file__).parents[2]))

from apscheduler.schedulers.background import BackgroundScheduler

from studio_log.domain.journal import Act
from studio_log.outside.alarm import SchedulerAlarm
from studio_log.services.clock import SystemClock
from studio_log.services.commands import AnswerReminder, ChangeSettings, Mark, NewLot
from studio_log.services.ports import NoticeText
from studio_log.services.studio import Studio
from studio_log.services.worker import ThreadWorker
from studio_log.store.values import RAISED
from tests.speed.report import verdict
from tests.support.builders import LONG, shipped_texts
from tests.support.fixtures import PIECES
from tests.support.hand_clock import ListedNotice

COUNT, LOTS, BAR_S, NEVER_S = 1000, 12, 1.0, 2.0
SHORTEST_S, LONGEST_S = 2.0, 6.0


class Rings:
    """Puts off whatever rings, and notes how late it came."""

    def __init__(self, folder: Path, count: int) -> None:
        self.clock = SystemClock("Europe/London")
        self.studio = Studio(folder, self.clock, shipped_texts(), {})
        self.worker = ThreadWorker()
        self.bare = BackgroundScheduler(timezone=UTC, job_defaults={"misfire_grace_time": None})
        self.alarm = SchedulerAlarm(self._ring, self.clock)
        self.count, self.enough = count, threading.Event()
        self.wanted: dict[str, datetime] = {}
        self.late: list[float] = []
        self.bare_late: list[float] = []
        self._chance = random.Random(3)
        self.studio.notice = ListedNotice(before=self._note)

    def _note(self, text: NoticeText) -> None:
        """Note how late it is when the desktop is asked to show it."""
        now = self.clock.now()
        for key in text.keys:
            at = self.wanted.pop(key, None)
            if at is not None:
                self.late.append((now - at).total_seconds())

    def end(self) -> None:
        """Stop everything, in order."""
        self.alarm.close()
        self.worker.close()
        self.studio.close()
        self.bare.shutdown()

    def begin(self) -> None:
        """Begin soaks of beans that may end by now, and ring."""
        self.bare.start()
        night = {"quiet_start": "00:00", "quiet_end": "00:00"}
        self.studio.do(ChangeSettings(night))
        for _ in range(LOTS):
            code = self.studio.do(NewLot(LONG, "runners", PIECES)).code
            begun = self.clock.now() - timedelta(hours=11)
            self.studio.do(Mark(code, "1", Act.START, begun, sure=True))
        self.studio.alarm = self.alarm
        self._ring()

    def _ring(self) -> None:
        self.worker.submit(self._ring_and_put_off).add_done_callback(_loud)

    def _ring_and_put_off(self) -> None:
        self.studio.raise_due()
        with self.studio.store.reading() as look:
            raised = [one.key for one in look.reminders.open() if one.status == RAISED]
        for key in raised:
            if len(self.late) >= self.count:
                self.enough.set()
                return
            self._put_off(key)

    def _put_off(self, key: str) -> None:
        span = timedelta(seconds=self._chance.uniform(SHORTEST_S, LONGEST_S))
        self.studio.do(AnswerReminder(key, "putoff", put_off=span, sure=True))
        with self.studio.store.reading() as look:
            kept = look.reminders.get(key)
        if kept is not None and kept.rings_at > self.clock.now():
            self.wanted[key] = kept.rings_at
            self.bare.add_job(self._bare, "date", run_date=kept.rings_at, args=[kept.rings_at])

    def _bare(self, at: datetime) -> None:
        self.bare_late.append((self.clock.now() - at).total_seconds())


def _loud(done: object) -> None:
    error = done.exception()  # type: ignore[attr-defined]
    if error is not None:
        raise error


def share(late: Sequence[float], of: float) -> float:
    """Give how late all but a share of them were at most."""
    ordered = sorted(late)
    return ordered[min(int(len(ordered) * of), len(ordered) - 1)]


def main(argv: list[str] | None = None) -> list[str]:
    """Measure; gives the lines that were printed."""
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--seconds", type=float, default=1200.0, help="stop after so long")
    words.add_argument("--count", type=int, default=COUNT)
    options = words.parse_args(argv)
    begun = monotonic()
    with TemporaryDirectory(prefix="studio-log-speed-") as home:
        rings = Rings(Path(home) / "studio", options.count)
        try:
            rings.begin()
            rings.enough.wait(options.seconds)
        finally:
            rings.end()
    late, bare = rings.late, rings.bare_late
    if not late or not bare:
        raise RuntimeError("nothing rang")
    told = f"{len(late)} rings in {monotonic() - begun:.0f} s; "
    told += f"bare date job {share(bare, 0.999):.3f} s"
    what = "late, 999 of 1,000 at most"
    lines = [verdict(what, share(late, 0.999), BAR_S, "s", told)]
    told = f"bare date job {max(bare):.3f} s; in the middle {share(late, 0.5):.3f} against "
    told += f"{share(bare, 0.5):.3f} s"
    return [*lines, verdict("late, the latest", max(late), NEVER_S, "s", told)]


if __name__ == "__main__":
    main()
