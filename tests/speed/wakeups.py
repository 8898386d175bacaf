"""What an open window costs while nothing is due: wake-ups a second and processor seconds an hour.

Each window stands in a process of its own beside a bare QApplication with one shown window, on
the same kind of screen and over the same seconds. A wake-up is a voluntary context switch of
any thread, as Linux counts them in /proc/PID/task/*/status (proc(5)). Over less than an hour
the strokes of a window at rest are in the count or are not, partly by chance.
"""

import argparse
import os
import signal
import sys
import threading
import time
from contextlib import ExitStack
from dataclasses import dataclass, field
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.speed.report import child, cpu_seconds, end, screen, threads_of, verdict

if TYPE_CHECKING:
    from subprocess import Popen

BAR, CPU_BAR = 0.05, 60.0
STATES = ("active", "caret", "minimised", "hidden")
SETTLE_S = 200.0
"""Longer than the window takes to see that nobody is at it."""


@dataclass
class Watched:
    """A process that is measured; looked at each second, so that threads that end are counted."""

    title: str
    platform: str
    process: "Popen[str]"
    before: "dict[str, tuple[str, int]]" = field(default_factory=dict)
    now: "dict[str, tuple[str, int]]" = field(default_factory=dict)
    cpu: float = 0.0

    def begin(self) -> None:
        """Measure from now on."""
        self.before = threads_of(self.process.pid)
        self.cpu = cpu_seconds(self.process.pid)

    def look(self) -> None:
        """Take the counts of now; a thread that has ended keeps its last one."""
        self.now |= threads_of(self.process.pid)

    def wakeups(self) -> dict[str, int]:
        """Give the wake-ups since the beginning, by the name of the thread."""
        found: dict[str, int] = {}
        for number, (name, count) in self.now.items():
            woken = count - self.before.get(number, (name, 0))[1]
            if woken:
                found[name] = found.get(name, 0) + woken
        return found

    def cpu_used(self) -> float:
        """Give the processor seconds since then."""
        return cpu_seconds(self.process.pid) - self.cpu


def measure(seconds: float, settle: float, platforms: tuple[str, ...], home: Path) -> list[str]:
    """Let every window stand beside a bare one and give a line for each."""
    with ExitStack() as running:
        watched = [one for platform in platforms for one in _begin_all(running, platform, home)]
        time.sleep(settle)  # waits until the windows rest
        for one in watched:
            one.begin()
        until = time.monotonic() + seconds
        while time.monotonic() < until:
            time.sleep(min(1.0, seconds))  # waits for what is measured
            for one in watched:
                one.look()
        return [line for platform in platforms for line in _lines(watched, platform, seconds)]


def _begin_all(running: ExitStack, platform: str, home: Path) -> list[Watched]:
    found = []
    for title in ("bare", *STATES):
        own = {"QT_QPA_PLATFORM": platform, "XDG_RUNTIME_DIR": str(home)}
        if platform == "xcb":
            own["DISPLAY"] = running.enter_context(screen())
        folder = home / f"{platform}-{title}"
        process = child("wakeups.py", "--child", title, "--folder", str(folder), **own)
        running.callback(end, process)
        found.append(Watched(title, platform, process))
    return found


def _lines(watched: list[Watched], platform: str, seconds: float) -> list[str]:
    mine = {one.title: one for one in watched if one.platform == platform}
    bare = mine.pop("bare")
    base, base_cpu = sum(bare.wakeups().values()) / seconds, bare.cpu_used()
    lines = []
    for title, one in mine.items():
        by_thread = one.wakeups()
        above = sum(by_thread.values()) / seconds - base
        told = ", ".join(f"{name} {count}" for name, count in sorted(by_thread.items()))
        against = f"bare window {base:.4f}; in {seconds:g} s: {told or 'none'}"
        what = f"{platform}, {title}"
        lines.append(verdict(f"{what}, wake-ups above bare", above, BAR, "/s", against))
        hour = (one.cpu_used() - base_cpu) * 3600 / seconds
        against = f"bare window {base_cpu * 3600 / seconds:.1f}"
        lines.append(verdict(f"{what}, processor above bare", hour, CPU_BAR, "s/h", against))
    return lines


