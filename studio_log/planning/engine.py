"""Makes a first plan for all lots: the tightest first, each placed exactly among those before."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product
from typing import Final

from studio_log.language.words import tr
from studio_log.planning.board import Board, Placement
from studio_log.planning.chain import NEVER, Chain, chain_of, windows_of_chain
from studio_log.planning.linked import place_lot
from studio_log.planning.made_for import mark_of
from studio_log.planning.milk_limits import MilkLimits
from studio_log.planning.milk_room import roomy
from studio_log.planning.placing import choices_fit, place
from studio_log.planning.problem import Problem
from studio_log.planning.score import Lateness, end_of
from studio_log.planning.stn import LoopError
from studio_log.planning.wish import NOTHING_OLD, Old, Wish

SESSION: Final = 10**9
"""The price of a session that is above any sum of fine minutes."""
LATE: Final = 10**17
"""The price of a minute late, above any number of sessions and of moved visits."""
MOVED: Final = 10**15
"""The most that a moved visit costs while one lot is placed."""
EARLY_SESSION: Final = 12 * 60
"""In a first plan a session is worth so many minutes of one lot's waiting."""
FIRST_LOOK: Final = 14 * 1440
"""Minutes; where nothing is found in them, twice as many are looked at."""
Limits = list[tuple[int, int]]
Key = tuple[int, int, int]
"""Lots without a place, minutes late, and the price of sessions, moved visits and fine minutes."""


@dataclass(frozen=True, slots=True)
class Prices:
    """What a session and a moved visit cost, in minutes off target or of waiting."""

    session: int = SESSION
    moved: int = 0
    tolerated: int = 0
    """So many minutes late cost `late` each and no more: an old plan was late already."""
    late: int = 0


@dataclass(frozen=True, slots=True)
class Impossible:
    """A lot that has no place, whatever becomes of the others; `words` say why."""

    lot: str
    words: str


