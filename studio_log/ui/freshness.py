"""How long what the window says stays true, and whether anybody is there to read it."""

from datetime import datetime, time, timedelta
from typing import Final

from studio_log.domain.wall_clock import known_zone
from studio_log.services.questions import Bench

LEFT_AFTER: Final = timedelta(minutes=2)
"""A window without key or mouse for so long has been left."""


class Freshness:
    """Judges by the moments it is told of; reads no clock.

    Words such as "3 h 40 min in" and "8 min late" change each minute. All others change only
    by what is done, which the studio tells of, or at moments known beforehand: when the next
    reminder falls due, when the last act can be taken back no more, at midnight.
    """

    def __init__(self) -> None:
        self._used: datetime | None = None
        self._learnt: datetime | None = None
        self._turns: datetime | None = None
        self._due = False

    def use(self, now: datetime) -> None:
        """Note a key or the mouse."""
        self._used = now

    def learn(self, bench: Bench, now: datetime, zone: str) -> None:
        """Take from the bench whether something is due and when its words change next."""
        moments = [_midnight(now, zone), *(card.due for card in bench.coming)]
        if bench.take_back is not None:
            moments.append(bench.take_back.until)
        self._due = bool(bench.now)
        self._learnt = now
        self._turns = min(at for at in moments if at > now)

    def left(self, now: datetime) -> bool:
        """Say whether nobody has been at the window for a while."""
        return self._used is None or not self._used <= now < self._used + LEFT_AFTER

    def resting(self, now: datetime) -> bool:
        """Say whether nobody is there and nothing is due: the window may go on slowly."""
        return self.left(now) and not self._due

    def turned(self, now: datetime) -> bool:
        """Say whether more words than lengths of time may have changed since `learn`."""
        if self._turns is None or self._learnt is None:
            return True
        return not self._learnt <= now < self._turns


def _midnight(now: datetime, zone: str) -> datetime:
    """Give the midnight to come on the wall: "today" and "tomorrow" change then."""
    there = known_zone(zone)
    tomorrow = now.astimezone(there).date() + timedelta(days=1)
    return datetime.combine(tomorrow, time(), there).astimezone(now.tzinfo)
