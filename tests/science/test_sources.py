"""Every figure that is computed with stands in resources/help/sources.md as it is in the code."""

import ast
import inspect
import re
from collections.abc import Iterator
from datetime import timedelta

import pytest

from studio_log.domain import (
    amounts,
    base_weight,
    drying_factor,
    drying_time,
    dryings,
    room_air,
    room_text,
    scale,
    soak_time,
    spoil_data,
)
from studio_log.science import drying, salts, soaking, soy_milk, soybeans, water_held
from studio_log.science.units import convert
from tests.support.tree import TREE

PAGE = TREE / "resources" / "help" / "sources.md"
SECTION = "Sums and estimates"


def g(*figures: float) -> str:
    return ", ".join(f"{one:g}" for one in figures)


def points(table: tuple[tuple[float, float], ...], *at: float) -> str:
    return g(*(dict(table)[one] for one in at))


def listed(table: tuple[tuple[float, float], ...], first: str) -> str:
    (at, value), *rest = table
    said = [f"{value:g} {first} at {at:g} °C", *(f"{one:g} at {x:g}" for x, one in rest)]
    return ", ".join(said)


K1 = soaking.K1_AT_25
FIBRES = drying.FIBRES
SPUN = water_held.SPUN
HEAT = spoil_data.HEAT_LIMITS
HOUR = timedelta(hours=1)
FIGURES: dict[str, tuple[str, str]] = {
    "scale.MOST_OFF_PERCENT": (
        "a scale is too coarse when half a step is more than",
        f"{scale.MOST_OFF_PERCENT:g} % of the amount",
    ),
    "scale.STOCKS_PERCENT": (
        "stock solutions offered", ", ".join(f"{one:g} %" for one in scale.STOCKS_PERCENT),
    ),
    "soybeans.BULK_KG_PER_M3": (
        "bulk density of dry soybeans", f"{soybeans.BULK_KG_PER_M3:g} kg/m³",
    ),
    "soybeans.CUP_GRAMS": ("a US cup of dry soybeans", f"{soybeans.CUP_GRAMS:g} g"),
    "salts.ATOMIC_WEIGHTS": ("atomic weights of the salts", "IUPAC, abridged, 2021"),
    "salts.soda": (
        "soda ash for washing soda crystals",
        f"1 g to {salts.in_place_of(1, 'soda-ash', 'washing-soda'):.1f} g",
    ),
    "salts.alum": (
        "alum for aluminium sulphate",
        f"100 g to {salts.in_place_of(100, 'alum', 'aluminium-sulphate'):.1f} g",
    ),
    "salts.acetate": (
        "sodium acetate for 150 g alum",
        (f"{salts.acetate_for(150, 'sodium-acetate-dry'):.1f} g dry, "
        f"{salts.acetate_for(150, 'sodium-acetate'):.1f} g crystals"),
    ),
    "base_weight.LOSSES": (
        "cotton and linen lose by a good scour",
        "{:g} to {:g} %".format(*base_weight.LOSSES["cellulose"]),
    ),
    "base_weight.LOSSES.silk": (
        "raw silk loses by degumming",
        "{:g} to {:g} %".format(*base_weight.LOSSES["silk"]),
    ),
    "units.metric": (
        "a metric cup, spoons",
        "{:g} mL, {:g} and {:g} mL".format(
            *(convert(1, one, "mL") for one in ("metric cup", "label tbsp", "label tsp"))
        ),
    ),
    "amounts.CLOTH_KG_PER_M3": (
        "fibre of cellulose cloth",
        f"{amounts.CLOTH_KG_PER_M3:g} kg/m³",
    ),
    "amounts.RIM_SHARE": ("rim left free in a vessel", f"{amounts.RIM_SHARE * 100:g} %"),
    "soaking.K2": (
        "k2, from the gain at rest", f"{soaking.K2:g} 1/%, that is {1 / soaking.K2:.1f} %",
    ),
    "soaking.K1_AT_25": ("k1 at 25 °C", f"{K1:g} h/%"),
    "soaking.ACTIVATION_J_PER_MOL": (
        "its rise with heat", f"{soaking.ACTIVATION_J_PER_MOL / 1000:g} kJ/mol",
    ),
    "soaking.FULL_GAIN": ("soaked through at a gain of", f"{soaking.FULL_GAIN:g} %"),
    "soaking.TIME_BAND": ("beans differ in time by", f"{soaking.TIME_BAND * 100:g} %"),
    "soaking.COLDEST_C": (
        "temperatures of the equation", f"{soaking.COLDEST_C:g} to {soaking.HOTTEST_C:g} °C",
    ),
    "soaking.SOURS": ("soak water may sour after", listed(soaking.SOURS, "h")),
    "soaking.RATIO_LEAST": (
        "soaked over dry weight", f"{soaking.RATIO_LEAST:.1f} to {soaking.RATIO_MOST:.1f}",
    ),
    "soy_milk.BEAN_PROTEIN": (
        "protein of dry soybeans", f"{soy_milk.BEAN_PROTEIN * 100:g} g/100 g",
    ),
    "soy_milk.PROTEIN_RECOVERY": (
        "protein that comes into the milk",
        "{:g} % at 10 parts of water, {:g} % at 30".format(
            *(one * 100 for _, one in soy_milk.PROTEIN_RECOVERY)
        ),
    ),
    "soy_milk.SOLIDS_RECOVERY": (
        "solids that come into the milk",
        "{:g} % at 10 parts of water, {:g} % at 30".format(
            *(one * 100 for _, one in soy_milk.SOLIDS_RECOVERY)
        ),
    ),
    "soy_milk.LEAST_WATER": ("least water to beans", f"{soy_milk.LEAST_WATER:g} parts"),
    "soy_milk.KG_PER_L": ("density of the milk", f"{soy_milk.KG_PER_L:g} kg/L"),
    "soy_milk.GRIND_ML_PER_G": (
        "water of the first grind", f"{soy_milk.GRIND_ML_PER_G:g} mL to 1 g of soaked beans",
    ),
    "soy_milk.KEEPS": (
        "raw milk keeps",
        listed(soy_milk.KEEPS, "h").replace("4 at 20, 4 at 25", "4 at 20 to 25"),
    ),
    "drying.AIR_KG_PER_M3": (
        "air: density, heat, conductivity, viscosity, Prandtl number",
        (f"{drying.AIR_KG_PER_M3:g} kg/m³, {drying.AIR_J_PER_KG_K:g} J/kgK, "
        f"{drying.AIR_W_PER_M_K:g} W/mK, {drying.AIR_M2_PER_S:g} m²/s, {drying.PRANDTL:g}"),
    ),
    "drying.LEWIS": ("Lewis number", g(drying.LEWIS)),
    "drying.STILL_W_PER_M2_K": ("heat from still air", f"{drying.STILL_W_PER_M2_K:g} W/m²K"),
    "drying.RADIANT_W_PER_M2_K": ("heat by radiation", f"{drying.RADIANT_W_PER_M2_K:g} W/m²K"),
    "drying.LENGTH_M": ("length of cloth along the moving air", f"{drying.LENGTH_M:g} m"),
    "drying.FIBRES": (
        "the slow end begins at",
        (f"{FIBRES['cotton'].critical:g} cotton, {FIBRES['wool'].critical:g} wool, "
        f"{FIBRES['silk'].critical:g} silk, {FIBRES['linen'].critical:g} linen, hemp, viscose"),
    ),
    "drying.FIBRES.regain": (
        "other fibres to cotton",
        (f"{FIBRES['linen'].regain:g} linen, hemp, {FIBRES['viscose'].regain:g} viscose, "
        f"{FIBRES['silk'].regain:g} silk, {FIBRES['wool'].regain:g} wool"),
    ),
    "soak_time.LOOK_SHARE": (
        "look at the beans after",
        f"{soak_time.LOOK_SHARE * 100:g} % of the likely time",
    ),
    "soak_time.WATER_SHARE": (
        "change the water after",
        f"{soak_time.WATER_SHARE * 100:g} % of that time",
    ),
    "room_text._AIRS": (
        "moving air: still, room, fan, breeze",
        f"{g(*(room_text.read_air(one) for one in ('still', 'room', 'fan', 'breeze')))} m/s",
    ),
    "drying_time.ROOMS_C": (
        "rooms that drying is worked out for",
        "{:g} to {:g} °C, up to {:g} %, up to {:g} m/s".format(
            *drying_time.ROOMS_C, drying_time.MOST_HUMIDITY, drying_time.MOST_AIR_M_S
        ),
    ),
    "drying_factor.LEAST_LOGGED": (
        "dryings before the studio's own factor counts",
        g(drying_factor.LEAST_LOGGED),
    ),
    "drying_factor.COUNTED_LAST": ("latest dryings that count", g(drying_factor.COUNTED_LAST)),
    "drying_factor.SURELY_A_SLIP": (
        "a drying nobody watched is longer or shorter by",
        f"{drying_factor.SURELY_A_SLIP:g} times",
    ),
    "drying_factor.WIDTH": (
        "range of the studio's own factor",
        (
            f"{drying_factor.WIDTH:g} standard deviations of its logarithms, "
            f"at least {drying_factor.LEAST_SPREAD:g} times"
        ),
    ),
    "spoil_data.WASHED_FROM": (
        "first wash of paint",
        f"{spoil_data.WASHED_FROM.days} days after painting",
    ),
    "spoil_data.ACETATE_DRIES": (
        "acetate dries before it is chalked",
        f"{spoil_data.ACETATE_DRIES / HOUR:g} h from dry, and no smell of vinegar",
    ),
    "spoil_data.MOST_IRON": ("most iron on cellulose", f"{spoil_data.MOST_IRON:g} % WOF"),
    "spoil_data.MOST_IRON_PROTEIN": (
        "most iron on wool and silk",
        f"{spoil_data.MOST_IRON_PROTEIN:g} % WOF",
    ),
    "spoil_data.MOST_SODA_PROTEIN": (
        "most soda on wool and silk",
        f"{spoil_data.MOST_SODA_PROTEIN:g} % WOF",
    ),
    "spoil_data.HEAT_LIMITS": (
        "heat limits, °C",
        ", ".join(f"{word} {HEAT[word].most:g}" for word in sorted(HEAT)),
    ),
    "spoil_data.HEAT_LIMITS.near": (
        "told before the limit, °C",
        ", ".join(f"{word} {HEAT[word].near:g}" for word in sorted(HEAT)),
    ),
    "room_air.DAMP_HUMIDITY": ("damp air", f"over {room_air.DAMP_HUMIDITY:g} %"),
    "room_air.DAMP_LATEST": ("damp cloth", f"over {room_air.DAMP_LATEST / HOUR:g} h"),
    "room_air.LONGEST_GAP": (
        "a sensor's reading counts for",
        f"{room_air.LONGEST_GAP / HOUR:g} h at most",
    ),
    "dryings.ROOM_AT_REST": (
        "cloth was weighed dry in air of",
        f"{dryings.ROOM_AT_REST:g} %",
    ),
    "drying.DRY_WITHIN": (
        "dry when within", f"{drying.DRY_WITHIN:g} kg/kg of what the air leaves in it",
    ),
    "drying.COTTON_REGAIN": (
        "water that cotton keeps in air of 50, 65, 80, 90 %",
        f"{points(drying.COTTON_REGAIN, 50, 65, 80, 90)} kg/kg",
    ),
    "drying.INDOORS": (
        "true time to time worked out, indoors", "{:g} to {:g}".format(*drying.INDOORS),
    ),
    "drying.OUTDOORS": (
        "true time to time worked out, outdoors", "{:g} to {:g}".format(*drying.OUTDOORS),
    ),
    "water_held.SPUN": (
        "water after spinning at 1600, 1400, 1200, 1000 rpm", points(SPUN, 1600, 1400, 1200, 1000),
    ),
    "water_held.SPUN.slow": (
        "water after spinning at 800, 600, 400 rpm", points(SPUN, 800, 600, 400),
    ),
    "water_held.SPUN.fast": ("water after a spinner of 2800 rpm", points(SPUN, 2800)),
    "water_held.SPIN_SHARE_OFF": ("a spin may be off by", f"{water_held.SPIN_SHARE_OFF * 100:g} %"),
    "water_held.WRUNG": (
        "water after wringing by hand",
        (f"{water_held.WRUNG.least:g} to {water_held.WRUNG.most:g}, "
        f"likely {water_held.WRUNG.likely:g}"),
    ),
    "water_held.DRIPPING": (
        "water when dripping",
        (f"{water_held.DRIPPING.least:g} to {water_held.DRIPPING.most:g}, "
        f"likely {water_held.DRIPPING.likely:g}"),
    ),
}  # fmt: skip
"""Constant of the code -> its row: name, value."""

