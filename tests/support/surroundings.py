"""The surroundings of every test: no screen, no bus, one zone and language, a home of its own."""

import itertools
import os
import tempfile
import time
from pathlib import Path

import pytest

HOME = tempfile.TemporaryDirectory(prefix="studio-log-tests-")
FOLDERS = {
    "HOME": ".",
    "XDG_DATA_HOME": "data",
    "XDG_CONFIG_HOME": "config",
    "XDG_CACHE_HOME": "cache",
    "XDG_STATE_HOME": "state",
    "XDG_RUNTIME_DIR": "run",
}
_numbers = itertools.count(1)


def on_screen() -> bool:
    """Whether this run was given an X server and a session bus of its own."""
    wanted = ("DISPLAY", "DBUS_SESSION_BUS_ADDRESS")
    return os.environ.get("QT_QPA_PLATFORM") == "xcb" and all(map(os.environ.get, wanted))


def settle() -> None:
    """Set the surroundings of the whole run; before Qt makes its application."""
    cache = Path(os.environ.get("XDG_CACHE_HOME") or Path("~/.cache").expanduser())
    os.environ.setdefault("PIP_CACHE_DIR", str(cache / "pip"))  # else every run fetches anew
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    os.environ.update({"TZ": "Europe/London", "LC_ALL": "C.UTF-8", "LANG": "C.UTF-8"})
    time.tzset()
    if not on_screen():
        for name in ("DISPLAY", "WAYLAND_DISPLAY", "DBUS_SESSION_BUS_ADDRESS"):
            os.environ.pop(name, None)
    os.environ.update(_home())


def give(monkeypatch: pytest.MonkeyPatch, *, with_bus: bool) -> None:
    """Give one test an empty home, and the session bus only where it asked for it."""
    for name, folder in _home().items():
        monkeypatch.setenv(name, folder)
    for name in [name for name in os.environ if name.startswith("STUDIO_LOG_")]:
        monkeypatch.delenv(name)
    if not with_bus:
        monkeypatch.delenv("DBUS_SESSION_BUS_ADDRESS", raising=False)
    monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", "unix:path=/nowhere")


def _home() -> dict[str, str]:
    home = Path(HOME.name) / str(next(_numbers))
    home.mkdir()
    (home / "run").mkdir(mode=0o700)
    return {name: str(home / folder) for name, folder in FOLDERS.items()}
