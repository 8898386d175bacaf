"""Windows: for every step ahead its earliest, aim and latest, and the best moment.

A pure function of lot (journal and method), clock and quiet hours. Forward, earliest
follows from earliest, aim from aim, latest from latest; what happened fixes where the
chain begins, and the present is the earliest that anything can still be. The best moment
follows its own chain: each is the aim counted from the best moment before it, moved out
of quiet hours where the window allows.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from studio_log.domain.likely import likely_lasts
from studio_log.domain.lots import Lot, LotStep, cure_days_of
from studio_log.domain.methods import Gap, Spread, StepKind
from studio_log.domain.quiet import Best, QuietHours, Window, best_moment
from studio_log.language.words import tr

SHORT = timedelta(minutes=15)
"""Steps with an aim below this are watched through: their end is never moved."""


@dataclass(frozen=True)
class Broken:
    """The one limit that is broken, in words, and by how much."""

    step: int
    limit: str
    by: timedelta


@dataclass(frozen=True)
class StepWindow:
    """When a step can begin and end. `best_*` lie inside their windows, awake if they can."""

    step: int
    start: Window
    end: Window
    best_start: datetime
    best_end: datetime
    moved: Best
    """How the hands-on moment of this step was found: its end if it is long, else its start."""
    broken: Broken | None = None


@dataclass(frozen=True)
class _Point:
    """Where the chain stands after a step: earliest, aim, latest, best."""

    earliest: datetime
    aim: datetime
    latest: datetime | None
    best: datetime

    def not_before(self, now: datetime) -> "_Point":
        latest = None if self.latest is None else max(self.latest, now)
        return _Point(max(self.earliest, now), max(self.aim, now), latest, max(self.best, now))


def windows_of(lot: Lot, now: datetime, quiet: QuietHours) -> dict[int, StepWindow]:
    """Give the window of every step that is not closed, by step number."""
    found: dict[int, StepWindow] = {}
    point = _Point(now, now, None, now) if not lot.started else _last_known(lot, now)
    aside: _Point | None = None  # the chain of an optional coat that nobody has begun
    for step in lot.steps:
        if step.closed:
            point = _after_closed(step, point)
            continue
        from_ = point if lot.taken(step) else (aside or point)
        if step.running:
            window = _running(lot, step, now, quiet)
        else:
            window = _ahead(lot, step, from_, now, quiet)
        found[step.number] = window
        reached = _after(window, now, running=step.running)
        point, aside = (reached, None) if lot.taken(step) else (point, reached)
    return found


def _last_known(lot: Lot, now: datetime) -> _Point:
    ends = [step.end for step in lot.steps if step.end is not None]
    at = min(ends, default=now)
    return _Point(at, at, at, at)


def _after_closed(step: LotStep, point: _Point) -> _Point:
    if step.end is None:
        # Milk from elsewhere has its own life: nothing here says how fresh it is.
        return replace(point, latest=None) if step.spec.makes_milk else point
    return _Point(step.end, step.end, step.end, step.end)


def _after(window: StepWindow, now: datetime, *, running: bool) -> _Point:
    """Give the chain's point after a step that is still to end: never before now."""
    end = window.end
    point = _Point(end.earliest, end.aim, end.latest, window.best_end)
    return point.not_before(now) if running else point


def limit_words(step: LotStep, spread: Spread | None, gap: Gap | None) -> str:
    """Name a limit: "First soak: no longer than 18 h", "Spin out: within 10 min of lifting"."""
    if gap is not None and gap.most is not None:
        behind = tr(" of {after}", after=gap.after) if gap.after else ""
        return tr(
            "{title}: within {span}{behind}",
            title=step.title,
            span=short_span(gap.most),
            behind=behind,
        )
    longest = short_span(spread.latest) if spread else tr("its time")
    return tr("{title}: no longer than {longest}", title=step.title, longest=longest)


def short_span(span: timedelta) -> str:
    """Give a limit's length in words: "10 min", "18 h", "14 d"."""
    minutes = round(span.total_seconds() / 60)
    if minutes < 120 and minutes % 60:
        return f"{minutes} min"
    hours = minutes / 60
    return f"{hours:g} h" if hours <= 72 else f"{hours / 24:g} d"


def lengths_of(lot: Lot, step: LotStep) -> Spread:
    """Give how long a step lasts; a cure lasts as long as the chosen view says."""
    if step.spec.lasts is not None:
        return likely_lasts(lot, step) or step.spec.lasts
    whole = timedelta(days=cure_days_of(lot, step.join))
    return Spread(whole, whole, whole)


def _endless(step: LotStep) -> bool:
    """Say whether a step may go on without limit: a cure only grows older."""
    return step.spec.kind is StepKind.CURE


def _end_window(step: LotStep, start: _Point, lengths: Spread) -> Window:
    latest = None if start.latest is None or _endless(step) else start.latest + lengths.latest
    return Window(start.earliest + lengths.earliest, start.aim + lengths.aim, latest)


