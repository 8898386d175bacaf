"""Brings moved visits as near to their old times as costs nothing: no session, no minute."""

from studio_log.planning.board import Placement
from studio_log.planning.engine import Studio
from studio_log.planning.grip import Grip, free
from studio_log.planning.old_plan import placement_from


def settle(studio: Studio) -> None:
    """Move each visit that is not where the old plan had it towards there, all else as it is."""
    for name in list(studio.board.placed):
        if name not in studio.old:
            continue
        for number in studio.moved_visits(name):
            placement = studio.board.take(name)
            studio.board.put(name, _nearer(studio, name, number, placement) or placement)


def _nearer(studio: Studio, name: str, number: int, placement: Placement) -> Placement | None:
    """Give the placement with a visit as near its old time as can be; None where it is best."""
    chain, was = studio.chains[name], studio.old[name].slots[number] or 0
    now = placement.starts[number]
    low, high = studio.limits[name][number]
    visits = studio.board.visits
    come = {one for one in placement.sessions if not visits[one]}
    for slot in sorted(
        free(Grip(studio, chain, placement, number, 0)), key=lambda at: abs(at - was)
    ):
        if abs(slot - was) >= abs(now - was):
            return None
        starts = (*placement.starts[:number], slot, *placement.starts[number + 1 :])
        found = placement_from(chain, studio.problem, studio.board, starts, placement.vessels)
        good = found is not None and low <= slot <= high and found.end == placement.end
        if found is None or not good or found.fine > placement.fine:
            continue
        if len({one for one in found.sessions if not visits[one]}) <= len(come):
            return found
    return None
