"""Amounts of the first errand; figures of the method are common practice, no source.

Density of dry soybeans: 774 kg/m³ (Deere manual, table of standard densities, 60 lb to the
bushel), hence 183 g to a US cup of 236.6 mL.
"""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.amount_shown import grams_shown, litres_shown
from studio_log.domain.amounts import Amount, countable, vessel_fits, work_out
from studio_log.domain.errors import BadMethod, Refusal
from studio_log.domain.kitchen import cups_of, dry_litres, measure, measure_metric
from studio_log.domain.methods import AmountRule, Basis
from studio_log.science.soybeans import BULK_KG_PER_M3, CUP_GRAMS

BEANS = AmountRule("beans", "dry soybeans", Basis.WOF, 30, cup_grams=CUP_GRAMS)
SOAK = AmountRule("soak", "soak water", Basis.TIMES_VOLUME, 4, of="beans", at_least=True)
MILK = AmountRule("milk", "milk", Basis.PER_LITRE, 100, of="beans")
BATH = AmountRule("bath", "bath", Basis.PARTS, 5, of="milk", vessel=True)
RULES = (BEANS, SOAK, MILK, BATH)


def amounts(grams: float = 299.7, **changed: float) -> dict[str, Amount]:
    return {one.slug: one for one in work_out(RULES, grams=grams, changed=changed)}


@pytest.mark.parametrize(
    ("slug", "value", "unit", "shown"),
    [
        ("beans", 89.91, "g", "90 g"),
        ("soak", 0.46495, "L", "0.47 L or more"),
        ("milk", 0.8991, "L", "0.9 L"),
        ("bath", 5.3946, "L", "5.4 L"),
    ],
)
def test_two_linen_runners_take_these(slug: str, value: float, unit: str, shown: str) -> None:
    """299.7 g of cloth, the errand's own figures; check values of common practice."""
    amount = amounts()[slug]
    assert amount.value == pytest.approx(value, rel=1e-4)
    assert (amount.unit, amount.shown) == (unit, shown)


def test_the_beans_are_half_a_cup_and_say_how() -> None:
    beans = amounts()["beans"]
    assert beans.kitchen == "about ½ US cup"
    assert beans.how == "30 % of 299.7 g cloth"
    assert (beans.rule_value, beans.rule_unit, beans.editable) == (30, "% WOF", True)


def test_the_bath_says_its_parts() -> None:
    bath = amounts()["bath"]
    assert bath.how == "1 part milk (0.9 L) and 5 parts water (4.5 L)"
    assert bath.vessel


def test_a_quarter_cup_does_for_a_yard_or_two() -> None:
    """Common practice, no source: ¼ US cup for one to two yards; here 45 in of 4.5 oz/yd²."""
    yard = 0.9144 * 1.143 * 152.576
    cups = [cups_of(amounts(yards * yard)["beans"].value, CUP_GRAMS) for yards in (1, 2)]
    assert cups[0] == pytest.approx(0.25, abs=0.02)
    assert cups[1] == pytest.approx(0.5, abs=0.04)


def test_soak_water_follows_the_density_of_the_bean() -> None:
    by_density = 4 * 89.91 / BULK_KG_PER_M3
    assert amounts()["soak"].value == pytest.approx(by_density, rel=0.002)


def test_a_changed_figure_carries_through() -> None:
    changed = amounts(beans=20)
    assert changed["beans"].shown == "60 g"
    assert changed["beans"].rule_value == 20
    assert changed["milk"].value == pytest.approx(0.5994)
    assert changed["bath"].value == pytest.approx(6 * 0.5994)


def test_changes_of_other_steps_are_passed_over() -> None:
    assert work_out(RULES, grams=299.7, changed={"soda": 2}) == work_out(RULES, grams=299.7)