def _best_end(
    step: LotStep, start: datetime, lengths: Spread, quiet: QuietHours, floor: datetime
) -> Best:
    """Give the best end of a step that began (or is best begun) at `start`."""
    earliest = max(start + lengths.earliest, floor)
    latest = None if _endless(step) else max(start + lengths.latest, earliest)
    aim = max(start + lengths.aim, earliest)
    if lengths.aim < SHORT:
        return Best(aim)
    return best_moment(Window(earliest, aim, latest), quiet, step.spec.hands_on)


def _planned(window: Window, now: datetime, best: Best, *planned: datetime | None) -> Best:
    """Let the first moment that was set win which is ahead and inside the window."""
    held = (at for at in planned if at is not None and at >= now and window.holds(at))
    return Best(at) if (at := next(held, None)) is not None else best


def _running(lot: Lot, step: LotStep, now: datetime, quiet: QuietHours) -> StepWindow:
    start = step.start
    assert start is not None  # noqa: S101 - the caller asked step.running
    lengths = lengths_of(lot, step)
    point = _Point(start, start, start, start)
    window = _end_window(step, point, lengths)
    best = _best_end(step, start, lengths, quiet, start)
    best = _planned(window, now, best, step.plan, step.plan_end)
    broken = None
    if window.latest is not None and now > window.latest:
        broken = Broken(step.number, limit_words(step, lengths, None), now - window.latest)
    fixed = Window(start, start, start)
    return StepWindow(step.number, fixed, window, start, best.at, best, broken)


def _ahead(lot: Lot, step: LotStep, point: _Point, now: datetime, quiet: QuietHours) -> StepWindow:
    gap = step.spec.gap
    latest = None if point.latest is None or gap.most is None else point.latest + gap.most
    broken = None
    if latest is not None and now > latest:
        broken = Broken(step.number, limit_words(step, None, gap), now - latest)
    earliest = max(point.earliest + gap.least, now)
    latest = None if latest is None else max(latest, earliest)
    aim = max(point.aim + gap.aim, earliest)
    aim = aim if latest is None else min(aim, latest)
    start = Window(earliest, aim, latest)
    moved = _best_start(step, point, now, quiet)
    moved = _planned(start, now, moved, step.plan)
    reach = _Point(start.earliest, start.aim, start.latest, moved.at)
    lengths = lengths_of(lot, step)
    end = _best_end(step, moved.at, lengths, quiet, moved.at)
    point = _Point(moved.at, moved.at, moved.at, moved.at)
    end = _planned(_end_window(step, point, lengths), now, end, step.plan_end)
    shown = end if lengths.aim >= SHORT else moved
    return StepWindow(
        step.number, start, _end_window(step, reach, lengths), moved.at, end.at, shown, broken
    )


def _best_start(step: LotStep, point: _Point, now: datetime, quiet: QuietHours) -> Best:
    gap = step.spec.gap
    earliest = max(point.best + gap.least, now)
    if gap.at_once:
        return Best(earliest)
    aim = max(point.best + gap.aim, earliest)
    latest = None if gap.most is None else max(point.best + gap.most, earliest)
    aim = aim if latest is None else min(aim, latest)
    return best_moment(Window(earliest, aim, latest), quiet, step.spec.hands_on)


def planned_spans(lot: Lot, quiet: QuietHours) -> dict[int, tuple[datetime, datetime]]:
    """Give start and end of each begun step as they stood planned before it began, by number.

    Counted from the end of the step before, as it happened, or from a `plan` entry that
    stood then: a delay shows where it arose and is not told again at every later step.
    A cure has none, since it only grows older.
    """
    found: dict[int, tuple[datetime, datetime]] = {}
    before: datetime | None = None
    for step in lot.steps:
        began = step.start or step.end
        if began is not None and not _endless(step):
            start = step.meant_start or _meant_start(step, before, quiet) or began
            end = step.plan or step.plan_end if step.running else step.meant_end
            lengths = lengths_of(lot, step)
            found[step.number] = (
                start, end or _best_end(step, start, lengths, quiet, start).at
            )  # fmt: skip
        before = step.end or before
    return found


def _meant_start(step: LotStep, before: datetime | None, quiet: QuietHours) -> datetime | None:
    if before is None or step.spec.gap.at_once:
        return before
    return _best_start(step, _Point(before, before, before, before), before, quiet).at


def start_advice(
    step: LotStep, lengths: Spread, start: datetime, quiet: QuietHours
) -> tuple[datetime, datetime] | None:
    """Say when to start instead, where no waking moment lies in the end's window.

    Gives the last start before and the first start after with which the step ends in
    waking hours; None where it does as it is.
    """
    best = _best_end(step, start, lengths, quiet, start)
    night = best.night
    if best.clash is None or night is None:
        return None
    margin = max(step.spec.hands_on, timedelta(minutes=1))
    return night.start - margin - lengths.earliest, night.end - lengths.latest
