"""Spaces and differences against published pairs, computed tables and an independent library."""

import math
import random

import pytest

from studio_log.science.colour.differences import ciede2000, difference
from studio_log.science.colour.lab import D50_2, Lab, lab_of_xyz, xyz_of_lab
from studio_log.science.colour.spaces import (
    d50_of_d65,
    d65_of_d50,
    linear_of_srgb,
    shown_code,
    srgb_of_linear,
    srgb_of_xyz,
    xyz_of_srgb,
)
from tests.support.reference import rows


def pair(row: dict[str, str]) -> tuple[Lab, Lab]:
    first, second = (Lab(*(float(row[f"{axis}{n}"]) for axis in "Lab")) for n in (1, 2))
    return first, second


PAIRS = rows("ciede2000_pairs.csv")


@pytest.mark.parametrize("row", PAIRS, ids=lambda row: row["pair"])
def test_ciede2000_gives_the_published_pairs_both_ways(row: dict[str, str]) -> None:
    """Sharma, Wu and Dalal, Color Res. Appl. 30(1), 21-30, 2005, table 1."""
    one, other = pair(row)
    assert ciede2000(one, other) == pytest.approx(float(row["dE00_published"]), abs=1e-4)
    assert ciede2000(other, one) == pytest.approx(ciede2000(one, other), abs=1e-9)


@pytest.mark.parametrize("row", rows("delta_e_76_cmc.csv"), ids=lambda row: row["pair"])
def test_cie76_and_cmc_have_the_first_colour_as_standard(row: dict[str, str]) -> None:
    """Formulas of CIE 15 and ISO 105-J03; values computed by two libraries that agree."""
    one, other = pair(row)
    assert difference(one, other).cie76 == pytest.approx(float(row["dE76"]), abs=1e-4)
    assert difference(one, other).cmc_2_1 == pytest.approx(float(row["dE_CMC_2_1"]), abs=1e-4)
    swapped = difference(other, one).cmc_2_1
    assert swapped == pytest.approx(float(row["dE_CMC_2_1_swapped"]), abs=1e-4)


def test_the_parts_of_a_difference_make_up_its_whole() -> None:
    """ΔE² = ΔL² + ΔC² + ΔH² (CIE 15)."""
    chance = random.Random(7)
    for _ in range(200):
        one, other = (
            Lab(chance.uniform(0, 100), chance.uniform(-90, 90), chance.uniform(-90, 90))
            for _ in "12"
        )
        found = difference(one, other)
        parts = math.hypot(found.lightness, found.chroma, found.hue)
        assert parts == pytest.approx(found.cie76, abs=1e-9)


def test_hue_grows_counter_clockwise_from_red() -> None:
    """CIE 15: 0 is red, 90 yellow, 180 green, 270 blue."""
    red, yellow = Lab(50, 40, 0), Lab(50, 0, 40)
    assert [Lab(50, *ab).hue for ab in ((40, 0), (0, 40), (-40, 0), (0, -40))] == [0, 90, 180, 270]
    assert difference(red, yellow).hue > 0 > difference(yellow, red).hue
    assert Lab(50, 0.01, -0.02).hue is None
    assert Lab(50, 40, -1e-20).hue == 0


@pytest.mark.parametrize("row", rows("srgb_xyz_lab_lch.csv"), ids=lambda row: row["label"])
def test_srgb_becomes_xyz_lab_and_lch(row: dict[str, str]) -> None:
    """IEC 61966-2-1 and CIE 15: 0.02 in XYZ, 0.05 in L*a*b*."""
    xyz = xyz_of_srgb((int(row["R8"]) / 255, int(row["G8"]) / 255, int(row["B8"]) / 255))
    assert xyz == pytest.approx([float(row[axis]) for axis in "XYZ"], abs=0.02)
    lab = lab_of_xyz(xyz)
    found = (lab.lightness, lab.a, lab.b, lab.chroma)
    assert found == pytest.approx([float(row[axis]) for axis in ("L", "a", "b", "C")], abs=0.05)
    if row["h_deg"]:
        assert lab.hue == pytest.approx(float(row["h_deg"]), abs=0.1)
    warm = lab_of_xyz(d50_of_d65(xyz), D50_2)
    told = [float(row[axis]) for axis in ("L50", "a50", "b50")]
    assert (warm.lightness, warm.a, warm.b) == pytest.approx(told, abs=0.05)


def test_every_way_leads_back() -> None:
    lab = Lab(42.43, 51.05, 28.62)
    back = lab_of_xyz(d50_of_d65(d65_of_d50(lab)), D50_2)
    assert (back.lightness, back.a, back.b) == pytest.approx((42.43, 51.05, 28.62), abs=0.01)
    assert xyz_of_lab(lab_of_xyz((3.0, 0.5, 0.2))) == pytest.approx((3.0, 0.5, 0.2), abs=1e-12)
    code = (0.02, 0.5, 0.97)
    assert srgb_of_linear(linear_of_srgb(code)) == pytest.approx(code, abs=1e-12)
    assert srgb_of_xyz(xyz_of_srgb(code)) == pytest.approx(code, abs=1e-9)


@pytest.mark.parametrize("row", rows("colour_target_24.csv"), ids=lambda row: row["name"])
def test_the_published_patches_are_shown_in_their_codes(row: dict[str, str]) -> None:
    """Lab D50 of targets made after November 2014; sRGB after Bradford, 1 code."""
    code, cut = shown_code(d65_of_d50(Lab(float(row["L"]), float(row["a"]), float(row["b"]))))
    found = [int(code[at : at + 2], 16) for at in (1, 3, 5)]
    assert found == pytest.approx([int(row[f"s{one}8"]) for one in "RGB"], abs=1)
    assert cut == (row["clipped"] == "yes")


@pytest.mark.parametrize("row", rows("neutral_cards.csv"), ids=lambda row: row["card"])
def test_a_neutral_card_has_its_lightness(row: dict[str, str]) -> None:
    """CIE 15; the reflectances are usual trade values."""
    factor = float(row["Y"])
    lab = lab_of_xyz((0.950456 * 100 * factor, 100 * factor, 1.089058 * 100 * factor))
    # Of "mid L*=50" the table prints Y to four figures, which is 0.002 in L*.
    assert lab.lightness == pytest.approx(float(row["L"]), abs=0.002)
    assert (lab.a, lab.b) == pytest.approx((0, 0), abs=1e-9)


@pytest.mark.parametrize("wrong", [math.nan, math.inf])
def test_what_is_no_number_is_no_colour(wrong: float) -> None:
    with pytest.raises(ValueError, match="have to be numbers"):
        Lab(50, wrong, 0)
