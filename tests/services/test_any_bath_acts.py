"""Whatever is done to a bath: the journal only grows, and all else follows from it."""

import shutil
import tempfile
from pathlib import Path

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from studio_log.domain.bath_due import bath_reminders
from studio_log.domain.bath_kinds import KINDS
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services.bath_acts import MARKABLE
from studio_log.services.bath_keeping import bath_of
from studio_log.services.baths import BathFor, BathsFor, MarkBath, NewBath, SetBath
from studio_log.services.commands import AnswerReminder, Correct, Redo, Undo
from tests.support.builders import HOUR, NINE
from tests.support.fixtures import open_workshop
from tests.support.hand_clock import HandClock

CODE = "B26-001"


class AnyBathActs(RuleBasedStateMachine):
    """A studio with one bath, and everything a person can do to it."""

    def __init__(self) -> None:
        super().__init__()
        self.home = Path(tempfile.mkdtemp(prefix="studio-log-baths-"))
        self.clock = HandClock(NINE)
        self.shop = open_workshop(self.home / "studio", self.clock)
        self.seen = self.shop.everything()
        self.rung: dict[str, int] = {}

    def teardown(self) -> None:
        self.shop.studio.close()
        shutil.rmtree(self.home)

    @initialize(kind=st.sampled_from(sorted(KINDS)))
    def make(self, kind: str) -> None:
        self.do(NewBath(kind, refresh_grams=1_000))
        self.clock.at += 200 * HOUR

    def do(self, command: object) -> None:
        """Do it, or have it refused with nothing written."""
        try:
            self.shop.do(command)
        except Refusal:
            assert self.shop.everything() == self.seen
            return
        after = self.shop.everything()
        for subject, entries in self.seen.items():
            assert after[subject][: len(entries)] == entries, "the journal only grows"
        self.seen = after

    @rule(
        act=st.sampled_from(sorted(MARKABLE)),
        back=st.integers(0, 250),
        grams=st.integers(1, 1500),
        ph=st.floats(0, 14),
        ahead=st.none() | st.integers(1, 60),
    )
    def mark(self, act: Act, back: int, grams: int, ph: float, ahead: int | None) -> None:
        now = self.clock.at
        planned = None if ahead is None else now + ahead * HOUR
        at = now - back * HOUR if back % 2 else None
        self.do(MarkBath(CODE, act, at, "x", {"ph": ph}, grams=grams, planned=planned))

    @rule(finished=st.booleans())
    def end(self, finished: bool) -> None:
        self.do(SetBath(CODE, finished=finished))

    @rule(entry=st.none() | st.integers(1, 20))
    def undo(self, entry: int | None) -> None:
        self.do(Undo(CODE, entry))

    @rule()
    def redo(self) -> None:
        self.do(Redo(CODE))

    @rule(entry=st.integers(1, 20), back=st.integers(0, 250), ph=st.floats(0, 14))
    def correct(self, entry: int, back: int, ph: float) -> None:
        at = self.clock.at - back * HOUR if back % 2 else None
        self.do(Correct(CODE, entry, at, readings={"ph": ph}))

    @rule(hours=st.integers(1, 30))
    def wait(self, hours: int) -> None:
        self.clock.at += hours * HOUR
        self.shop.ring()

    @rule(answer=st.sampled_from(["done", "skip", "putoff"]), data=st.data())
    def answer(self, answer: str, data) -> None:
        with self.shop.studio.store.reading() as look:
            keys = [one.key for one in look.reminders.of(CODE)]
        if keys:
            key = data.draw(st.sampled_from(keys))
            self.do(AnswerReminder(key, answer, put_off=HOUR if answer == "putoff" else None))

    @invariant()
    def the_journal_reads_and_the_page_can_be_shown(self) -> None:
        if CODE in self.seen:
            self.shop.studio.ask(BathFor(CODE))
            self.shop.studio.ask(BathsFor(finished=True))

    @invariant()
    def what_is_open_is_what_is_worked_out(self) -> None:
        if CODE not in self.seen:
            return
        with self.shop.studio.store.reading() as look:
            desk = self.shop.studio.desk(look)
            bath = bath_of(desk, CODE)
            due = {one.key for one in bath_reminders(bath, desk.now, desk.quiet)}
            kept = look.reminders.of(CODE)
        still_open = {one.key for one in kept if one.status in {"waiting", "raised"}}
        assert still_open <= due
        answered = {one.key for one in kept if one.status == "answered"}
        assert due <= still_open | answered, "nothing that is due is without its record"

    @invariant()
    def what_fell_due_and_may_ring_has_rung(self) -> None:
        """The guarantee: after a ring nothing due and awake still waits unrung."""
        self.shop.ring()
        if self.shop.studio.settings.quiet(self.shop.studio.zone).is_quiet(self.clock.at):
            return
        for record in self.shop.records(CODE).values():
            if record.status == "waiting":
                assert record.rings_at > self.clock.at, record


AnyBathActs.TestCase.settings = settings(
    max_examples=15,
    stateful_step_count=25,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
TestAnyBathActs = AnyBathActs.TestCase
