"""What is taken when: stores, vessels and hands, and how often each session is visited."""

from bisect import bisect_right
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from studio_log.planning.hours import windows_of
from studio_log.planning.problem import Problem

Taking = tuple[str, int, int, int]
"""Store or vessel, first slot, slot after the last, how much."""


@dataclass(frozen=True, slots=True)
class Placement:
    """One lot's place: the slot of each visit, the vessel of each run, and what that takes."""

    starts: tuple[int, ...]
    vessels: Mapping[int, str]
    takings: tuple[Taking, ...]
    sessions: tuple[int, ...]
    """The number of the window of each visit that needs hands."""
    end: int
    """Minute of the end of the last step before curing."""
    fine: int


class Board:
    """Holds the placements of lots; blocked stretches are worked out when they are asked for."""

    def __init__(self, problem: Problem) -> None:
        self.windows = windows_of(problem)
        self.longest = max((one.end - one.start for one in self.windows), default=0)
        """Slots of the longest window."""
        self.vessels = {one.name: one for one in problem.vessels}
        self.size = {**problem.stores, **{one.name: one.size for one in problem.vessels}}
        self.placed: dict[str, Placement] = {}
        self.visits: Counter[int] = Counter()
        self._taken: dict[str, dict[tuple[str, int], tuple[int, int, int]]] = {}
        self._blocked: dict[str, dict[int, list[tuple[int, int]]]] = {}

    def put(self, lot: str, placement: Placement) -> None:
        """Put a lot in its place."""
        self.placed[lot] = placement
        self.visits.update(placement.sessions)
        for number, (store, start, end, much) in enumerate(placement.takings):
            self._taken.setdefault(store, {})[lot, number] = (start, end, much)
            self._blocked.pop(store, None)

    def occupy(self, what: str, store: str, start: int, end: int, much: int) -> None:
        """Let a store be taken for good, by what is no lot."""
        self._taken.setdefault(store, {})[what, -1] = (start, end, much)
        self._blocked.pop(store, None)

    def take(self, lot: str) -> Placement:
        """Take a lot away, and give its placement."""
        placement = self.placed.pop(lot)
        self.visits.subtract(placement.sessions)
        for number, (store, *_) in enumerate(placement.takings):
            del self._taken[store][lot, number]
            self._blocked.pop(store, None)
        return placement

    def window_at(self, slot: int) -> int | None:
        """Give the number of the window that holds a slot; None between windows."""
        place = bisect_right(self.windows, slot, key=lambda one: one.start) - 1
        return place if place >= 0 and slot < self.windows[place].end else None

    def sessions(self) -> int:
        """Give how many sessions are visited."""
        return sum(count > 0 for count in self.visits.values())

    def blocked(self, store: str, much: int) -> list[tuple[int, int]]:
        """Give the stretches, apart and in order, in which so much more does not fit."""
        known = self._blocked.setdefault(store, {})
        if much not in known:
            vessel = self.vessels.get(store)
            alone = vessel is not None and vessel.one_lot
            room = 0 if alone else self.size[store] - much
            known[much] = self._over(store, room)
        return known[much]

    def _over(self, store: str, room: int) -> list[tuple[int, int]]:
        """Give the stretches in which more than `room` is taken."""
        taken = self._taken.get(store)
        if not taken:
            return []
        events = [(start, much) for start, _, much in taken.values()]
        events += [(end, -much) for _, end, much in taken.values()]
        events.sort()
        found: list[tuple[int, int]] = []
        held, since = 0, -1
        for at, much in events:
            held += much
            if held > room and since < 0:
                since = at
            elif held <= room and since >= 0:
                if since < at and found and found[-1][1] == since:
                    found[-1] = (found[-1][0], at)
                elif since < at:
                    found.append((since, at))
                since = -1
        return found


def joined(some: list[list[tuple[int, int]]]) -> list[tuple[int, int]]:
    """Join stretches of several lists into one list, apart and in order."""
    full = [one for one in some if one]
    if len(full) < 2:
        return full[0] if full else []
    found: list[tuple[int, int]] = []
    for start, end in sorted(stretch for one in full for stretch in one):
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(end, found[-1][1]))
        else:
            found.append((start, end))
    return found
