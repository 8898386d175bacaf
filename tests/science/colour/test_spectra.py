"""Spectra to colours, K/S and strength."""

import math

import pytest

from studio_log.science.colour import spectra
from studio_log.science.colour.spectra import (
    k_over_s,
    ks_peak,
    ks_sum,
    lab_of_reflectance,
    reflectance_of,
    strength_percent,
    xyz_of_reflectance,
)
from tests.support.reference import numbers, rows


def test_the_weights_are_those_of_the_table() -> None:
    """ASTM E308, D65 and 10 degree, ends folded in."""
    table = numbers("e308_weights_d65_10.csv")
    assert [one["nm"] for one in table] == list(spectra.WAVELENGTHS)
    for axis in "xyz":
        weights = getattr(spectra, f"WEIGHTS_{axis.upper()}")
        assert list(weights) == [one[f"W{axis}"] for one in table]
    # ASTM E308 prints 94.811, 100, 107.304 for these (from memory).
    assert pytest.approx((94.811, 100, 107.304), abs=0.002) == spectra.WHITE


@pytest.mark.parametrize("row", rows("reflectance_expected.csv"), ids=lambda row: row["name"])
def test_a_spectrum_has_its_colour_and_depth(row: dict[str, str]) -> None:
    """Values of an independent library by ASTM E308, 0.005; K/S relative 1e-4."""
    told = {name: float(row[name]) for name in row if name not in {"n", "name", "set"}}
    spectrum = [one[row["name"]] for one in numbers("reflectance_spectra.csv")]
    xyz = xyz_of_reflectance(spectrum)
    assert xyz == pytest.approx([told[axis] for axis in "XYZ"], abs=0.005)
    lab = lab_of_reflectance(spectrum)
    found = (lab.lightness, lab.a, lab.b, lab.chroma, lab.hue)
    assert found == pytest.approx([told[a] for a in ("L", "a", "b", "C", "h_deg")], abs=0.006)
    assert ks_peak(spectrum) == pytest.approx((told["nm_peak"], told["KS_peak"]), rel=1e-4)
    assert ks_sum(spectrum) == pytest.approx(told["KS_sum"], rel=1e-4)


@pytest.mark.parametrize("row", numbers("ks_strength.csv"), ids=lambda row: str(row["n"]))
def test_strength_goes_by_k_over_s(row: dict[str, float]) -> None:
    """Kubelka and Munk: exact arithmetic, relative 1e-4."""
    standard, batch, ground = (k_over_s(row[f"R_{n}"]) for n in ("standard", "batch", "ground"))
    told = [row[f"KS_{n}"] for n in ("standard", "batch", "ground")]
    assert [standard, batch, ground] == pytest.approx(told, rel=1e-4)
    assert strength_percent(batch, standard) == pytest.approx(row["strength_pct"], rel=1e-4)
    net = strength_percent(batch, standard, ground)
    assert net == pytest.approx(row["strength_net_pct"], rel=1e-4)
    assert reflectance_of(standard) == pytest.approx(row["R_standard"], rel=1e-9)


def test_a_perfect_white_is_the_white_and_deep_cloth_keeps_its_figures() -> None:
    white = lab_of_reflectance([1.0] * 31)
    assert (white.lightness, white.a, white.b) == pytest.approx((100, 0, 0), abs=1e-9)
    assert xyz_of_reflectance([0.0] * 31) == (0, 0, 0)
    assert k_over_s(reflectance_of(1e9)) == pytest.approx(1e9, rel=1e-6)


@pytest.mark.parametrize(
    ("figures", "words"),
    [
        ([0.5] * 30, "31 figures"),
        ([35.0] * 31, "not a percentage"),
        ([2.5] + [0.5] * 30, "not a percentage"),
        ([-0.1] * 31, "from 0 to 1"),
        ([math.nan] * 31, "from 0 to 1"),
    ],
)
def test_what_is_no_spectrum_is_said(figures: list[float], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        xyz_of_reflectance(figures)


@pytest.mark.parametrize("wrong", [0.0, -0.1, 1.01, math.nan])
def test_a_black_has_no_depth_to_compute(wrong: float) -> None:
    with pytest.raises(ValueError, match="above 0 and at most 1"):
        k_over_s(wrong)


def test_a_standard_no_deeper_than_its_ground_is_refused() -> None:
    with pytest.raises(ValueError, match="deeper than the ground"):
        strength_percent(1.0, 0.03, 0.03)
