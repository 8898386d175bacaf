"""What a start file starts: each word comes back as it was, by other readers than ours."""

import os
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path

import pytest

from studio_log import __version__
from studio_log.domain.errors import Refusal
from studio_log.outside import login
from studio_log.outside.desktop_entry import exec_words, read_entry
from studio_log.outside.login import LoginStart, command_of_this_program
from tests.support.tree import TREE

HOSTILE = 'a b"c%d$e\\'


def a_switch(tmp_path: Path, *rest: str, system: str = "linux") -> LoginStart:
    command = [sys.executable, "--minimised", *rest]
    return LoginStart(command, config_home=tmp_path / "home", platform=system)


# -- the words ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("system", "words"),
    [
        ("linux", ("/a=b/studio-log",)),  # Desktop Entry Specification 1.5, "The Exec key"
        ("linux", ("/50%/studio-log",)),
        ("linux", ("/studio-log", "bell \a")),
        ("linux", ("/studio-log", "not text \udcff")),
        ("darwin", ("/studio-log", "bell \a")),
        ("darwin", ("/studio-log", "not text \udcff")),
        ("win32", ("/studio-log", 'in "marks"')),
        ("win32", ("/studio-log", "two\nlines")),
    ],
)
def test_what_a_start_file_cannot_hold_is_refused_and_nothing_is_written(
    tmp_path: Path, system: str, words: tuple[str, ...]
) -> None:
    switch = LoginStart(words, config_home=tmp_path, platform=system)
    with pytest.raises(Refusal, match="cannot hold"):
        switch.switch(True)
    assert list(tmp_path.iterdir()) == []


def words_by_the_specification(path: Path) -> list[str]:
    """The words of an entry's Exec line by a second reader, sign by sign.

    Desktop Entry Specification 1.5: "Possible value types" for the value, then "The Exec key".
    """
    (line,) = [one for one in path.read_text("utf-8").split("\n") if one.startswith("Exec=")]
    value, signs = "", iter(line.removeprefix("Exec="))
    for sign in signs:
        value += (
            {"s": " ", "n": "\n", "t": "\t", "r": "\r", "\\": "\\"}[next(signs)]
            if sign == "\\"
            else sign
        )
    words: list[str] = []
    quoted, begun, signs = False, False, iter(value)
    for sign in signs:
        if sign == " " and not quoted:
            begun = False
            continue
        if not begun:
            words.append("")
            begun = True
        if sign == '"':
            quoted = not quoted
        elif sign == "\\":
            assert quoted, "a backslash is reserved: it stands only in quotes"
            words[-1] += next(signs)
        else:
            assert sign not in "$`", "these two are escaped, in quotes too"
            assert quoted or sign not in "\t\n'><~|&;$*?#()`", "a reserved sign outside quotes"
            words[-1] += sign
    return [word.replace("%%", "%") for word in words]


ODD = [
    HOSTILE,
    "plain",
    "",
    " ",
    "~",
    "$HOME `x` ${X}",
    "\\\\",
    '"',
    "%f %%u %",
    "a\tb\nc\rd",
    "布 é",
    "#'*?()<>|&;",
]


@pytest.mark.parametrize("word", ODD)
def test_the_exec_line_gives_back_each_word(tmp_path: Path, word: str) -> None:
    switch = a_switch(tmp_path, "--studio", word)
    switch.switch(True)
    wanted = [sys.executable, "--minimised", "--studio", word]
    assert words_by_the_specification(switch.path) == wanted
    assert exec_words(read_entry(switch.path.read_text("utf-8"))["Exec"]) == wanted


def test_the_exec_line_starts_the_program_from_a_folder_of_an_odd_name(tmp_path: Path) -> None:
    folder = tmp_path / 'a b"c$e\\'
    folder.mkdir()
    python = folder / "python"
    python.write_text(f'#!/bin/sh\nexec "{sys.executable}" "$@"\n', "utf-8")
    python.chmod(0o755)
    command = [str(python), "-m", "studio_log", "--version", "--studio", str(tmp_path / HOSTILE)]
    switch = LoginStart(command, config_home=tmp_path / "home", platform="linux")
    switch.switch(True)
    done = subprocess.run(
        words_by_the_specification(switch.path),
        cwd=TREE,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stdout) == (0, f"Studio Log {__version__}\n"), done.stderr


