"""A method's steps drawn to scale: when each begins and ends if all goes by its aim."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.domain.methods import Method, MethodStep, StepKind
from studio_log.present.words import window_words

_HOUR: Final = timedelta(hours=1)
_STEPS: Final = (0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 72, 168, 336)
"""Distances of the lines under the scale, in hours."""
MOST_LINES: Final = 8


@dataclass(frozen=True)
class DrawnStep:
    """One row of the drawing; moments are hours from the start of the method."""

    title: str
    kind: StepKind
    start: float
    earliest: float
    """Earliest, aim and latest end, counted from `start`'s moment."""
    aim: float
    latest: float
    tends: tuple[float, ...] = ()
    folded: str = ""
    """How long a rest is that is folded up: "90 d"; "" where it is drawn at its length."""
    length: str = ""
    """How long it lasts, in words: what minutes are beside days is only read."""


def drawn_steps(method: Method, cure_days: int | None = None) -> tuple[DrawnStep, ...]:
    """Give the rows of a method, each step begun at the aim of its gap after the one before.

    A cure (a step without a length) is folded: `cure_days`, else the method's own view.
    """
    rows: list[DrawnStep] = []
    at = timedelta(0)
    for step in method.steps:
        start = at + step.gap.aim
        rows.append(_row(step, start, _cure_words(method, cure_days)))
        at = start + (step.lasts.aim if step.lasts else timedelta(0))
    return tuple(rows)


def whole_hours(rows: Sequence[DrawnStep]) -> float:
    """Give how many hours the sheet has to show, the soft end of the last step with it."""
    return max((row.latest for row in rows), default=0.0)


def scale_lines(hours: float) -> tuple[float, ...]:
    """Give the hours at which the scale is marked, nought first, at most `MOST_LINES` + 1."""
    step = next((one for one in _STEPS if hours / one <= MOST_LINES), hours or 1.0)
    return tuple(step * number for number in range(int(hours / step) + 1))


def hours_words(hours: float) -> str:
    """Say a mark of the scale: "0", "15 min", "6 h", "2 d"."""
    if hours == 0:
        return "0"
    if hours < 1:
        return f"{hours * 60:g} min"
    return f"{hours / 24:g} d" if hours % 24 == 0 else f"{hours:g} h"


def _cure_words(method: Method, days: int | None) -> str:
    if days is None:
        days = method.cure.default_days if method.cure else 0
    return f"{days} d"


def _row(step: MethodStep, start: timedelta, cure: str) -> DrawnStep:
    begin = start / _HOUR
    if step.lasts is None:
        return DrawnStep(step.title, step.kind, begin, begin, begin, begin, folded=cure)
    return DrawnStep(
        step.title,
        step.kind,
        begin,
        begin + step.lasts.earliest / _HOUR,
        begin + step.lasts.aim / _HOUR,
        begin + step.lasts.latest / _HOUR,
        tends=tuple(begin + at / _HOUR for at in _tends(step)),
        length=window_words(step.lasts),
    )


def _tends(step: MethodStep) -> tuple[timedelta, ...]:
    """Give the offsets of tending up to the aim; the interval counts from the last offset."""
    if step.tending is None or step.lasts is None:
        return ()
    offsets = list(step.tending.offsets)
    every = step.tending.every
    if every:
        at = (offsets[-1] if offsets else timedelta(0)) + every
        while at < step.lasts.aim:
            offsets.append(at)
            at += every
    return tuple(at for at in offsets if at < step.lasts.aim)
