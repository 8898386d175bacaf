"""The acts of a day and what is best started tonight, worked through by hand.

The times of the shipped methods are common practice, no source: beans 8 / 12 / 18 h, first
soak 10 / 14 / 18 h, stirred at 10, 30 and 60 min, then each 3 h; "is it dry?" at 6 h.
"""

from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.due import reminders_of
from studio_log.domain.journal import Act
from studio_log.domain.look_ahead import (
    acts_of_day,
    day_lines,
    day_words,
    tonight,
    tonight_words,
)
from studio_log.domain.milks import Milk
from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Kind
from tests.support.builders import (
    DAY,
    HOUR,
    LONDON,
    LONG,
    MINUTE,
    NO_QUIET,
    SHORT,
    Story,
    a_method,
    a_step,
    spread,
)

ZONE = "Europe/London"


def at(text: str) -> datetime:
    """A moment on the wall in London; in June 2026 where no month is given."""
    text = text if text.startswith("20") else f"2026-06-{text}"
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(ZONE)).astimezone(UTC)


def day_of(story: Story, now: datetime, quiet: QuietHours = LONDON) -> tuple[str, list[str]]:
    """The day in words, and its lines."""
    ahead = acts_of_day([story.lot], now, quiet)
    return day_words(ahead, now, ZONE), list(day_lines(ahead, now, ZONE))


def night_of(story: Story, now: datetime, quiet: QuietHours = LONDON) -> str:
    return tonight_words(tonight([story.lot], now, quiet), now, ZONE)


def soaking() -> Story:
    """Cloth in the milk since 19:30 on 9 June."""
    story = Story(at=at("09 05:00")).up_to("first-soak")
    story.mark(Act.START, "first-soak", at=at("09 19:30"), sure=True)
    return story


# --- the day -------------------------------------------------------------------------------


def test_a_lot_not_begun_stopped_or_taken_back_has_no_acts():
    assert day_of(Story(), at("09 08:00")) == ("", [])
    for act in (Act.STOP, Act.VOID):
        story = soaking()
        assert day_of(story, at("09 20:00"))[0]
        story.mark(act, at=at("09 20:00"))
        assert day_of(story, at("09 20:00")) == ("", [])
        assert night_of(story, at("09 20:00")) == ""


def test_a_bean_soak_and_all_that_follows_it_in_the_evening():
    """Beans in at 6:00 are drained at 18:00; the milk is strained and the cloth laid in by 18:30.

    Stirred after 10, 30 and 60 min, then after 3 h: 22:30 is asleep, so at 21:50. Nine acts,
    since the end of blending begins the straining.
    """
    story = Story(at=at("09 06:00"))
    story.mark(Act.START, "bean-soak")
    ahead = acts_of_day([story.lot], at("09 08:00"), LONDON)
    found = [(f"{one.at.astimezone(ZoneInfo(ZONE)):%H:%M}", one.kind) for one in ahead.acts]
    assert found == [
        ("18:00", Kind.READY), ("18:00", Kind.START), ("18:15", Kind.READY),
        ("18:30", Kind.READY), ("18:30", Kind.START), ("18:40", Kind.TEND),
        ("19:00", Kind.TEND), ("19:30", Kind.TEND), ("21:50", Kind.TEND),
    ]  # fmt: skip
    words = day_words(ahead, at("09 08:00"), ZONE)
    assert words == "Today: 9 acts, first at 18:00, last before 22:00."
    lines = day_lines(ahead, at("09 08:00"), ZONE)
    assert lines[0] == "18:00 drain the beans 26-001 runners"
    assert lines[5:] == ("18:40 stir 26-001 runners", "and 3 more")


