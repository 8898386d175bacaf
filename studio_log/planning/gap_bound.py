"""How few sessions can do: what hangs or stands from one session to the next has to fit.

Put the sessions of any plan in order of time. A lot that hangs from one visit to a later one, with
visits between that are too far apart for one session, hangs over as many gaps between sessions, and
in each gap all that hangs has to fit on the line. So there are at least as many gaps as all lots
take together, divided by what fits. Before the first of them lie the earlier visits of the lot
that is first, and behind the last those of the lot that is last.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise, product

from studio_log.planning.chain import Chain
from studio_log.planning.engine import Studio


@dataclass(frozen=True, slots=True)
class _Held:
    """Over how many gaps a lot takes something, and its sessions before and after."""

    taken: int
    """Amounts, or lots, times gaps."""
    before: int
    after: int


def gap_bound(studio: Studio) -> int:
    """Give a number of sessions that no plan is below; 0 where windows of hours touch."""
    windows = studio.board.windows
    if any(one.end >= other.start for one, other in pairwise(windows)):
        return 0
    problem, best = studio.problem, 0
    kinds = dict.fromkeys(one.kind for one in problem.vessels)
    chains = list(studio.chains.values())
    for store, room in problem.stores.items():
        best = max(best, _bound([_held(studio, one, store) for one in chains], room))
    for kind in kinds:
        own = [one for one in problem.vessels if one.kind == kind]
        if any(run.kind == kind for one in chains for run in one.runs):
            some = [_held(studio, one, kind, counted=True) for one in chains]
            best = max(best, _bound(some, lots_in(studio, kind)))
            some = [_held(studio, one, kind) for one in chains]
            best = max(best, _bound(some, sum(one.size for one in own)))
    return best


def lots_in(studio: Studio, kind: str) -> int:
    """Give how many lots all vessels of a kind hold at most at once."""
    runs = [run for chain in studio.chains.values() for run in chain.runs if run.kind == kind]
    least = max(1, min((run.much for run in runs), default=1))
    return sum(
        1 if one.one_lot else one.size // least
        for one in studio.problem.vessels
        if one.kind == kind
    )


def _bound(some: list[_Held | None], room: int) -> int:
    """Give the best bound of all sets of lots by how many sessions lie before and after."""
    held = [one for one in some if one is not None]
    best = 0
    if not room:
        return best
    for before, after in product({one.before for one in held}, {one.after for one in held}):
        taken = sum(one.taken for one in held if one.before >= before and one.after >= after)
        if taken:
            best = max(best, before + 1 - (-taken // room) + after)
    return best


def _held(studio: Studio, chain: Chain, what: str, *, counted: bool = False) -> _Held | None:
    """Look at how a lot takes something; None where it does not from one session to another."""
    longest, taken = studio.board.longest, 0
    before, after = None, 0
    for first, last, much in _stretches(chain, what):
        visits = [n for n in range(first, last + 1) if chain.visits[n].length]
        far = far_apart(chain, visits, longest)
        if len(far) < 2:
            continue
        taken += (1 if counted else much) * (len(far) - 1)
        if before is None:
            earlier = [n for n in range(far[0], -1, -1) if chain.visits[n].length]
            before = len(far_apart(chain, earlier, longest)) - 1
        later = [n for n in range(far[-1], len(chain.visits)) if chain.visits[n].length]
        after = len(far_apart(chain, later, longest)) - 1
    return None if before is None else _Held(taken, before, after)


def _stretches(chain: Chain, what: str) -> Iterator[tuple[int, int, int]]:
    """Give first and last visit of each stretch in which something is taken, and least how much."""
    begun, least = -1, 0
    for number, between in enumerate(chain.betweens):
        much = [amount for store, amount in between.holds if store == what]
        much += [chain.runs[run].much for run in between.runs if chain.runs[run].kind == what]
        if much:
            least = sum(much) if begun < 0 else min(least, sum(much))
            begun = number if begun < 0 else begun
        elif begun >= 0:
            yield begun, number, least
            begun = -1
    if begun >= 0:
        yield begun, len(chain.betweens), least


def far_apart(chain: Chain, visits: list[int], longest: int) -> list[int]:
    """Give visits, from the first on, of which no two fit into one window of hours.

    They are in order, or backwards.
    """
    found = visits[:1]
    for visit in visits[1:]:
        first, second = sorted((found[-1], visit))
        hands = sum(chain.visits[n].length for n in range(first, second + 1))
        waits = sum(chain.betweens[n].least for n in range(first, second))
        if hands + waits > longest:
            found.append(visit)
    return found
