"""The hours in words."""

from datetime import date

from studio_log.domain.hours_draft import HoursDraft, Layer, draft_from, with_typed
from studio_log.domain.single_days import SingleDay
from studio_log.present.hours_words import draft_doubts, draft_words, single_words, week_in_words
from tests.domain.test_hours_draft import KEPT


def test_a_week_is_told_by_runs_of_days() -> None:
    draft = draft_from(KEPT)
    assert week_in_words(draft.working) == ("Mon–Fri 09:00–12:30, 13:30–17:00; Sat 10:00–14:00")
    assert draft_words(draft) == (
        "Working: Mon–Fri 09:00–12:30, 13:30–17:00; Sat 10:00–14:00. "
        "Quiet: Mon–Thu 22:00–07:00; Fri 23:30–09:00; Sat 00:30–09:00. "
        "Waking: all but the quiet hours."
    )


def test_nothing_said_is_told_too() -> None:
    assert draft_words(HoursDraft()) == (
        "Working: always, for nothing is said. Quiet: none. Waking: all but the quiet hours."
    )
    assert draft_doubts(HoursDraft()) == ""


def test_working_while_everybody_sleeps_is_doubted() -> None:
    draft = with_typed(draft_from(KEPT), Layer.WORKING, 1, "6-12")
    assert draft_doubts(draft) == "Working hours lie outside the waking ones: Tue 06:00–07:00."


def test_single_days_are_told_with_their_year() -> None:
    day = date(2026, 12, 24)
    assert single_words(SingleDay(day, day, (), "fair")) == "Thu 24 December 2026: closed — fair"
    run = SingleDay(date(2026, 8, 3), date(2026, 8, 4), ((600, 720),))
    assert single_words(run) == "Mon 3 August 2026 to Tue 4 August 2026: 10:00–12:00"
    assert single_words(SingleDay(day, day, None)) == "Thu 24 December 2026: as its weekday"
