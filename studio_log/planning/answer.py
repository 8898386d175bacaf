"""The answer to a problem file, as JSON has it: the same names for both forms of problem.

Moments of a studio are local times, as in its file, or instants in UTC where it names its zone;
those of a project are its own units.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Final

from studio_log.planning.differences import Difference, differences
from studio_log.planning.effort import Effort
from studio_log.planning.plan_project import ProjectOutcome, plan_project
from studio_log.planning.plan_studio import Outcome, plan_studio
from studio_log.planning.problem import Plan, Problem, Span
from studio_log.planning.project import Project
from studio_log.planning.repair import repair
from studio_log.planning.sessions import sessions_of
from studio_log.planning.stirs import stirs_of

PARTS: Final = ("late", "sessions", "fine")
"""Names of the parts of a score."""


@dataclass(frozen=True, slots=True)
class Answered:
    """What came of a problem: the object for JSON, and the plan of a studio for words."""

    fields: dict[str, Any]
    plan: Plan | None = None


def answer(problem: Problem | Project, effort: Effort, keep: Plan | None = None) -> Answered:
    """Plan a problem of either form; a studio's perhaps with an old plan to keep to."""
    if isinstance(problem, Project):
        return Answered(of_project(problem, plan_project(problem, effort)))
    outcome = plan_studio(problem, effort, keep)
    fields = of_studio(problem, outcome)
    if keep is not None and outcome.plan is not None:
        fields["differences"] = told(differences(problem, keep, outcome.plan))
    return Answered(fields, outcome.plan)


def mended(problem: Problem, effort: Effort, old: Plan) -> Answered:
    """Mend an old plan of a studio: as little moves as can be, and that is told."""
    found = repair(problem, old, effort)
    fields = {**of_studio(problem, found.outcome), "differences": told(found.differences)}
    return Answered(fields, found.outcome.plan)


def told(some: Iterable[Difference]) -> list[dict[str, Any]]:
    """Give differences as JSON has them, most important first."""
    return [{"kind": one.kind, "words": one.words, "lots": list(one.lots)} for one in some]


def so_far(problem: Problem | Project, found: Any) -> dict[str, Any]:
    """Give the fields of a plan that may still become better, as `Effort.on_better` hands it."""
    if isinstance(problem, Project):
        starts = {one.name: at for one, at in zip(problem.tasks, found[1:], strict=True)}
        ends = [starts[one.name] + max(one.duration, one.tail) for one in problem.tasks]
        return of_project(problem, ProjectOutcome("feasible", starts, max(ends), None, (), 0))
    return of_studio(problem, Outcome("feasible", found, None, problem.notes, 0))


def invalid(faults: tuple[str, ...]) -> dict[str, Any]:
    """Give the answer to a problem that makes no sense."""
    return _fields("invalid", faults)


def _fields(status: str, why: tuple[str, ...], **more: Any) -> dict[str, Any]:
    empty: dict[str, Any] = {"starts": {}, "ends": {}, "sessions": [], "bound": None}
    told = {"why": list(why), "reasons": [], "ways_out": []}
    return {"status": status, **empty, **more, **told}


def of_project(project: Project, outcome: ProjectOutcome) -> dict[str, Any]:
    """Give the fields of what came of a project."""
    starts = dict(outcome.starts or {})
    return _fields(
        outcome.status,
        outcome.why,
        makespan=outcome.makespan,
        bound=outcome.bound,
        starts=starts,
        ends={one.name: starts[one.name] + one.duration for one in project.tasks if starts},
        tries=outcome.tries,
    )


def of_studio(problem: Problem, outcome: Outcome) -> dict[str, Any]:
    """Give the fields of what came of a studio's problem."""
    plan = outcome.plan
    if plan is None:
        return _fields(outcome.status, outcome.why, score=None, tries=outcome.tries)
    bound, stirs = outcome.bound, stirs_of(problem, plan)
    return _fields(
        outcome.status,
        (*outcome.why, *stirs.missing),
        bound=None if bound is None else [bound.late, bound.sessions, bound.fine],
        sessions=[
            {
                "start": moment_text(problem, one.start),
                "end": moment_text(problem, one.end),
                "steps": [[lot, step] for lot, step in one.steps],
            }
            for one in sessions_of(problem, plan)
        ],
        stirs=[
            {"lot": one.lot, "step": one.step, "at": moment_text(problem, one.at)}
            for one in stirs.placed
        ],
        proved=dict(zip(PARTS, outcome.proved, strict=True)),
        tries=outcome.tries,
        **of_plan(problem, plan),
    )


def of_plan(problem: Problem, plan: Plan) -> dict[str, Any]:
    """Give the fields of an answer that `read_plan` reads a plan from."""
    return {
        "score": list(plan.score.parts()),
        "starts": _moments(problem, plan, end=False),
        "ends": _moments(problem, plan, end=True),
        "vessels": plan.vessels,
        "serves": plan.serves,
        "milks": plan.milks,
        "made_for": plan.made_for,
    }


def _moments(problem: Problem, plan: Plan, *, end: bool) -> dict[str, dict[str, str]]:
    def one(span: Span) -> str:
        return moment_text(problem, span.end if end else span.start)

    return {
        lot: {step: one(span) for step, span in spans.items()} for lot, spans in plan.spans.items()
    }


def moment_text(problem: Problem, minute: int) -> str:
    """Give a moment as the file's own local time, or in UTC with Z where it names a zone."""
    if problem.clock.zone is None:
        return problem.clock.local(minute).strftime("%Y-%m-%dT%H:%M")
    return problem.clock.utc(minute).strftime("%Y-%m-%dT%H:%M:%SZ")


def instants(told: Mapping[str, Mapping[str, str]]) -> dict[str, dict[str, datetime]]:
    """Give the moments of an answer whose problem names its zone, by lot and step."""
    return {
        lot: {step: datetime.fromisoformat(at) for step, at in steps.items()}
        for lot, steps in told.items()
    }
