"""Where one visit can be dragged to, so that nothing else moves and every rule holds.

This is exact: all slots between its neighbours are looked at.
"""

from itertools import pairwise

from studio_log.language.words import tr
from studio_log.planning.grip import BadMoveError, free, gripped
from studio_log.planning.old_plan import placement_from
from studio_log.planning.plan_studio import checked, plan_of
from studio_log.planning.problem import Plan, Problem

Ranges = tuple[tuple[int, int], ...]
"""First and last start of each range in minutes, apart and in order; starts are on the grid."""


def windows(problem: Problem, plan: Plan, lot: str, step: str) -> Ranges:
    """Give the starts to which a step can be moved with its visit, all else staying as it is.

    Empty for what runs already, for a cure, and for a plan that does not fit the problem.
    """
    try:
        grip = gripped(problem, plan, lot, step)
    except BadMoveError:
        return ()
    grid = problem.grid
    return tuple(
        ((first + grip.offset) * grid, (last + grip.offset) * grid)
        for first, last in _ranges(free(grip))
    )


def moved(problem: Problem, plan: Plan, lot: str, step: str, start: int) -> Plan:
    """Give the plan with a step moved to a start with its visit; BadMoveError where it cannot."""
    grip = gripped(problem, plan, lot, step)
    slot, odd = divmod(start, problem.grid)
    slot -= grip.offset
    slots = free(grip)
    if odd or slot not in slots:
        text = tr(
            "{step} of {lot} cannot begin at {moment} while everything else stays. Nothing was "
            "moved.",
            step=step,
            lot=lot,
            moment=f"{problem.clock.local(start):%Y-%m-%d %H:%M}",
        )
        raise BadMoveError(text)
    starts = grip.placement.starts
    starts = (*starts[: grip.visit], slot, *starts[grip.visit + 1 :])
    vessels = grip.placement.vessels
    placement = placement_from(grip.chain, problem, grip.studio.board, starts, vessels)
    if placement is None:
        text = tr("{step} of {lot} cannot begin outside the hours. Nothing was moved.",
                  step=step, lot=lot)  # fmt: skip
        raise BadMoveError(text)
    grip.studio.board.put(lot, placement)
    return checked(problem, plan_of(grip.studio, grip.studio.board.placed))


def _ranges(slots: list[int]) -> list[tuple[int, int]]:
    """Join neighbouring slots."""
    if not slots:
        return []
    ends = [n + 1 for n, (one, other) in enumerate(pairwise(slots)) if other > one + 1]
    return [(slots[first], slots[last - 1]) for first, last in pairwise([0, *ends, len(slots)])]
