"""Killed two hundred times: every reminder is shown at least once, none after its answer.

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

import pytest

from studio_log.app.compose import open_studio
from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.domain.reminders import Kind
from studio_log.services import questions as q
from studio_log.services.commands import AnswerReminder, ChangeSettings, Mark, NewLot
from studio_log.services.studio import Studio
from tests.outside.service import FakeService, Shown, private_bus
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


class Taken(list[Shown]):
    """Notices with the moment at which the service took each."""

    def __init__(self) -> None:
        super().__init__()
        self.at: list[float] = []

    def append(self, one: Shown) -> None:
        self.at.append(time.time())  # noqa: TID251 - against the journal's own clock
        super().append(one)


@dataclass
class Evening:
    """A studio in which something falls due all the time, and processes that die."""

    folder: Path
    studio: Studio
    nursery: Nursery
    service: FakeService
    taken: Taken
    chance: random.Random
    lots: list[str] = field(default_factory=list)
    kills: int = 0
    answers_killed: int = 0

    def soak(self) -> None:
        """Begin a lot whose beans are to be drained within half a second."""
        due = datetime.now(UTC) + timedelta(seconds=self.chance.uniform(0.0, 0.5))  # noqa: TID251
        piece = Piece(1, "linen", length_m=1.8, width_m=0.45, gsm=185.0)
        name = f"runners {len(self.lots) + 1}"
        code = self.studio.do(NewLot("soy-immersion-long", name, (piece,))).code
        self.studio.do(Mark(code, "bean-soak", Act.START, at=due - SOAK))
        self.lots.append(code)

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


@pytest.fixture
def evening(tmp_path: Path) -> Iterator[Evening]:
    folder = tmp_path / "studio"
    studio = open_studio(folder)
    quiet = {"quiet_start": "00:00", "quiet_end": "00:00", "welcomed": True}
    studio.do(ChangeSettings({**quiet, "look_ahead": "", "evening_look": ""}))
    able = ("body", "actions")
    with private_bus(tmp_path) as address, FakeService(address, capabilities=able) as service:
        service.shown = taken = Taken()
        nursery = Nursery(tmp_path / "said", DBUS_SESSION_BUS_ADDRESS=address)
        try:
            yield Evening(folder, studio, nursery, service, taken, random.Random(20261125))
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
        # waits for a chance moment: before, in or after the showing
        time.sleep(chance.uniform(0.0, 0.45 if chance.random() < 0.8 else 1.2))  # waits so
        following = evening.ringing()
        time.sleep(chance.uniform(0.0, 0.05))  # waits: two processes overlap for a moment
        evening.kills += kill(ringer)
        ringer = following
    return ringer


def test_two_hundred_kills_lose_nothing_and_ring_nothing_after_its_answer(
    evening: Evening,
) -> None:
    ringer = live_through(evening)
    for _ in range(4):
        evening.soak()
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
    print(_words(evening))
    assert evening.kills == KILLS
    assert len(evening.lots) >= KILLS // 3
    assert evening.answers_killed >= 10, "too few answers died to show anything"
    assert lost == [], "raised at least once"
    assert after == [], "none after its answer"
    assert doubled == [], "none again once it was recorded as shown"
    assert studio.check() == []
    _nothing_answered_is_open(studio, evening.lots)


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
