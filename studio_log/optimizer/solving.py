"""One run of the solver: how long, how many workers, and that it ends when it is told to."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from threading import Event, Thread
from typing import Final, Literal

from ortools.sat.python import cp_model

ASKED_EACH_S: Final = 0.02
"""Seconds between two questions whether to end."""
Found = Literal["optimal", "feasible", "infeasible", "unknown"]
STATUS: Final[dict[int, Found]] = {
    int(cp_model.OPTIMAL): "optimal",
    int(cp_model.FEASIBLE): "feasible",
    int(cp_model.INFEASIBLE): "infeasible",
}


@dataclass(frozen=True, slots=True)
class Measure:
    """How much a run may take: the solver's own count of work, which the clock does not touch."""

    work: float | None = None
    workers: int = 1
    seed: int = 1
    repeatable: bool = True
    """With several workers: whether they take turns, so that all goes the same way each time."""
    held: bool = False
    """Whether what is hinted at is held to."""


@dataclass(frozen=True, slots=True)
class Solved:
    """What came of a run; `values` of all variables by their number, None without a solution."""

    found: Found
    values: Sequence[int] | None
    bound: float
    objective: float


class _Heard(cp_model.CpSolverSolutionCallback):
    """Hands each solution on, and ends the run where it is told to."""

    def __init__(self, hear: Callable[[Sequence[int]], None], stop: Callable[[], bool]) -> None:
        super().__init__()
        self._hear, self._stop = hear, stop
        self.fault: Exception | None = None

    def on_solution_callback(self) -> None:
        """Hear a solution; a fault is kept, since it must not go through the solver."""
        try:
            self._hear(self.response_proto.solution)
            if self._stop():
                self.stop_search()
        except Exception as fault:  # noqa: BLE001 - raised again behind the solver
            self.fault = fault
            self.stop_search()


def solve(
    model: cp_model.CpModel,
    measure: Measure,
    stop: Callable[[], bool],
    hear: Callable[[Sequence[int]], None] = lambda _: None,
) -> Solved:
    """Run the solver until it is done, has done its measure of work, or is told to stop.

    A model that makes no sense, which is a fault of ours, is a ValueError.
    """
    if stop():
        return Solved("unknown", None, float("-inf"), float("inf"))
    solver = cp_model.CpSolver()
    own = solver.parameters
    own.num_workers = measure.workers
    own.random_seed = measure.seed
    own.interleave_search = measure.repeatable and measure.workers > 1
    own.fix_variables_to_their_hinted_value = measure.held
    if measure.work is not None:
        own.max_deterministic_time = measure.work
    heard, over = _Heard(hear, stop), Event()

    def watch() -> None:
        while not over.wait(ASKED_EACH_S):
            if stop():
                solver.stop_search()

    watcher = Thread(target=watch, name="end of a run", daemon=True)
    watcher.start()
    try:
        status = int(solver.solve(model, heard))
    finally:
        over.set()
        watcher.join()
    if heard.fault is not None:
        raise heard.fault
    if status == int(cp_model.MODEL_INVALID):
        raise ValueError(model.validate())
    found = STATUS.get(status, "unknown")
    values = list(solver.response_proto.solution) if found in {"optimal", "feasible"} else None
    return Solved(found, values, solver.best_objective_bound, solver.objective_value)
