"""Checks a studio's plan against every rule; shares nothing with what makes plans.

It reads the problem and the plan only, and works everything out again from them. A step may last
longer than its hands by less than one slot of the grid, since plans are made on the grid.
"""

from collections.abc import Iterator, Mapping
from datetime import timedelta
from itertools import pairwise

from studio_log.planning.check_milks import milk_faults
from studio_log.planning.check_score import score_faults
from studio_log.planning.check_stores import store_faults
from studio_log.planning.problem import Lot, Plan, Problem, Span, Step


def violations(problem: Problem, plan: Plan) -> list[str]:
    """Give a sentence for every rule that a plan breaks; none for a good plan."""
    found = []
    known = {lot.name for lot in problem.lots}
    found += [f"{name} is planned and is no lot." for name in plan.spans if name not in known]
    for lot in problem.lots:
        spans = plan.spans.get(lot.name, {})
        wanted = {step.name for step in open_steps(lot)}
        if wanted != set(spans):
            odd = ", ".join(sorted(wanted ^ set(spans)))
            found.append(f"{lot.name}: these are planned and ought not to be, or miss: {odd}.")
            continue
        found += _lot_faults(problem, lot, spans)
    if found:
        return found
    return [
        *milk_faults(problem, plan),
        *store_faults(problem, plan),
        *score_faults(problem, plan),
    ]


def open_steps(lot: Lot) -> list[Step]:
    """Give the steps that are not over: the running one, and those after the last fact."""
    last = max((n for n, one in enumerate(lot.steps) if one.name in lot.facts), default=-1)
    if last >= 0 and lot.facts[lot.steps[last].name].end is None:
        return list(lot.steps[last:])
    return list(lot.steps[last + 1 :])


def _lot_faults(problem: Problem, lot: Lot, spans: Mapping[str, Span]) -> Iterator[str]:
    steps = open_steps(lot)
    for step in steps:
        yield from _step_faults(problem, lot, step, spans[step.name])
    for step, after in pairwise(steps):
        gap = spans[after.name].start - spans[step.name].end
        if not step.then_after <= gap <= step.then_within:
            yield f"{lot.name}: {after.name} follows {step.name} after {gap} min."
    if steps:
        yield from _first_faults(lot, steps[0], spans[steps[0].name])
    yield from _link_faults(lot, spans)


def _first_faults(lot: Lot, step: Step, span: Span) -> Iterator[str]:
    """Look at how the first open step joins what is recorded, or keeps to the release."""
    fact = lot.facts.get(step.name)
    place = lot.steps.index(step)
    if fact is not None:
        if span.start != fact.start:
            yield f"{lot.name}: {step.name} began at another time than is recorded."
        return
    if place == 0:
        if span.start < max(0, lot.release):
            yield f"{lot.name}: {step.name} begins before it may."
        return
    before = lot.steps[place - 1]
    ended = lot.facts[before.name].end
    if ended is None:
        yield f"{lot.name}: {before.name} is not over."
        return
    gap = span.start - ended
    # A step that goes by itself began when the one before it ended; hands come when they can.
    broken_already = ended + before.then_within < 0 and not _runs_already(lot, step)
    if gap < before.then_after or (gap > before.then_within and not broken_already):
        yield f"{lot.name}: {step.name} follows {before.name} after {gap} min."


def _step_faults(problem: Problem, lot: Lot, step: Step, span: Span) -> Iterator[str]:
    name, lasts = f"{lot.name}: {step.name}", span.end - span.start
    begun = step.name in lot.facts or _runs_already(lot, step)
    if not begun and (span.start < 0 or span.start % problem.grid):
        yield f"{name} begins off the grid, at {span.start}."
    if not step.cure and not 0 <= span.end <= problem.horizon:
        yield f"{name} ends outside the time that is planned."
    if step.hands is not None:
        if step.name in lot.facts:
            yield from _under_way_faults(problem, lot, step, span)
            return
        if not step.hands <= lasts < step.hands + problem.grid:
            yield f"{name} takes {lasts} min of hands, not {step.hands}."
        if lasts and not _in_one_window(problem, span):
            yield f"{name} lies outside the working hours."
        return
    yield from _length_faults(problem, lot, step, span)


def _under_way_faults(problem: Problem, lot: Lot, step: Step, span: Span) -> Iterator[str]:
    """Look at a step by hand that is begun: it is over as soon as can be, or goes on by hand."""
    place = lot.steps.index(step) + 1
    by_hand = place < len(lot.steps) and lot.steps[place].hands is not None
    least = max(step.hands or 0, -span.start)
    lasts = span.end - span.start
    waits = by_hand and not step.then_within
    if lasts < least or (lasts >= least + problem.grid and not waits):
        yield f"{lot.name}: {step.name} takes {lasts} min of hands, not {step.hands}."


def _length_faults(problem: Problem, lot: Lot, step: Step, span: Span) -> Iterator[str]:
    """Look at how long a step that goes by itself lasts."""
    name, lasts, least = f"{lot.name}: {step.name}", span.end - span.start, step.least
    if step.drying:
        least = max(least, problem.drying.get(problem.clock.local(span.start).date(), 0))
    if lasts < least:
        yield f"{name} lasts {lasts} min, less than {least}."
    begun = step.name in lot.facts or _runs_already(lot, step)
    over_already = begun and step.most is not None and span.start + step.most < 0
    if step.most is not None and lasts > step.most and not over_already:
        yield f"{name} lasts {lasts} min, more than {step.most}."


def _runs_already(lot: Lot, step: Step) -> bool:
    """Say whether a step without a fact runs, since the one before it is recorded as over."""
    place = lot.steps.index(step)
    before = lot.steps[place - 1] if place else None
    follows = before is not None and before.name in lot.facts and not before.then_within
    return follows and step.hands is None


def _in_one_window(problem: Problem, span: Span) -> bool:
    """Say whether hours of one day hold a span; they are looked up by the wall clock."""
    day = problem.clock.local(span.start).date()
    for begins, ends in problem.calendar.on(day):
        midnight = problem.clock.local(span.start).replace(hour=0, minute=0)
        opens = problem.clock.minute(midnight + timedelta(minutes=begins))
        closes = problem.clock.minute(midnight + timedelta(minutes=ends))
        if opens <= span.start and span.end <= closes:
            return True
    return False


def _link_faults(lot: Lot, spans: Mapping[str, Span]) -> Iterator[str]:
    def moment(name: str, *, end: bool) -> int | None:
        if name in spans:
            return spans[name].end if end else spans[name].start
        fact = lot.facts.get(name)
        return None if fact is None else fact.end if end else fact.start

    for link in lot.links:
        one = moment(link.first, end=link.first_end)
        other = moment(link.second, end=link.second_end)
        fixed = one is not None and link.first not in spans and one + link.most < 0
        if one is not None and other is not None and other - one > link.most and not fixed:
            yield f"{lot.name}: from {link.first} to {link.second} pass {other - one} min."
