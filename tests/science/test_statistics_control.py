"""Arms against one control: printed limits, a printed example, and drawing by chance."""

import math

import numpy as np
import pytest

from studio_log.science.statistics_blocks import block_test
from studio_log.science.statistics_control import (
    chance_within,
    held_by_blocks,
    held_by_pieces,
    limit_of,
)
from studio_log.science.statistics_tails import t_quantile
from tests.science.test_statistics_blocks import PENICILLIN

PRINTED = {
    5: (2.57, 3.03, 3.29, 3.48, 3.62, 3.73),
    10: (2.23, 2.57, 2.76, 2.89, 2.99, 3.07),
    20: (2.09, 2.38, 2.54, 2.65, 2.73, 2.80),
    60: (2.00, 2.27, 2.41, 2.51, 2.58, 2.64),
}
"""Two-sided 5 % limits for 1 to 6 arms, by degrees of freedom: Dunnett 1964, as textbooks of
experimental design print them, from memory."""
BLOOD = {
    0: (7.40, 8.50, 7.20, 8.24, 9.84, 8.32),
    1: (9.76, 8.80, 7.68, 9.36),
    2: (12.80, 9.68, 12.16, 9.20, 10.55),
}
"""Blood counts of animals untreated and under two drugs, millions of cells a mm³: Dunnett 1955,
section 3, from memory."""


@pytest.mark.parametrize("df", PRINTED)
def test_the_printed_limits(df: int) -> None:
    found = [round(limit_of(df, [0.5] * arms), 2) for arms in range(1, 7)]
    assert tuple(found) == PRINTED[df]


def test_the_example_of_1955() -> None:
    """There drug A is not told from the control, drug B is; p as libraries give it: 0.62, 0.006."""
    found = held_by_pieces(BLOOD, 0)
    assert found is not None
    first, second = found.arms
    assert found.control_mean == pytest.approx(8.25)
    assert (first.difference.value, second.difference.value) == pytest.approx((0.65, 2.628))
    assert found.df == 12
    assert found.sd == pytest.approx(1.175, abs=5e-4)
    assert not first.clear
    assert second.clear
    assert first.p == pytest.approx(0.620, abs=2e-3)
    assert second.p == pytest.approx(0.0059, abs=3e-4)


@pytest.mark.parametrize(("df", "control", "counts"), [(3, 4, (4, 6, 9)), (12, 3, (9, 9, 2))])
def test_arms_of_unlike_size_by_drawing_by_chance(
    df: int, control: int, counts: tuple[int, ...]
) -> None:
    """The other road: what such arms do a million times, none of them differing."""
    draws = np.random.default_rng(20261128)
    many = 1_000_000
    zero = draws.standard_normal(many) / math.sqrt(control)
    scatter = np.sqrt(draws.chisquare(df, many) / df)
    far = np.max(
        [
            np.abs((draws.standard_normal(many) / math.sqrt(n) - zero)
                   / math.sqrt(1 / n + 1 / control))
            for n in counts
        ],
        axis=0,
    ) / scatter  # fmt: skip
    shares = [n / (n + control) for n in counts]
    limit = limit_of(df, shares)
    assert float((far <= limit).mean()) == pytest.approx(0.95, abs=0.001)
    assert float((far <= 2.0).mean()) == pytest.approx(chance_within(2.0, df, shares), abs=0.002)


def test_one_arm_alone_is_a_t_test() -> None:
    assert limit_of(7, [0.4]) == t_quantile(7)
    for arms in range(2, 8):
        together = limit_of(7, [0.5] * arms)
        apart = t_quantile(7, 1 - 0.05 / arms)
        assert t_quantile(7) < together < apart, "wider than one, narrower than each for itself"


def test_in_blocks_the_scatter_is_that_of_the_printed_table() -> None:
    """Rest of the penicillin example: 226 of 12 degrees; a difference has sd² (1/5 + 1/5)."""
    found = held_by_blocks(dict(enumerate(PENICILLIN, 1)), control=1)
    test = block_test(PENICILLIN)
    assert found is not None
    assert test is not None
    assert found.df == test.rest_df == 12
    assert found.sd**2 == pytest.approx(226 / 12)
    assert [one.difference.value for one in found.arms] == pytest.approx([1, 5, 2])
    wide = 2.68 * math.sqrt(226 / 12 * 2 / 5)  # d(3, 12) as printed: 2.68
    apart = found.arms[1].difference
    assert apart.high - apart.value == pytest.approx(wide, rel=2e-3)
    assert not any(one.clear for one in found.arms), "as its F of 1.24 says"


def test_what_blocks_differ_by_is_taken_off() -> None:
    steps = {1: (0.0, 10.0, 20.0), 2: (2.0, 12.1, 21.9)}
    blocked, loose = held_by_blocks(steps, 1), held_by_pieces(steps, 1)
    assert blocked is not None
    assert loose is not None
    assert blocked.arms[0].clear
    assert not loose.arms[0].clear


def test_what_cannot_be_held_against_a_control() -> None:
    assert held_by_pieces({0: [1.0, 2.0]}, 0) is None
    assert held_by_pieces({0: [1.0], 1: [2.0]}, 0) is None
    assert held_by_pieces({0: [1.0, 2.0], 1: []}, 0) is None
    assert held_by_blocks({0: [1.0, 2.0]}, 0) is None
    assert held_by_blocks({0: [1.0], 1: [2.0]}, 0) is None
    assert held_by_blocks({0: [1.0, 2.0], 1: [2.0]}, 0) is None
    ties = held_by_pieces({0: [1.0, 1.0], 1: [1.0, 1.0], 2: [2.0, 2.0]}, 0)
    assert ties is not None
    assert ties.sd == 0
    assert [one.p for one in ties.arms] == [1.0, 0.0]
