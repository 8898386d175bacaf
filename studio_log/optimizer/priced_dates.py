"""Dates of a priced model: all of them are kept, once enough was asked for."""

from dataclasses import dataclass
from functools import partial
from typing import Final

from ortools.sat.python import cp_model

from studio_log.optimizer.model import Line
from studio_log.optimizer.priced import SCALE, PricedModel, Value
from studio_log.planning.change_kinds import Change, GoalCured, GoalPieces, LaterDue, LaterGoal
from studio_log.planning.plain_words import DAY
from studio_log.planning.pricing import price_of
from studio_log.planning.problem import Goal

MOST_LATER: Final = 90
"""Days by which a date moves at most."""


@dataclass(frozen=True, slots=True)
class _Eased:
    """How a goal is made easier: days later, pieces fewer, and pieces cured so many days less."""

    later: cp_model.IntVar
    fewer: cp_model.IntVar
    short: cp_model.IntVar
    days: cp_model.IntVar


class PricedDates:
    """Adds the dates of a problem to a priced model."""

    def __init__(self, own: PricedModel) -> None:
        self.own, self.model = own, own.model
        self.studio = own.frame.studio
        self._serving: dict[str, list[cp_model.IntVar]] = {}
        for goal in own.plain.goals:
            self._goal(goal)
        for name, some in self._serving.items():
            self.model.add(sum(some) <= self.studio.lateness.pieces[name])
        for name, (due, weight) in self.studio.lateness.dues.items():
            if name in self.studio.chains and weight:
                self._due(name, due)

    def _end(self, name: str) -> Line:
        """Give the minute at which a lot is taken down."""
        starts = self.own.starts.get(name)
        if starts is None:
            return self.studio.ended[name]
        last = self.studio.chains[name].visits[-1].length
        return self.own.plain.grid * (starts[-1] + last)

    def _days(self, most: int, *, may: bool) -> cp_model.IntVar:
        return self.model.new_int_var(0, most if may else 0, "")

    def _goal(self, goal: Goal) -> None:
        options, cured = self.own.options, goal.cured // DAY
        eased = _Eased(
            later=self._days(MOST_LATER, may=options.dates),
            fewer=self._days(goal.pieces - 1, may=options.pieces),
            short=self._days(goal.pieces, may=options.cured and cured > 1),
            days=self._days(max(0, cured - 1), may=options.cured),
        )
        whole, short = list[Line](), list[Line]()
        for name in dict.fromkeys(goal.lots):
            if self.studio.lateness.pieces[name]:
                behind = self._end(name) + goal.cured - goal.at - DAY * eased.later
                whole.append(self._taken(goal, name, behind))
                short.append(self._taken(goal, name, behind - DAY * eased.days))
        self.model.add(sum(whole) + sum(short) == goal.pieces - eased.fewer)
        self.model.add(sum(short) == eased.short)
        self._pay(goal, eased)

    def _taken(self, goal: Goal, name: str, behind: Line) -> cp_model.IntVar:
        """Give the pieces of a lot that a goal takes; none while the lot is not ready for it."""
        most = min(goal.pieces, self.studio.lateness.pieces[name])
        taken, any_ = self.model.new_int_var(0, most, ""), self.model.new_bool_var("")
        self.model.add(taken <= most * any_)
        self.model.add(behind <= 0).only_enforce_if(any_)
        self._serving.setdefault(name, []).append(taken)
        return taken

    def _pay(self, goal: Goal, eased: _Eased) -> None:
        """Let easing a goal have its price; a piece cured less costs for each day that it lacks."""
        own, name, cured = self.own, goal.name, goal.cured // DAY
        if own.options.dates:
            used = own.used(eased.later, MOST_LATER)
            own.pay(lambda days: LaterGoal(name, days * DAY), eased.later, used)
        if own.options.pieces and goal.pieces > 1:
            used = own.used(eased.fewer, goal.pieces)
            own.pay(lambda count: GoalPieces(name, goal.pieces - count), eased.fewer, used)
        if own.options.cured and cured > 1:
            most = goal.pieces * cured
            lacking = self.model.new_int_var(0, most, "")
            self.model.add_multiplication_equality(lacking, [eased.short, eased.days])
            used = own.used(eased.short, goal.pieces)
            first, second = (price_of(own.plain, (GoalCured(name, 1, cured - days),))[0]
                             for days in (1, 2)) if cured > 2 else (120, 180)  # fmt: skip
            own.costs.append(SCALE * (second - first) * lacking)
            own.costs.append(SCALE * (2 * first - second) * used)
        for change in (self._later, self._fewer, self._short):
            own.say(partial(change, goal, eased))

    @staticmethod
    def _later(goal: Goal, eased: _Eased, value: Value) -> Change | None:
        return LaterGoal(goal.name, DAY * value(eased.later)) if value(eased.later) else None

    @staticmethod
    def _fewer(goal: Goal, eased: _Eased, value: Value) -> Change | None:
        fewer = value(eased.fewer)
        return GoalPieces(goal.name, goal.pieces - fewer) if fewer else None

    @staticmethod
    def _short(goal: Goal, eased: _Eased, value: Value) -> Change | None:
        pieces, days = value(eased.short), value(eased.days)
        if not pieces or not days:
            return None
        return GoalCured(goal.name, pieces, goal.cured // DAY - days)

    def _due(self, name: str, due: int) -> None:
        """Let a lot be over by its own date, or by a later one."""
        own = self.own
        later = self._days(MOST_LATER, may=own.options.dates)
        self.model.add(self._end(name) + self.studio.lateness.cure[name] <= due + DAY * later)
        if own.options.dates:
            own.pay(lambda days: LaterDue(name, days * DAY), later, own.used(later, MOST_LATER))
            own.say(lambda value: LaterDue(name, DAY * value(later)) if value(later) else None)
