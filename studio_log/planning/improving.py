"""Improves a plan: some lots are taken out and placed again, and what is no worse is kept.

Which lots go: some by chance; those that come to a session which few visit, so that it may be
spared; or the one that makes a date late, with some that are in its way. Chance comes from a
seed, and tries are counted: same problem, seed and number of tries, same plan.
"""

from random import Random
from typing import TYPE_CHECKING, Final

from studio_log.planning.engine import Key, Limits, Studio
from studio_log.planning.problem import Goal
from studio_log.planning.score import Lateness

if TYPE_CHECKING:
    from studio_log.planning.board import Placement

DAY: Final = 1440
REACHES: Final = (3, 8, 8, 20, 60)
"""Days about its present place in which a lot is placed again."""
FEW_LOTS: Final = 25
"""Up to so many lots, now and then many of them go out at once."""
WORSE: Final = 0.08
"""How often one session more is borne, to get elsewhere."""
LEAST_STEP: Final = 360
"""Minutes: the least that is borne so."""
HOMEWARD: Final = 60
"""Tries without a better plan, after which the best one is taken up again."""


class Improver:
    """Holds the best plan so far, and the one that is being changed."""

    def __init__(self, studio: Studio, seed: int) -> None:
        self.studio, self.random = studio, Random(seed)  # noqa: S311 - chance, not secrecy
        self.now: Key = studio.key()
        self.best = self.now
        self.kept: dict[str, Placement] = dict(studio.board.placed)
        self.since_better = 0
        self.moved = studio.moved()
        """So many visits of the best plan are elsewhere than an old plan had them."""

    def step(self) -> bool:
        """Make one try; gives whether the best plan became better."""
        before = dict(self.studio.board.placed)
        out, barred = self._choose()
        if self.studio.milks.ready and self.random.random() < 0.5:
            family = [one for one in self.studio.milks.family(out) if one in before]
            out = list(dict.fromkeys([*family, *out]))
        done = self._again(out, barred)
        key = self.studio.key() if done else self.now
        if not done or not self._taken(key):
            self.studio.put_back(before)
        else:
            self.now = key
        self.since_better += 1
        if self.now < self.best:
            self.best, self.kept = self.now, dict(self.studio.board.placed)
            self.since_better, self.moved = 0, self.studio.moved()
            return True
        if self.since_better % HOMEWARD == 0:
            self.studio.put_back(self.kept)
            self.now = self.best
        return False

    def _taken(self, key: Key) -> bool:
        """Say whether a try is gone on from: no worse, or now and then a little."""
        if key <= self.now:
            return True
        step = max(self.studio.prices.session, LEAST_STEP)
        same_late = key[:2] == self.now[:2] and key[2] // step <= self.best[2] // step + 1
        return same_late and self.random.random() < WORSE

    # -- which lots ----------------------------------------------------------------------

    def _choose(self) -> tuple[list[str], int]:
        """Give the lots that go out, in the order they come back, and a session barred to them."""
        if self.now[1] and self.random.random() < 0.6:
            found = self._late()
            if found:
                return found, -1
        if self.studio.old and self.random.random() < 0.3:
            found = self._movers()
            if found:
                return found, -1
        if self.random.random() < 0.5:
            return self._visitors()
        return self._some(), -1

    def _some(self) -> list[str]:
        names = list(self.studio.board.placed)
        most = min(len(names), 3)
        if len(names) <= FEW_LOTS and not self.now[1] and self.random.random() < 0.15:
            most = min(len(names), 6)
        first = self.random.choice(names)
        size = self.random.randint(1, most)
        near = [one for one in self._near(first) if one != first]
        return self._shuffled([first, *near[: size - 1]])

    def _near(self, name: str) -> list[str]:
        """Give the lots by how near their ends are, with some chance in it."""
        placed = self.studio.board.placed
        mine, spread = placed[name].end, 10 * DAY
        return sorted(
            placed, key=lambda one: abs(placed[one].end - mine) + spread * self.random.random()
        )

    def _visitors(self) -> tuple[list[str], int]:
        """Give the lots of a session that few visit, which is barred to them."""
        visits = self.studio.board.visits
        visited = [number for number, count in sorted(visits.items()) if count > 0]
        weights = [1 / visits[number] ** 2 for number in visited]
        barred = self.random.choices(visited, weights)[0]
        placed = self.studio.board.placed
        out = [name for name, one in placed.items() if barred in one.sessions]
        if len(out) < 3 and self.random.random() < 0.5:
            near = [one for one in self._near(out[0]) if one not in out]
            out += near[: self.random.randint(1, 2)]
        return self._shuffled(out), barred

    def _late(self) -> list[str]:
        """Give the lot that makes a date late first, then some that end before it."""
        studio = self.studio
        culprits = late_lots(studio.lateness, studio.problem.goals, studio.ends())
        culprits = [one for one in culprits if one in studio.board.placed]
        if not culprits:
            return []
        first = self.random.choice(culprits)
        near = [one for one in self._near(first) if one != first]
        return [first, *self._shuffled(near[: self.random.randint(1, 5)])]

    def _movers(self) -> list[str]:
        """Give a lot that is not where an old plan had it, and some near it."""
        studio = self.studio
        moved = [
            one for one in studio.board.placed if one in studio.old and studio.moved_visits(one)
        ]
        if not moved:
            return []
        first = self.random.choice(moved)
        near = [one for one in self._near(first) if one != first]
        return self._shuffled([first, *near[: self.random.randint(0, 3)]])

    def _shuffled(self, names: list[str]) -> list[str]:
        self.random.shuffle(names)
        return names

    # -- placing again -------------------------------------------------------------------

    def _again(self, out: list[str], barred: int) -> bool:
        """Take lots out and place them again, in order; gives whether all found a place."""
        studio = self.studio
        old = {name: studio.board.take(name) for name in out}
        reach = self.random.choice(REACHES) * DAY // studio.problem.grid
        joining = self.random.random() < 0.5
        for name in out:
            prices = self._prices(barred, joining=joining)
            limits = around(studio.limits[name], old[name].starts, reach, back=self.now[1] > 0)
            found = studio.try_place(name, prices, limits)
            if found is None:
                return False
            studio.board.put(name, found)
        return True

    def _prices(self, barred: int, *, joining: bool) -> list[int]:
        """Price sessions; with `joining`, those that few visit cost something too."""
        studio = self.studio
        session = studio.prices.session
        prices = studio.sessions(session)
        if joining:
            for number, count in studio.board.visits.items():
                if 0 < count <= 3:
                    prices[number] = session // (4 * count)
        if barred >= 0:
            prices[barred] = 3 * max(session, LEAST_STEP)
        return prices


def around(limits: Limits, starts: tuple[int, ...], reach: int, *, back: bool) -> Limits:
    """Cut limits to so many slots about where the visits are; with `back` only forward."""
    found = []
    for (low, high), at in zip(limits, starts, strict=True):
        earliest = low if back else max(low, at - reach)
        found.append((earliest, min(high, at + reach)))
    return found


def late_lots(lateness: Lateness, goals: tuple[Goal, ...], ends: dict[str, int]) -> list[str]:
    """Give the lots whose ends make a goal or their own date late."""
    serves = lateness.serves(ends)
    found = [
        name for goal in goals for name in serves[goal.name] if ends[name] + goal.cured > goal.at
    ]
    return found + [name for name, end in ends.items() if lateness.of_due(name, end)]
