"""The reminder service in a real process, on a real bus, while its clock is moved about.

The wall clock is moved by libfaketime (Debian: faketime), which leaves the monotonic clock
alone: what a process sees of a suspend. logind is stood in for on a private system bus.
"""

import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from studio_log.app.compose import open_studio
from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.services import questions as q
from studio_log.services.commands import ChangeSettings, Mark, NewLot
from studio_log.services.studio import Studio
from tests.outside import service
from tests.outside.service import wait_until
from tests.outside.test_alarm_process import LIBRARY
from tests.outside.test_sleep import logind, prepare
from tests.support.tree import TREE

pytestmark = [
    pytest.mark.story,
    pytest.mark.long,
    pytest.mark.skipif(LIBRARY is None, reason="needs libfaketime: apt-get install faketime"),
]
SOAK = timedelta(hours=12)
"""Aim of the bean soak of soy-immersion-long."""
WITHIN = 35.0
"""Seconds within which a waking is noticed without logind."""
HOUR = timedelta(hours=1)
DAY = timedelta(days=1)


def drain(code: str) -> str:
    """The words in which the end of a lot's bean soak is told."""
    return f"Drain the beans {code}"


@dataclass
class Laptop:
    """A reminder service whose wall clock the test moves, and what reached the screen."""

    folder: Path
    offset: Path
    shown: service.FakeService
    process: "subprocess.Popen[bytes]"
    codes: list[str] = field(default_factory=list)

    def leap(self, span: timedelta) -> None:
        """Set the clock so far from the true one."""
        new = self.offset.with_suffix(".new")
        new.write_text(f"{span.total_seconds():+.0f}")
        new.replace(self.offset)

    def soak(self, name: str, due_in: timedelta) -> str:
        """Begin a bean soak that reaches its aim after a while, by the true clock."""
        studio = open_studio(self.folder)
        piece = Piece(1, "linen", length_m=1.8, width_m=0.45, gsm=185.0)
        code = studio.do(NewLot("soy-immersion-long", name, (piece,))).code
        start = datetime.now(UTC) + due_in - SOAK  # noqa: TID251 - the service reads it too
        studio.do(Mark(code, "bean-soak", Act.START, at=start))
        studio.close()
        return code

    @property
    def told(self) -> list[str]:
        """All that was shown, revisions left out."""
        rung = [one for one in self.shown.shown if not one.hints.get("suppress-sound")]
        return [f"{one.title}\n{one.body}" for one in rung]

    def waits_for(self, words: str, seconds: float, since: int = 0) -> float:
        """Wait until words were shown, `since` so many notices; give after how many seconds."""
        begun = time.monotonic()
        while not any(words in one for one in self.told[since:]):
            assert time.monotonic() - begun < seconds, f"{words!r} was not shown: {self.told}"
            assert self.process.poll() is None, "the service has ended"
            time.sleep(0.05)  # waits for the other process
        return time.monotonic() - begun


@pytest.fixture
def laptop(tmp_path: Path) -> Iterator[Laptop]:
    folder, offset = tmp_path / "studio", tmp_path / "offset"
    studio = open_studio(folder)
    quiet = {"quiet_start": "00:00", "quiet_end": "00:00", "welcomed": True}
    studio.do(ChangeSettings({**quiet, "look_ahead": "", "evening_look": ""}))
    studio.close()
    offset.write_text("+0")
    with service.private_bus(tmp_path) as address, service.FakeService(address) as shown:
        own = {
            "LD_PRELOAD": str(LIBRARY), "FAKETIME_TIMESTAMP_FILE": str(offset),
            "FAKETIME_NO_CACHE": "1", "FAKETIME_DONT_FAKE_MONOTONIC": "1",
            "DBUS_SESSION_BUS_ADDRESS": address, "DBUS_SYSTEM_BUS_ADDRESS": address,
            "PYTHONPATH": str(TREE),
        }  # fmt: skip
        with (tmp_path / "said").open("wb") as said, subprocess.Popen(
            [sys.executable, "-m", "studio_log", "--studio", str(folder), "remind"],
            env=os.environ | own, stdout=said, stderr=said, stdin=subprocess.DEVNULL,
        ) as process:  # fmt: skip
            made = Laptop(folder, offset, shown, process)
            made.soak("first", timedelta(0))
            made.waits_for("first", 20)  # it is up, and rings
            yield made
            if process.poll() is None:
                process.send_signal(signal.SIGTERM)
                try:
                    assert process.wait(10) == 0
                finally:
                    process.kill()
        assert "Traceback" not in (tmp_path / "said").read_text("utf-8")


