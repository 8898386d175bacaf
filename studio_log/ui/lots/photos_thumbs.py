"""Pictures made small, or as large as the page, off the window's thread; kept while it is open."""

import threading
from collections import OrderedDict, deque
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QByteArray, QObject, QSize, Qt, Signal
from PySide6.QtGui import QImage, QImageReader

MOST_KEPT: Final = 120
MOST_MEGABYTES: Final = 512
"""Room for unpacking one picture of 100 million points."""


def read_picture(source: Path | bytes, side: int) -> QImage:
    """Give a picture upright, at most `side` pixels wide and high; a null one if it is broken."""
    QImageReader.setAllocationLimit(MOST_MEGABYTES)
    buffer = QBuffer()
    if isinstance(source, bytes):
        buffer.setData(QByteArray(source))
        reader = QImageReader(buffer)
    else:
        reader = QImageReader(str(source))
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid():
        reader.setScaledSize(size.scaled(QSize(side, side), Qt.AspectRatioMode.KeepAspectRatio)
                             if max(size.width(), size.height()) > side else size)  # fmt: skip
    return reader.read()


class PictureMaker(QObject):
    """One thread while there is something to make, none else."""

    made = Signal(str, QImage)
    """The key asked with, and the picture; null where it cannot be read."""
    _ready = Signal(str, int, QImage)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._lock = threading.Lock()
        self._waiting: deque[tuple[str, Path | bytes, int]] = deque()
        self._busy = False
        self._kept: OrderedDict[tuple[str, int], QImage] = OrderedDict()
        self._ready.connect(self._came, Qt.ConnectionType.QueuedConnection)

    def want(self, key: str, source: Path | bytes, side: int) -> QImage | None:
        """Give the picture where it was made before; else it comes by `made`."""
        kept = self._kept.get((key, side))
        if kept is not None:
            self._kept.move_to_end((key, side))
            return kept
        with self._lock:
            self._waiting.append((key, source, side))
            if self._busy:
                return None
            self._busy = True
        threading.Thread(target=self._make, name="pictures", daemon=True).start()
        return None

    def _make(self) -> None:
        while True:
            with self._lock:
                if not self._waiting:
                    self._busy = False
                    return
                key, source, side = self._waiting.popleft()
            image = read_picture(source, side)
            try:
                self._ready.emit(key, side, image)
            except RuntimeError:  # the page was closed meanwhile
                return

    def _came(self, key: str, side: int, image: QImage) -> None:
        if not image.isNull():
            self._kept[(key, side)] = image
            while len(self._kept) > MOST_KEPT:
                self._kept.popitem(last=False)
        self.made.emit(key, image)
