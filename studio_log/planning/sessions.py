"""The sessions of a plan: when somebody comes, and what is done."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import timedelta

from studio_log.planning.problem import Plan, Problem


@dataclass(frozen=True, slots=True)
class Session:
    """One coming: minutes of its first start and last end, and (lot, step) in order."""

    start: int
    end: int
    steps: tuple[tuple[str, str], ...]


def sessions_of(problem: Problem, plan: Plan) -> list[Session]:
    """Give the sessions of a plan in order of time; what runs already is in none."""
    by_hand = {
        lot.name: {one.name for one in lot.steps if one.hands and one.name not in lot.facts}
        for lot in problem.lots
    }
    found: dict[tuple[int, int], list[tuple[int, int, str, str]]] = defaultdict(list)
    for lot, spans in plan.spans.items():
        for step, span in spans.items():
            if step in by_hand[lot]:
                key = _hours_of(problem, span.start)
                found[key].append((span.start, span.end, lot, step))
    return [
        Session(
            min(start for start, *_ in visits),
            max(end for _, end, *_ in visits),
            tuple((lot, step) for _, _, lot, step in sorted(visits)),
        )
        for _, visits in sorted(found.items())
    ]


def _hours_of(problem: Problem, minute: int) -> tuple[int, int]:
    """Give day and place of the working hours in which a minute lies; true in a clock change."""
    clock = problem.clock
    midnight = clock.local(minute).replace(hour=0, minute=0)
    opens = [
        clock.minute(midnight + timedelta(minutes=begins))
        for begins, _ in problem.calendar.on(midnight.date())
    ]
    return midnight.toordinal(), sum(one <= minute for one in opens)
