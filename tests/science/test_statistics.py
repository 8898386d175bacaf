"""The statistics of trials against certified, printed and independently computed values."""

import csv
import math
import random
from collections import defaultdict
from statistics import fmean

import pytest

from studio_log.science.statistics_curve import Saturating, fit_saturating, solve
from studio_log.science.statistics_line import fit_line, lack_of_fit, mean_interval
from studio_log.science.statistics_robust import far_off, rising, robust_line
from studio_log.science.statistics_tails import beta_share, f_tail, t_quantile, t_two_sided
from tests.support.reference import rows
from tests.support.tree import TREE

PLACES = [one / "shared" / "reference" for one in TREE.parents]
"""Beside the project, where the data of others are kept that are not copied into it."""
TOLD = {row["quantity"]: float(row["value"]) for row in rows("cure_age_expected.csv")}
DATA = rows("cure_age_data.csv")
AGES = [float(row["age_d"]) for row in DATA]
LOGS = [math.log10(one) for one in AGES]
DEPTHS = [float(row["y"]) for row in DATA]


def nist(name: str) -> list[dict[str, str]]:
    path = next((p for one in PLACES if (p := one / f"nist_{name}.csv").exists()), None)
    if path is None:
        pytest.skip("the certified data sets of NIST StRD are read where they are kept")
    with path.open(encoding="utf-8") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def columns(name: str) -> tuple[list[float], list[float]]:
    table = nist(f"{name}_data")
    return [float(row["x"]) for row in table], [float(row["y"]) for row in table]


# -- tails -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("df", "t"),
    [(1, 12.706), (2, 4.303), (3, 3.182), (5, 2.571), (10, 2.228), (30, 2.042), (120, 1.980)],
)
def test_t_is_that_of_the_printed_table(df: int, t: float) -> None:
    """Student's t, two-sided 5 %: any textbook's table; from memory."""
    assert t_quantile(df) == pytest.approx(t, abs=5e-4)
    assert t_two_sided(t_quantile(df), df) == pytest.approx(0.05, rel=1e-12)


def test_f_is_that_of_the_printed_table() -> None:
    """F, 5 %, with 4 and 30 degrees of freedom is 2.69, with 1 and 10 it is 4.96; from memory."""
    assert f_tail(2.69, 4, 30) == pytest.approx(0.05, abs=2e-4)
    assert f_tail(4.96, 1, 10) == pytest.approx(0.05, abs=2e-4)
    assert f_tail(math.inf, 4, 30) == 0
    assert f_tail(0, 4, 30) == 1


def test_the_tails_agree_with_each_other_and_with_what_is_known_in_closed_form() -> None:
    """t with 1 is Cauchy's: 1 - 2 atan(t) / pi. F with 1 and n is t squared. I_x(a, 1) is x^a."""
    for t in (0.01, 0.3, 1.0, 7.0, 900.0):
        assert t_two_sided(t, 1) == pytest.approx(1 - 2 * math.atan(t) / math.pi, rel=1e-9)
        assert f_tail(t * t, 1, 34) == pytest.approx(t_two_sided(t, 34), rel=1e-10)
    for a in (0.5, 3, 250):
        assert beta_share(a, 1, 0.7) == pytest.approx(0.7**a, rel=1e-11)
    with pytest.raises(ValueError, match="a, b > 0"):
        beta_share(0, 1, 0.5)
    with pytest.raises(ValueError, match="degrees of freedom"):
        t_quantile(0)


# -- a line ------------------------------------------------------------------------------


def test_norris_comes_out_to_the_certified_digits() -> None:
    """NIST StRD, Norris: 36 points, y = B0 + B1 x; relative 1e-9."""
    told = {row["quantity"]: row for row in nist("norris_certified")}
    line = fit_line(*columns("norris"))
    found = {
        "B0": (line.intercept, line.se_intercept),
        "B1": (line.slope, line.se_slope),
    }
    for name, (value, error) in found.items():
        assert value == pytest.approx(float(told[name]["value"]), rel=1e-9)
        assert error == pytest.approx(float(told[name]["std_dev"]), rel=1e-9)
    assert line.residual_sd == pytest.approx(float(told["residual_sd"]["value"]), rel=1e-9)
    assert line.r2 == pytest.approx(float(told["R_squared"]["value"]), rel=1e-12)
    assert line.df == int(told["df_residual"]["value"])


