"""From a time on the wall to an instant, through clock changes.

RFC 5545 section 3.3.5: a time that occurs twice means the first; one that does not occur
is read with the offset before the gap. Checked by tests/reference/dst_local_times.csv.
"""

from dataclasses import dataclass
from datetime import UTC, datetime
from enum import StrEnum
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from studio_log.domain.errors import Refusal


class Kind(StrEnum):
    """How often a time stands on the wall that day: once, never or twice."""

    NORMAL = "normal"
    GAP = "gap"
    FOLD = "fold"


@dataclass(frozen=True)
class WallTime:
    """An aware UTC instant; for a fold `second` is when the same time came again."""

    at: datetime
    kind: Kind = Kind.NORMAL
    second: datetime | None = None


def known_zone(name: str) -> ZoneInfo:
    """Give the zone of an IANA name; refuses one that is not known here."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise Refusal(
            f"The time zone “{name[:60]}” is not known here. Choose one such as Europe/London."
        ) from None


def from_wall(local: datetime, zone: ZoneInfo) -> WallTime:
    """Give the instant of a naive local time in a zone."""
    first = local.replace(tzinfo=zone, fold=0)
    second = local.replace(tzinfo=zone, fold=1)
    at = first.astimezone(UTC)
    if first.utcoffset() == second.utcoffset():
        return WallTime(at)
    if at.astimezone(zone).replace(tzinfo=None, fold=0) != local.replace(fold=0):
        return WallTime(at, Kind.GAP)
    return WallTime(at, Kind.FOLD, second.astimezone(UTC))