class Studio:
    """A problem made ready: chains, limits, the board, and what each state of it is worth."""

    def __init__(self, problem: Problem, stop: Callable[[], bool]) -> None:
        self.problem, self.stop = problem, stop
        worth = problem.session_worth
        self.prices = Prices(SESSION if worth is None else worth)
        self.old: dict[str, Old] = {}
        """Where an old plan had the lots, if there is one to keep to."""
        self.mark = mark_of(problem)
        self.board = Board(problem)
        self.lateness = Lateness(problem)
        self.chains: dict[str, Chain] = {}
        self.limits: dict[str, Limits] = {}
        self.ended: dict[str, int] = {}
        self.impossible: list[Impossible] = []
        self.looked: dict[int, int] = {}
        """By earliest slot, how many minutes behind it the last such lot was placed."""
        for lot in problem.lots:
            chain = chain_of(problem, lot)
            if chain is None:
                self.ended[lot.name] = end_of(lot, {})
                continue
            self.chains[lot.name] = chain
            try:
                self.limits[lot.name] = windows_of_chain(chain, problem)
            except LoopError as loop:
                self.impossible.append(Impossible(lot.name, loop_words(chain, loop)))
        self.milks = MilkLimits(problem, self.chains)
        self.milks.occupy(self.board)
        self.whole = {name: list(limits) for name, limits in self.limits.items()}
        """The limits of the lots by themselves."""
        for name in self.whole if self.milks.ready else ():
            if self.milks.lost(name, self.whole, self.board):
                self.impossible.append(Impossible(name, milk_words(name)))

    def ends(self, without: str = "") -> dict[str, int]:
        """Give the ends of all lots that have a place."""
        placed = self.board.placed.items()
        return self.ended | {name: one.end for name, one in placed if name != without}

    def moved(self) -> int:
        """Give how many visits by hand are not where the old plan had them."""
        return sum(len(self.moved_visits(name)) for name in self.board.placed if name in self.old)

    def moved_visits(self, name: str) -> list[int]:
        """Give the visits of a lot which are not where the old plan had them."""
        visits, starts = self.chains[name].visits, self.board.placed[name].starts
        rows = enumerate(zip(visits, starts, self.old[name].slots, strict=True))
        return [n for n, (visit, at, was) in rows if visit.length and was not in (None, at)]

    def key(self) -> Key:
        """Give what the board is worth, smallest first."""
        ends = self.ends()
        missing = len(self.chains) - len(self.board.placed)
        late = self.lateness.of_goals(ends) if not missing else 0
        late += sum(self.lateness.of_due(name, end) for name, end in ends.items()
                    if name in self.chains)  # fmt: skip
        fine = sum(one.fine for one in self.board.placed.values())
        prices = self.prices
        price = prices.session * self.board.sessions() + fine
        if self.old:
            price += prices.moved * self.moved() + prices.late * min(late, prices.tolerated)
        return missing, max(0, late - prices.tolerated), price

    def late_price(self, name: str) -> Callable[[int], int]:
        """Give the price of a lot's end, all others as they are; 0 while goals are not filled."""
        lateness, others = self.lateness, self.ends(name)
        whole = len(others) == len(self.problem.lots) - 1 and name in lateness.wanted
        prices = self.prices

        def price(end: int) -> int:
            late = lateness.of_due(name, end)
            if whole:
                late += lateness.of_goals(others | {name: end})
            more = max(0, late - prices.tolerated)
            return more * LATE + (late - more) * min(prices.late, SESSION)

        return price

    def sessions(self, price: int) -> list[int]:
        """Give the price of a visit in each window: nothing where somebody comes anyway."""
        visits = self.board.visits
        return [0 if visits.get(n, 0) > 0 else price for n in range(len(self.board.windows))]

    def try_place(
        self,
        name: str,
        sessions: list[int],
        limits: Limits,
        old: Old | None = None,
        stride: int = 1,
        *,
        roomy_only: bool = False,
    ) -> Placement | None:
        """Give the best place for a lot within limits, without putting it there.

        One that makes milk for others first where it leaves them room; `roomy_only` nowhere else.
        """
        if self.milks.ready:
            cut = self.milks.cut(name, limits, self.board, self.whole)
            if cut is None:
                return None
            limits = cut
        known = old or self.old.get(name, NOTHING_OLD)
        late, moved = self.late_price(name), min(MOVED, self.prices.moved)
        wish = Wish(sessions, late, limits, self.stop, known, moved, stride)
        for starts in self._roomy_starts(name, wish) if self.milks.ready else ():
            exact = replace(wish, limits=[(at, at) for at in starts])
            found = place_lot(self.chains[name], self.problem, self.board, exact)
            if found is not None:
                return found[1]
        if roomy_only:
            return None
        found = place_lot(self.chains[name], self.problem, self.board, wish)
        return None if found is None else found[1]

    def _roomy_starts(self, name: str, wish: Wish) -> Iterator[tuple[int, ...]]:
        """Give where a lot leaves room for those which its milk serves; nothing for no such."""
        followed = self.milks.followed(name, self.board.placed, self.chains)
        for chain, visit, off in roomy(self.chains[name], followed, self.problem.grid):
            found = place_lot(chain, self.problem, self.board, wish)
            if found is not None:
                starts = found[1].starts
                yield (*starts[:visit], starts[visit] + off, *starts[visit + 1 :])

    def first_place(self, name: str, price: int) -> Placement | None:
        """Give a good early place: some days are looked at, then ever more of them.

        First those about where the last lot of the same release went, since what lies before
        them is full; then all from the release on, twice as many each time.
        """
        whole, horizon = self.limits[name], self.problem.horizon
        earliest, sessions = whole[0][0], self.sessions(price)
        hint = self.looked.get(earliest, 0)
        spans = [(max(0, hint - FIRST_LOOK), hint + FIRST_LOOK)]
        reach = FIRST_LOOK
        while reach < 2 * horizon:
            spans.append((0, reach))
            reach *= 2
        spans.append((0, 2 * horizon))
        serves = bool(self.milks.followed(name, self.board.placed, self.chains))
        for roomy_only, (since, until) in product((True, False) if serves else (False,), spans):
            if self.stop():
                return None
            low, high = (earliest + one // self.problem.grid for one in (since, until))
            limits = [(max(one, low), min(other, high)) for one, other in whole]
            found = self.try_place(name, sessions, limits, roomy_only=roomy_only)
            if found is not None:
                self.looked[earliest] = (found.starts[0] - earliest) * self.problem.grid
                return found
        return None

    def order(self) -> list[str]:
        """Give the lots, tightest first: running ones by their last moment, then by date."""
        first = min((goal.at - goal.cured for goal in self.problem.goals), default=NEVER)

        def tightness(name: str) -> tuple[int, int, int]:
            chain = self.chains[name]
            if chain.opening is not None:
                return 0, min(NEVER, chain.since + chain.opening.most), 0
            due = NEVER if chain.lot.due is None else chain.lot.due
            wanted = first if name in self.lateness.wanted else NEVER
            return 1, min(due, wanted), chain.lot.release

        return self._makers_first(sorted(self.chains, key=tightness))

    def _makers_first(self, order: list[str]) -> list[str]:
        """Let who makes a milk come before those who use it."""
        found: dict[str, None] = {}

        def add(name: str, above: tuple[str, ...]) -> None:
            for maker in self.milks.makers(name):
                if maker not in above and maker in self.chains:
                    add(maker, (*above, name))
            found.setdefault(name)

        for name in order:
            add(name, (name,))
        return list(found)

    def clear(self) -> None:
        """Take every lot off the board."""
        for name in list(self.board.placed):
            self.board.take(name)

    def fill(self, order: list[str], price: int) -> str | None:
        """Place all lots in an order; gives the first that finds no place, None if all do."""
        for name in order:
            found = self.first_place(name, price)
            if found is None:
                return name
            self.board.put(name, found)
        return None

    def fill_most(self) -> list[str]:
        """Place as many lots as find a place, the tightest first; gives those that find none."""
        self.clear()
        missed = []
        for name in self.order():
            found = self.first_place(name, min(EARLY_SESSION, self.prices.session))
            if found is None:
                missed.append(name)
            else:
                self.board.put(name, found)
        return missed

    def first_plan(self) -> bool:
        """Place all lots; one that finds no place goes first and all are placed again.

        Gives whether all are placed. A lot that finds none even alone is `impossible`.
        """
        if self.impossible:
            return False
        order = self.order()
        for _ in range(2 * len(order) + 2):
            self.clear()
            missed = self.fill(order, min(EARLY_SESSION, self.prices.session))
            if missed is None:
                return True
            if self.stop():  # what is missing then was not looked for
                return False
            if order[0] == missed:
                self._alone(missed)
                return False
            order.remove(missed)
            order.insert(0, missed)
        return False

    def _alone(self, name: str) -> None:
        """See whether a lot has no place even alone, its links left out; then it is impossible."""
        self.clear()
        sessions = [0] * len(self.board.windows)
        wish = Wish(sessions, lambda _: 0, self.limits[name], self.stop)
        whole = choices_fit(self.chains[name], self.problem)
        found = place(self.chains[name], self.problem, self.board, wish)
        if whole and found is None and not self.stop():
            self.impossible.append(Impossible(name, alone_words(self.chains[name])))

    def put_back(self, placements: Mapping[str, Placement]) -> None:
        """Put the board as it was."""
        for name in list(self.board.placed):
            if self.board.placed[name] is not placements.get(name):
                self.board.take(name)
        for name, one in placements.items():
            if name not in self.board.placed:
                self.board.put(name, one)


def loop_words(chain: Chain, loop: LoopError) -> str:
    """Say that a lot's limits contradict each other."""
    named = [one for one in loop.points if isinstance(one, int)]
    visits = [chain.visits[one].steps[0][0] for one in sorted(named) if chain.visits[one].steps]
    if not visits:
        return tr(
            "{lot} cannot be done: its shortest times together are longer than the longest times, "
            "the recorded moments or the horizon allow. Nothing was planned.",
            lot=chain.lot.name,
        )
    return tr(
        "{lot} cannot be done: its shortest times together (about {steps}) are longer than the "
        "longest times, the recorded moments or the horizon allow. Nothing was planned.",
        lot=chain.lot.name,
        steps=", ".join(dict.fromkeys(visits)),
    )


def milk_words(name: str) -> str:
    """Say that a lot and a milk do not come together."""
    return tr(
        "{lot} cannot be done with the milk that it is to use or make: it is no longer good, or "
        "not made, whenever the lots that share it could come. Give the lot another milk. Nothing "
        "was planned.",
        lot=name,
    )


def alone_words(chain: Chain) -> str:
    """Say that a lot has no place in the hours, even alone."""
    name = chain.lot.name
    if chain.opening is not None and chain.opening.step is not None:
        return tr(
            "{lot} cannot be done in these hours, even if everything else were free: {step} is "
            "running, and no working hours fall in time for what follows.",
            lot=name,
            step=chain.opening.step,
        )
    return tr(
        "{lot} cannot be done in these hours and days, even if everything else were free.", lot=name
    )
