"""What a lot takes, as stretches between moments of its visits."""

from dataclasses import dataclass

from studio_log.planning.chain import Chain

Moment = tuple[int, int]
"""A visit and slots from its beginning; the visit -1 is the start of the plan."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """So much of a store, or a vessel of a run, from one moment to another."""

    begin: Moment
    end: Moment
    much: int
    store: str = ""
    run: int = -1


def stretches_of(chain: Chain) -> list[Stretch]:
    """Give all that a lot takes but hands; what goes on without a break is one stretch."""
    found: list[Stretch] = []
    for one in sorted(_pieces(chain), key=lambda it: (it.store, it.run, it.much, it.begin)):
        last = found[-1] if found else None
        same = last is not None and (last.store, last.run, last.much) == (
            one.store, one.run, one.much
        )  # fmt: skip
        if same and last is not None and last.end == one.begin:
            found[-1] = Stretch(last.begin, one.end, one.much, one.store, one.run)
        else:
            found.append(one)
    return found


def _pieces(chain: Chain) -> list[Stretch]:
    found: list[Stretch] = []
    for number, visit in enumerate(chain.visits):
        held = [(one, -1) for one in visit.holds] + [(one, run) for run, one in visit.runs]
        for one, run in held:
            if one.length:
                begin, end = (number, one.start), (number, one.start + one.length)
                found.append(Stretch(begin, end, one.much, one.store, run))
    ways = list(enumerate(chain.betweens))
    if chain.opening is not None:
        ways.append((-1, chain.opening))
    for number, between in ways:
        begin = (number, chain.visits[number].length if number >= 0 else 0)
        end = (number + 1, 0)
        found += [Stretch(begin, end, much, store) for store, much in between.holds]
        found += [Stretch(begin, end, chain.runs[run].much, run=run) for run in between.runs]
    return found
