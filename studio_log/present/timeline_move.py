"""Moving a planned moment: how far it may go, and everything that goes with it.

Pure and quick (a lot has a dozen steps), so the hand sees it at every pixel. The bounds are
those of the `plan` entry in `services.marking`; what is shown before letting go is what
`windows_of` gives once that entry is written.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import StepKind
from studio_log.domain.windows import StepWindow, limit_words, windows_of
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.present.timeline_story import LaneFacts

_MINUTE = timedelta(minutes=1)
_TICK = timedelta(microseconds=1)
_LETTING_GO = timedelta(minutes=2)
"""A sheet is up to a minute behind the clock, and a hand takes its time."""


@dataclass(frozen=True, slots=True)
class Reach:
    """Between which moments a planned one may be moved; `until` None means without limit."""

    since: datetime
    until: datetime | None
    now_at: datetime
    """Where it stands before the move."""


@dataclass(frozen=True, slots=True)
class Ghost:
    """Where a step lies once the move is made."""

    step: int
    start: datetime
    end: datetime


@dataclass(frozen=True, slots=True)
class Moved:
    """A move as it would be: the moment after limits and snapping, the steps, the words."""

    step: int
    at: datetime
    ghosts: tuple[Ghost, ...]
    """The step itself first, then each later one that moves with it."""
    words: str


def reach_of(facts: LaneFacts, number: int, now: datetime) -> Reach | None:
    """Give how far a step's planned moment can go: its start, or its end where it runs.

    None where there is nothing to move: a step that is closed, a cure, or one that begins
    at once with the end of the step before.
    """
    step = facts.lot.step(number)
    window = windows_of(facts.lot, now, facts.quiet).get(number)
    if window is None or step.spec.kind is StepKind.CURE or not facts.lot.taken(step):
        return None
    bounds = window.end if step.running else window.start
    since = max(_earliest(facts, step, now), _next_minute(now))
    if bounds.latest is not None and bounds.latest <= since:
        return None
    return Reach(since, bounds.latest, window.best_end if step.running else window.best_start)


def moved(
    facts: LaneFacts, number: int, wanted: datetime, now: datetime, snap: timedelta
) -> Moved | None:
    """Move a step's planned moment to the snapped one nearest to `wanted` that is allowed."""
    reach = reach_of(facts, number, now)
    if reach is None:
        return None
    at, limit = _held(facts, number, wanted, reach, snap)
    before = windows_of(facts.lot, now, facts.quiet)
    after = windows_of(_replanned(facts.lot, number, at), now, facts.quiet)
    ghosts = _ghosts(facts.lot, number, before, after)
    return Moved(number, at, ghosts, _words(facts, reach, at, limit, ghosts, (before, after)))


def _earliest(facts: LaneFacts, step: LotStep, now: datetime) -> datetime:
    """Give the earliest moment that is still one when the hand has let go.

    Behind a step that waits to be ended, the earliest moves on with the clock.
    """
    first, later = (
        windows_of(facts.lot, at, facts.quiet)[step.number] for at in (now, now + _LETTING_GO)
    )
    before, after = (one.end if step.running else one.start for one in (first, later))
    if after.earliest <= before.earliest:
        return before.earliest
    return (after.earliest + _MINUTE - _TICK).replace(second=0, microsecond=0)


def _next_minute(now: datetime) -> datetime:
    """Leave a minute for the hand to let go: a plan in the past is refused."""
    return now.replace(second=0, microsecond=0) + 2 * _MINUTE


def _held(
    facts: LaneFacts, number: int, wanted: datetime, reach: Reach, snap: timedelta
) -> tuple[datetime, str]:
    """Give the snapped moment inside the reach, and in words the limit that holds it, if any."""
    at = _snapped(wanted, snap)
    step = facts.lot.step(number)
    if reach.until is not None and wanted > reach.until:
        lengths = step.spec.lasts if step.running else None
        gap = None if step.running else step.spec.gap
        return reach.until, tr(
            "No later: {limit_words}.", limit_words=limit_words(step, lengths, gap)
        )
    if wanted < reach.since:
        return reach.since, tr("No earlier than {at}.", at=facts.at(reach.since))
    at = max(at, reach.since)
    return (at if reach.until is None else min(at, reach.until)), ""


