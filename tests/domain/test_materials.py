"""The list of materials: figures, hazards and cautions, and every fault said in words."""

import pytest

from studio_log.domain.cautions import read_cautions
from studio_log.domain.errors import BadMethod
from studio_log.domain.materials import MaterialSort, read_materials
from studio_log.domain.methods import Basis
from studio_log.domain.ranges import Range
from studio_log.domain.spoil_data import MOST_IRON, MOST_IRON_PROTEIN
from tests.support.builders import shipped
from tests.support.tree import TREE

CAUTIONS = read_cautions((TREE / "resources" / "cautions.toml").read_text("utf-8"))
MATERIALS = read_materials(
    (TREE / "resources" / "materials.toml").read_text("utf-8"), cautions=CAUTIONS
)


def test_every_material_says_its_hazard_what_to_wear_and_how_to_be_rid_of_it() -> None:
    assert len(MATERIALS) == 33
    for one in MATERIALS.values():
        for said in (one.use, one.hazard, one.wear, one.store, one.away):
            assert said.endswith("."), one.slug
        assert "sds" in one.cautions, one.slug


# Maiwa, naturaldyes.ca "Mordants" and "Additives"; Dharma Trading (triformate); Walnut Farm
# (lactate); plantmordant.org (symplocos); Vicki Fearon (gall); naturaldyes.ca (myrobalan).
@pytest.mark.parametrize(
    ("slug", "cellulose", "protein"),
    [
        ("alum", Range(15, 25), Range(10, 20)),
        ("aluminium-acetate", Range(5, 8), None),
        ("aluminium-lactate", Range(7, 10), None),
        ("aluminium-triformate", Range(5, 10), Range(5, 10)),
        ("symplocos", Range(20, 50), Range(20, 50)),
        ("iron-sulphate", Range(2, 4), Range(1, 2)),
        ("cream-of-tartar", None, Range(5, 6)),
        ("oak-gall-powder", Range(10, 20), None),
        ("myrobalan-powder", Range(15, 20), None),
    ],
)
def test_an_amount_is_the_one_that_its_source_prints(
    slug: str, cellulose: Range | None, protein: Range | None
) -> None:
    assert (MATERIALS[slug].cellulose, MATERIALS[slug].protein) == (cellulose, protein)


def test_iron_has_its_limit_and_its_danger_to_children() -> None:
    iron = MATERIALS["iron-sulphate"]
    assert iron.limit == 4  # Maiwa, "Additives", never above 4 %
    assert iron.limit == MOST_IRON
    assert iron.protein is not None
    assert iron.protein.high == MOST_IRON_PROTEIN
    # Crystals are FeSO4·7H2O, 278.0 g/mol with 55.85 of iron: three grams hold 0.6 g of it.
    # McGuigan, Pediatr Ann 25, 1996: serious above 60 mg to the kilogram.
    milligrams = 3_000 * 55.845 / 278.01
    assert milligrams / 10 == pytest.approx(60, abs=0.5)
    assert "600 mg iron, 60 mg to each kilogram" in iron.people
    assert "poison centre" in iron.people
    assert iron.store.startswith("Locked")


# Data sheets: GisChem (iron(II) sulphate), Lafarge Tarmac 2013 (slaked lime).
@pytest.mark.parametrize(
    ("slug", "codes"),
    [("iron-sulphate", ("H302", "H315", "H319")), ("slaked-lime", ("H315", "H318", "H335"))],
)
def test_hazard_statements_are_those_of_the_data_sheet(slug: str, codes: tuple[str, ...]) -> None:
    assert MATERIALS[slug].codes == codes


def test_what_is_not_to_be_used_is_in_no_method_that_ships() -> None:
    avoided = {slug for slug, one in MATERIALS.items() if one.avoid}
    assert avoided == {
        "copper-sulphate", "chrome-and-tin", "sodium-hydroxide", "zinc-dust", "dithionite",
    }  # fmt: skip
    words = {"copper", "chrome", "tin", "hydroxide", "zinc", "dithionite", "thiourea"}
    for method in shipped().values():
        for step in method.steps:
            for amount in step.amounts:
                assert not words & set(amount.slug.split("-")), (method.slug, amount.slug)


def test_what_burns_or_poisons_is_kept_from_children() -> None:
    for one in MATERIALS.values():
        if {"H302", "H314", "H318", "H225", "H250"} & set(one.codes):
            heeded = {"children-pets", "iron-salt", "lime"} & set(one.cautions)
            assert heeded, one.slug


NAMED = {
    "alum": "alum", "acetate": "aluminium-acetate", "iron": "iron-sulphate",
    "triformate": "aluminium-triformate", "leaf": "symplocos", "gall": "oak-gall-powder",
}  # fmt: skip
"""Amount of a method to the material that it weighs."""


def test_methods_take_no_more_of_a_mordant_than_its_list_has_on_cellulose() -> None:
    met = 0
    for method in shipped().values():
        for amount in (one for step in method.steps for one in step.amounts):
            material = MATERIALS.get(NAMED.get(amount.slug.rstrip("-123"), ""))
            if material is None or amount.basis is not Basis.WOF or material.cellulose is None:
                continue
            high = material.cellulose.high
            assert high is not None
            assert amount.value <= high, (method.slug, amount.slug)
            met += 1
    assert met >= 8


GOOD = """
[alum]
title = "alum"
sort = "mordant"
use = "Mordant."
cellulose = [15, 25]
hazard = "Sour."
codes = ["H319"]
wear = "Gloves."
store = "Dry."
away = "By the local rule."
cautions = ["sds"]
source = "common practice"
sure = "H"
"""


def test_a_material_of_few_fields_reads() -> None:
    (one,) = read_materials(GOOD, cautions={"sds"}).values()
    assert (one.sort, one.limit, one.avoid) == (MaterialSort.MORDANT, None, False)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('"H319"', '"H999"', 'write one such as "H319"'),
        ('"H319"', '"burns"', "is no hazard statement"),
        ('["sds"]', '["sdz"]', 'write "sds"'),
        ("[15, 25]", "[15, 25]\nlimit = 4\nlimit_words = 'x'", "above the limit"),
        ("[15, 25]", "[15, 25]\nlimit = 40", "go together"),
        ('wear = "Gloves."\n', "", "wear: this field is missing"),
        ('sort = "mordant"', 'sort = "poison"', "write one of mordant"),
        ("[15, 25]", "[-1, 25]", "cannot be here"),
        ("sure", "shure", "there is no such field"),
    ],
)
def test_a_fault_is_said_with_its_place_and_what_to_do(old: str, new: str, said: str) -> None:
    assert old in GOOD
    with pytest.raises(BadMethod) as told:
        read_materials(GOOD.replace(old, new, 1), name="mine.toml", cautions={"sds"})
    assert said in str(told.value)
    assert str(told.value).startswith("mine.toml, line ")


@pytest.mark.parametrize("text", ["", "a = 1", "[[alum]]", "[" * 500, "\x00", "[A b]\n"])
def test_nonsense_is_refused_and_never_a_fault_of_the_program(text: str) -> None:
    with pytest.raises(BadMethod):
        read_materials(text)