def test_the_line_through_the_cure_ages_is_that_of_other_libraries() -> None:
    """tests/reference/cure_age_expected.csv: relative 1e-6."""
    line = fit_line(LOGS, DEPTHS)
    slope = line.slope_interval()
    found = {
        "n": line.count,
        "ols_intercept": line.intercept,
        "ols_slope_per_decade": line.slope,
        "ols_se_intercept": line.se_intercept,
        "ols_se_slope": line.se_slope,
        "ols_t_slope": line.slope / line.se_slope,
        "ols_r2": line.r2,
        "ols_residual_sd": line.residual_sd,
        "ols_df": line.df,
        "ols_slope_ci95_lo": slope.low,
        "ols_slope_ci95_hi": slope.high,
    }
    assert found == pytest.approx({name: TOLD[name] for name in found}, rel=1e-6)
    assert line.p_slope == pytest.approx(TOLD["ols_p_slope"], rel=1e-5, abs=0)
    test = lack_of_fit(LOGS, DEPTHS, line)
    assert test is not None
    told = [TOLD[f"lack_of_fit_{name}"] for name in ("F", "df1", "df2", "p")]
    assert [test.f, test.df1, test.df2, test.p] == pytest.approx(told, rel=1e-5)


@pytest.mark.parametrize(
    ("x", "y"),
    [
        (
            (10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5),
            (8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68),
        ),
        (
            (8, 8, 8, 8, 8, 8, 8, 19, 8, 8, 8),
            (6.58, 5.76, 7.71, 8.84, 8.47, 7.04, 5.25, 12.50, 5.56, 7.91, 6.89),
        ),
    ],
)
def test_the_printed_line_of_two_very_different_sets(
    x: tuple[float, ...], y: tuple[float, ...]
) -> None:
    """F. J. Anscombe, Am. Stat. 27(1), 17-21, 1973: 3 + 0.5 x, R² 0.667; from memory."""
    line = fit_line(x, y)
    assert line.intercept == pytest.approx(3, abs=0.01)
    assert line.slope == pytest.approx(0.5, abs=0.001)
    assert line.se_slope == pytest.approx(0.118, abs=0.0005)
    assert line.r2 == pytest.approx(0.667, abs=0.001)


@pytest.mark.parametrize("age", [2, 10, 21, 40, 90])
def test_means_and_new_swatches_have_the_intervals_of_other_libraries(age: int) -> None:
    line = fit_line(LOGS, DEPTHS)
    mean, new = line.mean_interval(math.log10(age)), line.prediction_interval(math.log10(age))
    found = [mean.value, mean.low, mean.high, new.low, new.high]
    names = ("mean_at", "mean_ci95_lo", "mean_ci95_hi", "pred95_lo", "pred95_hi")
    assert found == pytest.approx([TOLD[f"{name}_{age}d"] for name in names], rel=1e-6)


def test_the_slopes_of_the_batches_have_their_mean_and_error() -> None:
    batches = defaultdict(list)
    for row, x, y in zip(DATA, LOGS, DEPTHS, strict=True):
        batches[row["batch"]].append((x, y))
    slopes = [fit_line(*zip(*some, strict=True)).slope for some in batches.values()]
    found = mean_interval(slopes)
    assert found.value == pytest.approx(TOLD["batch_slopes_mean"], rel=1e-6)
    se = (found.high - found.value) / t_quantile(2)
    assert se == pytest.approx(TOLD["batch_slopes_se"], rel=1e-6)


def test_what_no_line_goes_through_is_said() -> None:
    with pytest.raises(ValueError, match="three points"):
        fit_line([1, 2], [1, 2])
    with pytest.raises(ValueError, match="one place"):
        fit_line([2, 2, 2], [1, 2, 3])
    with pytest.raises(ValueError, match="two values"):
        mean_interval([1])


def test_a_perfect_line_has_no_error_and_no_p_and_equal_depths_no_r2() -> None:
    line = fit_line([0, 1, 2], [1, 3, 5])
    assert (line.slope, line.intercept, line.residual_sd, line.p_slope) == (2, 1, 0, None)
    flat = fit_line([0, 1, 2], [4, 4, 4])
    assert (flat.slope, flat.r2) == (0, None)
    assert flat.slope_interval().low == flat.slope_interval().high == 0


def test_lack_of_fit_needs_repeats_and_three_ages() -> None:
    def tested(x: list[float], y: list[float]) -> object:
        return lack_of_fit(x, y, fit_line(x, y))

    assert tested([1, 2, 3], [1, 2, 4]) is None
    assert tested([1, 1, 2, 2], [1, 2, 4, 5]) is None
    assert tested([1, 1, 2, 2, 3, 3], [1, 1, 2, 2, 3, 3]) is None
    equal = lack_of_fit([1, 1, 2, 2, 3, 3], [1, 1, 5, 5, 3, 3], fit_line([1, 2, 3], [1, 5, 3]))
    assert equal is not None
    assert (equal.f, equal.p) == (math.inf, 0)


# -- robust ------------------------------------------------------------------------------


def test_the_robust_line_is_that_of_another_library() -> None:
    found = robust_line(LOGS, DEPTHS)
    slope = found.slope
    told = [TOLD[f"theil_sen_{name}"] for name in ("slope", "intercept", "lo95", "hi95")]
    assert [slope.value, found.intercept, slope.low, slope.high] == pytest.approx(told, rel=1e-6)
    assert found.tau_b == pytest.approx(TOLD["kendall_tau_b"], rel=1e-6)


