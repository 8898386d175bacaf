"""The acts of a day, worked out from lots, clock and quiet hours.

Each is told as if all before it were done at their best moments. What comes after a drying
is counted from its aim, since nobody knows when the cloth will be dry; only the next "is it
dry?" is counted, for its answer decides on the others.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

from studio_log.domain.due import milk_reminder, reminders_of
from studio_log.domain.likely import likely_lasts
from studio_log.domain.lots import Lot, LotStep, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.milks import Milk
from studio_log.domain.quiet import ONE_DAY, Night, QuietHours
from studio_log.domain.reminders import Kind, Reminder
from studio_log.domain.tending import coming_tendings, next_ask, next_tending
from studio_log.domain.windows import SHORT, StepWindow, windows_of
from studio_log.language.words import tr

Milks = Mapping[str, Milk]
"""The milk that each lot takes from, by the lot's code."""
NO_MILKS: Milks = {}
MARKS_TOLD = ("/ready", "/paint")
"""Marks of a cure that want hands; that painting time is over wants none."""


@dataclass(frozen=True)
class DayAct:
    """One act of the day. `at` is its best moment, `latest` the last, both while awake.

    `overdue` says that it has been due by now; `words` is the order in lower case: "stir".
    """

    code: str
    name: str
    step: int
    kind: Kind
    words: str
    at: datetime
    latest: datetime
    overdue: bool = False


@dataclass(frozen=True)
class DayAhead:
    """The acts from `since` up to `until`, in order of time: a day, as long as one is awake."""

    since: datetime
    until: datetime
    acts: tuple[DayAct, ...] = ()

    @property
    def count(self) -> int:
        """How many acts want hands."""
        return len(self.acts)

    @property
    def first(self) -> datetime | None:
        """When the first act is best done; None where there is none."""
        return self.acts[0].at if self.acts else None

    @property
    def last_by(self) -> datetime | None:
        """The latest moment the last act may still be done, before quiet hours begin."""
        ends = [act.latest for act in self.acts if act.at == self.acts[-1].at]
        return max(ends, default=None)


def coming_night(now: datetime, quiet: QuietHours) -> Night:
    """Give the quiet stretch that ends this day; local midnight, with no length, without one.

    A stretch counts that begins before noon tomorrow: later ones end another day.
    """
    zone = ZoneInfo(quiet.zone)
    awake = quiet.waking(now)
    tomorrow = awake.astimezone(zone).date() + ONE_DAY
    noon = datetime.combine(tomorrow, time(12), zone).astimezone(UTC)
    found = next((one for one in quiet.nights(awake, noon) if one.start > awake), None)
    if found is not None:
        return found
    midnight = datetime.combine(tomorrow, time(0), zone).astimezone(UTC)
    return Night(midnight, midnight)


@dataclass(frozen=True)
class _Day:
    """What the rules of the day look at; `since` is now, or the waking after it."""

    now: datetime
    since: datetime
    until: datetime
    quiet: QuietHours

    def act(  # noqa: PLR0913 - one door for all kinds; every value is named at the call
        self, lot: Lot, step: LotStep, kind: Kind, *,
        words: str, due: datetime, floor: datetime, latest: datetime | None,
    ) -> DayAct:  # fmt: skip
        """Give an act that fell or falls due at `due` and is not done before `floor`."""
        at = self.quiet.waking(max(due, floor))
        last = max(at, min(latest or self.until, self.until))
        overdue = due <= self.now and at <= self.since
        return DayAct(lot.code, lot.name, step.number, kind, low(words), at, last, overdue)


def acts_of_day(
    lots: Iterable[Lot], now: datetime, quiet: QuietHours, milks: Milks = NO_MILKS
) -> DayAhead:
    """Give every act that wants hands from now to the quiet hours, or to local midnight.

    What is overdue is due now. An act that begins the next step at once counts once; lots
    not begun, coats of choice not begun and resting cures but for their marks count nothing.
    """
    since = quiet.waking(now)
    day = _Day(now, since, coming_night(now, quiet).start, quiet)
    acts = [
        act
        for lot in lots
        if in_hand(lot)
        for act in _of_lot(day, lot, milks.get(lot.code))
        if act.at < day.until
    ]
    acts.sort(key=lambda one: one.at)  # a lot's own acts stay in the order of its steps
    return DayAhead(since, day.until, tuple(acts))


def in_hand(lot: Lot) -> bool:
    """Say whether a lot has begun and was neither stopped nor taken back."""
    return (lot.started or lot.planned) and not lot.voided and lot.stopped is None


def resting(lot: Lot) -> bool:
    """Say whether a cure runs: until it ends, only its marks speak for the lot."""
    cure = cure_of(lot)
    return cure is not None and cure.running and lot.use is None


