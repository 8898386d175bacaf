"""Values as JSON: instants ISO 8601 UTC with Z, durations in seconds, nothing renamed."""

from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass
from datetime import UTC, date, datetime, timedelta
from enum import Enum
from typing import Any


def instant(at: datetime) -> str:
    """Give an instant in UTC with Z, whole seconds."""
    return at.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def plain(value: Any) -> Any:
    """Give a value as what JSON has: dataclasses as objects, sets and tuples as lists."""
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, date):
        return instant(value) if isinstance(value, datetime) else value.isoformat()
    if isinstance(value, timedelta):
        seconds = value.total_seconds()
        return int(seconds) if seconds == int(seconds) else seconds
    if value is None or isinstance(value, str | int | float):
        return value
    return _gathered(value)


def _gathered(value: Any) -> Any:
    if is_dataclass(value) and not isinstance(value, type):
        return {one.name: plain(getattr(value, one.name)) for one in fields(value)}
    if isinstance(value, Mapping):
        return {str(key): plain(one) for key, one in value.items()}
    if isinstance(value, set | frozenset):
        return sorted(plain(one) for one in value)
    if isinstance(value, Iterable):
        return [plain(one) for one in value]
    raise TypeError(f"{type(value).__name__} has no form in JSON")


def picked(value: Any, *names: str) -> dict[str, Any]:
    """Give these fields of a value as a JSON object."""
    return {name: plain(getattr(value, name)) for name in names}