def test_lifting_spinning_and_hanging_are_two_acts_and_a_dip_two_more():
    """In at 19:30, aim 14 h: lifted at 9:30, hung at 9:35, asked 6 h later, dry 8 h later."""
    story = soaking()
    story.mark(Act.TEND, "first-soak", at=at("10 07:00"))
    assert day_of(story, at("10 08:00")) == (
        "Today: 6 acts, first at 9:30, last before 17:46.",
        [
            "9:30 lift the cloth and spin 26-001 runners",
            "9:35 stop the spinner and hang the cloth 26-001 runners",
            "15:35 is it dry? 26-001 runners",
            "17:35 dip the cloth 26-001 runners",
            "17:36 lift the cloth and spin 26-001 runners",
            "17:41 stop the spinner and hang the cloth 26-001 runners",
        ],
    )


def test_a_missed_stir_is_due_now_and_missed_ones_do_not_stack():
    """Never stirred by 20:00: once now, then at the offset of 60 min, then before bed."""
    words, lines = day_of(soaking(), at("09 20:00"))
    assert words == "Today: 3 acts, 1 is due already, the next at 20:30, last before 22:00."
    assert lines[0] == "now: stir 26-001 runners"
    assert lines[1:] == ["20:30 stir 26-001 runners", "21:50 stir 26-001 runners"]


def test_one_act_is_named_in_the_sentence():
    story = soaking()
    story.mark(Act.TEND, "first-soak", at=at("09 20:40"))
    assert day_of(story, at("09 21:10"))[0] == "Today: 1 act, at 21:50: stir 26-001."
    assert day_of(story, at("09 21:55"))[0] == "Today: 1 act, due already: stir 26-001."


def test_several_lots_are_told_in_order_of_time_and_those_due_are_counted():
    early, late = soaking().lot, replace(soaking().lot, code="26-002")
    ahead = acts_of_day([late, early], at("09 21:50"), LONDON)
    assert day_words(ahead, at("09 21:50"), ZONE) == "Today: 2 acts, and all are due already."
    ahead = acts_of_day([late, early], at("09 19:40"), LONDON)
    assert [one.at for one in ahead.acts] == sorted(one.at for one in ahead.acts)
    assert "2 are due already" in day_words(ahead, at("09 19:40"), ZONE)


def test_what_was_put_off_is_told_at_its_new_moment():
    story = soaking()
    story.mark(Act.PUTOFF, "first-soak", at=at("09 20:00"),
               data={"until": at("09 21:15").isoformat()})  # fmt: skip
    assert day_of(story, at("09 20:05"))[1][0] == "21:15 stir 26-001 runners"


def test_strong_milk_is_turned_each_five_minutes():
    """The short method: in at 15:00 for 10/20/30 min, turned at 5, 10 and not 15 (lifted at 20)."""
    story = Story(SHORT, at=at("09 02:00")).up_to("first-soak")
    story.mark(Act.START, "first-soak", at=at("09 15:00"), sure=True)
    _, lines = day_of(story, at("09 15:01"))
    assert lines == [
        "15:05 turn the cloth 26-001 runners",
        "15:10 turn the cloth 26-001 runners",
        "15:20 lift the cloth and spin 26-001 runners",
        "15:25 stop the spinner and hang the cloth 26-001 runners",
        "21:25 is it dry? 26-001 runners",
    ]


def test_a_cure_has_no_acts_but_its_marks_on_their_day():
    """Common practice, no source: painting to day 14, told two days ahead; a bath from day 90."""
    story = Story().up_to("dip-4")
    dry = story.at
    quiet_days = [1, 11, 13, 14, 89, 91, 200]
    assert {day_of(story, dry + day * DAY - HOUR)[0] for day in quiet_days} == {""}
    words = day_of(story, dry + 12 * DAY - HOUR)[0]
    assert words.endswith(": paint within two days: 26-001.")
    words, lines = day_of(story, dry + 90 * DAY - HOUR)
    assert words.endswith(": cured, ready for immersion: 26-001.")
    assert lines == [f"{dry + HOUR:%H:%M} cured, ready for immersion: 26-001 runners"]
    assert "due already" in day_of(story, dry + 90 * DAY + HOUR)[0]


