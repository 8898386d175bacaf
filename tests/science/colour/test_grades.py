"""Estimated grades and evenness against computed tables; the standards print no examples."""

import math
from collections import defaultdict

import pytest

from studio_log.science.colour.evenness import PHOTOPIC, spread, unlevelness
from studio_log.science.colour.grades import change, staining
from studio_log.science.colour.lab import Lab
from tests.support.reference import numbers, rows


def pair(row: dict[str, str]) -> tuple[Lab, Lab]:
    first, second = (Lab(*(float(row[f"{axis}{n}"]) for axis in "Lab")) for n in (0, 1))
    return first, second


@pytest.mark.parametrize("row", rows("iso105_a05_change.csv"), ids=lambda row: row["n"])
def test_a_change_is_graded(row: dict[str, str]) -> None:
    """ISO 105-A05 by two routines written apart; not printed in the standard."""
    found = change(*pair(row))
    assert found.de_f == pytest.approx(float(row["dEF"]), abs=0.001)
    assert found.figure == pytest.approx(max(1.0, float(row["GSc"])), abs=0.005)
    assert found.grade == row["grade"]


@pytest.mark.parametrize("row", rows("iso105_a04_staining.csv"), ids=lambda row: row["n"])
def test_staining_is_graded(row: dict[str, str]) -> None:
    """ISO 105-A04; not printed in the standard."""
    found = staining(*pair(row))
    assert found.de_gs == pytest.approx(float(row["dEGS"]), abs=0.001)
    assert found.figure == pytest.approx(float(row["SSR"]), abs=0.005)
    assert found.grade == row["rating"]


@pytest.mark.parametrize("row", rows("iso105_grey_scales.csv"), ids=str)
def test_a_step_of_the_printed_grey_scales_gets_its_own_grade(row: dict[str, str]) -> None:
    """ISO 105-A02:1993 (two printings) and A03: steps of greys that differ in lightness alone."""
    apart = float(row["dE_nominal"])
    grade = change if row["scale"].startswith("A02") else staining
    assert grade(Lab(50, 0, 0), Lab(50 + apart, 0, 0)).grade == row["grade"]


def test_a_grade_beside_a_limit_is_said_to_be_unsure() -> None:
    assert change(Lab(50, 0, 0), Lab(51.23, 0, 0)).unsure
    assert not change(Lab(50, 0, 0), Lab(51.7, 0, 0)).unsure


def test_no_change_is_the_best_grade_and_any_change_the_worst_at_most() -> None:
    same = Lab(34.8, 6.1, -28.6)
    assert (change(same, same).grade, change(same, same).figure) == ("5", 5)
    assert (staining(same, same).grade, staining(same, same).figure) == ("5", 5)
    assert (change(Lab(0, 0, 0), Lab(100, 0, 0)).grade, change(same, Lab(100, 0, 0)).figure) == (
        "1",
        1,
    )


def test_the_greyer_half_of_a_turn_is_taken_where_hues_meet_at_red() -> None:
    """Hues 350 and 10 have their mean at 0: the formula of A05 adds or takes 180."""
    around = [change(Lab(50, 20, -3), Lab(51, 20, 3)), change(Lab(50, 20, 3), Lab(51, 20, -3))]
    assert around[0].de_f == pytest.approx(around[1].de_f, abs=1e-6)


def cloths() -> dict[str, list[list[float]]]:
    found = defaultdict(list)
    for row in rows("levelness_readings.csv"):
        found[row["cloth"]].append([float(row[f"R{nm}"]) for nm in range(390, 701, 10)])
    return found


def colours() -> dict[str, list[Lab]]:
    found = defaultdict(list)
    for row in rows("levelness_lab.csv"):
        found[row["cloth"]].append(Lab(*(float(row[axis]) for axis in "Lab")))
    return found


@pytest.mark.parametrize("row", rows("levelness_expected.csv"), ids=lambda row: row["cloth"])
def test_a_cloth_is_as_even_as_its_spots(row: dict[str, str]) -> None:
    """RUI by Chong, Li and Yeung 1992, from memory; synthetic readings."""
    level = unlevelness(cloths()[row["cloth"]])
    assert level.index == pytest.approx(float(row["RUI"]), abs=0.0005)
    assert level.band == row["band"]
    assert "Chong" in level.whose
    found = spread(colours()[row["cloth"]])
    told = [float(row[name]) for name in ("mcdm00", "sd00", "sdL")]
    measured = [found.mean_apart, found.sd_apart, found.sd_lightness]
    assert measured == pytest.approx(told, abs=0.005)
    assert found.spots == int(row["n"])
    assert found.band == {"red A": "even", "red B": "slight", "brown C": "visible"}[row["cloth"]]
    assert "proposal" in found.whose


def test_the_eyes_curve_is_that_of_the_table() -> None:
    assert list(PHOTOPIC) == [one["V"] for one in numbers("photopic_v.csv")]


def test_the_noise_of_the_photo_is_taken_off_in_squares() -> None:
    spots = colours()["red B"]
    bare = spread(spots).mean_apart
    assert spread(spots, 0.3).mean_apart == pytest.approx(math.sqrt(bare**2 - 0.09))
    assert spread(spots, 5).mean_apart == 0
    assert spread(spots, 5).band == "even"
    with pytest.raises(ValueError, match="0 or more"):
        spread(spots, math.nan)


def test_spots_that_anybody_sees_are_strong() -> None:
    assert spread([Lab(40, 0, 0), Lab(50, 0, 0), Lab(60, 0, 0)]).band == "strong"


def test_two_spots_say_nothing_of_evenness() -> None:
    with pytest.raises(ValueError, match="3 spots or more"):
        spread([Lab(50, 0, 0)] * 2)
    with pytest.raises(ValueError, match="3 spots or more"):
        unlevelness([[0.5] * 32] * 2)
    with pytest.raises(ValueError, match="32 figures"):
        unlevelness([[0.5] * 31] * 3)
    with pytest.raises(ValueError, match="above 0"):
        unlevelness([[0.0] * 32] * 3)
