"""Solves a model part by part: lateness first, then sessions, then fine minutes.

What a part reached binds the next ones. A part is proved when the solver has shown that it
cannot be less, those before it as they are.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from studio_log.optimizer.colouring import named
from studio_log.optimizer.frame import Frame
from studio_log.optimizer.model import Line, Part, StudioModel
from studio_log.optimizer.score_model import ScoreModel
from studio_log.optimizer.solving import Found, Measure, solve
from studio_log.planning.board import Placement

Places = Mapping[str, Placement]


@dataclass(slots=True)
class Reached:
    """How far the levels came; `bounds` and `proved` by part, as far as they were looked at."""

    found: Found = "unknown"
    places: Places | None = None
    bounds: dict[str, int] = field(default_factory=dict)
    proved: set[str] = field(default_factory=set)


class Levels:
    """One model, solved part by part."""

    def __init__(
        self,
        frame: Frame,
        part: Part,
        stop: Callable[[], bool],
        hear: Callable[[Places], None] = lambda _: None,
    ) -> None:
        self.frame, self.part, self.stop, self.hear = frame, part, stop, hear
        self.own = StudioModel(frame, part)
        self.score = ScoreModel(self.own)
        self.reached = Reached()
        self._found = False

    def run(self, measure: Measure, settled: Mapping[str, int], *, proofs: bool = False) -> Reached:
        """Solve the parts in their order, each with a measure, but those that are settled.

        Where it is about proofs, a part that is not proved is the last.
        """
        for name, make in self.score.parts().items():
            line, unit = make()
            if name in settled:
                self.own.model.add(line <= settled[name] // unit)
                continue
            if not self._level(name, line, unit, measure):
                break
            if proofs and name not in self.reached.proved:
                break
        return self.reached

    def _level(self, name: str, line: Line, unit: int, measure: Measure) -> bool:
        """Solve one part; gives whether the next has a ground to stand on."""
        model, reached = self.own.model, self.reached
        if not isinstance(line, int):
            model.minimize(line)
        solved = solve(model, measure, self.stop, lambda values: self.hear(self.places(values)))
        model.clear_objective()  # type: ignore[no-untyped-call]
        if solved.values is None:
            if not self._found:
                reached.found = solved.found
            return False
        self._found = True
        reached.found, reached.places = solved.found, self.places(solved.values)
        fixed = isinstance(line, int)
        reached.bounds[name] = (line if isinstance(line, int) else round(solved.bound)) * unit
        if solved.found == "optimal":
            reached.proved.add(name)
        if not fixed:
            model.add(line <= round(solved.objective))
        model.clear_hints()  # type: ignore[no-untyped-call]
        for index, value in enumerate(solved.values):
            model.add_hint(model.get_int_var_from_proto_index(index), value)
        return True

    def places(self, values: Sequence[int]) -> Places:
        """Give the placements that a solution stands for, those of the lots that stay too."""
        own, frame = self.own, self.frame
        starts = {
            name: tuple(values[one.index] for one in some) for name, some in own.starts.items()
        }
        groups = {
            key: next(group for group, literal in some.items() if values[literal.index])
            for key, some in own.lies_in.items()
        }
        return named(frame, starts, groups, {**self.part.hint, **self.part.fixed})
