"""A project with least and longest time lags between starts, and scarce resources.

The problem is known as RCPSP/max. Times are whole units from 0.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Task:
    """A task of fixed length; `tail` is the least time from its start to the project's end."""

    name: str
    duration: int
    demand: Mapping[str, int] = field(default_factory=dict)
    release: int = 0
    tail: int = 0


@dataclass(frozen=True, slots=True)
class Lag:
    """start[second] - start[first] is at least `least`; a longest lag is one turned round."""

    first: str
    second: str
    least: int


@dataclass(frozen=True, slots=True)
class Project:
    """Tasks, lags and capacities by resource."""

    name: str
    tasks: tuple[Task, ...]
    lags: tuple[Lag, ...]
    capacity: Mapping[str, int]
