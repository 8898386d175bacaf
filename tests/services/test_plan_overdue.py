"""What is overdue is planned in the next hours, and is no slip of a plan that follows it."""

from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.journal import Act
from studio_log.services.commands import ChangeSettings
from studio_log.services.plan import PlanFor
from studio_log.services.plan_slips import slips
from tests.services.test_plan import accept, instants, planned, settings
from tests.support.builders import DAY, HOUR, SCOUR
from tests.support.fixtures import Workshop

CLOSED_SUNDAY = {"open_hours": "tue-sat 09:00-18:00", "plan_visit_hours": 240.0}
"""Fewer visits count above all: what may wait waits for the next session."""


@pytest.fixture
def late(shop: Workshop) -> str:
    """Cloth that is on the heat for too long, on a Friday at noon."""
    settings(shop, **CLOSED_SUNDAY)
    code = shop.new(method=SCOUR)
    shop.clock.at = datetime(2026, 6, 12, 6, tzinfo=UTC)
    for step in ("1", "2"):
        shop.mark(code, step, Act.START, sure=True)
    shop.clock.at += 5 * HOUR
    assert [one.number for one in shop.lot(code).open_steps()] == [2]
    return code


def test_what_has_lasted_too_long_ends_in_the_next_hours(shop: Workshop, late: str) -> None:
    setup, fields = planned(shop)
    title = shop.lot(late).step(2).title
    (note,) = [one for one in setup.notes if late in one]
    assert note == f"{late}: {title} has lasted too long; it is planned to end in the next hours."
    assert not [one for one in fields["why"] if "longer than its" in one], "it is told once"
    ends = instants(fields["ends"])[late][title]
    assert shop.clock.at <= ends <= shop.clock.at + 2 * HOUR


def test_outside_the_hours_it_is_the_next_session(shop: Workshop, late: str) -> None:
    shop.clock.at += 2 * DAY
    _, fields = planned(shop)
    ends = instants(fields["ends"])[late][shop.lot(late).step(2).title]
    tuesday = datetime(2026, 6, 16, 8, tzinfo=UTC)
    assert tuesday <= ends <= tuesday + 2 * HOUR, "from 09:00 by British Summer Time on"


def test_what_cannot_go_on_from_there_is_no_plan_to_leave_it_on_the_heat(
    shop: Workshop, late: str
) -> None:
    shop.do(ChangeSettings({"open_hours": "tue-fri 09:00-15:00"}))
    _, fields = planned(shop)
    assert fields["status"] == "infeasible", "it would hang damp, or too long, over the closed days"
    assert late in fields["why"][0]


def test_a_plan_of_what_is_late_has_not_slipped_as_soon_as_it_is_followed(
    shop: Workshop, late: str
) -> None:
    _, fields = planned(shop)
    accept(shop, fields)
    with shop.studio.store.reading() as look:
        assert slips(shop.studio.desk(look)) == ()
    shop.clock.at += 3 * HOUR
    with shop.studio.store.reading() as look:
        assert [one.code for one in slips(shop.studio.desk(look))] == [late], "then it has"


def test_a_step_that_is_overdue_to_begin_begins_in_the_next_hours(shop: Workshop) -> None:
    settings(shop, open_hours="mon-sun 09:00-18:00", plan_visit_hours=240.0)
    code = shop.new()
    shop.clock.at = datetime(2026, 6, 11, 22, tzinfo=UTC)
    shop.mark(code, "1", Act.START)
    shop.clock.at += 9 * HOUR
    shop.mark(code, "1", Act.END)
    shop.clock.at += 4 * HOUR  # the beans lie drained: two hours are the method's most
    setup, fields = planned(shop)
    assert f"{code}: what follows Bean soak is overdue" in setup.notes[0]
    begins = instants(fields["starts"])[code]["Blend"]
    assert shop.clock.at <= begins <= shop.clock.at + 2 * HOUR


def test_what_is_in_time_is_left_alone(shop: Workshop) -> None:
    settings(shop, **CLOSED_SUNDAY)
    code = shop.new()
    shop.clock.at += timedelta(hours=2)
    shop.mark(code, "1", Act.START)
    shop.clock.at += timedelta(hours=17)
    setup = shop.studio.ask(PlanFor())
    assert setup.notes == ()
    (step,) = [one for one in setup.problem["lots"][0]["steps"] if one["id"] == "Bean soak"]
    assert step["max"] == 18 * 60


def test_cloth_that_cures_follows_no_plan_and_has_not_slipped_when_it_is_ready(
    shop: Workshop,
) -> None:
    settings(shop, open_hours="mon-sun 08:00-20:00")
    code = shop.new()
    _, fields = planned(shop)
    accept(shop, fields)
    ends = instants(fields["ends"])[code]
    shop.clock.at = ends["Dry after the third coat, end"]
    shop.mark(code, "dry-3", Act.END, sure=True)
    other = shop.new("napkins")
    _, fields = planned(shop)
    assert set(fields["starts"]) == {code, other}, "what cures may serve a goal"
    accept(shop, fields)
    assert shop.entries(code)[-1].act is not Act.FOLLOW
    assert shop.lot(other).planned
    shop.clock.at += 100 * DAY
    with shop.studio.store.reading() as look:
        assert [one.code for one in slips(shop.studio.desk(look))] == [other]


def test_nothing_is_offered_that_leaves_heat_on_for_longer(shop: Workshop) -> None:
    settings(shop, **CLOSED_SUNDAY)
    shop.new(method=SCOUR)
    (lot,) = shop.studio.ask(PlanFor()).problem["lots"]
    hot = {
        one["id"]: one.get("limit") for one in lot["steps"] if one["id"] in {"Heat up", "Simmer"}
    }
    assert hot == {"Heat up": "rule", "Simmer": "rule"}
