"""Finds an old plan's places again in a problem that may have changed since."""

from collections.abc import Mapping

from studio_log.planning.board import Board, Placement
from studio_log.planning.chain import Chain
from studio_log.planning.placing import placement_of
from studio_log.planning.problem import Plan, Problem, Span
from studio_log.planning.wish import Old


def old_of(chain: Chain, problem: Problem, plan: Plan, *, past: bool = False) -> Old:
    """Give where a plan had the visits and vessels of a lot; the vessel it lies in now is fixed.

    Times between slots of the grid go to the nearest one: the plan may have been made at a
    moment from which the grid ran otherwise. What has passed without being begun has no place
    any more, unless `past` is asked for.
    """
    spans = plan.spans.get(chain.lot.name, {})
    slots = []
    for number in range(len(chain.visits)):
        minute = _minute(chain, spans, number)
        slot = None if minute is None else (minute + problem.grid // 2) // problem.grid
        slots.append(None if slot is None or (slot < 0 and not past) else slot)
    held = plan.vessels.get(chain.lot.name, {})
    vessels: dict[int, str] = {}
    for step, runs in chain.held.items():
        for run in runs:
            name = held.get(step, {}).get(chain.runs[run].kind)
            if name is not None:
                vessels.setdefault(run, name)
    vessels |= {run: plan.milks[name] for name, run in chain.milks.items() if name in plan.milks}
    running = frozenset(() if chain.opening is None else chain.opening.runs)
    return Old(tuple(slots), vessels, running & frozenset(vessels))


def _minute(chain: Chain, spans: Mapping[str, Span], number: int) -> int | None:
    """Give when a visit began: its first step, or what lies before or behind an empty one."""
    visit = chain.visits[number]
    if visit.steps:
        span = spans.get(visit.steps[0][0])
        return None if span is None else span.start
    before = chain.betweens[number - 1] if number else chain.opening
    if before is not None and before.step is not None and before.step in spans:
        return spans[before.step].end
    after = chain.betweens[number] if number < len(chain.betweens) else None
    if after is not None and after.step is not None and after.step in spans:
        return spans[after.step].start
    return None


def placement_from(
    chain: Chain,
    problem: Problem,
    board: Board,
    starts: tuple[int, ...],
    vessels: Mapping[int, str],
) -> Placement | None:
    """Give the placement of visits at these slots; None where one lies outside the hours."""
    window: dict[int, int] = {}
    for at, visit in zip(starts, chain.visits, strict=True):
        if not visit.length:
            continue
        place = board.window_at(at)
        if place is None or board.windows[place].end < at + visit.length:
            return None
        window[at] = place
    return placement_of(chain, problem, starts, vessels, window)
