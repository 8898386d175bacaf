"""Weights, volumes, lengths, times and windows as text for screen and paper.

In the language in use; figures and dates as the place writes them.
"""

from datetime import datetime, timedelta
from typing import Final, Literal

from studio_log.domain.amount_shown import litres_shown
from studio_log.domain.amounts import Amount
from studio_log.domain.methods import Spread
from studio_log.domain.number_text import plain
from studio_log.domain.wall_clock import known_zone
from studio_log.language.calendar_words import day_words
from studio_log.language.words import tr, tr_later
from studio_log.science.units import OUNCE, convert

Units = Literal["metric", "us"]

UNKNOWN: Final = tr_later("not known")
_NEAR_DAYS: Final = {
    -1: tr_later("yesterday {at}"), 0: tr_later("today {at}"), 1: tr_later("tomorrow {at}"),
}  # fmt: skip
CUP: Final = tr_later("{figure} US cup")
CUPS: Final = tr_later("{figure} US cups")
_OUNCES_IN_POUND: Final = 16


def mass(grams: float | None, units: Units = "metric") -> str:
    """Say a weight in grams to 0.1 g, from a kilogram on in kg; US: ounces and pounds."""
    if grams is None:
        return tr(UNKNOWN)
    if units == "us":
        return _ounces(grams)
    if abs(grams) < 999.95:
        return f"{plain(grams, 1)} g"
    return f"{plain(grams / 1000, 3)} kg"


def _ounces(grams: float) -> str:
    ounces = grams / float(OUNCE)
    if abs(ounces) < 0.995:
        return f"{plain(ounces, 2)} oz"
    tenths = int(abs(ounces) * 10 + 0.5)
    pounds, rest = divmod(tenths, _OUNCES_IN_POUND * 10)
    sign = "-" if ounces < 0 else ""
    words = [f"{pounds} lb"] if pounds else []
    if rest or not pounds:
        words.append(f"{plain(rest / 10, 1)} oz")
    return sign + " ".join(words)


def litres(volume: float | None, units: Units = "metric") -> str:
    """Say a volume as it is measured: "0.47 L", "5.4 L"; US: cups, from a gallon on gal."""
    if volume is None:
        return tr(UNKNOWN)
    if units == "metric":
        return litres_shown(volume)
    cups = convert(volume, "L", "cup")
    if cups < 15.95:
        figure = plain(cups, 1 if cups >= 1 else 2)
        return tr(CUP if cups <= 1 else CUPS, figure=figure)
    return tr("{figure} US gal", figure=plain(cups / 16, 1))


def length(metres: float | None, units: Units = "metric") -> str:
    """Say a length: below 3 m in cm, else in m; US: below 2 yd in inches, else in yards."""
    if metres is None:
        return tr(UNKNOWN)
    if units == "us":
        inches = convert(metres, "m", "in")
        return f"{plain(inches, 1)} in" if inches < 72 else f"{plain(inches / 36, 2)} yd"
    return f"{plain(metres * 100, 1)} cm" if metres < 3 else f"{plain(metres, 2)} m"


def density(gsm: float | None, units: Units = "metric") -> str:
    """Say the weight of an area of cloth: "185 g/m²", "5.5 oz/yd²"."""
    if gsm is None:
        return tr(UNKNOWN)
    if units == "us":
        return f"{plain(convert(gsm, 'g/m2', 'oz/yd2'), 1)} oz/yd²"
    return f"{plain(gsm, 1)} g/m²"


def amount(of: Amount, units: Units = "metric") -> str:
    """Say an amount as it is measured out, in the dyer's units: "90 g", "3.2 oz"."""
    if units == "metric":
        return of.shown
    words = mass(of.value, units) if of.unit == "g" else litres(of.value, units)
    return tr("{words} or more", words=words) if of.at_least else words


def amount_with_kitchen(of: Amount, units: Units = "metric") -> str:
    """Say an amount with its kitchen measure beside it: "90 g (about ½ US cup)"."""
    words = amount(of, units)
    return f"{words} ({of.kitchen})" if of.kitchen and of.unit == "g" else words


def span(of: timedelta) -> str:
    """Say a length of time: "40 s", "2 min", "3 h 40 min", "36 h", "17 d"; never below nought.

    Under two days in hours and minutes, from two days on in whole days and hours, from a
    week on in days.
    """
    seconds = abs(of.total_seconds())
    if seconds < 60:
        return f"{int(seconds)} s" if seconds >= 1 else tr("0 min")
    minutes = int(seconds / 60 + 0.5)
    if minutes < 2 * 24 * 60:
        return _two(minutes // 60, "h", minutes % 60, "min")
    hours = int(seconds / 3600 + 0.5)
    if hours < 7 * 24:
        return _two(hours // 24, "d", hours % 24, "h")
    return f"{int(hours / 24 + 0.5)} d"


def _two(large: int, large_unit: str, small: int, small_unit: str) -> str:
    words = [f"{large} {large_unit}"] if large else []
    if small or not large:
        words.append(f"{small} {small_unit}")
    return " ".join(words)


def countdown(left: timedelta) -> str:
    """Say what is left on a live countdown: "1:59", "14:00"; nought once it is over."""
    seconds = max(0, -int(-left.total_seconds() // 1))
    return f"{seconds // 60}:{seconds % 60:02}"


def clock(at: datetime, zone: str) -> str:
    """Give the time of day on the wall in the zone: "13:08"."""
    return f"{_local(at, zone):%H:%M}"


def day(at: datetime, zone: str, now: datetime | None = None) -> str:
    """Give the day on the wall: "Tue 9 June", with the year where it is not that of `now`."""
    local = _local(at, zone)
    words = day_words(local.date())
    if now is None or _local(now, zone).year == local.year:
        return words
    return f"{words} {local.year}"


def moment(at: datetime, now: datetime, zone: str) -> str:
    """Say a moment as seen from now: "today 13:08", "yesterday 20:00", "Tue 9 June 13:08"."""
    away = (_local(at, zone).date() - _local(now, zone).date()).days
    if away in _NEAR_DAYS:
        return tr(_NEAR_DAYS[away], at=clock(at, zone))
    return f"{day(at, zone, now)} {clock(at, zone)}"


def whole_moment(at: datetime, zone: str) -> str:
    """Say a moment with its year, whatever the clock says now: "Tue 9 June 2026, 13:08"."""
    return f"{day(at, zone)} {_local(at, zone).year}, {clock(at, zone)}"


def lateness(late: timedelta) -> str:
    """Say how late something is: "2 h late"; "on time" within a minute, "in 2 h" before."""
    if abs(late) < timedelta(minutes=1):
        return tr("on time")
    return (
        tr("{span} late", span=span(late))
        if late > timedelta(0)
        else tr("in {span}", span=span(late))
    )


def ratio(value: float) -> str:
    """Say a ratio of bath to cloth or of water to milk: "5:1", "17.5:1"."""
    return f"{plain(value, 1)}:1"


def window_words(spread: Spread) -> str:
    """Say a window: "10–18 h, aim 14 h"; one figure where all three agree."""
    if spread.earliest == spread.latest:
        return span(spread.aim)
    first, last = span(spread.earliest), span(spread.latest)
    figure, _, unit = first.partition(" ")
    if not spread.earliest:
        ends = tr("up to {last}", last=last)
    elif last.split()[1:] == [unit]:
        ends = f"{figure}–{last}"
    else:
        ends = f"{first} – {last}"
    return tr("{ends}, aim {span}", ends=ends, span=span(spread.aim))


def _local(at: datetime, zone: str) -> datetime:
    return at.astimezone(known_zone(zone))
