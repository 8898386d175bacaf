"""The marks of the cure ring on their days, are put off, seen, and begin anew."""

from datetime import timedelta

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.lots import cure_days_of
from studio_log.domain.methods import StepKind
from studio_log.domain.windows import windows_of
from studio_log.services import questions as q
from studio_log.services.commands import (
    AnswerReminder,
    ChangeSettings,
    GoOn,
    SetLot,
    SplitLot,
    Undo,
)
from tests.support.builders import DAY, HOUR, SCOUR
from tests.support.fixtures import Workshop


@pytest.fixture
def cured(shop):
    """A lot whose third coat has just been felt dry."""
    code = shop.new()
    shop.walk_to(code, "cure")
    return code


@pytest.mark.usefixtures("cured")
def test_the_marks_of_the_cure_ring_on_their_days(shop):
    dry = shop.clock.at
    rung = {}

    def see(at, text):
        for key in text.keys:
            if "cure_mark" in key:
                rung.setdefault(key.rsplit("/", 1)[-1], (at - dry) // DAY)
                shop.do(AnswerReminder(key, "done"))

    shop.ring_on(dry + 91 * DAY, see)
    assert rung == {"paint": 12, "resists": 14, "ready": 90}


def test_a_mark_put_off_stays_off_whatever_else_happens_to_the_lot(shop, cured):
    dry = shop.clock.at
    shop.ring_on(dry + 12 * DAY + 12 * HOUR)
    (key,) = [one.key for one in shop.studio.ask(q.BenchFor()).now if one.kind == "cure_mark"]
    shop.do(AnswerReminder(key, "putoff", put_off=timedelta(hours=30)))
    until = shop.clock.at + 30 * HOUR
    shop.mark(cured, "now", Act.NOTE, note="moved")
    shop.do(SetLot(cured, place="shelf 2"))
    shop.do(ChangeSettings({"text_percent": 110}))
    shop.studio.check(repair=True)
    rung = [at for at, text in shop.ring_on(until + 10 * HOUR) if key in text.keys]
    assert rung[0] == shop.studio.desk(None).quiet.waking(until)


@pytest.mark.parametrize(
    "rest",
    [{"put_off": timedelta(0)}, {"put_off": -HOUR}, {"put_off": 61 * DAY},
     {"put_off": timedelta.max}, {}],
)  # fmt: skip
def test_nonsense_puts_no_mark_off(shop, cured, rest):
    dry = shop.clock.at
    shop.ring_on(dry + 12 * DAY + 12 * HOUR)
    (key,) = [one.key for one in shop.studio.ask(q.BenchFor()).now if one.kind == "cure_mark"]
    before = shop.records(cured)
    with pytest.raises(Refusal, match="how long"):
        shop.do(AnswerReminder(key, "putoff", **rest))
    assert shop.records(cured) == before


def test_the_seen_mark_of_one_cure_does_not_silence_the_next(shop, cured):
    """Painting was seen on day 12; a fourth coat on day 13 starts all marks again."""
    dry = shop.clock.at
    shop.ring_on(dry + 12 * DAY + 12 * HOUR)
    for card in shop.studio.ask(q.BenchFor()).now:
        shop.do(AnswerReminder(card.key, "done"))
    shop.clock.set(dry + 13 * DAY)
    for slug in ("dip-4", "spin-4", "dry-4"):
        step = next(one for one in shop.lot(cured).steps if one.slug == slug)
        if not step.running:
            shop.mark(cured, slug, Act.START)
        shop.clock.at += step.spec.lasts.aim
        shop.mark(cured, slug, Act.DRY if slug == "dry-4" else Act.END)
    again = shop.clock.at
    rung = shop.ring_on(again + 13 * DAY)
    assert next(at for at, text in rung if "Paint within" in text.title) >= again + 12 * DAY


def test_going_on_ends_the_marks(shop, cured):
    shop.clock.move(days=3)
    shop.do(GoOn(cured, SCOUR, sure=True))
    first = next(step for step in shop.lot(cured).steps if step.join == 1)
    shop.mark(cured, str(first.number), Act.START)
    marks = [one for key, one in shop.records(cured).items() if "cure_mark" in key]
    assert marks
    assert not [one for one in marks if one.status in {"waiting", "raised"}]


def test_a_mark_that_was_seen_is_in_the_journal_and_can_be_taken_back(shop, cured):
    shop.ring_on(shop.clock.at + 12 * DAY + 12 * HOUR)
    (key,) = [one.key for one in shop.studio.ask(q.BenchFor()).now if one.kind == "cure_mark"]
    outcome = shop.do(AnswerReminder(key, "done", note="not this week"))
    assert outcome.subject == cured, "the bench offers to take it back"
    assert shop.entries(cured)[-1].note.endswith("seen. not this week")
    record = shop.records(cured)[key.partition("/")[2]]
    assert (record.status, record.answer) == ("answered", "seen: not this week")
    # Whatever else happens, and worked out anew from the journal, it stays seen.
    shop.mark(cured, "now", Act.NOTE, note="moved")
    shop.do(Undo(cured))
    shop.studio.check(repair=True)
    assert shop.studio.ask(q.BenchFor()).now == ()
    shop.do(Undo(cured))
    assert [one.key for one in shop.studio.ask(q.BenchFor()).now] == [key]


def test_a_split_takes_along_what_was_seen(shop, cured):
    shop.ring_on(shop.clock.at + 12 * DAY + 12 * HOUR)
    (key,) = [one.key for one in shop.studio.ask(q.BenchFor()).now if one.kind == "cure_mark"]
    shop.do(AnswerReminder(key, "done"))
    pieces = shop.lot(cured).pieces
    assert len(pieces) > 1
    shop.do(SplitLot(cured, (pieces[-1].number,), "the other half"))
    assert shop.studio.ask(q.BenchFor()).now == ()


def test_the_chosen_view_of_the_cure_outlives_going_on(shop: Workshop) -> None:
    code = shop.new(cure_days=30)
    shop.do(GoOn(code, "dye-immersion"))
    lot = shop.lot(code)
    cure = next(one for one in lot.steps if one.spec.kind is StepKind.CURE)
    assert cure_days_of(lot, cure.join) == 30
    windows = windows_of(lot, shop.clock.at, shop.studio.settings.quiet("UTC"))
    window = windows[cure.number]
    assert window.end.aim - window.start.aim == timedelta(days=30)
    shop.do(SetLot(code, cure_days=14))
    assert cure_days_of(shop.lot(code), cure.join) == 14


def test_a_view_chosen_with_a_scour_is_meant_for_the_soy_after_it(shop: Workshop) -> None:
    code = shop.new(method="scour-cellulose", cure_days=7)
    shop.do(GoOn(code, "soy-immersion-long"))
    assert cure_days_of(shop.lot(code), 1) == 7
    shop.do(GoOn(code, "soy-immersion-long"))
    assert cure_days_of(shop.lot(code), 1) == 7
    assert cure_days_of(shop.lot(code), 2) == shop.lot(code).methods[2].cure.default_days  # type: ignore[union-attr]
