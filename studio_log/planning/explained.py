"""Puts reasons and ways out into an answer, as JSON has them."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from studio_log.planning.answer import of_plan
from studio_log.planning.effort import Effort
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.solver import NO_SOLVER, Solver
from studio_log.planning.why import explain
from studio_log.planning.why_reasons import Reasons, reason_to_json, way_to_json

PROVED: Final = ("sizes", "alone")
"""Reasons that prove that there is no plan of all lots."""


def explained(
    problem: Problem,
    fields: Mapping[str, Any],
    plan: Plan | None,
    effort: Effort,
    on_way: Callable[[dict[str, Any]], None] = lambda _: None,
    solver: Solver = NO_SOLVER,
) -> dict[str, Any]:
    """Give an answer's fields with why the plan is late or missing, and the ways out.

    `plan` is the one of the fields, of all lots; None too where some were left out of it, since
    why they were is then what there is to say. `on_way` is handed the fields with what is found
    so far.
    """
    kept = (*problem.notes, *_rest(fields) * (plan is None))

    def told(reasons: Reasons) -> dict[str, Any]:
        proved = any(one.kind in PROVED for one in reasons.reasons)
        status = {"status": "infeasible"} if proved and fields.get("status") == "unknown" else {}
        ways = [{**way_to_json(it), "plan": of_plan(problem, it.plan)} for it in reasons.ways]
        return {**fields, **status, **_why(fields["why"], kept, reasons), "ways_out": ways}

    return told(explain(problem, plan, effort, lambda so_far: on_way(told(so_far)), solver))


def _rest(fields: Mapping[str, Any]) -> tuple[str, ...]:
    """Give what an answer says of the plan that it has."""
    return tuple(fields["why"]) if fields["starts"] else ()


def _why(why: list[str], kept: tuple[str, ...], reasons: Reasons) -> dict[str, Any]:
    """Give the parts of an answer that tell why; its own words stay where no layer speaks."""
    speaks = [one.sentence for one in reasons.reasons if one.kind != "open"]
    return {
        "why": list(dict.fromkeys((*kept, *speaks))) if speaks else list(why),
        "reasons": [reason_to_json(one) for one in reasons.reasons],
    }
