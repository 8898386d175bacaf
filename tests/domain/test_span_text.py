"""Lengths of time as typed."""

from contextlib import suppress
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.span_text import read_span


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("10m", 10), ("10 min", 10), ("8 h", 480), ("1h30", 90), ("1h30m", 90), ("1 h 30 min", 90),
        ("2 days", 2880), ("90d", 129_600), ("1 w", 10_080), ("1.5 h", 90), ("1,5 h", 90),
        ("½ h", 30), ("1½ h", 90), ("half an hour", 30), ("an hour", 60), ("two hours", 120),
        ("two and a half hours", 150), ("an hour and a half", 90), ("twenty five minutes", 25),
        ("1 d 4 h", 1680), ("90 s", 1.5), ("a week", 10_080),
    ],
)  # fmt: skip
def test_a_length_of_time_is_read(text: str, minutes: float) -> None:
    assert read_span(text) == timedelta(minutes=minutes)


@pytest.mark.parametrize(
    "text",
    ["", "10", "h", "-3h", "0 m", "1h99", "3 months", "1 year", "h 3", "10m 1h", "1h 2h", "1e5 h",
     "nan h", "999999999 w", "36601 d", "10m\n", "1.2.3 h", "10 m <b>", "٣ h", "m" * 100],
)  # fmt: skip
def test_what_is_no_length_of_time_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was changed"):
        read_span(text)


@given(st.one_of(st.text(max_size=70), st.from_regex(r"[0-9 .,/]{1,20}[a-z]{1,6}", fullmatch=True)))
def test_any_text_is_read_or_refused(text: str) -> None:
    with suppress(Refusal):  # anything else that is raised fails the test
        assert timedelta(0) < read_span(text) <= timedelta(days=36_600)


@given(st.integers(1, 1000), st.integers(0, 59))
def test_hours_and_minutes_are_read_as_they_are(hours: int, minutes: int) -> None:
    expected = timedelta(hours=hours, minutes=minutes)
    assert read_span(f"{hours}h{minutes:02}") == expected
    assert read_span(f"{hours} h {minutes} min") == expected