def test_fixed_and_per_kilogram() -> None:
    rules = (
        AmountRule("salt", "salt", Basis.FIXED, 5, unit="g"),
        AmountRule("pot", "scour bath", Basis.PER_KG, 20),
        AmountRule("rinse", "rinse water", Basis.FIXED, 12.4, unit="L"),
    )
    salt, pot, rinse = work_out(rules, grams=299.7)
    assert (rinse.value, rinse.unit, rinse.shown) == (12.4, "L", "12 L")
    assert (salt.value, salt.shown, salt.how) == (5, "5 g", "the same for any weight")
    assert pot.value == pytest.approx(5.994)
    assert (pot.shown, pot.how) == ("6 L", "20 L to the kilogram of cloth, for 299.7 g")


INDIGO = AmountRule("indigo", "indigo", Basis.PER_AREA, 20)
LIME = AmountRule("lime", "lime", Basis.TIMES_WEIGHT, 2, of="indigo")
POT = AmountRule("pot", "vat", Basis.PER_KG, 30, vessel=True)
SALT = AmountRule("salt", "triformate", Basis.IN_BATH, 20, of="pot")


def test_by_the_area_by_the_bath_and_by_the_weight_of_another() -> None:
    """1-2-3 fructose vat, Weave & Burrow: 50 g indigo take 100 g lime; 20 g/L x 9 L = 180 g."""
    indigo, lime, _, salt = work_out((INDIGO, LIME, POT, SALT), grams=300, area_m2=2.5)
    assert (indigo.value, indigo.unit, lime.value, lime.unit) == (50, "g", 100, "g")
    assert indigo.how == "20 g to the square metre, for 2.5 m²"
    assert lime.how == "2 times the weight of 50 g indigo"
    assert (salt.value, salt.shown) == (180, "180 g")
    assert salt.how == "20 g in each litre of 9 L vat"


def test_without_a_size_what_goes_by_it_is_left_out_and_what_follows_too() -> None:
    rules = (INDIGO, LIME, POT, SALT)
    assert countable(rules, area_m2=None) == (POT, SALT)
    assert countable(rules, area_m2=1.0) == rules
    with pytest.raises(Refusal, match="length and width"):
        work_out(rules, grams=300)


@pytest.mark.parametrize("area", [0, -1, float("nan"), float("inf"), 1e9])
def test_an_impossible_size_is_refused(area: float) -> None:
    with pytest.raises(Refusal, match="square metres"):
        work_out(RULES, grams=300, area_m2=area)


@pytest.mark.parametrize("grams", [0, -1, float("nan"), float("inf"), 1e12])
def test_an_impossible_weight_is_refused(grams: float) -> None:
    with pytest.raises(Refusal, match="weight of the cloth"):
        work_out(RULES, grams=grams)


@pytest.mark.parametrize("value", [0, -30, float("nan"), float("inf"), 1e9])
def test_an_impossible_figure_is_refused_and_the_old_one_kept(value: float) -> None:
    with pytest.raises(Refusal, match="figure before is kept"):
        amounts(beans=value)


def test_what_is_not_editable_cannot_be_changed() -> None:
    rules = (BEANS, replace(MILK, editable=False))
    with pytest.raises(Refusal, match="follows from the others"):
        work_out(rules, grams=100, changed={"milk": 50})


@pytest.mark.parametrize(
    ("rules", "words"),
    [
        ((MILK,), "which is not there"),
        ((replace(MILK, slug="a", of="b"), replace(BATH, slug="b", of="a")), "in a ring"),
        ((BEANS, replace(BATH, of="beans")), "not in L"),
        ((replace(BEANS, cup_grams=None), SOAK), "cup_grams"),
        ((AmountRule("x", "x", Basis.FIXED, 1, unit="pints"),), "in g or L"),
    ],
)
def test_rules_that_do_not_hold_together_name_their_fault(
    rules: tuple[AmountRule, ...], words: str
) -> None:
    with pytest.raises(BadMethod, match=words):
        work_out(rules, grams=100)


@pytest.mark.parametrize(
    ("grams", "words"),
    [(0.01, "less than 0.1 g"), (0.25, "0.3 g"), (9.94, "9.9 g"), (9.96, "10 g"), (89.91, "90 g"),
     (999.4, "999 g"), (1234.4, "1.234 kg")],
)  # fmt: skip
def test_grams_are_shown_as_a_kitchen_scale_does(grams: float, words: str) -> None:
    assert grams_shown(grams) == words