# -- in the processes that are measured -------------------------------------------------


def bare() -> None:
    """Show one empty window and wait."""
    from PySide6.QtWidgets import QApplication, QWidget

    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    app = QApplication([])
    window = QWidget()
    window.resize(800, 600)
    window.show()
    window.activateWindow()
    app.processEvents()
    print("ready", flush=True)
    app.exec()


def name_threads() -> None:
    """Let the system know Python's threads by their names, as far as it keeps them."""
    for thread in threading.enumerate():
        name = "window" if thread is threading.main_thread() else thread.name
        Path(f"/proc/self/task/{thread.native_id}/comm").write_text(name[:15])


def fill(folder: Path) -> None:
    """Make a studio of six lots: soaks under way, nothing due for hours, no quiet hours."""
    from studio_log.app.compose import open_studio
    from studio_log.domain.journal import Act
    from studio_log.services.commands import ChangeSettings, Mark, NewLot
    from tests.support.builders import LONG
    from tests.support.fixtures import PIECES

    studio = open_studio(folder)
    values = {"studio": "Harbour Lane Cloth Studio", "welcomed": True, "closing_said": True,
              "quiet_start": "00:00", "quiet_end": "00:00",
              "look_ahead": "", "evening_look": ""}  # fmt: skip
    studio.do(ChangeSettings(values))
    now = studio.clock.now()
    for number in range(6):
        code = studio.do(NewLot(LONG, f"runners {number}", PIECES)).code
        begun = now - timedelta(minutes=65 + number)
        studio.do(Mark(code, "1", Act.START, begun, sure=True))
    due = studio.next_ring()
    assert due is None or due > now + timedelta(minutes=30), f"something is due at {due}"
    studio.close()


def window(state: str, folder: Path) -> None:
    """Open the program's own window on a studio, as its boot does, and wait."""
    from PySide6.QtCore import Qt, QTimer
    from PySide6.QtWidgets import QApplication

    from studio_log.app import window as boot
    from studio_log.ui.main_window import MainWindow

    fill(folder)
    late = QTimer(singleShot=True, interval=3000)

    def settle() -> None:
        shown = next(w for w in QApplication.topLevelWidgets() if isinstance(w, MainWindow))
        shown.activateWindow()
        if state == "caret":
            shown.lots.search.setFocus(Qt.FocusReason.OtherFocusReason)
        elif state == "minimised":
            shown.showMinimized()
        elif state == "hidden":
            shown.hide()
        name_threads()
        print("ready", flush=True)

    late.timeout.connect(settle)
    begin = MainWindow.start

    def start(self: MainWindow) -> None:
        begin(self)
        late.start()

    MainWindow.start = start  # type: ignore[method-assign]
    options = argparse.Namespace(
        demo=False, studio=str(folder), pace=1.0, minimised=False, language="en"
    )
    boot.run_window(options)


def main(argv: list[str] | None = None) -> list[str]:
    """Measure; gives the lines that were printed."""
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--seconds", type=float, default=900.0)
    words.add_argument("--settle", type=float, default=SETTLE_S)
    words.add_argument("--platforms", default="xcb,offscreen")
    words.add_argument("--child", help=argparse.SUPPRESS)
    words.add_argument("--folder", type=Path, help=argparse.SUPPRESS)
    options = words.parse_args(argv)
    if options.child == "bare":
        bare()
        return []
    if options.child:
        os.environ["STUDIO_LOG_STUDIO"] = str(options.folder)
        window(options.child, options.folder)
        return []
    platforms = tuple(options.platforms.split(","))
    with TemporaryDirectory(prefix="studio-log-speed-") as home:
        return measure(options.seconds, options.settle, platforms, Path(home))


if __name__ == "__main__":
    main()
