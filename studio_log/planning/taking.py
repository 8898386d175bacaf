"""Takes values out of JSON that nobody has looked at: each fault is a sentence, none stops it."""

from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Any, Final

from studio_log.planning.problem import THOUSANDTHS, BadProblemError, Limit

MOST_FAULTS: Final = 20
LONGEST_NAME: Final = 120
LIMITS: Final[tuple[Limit, ...]] = ("rule", "advice")
MOST_MINUTES: Final = 3_000_000
"""More than five years."""


class Faults:
    """Collects sentences; from twenty on it gives up reading."""

    def __init__(self) -> None:
        self.said: list[str] = []

    def add(self, sentence: str) -> None:
        """Keep a sentence."""
        if sentence not in self.said:
            self.said.append(sentence)
        if len(self.said) >= MOST_FAULTS:
            raise BadProblemError((*self.said, "There may be more; reading ended here."))

    def end(self) -> None:
        """Raise what was found."""
        if self.said:
            raise BadProblemError(tuple(self.said))


def shown(value: Any) -> str:
    """Give a value as it can be said back: short, and only what can be printed."""
    text = (
        repr(value) if isinstance(value, str | int | float | bool | None) else type(value).__name__
    )
    text = "".join(sign if sign.isprintable() else "�" for sign in text[:60])
    return {"dict": "an object", "list": "a list", "None": "nothing"}.get(text, text)


class Table:
    """One object of the file; `where` names it in sentences."""

    def __init__(self, value: Any, where: str, faults: Faults) -> None:
        self.where, self.faults = where, faults
        self.value: dict[str, Any] = value if isinstance(value, dict) else {}
        if not isinstance(value, dict):
            self.fault(f"is {shown(value)}, where an object is due")

    def fault(self, words: str) -> None:
        """Keep a sentence about this object."""
        self.faults.add(f"{self.where} {words}.")

    def known(self, keys: Iterable[str]) -> None:
        """Say which names nobody knows."""
        allowed = frozenset(keys)
        for key in self.value:
            if key not in allowed and not key.startswith("_"):
                self.fault(f"has {shown(key)}, which has no meaning here")

    def whole(
        self, key: str, least: int = 0, most: int = MOST_MINUTES, default: int | None = None
    ) -> int:
        """Give a whole number within bounds; a missing one without default is a fault."""
        found = self.value.get(key)
        if found is None and default is not None:
            return default
        if isinstance(found, float) and found.is_integer():
            found = int(found)
        if isinstance(found, bool) or not isinstance(found, int) or not least <= found <= most:
            self.fault(f"has {key} {shown(found)}; a whole number from {least} to {most} is due")
            return default if default is not None else least
        return found

    def maybe(self, key: str, least: int = 0, most: int = MOST_MINUTES) -> int | None:
        """Give a whole number, None where it is not said."""
        return None if self.value.get(key) is None else self.whole(key, least, most)

    def amount(self, key: str, default: float | None = None) -> int:
        """Give thousandths of a number from 0 to a million."""
        found = self.value.get(key, default)
        good = isinstance(found, int | float) and not isinstance(found, bool)
        if not good or not 0 <= found <= 1_000_000:  # type: ignore[operator]
            self.fault(f"has {key} {shown(found)}; a number from 0 to a million is due")
            return 0
        return round(found * THOUSANDTHS)  # type: ignore[operator]

    def name(self, key: str) -> str:
        """Give a name: a text, or a whole number as a text."""
        found = self.value.get(key)
        if isinstance(found, int) and not isinstance(found, bool):
            return str(found)[:LONGEST_NAME]
        if not isinstance(found, str) or not found.strip() or len(found) > LONGEST_NAME:
            self.fault(f"has {key} {shown(found)}; a name of 1 to {LONGEST_NAME} letters is due")
            return ""
        return found

    def flag(self, key: str, *, default: bool = False) -> bool:
        """Give true or false."""
        found = self.value.get(key, default)
        if not isinstance(found, bool):
            self.fault(f"has {key} {shown(found)}; true or false is due")
            return default
        return found

    def limit(self, key: str) -> Limit | None:
        """Give "rule" or "advice", None where nothing is said."""
        found = self.value.get(key)
        for one in LIMITS:
            if found == one:
                return one
        if found is not None:
            self.fault(f"has {key} {shown(found)}; rule or advice is due")
        return None

    def list(self, key: str, most: int) -> list[Any]:
        """Give a list of up to so many entries; a missing one is empty."""
        found = self.value.get(key)
        if found is None:
            return []
        if not isinstance(found, list):
            self.fault(f"has {key} {shown(found)}, where a list is due")
            return []
        if len(found) > most:
            self.fault(f"has {len(found):,} {key}; up to {most:,} are planned")
            return []
        return found

    def table(self, key: str) -> "Table":
        """Give an object inside; a missing one is empty."""
        return Table(self.value.get(key, {}), f"{self.where}, {key}", self.faults)

    def moment(self, key: str) -> datetime | None:
        """Give a naive local time to the minute; None and a fault where it is none."""
        found = self.value.get(key)
        try:
            at = datetime.fromisoformat(found)  # type: ignore[arg-type]
        except (TypeError, ValueError):
            at = None
        if at is None or at.tzinfo is not None or not 1970 <= at.year <= 2200:
            self.fault(f"has {key} {shown(found)}; a local time such as 2027-03-01T09:00 is due")
            return None
        return at.replace(second=0, microsecond=0)


def read_day(text: Any) -> date | None:
    """Give the date of "2027-03-01", None for anything else."""
    try:
        found = date.fromisoformat(text)
    except (TypeError, ValueError):
        return None
    return found if timedelta(0) < found - date(1970, 1, 1) < timedelta(days=90_000) else None


def read_clock(text: Any) -> int | None:
    """Give the minutes of "09:30", up to "24:00"; None for anything else."""
    if not isinstance(text, str) or len(text) != 5 or text[2] != ":":
        return None
    hours, minutes = text[:2], text[3:]
    if not (hours.isascii() and hours.isdigit() and minutes.isascii() and minutes.isdigit()):
        return None
    found = int(hours) * 60 + int(minutes)
    return found if int(minutes) < 60 and found <= 1440 else None
