"""Numbers as typed are exact: a third is a third, a tenth a tenth, whichever sign parts them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.domain.number_text import pointed, read_exact, read_number


@pytest.mark.parametrize(
    ("text", "value"),
    [("412", Fraction(412)), ("0.1", Fraction(1, 10)), ("0,1", Fraction(1, 10)),
     ("1/3", Fraction(1, 3)), ("1 1/2", Fraction(3, 2)), (".5", Fraction(1, 2)),
     ("0,400", Fraction(2, 5)), ("1.123456789", Fraction(1123456789, 10**9))],
)  # fmt: skip
def test_a_number_is_read_exactly(text: str, value: Fraction) -> None:
    assert read_exact(text) == value
    assert read_number(text) == float(value)


def test_a_thousand_mark_is_asked_about_and_a_false_fraction_refused() -> None:
    with pytest.raises(Question, match=r"1800, or as 1\.800"):
        read_exact("1,800")
    for text in ("1/0", "2 3/2"):
        with pytest.raises(Refusal, match="no fraction"):
            read_exact(text)


def test_sums_of_parts_lose_nothing() -> None:
    """Three thirds of a pound are one: 453.59237 g exactly (NIST Handbook 44)."""
    assert read_grams("1/3 lb") == float(Fraction(45359237, 300000))
    assert read_grams("0.1 kg 20 g") == 120
    assert read_litres("1/3 cup") == float(Fraction(2365882365, 10**10) / 3)


@given(st.integers(0, 999_999_999), st.integers(0, 6))
def test_written_and_read_again_a_number_is_the_same(digits: int, places: int) -> None:
    value = Fraction(digits, 10**places)
    if value < 1000:
        assert read_exact(pointed(float(value), places)) == value


@given(st.integers(0, 999), st.integers(0, 99), st.integers(1, 99))
def test_a_fraction_is_the_same_typed_and_computed(whole: int, above: int, below: int) -> None:
    if 0 < above < below:
        assert read_exact(f"{whole} {above}/{below}") == whole + Fraction(above, below)
