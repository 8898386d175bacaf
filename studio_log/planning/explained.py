"""Puts reasons and ways out into an answer, as JSON has them."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from studio_log.planning.effort import Effort
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.why import Joints, explain, nothing_proved
from studio_log.planning.why_reasons import Reasons, Way, reason_to_json, way_to_json

PROVED: Final = ("sizes", "alone")
"""Reasons that prove that there is no plan of all lots."""


def explained(
    problem: Problem,
    fields: Mapping[str, Any],
    plan: Plan | None,
    effort: Effort,
    on_way: Callable[[dict[str, Any]], None] = lambda _: None,
    joint: Joints = nothing_proved,
) -> dict[str, Any]:
    """Give an answer's fields with why the plan is late or missing, and the ways out.

    `plan` is the one of the fields, of all lots; None too where some were left out of it, since
    why they were is then what there is to say. `on_way` is handed the fields with each way out
    found so far.
    """
    found: list[Way] = []

    def told(way: Way) -> None:
        found.append(way)
        on_way({**fields, "ways_out": [way_to_json(one) for one in found]})

    reasons = explain(problem, plan, effort, told, joint)
    proved = any(one.kind in PROVED for one in reasons.reasons)
    if proved and fields.get("status") == "unknown":
        fields = {**fields, "status": "infeasible"}
    told_anew = (*problem.notes, *_rest(fields) * (plan is None))
    return {**fields, **_why(fields["why"], told_anew, reasons)}


def _rest(fields: Mapping[str, Any]) -> tuple[str, ...]:
    """Give what an answer says of the plan that it has."""
    return tuple(fields["why"]) if fields["starts"] else ()


def _why(why: list[str], kept: tuple[str, ...], reasons: Reasons) -> dict[str, Any]:
    """Give the parts of an answer that tell why; its own words stay where no layer speaks."""
    speaks = [one.sentence for one in reasons.reasons if one.kind != "open"]
    return {
        "why": list(dict.fromkeys((*kept, *speaks))) if speaks else list(why),
        "reasons": [reason_to_json(one) for one in reasons.reasons],
        "ways_out": [way_to_json(one) for one in reasons.ways],
    }
