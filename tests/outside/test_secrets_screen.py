"""A password in a real keyring over the Secret Service, on a bus and in a home of the test's own.

The service is GNOME's; what is asked of it is the Secret Service API of freedesktop.org, 0.2.
"""

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.outside.service import private_bus, wait_until
from tests.support.tree import TREE

pytestmark = pytest.mark.screen

ADDRESS = "postgresql://studio@shed:5432/studio"
CANARY = "indigo-canary-4711"
ONE_START = """
import sys
from studio_log.outside.secrets import Secrets
act, patience, *rest = sys.argv[1:]
print(getattr(Secrets(float(patience)), act)(*rest))
"""
HAS_SERVICE = [
    "dbus-send",
    "--session",
    "--print-reply=literal",
    "--dest=org.freedesktop.DBus",
    "/",
    "org.freedesktop.DBus.NameHasOwner",
    "string:org.freedesktop.secrets",
]


class Desktop:
    """A session with a keyring; each act is a start of the program of its own."""

    def __init__(self, home: Path, bus: str) -> None:
        self.home = home
        self.environment = {
            "PATH": os.environ["PATH"],
            "HOME": str(home),
            "XDG_RUNTIME_DIR": str(home),
            "DBUS_SESSION_BUS_ADDRESS": bus,
            "PYTHONPATH": str(TREE),
        }

    def start(self, act: str, *rest: str, patience_s: float = 20) -> str:
        """Call one method of the door in a new process; give what it gave back."""
        command = [sys.executable, "-c", ONE_START, act, str(patience_s), ADDRESS, *rest]
        done = subprocess.run(
            command, env=self.environment, capture_output=True, text=True, check=False, timeout=60
        )
        assert (done.returncode, done.stderr) == (0, "")
        return done.stdout.rstrip("\n")

    @contextmanager
    def service(self, *options: str) -> Iterator[subprocess.Popen[bytes]]:
        """Run the keyring; a password that unlocks it comes by standard input."""
        command = ["gnome-keyring-daemon", "--foreground", "--components=secrets", *options]
        with (self.home / "service.log").open("wb") as log:
            running = subprocess.Popen(
                command, env=self.environment, stdin=subprocess.PIPE, stdout=log, stderr=log
            )
        assert running.stdin
        running.stdin.write(b"opens the keyring")
        running.stdin.close()
        try:
            wait_until(self._has_service)
            yield running
        finally:
            running.kill()
            running.wait()

    def _has_service(self) -> bool:
        asked = subprocess.run(HAS_SERVICE, env=self.environment, capture_output=True, check=False)
        return b"true" in asked.stdout


@pytest.fixture
def desktop(tmp_path: Path) -> Iterator[Desktop]:
    home = tmp_path / "home"
    home.mkdir(mode=0o700)
    with private_bus(tmp_path) as bus:
        yield Desktop(home, bus)


def holding(folder: Path, word: str) -> list[Path]:
    """Files in which a word can be read as it is."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    assert files
    return [path for path in files if word.encode() in path.read_bytes()]


def test_what_one_start_keeps_the_next_one_knows(desktop: Desktop) -> None:
    with desktop.service("--unlock"):
        assert desktop.start("get") == "None"
        assert desktop.start("put", CANARY) == ""
        assert desktop.start("get") == CANARY
        assert desktop.start("put", "another") == ""
        assert desktop.start("get") == "another"
        assert desktop.start("put", CANARY) == ""
    with desktop.service("--unlock"):  # after the next login
        assert desktop.start("get") == CANARY
        assert (desktop.home / ".local/share/keyrings/login.keyring").stat().st_size > 0
        assert holding(desktop.home, CANARY) == []
        assert desktop.start("forget") == ""
        assert desktop.start("get") == "None"


def test_a_keyring_that_stays_locked_is_said(desktop: Desktop) -> None:
    with desktop.service("--unlock"):
        assert desktop.start("put", CANARY) == ""
    # Nobody is at the keyboard of this bus to unlock it: the question is dismissed at once.
    with desktop.service():
        assert desktop.start("get") == "None"
        assert "stayed locked. It was written nowhere" in desktop.start("put", CANARY)
        assert "could not be taken out" in desktop.start("forget")


def test_a_keyring_that_stands_still_is_given_up(desktop: Desktop) -> None:
    with desktop.service("--unlock") as running:
        running.send_signal(signal.SIGSTOP)
        assert desktop.start("get", patience_s=0.5) == "None"
        assert "does not answer" in desktop.start("put", CANARY, patience_s=0.5)


def test_a_desktop_without_a_keyring_is_said(desktop: Desktop) -> None:
    assert "this system has no keyring" in desktop.start("put", CANARY)
    assert desktop.start("get") == "None"
    assert desktop.start("forget") == ""
