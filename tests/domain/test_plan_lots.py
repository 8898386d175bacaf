"""What the planner is told of a lot keeps to the log's own limits, for every method."""

import json
from collections.abc import Mapping
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from studio_log.domain.following import following
from studio_log.domain.journal import Act
from studio_log.domain.lots import Lot
from studio_log.domain.methods import StepKind
from studio_log.domain.plan_lots import Part, PlanLot, Shop, plan_lot
from studio_log.domain.plan_moments import kept_spans, moments_of
from studio_log.domain.windows import windows_of
from studio_log.planning.answer import answer
from studio_log.planning.effort import Effort
from studio_log.planning.read import read_problem
from tests.support.builders import DAY, HOUR, LONDON, NINE, Story, shipped

ZONE = ZoneInfo("Europe/London")
SHOP = Shop(frozenset({"bucket", "pot"}), line=True, heat=True)
WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
VESSELS = [
    {"id": "bucket 1", "kind": "bucket", "litres": 500, "one_lot": True},
    {"id": "pot 1", "kind": "pot", "litres": 500, "one_lot": True},
]


def planned(form: PlanLot) -> dict[str, Any]:
    """A first plan of one lot, by day; hands may be busy from 07:00 to 22:00."""
    hours = {day: [["07:00", "22:00"]] for day in WEEK}
    problem = {
        "format": "studio-plan/1", "start": "2026-06-09T09:00", "zone": "Europe/London",
        "horizon_days": 120, "calendar": {"working": hours, "waking": hours},
        "resources": {"vessels": VESSELS, "line_m": 100, "burners": 4}, "lots": [form.form],
    }  # fmt: skip
    found = answer(read_problem(json.dumps(problem).encode()), Effort(tries=0)).fields
    assert found["starts"], found["why"]
    return found


def instants(told: Mapping[str, str]) -> dict[str, datetime]:
    return {name: datetime.fromisoformat(at).astimezone(UTC) for name, at in told.items()}


def followed(lot: Lot) -> tuple[Lot, PlanLot, dict[str, Any]]:
    form = plan_lot(lot, NINE, ZONE, SHOP)
    assert form is not None
    fields = planned(form)
    starts, ends = (instants(fields[key][lot.code]) for key in ("starts", "ends"))
    return following(lot, moments_of(form.places, starts, ends)), form, fields


@pytest.mark.long
@pytest.mark.parametrize("method", sorted(shipped().values(), key=lambda one: one.slug),
                         ids=lambda one: one.slug)  # fmt: skip
def test_every_moment_of_a_plan_is_allowed_by_the_windows_of_the_log(method: Any) -> None:
    """But the ends of dry cloth, which may hang on, and of what lasts less than its hands do."""
    lot, _, _ = followed(Story(method).lot)
    windows = windows_of(lot, NINE, LONDON)
    checked = 0
    for step in lot.steps:
        if not lot.taken(step) or step.spec.kind is StepKind.CURE or step.plan is None:
            continue
        assert windows[step.number].best_start == step.plan, step.title
        longer = step.spec.lasts is not None and step.spec.lasts.latest < step.spec.hands_on
        if step.spec.kind is not StepKind.DRY and not longer:
            assert windows[step.number].best_end == step.plan_end, step.title
        checked += 1
    assert checked > 1


@pytest.mark.parametrize("method", ["soy-immersion-long", "dye-madder", "indigo-dips"])
def test_a_plan_that_is_followed_reads_back_as_it_was(method: str) -> None:
    lot, form, fields = followed(Story(method).lot)
    back = kept_spans(lot, form)
    starts, ends = (instants(fields[key][lot.code]) for key in ("starts", "ends"))
    assert {name: start for name, (start, _) in back.items()} == starts
    assert {name: end for name, (_, end) in back.items()} == ends


def test_a_long_step_is_begun_by_hand_waits_and_is_ended_by_hand() -> None:
    form = plan_lot(Story().lot, NINE, ZONE, Shop())
    assert form is not None
    steps = {one["id"]: one for one in form.form["steps"]}
    assert steps["Bean soak, begin"]["hands"] == 10
    soak = steps["Bean soak"]  # 8 h, 12 h, 18 h from its start, of which ten minutes are by hand
    assert (soak["min"], soak["target"], soak["max"]) == (470, 710, 1070)
    assert soak["limit"] == "rule"
    assert steps["Bean soak, end"]["then_within"] == 120
    assert steps["First soak"].get("then_within") is None, "the spin begins as it is lifted"
    assert "First soak, end" not in steps
    assert form.places["Bean soak, end"] == (1, Part.END)


def test_milk_kept_for_a_further_coat_lasts_two_days() -> None:
    form = plan_lot(Story().lot, NINE, ZONE, Shop())
    assert form is not None
    assert [(one["from"], one["max"]) for one in form.form["links"]] == [
        ("Strain.end", 2880),
        ("Strain.end", 2880),
    ]


def test_a_step_that_runs_is_a_fact_and_needs_no_beginning() -> None:
    story = Story()
    story.mark(Act.START, "bean-soak", at=NINE)
    form = plan_lot(story.lot, NINE + 2 * HOUR, ZONE, Shop())
    assert form is not None
    assert form.form["actual"] == {"Bean soak": {"start": "2026-06-09T09:00", "end": None}}
    assert "Bean soak, begin" not in form.places


def test_facts_typed_out_of_order_are_put_in_order_for_the_planner() -> None:
    """A start that is not known, and an end that was typed after the next one began."""
    story = Story()
    story.mark(Act.END, "bean-soak", at=NINE + 12 * HOUR, sure=True)
    story.mark(Act.START, "blend", at=NINE + 12 * HOUR)
    story.mark(Act.END, "blend", at=NINE + 12.5 * HOUR)
    form = plan_lot(story.lot, NINE + 13 * HOUR, ZONE, Shop())
    assert form is not None
    moments = [at for one in form.form["actual"].values() for at in one.values() if at]
    assert moments == sorted(moments)


def test_what_is_over_is_not_planned() -> None:
    assert (
        plan_lot(Story("scour-cellulose").up_to("nothing").lot, NINE + 30 * DAY, ZONE, Shop())
        is None
    )


def test_cloth_that_cures_is_there_for_goals_only() -> None:
    story = Story("soy-painting-short").up_to("cure")
    form = plan_lot(story.lot, story.at + timedelta(days=1), ZONE, Shop())
    assert form is not None
    assert not form.is_open
    assert form.form["steps"][-1]["cure"] is True
