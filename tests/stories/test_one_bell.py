"""Two reminder services on one studio: one rings, and when it is killed the other takes over."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from studio_log.app.compose import open_studio
from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.services.commands import ChangeSettings, Mark, NewLot
from tests.outside import service
from tests.support.tree import TREE

pytestmark = [pytest.mark.story, pytest.mark.long]
TAKE_OVER = 15.0
"""Seconds, less than half a heartbeat: the system tells of the end of the one that rang."""


class Service:
    """`studio-log remind` in a process of its own; what it prints goes to a file."""

    def __init__(self, folder: Path, to: Path, bus: str) -> None:
        self.to = to
        with to.open("wb") as out:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "studio_log", "--studio", str(folder), "remind"],
                env={**os.environ, "PYTHONPATH": str(TREE), "DBUS_SESSION_BUS_ADDRESS": bus},
                stdout=out,
                stderr=subprocess.STDOUT,
                stdin=subprocess.DEVNULL,
            )

    def said(self) -> str:
        return self.to.read_text("utf-8")

    def waits_for(self, words: str, seconds: float) -> bool:
        end = time.monotonic() + seconds
        while words not in self.said() and time.monotonic() < end:
            time.sleep(0.1)  # waits for another process, which tells nobody
        return words in self.said()


@pytest.fixture
def services(tmp_path: Path) -> Iterator[tuple[Path, list[Service]]]:
    folder = tmp_path / "studio"
    studio = open_studio(folder)
    quiet = {"quiet_start": "00:00", "quiet_end": "00:00", "welcomed": True}
    studio.do(ChangeSettings(quiet))
    studio.close()
    with service.private_bus(tmp_path) as bus, service.FakeService(bus):
        running = [Service(folder, tmp_path / f"said-{number}", bus) for number in (1, 2)]
        yield folder, running
        for one in running:
            if one.process.poll() is None:
                one.process.send_signal(signal.SIGTERM)
                assert one.process.wait(20) == 0


def soak(folder: Path, name: str) -> None:
    """Make a lot whose beans have soaked past their aim, in a process that ends."""
    now = datetime.now(UTC)  # noqa: TID251 - the services read the machine's own clock
    studio = open_studio(folder)
    piece = Piece(1, "linen", length_m=1.8, width_m=0.45, gsm=185.0)
    code = studio.do(NewLot("soy-immersion-long", name, (piece,))).code
    studio.do(Mark(code, "bean-soak", Act.START, at=now - timedelta(hours=12, minutes=5)))
    studio.close()


def test_one_of_two_services_rings_and_the_other_takes_over(
    services: tuple[Path, list[Service]],
) -> None:
    folder, (first, second) = services
    assert first.waits_for("Reminding", 30)
    assert second.waits_for("Reminding", 30)
    soak(folder, "Alder")
    rang = next((one for one in (first, second) if one.waits_for("Alder", 10)), None)
    assert rang is not None
    other = second if rang is first else first
    assert "Alder" not in other.said(), "one act, one ring"
    rang.process.kill()
    rang.process.wait()
    soak(folder, "Birch")
    assert other.waits_for("Birch", TAKE_OVER)
    assert "Birch" not in rang.said()
    assert other.said().count("Alder") == 0, "what was raised is not raised again"
