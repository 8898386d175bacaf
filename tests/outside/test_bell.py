"""One process at a time has the bell, and a dead one has it no longer."""

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from studio_log.outside.bell import FILE_NAME, FileBell
from tests.support.tree import TREE

OTHER = """
import sys
from pathlib import Path
from studio_log.outside.bell import FileBell
bell = FileBell(Path(sys.argv[1]))
print(bell.hold(), flush=True)
for line in sys.stdin:
    bell.release()
    print("released", flush=True)
"""


@contextmanager
def another_process(folder: Path) -> Iterator["subprocess.Popen[str]"]:
    """A process that has asked for the bell; it says what it was told, and lets go on a line."""
    process = subprocess.Popen(
        [sys.executable, "-c", OTHER, str(folder)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=TREE,
    )
    with process:
        try:
            yield process
        finally:
            process.kill()


def said(process: "subprocess.Popen[str]") -> str:
    assert process.stdout is not None
    return process.stdout.readline().strip()


def test_one_process_has_it_and_the_next_gets_it_when_it_is_released(tmp_path: Path) -> None:
    bell = FileBell(tmp_path)
    with another_process(tmp_path) as other:
        assert said(other) == "True"
        assert not bell.hold()
        assert other.stdin is not None
        other.stdin.write("\n")
        other.stdin.flush()
        assert said(other) == "released"
        assert bell.hold()
    bell.release()


def test_a_killed_process_has_it_no_longer(tmp_path: Path) -> None:
    bell = FileBell(tmp_path)
    with another_process(tmp_path) as other:
        assert said(other) == "True"
        assert not bell.hold()
        os.kill(other.pid, signal.SIGKILL)
        other.wait()
        assert bell.hold()
    bell.release()


def test_a_held_bell_is_refused_to_another_process(tmp_path: Path) -> None:
    bell = FileBell(tmp_path)
    assert bell.hold()
    assert bell.hold()
    with another_process(tmp_path) as other:
        assert said(other) == "False"
    bell.release()
    with another_process(tmp_path) as other:
        assert said(other) == "True"


def test_two_bells_in_one_process_exclude_each_other(tmp_path: Path) -> None:
    first, second = FileBell(tmp_path), FileBell(tmp_path)
    assert first.hold()
    assert not second.hold()
    first.release()
    first.release()
    assert second.hold()
    second.release()


def test_a_lock_file_taken_away_is_locked_anew(tmp_path: Path) -> None:
    first, second = FileBell(tmp_path), FileBell(tmp_path)
    assert first.hold()
    (tmp_path / FILE_NAME).unlink()
    assert second.hold()
    assert not first.hold()
    second.release()
    assert first.hold()
    first.release()


def test_where_no_lock_can_be_taken_it_rings_all_the_same_and_says_so_once(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    bell = FileBell(tmp_path / "gone")
    assert bell.hold()
    assert bell.hold()
    assert caplog.text.count("ringing without") == 1
    bell.release()