def _of_lot(day: _Day, lot: Lot, milk: Milk | None) -> Iterator[DayAct]:
    if resting(lot):
        yield from _marks(day, lot)
        return
    windows = windows_of(lot, day.since, day.quiet)
    yield from _walk(day, lot, windows)
    warning = beans_wanted(lot, milk, windows, day.since, day.quiet)
    if warning is not None:
        yield day.act(lot, lot.step(warning.step or 0), Kind.USE_BY,
                      words=tr("Soak beans tonight for"), due=warning.due, latest=None,
                      floor=warning.rings_at)  # fmt: skip


def _marks(day: _Day, lot: Lot) -> Iterator[DayAct]:
    """Give the marks of a cure that fall on this day, told or not; older ones are no acts."""
    zone = ZoneInfo(day.quiet.zone)
    today = day.since.astimezone(zone).date()
    for one in reminders_of(lot, day.since, day.quiet):
        fell_today = one.rings_at.astimezone(zone).date() == today
        if one.kind is not Kind.CURE_MARK or not (fell_today or one.rings_at >= day.since):
            continue
        if one.key.endswith(MARKS_TOLD) and one.step is not None:
            words = one.title.removesuffix(f"{lot.code} {lot.name}".strip()).rstrip()
            latest = one.latest if one.latest != one.due else None
            yield day.act(lot, lot.step(one.step), one.kind, words=words, due=one.due,
                          floor=max(one.rings_at, day.since), latest=latest)  # fmt: skip


def _walk(day: _Day, lot: Lot, windows: Mapping[int, StepWindow]) -> Iterator[DayAct]:
    """Give the acts of a lot's steps, each begun when the one before has ended."""
    reached, before = day.since, False
    for one in lot.steps:
        window = windows.get(one.number)
        if window is None or one.spec.kind is StepKind.CURE or not lot.taken(one):
            continue
        floor = max(reached, one.put_off or reached)
        step, end_due = one, window.best_end
        if not one.running:
            latest = _start_by(one, reached) if before else window.start.latest
            begin = day.act(lot, one, Kind.START, words=one.spec.order,
                            due=window.best_start, floor=floor, latest=latest)  # fmt: skip
            if not (before and one.spec.gap.at_once):
                yield begin
            floor = begin.at
            step, end_due = _begun(one, window, floor)
        ended = None
        for ended in _within(day, lot, step, end_due, floor):
            yield ended
        reached, before = (ended.at if ended else floor), True
        if reached >= day.until:
            return


def _start_by(step: LotStep, ended: datetime) -> datetime | None:
    most = step.spec.gap.most
    return None if most is None else ended + most


def _begun(step: LotStep, window: StepWindow, at: datetime) -> tuple[LotStep, datetime]:
    """Give a step as if begun at a moment, and its best end, counted anew if that is not best."""
    lasts, end = step.spec.lasts, window.best_end
    if at != window.best_start and lasts is not None:
        end = max(end, at + lasts.aim)
    return replace(step, start=at, put_off=None), end


def _within(
    day: _Day, lot: Lot, step: LotStep, end_due: datetime, floor: datetime
) -> Iterator[DayAct]:
    """Give the acts inside a step that runs: tending, then the question or the end, last."""
    lasts, start = step.spec.lasts, step.start
    latest = start + lasts.latest if lasts is not None and start is not None else None
    likely = likely_lasts(lot, step)
    ask = next_ask(step, day.quiet, likely.aim if likely else None)
    if ask is not None:
        yield day.act(lot, step, Kind.IS_DRY, words=tr("Is it dry?"), due=ask, floor=floor,
                      latest=latest)  # fmt: skip
        return
    end = day.act(lot, step, Kind.READY, words=step.spec.end_order, due=end_due, floor=floor,
                  latest=latest)  # fmt: skip
    yield from _tendings(day, lot, step, end.at, floor)
    yield end


def _tendings(
    day: _Day, lot: Lot, step: LotStep, end: datetime, floor: datetime
) -> Iterator[DayAct]:
    """Give each time of tending up to just before the end; a missed one is done first."""
    tending, until = step.spec.tending, min(end - SHORT / 3, day.until)
    first = next_tending(step, day.quiet)
    if tending is None or first is None:
        return
    moments: list[datetime] = []
    if first < floor:
        if floor >= until:
            return  # so near to its end the step is no longer tended
        moments = [first]
        step = replace(step, tended=(*step.tended, floor))
    for at in (*moments, *coming_tendings(step, day.quiet, until)):
        yield day.act(lot, step, Kind.TEND, words=tending.act, due=at, floor=floor, latest=end)


def beans_wanted(
    lot: Lot,
    milk: Milk | None,
    windows: Mapping[int, StepWindow],
    now: datetime,
    quiet: QuietHours,
) -> Reminder | None:
    """Give the warning that the milk will not last; asked for only where a coat comes too late."""
    if milk is None:
        return None
    late = any(
        step.spec.uses_milk and windows[step.number].best_start > milk.use_by
        for step in lot.steps
        if step.number in windows and step.start is None
    )
    return milk_reminder(lot, milk, now, quiet) if late else None


def low(words: str) -> str:
    """Give an order for the middle of a sentence."""
    return f"{words[:1].lower()}{words[1:]}"
