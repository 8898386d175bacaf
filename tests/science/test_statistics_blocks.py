"""Randomised blocks against a printed example and least squares; power against Cohen's table."""

import math

import numpy as np
import pytest

from studio_log.science.statistics_blocks import block_test
from studio_log.science.statistics_power import least_effect
from studio_log.science.statistics_tails import t_quantile

PENICILLIN = (
    (89.0, 84.0, 81.0, 87.0, 79.0),
    (88.0, 77.0, 87.0, 92.0, 81.0),
    (97.0, 92.0, 87.0, 89.0, 80.0),
    (94.0, 79.0, 85.0, 84.0, 88.0),
)
"""Yields of four variants (rows) in five blends of corn steep liquor: Box, Hunter and Hunter,
Statistics for Experimenters (1978), section 7.1; data and table of variance from memory."""


def test_the_printed_example_of_four_variants_in_five_blends() -> None:
    found = block_test(PENICILLIN)
    assert found is not None
    # As printed: sums of squares 70, 264 and 226; ratios 1.24 and 3.51.
    assert (found.arms_ss, found.blocks_ss, found.rest_ss) == pytest.approx((70, 264, 226))
    assert (found.arms_df, found.blocks_df, found.rest_df) == (3, 4, 12)
    assert round(found.f_arms, 2) == 1.24
    assert round(found.f_blocks, 2) == 3.50  # 66 / 18.83; the book rounds 18.8 first: 3.51
    assert found.p_arms == pytest.approx(0.339, abs=5e-4)
    assert found.p_blocks == pytest.approx(0.041, abs=5e-4)


def test_least_squares_with_and_without_the_arms_say_the_same() -> None:
    """The other road to F: what is left over with dummies for arms and blocks, by numpy."""
    chance = np.random.default_rng(5)
    table = chance.normal(20, 2, (6, 4)) + np.arange(6)[:, None] * 0.7
    arms, blocks = np.kron(np.eye(6), np.ones((4, 1))), np.kron(np.ones((6, 1)), np.eye(4))
    y = table.reshape(-1)

    def left(*parts: np.ndarray) -> float:
        design = np.hstack(parts)
        off = y - design @ np.linalg.lstsq(design, y, rcond=None)[0]
        return float(off @ off)

    both = left(arms, blocks)
    found = block_test(table.tolist())
    assert found is not None
    assert found.rest_ss == pytest.approx(both, rel=1e-9)
    assert found.f_arms == pytest.approx((left(blocks) - both) / 5 / (both / 15), rel=1e-9)
    assert found.f_blocks == pytest.approx((left(arms) - both) / 3 / (both / 15), rel=1e-9)


def test_tables_that_cannot_be_tested_and_ties() -> None:
    assert block_test([]) is None
    assert block_test([[1.0, 2.0]]) is None
    assert block_test([[1.0], [2.0]]) is None
    assert block_test([[1.0, 2.0], [3.0]]) is None
    assert block_test([[4.0, 4.0], [4.0, 4.0]]) is None
    exact = block_test([[1.0, 2.0, 4.0], [2.0, 3.0, 5.0]])  # each block steps by just one
    assert exact is not None
    assert math.isinf(exact.f_arms)
    assert exact.p_arms == 0


@pytest.mark.parametrize(("each", "effect"), [(26, 0.8), (64, 0.5), (393, 0.2)])
def test_the_least_effect_is_that_of_a_printed_table(each: int, effect: float) -> None:
    """Two means, power 0.80 at 0.05: Cohen, A Power Primer, Psychol. Bull. 112 (1992), table 2,
    gives 26, 64 and 393 in each group for large, medium and small effects (from memory)."""
    assert least_effect(math.sqrt(2 / each), 2 * each - 2) == pytest.approx(effect, rel=0.015)


@pytest.mark.parametrize(("batches", "least", "most"), [(3, 0.7, 0.82), (6, 0.76, 0.83)])
def test_trials_by_chance_find_such_an_effect_about_as_often(
    batches: int, least: float, most: float
) -> None:
    """Few batches are told a little too well; 200,000 trials are drawn by numpy."""
    effect = least_effect(1 / math.sqrt(batches), batches - 1)
    drawn = np.random.default_rng(11).normal(effect, 1, (200_000, batches))
    t = drawn.mean(axis=1) / (drawn.std(axis=1, ddof=1) / math.sqrt(batches))
    found = float((t > t_quantile(batches - 1)).mean())
    assert least < found < most
