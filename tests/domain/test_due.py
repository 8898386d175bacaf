"""Reminders worked out from a lot, the clock and quiet hours.

The times of the long soak are common practice, no source: beans 8 / 12 / 18 h, first soak
10 / 14 / 18 h, "is it dry?" at 6 h and 12 h, painting to day 14, a bath from day 90.
"""

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.due import milk_reminder, reminders_of
from studio_log.domain.journal import Act
from studio_log.domain.milks import Milk
from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Kind, Reminder, Urgency
from tests.support.builders import (
    DAY,
    HOUR,
    LONDON,
    MINUTE,
    NINE,
    NO_QUIET,
    SHORT,
    Story,
    a_method,
    a_step,
    spread,
)


def at(text: str) -> datetime:
    there = datetime.fromisoformat(f"2026-06-{text}").replace(tzinfo=ZoneInfo("Europe/London"))
    return there.astimezone(UTC)


def due(story: Story, now: datetime | None = None, quiet: QuietHours = LONDON,
        *, night: bool = False) -> dict[str, Reminder]:  # fmt: skip
    """What is due or coming, by kind."""
    found = reminders_of(story.lot, now or story.at, quiet, spoiling_at_night=night)
    return {one.kind.value + one.key.partition(one.kind.value)[2]: one for one in found}


def beans(text: str = "09 06:00") -> Story:
    story = Story(at=at(text))
    story.mark(Act.START, "bean-soak")
    return story


def cured() -> Story:
    return Story().up_to("dip-4")


def test_nothing_rings_for_a_lot_not_begun_stopped_or_taken_back():
    assert reminders_of(Story().lot, NINE, LONDON) == []
    for act in (Act.STOP, Act.VOID):
        story = beans()
        assert due(story)
        story.mark(act)
        assert due(story) == {}


def test_a_long_step_has_its_four_moments():
    story = beans()
    found = due(story)
    assert {name: one.due for name, one in found.items()} == {
        "may_end": at("09 14:00"),
        "ready": at("09 18:00"),
        "past": at("10 00:00"),
        "last_call": at("09 21:55"),  # an hour before midnight is asleep: before bed
    }
    assert found["past"].rings_at == at("10 07:00")
    assert found["ready"].earliest == at("09 14:00")
    assert found["ready"].latest == at("10 00:00")


def test_each_says_the_lot_the_act_why_now_and_what_if_it_waits():
    found = due(beans())
    ready = found["ready"]
    assert ready.title == "Drain the beans 26-001 runners"
    assert "Bean soak since" in ready.why
    assert "aim 12 h" in ready.why
    assert ready.if_late == "The beans froth, turn sour and lose what should bind to the cloth."
    for name in ("past", "last_call"):
        assert "no longer than 18 h" in found[name].why
        assert found[name].if_late
    assert found["past"].urgency is Urgency.SPOILING


def test_a_ready_moved_out_of_the_night_rings_at_the_moved_moment_and_says_why():
    found = due(beans("09 15:00"))["ready"]
    assert found.due == found.rings_at == at("10 07:00")
    assert "falls in quiet hours" in found.why
    assert "03:00" in found.why


def test_may_end_is_told_only_where_it_is_useful():
    """The aim an hour after the earliest: one notice does."""
    story = Story(a_method(a_step(lasts=spread(5, 6, 9))), at=at("09 08:00"))
    story.mark(Act.START, 1)
    assert "may_end" not in due(story)
    story = Story(a_method(a_step(lasts=spread(4, 6, 9))), at=at("09 08:00"))
    story.mark(Act.START, 1)
    assert due(story)["may_end"].urgency is Urgency.CALM


def test_a_last_call_in_quiet_hours_rings_before_them():
    """Latest 04:00, best moved to 21:50: the last call is after that and before bed."""
    story = Story(a_method(a_step(lasts=spread(4, 8, 12))), at=at("09 16:00"))
    story.mark(Act.START, 1)
    found = due(story)
    assert found["ready"].due == at("09 21:50")
    assert found["last_call"].due == at("09 21:55")
    assert not LONDON.is_quiet(found["last_call"].rings_at)


