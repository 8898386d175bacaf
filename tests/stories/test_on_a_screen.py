"""On a real X server and session bus: the desktop's own notification service holds the notice."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from jeepney import DBusAddress, new_method_call
from jeepney.io.blocking import open_dbus_connection

from studio_log.app.compose import open_studio
from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.services.commands import ChangeSettings, Mark, NewLot
from tests.support.tree import TREE

pytestmark = [pytest.mark.screen, pytest.mark.story]
PATIENCE = 30.0
DUNST = DBusAddress(
    "/org/freedesktop/Notifications",
    bus_name="org.freedesktop.Notifications",
    interface="org.dunstproject.cmd0",
)


def eventually(look: Callable[[], bool], what: str) -> None:
    """Wait until something is so, at most half a minute."""
    end = time.monotonic() + PATIENCE
    while not look():
        assert time.monotonic() < end, f"still not so: {what}"
        time.sleep(0.2)  # waits for another process, which tells nobody


def dunst(*words: str) -> str:
    return subprocess.run(
        ["dunstctl", *words], capture_output=True, text=True, check=True, timeout=10
    ).stdout


_told: set[int] = set()


def notices() -> list[tuple[str, str]]:
    """Give summary and body of every notice the service holds in its own list since last asked."""
    dunst("close-all")
    # Asked over the bus: dunstctl itself would need systemd's busctl for this.
    call = new_method_call(DUNST, "NotificationListHistory")
    with open_dbus_connection() as bus:
        (rows,) = bus.send_and_get_reply(call, timeout=10).body
    fresh = [row for row in rows if row["id"][1] not in _told]
    _told.update(row["id"][1] for row in fresh)
    return [(row["summary"][1], row["body"][1]) for row in fresh]


@pytest.fixture
def due_studio(tmp_path: Path) -> Path:
    """A studio whose beans have soaked past their aim, in a lot with a hostile name."""
    folder = tmp_path / "studio"
    studio = open_studio(folder)
    now = datetime.now(UTC)  # noqa: TID251 - the window reads the machine's own clock
    quiet = {"quiet_start": "00:00", "quiet_end": "00:00", "welcomed": True}
    studio.do(ChangeSettings(quiet))
    piece = Piece(1, "linen", length_m=1.8, width_m=0.45, gsm=185.0)
    code = studio.do(NewLot("soy-immersion-long", "-h & <b>", (piece,))).code
    studio.do(Mark(code, "bean-soak", Act.START, at=now - timedelta(hours=12, minutes=5)))
    studio.close()
    return folder


@pytest.fixture
def window(due_studio: Path) -> Iterator["subprocess.Popen[bytes]"]:
    notices()
    process = subprocess.Popen(
        [sys.executable, "-m", "studio_log", "--studio", str(due_studio)],
        env={**os.environ, "PYTHONPATH": str(TREE), "QT_QPA_PLATFORM": "xcb"},
        stdout=subprocess.DEVNULL,
    )
    yield process
    if process.poll() is None:
        process.send_signal(signal.SIGTERM)
        process.wait(15)


def shown() -> bool:
    return int(dunst("count", "displayed")) + int(dunst("count", "waiting")) > 0


def test_a_due_reminder_is_in_the_services_own_list_with_the_right_words(
    window: "subprocess.Popen[bytes]", due_studio: Path
) -> None:
    eventually(shown, "a notice on the desktop")
    held = notices()
    titles = [title for title, _ in held]
    year = datetime.now(UTC).strftime("%y")  # noqa: TID251 - the code carries the year
    assert any(f"Drain the beans {year}-001 -h & <b>" in title for title in titles), held
    assert any("Bean soak since" in body for _, body in held)
    # Answered by another process, it stands answered: no second notice for the same act.
    studio = open_studio(due_studio)
    studio.do(Mark(f"{year}-001", "bean-soak", Act.END))
    studio.close()
    eventually(shown, "the next act, told within moments of the answer elsewhere")
    assert all("Drain" not in title for title, _ in notices())
    window.send_signal(signal.SIGTERM)
    assert window.wait(15) == 0


def test_a_second_start_raises_the_first_window(
    window: "subprocess.Popen[bytes]", due_studio: Path
) -> None:
    def titles() -> str:
        found = subprocess.run(
            ["xdotool", "search", "--onlyvisible", "--name", "Studio Log"],
            capture_output=True, text=True, check=False, timeout=10,
        )  # fmt: skip
        return found.stdout.strip()

    eventually(lambda: bool(titles()), "the window on the screen")
    second = subprocess.run(
        [sys.executable, "-m", "studio_log", "--studio", str(due_studio)],
        env={**os.environ, "PYTHONPATH": str(TREE), "QT_QPA_PLATFORM": "xcb"},
        capture_output=True, text=True, check=False, timeout=30,
    )  # fmt: skip
    assert second.returncode == 0
    assert "comes forward" in second.stdout
    assert window.poll() is None
