"""Tries changes of a problem by planning: what is offered as a way out is a plan in hand."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from studio_log.language.words import listed, tr, tr_later
from studio_log.planning.change_kinds import Change
from studio_log.planning.change_words import change_words
from studio_log.planning.changes import apply_change, changed_if_can
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.ends import least_late
from studio_log.planning.lates import minutes_late
from studio_log.planning.plain_words import about_words
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.pricing import price_of
from studio_log.planning.problem import Lot, Plan, Problem, Score, Span
from studio_log.planning.score import Lateness, dues_late, end_of
from studio_log.planning.sessions import sessions_of
from studio_log.planning.solver import Cheap
from studio_log.planning.why_reasons import Reason, Reasons, Told, Way, in_order

TRIES: Final = 30
"""Tries to better each plan that a change leads to."""

MANY_LOTS: Final = 25
"""With more of them a plan starts from the one there is: one from new takes too long."""
WORTH: Final = 0.9


@dataclass(slots=True)
class Trial:
    """A problem, the plan it has, and how long to try."""

    problem: Problem
    plan: Plan | None = None
    stop: Callable[[], bool] = lambda: False
    tries: int = TRIES
    seed: int = 1
    told: Told = lambda _: None
    found: list[Way] = field(default_factory=list)
    reasons: tuple[Reason, ...] = ()

    def likely(self, some: Iterable[tuple[Change, ...]]) -> list[tuple[Change, ...]]:
        """Give those changes that can make a plan better, those that can most first."""
        found: list[tuple[int, int, int, tuple[Change, ...]]] = []
        for changes in some:
            changed = changed_if_can(self.problem, changes)
            if changed is not None and not self.stop():
                least = least_late(changed)
                price = price_of(self.problem, changes)[0]
                found.append((least, price, len(found), changes))
        found.sort(key=lambda one: one[:3])
        return [one[-1] for one in found if self.plan is None or self._worth(one[0])]

    def offer(
        self,
        changes: tuple[Change, ...],
        tries: int | None = None,
        cheap: Cheap | None = None,
        *,
        whole: bool = False,
    ) -> Way | None:
        """Plan with changes; keep, tell and give the way out if it has a plan that is better.

        A solver that found it has its own plan of it, which is looked at first. `whole`: only one
        that keeps all dates counts.
        """
        again = next((one for one in self.found if set(one.changes) == set(changes)), None)
        changed = changed_if_can(self.problem, changes) if again is None else None
        if changed is None:
            return again
        known = self.plan if cheap is None else cheap.plan
        few = self.tries if tries is None else min(tries, self.tries)
        plan = self._planned(changed, few, known)
        if plan is None or not self._better(plan) or (whole and plan.score.late):
            return None
        price, price_words = price_of(self.problem, changes, plan)
        before = None if self.plan is None else minutes_late(self.problem, self.plan)
        words = listed(_in_turn(self.problem, changes))
        achieves = achieved(changed, plan, before)
        least = cheap is not None and cheap.least and not plan.score.late
        way = Way(changes, words, price, price_words, achieves, plan, least)
        self.found.append(way)
        self.told(self.so_far)
        return way

    def say(self, reasons: tuple[Reason, ...]) -> None:
        """Keep the reasons, and tell of them."""
        self.reasons = reasons
        self.told(self.so_far)

    @property
    def so_far(self) -> Reasons:
        """Give the reasons, and the ways out that were found."""
        return Reasons(self.reasons, in_order(self.found))

    def _better(self, plan: Plan) -> bool:
        return self.plan is None or self._worth(plan.score.late)

    def _worth(self, late: int) -> bool:
        """Say whether so much lateness is worth a price: less by a tenth at least."""
        return self.plan is None or late <= WORTH * self.plan.score.late

    def _planned(self, changed: Problem, tries: int, known: Plan | None) -> Plan | None:
        """Give the better of the places known, where they are good still, and a plan from new."""
        kept = None if known is None else same_places(changed, known)
        if kept is not None and not kept.score.late:
            return kept
        least = least_late(changed)
        if self.stop() or (self.plan is not None and not self._worth(least)):
            return None
        best = [10**12]

        def stop() -> bool:
            return self.stop() or best[0] <= least

        def on_better(plan: Plan) -> None:
            best[0] = plan.score.late

        keep = self.plan if len(changed.lots) > MANY_LOTS else None
        made = plan_studio(changed, Effort(stop, tries, self.seed, on_better), keep).plan
        plans = [one for one in (kept, made) if one is not None]
        return min(plans, key=lambda one: one.score.parts(), default=None)


def _in_turn(problem: Problem, changes: Iterable[Change]) -> list[str]:
    """Give the words of changes, each as the problem stands after those before it."""
    said = []
    for one in changes:
        said.append(change_words(problem, one))
        problem = apply_change(problem, one)
    return said


def same_places(problem: Problem, plan: Plan) -> Plan | None:
    """Give a plan with all steps where they were, scored anew; None where that breaks a rule."""
    spans = {lot.name: plan.spans[lot.name] for lot in problem.lots if lot.name in plan.spans}
    ends = {lot.name: end_of(lot, spans.get(lot.name, {})) for lot in problem.lots}
    lateness = Lateness(problem)
    late = lateness.of_goals(ends) + dues_late(problem.lots, spans)
    vessels = {name: own for name, own in plan.vessels.items() if name in spans}
    fine = sum(_fine(lot, spans[lot.name], ends[lot.name]) for lot in problem.lots
               if lot.name in spans)  # fmt: skip
    made = replace(plan, spans=spans, vessels=vessels, serves=lateness.serves(ends))
    sessions = len(sessions_of(problem, made))
    made = replace(made, score=Score(late, sessions, fine))
    return None if violations(problem, made) else made


def _fine(lot: Lot, spans: Mapping[str, Span], end: int) -> int:
    """Give the minutes off target and to taking down of one lot."""
    off = sum(
        abs(spans[one.name].end - spans[one.name].start - one.target)
        for one in lot.steps
        if one.name in spans and one.target is not None and one.hands is None
    )
    return off + end * any(one.name in spans and not one.cure for one in lot.steps)


def achieved(problem: Problem, plan: Plan, before: int | None) -> str:
    """Say what a plan is worth, beside one that was so many minutes late."""
    dates = len(problem.goals) + sum(one.due is not None for one in problem.lots)
    late = minutes_late(problem, plan)
    text = _WORTH[dates > 1, before is None]
    if not late:
        text = _IN_TIME[before is None]
    if before is None and not dates:
        text = tr_later("then there is a plan")
    return tr(text, late=about_words(late), before=about_words(before or 0))


_IN_TIME: Final = {
    False: tr_later("no date is late then"),
    True: tr_later("then there is a plan, and no date is late"),
}
"""By whether it is the first plan there is."""
_WORTH: Final = {
    (False, False): tr_later("{late} late instead of {before}"),
    (True, False): tr_later("{late} late instead of {before}, all dates together"),
    (False, True): tr_later("then there is a plan, and it is {late} late"),
    (True, True): tr_later("then there is a plan, and it is {late} late, all dates together"),
}
"""By whether there are several dates, and whether it is the first plan there is."""
