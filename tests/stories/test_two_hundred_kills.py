"""Killed two hundred times: every reminder is shown at least once, none after its answer.

And whatever a killed one left on the screen goes when it is answered.

Real processes, a real bus, the machine's own clock. A reminder service is killed with -9 at
random moments, mostly while the next one is there already; answers come from processes
that are killed as well. What was shown is what the notification service took; what was
answered is what the journal holds.
"""

import os
import random
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import TypeVar

import pytest

from studio_log.app.compose import open_studio
from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.domain.reminders import Kind
from studio_log.services import questions as q
from studio_log.services.commands import AnswerReminder, ChangeSettings, Mark, NewLot
from studio_log.services.studio import Studio
from tests.outside.service import FakeService, Shown, private_bus, wait_until
from tests.support.nursery import Nursery, kill

pytestmark = [
    pytest.mark.story,
    pytest.mark.long,
    pytest.mark.skipif(sys.platform != "linux", reason="needs kill -9 and a session bus"),
]
KILLS = 200
SOAK = timedelta(hours=12)
"""Aim of the bean soak of soy-immersion-long: then "drain the beans" is due."""
SLACK = 1.0
"""Seconds between an answer and the last notice that may still have been on its way."""
UNNOTED = 0.05
"""Seconds: killed so close to the taking of a notice, a process has not read its number."""
SOON = 2.0
"""Seconds from an answer in another process to the closing of a notice."""
T = TypeVar("T")


class Timed(list[T]):
    """What the service was asked, with the moment of each."""

    def __init__(self) -> None:
        super().__init__()
        self.at: list[float] = []

    def append(self, one: T) -> None:
        self.at.append(now())
        super().append(one)


def now() -> float:
    """Give the time of the journal's own clock."""
    return time.time()  # noqa: TID251 - the processes read the machine's clock


@dataclass
class Evening:
    """A studio in which something falls due all the time, and processes that die."""

    folder: Path
    studio: Studio
    nursery: Nursery
    service: FakeService
    taken: Timed[Shown]
    closed: Timed[int]
    chance: random.Random
    lots: list[str] = field(default_factory=list)
    killed_at: list[float] = field(default_factory=list)
    answers_killed: int = 0

    @property
    def kills(self) -> int:
        return len(self.killed_at)

    def kill(self, ringer: int) -> None:
        """Kill a reminder service."""
        at = now()
        if kill(ringer):
            self.killed_at.append(at)

    def soak(self) -> str:
        """Begin a lot whose beans are to be drained within half a second."""
        due = datetime.now(UTC) + timedelta(seconds=self.chance.uniform(0.0, 0.5))  # noqa: TID251
        piece = Piece(1, "linen", length_m=1.8, width_m=0.45, gsm=185.0)
        name = f"runners {len(self.lots) + 1}"
        code = self.studio.do(NewLot("soy-immersion-long", name, (piece,))).code
        self.studio.do(Mark(code, "bean-soak", Act.START, at=due - SOAK))
        self.lots.append(code)
        return code

    def answer_one(self) -> None:
        """Answer a reminder that has rung: here, or in a process that may be killed."""
        rung = [card.key for card in self.studio.ask(q.BenchFor()).now if card.raised]
        if not rung:
            return
        key = self.chance.choice(rung)
        if self.chance.random() < 0.4:
            self.studio.do(AnswerReminder(key, "done", sure=True))
            return
        child = self.nursery.start("answer", str(self.folder), key)
        if self.chance.random() < 0.6:
            time.sleep(self.chance.uniform(0.0, 0.12))  # waits for a chance moment of the kill
            self.answers_killed += kill(child)

    def ringing(self) -> int:
        """Start a reminder service."""
        return self.nursery.start("remind", str(self.folder))

    def notices_of(self, code: str) -> list[float]:
        """Give when "drain the beans" was shown for a lot; revisions are no ringing."""
        words = f"Drain the beans {code} "
        return [
            at
            for at, one in zip(self.taken.at, self.taken, strict=True)
            if not one.hints.get("suppress-sound") and words in f"{one.title}\n{one.body}"
        ]

    def on_screen(self) -> list[tuple[float, Shown]]:
        """Give what is seen now: taken and neither closed nor replaced since."""
        closed = dict(zip(self.closed, self.closed.at, strict=True))
        last = {one.receipt: (at, one) for at, one in zip(self.taken.at, self.taken, strict=True)}
        return [(at, one) for at, one in last.values() if closed.get(one.receipt, 0.0) < at]


