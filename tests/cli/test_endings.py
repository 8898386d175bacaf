"""However a command ends, a person reads words, and the exit code is 0, 1 or 2."""

import io
import os
import subprocess
import sys
from pathlib import Path
from typing import TextIO

import pytest

from studio_log.cli.main import command_names, run
from studio_log.domain.errors import BadStudio
from tests.cli.fake_house import FakeHouse, Line
from tests.support.tree import TREE

REDO = ("redo", "26-031")
PROGRAM = """
import sys
from studio_log.cli.main import run
from tests.cli.fake_house import FakeHouse
sys.exit(run(sys.argv[1:], house=FakeHouse(), out=sys.stdout, err=sys.stderr))
"""


def program(*words: str, **streams: object) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(  # type: ignore[call-overload,no-any-return]
        [sys.executable, "-c", PROGRAM, *words], cwd=TREE, text=True, check=False, **streams
    )


def test_the_names_are_those_of_the_commands() -> None:
    assert command_names() == {
        "due", "methods", "method", "lot", "mark", "milk", "undo", "redo", "correct", "amounts",
        "dry", "soak", "stock", "shopping", "dyes", "dye", "materials", "material",
        "remind", "hush", "rang", "hours", "colour", "trial", "plan", "bath", "tags",
        "card", "record", "day", "calendar", "swatch", "export", "import",
        "backup", "restore", "check", "server",
    }  # fmt: skip


def test_a_fault_of_the_program_is_one_sentence_and_the_rest_is_in_the_log(
    line: Line, caplog: pytest.LogCaptureFixture
) -> None:
    line.studio.trouble = ZeroDivisionError("deep inside")
    ended = line.run(*REDO, log="/var/log/studio.log")
    assert (ended.code, ended.out) == (1, "")
    assert "mistake of its own" in ended.err
    assert "/var/log/studio.log" in ended.err
    assert "Traceback" not in ended.err
    assert "ZeroDivisionError: deep inside" in caplog.text
    assert line.studio.closed == 1


def test_a_fault_without_any_log_shows_no_traceback() -> None:
    broken = PROGRAM.replace("FakeHouse()", "None")
    done = subprocess.run(
        [sys.executable, "-c", broken, *REDO], cwd=TREE, text=True, capture_output=True, check=False
    )
    assert done.returncode == 1
    assert "mistake of its own" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_studio_that_cannot_be_opened_is_said(line: Line) -> None:
    line.house.trouble = BadStudio("The disk is full. Nothing was changed.")
    ended = line.run(*REDO)
    assert (ended.code, ended.out, ended.err) == (1, "", f"{line.house.trouble}\n")


def test_ctrl_c_is_quiet_and_closes_the_studio(line: Line) -> None:
    line.studio.trouble = KeyboardInterrupt()
    ended = line.run(*REDO)
    assert (ended.code, ended.out, ended.err) == (1, "", "")
    assert line.studio.closed == 1


def test_a_reader_that_has_gone_is_no_fault() -> None:
    ours, theirs = os.pipe()
    os.close(ours)
    done = program(*REDO, stdout=theirs, stderr=subprocess.PIPE)
    os.close(theirs)
    assert (done.returncode, done.stderr) == (0, "")


def test_a_closed_output_is_no_fault() -> None:
    for end, words in (("1>&-", REDO), ("2>&-", ("nothing",)), ("1>&- 2>&-", REDO)):
        shell = f'"$0" -c "$1" {" ".join(words)} {end}'
        done = subprocess.run(
            ["sh", "-c", shell, sys.executable, PROGRAM],
            cwd=TREE, text=True, capture_output=True, check=False,
        )  # fmt: skip
        assert done.returncode == (2 if "nothing" in words else 0)
        assert (done.stdout, done.stderr) == ("", "")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_an_answer_that_finds_no_room_is_said() -> None:
    with Path("/dev/full").open("w") as full:
        done = program(*REDO, stdout=full, stderr=subprocess.PIPE)
    assert done.returncode == 1
    assert "could not be written" in done.stderr
    assert "is kept" in done.stderr
    assert "Traceback" not in done.stderr
    assert "Exception" not in done.stderr


def test_a_stream_closed_under_way_is_said() -> None:
    out, err = io.StringIO(), io.StringIO()
    out.close()
    assert run(REDO, house=FakeHouse(), out=out, err=err) == 1
    assert "could not be written (it is closed)" in err.getvalue()


def test_a_terminal_of_few_letters_gets_the_rest_written_out() -> None:
    raw = io.BytesIO()
    out: TextIO = io.TextIOWrapper(raw, encoding="ascii")
    house = FakeHouse()
    house.studio.trouble = BadStudio("Soak “ü” \x1b[31m")
    assert run(REDO, house=house, out=None, err=out) == 1
    assert raw.getvalue() == b"Soak \\u201c\\xfc\\u201d \\ufffd[31m\n"


def test_nothing_is_written_where_there_are_no_streams() -> None:
    house = FakeHouse()
    assert run(REDO, house=house, out=None, err=None) == 0
    assert len(house.studio.done) == 1
    assert run(("remind", "--once"), house=house, out=None, err=None) == 0
