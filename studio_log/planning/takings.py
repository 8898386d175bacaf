"""What a lot takes at its visits and between them, and when that is not free on the board."""

from collections.abc import Mapping

from studio_log.planning.board import Board, Taking, joined
from studio_log.planning.chain import Between, Chain, Visit


def taken_by(visit: Visit, start: int, vessels: Mapping[int, str]) -> list[Taking]:
    """Give what a visit takes that begins at a slot: hands, stores, and vessels by its runs."""
    found: list[Taking] = []
    if visit.length:
        found.append(("hands", start, start + visit.length, 1000))
    held = [(one.store, one) for one in visit.holds]
    held += [(vessels[run], one) for run, one in visit.runs]
    for store, one in held:
        begin = start + one.start
        found.append((store, begin, begin + one.length, one.much))
    return found


def taken_between(
    chain: Chain, between: Between, begin: int, end: int, vessels: Mapping[int, str]
) -> list[Taking]:
    """Give what is taken from one slot to another by what passes between two visits."""
    found = [(store, begin, end, much) for store, much in between.holds]
    return found + [(vessels[run], begin, end, chain.runs[run].much) for run in between.runs]


def on_the_way(
    chain: Chain, board: Board, between: Between, vessels: Mapping[int, str]
) -> list[tuple[int, int]]:
    """Give the stretches in which something of what passes between two visits is not free."""
    lists = [board.blocked(store, much) for store, much in between.holds]
    lists += [board.blocked(vessels[run], chain.runs[run].much) for run in between.runs]
    return joined(lists)
