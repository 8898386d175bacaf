"""What the dyer wishes of a plan: goals, lots that are wanted and not made yet, milks to share.

Both are kept as JSON text among the settings, since they are wishes and no record of what happened.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass
from datetime import date, datetime
from typing import Any, Final, TypeVar

from studio_log.domain.errors import Refusal

MOST_GOALS: Final = 8
MOST_WANTED: Final = 40
MOST_SLOW_DAYS: Final = 60
MOST_SHARED: Final = 20
MOST_PIECES: Final = 500
MOST_DAYS: Final = 3650
LONGEST_NAME: Final = 80
LONGEST_PIECES: Final = 2000
LONGEST_TEXT: Final = 100_000
LONGEST_DRYING: Final = 96
"""Hours."""
Wish = TypeVar("Wish", "PlanGoal", "WantedLot", "SlowDay", "SharedMilk")


@dataclass(frozen=True, slots=True)
class PlanGoal:
    """So many pieces, cured so many days at a local time; of any lots where none is named."""

    name: str
    at: str
    """Local wall clock, "2027-10-09T09:00"."""
    pieces: int
    cured_days: int
    lots: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WantedLot:
    """A lot that is wanted: it is made when its plan is accepted."""

    name: str
    method: str
    pieces: str
    """As typed on the form of a new lot: "3 x linen 60 x 200 cm 150 g/m2"."""


@dataclass(frozen=True, slots=True)
class SlowDay:
    """Cloth hung on this day needs so many hours at least, for the weather's sake."""

    day: str
    hours: float


@dataclass(frozen=True, slots=True)
class SharedMilk:
    """One making of milk that serves several lots: they need not make their own.

    Lots are named by their codes, those that are wanted by their names.
    """

    maker: str
    lots: tuple[str, ...]


def read_goals(text: str) -> tuple[PlanGoal, ...]:
    """Read the goals that are kept; Refusal where they make no sense."""
    return _read(text, MOST_GOALS, "goals", _goal)


def read_wanted(text: str) -> tuple[WantedLot, ...]:
    """Read the lots that are wanted; Refusal where they make no sense."""
    return _read(text, MOST_WANTED, "lots that are wanted", _wanted)


def read_slow_days(text: str) -> tuple[SlowDay, ...]:
    """Read the days on which cloth dries slowly; Refusal where they make no sense."""
    return _read(text, MOST_SLOW_DAYS, "days of slow drying", _slow_day)


def read_shared(text: str) -> tuple[SharedMilk, ...]:
    """Read the milks that are to be shared; Refusal where they make no sense."""
    found = _read(text, MOST_SHARED, "shared milks", _shared)
    named = [name for one in found for name in (one.maker, *one.lots)]
    twice = next((name for name in named if named.count(name) > 1), None)
    if twice is not None:
        raise Refusal(
            f"{twice} would make or get milk twice. Nothing was changed; take it out of the other "
            "sharing first."
        )
    return found


def write_wishes(
    wishes: tuple[PlanGoal, ...]
    | tuple[WantedLot, ...]
    | tuple[SlowDay, ...]
    | tuple[SharedMilk, ...],
) -> str:
    """Write wishes of one sort as they are kept."""
    return json.dumps([asdict(one) for one in wishes], ensure_ascii=False) if wishes else ""


def _read(
    text: str, most: int, what: str, reader: Callable[[Mapping[str, Any]], Wish]
) -> tuple[Wish, ...]:
    if not text:
        return ()
    if len(text) > LONGEST_TEXT:
        raise Refusal(f"The {what} are too long to be kept. Nothing was changed.")
    try:
        values = json.loads(text)
    except (ValueError, RecursionError):
        raise Refusal(f"The {what} do not read. Nothing was changed.") from None
    if not isinstance(values, list) or not all(isinstance(one, dict) for one in values):
        raise Refusal(f"The {what} do not read. Nothing was changed.")
    if len(values) > most:
        raise Refusal(f"A plan takes up to {most} {what}. Nothing was changed; leave one out.")
    found = tuple(reader(one) for one in values)
    names = [next(iter(asdict(one).values())) for one in found]
    if len(set(names)) < len(names):
        raise Refusal(f"Two of the {what} are called the same. Nothing was changed; rename one.")
    return found


def _goal(value: Mapping[str, Any]) -> PlanGoal:
    lots = value.get("lots", [])
    if not isinstance(lots, list) or not all(isinstance(one, str) for one in lots):
        raise Refusal("A goal names lots by their codes. Nothing was changed.")
    return PlanGoal(
        _name(value, "A goal"),
        _moment(value.get("at")),
        int(_number(value, "pieces", 1, MOST_PIECES, "A goal is of 1 to 500 pieces")),
        int(_number(value, "cured_days", 0, MOST_DAYS, "A cure lasts from 0 to 3,650 days")),
        tuple(dict.fromkeys(one[:LONGEST_NAME] for one in lots)),
    )


def _wanted(value: Mapping[str, Any]) -> WantedLot:
    method, pieces = value.get("method"), value.get("pieces")
    if not isinstance(method, str) or not method:
        raise Refusal("A lot that is wanted needs a method. Nothing was changed.")
    if not isinstance(pieces, str) or not pieces.strip() or len(pieces) > LONGEST_PIECES:
        raise Refusal("A lot that is wanted needs its pieces. Nothing was changed.")
    return WantedLot(_name(value, "A lot"), method[:LONGEST_NAME], pieces.strip())


def _shared(value: Mapping[str, Any]) -> SharedMilk:
    lots = value.get("lots")
    if not isinstance(lots, list) or not lots or len(lots) > MOST_WANTED:
        raise Refusal("A shared milk needs the lots that it serves. Nothing was changed.")
    names = (_name({"name": one}, "A lot") for one in lots)
    return SharedMilk(_name({"name": value.get("maker")}, "A lot"), tuple(dict.fromkeys(names)))


def _slow_day(value: Mapping[str, Any]) -> SlowDay:
    words = f"Cloth dries in up to {LONGEST_DRYING} hours here"
    hours = float(_number(value, "hours", 0, LONGEST_DRYING, words))
    try:
        day = date.fromisoformat(str(value.get("day")))
    except ValueError:
        raise Refusal("A day is written as 2027-03-31. Nothing was changed.") from None
    return SlowDay(day.isoformat(), hours)


def _name(value: Mapping[str, Any], what: str) -> str:
    name = value.get("name")
    name = " ".join(name.split()) if isinstance(name, str) else ""
    if not name or len(name) > LONGEST_NAME or not name.isprintable():
        raise Refusal(f"{what} needs a name of 1 to {LONGEST_NAME} letters. Nothing was changed.")
    return name


def _moment(text: Any) -> str:
    try:
        at = datetime.fromisoformat(text)
    except (TypeError, ValueError):
        at = None
    if at is None or at.tzinfo is not None or not 2000 <= at.year <= 2200:
        raise Refusal("A goal needs its day, as in 2027-10-09. Nothing was changed.")
    return at.strftime("%Y-%m-%dT%H:%M")


def _number(value: Mapping[str, Any], key: str, least: int, most: int, words: str) -> float:
    found = value.get(key)
    whole = isinstance(found, int | float) and not isinstance(found, bool)
    if not whole or not least <= found <= most:  # type: ignore[operator]
        raise Refusal(f"{words}. Nothing was changed.")
    return float(found)  # type: ignore[arg-type]
