"""Whether the lots hold the pieces that goals want: each goal alone, and any of them together."""

from collections.abc import Mapping, Sequence
from itertools import combinations

from studio_log.planning.problem import Goal


def shortage(
    goals: Sequence[Goal], pieces: Mapping[str, int]
) -> tuple[tuple[Goal, ...], int] | None:
    """Give the first goals whose lots hold too few pieces, and how many miss; None if none do."""
    for count in range(1, len(goals) + 1):
        for some in combinations(goals, count):
            wanted = sum(one.pieces for one in some)
            held = sum(pieces[name] for name in {name for one in some for name in one.lots})
            if wanted > held:
                return some, wanted - held
    return None
