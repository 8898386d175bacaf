"""Mending a plan: no date later than it was if that can be, fewest moved visits, then the score.

The cases are worked out by hand, and for one lot against every plan there is.
"""

from copy import deepcopy
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.answer import answer
from studio_log.planning.apart import Apart, Ask
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.lates import lates
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Plan, Problem, Span
from studio_log.planning.repair import repair
from tests.planning.kit import hours, instance, read, studio, studios
from tests.planning.test_differences import at, dips
from tests.planning.test_keep import later, moved, planned
from tests.planning.test_plans import every_plan, score_of

DAY = 1440


def mended(problem: Problem, old: Plan, tries: int = 40) -> tuple[Plan, list[str]]:
    found = repair(problem, old, Effort(tries=tries))
    assert found.outcome.plan is not None
    assert violations(problem, found.outcome.plan) == []
    return found.outcome.plan, [one.words for one in found.differences]


def by_hand(value: Any, **times: tuple[int, int]) -> tuple[Problem, Plan]:
    problem = read(value)
    plan = replace(planned(problem, 0), made_for="")
    for lot, (dip, down) in times.items():
        plan = at(plan, lot, dip, down)
    return problem, plan


def test_only_what_is_in_the_way_moves() -> None:
    """L1 dries in rain until Tue 09:40 at least, L4 was to have its place on the line at 09:00.

    By hand: L1 is taken down on Tuesday at 09:40 at the earliest, ten minutes, L4 dipped at 09:50;
    L2 on Thursday has nothing to do with it.
    """
    value = dips("L1", "L2", "L4", dry_min_by_date={"2027-03-01": 1450}, start="2027-03-01T12:00")
    value["lots"][0]["steps"][1]["drying"] = True
    value["lots"][0]["actual"] = {
        "dip": {"start": "2027-03-01T09:00", "end": "2027-03-01T09:30"},
        "dry": {"start": "2027-03-01T09:30", "end": None},
    }
    noon = 720
    problem, old = by_hand(value, L4=(DAY + 540 - noon, 2 * DAY + 600 - noon),
                           L2=(3 * DAY + 540 - noon, 3 * DAY + 840 - noon))  # fmt: skip
    own = {"dry": Span(-150, 240), "take down": Span(240, 250)}
    old = replace(old, spans={**old.spans, "L1": own})
    new, words = mended(problem, old)
    assert moved(old, new, problem) == [("L1", "take down"), ("L4", "dip")]
    down = "dry is not over before Tue 09:40"
    assert words == [
        "You come in 3 times instead of 4.",
        f"Moved: L1's take down from Mon 16:00 to Tue 09:40, because {down}.",
        "Moved: L4's dip from Tue 09:00 to Tue 09:50, because the line is full until Tue 09:40.",
        "Everything else stays.",
    ]


def test_a_date_is_worth_more_than_what_stays() -> None:
    """L1's dip slipped from Monday to Tuesday. L2, without a date, has the line on Tuesday.

    By hand: L1 is due on Tuesday 16:00. If L2 stays, L1 is dipped on Wednesday, a day late; if L2
    goes, L1 is dipped on Tuesday and down by 16:00 in time: two visits more move.
    """
    value = dips("L1", "L2", start="2027-03-02T00:00")
    value["lots"][0]["due"] = "2027-03-02T16:00"
    problem, old = by_hand(value, L1=(540 - DAY, 900 - DAY), L2=(540, 900))
    new, words = mended(problem, old)
    assert lates(problem, new) == ()
    assert ("L2", "dip") in moved(old, new, problem)
    assert words[0].startswith(("You come in", "Moved: L1's dip from Mon 1 March 09:00 to Tue"))
    value["lots"][0].pop("due")
    problem, old = by_hand(value, L1=(540 - DAY, 900 - DAY), L2=(540, 900))
    new, _ = mended(problem, old)
    assert {lot for lot, _ in moved(old, new, problem)} == {"L1"}


def test_lateness_that_was_there_before_is_borne() -> None:
    """L1 was planned a day late. It could be in time now, but nobody asked for that."""
    value = dips("L1", "L2", resources={"line_m": 20}, due=None)
    value.pop("due")
    value["lots"][0]["due"] = "2027-03-02T16:00"
    problem, old = by_hand(value, L1=(2 * DAY + 540, 2 * DAY + 900), L2=(DAY + 540, DAY + 900))
    new, words = mended(problem, old)
    assert moved(old, new, problem) == []
    assert words == ["Everything stays as it was planned."]


