"""The alarm clock: calls back at a moment, also after sleep and a clock that was set.

APScheduler waits out its time by a clock that stands still while the machine sleeps, so a
heartbeat looks whether the clocks have come apart: after sleep or a jump the alarm rings a
heartbeat late at most. A beat that finds nothing wakes no other thread.
"""

import logging
import threading
import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Final

from apscheduler.executors.pool import ThreadPoolExecutor
from apscheduler.schedulers.background import BackgroundScheduler

from studio_log.services.clock import SystemClock
from studio_log.services.ports import Clock

HEARTBEAT: Final = timedelta(seconds=33)
"""Leaves two of the 35 seconds within which waking is noticed, at 0.03 wake-ups a second."""
APART: Final = timedelta(seconds=2)
"""A clock that went so much faster or slower than time itself was set, or the machine slept."""
LEAST_GAP: Final = timedelta(milliseconds=100)
"""Between two rings of moments already past: whoever answers slowly is not called in a storm."""
LONGEST_WAIT: Final = timedelta(days=30)
"""A moment further off is looked at again on the way."""
NONE_YET: Final = timedelta(0)
_JOB: Final = "next"

_log = logging.getLogger(__name__)


class ClockJumps:
    """Sees a clock jump, measured by the one that stands still in sleep and cannot be set."""

    def __init__(self, clock: Clock, steady: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._steady = steady
        self._seen = clock.now(), steady()

    def jumped(self) -> bool:
        """Say whether it has jumped since the last look."""
        was, steady_was = self._seen
        now, steady = self._seen = self._clock.now(), self._steady()
        passed = self._clock.real(now - was)
        return abs(passed - timedelta(seconds=steady - steady_was)) > APART


class SchedulerAlarm:
    """Calls `ring` in a thread of its own once the clock reaches the moment set.

    It calls also where a clock jumped or the zone changed, for then anything may be due. `ring`
    only hands the work on. It is called again each `heartbeat` until the alarm is set
    anew, so that a call that came to nothing is not the last.
    """

    def __init__(
        self, ring: Callable[[], None], clock: Clock, *, heartbeat: timedelta = HEARTBEAT
    ) -> None:
        self._ring = ring
        self._clock = clock
        self._wall = SystemClock()
        # The scheduler goes by the system's clock, also where the studio's is a hurried one.
        self._jumps = ClockJumps(clock), ClockJumps(self._wall)
        self._zone = clock.zone()
        self._lock = threading.RLock()
        self._at: datetime | None = None
        self._looking = False  # ring once whatever the moment set
        self._called = False  # for that the scheduler's job stands: it need not be set again
        self._rung = float("-inf")
        self._heartbeat_s = heartbeat.total_seconds()
        self._closing = threading.Event()
        self._scheduler = BackgroundScheduler(
            executors={"default": ThreadPoolExecutor(max_workers=1)},
            job_defaults={"misfire_grace_time": None, "coalesce": True, "max_instances": 4},
            timezone=UTC,
        )
        self._scheduler.start()
        self._heart = threading.Thread(target=self._beat, name="alarm heartbeat", daemon=True)
        self._heart.start()

    def set(self, at: datetime | None) -> None:
        """Ring at this moment instead of any set before; None: not at all."""
        with self._lock:
            if not self._closing.is_set():
                self._at = at
                self._schedule()

    def look_again(self) -> None:
        """Ring now, from any thread: the machine woke, and anything may be due."""
        with self._lock:
            # Each job set anew is one more for the scheduler to run: a storm of looks is one look.
            if not self._closing.is_set() and not (self._looking and self._called):
                self._looking = self._called = True
                self._schedule()

    def close(self) -> None:
        """Stop and join the threads; nothing rings afterwards."""
        with self._lock:
            if self._closing.is_set():
                return
            self._closing.set()
            self._at, self._looking = None, False
        # A round that is under way when it is shut down trips over its own end.
        self._scheduler.pause()
        self._scheduler.get_jobs()  # waits for that round
        self._scheduler.shutdown(wait=True)
        self._heart.join()

    def _left(self) -> timedelta:
        """Give how long it really is until there is something to do; nought for at once."""
        if self._looking or self._at is None:
            return NONE_YET
        return max(self._clock.real(self._at - self._clock.now()), NONE_YET)

    def _rest(self) -> timedelta:
        """Give what is left of the least gap since the last ring."""
        return LEAST_GAP - timedelta(seconds=min(time.monotonic() - self._rung, 60.0))

    def _schedule(self) -> None:
        """Bring the scheduler's one job in line with what is wanted."""
        if self._at is None and not self._looking:
            if self._scheduler.get_job(_JOB) is not None:
                self._scheduler.remove_job(_JOB)
            return
        self._scheduler.add_job(
            self._ring_if_due,
            "date",
            run_date=self._wall.now() + min(max(self._left(), self._rest()), LONGEST_WAIT),
            id=_JOB,
            replace_existing=True,
        )

    def _ring_if_due(self) -> None:
        """Ring, or wait on where the moment is still ahead: the clock may have been set back."""
        with self._lock:
            self._called = False
            if self._at is None and not self._looking:
                return
            if max(self._left(), self._rest()) > NONE_YET:
                self._called = self._looking
                self._schedule()
                return
            self._rung = time.monotonic()
            self._looking = False
            self._moved()  # the beat need not tell again of what this ring looks at
            if self._at is not None and self._left() > NONE_YET:
                self._schedule()
        try:
            self._ring()
        except Exception:  # noqa: BLE001 - whatever it was, the thread goes on
            _log.exception("ringing failed; it is tried again at the next heartbeat")
            with self._lock:
                self._looking = not self._closing.is_set()

    def _beat(self) -> None:
        while not self._closing.wait(self._heartbeat_s):
            with self._lock:
                if self._closing.is_set():
                    return
                if self._moved():
                    self._looking = True
                if self._looking or (self._at is not None and self._left() == NONE_YET):
                    self._schedule()

    def _moved(self) -> bool:
        """Say whether a clock jumped or the zone changed since the last look."""
        try:
            zone, self._zone = self._zone, self._clock.zone()
            jumped = [jumps.jumped() for jumps in self._jumps]
        except Exception:  # noqa: BLE001 - whatever it was, the heart beats on
            _log.exception("the clocks could not be compared; what is due is looked at anyway")
            return True
        return any(jumped) or zone != self._zone
