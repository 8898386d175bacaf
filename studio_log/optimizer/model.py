"""The model of a studio's problem: some lots are placed by the solver, the others stay.

Visits are decided, not steps; times are slots of the grid. What is left out is left out without
loss: nights, closed days and the cure (`start_sets`), and the names of vessels that are alike.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Final

from ortools.sat.python import cp_model

from studio_log.optimizer.frame import Frame
from studio_log.optimizer.shape import Moment, Stretch
from studio_log.optimizer.start_sets import weathers
from studio_log.planning.board import Placement
from studio_log.planning.chain import NEVER, Chain, links_of
from studio_log.planning.stretches import Ranges, met

HANDS: Final = "hands"
Line = cp_model.LinearExpr | int


@dataclass(frozen=True, slots=True)
class Part:
    """What a model is about: the lots it places, where each visit may begin, the others' places."""

    free: tuple[str, ...]
    sets: Mapping[str, Sequence[Ranges]]
    fixed: Mapping[str, Placement] = field(default_factory=dict)
    hint: Mapping[str, Placement] = field(default_factory=dict)
    """A place known for each free lot; the solver begins there."""


@dataclass(slots=True)
class _Load:
    """The intervals on one store or group of vessels."""

    intervals: list[cp_model.IntervalVar] = field(default_factory=list)
    demands: list[int] = field(default_factory=list)
    empty: bool = False
    """Whether one of them may be of no length; such a one may lie inside another."""


