"""Checks that milks are used when they are made and good, and what they stand in."""

from collections.abc import Iterator

from studio_log.planning.problem import Milk, Plan, Problem, Span

Taking = tuple[int, int, int, str]
"""From, to, how much, and for what."""


def milk_faults(problem: Problem, plan: Plan) -> Iterator[str]:
    """Give a sentence for every use of a milk that is too soon or too late."""
    for milk in problem.milks:
        made = _made(problem, plan, milk)
        if made is None:
            continue
        for lot, step, span in _uses(problem, plan, milk):
            begun = step in next(one.facts for one in problem.lots if one.name == lot)
            if span.start < made and not begun:
                yield f"{lot}: {step} uses {milk.name} {made - span.start} min before it is made."
            if span.end > made + milk.life:
                over = span.end - made - milk.life
                yield f"{lot}: {step} uses {milk.name} {over} min after it is no longer good."


def milk_takings(problem: Problem, plan: Plan) -> dict[str, tuple[str | None, str, Taking]]:
    """Give by milk what it stands in, the kind that is due, and from its making to its last use."""
    found: dict[str, tuple[str | None, str, Taking]] = {}
    for milk in problem.milks:
        made = _made(problem, plan, milk)
        ends = [span.end for _, _, span in _uses(problem, plan, milk)]
        if milk.kind is None or made is None or not ends:
            continue
        vessel = plan.milks.get(milk.name)
        if milk.vessel is not None and vessel != milk.vessel and made <= 0:
            vessel = None
        taking = (made, max(ends), milk.much, f"milk {milk.name}")
        found[milk.name] = (vessel, milk.kind, taking)
    return found


def _made(problem: Problem, plan: Plan, milk: Milk) -> int | None:
    """Give the minute a milk is made; None where its maker is not there."""
    if milk.maker is None:
        return milk.at
    lot, step = milk.maker
    span = plan.spans.get(lot, {}).get(step)
    if span is not None:
        return span.end
    facts = next((one.facts for one in problem.lots if one.name == lot), {})
    return facts[step].end if step in facts else None


def _uses(problem: Problem, plan: Plan, milk: Milk) -> Iterator[tuple[str, str, Span]]:
    """Give the uses that are planned."""
    known = {one.name for one in problem.lots}
    for lot, step in milk.uses:
        span = plan.spans.get(lot, {}).get(step)
        if span is not None and lot in known:
            yield lot, step, span
