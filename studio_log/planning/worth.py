"""Fewer visits, or sooner ready: how much waiting a session is worth, from one end to the other."""

from typing import Final

WORTHS: Final[tuple[int | None, ...]] = (None, 2880, 1440, 720, 360, 120, 0)
"""`Problem.session_worth` in minutes of one lot's waiting, from fewest sessions to soonest ready.

None is the order of the score: no waiting outweighs a session. At 0 only waiting counts.
"""
USUAL: Final = 3
"""The place in WORTHS that is taken unless something else is wished: 12 hours."""