@pytest.fixture
def evening(tmp_path: Path) -> Iterator[Evening]:
    folder = tmp_path / "studio"
    studio = open_studio(folder)
    quiet = {"quiet_start": "00:00", "quiet_end": "00:00", "welcomed": True}
    studio.do(ChangeSettings({**quiet, "look_ahead": "", "evening_look": ""}))
    able = ("body", "actions")
    with private_bus(tmp_path) as address, FakeService(address, capabilities=able) as service:
        service.shown, service.closed = taken, closed = Timed[Shown](), Timed[int]()
        nursery = Nursery(tmp_path / "said", DBUS_SESSION_BUS_ADDRESS=address)
        try:
            chance = random.Random(20261125)
            yield Evening(folder, studio, nursery, service, taken, closed, chance)
        finally:
            nursery.close()
            studio.close()


def live_through(evening: Evening) -> int:
    """Kill and start two hundred times; give the process that is left."""
    chance = evening.chance
    ringer = evening.ringing()
    while evening.kills < KILLS:
        if chance.random() < 0.5:
            evening.soak()
        if chance.random() < 0.5:
            evening.answer_one()
        longest = 0.45 if chance.random() < 0.8 else 1.2
        time.sleep(chance.uniform(0.0, longest))  # waits for a moment before, in or after showing
        following = evening.ringing()
        time.sleep(chance.uniform(0.0, 0.05))  # waits so that two processes overlap for a moment
        evening.kill(ringer)
        ringer = following
    return ringer


def test_two_hundred_kills_lose_nothing_and_ring_nothing_after_its_answer(
    evening: Evening,
) -> None:
    ringer = live_through(evening)
    for _ in range(4):
        evening.soak()
        evening.answer_one()
    time.sleep(6)  # waits for the last service to tell what it finds
    os.kill(ringer, 15)
    studio = evening.studio
    studio.heard_of_change()
    lost, after, doubled = [], [], []
    for code in evening.lots:
        with studio.store.reading() as look:
            record = next(one for one in look.reminders.of(code) if one.kind == Kind.READY)
        step = studio.ask(q.LotSheetFor(code)).steps[0]
        shown = evening.notices_of(code)
        answered = _answered_at(studio, code)
        if not shown and (answered is None or answered > record.due.timestamp() + SLACK):
            lost.append(code)
        if answered is not None and any(at > answered + SLACK for at in shown):
            after.append(code)
        first = record.raised_at.timestamp() if record.raised_at else None
        if first is not None and any(at > first + SLACK for at in shown):
            doubled.append(code)
        assert (step.state == "done") == (answered is not None)
    stale, unnoted = _stale(evening)
    print(_words(evening), f"{unnoted} left by a kill before their number was read.")
    assert evening.kills == KILLS
    assert len(evening.lots) >= KILLS // 3
    assert evening.answers_killed >= 10, "too few answers died to show anything"
    assert lost == [], "raised at least once"
    assert after == [], "none after its answer"
    assert doubled == [], "none again once it was recorded as shown"
    assert stale == [], "no notice on the screen names an answered reminder"
    assert unnoted <= 5, "so many cannot be by chance"
    assert studio.check() == []
    _nothing_answered_is_open(studio, evening.lots)


