"""Improves a plan: some lots are taken out and placed again, and what is no worse is kept.

Two kinds of tries take turns. Walking seeks fewer sessions: a session that few visit is held to
be nearly spared, so that visits drift together; starts are looked at some minutes apart, and the
minutes themselves do not count. At home the best plan is made finer, its visits placed exactly.
Which lots go out: some by chance; those that come to a session which few visit; the one that
makes a date late, with some in its way; or one that is not where an old plan had it. Chance comes
from a seed, and tries are counted: same problem, seed and number of tries, same plan.
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
NEAR: Final = (1, 3, 3, 8, 20)
"""The same while the best plan is made finer, with every start looked at."""
FEW_LOTS: Final = 25
"""Up to so many lots, now and then many of them go out at once."""
FEWER_LOTS: Final = 10
"""Up to so many lots, that is done more often."""
WORSE: Final = 0.08
"""How often one session more is borne, to get elsewhere."""
LEAST_STEP: Final = 360
"""Minutes: the least that is borne so."""
WALK: Final = 60
"""Tries of a walk, from the best plan on; one that finds a better plan goes on as long again."""
AT_HOME: Final = 15
"""Tries behind each walk that make the best plan finer."""
APART: Final = 30
"""Minutes between the starts that are looked at while walking."""
SHARED: Final = (1.0, 0.5, 0.25, 0.12, 0.06, 0.03)
"""What the first, second, and so on, visit to a session adds to its price while walking."""


class Improver:
    """Holds the best plan so far, and the one that is being changed."""

    def __init__(self, studio: Studio, seed: int) -> None:
        self.studio, self.random = studio, Random(seed)  # noqa: S311 - chance, not secrecy
        self.now: Key = studio.key()
        self.best = self.now
        self.kept: dict[str, Placement] = dict(studio.board.placed)
        self.moved = self._moved()
        """So many visits of the best plan are elsewhere than an old plan had them."""
        self.walking, self.left = False, AT_HOME
        self.stride = max(1, APART // studio.problem.grid)
        self.worn = self._worn()
        self.rebuilds = 0 if studio.old or self.now[1] or not self._seeks_few else 2
        """So many times all lots are placed anew, for few sessions, before anything else."""

    def _moved(self) -> int:
        return self.studio.moved() if self.studio.prices.moved else 0

    @property
    def _seeks_few(self) -> bool:
        """Whether a session counts for more than a day of waiting."""
        return self.studio.prices.session > DAY

    def step(self) -> bool:
        """Make one try; gives whether the best plan became better."""
        before = dict(self.studio.board.placed)
        if not self.left and not self.rebuilds:
            self._turn()
            before = dict(self.kept)
        coarse = self.walking or self.rebuilds > 0
        if not self._try() or not self._taken():
            self.studio.put_back(before)
            return False
        if coarse and self.now < self.best:
            self._refine()
        if self.now < self.best:
            self.best, self.kept = self.now, dict(self.studio.board.placed)
            self.moved = self._moved()
            if self.walking:
                self.left = WALK
            return True
        return False

    def _try(self) -> bool:
        """Change the plan on the board; gives whether all lots have a place."""
        if self.rebuilds:
            self.rebuilds -= 1
            return self._rebuild(joining=self.rebuilds == 0)
        self.left -= 1
        out, barred = self._choose()
        if self.studio.milks.ready and self.random.random() < 0.5:
            out = list(dict.fromkeys([*self.studio.milks.family(out), *out]))
        return self._again([one for one in out if one in self.studio.board.placed], barred)

    def _turn(self) -> None:
        """Go from walking home to the best plan, or from home out again; late plans stay home."""
        self.walking = not self.walking and not self.best[1] and self._seeks_few
        self.left = WALK if self.walking else AT_HOME
        self.studio.put_back(self.kept)
        self.now, self.worn = self.best, self._worn()

    def _taken(self) -> bool:
        """Say whether a try is gone on from: no worse, or now and then a little."""
        key, worn = self.studio.key(), self._worn()
        step = max(self.studio.prices.session, LEAST_STEP)
        bold = self.random.random() < WORSE
        if self.walking:
            good = key[:2] == self.now[:2] and worn <= self.worn + bold * step
        else:
            near = key[:2] == self.now[:2] and key[2] // step <= self.best[2] // step + 1
            good = key <= self.now or (bold and near)
        if good:
            self.now, self.worn = key, worn
        return good

    def _worn(self) -> float:
        """Give what the plan is worth while walking: sessions by how many visit them, and moves."""
        prices, visits = self.studio.prices, self.studio.board.visits
        shared = sum(sum(SHARED[:count]) for count in visits.values() if count > 0)
        return prices.session * shared + prices.moved * self._moved()

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
        often = 0.4 if len(names) <= FEWER_LOTS else 0.15
        most = min(len(names), 3)
        if len(names) <= FEW_LOTS and not self.now[1] and self.random.random() < often:
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
        days = self.random.choice(REACHES if self.walking or self.now[1] else NEAR)
        reach = days * DAY // studio.problem.grid
        joining = self.random.random() < 0.5
        for name in out:
            prices = self._shares() if self.walking else self._prices(joining=joining)
            if barred >= 0:
                prices[barred] = 3 * max(studio.prices.session, LEAST_STEP)
            limits = around(studio.limits[name], old[name].starts, reach, back=self.now[1] > 0)
            stride = self.stride if self.walking else 1
            found = studio.try_place(name, prices, limits, stride=stride)
            if found is None:
                return False
            studio.board.put(name, found)
        return True

    def _rebuild(self, *, joining: bool) -> bool:
        """Place all lots anew, each so that it shares sessions with those before it."""
        studio = self.studio
        studio.clear()
        for name in studio.order():
            prices = self._shares() if joining else studio.sessions(studio.prices.session)
            found = studio.try_place(name, prices, studio.limits[name], stride=self.stride)
            if found is None:
                return False
            studio.board.put(name, found)
        return True

    def _refine(self) -> None:
        """Place each lot again exactly, about where it is, with the sessions there are."""
        studio = self.studio
        for name in list(studio.board.placed):
            if studio.stop():
                break
            old = studio.board.take(name)
            limits = around(studio.limits[name], old.starts, DAY // studio.problem.grid, back=False)
            found = studio.try_place(name, studio.sessions(studio.prices.session), limits)
            studio.board.put(name, found or old)
        self.now, self.worn = studio.key(), self._worn()

    def _shares(self) -> list[int]:
        """Price sessions as walking does: the more visit one already, the less one more costs."""
        session, visits = self.studio.prices.session, self.studio.board.visits
        shares = [int(session * one) for one in SHARED]
        prices = [shares[0]] * len(self.studio.board.windows)
        for number, count in visits.items():
            if count > 0:
                prices[number] = shares[count] if count < len(shares) else 0
        return prices

    def _prices(self, *, joining: bool) -> list[int]:
        """Price sessions; with `joining`, those that few visit cost something too."""
        studio = self.studio
        session = studio.prices.session
        prices = studio.sessions(session)
        if joining:
            for number, count in studio.board.visits.items():
                if 0 < count <= 3:
                    prices[number] = session // (4 * count)
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
