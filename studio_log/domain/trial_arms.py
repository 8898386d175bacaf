"""Arms of a trial held against its control: what is clear, and what is not.

Pieces of one batch are not apart from each other. So where there are two batches or more, each arm
counts once in each, and what batches differ by is taken off; with one batch pieces stand for it.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import fmean
from typing import Final, Literal

from studio_log.domain.errors import Refusal
from studio_log.domain.trials import Arm, Cell
from studio_log.language.words import tr
from studio_log.science.statistics_control import Held, HeldArms, held_by_blocks, held_by_pieces

LEAST_BLOCKS: Final = 2


@dataclass(frozen=True)
class ArmsHeld:
    """What a trial's arms say against the control; numbers are those of arms and batches."""

    held: HeldArms
    by: Literal["batches", "pieces"]
    blocks: int
    """How many batches it was told from."""
    left_out: tuple[int, ...] = ()
    """Batches in which some arm has no reading."""

    @property
    def clear(self) -> tuple[Held, ...]:
        """Arms whose interval leaves out 0."""
        return tuple(one for one in self.held.arms if one.clear)

    @property
    def unclear(self) -> tuple[Held, ...]:
        """The others."""
        return tuple(one for one in self.held.arms if not one.clear)

    @property
    def scattered(self) -> bool:
        """Whether there was any scatter to judge by."""
        return self.held.sd > 0


def hold_arms(readings: Sequence[tuple[Cell, float]], control: Arm) -> ArmsHeld:
    """Hold every arm that was read against the control; Refusal in words where that cannot be."""
    cells: dict[Cell, list[float]] = defaultdict(list)
    for cell, value in readings:
        cells[cell].append(value)
    arms = sorted({arm for arm, _ in cells})
    if control.number not in arms:
        raise Refusal(
            tr("The control, {arm}, has no reading: nothing can be held against it.",
               arm=control.words)
        )  # fmt: skip
    if len(arms) == 1:
        raise Refusal(tr("Only the control was read: there is nothing to hold against it."))
    blocks = sorted({block for _, block in cells})
    if len(blocks) > 1:
        return _by_batches(cells, arms, blocks, control.number)
    held = held_by_pieces({arm: cells[arm, blocks[0]] for arm in arms}, control.number)
    if held is None:
        raise Refusal(
            tr("There is one piece of each arm and one batch: how far alike pieces lie apart is "
               "not known, so no difference can be judged.")
        )  # fmt: skip
    return ArmsHeld(held, "pieces", 1)


def _by_batches(
    cells: Mapping[Cell, Sequence[float]], arms: Sequence[int], blocks: Sequence[int], control: int
) -> ArmsHeld:
    whole = [block for block in blocks if all((arm, block) in cells for arm in arms)]
    if len(whole) < LEAST_BLOCKS:
        raise Refusal(
            tr("Fewer than two batches have a reading of every arm: what batches differ by cannot "
               "be told from what arms do.")
        )  # fmt: skip
    table = {arm: [fmean(cells[arm, block]) for block in whole] for arm in arms}
    held = held_by_blocks(table, control)
    if held is None:
        raise Refusal(tr("There is nothing to hold against the control."))
    left_out = tuple(block for block in blocks if block not in whole)
    return ArmsHeld(held, "batches", len(whole), left_out)