@pytest.mark.parametrize(
    ("litres", "words"),
    [(0.0001, "less than 1 mL"), (0.045, "45 mL"), (0.0996, "0.1 L"), (0.465, "0.47 L"),
     (0.8991, "0.9 L"), (5.3946, "5.4 L"), (9.96, "10 L"), (53.9, "54 L")],
)  # fmt: skip
def test_litres_are_shown_to_two_figures(litres: float, words: str) -> None:
    assert litres_shown(litres) == words


@pytest.mark.parametrize(
    ("cups", "words"),
    [(0.491, "about ½ US cup"), (1, "about 1 US cup"), (1.3, "about 1¼ US cups"),
     (0.25, "about ¼ US cup"), (3 / 16, "about 3 tbsp"), (1.5 / 16, "about 1½ tbsp"),
     (0.75 / 48, "about ¾ tsp"), (0.001, "less than ¼ tsp"), (24, "about 1½ US gal")],
)  # fmt: skip
def test_kitchen_measures(cups: float, words: str) -> None:
    assert measure(cups) == words


@pytest.mark.parametrize(
    ("litres", "words"),
    [(0.125, "about ½ metric cup"), (0.25, "about 1 metric cup"), (1.5, "about 6 metric cups"),
     (0.030, "about 2 tbsp of 15 mL"), (0.005, "about 1 tsp of 5 mL"), (0.0001, "less than ¼ tsp"),
     (4.0, ""), (30, "")],
)  # fmt: skip
def test_metric_kitchen_measures(litres: float, words: str) -> None:
    """Cups of 250 mL, spoons of 15 and 5 mL: usual in Australia, Canada, New Zealand (memory)."""
    assert measure_metric(litres) == words


def test_an_amount_knows_the_volume_it_goes_by() -> None:
    assert amounts()["beans"].litres == pytest.approx(89.91 / CUP_GRAMS * 0.2365882365)
    assert amounts()["bath"].litres == amounts()["bath"].value
    (soda,) = work_out([AmountRule("soda", "soda", Basis.WOF, 5)], grams=100)
    assert soda.litres is None


def test_a_cup_of_beans_is_a_cup() -> None:
    assert dry_litres(CUP_GRAMS, CUP_GRAMS) == pytest.approx(0.2365882365)


def test_a_bucket_that_holds_the_bath_says_how_much_room_is_left() -> None:
    """5.39 L and 299.7 / 1500 L of fibre under 90 % of 10 L leave 3.41 L."""
    fit = vessel_fits(5.39, 299.7, 10)
    assert fit.fits
    assert "about 3.4 L of room is left" in fit.sentence


def test_a_bucket_too_small_says_what_is_missing_and_which_would_do() -> None:
    fit = vessel_fits(5.39, 299.7, 5)
    assert not fit.fits
    assert "1.1 L of room is missing" in fit.sentence
    assert "6.3 L or more" in fit.sentence
    assert vessel_fits(5.39, 299.7, 6.3).fits
    assert not vessel_fits(5.39, 299.7, 6.2).fits


@pytest.mark.parametrize("vessel", [0, -1, float("nan"), float("inf")])
def test_an_impossible_vessel_is_refused(vessel: float) -> None:
    with pytest.raises(Refusal, match="Nothing was changed"):
        vessel_fits(5, 300, vessel)


@given(st.floats(1, 4_000_000), st.floats(0.1, 10))
def test_amounts_scale_with_the_cloth(grams: float, factor: float) -> None:
    once, more = amounts(grams), amounts(grams * factor)
    for slug, amount in once.items():
        assert more[slug].value == pytest.approx(amount.value * factor, rel=1e-9)


@given(st.floats(0.0005, 10_000))
def test_a_least_amount_is_never_shown_too_small(litres: float) -> None:
    figure, unit = litres_shown(litres, up=True).split()
    assert float(figure) / (1000 if unit == "mL" else 1) >= litres - 1e-9
