"""Dyes and materials in words; the page of the help and the sources say the same as the files."""

import re

import pytest

from studio_log.domain.dyestuffs import Dye, read_dyes
from studio_log.domain.materials import read_materials
from studio_log.present.dye_words import (
    amount_words,
    dye_facts,
    dye_row,
    heat_words,
    light_words,
    material_facts,
    material_row,
)
from tests.support.tree import TREE

RESOURCES = TREE / "resources"
DYES = read_dyes((RESOURCES / "dyestuffs.toml").read_text("utf-8"))
MATERIALS = read_materials((RESOURCES / "materials.toml").read_text("utf-8"))


def section(page: str, name: str) -> str:
    text = (RESOURCES / "help" / page).read_text("utf-8")
    return text.split(f"\n## {name}\n", 1)[1].split("\n## ", 1)[0]


def rows(page: str, name: str) -> list[tuple[str, ...]]:
    lines = [one for one in section(page, name).splitlines() if one.startswith("| ")]
    return [tuple(cell.strip() for cell in line[1:-1].split("|")) for line in lines[2:]]


def test_the_page_of_the_help_has_every_dye_and_material_as_the_files_have_them() -> None:
    assert rows("dyes.md", "Dyes") == [dye_row(one) for one in DYES.values()]
    assert rows("dyes.md", "Materials") == [material_row(one) for one in MATERIALS.values()]


def test_the_numbers_of_dyes_and_materials_are_true_wherever_they_are_told() -> None:
    for page in (TREE / "README.md", RESOURCES / "help" / "dyes.md"):
        text = page.read_text("utf-8")
        assert re.findall(r"(\d+) (?:dyes|dyestuffs)\b", text) == [str(len(DYES))]
        assert re.findall(r"(\d+) materials\b", text) == [str(len(MATERIALS))]


def source_figures(dye: Dye) -> set[str]:
    """The figures of a dye that sources.md has to hold, as it writes them."""
    found = {f"light {light_words(dye)}"}
    for form, depths in (("plant", dye.plant), ("extract", dye.extract)):
        said = []
        for level, one in depths.known.items():
            to = "+" if one.high is None else "" if one.high == one.low else f" to {one.high:g}"
            said.append(f"{level} {one.low:g}{to}")
        found |= {f"{form} {', '.join(said)} %"} if said else set()
    if dye.heat_most is not None:
        least = f"{dye.heat_least:g} to " if dye.heat_least is not None else ""
        found.add(f"{least}{dye.heat_most:g} °C" + ("" if least else " at most"))
    return found


def test_every_dye_has_its_line_among_the_sources_with_its_figures() -> None:
    told = {row[0]: row for row in rows("sources.md", "Dyes")}
    assert set(told) == {dye.title for dye in DYES.values()}
    for dye in DYES.values():
        _, figures, source, sure = told[dye.title]
        assert source_figures(dye) - set(figures.split("; ")) == set(), dye.slug
        assert source
        assert sure == dye.sure.value
        memory = "memory" in source
        assert memory or not dye.from_memory, dye.slug


def test_every_material_has_its_line_among_the_sources_with_its_figures() -> None:
    told = {row[0]: row for row in rows("sources.md", "Materials")}
    assert set(told) == {one.title for one in MATERIALS.values()}
    for one in MATERIALS.values():
        _, figures, source, sure = told[one.title]
        for fibre, amount in (("cellulose", one.cellulose), ("protein", one.protein)):
            if amount is not None:
                assert f"{fibre} {amount.low:g} to {amount.high:g} %" in figures, one.slug
        assert all(code in figures for code in one.codes)
        assert (source != "", sure) == (True, one.sure.value)


def test_a_dye_is_told_in_plain_words() -> None:
    madder = DYES["madder"]
    assert amount_words(madder) == (
        "plant: medium 35 to 100 %, dark 100 % and more; extract: medium 3 to 8 %"
    )
    assert heat_words(madder) == "60 to 70 °C, 45 to 60 min"
    facts = dict(dye_facts(madder))
    assert facts["C.I."] == "Natural Red 8 75330"
    assert facts["Shifts"] == "iron: purple-brown; acid: orange; alkali: pink"
    assert facts["Source"].startswith("common practice; ")


def test_what_is_from_memory_says_so_beside_its_figure() -> None:
    assert amount_words(DYES["weld"]).startswith("plant: light 20 % (from memory), medium")
    assert amount_words(DYES["quercitron"]) == "plant: medium 10 to 20 % (from memory)"


@pytest.mark.parametrize("slug", sorted(DYES))
def test_a_dye_with_nothing_known_has_no_empty_heading(slug: str) -> None:
    assert all(name and said for name, said in dye_facts(DYES[slug]))


def test_a_limit_and_what_is_not_used_are_said_first() -> None:
    iron = dict(material_facts(MATERIALS["iron-sulphate"]))
    assert iron["Never above"].startswith("4 % on plant fibre.")
    assert next(iter(dict(material_facts(MATERIALS["zinc-dust"])))) == "Not used"