def test_one_moved_visit_is_better_than_a_spared_session() -> None:
    """L1's taking down slipped. Nobody is due to come that day: it moves alone all the same."""
    value = dips("L1", "L2", start="2027-03-02T12:00")
    value["lots"][0]["actual"] = {
        "dip": {"start": "2027-03-01T09:00", "end": "2027-03-01T09:30"},
        "dry": {"start": "2027-03-01T09:30", "end": None},
    }
    problem = read(value)
    plan = replace(planned(problem, 0), made_for="")
    own = {"dry": Span(-1590, -180), "take down": Span(-180, -170)}
    old = at(replace(plan, spans={**plan.spans, "L1": own}), "L2", 3 * DAY - 180, 4 * DAY - 180)
    new, _ = mended(problem, old)
    assert moved(old, new, problem) == [("L1", "take down")]
    assert new.spans["L1"]["take down"].start == 0


@pytest.mark.parametrize(
    ("load", "lift", "down"),
    [(360, 900, 1500), (420, 900, 1260), (840, 1500, 2000), (60, 660, 1500), (900, 1560, 1980)],
)
@pytest.mark.parametrize("due", [None, 1500, 2600])
def test_one_lot_is_mended_as_well_as_can_be(
    load: int, lift: int, down: int, due: int | None
) -> None:
    """Against every plan of the lot: new lateness, then moved visits, then the score."""
    steps: list[dict[str, Any]] = [
        {"id": "load", "hands": 30, "use": {"tub": 5}},
        {"id": "soak", "min": 100, "max": 700, "use": {"tub": 5}},
        {"id": "lift", "hands": 40, "use": {"tub": 5}},
        {"id": "dry", "min": 150, "max": 1020},
        {"id": "take down", "hands": 20},
    ]
    problem = read(studio(
        lots=[{"id": "L1", "steps": steps, "due": due}], grid_min=60, horizon_days=3,
        resources={"vessels": [{"id": "tub1", "kind": "tub", "litres": 5}]},
        calendar={"working": hours(("09:00", "12:00"), ("14:00", "18:00"))},
    ))  # fmt: skip
    old = replace(planned(problem, 0), made_for="", spans={"L1": {
        "load": Span(load, load + 60), "soak": Span(load + 60, lift), "lift": Span(lift, lift + 60),
        "dry": Span(lift + 60, down), "take down": Span(down, down + 60)}})  # fmt: skip
    late = sum(one.minutes for one in lates(problem, old))

    def worth(plan: Plan) -> tuple[int, ...] | None:
        score = score_of(problem, plan)
        if score is None:
            return None
        return max(0, score[0] - late), len(moved(old, plan, problem)), *score

    worths = [one for plan in every_plan(problem, 2160) if (one := worth(plan)) is not None]
    new, _ = mended(problem, old, 3)
    assert worth(new) == min(worths)


@pytest.mark.long
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), st.integers(1, 3), st.integers(0, 900))
def test_every_mended_plan_passes_and_what_went_as_planned_stays(
    value: Any, quarter: int, longer: int
) -> None:
    problem = read(value)
    old = plan_studio(problem, Effort(tries=1)).plan
    if old is None:
        return
    then, old = later(value, old, quarter * 360)
    same, _ = mended(read(then), old, 2)
    assert moved(old, same, read(then)) == []
    slipped = deepcopy(then)
    for lot in slipped["lots"]:
        for step in lot["steps"]:
            if "min" in step and not step.get("cure") and step.get("drying"):
                step["min"] += longer
    problem = read(slipped)
    found = repair(problem, old, Effort(tries=4))
    if found.outcome.plan is not None:
        assert violations(problem, found.outcome.plan) == []
        assert found.differences
        assert repair(problem, old, Effort(tries=4)) == found


def test_what_fits_nowhere_any_more_is_said_and_is_no_fault() -> None:
    """Cloth of 5 m, and a line that is 4 m long by now: no plan is made against that."""
    old = planned(read(studio()), 0)
    found = repair(read(studio(resources=studio()["resources"] | {"line_m": 4})), old, Effort())
    assert (found.outcome.status, found.outcome.plan, found.differences) == ("infeasible", None, ())
    assert found.outcome.why == ("L1 does not fit on the line: dry takes 5 m, and there are 4 m.",)


def test_a_process_of_its_own_mends_a_plan() -> None:
    value = instance("studio-four-lots-two-running")
    old = answer(read(value), Effort(tries=0)).fields
    value["resources"]["line_m"] -= 1
    heard: list[Any] = []
    ask = Ask(value, do="repair", engine="own", seconds=60, tries=3, keep=old)
    assert Apart(ask, heard.append).wait(60)
    done = heard[-1]["done"]
    assert done["status"] == "feasible"
    assert done["differences"][-1]["kind"] == "stays"
    assert {"kind", "words", "lots"} == set(done["differences"][0])
