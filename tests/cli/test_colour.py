"""The commands of colour: their fields, their words, and that they need no studio."""

import json
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from tests.cli.fake_house import Line
from tests.science.colour import made_photos as made
from tests.support.tree import TREE


def json_of(line: Line, *words: str) -> dict[str, object]:
    ended = line.run(*words, "--json")
    assert (ended.code, ended.err, line.house.opened) == (0, "", []), ended
    return dict(json.loads(ended.out))


def test_a_difference_has_its_three_figures(line: Line) -> None:
    """Pair 1 of Sharma, Wu and Dalal 2005: 2.0425; the others computed by two libraries."""
    told = json_of(line, "colour", "difference", "50,2.6772,-79.7751", "50,0,-82.7485")
    assert told["ciede2000"] == pytest.approx(2.0425, abs=1e-4)
    assert told["cie76"] == pytest.approx(4.001063, abs=1e-4)
    assert told["cmc_2_1"] == pytest.approx(1.738736, abs=1e-4)


def test_a_difference_is_said_in_words(line: Line) -> None:
    said = line.run("colour", "difference", "52,30,20", "54,24,16").out
    assert said.splitlines()[1] == "The second is 2.0 lighter in L* and 7.2 duller in C*."


def test_grades_are_steps_of_the_grey_scales(line: Line) -> None:
    """Row 3 of tests/reference/iso105_a05_change.csv: 2.4916, 3.534, 3-4."""
    told = json_of(line, "colour", "grade", "72.4,-4.1,48.6", "73.9,-3.6,44.9")
    assert told["grade_change"] == "3-4"
    assert told["change_figure"] == pytest.approx(3.534, abs=0.005)
    assert told["grade_staining"] in {"4", "4-5"}
    assert told["called"] == "estimated grade"
    said = line.run("colour", "grade", "72.4,-4.1,48.6", "73.9,-3.6,44.9").out
    assert said.startswith("Estimated grade of change 3-4 (ISO 105-A05, 3.53).")


def test_a_grade_beside_a_limit_says_so(line: Line) -> None:
    said = line.run("colour", "grade", "50,0,0", "51.23,0,0").out
    assert "close to a limit" in said


def test_minus_semicolons_and_blanks_are_read(line: Line) -> None:
    base = json_of(line, "colour", "difference", "50,2.5,-79.75", "50,0,-82.75")
    assert json_of(line, "colour", "difference", "50; 2,5; −79,75", "50, 0, -82.75") == base
    ended = line.run("colour", "difference", "--", "-1,2,3", "50,0,0")
    assert ended.code == 1
    assert "no colour of a surface" in ended.err


def photo(tmp_path: Path, scene: Any) -> str:
    path = tmp_path / "cloth.png"
    path.write_bytes(made.saved(made.photo(scene)))
    return str(path)


CORNERS = " ".join(f"{x:g},{y:g}" for x, y in made.CORNERS)
SWATCH = ",".join(f"{one:g}" for one in made.SWATCH)


def test_a_swatch_is_measured_with_its_uncertainty(line: Line, tmp_path: Path) -> None:
    """A made-up scene: L* 45, a* 25, b* 20 were put in."""
    words = ("colour", "measure", photo(tmp_path, made.scene()), "--target", CORNERS, "--swatch",
             SWATCH)  # fmt: skip
    told = json_of(line, *words)
    sure = told["two_u"]
    assert isinstance(sure, dict)
    for name, value in {"L": 45, "a": 25, "b": 20, "C": 32.02, "h": 38.66}.items():
        assert told[name] == pytest.approx(value, abs=sure[name])
    assert (told["relative"], told["patches"], told["warnings"]) == (False, 24, [])
    first, second, third = line.run(*words).out.splitlines()
    assert re.fullmatch(r"L\* 45\.\d, a\* 25\.\d, .* shown as #[0-9a-f]{6}\.", first)
    assert re.fullmatch(r"2u: \d\.\d CIEDE2000; L\* .*, h \d+°\.", second)
    assert third.startswith("By a matrix on 24 patches")


def test_with_a_card_it_is_relative_and_has_no_2u(line: Line, tmp_path: Path) -> None:
    words = ("colour", "measure", photo(tmp_path, made.scene()), "--card", "20,300,60,80",
             "--reflectance", "30 %", "--swatch", SWATCH)  # fmt: skip
    told = json_of(line, *words)
    assert (told["relative"], told["two_u"], told["method"]) == (True, None, "card")
    assert line.run(*words).out.splitlines()[1].startswith("Relative only")


def test_a_photo_that_cannot_be_measured_is_refused_with_what_to_do(
    line: Line, tmp_path: Path
) -> None:
    ended = line.run("colour", "measure", photo(tmp_path, made.scene()), "--target", CORNERS,
                     "--swatch", "850,0,100,100")  # fmt: skip
    assert (ended.code, ended.out) == (1, "")
    assert "lies outside the photo of 900 × 700 pixels" in ended.err
    assert ended.err.endswith("Nothing was changed.\n")


LATE = """
import sys
import studio_log.app.window, studio_log.cli.main
colour = "studio_log.science.colour."
heavy = {"numpy", "coloraide", colour + "measure", colour + "spaces", colour + "picture"}
print(sorted(heavy & set(sys.modules)))
import studio_log.app.compose, studio_log.ui.main_window
print(sorted(heavy & set(sys.modules)))
"""


def test_neither_window_nor_command_line_loads_colour_before_it_is_asked_for() -> None:
    done = subprocess.run([sys.executable, "-c", LATE], cwd=TREE, capture_output=True, text=True,
                          check=False)  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert done.stdout.split() == ["[]", "[]"]
