"""Why not, second layer: one lot against the calendar alone, exact, with just enough to mend it."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.planning.calendar_links import goes_alone, latest_starts
from studio_log.planning.calendar_sweep import death_of, earliest_end
from studio_log.planning.chain import chain_of, links_of
from studio_log.planning.change_kinds import (
    AddHours,
    AddSession,
    LeaveOut,
    LongerLink,
    LongerStep,
    MoreDays,
)
from studio_log.planning.changes import apply_changes
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.engine import Studio
from studio_log.planning.hours import windows_of
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.why import explain
from tests.planning.kit import WEEK, hours, read, studio, studios

FEW = Effort(tries=5)


def never() -> bool:
    return False


def running(**more: Any) -> dict[str, Any]:
    """A soak that began on a Saturday at 08:00; nobody works from its noon to Monday 09:00."""
    week = hours(("09:00", "12:00"), ("14:00", "17:00")) | {"sun": [], "sat": [["09:00", "12:00"]]}
    whole = studio(2, start="2027-03-06T12:00")
    whole["calendar"] = {"working": week, "waking": hours(("07:00", "22:00"))} | more
    whole["lots"][0]["actual"] = {
        "load": {"start": "2027-03-06T07:40", "end": "2027-03-06T08:00"},
        "soak": {"start": "2027-03-06T08:00", "end": None},
    }
    return whole


def sentences(whole: dict[str, Any]) -> list[str]:
    return [one.sentence for one in explain(read(whole), None, FEW).reasons]


def test_a_running_soak_that_ends_while_nobody_is_there() -> None:
    # Begun Sat 08:00, at most 18 h: out by Sun 02:00. Next in on Mon 09:00: 31 h later.
    found = explain(read(running()), None, FEW)
    (reason,) = found.reasons
    assert (reason.kind, reason.lots, reason.steps) == ("alone", ("L1",), ("soak", "lift"))
    assert reason.sentence == (
        "L1 cannot be done in these hours: soak has been going since Sat 6 March, 08:00 and "
        "should end by Sun 7 March, 02:00. The next hours are on Mon 8 March, 09:00, "
        "31 hours too late. It may end from Sat 6 March, 18:00 on."
    )
    # At least 10 h: from 18:00 on. Nearest to the hours of that day, and awake until 22:00.
    day = read(running()).clock.start.date()
    assert [one.changes for one in found.ways] == [
        (AddSession(day, 18 * 60, 18 * 60 + 10),), (LongerStep("L1", "soak", 31 * 60),),
        (LeaveOut("L1"),),
    ]  # fmt: skip
    assert [one.sentence for one in found.ways] == [
        f"{words}: then there is a plan. The price: {price}."
        for words, price in (
            (
                "One session on Saturday 6 March from 18:00 to 18:10",
                "10 min outside the hours of that day",
            ),
            ("Soak of L1 for up to 49 h instead of 18 h", "31 h beyond what is advised"),
            ("L1 given up", "L1 is lost, with two pieces"),
        )
    ]


def test_a_rule_is_never_offered_to_be_broken() -> None:
    whole = running()
    whole["lots"][0]["steps"][1]["limit"] = "rule"
    ways = explain(read(whole), None, FEW).ways
    assert {type(one.changes[0]) for one in ways} == {AddSession, LeaveOut}


def test_nobody_is_asked_to_come_in_quiet_hours_unless_they_are_advice() -> None:
    early = hours(("07:00", "17:00"))  # the soak may be lifted from 18:00 to 02:00 only
    ways = explain(read(running(waking=early)), None, FEW).ways
    assert {type(one.changes[0]) for one in ways} == {LongerStep, LeaveOut}
    ways = explain(read(running(waking=early, quiet="advice")), None, FEW).ways
    assert {type(one.changes[0]) for one in ways} == {AddSession, LongerStep, LeaveOut}


def test_on_saturdays_only_nothing_can_be_finished() -> None:
    # Loaded by 17:00 at the latest, out of the tub by 11:00 on Sunday; next in 5 days 22 h later.
    whole = studio()
    whole["calendar"] = {"working": {"sat": [["09:00", "17:00"]]}}
    found = explain(read(whole), None, FEW)
    assert found.reasons[0].sentence == (
        "L1 cannot be done in these hours: soak may last 18 h at most, and nobody is there at its "
        "end. At best it begins on Sat 6 March, 17:00 and should end by Sun 7 March, 11:00. The "
        "next hours are on Sat 13 March, 09:00, 5.9 days too late."
    )
    changes = [one.changes for one in found.ways]
    # The day before or the day after is enough: 10 to 18 h of soaking lead from one to the other.
    assert (AddHours((4,), 540, 1020),) in changes
    assert (AddHours((6,), 540, 1020),) in changes
    # From Sat 17:00 to the next Sat 09:00 are 160 h.
    assert (LongerStep("L1", "soak", (160 - 18) * 60),) in changes


def test_where_there_are_no_hours_at_all_some_are_proposed() -> None:
    whole = studio(2)
    whole["calendar"] = {"working": {}}
    found = explain(read(whole), None, FEW)
    assert [one.lots for one in found.reasons] == [("L1", "L2")]
    assert found.reasons[0].sentence == (
        "L1 and L2 cannot be done in these hours: no working hours at all are set, so load has no "
        "time."
    )
    assert (AddHours(tuple(range(7)), 540, 1020),) in [one.changes for one in found.ways]


def test_weather_that_dries_longer_than_the_cloth_may_hang() -> None:
    # 50 h of drying on every day of the forecast, and 48 h at most: two hours more.
    days = {f"2027-03-{day:02}": 3000 for day in range(1, 15)}
    found = explain(read(studio(dry_min_by_date=days)), None, FEW)
    assert found.reasons[0].sentence.endswith(
        ": dry takes 50 h at least in this weather and may last 48 h at most."
    )
    assert found.ways[0].changes == (LongerStep("L1", "dry", 120),)


def test_a_plan_that_reaches_too_short_is_told_of_and_made_longer() -> None:
    whole = studio(horizon_days=1)
    found = explain(read(whole), None, FEW)
    assert found.reasons[0].sentence.endswith(
        "after soak there are no hours for lift until Tue 2 March, 00:00, where the plan ends."
    )
    assert [one.changes for one in found.ways] == [(MoreDays(1),)]


def test_a_link_that_hours_do_not_allow() -> None:
    # Lifted 18 h after loading at best (15:00 to 09:00), dry from 09:10 to 14:00: 23 h after
    # a load that ends at 15:00. If loading ends at 17:00 it is 21 h, the least there is.
    whole = studio()
    whole["lots"][0]["links"] = [{"from": "load.end", "to": "take down.start", "max": 700}]
    found = explain(read(whole), None, FEW)
    assert found.reasons[0].steps == ("load", "take down")
    assert "from the end of load to the start of take down no more than 11 h 40 min" in (
        found.reasons[0].sentence
    )
    change = LongerLink("L1", "load.end", "take down.start", 21 * 60 - 700)
    assert [one.changes for one in found.ways] == [(change,)]
    whole["lots"][0]["links"][0]["limit"] = "rule"
    assert explain(read(whole), None, FEW).ways == ()


def test_a_recorded_start_from_which_a_link_is_counted() -> None:
    # Load ended Sat 08:00, lifted within 12 h of it: by 20:00; nobody is there from noon on.
    whole = running()
    whole["lots"][0]["links"] = [{"from": "load.end", "to": "lift.start", "max": 720}]
    found = explain(read(whole), None, FEW)
    assert found.reasons[0].kind == "alone"
    session = found.ways[0].changes[0]
    assert isinstance(session, AddSession)
    assert 18 * 60 <= session.begins <= 20 * 60


def test_two_lots_that_die_alike_are_mended_by_the_same_sessions() -> None:
    # Both are lifted on Saturday evening, ten minutes each; a tub and a line for each.
    whole = running()
    whole["resources"]["line_m"] = 10
    whole["resources"]["vessels"].append({"id": "tub2", "kind": "tub", "litres": 20})
    whole["lots"][1]["actual"] = whole["lots"][0]["actual"]
    found = explain(read(whole), None, FEW)
    assert [one.lots for one in found.reasons] == [("L1", "L2")]
    (session,) = found.ways[0].changes
    assert isinstance(session, AddSession)
    assert session.ends - session.begins == 20


def test_where_two_lots_cannot_both_be_saved_one_is_given_up() -> None:
    # The line holds one of them, and both have to be hung on Saturday evening or on Monday.
    whole = running()
    whole["resources"]["vessels"].append({"id": "tub2", "kind": "tub", "litres": 20})
    whole["lots"][1]["actual"] = whole["lots"][0]["actual"]
    changes = [one.changes for one in explain(read(whole), None, FEW).ways]
    assert changes
    assert all(isinstance(one[-1], LeaveOut) or isinstance(one[0], LeaveOut) for one in changes)


@pytest.mark.parametrize("minutes", [0, -10])
def test_stretched_by_just_enough(minutes: int) -> None:
    problem = read(running())
    change = LongerStep("L1", "soak", 31 * 60 + minutes)
    assert goes_alone(apply_changes(problem, (change,)), "L1", never) is (minutes == 0)


@given(studios())
def test_the_sweep_says_the_same_as_exact_placing_in_an_empty_studio(whole: dict[str, Any]) -> None:
    for lot in whole["lots"]:
        lot.pop("links", None)
    problem = read(whole)
    placed = Studio(problem, never)
    for name, chain in placed.chains.items():
        found = placed.try_place(name, [0] * len(placed.board.windows), placed.limits[name])
        assert (found is not None) is goes_alone(problem, name, never)
        assert (found is None) is (death_of(chain, problem) is not None)
        early = earliest_end(chain, problem, windows_of(problem))
        assert found is None or (early is not None and early <= found.end)


@pytest.mark.long
@settings(max_examples=60)
@given(studios(), st.lists(st.tuples(
    st.sampled_from(["load.end", "soak.end", "lift.start"]),
    st.sampled_from(["lift.end", "take down.start", "take down.end"]), st.integers(0, 9000),
), min_size=1, max_size=3))  # fmt: skip
def test_with_links_a_place_is_found_where_there_is_one(
    whole: dict[str, Any], links: list[tuple[str, str, int]]
) -> None:
    for lot in whole["lots"]:
        lot["links"] = [
            {"from": one, "to": other, "max": most}
            for one, other, most in links
            if (one, other) != ("lift.start", "lift.end") or most
        ]
    problem = read(whole)
    placed = Studio(problem, never)
    for lot in problem.lots:
        name = lot.name
        alone = replace(problem, lots=(lot,), goals=())
        chain = chain_of(alone, lot)
        if chain is None:
            continue
        starts = latest_starts(chain, alone, windows_of(alone), never)
        if name in placed.limits and starts is None:  # exact placing finds none either
            prices = [0] * len(placed.board.windows)
            assert placed.try_place(name, prices, placed.limits[name]) is None
        if starts is not None:  # and these are one: every limit of the path and of its links
            held = list(zip(starts, chain.visits, strict=True))
            assert all(not visit.length or any(
                one.start <= at and at + visit.length <= one.end for one in windows_of(alone)
            ) for at, visit in held)  # fmt: skip
            for number, between in enumerate(chain.betweens):
                passed = starts[number + 1] - starts[number] - chain.visits[number].length
                assert between.least <= passed <= between.most
            assert all(first < 0 or starts[second] - starts[first] <= most
                       for first, second, most in links_of(chain, alone))  # fmt: skip


@pytest.mark.long
@settings(max_examples=60)
@given(studios())
def test_each_way_out_is_a_plan_in_hand(whole: dict[str, Any]) -> None:
    whole["calendar"]["working"] = {day: whole["calendar"]["working"][day] for day in WEEK[::3]}
    problem = read(whole)
    if plan_studio(problem, Effort(tries=0)).plan is None:
        found = explain(problem, None, Effort(tries=1))
        assert found.reasons
        for way in found.ways:
            assert violations(apply_changes(problem, way.changes), way.plan) == []


def test_the_earliest_end_is_that_of_a_plan() -> None:
    problem = read(studio())
    chain = chain_of(problem, problem.lots[0])
    assert chain is not None
    # Loaded on Monday by 17:00, lifted Tue 09:00, dry at 13:10, taken down from 14:00 to 14:10.
    assert earliest_end(chain, problem, windows_of(problem)) == 1440 + 14 * 60 + 10
