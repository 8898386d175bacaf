"""What cannot be helped is left out of a plan of the log, and the others are planned."""

from typing import Any

import pytest

from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.what_fits import beside, what_fits
from tests.planning.kit import read, studio
from tests.planning.test_why_act import asked


def test_a_lot_without_a_place_is_left_out_and_the_others_are_planned() -> None:
    """A soak that must end at midnight has no hours; the goal then wants what is left."""
    step = {"id": "soak", "min": 60, "max": 60}
    night = {"id": "night", "steps": [{"id": "begin", "hands": 10}, {"id": "rest", "min": 840,
             "max": 840}, {"id": "lift", "hands": 10}], "pieces": 2}  # fmt: skip
    day = {"id": "day", "steps": [{"id": "begin", "hands": 10}, step, {"id": "lift", "hands": 10}],
           "pieces": 3}  # fmt: skip
    problem = read(studio(lots=[night, day]))
    assert plan_studio(problem, Effort(tries=0)).status == "infeasible"
    rest, left = what_fits(problem, Effort(tries=0))
    assert [one.lot for one in left] == ["night"]
    assert "night" in left[0].words
    found = plan_studio(rest, Effort(tries=0))
    assert found.plan is not None
    assert set(found.plan.spans) == {"day"}


def test_a_problem_that_fits_stays_as_it_is() -> None:
    problem = read(studio(lots=[{"id": "day", "steps": [{"id": "begin", "hands": 10}]}]))
    assert what_fits(problem, Effort(tries=0)) == (problem, ())


def test_where_nothing_fits_all_is_left_out() -> None:
    long = {"id": "long", "steps": [{"id": "begin", "hands": 1200}]}
    rest, left = what_fits(read(studio(lots=[long])), Effort(tries=0))
    assert (rest.lots, [one.lot for one in left]) == ((), ["long"])


def one_lift_at_noon(*names: str) -> Any:
    """Lots that soak since 07:00, each to be lifted by 09:20, half an hour by hand from 09:00 on.

    One of them can be; a third lot has all day.
    """
    steps = [{"id": "soak", "min": 60, "max": 140}, {"id": "lift", "hands": 30}]
    facts = {"soak": {"start": "2027-03-01T07:00", "end": None}}
    lots = [{"id": name, "steps": steps, "actual": facts} for name in names]
    day = {"id": "day", "steps": [{"id": "begin", "hands": 10}]}
    return studio(lots=[*lots, day], start="2027-03-01T08:00")


def test_a_lot_without_a_place_beside_the_others_leaves_them_a_plan() -> None:
    problem = read(one_lift_at_noon("A", "B"))
    assert what_fits(problem, Effort(tries=0)) == (problem, ()), "each alone has a place"
    assert plan_studio(problem, Effort(tries=0)).plan is None
    rest, left = beside(problem, Effort(tries=0))
    assert [one.lot for one in left] == ["B"]
    assert left[0].words.startswith("B finds no place beside the others")
    found = plan_studio(rest, Effort(tries=0))
    assert found.plan is not None
    assert set(found.plan.spans) == {"A", "day"}


def test_who_counts_on_the_milk_of_one_left_out_is_left_out_with_it() -> None:
    whole = one_lift_at_noon("A", "B")
    whole["lots"][2]["steps"].append({"id": "dip", "hands": 10})
    milk = {"id": "milk", "made_by": {"lot": "B", "step": "lift"}, "life": 600,
            "used_by": [{"lot": "day", "step": "dip"}]}  # fmt: skip
    rest, left = beside(read(whole | {"milks": [milk]}), Effort(tries=0))
    assert [one.lot for one in left] == ["B", "day"]
    assert [one.name for one in rest.lots] == ["A"]


def test_where_all_have_a_place_none_is_left_out() -> None:
    problem = read(one_lift_at_noon("A"))
    assert beside(problem, Effort(tries=0)) == (problem, ())
    over = Effort(stop=lambda: True)
    assert beside(read(one_lift_at_noon("A", "B")), over)[1] == (), "no time: nothing is claimed"


@pytest.mark.parametrize("engine", ["own", "optimizer"])
def test_the_window_hears_of_the_plan_of_the_others_and_why_one_is_left_out(engine: str) -> None:
    if engine == "optimizer":
        pytest.importorskip("ortools", reason="the extra optimizer is not installed")
    whole = one_lift_at_noon("A", "B")
    (_, fields) = asked(whole, "plan", engine=engine, more={"what_fits": True})[-1]
    assert set(fields["starts"]) == {"A", "day"}
    assert [one["lot"] for one in fields["left_out"]] == ["B"]
    (_, told) = asked(whole, keep=fields, engine=engine, more={"what_fits": True})[-1]
    (group,) = told["groups"]
    assert group["lot"] == "B"
    ways = [one["changes"][0]["change"] for one in group["ways_out"]]
    assert "more_hands" in ways, "somebody who helps"
    assert all(one["plan"]["starts"].keys() >= {"A", "B"} for one in group["ways_out"]
               if one["changes"][0]["change"] != "leave_out")  # fmt: skip
    joint = group["why"][0]
    assert joint.startswith("Not all together" if engine == "optimizer" else "B finds no place")
