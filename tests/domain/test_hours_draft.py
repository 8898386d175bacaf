"""The hours while they are edited: read and written back, nights seen as days, what is refused."""

from datetime import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.hours_draft import (
    HoursDraft,
    Layer,
    copied,
    draft_from,
    draft_values,
    typed,
    with_bars,
    with_typed,
)
from studio_log.domain.quiet_text import Hours

KEPT = {
    "open_hours": "mon-fri 09:00-12:30; mon-fri 13:30-17:00; sat 10:00-14:00",
    "waking_hours": "",
    "quiet_start": "22:00",
    "quiet_end": "07:00",
    "quiet_days": "fri 23:30-09:00; sat 00:30-09:00; sun off",
    "single_days": "2026-12-24 closed: fair",
    "holiday_place": "GB-ENG",
}


def test_what_is_read_is_written_back() -> None:
    assert draft_values(draft_from(KEPT)) == KEPT


def test_the_night_that_most_have_is_every_night() -> None:
    odd = {**KEPT, "quiet_start": "21:00"}
    found = draft_values(draft_from({**odd, "quiet_days": "mon 20:00-06:00; tue 20:00-06:00"}))
    assert (found["quiet_start"], found["quiet_days"]) == (
        "21:00", "mon 20:00-06:00; tue 20:00-06:00"
    )  # fmt: skip
    all_else = ",".join(("mon", "tue", "wed", "thu", "fri", "sat")) + " 22:00-06:00"
    found = draft_values(draft_from({**KEPT, "quiet_start": "21:00", "quiet_days": all_else}))
    assert (found["quiet_start"], found["quiet_end"]) == ("22:00", "06:00")
    assert found["quiet_days"] == "sun 21:00-07:00"


def test_without_any_night_nothing_is_quiet() -> None:
    found = draft_values(HoursDraft())
    assert found["quiet_start"] == found["quiet_end"]
    assert found["quiet_days"] == ""
    assert draft_from(found) == HoursDraft()


def test_a_night_is_typed_by_its_evening_and_seen_on_two_days() -> None:
    draft = with_typed(HoursDraft(), Layer.QUIET, 4, "23.30-9")
    assert typed(draft, Layer.QUIET, 4) == "23:30–09:00"
    assert draft.bars(Layer.QUIET, 4) == ((1410, 1440),)
    assert draft.bars(Layer.QUIET, 5) == ((0, 540),)
    assert with_typed(draft, Layer.QUIET, 4, " ") == HoursDraft()


def test_pulling_the_end_of_a_night_in_the_morning_moves_the_night_before() -> None:
    draft = draft_from({**KEPT, "quiet_days": ""})
    later = with_bars(draft, Layer.QUIET, 0, ((0, 480), (1320, 1440)))
    assert later.nights[6] == Hours(time(22), time(8))
    assert later.nights[:6] == draft.nights[:6]


def test_two_nights_of_one_evening_are_refused() -> None:
    draft = draft_from(KEPT)
    with pytest.raises(Refusal, match="Tuesday would have two nights"):
        with_bars(draft, Layer.QUIET, 1, ((0, 420), (780, 840), (1320, 1440)))


@pytest.mark.parametrize(
    ("text", "says"),
    [("22", "is no night"), ("22-7-8", "is no night"), ("ten-7", "is no night"),
     ("22-22", "of no length"), ("25-7", "25 is no time"), ("٢٢-7", "is no night"),
     ("2²-7", "is no night")],
)  # fmt: skip
def test_a_night_that_makes_no_sense_is_refused(text: str, says: str) -> None:
    with pytest.raises(Refusal, match=says):
        with_typed(HoursDraft(), Layer.QUIET, 0, text)


def test_a_week_without_hours_awake_cannot_be_kept() -> None:
    draft = with_typed(HoursDraft(), Layer.QUIET, 0, "8-7:30")
    with pytest.raises(Refusal, match="would be 23 h 30 of quiet"):
        draft_values(draft)


def test_more_stretches_than_the_setting_holds_are_refused_in_words() -> None:
    draft = HoursDraft()
    for day in range(7):
        text = ",".join(f"{hour}:{day}0-{hour}:{day}5" for hour in range(8, 16) if day < 6)
        draft = with_typed(draft, Layer.WORKING, day, text)
    with pytest.raises(Refusal, match="400 letters"):
        draft_values(draft)


def test_a_day_is_copied_to_others() -> None:
    draft = copied(draft_from(KEPT), Layer.WORKING, 5, (0, 6))
    assert draft.working[0] == draft.working[6] == draft.working[5] == ((600, 840),)
    nights = copied(draft_from(KEPT), Layer.QUIET, 4, (5,))
    assert nights.nights[5] == nights.nights[4]


@pytest.mark.parametrize("name", ["open_hours", "quiet_start", "quiet_days", "single_days"])
def test_what_is_kept_and_makes_no_sense_is_refused(name: str) -> None:
    with pytest.raises(Refusal):
        draft_from({**KEPT, name: "\x00nonsense"})


NIGHTS = st.one_of(
    st.none(),
    st.builds(
        lambda start, length: Hours(
            time(start // 60 % 24, start % 60), time((start + length) // 60 % 24, start % 60)
        ),
        st.integers(17 * 60, 26 * 60),
        st.sampled_from((360, 420, 480)),
    ),
)


@given(st.tuples(*[NIGHTS] * 7))
def test_nights_seen_as_days_are_the_same_nights(nights: tuple[Hours | None, ...]) -> None:
    draft = HoursDraft(nights=nights)
    assert with_bars(draft, Layer.QUIET, 3, draft.bars(Layer.QUIET, 3)) == draft
