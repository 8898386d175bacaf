"""Folding the stretches of time in which nobody is needed."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from studio_log.language.words import tr

FOLD_OVER: Final = timedelta(hours=36)
"""A stretch without hands longer than this is folded."""
KEEP_AROUND_NOW: Final = timedelta(hours=12)
"""Never folded, on either side of now."""
HEM: Final = timedelta(hours=4)
"""Left flat beside a moment at which somebody is needed, so that its day can be read."""


@dataclass(frozen=True, slots=True)
class Pleat:
    """One folded, or once folded and now opened, stretch of time."""

    start: datetime
    end: datetime
    opened: bool = False

    @property
    def key(self) -> datetime:
        """Names the pleat when it is opened: the moment in its middle.

        A pleat stays open as long as the named moment lies inside it, also when
        its ends move because the work beside it runs late.
        """
        return self.start + (self.end - self.start) / 2

    @property
    def days(self) -> int:
        """Its length in days, rounded; never less than one."""
        return max(1, round((self.end - self.start) / timedelta(days=1)))

    @property
    def label(self) -> str:
        """Its length in short: "17 d"."""
        return f"{self.days} d"

    def holds(self, moment: datetime) -> bool:
        """Whether the moment lies inside."""
        return self.start <= moment <= self.end


def pleats(
    hands: Iterable[datetime], now: datetime, opened: Collection[datetime] = ()
) -> tuple[Pleat, ...]:
    """Find the pleats between the first and the last of the hands' moments, in order of time.

    Nothing is folded before the first moment or after the last, nor within
    `KEEP_AROUND_NOW` of now. `opened` holds keys of pleats that are to lie open.
    """
    kept_from, kept_until = now - KEEP_AROUND_NOW, now + KEEP_AROUND_NOW
    outside = {moment for moment in hands if not kept_from < moment < kept_until}
    edges = [(moment - HEM, moment + HEM) for moment in outside]
    edges.append((kept_from, kept_until))
    edges.sort()
    found: list[Pleat] = []
    flat_until = edges[0][1]
    for start, end in edges[1:]:
        if _folds(flat_until, start, kept=(kept_from, kept_until)):
            found.append(_pleat(flat_until, start, opened))
        flat_until = max(flat_until, end)
    return tuple(found)


def toggled(opened: frozenset[datetime], pleat: Pleat) -> frozenset[datetime]:
    """Give the set of opened keys after a click on the pleat."""
    if pleat.opened:
        return frozenset(key for key in opened if not pleat.holds(key))
    return opened | {pleat.key}


def days_in_words(pleat: Pleat) -> str:
    """Tell what is folded and how to open it, as two sentences."""
    days = tr("1 day") if pleat.days == 1 else tr("{days} days", days=pleat.days)
    act = tr("fold it") if pleat.opened else tr("open it")
    return tr(
        "{days} in which nobody is needed. Click or press Enter to {act}.", days=days, act=act
    )


def _folds(start: datetime, end: datetime, kept: tuple[datetime, datetime]) -> bool:
    """Whether the stretch between two flat parts is long enough to be folded.

    The hems are part of the rest, so they count; beside now there is no hem.
    """
    hems = (HEM if start != kept[1] else timedelta(0)) + (HEM if end != kept[0] else timedelta(0))
    return end - start + hems > FOLD_OVER


def _pleat(start: datetime, end: datetime, opened: Collection[datetime]) -> Pleat:
    closed = Pleat(start, end)
    return Pleat(start, end, opened=any(closed.holds(key) for key in opened))
