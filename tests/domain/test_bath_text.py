"""What is typed of a bath: figures as people write them, everything else refused in words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.bath_text import read_bath_celsius, read_ph, whole_bath_code
from studio_log.domain.errors import Refusal


@pytest.mark.parametrize(
    ("typed", "celsius"),
    # 122 °F is 50 °C and 212 °F 100 °C by definition of the scales (NIST SP 811, B.9).
    [("50", 50), ("50 °C", 50), ("48,5", 48.5), ("122 F", 50), ("212f", 100), ("0", 0)],
)
def test_a_bare_heat_is_celsius(typed: str, celsius: float) -> None:
    assert read_bath_celsius(typed) == pytest.approx(celsius)


@pytest.mark.parametrize("typed", ["122", "-3", "hot", "", "1e3", "50 K", "106"])
def test_what_no_bath_can_be_is_refused(typed: str) -> None:
    with pytest.raises(Refusal):
        read_bath_celsius(typed)


@pytest.mark.parametrize(("typed", "ph"), [("10.5", 10.5), ("pH 11", 11), ("ph9,8", 9.8), ("0", 0)])
def test_a_ph_is_read(typed: str, ph: float) -> None:
    assert read_ph(typed) == pytest.approx(ph)


@pytest.mark.parametrize("typed", ["14.1", "-1", "alkaline", "", "1 0 5", "nan"])
def test_what_is_no_ph_is_refused(typed: str) -> None:
    with pytest.raises(Refusal):
        read_ph(typed)


@pytest.mark.parametrize("typed", ["B26-001", "b26-1", " B26 - 01 "])
def test_a_code_is_read_as_it_is_typed(typed: str) -> None:
    assert whole_bath_code(typed) == "B26-001"


@given(st.text(max_size=60))
def test_whatever_is_typed_is_read_or_refused(typed: str) -> None:
    for read, most in ((read_bath_celsius, 105.0), (read_ph, 14.0)):
        try:
            value = read(typed)
        except Refusal:
            continue  # in words; anything else fails the test
        assert 0 <= value <= most