TOLD_WITH_ANOTHER = {
    "soaking.HOTTEST_C", "soaking.RATIO_MOST", "soaking.GAIN_BAND", "drying.AIR_J_PER_KG_K",
    "drying.AIR_W_PER_M_K", "drying.AIR_M2_PER_S", "drying.PRANDTL", "water_held.SLOWEST_RPM",
    "water_held.FASTEST_RPM", "salts.SALTS", "drying_time.MOST_HUMIDITY",
    "drying_time.MOST_AIR_M_S", "drying_factor.LEAST_SPREAD", "soak_time.COLDEST_C",
    "soak_time.WARMEST_C",
}  # fmt: skip
"""Stand in the row of their neighbour."""
NO_FIGURES = {
    "soaking.GAS_J_PER_MOL_K",  # CODATA 2018, exact
    "amounts.MOST_GRAMS", "amounts.MOST_M2",  # bounds of what is read
    "drying_time.FULL_AIR", "room_air.DAMP_SOURCE",  # words
    "spoil_data.ALKALIS", "spoil_data.ACETATES", "spoil_data.FIXERS", "spoil_data.IRONS",
    "spoil_data.PROTEIN_FIBRES",
    "soy_milk.WARMEST_C", "scale.LEAST_STEP_G", "scale.MOST_STEP_G",  # bounds of what is read
}  # fmt: skip
FORMULAE = {
    "Peleg's equation", "moist air", "constant rate, the same for all cloths",
    "alkali after soy", "uncured cloth to the bath", "steam in place of the cure",
}  # fmt: skip
"""Rows that hold a law instead of a figure."""


