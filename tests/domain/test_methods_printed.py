"""What the shipped methods work out is what their sources print, for the same weight of cloth."""

from collections.abc import Mapping
from datetime import timedelta

import pytest

from studio_log.domain.amounts import work_out
from studio_log.domain.methods import Spread
from tests.support.builders import shipped

MINUTE, HOUR, DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)

# Each: method, grams of cloth, the amounts that the source prints, in grams and litres.
PRINTED: list[tuple[str, float, Mapping[str, float]]] = [
    # Maiwa blog, "Weight of fibre", 2010: 450 g of cotton, madder 50 %.
    ("dye-madder", 450, {"madder": 225}),
    # Maiwa blog, "Weight of fibre", 2010: 450 g, cochineal 6 %.
    ("dye-cochineal", 450, {"cochineal": 27}),
    # Botanical Colors, "Extract instructions": a shirt of 150 g, cutch 10 %.
    ("dye-cutch", 150, {"cutch": 15}),
    # Maiwa, naturaldyes.ca, "Henna vat": indigo 75, henna 150, lime 75 g in 20 L.
    ("indigo-henna-vat", 400, {"indigo": 75, "henna": 150, "lime": 75, "vat": 20}),
    # Elka Textiles, "Preparing plant fibres": a shirt of 150 g, soda ash 5 %, detergent 2 %.
    ("scour-cellulose", 150, {"soda-ash": 7.5, "soap": 3}),
    # All Fiber Arts, "How to scour cotton & linen": 10 g soda and 3 g soap to 100 g.
    ("scour-cellulose-strong", 100, {"soda-ash": 10, "soap": 3}),
    # Maiwa, "Scouring": 5 mL (about 5 g) of neutral soap to 450 to 500 g of wool.
    ("scour-wool-silk", 500, {"soap": 5}),
    # silkewerk.com: soap 0.25, soda 0.009 and water 70 times the silk.
    ("scour-raw-silk", 100, {"soap": 25, "soda-ash": 0.9, "bath": 7}),
    # Wild Colours, cotton mordant, three baths for 100 g; the same totals at dyeing-crafts.co.uk.
    ("mordant-alum-three-baths", 100, {
        "alum-1": 25, "soda-ash-1": 6, "tannic-acid": 6, "alum-3": 25, "soda-ash-3": 6,
    }),
    # Dye.farm (after Liles): 100 g of cloth, alum 25 %, water 400 %, soda 3.1 %.
    ("mordant-alum-soda", 100, {"alum": 25, "bath": 0.4, "soda-ash": 3.1}),
    # Maiwa, "Mordants": alum 15 % with soda ash 2 % on cellulose.
    ("mordant-tannin-alum", 1000, {"alum": 150, "soda-ash": 20}),
    # Maiwa, "Mordants", and "Additives": alum 15 %, cream of tartar 6 % on wool.
    ("mordant-alum-wool", 1000, {"alum": 150, "tartar": 60}),
    # plantmordant.org: gallnut 10 %, then symplocos 50 %.
    ("mordant-symplocos", 100, {"gall": 10, "leaf": 50}),
    # mytextilenotes, 2009: 200 g of myrobalan to a kilogram of cloth in 5 L.
    # Future Materials Bank: a paste of 10 + 5 + 85 + 1 g. Maiwa: bran, 100 g to 5 L.
    ("mordant-printed", 1000, {
        "myrobalan": 200, "tannin-water": 5, "alum": 10, "soda-ash": 5, "vinegar": 85, "gum": 1,
    }),
    # Weave & Burrow: indigo, lime and fructose 50 : 100 : 150.
    ("indigo-fructose-vat", 400, {"indigo": 50, "lime": 100, "fructose": 150}),
    # Cloth House: 75 : 150 : 225 in 30 L.
    ("indigo-iron-vat", 400, {"indigo": 75, "iron": 150, "lime": 225, "vat": 30}),
    # Kit Eastman, "Soy milk recipe": a quarter US cup of beans, 46 g, in about a litre.
    ("soy-pigment-milk", 400, {"beans": 46, "milk": 1}),
]  # fmt: skip


@pytest.mark.parametrize(("slug", "grams", "printed"), PRINTED, ids=[one[0] for one in PRINTED])
def test_amounts_come_out_as_they_are_printed(
    slug: str, grams: float, printed: Mapping[str, float]
) -> None:
    rules = [rule for step in shipped()[(slug, 1)].steps for rule in step.amounts]
    found = {one.slug: one.value for one in work_out(rules, grams=grams)}
    for name, value in printed.items():
        assert found[name] == pytest.approx(value), name


@pytest.mark.parametrize(
    ("slug", "bath", "powder", "litres", "grams"),
    [
        ("mordant-acetate-chalk", "chalk-bath", "chalk", 5, 50),  # Maiwa, "Mordants"
        ("mordant-printed", "bran-bath", "bran", 5, 100),  # Maiwa, "Mordants"
        ("mordant-triformate", "bath", "triformate", 10, 200),  # Dharma Trading, 20 g/L
        ("indigo-dips", "sour-bath", "souring", 1, 10),  # Wild Colours, 10 mL to the litre
    ],
)
def test_a_bath_is_as_strong_as_it_is_printed(
    slug: str, bath: str, powder: str, litres: float, grams: float
) -> None:
    rules = [rule for step in shipped()[(slug, 1)].steps for rule in step.amounts]
    found = {one.slug: one.value for one in work_out(rules, grams=730.0)}
    assert found[powder] / found[bath] == pytest.approx(grams / litres)


