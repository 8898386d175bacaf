"""Trials of a real studio: planned, dyed by reminder, read blind, unveiled, taken back."""

import math
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.science.colour.lab import Lab
from studio_log.services.commands import AnswerReminder, Correct, Redo, Undo
from studio_log.services.questions import BenchFor, RemindersFor
from studio_log.services.records import record_from
from studio_log.services.swatches import NewSwatch, ReadSwatch
from studio_log.services.trials import (
    DoArm,
    GiveLot,
    GiveSwatch,
    NewTrial,
    NoteTrial,
    ReadTag,
    SetTrial,
    TrialFor,
    TrialNeedsFor,
    TrialPage,
    TrialPlan,
    TrialReport,
    TrialReportFor,
    TrialsFor,
    TrialTagsFor,
    UnveilTrial,
)
from tests.support.builders import NINE
from tests.support.fixtures import Workshop

QUESTION = "Does a long cure deepen madder?"
PLAN = TrialPlan(
    (0.0, 3.0, 10.0, 30.0, 90.0), blocks=("1", "2", "3"), seed=7, day=date(2026, 6, 12)
)
DAY = timedelta(days=1)


def planned(shop: Workshop, plan: TrialPlan = PLAN) -> str:
    return shop.do(NewTrial(QUESTION, plan)).code


def page(shop: Workshop, name: str) -> TrialPage:
    return shop.studio.ask(TrialFor(name))


def report(shop: Workshop, name: str) -> TrialReport:
    return shop.studio.ask(TrialReportFor(name))


def read_all(shop: Workshop, code: str, slope: float = 4.0, spread: float = 0.5) -> None:
    """Read every tag; depth rises by so much for each tenfold of age."""
    trial = page(shop, code).trial
    for unit in sorted(trial.units, key=lambda one: one.read):
        age = trial.arm(unit.arm).age_d or 0.0
        rise = slope * math.log10(age) if age else -2.0
        shift = (0.6, -0.6, 0.0)[unit.replicate - 1] * spread + 0.3 * unit.block
        shop.do(ReadTag(code, unit.tag, value=round(20 + rise + shift, 3)))


def test_a_trial_from_its_plan_to_its_report(shop: Workshop) -> None:
    code = planned(shop)
    assert code == "T26-001"
    found = page(shop, "long cure")
    assert found.line.code == code
    assert [arm.words for arm in found.arms] == ["0 d", "3 d", "10 d", "30 d", "90 d"]
    # A calendar: 12 June and 30 days is 12 July, and 90 days is 10 September.
    assert [arm.dye_days[0] for arm in found.arms][-2:] == [date(2026, 7, 12), date(2026, 9, 10)]
    assert found.arms[3].soy_day == date(2026, 6, 9)
    assert len(found.units) == 30
    read_all(shop, code)
    shop.do(UnveilTrial(code))
    told = report(shop, code)
    assert told.fit is not None
    assert told.fit.slope.value == pytest.approx(4.0, abs=1e-3)
    assert told.words[0].startswith("Depth rises by 4")
    assert told.blind == 30
    assert any("Read blind: 30 of 30" in one for one in told.words)
    assert told.blocks is not None
    assert told.blocks.p_arms < 1e-6
    assert [one.words for one in told.means] == ["0 d", "3 d", "10 d", "30 d", "90 d"]
    assert len(told.plot.dots) == 30
    assert all(0 <= dot.x <= 1 and 0 <= dot.y <= 1 for dot in told.plot.dots)
    assert told.plot.part_at is not None  # the control stands in a column of its own


def test_only_tags_are_shown_while_it_is_read(shop: Workshop) -> None:
    code = planned(shop)
    shop.do(GiveLot(code, shop.new()))
    before = page(shop, code)
    first = before.next_tag
    assert before.units[0].tag == first
    assert before.units[0].arm
    shop.do(ReadTag(code, first, value=21.0))
    veiled = page(shop, code)
    assert veiled.line.veiled
    assert veiled.left == 29
    assert veiled.next_tag == veiled.units[1].tag
    assert {(one.arm, one.block, one.lot, one.swatch, one.dip) for one in veiled.units} == {
        ("", "", "", "", None)
    }
    assert all(arm.tags == () for arm in veiled.arms)
    assert not any("26-001" in words for _, _, words in veiled.history)
    with pytest.raises(Refusal, match="read blind"):
        report(shop, code)
    with pytest.raises(Refusal, match="29 tags"):
        shop.do(UnveilTrial(code))


