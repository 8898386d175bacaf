"""Room that a lot leaves for those which its milk serves, while they have no place yet.

They are laid in, spun and dipped when it is: so each of its visits from then on is placed as if
theirs followed at once. Where that finds no place, the lot is placed as if it were alone.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from studio_log.planning.chain import NEVER, Between, Chain
from studio_log.planning.milk_limits import Followed


def roomy(
    chain: Chain, followed: Iterable[Followed], grid: int
) -> Iterator[tuple[Chain, int, int]]:
    """Give the chain with the others' hands behind its own, then with their first before its own.

    With each a visit, and the slots from its beginning until the lot's own hands begin in it. None
    where there are no others.
    """
    more: dict[int, int] = {}
    for one in followed:
        for at, visit in enumerate(one.chain.visits[one.first :], one.behind):
            if at < len(chain.visits):
                more[at] = more.get(at, 0) + visit.length
    if not any(more.values()):
        return
    first = min(more)
    visits = tuple(
        replace(visit, length=visit.length + more.get(at, 0))
        for at, visit in enumerate(chain.visits)
    )
    behind = [_less(one, more.get(at, 0), grid) for at, one in enumerate(chain.betweens)]
    if first:  # whoever comes last comes in time for the milk
        wait = chain.betweens[first - 1]
        most = _most(wait, max(wait.least, wait.most - more[first]))
        behind[first - 1] = replace(wait, most=most)
    yield replace(chain, visits=visits, betweens=tuple(behind)), first, 0
    before = [*behind[:first], *chain.betweens[first : first + 1], *behind[first + 1 :]]
    yield replace(chain, visits=visits, betweens=tuple(before)), first, more[first]


def _less(between: Between, slots: int, grid: int) -> Between:
    """Give what passes behind a visit, without what the others' hands take of it."""
    least = max(0, between.least - slots)
    target = None if between.target is None else max(0, between.target - grid * slots)
    most = _most(between, max(least, between.most - slots))
    return replace(between, least=least, most=most, target=target)


def _most(between: Between, most: int) -> int:
    return between.most if between.most >= NEVER else most