def test_a_studio_without_quiet_hours_has_days_that_end_at_midnight():
    story = Story(at=at("08 06:00")).up_to("dry-1")
    words, lines = day_of(story, story.at, NO_QUIET)
    assert words.endswith("last before midnight.")
    assert lines[-1].startswith("22:")
    assert acts_of_day([], at("09 08:00"), NO_QUIET).until == at("10 00:00")


def test_a_day_runs_on_to_quiet_hours_that_begin_past_midnight():
    late = QuietHours(time(1, 30), time(8), ZONE)
    assert acts_of_day([], at("09 08:00"), late).until == at("10 01:30")
    asleep = acts_of_day([], at("09 23:00"), LONDON)
    assert (asleep.since, asleep.until) == (at("10 07:00"), at("10 22:00"))


def test_a_look_in_the_night_speaks_of_tomorrow():
    assert day_of(soaking(), at("09 23:00"))[0].startswith("Tomorrow: ")


@pytest.mark.parametrize(
    ("begun", "now", "lifted"),
    [
        # London: 29 March 2026 has 23 hours, 25 October 25 (IANA tz database, from memory).
        ("2026-03-28 18:30", "2026-03-29 08:00", "9:30"),
        ("2026-10-24 18:30", "2026-10-25 07:05", "7:30"),
    ],
)
def test_a_soak_over_a_clock_change_is_lifted_after_fourteen_true_hours(begun, now, lifted):
    story = Story(at=at(begun) - 13 * HOUR).up_to("first-soak")
    story.mark(Act.START, "first-soak", at=at(begun), sure=True)
    assert f"{lifted} lift the cloth and spin 26-001 runners" in day_of(story, at(now))[1]


# --- the evening ---------------------------------------------------------------------------


def test_a_soak_whose_gap_ends_tonight_must_be_started_and_both_ends_are_told():
    """Strained at 18:30, so in by 19:30 and lifted from 5:30 (awake from 7:00) to 13:30."""
    story = Story(at=at("09 06:00")).up_to("first-soak")
    assert story.at == at("09 18:30")
    assert night_of(story, at("09 19:00")) == (
        "Tonight: lay the cloth in the milk for 26-001 by 19:30 "
        "and it ends tomorrow 7:00 to 13:30."
    )  # fmt: skip
    # Without quiet hours the gap is still a limit: in by 19:30, out from 5:30.
    assert night_of(story, at("09 19:00"), NO_QUIET).endswith("tomorrow 5:30 to 13:30.")
    late = tonight([story.lot], at("09 19:00"), LONDON)
    assert [(one.by, one.must) for one in late] == [(at("09 19:30"), True)]


def overnight(earliest: float, aim: float, latest: float, day: str = "09") -> Story:
    """A quick step ended at 18:00 on a day, and a long one open after it."""
    quick = a_step("wet", lasts=spread(1, 1, 2))
    long = a_step("steep", lasts=spread(earliest, aim, latest))
    story = Story(a_method(quick, long), at=at(f"{day} 17:00"))
    story.mark(Act.START, "wet")
    story.mark(Act.END, "wet", at=at(f"{day} 18:00"))
    return story


def test_a_step_that_would_end_asleep_from_the_morning_must_be_started_tonight():
    """16 to 17 h from 7:00 end at 23:00 or midnight; from 21:50, between 13:50 and 14:50."""
    found = tonight([overnight(16, 16.5, 17).lot], at("09 20:00"), LONDON)
    assert [(one.must, one.by, one.ends) for one in found] == [
        (True, at("09 21:50"), (at("10 13:50"), at("10 14:50")))
    ]


def test_a_step_that_may_as_well_wait_is_advice_and_only_where_none_must():
    """8 to 18 h from 7:00 end from 15:00 on, awake: no need. From 21:50: 5:50 to 15:50."""
    story = overnight(8, 12, 18)
    words = night_of(story, at("09 20:00"))
    assert words == (
        "Good tonight: begin steep for 26-001 by 21:50 and it ends tomorrow 7:00 to 15:50."
    )
    must = replace(overnight(16, 16.5, 17).lot, code="26-002")
    both = tonight([story.lot, must], at("09 20:00"), LONDON)
    assert [one.code for one in both] == ["26-002"]


