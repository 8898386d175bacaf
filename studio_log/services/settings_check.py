"""Settings read and checked: what is kept makes sense, or a Refusal says what does not."""

import re
from collections.abc import Callable, Mapping
from dataclasses import Field, fields
from datetime import UTC, datetime, time
from functools import partial
from typing import Any, Final
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from studio_log.domain.errors import Refusal
from studio_log.domain.open_hours import read_open, write_open
from studio_log.domain.plan_wishes import (
    read_goals,
    read_shared,
    read_slow_days,
    read_wanted,
    write_wishes,
)
from studio_log.domain.quiet_text import Hours, check_week, read_days, write_days
from studio_log.domain.search_text import SORTS
from studio_log.domain.single_days import read_single_days, write_single_days
from studio_log.domain.tags import CHOICES
from studio_log.domain.vessel_text import read_vessels, write_vessels
from studio_log.present.printer_stocks import read_stocks
from studio_log.present.tag_stock import find_stock
from studio_log.services.limits import clean
from studio_log.services.public_holidays import check_form
from studio_log.services.search import COLUMNS
from studio_log.services.settings import Settings

WALL_TIME = re.compile(r"(?:[01][0-9]|2[0-3]):[0-5][0-9]")
MOST_SEARCHES, LONGEST_SEARCH = 40, 200
LONGEST_DRAFT: Final = 256_000
NIGHTS: Final = (("quiet_days",), ("quiet_start", "quiet_end"))
"""What makes the week's nights together, in the order in which a bad week gives it up."""


def read_settings(values: Mapping[str, Any], *, strict: bool = False) -> Settings:
    """Give the settings; of what is kept, a value that makes no sense alone is left out.

    With `strict` a Refusal names it instead, and an unknown name too.
    """
    known = {one.name: one for one in fields(Settings)}
    if strict:
        unknown = sorted(set(values) - set(known))
        if unknown:
            raise Refusal(f"There is no setting {unknown[0]!r}. Nothing was changed.")
    kept: dict[str, Any] = {}
    for name, value in values.items():
        if name not in known:
            continue
        try:
            kept[name] = _read(known[name], value)
        except Refusal:
            if strict:
                raise
    return _with_nights(kept, strict=strict)


def _with_nights(kept: dict[str, Any], *, strict: bool) -> Settings:
    """Give the settings with a week of nights that leaves hours to work in."""
    for names in (*NIGHTS, ()):
        settings = Settings(**kept)
        try:
            _check_nights(settings)
        except Refusal:
            if strict:
                raise
            for name in names:
                kept.pop(name, None)
        else:
            return settings
    return Settings(**kept)


def _read(one: Field[Any], value: Any) -> Any:
    """Give a value as it is kept; Refusal where it is of no use."""
    wanted = (int, float) if isinstance(one.default, float) else type(one.default)
    truth = isinstance(value, bool) and not isinstance(one.default, bool)
    if truth or not isinstance(value, wanted):
        raise Refusal(f"{one.name} cannot be {str(value)[:40]!r}. Nothing was changed.")
    check = CHECKS.get(one.name)
    if check is None:
        return value
    try:
        return check(value)
    except Refusal:
        raise
    except (TypeError, ValueError, OverflowError):
        raise Refusal(f"{one.name} makes no sense. Nothing was changed.") from None


def _studio(text: str) -> str:
    clean(text, "The studio's name", 200)
    return text


def _tag_stock(slug: str) -> str:
    find_stock(slug)
    return slug


def _tag_printers(text: str) -> str:
    read_stocks(text)
    return text


def _tag_fields(text: str) -> str:
    if set(filter(None, text.split(","))) - set(CHOICES):
        raise Refusal(f"A tag's fields are {', '.join(CHOICES)}. Nothing was changed.")
    return text


def _wall_time(what: str, text: str) -> str:
    if not WALL_TIME.fullmatch(text):
        raise Refusal(f"{text[:40]!r} is no time for {what}. Write it as 22:00.")
    return text


def _wall_time_or_never(what: str, text: str) -> str:
    if text and not WALL_TIME.fullmatch(text):
        raise Refusal(
            f"{text[:40]!r} is no time for {what}. Write it as 08:00, or leave it empty for never."
        )
    return text


def _zone(text: str) -> str:
    if text:
        try:
            ZoneInfo(text)
        except (ZoneInfoNotFoundError, ValueError, OSError):
            raise Refusal(f"There is no time zone {text[:40]!r}.") from None
    return text


