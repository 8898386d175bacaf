"""Trials whose arms have names: held against their control, batch by batch, and told in words."""

from collections.abc import Mapping

import pytest

from studio_log.domain.errors import Refusal
from studio_log.services.trials import (
    NewTrial,
    ReadTag,
    SetTrial,
    TrialFor,
    TrialNeedsFor,
    TrialPage,
    TrialPlan,
    TrialReport,
    TrialReportFor,
    UnveilTrial,
)
from tests.support.fixtures import Workshop

ARMS = ("no soy", "one coat", "two coats", "tannin first")
PLAN = TrialPlan((), ARMS, blocks=("1", "2", "3"), seed=7)
WIGGLE = {1: (0.3, -0.2, 0.1), 2: (-0.4, 0.2, 0.0), 3: (0.1, 0.2, -0.5), 4: (0.2, -0.3, 0.4)}
"""What chance adds, by arm and batch."""


def planned(shop: Workshop, plan: TrialPlan = PLAN) -> str:
    return shop.do(NewTrial("Does soy deepen madder?", plan)).code


def page(shop: Workshop, code: str) -> TrialPage:
    return shop.studio.ask(TrialFor(code))


def report(shop: Workshop, code: str) -> TrialReport:
    return shop.studio.ask(TrialReportFor(code))


def read(
    shop: Workshop, code: str, rise: Mapping[str, float], lost: tuple[int, int] = (0, 0)
) -> None:
    """Read every tag as 30 and what its arm adds; the batches lie 5 apart."""
    trial = page(shop, code).trial
    for unit in sorted(trial.units, key=lambda one: one.read):
        arm = trial.arm(unit.arm)
        chance = WIGGLE[unit.arm][unit.block - 1] + 0.1 * unit.replicate
        value = 30 + rise.get(arm.words, 0.0) + 5 * unit.block + chance
        gone = unit.cell == lost
        shop.do(ReadTag(code, unit.tag, value=None if gone else round(value, 3), lost=gone))
    shop.do(UnveilTrial(code))


def test_arms_are_held_against_the_first_of_them(shop: Workshop) -> None:
    code = planned(shop)
    assert page(shop, code).trial.control == 1
    assert "control: no soy" in page(shop, code).facts
    assert [one.control for one in page(shop, code).arms] == [True, False, False, False]
    read(shop, code, {"two coats": 6.0, "tannin first": -4.0})
    told = report(shop, code)
    assert told.words[0] == (
        "Clearly higher than the control, no soy: two coats. Clearly lower: tannin "
        "first. No clear difference: one coat."
    )
    assert any(one.startswith("one coat: no clear difference (") for one in told.words)
    assert any(one.startswith("two coats: higher by 5.8") for one in told.words)
    assert any("all 3 arms together (Dunnett; each arm once in each of 3 batches, 6 degrees" in one
               for one in told.words)  # fmt: skip
    assert not any("too few for a fit" in one for one in told.words)
    assert not any("two means" in one for one in told.words), "that is for one pair only"
    control, same, more, less = told.means
    assert (control.control, control.difference) == (True, None)
    assert (same.clear, more.clear, less.clear) == (False, True, True)
    assert more.difference is not None
    assert more.difference.low < 6 < more.difference.high
    assert told.held is not None
    assert (told.held.by, told.held.held.df) == ("batches", 6)


def test_the_drawing_has_a_bar_for_each_arm_and_the_level_of_the_control(shop: Workshop) -> None:
    code = planned(shop)
    read(shop, code, {"two coats": 6.0})
    drawn = report(shop, code).plot
    assert [bar.clear for bar in drawn.bars] == [False, True, False]
    assert drawn.level is not None
    assert all(bar.low <= drawn.level <= bar.high for bar in drawn.bars if not bar.clear)
    assert drawn.bars[1].low > drawn.level
    assert all(0 <= one <= 1 for bar in drawn.bars for one in (bar.x, bar.low, bar.at, bar.high))


def test_no_difference_is_called_none_that_is_clear(shop: Workshop) -> None:
    code = planned(shop)
    read(shop, code, {})
    told = report(shop, code)
    assert told.words[0].startswith("No clear difference: no arm is told from the control, no soy")
    assert "may still be hidden" in told.words[0]
    assert not any(one.clear for one in told.means)