def test_after_a_sleep_all_is_told_in_one_notice_within_35_s(laptop: Laptop) -> None:
    older = laptop.soak("older", HOUR)
    newer = laptop.soak("newer", 2 * HOUR)
    ahead = laptop.soak("still ahead", 4 * HOUR)
    laptop.waits_for(ahead, 10)  # that it may end by now is told at once
    before = len(laptop.told)
    laptop.leap(3 * HOUR)  # asleep for three hours, without logind
    assert laptop.waits_for(drain(newer), WITHIN + 3, since=before) <= WITHIN + 1
    (text,) = [one for one in laptop.told[before:] if drain(older) in one or drain(newer) in one]
    lines = [line for line in text.splitlines() if "late" in line]
    assert [code for line in lines for code in (older, newer) if code in line] == [older, newer]
    assert re.search(r"2 h( \d min)? late", text)  # the minute may turn while it is told
    assert not any(drain(ahead) in one for one in laptop.told)


def test_with_logind_waking_is_told_at_once(laptop: Laptop) -> None:
    code = laptop.soak("asleep", HOUR)
    with logind(laptop.shown.address) as manager:
        time.sleep(0.5)  # waits until the service has heard that logind is there
        laptop.leap(2 * HOUR)
        manager.send(prepare(False))
        took = laptop.waits_for(drain(code), 10)
    assert took < 3, "the heartbeat of half a minute is not waited for"


def test_set_back_by_minutes_and_days_nothing_rings_early_or_twice(laptop: Laptop) -> None:
    code = laptop.soak("in ten minutes", timedelta(minutes=10))
    laptop.waits_for(code, 10)
    before = len(laptop.told)
    for span in (-timedelta(minutes=5), -3 * DAY, -timedelta(minutes=1)):
        laptop.leap(span)
        time.sleep(WITHIN / 2)  # waits for a heartbeat, two of three at least
    said = [one for one in laptop.told[before:] if "Drain the beans" in one]
    assert said == [], "what rang is silent, what is ahead waits"
    laptop.leap(timedelta(minutes=11))
    laptop.waits_for(drain(code), WITHIN + 3, since=before)


def test_off_for_three_weeks_as_the_clock_sees_it(laptop: Laptop) -> None:
    codes = [laptop.soak(f"lot {number}", HOUR) for number in range(3)]
    laptop.waits_for(codes[-1], 10)
    before = len(laptop.told)
    laptop.leap(21 * DAY)
    laptop.waits_for("things need hands", WITHIN + 3, since=before)
    time.sleep(2)  # waits for a second notice that must not come
    rung = [one for one in laptop.told[before:] if "things need hands" in one]
    assert len(rung) == 1
    assert all(code in rung[0] for code in codes)


def test_stopped_and_continued_it_tells_at_once(laptop: Laptop) -> None:
    code = laptop.soak("stopped", timedelta(seconds=3))
    laptop.process.send_signal(signal.SIGSTOP)
    time.sleep(5)  # waits past the moment while the process stands still
    assert not [one for one in laptop.told if drain(code) in one]
    laptop.process.send_signal(signal.SIGCONT)
    assert laptop.waits_for(drain(code), 10) < 3
    assert sum(drain(code) in one for one in laptop.told) == 1


def channels_of(studio: Studio, key: str) -> tuple[str, ...]:
    with studio.store.reading() as look:
        kept = look.reminders.get(key)
    return tuple(kept.channels) if kept is not None else ()


def test_it_is_recorded_by_which_channel(laptop: Laptop) -> None:
    studio = open_studio(laptop.folder)
    try:
        (card, *_) = studio.ask(q.BenchFor()).now
        # The other process shows it first and writes it down after.
        wait_until(lambda: channels_of(studio, card.key) != ())
        channels = channels_of(studio, card.key)
        with studio.store.reading() as look:
            tries = look.deliveries.of(card.key)
    finally:
        studio.close()
    assert channels == ("desktop (notification service)",)
    assert [one.ok for one in tries] == [True]
    assert tries[0].words.startswith("shown, receipt ")
