"""The studio's hours in words: a week, a single day, and what is odd about a draft."""

from datetime import date

from studio_log.domain.hours_draft import HoursDraft
from studio_log.domain.single_days import SingleDay
from studio_log.domain.stretch_text import stretch_words, without
from studio_log.domain.studio_hours import Week
from studio_log.language.calendar_words import date_words, weekday_name
from studio_log.language.words import tr


def week_in_words(week: Week) -> str:
    """Give "Mon–Fri 09:00–17:00; Sat 10:00–14:00"; "" for a week without any stretch."""
    runs: list[list[int]] = []
    for day in range(7):
        if runs and week[runs[-1][-1]] == week[day]:
            runs[-1].append(day)
        else:
            runs.append([day])
    return "; ".join(
        f"{_run_words(run)} {stretch_words(week[run[0]])}" for run in runs if week[run[0]]
    )


def draft_words(draft: HoursDraft) -> str:
    """Say what was understood of a draft: working, quiet and waking hours."""
    working = week_in_words(draft.working) or tr("always, for nothing is said")
    nights = "; ".join(_night_words(draft)) or tr("none")
    if any(draft.waking):
        waking = week_in_words(draft.awake) or tr("never")
    else:
        waking = tr("all but the quiet hours")
    return tr(
        "Working: {working}. Quiet: {nights}. Waking: {waking}.",
        working=working,
        nights=nights,
        waking=waking,
    )


def draft_doubts(draft: HoursDraft) -> str:
    """Say where working hours lie outside the waking ones; "" where they do not."""
    asleep = tuple(
        without(draft.working[day], draft.awake[day]) if any(draft.working) else ()
        for day in range(7)
    )
    told = week_in_words(asleep)
    return tr("Working hours lie outside the waking ones: {hours}.", hours=told) if told else ""


def single_words(one: SingleDay) -> str:
    """Give "Thu 24 December 2026: closed, fair"."""
    if one.working is None:
        hours = tr("as its weekday")
    else:
        hours = stretch_words(one.working) or tr("closed")
    when = day_with_year(one.first)
    if one.last != one.first:
        when = tr("{first} to {last}", first=when, last=day_with_year(one.last))
    told = tr("{when}: {hours}", when=when, hours=hours)
    return f"{told} — {one.why}" if one.why else told


def day_with_year(day: date) -> str:
    """Give "Thu 24 December 2026"."""
    return f"{weekday_name(day.weekday())} {date_words(day, year=True)}"


def _night_words(draft: HoursDraft) -> list[str]:
    runs: list[list[int]] = []
    for day in range(7):
        if runs and draft.nights[runs[-1][-1]] == draft.nights[day]:
            runs[-1].append(day)
        else:
            runs.append([day])
    if len(runs) == 1:
        night = draft.nights[0]
        return [] if night is None else [tr("every night {hours}", hours=night.words)]
    found = []
    for run in runs:
        night = draft.nights[run[0]]
        if night is not None:
            found.append(f"{_run_words(run)} {night.words}")
    return found


def _run_words(run: list[int]) -> str:
    """Give "Mon", "Mon, Tue" or "Mon–Fri"."""
    if len(run) > 2:
        return f"{weekday_name(run[0])}–{weekday_name(run[-1])}"
    return ", ".join(weekday_name(day) for day in run)
