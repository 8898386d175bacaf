"""What a late lot lacks beside the others: with more of one thing it would be in time.

It tells how this plan is, and proves nothing: in another plan the others might give way.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

from studio_log.language.words import listed, tr, tr_later
from studio_log.planning.board import Taking
from studio_log.planning.change_kinds import AddVessel, Change, MoreBurners, MoreHands, MoreLine
from studio_log.planning.changes import apply_change, lot_of
from studio_log.planning.check_plan import open_steps
from studio_log.planning.engine import Studio
from studio_log.planning.grip import BadMoveError, take_over
from studio_log.planning.plain_words import amount_words, long_day
from studio_log.planning.problem import THOUSANDTHS, BadProblemError, Plan, Problem
from studio_log.planning.vessel_words import there_words, wanted_words

LINE: Final = "line"
HANDS: Final = "hands"
Stop = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class Beside:
    """A thing that a lot needs at a minute to be in time, and the lots that have it then."""

    lot: str
    thing: str
    at: int
    others: tuple[str, ...]


def beside(problem: Problem, plan: Plan, name: str, by: int, stop: Stop) -> Beside | None:
    """Give the first thing of which more would let a lot be taken down by a minute.

    All others stay where the plan has them. None where no single thing is enough.
    """
    for thing, change in _more(problem, name):
        if stop():
            return None
        try:
            studio = Studio(apply_change(problem, change), stop)
            take_over(studio, plan)
        except (BadMoveError, BadProblemError):
            return None
        studio.board.take(name)
        free = [0] * len(studio.board.windows)
        found = studio.try_place(name, free, studio.limits[name])
        if found is not None and found.end <= by:
            return _clash(problem, studio, name, thing, found.takings)
    return None


def _more(problem: Problem, name: str) -> Iterator[tuple[str, Change]]:
    """Give each thing that a lot takes, with a change by which there is enough of it."""
    most: dict[str, int] = {}
    for step in open_steps(lot_of(problem, name)):
        for kind, much in step.uses.items():
            most[kind] = max(much, most.get(kind, 0))
    for kind in sorted(most, key=lambda one: one != LINE):
        if kind == LINE:
            yield kind, MoreLine(most[kind])
        elif kind == "burner":
            yield kind, MoreBurners(-(-most[kind] // THOUSANDTHS))
        else:
            yield kind, AddVessel(kind, most[kind])
    yield HANDS, MoreHands(1)


def _clash(
    problem: Problem, studio: Studio, name: str, thing: str, takings: tuple[Taking, ...]
) -> Beside | None:
    """Give the first moment at which a lot's place takes more than there is."""
    vessels = {one.name: one.kind for one in studio.problem.vessels}
    own = {one.name for one in problem.vessels}
    others = [
        (lot, one)
        for lot, placed in studio.board.placed.items()
        for one in placed.takings
        if vessels.get(one[0], one[0]) == thing
    ]
    for store, start, end, much in sorted(takings, key=lambda one: one[1]):
        if vessels.get(store, store) != thing or store in own:
            continue
        for at in sorted({start, *(one[1] for _, one in others if start < one[1] < end)}):
            there = [(lot, one) for lot, one in others if one[1] <= at < one[2]]
            room = problem.stores.get(store, THOUSANDTHS) - sum(one[3] for _, one in there)
            if there and (store in vessels or much > room):
                lots = tuple(dict.fromkeys(lot for lot, _ in there))
                return Beside(name, thing, at * problem.grid, lots)
    return None


def beside_words(problem: Problem, one: Beside) -> str:
    """Say it: which day, how much there is, who has it."""
    line, several = one.thing == LINE, len(one.others) > 1
    need = tr(
        _HANGS if line else _NEEDS,
        lot=one.lot,
        thing=wanted_words(one.thing),
        day=long_day(problem.clock.local(one.at).date()),
    )
    count = 1 if line else _count(problem, one)
    have = _HAVE.get(one.thing, _HAS)[several, count != 1]
    return tr(
        "{need}; {there}, and {have} then in this plan.",
        need=need,
        there=_there(problem, one, count),
        have=tr(have, lots=listed(one.others)),
    )


def _there(problem: Problem, one: Beside, count: int) -> str:
    if one.thing == LINE:
        return tr("the line holds {metres} m", metres=amount_words(problem.stores[LINE]))
    there = there_words(one.thing, count)
    kinds = sum(it.kind == one.thing for it in problem.vessels)
    return tr("{there} large enough", there=there) if count < kinds else there


_HANGS: Final = tr_later("To be in time {lot} has to hang on {day}")
_NEEDS: Final = tr_later("To be in time {lot} needs {thing} on {day}")
_ON_LINE: Final = {
    (False, False): tr_later("{lots} hangs on it"), (True, False): tr_later("{lots} hang on it"),
}  # fmt: skip
_HAS: Final = {
    (False, False): tr_later("{lots} has it"), (False, True): tr_later("{lots} has them"),
    (True, False): tr_later("{lots} have it"), (True, True): tr_later("{lots} have them"),
}  # fmt: skip
_WORKED: Final = {
    (False, False): tr_later("{lots} needs it"), (False, True): tr_later("{lots} needs them"),
    (True, False): tr_later("{lots} need it"), (True, True): tr_later("{lots} need them"),
}  # fmt: skip
_HAVE: Final = {LINE: _ON_LINE, HANDS: _WORKED}
"""By thing: what lots do that have it, by whether they are several, and it is."""


def _count(problem: Problem, one: Beside) -> int:
    """Give how many there are of a thing, of vessels those that the lot fits."""
    if one.thing in {"burner", HANDS}:
        return problem.stores.get(one.thing, THOUSANDTHS) // THOUSANDTHS
    needs = (it.uses.get(one.thing, 0) for it in open_steps(lot_of(problem, one.lot)))
    much = max(needs)
    return sum(it.kind == one.thing and it.size >= much for it in problem.vessels)
