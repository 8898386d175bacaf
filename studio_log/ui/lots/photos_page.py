"""The tab of photos: add one by file, drop or paste; look at those that are kept."""

from collections import deque
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QMimeData, Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.pictures import AddPhoto, Picture, PictureFor
from studio_log.services.questions import LotSheet
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.lots.photos_offer import Incoming, PhotoOffer
from studio_log.ui.lots.photos_thumbs import PictureMaker
from studio_log.ui.lots.photos_view import PhotosView
from studio_log.ui.lots.step_list import current
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button

FILES: Final = tr_later("Pictures (*.jpg *.jpeg *.png *.webp);;All files (*)")
HINT: Final = tr_later("or drop it anywhere on this page, or paste it")
NONE: Final = tr_later("No photos yet. They are kept beside the log, unchanged.")
MOST_AT_ONCE: Final = 40
OFFERED: Final = 220
"""Pixels of the picture in the offer."""


def carries_pictures(mime: QMimeData) -> bool:
    """Say whether a drag or the clipboard may hold pictures."""
    return mime.hasImage() or any(url.isLocalFile() for url in mime.urls())


class PhotosPage(QWidget):
    """Pictures are offered one after the other; nothing is kept before it is said so."""

    take_back = Signal(int)
    offered = Signal(QWidget)
    """The lowest part of an offer that should be in sight."""

    def __init__(self, bridge: Bridge) -> None:
        super().__init__()
        self._bridge = bridge
        self._sheet: LotSheet | None = None
        self._waiting: deque[Incoming] = deque()
        self._open: Incoming | None = None
        self._faults: list[str] = []
        self._offers = 0
        self.choose_files: Callable[[], Sequence[str]] = self._by_dialog
        self.add = button(tr("Add a &photo…"))
        self.hint = Words(tr(HINT), tone="soft", size="small")
        self.empty = Words(tr(NONE), tone="soft")
        self.maker = PictureMaker(self)
        self.offer = PhotoOffer()
        self.said = MessageBar(bridge)
        self.view = PhotosView(self.maker)
        line = FlowLayout(gap=10)
        line.addWidget(self.add)
        line.addWidget(growing(self.hint))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(10)
        column.addLayout(line)
        for widget in (self.offer, self.said, self.empty, self.view):
            column.addWidget(widget)
        column.addStretch()
        self.said.put_away()
        self._connect()

    def show_sheet(self, sheet: LotSheet) -> int:
        """Show a lot's photos; gives how many there are."""
        self._sheet = sheet
        told = sheet.data.get("photos")
        photos = list(told) if isinstance(told, list) else []
        self.view.show_photos(photos)
        self.empty.setVisible(not photos)
        return len(photos)

    def _connect(self) -> None:
        self.add.clicked.connect(self._choose)
        self.offer.keep.connect(self._keep)
        self.offer.leave.connect(self._done)
        self.view.take_back.connect(self.take_back)
        self.view.emptied_of_focus.connect(self.add.setFocus)
        self.maker.made.connect(self._made)

    def take(self, mime: QMimeData) -> bool:
        """Take what was dropped or pasted; False where no picture can be in it."""
        paths = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
        if paths:
            self.take_files(paths)
            return True
        image = mime.imageData() if mime.hasImage() else None
        if not isinstance(image, QImage) or image.isNull() or self._sheet is None:
            return False
        buffer = QBuffer()
        image.save(buffer, "PNG")  # type: ignore[call-overload]
        content = bytes(buffer.data().data())
        self._enqueue([Incoming(self._sheet.code, content=content, name="pasted picture.png")])
        return True

    def take_files(self, paths: Sequence[Path]) -> None:
        """Offer these files one after the other."""
        if self._sheet is None:
            return
        if len(paths) > MOST_AT_ONCE:
            self.said.refuse(
                tr("Up to {count} photos can be added at once. None was taken.",
                   count=MOST_AT_ONCE)
            )  # fmt: skip
            return
        self._enqueue([Incoming(self._sheet.code, path) for path in paths])

    def _enqueue(self, coming: Sequence[Incoming]) -> None:
        self._faults.clear()
        self.said.put_away()
        self._waiting.extend(coming)
        if self._open is None:
            self._next()

    def _next(self) -> None:
        self._open = self._waiting.popleft() if self._waiting else None
        self.offer.hide()
        if self._open is not None:
            coming = self._open
            question = PictureFor(coming.path, coming.content, coming.name)
            self._bridge.ask(question, self._looked_over, failed=self._refused)

    def _looked_over(self, picture: Picture) -> None:
        coming, sheet = self._open, self._sheet
        if coming is None or sheet is None:
            return
        same = sheet.code == coming.code
        self.offer.offer(
            coming, picture, sheet.steps if same else (), current(sheet.steps) if same else None
        )
        self.offered.emit(self.offer.keep_button)
        self._offers += 1
        key = f"offer/{self._offers}"
        self.maker.want(key, coming.path or coming.content, OFFERED)

    def _refused(self, words: str) -> None:
        self._faults.append(words)
        self.said.refuse("\n".join(self._faults))
        self._next()

    def _keep(self, command: AddPhoto) -> None:
        self._bridge.do(command, self._kept, failed=self.said.refuse, asked=self.said.question)

    def _kept(self, _outcome: Outcome) -> None:
        self._done()

    def _done(self) -> None:
        self._next()

    def _made(self, key: str, image: QImage) -> None:
        if key == f"offer/{self._offers}" and not image.isNull():
            self.offer.show_look(image)

    def _choose(self) -> None:
        paths = self.choose_files()
        if paths:
            self.take_files([Path(path) for path in paths])

    def _by_dialog(self) -> Sequence[str]:
        return QFileDialog.getOpenFileNames(self, tr("Photos of the lot"), "", tr(FILES))[0]
