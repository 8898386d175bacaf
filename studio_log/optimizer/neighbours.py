"""Which part of a plan is planned anew while the rest stays; chance comes from a seed."""

from collections.abc import Mapping
from random import Random
from typing import Final

from studio_log.optimizer.frame import Frame
from studio_log.optimizer.model import Part
from studio_log.planning.board import Placement
from studio_log.planning.improving import late_lots
from studio_log.planning.stretches import Ranges, met

DAY: Final = 1440
NEAR_DAYS: Final = 10
"""Days about its present place in which a visit may come to lie."""
GROUP: Final = 6
"""Lots that are placed anew together, at first."""
LEAST_GROUP: Final = 3
SLICE_DAYS: Final = (5, 8, 12)
"""Days of which every visit is placed anew."""
Places = Mapping[str, Placement]


def near(frame: Frame, name: str, at: Placement, days: int) -> list[Ranges]:
    """Give the starts of a lot's visits about where they are."""
    reach = days * DAY // frame.problem.grid
    return [
        met(own, [(start - reach, start + reach)])
        for own, start in zip(frame.sets[name], at.starts, strict=True)
    ]


class Neighbours:
    """Chooses parts of a plan."""

    def __init__(self, frame: Frame, seed: int) -> None:
        self.frame, self.random = frame, Random(seed)  # noqa: S311 - chance, not secrecy
        self.size = GROUP

    def learn(self, *, proved: bool) -> None:
        """Take more lots together where the solver was done with them, and fewer where not."""
        most = max(LEAST_GROUP, len(self.frame.studio.chains))
        self.size = min(most, self.size + 1) if proved else max(LEAST_GROUP, self.size - 1)

    def group(self, places: Places) -> Part:
        """Give some lots that lie near each other in time."""
        first = self.random.choice(sorted(places))
        return self._lots(places, self._about(places, [first]))

    def visitors(self, places: Places) -> Part:
        """Give the lots of a session that few visit, and some near them."""
        counts: dict[int, int] = {}
        for one in places.values():
            for number in one.sessions:
                counts[number] = counts.get(number, 0) + 1
        order = sorted(counts)
        weights = [1 / counts[number] ** 2 for number in order]
        thin = self.random.choices(order, weights)[0]
        some = sorted(name for name, one in places.items() if thin in one.sessions)
        return self._lots(places, self._about(places, some))

    def late(self, places: Places) -> Part | None:
        """Give a lot that makes a date late, and some that lie near it; None where none does."""
        studio = self.frame.studio
        ends = studio.ended | {name: one.end for name, one in places.items()}
        found = late_lots(studio.lateness, self.frame.problem.goals, ends)
        found = sorted(set(found) & set(places))
        if not found:
            return None
        return self._lots(places, self._about(places, [self.random.choice(found)]), backwards=True)

    def slice(self, places: Places) -> Part:
        """Give all visits of some days; what lies before and after them stays."""
        problem = self.frame.problem
        length = self.random.choice(SLICE_DAYS) * DAY // problem.grid
        starts = sorted(at for one in places.values() for at in one.starts)
        low = self.random.choice(starts) - length // 2
        sets: dict[str, list[Ranges]] = {}
        for name, one in places.items():
            if not any(low <= at <= low + length for at in one.starts):
                continue
            sets[name] = [
                met(own, [(low, low + length)]) if low <= at <= low + length else [(at, at)]
                for own, at in zip(self.frame.sets[name], one.starts, strict=True)
            ]
        return self._part(places, sets)

    def all_near(self, places: Places, days: int) -> Part:
        """Give all lots, each about where it is."""
        return self._part(
            places, {name: near(self.frame, name, at, days) for name, at in places.items()}
        )

    def _lots(self, places: Places, names: list[str], *, backwards: bool = False) -> Part:
        days = 3 * NEAR_DAYS if backwards else NEAR_DAYS
        sets = {name: near(self.frame, name, places[name], days) for name in names}
        return self._part(places, sets)

    def _about(self, places: Places, some: list[str]) -> list[str]:
        """Add to some lots those that lie nearest to the first, with some chance in it."""
        size = self.size
        mine = places[some[0]]
        middle, spread = mine.starts[0], 5 * DAY // self.frame.problem.grid
        order = sorted(
            (abs(one.starts[0] - middle) + spread * self.random.random(), name)
            for name, one in sorted(places.items())
            if name not in some
        )
        return [*some[:size], *(name for _, name in order[: max(0, size - len(some))])]

    def _part(self, places: Places, sets: dict[str, list[Ranges]]) -> Part:
        free = tuple(sets)
        fixed = {name: one for name, one in places.items() if name not in sets}
        return Part(free, sets, fixed, {name: places[name] for name in free})
