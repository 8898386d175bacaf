"""What a search for lots gives."""

from collections.abc import Mapping
from dataclasses import dataclass

from studio_log.services.questions import LotLine


@dataclass(frozen=True)
class LotsFound:
    """The codes of all that is found, in order; how many each state would show; the first rows."""

    codes: tuple[str, ...]
    counts: Mapping[str, int]
    understood: tuple[str, ...] = ()
    """What was typed, as it was understood, in small words."""
    first: tuple[LotLine, ...] = ()
    order: tuple[str, bool] = ("need", False)
    """The order in force, and whether it runs backwards: one that was typed goes before."""
