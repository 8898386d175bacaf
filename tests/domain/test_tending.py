"""When a step wants its next small act, and when to ask whether the cloth is dry.

The offsets are those of the shipped long soak: stirs at 10, 30 and 60 min, then every 3 h;
"is it dry?" at 6 h and 12 h, then every 3 h while awake. Common practice, no source.
"""

from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.lots import LotStep
from studio_log.domain.methods import StepKind
from studio_log.domain.quiet import QuietHours
from studio_log.domain.tending import coming_tendings, next_ask, next_tending
from tests.support.builders import HOUR, LONDON, MINUTE, NO_QUIET, STIRRED, a_step, shipped

SOAK = next(s for s in shipped()["soy-immersion-long", 1].steps if s.slug == "first-soak")
DRY = next(s for s in shipped()["soy-immersion-long", 1].steps if s.slug == "dry-1")


def at(text: str) -> datetime:
    there = datetime.fromisoformat(f"2026-06-{text}").replace(tzinfo=ZoneInfo("Europe/London"))
    return there.astimezone(UTC)


def soaking(since: datetime, *tended: datetime) -> LotStep:
    return LotStep(4, "first-soak", "First soak", SOAK, 0, start=since, tended=tended)


def hanging(since: datetime, *damp: datetime) -> LotStep:
    return LotStep(6, "dry-1", "Dry", DRY, 0, start=since, damp=damp)


@pytest.mark.parametrize(
    ("tended", "next_at"),
    [
        ([], "09 09:10"),
        (["09 09:10"], "09 09:30"),
        (["09 09:12"], "09 09:30"),  # late, the set moment stays
        (["09 09:10", "09 09:30"], "09 10:00"),
        (["09 09:10", "09 09:30", "09 10:00"], "09 13:00"),
        (["09 09:10", "09 09:30", "09 10:20"], "09 13:20"),  # the last actual act counts
        (["09 09:27"], "09 10:00"),  # three minutes before: it served for 09:30
        (["09 09:24"], "09 09:30"),
        (["09 12:00"], "09 15:00"),  # the first three missed: they do not stack
    ],
)
def test_stirs_fall_at_set_offsets_then_an_interval_from_the_last(tended, next_at):
    step = soaking(at("09 09:00"), *map(at, tended))
    assert next_tending(step, LONDON) == at(next_at)


def test_missed_ones_leave_one_moment_however_late_it_is():
    """Nobody came all day: the next is still the first, once."""
    assert next_tending(soaking(at("09 09:00")), LONDON) == at("09 09:10")


def test_one_moves_to_just_before_the_night_and_one_to_just_after():
    since = at("09 14:00")
    found = coming_tendings(soaking(since), LONDON, at("10 08:00"))
    expected = ["09 14:10", "09 14:30", "09 15:00", "09 18:00", "09 21:00", "10 07:00"]
    assert list(found) == list(map(at, expected))
    found = coming_tendings(soaking(at("09 15:30")), LONDON, at("10 09:00"))
    expected = ["09 15:40", "09 16:00", "09 16:30", "09 19:30", "09 21:50", "10 07:00"]
    assert list(found) == list(map(at, expected))


def test_without_a_plan_or_a_start_there_is_nothing_to_tend():
    never = LotStep(1, "x", "X", a_step(), 0, start=at("09 09:00"))
    assert next_tending(never, LONDON) is None
    assert next_tending(replace(soaking(at("09 09:00")), start=None), LONDON) is None
    once = replace(SOAK, tending=replace(STIRRED, every=None))
    done = replace(soaking(at("09 09:00"), at("09 10:00")), spec=once)
    assert next_tending(done, LONDON) is None


QUIETS = st.sampled_from([
    LONDON, NO_QUIET, QuietHours(time(1), time(6), "Europe/London"),
    QuietHours(time(20, 30), time(8, 15), "America/Santiago"),
])  # fmt: skip
MOMENTS = st.integers(0, 400 * 1440).map(lambda m: datetime(2026, 1, 1, tzinfo=UTC) + m * MINUTE)


