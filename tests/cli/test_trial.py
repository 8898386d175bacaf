"""The command trial fit: its fields, its words, and that it needs no studio."""

import json
from pathlib import Path

import pytest

from tests.cli.fake_house import Line
from tests.support.reference import REFERENCE, rows

TOLD = {row["quantity"]: float(row["value"]) for row in rows("cure_age_expected.csv")}
FIT = ("trial", "fit", str(REFERENCE / "cure_age_data.csv"), "--age", "age_d", "--depth", "y")


def test_the_fit_has_the_figures_of_other_libraries(line: Line) -> None:
    """tests/reference/cure_age_expected.csv, relative 1e-6."""
    ended = line.run(*FIT, "--batch", "batch", "--at", "90", "--at", "10 d", "--json")
    assert (ended.code, ended.err, line.house.opened) == (0, "", [])
    told = json.loads(ended.out)
    assert (told["n"], told["effect"], told["slope_by"]) == (36, "clear", "batches")
    assert told["slope"] == pytest.approx(TOLD["batch_slopes_mean"], rel=1e-6)
    names = {"intercept": "ols_intercept", "se_slope": "ols_se_slope", "p": "ols_p_slope",
             "r2": "ols_r2", "slope_low": "ols_slope_ci95_lo"}  # fmt: skip
    for name, other in names.items():
        assert told["line"][name] == pytest.approx(TOLD[other], rel=1e-6)
    assert told["lack_of_fit"]["p"] == pytest.approx(TOLD["lack_of_fit_p"], rel=1e-5)
    assert told["robust"]["slope"] == pytest.approx(TOLD["theil_sen_slope"], rel=1e-6)
    at = {one["age"]: one for one in told["at"]}
    assert at[90]["new_high"] == pytest.approx(TOLD["pred95_hi_90d"], rel=1e-6)
    assert (at[90]["extrapolated"], at[10]["extrapolated"]) == (True, False)
    assert at[10]["mean_low"] == pytest.approx(TOLD["mean_ci95_lo_10d"], rel=1e-6)
    assert told["words"][0].startswith("Depth rises by 4.51")


def test_the_fit_in_words_begins_with_the_answer(line: Line) -> None:
    first, *rest = line.run(*FIT, "--at", "90").out.splitlines()
    assert first == (
        "Depth rises by 4.51 for each tenfold of age (95 % interval 3.84 to 5.19, from 36 "
        "swatches as if each stood apart)."
    )
    assert rest[-1].endswith("Extrapolated: no swatch is of such an age.")


def test_an_infinite_f_is_none_in_json(line: Line, tmp_path: Path) -> None:
    table = tmp_path / "t.csv"
    table.write_text("age,c\n1,1\n1,1\n2,5\n2,5\n4,3\n4,3\n")
    told = json.loads(line.run("trial", "fit", str(table), "--age", "1", "--depth", "c",
                               "--json").out)  # fmt: skip
    assert told["lack_of_fit"] == {"f": None, "df1": 1, "df2": 3, "p": 0.0, "fits": False}


def test_one_age_is_answered_in_words(line: Line, tmp_path: Path) -> None:
    table = tmp_path / "t.csv"
    table.write_text("age,c\n7,1\n7,2\n7,3\n")
    ended = line.run("trial", "fit", str(table), "--age", "age", "--depth", "c", "--json")
    assert (ended.code, ended.out) == (1, "")
    assert ended.err.startswith("All 3 swatches are of one age, 7 d")


def test_the_change_is_held_against_the_2u_of_a_swatch(line: Line) -> None:
    """4.5113 a tenfold from 1 to 56 d, 1.748 tenfolds: 7.887."""
    told = json.loads(line.run(*FIT, "--two-u", "2,5", "--json").out)
    assert (told["change"], told["two_u"]) == (pytest.approx(7.887, abs=0.001), 2.5)
    assert told["words"][1].endswith("2.5: single swatches can show it.")
    wide = line.run(*FIT, "--two-u", "9").out.splitlines()[1]
    assert "single swatches cannot show it" in wide
