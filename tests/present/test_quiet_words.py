"""When it is quiet next, in words."""

from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.quiet import QuietHours
from studio_log.domain.quiet_text import read_days
from studio_log.present.quiet_words import next_quiet_words

TUESDAY_NOON = datetime(2026, 6, 9, 12, tzinfo=UTC)


@pytest.mark.parametrize(
    ("days", "hours", "words"),
    [
        ("", 0, "Next quiet: tonight 22:00 to 07:00."),
        ("", 11, "It is quiet now, until 07:00."),
        ("tue 00:30-09:00", 0, "Next quiet: tonight 00:30 to 09:00."),
        ("tue 00:30-09:00", 12.25, "Next quiet: tonight 00:30 to 09:00."),
        ("tue 14:00-16:00", 0, "Next quiet: today 14:00 to 16:00."),
        ("tue off", 0, "Next quiet: tomorrow 22:00 to 07:00."),
        ("tue off; wed 01:00-08:00", 0, "Next quiet: tomorrow night 01:00 to 08:00."),
        ("tue,wed,thu off; fri 01:00-08:00", 0, "Next quiet: Fri night 01:00 to 08:00."),
        ("tue,wed,thu off", 0, "Next quiet: Fri 22:00 to 07:00."),
        ("tue 22:00-12:00; wed 12:00-07:00", 11, "It is quiet now, until Thu 07:00."),
    ],
)
def test_the_next_quiet_stretch_in_words(days: str, hours: float, words: str) -> None:
    """The weekday of 9 June 2026 is by the calendar (ISO 8601: 2026-W24-2)."""
    assert TUESDAY_NOON.isocalendar()[:] == (2026, 24, 2)
    quiet = QuietHours(days=read_days(days))
    assert next_quiet_words(quiet, TUESDAY_NOON + timedelta(hours=hours)) == words