def _instant(what: str, text: str) -> str:
    """Check an instant; that a hush is at most a day ahead is seen where the clock is at hand."""
    if text:
        try:
            at = datetime.fromisoformat(text)
            aware = at.tzinfo is not None and at.astimezone(UTC) is not None
        except (ValueError, OverflowError):
            aware = False
        if not aware:
            raise Refusal(
                f"{text[:40]!r} is no moment {what}. Write it with its offset, as "
                "2026-06-09T22:00:00+00:00."
            )
    return text


def _one_of(known: tuple[str, ...], words: str, text: str) -> str:
    if text not in known:
        raise Refusal(f"{words} Nothing was changed.")
    return text


def _within(least: float, most: float, words: str, value: float) -> float:
    if not least <= value <= most:
        raise Refusal(f"{words} Nothing was changed.")
    return value


def _litres(value: float) -> float:
    if not 0 < value <= 5000:
        raise Refusal("A bucket holds above 0 and up to 5,000 L. Nothing was changed.")
    return value


def _searches(text: str) -> str:
    """Keep each line once, in order."""
    lines = [clean(line, "A search", LONGEST_SEARCH) for line in text.splitlines() if line.strip()]
    if len(lines) > MOST_SEARCHES:
        raise Refusal(
            f"{MOST_SEARCHES} searches are kept already. Nothing was changed; forget one first."
        )
    return "\n".join(dict.fromkeys(lines))


def _sort(text: str) -> str:
    sort = text.removesuffix(" backwards")
    return _one_of(SORTS, f"The list cannot be put in the order {sort[:40]!r}.", sort) and text


def _columns(text: str) -> str:
    """Keep each column once, in order."""
    names = tuple(dict.fromkeys(text.split()))
    for name in names:
        _one_of(COLUMNS, f"The list has no column {name[:40]!r}.", name)
    if not names:
        raise Refusal("A table has at least one column. Nothing was changed.")
    return " ".join(names)


def _draft(text: str) -> str:
    if len(text) > LONGEST_DRAFT:
        raise Refusal("A method's text has 256,000 letters at most. Nothing was changed.")
    return text


CHECKS: Final[Mapping[str, Callable[[Any], Any]]] = {
    "studio": _studio,
    "units": partial(_one_of, ("metric", "us"), "Units are metric or us."),
    "quiet_start": partial(_wall_time, "the start of quiet hours"),
    "quiet_end": partial(_wall_time, "the end of quiet hours"),
    "quiet_days": lambda text: write_days(read_days(text)),
    "zone": _zone,
    "hush_until": partial(_instant, "until which nothing disturbs"),
    "dryings_since": partial(_instant, "from which dryings are learnt"),
    "look_ahead": partial(_wall_time_or_never, "the day's look-ahead"),
    "evening_look": partial(_wall_time_or_never, "the evening's look"),
    "chime_volume": partial(_within, 0, 100, "The chime's volume is from 0 to 100 percent."),
    "theme": partial(
        _one_of,
        ("system", "light", "dark", "strong"),
        "The window is system, light, dark or strong.",
    ),
    "text_percent": partial(_within, 50, 400, "The size of text is from 50 to 400 percent."),
    "vessel_litres": _litres,
    "tag_stock": _tag_stock,
    "tag_printers": _tag_printers,
    "tag_fields": _tag_fields,
    "open_hours": lambda text: write_open(read_open(text)),
    "waking_hours": lambda text: write_open(read_open(text)),
    "single_days": lambda text: write_single_days(read_single_days(text)),
    "holiday_place": check_form,
    "line_metres": partial(_within, 0, 10_000, "A drying line is from 0 to 10,000 m long."),
    "burners": partial(_within, 0, 99, "A workshop has from 0 to 99 burners."),
    "vessels": lambda text: write_vessels(read_vessels(text)),
    "hands": partial(_within, 1, 9, "From 1 to 9 pairs of hands work at once."),
    "plan_goals": lambda text: write_wishes(read_goals(text)),
    "plan_wanted": lambda text: write_wishes(read_wanted(text)),
    "plan_slow_days": lambda text: write_wishes(read_slow_days(text)),
    "plan_milks": lambda text: write_wishes(read_shared(text)),
    "plan_visit_hours": partial(_within, 0, 240, "A visit is worth from 0 to 240 hours."),
    "searches": _searches,
    "method_draft": _draft,
    "list_sort": _sort,
    "list_columns": _columns,
}
"""By name: gives the value as it is kept, or refuses it."""


def _check_nights(settings: Settings) -> None:
    start, end = (time.fromisoformat(at) for at in (settings.quiet_start, settings.quiet_end))
    check_week(Hours(start, end), read_days(settings.quiet_days))
