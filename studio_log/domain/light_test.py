"""A window light test: its test half in daylight, the master half in the dark, read in time."""

from datetime import datetime, timedelta
from typing import Final

from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Kind, Reminder, Urgency
from studio_log.domain.swatches import Swatch
from studio_log.language.words import counted, tr, tr_later

READING_WEEKS: Final = (2, 4, 8)
"""Weeks in the light after which it is read (common practice, no source)."""
EARLY: Final = timedelta(days=3)
"""A grade given so much before its day is that day's reading."""


def light_readings(swatch: Swatch) -> list[tuple[int, datetime]]:
    """Give the readings that are still to come or due: weeks and moment."""
    begun = swatch.light_begun
    if begun is None or swatch.ended or swatch.voided:
        return []
    graded = [one.at for one in swatch.grades if one.test == "light" and one.at > begun]
    found = [(weeks, begun + timedelta(weeks=weeks)) for weeks in READING_WEEKS]
    return [
        (weeks, at) for weeks, at in found
        if tail_of(weeks, begun) not in swatch.answered
        and not any(one >= at - EARLY for one in graded)
    ]  # fmt: skip


def tail_of(weeks: int, begun: datetime) -> str:
    """Give the end of the key of a reading's reminder: of each test another."""
    return f"light/{weeks}/{begun:%y%m%d}"


def light_reminders(swatch: Swatch, quiet: QuietHours) -> list[Reminder]:
    """Give the reminders of a swatch's light test, in order of time."""
    begun = swatch.light_begun
    if begun is None:
        return []
    return [
        Reminder(
            key=f"{swatch.code}/{tail_of(weeks, begun)}",
            subject=swatch.code,
            step=None,
            kind=Kind.LIGHT_READING,
            urgency=Urgency.CALM,
            due=at,
            rings_at=quiet.waking(at),
            title=tr("Read the light test of {code}: {weeks}", code=swatch.code,
                     weeks=weeks_words(weeks)),
            why=tr("Hold the test half against the half kept dark, in the same daylight, and grade "
                   "the change by the grey scale; or read both colours in one photo."),
            if_late=tr("Write down how long it has really hung."),
        )
        for weeks, at in light_readings(swatch)
    ]  # fmt: skip


def weeks_words(weeks: int) -> str:
    """Say a number of weeks."""
    return counted(weeks, tr_later("{n} week"), tr_later("{n} weeks"))
