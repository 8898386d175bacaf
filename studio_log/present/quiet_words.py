"""When it is quiet next, in words."""

from datetime import datetime, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.quiet import Night, QuietHours
from studio_log.language.calendar_words import weekday_name
from studio_log.language.words import tr, tr_later

EVENING: Final = 17
LONG_STRETCH: Final = timedelta(hours=20)
NONE: Final = tr_later("Nothing is held back: there are no quiet hours.")


def next_quiet_words(quiet: QuietHours, now: datetime) -> str:
    """Say when it is quiet next: "Next quiet: tonight 22:00 to 07:00."."""
    zone = ZoneInfo(quiet.zone)
    night = next(quiet.nights(now, now + timedelta(days=8)), None)
    if night is None:
        return tr(NONE)
    end = _end_words(night, zone)
    if night.start <= now:
        return tr("It is quiet now, until {end}.", end=end)
    start = night.start.astimezone(zone)
    small_hours = start.hour < 12
    evening = start.date() - timedelta(days=1) if small_hours else start.date()
    ahead = (evening - now.astimezone(zone).date()).days
    if ahead <= 0:
        day = tr("tonight") if small_hours or start.hour >= EVENING else tr("today")
    else:
        day = tr("tomorrow") if ahead == 1 else weekday_name(evening.weekday())
        day = tr("{day} night", day=day) if small_hours else day
    return tr("Next quiet: {day} {start:%H:%M} to {end}.", day=day, start=start, end=end)


def _end_words(night: Night, zone: ZoneInfo) -> str:
    end = night.end.astimezone(zone)
    if night.end - night.start > LONG_STRETCH:
        return f"{weekday_name(end.weekday())} {end:%H:%M}"
    return f"{end:%H:%M}"
