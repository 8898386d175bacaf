"""Wishes in words, as rows and fields show them."""

from collections.abc import Iterable
from datetime import date, datetime
from zoneinfo import ZoneInfo

from studio_log.domain.number_text import pointed
from studio_log.domain.plan_wishes import PlanGoal, SlowDay
from studio_log.language.calendar_words import date_words, weekday_name
from studio_log.language.words import counted, tr, tr_later


def goal_words(goal: PlanGoal, now: datetime, zone: str) -> str:
    """Say a goal: "Spring class: 16 pieces cured 90 d by Fri 9 April 2027, 09:00"."""
    at = datetime.fromisoformat(goal.at)
    year = at.year != now.astimezone(ZoneInfo(zone)).year
    day = f"{weekday_name(at.weekday())} {date_words(at.date(), year=year)}"
    pieces = counted(goal.pieces, tr_later("{n} piece"), tr_later("{n} pieces"))
    told = tr(
        "{name}: {pieces} cured {days} d by {day}, {hour}",
        name=goal.name,
        pieces=pieces,
        days=goal.cured_days,
        day=day,
        hour=f"{at:%H:%M}",
    )
    return tr("{goal}; of {lots}", goal=told, lots=", ".join(goal.lots)) if goal.lots else told


def slow_text(days: Iterable[SlowDay]) -> str:
    """Write days of slow drying as their field reads them."""
    told = ((date_words(date.fromisoformat(one.day), year=True), one.hours) for one in days)
    return "; ".join(f"{day} {pointed(hours, 1)} h" for day, hours in told)
