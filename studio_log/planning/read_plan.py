"""Reads a plan back from the fields of its answer, as if nobody had looked at them."""

from datetime import datetime
from typing import Any, Final

from studio_log.planning.problem import Clock, Plan, Problem, Score, Span
from studio_log.planning.taking import MOST_MINUTES, Faults, Table, shown

LONGEST: Final = 4_000
"""Names in one object."""


def read_plan(problem: Problem, fields: Any) -> Plan:
    """Give the plan in an answer's fields, its minutes from this problem's start.

    Lots and steps that the problem has no more are kept: the plan may be older. BadProblemError
    says what is amiss.
    """
    faults = Faults()
    top = Table(fields, "The plan", faults)
    for key in ("starts", "ends", "score"):
        if top.value.get(key) is None:
            top.fault(f"has no {key}")
    reader = _Reader(problem.clock, faults)
    spans = reader.spans(top)
    vessels = {
        lot: {step: reader.names(own) for step, own in reader.tables(steps)}
        for lot, steps in reader.tables(top.table("vessels"))
    }
    serves = {
        goal: {lot: own.whole(lot, 0, 1_000_000) for lot in reader.keys(own)}
        for goal, own in reader.tables(top.table("serves"))
    }
    milks = reader.names(top.table("milks"))
    score, mark = reader.score(top), top.value.get("made_for", "")
    if not isinstance(mark, str) or len(mark) > 64:
        top.fault(f"has made_for {shown(mark)}; a text of up to 64 signs is due")
    faults.end()
    return Plan(spans, vessels, serves, score, mark, milks)


class _Reader:
    def __init__(self, clock: Clock, faults: Faults) -> None:
        self.clock, self.faults = clock, faults

    def keys(self, table: Table) -> list[str]:
        """Give the names in an object, none of one that has far too many."""
        if len(table.value) > LONGEST:
            table.fault(f"has {len(table.value):,} names; up to {LONGEST:,} are read")
            return []
        return list(table.value)

    def tables(self, table: Table) -> list[tuple[str, Table]]:
        """Give the objects in an object, by name."""
        return [(key, table.table(key)) for key in self.keys(table)]

    def spans(self, top: Table) -> dict[str, dict[str, Span]]:
        """Give start and end of each step; those with one of them only are a fault."""
        starts, ends = (dict(self.tables(top.table(key))) for key in ("starts", "ends"))
        if set(starts) != set(ends):
            top.fault("has not the same lots in starts and ends")
            return {}
        found: dict[str, dict[str, Span]] = {}
        for lot, own in starts.items():
            if set(own.value) != set(ends[lot].value):
                own.fault("has not the same steps as its ends")
                continue
            found[lot] = {step: self._span(own, ends[lot], step) for step in self.keys(own)}
        return found

    def _span(self, starts: Table, ends: Table, step: str) -> Span:
        start, end = self._minute(starts, step), self._minute(ends, step)
        if start > end:
            starts.fault(f"has {shown(step)} end before it starts")
        return Span(start, end)

    def _minute(self, table: Table, key: str) -> int:
        """Give the minute of a local time, or of an instant in UTC where the zone is known."""
        text = table.value.get(key)
        try:
            at = datetime.fromisoformat(text)  # type: ignore[arg-type]
            minute = self._of(at)
        except (TypeError, ValueError, OverflowError):
            minute = None
        if minute is None or abs(minute) > MOST_MINUTES:
            due = "2027-03-01T09:00" if self.clock.zone is None else "2027-03-01T09:00:00Z"
            table.fault(f"has {shown(key)} {shown(text)}; a moment such as {due} is due")
            return 0
        return minute

    def _of(self, at: datetime) -> int | None:
        if not 1970 <= at.year <= 2200:
            return None
        if at.tzinfo is None:
            return self.clock.minute(at)
        if self.clock.zone is None:
            return None
        return int((at - self.clock.utc(0)).total_seconds() // 60)

    def names(self, table: Table) -> dict[str, str]:
        """Give an object of names."""
        return {key: table.name(key) for key in self.keys(table)}

    def score(self, top: Table) -> Score:
        """Give the three parts of the score."""
        parts = top.list("score", 3)
        good = len(parts) == 3 and all(type(one) is int and one >= 0 for one in parts)
        if not good:
            top.fault("has a score that is no list of three whole numbers from 0")
            return Score(0, 0, 0)
        return Score(*parts)
