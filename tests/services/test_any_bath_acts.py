"""Whatever is done to a bath: the journal only grows, and all else follows from it."""

import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from studio_log.domain.bath_due import bath_reminders
from studio_log.domain.bath_kinds import KINDS
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services.bath_acts import MARKABLE
from studio_log.services.bath_keeping import bath_of
from studio_log.services.baths import BathFor, BathsFor, MarkBath, NewBath, SetBath
from studio_log.services.commands import AnswerReminder, Correct, Redo, Undo
from tests.support.builders import HOUR, LONDON, NINE
from tests.support.fixtures import Workshop, open_workshop
from tests.support.hand_clock import HandClock

CODE = "B26-001"
MARKS = st.builds(
    lambda act, back, grams, ahead: ("mark", act, back, grams, ahead),
    st.sampled_from([*sorted(MARKABLE), Act.BATH_USE, Act.PLAN]),
    st.integers(0, 190),
    st.integers(1, 1500),
    st.integers(-5, 60),
)
"""An act, how many hours ago where that is odd, grams of cloth, hours ahead of a plan."""
ERRANDS = st.one_of(
    MARKS,
    MARKS,
    st.tuples(st.just("undo"), st.sampled_from([None, None, 2, 3, 5])),
    st.tuples(st.sampled_from(["redo", "finish", "open"])),
    st.tuples(st.just("correct"), st.integers(1, 12), st.integers(0, 190)),
    st.tuples(st.just("wait"), st.integers(1, 30)),
    st.tuples(
        st.just("answer"), st.sampled_from(["done", "skip", "putoff"]), st.integers(0, 5)
    ),
)  # fmt: skip


class Trial:
    """A studio with one bath, and what is done to it."""

    def __init__(self, shop: Workshop, kind: str) -> None:
        self.shop = shop
        self.seen = shop.everything()
        self.do(NewBath(kind, refresh_grams=1_000))
        shop.clock.at += 200 * HOUR

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

    def mark(self, act: Act, back: int, grams: int, ahead: int) -> None:
        now = self.shop.clock.at
        planned = now + ahead * HOUR if ahead > 0 else None
        at = now - back * HOUR if back % 2 else None
        self.do(MarkBath(CODE, act, at, "x", {"ph": 7.0}, grams=grams, planned=planned))

    def undo(self, entry: int | None) -> None:
        self.do(Undo(CODE, entry))

    def redo(self) -> None:
        self.do(Redo(CODE))

    def finish(self) -> None:
        self.do(SetBath(CODE, finished=True))

    def open(self) -> None:
        self.do(SetBath(CODE, finished=False))

    def correct(self, entry: int, back: int) -> None:
        self.do(Correct(CODE, entry, self.shop.clock.at - back * HOUR))

    def wait(self, hours: int) -> None:
        """Let time pass and ring: nothing that is due and may ring is left unrung."""
        self.shop.ring(hours=hours)
        now = self.shop.clock.at
        for record in self.shop.records(CODE).values():
            waits = record.status == "waiting" and record.rings_at <= now
            assert not waits or LONDON.is_quiet(now), record

    def answer(self, said: str, nth: int) -> None:
        keys = sorted(f"{CODE}/{tail}" for tail in self.shop.records(CODE))
        if keys:
            key = keys[nth % len(keys)]
            self.do(AnswerReminder(key, said, put_off=HOUR if said == "putoff" else None))

    def check(self) -> None:
        """What is open is what is worked out; nothing due lacks its record; it can be shown."""
        with self.shop.studio.store.reading() as look:
            desk = self.shop.studio.desk(look)
            bath = bath_of(desk, CODE)
            due = {one.key for one in bath_reminders(bath, desk.now, desk.quiet)}
            kept = look.reminders.of(CODE)
        still_open = {one.key for one in kept if one.status in {"waiting", "raised"}}
        answered = {one.key for one in kept if one.status == "answered"}
        assert still_open <= due <= still_open | answered
        self.shop.studio.ask(BathFor(CODE))
        self.shop.studio.ask(BathsFor(finished=True))


PLANNED = ("mark", Act.PLAN, 0, 1, 30)
SPENT = ("mark", Act.BATH_USE, 0, 1500, -1)


@pytest.mark.long
@example(kind="fructose-vat", errands=[PLANNED, ("undo", None), ("redo",), ("wait", 30)])
@example(kind="chalk", errands=[SPENT, ("wait", 3), ("undo", None), ("redo",), ("finish",)])
@example(kind="tannin", errands=[("wait", 30), ("wait", 30), ("answer", "done", 0), ("undo", None)])
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(kind=st.sampled_from(sorted(KINDS)), errands=st.lists(ERRANDS, min_size=3, max_size=20))
def test_whatever_is_done_to_a_bath_its_reminders_follow(
    kind: str, errands: list[tuple[object, ...]]
) -> None:
    with tempfile.TemporaryDirectory(prefix="studio-log-baths-") as home:
        shop = open_workshop(Path(home) / "studio", HandClock(NINE))
        try:
            trial = Trial(shop, kind)
            for name, *rest in errands:
                getattr(trial, str(name))(*rest)
                trial.check()
            assert shop.studio.check() == []
        finally:
            shop.studio.close()
