"""Plans a studio's problem: a first plan at once, then better ones until told to stop."""

from collections.abc import Mapping
from dataclasses import dataclass

from studio_log.planning.board import Placement
from studio_log.planning.bounds import Bound, bound_of, exact_alone
from studio_log.planning.chain import Chain
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort, Status, WrongPlanError, not_found
from studio_log.planning.engine import Studio
from studio_log.planning.improving import Improver
from studio_log.planning.keeping import go_on_from, keep_to
from studio_log.planning.late_words import late_words
from studio_log.planning.made_for import mark_of
from studio_log.planning.problem import Plan, Problem, Score, Span
from studio_log.planning.score import dues_late
from studio_log.planning.settling import settle
from studio_log.planning.why_sizes import misfits


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of planning: the best plan, how good it is known to be, and why not better."""

    status: Status
    plan: Plan | None
    bound: Bound | None
    why: tuple[str, ...]
    tries: int
    proved: tuple[bool, ...] = (False, False, False)
    """Of each part of the score, whether it cannot be less, those before it as they are."""


def plan_studio(problem: Problem, effort: Effort, keep: Plan | None = None) -> Outcome:
    """Give the best plan found; every plan that leaves here has passed the checker.

    With an old plan to `keep` to, what starts within 24 hours or runs stays where it can, and
    each moved visit has to be worth it. One that was made for just this problem is the answer,
    unless it is to go on from it.
    """
    if keep is not None and not effort.go_on and is_for(problem, keep):
        effort.on_better(keep)
        return known_outcome(problem, keep, bound_of(problem, effort.stop), 0)
    small = too_small(problem)
    if small is not None:
        return small
    studio = Studio(problem, effort.stop)
    placed = placed_by(studio, effort, keep)
    return improved(studio, effort, placed=placed, alone=keep is None)


def too_small(problem: Problem) -> Outcome | None:
    """Give what comes of a problem in which something does not fit, whatever the hours, or None.

    What makes plans takes it that each lot by itself fits its vessels, the line and the burners.
    """
    small = misfits(problem)
    if not small:
        return None
    words = tuple(one.sentence for one in small)
    return Outcome("infeasible", None, None, (*problem.notes, *words), 0)


def is_for(problem: Problem, plan: Plan) -> bool:
    """Say whether a plan was made for just this problem, and is good."""
    return plan.made_for == mark_of(problem) and not violations(problem, plan)


def placed_by(studio: Studio, effort: Effort, keep: Plan | None) -> bool:
    """Place all lots, from an old plan if there is one; gives whether all have a place."""
    if keep is None:
        return studio.first_plan()
    return go_on_from(studio, keep) if effort.go_on else keep_to(studio, keep)


def improved(studio: Studio, effort: Effort, *, placed: bool, alone: bool = False) -> Outcome:
    """Give what comes of a board on which all lots are placed, or not, as tries make it better.

    `alone`: a lot that is the only one is placed as well as can be, which is a proof.
    """
    problem = studio.problem
    if not placed:
        if studio.impossible:
            words = tuple(one.words for one in studio.impossible)
            return Outcome("infeasible", None, None, (*problem.notes, *words), 0)
        return Outcome("unknown", None, None, (*problem.notes, not_found()), 0)
    proved = alone and exact_alone(studio)
    best = checked(problem, plan_of(studio, studio.board.placed))
    effort.on_better(best)
    bound = Bound(*best.score.parts()) if proved else bound_of(problem, effort.stop)
    improver = Improver(studio, effort.seed)
    tries = 0
    while studio.chains and not (bound.reached(best.score) and not improver.moved):
        if effort.stop() or (effort.tries is not None and tries >= effort.tries):
            break
        tries += 1
        if improver.step():
            best = checked(problem, plan_of(studio, improver.kept))
            effort.on_better(best)
    if studio.old:
        studio.put_back(improver.kept)
        settle(studio)
        best = checked(problem, plan_of(studio, studio.board.placed))
    return known_outcome(problem, best, bound, tries)


def known_outcome(problem: Problem, plan: Plan, bound: Bound, tries: int) -> Outcome:
    """Give what came of planning, from the best plan and what no plan can be below."""
    status: Status = "optimal" if bound.reached(plan.score) else "feasible"
    parts = zip(plan.score.parts(), (bound.late, bound.sessions, bound.fine), strict=True)
    proved = tuple(own == least for own, least in parts)
    why = (*problem.notes, *late_words(problem, plan))
    return Outcome(status, plan, bound, why, tries, proved)


def checked(problem: Problem, plan: Plan) -> Plan:
    """Give a plan on, if the checker finds nothing."""
    found = violations(problem, plan)
    if found:
        raise WrongPlanError(" ".join(found))
    return plan


def plan_of(studio: Studio, placed: Mapping[str, Placement]) -> Plan:
    """Give the plan of a board: spans in minutes, vessels by name."""
    ends = studio.ended | {name: one.end for name, one in placed.items()}
    spans = {name: _spans(studio, studio.chains[name], one) for name, one in placed.items()}
    for lot in studio.problem.lots:
        _add_cure(studio, lot.name, spans.setdefault(lot.name, {}), ends[lot.name])
    vessels = {name: _vessels(studio.chains[name], one.vessels) for name, one in placed.items()}
    lateness = studio.lateness
    late = lateness.of_goals(ends) + dues_late(studio.problem.lots, spans)
    sessions = len({number for one in placed.values() for number in one.sessions})
    fine = sum(one.fine for one in placed.values())
    kept = {name: own for name, own in spans.items() if own}
    score = Score(late, sessions, fine)
    serves = lateness.serves(ends)
    return Plan(kept, vessels, serves, score, studio.mark, _milks(studio, placed))


def _spans(studio: Studio, chain: Chain, placement: Placement) -> dict[str, Span]:
    grid = studio.problem.grid
    found: dict[str, Span] = {}
    if chain.opening is not None and chain.opening.step is not None:
        found[chain.opening.step] = Span(chain.since, placement.starts[0] * grid)
    for number, (start, visit) in enumerate(zip(placement.starts, chain.visits, strict=True)):
        at = start
        for name, length in visit.steps:
            found[name] = Span(at * grid, (at + length) * grid)
            at += length
        if number < len(chain.betweens):
            step = chain.betweens[number].step
            if step is not None:
                found[step] = Span(at * grid, placement.starts[number + 1] * grid)
    return found


def _add_cure(studio: Studio, name: str, spans: dict[str, Span], end: int) -> None:
    """Let the cure follow the last step, where it is not over."""
    lot = next(one for one in studio.problem.lots if one.name == name)
    cure = lot.steps[-1]
    if not cure.cure:
        return
    fact = lot.facts.get(cure.name)
    if fact is not None and fact.end is not None:
        return
    before = lot.steps[-2].then_after if len(lot.steps) > 1 else 0
    start = fact.start if fact is not None else end + before
    spans[cure.name] = Span(start, start + cure.least)


def _milks(studio: Studio, placed: Mapping[str, Placement]) -> dict[str, str]:
    """Give what each milk stands in."""
    made = {
        milk: placed[name].vessels[run]
        for name, chain in studio.chains.items()
        if name in placed
        for milk, run in chain.milks.items()
    }
    return {**studio.milks.vessels, **made}


def _vessels(chain: Chain, vessels: Mapping[int, str]) -> dict[str, dict[str, str]]:
    return {
        name: {chain.runs[run].kind: vessels[run] for run in runs}
        for name, runs in chain.held.items()
        if runs
    }