def test_a_report_waits_for_the_unveiling_though_all_tags_are_read(shop: Workshop) -> None:
    code = planned(shop)
    for one in page(shop, code).units:
        shop.do(ReadTag(code, one.tag, value=21.0))
    with pytest.raises(Refusal, match="all its tags are read"):
        report(shop, code)


def test_a_broken_blind_is_kept_and_an_unveiling_is_not_taken_back(shop: Workshop) -> None:
    code = planned(shop)
    tag = page(shop, code).next_tag
    shop.do(ReadTag(code, tag, value=21.0))
    shop.do(UnveilTrial(code, broken=True, note="the key lay on the table"))
    for one in page(shop, code).units[1:4]:
        shop.do(ReadTag(code, one.tag, value=22.0))
    told = report(shop, code)
    assert told.blind == 1
    assert any("broken with 29 tags unread: the key lay" in one for one in told.words)
    for _ in range(3):
        shop.do(Undo(code))
    with pytest.raises(Refusal, match="cannot be unseen"):
        shop.do(Undo(code))
    assert page(shop, code).undo == ""
    shop.do(Undo(code, 2))
    assert page(shop, code).line.read == 0


def test_arms_ring_on_their_days_and_an_answer_is_an_entry(shop: Workshop) -> None:
    code = planned(shop)
    rung = shop.ring_on(datetime(2026, 6, 13, tzinfo=ZoneInfo("UTC")))
    assert rung[0][1].title == "Dye arm 0 d of T26-001 on 12 Jun"
    assert rung[0][0] == datetime(2026, 6, 12, 9, tzinfo=ZoneInfo("Europe/London"))
    done = shop.do(AnswerReminder(f"{code}/dye/1/1", "done"))
    assert "arm 0 d is dyed" in done.words
    assert shop.entries(code)[-1].act is Act.TRIAL_ARM
    assert record_from(shop.records(code)["dye/1/1"]).fate == "answered"
    assert page(shop, code).arms[0].dyed
    shop.do(Undo(code))
    assert not page(shop, code).arms[0].dyed
    assert record_from(shop.records(code)["dye/1/1"]).fate == "raised"  # back on the bench, silent
    shop.do(AnswerReminder(f"{code}/dye/1/1", "skip"))
    assert record_from(shop.records(code)["dye/1/1"]).fate == "answered"
    until = shop.studio.ask(RemindersFor(within=100 * 86400.0))
    assert [one.due.astimezone(ZoneInfo("Europe/London")).date() for one, _ in until] == [
        date(2026, 6, 15), date(2026, 6, 22), date(2026, 7, 12), date(2026, 9, 10)
    ]  # fmt: skip
    shop.do(AnswerReminder(f"{code}/dye/2/1", "putoff", put_off=2 * DAY))
    assert shop.studio.ask(BenchFor()) is not None


def test_two_arms_that_are_late_are_told_each(shop: Workshop) -> None:
    planned(shop)
    (text,) = shop.ring(at=datetime(2026, 6, 20, 12, tzinfo=ZoneInfo("UTC")))
    assert "2 things" in text.title
    assert "arm 0 d" in text.body
    assert "arm 3 d" in text.body


def test_backwards_all_meet_one_bath(shop: Workshop) -> None:
    plan = TrialPlan((0.0, 7.0, 30.0), blocks=("1", "2"), way="backwards", day=date(2026, 8, 1),
                     seed=3)  # fmt: skip
    code = planned(shop, plan)
    found = page(shop, code)
    # 30 days and 3 of soying before 1 August is 29 June by a calendar.
    assert [arm.soy_day for arm in found.arms] == [
        date(2026, 7, 29), date(2026, 7, 22), date(2026, 6, 29)
    ]  # fmt: skip
    assert {arm.dye_days for arm in found.arms} == {(date(2026, 8, 1),)}
    assert found.line.next.startswith("soak beans for arm 30 d: 29 Jun")
    shop.do(AnswerReminder(f"{code}/soy/3/1", "done"))
    assert page(shop, code).arms[2].state == "soyed"
    shop.do(DoArm(code, "soy"))
    assert page(shop, code).line.next.startswith("dye all arms")
    order = sorted(page(shop, code).trial.units, key=lambda one: one.dip)
    (bath,) = [one for one, _ in shop.studio.ask(RemindersFor(within=90 * 86400.0))]
    assert bath.why == f"In this order: {' '.join(one.tag for one in order)}."
    shop.do(AnswerReminder(f"{code}/dye/0/0", "done"))
    assert {arm.state for arm in page(shop, code).arms} == {"dyed"}
    with pytest.raises(Refusal, match="done before"):
        shop.do(DoArm(code, "dye"))


