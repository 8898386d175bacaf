"""The optional optimizer against its bars, for `planner.py --engine optimizer`.

It is asked as the window asks it: in a process of its own.
"""

import json
import threading
from time import perf_counter
from typing import Any

from studio_log.planning.apart import Apart, Ask
from tests.planning.kit import PUBLIC, STUDIOS, instance
from tests.speed.report import verdict

PROJECT_S, STOP_S = 10.0, 0.2
PROVABLE = ("studio-one-lot", "studio-four-lots-two-running", "studio-five-lots-too-early")
"""Studios of which all three parts were proved in a trial, in a few seconds."""


class Asked:
    """One ask, and when its plans came."""

    def __init__(self, problem: Any, seconds: float) -> None:
        self.begun, self.first, self.last = perf_counter(), 0.0, 0.0
        self.done: dict[str, Any] = {}
        self.heard = threading.Event()
        self.apart = Apart(Ask(problem, engine="optimizer", seconds=seconds), self._hear)

    def _hear(self, message: Any) -> None:
        ((kind, content),) = message.items()
        at = perf_counter() - self.begun
        self.first, self.last = self.first or at, at
        if kind != "better":
            self.done = content if kind == "done" else {"status": content}
        self.heard.set()

    def wait(self) -> dict[str, Any]:
        """Give what came of it."""
        self.apart.wait()
        return self.done


def projects(seconds: float) -> None:
    """Print how each public project ends, and how many differ from what is published."""
    wrong, slowest = 0, 0.0
    if not PUBLIC.is_dir():
        print("  the public instances are not beside this project")
        return
    for path in sorted(PUBLIC.glob("[jpu]*.json")):
        value = json.loads(path.read_text("utf-8"))
        known, asked = value["known"], Asked(value, min(seconds, 60.0))
        done = asked.wait()
        told = (done["status"], done.get("makespan"))
        wrong += told != (known["status"], known.get("makespan"))
        slowest = max(slowest, asked.last)
        print(f"  {path.stem}: {told}, known {known.get('makespan')}, {asked.last:.2f} s")
    verdict("projects not as published", wrong, 0, "", "optimum, or that there is none")
    verdict("slowest project, process and all", slowest, PROJECT_S, "s", "to its proof")


def studios(seconds: float) -> None:
    """Print score and proofs of each studio against the best known one."""
    for name in STUDIOS:
        value = instance(name)
        late, sessions, _ = value["best"]["score"]
        asked = Asked(value, seconds)
        done = asked.wait()
        print(f"  {name}: {done['status']} {done['score']} in {asked.last:.1f} s, known "
              f"{value['best']['score']}, first after {asked.first:.2f} s, bound "
              f"{done['bound']}, {done['tries']} tries")  # fmt: skip
        verdict(f"{name}, late", done["score"][0], late, "min", f"best known {late:g}")
        bar = 1.03 * sessions + 0.5
        verdict(f"{name}, sessions", done["score"][1], bar, "", f"best known {sessions}")
        unproved = name in PROVABLE and done["status"] != "optimal"
        verdict(f"{name}, not proved though it can be", float(unproved), 0, "", "by a trial")


def ending(_seconds: float) -> None:
    """Print the longest time from being told to end until the answer is there."""
    problem, longest = instance("studio-ten-lots-class"), 0.0
    for more in (0.0, 0.5, 2.0, 5.0):
        asked = Asked(problem, 60.0)
        asked.heard.wait()
        asked.apart.wait(more)
        told = perf_counter()
        asked.apart.end()
        asked.wait()
        longest = max(longest, perf_counter() - told)
        assert asked.done["starts"]
    verdict("longest time to end", longest, STOP_S, "s", "told at four moments")


PARTS = {"projects": projects, "studios": studios, "first": ending}
