"""The program tries no network: whoever makes a socket for one would die of it, and is watched.

Run twice: under a filter of system calls, and where the machine allows it also in a network
namespace that has no interface (`unshare --net`), where nothing could be reached anyway.
"""

import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from studio_log.services.places import ChangePlaces, change_places
from tests.support import no_network
from tests.support.tree import TREE

RUNNER = [sys.executable, str(TREE / "tests" / "support" / "no_network.py")]
ALONE = ["unshare", "--map-root-user", "--net"]
pytestmark = [
    pytest.mark.story,
    pytest.mark.skipif(not no_network.can_watch(), reason="the filter is known for Linux only"),
]


def _can_be_alone() -> str:
    """Say why no namespace can be made; "" where one can."""
    if shutil.which("unshare") is None:
        return "unshare is not installed"
    tried = subprocess.run([*ALONE, "true"], capture_output=True, text=True, check=False)
    return "" if tried.returncode == 0 else f"not allowed here: {tried.stderr.strip()}"


@pytest.fixture(params=["watched", "watched and alone"])
def runner(request: pytest.FixtureRequest) -> list[str]:
    if request.param == "watched":
        return RUNNER
    if why := _can_be_alone():
        pytest.skip(why)
    return [*ALONE, *RUNNER]


def environment(folder: Path) -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(TREE), "QT_QPA_PLATFORM": "offscreen",
            "STUDIO_LOG_STUDIO": str(folder)}  # fmt: skip


def test_the_watch_sees_a_program_that_does_try(tmp_path: Path):
    """The check can fail: a socket of either family ends the process, one of this machine not."""
    for family, lives in (("AF_INET", False), ("AF_INET6", False), ("AF_UNIX", True)):
        module = tmp_path / "tries.py"
        module.write_text(
            f"import socket\nsocket.socket(socket.{family}).close()\nprint('alive')\n"
        )
        ended = subprocess.run(
            [*RUNNER, "tries"], env={**os.environ, "PYTHONPATH": str(tmp_path)},
            capture_output=True, text=True, check=False, timeout=60,
        )  # fmt: skip
        assert (ended.returncode == 0) is lives, (family, ended.stderr)
        assert lives or ended.returncode == -signal.SIGSYS


COMMANDS = [
    ("lot", "new", "--method", "soy-immersion-long", "--name", "Runners", "--piece",
     "2 x linen 180x45cm 185g/m2"),
    ("mark", "26-001", "1", "start", "--at", "-30m"),
    ("due",),
    ("calendar", "--to", "plan.ics"),
    ("backup", "--to", "copy.sqlite3"),
    ("restore", "copy.sqlite3"),
    ("export", "--to", "out"),
    ("remind", "--once"),
    ("tags", "26-001", "--to", "tags.pdf"),
    ("check", "--repair"),
]  # fmt: skip


def test_commands_try_no_network(runner: list[str], tmp_path: Path):
    for words in COMMANDS:
        code = f"{time.localtime().tm_year % 100:02d}-001"
        line = [word.replace("26-001", code) for word in words]
        ended = subprocess.run(
            [*runner, "studio_log", *line], env=environment(tmp_path / "studio"), cwd=tmp_path,
            capture_output=True, text=True, check=False, timeout=120,
        )  # fmt: skip
        assert ended.returncode == 0, (line, ended.stdout, ended.stderr)


def test_the_demo_tries_no_network(runner: list[str], tmp_path: Path):
    ended = subprocess.run(
        [*runner, "studio_log", "--demo", "--errand", str(tmp_path / "out"), "--pace", "600"],
        env=environment(tmp_path / "studio"), capture_output=True, text=True, check=False,
        timeout=300,
    )  # fmt: skip
    assert ended.returncode == 0, ended.stderr
    assert (tmp_path / "out" / "window.png").exists()


def test_the_window_tries_no_network(runner: list[str], tmp_path: Path):
    """Open until it has put its plan and a copy where it was told, then told to end."""
    folder, plan, stick = tmp_path / "studio", tmp_path / "plan.ics", tmp_path / "stick"
    folder.mkdir()
    stick.mkdir()
    line = [*RUNNER, "studio_log", *COMMANDS[0]]
    subprocess.run(line, env=environment(folder), capture_output=True, check=True, timeout=120)
    change_places(folder, ChangePlaces(calendar=str(plan), copies=str(stick)))
    window = subprocess.Popen(
        [*runner, "studio_log"], env=environment(folder), stderr=subprocess.PIPE, text=True
    )
    try:
        end = time.monotonic() + 60
        while time.monotonic() < end and not (plan.exists() and list(stick.glob("*/day-*"))):
            assert window.poll() is None, window.stderr and window.stderr.read()
            time.sleep(0.2)  # waits for another process, which has no clock of ours
        assert plan.read_bytes().startswith(b"BEGIN:VCALENDAR")
        assert list(stick.glob("*/day-*.sqlite3"))
    finally:
        window.send_signal(signal.SIGTERM)
        _, said = window.communicate(timeout=60)
    assert window.returncode == 0, said
