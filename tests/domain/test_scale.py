"""Weighing by the steps of a scale; 3.4 g are 34 mL of a 10 % solution (10 g in 100 mL)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.scale import MOST_OFF_PERCENT, on_scale


@pytest.mark.parametrize(
    ("grams", "step", "weighed", "shown"),
    [(89.91, 1, 90, "90 g"), (3.4, 0.1, 3.4, "3.4 g"), (7.5, 5, 10, "10 g"),
     (0.3, 1, 0, "less than 1 g"),
     (1.13, 0.25, 1.25, "1.25 g"), (0.0149, 0.01, 0.01, "0.01 g"), (12.5, 1, 13, "13 g")],
)  # fmt: skip
def test_an_amount_is_rounded_to_the_nearest_step(
    grams: float, step: float, weighed: float, shown: str
) -> None:
    found = on_scale(grams, step)
    assert found.grams == pytest.approx(weighed)
    assert found.shown == shown


def test_where_a_scale_is_too_coarse_a_stock_solution_is_measured() -> None:
    found = on_scale(3.4, 1)
    assert found.off_percent == pytest.approx(0.5 / 3.4 * 100)
    assert "measure 34 mL of a 10 % stock solution (10 g made up to 100 mL)" in found.advice
    weak = on_scale(0.1, 1)
    assert "10 mL of a 1 % stock solution" in weak.advice
    assert on_scale(34, 1).advice == ""


def test_the_edges_count_as_within() -> None:
    """Half a step of 1 g is just 5 % of 10 g; 0.5 g are just 5 mL of a 10 % solution."""
    assert on_scale(10, 1).advice == ""
    assert "measure 5 mL of a 10 %" in on_scale(0.5, 1).advice
    assert on_scale(500, 100).grams == 500
    assert on_scale(0.01, 0.001).grams == pytest.approx(0.01)


def test_what_does_not_dissolve_wants_a_finer_scale() -> None:
    advice = on_scale(3.4, 1, dissolves=False).advice
    assert "finer" in advice
    assert "stock" not in advice


@pytest.mark.parametrize("step", [0, -1, 0.0001, 101, float("nan"), float("inf")])
def test_a_step_that_no_scale_has_is_refused(step: float) -> None:
    with pytest.raises(Refusal, match="1 mg and 100 g"):
        on_scale(10, step)


@pytest.mark.parametrize("grams", [0, -1, float("nan"), float("inf")])
def test_an_amount_of_nothing_is_refused(grams: float) -> None:
    with pytest.raises(Refusal, match="above nought"):
        on_scale(grams, 1)


@given(st.floats(0.001, 1e6), st.sampled_from([0.001, 0.01, 0.1, 0.5, 1.0, 2.0, 5.0]))
def test_no_step_is_further_off_than_half_and_what_is_off_is_told(
    grams: float, step: float
) -> None:
    found = on_scale(grams, step)
    assert abs(found.grams - grams) <= step / 2 * (1 + 1e-6)
    assert bool(found.advice) == (found.off_percent > MOST_OFF_PERCENT)