def test_where_no_waking_moment_fits_the_last_call_still_rings_before_bed():
    story = Story(a_method(a_step(lasts=spread(10, 10.5, 11))), at=at("09 16:00"))
    story.mark(Act.START, 1)
    found = due(story)
    assert found["ready"].due == at("10 02:30")
    assert found["ready"].rings_at == at("10 07:00")
    assert found["last_call"].due == found["last_call"].rings_at == at("09 21:55")


def test_a_soak_begun_in_the_night_has_no_call_before_it_began():
    story = Story(a_method(a_step(lasts=spread(2, 3, 4))), at=at("09 23:30"))
    story.mark(Act.START, 1)
    assert all(one.due > story.at for one in due(story).values())


def test_quiet_hours_hold_everything_unless_what_spoils_may_ring():
    story = beans()
    past = due(story, night=True)["past"]
    assert past.rings_at == past.due == at("10 00:00")
    others = [one for one in due(story, night=True).values() if one.kind is not Kind.PAST]
    assert not [one for one in others if LONDON.is_quiet(one.rings_at)]


def test_a_stir_is_due_and_named():
    story = Story(at=at("09 06:00")).up_to("first-soak")
    story.mark(Act.START, "first-soak", at=at("09 20:00"), sure=True)
    found = due(story)["tend/0"]
    assert (found.due, found.rings_at) == (at("09 20:10"), at("09 20:10"))
    assert found.title == "Stir 26-001 runners"
    story.mark(Act.TEND, "first-soak", at=at("09 20:12"))
    assert due(story)["tend/1"].due == at("09 20:30")
    assert "tend/0" not in due(story)


def test_no_stir_is_asked_for_just_before_the_lifting():
    story = Story(at=at("09 06:00")).up_to("first-soak")
    begun = at("09 20:00")
    story.mark(Act.START, "first-soak", at=begun, sure=True)
    ready = due(story)["ready"].due
    story.mark(Act.TEND, "first-soak", at=ready - 3 * HOUR - 6 * MINUTE)
    assert due(story)["tend/1"].due == ready - 6 * MINUTE
    story.mark(Act.TEND, "first-soak", at=ready - 3 * HOUR - 3 * MINUTE)
    assert "tend/2" not in due(story)


def test_short_steps_are_counted_down_by_the_program_and_raise_no_notice():
    story = Story(at=at("09 06:00")).up_to("spin-1")
    found = due(story)
    assert found["ready"].quietly
    assert found["ready"].due == story.at + 5 * MINUTE
    assert "last_call" not in found
    assert "may_end" not in found
    assert not found["past"].quietly
    assert not due(beans())["ready"].quietly


def test_is_it_dry_is_asked_and_damp_asks_again():
    story = Story(at=at("08 06:00")).up_to("dry-1")
    hung = story.at
    assert due(story)["is_dry/0"].due == LONDON.waking(hung + 6 * HOUR)
    story.mark(Act.DAMP, "dry-1", at=hung + 6 * HOUR)
    found = due(story)
    assert "is_dry/0" not in found
    assert found["is_dry/1"].due == LONDON.waking(hung + 12 * HOUR)
    assert "the last piece counts" in found["is_dry/1"].why


def test_damp_past_24_h_is_a_danger():
    story = Story(at=at("08 06:00")).up_to("dry-1")
    found = due(story)["past"]
    assert found.due == story.at + 24 * HOUR
    assert found.urgency is Urgency.SPOILING
    assert "mildew" in found.if_late


def test_a_start_that_presses_is_urgent_and_one_that_may_wait_is_not():
    story = beans()
    story.after(hours=12).mark(Act.END, "bean-soak")
    blend = due(story)
    assert blend["start"].urgency is Urgency.NOW
    assert blend["past"].due == story.at + 2 * HOUR
    assert "within 2 h of draining" in blend["past"].why
    story = Story(at=at("08 06:00")).up_to("dip-2")
    assert due(story)["start"].urgency is Urgency.SOON
    assert due(story)["past"].due == story.at + 48 * HOUR


