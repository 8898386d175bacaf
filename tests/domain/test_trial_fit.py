"""A trial's answer: clear or not, by batches or not, bent, wild, and degenerate in words."""

import math
import random

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.trial_file import Reading
from studio_log.domain.trial_fit import TrialFit, fit_trial
from studio_log.domain.trial_words import trial_words
from tests.support.reference import rows

TOLD = {row["quantity"]: float(row["value"]) for row in rows("cure_age_expected.csv")}
CURE = [
    Reading(float(row["age_d"]), float(row["y"]), row["batch"], line)
    for line, row in enumerate(rows("cure_age_data.csv"), 4)
]


def readings(*points: tuple[float, float], batch: str = "") -> list[Reading]:
    return [Reading(age, depth, batch, line) for line, (age, depth) in enumerate(points, 2)]


def said(fit: TrialFit) -> str:
    return "\n".join(trial_words(fit))


def test_the_cure_ages_have_a_clear_effect_by_their_batches() -> None:
    """cure_age_expected.csv: 4.5113 a tenfold, error 0.13744 of three batches, t 4.3027."""
    fit = fit_trial(CURE, at=[90])
    assert (fit.clear, fit.slope_by, fit.bent, fit.robust_agrees) == (True, "batches", False, True)
    assert fit.slope.value == pytest.approx(TOLD["batch_slopes_mean"], rel=1e-6)
    wide = 4.302653 * TOLD["batch_slopes_se"]
    assert fit.slope.high - fit.slope.value == pytest.approx(wide, rel=1e-5)
    (far,) = [one for one in fit.expected if one.extrapolated]
    assert far.age_d == 90
    assert far.swatch.high == pytest.approx(TOLD["pred95_hi_90d"], rel=1e-6)
    text = said(fit)
    assert text.startswith("Depth rises by 4.51 for each tenfold of age (95 % interval 3.92 to 5.1")
    assert "It fits (lack of fit p = 0.822)" in text
    assert fit.saturating is None
    assert fit.rising is None


def test_without_batches_the_interval_says_what_it_does_not_know() -> None:
    bare = [Reading(one.age_d, one.depth, "", one.line) for one in CURE]
    fit = fit_trial(bare)
    assert fit.slope_by == "swatches"
    assert fit.slope.low == pytest.approx(TOLD["ols_slope_ci95_lo"], rel=1e-6)
    assert "No batches are named" in said(fit)
    single = [Reading(one.age_d, one.depth, "b1", one.line) for one in CURE]
    assert "All swatches are of one batch" in said(fit_trial(single))


def test_scatter_alone_is_no_clear_effect() -> None:
    chance = random.Random(11)
    points = [(age, 30 + chance.gauss(0, 1)) for age in (1, 3, 7, 14, 28) for _ in range(4)]
    fit = fit_trial(readings(*points))
    assert not fit.clear
    assert said(fit).startswith("No clear effect: for each tenfold of age depth changes by")
    assert "may still be hidden" in said(fit)


def test_an_interval_holds_its_slope_nineteen_times_of_twenty() -> None:
    """What 95 % means: of 400 trials without effect about 20 may look clear."""
    chance = random.Random(5)
    ages = (1.0, 3.0, 7.0, 14.0, 28.0, 56.0)
    clear = 0
    for _ in range(400):
        table = [
            Reading(age, depth_of_batch + chance.gauss(0, 1), str(batch), 0)
            for batch in range(4)
            for depth_of_batch in [chance.gauss(30, 3)]
            for age in ages
        ]
        clear += fit_trial(table).clear
    assert 8 <= clear <= 36  # binomial, 400 and 0.05: mean 20, three deviations 13


def test_equal_depths_are_no_effect_and_nothing_divides_by_nought() -> None:
    for depth in (4.1, 0.1 + 0.2, -7.0):
        for batch in ("", "a"):
            fit = fit_trial(readings(*[(age, depth) for age in (1, 1, 3, 7, 9)], batch=batch))
            assert (fit.clear, fit.line.r2, fit.slope.value) == (False, None, 0)
            assert said(fit).startswith("No clear effect")
    two = [Reading(age, 4.1, batch, 2) for age in (1, 3, 9) for batch in "ab"]
    assert not fit_trial(two).clear