def test_the_age_is_counted_from_when_the_lot_was_dry(shop: Workshop) -> None:
    lot = shop.new()
    shop.walk_to(lot, "cure")
    dry = shop.clock.at
    code = planned(shop, TrialPlan((3.0, 30.0), blocks=("1",), seed=1, day=date(2026, 6, 1)))
    shop.do(GiveLot(code, lot))
    zone = ZoneInfo("Europe/London")
    wanted = dry.astimezone(zone).date() + 3 * DAY
    assert page(shop, code).arms[0].dye_days == (wanted,)
    shop.clock.at = dry + 5 * DAY
    shop.do(DoArm(code, "dye", arms=(1,)))
    ages = {one.arm: one.age_d for one in page(shop, code).units}
    assert ages == {"3 d": 5.0, "30 d": 30.0}


def test_swatches_bring_their_colours(shop: Workshop) -> None:
    lot = shop.new()
    code = planned(shop, TrialPlan((1.0, 10.0, 100.0), blocks=("1",), replicates=1, seed=1))
    for unit, chroma in zip(page(shop, code).trial.units, (20.0, 30.0, 40.0), strict=True):
        swatch = shop.do(NewSwatch(lot)).code
        shop.do(ReadSwatch(swatch, Lab(50.0, chroma, 0.0), "photo", two_u=2.0))
        shop.do(GiveSwatch(code, unit.tag, swatch))
    told = report(shop, code)
    assert told.fit is not None
    assert told.fit.line.slope == pytest.approx(10.0)
    assert told.blind == 0
    # 2u in C*, by the weight of chroma in CIEDE2000 at C* 30: 2 (1 + 0.045 x 30).
    assert told.two_u == pytest.approx(4.7)
    assert any("more than the 2u of one swatch" in one for one in told.words)
    with pytest.raises(Refusal, match="another tag"):
        shop.do(GiveSwatch(code, page(shop, code).trial.units[0].tag, "W26-002"))


def test_readings_are_corrected_lost_and_refused(shop: Workshop) -> None:
    code = planned(shop)
    one, other = page(shop, code).units[:2]
    shop.do(ReadTag(code, f"{code}-{one.tag}", value=21.0))
    shop.do(Correct(code, 2, readings={"value": 23.5}))
    assert page(shop, code).units[0].value == 23.5
    shop.do(ReadTag(code, other.tag, lost=True, note="torn"))
    assert page(shop, code).units[1].lost
    shop.do(Undo(code))
    assert not page(shop, code).units[1].lost
    shop.do(Redo(code))
    assert page(shop, code).units[1].lost
    for bad in (
        ReadTag(code, "999999", value=1.0), ReadTag(code, one.tag),
        ReadTag(code, one.tag, value=-1),
        ReadTag(code, one.tag, value=math.nan),
        ReadTag(code, one.tag, lab=Lab(500.0, 0.0, 0.0)), Correct(code, 2, readings={"L": 3.0}),
        Correct(code, 1, readings={"value": 3.0}),
    ):  # fmt: skip
        with pytest.raises(Refusal):
            shop.do(bad)
    by_eye = planned(shop, TrialPlan((0.0, 9.0), measure="eye", seed=2))
    with pytest.raises(Refusal, match="a colour does not say"):
        shop.do(ReadTag(by_eye, page(shop, by_eye).next_tag, lab=Lab(50.0, 1.0, 1.0)))


