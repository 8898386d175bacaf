"""How long a frame of the timeline takes: 200 and 4,000 lots of 12 steps, painted off-screen.

Prints milliseconds for the person at this machine, and a ratio against filling the same
picture with plain ground in the same run, which other machines can be compared by.
"""

import os
import sys
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from statistics import median, quantiles
from time import perf_counter, process_time

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).parents[2]))

from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication

from studio_log.domain.methods import StepKind
from studio_log.present.lanes import Bar, Drop, Lane, Stitch
from studio_log.ui.theme import apply_theme
from studio_log.ui.timeline.timeline_view import TimelineView
from tests.ui.timeline_lots import NOW, ZONE, nights

LOTS = (200, 4000)
STEPS, FRAMES = 12, 200
WIDTH, HEIGHT = 1400, 900


def lane(number: int) -> Lane:
    """Give a lot of twelve steps around now, a few minutes apart from its neighbour."""
    kinds = list(StepKind)
    first = NOW - timedelta(hours=30) + timedelta(minutes=7 * (number % 200))
    bars = []
    for step in range(STEPS):
        start = first + timedelta(hours=6 * step)
        end = start + timedelta(hours=4 + step % 3)
        state = "done" if end < NOW else "running" if start < NOW else "ahead"
        open_end = (None, None) if state == "done" else (end - timedelta(hours=1), end)
        bars.append(
            Bar(step, kinds[step % len(kinds)], f"Step {step}", start, end, state, *open_end)
        )
    stitches = tuple(Stitch(first + timedelta(hours=3 * n), n < 10) for n in range(24))
    drops = tuple(Drop(bar.end, bar.state == "done", bar.step) for bar in bars[::3])
    return Lane(
        f"26-{number:03d}",
        f"Invented lot {number}",
        tuple(bars),
        stitches,
        drops,
        hands=tuple(bar.start for bar in bars),
    )


Taken = list[tuple[float, float]]
"""Milliseconds on the wall and of the processor, a frame each."""


def timed(act: Callable[[int], None]) -> Taken:
    """Time each of `FRAMES` calls."""
    taken: Taken = []
    for frame in range(FRAMES):
        before = perf_counter(), process_time()
        act(frame)
        after = perf_counter(), process_time()
        taken.append(((after[0] - before[0]) * 1000, (after[1] - before[1]) * 1000))
    return taken


def told(name: str, taken: Taken, base: float) -> None:
    """Print the 95th percentile of one way of moving, in milliseconds and as a ratio.

    The processor's own time beside it says what is ours where others are at work too.
    """
    wall, own = ([one[at] for one in taken] for at in (0, 1))
    p95, mine = (quantiles(times, n=20)[-1] for times in (wall, own))
    words = f"median {median(wall):.2f} ms, p95 {p95:.2f} ms ({mine:.2f} ms of the processor)"
    print(f"{name}: {words}, {p95 / base:.1f} times an empty paint ({base:.3f} ms)")


class Frames:
    """One view, and the ways of moving through it that are timed."""

    def __init__(self, view: TimelineView) -> None:
        self._view = view
        self._across, self._down = view.horizontalScrollBar(), view.verticalScrollBar()
        self._picture = QImage(view.viewport().size(), QImage.Format.Format_RGB32)
        self.acts = {
            "pan": self._pan,
            "jump": self._jump,
            "jump to lots unseen": self._first,
            "zoom": self._zoom,
        }

    def empty(self, _frame: int) -> None:
        """Fill the picture with plain ground."""
        painter = QPainter(self._picture)
        painter.fillRect(self._picture.rect(), 0xFCF9F1)
        painter.end()

    def _paint(self) -> None:
        painter = QPainter(self._picture)
        self._view.paint_on(painter)
        painter.end()

    def _pan(self, number: int) -> None:
        self._across.setValue(self._across.maximum() * number // FRAMES)
        self._down.setValue(min(self._down.maximum(), 9 * number))
        self._paint()

    def _jump(self, number: int) -> None:
        self._across.setValue(self._across.maximum() * number // FRAMES)
        self._down.setValue(self._down.maximum() * ((number * 37) % FRAMES) // FRAMES)
        self._paint()

    def _first(self, number: int) -> None:
        self._view._state.laid.clear()  # as if these lots had never been seen
        self._jump(number)

    def _zoom(self, number: int) -> None:
        self._view.zoom_by(1.05 if number % 80 < 40 else 1 / 1.05, 700)
        self._paint()


def measure(view: TimelineView, lots: int) -> None:
    """Drag, jump and zoom through a sheet of so many lots and time every frame."""
    view.show_lanes([lane(number) for number in range(lots)], nights(), NOW, ZONE)
    view.find_now()
    view.grab()
    frames = Frames(view)
    base = median(wall for wall, _ in timed(frames.empty))
    for name, act in frames.acts.items():
        view.find_now()
        timed(act)  # once round, so that words and small pictures are drawn and kept
        told(f"{lots} lots of {STEPS} steps, {name}", timed(act), base)


def main() -> None:
    """Measure what a studio has, and twenty times as much."""
    app = QApplication([])
    apply_theme(app, "light", family="DejaVu Sans")
    view = TimelineView()
    view.resize(WIDTH, HEIGHT)
    for lots in LOTS:
        measure(view, lots)


if __name__ == "__main__":
    main()
