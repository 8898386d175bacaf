"""Plans a studio's problem: our own engine first, then the solver on parts and on the whole.

Parts are groups of lots, days, and all lots about where they are; the whole gives the proofs.
Each run of the solver is a try, with a measure of work that the clock does not touch: so the same
problem, seed and number of tries give the same plan.
"""

from dataclasses import dataclass, replace
from random import Random
from typing import TYPE_CHECKING, Final

from studio_log.optimizer.cuts import add_cuts
from studio_log.optimizer.frame import Frame
from studio_log.optimizer.levels import Levels, Places, Reached
from studio_log.optimizer.model import Part
from studio_log.optimizer.neighbours import NEAR_DAYS, Neighbours
from studio_log.optimizer.solving import Measure
from studio_log.planning.bounds import Bound, bound_of
from studio_log.planning.effort import Effort
from studio_log.planning.engine import Studio
from studio_log.planning.improving import Improver
from studio_log.planning.plan_studio import checked, placed_by, plan_of
from studio_log.planning.problem import Plan, Score
from studio_log.planning.settling import settle

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

OWN_FIRST: Final = 8
"""Tries of our own engine for each lot, before the solver is asked."""
OWN_BETWEEN: Final = 1
"""And between two parts that the solver plans anew."""
PART_WORK: Final = 0.2
"""Measure of work for each level of a part."""
NEAR_WORK: Final = 1.0
"""For all lots about where they are, at first; later runs have ever more."""
NEAR_GROWTH: Final = 1.5
WHOLE_WORK: Final = 2.0
"""For each level of the whole, at first; later runs have ever more."""
WHOLE_GROWTH: Final = 1.7
SMALL: Final = 3200
"""Visits times the sessions each may be in; up to so many, the whole is looked at first."""
PARTS_IN_TURN: Final = 8
"""Parts that are planned anew between two looks at all lots together."""


Value = tuple[int, int]
"""Minutes late, and the price of sessions, moved visits and fine minutes; smallest first."""


@dataclass(frozen=True, slots=True)
class Best:
    """The best plan so far, its places, and what it is worth."""

    plan: Plan
    places: Places
    value: Value


