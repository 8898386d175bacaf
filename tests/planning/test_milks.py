"""One milk for several lots: used when it is made and good; making and vessel count once."""

from copy import deepcopy
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.answer import answer
from studio_log.planning.check_milks import milk_faults
from studio_log.planning.check_plan import violations
from studio_log.planning.check_stores import store_faults
from studio_log.planning.effort import Effort
from studio_log.planning.moves import moved, windows
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Plan, Problem, Span
from studio_log.planning.read_plan import read_plan
from tests.planning.kit import faults, hours, read, studio, studios

DAY = 1440
STRAIN: list[dict[str, Any]] = [
    {"id": "beans", "hands": 10, "use": {"bowl": 5}},
    {"id": "bean soak", "min": 480, "max": 960, "use": {"bowl": 5}},
    {"id": "strain", "hands": 40},
]
DIP: list[dict[str, Any]] = [
    {"id": "wet", "hands": 20},
    {"id": "rest", "min": 60, "max": 20_000},
    {"id": "dip", "hands": 20, "use": {"line": 2}},
    {"id": "dry", "min": 240, "max": 6000, "use": {"line": 2}},
    {"id": "down", "hands": 10},
]


def shared(lots: int = 2, life: int = 1440, **more: Any) -> Any:
    """L0 makes a milk, in which L1 and others are dipped."""
    names = [f"L{n}" for n in range(1, lots + 1)]
    milk = {
        "id": "milk", "made_by": {"lot": "L0", "step": "strain"}, "life": life,
        "used_by": [{"lot": name, "step": "dip"} for name in names],
    }  # fmt: skip
    bowls = [{"id": f"bowl{n}", "kind": "bowl", "litres": 6} for n in (1, 2)]
    return studio(
        lots=[{"id": "L0", "steps": deepcopy(STRAIN)},
              *({"id": name, "steps": deepcopy(DIP)} for name in names)],
        resources={"vessels": bowls, "line_m": 6}, milks=[milk | more],
        calendar={"working": hours(("09:00", "12:00"), ("14:00", "17:00"))},
    )  # fmt: skip


def planned(value: Any, tries: int = 20) -> tuple[Problem, Plan]:
    problem = read(value)
    outcome = plan_studio(problem, Effort(tries=tries))
    assert outcome.plan is not None, outcome.why
    assert violations(problem, outcome.plan) == []
    return problem, outcome.plan


@pytest.mark.parametrize("lots", [1, 2, 3])
@pytest.mark.parametrize("life", [180, 1440, 2880])
def test_all_uses_lie_between_making_and_end_of_life(lots: int, life: int) -> None:
    _, plan = planned(shared(lots, life))
    made = plan.spans["L0"]["strain"].end
    for n in range(1, lots + 1):
        dip = plan.spans[f"L{n}"]["dip"]
        assert made <= dip.start
        assert dip.end <= made + life


def test_the_plan_of_two_lots_by_hand() -> None:
    """Beans from Mon 16:40, or earlier, to strain on Tue at 09:00; life two hours.

    So both lots are wetted before and dipped on Tuesday from 09:40 on, taken down from 14:00 on:
    four sessions (Monday, Tuesday twice, and nothing else), three of them visited.
    """
    problem, plan = planned(shared(2, 120), 40)
    assert plan.score.sessions == 3
    strain = plan.spans["L0"]["strain"]
    assert problem.clock.local(strain.start).strftime("%a %H") == "Tue 09"
    assert all(strain.end <= plan.spans[n]["dip"].start < strain.end + 120 for n in ("L1", "L2"))


PLANTED = [
    ("too soon", "dip", -3000, "before it is made"), ("too late", "dip", 5000, "no longer good"),
]  # fmt: skip


