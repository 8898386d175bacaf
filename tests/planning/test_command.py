"""The command plan: its fields, its words, its exits; it opens no studio."""

import json
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from tests.cli.fake_house import Line
from tests.planning.kit import PLANNER, project, studio
from tests.support.tree import TREE

FIELDS = {"status", "starts", "ends", "sessions", "why", "ways_out", "seconds", "bound"}


@pytest.fixture
def line() -> Line:
    return Line()


def written(tmp_path: Path, value: Any) -> str:
    path = tmp_path / "problem.json"
    path.write_text(value if isinstance(value, str) else json.dumps(value), "utf-8")
    return str(path)


def answered(line: Line, *words: str, code: int = 0) -> dict[str, Any]:
    ended = line.run("plan", *words, "--json")
    assert (ended.code, ended.err) == (code, ""), ended
    found: dict[str, Any] = json.loads(ended.out)
    assert set(found) >= FIELDS
    return found


def test_a_studio_is_answered_with_every_start_and_end(line: Line) -> None:
    told = answered(line, str(PLANNER / "studio-one-lot.json"))
    assert told["status"] == "optimal"
    assert told["score"] == told["bound"] == [0, 8, 15930]
    assert set(told["starts"]["L01"]) == set(told["ends"]["L01"])
    assert told["ends"]["L01"]["bean soak"] == told["starts"]["L01"]["grind and strain"]
    assert len(told["sessions"]) == 8
    assert told["sessions"][0]["steps"] == [["L01", "beans to soak"]]
    assert told["vessels"]["L01"]["first soak"]["tub"] in {"tub1", "tub2", "tub3"}
    assert line.house.opened == []


def test_a_project_is_answered_in_its_own_units(line: Line, tmp_path: Path) -> None:
    tasks = [{"id": "a", "duration": 3}, {"id": "b", "duration": 2}]
    value = project(tasks, [{"from": "a", "to": "b", "min": 4}])
    told = answered(line, written(tmp_path, value))
    assert (told["status"], told["makespan"], told["bound"]) == ("optimal", 6, 6)
    assert (told["starts"], told["ends"]) == ({"a": 0, "b": 4}, {"a": 3, "b": 6})
    words = line.run("plan", written(tmp_path, value)).out.splitlines()
    assert words[0] == "Over after 6. No plan is better; that is proved."


def test_instants_are_utc_where_the_file_names_a_zone(line: Line, tmp_path: Path) -> None:
    told = answered(line, written(tmp_path, studio(zone="Europe/London", start="2027-06-07T00:00")))
    assert told["starts"]["L1"]["load"].endswith("Z")
    assert told["sessions"][0]["start"] == told["starts"]["L1"]["load"]


def test_a_file_that_makes_no_sense_is_invalid_and_exits_1(line: Line, tmp_path: Path) -> None:
    path = written(tmp_path, studio(grid_min=0, extra=1))
    told = answered(line, path, code=1)
    assert told["status"] == "invalid"
    assert len(told["why"]) == 2
    assert (told["starts"], told["ways_out"]) == ({}, [])
    ended = line.run("plan", path)
    assert (ended.code, ended.out) == (1, "")
    assert "problem.json cannot be planned. Nothing was changed." in ended.err
    assert "grid_min 0" in ended.err


def test_what_cannot_be_is_an_answer_with_its_reason(line: Line, tmp_path: Path) -> None:
    path = written(tmp_path, studio(calendar={"working": {}}))
    told = answered(line, path)
    assert (told["status"], told["score"]) == ("infeasible", None)
    assert line.run("plan", path).out.startswith("L1 cannot be done in these hours")


def test_in_words_a_session_is_a_line_and_better_plans_are_told_of(line: Line) -> None:
    ended = line.run("plan", str(PLANNER / "studio-one-lot.json"))
    assert ended.code == 0
    head, empty, *lines = ended.out.splitlines()
    assert head == (
        "8 sessions, no date late, 11.1 days off target and to taking down. "
        "No plan is better; that is proved."
    )
    assert (empty, len(lines)) == ("", 8)
    assert lines[0] == "Thu 4 Mar 2027, 17:20–17:30: L01 beans to soak"
    assert ended.err.startswith("After ")


def test_a_sketch_is_the_first_plan(line: Line) -> None:
    path = str(PLANNER / "studio-four-lots-two-running.json")
    told = answered(line, path, "--sketch")
    assert (told["status"], told["tries"], told["score"][0]) == ("feasible", 0, 0)


@pytest.mark.parametrize("seconds", ["0", "-1", "nan", "inf", "soon", "", "1e9"])
def test_seconds_that_are_none_are_refused(line: Line, seconds: str) -> None:
    ended = line.run("plan", str(PLANNER / "studio-one-lot.json"), "--seconds", seconds)
    assert (ended.code, ended.out) == (1, "")
    assert "is no number of seconds" in ended.err


def test_the_optimizer_is_asked_for_by_name_and_who_has_none_is_told_how_to_add_it(
    line: Line, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = str(PLANNER / "studio-four-lots-two-running.json")
    monkeypatch.setattr("studio_log.planning.apart.find_spec", lambda _: None)
    ended = line.run("plan", path, "--engine", "optimizer")
    assert (ended.code, ended.out) == (1, "")
    assert "pip install 'studio-log[optimizer]'" in ended.err
    told = answered(line, path, "--engine", "auto", "--seconds", "1")
    assert told["status"] == "feasible"
    ended = line.run("plan", path, "--engine", "steam")
    assert (ended.code, ended.out) == (1, "")
    assert "“steam” is no engine; one of own, optimizer, auto is." in ended.err


@pytest.mark.parametrize("name", ["", "/nowhere.json", ".", "/dev/zero", "a\x00b"])
def test_a_file_that_cannot_be_read_is_refused(line: Line, name: str) -> None:
    ended = line.run("plan", name, "--json")
    assert (ended.code, ended.out) == (1, "")
    assert ended.err.strip()


@pytest.mark.parametrize("engine", ["own", "auto"])
def test_ctrl_c_ends_the_search_and_the_best_plan_is_the_answer(engine: str) -> None:
    path = str(PLANNER / "studio-ten-lots-class.json")
    command = [sys.executable, "-m", "studio_log", "plan", path, "--seconds", "600"]
    command += ["--engine", engine]
    with subprocess.Popen(
        command, cwd=TREE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as running:
        assert running.stderr is not None
        assert running.stderr.readline().startswith("After ")
        running.send_signal(signal.SIGINT)
        out, _ = running.communicate(timeout=60)
    assert running.returncode == 0
    assert "The best plan found in " in out.splitlines()[0]
    assert len(out.splitlines()) > 40


@pytest.mark.parametrize("module", ["studio_log.app.window", "studio_log.cli.main"])
def test_neither_the_window_nor_other_commands_import_anything_of_it(module: str) -> None:
    code = (
        f"import sys, {module}; names = 'planning', 'optimizer', 'ortools'\n"
        "print([n for n in sys.modules if any(name in n for name in names)])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=TREE, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
