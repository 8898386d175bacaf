"""The alarm clock: calls back at a moment, also after sleep and a clock that was set.

APScheduler waits out its time by a clock that stands still while the machine sleeps, so a
heartbeat wakes it: after sleep or a jump of the clock the alarm rings a heartbeat late at most.
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

LEAST_GAP: Final = timedelta(milliseconds=100)
"""Between two rings of moments already past: whoever answers slowly is not called in a storm."""
LONGEST_WAIT: Final = timedelta(days=30)
"""A moment further off is looked at again on the way."""
NONE_YET: Final = timedelta(0)
_JOB: Final = "next"

_log = logging.getLogger(__name__)


class SchedulerAlarm:
    """Calls `ring` in a thread of its own once the clock reaches the moment set.

    `ring` only hands the work on. It is called again each `heartbeat` until the alarm is set
    anew, so that a call that came to nothing is not the last.
    """

    def __init__(
        self,
        ring: Callable[[], None],
        clock: Clock,
        *,
        heartbeat: timedelta = timedelta(seconds=30),
    ) -> None:
        self._ring = ring
        self._clock = clock
        self._wall = SystemClock()
        self._lock = threading.RLock()
        self._at: datetime | None = None
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
            if self._closing.is_set():
                return
            self._at = at
            if at is None:
                if self._scheduler.get_job(_JOB) is not None:
                    self._scheduler.remove_job(_JOB)
            else:
                self._schedule(max(self._left(at), self._rest()))

    def close(self) -> None:
        """Stop and join the threads; nothing rings afterwards."""
        with self._lock:
            if self._closing.is_set():
                return
            self._closing.set()
            self._at = None
        # A round that is under way when it is shut down trips over its own end.
        self._scheduler.pause()
        self._scheduler.get_jobs()  # waits for that round
        self._scheduler.shutdown(wait=True)
        self._heart.join()

    def _left(self, at: datetime) -> timedelta:
        """Give how long it really is until a moment of the clock; nought for one past."""
        return max(self._clock.real(at - self._clock.now()), NONE_YET)

    def _rest(self) -> timedelta:
        """Give what is left of the least gap since the last ring."""
        return LEAST_GAP - timedelta(seconds=min(time.monotonic() - self._rung, 60.0))

    def _schedule(self, wait: timedelta) -> None:
        self._scheduler.add_job(
            self._ring_if_due,
            "date",
            run_date=self._wall.now() + min(wait, LONGEST_WAIT),
            id=_JOB,
            replace_existing=True,
        )

    def _ring_if_due(self) -> None:
        """Ring, or wait on where the moment is still ahead: the clock may have been set back."""
        with self._lock:
            if self._at is None:
                return
            left = self._left(self._at)
            if left > NONE_YET:
                self._schedule(left)
                return
            self._rung = time.monotonic()
        try:
            self._ring()
        except Exception:  # noqa: BLE001 - whatever it was, the thread goes on
            _log.exception("ringing failed; it is tried again at the next heartbeat")

    def _beat(self) -> None:
        while not self._closing.wait(self._heartbeat_s):
            with self._lock:
                if self._closing.is_set():
                    return
                if self._at is not None and self._clock.now() >= self._at:
                    self._schedule(NONE_YET)
                else:
                    self._scheduler.wakeup()