@pytest.mark.parametrize(("step", "by", "words"), [one[1:] for one in PLANTED])
def test_a_planted_use_out_of_time_is_found(step: str, by: int, words: str) -> None:
    problem, plan = planned(shared())
    spans = {lot: dict(own) for lot, own in plan.spans.items()}
    was = spans["L1"][step]
    spans["L1"][step] = Span(was.start + by, was.end + by)
    wrong = replace(plan, spans=spans)
    assert list(milk_faults(problem, plan)) == []
    assert any(words in one for one in milk_faults(problem, wrong))
    assert violations(problem, wrong) != []


def test_a_whole_lot_out_of_its_milks_time_is_found() -> None:
    """Two days later the lot alone is as good as before: it is only the milk that is not."""
    problem, plan = planned(shared())
    later = {n: Span(one.start + 2 * DAY, one.end + 2 * DAY) for n, one in plan.spans["L1"].items()}
    found = violations(problem, replace(plan, spans={**plan.spans, "L1": later}))
    assert "L1: dip uses milk" in found[0]
    assert "after it is no longer good." in found[0]


def test_the_vessel_is_taken_once_and_until_the_last_use() -> None:
    """With one bowl the beans lie in it until they are strained, and then the milk stands in it.

    A second lot's beans cannot be soaked meanwhile. The checker refuses them there.
    """
    value = shared(2, 1440, use={"bowl": 5})
    value["resources"]["vessels"] = value["resources"]["vessels"][:1]
    value["lots"].append({"id": "L9", "steps": deepcopy(STRAIN)})
    problem, plan = planned(value)
    assert plan.milks == {"milk": "bowl1"}
    last = max(plan.spans[lot]["dip"].end for lot in ("L1", "L2"))
    made, beans = plan.spans["L0"]["strain"].end, plan.spans["L9"]["beans"].start
    assert beans >= last or plan.spans["L9"]["bean soak"].end <= plan.spans["L0"]["beans"].start
    assert made < last
    for milks in ({}, {"milk": "bowl7"}):
        found = violations(problem, replace(plan, milks=milks))
        assert found == ["milk stands in no bowl, or in another than it does."]
    own = plan.spans["L9"]
    shift = made - own["beans"].start
    spans = {**plan.spans, "L9": {n: Span(one.start + shift, one.end + shift)
                                  for n, one in own.items()}}  # fmt: skip
    found = list(store_faults(problem, replace(plan, spans=spans)))
    assert any("bowl1 is asked for too much" in one and "milk milk" in one for one in found)


@pytest.mark.parametrize("made", ["2027-03-01T08:00", 480])
def test_a_milk_that_is_made_at_a_known_time_needs_no_lot(made: Any) -> None:
    value = shared(2, 600, made_by=None, made_at=made)
    problem, plan = planned(value)
    for name in ("L1", "L2"):
        dip = plan.spans[name]["dip"]
        assert dip.start >= 480
        assert dip.end <= 480 + 600
    assert problem.milks[0].at == 480


def test_a_milk_made_already_stands_where_it_is_and_binds_what_is_left() -> None:
    value = shared(2, 1440, use={"bowl": 5}, vessel="bowl2")
    value["start"] = "2027-03-02T12:00"
    at = "2027-03-02T"
    value["lots"][0]["actual"] = {"strain": {"start": f"{at}10:00", "end": f"{at}10:40"}}
    for lot in value["lots"][1:]:
        lot["actual"] = {"wet": {"start": f"{at}09:00", "end": f"{at}09:20"}}
    problem, plan = planned(value)
    assert plan.milks == {"milk": "bowl2"}
    assert all(plan.spans[lot]["dip"].end <= -80 + 1440 for lot in ("L1", "L2"))
    other = replace(plan, milks={"milk": "bowl1"})
    assert violations(problem, other) == ["milk stands in no bowl, or in another than it does."]
    value["milks"][0]["life"] = 60
    outcome = plan_studio(read(value), Effort(tries=2))
    assert outcome.status == "infeasible"
    words = "L1 cannot be done with the milk that it is to use"
    assert any(one.startswith(words) for one in outcome.why)


