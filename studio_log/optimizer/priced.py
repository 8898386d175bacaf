"""The model of a studio in which more may be asked for, at a price for each thing that is.

Prices are those of `planning.pricing`, read off it at two points, as far as they are straight
lines; the few minutes by which rounding there differs are nobody's trouble.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, time, timedelta
from functools import partial
from typing import Final

from ortools.sat.python import cp_model
from typing_extensions import override

from studio_log.optimizer.frame import Frame
from studio_log.optimizer.model import Line, Part, StudioModel
from studio_log.optimizer.options import LEAST_COMING, QUARTER, Longer, Options
from studio_log.planning.chain import Chain, links_of
from studio_log.planning.change_kinds import (
    AddSession,
    Change,
    LongerPause,
    LongerStep,
    MoreBurners,
    MoreHands,
    MoreLine,
)
from studio_log.planning.changes import link_ends, lot_of
from studio_log.planning.pricing import price_of
from studio_log.planning.problem import THOUSANDTHS, Lot, Problem

SCALE: Final = 20
"""Of a price in the model, so that a minute's share of it is whole."""
_THINGS: Final[dict[str, Callable[[int], Change]]] = {
    "line": lambda count: MoreLine(count * THOUSANDTHS), "burner": MoreBurners, "hands": MoreHands,
}  # fmt: skip
"""By store, the change that asks for so much more of it."""
Value = Callable[[cp_model.IntVar], int]
"""Gives what a variable is in a solution."""
Said = Callable[[Value], Change | None]
"""Gives the change that asks for just as much of an option as a solution uses, if any."""


