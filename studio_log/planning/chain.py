"""A lot as a path: visits of hands-on steps, and what lies between them.

A visit is a run of hands-on steps without a wait. Where two waits follow each other, or a lot
begins or ends with one, an empty visit stands between them, which may fall at any hour. Times
are slots of the grid where nothing else is said; minima are rounded up to it, maxima down.
"""

from dataclasses import dataclass, field, replace
from typing import Final

from studio_log.planning.problem import Lot, Problem, Step
from studio_log.planning.stn import Network

NEVER: Final = 10**9
"""Longer than any horizon."""


@dataclass(frozen=True, slots=True)
class Hold:
    """A taking of a store, from `start` for `length` slots after the beginning of a visit."""

    store: str
    much: int
    start: int
    length: int


@dataclass(frozen=True, slots=True)
class Visit:
    """Hands-on steps in one go: (name, length) each; empty ones have no length."""

    steps: tuple[tuple[str, int], ...] = ()
    length: int = 0
    holds: tuple[Hold, ...] = ()
    runs: tuple[tuple[int, Hold], ...] = ()
    """Vessels taken, by the number of the run they belong to."""


@dataclass(frozen=True, slots=True)
class Between:
    """What passes from the end of a visit to the next; a pause between steps has no name."""

    step: str | None
    least: int
    most: int
    target: int | None = None
    """Minutes."""
    drying: bool = False
    holds: tuple[tuple[str, int], ...] = ()
    runs: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Run:
    """Neighbouring steps that keep one vessel of a kind."""

    kind: str
    much: int


@dataclass(frozen=True, slots=True)
class Chain:
    """The steps of a lot that are still to come."""

    lot: Lot
    visits: tuple[Visit, ...]
    betweens: tuple[Between, ...]
    runs: tuple[Run, ...]
    opening: Between | None
    """What passes from `since` to the first visit; None where the lot is not begun."""
    since: int
    """Minutes: when the running step began, or the last one ended; else the release."""
    places: dict[str, tuple[int, int]] = field(default_factory=dict)
    """By step: the visit it begins in or after, and slots from that visit's beginning."""
    held: dict[str, tuple[int, ...]] = field(default_factory=dict)
    """By step: the runs whose vessels it lies in."""
    milks: dict[str, int] = field(default_factory=dict)
    """By milk that the lot makes: the run of what it stands in."""

    @property
    def plain(self) -> bool:
        """Whether no empty visit stands between two others: then sessions are counted exactly."""
        return all(one.length for one in self.visits[1:-1])