def test_how_late_a_start_is_grows_with_the_clock():
    """Due since the step before ended; the moment does not run along with the present."""
    story = Story(at=at("09 00:30")).up_to("first-soak")
    ended = story.at
    moments = {due(story, ended + minutes * MINUTE)["start"].due for minutes in (0, 10, 50)}
    assert moments == {ended}


def test_a_start_in_the_night_is_due_in_the_morning():
    story = Story(at=at("08 06:00")).up_to("dry-1")
    story.mark(Act.DRY, "dry-1", at=at("09 23:00"), sure=True)
    for now in ("09 23:30", "10 05:00", "10 07:00", "10 09:30"):
        found = due(story, at(now))["start"]
        assert (found.due, found.rings_at) == (at("10 07:00"), at("10 07:00")), now


def test_a_putting_off_moves_the_ring_and_not_the_moment():
    story = beans()
    until = at("09 18:30")
    story.mark(Act.PUTOFF, "bean-soak", data={"until": until.isoformat()})
    found = due(story)
    assert (found["ready"].due, found["ready"].rings_at) == (at("09 18:00"), until)
    assert found["last_call"].rings_at == at("09 21:55")
    story.mark(Act.PUTOFF, "bean-soak", data={"until": at("09 22:30").isoformat()})
    assert due(story)["ready"].rings_at == at("10 07:00")


def test_the_marks_of_the_cure_fall_due_at_the_right_instants():
    story = cured()
    dry = story.at
    found = due(story)
    marks = {name.rsplit("/", 1)[-1]: one for name, one in found.items() if name.startswith("cure")}
    assert marks["paint"].due == dry + 12 * DAY  # two days ahead of day 14
    assert marks["resists"].due == dry + 14 * DAY
    assert marks["ready"].due == dry + 90 * DAY
    assert marks["ready"].title.startswith("Cured, ready for immersion")
    assert all(not LONDON.is_quiet(one.rings_at) for one in marks.values())


def test_the_dyers_view_of_the_cure_moves_the_mark():
    story = cured()
    dry = story.at
    story.mark(Act.SET, data={"cure_days": 30})
    found = [one for one in due(story).values() if "Cured" in one.title]
    assert [one.due for one in found] == [dry + 30 * DAY]


def test_the_paint_mark_is_not_told_once_it_is_over():
    story = cured()
    dry = story.at
    names = {name.rsplit("/", 1)[-1] for name in due(story, dry + 14 * DAY + MINUTE)}
    assert names == {"resists", "ready"}
    names = {name.rsplit("/", 1)[-1] for name in due(story, dry + 18 * DAY)}
    assert names == {"ready"}
    assert due(story, dry + 400 * DAY), "ready is told until it is answered"


def test_marks_go_with_the_fourth_coat_and_those_after_it_are_new_ones():
    story = cured()
    first = set(due(story))
    story.after(days=1).mark(Act.START, "dip-4")
    assert not [name for name in due(story) if name.startswith("cure_mark")]
    story.after(minutes=1).mark(Act.END, "dip-4")
    story.after(minutes=5).mark(Act.END, "spin-4")
    story.after(hours=9).mark(Act.DRY, "dry-4")
    again = {name: one for name, one in due(story).items() if name.startswith("cure_mark")}
    assert len(again) == 3
    assert not first & set(again), "an answered mark must not answer the new one"
    assert min(one.due for one in again.values()) == story.at + 12 * DAY


def test_correcting_a_moment_keeps_the_marks_the_same_ones():
    story = cured()
    later = cured()
    later.entries[-1] = later.entries[-1].__class__(
        **{**later.entries[-1].__dict__, "at": later.at + 10 * MINUTE}
    )
    assert set(due(story)) == set(due(later, story.at))


def test_use_ends_the_marks():
    story = cured()
    story.after(days=10).mark(Act.USE)
    assert due(story) == {}