@pytest.mark.parametrize("lasts", [(5, 5.5, 6), (2, 4, 9), (20, 30, 40)])
def test_what_ends_asleep_or_is_short_or_takes_days_is_left_out(lasts):
    """5 to 6 h from 21:50 end by 3:50, and 16:50 is past; aims of 4 and 30 h are not a night's."""
    assert night_of(overnight(*lasts), at("09 20:00")) == ""


def test_in_quiet_hours_it_is_too_late_for_tonight():
    assert night_of(overnight(16, 16.5, 17), at("09 21:49")) != ""
    assert night_of(overnight(16, 16.5, 17), at("09 22:00")) == ""


def test_without_quiet_hours_nothing_that_may_wait_is_told():
    assert tonight([overnight(8, 12, 18).lot], at("09 20:00"), NO_QUIET) == ()


@pytest.mark.parametrize(
    ("day", "ends"),
    [
        ("2026-03-28", ("2026-03-29 07:00", "2026-03-29 07:50")),
        ("2026-06-09", None),
        ("2026-10-24", None),
    ],
)
def test_a_night_of_a_clock_change_is_counted_in_true_hours(day, ends):
    """Eight to nine true hours from 21:50 end at 6:50, asleep; in March that is 7:50 on the wall.

    In October it is 5:50. (London: 29 March has 23 hours, 25 October 25, from memory.)
    """
    found = tonight([overnight(8, 8.5, 9, day).lot], at(f"{day} 20:00"), LONDON)
    assert [one.ends for one in found] == ([] if ends is None else [tuple(map(at, ends))])


@pytest.mark.parametrize(
    ("day", "ends"),
    [
        ("2026-03-28", ("2026-03-29 14:50", "2026-03-29 15:50")),
        ("2026-10-24", ("2026-10-25 12:50", "2026-10-25 13:50")),
    ],
)
def test_both_clock_changes_move_the_ends_on_the_wall(day, ends):
    """16 to 17 true hours from 21:50: 13:50 to 14:50 in a common night, else an hour off."""
    found = tonight([overnight(16, 16.5, 17, day).lot], at(f"{day} 20:00"), LONDON)
    assert [one.ends for one in found] == [tuple(map(at, ends))]


def test_milk_that_will_not_last_asks_for_beans_tonight():
    """An hour into the drying the milk has an hour left; the second coat is hours away."""
    story = Story(at=at("08 06:00")).up_to("dry-1")
    now = story.at + HOUR
    milk = Milk("M26-001", made_at=now - 47 * HOUR)
    milks = {"26-001": milk}
    ahead = acts_of_day([story.lot], now, LONDON, milks)
    beans = [one for one in ahead.acts if one.kind is Kind.USE_BY]
    assert [(one.words, one.overdue) for one in beans] == [("soak beans tonight for", True)]
    found = tonight([story.lot], now, LONDON, milks)
    assert tonight_words(found, now, ZONE) == (
        "Tonight: soak beans for 26-001 by 21:50 and they end tomorrow 7:00 to 15:50."
    )
    fresh = {"26-001": replace(milk, made_at=now)}
    assert tonight([story.lot], now, LONDON, fresh) == ()


def test_many_to_start_are_counted():
    lots = [replace(overnight(16, 16.5, 17).lot, code=f"26-{n:03}") for n in range(1, 6)]
    words = tonight_words(tonight(lots, at("09 20:00"), LONDON), at("09 20:00"), ZONE)
    assert words.count("Also:") == 2
    assert words.endswith("And 2 more.")
    assert tonight_words((), at("09 20:00"), ZONE) == ""


# --- laws ----------------------------------------------------------------------------------

