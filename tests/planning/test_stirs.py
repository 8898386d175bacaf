"""Stirs behind a plan: when they are due, that hands are free, and what has no place is said."""

from collections.abc import Iterator
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.answer import answer
from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Plan, Problem, Span
from studio_log.planning.stirs import MOST, Stirs, stirs_of
from tests.planning.kit import STUDIOS, hours, instance, read, studio, studios


def planned(value: Any) -> tuple[Problem, Plan]:
    problem = read(value)
    plan = plan_studio(problem, Effort(tries=0)).plan
    assert plan is not None
    return problem, plan


def test_a_soak_is_stirred_by_day_and_left_alone_by_night() -> None:
    """By hand: 17:00 to 09:00 every three hours is 20, 23, 2, 5 and 8 o'clock.

    Awake from 07:00 to 22:30, 20:00 and 08:00 are good and 23:00 comes at 22:25; 2 and 5 fall out.
    """
    value = studio()
    value["lots"][0]["steps"][1]["stir_every"] = 180
    value["calendar"]["waking"] = hours(("07:00", "22:30"))
    problem, plan = planned(value)
    soak = plan.spans["L1"]["soak"]
    assert (soak.start, soak.end) == (1020, 1440 + 540)
    found = stirs_of(problem, plan)
    assert [one.at for one in found.placed] == [1200, 1345, 1440 + 480]
    assert [one.due for one in found.placed] == [1200, 1380, 1440 + 480]
    assert found.missing == ()


def test_a_stir_gives_way_to_other_work_and_one_without_a_place_is_said() -> None:
    """By hand: due at 11:00, and hands are full from 11:00 to 11:40, or from 09:55 to 12:05."""
    steps = [{"id": "load", "hands": 20}, {"id": "soak", "min": 300, "max": 300, "stir_every": 100},
             {"id": "lift", "hands": 20}]  # fmt: skip
    work = {"id": "L2", "steps": [{"id": "work", "hands": 40}], "release": 660}
    value = studio(lots=[{"id": "L1", "steps": steps}, work], resources={}, grid_min=5,
                   calendar={"working": hours(("09:00", "18:00"))})  # fmt: skip
    problem, plan = planned(value)
    assert plan.spans["L1"]["soak"] == Span(560, 860)

    def with_work(start: int, end: int) -> Stirs:
        spans = {**plan.spans, "L2": {"work": Span(start, end)}}
        return stirs_of(problem, Plan(spans, plan.vessels, {}, plan.score))

    assert [one.at for one in with_work(660, 700).placed] == [655, 760]
    assert [one.at for one in with_work(655, 665).placed] == [665, 760]
    assert [one.at for one in with_work(630, 720).placed] == [625, 760]
    found = with_work(595, 725)
    assert [one.at for one in found.placed] == [760]
    (said,) = found.missing
    assert said.startswith(
        "L1's soak is to be stirred on Mon 11:00, and your hands are full for an"
    )


def test_several_stirs_of_a_step_without_a_place_are_one_sentence() -> None:
    """Due every 20 min from 09:20 on; from the load on hands are full until noon."""
    steps = [{"id": "soak", "min": 180, "max": 180, "stir_every": 20},
             {"id": "lift", "hands": 20}]  # fmt: skip
    work = {"id": "L2", "steps": [{"id": "work", "hands": 180}]}
    facts = {"soak": {"start": "2027-03-01T09:00", "end": None}}
    lots = [{"id": "L1", "steps": steps, "actual": facts}, work]
    value = studio(start="2027-03-01T09:00", resources={}, lots=lots,
                   calendar={"working": hours(("09:00", "18:00"))})  # fmt: skip
    problem, plan = planned(value)
    spans = {**plan.spans, "L2": {"work": Span(0, 180)}}
    found = stirs_of(problem, Plan(spans, plan.vessels, {}, plan.score))
    assert [due for _, _, due in found.left] == list(range(20, 180, 20))
    (said,) = found.missing
    assert said == (
        "L1's soak is to be stirred 8 times from Mon 09:20 to Mon 11:40, and your hands are full "
        "for an hour before and after each."
    )


