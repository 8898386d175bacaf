"""Dyes and materials are looked up; what a tag says of danger."""

import pytest

from studio_log.domain.cautions import read_cautions
from studio_log.domain.errors import Refusal
from studio_log.services.commands import GoOn
from studio_log.services.questions import LotSheetFor, TagsFor
from studio_log.services.shelf import (
    DyeFor,
    DyesFor,
    MaterialFor,
    MaterialsFor,
    Shelf,
)
from tests.support.tree import TREE

RESOURCES = TREE / "resources"


@pytest.fixture
def full(shop):
    shop.studio.shelf = Shelf(lambda name: (RESOURCES / name).read_text("utf-8"))
    shop.studio.cautions = read_cautions((RESOURCES / "cautions.toml").read_text("utf-8"))
    return shop


def slugs(found) -> list[str]:
    return [one.slug for one in found]


def test_dyes_are_found_by_any_of_their_names(full):
    assert len(full.studio.ask(DyesFor())) == 44
    assert slugs(full.studio.ask(DyesFor("RUBIA"))) == ["madder", "indian-madder"]
    assert "cochineal" in slugs(full.studio.ask(DyesFor("natural red 4")))
    assert full.studio.ask(DyesFor("nothing of the kind")) == ()


def test_one_dye_is_shown_and_one_that_is_not_there_is_refused(full):
    assert full.studio.ask(DyeFor("weld")).latin == "Reseda luteola"
    with pytest.raises(Refusal, match=r"There is no dye “weldd”"):
        full.studio.ask(DyeFor("weldd"))


def test_a_material_comes_with_its_cautions_in_full_gravest_first(full):
    assert "chalk" in slugs(full.studio.ask(MaterialsFor("carbonate")))
    sheet = full.studio.ask(MaterialFor("iron-sulphate"))
    assert [one.slug for one in sheet.cautions] == ["iron-salt", "children-pets", "sds"]
    with pytest.raises(Refusal, match="There is no material"):
        full.studio.ask(MaterialFor("gold"))


def test_a_file_is_read_once_and_only_when_it_is_asked_for():
    read: list[str] = []

    def text(name: str) -> str:
        read.append(name)
        return (RESOURCES / name).read_text("utf-8")

    shelf = Shelf(text)
    assert read == []
    assert len(shelf.dyes) == 44
    assert len(shelf.dyes) == 44
    assert read == ["dyestuffs.toml"]


def test_a_file_that_is_missing_is_said_and_nothing_else_breaks(shop):
    shop.studio.shelf = Shelf()
    with pytest.raises(Refusal, match=r"dyestuffs\.toml of the installation cannot be read"):
        shop.studio.ask(DyesFor())
    assert shop.studio.ask(TagsFor((shop.new(),)))


def test_a_tag_prints_the_gravest_caution_of_its_method(full):
    code = full.new(method="after-iron")
    (tag,) = full.studio.ask(TagsFor((code,)))
    assert tag.caution == full.studio.cautions["iron-salt"].short
    assert full.studio.ask(LotSheetFor(code)).cautions[0].startswith(tag.caution)


def test_cloth_that_was_soyed_says_so_on_every_later_tag(full):
    code = full.new()
    full.do(GoOn(code, "after-iron"))
    (tag,) = full.studio.ask(TagsFor((code,)))
    cautions = full.studio.cautions
    assert tag.caution == f"{cautions['iron-salt'].short}; {cautions['soy-allergen'].short}"
    (told,) = full.studio.ask(LotSheetFor(code)).cautions
    assert cautions["soy-allergen"].short in told
