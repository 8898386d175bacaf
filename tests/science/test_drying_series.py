"""A cotton shirt weighed on an outdoor line (T. Piotrowski, "How laundry dries")."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.science.drying import DRY_WITHIN
from studio_log.science.drying_series import Weighing, course_of
from tests.support.reference import numbers

SHIRT = [Weighing(row["minute"], row["mass_g"]) for row in numbers("drying_series.csv")]
DRY_G = 158
"""After a tumble dryer, as the page says; the next day in the room it weighed 162 g."""
CRITICAL = 0.28
REGAIN = 162 / 158 - 1


def test_its_first_hour_tells_when_it_will_be_dry() -> None:
    """27 to 30 g in 15 min at first; within 2 % of its last weight between 60 and 90 min."""
    course = course_of(SHIRT[:3], DRY_G, critical=CRITICAL, regain=REGAIN)
    assert course is not None
    assert 27 <= course.rate * 15 <= 30.5
    final = SHIRT[-1].grams
    dry_at = next(one.minute for one in SHIRT if one.grams <= final * 1.02)
    assert dry_at == 75
    assert course.dry_minute == pytest.approx(dry_at, rel=0.25)


def test_more_weighings_do_not_make_it_worse() -> None:
    few = course_of(SHIRT[:3], DRY_G, critical=CRITICAL, regain=REGAIN)
    all_of_them = course_of(SHIRT, DRY_G, critical=CRITICAL, regain=REGAIN)
    assert few is not None
    assert all_of_them is not None
    assert abs(all_of_them.dry_minute - 75) <= abs(few.dry_minute - 75) + 1


@pytest.mark.parametrize(
    "weighings",
    [[], SHIRT[:2], SHIRT[4:], [Weighing(0, 280), Weighing(0, 270), Weighing(0, 260)],
     [Weighing(0, 280), Weighing(10, 281), Weighing(20, 282)]],
)  # fmt: skip
def test_too_little_or_a_cloth_that_does_not_dry_tells_nothing(weighings: list[Weighing]) -> None:
    assert course_of(weighings, DRY_G, critical=CRITICAL, regain=REGAIN) is None


def test_weights_of_nothing_are_refused() -> None:
    for dry, grams in ((0, 280), (158, 0)):
        with pytest.raises(ValueError, match="more than nothing"):
            course_of([Weighing(0, grams)], dry, critical=CRITICAL, regain=REGAIN)


@given(st.floats(0.5, 20), st.floats(50, 2000))
def test_a_straight_fall_is_found_and_the_slow_end_comes_after_it(rate: float, dry: float) -> None:
    weighings = [Weighing(m, dry * 1.9 - rate * m) for m in (0.0, 1.0, 2.0, 3.0)]
    if weighings[-1].grams / dry - 1 < CRITICAL:
        return
    course = course_of(weighings, dry, critical=CRITICAL, regain=0.05)
    assert course is not None
    assert course.rate == pytest.approx(rate, rel=1e-3)
    straight_to_dry = (1.9 - 1 - 0.05 - DRY_WITHIN) * dry / rate
    assert course.dry_minute > straight_to_dry
