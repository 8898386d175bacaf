"""The optimizer in its own process: what goes in and out, and the command that asks it."""

import json
import subprocess
import sys
from typing import Any

import pytest

pytest.importorskip("ortools", reason="the extra optimizer is not installed")

from studio_log.planning.apart import Apart, Ask, job_of
from studio_log.planning.check_plan import violations
from studio_log.planning.read_plan import read_plan
from tests.cli.fake_house import Line
from tests.planning.kit import PLANNER, instance, project, read, studio
from tests.support.tree import TREE

pytestmark = pytest.mark.long

LONG = 120.0


def told(ask: Ask) -> list[tuple[str, Any]]:
    heard: list[tuple[str, Any]] = []
    one = Apart(ask, lambda message: heard.extend(message.items()))
    assert one.wait(LONG)
    return heard


def said(*lines: bytes) -> list[dict[str, Any]]:
    """What the process says to some lines, the way in closed behind them."""
    done = subprocess.run(
        [sys.executable, "-m", "studio_log.optimizer"], cwd=TREE, input=b"\n".join(lines),
        capture_output=True, check=False, timeout=LONG,
    )  # fmt: skip
    assert done.stderr == b""
    return [json.loads(one) for one in done.stdout.splitlines()]


def test_it_is_what_auto_means_where_it_is_installed() -> None:
    assert job_of("auto") == job_of("optimizer") == "studio_log.optimizer"
    assert job_of("own") == "studio_log.planning.job"


def test_a_studio_is_planned_to_its_proof_and_each_plan_on_the_way_holds() -> None:
    value = instance("studio-four-lots-two-running")
    heard = told(Ask(value, engine="optimizer", seconds=LONG))
    kind, done = heard[-1]
    assert (kind, done["status"]) == ("done", "optimal")
    assert done["score"] == done["bound"] == value["best"]["score"]
    assert done["proved"] == {"late": True, "sessions": True, "fine": True}
    problem = read(value)
    for _, fields in heard:
        assert violations(problem, read_plan(problem, fields)) == []


def test_a_project_is_planned_to_its_proof() -> None:
    tasks = [{"id": "a", "duration": 3}, {"id": "b", "duration": 2}]
    value = project(tasks, [{"from": "a", "to": "b", "min": 4}])
    kind, done = told(Ask(value, engine="optimizer", seconds=LONG))[-1]
    assert (kind, done["status"], done["makespan"]) == ("done", "optimal", 6)


def test_the_same_tries_give_the_same_plan_in_another_process() -> None:
    ask = Ask(studio(3), engine="optimizer", seconds=LONG, tries=2, seed=4)
    one, other = (told(ask)[-1][1] | {"seconds": 0} for _ in range(2))
    assert one == other


@pytest.mark.parametrize(
    "line", [b"", b"{}", b"nonsense", b"[1", b'{"problem": 3}', b"\xff\xfe", b"[" * 100_000],
)  # fmt: skip
def test_what_is_no_ask_fails_in_words(line: bytes) -> None:
    (message,) = said(line, b"")
    assert message["failed"].endswith("Nothing was planned.")


def test_a_way_in_that_closes_ends_it() -> None:
    ask = {"do": "plan", "problem": instance("studio-ten-lots-class"), "engine": "optimizer",
           "seconds": 600, "tries": None, "seed": 1, "keep": None, "more": {}}  # fmt: skip
    assert all("better" in one for one in said(json.dumps(ask).encode(), b""))


def test_the_command_proves_and_says_so() -> None:
    line = Line()
    path = str(PLANNER / "studio-four-lots-two-running.json")
    ended = line.run("plan", path, "--engine", "optimizer", "--seconds", "100")
    assert ended.code == 0
    assert ended.out.startswith("12 sessions, no date late, 24.1 days off target")
    assert "No plan is better; that is proved." in ended.out.splitlines()[0]
    ended = line.run("plan", path, "--json", "--seconds", "100")
    assert json.loads(ended.out)["proved"] == {"late": True, "sessions": True, "fine": True}
