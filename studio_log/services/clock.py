"""The clock: the one place where the time is read."""

import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta

import tzlocal


class SystemClock:
    """The machine's clock and zone; a studio's own zone wins over the system's."""

    def __init__(self, zone: str = "") -> None:
        self._zone = zone

    def now(self) -> datetime:
        """Give the present in UTC."""
        return datetime.now(UTC)  # noqa: TID251 - the one place that reads it

    def zone(self) -> str:
        """Give the zone in force by its IANA name."""
        return self._zone or tzlocal.get_localzone_name() or "UTC"

    def real(self, span: timedelta) -> timedelta:
        """Give the span itself: this clock is not hurried."""
        return span


class HurriedClock:
    """A clock that runs `pace` times as fast from a given moment, and can be put forward."""

    def __init__(
        self,
        start: datetime,
        pace: float,
        zone: str,
        monotonic: Callable[[], float] = time.monotonic,
    ) -> None:
        self._monotonic = monotonic
        self._begun = start
        self._from = monotonic()
        self._pace = max(pace, 1.0)
        self._zone = zone

    def now(self) -> datetime:
        """Give the hurried present in UTC."""
        return self._begun + timedelta(seconds=(self._monotonic() - self._from) * self._pace)

    def zone(self) -> str:
        """Give the zone in force."""
        return self._zone

    def real(self, span: timedelta) -> timedelta:
        """Give how long the span lasts on the wall."""
        return span / self._pace

    def jump(self, to: datetime) -> None:
        """Put the clock forward to a moment ahead; back never."""
        now = self.now()
        if to > now:
            self._begun += to - now
