"""Lint, format, types, contracts and tests, one stage after the other, each under what it needs.

With CI set in the environment, as .ci/run does, nothing may be passed over for want of a server.
"""

from __future__ import annotations

import contextlib
import os
import re
import signal
import subprocess
import sys
import time
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Final

from _ground import Ground, choose, make_ready, surroundings
from _postgres import VARIABLE, heed_every_end, server_for_tests, server_need
from _screen import end, private_screen
from _system import TEST_TOOLS, mend, missing, python_needs, tool_needs, window_needs
from _trouble import SetUpFailed

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

TREE: Final = Path(__file__).resolve().parent.parent
SOURCES: Final = ("studio_log", "tests", "packaging")
# Two names stand for the folder's own: its Python, and the folder of its programs.
CHECKS: Final = (
    ("ruff check", ("{python}", "-m", "ruff", "check", *SOURCES)),
    ("ruff format", ("{python}", "-m", "ruff", "format", "--check", *SOURCES)),
    ("mypy", ("{python}", "-m", "mypy")),
    ("mypy set-up", ("{python}", "-m", "mypy", "packaging")),
    ("lint-imports", ("{bin}/lint-imports",)),
)
MARKS: Final = "long or story or speed"
UNMARKED: Final = f"not (screen or {MARKS})"
NOTHING_COLLECTED: Final = 5
PATIENCE_S: Final = 4.0
_COLOUR: Final = re.compile(r"\x1b\[[\d;]*m")
# As pytest's -ra tells why; a test over a server names the variable that it misses.
_WITHOUT_SERVER: Final = re.compile(rf"SKIPPED .*\b{VARIABLE}\b")
_CLOSING: Final = re.compile(r"=* *((?:\d+ [a-z]+(?:, )?)+) in [\d.]+s\b")


@dataclass(frozen=True)
class Runs:
    """Which pytest runs are asked for: (title, arguments, whether it needs a screen)."""

    checks: bool
    pytest: tuple[tuple[str, tuple[str, ...], bool], ...]


@dataclass
class Told:
    """How each stage went, for the summary."""

    lines: list[str] = field(default_factory=list)
    tests: Counter[str] = field(default_factory=Counter)
    seconds: float = 0.0
    failed: bool = False

    def add(self, title: str, seconds: float, words: str, *, failed: bool) -> None:
        """Note the end of one stage."""
        self.lines.append(f"{title:<14} {seconds:7.1f} s  {words}")
        self.failed |= failed


def say(line: str) -> None:
    """Print at once, so that it stands in order among what the tools print."""
    print(line, flush=True)


def nothing_passed_over() -> bool:
    """Whether a test that is skipped for want of a server is a failure: in .ci/run it is."""
    return bool(os.environ.get("CI"))


def asked(args: Sequence[str]) -> Runs:
    """Read the arguments: everything; `--quick`, only unmarked tests; or pytest's own."""
    rest = tuple(arg for arg in args if arg != "--quick")
    if len(rest) < len(args):
        return Runs(not rest, (("quick tests", ("-m", UNMARKED, *rest), False),))
    if not rest:
        return Runs(
            checks=True,
            pytest=(
                ("tests", ("-m", UNMARKED), False),
                ("marked tests", ("-m", f"({MARKS}) and not screen"), False),
                ("screen tests", ("-m", "screen"), True),
            ),
        )
    if any(arg.startswith("-m") for arg in rest):
        on_screen = re.search(r"(?<!not )\bscreen\b", " ".join(rest)) is not None
        return Runs(checks=False, pytest=(("tests", rest, on_screen),))
    return Runs(
        checks=False,
        pytest=(
            ("tests", ("-m", "not screen", *rest), False),
            ("screen tests", ("-m", "screen", *rest), True),
        ),
    )


def main(argv: Sequence[str]) -> int:
    """Exit code: 0 where every stage that was asked for passed, else 1."""
    runs = asked(argv)
    heed_every_end()
    try:
        ground = _set_up(with_screen=any(screen for _, _, screen in runs.pytest))
        told = Told()
        for title, command in CHECKS if runs.checks else ():
            _check(ground, title, command, told)
        with server_for_tests(say) as server:
            for title, args, on_screen in runs.pytest:
                _tests(ground, title, args, told, on_screen=on_screen, more=server)
    except SetUpFailed as failure:
        say(str(failure))
        return 1
    except KeyboardInterrupt:
        say("Stopped.")
        return 130
    return _summary(told)


