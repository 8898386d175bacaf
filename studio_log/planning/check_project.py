"""Checks the starts of a project with lags and scarce resources against every rule."""

from collections.abc import Iterator, Mapping

from studio_log.planning.project import Project


def project_violations(
    project: Project, starts: Mapping[str, int], makespan: int | None = None
) -> list[str]:
    """Give a sentence for every rule that the starts break; none for a good plan."""
    missing = [one.name for one in project.tasks if one.name not in starts]
    if missing or len(starts) != len(project.tasks):
        return [f"The tasks are not each planned once: {', '.join(missing) or 'too many'}."]
    return list(_faults(project, starts, makespan))


def _faults(project: Project, starts: Mapping[str, int], makespan: int | None) -> Iterator[str]:
    for task in project.tasks:
        if starts[task.name] < max(0, task.release):
            yield f"Task {task.name} starts before it may."
    for lag in project.lags:
        apart = starts[lag.second] - starts[lag.first]
        if apart < lag.least:
            yield f"Task {lag.second} starts {apart} after {lag.first}, not {lag.least} or more."
    yield from _too_much(project, starts)
    ends = (starts[task.name] + max(task.duration, task.tail) for task in project.tasks)
    true = max(ends, default=0)
    if makespan is not None and makespan != true:
        yield f"The project ends at {true}; the plan says {makespan}."


def _too_much(project: Project, starts: Mapping[str, int]) -> Iterator[str]:
    for name, capacity in project.capacity.items():
        for at in {starts[task.name] for task in project.tasks if task.demand.get(name)}:
            taken = sum(
                task.demand.get(name, 0)
                for task in project.tasks
                if starts[task.name] <= at < starts[task.name] + task.duration
            )
            if taken > capacity:
                yield f"Resource {name} is asked for {taken} at {at}, and has {capacity}."
