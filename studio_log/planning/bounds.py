"""What no plan can be better than: each lot looked at as if the studio were its own."""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from studio_log.planning.engine import SESSION, Studio
from studio_log.planning.gap_bound import gap_bound, lots_in
from studio_log.planning.linked import place_lot
from studio_log.planning.placing import choices_fit
from studio_log.planning.problem import Problem, Score
from studio_log.planning.wish import Wish

MOST_LOTS: Final = 12
"""With more of them the bounds would take the time that plans need."""


@dataclass(frozen=True, slots=True)
class Bound:
    """Three numbers that the parts of no score fall below, each for itself."""

    late: int
    sessions: int
    fine: int

    def reached(self, score: Score) -> bool:
        """Say whether a score is the best there can be: it is at its bound in every part."""
        return score.parts() == (self.late, self.sessions, self.fine)


def exact_alone(studio: Studio) -> bool:
    """Place the only lot there is to plan as well as can be; gives whether that is proved."""
    if len(studio.chains) != 1:
        return not studio.chains  # where all is recorded, nothing could be better
    ((name, chain),) = studio.chains.items()
    if name in studio.board.placed:
        before = studio.board.take(name)
        found = studio.try_place(name, studio.sessions(studio.prices.session), studio.limits[name])
        studio.board.put(name, found or before)
        return found is not None and chain.plain and choices_fit(chain, studio.problem)
    return False


def bound_of(problem: Problem, stop: Callable[[], bool]) -> Bound:
    """Give the bounds of a problem; 0 where they would take too long or are not proved."""
    studio = Studio(problem, stop)
    if len(studio.chains) > MOST_LOTS:
        least = max(_by_length(studio), sessions_by_stores(studio), gap_bound(studio))
        return Bound(0, least, 0)
    ends, sessions, fine = dict(studio.ended), 0, 0
    for name, chain in studio.chains.items():
        if not choices_fit(chain, problem):
            return Bound(0, 0, 0)
        early = _alone(studio, name, 0, 10**6)
        few = _alone(studio, name, SESSION, 0)
        short = _alone(studio, name, 0, 0)
        if early is None or few is None or short is None:
            return Bound(0, 0, 0)
        ends[name], fine = early[0], fine + short[1]
        sessions = max(sessions, few[2] if chain.plain else 1)
    late = studio.lateness.of_goals(ends)
    late += sum(studio.lateness.of_due(name, ends[name]) for name in studio.chains)
    sessions = max(sessions, _by_length(studio), sessions_by_stores(studio), gap_bound(studio))
    return Bound(late, sessions, fine)


def _alone(studio: Studio, name: str, session: int, late: int) -> tuple[int, int, int] | None:
    """Give end, fine minutes and sessions of a lot alone in the studio, by what they cost."""
    sessions = [session] * len(studio.board.windows)
    wish = Wish(sessions, lambda end: end * late, studio.limits[name], studio.stop)
    found = place_lot(studio.chains[name], studio.problem, studio.board, wish)
    if found is None:
        return None
    return found[1].end, found[1].fine, len(set(found[1].sessions))


def _by_length(studio: Studio) -> int:
    """Give how many of the longest windows all hands-on time fills."""
    hands = sum(visit.length for chain in studio.chains.values() for visit in chain.visits)
    room = studio.board.longest * studio.problem.stores["hands"] // 1000
    return -(-hands // room) if room else 0


def sessions_by_stores(studio: Studio) -> int:
    """Give how many sessions the line, the burners and the vessels ask for.

    What begins behind work by hand and lasts beyond the longest session is still there when its
    session ends; so what begins in one session has room together. Summed over all sessions: they
    are no fewer than all that begins so, in metres, litres or lots, by what there is.
    """
    asked: dict[str, int] = defaultdict(int)
    number: dict[str, int] = defaultdict(int)
    for chain in studio.chains.values():
        for visit, between in zip(chain.visits, chain.betweens, strict=False):
            if not visit.length or visit.length + between.least <= studio.board.longest:
                continue
            for store, much in between.holds:
                asked[store] += much
            for run in between.runs:
                kind = chain.runs[run].kind
                asked[kind] += chain.runs[run].much
                number[kind] += 1
    bounds = [-(-much // max(1, _room(studio, kind))) for kind, much in asked.items()]
    bounds += [-(-many // max(1, lots_in(studio, kind))) for kind, many in number.items()]
    return max(bounds, default=0)


def _room(studio: Studio, kind: str) -> int:
    """Give how much of a store there is, or in all vessels of a kind."""
    own = sum(one.size for one in studio.problem.vessels if one.kind == kind)
    return own or studio.problem.stores.get(kind, 0)
