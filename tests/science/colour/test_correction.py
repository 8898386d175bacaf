"""From camera light to colour, against a simulated camera and an independent library."""

import warnings
from typing import Any

import numpy as np
import pytest

from studio_log.science.colour.correction import (
    Correction,
    Kind,
    choose,
    expanded,
    fit,
    tone_of,
    undone,
)
from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.lab import Lab, lab_of_xyz
from studio_log.science.colour.target import NEUTRAL, PATCHES, patches_lab, patches_xyz
from tests.support.reference import rows

SIM = rows("photo_target_sim.csv")
WHITE = (94.9401, 100.0, 108.7091)
"""Of the simulation, as its table says."""


def columns(kind: str, *names: str) -> Any:
    return np.array([[float(row[name]) for name in names] for row in SIM if row["kind"] == kind])


def apart(correction: Correction, kind: str) -> list[float]:
    found = correction.xyz(columns(kind, "camR", "camG", "camB"))
    told = columns(kind, "L", "a", "b")
    labs = [lab_of_xyz((float(x), float(y), float(z)), WHITE) for x, y, z in found]
    return [ciede2000(Lab(*lab), one) for lab, one in zip(told.tolist(), labs, strict=True)]


@pytest.mark.parametrize(
    ("kind", "target", "swatches"),
    [
        ("matrix", (1.220, 3.023), (1.166, 2.498)),
        ("root-polynomial", (0.686, 3.087), (0.447, 0.915)),
    ],
)
def test_the_simulated_camera_is_read_as_well_as_by_another_library(
    kind: Kind, target: tuple[float, float], swatches: tuple[float, float]
) -> None:
    """photo_target_sim.csv: 0.02 in the mean, 0.05 in the largest CIEDE2000."""
    light, xyz = columns("target", "camR", "camG", "camB"), columns("target", "X", "Y", "Z")
    correction = fit(light, xyz, kind, None)
    for which, (mean, most) in (("target", target), ("swatch", swatches)):
        found = apart(correction, which)
        assert np.mean(found) == pytest.approx(mean, abs=0.02)
        assert max(found) == pytest.approx(most, abs=0.05)


@pytest.mark.parametrize("kind", ["matrix", "root-polynomial"])
def test_twice_the_light_is_twice_the_colour(kind: Kind) -> None:
    """Finlayson, Mackiewicz and Hurlbert 2015: f(k RGB) = k f(RGB)."""
    light, xyz = columns("target", "camR", "camG", "camB"), columns("target", "X", "Y", "Z")
    correction = fit(light, xyz, kind, None)
    for times in (0.01, 2, 37.5):
        assert correction.xyz(times * light) == pytest.approx(times * correction.xyz(light),
                                                              rel=1e-12)  # fmt: skip


def test_the_root_polynomial_has_the_terms_of_another_library() -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it warns of drawing libraries that are not there
        from colour.characterisation import matrix_colour_correction_Finlayson2015
    light, xyz = columns("target", "camR", "camG", "camB"), columns("target", "X", "Y", "Z")
    told = matrix_colour_correction_Finlayson2015(light, xyz, degree=2)
    assert fit(light, xyz, "root-polynomial", None).figures == pytest.approx(told, abs=1e-8)


def test_the_patches_are_those_of_the_table() -> None:
    """colour_target_24.csv, and its sRGB codes by test_spaces_and_differences."""
    for patch, row in zip(PATCHES, rows("colour_target_24.csv"), strict=True):
        told = tuple(float(row[axis]) for axis in "Lab")
        assert (patch.published.lightness, patch.published.a, patch.published.b) == told
        assert row["name"].startswith(patch.name)
    lightness = [patches_lab()[one].lightness for one in NEUTRAL]
    assert lightness == sorted(lightness, reverse=True)


def camera_light() -> Any:
    """A made-up camera: a mixing matrix undone, so that the 3 x 3 is right exactly."""
    mixing = np.array([[0.7, 0.25, 0.05], [0.2, 0.7, 0.1], [0.02, 0.18, 0.8]])
    return np.array(patches_xyz()) / 100 @ mixing.T


def test_of_a_plain_camera_every_patch_is_foretold() -> None:
    chosen = choose(camera_light(), range(24))
    assert chosen.rms < 0.05
    assert chosen.correction.tone is None


@pytest.mark.parametrize("gamma", [0.8, 1.3])
def test_a_hidden_tone_curve_is_found_in_the_neutral_row(gamma: float) -> None:
    chosen = choose(camera_light() ** gamma, range(24))
    assert chosen.correction.tone is not None
    assert chosen.correction.tone[0] == pytest.approx(1 / gamma, rel=0.05)
    straight = fit(camera_light() ** gamma, np.array(patches_xyz()), "root-polynomial", None)
    labs = [lab_of_xyz(tuple(one)) for one in straight.xyz(camera_light() ** gamma).tolist()]
    without = [ciede2000(a, b) for a, b in zip(patches_lab(), labs, strict=True)]
    assert chosen.rms < 0.5 * float(np.sqrt(np.mean(np.square(without))))


def test_few_patches_leave_only_the_matrix_and_fewer_are_refused() -> None:
    light = camera_light()
    places = [*range(0, 12, 2), *range(12, 23)]
    assert len(places) == 17
    assert choose(light[places], places).correction.kind == "matrix"
    with pytest.raises(ValueError, match="11 patches are too few"):
        choose(light[:11], range(11))


def test_a_curve_that_would_fall_is_not_taken() -> None:
    lights = np.array([[one] * 3 for one in (0.8, 0.5, 0.3, 0.1)])
    assert tone_of(lights, [3, 9, 20, 60]) is None
    assert tone_of(lights[:3], [60, 20, 9]) is None
    assert undone(lights, None) is lights
    assert expanded(np.array([[-0.1, 0.5, 0.5]]), "root-polynomial")[0].tolist() == pytest.approx(
        [-0.1, 0.5, 0.5, 0, 0.5, 0]
    )
