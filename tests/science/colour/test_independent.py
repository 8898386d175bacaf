"""An independent library, colour-science, gives the same; it is no part of the program."""

import random
import warnings
from typing import Any

import pytest

from studio_log.science.colour.differences import difference
from studio_log.science.colour.lab import Lab, lab_of_xyz
from studio_log.science.colour.spaces import xyz_of_srgb


@pytest.fixture(scope="module")
def colour() -> Any:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it warns of drawing libraries that are not there
        import colour

    return colour


def chance_lab(chance: random.Random) -> tuple[float, float, float]:
    return chance.uniform(2, 98), chance.uniform(-80, 80), chance.uniform(-80, 80)


def test_differences_of_chance_colours(colour: Any) -> None:
    chance = random.Random(26)
    for _ in range(300):
        one, other = chance_lab(chance), chance_lab(chance)
        found = difference(Lab(*one), Lab(*other))
        assert found.ciede2000 == pytest.approx(
            colour.delta_E(one, other, method="CIE 2000"), abs=1e-6
        )
        # There the standard is the first colour too.
        assert found.cmc_2_1 == pytest.approx(
            colour.delta_E(one, other, method="CMC", l=2, c=1), abs=1e-6
        )


def test_chance_codes_of_the_screen(colour: Any) -> None:
    """0.05: the standard prints its matrix with four figures, coloraide has it unrounded."""
    chance = random.Random(9)
    for _ in range(200):
        code = (chance.random(), chance.random(), chance.random())
        told = colour.XYZ_to_Lab(colour.sRGB_to_XYZ(code), (0.3127, 0.3290))
        found = lab_of_xyz(xyz_of_srgb(code))
        assert (found.lightness, found.a, found.b) == pytest.approx(tuple(told), abs=0.05)
