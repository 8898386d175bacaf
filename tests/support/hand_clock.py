"""A clock that only a test moves, and stand-ins for what is outside the studio."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from studio_log.services.ports import Delivery, NoticeText


class HandClock:
    """Stands still until it is moved; `zone` may be changed, as on a journey."""

    def __init__(self, at: datetime, zone: str = "Europe/London") -> None:
        self.at = at
        self.place = zone

    def now(self) -> datetime:
        return self.at

    def zone(self) -> str:
        return self.place

    def real(self, span: timedelta) -> timedelta:
        return span

    def move(self, **span: float) -> datetime:
        """Move on by a span of true elapsed time, as in move(hours=2)."""
        self.at += timedelta(**span)
        return self.at

    def set(self, at: datetime) -> datetime:
        """Move to a moment."""
        self.at = at
        return at

    def local(self, text: str) -> datetime:
        """Give the instant of a wall time in the clock's zone, as in "2026-06-09 20:00"."""
        there = datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(self.place))
        return there.astimezone(UTC)


@dataclass
class ListedNotice:
    """Keeps every notice it was given; `before` is called first and may raise."""

    shown: list[NoticeText] = field(default_factory=list)
    revised: list[tuple[tuple[str, ...], NoticeText | None]] = field(default_factory=list)
    before: Callable[[NoticeText], None] | None = None
    works: bool = True
    left: tuple[tuple[str, ...], ...] = ()
    """Keys of the notices that an earlier process left."""
    bells: list[str] = field(default_factory=list)

    def show(self, text: NoticeText) -> Sequence[Delivery]:
        if self.before is not None:
            self.before(text)
        self.shown.append(text)
        return [Delivery("list", ok=self.works, words="kept" if self.works else "deaf")]

    def state(self) -> tuple[bool, str]:
        return self.works, "kept in a list"

    def revise(self, keys: tuple[str, ...], text: NoticeText | None) -> None:
        self.revised.append((keys, text))

    def take_over(self) -> tuple[tuple[str, ...], ...]:
        self.bells.append("taken over")
        return self.left

    def hand_over(self) -> None:
        self.bells.append("handed over")

    def stale(self) -> bool:
        return False

    def look(self) -> tuple[bool, str]:
        return self.state()

    def close(self) -> None:
        pass


@dataclass
class HandBell:
    """The right to ring, given and taken by the test."""

    mine: bool = True

    def hold(self) -> bool:
        return self.mine

    def release(self) -> None:
        self.mine = False


@dataclass
class ListedAlarm:
    """Keeps what it was set to."""

    sets: list[datetime | None] = field(default_factory=list)

    @property
    def at(self) -> datetime | None:
        return self.sets[-1] if self.sets else None

    def set(self, at: datetime | None) -> None:
        self.sets.append(at)

    def close(self) -> None:
        self.sets.append(None)
