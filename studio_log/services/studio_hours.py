"""When the studio works and when somebody is awake: asked for any span of days."""

from dataclasses import dataclass
from datetime import date, time

from studio_log.domain.open_hours import read_open
from studio_log.domain.quiet_text import Hours, read_days
from studio_log.domain.single_days import read_single_days
from studio_log.domain.studio_hours import DayHours, StudioHours, Week, waking_week
from studio_log.services.public_holidays import holidays_between
from studio_log.services.settings import Settings


@dataclass(frozen=True)
class StudioHoursFor:
    """The hours of each local day from `first` to `last`, both with it."""

    first: date
    last: date


@dataclass(frozen=True)
class StudioHoursAnswer:
    """Working stretches of each day in order, waking ones of each weekday, Monday first.

    All in minutes of the wall clock, the end up to 1440. `doubt` says in words which holidays are
    not known; "" where all are.
    """

    days: tuple[DayHours, ...]
    waking: Week
    doubt: str = ""


@dataclass(frozen=True)
class HolidayPlacesFor:
    """Every country that holidays are known of: a tuple of `public_holidays.Place`."""


@dataclass(frozen=True)
class HolidayPlaceFor:
    """A country with its parts: a `public_holidays.Place`, None for one that is not known."""

    code: str


@dataclass(frozen=True)
class HolidaysFor:
    """Public holidays of a place from one day to another: `public_holidays.HolidaysKnown`."""

    place: str
    first: date
    last: date


def studio_hours(settings: Settings, first: date, last: date) -> tuple[StudioHours, str]:
    """Give what working hours follow from in a span, and in words which holidays are not known."""
    known = holidays_between(settings.holiday_place, first, last)
    openings = read_open(settings.open_hours)
    singles = read_single_days(settings.single_days)
    return StudioHours(openings, singles, known.names), known.doubt


def waking_hours(settings: Settings) -> Week:
    """Give the waking stretches of each weekday."""
    start, end = (time.fromisoformat(at) for at in (settings.quiet_start, settings.quiet_end))
    waking = read_open(settings.waking_hours)
    return waking_week(waking, Hours(start, end), read_days(settings.quiet_days))