class Search:
    """Holds the best plan and what is proved of it."""

    def __init__(self, studio: Studio, effort: Effort, workers: int) -> None:
        self.studio, self.effort = studio, effort
        self.frame = Frame(studio)
        self.neighbours = Neighbours(self.frame, effort.seed)
        self.random = Random(effort.seed)  # noqa: S311 - chance, not secrecy
        self.measure = Measure(
            workers=workers, seed=effort.seed, repeatable=effort.tries is not None
        )
        self.best: Best | None = None
        self.bounds = {"late": 0, "sessions": 0, "fine": 0}
        self._least = Bound(0, 0, 0)
        """What no plan is below, whatever becomes of the parts before."""
        self.proved: set[str] = set()
        self._improver: Improver | None = None
        self._from_own: Best | None = None
        """The best plan when our own engine was last at work."""
        self.infeasible = False
        self.tries = self._wholes = 0
        self._whole_work, self._near_work = WHOLE_WORK, NEAR_WORK

    # -- what is known -------------------------------------------------------------------

    def take(self, places: Places) -> None:
        """Take a plan if it is better than the best; every one goes through the checker."""
        studio = self.studio
        plan = plan_of(studio, places)
        prices = studio.prices
        price = prices.session * plan.score.sessions + prices.moved * self._moved(places)
        value = (plan.score.late, price + plan.score.fine)
        before = self.best
        if before is not None and value >= before.value:
            return
        self.best = Best(checked(studio.problem, plan), dict(places), value)
        if before is not None:
            self._forget(before.plan.score, plan.score)
        self.effort.on_better(plan)

    def _moved(self, places: Places) -> int:
        """Give how many visits by hand are not where an old plan had them."""
        found = 0
        for name, old in self.studio.old.items():
            visits = self.studio.chains[name].visits
            rows = zip(visits, places[name].starts, old.slots, strict=True)
            found += sum(visit.length > 0 and was not in (None, at) for visit, at, was in rows)
        return found

    def _forget(self, old: Score, new: Score) -> None:
        """Forget what was proved on the ground of a part that is less now."""
        if new.late < old.late:
            self.bounds["sessions"] = self._least.sessions
            self.proved.discard("sessions")
        if new.late < old.late or new.sessions != old.sessions:
            self.bounds["fine"] = self._least.fine
            self.proved.discard("fine")

    def late(self, best: Best) -> int:
        """Give the lateness of what is still to be planned."""
        studio = self.studio
        ends = studio.ended | {name: one.end for name, one in best.places.items()}
        dues = sum(studio.lateness.of_due(name, ends[name]) for name in studio.chains)
        return studio.lateness.of_goals(ends) + dues

    def over(self) -> bool:
        """Say whether nothing more is to be done."""
        asked = self.effort.tries
        done = (
            len(self.proved) == len(self.bounds)
            or self.infeasible
            or (asked is not None and self.tries >= asked)
        )
        return done or self.effort.stop()

    # -- the search ----------------------------------------------------------------------

    def run(self, keep: Plan | None = None) -> None:
        """Search until all is proved, or it is time to end; perhaps with an old plan to keep to.

        With one nothing is proved here: what is held to it is not looked at elsewhere.
        """
        placed = placed_by(self.studio, self.effort, keep)
        if keep is not None:
            self.frame = self.neighbours.frame = Frame(self.studio)
        if placed:
            self.take(self.studio.board.placed)
            self._start_bounds()
        self.infeasible = bool(self.studio.impossible or self.frame.impossible())
        if self.best is not None and not self.over():
            self._own(self.best, OWN_FIRST)
        if keep is None:
            self._for_proofs()
        else:
            self._for_keeps()

    def _for_proofs(self) -> None:
        """Look at the whole and at parts in turn; at a small problem's whole first."""
        if self.best is None or self.frame.choices() <= SMALL:
            self._whole()
        while not self.over():
            if self.best is not None:
                self._parts()
            if not self.over():
                self._whole()

    def _for_keeps(self) -> None:
        """Look at parts only, and at the end put back what moved without need."""
        while self.best is not None and not self.over():
            self._parts()
        if self.best is not None and self.studio.old:
            self._settle(self.best)

    def _settle(self, best: Best) -> None:
        """Put back what moved without need, as our own engine does at its end."""
        self.studio.put_back(best.places)
        settle(self.studio)
        self.take(self.studio.board.placed)

    def _start_bounds(self) -> None:
        """Begin with the bounds that need no solver: each lot as if the studio were its own."""
        least = self._least = bound_of(self.studio.problem, self.effort.stop)
        self.bounds = {"late": least.late, "sessions": least.sessions, "fine": least.fine}
        self._learn(Reached())

    def _own(self, best: Best, tries: int) -> None:
        """Improve with our own engine, for so many tries a lot.

        It goes on where it was, and begins anew where the solver has found what is better.
        """
        if self._improver is None or self._from_own is not best:
            self.studio.put_back(best.places)
            self._improver = Improver(self.studio, self.effort.seed + self.tries)
        for _ in range(tries * len(self.studio.chains)):
            if self.effort.stop():
                break
            if self._improver.step():
                self.take(self._improver.kept)
        self._from_own = self.best

    def _parts(self) -> None:
        """Plan parts anew, then all lots about where they are, while that helps."""
        before: tuple[int, int] | None = None
        while self.best is not None and before != self.best.plan.score.parts()[:2]:
            before = self.best.plan.score.parts()[:2]
            for _ in range(PARTS_IN_TURN):
                self._try(self.best, self._part(self.best), PART_WORK)
                if not self.over():
                    self._own(self.best, OWN_BETWEEN)
            if len(self.studio.chains) > 1:
                part = self.neighbours.all_near(self.best.places, NEAR_DAYS)
                self._try(self.best, part, self._near_work, brief=True)
                self._near_work *= NEAR_GROWTH
                self._finer(self.best)

    def _part(self, best: Best) -> Part:
        """Choose what is planned anew."""
        places, chance = best.places, self.random.random()
        if self.late(best) and chance < 0.5:
            found = self.neighbours.late(places)
            if found is not None:
                return found
        ways: Sequence[Callable[[Places], Part]] = (
            self.neighbours.group, self.neighbours.visitors, self.neighbours.slice,
        )  # fmt: skip
        return self.random.choice(ways)(places)

    def _try(self, best: Best, part: Part, work: float, *, brief: bool = False) -> None:
        """Let the solver plan a part anew, if it is not time to end."""
        if self.over():
            return
        self.tries += 1
        measure = replace(self.measure, work=work, seed=self.effort.seed + self.tries)
        levels = Levels(self.frame, part, self.effort.stop, self.take)
        found = levels.run(measure, self._settled(best), proofs=brief)
        if not brief:
            self.neighbours.learn(proved=bool({"sessions", "price"} & found.proved))
        if found.places is not None:
            self.take(found.places)

    def _finer(self, best: Best) -> None:
        """Let the solver look at fine minutes only, all lots about where they are."""
        if self.over() or not self.frame.fine_apart or self.studio.old:
            return
        self.tries += 1
        part = self.neighbours.all_near(best.places, NEAR_DAYS)
        measure = replace(self.measure, work=self._near_work, seed=self.effort.seed + self.tries)
        settled = {"late": self.late(best), "sessions": best.plan.score.sessions}
        found = Levels(self.frame, part, self.effort.stop, self.take).run(measure, settled)
        if found.places is not None:
            self.take(found.places)

    def _settled(self, best: Best) -> dict[str, int]:
        """Give the parts that cannot become less, as they are."""
        late = self.late(best)
        found = {"late": late} if "late" in self.proved or not late else {}
        if "sessions" in self.proved and found:
            found["sessions"] = best.plan.score.sessions
        return found

    def _whole(self) -> None:
        """Let the solver look at all there is; what it proves holds for every plan.

        Every second time with cuts: they help where dates are loose, and hinder where not.
        """
        if self.over():
            return
        self.tries += 1
        self._wholes += 1
        best = self.best
        hint = {} if best is None else dict(best.places)
        part = Part(tuple(self.studio.chains), self.frame.sets, hint=hint)
        measure = replace(self.measure, work=self._whole_work, seed=self.effort.seed + self.tries)
        levels = Levels(self.frame, part, self.effort.stop, self.take)
        if self._wholes % 2 == 0:
            add_cuts(levels.own)
        self._whole_work *= WHOLE_GROWTH
        found = levels.run(measure, {} if best is None else self._settled(best), proofs=True)
        if found.places is not None:
            self.take(found.places)
        self._learn(found)

    def _learn(self, found: Reached) -> None:
        """Keep what a look at the whole has proved of the best plan."""
        if self.best is None:
            self.infeasible = found.found == "infeasible" and self.frame.exact
            return
        score = dict(zip(self.bounds, self.best.plan.score.parts(), strict=True))
        over_already = score["late"] - self.late(self.best)
        self.bounds["late"] = max(self.bounds["late"], over_already)
        for name, bound in found.bounds.items() if self.frame.exact else ():
            if name in self.bounds:
                least = bound + (over_already if name == "late" else 0)
                self.bounds[name] = max(self.bounds[name], least)
            elif name in found.proved:  # the price of sessions and fine minutes together
                self.bounds |= {part: score[part] for part in ("sessions", "fine")}
        for name, least in self.bounds.items():
            if least < score[name]:
                break
            self.proved.add(name)

    def bound(self) -> Bound:
        """Give what no plan is below: each part with those before it as they are."""
        return Bound(**self.bounds)
