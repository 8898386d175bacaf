"""What should have ended, or begun, by now: a plan does it in the next hours, not when it suits.

A limit that is broken already limits nothing more; without this a bath could stay on the heat over
a closed Sunday, to spare a session.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any, Final

from studio_log.domain.closed_hours import openings_of
from studio_log.domain.plan_form import PlanTime
from studio_log.domain.plan_lots import PlanLot
from studio_log.language.words import tr

WITHIN: Final = timedelta(hours=2)
"""So long after somebody is there what is overdue is done at the latest."""
ROOM: Final = timedelta(hours=1)
"""A stretch of hours that ends sooner is left to what is under way."""
_MINUTE: Final = timedelta(minutes=1)
Form = Mapping[str, Any]


def pressed(lots: Iterable[PlanLot], plan: PlanTime) -> tuple[list[PlanLot], list[str]]:
    """Give the lots with what is overdue bound to the next hours, and a sentence for each."""
    until = _until(plan)
    found: list[PlanLot] = []
    told: list[str] = []
    for lot in lots:
        late = None if until is None else _overdue(lot.form, plan)
        if late is None or until is None:
            found.append(lot)
            continue
        name, key, since = late
        steps = [
            {**step, key: round((until - since) / _MINUTE), _LIMIT[key]: "rule"}
            if step["id"] == name else step
            for step in lot.form["steps"]
        ]  # fmt: skip
        found.append(replace(lot, form={**lot.form, "steps": steps}))
        told.append(_words(lot.code, name, key))
    return found, told


_LIMIT: Final = {"max": "limit", "then_within": "then_limit"}


def _words(code: str, step: str, key: str) -> str:
    if key == "max":
        return tr("{code}: {step} has lasted too long; it is planned to end in the next hours.",
                  code=code, step=step)  # fmt: skip
    return tr("{code}: what follows {step} is overdue; it is planned in the next hours.",
              code=code, step=step)  # fmt: skip


def _overdue(form: Form, plan: PlanTime) -> tuple[str, str, datetime] | None:
    """Give the step, the limit that it has broken, and since when that counts; None for none."""
    done = form["actual"]
    told = [step for step in form["steps"] if step["id"] in done]
    if not told:
        return None
    last, fact = told[-1], done[told[-1]["id"]]
    key, at = ("max", fact["start"]) if fact["end"] is None else ("then_within", fact["end"])
    since = datetime.fromisoformat(at).replace(tzinfo=plan.zone).astimezone(UTC)
    if key not in last or last is form["steps"][-1] or last.get("cure"):
        return None
    return (last["id"], key, since) if plan.now > since + last[key] * _MINUTE else None


def _until(plan: PlanTime) -> datetime | None:
    """Give until when what is overdue is to be done: two hours into the next hours there are."""
    days = (replace(one, working=plan.awake(one.day.weekday(), one.working)) for one in plan.days)
    for start, end in openings_of(days, plan.zone):
        begins = max(start, plan.now)
        if end - begins >= ROOM:
            return min(end, begins + WITHIN)
    return None