@pytest.mark.skipif(shutil.which("gio") is None, reason="GLib's own launcher is not here")
def test_glib_starts_the_same_words(tmp_path: Path) -> None:
    program, told = tmp_path / 'a b"c$e\\', tmp_path / "told"
    program.write_text(
        f"#!/bin/sh\nprintf '%s\\0' \"$@\" > '{told}.part'\nmv '{told}.part' '{told}'\n"
    )
    program.chmod(0o755)
    words = [*ODD, str(tmp_path / HOSTILE)]
    switch = LoginStart([str(program), *words], config_home=tmp_path / "home", platform="linux")
    switch.switch(True)
    subprocess.run(["gio", "launch", switch.path], check=True, capture_output=True)
    until = time.monotonic() + 10
    while not told.exists() and time.monotonic() < until:
        time.sleep(0.02)  # waits for a process that gio leaves to itself
    assert told.read_bytes().decode().split("\0")[:-1] == words


def test_a_name_that_a_common_generator_misreads_is_warned_of(tmp_path: Path) -> None:
    plain = a_switch(tmp_path, "--studio", "50 % linen")
    assert "misreads" not in plain.switch(True)
    odd = a_switch(tmp_path, "--studio", HOSTILE)
    assert "misreads" in odd.switch(True)
    assert "misreads" in odd.state()[1]


# `%%` and `%NAME%`: the command shell's rules for a batch file; from memory.
def words_by_windows(path: Path) -> list[str]:
    """The words after `start "" /min`, by the rules of Microsoft's C runtime; from memory."""
    lines = path.read_bytes().decode("utf-8").split("\r\n")
    (line,) = [one for one in lines if one.startswith("start")]
    line = line.removeprefix('start "" /min ').replace("%%", "%")
    words: list[str] = []
    for found in re.finditer(r'"((?:[^"\\]|\\+(?!["\\])|(?:\\\\)+(?="))*)"', line):
        tail = re.search(r"\\*$", found[1])
        assert tail is not None
        assert len(tail[0]) % 2 == 0, "an odd backslash would take the closing mark with it"
        words.append(found[1][: len(found[1]) - len(tail[0]) // 2])
    return words


@pytest.mark.parametrize("word", ["C:\\", "C:\\My Cloth\\\\", "50 % linen", "%PATH%", "布", "a&b"])
def test_the_command_file_gives_back_each_word(tmp_path: Path, word: str) -> None:
    switch = a_switch(tmp_path, "--studio", word, system="win32")
    switch.switch(True)
    assert words_by_windows(switch.path) == [sys.executable, "--minimised", "--studio", word]


# -- which command -----------------------------------------------------------------------


def a_file(path: Path, mode: int = 0o755) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.touch(mode)
    return path


def test_the_installed_script_is_chosen_before_the_module(tmp_path: Path) -> None:
    python = a_file(tmp_path / "bin" / "python3")
    script = a_file(tmp_path / "bin" / "studio-log")
    assert command_of_this_program("-m", str(python)) == [str(script)]
    started = a_file(tmp_path / "usr" / "studio-log")
    assert command_of_this_program(str(started), str(python)) == [str(started)]


def test_from_the_tree_its_own_start_file_is_chosen(tmp_path: Path) -> None:
    python = a_file(tmp_path / "bin" / "python3")
    a_file(tmp_path / "bin" / "studio-log", mode=0o644)  # cannot be run
    started = str(TREE / "studio_log" / "__main__.py")
    wanted = [str(python), str(TREE / "packaging" / "start.py")]
    assert command_of_this_program(started, str(python)) == wanted
    silent = a_file(tmp_path / "bin" / "pythonw.exe")
    assert command_of_this_program(started, str(python)) == [str(silent), wanted[1]]


def test_else_the_module_is_started_by_the_same_interpreter(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(login, "_PACKAGE", tmp_path / "studio_log")
    real = a_file(tmp_path / "usr" / "python3")
    python = tmp_path / "venv" / "python"
    python.parent.mkdir()
    python.symlink_to(real)  # resolved, it would lose the libraries beside it
    assert command_of_this_program("", str(python)) == [str(python), "-m", "studio_log"]


def test_the_command_of_this_run_starts_this_version() -> None:
    command = command_of_this_program(str(TREE / "studio_log" / "__main__.py"), sys.executable)
    if command[-1].endswith("start.py"):  # the tests' own folder has no script beside Python
        command = [sys.executable, "-m", "studio_log"]
    home = {**os.environ, "PYTHONPATH": str(TREE)}
    done = subprocess.run(
        [*command, "--version"], env=home, capture_output=True, text=True, check=False
    )
    assert done.stdout == f"Studio Log {__version__}\n", done.stderr
