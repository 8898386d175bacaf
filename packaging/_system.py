"""What the machine itself must have, found by trying, and mended with apt-get where allowed."""

from __future__ import annotations

import ctypes
import importlib
import os
import shlex
import shutil
import subprocess
import sys
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Final, Protocol

from _trouble import SetUpFailed, told_plainly

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

# Shared library -> Debian package. Found by opening a window on a bare Debian 12, with Qt's xcb
# and with its off-screen platform; each package brings the further ones it needs itself.
QT_LIBRARIES: Final = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libX11-xcb.so.1": "libx11-xcb1",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
}
# Without these the program starts, but cannot print or opens on fewer kinds of desktop.
WANTED_LIBRARIES: Final = {
    "libcups.so.2": "libcups2",
    "libwayland-cursor.so.0": "libwayland-cursor0",
    "libwayland-egl.so.1": "libwayland-egl1",
}
WANTED_TOOLS: Final = {"notify-send": "libnotify-bin"}
TEST_TOOLS: Final = {
    "Xvfb": "xvfb",
    "xauth": "xauth",
    "xdotool": "xdotool",
    "dunst": "dunst",
    "dbus-daemon": "dbus",
    "dbus-run-session": "dbus",
    "dbus-launch": "dbus-x11",
    "gnome-keyring-daemon": "gnome-keyring",
    "xprop": "x11-utils",
    "zbarimg": "zbar-tools",
    "pdftotext": "poppler-utils",
    "notify-send": "libnotify-bin",
    "convert": "imagemagick",
    "faketime": "faketime",
    "ps": "procps",
    "cupsd": "cups-daemon",
    "lpadmin": "cups-client",
}
FONT_FOLDERS: Final = ("/usr/share/fonts", "/usr/local/share/fonts")


class Run(Protocol):
    """Runs a command and gives back how it ended and all it printed; swapped in tests."""

    def __call__(self, command: Sequence[str], /) -> tuple[int, str]: ...


@dataclass(frozen=True)
class Need:
    """One thing the machine must have: what to call it, its Debian package, how to look."""

    name: str
    package: str
    is_there: Callable[[], bool]
    vital: bool = True


def opens(library: str) -> bool:
    """Whether the dynamic linker finds and loads this library."""
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def imports(module: str) -> bool:
    """Whether this Python has that module of the standard library; Debian leaves some out."""
    try:
        importlib.import_module(module)
    except ImportError:
        return False
    return True


def is_on_path(program: str) -> bool:
    """Whether a program of that name can be run."""
    # Services lie where only root looks for programs.
    found = shutil.which(program) or shutil.which(program, path="/usr/sbin:/sbin")
    return found is not None


def has_font() -> bool:
    """Whether any outline font is installed; without one Qt draws empty boxes."""
    folders = [Path(folder) for folder in FONT_FOLDERS]
    return any(
        file.suffix.lower() in {".ttf", ".otf", ".ttc"}
        for folder in folders
        if folder.is_dir()
        for file in folder.rglob("*")
    )


def python_needs() -> list[Need]:
    """List what making a private Python folder takes."""
    package = f"python{sys.version_info.major}.{sys.version_info.minor}-venv"
    return [Need(name, package, partial(imports, name)) for name in ("venv", "ensurepip")]


def window_needs() -> list[Need]:
    """List what the window takes; nothing where Qt brings all of it itself."""
    if sys.platform != "linux":
        return []
    vital = [Need(lib, pkg, partial(opens, lib)) for lib, pkg in QT_LIBRARIES.items()]
    wanted = [
        Need(lib, pkg, partial(opens, lib), vital=False) for lib, pkg in WANTED_LIBRARIES.items()
    ]
    font = Need("a font", "fonts-dejavu-core", has_font)
    return [*vital, font, *wanted, *tool_needs(WANTED_TOOLS, vital=False)]


def tool_needs(tools: dict[str, str], *, vital: bool = True) -> list[Need]:
    """Programs that must be on the path."""
    return [
        Need(tool, package, partial(is_on_path, tool), vital) for tool, package in tools.items()
    ]


def missing(needs: Iterable[Need]) -> list[Need]:
    """Those that are not there, in the order given."""
    return [need for need in needs if not need.is_there()]


def packages_of(needs: Iterable[Need]) -> list[str]:
    """Their Debian packages, each once."""
    return list(dict.fromkeys(need.package for need in needs))


def by_hand(packages: Sequence[str]) -> str:
    """Give the one command that a person types to mend it."""
    names = shlex.join(packages)
    return f"sudo apt-get update; sudo apt-get install -y --no-install-recommends {names}"


def rights(run: Run) -> list[str] | None:
    """Give what goes before apt-get: nothing for root, sudo where it asks nothing, else None."""
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        return []
    if shutil.which("sudo") and run(["sudo", "-n", "true"])[0] == 0:
        return ["sudo", "-n"]
    return None


def quietly(command: Sequence[str]) -> tuple[int, str]:
    """Run a command without a keyboard; its end and all it printed."""
    done = subprocess.run(
        command,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
        check=False,
    )
    return done.returncode, done.stdout


def mend(needs: Iterable[Need], say: Callable[[str], None], run: Run = quietly) -> None:
    """Install what is missing. Raise SetUpFailed where something vital stays missing."""
    needs = list(needs)
    lacking = missing(needs)
    if not lacking:
        return
    before = rights(run) if shutil.which("apt-get") else None
    if before is None:
        _tell(lacking, say)
        return
    packages = packages_of(lacking)
    say(f"      installing system packages: {' '.join(packages)}")
    apt = [*before, "env", "DEBIAN_FRONTEND=noninteractive", "LC_ALL=C", "apt-get"]
    apt += ["-o", "DPkg::Lock::Timeout=120"]
    # A foreign source in the list may fail to refresh while the packages are there all the same.
    _, refreshed = run([*apt, "update"])
    ended, printed = run([*apt, "install", "-y", "--no-install-recommends", *packages])
    still = [need for need in missing(lacking) if need.vital]
    if ended != 0 and still:
        words = told_plainly("Installing system packages", f"{refreshed}\n{printed}")
        raise SetUpFailed(f"{words}\nBy hand it is:\n    {by_hand(packages)}")
    _tell(missing(lacking), say)


def _tell(lacking: Sequence[Need], say: Callable[[str], None]) -> None:
    """Stop for vital things with the one command that mends it; only mention the others."""
    vital = [need for need in lacking if need.vital]
    names = ", ".join(need.name for need in vital or lacking)
    if vital and shutil.which("apt-get"):
        command = by_hand(packages_of(lacking))
        raise SetUpFailed(
            f"This machine lacks {names}. Type this once, then start again:\n    {command}"
        )
    if vital:
        raise SetUpFailed(
            f"This machine lacks {names}. Install what brings it with the system's own package "
            "tool, then start again."
        )
    if lacking:
        say(f"      not there, and done without: {names}")
