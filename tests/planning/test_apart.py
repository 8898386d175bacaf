"""Planning in a process of its own: what it tells, how it ends, and that nothing is left of it."""

import json
import os
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from studio_log.planning import apart
from studio_log.planning.apart import MISSING, Apart, Ask
from tests.planning.kit import instance, project, studio
from tests.support.tree import TREE

LONG = 60.0
"""Seconds that no test lasts; so what ends, ends because it was told to."""


class Ear:
    """Hears all messages, and may do something at the first."""

    def __init__(self, at_first: Callable[[Apart], None] | None = None) -> None:
        self.heard: list[tuple[str, Any]] = []
        self.at_first = at_first
        self.ready = threading.Event()
        self.first = threading.Event()
        self.apart: Apart | None = None

    def __call__(self, message: Any) -> None:
        ((kind, content),) = message.items()
        self.heard.append((kind, content))
        if len(self.heard) == 1 and self.at_first is not None:
            self.ready.wait(LONG)
            assert self.apart is not None
            self.at_first(self.apart)
        self.first.set()

    @property
    def kinds(self) -> list[str]:
        return [kind for kind, _ in self.heard]


Begin = Callable[..., tuple[Apart, Ear]]


@pytest.fixture
def begin() -> Iterator[Begin]:
    """Begins planning; what is still under way at the end of the test is ended."""
    begun: list[Apart] = []

    def one(ask: Ask, at_first: Callable[[Apart], None] | None = None) -> tuple[Apart, Ear]:
        ear = Ear(at_first)
        ear.apart = Apart(ask, ear)
        begun.append(ear.apart)
        ear.ready.set()
        return ear.apart, ear

    yield one
    for found in begun:
        found.kill()


@pytest.fixture
def odd(monkeypatch: pytest.MonkeyPatch, begin: Begin) -> Begin:
    """Begins a process that behaves as it is told, by `more`."""
    monkeypatch.setitem(apart.JOBS, "own", "tests.planning.odd_child")
    return lambda how, at_first=None: begin(
        Ask({}, engine="own", seconds=LONG, more={"how": how}), at_first
    )


def gone(pid: int) -> bool:
    """Whether a process is over and nobody has to wait for it any more."""
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return True
    return False


def own(problem: Any, **more: Any) -> Ask:
    return Ask(problem, **({"engine": "own", "seconds": LONG} | more))


def test_a_studio_is_planned_and_its_answer_is_that_of_the_command(begin: Begin) -> None:
    one, ear = begin(own(instance("studio-one-lot")))
    assert one.wait(LONG)
    assert not one.running
    assert ear.kinds == ["better", "done"]
    done = ear.heard[-1][1]
    assert (done["status"], done["score"]) == ("optimal", [0, 8, 15930])
    assert len(done["sessions"]) == 8
    better = ear.heard[0][1]
    assert (better["status"], better["starts"]) == ("feasible", done["starts"])


def test_better_plans_come_on_the_way_and_the_same_tries_give_the_same_plan(begin: Begin) -> None:
    plans = []
    for _ in range(2):
        one, ear = begin(own(instance("studio-four-lots-two-running"), tries=30, seed=3))
        assert one.wait(LONG)
        assert set(ear.kinds[:-1]) == {"better"}
        scores = [content["score"] for _, content in ear.heard]
        assert scores == sorted(scores, reverse=True)
        plans.append(ear.heard[-1][1] | {"seconds": 0})
    assert plans[0] == plans[1]
    assert plans[0]["tries"] == 30


def test_a_project_is_planned_too(begin: Begin) -> None:
    tasks = [{"id": "a", "duration": 3}, {"id": "b", "duration": 2}]
    one, ear = begin(own(project(tasks, [{"from": "a", "to": "b", "min": 4}])))
    assert one.wait(LONG)
    assert [content["makespan"] for _, content in ear.heard] == [6, 6]


def test_told_to_end_at_its_first_plan_it_answers_with_a_plan(begin: Begin) -> None:
    one, ear = begin(own(instance("studio-ten-lots-class")), Apart.end)
    assert one.wait(LONG)
    assert ear.kinds[-1] == "done"
    assert ear.kinds[0] == "better"
    assert ear.heard[-1][1]["score"] <= ear.heard[0][1]["score"]
    assert ear.heard[-1][1]["starts"]


def test_told_to_end_before_it_began_it_answers_that_there_is_none(begin: Begin) -> None:
    one, ear = begin(own(instance("studio-ten-lots-class")))
    one.end()
    assert one.wait(LONG)
    ((kind, done),) = ear.heard[-1:]
    assert kind == "done"
    assert done["status"] in {"unknown", "feasible"}


def test_a_deaf_process_is_ended_and_its_best_plan_is_the_answer(odd: Begin) -> None:
    one, ear = odd("deaf", Apart.end)
    assert one.wait(LONG)
    assert ear.heard[1:] == [("done", ear.heard[0][1])]
    assert gone(ear.heard[0][1]["pid"])


