"""What is wished of a lot's place: prices, limits, and where an old plan had it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final


@dataclass(frozen=True, slots=True)
class Old:
    """Where an old plan had a lot."""

    slots: tuple[int | None, ...] = ()
    """By visit; None where it was not planned. Empty where there was no plan."""
    vessels: Mapping[int, str] = field(default_factory=dict)
    """By run: the vessel that is taken where it makes no difference."""
    fixed: frozenset[int] = frozenset()
    """Runs that can be in no other vessel."""


NOTHING_OLD: Final = Old()


@dataclass(frozen=True, slots=True)
class Wish:
    """What a place costs beside its own minutes off target and to taking down."""

    session: Sequence[int]
    """The price of a visit in each window, by its number."""
    late: Callable[[int], int]
    """The price of an end at this minute; it never falls as the minutes grow."""
    limits: Sequence[tuple[int, int]]
    """Earliest and latest slot of every visit."""
    stop: Callable[[], bool] = lambda: False
    old: Old = NOTHING_OLD
    moved: int = 0
    """The price of a visit by hand that is not where an old plan had it."""
    stride: int = 1
    """Only each so manieth slot of a window is looked at, and those that join other work."""