@given(MOMENTS, QUIETS, st.lists(st.integers(1, 900), max_size=5))
def test_none_falls_in_quiet_hours_and_none_before_the_last_act(since, quiet, waits):
    tended: list[datetime] = []
    for wait in waits:
        tended.append((tended[-1] if tended else since) + wait * MINUTE)
    step = soaking(since, *tended)
    found = next_tending(step, quiet)
    assert found is not None
    assert not quiet.is_quiet(found)
    assert found > step.tended[-1] if tended else found > since


@given(MOMENTS, QUIETS)
def test_a_night_holds_at_most_one_stir_before_it_and_one_after(since, quiet):
    until = since + 60 * HOUR
    found = coming_tendings(soaking(since), quiet, until)
    assert list(found) == sorted(set(found))
    for night in quiet.nights(since, until):
        beside = [one for one in found if night.start - 10 * MINUTE <= one <= night.end]
        assert len([one for one in beside if one == night.start - 10 * MINUTE]) <= 1
        assert len([one for one in beside if one == night.end]) <= 1
        assert not [one for one in beside if night.start <= one < night.end]


@pytest.mark.parametrize(
    ("since", "damp", "asked"),
    [
        ("09 09:00", [], "09 15:00"),
        ("09 09:00", ["09 15:00"], "09 21:00"),
        ("09 09:00", ["09 15:00", "09 21:00"], "10 07:00"),  # midnight is asleep
        ("09 09:00", ["09 15:00", "09 21:00", "10 07:00"], "10 10:00"),
        ("09 08:00", ["09 14:00", "09 17:00"], "09 20:00"),
        ("09 08:00", ["09 20:30"], "10 07:00"),
        ("09 04:00", ["09 10:00", "09 16:00"], "09 19:00"),
        ("09 04:00", ["09 10:00", "09 16:00", "09 19:05"], "10 07:00"),
        ("09 18:00", [], "10 07:00"),  # six hours on is midnight
        ("09 09:00", ["09 11:00"], "09 15:00"),  # felt early, damp: the set moment stays
    ],
)
def test_is_it_dry_is_asked_at_6_h_at_12_h_then_3_hourly_while_awake(since, damp, asked):
    assert next_ask(hanging(at(since), *map(at, damp)), LONDON) == at(asked)


@given(MOMENTS, QUIETS, st.lists(st.integers(1, 400), max_size=6))
def test_still_damp_asks_again_later_and_awake(since, quiet, waits):
    damp: list[datetime] = []
    for wait in waits:
        damp.append((damp[-1] if damp else since) + wait * MINUTE)
    found = next_ask(hanging(since, *damp), quiet)
    assert found is not None
    assert not quiet.is_quiet(found)
    if damp:
        assert found > damp[-1]


def test_nothing_is_asked_of_what_does_not_hang():
    assert next_ask(replace(hanging(at("09 09:00")), start=None), LONDON) is None
    soak = LotStep(1, "x", "X", a_step(kind=StepKind.SOAK), 0, start=at("09 09:00"))
    assert next_ask(soak, LONDON) is None
    assert next_ask(hanging(at("09 09:00")), NO_QUIET) == at("09 09:00") + timedelta(hours=6)


@pytest.mark.parametrize(
    ("planned", "damp", "asked"),
    [
        ("09 17:30", [], "09 17:30"),  # later than the first offset, 15:00
        ("09 13:45", [], "09 13:45"),  # sooner
        ("19 09:00", [], "09 15:00"),  # past the drying's latest
        ("09 08:00", [], "09 15:00"),  # before it was hung up
        ("09 17:30", ["09 17:30"], "09 21:00"),  # still damp: the second offset
    ],
)
def test_who_follows_a_plan_is_asked_when_the_plan_has_somebody_come(planned, damp, asked):
    step = replace(hanging(at("09 09:00"), *map(at, damp)), plan_end=at(planned))
    assert next_ask(step, LONDON) == at(asked)
