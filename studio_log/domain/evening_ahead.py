"""What is best started tonight, so that it ends in waking hours tomorrow."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from studio_log.domain.day_ahead import (
    NO_MILKS,
    Milks,
    beans_wanted,
    coming_night,
    in_hand,
    low,
    resting,
)
from studio_log.domain.lots import Lot, LotStep, StepState
from studio_log.domain.methods import Spread, StepKind
from studio_log.domain.milks import Milk
from studio_log.domain.quiet import LEAST_HANDS_ON, Night, QuietHours, Window, best_moment
from studio_log.domain.windows import StepWindow, start_advice, windows_of
from studio_log.language.words import tr

OVERNIGHT = (timedelta(hours=5), timedelta(hours=20))
"""Aims between these are long enough to be slept through."""


@dataclass(frozen=True)
class Tonight:
    """A long step best started tonight, at `by` at the latest, and when it then may end awake.

    `must` says that waiting for the morning breaks a limit or lets it end asleep. `ends` is
    None where nothing tells how long it takes.
    """

    code: str
    name: str
    kind: StepKind
    words: str
    by: datetime
    ends: tuple[datetime, datetime] | None
    must: bool


@dataclass(frozen=True)
class _Evening:
    now: datetime
    night: Night
    quiet: QuietHours

    @property
    def sleeps(self) -> bool:
        """Say whether there are quiet hours tonight at all."""
        return self.night.end > self.night.start


def tonight(
    lots: Iterable[Lot], now: datetime, quiet: QuietHours, milks: Milks = NO_MILKS
) -> tuple[Tonight, ...]:
    """Give the long steps to start tonight so that they end awake tomorrow, soonest first.

    A step must be started tonight where waiting for the morning breaks its gap or the life of
    its milk, or lets it end asleep. Others, which may as well wait, are only given where no
    step must. In quiet hours it is too late for tonight; without any, only limits count.
    """
    if quiet.is_quiet(now):
        return ()
    evening = _Evening(now, coming_night(now, quiet), quiet)
    found: list[Tonight] = []
    for lot in lots:
        if not in_hand(lot) or resting(lot):
            continue
        windows, milk = windows_of(lot, now, quiet), milks.get(lot.code)
        found.extend(_long_steps(evening, lot, windows, milk))
        warning = beans_wanted(lot, milk, windows, now, quiet)
        if warning is not None and warning.rings_at < evening.night.start:
            found.append(_fresh_beans(evening, lot))
    must = [one for one in found if one.must]
    return tuple(sorted(must or found, key=lambda one: (one.by, one.code)))


def _long_steps(
    evening: _Evening, lot: Lot, windows: Mapping[int, StepWindow], milk: Milk | None
) -> Iterator[Tonight]:
    for step in lot.steps:
        window, lasts = windows.get(step.number), step.spec.lasts
        if window is None or lasts is None or step.start is not None or not lot.taken(step):
            continue
        ready = lot.state_of(step) is StepState.OPEN or window.best_start < evening.night.start
        if ready and OVERNIGHT[0] <= lasts.aim <= OVERNIGHT[1] and not step.spec.gap.at_once:
            life = milk.use_by if milk is not None and step.spec.uses_milk else None
            limits = [at for at in (window.start.latest, life) if at is not None]
            found = _overnight(evening, lot, step, lasts, min(limits, default=None))
            if found is not None and found.by >= _minute(window.start.earliest):
                yield found


def _overnight(
    evening: _Evening, lot: Lot, step: LotStep, lasts: Spread, limit: datetime | None
) -> Tonight | None:
    """Give a step started as late tonight as it may be; None where it would not end awake."""
    night, quiet, hands_on = evening.night, evening.quiet, step.spec.hands_on
    by = min(_bedtime(evening, hands_on), limit or night.start)
    advice = start_advice(step, lasts, by, quiet)
    by = _minute(by if advice is None else advice[0])
    best = best_moment(_window(lasts, by), quiet, hands_on)
    if best.clash is not None or best.at < night.end:
        return None
    asleep = best_moment(_window(lasts, night.end), quiet, hands_on).clash is not None
    must = asleep or (limit is not None and limit < night.end)
    if not must and not evening.sleeps:
        return None
    ends = _awake_ends(evening, lasts, by)
    return Tonight(lot.code, lot.name, step.spec.kind, low(step.spec.order), by, ends, must)


def _fresh_beans(evening: _Evening, lot: Lot) -> Tonight:
    """Give the soak of beans for the milk of a next coat, as long as the lot's own took."""
    soaks = [step.spec for step in lot.steps if step.spec.kind is StepKind.BEANS]
    lasts = soaks[-1].lasts if soaks else None
    by = _bedtime(evening, soaks[-1].hands_on if soaks else LEAST_HANDS_ON)
    ends = _awake_ends(evening, lasts, by) if lasts is not None else None
    return Tonight(lot.code, lot.name, StepKind.BEANS, tr("soak beans"), by, ends, must=True)


def _bedtime(evening: _Evening, hands_on: timedelta) -> datetime:
    last = evening.night.start - max(hands_on, LEAST_HANDS_ON)
    return max(_minute(last), evening.now)


def _window(lasts: Spread, start: datetime) -> Window:
    return Window(start + lasts.earliest, start + lasts.aim, start + lasts.latest)


def _awake_ends(evening: _Evening, lasts: Spread, start: datetime) -> tuple[datetime, datetime]:
    """Give the first stretch after the night in which the step may end while awake."""
    first = evening.quiet.waking(max(start + lasts.earliest, evening.night.end))
    last = max(start + lasts.latest, first)
    beyond = next((one for one in evening.quiet.nights(first, last) if one.start > first), None)
    return first, last if beyond is None else beyond.start


def _minute(at: datetime) -> datetime:
    """Give the whole minute that a moment lies in."""
    return at.replace(second=0, microsecond=0)
