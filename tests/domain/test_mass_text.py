"""Weights and volumes as typed; sizes of units from NIST Handbook 44 App. C."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.mass_text import read_cups, read_grams, read_litres


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("412g", 412), ("412 grams", 412), ("0,4 kg", 400), ("0.4kg", 400), ("500 mg", 0.5),
        ("14.5 oz", 411.0680853125), ("1 lb 3 oz", 538.640939375), ("1 lb, 3 oz", 538.640939375),
        ("½ lb", 226.796185), ("1½ kg", 1500), ("1 1/2 kg", 1500), ("1 kg 200 g", 1200),
        ("0,400 kg", 400), ("412 G", 412), ("2 lbs.", 907.18474),
    ],
)  # fmt: skip
def test_a_weight_is_read(text: str, grams: float) -> None:
    assert read_grams(text) == pytest.approx(grams, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "litres"),
    [
        ("10 L", 10), ("10l", 10), ("450 mL", 0.45), ("2.5 gal", 9.46352946),
        ("3 cups", 0.7097647095), ("1 imperial pint", 0.56826125), ("1 pint", 0.473176473),
        ("2 metric cups", 0.5), ("1 fl oz", 0.0295735295625), ("1 gal 1 qt", 4.73176473),
    ],
)  # fmt: skip
def test_a_volume_is_read(text: str, litres: float) -> None:
    assert read_litres(text) == pytest.approx(litres, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "cups"), [("1/4 cup", 0.25), ("½", 0.5), ("4 tbsp", 0.25), ("12 tsp", 0.25), ("2", 2)]
)
def test_cups_are_read(text: str, cups: float) -> None:
    assert read_cups(text) == pytest.approx(cups, rel=1e-12)


@pytest.mark.parametrize(
    "text",
    ["", "g", "-3 g", "0 g", "1e5g", "nan g", "inf kg", "3 oz 1 lb", "3 g 3 g", "1.5.2 g", "٣ g",
     "99999999 kg", "412 g <b>", "5 L", "412 g\n", "1/0 kg", "g 412", "9" * 100],
)  # fmt: skip
def test_what_is_no_weight_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match=r"\.$") as refused:
        read_grams(text)
    assert not isinstance(refused.value, Question)


@pytest.mark.parametrize("text", ["412", "1,200 g"])
def test_a_doubtful_weight_is_asked_about(text: str) -> None:
    with pytest.raises(Question, match=r"412|1200"):
        read_grams(text)


@given(st.text(max_size=80))
def test_any_text_is_read_or_refused(text: str) -> None:
    for read in (read_grams, read_litres, read_cups):
        with suppress(Refusal):  # anything else that is raised fails the test
            assert read(text) > 0


@given(st.integers(1, 10_000_000))
def test_whole_grams_are_read_as_they_are(grams: int) -> None:
    assert read_grams(f"{grams} g") == grams
    assert read_grams(f"{grams}mg") == pytest.approx(grams / 1000, rel=1e-12)