@pytest.mark.parametrize(
    ("plan", "said"),
    [
        (TrialPlan((0.0, 5.0), blocks=("1",), replicates=3, seed=1), "of one age"),
        (TrialPlan((0.0,), ("no soy",), blocks=("1",), seed=1), "too few for a fit"),
        (TrialPlan((3.0, 30.0), blocks=("1",), seed=1), "All swatches are of one batch"),
        (TrialPlan((3.0, 30.0), blocks=("1", "2"), seed=1), "Two batches say little"),
    ],
)
def test_what_cannot_answer_says_so_in_words(shop: Workshop, plan: TrialPlan, said: str) -> None:
    code = planned(shop, plan)
    read_all(shop, code)
    shop.do(UnveilTrial(code))
    assert any(said in one for one in report(shop, code).words)


def test_all_alike_is_no_clear_effect(shop: Workshop) -> None:
    code = planned(shop)
    for unit in page(shop, code).units:
        shop.do(ReadTag(code, unit.tag, value=20.0))
    shop.do(UnveilTrial(code))
    told = report(shop, code)
    assert told.words[0].startswith("No clear effect")
    assert told.blocks is None
    assert told.plot.y_ticks


def test_missing_arms_are_named(shop: Workshop) -> None:
    code = planned(shop)
    trial = page(shop, code).trial
    for unit in trial.units:
        gone = unit.arm == 3
        shop.do(ReadTag(code, unit.tag, None if gone else 20.0 + unit.arm, lost=gone))
    shop.do(UnveilTrial(code))
    told = report(shop, code)
    assert len(told.missing) == 6
    assert told.blocks is None
    assert any("6 pieces have no reading" in one for one in told.words)


def test_what_it_needs_and_resolves_is_said_before(shop: Workshop) -> None:
    first = shop.studio.ask(TrialNeedsFor(PLAN))
    assert first.words[0] == "30 pieces, 3 soyings, 5 dye baths."
    assert "not known" in first.words[2]
    code = planned(shop)
    read_all(shop, code)
    shop.do(UnveilTrial(code))
    told = report(shop, code)
    assert told.fit is not None
    again = shop.studio.ask(TrialNeedsFor(PLAN))
    assert f"lay {told.fit.line.residual_sd:.2g} apart in 1 trial" in again.words[2]
    assert shop.studio.ask(TrialNeedsFor(TrialPlan((5.0,)))).fault
    late = shop.studio.ask(TrialNeedsFor(TrialPlan((0.0, 90.0), way="backwards", day=NINE.date())))
    assert any("would have had to soak" in one for one in late.warnings)


def test_it_is_changed_ended_noted_and_taken_back_whole(shop: Workshop) -> None:
    code = planned(shop)
    shop.do(SetTrial(code, question="Does it?", day=date(2026, 7, 1)))
    shop.do(NoteTrial(code, "hung in the loft"))
    assert page(shop, code).arms[0].dye_days == (date(2026, 7, 1),)
    shop.do(SetTrial(code, ended=True))
    assert shop.studio.ask(TrialsFor()) == ()
    assert shop.studio.ask(RemindersFor(within=86400.0 * 300)) == []
    for _ in range(4):
        shop.do(Undo(code))
    assert shop.studio.ask(TrialsFor(ended=True)) == ()
    shop.do(Redo(code))
    assert shop.studio.ask(TrialsFor())[0].question == QUESTION
    assert planned(shop) == "T26-002"
    assert shop.studio.check() == []
    shop.studio.check(repair=True)
    assert shop.studio.ask(TrialsFor())[0].code == "T26-002"


def test_tags_do_not_tell(shop: Workshop) -> None:
    code = planned(shop)
    tags = shop.studio.ask(TrialTagsFor(code))
    trial = page(shop, code).trial
    assert [one.code for one in tags] == [
        f"{code}-{unit.tag}" for unit in sorted(trial.units, key=lambda one: one.read)
    ]
    assert not any(" d" in f"{one.method}{one.weight}{one.caution}" for one in tags)


def test_no_undo_is_offered_of_an_unveiling(shop: Workshop) -> None:
    code = planned(shop, TrialPlan((3.0, 30.0), blocks=("1",), seed=1))
    read_all(shop, code)
    assert shop.studio.ask(BenchFor()).take_back is not None
    shop.do(UnveilTrial(code))
    assert shop.studio.ask(BenchFor()).take_back is None
    shop.do(NoteTrial(code, "surprising"))
    assert shop.studio.ask(BenchFor()).take_back is not None
