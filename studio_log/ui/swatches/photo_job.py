"""Reading and measuring a photo off the window's thread, one thing after the other."""

import contextlib
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtGui import QImage

from studio_log.domain.errors import Refusal
from studio_log.services.method_file import small_file

if TYPE_CHECKING:
    from studio_log.science.colour.guess import Guess
    from studio_log.science.colour.measure import Measured
    from studio_log.science.colour.picture import Picture

LARGEST: Final = 100_000_000
"""Bytes of a photo."""
SHOWN: Final = 1800
"""Longer side of the copy that is looked at, in pixels."""

Corners = tuple[tuple[float, float], ...]
Rect = tuple[float, float, float, float]


@dataclass(frozen=True)
class Opened:
    """A photo that was read: itself, a copy to look at, and where target and swatch may lie."""

    name: str
    content: bytes
    picture: "Picture"
    shown: QImage
    guess: "Guess"


@dataclass(frozen=True)
class Marks:
    """What a person marked, in pixels of the photo: `target` None measures by the first card."""

    target: Corners | None
    swatch: Rect
    cards: tuple[Rect, ...] = ()
    reflectance: float = 0.18


class PhotoJob(QObject):
    """Does what it is handed in a thread of its own; what is overtaken is dropped."""

    opened = Signal(object)
    """An Opened."""
    measured = Signal(object)
    """A Measured."""
    failed = Signal(str)
    stage = Signal(str)
    """What is being done: "read", "seek", "measure"; "" when nothing is."""

    _home = Signal(int, str, object)
    _doing = Signal(int, str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pool = ThreadPoolExecutor(max_workers=1, thread_name_prefix="photo")
        self._turn = 0
        self._closed = False
        queued = Qt.ConnectionType.QueuedConnection
        self._home.connect(self._deliver, queued)
        self._doing.connect(self._tell, queued)

    def open(self, path: Path | None, content: bytes = b"", name: str = "") -> None:
        """Read a photo from a file or from what was dropped; `opened` follows, or `failed`."""
        self._begin("opened", _open, path, content, name)

    def measure(self, opened: Opened, marks: Marks) -> None:
        """Measure by what was marked; `measured` follows, or `failed`."""
        self._begin("measured", _measure, opened, marks)

    def stop(self) -> None:
        """Let go of what is under way; its outcome is not heard of."""
        self._turn += 1
        self.stage.emit("")

    def close(self) -> None:
        """End the thread once it has done what it is at."""
        self._closed = True
        self._turn += 1
        self._pool.shutdown(wait=False, cancel_futures=True)

    def _begin(self, what: str, task: Callable[..., Any], *args: Any) -> None:
        if self._closed:
            return
        self._turn += 1
        turn = self._turn
        self.stage.emit("read" if what == "opened" else "measure")

        def say(stage: str) -> None:
            self._doing.emit(turn, stage)

        def done(future: "Future[Any]") -> None:
            with contextlib.suppress(RuntimeError):  # the window has gone meanwhile
                error = future.exception() if not future.cancelled() else None
                if not self._closed and not future.cancelled():
                    self._home.emit(turn, what, error or future.result())

        self._pool.submit(task, say, *args).add_done_callback(done)

    @Slot(int, str)
    def _tell(self, turn: int, stage: str) -> None:
        if turn == self._turn:
            self.stage.emit(stage)

    @Slot(int, str, object)
    def _deliver(self, turn: int, what: str, found: object) -> None:
        if turn != self._turn or self._closed:
            return
        self.stage.emit("")
        if isinstance(found, BaseException):
            self.failed.emit(str(found) or type(found).__name__)
        elif what == "opened":
            self.opened.emit(found)
        else:
            self.measured.emit(found)


def _open(say: Callable[[str], None], path: Path | None, content: bytes, name: str) -> Opened:
    from studio_log.science.colour.guess import guess  # noqa: PLC0415 - brings numpy and Pillow
    from studio_log.science.colour.picture import open_picture  # noqa: PLC0415

    data = small_file(path, LARGEST) if path is not None else content
    called = name or (path.name if path is not None else "photo")
    picture = open_picture(data, called)
    say("seek")
    return Opened(called, data, picture, _shown(picture), guess(picture))


def _shown(picture: "Picture") -> QImage:
    copy = picture.image.convert("RGB")
    copy.thumbnail((SHOWN, SHOWN))
    data = copy.tobytes()
    image = QImage(data, copy.width, copy.height, 3 * copy.width, QImage.Format.Format_RGB888)
    return image.copy()  # Qt's own: the bytes are Python's


def _measure(_say: Callable[[str], None], opened: Opened, marks: Marks) -> "Measured":
    from studio_log.science.colour.measure import (  # noqa: PLC0415 - brings numpy and Pillow
        measure_with_card,
        measure_with_target,
    )

    if marks.target is not None:
        first, second, third, fourth = marks.target
        corners = (first, second, third, fourth)
        return measure_with_target(opened.picture, corners, marks.swatch, marks.cards)
    if not marks.cards:
        raise Refusal("Mark a card first. Nothing was measured.")
    return measure_with_card(opened.picture, marks.swatch, marks.cards, marks.reflectance)