def test_the_next_method_is_silent_while_the_cure_speaks():
    dye = a_method(a_step("bath"), slug="dye")
    story = cured()
    story.after(days=1).go_on(dye)
    assert {one.kind for one in due(story).values()} == {Kind.CURE_MARK}
    story.after(days=90).mark(Act.START, "bath")
    assert Kind.CURE_MARK not in {one.kind for one in due(story).values()}


QUIETS = st.sampled_from([
    LONDON, NO_QUIET, QuietHours(time(1), time(6), "Europe/London"),
    QuietHours(time(21), time(8), "America/Santiago"),
])  # fmt: skip
SLUGS = ["bean-soak", "blend", "first-soak", "spin-1", "dry-1", "dip-2", "dry-3", "dip-4"]


@given(
    st.integers(0, 400 * 1440), st.sampled_from(SLUGS), st.integers(0, 4000), QUIETS,
    st.sampled_from(["soy-immersion-long", SHORT]), st.booleans(),
)  # fmt: skip
def test_the_same_in_gives_the_same_out_and_none_rings_in_the_night(
    begun, slug, passed, quiet, method, run
):
    story = Story(method, at=datetime(2026, 1, 1, tzinfo=UTC) + begun * MINUTE).up_to(slug)
    step = story.lot.step(story.number(slug)) if slug in method_slugs(story) else None
    if run and step is not None and step.start is None:
        story.mark(Act.START, slug)
    now = story.at + passed * MINUTE
    found = reminders_of(story.lot, now, quiet)
    assert found == reminders_of(story.lot, now, quiet)
    assert found == sorted(found, key=lambda one: one.rings_at)
    assert len({one.key for one in found}) == len(found)
    for one in found:
        assert not quiet.is_quiet(one.rings_at)
        assert one.rings_at >= one.due
        assert one.title
        assert one.why or one.kind is Kind.START


def method_slugs(story: Story) -> set[str]:
    return {step.slug for step in story.lot.steps}


# -- milk ----------------------------------------------------------------------------------


def hanging() -> Story:
    return Story(at=at("08 06:00")).up_to("dry-1")


def milk_made(moment: datetime, *, cold: bool = True) -> Milk:
    return Milk("M26-001", moment, cold=cold, lots=("26-001",))


def test_beans_are_to_soak_the_evening_before_where_the_milk_will_be_too_old():
    story = hanging()
    found = milk_reminder(story.lot, milk_made(story.at - 47 * HOUR), story.at, LONDON)
    assert found is not None
    assert found.title.startswith("Soak beans tonight")
    dip = found.due.astimezone(ZoneInfo("Europe/London"))
    assert dip.time() == time(20)
    assert found.kind is Kind.USE_BY
    assert "M26-001" in found.why


def test_fresh_milk_needs_no_beans():
    story = hanging()
    assert milk_reminder(story.lot, milk_made(story.at), story.at, LONDON) is None
    assert milk_reminder(story.lot, None, story.at, LONDON) is None


def test_milk_at_room_heat_will_not_last_to_the_next_coat():
    story = hanging()
    assert milk_reminder(story.lot, milk_made(story.at, cold=False), story.at, LONDON) is not None


def test_the_soak_in_progress_is_not_warned_of():
    """Milk has two lives: the bath may hold cloth for its whole window."""
    story = Story(at=at("08 06:00")).up_to("first-soak")
    old = milk_made(story.at - 60 * HOUR)
    assert milk_reminder(story.lot, old, story.at, LONDON) is None


@pytest.mark.parametrize("act", [Act.STOP, Act.VOID, Act.USE])
def test_no_beans_are_soaked_for_a_lot_that_goes_on_no_more(act):
    story = hanging()
    old = milk_made(story.at - 47 * HOUR)
    assert milk_reminder(story.lot, old, story.at, LONDON) is not None
    story.mark(act, sure=True)
    assert milk_reminder(story.lot, old, story.at, LONDON) is None


def test_a_coat_nobody_has_chosen_needs_no_milk():
    story = cured()
    old = milk_made(story.at - timedelta(hours=60))
    assert milk_reminder(story.lot, old, story.at, LONDON) is None
