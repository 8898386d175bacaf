"""A screen, a session bus and a notification service of the tests' own, gone when they end."""

from __future__ import annotations

import contextlib
import os
import select
import subprocess
import tempfile
import time
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from _trouble import SetUpFailed

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

PATIENCE_S: Final = 20.0
HAS_NOTICES: Final = [
    "dbus-send",
    "--session",
    "--print-reply=literal",
    "--dest=org.freedesktop.DBus",
    "/",
    "org.freedesktop.DBus.NameHasOwner",
    "string:org.freedesktop.Notifications",
]


@contextlib.contextmanager
def private_screen(environment: Mapping[str, str]) -> Iterator[dict[str, str]]:
    """Give an environment with an X server, a bus and dunst in it; end all three afterwards."""
    with (
        tempfile.TemporaryDirectory(prefix="studio-log-screen-") as home,
        contextlib.ExitStack() as running,
    ):
        own = {name: value for name, value in environment.items() if name != "WAYLAND_DISPLAY"}
        own |= {"XDG_RUNTIME_DIR": home, "XDG_CONFIG_HOME": home, "QT_QPA_PLATFORM": "xcb"}
        # -displayfd: the server takes a free number itself, so that two runs never collide.
        server = ["Xvfb", "-screen", "0", "1600x1000x24", "-nolisten", "tcp", "-displayfd"]
        own["DISPLAY"] = ":" + _first_line(running, server, own)
        bus = ["dbus-daemon", "--session", "--nofork", "--print-address"]
        own["DBUS_SESSION_BUS_ADDRESS"] = _first_line(running, bus, own)
        _begin(running, ["dunst"], own)
        _await_notices(own)
        yield own


def _first_line(running: contextlib.ExitStack, command: Sequence[str], own: dict[str, str]) -> str:
    """Begin a program that reports its address on a descriptor; give that address."""
    read, write = os.pipe()
    try:
        # Both take the number of the descriptor as the value of their last option.
        last = f"{command[-1]}={write}" if command[-1].startswith("--") else command[-1]
        rest = [] if command[-1].startswith("--") else [str(write)]
        _begin(running, [*command[:-1], last, *rest], own, keep=write)
    finally:
        os.close(write)
    with os.fdopen(read, "rb") as told:
        ready, _, _ = select.select([told], [], [], PATIENCE_S)
        line = told.readline().decode().strip() if ready else ""
    if not line:
        raise SetUpFailed(f"{command[0]} did not start; the tests that need a screen cannot run.")
    return line


def _begin(
    running: contextlib.ExitStack,
    command: Sequence[str],
    own: dict[str, str],
    keep: int | None = None,
) -> None:
    log = (Path(own["XDG_RUNTIME_DIR"]) / f"{command[0]}.log").open("wb")
    running.enter_context(log)
    descriptors = () if keep is None else (keep,)
    process = subprocess.Popen(
        command,
        env=own,
        stdin=subprocess.DEVNULL,
        stdout=log,
        stderr=log,
        pass_fds=descriptors,
    )
    running.callback(end, process)


def end(process: subprocess.Popen[Any]) -> None:
    """Ask a program to end, and make it end where it does not within five seconds."""
    process.terminate()
    try:
        process.wait(timeout=5)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()


def _await_notices(own: dict[str, str]) -> None:
    """Wait until the notification service has its name on the bus."""
    until = time.monotonic() + PATIENCE_S
    while time.monotonic() < until:
        asked = subprocess.run(HAS_NOTICES, env=own, capture_output=True, text=True, check=False)
        if "true" in asked.stdout:
            return
        time.sleep(0.05)
    raise SetUpFailed("dunst did not start; the tests that need a screen cannot run.")
