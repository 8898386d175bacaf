"""How long the window's event loop stands still while notices are raised.

A precise timer of 5 ms notes the longest gap between two of its strokes while 20 notices are
raised: without any bus, by a bus that takes a connection and never answers, and by a
notification service that answers. The baseline is the same timer with nothing raised.
"""

import argparse
import os
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).parents[2]))

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication

from studio_log.app import window as boot
from studio_log.services.ports import NoticeText
from studio_log.ui.main_window import MainWindow
from tests.speed.report import verdict
from tests.speed.wakeups import fill

STROKE_MS, BAR_MS, NOTICES = 5, 50.0, 20
APART_MS, SETTLE_MS = 250, 3000
CASES = ("nothing raised", "no bus", "dead bus", "service")


@contextmanager
def bus(case: str, home: Path) -> Iterator[str]:
    """Give the address of a session bus such as the case names."""
    if case == "dead bus":
        with socket.socket(socket.AF_UNIX) as deaf:
            deaf.bind(str(home / "deaf"))
            deaf.listen(64)
            yield f"unix:path={home / 'deaf'}"
    elif case == "service":
        from tests.outside.service import FakeService, private_bus

        with private_bus(home) as address, FakeService(address):
            yield address
    else:
        yield f"unix:path={home / 'none'}"


class Watch:
    """The program's own window, with notices raised in it and the gaps of a timer noted."""

    def __init__(self, home: Path, notices: int) -> None:
        fill(home / "studio")
        self.app = QApplication([])
        options = argparse.Namespace(
            demo=False, studio=str(home / "studio"), pace=1.0, language="en"
        )
        self.house = boot.WindowHouse(self.app, options)
        self.window = MainWindow(self.house.bridge)
        self.window.chime.on = False
        self.window.quit_wanted.connect(self.app.quit)
        self.notices, self.raised = notices, 0
        self.last, self.longest = 0.0, 0.0
        self.strokes = QTimer(interval=STROKE_MS, timerType=Qt.TimerType.PreciseTimer)
        self.strokes.timeout.connect(self._stroke)
        self.rings = QTimer(interval=APART_MS)
        self.rings.timeout.connect(self._ring)
        self.settled = QTimer(singleShot=True, interval=SETTLE_MS)
        self.settled.timeout.connect(self._begin)
        self.late = QTimer(singleShot=True, interval=SETTLE_MS)
        self.late.timeout.connect(self.window.quit)

    def run(self) -> str:
        """Give the longest gap in milliseconds, and how many notices were raised."""
        self.house.start()
        self.window.start()
        self.window.show()
        self.settled.start()
        self.app.exec()
        self.house.close()
        return f"{self.longest:.1f} {self.raised}"

    def _begin(self) -> None:
        self.strokes.start()
        self.rings.start()

    def _stroke(self) -> None:
        now = perf_counter()
        if self.last:
            self.longest = max(self.longest, (now - self.last) * 1000)
        self.last = now

    def _ring(self) -> None:
        if self.raised >= self.notices:
            self.rings.stop()
            self.late.start()
            return
        self.raised += 1
        keys = (f"none/{self.raised}",)
        text = NoticeText(f"Stir {self.raised}", "26-001 runners", "soon", keys)
        # As the studio does it in its own thread once something is due.
        self.house._worker.submit(self.house._late.studio._show, text, [], [])


def main(argv: list[str] | None = None) -> list[str]:
    """Measure each case in a process of its own; gives the lines that were printed."""
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--seconds", type=float, default=NOTICES / 4, help="raise for so long")
    words.add_argument("--cases", default=",".join(CASES))
    words.add_argument("--child", type=int, help=argparse.SUPPRESS)
    options = words.parse_args(argv)
    if options.child is not None:
        print(Watch(Path(os.environ["STUDIO_LOG_SPEED"]), options.child).run(), flush=True)
        return []
    lines, base = [], ""
    for case in options.cases.split(","):
        notices = 0 if case == CASES[0] else max(1, round(options.seconds * 4))
        with (
            TemporaryDirectory(prefix="studio-log-speed-") as folder,
            bus(case, Path(folder)) as at,
        ):
            own = {"DBUS_SESSION_BUS_ADDRESS": at, "STUDIO_LOG_SPEED": folder}
            command = [sys.executable, __file__, "--child", str(notices)]
            ran = subprocess.run(
                command, env=os.environ | own, stdout=subprocess.PIPE, text=True, check=True
            )
        gap, raised = ran.stdout.split()[-2:]
        base = base or gap
        against = f"{raised} notices; nothing raised {base} ms"
        lines.append(verdict(f"longest stall, {case}", float(gap), BAR_MS, "ms", against))
    return lines


if __name__ == "__main__":
    main()