def test_what_runs_is_stirred_from_now_on() -> None:
    """Begun 07:00 and due at 10, 13, 16, 19 ...; at noon it is 13:00 that comes next."""
    value = studio(start="2027-03-06T12:00")
    value["lots"][0]["steps"][1] |= {"stir_every": 180, "max": 2000}
    value["lots"][0]["actual"] = {"soak": {"start": "2027-03-06T07:00", "end": None}}
    value["calendar"]["waking"] = hours(("00:00", "24:00"))
    problem, plan = planned(value)
    assert [one.at for one in stirs_of(problem, plan).placed][:2] == [60, 240]
    assert all(one.at >= 0 for one in stirs_of(problem, plan).placed)


def test_a_plan_of_endless_stirs_is_cut_and_said() -> None:
    value = studio()
    value["lots"][0]["steps"][3] |= {"stir_every": 1, "min": 14_000, "max": 15_000}
    value["calendar"]["waking"] = hours(("00:00", "24:00"))
    problem, plan = planned(value)
    found = stirs_of(problem, plan)
    assert len(found.placed) + len(found.left) == MOST
    assert found.missing[-1] == f"Only the first {MOST:,} stirs are given."


def test_the_answer_gives_stirs_and_tells_what_has_none() -> None:
    fields = answer(read(instance("studio-one-lot")), Effort(tries=0)).fields
    assert fields["stirs"]
    assert set(fields["stirs"][0]) == {"lot", "step", "at"}
    first, last = (fields[key]["L01"]["first soak"] for key in ("starts", "ends"))
    assert all(first < one["at"] < last for one in fields["stirs"] if one["step"] == "first soak")


def test_all_stirs_of_the_reference_studios_have_a_place() -> None:
    """A trial before this project found a place for every stir of its plans."""
    for name in STUDIOS:
        problem, plan = planned(instance(name))
        found = stirs_of(problem, plan)
        assert found.missing == ()
        assert sound(problem, plan, found)


def minutes(problem: Problem, *, working: bool) -> Iterator[tuple[int, int]]:
    calendar = problem.calendar
    day = problem.clock.start.replace(hour=0, minute=0)
    for _ in range(problem.horizon // 1440 + 2):
        own = calendar.on(day.date()) if working else calendar.waking[day.weekday()]
        for one in own:
            begins, ends = (problem.clock.minute(day + timedelta(minutes=at)) for at in one)
            yield begins, ends
        day += timedelta(days=1)


def sound(problem: Problem, plan: Plan, found: Stirs) -> bool:
    """Look at every stir again: due, awake, hands free, none twice; and none left out by day."""
    awake = list(minutes(problem, working=not any(problem.calendar.waking)))
    by_hand = [
        plan.spans[lot.name][step.name]
        for lot in problem.lots
        for step in lot.steps
        if step.hands and step.name in plan.spans.get(lot.name, {})
    ]
    by_hand += [Span(one.at, one.at + 5) for one in found.placed]
    for one in found.placed:
        span = plan.spans[one.lot][one.step]
        every = next(
            step.stir_every for lot in problem.lots if lot.name == one.lot
            for step in lot.steps if step.name == one.step
        )  # fmt: skip
        assert every is not None
        assert (one.due - span.start) % every == 0
        assert abs(one.at - one.due) <= 60
        assert span.start <= one.at < span.end
        assert any(begins <= one.at < ends for begins, ends in awake)
        assert sum(other.start < one.at + 5 and one.at < other.end for other in by_hand) == 1
    dues = [
        (lot.name, step.name, due)
        for lot in problem.lots
        for step in lot.steps
        if step.stir_every and step.name in plan.spans.get(lot.name, {})
        for span in [plan.spans[lot.name][step.name]]
        for due in range(span.start + step.stir_every, span.end, step.stir_every)
        if due >= 0 and any(begins <= due < ends for begins, ends in awake)
    ]
    placed = {(one.lot, one.step, one.due) for one in found.placed}
    assert len(found.missing) == len({(lot, step) for lot, step, _ in found.left})
    return set(dues) - placed == set(found.left)


@pytest.mark.long
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), st.integers(20, 400), st.booleans())
def test_every_stir_is_sound(value: Any, every: int, waking: bool) -> None:
    for lot in value["lots"]:
        lot["steps"][1]["stir_every"] = every
    if waking:
        value["calendar"]["waking"] = hours(("07:00", "22:00"))
    problem = read(value)
    plan = plan_studio(problem, Effort(tries=0)).plan
    if plan is not None:
        assert sound(problem, plan, stirs_of(problem, plan))
