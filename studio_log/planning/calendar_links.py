"""One lot against the calendar with the longest times between visits far apart, exactly.

Every limit between two visits says how much later one begins: such limits, hours and weather are
closed under taking the later of two good plans visit by visit. So a set of starts for each visit in
which every start has a partner for every limit (arc consistency) has a plan if and only if no
set is empty, and the latest starts of all are one: Jeavons and Cooper, Tractable constraints on
ordered domains, Artificial Intelligence 79 (1995), 327-339 (cited from memory; tests try it).
"""

from collections.abc import Callable, Sequence

from studio_log.planning.calendar_sweep import (
    FOREVER,
    by_weather,
    last_moments,
    opened,
    reached,
)
from studio_log.planning.chain import NEVER, Chain, chain_of, links_of, windows_of_chain
from studio_log.planning.hours import Window, windows_of
from studio_log.planning.problem import Problem
from studio_log.planning.stn import LoopError
from studio_log.planning.stretches import Stretch, cut, in_hours, joined, met, moved


def goes_alone(
    problem: Problem,
    name: str,
    stop: Callable[[], bool],
    windows: Sequence[Window] | None = None,
) -> bool:
    """Say whether a lot has a place in an otherwise empty studio; True too where told to stop."""
    lot = next((one for one in problem.lots if one.name == name), None)
    chain = None if lot is None else chain_of(problem, lot)
    if chain is None:
        return True
    hours = windows_of(problem) if windows is None else windows
    return latest_starts(chain, problem, hours, stop) is not None or stop()


def latest_starts(
    chain: Chain, problem: Problem, windows: Sequence[Window], stop: Callable[[], bool]
) -> list[int] | None:
    """Give the latest starts of all visits, which together are a plan; None where there is none."""
    try:
        windows_of_chain(chain, problem)  # limits that contradict each other would shrink for long
    except LoopError:
        return None
    starts = _in_hours(chain, problem, windows)
    before: list[list[Stretch]] = []
    while all(starts) and starts != before:
        if stop():
            return None
        before = list(starts)
        _tighten(chain, problem, starts)
    return [one[-1][1] for one in starts] if all(starts) else None


def _tighten(chain: Chain, problem: Problem, starts: list[list[Stretch]]) -> None:
    """Take out what has no partner for some limit: forward, along the links, backward."""
    for number, between in enumerate(chain.betweens):
        length = chain.visits[number].length
        ends = moved(starts[number], length, length)
        starts[number + 1] = met(starts[number + 1], reached(ends, between, problem))
    for first, second, most in links_of(chain, problem):
        if first >= 0 and starts[first] and starts[second]:
            starts[second] = cut(starts[second], 0, starts[first][-1][1] + most)
        if first >= 0 and starts[second]:
            starts[first] = cut(starts[first], starts[second][0][0] - most, FOREVER)
    for number in reversed(range(len(chain.betweens))):
        starts[number] = _left(chain, problem, number, starts)


def _in_hours(chain: Chain, problem: Problem, windows: Sequence[Window]) -> list[list[Stretch]]:
    """Give for each visit the starts that hours, horizon and what is recorded leave."""
    last = last_moments(chain, problem)
    whole = [
        in_hours(cut([(0, FOREVER)], 0, high), windows, visit.length)
        for visit, high in zip(chain.visits, last, strict=True)
    ]
    _, due = opened(chain, problem)
    return [met(whole[0], due), *whole[1:]]


def _left(
    chain: Chain, problem: Problem, number: int, starts: Sequence[list[Stretch]]
) -> list[Stretch]:
    """Give the starts of a visit from which one of the next can be reached."""
    between, length = chain.betweens[number], chain.visits[number].length
    most = FOREVER if between.most >= NEVER else between.most
    ends = moved(starts[number], length, length)
    kept: list[Stretch] = []
    for low, high, least in by_weather(ends, between, problem):
        kept += cut(moved(starts[number + 1], -most, -least), low, high)
    return moved(joined(kept), -length, -length)
