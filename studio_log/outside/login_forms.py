"""How each kind of system is told to start a program at login: the file, its place, its text.

Linux and others: Desktop Application Autostart Specification 0.5. macOS: launchd.plist(5).
Windows: a command file in the Startup folder. The last two are written, not run.
"""

import os
import plistlib
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final
from xml.parsers.expat import ExpatError

from studio_log.outside.desktop_entry import entry_text, exec_value, exec_words, read_entry

MARK: Final = "X-StudioLog-Login"
LABEL: Final = "studio-log.login"
CMD_MARK: Final = "rem Studio Log: starts at login"
_NOTE: Final = "Written by Studio Log: the switch “Start at login” in its settings."
_MISREAD: Final = re.compile(r"[\\`$]")
_CMD_LINE: Final = re.compile(r'^start "" /min (".*")$', re.MULTILINE)


@dataclass(frozen=True)
class Found:
    """What a start file of ours says: whether it is switched on, and what it would start."""

    on: bool
    command: tuple[str, ...]
    needs: str = ""
    """A program that has to be there too, by the file's own words."""


@dataclass(frozen=True)
class LoginForm:
    """One kind of system; the places are asked for anew each time."""

    home: Callable[[], Path]
    place: str
    """The file, below the home."""
    write: Callable[[Sequence[str]], str]
    """ValueError where these words cannot stand in such a file."""
    read: Callable[[bytes], Found]
    """ValueError where it cannot be understood."""
    mark: str
    """Stands in every file of ours and in no other."""
    newline: str = "\n"
    shared: Callable[[], list[Path]] = list
    """Homes of the same kind for every user, the nearest first."""
    hides: str = ""
    """A text that, in the user's own place, switches a shared file off."""
    doubt: Callable[[Sequence[str]], str] = lambda _command: ""
    """Words on what some systems will not start although the file is right; often none."""


# -- Linux and others ----------------------------------------------------------------------


def _xdg_home() -> Path:
    told = os.environ.get("XDG_CONFIG_HOME", "")
    # XDG Base Directory Specification 0.8: a relative path is passed over.
    return Path(told) if told.startswith("/") else Path("~/.config").expanduser()


def _xdg_shared() -> list[Path]:
    told = os.environ.get("XDG_CONFIG_DIRS", "") or "/etc/xdg"
    return [Path(one) for one in told.split(":") if one.startswith("/")]


def _entry(command: Sequence[str]) -> str:
    keys = {
        "Type": "Application",
        "Version": "1.0",
        "Name": "Studio Log reminders",
        "Comment": "Starts Studio Log minimised at login, so that it can ring",
        "Exec": exec_value(command),
        "TryExec": command[0],
        "Icon": "studio-log",
        "Terminal": "false",
        "X-GNOME-Autostart-enabled": "true",
        MARK: "1",
    }
    return entry_text(keys, _NOTE)


def _read_entry(data: bytes) -> Found:
    keys = read_entry(data.decode("utf-8"))
    hidden = keys.get("Hidden") == "true"
    # GNOME's own key; its settings write it where others write Hidden. From memory.
    on = not hidden and keys.get("X-GNOME-Autostart-enabled") != "false"
    line = keys.get("Exec", "")
    return Found(on, tuple(exec_words(line)) if line or on else (), keys.get("TryExec", ""))


def _entry_doubt(command: Sequence[str]) -> str:
    """Warn of what systemd-xdg-autostart-generator 252 was seen to misread; GLib reads it right."""
    if not any(map(_MISREAD.search, command)):
        return ""
    return (
        "Mind the backslash, backtick or dollar sign in the folder's name: a desktop whose "
        "programs systemd starts misreads it and opens another folder. A plainer name is safer."
    )


_HIDDEN: Final = entry_text({"Type": "Application", "Hidden": "true", MARK: "1"}, _NOTE)

# -- macOS ---------------------------------------------------------------------------------


def _plist(command: Sequence[str]) -> str:
    keys = {
        "Label": LABEL,
        "ProgramArguments": list(command),
        "RunAtLoad": True,
        "LimitLoadToSessionType": "Aqua",
        "ProcessType": "Interactive",
    }
    return plistlib.dumps(keys, sort_keys=False).decode()


def _read_plist(data: bytes) -> Found:
    try:
        keys = plistlib.loads(data)
        words = tuple(map(str, keys["ProgramArguments"]))
    except (ExpatError, plistlib.InvalidFileException, LookupError, TypeError) as error:
        raise ValueError("no property list with a program") from error
    if not words:
        raise ValueError("no program")
    return Found(bool(keys.get("RunAtLoad")) and not keys.get("Disabled"), words)


# -- Windows -------------------------------------------------------------------------------


def _roaming() -> Path:
    return Path(os.environ.get("APPDATA", "") or Path("~/AppData/Roaming").expanduser())


def _cmd(command: Sequence[str]) -> str:
    if any(re.search(r'["\x00-\x1f]', word) for word in command):
        raise ValueError("a quotation mark or a control sign")
    line = " ".join(_cmd_quoted(word) for word in command)
    # 65001 is UTF-8: the file is read line by line, so it holds for the lines after it.
    return f'@echo off\n{CMD_MARK}\nchcp 65001 >nul\nstart "" /min {line}\n'


def _cmd_quoted(word: str) -> str:
    """Quote for cmd.exe and for the program: a backslash before a quote is doubled there."""
    tail = len(word) - len(word.rstrip("\\"))
    return '"' + word.replace("%", "%%") + "\\" * tail + '"'


def _read_cmd(data: bytes) -> Found:
    line = _CMD_LINE.search(data.decode("utf-8").replace("\r\n", "\n"))
    if line is None:
        raise ValueError("no program")
    return Found(on=True, command=tuple(map(_cmd_plain, re.findall(r'"([^"]*)"', line[1]))))


def _cmd_plain(quoted: str) -> str:
    tail = len(quoted) - len(quoted.rstrip("\\"))
    plain = quoted[: len(quoted) - tail // 2]
    return re.sub(r"%(\w*)%", lambda one: os.environ.get(one[1], "") if one[1] else "%", plain)


XDG: Final = LoginForm(
    _xdg_home,
    "autostart/studio-log-reminders.desktop",
    _entry,
    _read_entry,
    MARK,
    shared=_xdg_shared,
    hides=_HIDDEN,
    doubt=_entry_doubt,
)
FORMS: Final = {
    "darwin": LoginForm(
        lambda: Path("~/Library").expanduser(),
        f"LaunchAgents/{LABEL}.plist",
        _plist,
        _read_plist,
        LABEL,
    ),
    "win32": LoginForm(
        _roaming,
        "Microsoft/Windows/Start Menu/Programs/Startup/studio-log-login.cmd",
        _cmd,
        _read_cmd,
        CMD_MARK,
        newline="\r\n",
    ),
}
"""By the names of `sys.platform`; every other system follows the desktop standards."""