def _set_up(*, with_screen: bool) -> Ground:
    ground = choose(TREE, "requirements-test.lock", ".venv-test")
    needs = [*python_needs(), *window_needs()]
    tools = tool_needs(TEST_TOOLS) if with_screen else []
    server = server_need(vital=nothing_passed_over())
    vital = [need for need in (*tools, server) if need.vital]
    if ground.is_ready() and missing(vital):
        mend(vital, say)
    make_ready(ground, [*needs, *tools, server], say)
    return ground


def _environment() -> dict[str, str]:
    return {**surroundings(), "QT_QPA_PLATFORM": "offscreen", "PYTHONUNBUFFERED": "1"}


def _check(ground: Ground, title: str, command: Sequence[str], told: Told) -> None:
    say(f"\n--- {title}")
    begun = time.monotonic()
    python = ground.python
    words = [part.format(python=python, bin=python.parent) for part in command]
    own = {**_environment(), "MYPYPATH": "packaging"}
    ended = subprocess.run(words, cwd=TREE, env=own, stdin=subprocess.DEVNULL, check=False)
    passed = ended.returncode == 0
    told.add(title, time.monotonic() - begun, "passed" if passed else "FAILED", failed=not passed)


def _tests(
    ground: Ground,
    title: str,
    args: Sequence[str],
    told: Told,
    *,
    on_screen: bool,
    more: Mapping[str, str],
) -> None:
    """Run pytest once; `more` is what its environment has beyond the usual."""
    say(f"\n--- {title}")
    begun = time.monotonic()
    colour = ["--color=yes"] if sys.stdout.isatty() else []
    command = [str(ground.python), "-m", "pytest", *colour, *args]
    with contextlib.ExitStack() as held:
        own: Mapping[str, str] = {**_environment(), **more}
        if on_screen:
            own = held.enter_context(private_screen(own))
        code, closing, without_server = _echoed(command, own)
    counts = {kind: int(number) for number, kind in re.findall(r"(\d+) ([a-z]+)", closing)}
    ran = sum(number for kind, number in counts.items() if kind != "deselected")
    # A mark that no test bears is no failure; a run of nothing at all is, see _summary.
    passed = code == 0 or (code == NOTHING_COLLECTED and ran == 0)
    if without_server and nothing_passed_over():
        say("Tests over PostgreSQL were skipped; here none may be.")
        passed = False
    counts.pop("deselected", None)
    told.tests.update(counts)
    seconds = time.monotonic() - begun
    told.seconds += seconds
    told.add(title, seconds, closing if passed else f"FAILED: {closing}", failed=not passed)


def _echoed(command: Sequence[str], own: Mapping[str, str]) -> tuple[int, str, bool]:
    """Run pytest, passing on what it prints.

    Gives its exit code, the counts of its closing line, and whether a test missed the server.
    """
    closing, without_server = "no closing line", False
    with subprocess.Popen(
        command,
        cwd=TREE,
        env=dict(own),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
    ) as run:
        try:
            for line in run.stdout or ():
                sys.stdout.write(line)
                sys.stdout.flush()
                plain = _COLOUR.sub("", line)
                without_server |= _WITHOUT_SERVER.match(plain) is not None
                if found := _CLOSING.match(plain):
                    closing = found[1]
        except KeyboardInterrupt:
            _interrupt(run)
            raise
    return run.returncode, closing, without_server


def _interrupt(run: subprocess.Popen[str]) -> None:
    """Let pytest end tidily: Ctrl-C reached it too, a kill of this program did not."""
    with contextlib.suppress(subprocess.TimeoutExpired):
        run.wait(timeout=PATIENCE_S)
    run.send_signal(signal.SIGINT)
    with contextlib.suppress(subprocess.TimeoutExpired):
        run.wait(timeout=PATIENCE_S)
    end(run)


def _summary(told: Told) -> int:
    """Print one line a stage, then the sum of the tests in the form of pytest's closing line."""
    say("")
    for line in told.lines:
        say(line)
    failed = told.failed or not told.tests["passed"]
    counts = ", ".join(f"{number} {kind}" for kind, number in told.tests.items())
    say(f"===== {counts or 'no tests ran'} in {told.seconds:.2f}s =====")
    if failed:
        say("Something failed; see above.")
    return 1 if failed else 0