@pytest.fixture
def shown(evening: Evening) -> Iterator[tuple[str, set[int]]]:
    """A lot, its notices on the screen, their service killed, and the next one there.

    They say that the soak may end, and that it should.
    """
    first = evening.ringing()
    code = evening.soak()
    wait_until(lambda: _has_rung(evening.studio, code))
    evening.kill(first)
    before = evening.service.asked.count("GetServerInformation")
    second = evening.ringing()
    wait_until(lambda: evening.service.asked.count("GetServerInformation") > before)
    yield code, {one.receipt for _, one in evening.on_screen()}
    os.kill(second, 15)
    assert evening.kills == 1


def test_the_notices_of_a_killed_service_go_when_they_are_answered(
    evening: Evening, shown: tuple[str, set[int]]
) -> None:
    code, receipts = shown
    evening.nursery.start("answer", str(evening.folder), ready(code))
    wait_until(lambda: _answered_at(evening.studio, code) is not None)
    wait_until(lambda: receipts <= set(evening.closed))
    answered = _answered_at(evening.studio, code) or 0.0
    assert max(evening.closed.at) - answered < SOON
    assert len(evening.notices_of(code)) == 1, "it was not shown again"


def test_the_buttons_in_the_notices_of_a_killed_service_are_answered(
    evening: Evening, shown: tuple[str, set[int]]
) -> None:
    code, receipts = shown
    evening.service.invoke(max(receipts), "done")
    wait_until(lambda: receipts <= set(evening.closed))
    assert _answered_at(evening.studio, code) is not None


def test_what_was_answered_while_no_service_ran_goes_with_the_next(evening: Evening) -> None:
    first = evening.ringing()
    code = evening.soak()
    wait_until(lambda: _has_rung(evening.studio, code))
    evening.kill(first)
    evening.studio.do(AnswerReminder(ready(code), "done"))
    receipts = {one.receipt for _, one in evening.on_screen()}
    begun = now()
    second = evening.ringing()
    wait_until(lambda: receipts <= set(evening.closed))
    assert max(evening.closed.at) - begun < SOON
    os.kill(second, 15)


def _has_rung(studio: Studio, code: str) -> bool:
    """Say whether "drain the beans" of a lot was shown and recorded."""
    studio.heard_of_change()
    return any(card.raised for card in studio.ask(q.BenchFor()).now if card.key == ready(code))


def ready(code: str) -> str:
    return f"{code}/1/ready"


def _stale(evening: Evening) -> tuple[list[str], int]:
    """Give what on the screen names an answered reminder, and how much of it nobody can know."""
    stale, unnoted = [], 0
    for at, one in evening.on_screen():
        told = f"{one.title}\n{one.body}"
        named = [code for code in evening.lots if f"Drain the beans {code} " in told]
        if not any(_answered_at(evening.studio, code) is not None for code in named):
            continue
        if any(abs(killed - at) < UNNOTED for killed in evening.killed_at):
            unnoted += 1
        else:
            stale.append(told)
    return stale, unnoted


def _answered_at(studio: Studio, code: str) -> float | None:
    with studio.store.reading() as look:
        ended = [one for one in look.journal.of(code) if one.act is Act.END and one.step == 1]
    return ended[0].written.timestamp() if ended else None


def _nothing_answered_is_open(studio: Studio, lots: list[str]) -> None:
    for code in lots:
        ended = _answered_at(studio, code) is not None
        bench = studio.ask(q.BenchFor())
        cards = [card for card in bench.now if card.lot == code and card.step == 1]
        assert not (ended and cards), f"{code} is answered and stands on the bench"
        with studio.store.reading() as look:
            kept = {one.key: one.status for one in look.reminders.of(code)}
        if ended:
            mine = {key: status for key, status in kept.items() if key.startswith(f"{code}/1/")}
            assert set(mine.values()) <= {"answered", "void"}


def _words(evening: Evening) -> str:
    shown = sum(len(evening.notices_of(code)) for code in evening.lots)
    twice = sum(len(evening.notices_of(code)) > 1 for code in evening.lots)
    return (
        f"{evening.kills} kills of the service, {evening.answers_killed} of answers; "
        f"{len(evening.lots)} reminders shown {shown} times, {twice} of them more than once."
    )