def test_a_lot_may_use_its_own_milk() -> None:
    value = shared(1, 300)
    value["lots"][0]["steps"] += [
        {"id": "pause", "min": 10, "max": 3000}, {"id": "own dip", "hands": 10}
    ]  # fmt: skip
    value["milks"][0]["used_by"].append({"lot": "L0", "step": "own dip"})
    problem, plan = planned(value)
    assert plan.spans["L0"]["own dip"].end <= plan.spans["L0"]["strain"].end + 300
    assert [one.most for one in problem.lots[0].links] == [300]


def test_moves_and_keeping_heed_the_milk() -> None:
    problem, plan = planned(shared(2, 200))
    for lot, own in plan.spans.items():
        for step in own:
            for start in {one for ends in windows(problem, plan, lot, step) for one in ends}:
                assert violations(problem, moved(problem, plan, lot, step, start)) == []
    made = plan.spans["L0"]["strain"].end
    assert all(made <= first and last + 20 <= made + 200
               for first, last in windows(problem, plan, "L1", "dip"))  # fmt: skip
    again = plan_studio(problem, Effort(tries=5), keep=replace(plan, made_for=""))
    assert again.plan is not None
    assert again.plan.spans == plan.spans
    fields = answer(problem, Effort(tries=2)).fields
    assert read_plan(problem, fields).milks == fields["milks"]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"id": ""}, "a name of 1 to 120"),
        ({"made_by": None}, "has to have made_by or made_at"),
        ({"made_at": 5}, "has to have made_by or made_at"),
        ({"made_by": {"lot": "L7", "step": "strain"}}, "names the lot 'L7', which is not there"),
        ({"made_by": {"lot": "L0", "step": "x"}}, "names the step 'x', which L0 has not"),
        ({"made_by": {"lot": "L0", "step": "bean soak"}}, "which is no step by hand"),
        ({"made_by": 3}, "is 3, where an object is due"),
        ({"life": 0}, "a whole number from 1"),
        ({"used_by": []}, "is used by nothing"),
        ({"used_by": [{"lot": "L1", "step": "dip"}] * 2}, "is named a second time"),
        ({"used_by": [{"lot": "L0", "step": "beans"}]}, "is used before it is made"),
        ({"used_by": ["L1"]}, "where an object is due"),
        ({"use": {"pot": 3}}, "'pot', which has no meaning here"),
        ({"use": {"bowl": 30}}, "asks for 30 of bowl; there are 6 at most"),
        ({"use": {"bowl": 3}, "vessel": "tub"}, "which is none that it could stand in"),
        ({"made_by": {"lot": "L0", "step": "beans"}, "use": {"bowl": 3}}, "needs itself behind"),
        ({"colour": "white"}, "'colour', which has no meaning here"),
    ],
)
def test_a_milk_that_makes_no_sense_is_told_of(change: Any, words: str) -> None:
    value = shared()
    assert faults(value) == ()
    value["milks"][0] |= change
    assert any(words in one for one in faults(value)), faults(value)


@pytest.mark.long
@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), st.integers(200, 4000), st.booleans(), st.integers(0, 12))
def test_every_plan_with_a_milk_passes(value: Any, life: int, holds: bool, tries: int) -> None:
    """The first lot makes it when it is lifted, all others are taken down with it."""
    first, *others = value["lots"]
    uses = [{"lot": lot["id"], "step": "take down"} for lot in others or [first]]
    milk = {"id": "m", "made_by": {"lot": first["id"], "step": "lift"}, "life": life,
            "used_by": uses}  # fmt: skip
    if holds:
        value["resources"]["vessels"].append({"id": "b", "kind": "bowl", "litres": 4})
        milk["use"] = {"bowl": 4}
    problem = read(value | {"milks": [milk]})
    outcome = plan_studio(problem, Effort(tries=tries))
    free = plan_studio(read(value), Effort(tries=0))
    if outcome.plan is not None:
        assert violations(problem, outcome.plan) == []
        assert outcome.bound is not None
        assert free.status != "infeasible"
    assert plan_studio(problem, Effort(tries=tries)).plan == outcome.plan