class PricedModel(StudioModel):
    """Lots, rules, and what may be asked for; `cost` is to be made small."""

    def __init__(self, frame: Frame, part: Part, plain: Problem, options: Options) -> None:
        self.plain, self.options = plain, options
        self.costs: list[Line] = []
        self.said: list[Said] = []
        self._more: dict[str, cp_model.IntVar] = {}
        self._extra: dict[str, cp_model.IntVar] = {}
        super().__init__(frame, part)
        self._comings()
        for change in options.longer:
            self._longer(change)

    @property
    def cost(self) -> Line:
        """Give the price of all that is asked for, in the units of `SCALE`."""
        return sum(self.costs)

    def pay(self, change: Callable[[int], Change], amount: Line, used: Line) -> None:
        """Let an amount be paid for: what it costs at all, and what for each of it."""
        first, second = (price_of(self.plain, (change(count),))[0] for count in (1, 2))
        self.costs.append(SCALE * (second - first) * amount)
        self.costs.append(SCALE * (2 * first - second) * used)

    def used(self, amount: cp_model.IntVar, most: int) -> cp_model.IntVar:
        """Give whether any of an amount is asked for."""
        used = self.model.new_bool_var("")
        self.model.add(amount <= most * used)
        return used

    # -- things --------------------------------------------------------------------------

    @override
    def _room(self, store: str) -> tuple[Line, int]:
        """Give how much there is with what is asked for, and at most."""
        room, most = super()._room(store)
        if store in _THINGS:
            had = self.plain.stores.get(store, THOUSANDTHS * (store == "hands"))
            count = (most - had) // THOUSANDTHS
            more = THOUSANDTHS * self._counted(store, count) if count else 0
            return had + more, most
        if store in self.frame.problem.stores:
            return room, most
        own = {one.name for one in self.plain.vessels}
        extra = [name for name in self.frame.alike[int(store)].names if name not in own]
        if not extra:
            return room, most
        held = self.model.new_int_var(0, most, "")
        self.model.add(held == room - len(extra) + sum(self._vessels(extra)))
        return held, most

    def _counted(self, store: str, most: int) -> cp_model.IntVar:
        """Give how many more of a store are asked for."""
        if store not in self._more:
            count = self._more[store] = self.model.new_int_var(0, most, f"more {store}")
            change = _THINGS[store]
            self.pay(change, count, self.used(count, most))
            self.say(lambda value: change(value(count)) if value(count) else None)
        return self._more[store]

    def _vessels(self, names: list[str]) -> list[cp_model.IntVar]:
        """Give for each vessel that there is not yet whether it is asked for, one by one."""
        sizes = {one.name: one for one in self.frame.problem.vessels}
        found: list[cp_model.IntVar] = []
        for name in names:
            wanted = self.model.new_bool_var(f"more {name}")
            vessel = sizes[name]
            change = next(one for one in self.options.vessels
                          if (one.kind, one.size) == (vessel.kind, vessel.size))  # fmt: skip
            self.costs.append(SCALE * price_of(self.plain, (change,))[0] * wanted)
            self.say(partial(_if_wanted, wanted, change))
            if found:
                self.model.add_implication(wanted, found[-1])
            found.append(wanted)
        return found

    def say(self, value: Said) -> None:
        """Have a change read off a solution."""
        self.said.append(value)

    # -- hours ---------------------------------------------------------------------------

    def _comings(self) -> None:
        """Let somebody come for as long as visits need it, in quarters of an hour."""
        clock, grid = self.plain.clock, self.plain.grid
        by_start = {one.start: number for number, one in enumerate(self.frame.windows)}
        for one in self.options.comings:
            opens = clock.minute(datetime.combine(one.day, time()) + timedelta(minutes=one.begins))
            number = by_start.get(-(-opens // grid))
            if number in self.sessions:
                self._coming(one, number, opens)

    def _coming(self, one: AddSession, number: int, opens: int) -> None:
        grid, session = self.plain.grid, self.sessions[number]
        quarters = (one.ends - one.begins) // QUARTER
        begins = self.model.new_int_var(0, quarters, "")
        length = self.model.new_int_var(0, quarters, "")
        self.model.add(begins + length <= quarters)
        self.model.add(QUARTER * length >= LEAST_COMING).only_enforce_if(session)
        for name, inside in self.inside.items():
            for visit, places in enumerate(inside):
                if number not in places:
                    continue
                at = grid * self.starts[name][visit] - opens
                till = at + grid * self.frame.studio.chains[name].visits[visit].length
                literal = places[number]
                self.model.add(at >= QUARTER * begins).only_enforce_if(literal)
                self.model.add(till <= QUARTER * (begins + length)).only_enforce_if(literal)

        def change(count: int, first: int = 0) -> AddSession:
            start = one.begins + QUARTER * first
            return replace(one, begins=start, ends=start + QUARTER * count)

        self.pay(change, length, session)
        self.say(lambda value: change(value(length), value(begins)) if value(session) else None)

    # -- longest times -------------------------------------------------------------------

    def _longer(self, change: Longer) -> None:
        """Let a longest time be stretched, by minutes."""
        lot = lot_of(self.plain, change.lot)
        placed = lot.name in self.starts
        over = self._over(lot, self.frame.studio.chains[lot.name], change) if placed else []
        if not over:
            return
        minutes = self.model.new_int_var(0, change.minutes, "")
        for line in over:
            self.model.add(minutes >= line)
        used = self.used(minutes, change.minutes)
        none, most = (price_of(self.plain, (replace(change, minutes=one),))[0]
                      for one in (0, change.minutes))  # fmt: skip
        self.costs.append(SCALE * none * used)
        self.costs.append(max(1, SCALE * (most - none) // change.minutes) * minutes)
        self.say(lambda value: replace(change, minutes=value(minutes)) if value(minutes) else None)

    def _over(self, lot: Lot, chain: Chain, change: Longer) -> list[Line]:
        """Give by how many minutes a longest time is passed, as lines; none where it is over."""
        if isinstance(change, LongerStep):
            most = next(one.most for one in lot.steps if one.name == change.step) or 0
            return self._over_between(chain, most, _number_of(chain, change.step))
        if isinstance(change, LongerPause):
            most = next(one.then_within for one in lot.steps if one.name == change.step)
            return self._over_between(chain, most, _behind(chain, change.step))
        grid, found = self.plain.grid, list[Line]()
        for link in lot.links:
            if link_ends(link) != (change.first, change.second):
                continue
            alone = replace(chain, lot=replace(lot, links=(link,)))
            for first, second, most in links_of(alone, self.plain):
                begin: Line = 0 if first < 0 else self.starts[lot.name][first]
                rest = most - link.most // grid
                found.append(grid * (self.starts[lot.name][second] - begin - rest) - link.most)
        return found

    def _over_between(self, chain: Chain, most: int, number: int | None) -> list[Line]:
        if number is None:
            return []
        grid, name = self.plain.grid, chain.lot.name
        if number < 0:
            return [grid * self.starts[name][0] - chain.since - most]
        return [grid * self.gaps[name, number] - most]


def _if_wanted(wanted: cp_model.IntVar, change: Change, value: Value) -> Change | None:
    return change if value(wanted) else None


def _number_of(chain: Chain, step: str) -> int | None:
    """Give between which visits a step goes by itself; -1 is before the first."""
    if chain.opening is not None and chain.opening.step == step:
        return -1
    return next((n for n, one in enumerate(chain.betweens) if one.step == step), None)


def _behind(chain: Chain, step: str) -> int | None:
    """Give between which visits the pause behind a step lies."""
    for number, between in enumerate(chain.betweens):
        if between.step is not None:
            continue
        steps = chain.visits[number].steps
        before = steps[-1][0] if steps else chain.betweens[number - 1].step if number else None
        if before == step:
            return number
    return None
