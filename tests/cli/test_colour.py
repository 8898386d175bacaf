"""The commands of colour: their fields, their words, and that they need no studio."""

import json

import pytest

from tests.cli.fake_house import Line


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
