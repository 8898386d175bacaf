"""Longest ways between the starts of tasks, as a matrix that grows limit by limit.

`matrix[a][b]` is the least that start b lies after start a; row and column 0 are the moment 0.
Rows are never changed in place: so states of a search share those that are alike.
"""

from collections.abc import Callable, Sequence
from typing import Final

from studio_log.planning.project import Project

NONE: Final = -(10**12)
"""Where no limit leads from a to b."""
Matrix = list[list[int]]


def matrix_of(project: Project, stop: Callable[[], bool]) -> Matrix | None:
    """Give all longest ways of a project's lags; None where limits contradict each other.

    Also None where it was told to stop. Floyd and Warshall: the cube of the number of tasks.
    """
    count = len(project.tasks) + 1
    numbers = {task.name: n for n, task in enumerate(project.tasks, 1)}
    matrix = [[NONE] * count for _ in range(count)]
    for n, task in enumerate(project.tasks, 1):
        matrix[0][n] = max(0, task.release)
    for lag in project.lags:
        first, second = numbers[lag.first], numbers[lag.second]
        matrix[first][second] = max(matrix[first][second], lag.least)
    for n in range(count):
        matrix[n][n] = max(matrix[n][n], 0)
    for middle in range(count):
        through = matrix[middle]
        if stop():
            return None
        for n in range(count):
            base = matrix[n][middle]
            if base > NONE:
                matrix[n] = longer(matrix[n], base, through)
    return None if any(matrix[n][n] > 0 for n in range(count)) else matrix


def longer(row: Sequence[int], base: int, through: Sequence[int]) -> list[int]:
    """Give a row in which ways of `base` and then those of another row are looked at too."""
    return [
        one if one >= base + other else base + other if other > NONE else one
        for one, other in zip(row, through, strict=True)
    ]


def limited(matrix: Matrix, first: int, second: int, least: int) -> Matrix:
    """Give the matrix with one limit more, which must contradict none."""
    through = matrix[second]
    found = []
    for row in matrix:
        base = row[first] + least
        worth = row[first] > NONE and base > row[second]
        found.append(longer(row, base, through) if worth else row)
    return found
