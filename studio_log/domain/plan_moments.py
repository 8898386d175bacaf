"""The way back from the planner's steps to the log's, and from a plan that a lot follows to it."""

from collections.abc import Mapping
from datetime import datetime, timedelta

from studio_log.domain.lots import Lot
from studio_log.domain.plan_lots import Part, PlanLot


def moments_of(
    places: Mapping[str, tuple[int, Part]],
    starts: Mapping[str, datetime],
    ends: Mapping[str, datetime],
) -> dict[int, tuple[datetime, datetime]]:
    """Give start and end of the log's steps from those of the planner's.

    A step ends when somebody comes to end it: at the beginning of its last part by hand.
    """
    found: dict[int, tuple[datetime, datetime]] = {}
    for name, (number, part) in places.items():
        if name not in starts:
            continue
        end = starts[name] if part is Part.END else ends[name]
        found[number] = (found[number][0] if number in found else starts[name], end)
    return found


def kept_spans(lot: Lot, form: PlanLot) -> dict[str, tuple[datetime, datetime]]:
    """Give start and end of the planner's steps as an accepted plan set them; the way back.

    Empty where the lot follows none, or where a step has lost its moment since.
    """
    found: dict[str, tuple[datetime, datetime]] = {}
    for one in form.form["steps"]:
        name, (number, part) = one["id"], form.places[one["id"]]
        step = lot.step(number)
        if step.closed:
            continue
        length = timedelta(minutes=one.get("hands", one["min"] if one.get("cure") else 0))
        if one.get("cure"):
            begins = ends = max((end for _, end in found.values()), default=None)
        else:
            begins, ends = step.start or step.plan, step.plan_end
        if begins is None or ends is None:
            return {}
        begun = timedelta(0) if step.running else step.spec.hands_on
        found[name] = _span_of(part, begins, ends, begun, length)
    return found


def _span_of(
    part: Part, start: datetime, end: datetime, begun: timedelta, length: timedelta
) -> tuple[datetime, datetime]:
    """Give one part of a step from the step's ends."""
    if part is Part.END:
        return end, end + length
    if part is Part.WAIT and not length:
        return start + begun, end
    return start, start + length
