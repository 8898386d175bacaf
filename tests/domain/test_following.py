"""A lot follows an accepted plan: its moments win while they are ahead and inside the windows."""

from datetime import datetime, timedelta

from studio_log.domain.due import reminders_of
from studio_log.domain.journal import Act
from studio_log.domain.reminders import Kind
from studio_log.domain.windows import windows_of
from tests.support.builders import DAY, HOUR, LONDON, NINE, Story


def follow(story: Story, moments: dict[int, tuple[datetime, datetime]]) -> None:
    told = {str(number): [at.isoformat() for at in ends] for number, ends in moments.items()}
    story.mark(Act.FOLLOW, data={"moments": told})


def test_a_lot_that_is_not_begun_rings_when_its_plan_begins() -> None:
    story = Story()
    assert reminders_of(story.lot, NINE, LONDON) == []
    follow(story, {1: (NINE + DAY, NINE + DAY + 12 * HOUR)})
    (start,) = reminders_of(story.lot, NINE, LONDON)
    assert (start.kind, start.step, start.due) == (Kind.START, 1, NINE + DAY)
    late = reminders_of(story.lot, NINE + DAY + HOUR, LONDON)
    assert [(one.kind, one.due) for one in late] == [(Kind.START, NINE + DAY)]


def test_the_planned_end_of_a_soak_holds_on_when_the_soak_begins() -> None:
    story = Story()
    follow(story, {1: (NINE + HOUR, NINE + 11 * HOUR)})
    assert windows_of(story.lot, NINE, LONDON)[1].best_end == NINE + 11 * HOUR
    story.mark(Act.START, 1, at=NINE + 2 * HOUR)
    assert windows_of(story.lot, NINE + 3 * HOUR, LONDON)[1].best_end == NINE + 11 * HOUR
    story.mark(Act.END, 1, at=NINE + 12 * HOUR)
    step = story.lot.step(1)
    assert (step.meant_start, step.meant_end) == (NINE + HOUR, NINE + 11 * HOUR)
    assert (step.plan, step.plan_end) == (None, None)


def test_a_planned_end_outside_the_window_counts_for_nothing() -> None:
    story = Story()
    follow(story, {1: (NINE, NINE + 40 * HOUR)})
    free = windows_of(Story().lot, NINE, LONDON)[1].best_end
    assert windows_of(story.lot, NINE, LONDON)[1].best_end == free


def test_a_new_plan_replaces_the_old_one_whole_and_without_it_the_old_one_stands() -> None:
    story = Story()
    follow(story, {1: (NINE + DAY, NINE + DAY + 12 * HOUR), 2: (NINE + 2 * DAY, NINE + 2 * DAY)})
    follow(story, {1: (NINE + 3 * DAY, NINE + 3 * DAY + 12 * HOUR)})
    assert story.lot.step(1).plan == NINE + 3 * DAY
    assert story.lot.step(2).plan is None
    story.entries.pop()  # as an undo would have it
    assert story.lot.step(1).plan == NINE + DAY
    assert story.lot.step(2).plan == NINE + 2 * DAY


def test_a_moment_set_by_hand_puts_the_planned_end_away() -> None:
    story = Story()
    follow(story, {1: (NINE + DAY, NINE + DAY + 11 * HOUR)})
    at = NINE + DAY + timedelta(hours=3)
    story.mark(Act.PLAN, 1, data={"planned": at.isoformat()})
    step = story.lot.step(1)
    assert (step.plan, step.plan_end) == (at, None)
