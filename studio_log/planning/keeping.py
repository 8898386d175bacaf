"""Plans anew and keeps to an old plan: what is near stays, and what moves has to be worth it."""

from dataclasses import replace
from typing import Final

from studio_log.planning.board import Placement
from studio_log.planning.engine import SESSION, Limits, Prices, Studio
from studio_log.planning.lates import lates
from studio_log.planning.old_plan import old_of
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.wish import Old

NEAR: Final = 1440
"""Minutes: what was to start within them stays where it can."""
SHARE: Final = 4
"""A session has to be spared for so many moved visits, or for fewer."""
LEAST_MOVED: Final = 120
"""A moved visit costs at least so many minutes of waiting."""
LATE_BORNE: Final = 10_000 * SESSION
"""The price of a minute late that an old plan had too, above any number of sessions."""
ABOVE_LATE: Final = 10**9
"""A moved visit is worth so many such minutes: more than there are."""


def keep_to(studio: Studio, plan: Plan) -> bool:
    """Place all lots where an old plan had them, as far as can be; gives whether all are placed.

    What was to start within a day is held where it was. A moved visit costs a quarter of a session.
    """
    session = studio.prices.session
    return _keep(studio, plan, Prices(session, max(session // SHARE, LEAST_MOVED)), NEAR)


def go_on_from(studio: Studio, plan: Plan) -> bool:
    """Place all lots as `keep_to` does; then what is near is held, and other moves are free."""
    return _keep(studio, plan, Prices(studio.prices.session, 0), NEAR)


def keep_most(studio: Studio, plan: Plan) -> bool:
    """Place all lots so that no date is later than it was, and then move as little as can be.

    Lateness that the old plan had already is borne; nothing is held only because it is near.
    """
    late = sum(
        _weight(studio.problem, one.what) * one.minutes for one in lates(studio.problem, plan)
    )
    prices = Prices(studio.prices.session, ABOVE_LATE * LATE_BORNE, late, LATE_BORNE)
    return _keep(studio, plan, prices, 0)


def _weight(problem: Problem, what: str) -> int:
    """Give the weight of what is late: of a goal 1, of a lot its own."""
    if any(one.name == what for one in problem.goals):
        return 1
    return next((one.weight for one in problem.lots if one.name == what), 1)


def _keep(studio: Studio, plan: Plan, prices: Prices, near: int) -> bool:
    if studio.impossible:
        return False
    studio.prices = prices
    studio.old = {
        name: old_of(chain, studio.problem, plan) for name, chain in studio.chains.items()
    }
    first: list[str] = []
    rest = studio.order()
    for _ in range(2 * len(rest) + 2):
        missed = _fill(studio, first, rest, near)
        if missed is None:
            _freeze(studio, near)
            return True
        if studio.stop():
            return False
        if first and first[0] == missed:
            break
        first = [missed, *(one for one in first if one != missed)]
        rest = [one for one in rest if one != missed]
    studio.old = {name: replace(one, fixed=frozenset()) for name, one in studio.old.items()}
    return studio.first_plan()


def _freeze(studio: Studio, near: int) -> None:
    """Let what was to start soon and has its old place keep it from now on."""
    soon = near // studio.problem.grid
    for name, placement in studio.board.placed.items():
        pairs = zip(placement.starts, studio.old[name].slots, strict=True)
        held = [n for n, (at, was) in enumerate(pairs) if at == was and at < soon]
        limits = _fixed(studio.limits[name], studio.old[name], held)
        if limits is not None:
            studio.limits[name] = limits


def _fill(studio: Studio, first: list[str], rest: list[str], near: int) -> str | None:
    """Place some lots as they come, then those that hold, then what is left; gives who misses."""
    studio.clear()
    for name in first:
        if not _put(studio, name, _nearby(studio, name, near)):
            return name
    loose = [name for name in rest if not _put(studio, name, _held(studio, name))]
    for name in loose:
        if not _put(studio, name, _nearby(studio, name, near)):
            return name
    return None


def _put(studio: Studio, name: str, placement: Placement | None) -> bool:
    if placement is not None:
        studio.board.put(name, placement)
    return placement is not None


def _held(studio: Studio, name: str) -> Placement | None:
    """Give the old place of a lot, with its vessels, if it is still good and whole."""
    old = studio.old[name]
    if any(slot is None for slot in old.slots) or len(old.vessels) < len(studio.chains[name].runs):
        return None
    limits = _fixed(studio.limits[name], old, list(range(len(old.slots))))
    if limits is None:
        return None
    prices = studio.sessions(studio.prices.session)
    return studio.try_place(name, prices, limits, replace(old, fixed=frozenset(old.vessels)))


def _nearby(studio: Studio, name: str, near: int) -> Placement | None:
    """Give the best place of a lot: its next visits held, if that can be, else all of it free."""
    old, prices = studio.old[name], studio.sessions(studio.prices.session)
    soon = near // studio.problem.grid
    held = [n for n, slot in enumerate(old.slots) if slot is not None and slot < soon]
    while held:
        limits = _fixed(studio.limits[name], old, held)
        found = None if limits is None else studio.try_place(name, prices, limits)
        if found is not None and limits is not None:
            return found
        held.pop()
    return studio.try_place(name, prices, studio.limits[name])


def _fixed(limits: Limits, old: Old, held: list[int]) -> Limits | None:
    """Cut the limits of some visits to where they were; None where they were outside of them."""
    found = list(limits)
    for number in held:
        slot, (low, high) = old.slots[number], limits[number]
        if slot is None or not low <= slot <= high:
            return None
        found[number] = (slot, slot)
    return found
