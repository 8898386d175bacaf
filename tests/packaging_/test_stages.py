"""What test.py runs for which arguments, how it reads pytest's end, and the screen it lends."""

import os
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

import _screen
import _stages
import pytest
from _ground import Ground
from _stages import Told
from _system import Need

EVERY_MARK = {"screen", "long", "story", "speed"}


def test_without_arguments_everything_runs_once() -> None:
    runs = _stages.asked([])
    assert runs.checks
    assert [title for title, _, _ in runs.pytest] == ["tests", "marked tests", "screen tests"]
    unmarked, marked, screen = (args[1] for _, args, _ in runs.pytest)
    assert all(mark in unmarked for mark in EVERY_MARK)
    assert unmarked.startswith("not (")
    assert screen == "screen"
    assert marked == "(long or story or speed) and not screen"
    assert [on_screen for _, _, on_screen in runs.pytest] == [False, False, True]


@pytest.mark.parametrize(
    ("line", "checks", "said", "screens"),
    [
        ("--quick", True, ["-m not (screen or long or story or speed)"], [False]),
        ("--quick -x", False, ["-m not (screen or long or story or speed) -x"], [False]),
        (
            "tests/ui -k bench",
            False,
            ["-m not screen tests/ui -k bench", "-m screen tests/ui -k bench"],
            [False, True],
        ),
        ("-m screen -x", False, ["-m screen -x"], [True]),
        ("-m long", False, ["-m long"], [False]),
    ],
)
def test_arguments_are_passed_on_to_pytest(
    line: str, checks: bool, said: list[str], screens: list[bool]
) -> None:
    runs = _stages.asked(line.split())
    assert runs.checks is checks
    assert [" ".join(args) for _, args, _ in runs.pytest] == said
    assert [on_screen for _, _, on_screen in runs.pytest] == screens


def sham_python(folder: Path, prints: str, code: int) -> Ground:
    """A ground whose Python only prints a line and ends with a code."""
    ground = Ground(folder, folder / "lock")
    ground.python.parent.mkdir(parents=True, exist_ok=True)
    ground.python.write_text(f"#!{sys.executable}\nprint({prints!r})\nraise SystemExit({code})\n")
    ground.python.chmod(0o755)
    return ground


# Closing lines as pytest 9 prints them.
@pytest.mark.parametrize(
    ("prints", "code", "words", "failed"),
    [
        ("==== 12 passed, 3 deselected in 1.20s ====", 0, "12 passed, 3 deselected", False),
        ("== 13 passed, 1 warning in 100.05s (0:01:40) ==", 0, "13 passed, 1 warning", False),
        ("\x1b[32m==== \x1b[32m\x1b[1m12 passed\x1b[0m\x1b[32m in 1.20s", 0, "12 passed", False),
        ("=== 1 failed, 11 passed in 1.20s ===", 1, "FAILED: 1 failed, 11 passed", True),
        ("==== 90 deselected in 0.40s ====", 5, "90 deselected", False),
        ("==== 2 passed in 0.40s ====", 3, "FAILED: 2 passed", True),
        ("Segmentation fault", 139, "FAILED: no closing line", True),
    ],
)
def test_the_end_of_a_pytest_run_is_read(
    tmp_path: Path, prints: str, code: int, words: str, failed: bool
) -> None:
    told = Told()
    _stages._tests(sham_python(tmp_path, prints, code), "tests", [], told, on_screen=False, more={})
    assert told.failed is failed
    assert words in told.lines[0]


# As pytest 9 prints it with -ra.
MISSED = "SKIPPED [3] tests/support/servers.py:27: no server was started (STUDIO_LOG_TEST_POSTGRES)"


@pytest.mark.parametrize(("ci", "failed"), [("true", True), ("", False)])
def test_only_ci_fails_where_tests_over_a_server_are_skipped(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, ci: str, *, failed: bool
) -> None:
    monkeypatch.setenv("CI", ci)
    told, prints = Told(), f"{MISSED}\n== 5 passed, 3 skipped in 1.0s =="
    _stages._tests(sham_python(tmp_path, prints, 0), "tests", [], told, on_screen=False, more={})
    assert told.failed is failed


