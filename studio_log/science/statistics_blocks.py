"""Randomised blocks: whether arms differ, the difference of the blocks taken off.

One value for each arm in each block, by the analysis of variance of Fisher (Box, Hunter and Hunter,
Statistics for Experimenters, chapter 7, from memory), checked by the example printed there.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean

from studio_log.science.statistics_tails import f_tail, t_quantile


@dataclass(frozen=True)
class BlockTest:
    """Sums of squares, degrees of freedom and the tests, in the units of the values."""

    arms_ss: float
    blocks_ss: float
    rest_ss: float
    arms_df: int
    blocks_df: int
    f_arms: float
    """Infinite where values of one block differ by the same steps in every block."""
    p_arms: float
    f_blocks: float
    p_blocks: float
    least_difference: float
    """How far two arms' means have to lie apart, at 95 %."""

    @property
    def rest_df(self) -> int:
        """Degrees of freedom of what neither arm nor block explains."""
        return self.arms_df * self.blocks_df


def block_test(table: Sequence[Sequence[float]]) -> BlockTest | None:
    """Test a table, a row an arm and a column a block; None with fewer than two of either.

    None as well where all values are the same.
    """
    arms, blocks = len(table), len(table[0]) if table else 0
    if arms < 2 or blocks < 2 or any(len(row) != blocks for row in table):
        return None
    mean = fmean(value for row in table for value in row)
    by_arm = [fmean(row) for row in table]
    by_block = [fmean(row[place] for row in table) for place in range(blocks)]
    arms_ss = blocks * math.fsum((one - mean) ** 2 for one in by_arm)
    blocks_ss = arms * math.fsum((one - mean) ** 2 for one in by_block)
    rest_ss = math.fsum(
        (table[arm][block] - by_arm[arm] - by_block[block] + mean) ** 2
        for arm in range(arms)
        for block in range(blocks)
    )
    dust = 1e-20 * max(1.0, *(abs(value) for row in table for value in row)) ** 2
    if arms_ss + blocks_ss + rest_ss <= dust:
        return None
    df_a, df_b = arms - 1, blocks - 1
    spread = (rest_ss if rest_ss > dust else 0.0) / (df_a * df_b)
    f_arms, f_blocks = _ratio(arms_ss / df_a, spread), _ratio(blocks_ss / df_b, spread)
    return BlockTest(
        arms_ss, blocks_ss, rest_ss, df_a, df_b,
        f_arms, f_tail(f_arms, df_a, df_a * df_b),
        f_blocks, f_tail(f_blocks, df_b, df_a * df_b),
        t_quantile(df_a * df_b) * math.sqrt(2 * spread / blocks),
    )  # fmt: skip


def _ratio(above: float, below: float) -> float:
    if below > 0:
        return above / below
    return math.inf if above > 0 else 0.0