def test_a_batch_that_lacks_an_arm_is_left_out_and_named(shop: Workshop) -> None:
    code = planned(shop)
    read(shop, code, {"two coats": 6.0}, lost=(2, 3))
    told = report(shop, code)
    assert told.held is not None
    assert (told.held.left_out, told.held.held.df) == ((3,), 3)
    assert any("Left out of this, as some arm has no reading there: batch 3." in one
               for one in told.words)  # fmt: skip
    assert any("Two batches say little" in one for one in told.words)


@pytest.mark.parametrize(
    ("plan", "said"),
    [
        (TrialPlan((), ARMS[:2], blocks=("1",), replicates=1, seed=1), "one piece of each arm"),
        (TrialPlan((), ARMS[:2], blocks=("1",), replicates=3, seed=1), "of one batch"),
        (TrialPlan((), ARMS[:2], blocks=("1", "2", "3"), seed=1), "that of a t test, the arm once"),
    ],
)
def test_what_the_plan_allows_to_say(shop: Workshop, plan: TrialPlan, said: str) -> None:
    code = planned(shop, plan)
    read(shop, code, {"one coat": 3.0})
    assert any(said in one for one in report(shop, code).words)


def test_a_control_that_is_lost_is_said(shop: Workshop) -> None:
    code = planned(shop, TrialPlan((), ARMS[:3], blocks=("1",), seed=1))
    read(shop, code, {}, lost=(1, 1))
    told = report(shop, code)
    assert told.held is None
    assert any("The control, no soy, has no reading" in one for one in told.words)


def test_the_control_is_named_by_arm_or_age_and_settled_before_anything_is_read(
    shop: Workshop,
) -> None:
    code = planned(shop, TrialPlan((0.0, 30.0), ("no soy",), control="no SOY", seed=1))
    assert page(shop, code).trial.control == 3
    shop.do(SetTrial(code, control="0 d"))
    assert page(shop, code).trial.control == 1
    with pytest.raises(Refusal, match="none of the arms: 0 d, 30 d, no soy"):
        shop.do(SetTrial(code, control="alum"))
    shop.do(ReadTag(code, page(shop, code).next_tag, value=20.0))
    with pytest.raises(Refusal, match="chosen by what was seen"):
        shop.do(SetTrial(code, control="no soy"))
    needs = shop.studio.ask(TrialNeedsFor(TrialPlan((0.0, 3.0), control="7")))
    assert "none of the arms" in needs.fault


def test_ages_are_held_against_age_0_beside_their_fit(shop: Workshop) -> None:
    code = planned(shop, TrialPlan((0.0, 3.0, 30.0, 90.0), blocks=("1", "2", "3"), seed=2))
    read(shop, code, {"90 d": 9.0, "30 d": 6.0, "3 d": 3.0})
    told = report(shop, code)
    assert told.fit is not None
    assert told.words[0].startswith("Depth rises")
    assert any(one.startswith("Clearly higher than the control, 0 d: 3 d, 30 d, 90 d")
               for one in told.words)  # fmt: skip
    assert told.plot.bars == (), "the line says it"
    assert [one.clear for one in told.means] == [None, True, True, True]


def test_a_plan_of_names_needs_no_beans_and_resolves_differences_from_the_control(
    shop: Workshop,
) -> None:
    needs = shop.studio.ask(TrialNeedsFor(PLAN))
    assert needs.words[0] == "24 pieces, 0 soyings, 1 dye bath."
    assert needs.words[1].startswith("Dyeing on ")
    assert "from the control" in needs.words[2]
    assert not any("beans" in one for one in (*needs.words, *needs.warnings))
    read(shop, code := planned(shop), {})
    assert not any("bath of its own" in one for one in report(shop, code).words)


def test_pieces_of_one_arm_and_batch_say_how_far_alike_pieces_lie_apart(shop: Workshop) -> None:
    """`read` sets the two replicates of each cell 0.1 apart: a deviation of 0.1 / sqrt(2)."""
    read(shop, planned(shop), {"two coats": 6.0})
    needs = shop.studio.ask(TrialNeedsFor(PLAN))
    assert "(alike pieces lay 0.071 apart in 1 trial so far)" in needs.words[2]
