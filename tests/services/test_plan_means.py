"""What a plan counts on is written into the studio when it is followed."""

from dataclasses import asdict, replace
from datetime import timedelta
from typing import Any

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.plan_wishes import PlanGoal, write_wishes
from studio_log.planning.change_json import read_change
from studio_log.planning.changes import apply_change
from studio_log.services.commands import ChangeSettings
from studio_log.services.plan import AcceptPlan, PlanFor
from studio_log.services.plan_means import is_kept, with_changes
from studio_log.services.settings import Settings
from tests.planning.kit import read
from tests.services.test_plan import instants, planned, settings
from tests.support.fixtures import Workshop

STUDIO = Settings(
    open_hours="mon-fri 09:00-17:00; sat 10:00-14:00",
    single_days="2026-06-12 closed: fair",
    vessels="2 buckets of 20 L; pot 40 L",
    line_metres=8.0,
    plan_goals=write_wishes((PlanGoal("class", "2026-10-09T09:00", 12, 90),)),
)
EVERY: list[tuple[dict[str, Any], dict[str, Any]]] = [
    (
        {"change": "add_session", "date": "2026-06-13", "from": "18:00", "to": "19:30"},
        {"single_days": "2026-06-12 closed: fair\n2026-06-13 10:00-14:00, 18:00-19:30"},
    ),
    (
        {"change": "add_session", "date": "2026-06-12", "from": "18:00", "to": "19:30"},
        {"single_days": "2026-06-12 18:00-19:30"},
    ),
    (
        {"change": "close_day", "date": "2026-06-11"},
        {"single_days": "2026-06-11 closed\n2026-06-12 closed: fair"},
    ),
    (
        {"change": "add_hours", "days": ["mon", "sat"], "from": "14:00", "to": "18:00"},
        {"open_hours": "mon 09:00-18:00; tue-fri 09:00-17:00; sat 10:00-18:00"},
    ),
    (
        {"change": "add_vessel", "kind": "bucket", "litres": 25},
        {"vessels": "2 buckets of 20 L; bucket 25 L; pot 40 L"},
    ),
    (
        {"change": "remove_vessel", "vessel": "bucket 2"},
        {"vessels": "bucket 20 L; pot 40 L"},
    ),
    ({"change": "more_line", "metres": 4}, {"line_metres": 12.0}),
    ({"change": "more_burners", "burners": 1}, {"burners": 1}),
    ({"change": "more_hands", "hands": 1}, {"hands": 2}),
    (
        {"change": "later_goal", "goal": "class", "minutes": 1440},
        {"plan_goals": write_wishes((PlanGoal("class", "2026-10-10T09:00", 12, 90),))},
    ),
    (
        {"change": "goal_pieces", "goal": "class", "pieces": 9},
        {"plan_goals": write_wishes((PlanGoal("class", "2026-10-09T09:00", 9, 90),))},
    ),
    ({"change": "goal_pieces", "goal": "class", "pieces": 0}, {"plan_goals": ""}),
    (
        {"change": "goal_cured", "goal": "class", "pieces": 3, "days": 84},
        {
            "plan_goals": write_wishes((
                PlanGoal("class", "2026-10-09T09:00", 9, 90),
                PlanGoal("class, 84 days cured", "2026-10-09T09:00", 3, 84),
            ))
        },
    ),
    (
        {"change": "goal_cured", "goal": "class", "pieces": 12, "days": 84},
        {"plan_goals": write_wishes((PlanGoal("class", "2026-10-09T09:00", 12, 84),))},
    ),
]  # fmt: skip


@pytest.mark.parametrize(("change", "after"), EVERY)
def test_each_kind_is_kept_and_nothing_else_moves(
    change: dict[str, Any], after: dict[str, Any]
) -> None:
    kept = asdict(with_changes(STUDIO, (change,)))
    before = asdict(with_changes(STUDIO, ()))
    assert {name for name in kept if kept[name] != before[name]} == set(after)
    assert {name: kept[name] for name in after} == after
    assert is_kept((change,))


