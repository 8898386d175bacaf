"""Changes as JSON, both ways: an object with `change`, its kind, and what the kind asks for.

Litres and metres are numbers, lengths whole minutes, days dates as 2027-03-07, hours as 18:00,
weekdays mon to sun. Reading is strict: every fault is a sentence.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from datetime import date
from typing import Any, Final

from studio_log.planning.change_kinds import (
    AddHours,
    AddSession,
    AddVessel,
    Change,
    CloseDay,
    GoalCured,
    GoalPieces,
    LaterDue,
    LaterGoal,
    LaterRelease,
    LeaveOut,
    LongerLink,
    LongerPause,
    LongerStep,
    MoreBurners,
    MoreDays,
    MoreHands,
    MoreLine,
    RemoveVessel,
)
from studio_log.planning.plain_words import hour_words
from studio_log.planning.problem import MOST_DAYS, THOUSANDTHS, BadProblemError
from studio_log.planning.taking import Faults, Table, read_clock, read_day, shown

DAYS: Final = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
MOST_MINUTES: Final = 1_000_000


@dataclass(frozen=True, slots=True)
class _Key:
    """How one key is read from an object, and written."""

    read: Callable[[Table, str], Any]
    write: Callable[[Any], Any] = lambda value: value


def change_to_json(change: Change) -> dict[str, Any]:
    """Give the object of a change."""
    kind = next(one for one, (made, _) in KINDS.items() if isinstance(change, made))
    keys = KINDS[kind][1]
    values = [getattr(change, one.name) for one in fields(change)]
    written = {
        key: form.write(value) for (key, form), value in zip(keys.items(), values, strict=True)
    }
    return {"change": kind, **written}


def read_change(value: Any, where: str = "The change") -> Change:
    """Give the change of an object; BadProblemError says all that is amiss."""
    faults = Faults()
    table = Table(value, where, faults)
    faults.end()
    kind = table.value.get("change")
    if not isinstance(kind, str) or kind not in KINDS:
        table.fault(f"is of kind {shown(kind)}; one of {', '.join(KINDS)} is due")
        faults.end()
    made, keys = KINDS[str(kind)]
    table.known(("change", *keys))
    found = [form.read(table, key) for key, form in keys.items()]
    if "to" in keys and keys["to"] is _HOUR and None not in found and found[-2] >= found[-1]:
        table.fault("ends before it begins; from has to lie before to")
    faults.end()
    change: Change = made(*found)
    return change


def change_of_text(text: str, where: str = "The change") -> Change:
    """Give the change of a text that is JSON; BadProblemError where it is none."""
    try:
        value = json.loads(text)
    except (ValueError, RecursionError):
        raise BadProblemError((f"{where} is no JSON: {shown(text)}.",)) from None
    return read_change(value, where)


# -- keys --------------------------------------------------------------------------------


def _size(table: Table, key: str) -> int:
    found = table.amount(key)
    if not found and key in table.value:
        table.fault(f"has {key} {shown(table.value[key])}; more than 0 is due")
    return found


def _more(table: Table, key: str) -> int:
    """Give thousandths of a number that may be negative, and is not 0."""
    found = table.value.get(key)
    good = isinstance(found, int | float) and not isinstance(found, bool)
    if not good or not -1_000_000 <= found <= 1_000_000 or not round(found * THOUSANDTHS):  # type: ignore[operator]
        table.fault(f"has {key} {shown(found)}; a number other than 0 is due")
        return 0
    return round(found * THOUSANDTHS)  # type: ignore[operator]


def _few(table: Table, key: str) -> int:
    found = table.whole(key, -100, 100)
    if found == 0:
        table.fault(f"has {key} 0; a number other than 0 is due")
    return found


def _day(table: Table, key: str) -> date | None:
    found = read_day(table.value.get(key))
    if found is None:
        table.fault(f"has {key} {shown(table.value.get(key))}; one as 2027-03-07 is due")
    return found


def _hour(table: Table, key: str) -> int | None:
    found = read_clock(table.value.get(key))
    if found is None:
        table.fault(f"has {key} {shown(table.value.get(key))}; an hour as 18:00 is due")
    return found


def _weekdays(table: Table, key: str) -> tuple[int, ...]:
    found = table.list(key, len(DAYS))
    odd = [one for one in found if one not in DAYS]
    if odd or not found or any(found.count(one) > 1 for one in found):
        table.fault(f"has {key} that are no days such as mon, tue, each once")
        return ()
    return tuple(sorted(DAYS.index(one) for one in found))


def _plain(thousandths: int) -> int | float:
    whole, rest = divmod(thousandths, THOUSANDTHS)
    return thousandths / THOUSANDTHS if rest else whole


_NAME = _Key(lambda table, key: table.name(key))
_SIZE = _Key(_size, _plain)
_MORE = _Key(_more, _plain)
_FEW = _Key(_few)
_DAY = _Key(_day, date.isoformat)
_HOUR = _Key(_hour, hour_words)
_WEEKDAYS = _Key(_weekdays, lambda days: [DAYS[one] for one in days])
_MINUTES = _Key(lambda table, key: table.whole(key, 1, MOST_MINUTES))
_PIECES = _Key(lambda table, key: table.whole(key, 1, 100_000))
_LEFT = _Key(lambda table, key: table.whole(key, 0, 100_000))
_DAYS = _Key(lambda table, key: table.whole(key, 1, MOST_DAYS))
_CURED = _Key(lambda table, key: table.whole(key, 0, 2_000))
_STEP: Final = {"lot": _NAME, "step": _NAME, "minutes": _MINUTES}

KINDS: Final[Mapping[str, tuple[type[Change], Mapping[str, _Key]]]] = {
    "add_vessel": (AddVessel, {"kind": _NAME, "litres": _SIZE}),
    "remove_vessel": (RemoveVessel, {"vessel": _NAME}),
    "more_line": (MoreLine, {"metres": _MORE}),
    "more_burners": (MoreBurners, {"burners": _FEW}),
    "more_hands": (MoreHands, {"hands": _FEW}),
    "add_session": (AddSession, {"date": _DAY, "from": _HOUR, "to": _HOUR}),
    "close_day": (CloseDay, {"date": _DAY}),
    "add_hours": (AddHours, {"days": _WEEKDAYS, "from": _HOUR, "to": _HOUR}),
    "longer_step": (LongerStep, _STEP),
    "longer_pause": (LongerPause, _STEP),
    "longer_link": (
        LongerLink, {"lot": _NAME, "from": _NAME, "to": _NAME, "minutes": _MINUTES},
    ),
    "later_goal": (LaterGoal, {"goal": _NAME, "minutes": _MINUTES}),
    "goal_pieces": (GoalPieces, {"goal": _NAME, "pieces": _LEFT}),
    "goal_cured": (GoalCured, {"goal": _NAME, "pieces": _PIECES, "days": _CURED}),
    "leave_out": (LeaveOut, {"lot": _NAME}),
    "later_release": (LaterRelease, {"lot": _NAME, "minutes": _MINUTES}),
    "later_due": (LaterDue, {"lot": _NAME, "minutes": _MINUTES}),
    "more_days": (MoreDays, {"days": _DAYS}),
}  # fmt: skip
"""By kind: what is made, and its keys in the order of its fields."""