def lasts(slug: str, step: str) -> Spread:
    (found,) = [one.lasts for one in shipped()[(slug, 1)].steps if one.slug == step]
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("slug", "step", "printed"),
    [
        ("scour-cellulose-strong", "simmer", (2 * HOUR, 3 * HOUR)),  # All Fiber Arts, 2 to 3 h
        ("scour-wool-silk", "hold", (HOUR,)),  # Maiwa, "Scouring", about 1 h at 60 °C
        ("scour-raw-silk", "boil-off", (90 * MINUTE, 120 * MINUTE)),  # thetextileinfo, 2013
        ("soy-steam-set", "steam", (HOUR,)),  # Okinawa Prefecture Craft Center, 2020
        ("mordant-tannin-alum", "tannin", (HOUR, 2 * HOUR)),  # The Perfect Pigment
        ("mordant-tannin-alum", "alum", (HOUR, 24 * HOUR)),  # Maiwa; Wild Colours
        ("mordant-alum-soda", "heat", (30 * MINUTE,)),  # Dye.farm, 80 to 90 °C
        ("mordant-alum-three-baths", "alum-1-age", (7 * DAY,)),  # Wild Colours, a week at least
        ("mordant-triformate", "soak", (3 * HOUR, 24 * HOUR)),  # Dharma Trading
        ("mordant-alum-wool", "warm", (30 * MINUTE, 45 * MINUTE)),  # Maiwa, 45 to 90 °C
        ("mordant-printed", "pre-tan", (15 * MINUTE, 20 * MINUTE)),  # mytextilenotes, 2009
        ("mordant-printed", "bran", (30 * MINUTE,)),  # Maiwa, stands half an hour
        ("dye-immersion", "hold", (45 * MINUTE, 60 * MINUTE)),  # Maiwa, osage and lac
        ("dye-cutch", "hold", (2 * HOUR,)),  # Maiwa blog, "Cutch", 2013, two hours and more
        ("after-iron", "iron", (5 * MINUTE, 30 * MINUTE)),  # Maiwa, looked at every 5 min, 30 most
        ("indigo-dips", "dip-1", (5 * MINUTE, 10 * MINUTE)),  # Boathouse; Cloth House
        ("indigo-dips", "air-1", (10 * MINUTE,)),  # Wild Colours, "Indigo aftercare"
        ("indigo-dips", "sour", (30 * MINUTE, 60 * MINUTE)),  # Wild Colours
        ("indigo-iron-vat", "work", (HOUR, 3 * HOUR)),  # Cloth House
        ("test-light", "look-2", (14 * DAY,)),  # Guild of Dyer Consequences, two weeks
        ("finish-wash", "rest", (7 * DAY,)),  # Kit Eastman, a week at least
    ],
)
def test_a_printed_time_lies_inside_the_window(
    slug: str, step: str, printed: tuple[timedelta, ...]
) -> None:
    span = lasts(slug, step)
    assert span.latest <= 12 * max(printed), "a window so wide says nothing"
    for one in printed:
        assert span.earliest <= one <= span.latest


def test_iron_is_looked_at_every_five_minutes_and_lifted_in_half_an_hour() -> None:
    (step,) = [one for one in shipped()[("after-iron", 1)].steps if one.slug == "iron"]
    assert step.tending is not None
    assert step.tending.every == 5 * MINUTE  # Maiwa, "Additives"
    assert lasts("after-iron", "iron").latest == 30 * MINUTE


def test_paste_is_printed_within_its_life_and_dunged_when_the_acid_is_gone() -> None:
    steps = {one.slug: one for one in shipped()[("mordant-printed", 1)].steps}
    assert steps["print"].gap.most == 12 * HOUR  # HaptiColor (Waag)
    order = list(steps)
    assert order.index("dry-2") < order.index("air") < order.index("bran") < order.index("dung")
    assert lasts("mordant-printed", "air").earliest >= 12 * HOUR  # overnight or longer


def test_a_light_test_is_looked_at_after_two_four_and_eight_weeks() -> None:
    aims = [lasts("test-light", f"look-{weeks}").aim for weeks in (2, 4, 8)]
    assert [sum(aims[: n + 1], timedelta()) for n in range(3)] == [14 * DAY, 28 * DAY, 56 * DAY]


def test_indigo_is_dipped_three_times_at_the_least_and_aired_after_each() -> None:
    # Catharine Ellis, Q&A, Botanical Colors: at least three immersions for light stability.
    for slug in ("indigo-fructose-vat", "indigo-iron-vat", "indigo-henna-vat", "indigo-dips"):
        order = [one.slug for one in shipped()[(slug, 1)].steps]
        start = order.index("dip-1")
        assert order[start : start + 6] == ["dip-1", "air-1", "dip-2", "air-2", "dip-3", "air-3"]
        assert order[start + 6 : start + 8] == ["rinse", "sour"]
