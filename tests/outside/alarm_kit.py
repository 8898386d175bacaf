"""Clocks that are moved, a ring that counts, and an alarm that ends with its test."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta

from studio_log.outside.alarm import SchedulerAlarm
from studio_log.services.clock import SystemClock
from studio_log.services.ports import Clock

START = datetime(2026, 6, 9, 12, 0, tzinfo=UTC)
SOON = timedelta(milliseconds=40)
PATIENCE = 10.0
QUIET = 0.4


class HandClock:
    """Stands still until it is moved."""

    def __init__(self) -> None:
        self.at = START

    def now(self) -> datetime:
        return self.at

    def zone(self) -> str:
        return "Europe/London"

    def real(self, span: timedelta) -> timedelta:
        return span


class SetClock(SystemClock):
    """Goes as time goes, but may be set forward and back, and taken on a journey."""

    def __init__(self) -> None:
        super().__init__("Europe/London")
        self.off = timedelta(0)

    def now(self) -> datetime:
        return super().now() + self.off

    def travel(self, zone: str) -> None:
        self._zone = zone


class Ring:
    """Counts the rings and can be waited for."""

    def __init__(self) -> None:
        self.count = 0
        self.threads: set[str] = set()
        self._more = threading.Condition()

    def __call__(self) -> None:
        with self._more:
            self.count += 1
            self.threads.add(threading.current_thread().name)
            self._more.notify_all()

    def wait_for(self, count: int, seconds: float = PATIENCE) -> bool:
        with self._more:
            return self._more.wait_for(lambda: self.count >= count, seconds)


@contextmanager
def an_alarm(
    ring: Ring, clock: Clock, heartbeat: timedelta = timedelta(seconds=60)
) -> Iterator[SchedulerAlarm]:
    alarm = SchedulerAlarm(ring, clock, heartbeat=heartbeat)
    try:
        yield alarm
    finally:
        alarm.close()
