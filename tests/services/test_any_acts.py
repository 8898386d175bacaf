"""Whatever is done to a lot: the journal only grows, and all else follows from it."""

import shutil
import tempfile
from pathlib import Path

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
)

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.methods import StepKind
from studio_log.domain.replay import replay
from studio_log.services.commands import (
    AnswerReminder,
    ChangeSettings,
    Correct,
    GoOn,
    JoinLots,
    Mark,
    NewMilk,
    NoteTagsPrinted,
    Redo,
    SetLot,
    SplitLot,
    Undo,
)
from tests.support.builders import LONG, MINUTE, NINE, SCOUR, SHORT
from tests.support.fixtures import open_workshop
from tests.support.hand_clock import HandClock

ACTS = [act for act in list(Act)[:12] if act not in {Act.PLAN, Act.PUTOFF}]
SURE = st.booleans()


class AnyActs(RuleBasedStateMachine):
    """A studio with one lot to begin with, and everything a person can do to it."""

    def __init__(self) -> None:
        super().__init__()
        self.home = Path(tempfile.mkdtemp(prefix="studio-log-acts-"))
        self.clock = HandClock(NINE)
        self.shop = open_workshop(self.home / "studio", self.clock)
        self.seen = {}
        self.answered = set()
        self.codes = []

    def teardown(self) -> None:
        self.shop.studio.close()
        shutil.rmtree(self.home)

    @initialize(method=st.sampled_from([LONG, SHORT, SCOUR]))
    def make(self, method: str) -> None:
        self.codes.append(self.shop.new(method=method))
        self.seen = self.shop.everything()

    def do(self, command: object) -> None:
        """Do it, or have it refused with nothing written."""
        try:
            outcome = self.shop.do(command)
        except Refusal:
            assert self.shop.everything() == self.seen
            return
        if outcome.code.startswith("26-"):
            self.codes.append(outcome.code)
        after = self.shop.everything()
        for subject, entries in self.seen.items():
            assert after[subject][: len(entries)] == entries, "the journal only grows"
        self.seen = after

    def a_code(self, data: st.DataObject) -> str:
        return data.draw(st.sampled_from(self.codes))

    def a_step(self, data: st.DataObject, code: str) -> str:
        """A step that may well be next, else any."""
        lot = self.shop.lot(code)
        near = [step for step in lot.steps if not step.closed][:4] or list(lot.steps)
        steps = near if data.draw(st.integers(0, 4)) else list(lot.steps)
        return str(data.draw(st.sampled_from(steps)).number)

    @rule(data=st.data(), act=st.sampled_from(ACTS), back=st.integers(0, 90), sure=SURE)
    def mark(self, data, act, back, sure) -> None:
        code = self.a_code(data)
        at = self.clock.at - back * MINUTE if back % 3 == 0 else None
        self.do(Mark(code, self.a_step(data, code), act, at=at, note="x", sure=sure))

    @rule(data=st.data())
    def carry_on(self, data) -> None:
        """Do what comes next, so that lots get on to their cure."""
        code = self.a_code(data)
        for _ in range(data.draw(st.integers(1, 12))):
            lot = self.shop.lot(code)
            steps = [s for s in lot.steps if not s.closed and s.spec.kind is not StepKind.CURE]
            taken = [step for step in steps if lot.taken(step)]
            if not taken:
                return
            step = taken[0]
            if step.running and step.spec.lasts is not None:
                self.clock.at += step.spec.lasts.aim
            act = Act.END if step.running else Act.START
            self.do(Mark(code, str(step.number), act, sure=True))

    @rule(data=st.data(), span=st.integers(-100, 5000))
    def put_off(self, data, span) -> None:
        code = self.a_code(data)
        self.do(Mark(code, self.a_step(data, code), Act.PUTOFF, put_off=span * MINUTE))

    @rule(data=st.data(), span=st.integers(-100, 5000))
    def plan(self, data, span) -> None:
        code = self.a_code(data)
        at = self.clock.at + span * MINUTE
        self.do(Mark(code, self.a_step(data, code), Act.PLAN, at=at))

    @rule(data=st.data())
    def undo(self, data) -> None:
        self.do(Undo(self.a_code(data)))

    @rule(data=st.data())
    def redo(self, data) -> None:
        self.do(Redo(self.a_code(data)))

    @rule(data=st.data())
    def undo_one(self, data) -> None:
        code = self.a_code(data)
        self.do(Undo(code, data.draw(st.integers(1, len(self.seen[code])))))

    @rule(data=st.data(), back=st.integers(0, 2000), sure=SURE)
    def correct(self, data, back, sure) -> None:
        code = self.a_code(data)
        number = data.draw(st.integers(1, len(self.seen[code])))
        self.do(Correct(code, number, at=self.clock.at - back * MINUTE, sure=sure))

    @rule(data=st.data())
    def split(self, data) -> None:
        self.do(SplitLot(self.a_code(data), (2,), "half"))

    @rule(data=st.data(), sure=SURE)
    def join(self, data, sure) -> None:
        self.do(JoinLots((self.a_code(data), self.a_code(data)), "both", sure=sure))

    @rule(data=st.data(), method=st.sampled_from([LONG, SCOUR]), sure=SURE)
    def go_on(self, data, method, sure) -> None:
        self.do(GoOn(self.a_code(data), method, sure=sure))

    @rule(data=st.data(), days=st.none() | st.integers(0, 100), grams=st.floats(1, 900))
    def change(self, data, days, grams) -> None:
        self.do(SetLot(self.a_code(data), grams=grams, cure_days=days, place="shelf"))

    @rule(data=st.data(), cold=st.booleans())
    def milk(self, data, cold) -> None:
        self.do(NewMilk(lots=(self.a_code(data),), litres=0.9, cold=cold))

    @rule(data=st.data())
    def print_tag(self, data) -> None:
        self.do(NoteTagsPrinted((self.a_code(data),)))

    @rule(start=st.sampled_from(["22:00", "20:00", "01:00", "07:00"]), night=st.booleans())
    def settle(self, start, night) -> None:
        self.do(ChangeSettings({"quiet_start": start, "spoiling_at_night": night}))

    @rule(minutes=st.integers(1, 3000))
    def wait(self, minutes) -> None:
        self.clock.move(minutes=minutes)
        self.ring()

    @rule(days=st.integers(1, 60))
    def wait_long(self, days) -> None:
        self.clock.move(days=days)
        self.ring()

    def ring(self) -> None:
        for notice in self.shop.ring():
            assert not self.answered & set(notice.keys), "an answered one never rings"
        assert not self.shop.ring(), "each is raised once"

    @rule(data=st.data(), answer=st.sampled_from(["done", "putoff", "damp", "skip"]))
    def answer(self, data, answer) -> None:
        with self.shop.studio.store.reading() as look:
            keys = [one.key for one in look.reminders.raised()]
        if keys:
            key = data.draw(st.sampled_from(keys))
            self.do(AnswerReminder(key, answer, put_off=30 * MINUTE, sure=True))

    @precondition(lambda self: self.codes)
    @invariant()
    def replaying_from_empty_gives_the_same_lots(self) -> None:
        for code in self.codes:
            lot = self.shop.lot(code)
            assert replay(self.seen[code], self.shop.studio.book) == lot
            numbers = [step.number for step in lot.steps]
            assert sorted(numbers) == list(range(1, len(numbers) + 1))

    @precondition(lambda self: self.codes)
    @invariant()
    def answered_ones_stay_so_but_for_an_undo(self) -> None:
        with self.shop.studio.store.reading() as look:
            self.answered = {
                one.key for code in self.codes for one in look.reminders.of(code)
                if one.status == "answered"
            }  # fmt: skip

    @precondition(lambda self: self.codes)
    @invariant()
    def what_is_kept_equals_what_is_worked_out_anew(self) -> None:
        before = self.kept()
        assert self.shop.studio.check(repair=True) == []
        assert self.kept() == before

    def kept(self) -> object:
        """What lists keep beside the journal; and which reminders are open or answered."""
        with self.shop.studio.store.reading() as look:
            lots = [look.lots.get(code) for code in look.lots.codes()]
            steps = look.steps.of_many(look.lots.codes())
            reminders = {one.key: one.status for code in self.codes
                         for one in look.reminders.of(code)}  # fmt: skip
            lines = [
                (one.code, one.name, one.last_number, one.place, one.grams, one.ended,
                 one.ready_at, one.fully_dry_at, one.used_at)
                for one in lots if one
            ]  # fmt: skip
            return lines, steps, look.milks.all(), reminders


AnyActs.TestCase.settings = settings(
    max_examples=12,
    stateful_step_count=25,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
TestAnyActs = AnyActs.TestCase