QUIETS = st.sampled_from([
    LONDON, NO_QUIET, QuietHours(time(1), time(6), ZONE),
    QuietHours(time(21), time(8), "America/Santiago"),
])  # fmt: skip
SLUGS = st.sampled_from(["bean-soak", "blend", "first-soak", "spin-1", "dry-1", "dip-2", "dry-2"])


def a_lot(method: str, begun: int, slug: str, *, run: bool) -> Story:
    story = Story(method, at=datetime(2026, 1, 1, tzinfo=UTC) + begun * MINUTE).up_to(slug)
    if run and story.lot.step(story.number(slug)).start is None:
        story.mark(Act.START, slug)
    return story


@given(st.sampled_from([LONG, SHORT]), st.integers(0, 400 * 1440), SLUGS, st.integers(0, 3000),
       QUIETS, st.booleans())  # fmt: skip
def test_acts_are_distinct_in_order_and_awake(method, begun, slug, passed, quiet, run):
    story = a_lot(method, begun, slug, run=run)
    now = story.at + passed * MINUTE
    ahead = acts_of_day([story.lot], now, quiet)
    assert ahead.count == len({(one.step, one.kind, one.at) for one in ahead.acts})
    assert [one.at for one in ahead.acts] == sorted(one.at for one in ahead.acts)
    for one in ahead.acts:
        assert ahead.since <= one.at <= one.latest <= ahead.until
        assert not quiet.is_quiet(one.at)
    if ahead.acts:
        assert ahead.first <= ahead.last_by
    assert bool(day_words(ahead, now, quiet.zone)) == bool(ahead.acts)
    # Whatever the reminders ring for by the end of the day is an act of the day.
    told = {Kind.READY, Kind.TEND, Kind.IS_DRY, Kind.START}
    rings = [one for one in reminders_of(story.lot, ahead.since, quiet) if one.kind in told]
    steps = {one.step for one in ahead.acts}
    assert {one.step for one in rings if one.rings_at < ahead.until and not one.quietly} <= steps


@given(st.sampled_from([LONG, SHORT]), st.integers(0, 400 * 1440), SLUGS, st.integers(0, 600),
       QUIETS)  # fmt: skip
def test_what_is_started_tonight_may_end_awake_after_the_night(method, begun, slug, passed, quiet):
    story = a_lot(method, begun, slug, run=False)
    now = story.at + passed * MINUTE
    for one in tonight([story.lot], now, quiet):
        assert one.ends is not None
        first, last = one.ends
        assert now - MINUTE < one.by < acts_of_day([], now, quiet).until
        assert not quiet.is_quiet(one.by)
        assert one.by < first <= last
        assert not quiet.is_quiet(first)
        assert not quiet.is_quiet(last - timedelta(seconds=1)) or first == last


@given(st.integers(0, 400 * 1440), st.sampled_from(["bean-soak", "first-soak"]))
def test_a_day_lived_as_told_has_as_many_acts_as_were_told(begun, slug):
    """Do each act when its reminder rings, and count, up to the first "is it dry?"."""
    story = a_lot(LONG, begun, slug, run=True)
    ahead = acts_of_day([story.lot], story.at, LONDON)
    told = [one for one in ahead.acts if one.kind is not Kind.IS_DRY]
    until = min([one.at for one in ahead.acts if one.kind is Kind.IS_DRY], default=ahead.until)
    done, now = 0, ahead.since
    acts = {Kind.READY: Act.END, Kind.TEND: Act.TEND, Kind.START: Act.START}
    while True:
        found = [one for one in reminders_of(story.lot, now, LONDON) if one.kind in acts]
        coming = min(found, key=lambda one: one.rings_at, default=None)
        if coming is None or max(coming.rings_at, now) >= until:
            break
        now = max(coming.rings_at, now)
        story.mark(acts[coming.kind], coming.step, at=now, sure=True)
        done += 1
    assert done == len([one for one in told if one.at < until])
