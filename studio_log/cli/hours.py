"""Commands about the studio's hours: the days ahead, the week, single days, places of holidays."""

from datetime import date, timedelta
from typing import TYPE_CHECKING, Any, Final
from zoneinfo import ZoneInfo

from studio_log.cli.form import JSON, Form, Option, UsageError, Word
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.single_days import (
    SingleDay,
    read_single_days,
    with_day,
    without_day,
    write_single_days,
)
from studio_log.domain.stretch_text import read_stretches, write_stretches
from studio_log.domain.studio_hours import DayHours
from studio_log.language.calendar_words import LONG_DAYS
from studio_log.present.hours_words import day_with_year
from studio_log.services.commands import ChangeSettings
from studio_log.services.public_holidays import check_place
from studio_log.services.questions import SettingsFor
from studio_log.services.settings_check import CHECKS
from studio_log.services.studio_hours import (
    HolidayPlaceFor,
    HolidayPlacesFor,
    StudioHoursAnswer,
    StudioHoursFor,
)

if TYPE_CHECKING:
    from studio_log.services.public_holidays import Place
    from studio_log.services.settings import Settings

MOST_DAYS: Final = 1000
FORGET: Final = "forget"
_NAMES: Final = {
    "working": "open_hours", "waking": "waking_hours", "nights": "quiet_days",
    "holidays": "holiday_place",
}  # fmt: skip


def _show(turn: Turn) -> int:
    first = _day(turn.values["from"]) if turn.values["from"] is not None else _today(turn)
    days = _count(turn.values["days"])
    found: StudioHoursAnswer = turn.studio.ask(
        StudioHoursFor(first, first + timedelta(days=days - 1))
    )
    if found.doubt:
        turn.tell(found.doubt)
    if turn.values["json"]:
        turn.say_json({"days": [_fields(one) for one in found.days], "waking": found.waking})
        return 0
    width = max(len(day_with_year(one.day)) for one in found.days)
    turn.say("\n".join(_line(one, width) for one in found.days))
    return 0


def _line(one: DayHours, width: int) -> str:
    hours = write_stretches(one.working) or "closed"
    why = f"  ({one.why})" if one.why else ""
    return f"{day_with_year(one.day):<{width}}  {hours}{why}"


def _fields(one: DayHours) -> dict[str, Any]:
    return {
        "day": f"{one.day}", "weekday": LONG_DAYS[one.day.weekday()].lower(),
        "working": one.working, "cause": one.cause.value, "why": one.why,
    }  # fmt: skip


def _set(turn: Turn) -> int:
    changed: dict[str, str] = {
        name: turn.values[option]
        for option, name in _NAMES.items()
        if turn.values[option] is not None
    }
    quiet = turn.values["quiet"]
    if quiet is not None:
        changed |= _every_night(quiet)
    if not changed:
        raise UsageError("Say what to set: --working, --waking, --quiet, --nights or --holidays")
    for name, value in changed.items():
        CHECKS[name](value)
    check_place(changed.get("holiday_place", ""))
    return turn.finish(turn.do(ChangeSettings(changed)))


def _every_night(text: str) -> dict[str, str]:
    start, mark, end = text.replace("–", "-").partition("-")
    if not text.strip():
        return {"quiet_start": "00:00", "quiet_end": "00:00"}
    if not mark:
        raise Refusal(f"{text[:40]!r} is no night. Nothing was changed. Write it as 22:00-07:00.")
    return {"quiet_start": start.strip(), "quiet_end": end.strip()}


def _single(turn: Turn) -> int:
    hours = turn.values["hours"].strip()
    day = None if hours == FORGET else _said(turn, hours)
    gone = _day(turn.values["day"])
    settings: Settings = turn.studio.ask(SettingsFor())
    kept = read_single_days(settings.single_days)
    after = without_day(kept, gone) if day is None else with_day(kept, day)
    if day is None and after == kept:
        raise Refusal(f"Nothing was said of {gone}. Nothing was changed.")
    return turn.finish(turn.do(ChangeSettings({"single_days": write_single_days(after)})))


def _said(turn: Turn, hours: str) -> SingleDay:
    """Give the single day that was typed, or the run of days."""
    if hours not in {"closed", "usual"}:
        hours = write_stretches(read_stretches(hours)) or "closed"
    until = f" to {turn.values['to']}" if turn.values["to"] is not None else ""
    why = f": {turn.values['why']}" if turn.values["why"] else ""
    found = read_single_days(f"{turn.values['day']}{until} {hours}{why}")
    if len(found) != 1:
        raise Refusal("One day or one run of days at a time. Nothing was changed.")
    return found[0]


def _places(turn: Turn) -> int:
    wanted = (turn.values["find"] or "").casefold()
    rows: list[tuple[str, str]] = []
    if len(wanted) == 2 and turn.studio.ask(HolidayPlaceFor(wanted.upper())) is not None:
        place: Place = turn.studio.ask(HolidayPlaceFor(wanted.upper()))
        rows = [
            (place.code, place.name),
            *((f"{place.code}-{code}", f"{place.name}, {name}") for code, name in place.parts),
        ]
    else:
        every: tuple[Place, ...] = turn.studio.ask(HolidayPlacesFor())
        rows = [(one.code, one.name) for one in every if wanted in one.name.casefold()]
    if turn.values["json"]:
        turn.say_json([{"place": code, "name": name} for code, name in rows])
    else:
        turn.say("\n".join(f"{code:<8}{name}" for code, name in rows) or "No such country.")
    return 0


def _today(turn: Turn) -> date:
    return turn.studio.clock.now().astimezone(ZoneInfo(turn.studio.zone)).date()


def _day(text: str) -> date:
    """Read a day as 2026-12-24; Refusal for what is none."""
    return read_single_days(f"{text.strip()} closed")[0].first


def _count(text: str | None) -> int:
    if text is None:
        return 14
    plain = text.strip()
    if not (plain.isascii() and plain.isdigit() and 0 < int(plain[:6]) <= MOST_DAYS):
        raise Refusal(f"{text[:40]!r} is no number of days from 1 to {MOST_DAYS:,}.")
    return int(plain)


FORMS: Final = (
    Form(
        ("hours", "show"), "Show when the studio works on the days ahead, and why so.", _show,
        options=(
            Option("--from", "the first day, as 2026-12-24; today unless said", "DAY"),
            Option("--days", "how many; 14 unless said", "N"),
            JSON,
        ),
    ),
    Form(
        ("hours", "set"), "Set the week's hours and the place whose holidays are closed.", _set,
        options=(
            Option("--working", "“mon-fri 09:00-17:00; sat 10:00-14:00”, “” for always", "HOURS"),
            Option("--waking", "the same way; “” for all but the quiet hours", "HOURS"),
            Option("--quiet", "every night, as 22:00-07:00; “” for none", "HOURS"),
            Option("--nights", "nights that differ: “fri 23:30-09:00; sun off”", "HOURS"),
            Option("--holidays", "a place, as GB-ENG; “” for no place", "PLACE"),
            JSON,
        ),
    ),
    Form(
        ("hours", "day"), "Say how a single day is worked.", _single,
        (Word("DAY", "as 2026-12-24"),
         Word("HOURS", "closed, 10-12, usual (as its weekday, holiday or not), or forget")),
        (
            Option("--to", "the last of a run of days", "DAY"),
            Option("--why", "in a word", "TEXT"),
            JSON,
        ),
    ),
    Form(
        ("hours", "places"), "List the countries whose holidays are known, or the parts of one.",
        _places,
        options=(Option("--find", "a part of a name, or a country's two letters", "TEXT"), JSON),
    ),
)  # fmt: skip
