"""Dyes and materials by command: the list, one of them, as JSON, and what is not there."""

import json
from typing import Any

from studio_log.domain.cautions import read_cautions
from studio_log.domain.dyestuffs import read_dyes
from studio_log.domain.materials import read_materials
from studio_log.services.shelf import DyeFor, DyesFor, MaterialFor, MaterialsFor, MaterialSheet
from tests.cli.fake_house import Line
from tests.support.tree import TREE


def text(name: str) -> str:
    return (TREE / "resources" / name).read_text("utf-8")


DYES = read_dyes(text("dyestuffs.toml"))
MATERIALS = read_materials(text("materials.toml"))
CAUTIONS = read_cautions(text("cautions.toml"))
IRON = MaterialSheet(MATERIALS["iron-sulphate"], (CAUTIONS["iron-salt"], CAUTIONS["sds"]))


def json_of(line: Line, *words: str) -> Any:
    ended = line.run(*words, "--json")
    assert ended.code == 0, ended.err
    return json.loads(ended.out)


def test_the_dyes_are_listed_with_light_and_amounts(line: Line) -> None:
    line.studio.answers[DyesFor] = tuple(DYES.values())
    lines = line.run("dyes").out.splitlines()
    assert len(lines) == len(DYES)
    (weld,) = [one for one in lines if one.startswith("weld ")]
    assert weld.split()[1:3] == ["light", "A-"]
    assert "medium 30 to 50 %" in weld
    assert [one["slug"] for one in json_of(line, "dyes")] == list(DYES)


def test_what_is_looked_for_is_handed_on_and_nothing_found_is_said(line: Line) -> None:
    line.studio.answers |= {DyesFor: (), MaterialsFor: ()}
    assert line.run("dyes", "--find", "mauve").out == "No such dye.\n"
    assert line.run("materials", "--find", "gold").out == "No such material.\n"
    assert line.studio.asked == [DyesFor("mauve"), MaterialsFor("gold")]


def test_a_dye_is_shown_under_its_headings(line: Line) -> None:
    line.studio.answers[DyeFor] = DYES["madder"]
    said = line.run("dye", "show", "madder").out
    assert said.startswith("madder, Rubia tinctorum\n")
    assert "  Heat: 60 to 70 °C, 45 to 60 min. Hold at 60 °C" in said
    told = json_of(line, "dye", "show", "madder")
    assert told["plant"]["dark"] == {"low": 100.0, "high": None}


def test_a_material_is_shown_with_its_cautions_in_full_and_the_data_sheet_last(line: Line) -> None:
    line.studio.answers[MaterialFor] = IRON
    said = line.run("material", "show", "iron-sulphate").out
    assert CAUTIONS["iron-salt"].text in said
    assert said.rstrip().endswith("The supplier's safety data sheet and local rules come first.")
    told = json_of(line, "material", "show", "iron-sulphate")
    assert told["limit"] == 4
    assert [one["slug"] for one in told["cautions"]] == ["iron-salt", "sds"]


def test_a_list_of_materials_ends_with_the_data_sheet(line: Line) -> None:
    line.studio.answers[MaterialsFor] = tuple(MATERIALS.values())
    lines = line.run("materials").out.splitlines()
    assert len(lines) == len(MATERIALS) + 1
    assert "safety data sheet" in lines[-1]


def test_a_name_that_cannot_be_one_is_refused_before_anything_is_asked(line: Line) -> None:
    ended = line.run("dye", "show", "../etc")
    assert ended.code == 1
    assert "is no dye's short name" in ended.err
    assert line.studio.asked == []