def test_what_is_about_one_lot_is_not_kept() -> None:
    longer = {"change": "longer_step", "lot": "26-001", "step": "Dry", "minutes": 60}
    assert not is_kept((longer,))
    assert with_changes(STUDIO, (longer,)) == with_changes(STUDIO, ())


def test_a_studio_that_is_always_open_stays_so() -> None:
    always = replace(STUDIO, open_hours="")
    hours = {"change": "add_hours", "days": ["mon"], "from": "19:00", "to": "21:00"}
    assert with_changes(always, (hours,)).open_hours == ""


@pytest.mark.parametrize(
    "change",
    [
        {"change": "add_session"},
        {"change": "add_session", "date": "soon", "from": "18:00", "to": "19:00"},
        {"change": "add_hours", "days": ["someday"], "from": "18:00", "to": "19:00"},
        {"change": "add_hours", "days": None, "from": "18:00", "to": "19:00"},
        {"change": "remove_vessel", "vessel": "bucket 3"},
        {"change": "remove_vessel", "vessel": "bucket"},
        {"change": "add_vessel", "kind": "lake", "litres": 25},
        {"change": "more_line", "metres": "much"},
        {"change": "more_hands", "hands": 90},
        {"change": "later_goal", "goal": "class", "minutes": 10**12},
    ],
)
def test_nonsense_is_refused(change: dict[str, Any]) -> None:
    with pytest.raises(Refusal):
        with_changes(STUDIO, (change,))


def test_the_studio_as_kept_is_the_one_that_was_planned(shop: Workshop) -> None:
    """Made on the problem by the planner or kept in the settings, a change gives one problem."""
    shop.new()
    goal = [{"name": "class", "at": "2026-10-09T09:00", "pieces": 2, "cured_days": 90}]
    settings(shop, vessels=STUDIO.vessels, line_metres=8.0, plan_goals=goal)
    for change in (
        {"change": "add_session", "date": "2026-06-14", "from": "18:00", "to": "19:30"},
        {"change": "close_day", "date": "2026-06-11"},
        {"change": "add_hours", "days": ["mon"], "from": "19:00", "to": "20:00"},
        {"change": "add_vessel", "kind": "bucket", "litres": 25},
        {"change": "more_line", "metres": 4}, {"change": "more_hands", "hands": 1},
        {"change": "later_goal", "goal": "class", "minutes": 1440},
        {"change": "goal_pieces", "goal": "class", "pieces": 1},
    ):  # fmt: skip
        now = shop.studio.settings
        before = read(shop.studio.ask(PlanFor()).problem)
        wanted = apply_change(before, read_change(change))
        kept = asdict(with_changes(now, (change,)))
        shop.do(ChangeSettings({n: v for n, v in kept.items() if v != asdict(now)[n]}))
        got = read(shop.studio.ask(PlanFor()).problem)
        assert got.goals == wanted.goals
        assert got.stores == wanted.stores
        assert sorted((one.kind, one.size) for one in got.vessels) == sorted(
            (one.kind, one.size) for one in wanted.vessels
        )
        days = [before.clock.start.date() + timedelta(days=n) for n in range(14)]
        assert [got.calendar.on(day) for day in days] == [wanted.calendar.on(day) for day in days]


def test_following_a_plan_keeps_what_it_counts_on_in_the_same_act(shop: Workshop) -> None:
    code = shop.new()
    settings(shop)
    _, fields = planned(shop)
    starts, ends = instants(fields["starts"]), instants(fields["ends"])
    with pytest.raises(Refusal):
        shop.do(AcceptPlan(starts, ends, None, ({"change": "more_hands", "hands": 90},)))
    assert not shop.lot(code).planned, "nothing is half done"
    shop.do(AcceptPlan(starts, ends, None, ({"change": "close_day", "date": "2026-06-20"},)))
    assert shop.lot(code).planned
    assert shop.studio.settings.single_days == "2026-06-20 closed"