@dataclass(slots=True)
class _Builder:
    grid: int
    kinds: frozenset[str]
    runs: list[Run] = field(default_factory=list)
    open_runs: dict[tuple[str, int], int] = field(default_factory=dict)
    visits: list[Visit] = field(default_factory=lambda: [Visit()])
    betweens: list[Between] = field(default_factory=list)
    places: dict[str, tuple[int, int]] = field(default_factory=dict)
    held: dict[str, tuple[int, ...]] = field(default_factory=dict)

    def take(self, step: Step) -> tuple[list[tuple[str, int]], list[int]]:
        """Give what a step takes of stores, and its runs; runs it does not go on with end."""
        stores, runs = [], []
        kept: dict[tuple[str, int], int] = {}
        for kind, much in step.uses.items():
            if kind not in self.kinds:
                stores.append((kind, much))
                continue
            key = (kind, much)
            if key not in self.open_runs:
                self.runs.append(Run(kind, much))
                self.open_runs[key] = len(self.runs) - 1
            kept[key] = self.open_runs[key]
            runs.append(kept[key])
        self.open_runs = kept
        self.held[step.name] = tuple(runs)
        return stores, runs

    def hands(self, step: Step) -> None:
        """Add a hands-on step to the last visit."""
        visit = self.visits[-1]
        length = -(-(step.hands or 0) // self.grid)
        stores, runs = self.take(step)
        self.places[step.name] = (len(self.visits) - 1, visit.length)
        self.visits[-1] = Visit(
            (*visit.steps, (step.name, length)),
            visit.length + length,
            (*visit.holds, *(Hold(name, much, visit.length, length) for name, much in stores)),
            (*visit.runs, *((run, Hold("", self.runs[run].much, visit.length, length))
                            for run in runs)),
        )  # fmt: skip

    def wait(self, step: Step) -> None:
        """Add a step that goes by itself, and a visit behind it."""
        stores, runs = self.take(step)
        self.places[step.name] = (len(self.visits) - 1, self.visits[-1].length)
        most = NEVER if step.most is None else step.most // self.grid
        least = -(-step.least // self.grid)
        self.betweens.append(
            Between(step.name, least, most, step.target, step.drying, tuple(stores), tuple(runs))
        )
        self.visits.append(Visit())

    def pause(self, step: Step, after: Step) -> None:
        """Add the pause that may lie behind a step; a vessel that goes on in use is held."""
        if not step.then_within:
            return
        runs = [self.open_runs[key] for key in after.uses.items() if key in self.open_runs]
        least, most = -(-step.then_after // self.grid), step.then_within // self.grid
        self.betweens.append(Between(None, least, most, runs=tuple(runs)))
        self.visits.append(Visit())


def chain_of(problem: Problem, lot: Lot) -> Chain | None:
    """Give what is still to be planned of a lot before its cure; None where nothing is."""
    last = max((n for n, one in enumerate(lot.steps) if one.name in lot.facts), default=-1)
    running = last >= 0 and lot.facts[lot.steps[last].name].end is None
    steps = [one for one in lot.steps[last + (not running) :] if not one.cure]
    if not steps:
        return None
    if running:
        steps[0] = _under_way(steps[0])
    builder = _Builder(problem.grid, frozenset(one.kind for one in problem.vessels))
    for number, step in enumerate(steps):
        (builder.wait if step.hands is None else builder.hands)(step)
        if number + 1 < len(steps):
            builder.pause(step, steps[number + 1])
    return _with_milks(problem, _opened(problem, lot, last, builder))


def _with_milks(problem: Problem, chain: Chain) -> Chain:
    """Let the visit that makes a milk take what the milk stands in, as long as it is good."""
    for milk in problem.milks:
        lot, step = milk.maker or ("", "")
        made = moment_of(chain, step, end=True) if lot == chain.lot.name and milk.kind else None
        if made is None or milk.kind is None:
            continue
        number, at = made
        run, life = len(chain.runs), -(-milk.life // problem.grid)
        visit = chain.visits[number]
        held = replace(visit, runs=(*visit.runs, (run, Hold("", milk.much, at, life))))
        visits = (*chain.visits[:number], held, *chain.visits[number + 1 :])
        runs = (*chain.runs, Run(milk.kind, milk.much))
        chain = replace(chain, visits=visits, runs=runs, milks={**chain.milks, milk.name: run})
    return chain


def _under_way(step: Step) -> Step:
    """Give a running step as one that goes by itself; by hand it takes no less than its minutes.

    Somebody is at it already, so it asks neither for hours nor for hands. It lasts longer only
    where what follows is by hand too, and has to wait for its hours.
    """
    return step if step.hands is None else replace(step, hands=None, least=step.hands)


def _opened(problem: Problem, lot: Lot, last: int, builder: _Builder) -> Chain:
    """Join the chain to what is recorded."""
    visits, betweens = tuple(builder.visits), tuple(builder.betweens)
    opening, since = None, max(0, lot.release)
    if last >= 0:
        before = lot.steps[last]
        fact = lot.facts[before.name]
        since = fact.start if fact.end is None else fact.end
        by_itself = bool(betweens) and not visits[0].steps
        if by_itself and (fact.end is None or not before.then_within):
            opening, visits, betweens = betweens[0], visits[1:], betweens[1:]
            step = _under_way(lot.steps[last + (fact.end is not None)])
            least = shortest(problem, step, since)
            most = step.most
            if fact.end is None and before.hands is not None and not visits[0].steps:
                most = -(-max(0, since + least) // problem.grid) * problem.grid - since
            opening = _lengths(opening, least, most, since)
        else:
            opening = _lengths(Between(None, 0, 0), before.then_after, before.then_within, since)
    shift = len(builder.visits) - len(visits)
    places = {name: (visit - shift, at) for name, (visit, at) in builder.places.items()}
    return Chain(lot, visits, betweens, tuple(builder.runs), opening, since, places, builder.held)


def shortest(problem: Problem, step: Step, since: int) -> int:
    """Give the least minutes of a step begun at a minute; drying goes by that day's weather."""
    day = problem.clock.local(since).date() if step.drying else None
    return step.least if day is None else max(step.least, problem.drying.get(day, 0))


def least_after(problem: Problem, between: Between, slot: int) -> int:
    """Give the least slots of what begins at a slot; drying goes by that day's weather."""
    if not between.drying or not problem.drying:
        return between.least
    day = problem.clock.local(slot * problem.grid).date()
    return max(between.least, -(-problem.drying.get(day, 0) // problem.grid))


def _lengths(one: Between, least: int, most: int | None, since: int) -> Between:
    """Give an opening in minutes from `since`; a limit that is broken already binds no more."""
    limit = NEVER if most is None or since + most < 0 else most
    return Between(one.step, least, limit, one.target, one.drying, one.holds, one.runs)


def moment_of(chain: Chain, name: str, *, end: bool) -> tuple[int, int] | None:
    """Give visit and slots from its beginning, of a step's start or end; None if it is over.

    The visit -1 stands for `since`.
    """
    if name not in chain.places:
        return None
    visit, at = chain.places[name]
    if not end:
        return visit, at
    length = next((n for one in chain.visits for step, n in one.steps if step == name), None)
    return (visit + 1, 0) if length is None else (visit, at + length)


def windows_of_chain(chain: Chain, problem: Problem) -> list[tuple[int, int]]:
    """Give earliest and latest slot of every visit by its limits alone; LoopError if none is.

    Hours and other lots are not looked at.
    """
    grid = problem.grid
    network: Network[int | str] = Network()
    for number, visit in enumerate(chain.visits):
        network.limit("start", number, 0, problem.horizon // grid - visit.length)
    for number, between in enumerate(chain.betweens):
        length = chain.visits[number].length
        most = None if between.most >= NEVER else length + between.most
        network.limit(number, number + 1, length + between.least, most)
    opening = chain.opening
    if opening is None:
        network.limit("start", 0, -(-chain.since // grid), None)
    else:
        least = max(0, -(-(chain.since + opening.least) // grid))
        most = None if opening.most >= NEVER else (chain.since + opening.most) // grid
        network.limit("start", 0, least, most)
    for first, second, most in links_of(chain, problem):
        network.limit("start" if first < 0 else first, second, None, most)
    found = network.windows("start")
    return [(found[n][0] or 0, found[n][1] or 0) for n in range(len(chain.visits))]


def links_of(chain: Chain, problem: Problem) -> list[tuple[int, int, int]]:
    """Give the longest times from visit to visit that links ask for, in slots; -1 is minute 0."""
    found = []
    for link in chain.lot.links:
        second = moment_of(chain, link.second, end=link.second_end)
        if second is None or second[0] < 0:
            continue
        first = moment_of(chain, link.first, end=link.first_end)
        if first is not None and first[0] >= 0:
            found.append((first[0], second[0], link.most // problem.grid + first[1] - second[1]))
            continue
        since = _recorded(chain, link.first, end=link.first_end)
        if since is not None and since + link.most >= 0:
            found.append((-1, second[0], (since + link.most) // problem.grid - second[1]))
    return found


def _recorded(chain: Chain, name: str, *, end: bool) -> int | None:
    """Give the minute of a start or end that is fixed; None if it is not known."""
    if name in chain.places:
        return chain.since
    fact = chain.lot.facts.get(name)
    return None if fact is None else fact.end if end else fact.start