def test_ci_may_skip_for_other_reasons(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CI", "true")
    told, prints = Told(), "SKIPPED [1] tests/x.py:1: no such table here\n== 5 passed in 1.0s =="
    _stages._tests(sham_python(tmp_path, prints, 0), "tests", [], told, on_screen=False, more={})
    assert not told.failed


@pytest.mark.parametrize(("ci", "vital"), [("true", True), ("", False)])
def test_only_ci_cannot_do_without_the_server(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, ci: str, *, vital: bool
) -> None:
    monkeypatch.setenv("CI", ci)
    monkeypatch.setattr(_stages, "choose", lambda *_names: Ground(tmp_path, tmp_path / "lock"))
    monkeypatch.setattr(Ground, "is_ready", lambda _ground: False)
    asked: dict[str, bool] = {}

    def make_ready(_ground: Ground, needs: Iterable[Need], _say: object) -> None:
        asked.update({need.package: need.vital for need in needs})

    monkeypatch.setattr(_stages, "make_ready", make_ready)
    _stages._set_up(with_screen=False)
    assert asked["postgresql"] is vital


def test_tests_are_told_of_what_they_were_lent(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ground = sham_python(tmp_path, "", 0)
    ground.python.write_text(f"#!{sys.executable}\nimport os\nprint(os.environ['LENT'])\n")
    more = {"LENT": "a server"}
    _stages._tests(ground, "tests", [], Told(), on_screen=False, more=more)
    assert "a server\n" in capsys.readouterr().out


# What a test was lent is taken back, whoever is told to end: all of them, or test.py alone.
RUNS = """
import os, sys
import _stages
_stages.heed_every_end()
_stages._echoed([sys.executable, "-u", "-c", sys.argv[1]], os.environ)
"""
HOLDS = """
import os, time
print("holds")
try:
    time.sleep(60)
except KeyboardInterrupt:
    open(os.environ["GIVEN_BACK"], "w").close()
"""


@pytest.mark.long
def test_a_kill_of_the_command_lets_pytest_give_back_what_it_holds(tmp_path: Path) -> None:
    command = ["env", "--default-signal=INT,TERM", sys.executable, "-c", RUNS, HOLDS]
    given_back = tmp_path / "given back"
    own = {
        **os.environ,
        "PYTHONPATH": str(Path(_stages.__file__).parent),
        "GIVEN_BACK": str(given_back),
    }
    with subprocess.Popen(
        command, env=own, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as run:
        assert run.stdout
        assert run.stdout.readline() == "holds\n"
        run.terminate()
        _, said = run.communicate(timeout=60)
    assert said.rstrip().endswith("KeyboardInterrupt")
    assert given_back.exists()


def test_the_summary_adds_up_and_fails_when_one_stage_failed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    told = Told()
    for prints, code in (("== 5 passed, 1 skipped in 1.0s ==", 0), ("== 2 passed in 1.0s ==", 0)):
        _stages._tests(
            sham_python(tmp_path, prints, code), "tests", [], told, on_screen=False, more={}
        )
    assert _stages._summary(told) == 0
    assert "===== 7 passed, 1 skipped in " in capsys.readouterr().out
    told.add("mypy", 1.0, "FAILED", failed=True)
    assert _stages._summary(told) == 1


def test_a_run_of_no_test_at_all_is_no_success(capsys: pytest.CaptureFixture[str]) -> None:
    assert _stages._summary(Told()) == 1
    assert "no tests ran" in capsys.readouterr().out


@pytest.mark.screen
def test_the_lent_screen_has_a_notification_service_and_ends_with_the_block() -> None:
    with _screen.private_screen(os.environ) as own:
        assert own["DISPLAY"] != os.environ["DISPLAY"]
        assert own["DBUS_SESSION_BUS_ADDRESS"] != os.environ["DBUS_SESSION_BUS_ADDRESS"]
        subprocess.run(["xprop", "-root"], env=own, check=True, capture_output=True)
        subprocess.run(["notify-send", "--", "Soak ready"], env=own, check=True)
        count = ["dunstctl", "count", "displayed"]
        shown = subprocess.run(count, env=own, check=True, capture_output=True, text=True)
        assert int(shown.stdout) == 1
    gone = subprocess.run(["xprop", "-root"], env=own, check=False, capture_output=True)
    assert gone.returncode != 0
    assert not Path(own["XDG_RUNTIME_DIR"]).exists()
