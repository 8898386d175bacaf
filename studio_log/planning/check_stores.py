"""Checks that hands, line, burners and vessels hold what a plan puts on them, at every moment."""

from collections import defaultdict
from collections.abc import Iterator
from itertools import pairwise

from studio_log.planning.check_milks import milk_takings
from studio_log.planning.problem import Plan, Problem, Step

Taking = tuple[int, int, int, str]
"""From, to, how much, and which lot."""


def store_faults(problem: Problem, plan: Plan) -> Iterator[str]:
    """Give a sentence for every store or vessel that is asked for too much."""
    stores: dict[str, list[Taking]] = defaultdict(list)
    vessels: dict[str, list[Taking]] = defaultdict(list)
    known = {one.name: one for one in problem.vessels}
    yield from _lots_take(problem, plan, stores, vessels)
    for milk, (vessel, kind, taking) in milk_takings(problem, plan).items():
        if vessel not in known or known[vessel].kind != kind:
            yield f"{milk} stands in no {kind}, or in another than it does."
        else:
            vessels[vessel].append(taking)
    yield from _kept(problem, plan, vessels)
    for name, takings in stores.items():
        yield from _too_much(name, problem.stores[name], takings)
    for name, takings in vessels.items():
        yield from _too_much(name, known[name].size, takings, alone=known[name].one_lot)


def _lots_take(
    problem: Problem,
    plan: Plan,
    stores: dict[str, list[Taking]],
    vessels: dict[str, list[Taking]],
) -> Iterator[str]:
    """Note what each planned step takes; a step in no vessel of its kind is a fault."""
    kinds = {one.name: one.kind for one in problem.vessels}
    begun = {(lot.name, step) for lot in problem.lots for step in lot.facts}
    for lot, step in _planned(problem, plan):
        span = plan.spans[lot][step.name]
        if step.hands is not None and (lot, step.name) not in begun:
            stores["hands"].append((span.start, span.end, 1000, lot))
        for kind, much in step.uses.items():
            taking = (span.start, span.end, much, lot)
            if kind in problem.stores:
                stores[kind].append(taking)
                continue
            name = plan.vessels.get(lot, {}).get(step.name, {}).get(kind, "")
            if kinds.get(name) != kind:
                yield f"{lot}: {step.name} is in no {kind}."
            else:
                vessels[name].append(taking)


def _planned(problem: Problem, plan: Plan) -> Iterator[tuple[str, Step]]:
    for lot in problem.lots:
        spans = plan.spans.get(lot.name, {})
        yield from ((lot.name, step) for step in lot.steps if step.name in spans)


def _kept(problem: Problem, plan: Plan, vessels: dict[str, list[Taking]]) -> Iterator[str]:
    """Look at neighbours with the same use: they keep one vessel, also while they wait."""
    for lot in problem.lots:
        spans, own = plan.spans.get(lot.name, {}), plan.vessels.get(lot.name, {})
        for step, after in pairwise(one for one in lot.steps if one.name in spans):
            for kind, much in step.uses.items():
                if kind in problem.stores or after.uses.get(kind) != much:
                    continue
                held, then = own.get(step.name, {}).get(kind), own.get(after.name, {}).get(kind)
                if held != then:
                    yield f"{lot.name}: {after.name} is in another {kind} than {step.name}."
                elif held in vessels:
                    gap = (spans[step.name].end, spans[after.name].start, much, lot.name)
                    vessels[held].append(gap)


def _too_much(name: str, size: int, takings: list[Taking], *, alone: bool = False) -> Iterator[str]:
    """Sweep over the ends of all takings; what ends at a moment goes before what begins."""
    events = [(end, 0, -much, lot) for start, end, much, lot in takings if end > start]
    events += [(start, 1, much, lot) for start, end, much, lot in takings if end > start]
    held: dict[str, int] = defaultdict(int)
    count: dict[str, int] = defaultdict(int)
    for at, begins, much, lot in sorted(events):
        held[lot] += much
        count[lot] += 1 if begins else -1
        lots = [one for one, number in count.items() if number]
        if sum(held.values()) > size or (alone and len(lots) > 1):
            yield f"{name} is asked for too much at minute {at}, by {', '.join(sorted(lots))}."
            return
