"""The calculator's sums against printed examples, and against whatever may be typed.

"Handbook" below are the sources that stand in resources/help/sources.md beside each figure; what
is plain arithmetic says so.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.amount_shown import grams_shown
from studio_log.language.words import tr
from studio_log.present.calculator.parts import (
    Answer,
    Calculation,
    Curve,
    as_text,
    understood,
    worked,
)
from studio_log.present.calculator.table import BY_SLUG, CALCULATIONS
from studio_log.present.calculator.units import kind_of, significant

EACH = pytest.mark.parametrize("of", CALCULATIONS, ids=lambda one: one.slug)


def answer(slug: str, **typed: str) -> Answer:
    """Type into the fields of a calculation; the others keep what they offer."""
    of = BY_SLUG[slug]
    heard = {
        one.slug: understood(one, typed.pop(one.slug.replace(" ", "_"), one.offered))
        for one in of.inputs
    }
    assert not typed, typed
    assert [one.words for one in heard.values() if one.fault] == []
    return worked(of, {key: one.value for key, one in heard.items() if one.value is not None})


@EACH
def test_what_is_offered_gives_a_figure_with_its_source(of: Calculation) -> None:
    found = answer(of.slug)
    assert found.figure
    assert found.source
    assert of.says
    assert all(one.says for one in of.inputs)


@EACH
def test_every_letter_of_a_page_leads_to_one_field(of: Calculation) -> None:
    letters = [one.label[one.label.index("&") + 1].casefold() for one in of.inputs]
    assert len(set(letters)) == len(letters)


@EACH
@given(text=st.text(max_size=70))
def test_whatever_is_typed_is_understood_or_refused_in_words(of: Calculation, text: str) -> None:
    values = {}
    for one in of.inputs:
        heard = understood(one, one.offered if one.kind == "choice" else text)
        assert heard.fault == (heard.value is None)
        assert not heard.fault or heard.words
        values[one.slug] = understood(one, one.offered).value if heard.fault else heard.value
    found = worked(of, values)  # type: ignore[arg-type]
    assert found.figure or found.lines


def test_shares_and_baths_are_plain_proportion() -> None:
    assert answer("share", cloth="412 g", share="15 %", step="1 g").figure == "62 g"
    assert answer("bath", cloth="0.5 kg", ratio="30:1").figure == "15 L"
    assert answer("recharge", first="40 g", share="50 %").figure == "20 g"
    assert answer("loss", cloth="300 g", loss="8").figure == "276 g"
    assert answer("area", gsm="150", width="1.5 m", length="2 m").figure == "450 g"
    assert answer("shrinkage", before="50 cm", after="47.5 cm").figure == "5 % shorter"
    assert answer("shrinkage", before="50 cm", after="51 cm").figure == "2 % longer"


def test_a_scale_too_coarse_sends_to_a_stock_solution() -> None:
    found = answer("share", cloth="20 g", share="2 %", step="1 g")
    assert "stock solution" in found.lines[0]


def test_3_4_g_are_34_ml_of_a_10_per_cent_solution() -> None:
    # The printed worked example of a dye supplier's leaflet; see sources.md.
    assert answer("stock", grams="3.4 g", strength="10 %").figure == "34 mL"


def test_washing_soda_weighs_2_7_times_soda_ash() -> None:
    # Molar masses 286.14 and 105.99 (IUPAC 2021): 2.6997.
    found = answer("salt", grams="100 g", salt="soda-ash", other="washing-soda")
    assert found.figure == grams_shown(269.97)


def test_salts_that_do_not_stand_for_each_other_are_refused() -> None:
    found = answer("salt", salt="soda-ash", other="alum")
    assert found.figure == ""
    assert "does not stand for" in found.lines[0]


def test_beans_are_through_from_twice_to_2_6_times_their_weight() -> None:
    assert "Soaked through" in " ".join(answer("soaked", dry="90 g", soaked="190 g").lines)
    assert "Keep soaking" in " ".join(answer("soaked", dry="90 g", soaked="150 g").lines)
    assert "More than" in " ".join(answer("soaked", dry="90 g", soaked="260 g").lines)


def test_a_colder_room_soaks_longer_and_dries_longer() -> None:
    # Peleg by hand: k1 = 0.0154 exp(2321 (1/283.15 - 1/298.15)) = 0.0233; 2.33 / 0.2476 = 9.4 h.
    assert answer("soak", celsius="10 C").figure == "about 9 h 30 min"
    # k1 = 0.0154 at 25 °C: 1.54 / 0.2476 = 6.2 h.
    assert answer("soak", celsius="25 C").figure == "about 6 h"
    assert "cannot" not in answer("dry", humidity="40 %").figure
    refused = answer("soak", celsius="2 C")
    assert refused.figure == ""
    assert "Find a warmer place" in refused.lines[0]


def test_wet_cloth_lighter_than_dry_is_refused() -> None:
    assert answer("left", dry="300 g", wet="200 g").figure == ""


@pytest.mark.parametrize(
    ("text", "kind", "shown"),
    [
        # Exact by definition: yard 0.9144 m, ounce 28.349523125 g, US cup 236.5882365 mL.
        ("4.5 oz/yd2", "cloth", ("152.6 g/m²", "4.5 oz/yd²", "35.16 momme")),
        ("1 lb 3 oz", "weight", ("538.6 g", "19 oz")),
        ("1/4 cup", "volume", ("0.05915 L", "59.15 mL", "4 tbsp", "12 tsp")),
        ("3.5 yd", "length", ("3.2 m", "126 in")),
        ("70 F", "heat", ("21.1 °C = 70 °F",)),
    ],
)
def test_one_quantity_in_all_units(text: str, kind: str, shown: tuple[str, ...]) -> None:
    found_kind = kind_of(text)
    assert found_kind is not None
    assert found_kind[0] == kind
    found = answer("units", quantity=text)
    assert set(shown) <= {found.figure, *found.lines}


def test_four_figures_are_enough() -> None:
    given_ = (0, 0.0012345, 0.45359, 1, 12.3456, 1234.5)
    assert [significant(value) for value in given_] == [
        "0", "0.001235", "0.4536", "1", "12.35", "1235",
    ]  # fmt: skip


@pytest.mark.parametrize("slug", [one.slug for one in CALCULATIONS if one.draw])
def test_a_drawing_keeps_its_band_around_its_line(slug: str) -> None:
    of = BY_SLUG[slug]
    values = {one.slug: understood(one, one.offered).value for one in of.inputs}
    assert of.draw is not None
    curve: Curve = of.draw(values)  # type: ignore[arg-type]
    assert len(curve.xs) == len(curve.least) == len(curve.likely) == len(curve.most) > 10
    for least, likely, most in zip(curve.least, curve.likely, curve.most, strict=True):
        assert least <= likely <= most
    assert list(curve.likely) == sorted(curve.likely)  # both rise
    assert curve.at is not None
    assert curve.says


def test_the_text_to_paste_has_what_was_asked_and_what_came_out() -> None:
    of = BY_SLUG["bath"]
    text = as_text(of, {"cloth": "300 g", "ratio": "20 : 1"}, answer("bath"))
    assert text.splitlines()[:4] == [
        "Litres of a bath",
        "Cloth: 300 g",
        "Liquor ratio: 20 : 1",
        "6 L",
    ]
    assert text.endswith("\n")
    assert tr(of.title) in text
