"""Working hours of a problem as slots of its grid, day by day through clock changes."""

from dataclasses import dataclass
from datetime import timedelta

from studio_log.planning.problem import Problem

MINUTES_OF_DAY = 1440


@dataclass(frozen=True, slots=True)
class Window:
    """Working hours of one day, in slots: the first, and the one after the last."""

    start: int
    end: int


def windows_of(problem: Problem) -> tuple[Window, ...]:
    """Give the working hours that touch the horizon, in order, cut to the grid inwards."""
    clock, grid = problem.clock, problem.grid
    day = clock.start.replace(hour=0, minute=0)
    found = []
    while clock.minute(day) < problem.horizon:
        for begins, ends in problem.calendar.on(day.date()):
            start = max(0, clock.minute(day + timedelta(minutes=begins)))
            end = min(problem.horizon, clock.minute(day + timedelta(minutes=ends)))
            if -(-start // grid) < end // grid:
                found.append(Window(-(-start // grid), end // grid))
        day += timedelta(minutes=MINUTES_OF_DAY)
    return tuple(found)
