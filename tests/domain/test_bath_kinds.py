"""The kinds of bath: each figure stands in help/sources.md, and all cautions are there."""

import re

import pytest

from studio_log.domain.bath_kinds import DAY, KINDS, BathKind, Range, heat_of
from studio_log.domain.cautions import read_cautions
from tests.support.tree import TREE

HELP = TREE / "resources" / "help"


def written() -> dict[tuple[str, str], tuple[str, str, str]]:
    """The rows of the section: kind and figure -> value, source, how sure."""
    page = (HELP / "sources.md").read_text("utf-8")
    section = page.split("\n## Baths and vats\n")[1].split("\n## ")[0]
    rows = [[cell.strip() for cell in line.strip("|").split("|")] for line in section.splitlines()]
    return {(r[0], r[1]): (r[2], r[3], r[4]) for r in rows if len(r) == 5 and r[0] in KINDS}


def said(within: Range, unit: str) -> str:
    if within.low is not None and within.high is not None:
        return f"{within.low:g} to {within.high:g}{unit}"
    if within.low is not None:
        return f"{within.low:g}{unit} and over"
    return f"up to {within.high:g}{unit}"


def figures(kind: BathKind) -> dict[str, str]:
    found = {"offered": f"{kind.litres:g} L"}
    rule = kind.refresh
    if rule is not None:
        known = {
            f"{(rule.grams or 0) / 1000:g} kg": rule.grams,
            f"{rule.grams_per_litre or 0:g} g/L": rule.grams_per_litre,
            f"{rule.uses} uses": rule.uses,
        }
        found["refresh"] = next(words for words, value in known.items() if value is not None)
    if kind.tell is not None and kind.keeps is not None:
        found["told"], found["keeps"] = f"{kind.tell / DAY:g} d", f"{kind.keeps / DAY:g} d"
    if kind.ph is not None:
        found["pH"] = said(kind.ph, "")
    if kind.heat is not None:
        found["heat"] = said(kind.heat, " °C")
    if kind.warm_to is not None:
        found["warm"] = f"{kind.warm_to:g} °C"
    return found


def test_every_figure_of_every_kind_is_written_with_its_source_and_no_other() -> None:
    coded = {(slug, name): value for slug, kind in KINDS.items()
             for name, value in figures(kind).items()}  # fmt: skip
    assert coded == {key: row[0] for key, row in written().items()}
    for key, (_, source, sure) in written().items():
        assert len(source) > 8, key
        assert sure in {"H", "M", "L"}, key
        if re.match(r"(?:proposal|from memory|common practice)", source):
            assert sure == "L", key


def test_chalk_is_spent_after_ten_kilos() -> None:
    # Maiwa, "Mordants": the chalk bath is refreshed after every 10 kg (handbook, 4.3).
    rule = KINDS["chalk"].refresh
    assert rule is not None
    assert rule.grams == 10_000


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.slug)
def test_every_kind_has_cautions_that_are_there_and_defers_to_the_data_sheet(kind) -> None:
    known = read_cautions((TREE / "resources" / "cautions.toml").read_text("utf-8"))
    assert set(kind.cautions) <= set(known)
    assert "sds" in kind.cautions


def test_what_holds_lime_or_iron_says_so() -> None:
    assert all("lime" in KINDS[slug].cautions for slug in ("fructose-vat", "iron-vat"))
    assert all("iron-salt" in KINDS[slug].cautions for slug in ("iron", "iron-vat"))


def test_every_kind_is_named_in_the_help_of_the_command() -> None:
    told = set(re.findall(r"`([\w-]+)`", (HELP / "commands.md").read_text("utf-8")))
    assert set(KINDS) - told == set()


@pytest.mark.parametrize(
    ("name", "most"),
    # Maiwa: above 72 °C madder turns brown, alkanet is spoilt above 60 (handbook, section 8).
    [("Madder, second pot", 72), ("madder and alkanet", 60), ("Weld", None), ("", None)],
)
def test_the_heat_of_a_dye_bath_goes_by_its_dye(name: str, most: float | None) -> None:
    within = heat_of(KINDS["dye"], name)
    assert (within.high if within else None) == most


def test_the_name_of_another_bath_says_nothing_of_its_heat() -> None:
    assert heat_of(KINDS["chalk"], "madder") is None
