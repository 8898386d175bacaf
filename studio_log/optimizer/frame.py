"""What is the same for every model of a problem: start sets, stretches, vessels alike."""

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from studio_log.optimizer.shape import Stretch, stretches_of
from studio_log.optimizer.start_sets import swept
from studio_log.planning.board import Placement
from studio_log.planning.engine import SESSION, Studio
from studio_log.planning.placing import placement_of

if TYPE_CHECKING:
    from studio_log.planning.stretches import Ranges


@dataclass(frozen=True, slots=True)
class Alike:
    """Vessels of a kind which the same runs fit, each for one lot at a time; or one to share."""

    kind: str
    names: tuple[str, ...]
    room: int
    """How many lots, or how much together where it is shared."""
    shared: bool
    size: int

    def fits(self, kind: str, much: int) -> bool:
        """Say whether a run may lie in one of them."""
        return kind == self.kind and much <= self.size


class Frame:
    """A problem made ready for models."""

    def __init__(self, studio: Studio, *, hours: bool = True) -> None:
        self.studio, self.problem, self.hours = studio, studio.problem, hours
        board = studio.board if hours else None
        self.windows = studio.board.windows
        self._opens = [one.start for one in self.windows]
        self.stretches: dict[str, list[Stretch]] = {}
        self.sets: dict[str, list[Ranges]] = {}
        for name, chain in studio.chains.items():
            self.stretches[name] = stretches_of(chain)
            self.sets[name] = swept(chain, self.problem, board, studio.limits[name])
        self.fine_apart = studio.prices.session >= SESSION
        """Whether fine minutes count behind sessions, or are summed with them."""
        self.exact = not any(one.kind for one in self.problem.milks)
        """Whether models leave no plan out: in them a milk keeps its vessel for all of its life."""
        self.alike = self._alike()
        self.alike_of = {name: n for n, one in enumerate(self.alike) for name in one.names}
        self.twins = self._twins()
        self.pinned = {
            (name, run): old.vessels[run]
            for name, old in studio.old.items()
            for run in old.fixed
            if old.vessels[run] in self.alike_of
        }
        """Runs under way whose vessel is known from an old plan; they stay in it."""

    def impossible(self) -> list[str]:
        """Give the lots that have no place, even alone in the studio."""
        return [name for name, sets in self.sets.items() if not all(sets)]

    def choices(self) -> int:
        """Give visits times the sessions each may be in, summed: how large the whole is."""
        found = 0
        for name, sets in self.sets.items():
            for visit, own in zip(self.studio.chains[name].visits, sets, strict=True):
                if visit.length and own:
                    found += self.window_at(own[-1][1]) - self.window_at(own[0][0]) + 1
        return found

    def _alike(self) -> list[Alike]:
        """Put vessels together that differ by name only, as far as the runs there are can tell."""
        asked: dict[str, set[int]] = {}
        for chain in self.studio.chains.values():
            for run in chain.runs:
                asked.setdefault(run.kind, set()).add(run.much)
        groups: dict[tuple[str, int, str], list[str]] = {}
        taken = set(self.studio.milks.vessels.values())
        found = []
        for one in self.problem.vessels:
            fitting = [much for much in asked.get(one.kind, ()) if much <= one.size]
            if not fitting:
                continue
            if one.one_lot:
                own = one.name if one.name in taken else ""  # such a one is like no other
                groups.setdefault((one.kind, max(fitting), own), []).append(one.name)
            else:
                found.append(Alike(one.kind, (one.name,), one.size, shared=True, size=one.size))
        for (kind, size, _), names in groups.items():
            found.append(Alike(kind, tuple(names), len(names), shared=False, size=size))
        return found

    def _twins(self) -> list[list[str]]:
        """Give the lots that differ by name only."""
        if self.studio.old:
            return []  # the old plan tells them apart
        tied = {name for milk in self.problem.milks for name, _ in milk.uses}
        tied |= {milk.maker[0] for milk in self.problem.milks if milk.maker}
        goals: dict[str, tuple[str, ...]] = {}
        for name in self.studio.chains:
            goals[name] = tuple(one.name for one in self.problem.goals if name in one.lots)
        found: dict[str, list[str]] = {}
        for name, chain in self.studio.chains.items():
            lot = chain.lot
            if not lot.facts and name not in tied:
                told = (lot.steps, lot.pieces, lot.weight, lot.release, lot.due, lot.links)
                found.setdefault(repr((told, goals[name])), []).append(name)
        return [some for some in found.values() if len(some) > 1]

    def window_at(self, slot: int) -> int:
        """Give the number of the window in which a slot lies, or of the last before it."""
        return bisect_right(self._opens, slot) - 1

    def placement(self, name: str, starts: Sequence[int], vessels: Mapping[int, str]) -> Placement:
        """Give the placement of a lot, from the starts of its visits and its vessels."""
        window = {at: self.window_at(at) for at in starts}
        chain = self.studio.chains[name]
        return placement_of(chain, self.problem, tuple(starts), vessels, window)
