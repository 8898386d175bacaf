"""The alarm in a process of its own whose wall clock leaps, and that is stopped for a while.

The processes run under libfaketime (Debian: faketime), which moves the wall clock of a program
while it runs and leaves the monotonic one alone.
"""

import contextlib
import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from typing import IO

import pytest

from tests.support.tree import TREE

PATIENCE = 40.0
NAME = "faketime/libfaketimeMT.so.1"
LIBRARY = next(
    (one for to in ("lib/*", "lib", "lib64") for one in Path("/usr").glob(f"{to}/{NAME}")), None
)
CHILD = """
import sys
from datetime import timedelta
from studio_log.outside.alarm import SchedulerAlarm
from studio_log.services.clock import SystemClock

def ring():
    print("rang", clock.now().isoformat(), flush=True)
    if clock.now() >= at:
        alarm.set(None)

clock = SystemClock()
at = clock.now() + timedelta(seconds=float(sys.argv[1]))
alarm = SchedulerAlarm(ring, clock, heartbeat=timedelta(seconds=0.3))
alarm.set(at)
print("set", at.isoformat(), flush=True)
sys.stdin.read()
alarm.close()
print("closed", clock.now().isoformat(), flush=True)
"""


class Ringer:
    """A process with an alarm, whose wall clock the test sets while it runs."""

    def __init__(self, process: "subprocess.Popen[str]", offset: Path) -> None:
        self.process = process
        self._offset = offset
        assert process.stdout is not None
        self._lines: IO[str] = process.stdout
        self.at = self.next("set")

    def leap(self, span: timedelta) -> None:
        """Set the wall clock so far ahead of, or behind, the true one."""
        new = self._offset.with_suffix(".new")
        new.write_text(f"{span.total_seconds():+.0f}")
        new.replace(self._offset)

    def next(self, word: str) -> datetime:
        """Give the moment of the next line, which is to begin with the word."""
        got, moment = self._lines.readline().split()
        assert got == word
        return datetime.fromisoformat(moment)

    def end(self) -> datetime:
        """Let it end; give its last moment, before which nothing more may have rung."""
        assert self.process.stdin is not None
        self.process.stdin.close()
        return self.next("closed")


@contextlib.contextmanager
def a_ringer(folder: Path, seconds: float) -> Iterator[Ringer]:
    if LIBRARY is None:
        pytest.skip("needs libfaketime: apt-get install faketime")
    offset = folder / "offset"
    offset.write_text("+0")
    own = {
        "LD_PRELOAD": str(LIBRARY), "FAKETIME_TIMESTAMP_FILE": str(offset),
        "FAKETIME_NO_CACHE": "1", "FAKETIME_DONT_FAKE_MONOTONIC": "1", "PYTHONPATH": str(TREE),
    }  # fmt: skip
    with subprocess.Popen(
        [sys.executable, "-c", CHILD, str(seconds)],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env=os.environ | own,
    ) as process:  # fmt: skip
        # Whoever waits for a line that never comes is let go with an error.
        patience = threading.Timer(PATIENCE, process.kill)
        patience.start()
        try:
            yield Ringer(process, offset)
        finally:
            process.kill()
            patience.cancel()
            patience.join()


@pytest.mark.parametrize("span", [timedelta(hours=1), timedelta(days=21)])
def test_an_alarm_a_minute_ahead_rings_when_the_wall_clock_leaps_past_it(
    tmp_path: Path, span: timedelta
) -> None:
    with a_ringer(tmp_path, 60) as ringer:
        begun = time.monotonic()
        ringer.leap(span)
        rang = ringer.next("rang")
        took = time.monotonic() - begun
        assert span - timedelta(minutes=1) < rang - ringer.at < span
        assert took < 25, "before the minute would have passed"
        time.sleep(0.8)  # waits for two more heartbeats
        assert ringer.end() > rang, "and rang once"


def test_set_back_an_hour_it_looks_once_and_keeps_its_moment(tmp_path: Path) -> None:
    with a_ringer(tmp_path, 1.5) as ringer:
        ringer.leap(-timedelta(hours=1))
        looked = ringer.next("rang")
        assert looked < ringer.at - timedelta(minutes=50), "it only looks, by a clock set back"
        time.sleep(1.7)  # waits past the moment by the old clock
        ringer.leap(timedelta(seconds=30))
        assert ringer.next("rang") >= ringer.at
        ringer.end()


def test_stopped_over_its_moment_it_rings_once_when_it_goes_on(tmp_path: Path) -> None:
    """SIGSTOP, as a desktop that freezes what it thinks idle: signal(7)."""
    with a_ringer(tmp_path, 0.6) as ringer:
        ringer.process.send_signal(signal.SIGSTOP)
        time.sleep(1.2)  # waits until the moment is past
        ringer.process.send_signal(signal.SIGCONT)
        rang = ringer.next("rang")
        assert rang >= ringer.at
        time.sleep(0.8)  # waits for two more heartbeats
        assert ringer.end() > rang, "and rang once"