def test_killed_it_says_nothing_more_and_leaves_nothing(odd: Begin) -> None:
    before = set(threading.enumerate())
    one, ear = odd("deaf")
    assert ear.first.wait(LONG)
    one.kill()
    assert ear.kinds == ["better"]
    assert gone(ear.heard[0][1]["pid"])
    assert set(threading.enumerate()) <= before


def test_it_may_be_killed_by_the_one_who_hears_and_twice_and_at_any_time(begin: Begin) -> None:
    one, ear = begin(own(instance("studio-ten-lots-class")), Apart.kill)
    assert one.wait(LONG)
    assert ear.kinds == ["better"]
    one.kill()
    one.end()
    other, ear = begin(own(studio()))
    other.kill()
    assert "done" not in ear.kinds


def test_a_process_that_dies_is_told_of(odd: Begin) -> None:
    one, ear = odd("dies")
    assert one.wait(LONG)
    assert ear.kinds == ["better", "failed"]
    assert ear.heard[1][1] == "The planning process ended before it was done (it gave 9)."


@pytest.mark.parametrize(
    "line", ["", "nonsense", "[]", "{}", '{"done": 3}', '{"better": {}, "done": {}}', '"done"',
             '{"failed": {}}', '{"other": {}}', "[" * 100_000, "1" * 10_000],
)  # fmt: skip
def test_what_is_no_message_ends_it(odd: Begin, line: str) -> None:
    one, ear = odd(line)
    assert one.wait(LONG)
    assert ear.heard[1:] == [("failed", "The planning process said what makes no sense.")]


def test_a_line_without_an_end_is_not_read_for_ever(odd: Begin) -> None:
    one, ear = odd("endless")
    assert one.wait(LONG)
    assert ear.kinds == ["better", "failed"]


def test_after_the_last_message_nothing_is_heard(odd: Begin) -> None:
    one, ear = odd("twice")
    assert one.wait(LONG)
    assert ear.heard[1:] == [("done", {"n": 1})]


def test_a_problem_that_makes_no_sense_is_an_answer(begin: Begin) -> None:
    one, ear = begin(own({"format": "x"}))
    assert one.wait(LONG)
    assert ear.kinds == ["done"]
    assert ear.heard[0][1]["status"] == "invalid"


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"seconds": 0}, "no number of seconds"), ({"seconds": -1}, "no number of seconds"),
        ({"seconds": float("nan")}, "no number of seconds"), ({"tries": -1}, "Tries and seed"),
        ({"seed": 1.5}, "Tries and seed"), ({"do": "dance"}, "Nobody here knows how to do 'dance'"),
        ({"keep": [1]}, "is no plan"), ({"more": {"a": {1}}}, "could not be started"),
        ({"engine": "steam"}, "no engine is called steam"),
        ({"problem": []}, "no object with a problem"),
    ],
)  # fmt: skip
def test_an_ask_that_makes_no_sense_fails_in_words(
    begin: Begin, more: dict[str, Any], words: str
) -> None:
    ask = {"problem": studio(), "engine": "own", "seconds": LONG} | more
    one, ear = begin(Ask(**ask))
    assert one.wait(LONG)
    assert ear.kinds == ["failed"]
    assert words in ear.heard[0][1]


def test_without_the_optimizer_it_is_said_how_to_add_it(
    begin: Begin, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(apart, "find_spec", lambda _: None)
    one, ear = begin(own(studio(), engine="optimizer"))
    assert one.wait(LONG)
    assert ear.heard == [("failed", MISSING)]
    one, ear = begin(own(studio(), engine="auto"))
    assert one.wait(LONG)
    assert ear.kinds[-1] == "done"


PARENT = """
import json, os, sys
from studio_log.planning.apart import Apart, Ask
ask = Ask({}, engine="own", seconds=60.0)
found = Apart(Ask(json.loads(sys.argv[1]), engine="own", seconds=60.0), lambda _: None)
while found._process is None or not found._asked:
    pass
print(found._process.pid, flush=True)
sys.stdin.read()
"""


def test_no_process_outlives_the_program_that_began_it() -> None:
    """The parent is killed; the child's way in closes, and the child goes."""
    problem = json.dumps(instance("studio-ten-lots-class"))
    with subprocess.Popen(
        [sys.executable, "-c", PARENT, problem], cwd=TREE, text=True,
        stdin=subprocess.PIPE, stdout=subprocess.PIPE,
    ) as parent:  # fmt: skip
        assert parent.stdout is not None
        child = int(parent.stdout.readline())
        watched = Path(f"/proc/{child}")
        assert watched.exists()
        parent.kill()
    ended = threading.Event()
    for _ in range(200):
        if not watched.exists() or "State:\tZ" in (watched / "status").read_text("utf-8"):
            ended.set()
            break
        ended.wait(0.05)
    assert ended.is_set()


def test_the_process_steps_back_behind_the_window() -> None:
    code = "import os; from studio_log.planning import talking; talking.run({}); print(os.nice(0))"
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=TREE, input="\n", capture_output=True, text=True,
        check=True,
    )  # fmt: skip
    said, nice = done.stdout.splitlines()
    assert json.loads(said)["failed"].endswith("Nothing was planned.")
    assert int(nice) == min(19, os.nice(0) + 10)