def _snapped(at: datetime, snap: timedelta) -> datetime:
    """Give the nearest whole snap of the wall clock; zones differ by quarters of an hour."""
    seconds = round(at.timestamp() / snap.total_seconds()) * snap.total_seconds()
    return datetime.fromtimestamp(seconds, UTC)


def _replanned(lot: Lot, number: int, at: datetime) -> Lot:
    steps = (replace(one, plan=at) if one.number == number else one for one in lot.steps)
    return replace(lot, steps=tuple(steps))


def _ghosts(
    lot: Lot, number: int, before: Mapping[int, StepWindow], after: Mapping[int, StepWindow]
) -> tuple[Ghost, ...]:
    found: list[Ghost] = []
    for step in lot.steps[lot.place_of(number) :]:
        window = after.get(step.number)
        if window is None or not lot.taken(step):
            continue
        was = before[step.number]
        same = (was.best_start, was.best_end) == (window.best_start, window.best_end)
        if step.number == number or not same:
            found.append(Ghost(step.number, window.best_start, window.best_end))
    return tuple(found)


def _words(
    facts: LaneFacts,
    reach: Reach,
    at: datetime,
    limit: str,
    ghosts: tuple[Ghost, ...],
    both: tuple[Mapping[int, StepWindow], Mapping[int, StepWindow]],
) -> str:
    """Say the new moment, by how much it moved, what moves with it and what that breaks."""
    step = facts.lot.step(ghosts[0].step)
    what = tr("{title} ends", title=step.title) if step.running else step.title
    parts = [f"{what}: {facts.at(at)}", _shift(at - reach.now_at)]
    others = len(ghosts) - 1
    if others:
        parts.append(
            tr("1 step moves with it")
            if others == 1
            else tr("{others} steps move with it", others=others)
        )
    parts.append(_ready(facts, ghosts, both))
    said = f"{'; '.join(part for part in parts if part)}.".replace("; ", ", ", 1)
    quiet = facts.quiet.words
    asleep = tr("In quiet hours ({quiet}).", quiet=quiet) if facts.quiet.is_quiet(at) else ""
    return " ".join(part for part in (said, limit, asleep, _clash(facts, ghosts, both)) if part)


def _shift(by: timedelta) -> str:
    if abs(by) < _MINUTE:
        return tr("where it was")
    return f"{words.span(by)} {'later' if by > timedelta(0) else 'earlier'}"


def _ready(
    facts: LaneFacts,
    ghosts: tuple[Ghost, ...],
    both: tuple[Mapping[int, StepWindow], Mapping[int, StepWindow]],
) -> str:
    """Say the day on which the cloth is ready, where the move makes it another one."""
    lot, (before, after) = facts.lot, both
    cure = next((g for g in ghosts if lot.step(g.step).spec.kind is StepKind.CURE), None)
    if cure is None:
        return ""
    days = [words.day(one[cure.step].best_end, facts.zone, facts.now) for one in (after, before)]
    return (
        ""
        if days[0] == days[1]
        else tr("ready {now} instead of {before}", now=days[0], before=days[1])
    )


def _clash(
    facts: LaneFacts,
    ghosts: tuple[Ghost, ...],
    both: tuple[Mapping[int, StepWindow], Mapping[int, StepWindow]],
) -> str:
    """Name the first later step that the move leaves without a waking moment."""
    before, after = both
    for ghost in ghosts[1:]:
        clash = after[ghost.step].moved.clash
        if clash is not None and before[ghost.step].moved.clash is None:
            title = facts.lot.step(ghost.step).title
            return tr(
                "{title} would then fall in quiet hours ({words}).",
                title=title,
                words=facts.quiet.words,
            )
    return ""