def test_one_wild_point_hardly_moves_the_robust_line_and_is_found() -> None:
    x = [float(one) for one in range(12)]
    y = [2 * one + 0.1 * (-1) ** int(one) for one in x]
    y[10] = 400
    assert fit_line(x, y).slope > 5
    line = robust_line(x, y)
    assert line.slope.value == pytest.approx(2, abs=0.1)
    assert far_off(b - line.at(a) for a, b in zip(x, y, strict=True)) == [10]
    assert line.at(5) == pytest.approx(10, abs=0.5)
    around = [100.0, 101.0, 99.0, 100.5, 99.5, 104.0]  # 1.4826 × 0.75 × 3.5 is 3.9
    assert far_off(around) == []
    assert far_off([*around[:5], 105.0]) == [5]
    assert far_off([]) == far_off([1.0, 1.0, 9.0]) == []
    assert robust_line([1, 2, 3], [4, 4, 4]).tau_b is None
    with pytest.raises(ValueError, match="one place"):
        robust_line([1, 1], [1, 2])


def test_of_three_points_the_interval_is_all_there_is() -> None:
    """Sen 1968: the ranks leave the list of slopes, which has three here: 1, 2 and 1.5."""
    found = robust_line([0, 1, 2], [0, 1, 3]).slope
    assert (found.low, found.value, found.high) == (1, 1.5, 2)


def test_the_rising_curve_is_that_of_another_library() -> None:
    ages = sorted(set(AGES))
    means = [fmean(y for a, y in zip(AGES, DEPTHS, strict=True) if a == age) for age in ages]
    assert means == pytest.approx([TOLD[f"mean_y_{age:g}d"] for age in ages], rel=1e-9)
    found = rising(means, [6] * len(ages))
    assert found == pytest.approx([TOLD[f"isotonic_{age:g}d"] for age in ages], rel=1e-6)


def test_neighbours_that_fall_are_pooled_by_weight() -> None:
    assert rising([1, 3, 2, 4], [1, 1, 3, 1]) == [1, 2.25, 2.25, 4]
    assert rising([3, 2, 1], [1, 1, 1]) == [2, 2, 2]
    chance = random.Random(3)
    for _ in range(50):
        means = [chance.gauss(0, 1) for _ in range(9)]
        weights = [chance.uniform(0.1, 5) for _ in means]
        found = rising(means, weights)
        assert found == sorted(found)
        # The whole weight rests where it was: a property of the least-squares answer.
        whole = sum(a * b for a, b in zip(found, weights, strict=True))
        assert whole == pytest.approx(sum(a * b for a, b in zip(means, weights, strict=True)))


# -- a level -----------------------------------------------------------------------------


def test_misra1a_comes_out_to_the_certified_digits() -> None:
    """NIST StRD, Misra1a: y = b1 (1 - exp(-b2 x)), 14 points; relative 1e-6, and closer."""
    told = {row["quantity"]: row for row in nist("misra1a_certified")}
    curve = fit_saturating(*columns("misra1a"), from_zero=True)
    assert curve is not None
    assert curve.rise == pytest.approx(float(told["b1"]["value"]), rel=1e-9)
    assert 1 / curve.tau == pytest.approx(float(told["b2"]["value"]), rel=1e-9)
    assert curve.se_rise == pytest.approx(float(told["b1"]["std_dev"]), rel=1e-8)
    assert curve.se_rate == pytest.approx(float(told["b2"]["std_dev"]), rel=1e-8)
    assert curve.residual_ss == pytest.approx(float(told["residual_ss"]["value"]), rel=1e-9)


@pytest.mark.parametrize("rise", [9.0, -4.0])
def test_a_curve_with_a_start_is_found_again(rise: float) -> None:
    told = Saturating(25, rise, 12, 0, None, None)
    ages = [1.0, 3, 7, 14, 28, 56, 90]
    found = fit_saturating(ages, [told.at(age) for age in ages])
    assert found is not None
    assert (found.start, found.rise, found.tau) == pytest.approx((25, rise, 12), rel=1e-7)
    assert told.at(found.reached()) == pytest.approx(25 + 0.9 * rise, rel=1e-6)


def test_where_no_level_is_within_reach_there_is_no_curve() -> None:
    ages = [1.0, 3, 7, 14, 28, 56]
    assert fit_saturating(ages, [2 * age for age in ages]) is None
    assert fit_saturating(ages, [5.0] * 6) is None
    assert fit_saturating([1, 2], [1, 2]) is None
    assert fit_saturating([0, 1, 2, 3], [1, 2, 3, 3]) is None


def test_a_few_equations_are_solved_or_not() -> None:
    assert solve([[4, 2], [2, 3]], [8, 8]) == pytest.approx([1, 2])
    assert solve([[1, 1], [1, 1]], [1, 1]) is None
    assert solve([[0, 0], [0, 1]], [1, 1]) is None
