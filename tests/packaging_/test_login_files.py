"""The files that let the system start Studio Log: each is checked against its own standard."""

import configparser
import os
import plistlib
import re
import shlex
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from studio_log.app.main import _options, first_word
from studio_log.cli.main import FORMS, WRONG
from studio_log.outside.desktop_entry import exec_words, read_entry
from studio_log.outside.login import UNIT, LoginStart
from tests.support.tree import TREE

LINUX, MACOS, WINDOWS = (TREE / "packaging" / one for one in ("linux", "macos", "windows"))
ENTRIES = sorted(LINUX.glob("*.desktop"))
SERVICE = LINUX / UNIT
AGENTS = sorted(MACOS.glob("*.plist"))
TASK = {"task": "http://schemas.microsoft.com/windows/2004/02/mit/task"}


def stem(path: Path) -> str:
    return path.name


def entry(path: Path) -> dict[str, str]:
    return read_entry(path.read_text("utf-8"))


def unit() -> configparser.RawConfigParser:
    """The unit by a plain reader; systemd.syntax(7): groups, keys, lines that begin with #."""
    reader = configparser.RawConfigParser(comment_prefixes=("#", ";"), delimiters=("=",))
    reader.optionxform = str  # type: ignore[method-assign,assignment]
    reader.read(SERVICE, "utf-8")
    return reader


def starts_the_program(words: list[str]) -> bool:
    """Whether these words, after the program's own, are ones that it knows."""
    command = first_word(words)
    if command is not None:
        return (command,) in FORMS
    return bool(_options(words))


# -- Linux -------------------------------------------------------------------------------


@pytest.mark.parametrize("path", ENTRIES, ids=stem)
def test_an_entry_has_the_keys_that_the_standard_asks_for(path: Path) -> None:
    keys = entry(path)
    # Desktop Entry Specification 1.5, "Recognized desktop entry keys": Type and Name are
    # required, Exec for an application; Terminal and the like are booleans, true or false.
    assert keys["Type"] == "Application"
    assert keys["Name"].startswith("Studio Log")
    assert keys["Terminal"] == "false"
    words = exec_words(keys["Exec"])
    assert words[0] == keys["TryExec"] == "studio-log"
    assert starts_the_program(words[1:])
    assert (TREE / "resources" / "icons" / f"{keys['Icon']}.svg").is_file()
    # "Basic format of the file": no key twice.
    names = re.findall(r"^([A-Za-z-]+)=", path.read_text("utf-8"), re.MULTILINE)
    assert sorted(names) == sorted(set(names))


def test_the_menu_s_entry_stands_in_a_main_category() -> None:
    keys = entry(LINUX / "studio-log.desktop")
    # Desktop Menu Specification 1.1, "Registered categories", main categories; from memory.
    assert keys["Categories"] == "Office;"
    assert exec_words(keys["Exec"]) == ["studio-log"]


def test_the_autostart_entry_says_what_the_switch_in_the_settings_writes(tmp_path: Path) -> None:
    switch = LoginStart(["studio-log", "--minimised"], config_home=tmp_path, platform="linux")
    switch.switch(True)
    shipped = LINUX / switch.path.name
    assert entry(shipped) == entry(switch.path)
    assert exec_words(entry(shipped)["Exec"]) == ["studio-log", "--minimised"]


@pytest.mark.skipif(shutil.which("desktop-file-validate") is None, reason="desktop-file-utils")
@pytest.mark.parametrize("path", ENTRIES, ids=stem)
def test_an_entry_passes_the_standard_s_own_checker(path: Path) -> None:
    done = subprocess.run(
        ["desktop-file-validate", path], capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stdout) == (0, "")


def test_the_unit_starts_the_reminders_with_the_desktop_and_ends_with_it() -> None:
    told = unit()
    # systemd.special(7), "graphical-session.target": services that need a desktop are wanted
    # by it, part of it, and ordered after it.
    session = "graphical-session.target"
    assert told["Install"]["WantedBy"] == session
    assert told["Unit"]["PartOf"] == told["Unit"]["After"] == session
    program, *words = re.findall(r'"[^"]+"|\S+', told["Service"]["ExecStart"])
    # systemd.service(5), "Command lines": an absolute path or a name; %h is the home.
    assert program == '"%h/.local/bin/studio-log"'
    assert words == ["remind"]
    assert starts_the_program(words)
    assert told["Service"]["Type"] == "exec"


def test_the_unit_is_begun_again_unless_its_command_line_is_wrong() -> None:
    service = unit()["Service"]
    assert service["Restart"] == "on-failure"
    assert service["RestartPreventExitStatus"] == str(WRONG)
    # systemd.unit(5), "StartLimitIntervalSec": 0 lifts the limit on starts.
    assert unit()["Unit"]["StartLimitIntervalSec"] == "0"
    assert 1 <= int(service["RestartSec"]) <= 30


def test_the_unit_shuts_the_program_off_from_nothing() -> None:
    # systemd.exec(5), "Sandboxing": these would hide the bus or a studio outside the home.
    names = " ".join(unit()["Service"])
    assert re.search(r"Protect|Private|Restrict|ReadOnly|Inaccessible|DynamicUser", names) is None


@pytest.mark.skipif(shutil.which("systemd-analyze") is None, reason="there is no systemd here")
def test_the_unit_passes_systemd_s_own_checker(tmp_path: Path) -> None:
    program = tmp_path / ".local" / "bin" / "studio-log"
    program.parent.mkdir(parents=True)
    program.touch(0o755)
    own = {**os.environ, "HOME": str(tmp_path)}
    command = ["systemd-analyze", "verify", "--user", "--man=no", str(SERVICE)]
    done = subprocess.run(command, env=own, capture_output=True, text=True, check=False)
    about_it = [line for line in done.stderr.splitlines() if UNIT in line]
    assert about_it == []