SOAK: list[dict[str, Any]] = [
    {"id": "lay in", "hands": 20, "use": {"tub": 10}},
    {"id": "soak", "min": 580, "target": 820, "max": 1060, "use": {"tub": 10}},
    {"id": "spin", "hands": 10},
    {"id": "hang", "hands": 10, "use": {"line": 4}},
    {"id": "dry 1", "min": 170, "max": 2870, "drying": True, "use": {"line": 4}},
    {"id": "down", "hands": 5, "then_within": 2880},
    {"id": "coat 2", "hands": 10},
    {"id": "dry 2", "min": 170, "max": 2870, "drying": True, "use": {"line": 4}},
    {"id": "down 2", "hands": 5},
]


def laid_in_together(lots: int) -> Any:
    """L0 makes its milk and is laid in, and so are the others, within the hour.

    Who is laid in last in the one session from which a soak ends in the morning leaves no room
    for another: all have to move up.
    """
    names = [f"L{n}" for n in range(1, lots)]
    beans, soak, strain = deepcopy(STRAIN)
    drain = {"id": "drain", "hands": 5, "then_within": 120}
    making = [beans, soak | {"max": 1080}, drain, strain | {"hands": 30, "then_within": 60}]
    fresh, kept = (
        {"id": name, "made_by": {"lot": "L0", "step": "strain"}, "life": life,
         "used_by": [{"lot": lot, "step": step} for lot in names]}
        for name, life, step in (("fresh", 80, "lay in"), ("kept", 2890, "coat 2"))
    )  # fmt: skip
    tubs = [{"id": f"tub{n}", "kind": "tub", "litres": 20, "one_lot": True} for n in range(lots)]
    return studio(
        start="2027-03-01T13:10", horizon_days=20,
        lots=[{"id": "L0", "steps": [*making, *deepcopy(SOAK)]},
              *({"id": name, "steps": deepcopy(SOAK)} for name in names)],
        resources={"vessels": [*tubs, {"id": "bowl", "kind": "bowl", "litres": 6}], "line_m": 16},
        milks=[fresh, kept], calendar={"working": hours(("08:00", "18:00"))},
    )  # fmt: skip


@pytest.mark.parametrize("lots", [2, 3, 4])
def test_lots_of_one_milk_find_room_behind_one_another(lots: int) -> None:
    _, plan = planned(laid_in_together(lots), 0)
    made = plan.spans["L0"]["strain"].end
    assert all(made <= plan.spans[f"L{n}"]["lay in"].start <= made + 60 for n in range(1, lots))


def test_one_that_is_painted_and_spun_at_once_finds_room_before_the_maker() -> None:
    """Behind it, the fifty minutes by hand would come too late for a soak that ends at opening."""
    whole = laid_in_together(2)
    hands = [{"id": "lay in", "hands": 30, "use": {"tub": 10}}, *deepcopy(SOAK[2:])]
    whole["lots"][1]["steps"] = hands
    whole["milks"][0]["life"] = 90
    whole["calendar"]["working"] = hours(("09:00", "18:00"))
    problem, plan = planned(whole, 0)
    made, maker, other = (
        plan.spans["L0"]["strain"].end, plan.spans["L0"]["lay in"], plan.spans["L1"]["lay in"],
    )  # fmt: skip
    assert made <= other.start < maker.start <= made + 60
    assert problem.clock.local(plan.spans["L0"]["spin"].start).hour >= 9


def test_the_life_of_a_milk_holds_between_the_uses_of_a_lot_by_itself() -> None:
    lot = read(laid_in_together(2)).lots[1]
    assert [(one.first, one.second, one.most, one.limit) for one in lot.links] == [
        ("lay in", "coat 2", 2890, "rule")
    ]
