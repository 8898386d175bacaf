"""Why not, asked of a process of its own, and of the command, with ways out that can be applied."""

import json
from pathlib import Path
from typing import Any

import pytest

from studio_log.planning.answer import answer
from studio_log.planning.apart import Apart, Ask
from studio_log.planning.effort import Effort
from studio_log.planning.problem import Problem
from studio_log.planning.read_plan import read_plan
from studio_log.planning.what_fits import what_fits
from tests.cli.fake_house import Line
from tests.planning.kit import project, read, studio
from tests.planning.test_why_alone import running
from tests.planning.test_why_late import one_tub

LONG = 60.0


def asked(whole: Any, do: str = "why", **more: Any) -> list[tuple[str, Any]]:
    """All that is told of an ask, in order."""
    heard: list[tuple[str, Any]] = []
    ask = Ask(whole, do=do, **{"engine": "own", "seconds": LONG, "tries": 20, **more})
    one = Apart(ask, lambda message: heard.extend(message.items()))
    try:
        assert one.wait(LONG)
    finally:
        one.kill()
    return heard


def test_the_window_hears_of_reasons_and_ways_out() -> None:
    *better, (kind, fields) = asked(one_tub())
    assert kind == "done"
    assert [kind for kind, _ in better] == ["better"] * len(better)
    assert all(content["why"] == fields["why"] for _, content in better)  # reasons come first
    counts = [len(content["ways_out"]) for _, content in better]
    assert counts == sorted(counts)
    assert [one["kind"] for one in fields["reasons"]] == ["late"]
    assert fields["why"] == [one["sentence"] for one in fields["reasons"]]
    tub = next(one for one in fields["ways_out"] if one["words"] == "a second tub of 10 L")
    assert tub["changes"] == [{"change": "add_vessel", "kind": "tub", "litres": 10}]
    # What-if: the same ask with the way out's changes plans in time.
    (_, then) = asked(one_tub(), "plan", more={"changes": tub["changes"]})[-1]
    assert then["score"][0] == tub["score"][0] == 0


def test_a_plan_that_is_there_is_not_made_again() -> None:
    problem = read(one_tub())
    kept = answer(problem, Effort(tries=20)).fields
    plan = read_plan(problem, kept)
    (_, fields) = asked(one_tub(), keep=kept)[-1]
    assert fields["starts"] == kept["starts"]
    assert fields["score"] == list(plan.score.parts())
    assert fields["ways_out"]


def test_what_is_left_out_of_a_plan_is_explained_with_the_others_planned() -> None:
    problem, left = what_fits(read(running()), Effort(tries=2))
    assert isinstance(problem, Problem)
    assert [one.lot for one in left] == ["L1"]
    kept = answer(problem, Effort(tries=2)).fields
    (_, fields) = asked(running(), keep=kept, more={"what_fits": True})[-1]
    assert fields["starts"] == kept["starts"]
    assert [one["lot"] for one in fields["groups"]] == ["L1"]
    assert fields["groups"][0]["why"][0].startswith("L1 cannot be done in these hours: soak has ")
    assert len(fields["ways_out"]) == 3


@pytest.mark.parametrize(
    ("whole", "more", "words"),
    [
        (project([{"id": "a", "duration": 1}], []), {}, "this is a project"),
        (studio(), {"changes": "all"}, "no list of up to 20"),
        (studio(), {"changes": [{"change": "fly"}]}, "Change 1 is of kind 'fly'"),
        (studio(), {"changes": [{"change": "leave_out", "lot": "L9"}]}, "There is no lot L9."),
        (studio(grid_min=0), {}, "grid_min 0"),
    ],
    ids=lambda one: str(one)[:20],
)
def test_an_ask_that_makes_no_sense_is_invalid(whole: Any, more: Any, words: str) -> None:
    ((kind, fields),) = asked(whole, more=more)
    assert (kind, fields["status"]) == ("done", "invalid")
    assert words in fields["why"][0]


# -- the command -------------------------------------------------------------------------


def typed(tmp_path: Path, whole: Any, *words: str) -> dict[str, Any]:
    path = tmp_path / "problem.json"
    path.write_text(json.dumps(whole), "utf-8")
    ended = Line().run("plan", str(path), "--engine", "own", "--seconds", "4", "--json", *words)
    assert ended.err == ""
    found: dict[str, Any] = json.loads(ended.out)
    return found


def test_the_ways_out_of_the_command_can_be_given_back_to_it(tmp_path: Path) -> None:
    told = typed(tmp_path, running())
    assert told["status"] == "infeasible"
    assert [one["kind"] for one in told["reasons"]] == ["alone"]
    assert len(told["ways_out"]) == 3
    for way in told["ways_out"]:
        words = [word for one in way["changes"] for word in ("--change", json.dumps(one))]
        again = typed(tmp_path, running(), *words, "--sketch")
        assert again["status"] in {"feasible", "optimal"}
        assert again["score"][0] <= way["score"][0]


def test_in_words_the_ways_out_stand_below_the_reason(tmp_path: Path) -> None:
    path = tmp_path / "problem.json"
    path.write_text(json.dumps(running()), "utf-8")
    reason, empty, head, *ways = Line().run("plan", str(path)).out.splitlines()
    assert reason.startswith("L1 cannot be done in these hours: soak has been going since ")
    assert (empty, head) == ("", "Ways out, a plan was made for each:")
    assert ways[0].startswith("- One session on Saturday 6 March from 18:00 to 18:10: ")
    assert len(ways) == 3


@pytest.mark.parametrize("text", ["", "soon", "[1", "{}", '{"change": "leave_out", "lot": "L9"}'])
def test_a_change_that_is_none_is_refused(tmp_path: Path, text: str) -> None:
    path = tmp_path / "problem.json"
    path.write_text(json.dumps(studio()), "utf-8")
    ended = Line().run("plan", str(path), "--change", text)
    assert (ended.code, ended.out) == (1, "")
    assert "problem.json cannot be planned. Nothing was changed." in ended.err