@pytest.fixture
def service(tmp_path: Path) -> Iterator[Callable[[], "subprocess.Popen[str]"]]:
    """Starts what the unit starts, as a service manager does: no terminal, a session of its own."""
    program = tmp_path / ".local" / "bin" / "studio-log"
    program.parent.mkdir(parents=True)
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m studio_log "$@"\n', "utf-8")
    program.chmod(0o755)
    words = shlex.split(unit()["Service"]["ExecStart"].replace("%h", str(tmp_path)))
    own = {**os.environ, "HOME": str(tmp_path), "PYTHONPATH": str(TREE)}
    running: list[subprocess.Popen[str]] = []

    def start() -> "subprocess.Popen[str]":
        one = subprocess.Popen(
            words,
            env=own,
            cwd="/",
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            text=True,
            start_new_session=True,
        )
        running.append(one)
        assert one.stdout is not None
        assert "Reminding" in one.stdout.readline()
        return one

    yield start
    for one in running:
        one.kill()
        one.communicate()


@pytest.mark.long
def test_what_the_unit_starts_ends_well_when_told_and_can_be_killed_and_begun_again(
    service: Callable[[], "subprocess.Popen[str]"],
) -> None:
    patience = float(unit()["Service"]["TimeoutStopSec"])
    first = service()
    # systemd.kill(5): "KillSignal" is SIGTERM, and SIGKILL after TimeoutStopSec.
    first.send_signal(signal.SIGTERM)
    assert first.wait(patience) == 0
    second = service()
    second.kill()
    second.wait()
    third = service()
    third.send_signal(signal.SIGTERM)
    assert third.wait(patience) == 0


# -- macOS and Windows -------------------------------------------------------------------


@pytest.mark.parametrize("path", [*MACOS.iterdir(), *WINDOWS.iterdir()], ids=stem)
def test_a_file_that_was_never_run_says_so(path: Path) -> None:
    assert "Written, not run" in path.read_text("utf-8")


@pytest.mark.parametrize("path", AGENTS, ids=stem)
def test_an_agent_has_the_keys_that_launchd_asks_for(path: Path) -> None:
    keys = plistlib.loads(path.read_bytes())
    # launchd.plist(5), from memory: Label is required and is the file's name by custom;
    # ProgramArguments begins with a full path; RunAtLoad starts it at login.
    assert path.name == f"{keys['Label']}.plist"
    program, *words = keys["ProgramArguments"]
    assert program.startswith("/")
    assert starts_the_program(words)
    assert keys["RunAtLoad"] is True
    assert keys["LimitLoadToSessionType"] == "Aqua"


def test_the_window_s_agent_says_what_the_switch_writes_and_the_reminders_come_back(
    tmp_path: Path,
) -> None:
    command = ["/usr/local/bin/studio-log", "--minimised"]
    switch = LoginStart(command, config_home=tmp_path, platform="darwin")
    switch.switch(True)
    window, reminders = (plistlib.loads(path.read_bytes()) for path in AGENTS)
    assert window == plistlib.loads(switch.path.read_bytes())
    # launchd.plist(5), "KeepAlive": SuccessfulExit false begins it again after a failure only.
    assert reminders["KeepAlive"] == {"SuccessfulExit": False}
    assert reminders["ProgramArguments"][1:] == ["remind"]


def test_the_task_runs_on_batteries_and_without_end() -> None:
    root = ET.parse(WINDOWS / "studio-log-reminders.xml").getroot()
    # Task Scheduler schema 1.2, [MS-TSCH] 2.5: the root's name, its parts, and the settings
    # whose own values would end the task (battery true, 72 hours); from memory.
    assert root.tag == f"{{{TASK['task']}}}Task"
    assert root.get("version") == "1.2"
    assert root.find("task:Triggers/task:LogonTrigger", TASK) is not None
    settings = root.find("task:Settings", TASK)
    assert settings is not None
    told = {one.tag.partition("}")[2]: one.text for one in settings}
    assert told["DisallowStartIfOnBatteries"] == told["StopIfGoingOnBatteries"] == "false"
    assert told["ExecutionTimeLimit"] == "PT0S"
    principal = root.find("task:Principals/task:Principal", TASK)
    actions = root.find("task:Actions", TASK)
    assert principal is not None
    assert actions is not None
    assert principal.get("id") == actions.get("Context")
    words = root.findtext("task:Actions/task:Exec/task:Arguments", "", TASK)
    assert starts_the_program(words.split())


def test_the_command_file_is_one_that_the_switch_takes_for_its_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shipped = WINDOWS / "studio-log-login.cmd"
    data = shipped.read_bytes()
    assert data.count(b"\r\n") == data.count(b"\n"), "the command shell wants both signs"
    monkeypatch.setenv("LOCALAPPDATA", "C:\\Local")
    program = "C:\\Local\\Programs\\Studio Log\\Scripts\\pythonw.exe"
    switch = LoginStart([program], config_home=tmp_path, platform="win32")
    assert switch.path.name == shipped.name
    switch.path.parent.mkdir(parents=True)
    switch.path.write_bytes(data)
    on, words = switch.state()
    assert not on
    assert f"{program}, which is not there" in words
    line = data.decode().splitlines()[-1]
    assert starts_the_program(re.findall(r'"([^"]*)"', line)[4:])