def levelled(rise: float) -> list[Reading]:
    chance = random.Random(2)
    return [
        Reading(age, 25 - rise * math.expm1(-age / 4) + chance.gauss(0, 0.1), batch, 2)
        for age in (1.0, 3.0, 7.0, 14.0, 28.0, 56.0, 90.0)
        for batch in "abc"
    ]


@pytest.mark.parametrize("rise", [9.0, -9.0])
def test_where_a_line_does_not_fit_a_level_is_found(rise: float) -> None:
    fit = fit_trial(levelled(rise))
    assert fit.bent
    assert fit.saturating is not None
    assert fit.saturating.rise == pytest.approx(rise, abs=0.3)
    assert fit.saturating.reached() == pytest.approx(4 * math.log(10), rel=0.1)
    assert fit.rising is not None
    ordered = sorted(fit.rising.depths, reverse=rise < 0)
    assert list(fit.rising.depths) == ordered
    assert fit.rising.reached_d == pytest.approx(9.2, abs=3)
    text = said(fit)
    assert "It does not fit" in text
    assert "A curve with a level" in text
    assert f"only {'rising' if rise > 0 else 'falling'}" in text


def test_a_wild_swatch_is_named_by_its_line() -> None:
    points = [(float(age), 30 + math.log10(age) * 2) for age in (1, 2, 4, 8, 16, 32, 64, 128)]
    table = readings(*[(a, d + 0.1 * (n % 2)) for n, (a, d) in enumerate(points)])
    table[-1] = Reading(128, 90, "", 9)
    fit = fit_trial(table)
    assert (fit.robust_agrees, fit.wild) == (False, (9,))
    assert "Look at line 9 of the file" in said(fit)


def test_batch_and_age_that_go_together_cannot_be_told_apart() -> None:
    table = [Reading(age, 20 + age, f"b{age}", 2) for age in (1.0, 7.0, 28.0) for _ in "xy"]
    fit = fit_trial(table)
    assert (fit.confounded, fit.slope_by) == (True, "swatches")
    assert "Each batch has one age only" in said(fit)


def test_two_batches_are_said_to_be_few() -> None:
    table = [Reading(age, 20 + age / 9, batch, 2) for age in (1.0, 7.0, 28.0) for batch in "ab"]
    assert "Two batches say little" in said(fit_trial(table))


def test_a_control_stands_beside_the_fit() -> None:
    fit = fit_trial([*readings((0, 12), (0, 14)), *CURE])
    assert fit.control == (12, 14)
    assert fit.line.count == 36
    assert "Control of age 0, not in the fit: 2 swatches, mean depth 13." in said(fit)


@pytest.mark.parametrize(
    ("table", "words"),
    [
        (readings((7, 30), (7, 31), (7, 32)), "All 3 swatches are of one age, 7 d"),
        (readings((1, 30), (7, 31)), "2 swatches with an age are too few"),
        (readings((0, 30), (0, 31), (0, 31)), "age 0 are a control"),
        ([], "0 swatches"),
    ],
)
def test_what_cannot_be_fitted_is_answered_in_words(table: list[Reading], words: str) -> None:
    with pytest.raises(Refusal, match=words) as refused:
        fit_trial(table)
    assert "Nothing was changed." in str(refused.value)


def test_two_ages_have_a_slope_but_no_test_of_the_line() -> None:
    fit = fit_trial(readings((1, 30), (1, 31), (10, 33), (10, 34)))
    assert fit.slope.value == pytest.approx(3)
    assert fit.lack is None
    assert "cannot be tested: two ages only" in said(fit)


@pytest.mark.parametrize("sign", [1, -1])
def test_nine_tenths_are_reached_between_two_ages_on_the_log_scale(sign: int) -> None:
    """From 0 by 8 to 10: 9 lies half way from 10 to 100 d, at the root of 1000."""
    points = [(age, sign * depth) for age, depth in ((1, 0), (10, 8), (100, 10)) for _ in "ab"]
    fit = fit_trial(readings(*points))
    assert fit.rising is not None
    assert fit.rising.depths == (0, sign * 8, sign * 10)
    assert fit.rising.reached_d == pytest.approx(1000**0.5)


def test_the_change_is_that_from_the_youngest_to_the_oldest() -> None:
    """3 a tenfold; from 2 to 20 d is one tenfold."""
    fit = fit_trial(readings((2, 30), (2, 31), (20, 33), (20, 34)))
    assert fit.change == pytest.approx(3)