def written() -> dict[str, tuple[str, str, str]]:
    """The rows of the section: figure -> value, source, how sure."""
    section = PAGE.read_text("utf-8").split(f"\n## {SECTION}\n")[1].split("\n## ")[0]
    found = {}
    for line in section.splitlines():
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if len(cells) == 4 and not re.fullmatch(r"figure|-+", cells[0]):
            assert cells[0] not in found, line
            found[cells[0]] = (cells[1], cells[2], cells[3])
    return found


@pytest.mark.parametrize("name", FIGURES)
def test_a_figure_stands_there_as_it_is_in_the_code(name: str) -> None:
    row, value = FIGURES[name]
    assert written()[row][0] == value


def test_no_row_tells_of_what_the_code_does_not_have() -> None:
    assert set(written()) == {row for row, _ in FIGURES.values()} | FORMULAE


def test_every_row_has_a_source_and_says_how_sure_it_is() -> None:
    for row, (_, source, sure) in written().items():
        assert len(source) > 8, row
        assert sure in {"H", "M", "L"}, row
        if re.match(r"(?:proposal|from memory)", source):
            assert sure == "L", row


MODULES = (
    amounts, base_weight, drying, drying_factor, drying_time, room_air, salts, scale, soak_time,
    soaking, soy_milk,
    soybeans, spoil_data, water_held,
)  # fmt: skip


def constants() -> Iterator[str]:
    """Every public constant at the top of a file that computes."""
    for module in MODULES:
        name = module.__name__.rpartition(".")[2]
        for node in ast.parse(inspect.getsource(module)).body:
            if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                yield f"{name}.{node.target.id}"


def test_no_constant_is_without_its_row() -> None:
    found = {one for one in constants() if "._" not in one}
    assert len(found) > 40
    assert found - set(FIGURES) - TOLD_WITH_ANOTHER - NO_FIGURES == set()