class StudioModel:
    """The variables and rules; `levels` asks for the parts of the score."""

    def __init__(self, frame: Frame, part: Part) -> None:
        self.frame, self.part = frame, part
        self.model = cp_model.CpModel()
        self.starts: dict[str, list[cp_model.IntVar]] = {}
        self.inside: dict[str, list[dict[int, cp_model.IntVar]]] = {}
        self.ranges: dict[str, list[dict[int, Ranges]]] = {}
        """By lot and visit, where it may begin in each window."""
        self.lies_in: dict[tuple[str, int], dict[int, cp_model.IntVar]] = {}
        self.visited = {n for one in part.fixed.values() for n in one.sessions}
        self.sessions: dict[int, cp_model.IntVar] = {}
        self.gaps: dict[tuple[str, int], Line] = {}
        self._loads: dict[str, _Load] = {}
        self._span = self._reach()
        for name in part.free:
            self._lot(name)
        for name, one in part.fixed.items():
            self._fixed(name, one)
        self._milks()
        self._twins()
        self._close_loads()

    def _reach(self) -> tuple[int, int]:
        """Give the first and last slot that a free lot may touch."""
        sets = [one for name in self.part.free for one in self.part.sets[name] if one]
        longest = max((v.length for n in self.part.free
                       for v in self.frame.studio.chains[n].visits), default=0)  # fmt: skip
        low = min((one[0][0] for one in sets), default=0)
        return low, max((one[-1][1] for one in sets), default=0) + longest

    # -- one lot -------------------------------------------------------------------------

    def _lot(self, name: str) -> None:
        chain = self.frame.studio.chains[name]
        known = self.part.hint.get(name)
        starts = self.starts[name] = []
        inside = self.inside[name] = []
        self.ranges[name] = []
        for number, visit in enumerate(chain.visits):
            ranges = self.part.sets[name][number]
            domain = cp_model.Domain.from_flat_intervals(_flat(ranges) or [1, 0])
            start = self.model.new_int_var_from_domain(domain, f"{name} {number}")
            starts.append(start)
            self._hint(start, None if known is None else known.starts[number])
            at = None if known is None else known.starts[number]
            by_hand = visit.length and self.frame.hours
            places = self._touched(ranges, visit.length) if by_hand else {}
            self.ranges[name].append(places)
            inside.append(self._windows(start, places, at))
            if visit.length:
                interval = self.model.new_fixed_size_interval_var(start, visit.length, "")
                self._load(HANDS, interval, 1000)
        self._ways(name, chain)
        for first, second, most in links_of(chain, self.frame.problem):
            begin: Line = 0 if first < 0 else starts[first]
            self.model.add(starts[second] - begin <= most)
        for stretch in self.frame.stretches[name]:
            self._stretch(name, chain, stretch)

    def _windows(
        self, start: cp_model.IntVar, places: dict[int, Ranges], known: int | None
    ) -> dict[int, cp_model.IntVar]:
        """Say in which window of hours a visit lies; where there is one only, that is true."""
        found: dict[int, cp_model.IntVar] = {}
        for number, own in places.items():
            session = self._session(number)
            if len(places) == 1:
                found[number] = self.model.new_constant(1)
                if session is not None:
                    self.model.add(session == 1)
                break
            literal = found[number] = self.model.new_bool_var("")
            self.model.add_linear_expression_in_domain(
                start, cp_model.Domain.from_flat_intervals(_flat(own))
            ).only_enforce_if(literal)
            if session is not None:
                self.model.add_implication(literal, session)
            self._hint(literal, None if known is None else known == _in(own, known))
        if len(places) > 1:
            self.model.add_exactly_one(found.values())
        return found

    def _touched(self, ranges: Ranges, length: int) -> dict[int, Ranges]:
        """Give the slots of a start by the windows of hours they lie in."""
        found: dict[int, Ranges] = {}
        for low, high in ranges:
            first, last = self.frame.window_at(low), self.frame.window_at(high)
            for number in range(first, last + 1):
                window = self.frame.windows[number]
                own = met([(low, high)], [(window.start, window.end - length)])
                if own:
                    found.setdefault(number, []).extend(own)
        return found

    def _session(self, number: int) -> cp_model.IntVar | None:
        """Give the variable of a session; None where somebody comes anyway."""
        if number in self.visited:
            return None
        if number not in self.sessions:
            found = self.sessions[number] = self.model.new_bool_var(f"session {number}")
            if self.part.hint:
                self._hint(found, any(number in it.sessions for it in self.part.hint.values()))
        return self.sessions[number]

    def _ways(self, name: str, chain: Chain) -> None:
        """Bind each visit to the next, by what passes between them."""
        starts = self.starts[name]
        known = self.part.hint.get(name)
        reach = 2 * self.frame.problem.horizon
        for number, between in enumerate(chain.betweens):
            end = starts[number] + chain.visits[number].length
            gap = starts[number + 1] - end
            self.gaps[name, number] = gap
            kinds = weathers(self.frame.problem, between, reach)
            least = min(one.least for one in kinds)
            most = min(between.most, NEVER)
            self.model.add_linear_constraint(gap, least, most)
            if len(kinds) < 2:
                continue
            days = []
            for kind in kinds:
                day = self.model.new_bool_var("")
                days.append(day)
                domain = cp_model.Domain.from_flat_intervals(_flat(kind.slots))
                self.model.add_linear_expression_in_domain(end, domain).only_enforce_if(day)
                if kind.least > least:
                    self.model.add(gap >= kind.least).only_enforce_if(day)
                if known is not None:
                    at = known.starts[number] + chain.visits[number].length
                    self._hint(day, _in(kind.slots, at) == at)
            self.model.add_exactly_one(days)

    def _stretch(self, name: str, chain: Chain, stretch: Stretch) -> None:
        """Let a lot take what it takes, for as long as it does."""
        begin, end = (self._moment(name, one) for one in (stretch.begin, stretch.end))
        size = self._size(name, stretch)
        may_be_empty = isinstance(size, cp_model.IntVar) and not self._least(chain, stretch)
        if stretch.run < 0:
            interval = self.model.new_interval_var(begin, size, end, "")
            self._load(stretch.store, interval, stretch.much, empty=may_be_empty)
            return
        run = chain.runs[stretch.run]
        key = (name, stretch.run)
        if key not in self.lies_in:
            self.lies_in[key] = self._choices(name, stretch.run)
        for group, literal in self.lies_in[key].items():
            one = self.frame.alike[group]
            interval = self.model.new_optional_interval_var(begin, size, end, literal, "")
            much = run.much if one.shared else 1
            self._load(str(group), interval, much, empty=may_be_empty)

    def _size(self, name: str, stretch: Stretch) -> Line:
        (first, after), (second, until) = stretch.begin, stretch.end
        if first == second:
            return until - after
        top = self.frame.problem.horizon // self.frame.problem.grid + 1
        size = self.model.new_int_var(0, top, "")
        known = self.part.hint.get(name)
        if known is not None:
            begin = 0 if first < 0 else known.starts[first] + after
            self._hint(size, known.starts[second] + until - begin)
        return size

    def _least(self, chain: Chain, stretch: Stretch) -> int:
        """Give the least slots of a stretch that goes on through waits."""
        (first, after), (second, until) = stretch.begin, stretch.end
        if first < 0:
            return until
        visits = sum(chain.visits[n].length for n in range(first, second))
        waits = sum(chain.betweens[n].least for n in range(first, second))
        return visits + waits + until - after

    def _choices(self, name: str, run: int) -> dict[int, cp_model.IntVar]:
        """Give the groups of vessels that a run may lie in; it lies in one."""
        wanted = self.frame.studio.chains[name].runs[run]
        groups = [n for n, one in enumerate(self.frame.alike) if one.fits(wanted.kind, wanted.much)]
        if (name, run) in self.frame.pinned:
            groups = [self.frame.alike_of[self.frame.pinned[name, run]]]
        if len(groups) == 1:
            return {groups[0]: self.model.new_constant(1)}
        found = {group: self.model.new_bool_var("") for group in groups}
        self.model.add_exactly_one(found.values())
        known = self.part.hint.get(name)
        if known is not None and run in known.vessels:
            for group, literal in found.items():
                self._hint(literal, group == self.frame.alike_of[known.vessels[run]])
        return found

    def _moment(self, name: str, moment: Moment) -> Line:
        visit, after = moment
        return 0 if visit < 0 else self.starts[name][visit] + after

    # -- what all share ------------------------------------------------------------------

    def _fixed(self, name: str, one: Placement) -> None:
        """Let a lot that stays take what it takes, where free ones may come near it."""
        low, high = self._span
        for store, start, end, much in one.takings:
            begin, until = max(start, 0), end
            if until <= low or begin > high or begin >= until:
                continue
            group = self.frame.alike_of.get(store)
            interval = self.model.new_fixed_size_interval_var(begin, until - begin, name)
            if group is None:
                self._load(store, interval, much)
            else:
                shared = self.frame.alike[group].shared
                self._load(str(group), interval, much if shared else 1)

    def _milks(self) -> None:
        """Bind lots that share a milk: uses come behind its making and end within its life."""
        milks = self.frame.studio.milks
        for one in milks.ready:
            if one.made is not None:
                self._standing(milks.vessels.get(one.milk.name), one.made, one.life, one.milk.much)
            made = self._moment_of(*one.maker) if one.maker is not None else one.made or 0
            for use in one.uses:
                self._within(self._moment_of(use.lot, use.ends), made, -NEVER, one.life)
                if use.begins is not None and (one.maker is None or one.maker[0] != use.lot):
                    self._within(self._moment_of(use.lot, use.begins), made, 0, NEVER)

    def _standing(self, vessel: str | None, made: int, life: int, much: int) -> None:
        """Let a milk that is made already take what it stands in, as long as it is good."""
        group = self.frame.alike_of.get(vessel or "")
        begin, end = max(0, made), made + life
        if group is not None and begin < end:
            interval = self.model.new_fixed_size_interval_var(begin, end - begin, "")
            self._load(str(group), interval, much if self.frame.alike[group].shared else 1)

    def _moment_of(self, name: str, moment: Moment) -> Line:
        """Give the slot of a moment of any lot, as it is decided or stays."""
        if name in self.starts:
            return self._moment(name, moment)
        return self.part.fixed[name].starts[moment[0]] + moment[1]

    def _within(self, later: Line, earlier: Line, least: int, most: int) -> None:
        """Bind two moments; those of lots that stay do so already."""
        if not isinstance(later, int) or not isinstance(earlier, int):
            self.model.add_linear_constraint(later - earlier, least, most)

    def _load(
        self, store: str, interval: cp_model.IntervalVar, much: int, *, empty: bool = False
    ) -> None:
        """Let so much of a store, or of a group of vessels by its number, be taken for a time."""
        load = self._loads.setdefault(store, _Load())
        load.empty |= empty
        load.intervals.append(interval)
        load.demands.append(much)

    def _close_loads(self) -> None:
        """Let no store or group of vessels be asked for more than there is."""
        for store, load in self._loads.items():
            room, most = self._room(store)
            if min(load.demands) * 2 > most and not load.empty:
                self.model.add_no_overlap(load.intervals)
            elif sum(load.demands) > most or not isinstance(room, int):
                self.model.add_cumulative(load.intervals, load.demands, room)

    def _room(self, store: str) -> tuple[Line, int]:
        """Give how much there is of a store, or of a group of vessels by its number, and at most.

        Both are the same here; a model in which more may be asked for says otherwise.
        """
        stores = self.frame.problem.stores
        room = stores[store] if store in stores else self.frame.alike[int(store)].room
        return room, room

    def _twins(self) -> None:
        """Of lots that differ by name only, let the one that is first by now begin first."""
        for some in self.frame.twins:
            free = [name for name in some if name in self.starts]
            if self.part.hint:
                free.sort(key=lambda name: self.part.hint[name].starts)
            for one, other in pairwise(free):
                if self.part.sets[one] == self.part.sets[other]:
                    self.model.add(self.starts[one][0] <= self.starts[other][0])

    def _hint(self, variable: cp_model.IntVar, value: int | None) -> None:
        if value is not None:
            self.model.add_hint(variable, int(value))


def _in(ranges: Ranges, value: int) -> int:
    """Give the value if it lies in the ranges, else -1."""
    return value if any(low <= value <= high for low, high in ranges) else -1


def _flat(some: Ranges) -> list[int]:
    """Give the ends of all ranges in one list."""
    return [end for one in some for end in one]
