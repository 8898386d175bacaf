"""CIEDE2000 over arrays, and the bound that makes a search exact."""

import math
import random

import numpy as np
import pytest

from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.lab import Lab, lab_of_xyz
from studio_log.science.colour.near import ciede2000_of, reach_of
from studio_log.science.colour.shown import lab_of_code, shown_as
from studio_log.science.colour.spaces import shown_code, xyz_of_srgb
from tests.support.reference import rows


@pytest.mark.parametrize("row", rows("ciede2000_pairs.csv"), ids=lambda row: row["pair"])
def test_the_published_pairs_come_out_both_ways(row: dict[str, str]) -> None:
    """Sharma, Wu and Dalal, Color Res. Appl. 30(1), 21-30, 2005, table 1."""
    one, other = (Lab(*(float(row[f"{axis}{n}"]) for axis in "Lab")) for n in (1, 2))
    told = float(row["dE00_published"])
    for first, second in ((one, other), (other, one)):
        found = ciede2000_of(first, np.array([[second.lightness, second.a, second.b]]))
        assert found[0] == pytest.approx(told, abs=1e-4)


def colours(count: int, seed: int) -> list[Lab]:
    chance = random.Random(seed)
    found = [
        Lab(chance.uniform(0, 100), chance.uniform(-120, 120), chance.uniform(-120, 120))
        for _ in range(count)
    ]
    return [*found, Lab(50, 0, 0), Lab(0, 0, 0), Lab(100, 0, 0), Lab(40, 10, -60), Lab(40, 0, 25)]


def test_it_agrees_with_an_independent_library_everywhere() -> None:
    """coloraide's sum, which test_independent holds against colour-science too."""
    many = colours(150, 3)
    table = np.array([[one.lightness, one.a, one.b] for one in many])
    for one in many[::6]:
        found = ciede2000_of(one, table)
        told = [ciede2000(one, other) for other in many]
        assert found == pytest.approx(told, abs=1e-9)


def test_nothing_that_near_lies_outside_the_bound() -> None:
    """Random pairs and the worst hue, that of the rotation term; each side of each pair."""
    chance = random.Random(11)
    tightest = 0.0
    for _ in range(6000):
        hue = math.radians(chance.choice((chance.uniform(0, 360), chance.gauss(275, 15))))
        strong = chance.uniform(0, 110)
        one = Lab(chance.uniform(0, 100), strong * math.cos(hue), strong * math.sin(hue))
        spread = 10 ** chance.uniform(-2, 1.7)
        other = Lab(
            min(110.0, max(0.0, one.lightness + chance.gauss(0, spread))),
            one.a + chance.gauss(0, spread),
            one.b + chance.gauss(0, spread),
        )
        apart = ciede2000(one, other)
        reach = reach_of(one, apart)
        light = (other.lightness - one.lightness) / reach.light
        across = math.hypot(other.a - one.a, other.b - one.b) / reach.across
        assert math.hypot(light, across) <= 1, (one, other, apart)
        tightest = max(tightest, light, across)
    assert tightest > 0.9, "the pairs come near the bounds, or they would show little"


@pytest.mark.parametrize(
    "code", [(0, 0, 0), (1, 1, 1), (1, 0, 0), (0.2, 0.5, 0.8), (0.72, 0.4, 0.33)]
)
def test_the_colour_on_the_screen_is_that_of_the_standard(code: tuple[float, ...]) -> None:
    """IEC 61966-2-1, by way of coloraide."""
    red, green, blue = code
    xyz = xyz_of_srgb((red, green, blue))
    told = [round(255 * one) for one in code]
    shown, cut = shown_as(lab_of_xyz(xyz))
    found = [int(shown[at : at + 2], 16) for at in (1, 3, 5)]
    assert found == pytest.approx(told, abs=1)
    assert shown_code(xyz)[0][:1] == "#"
    assert not cut


@pytest.mark.parametrize("row", rows("srgb_xyz_lab_lch.csv"), ids=lambda row: row["label"])
def test_a_code_of_the_screen_gives_the_colour_of_the_table(row: dict[str, str]) -> None:
    """IEC 61966-2-1 and CIE 15, by two libraries."""
    code = "#" + "".join(f"{int(row[one]):02x}" for one in ("R8", "G8", "B8"))
    found, told = lab_of_code(code), [float(row[one]) for one in ("L", "a", "b")]
    assert [found.lightness, found.a, found.b] == pytest.approx(told, abs=0.05)
    assert shown_as(found)[0] == code
    with pytest.raises(ValueError, match="no colour"):
        lab_of_code("red")


def test_a_colour_that_no_screen_shows_is_said_to_be_cut() -> None:
    assert shown_as(Lab(50, -100, 40))[1]
