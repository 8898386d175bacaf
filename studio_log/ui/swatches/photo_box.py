"""Colour from a photo: the photo with its handles, what was measured, and where it is written."""

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QBuffer, QIODevice, QMimeData, QSize, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QGuiApplication, QImage, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import QDialog, QFileDialog, QHBoxLayout, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.present.colour_words import colour_words, round_words
from studio_log.services.commands import Outcome
from studio_log.services.swatch_even import even_sentence, evenness
from studio_log.services.swatches import NoteSwatch, ReadSwatch
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.swatches.photo_canvas import PhotoCanvas
from studio_log.ui.swatches.photo_job import Marks, Opened, PhotoJob, Rect
from studio_log.ui.swatches.photo_side import CARD, TARGET, PhotoSide
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, scrolled

if TYPE_CHECKING:
    from studio_log.science.colour.measure import Measured

SETTLE_MS: Final = 250
KINDS: Final = tr_later("Photos (*.jpg *.jpeg *.png *.tif *.tiff *.webp)")
MOST_CARDS: Final = 4


class PhotoBox(QDialog):
    """Reads a colour from a photo for a swatch, or, without one, to look for what is near."""

    read = Signal(object)
    """The Outcome of what was written down."""
    colour_found = Signal(object)
    """A Lab, where no swatch was given."""

    def __init__(self, bridge: Bridge, code: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        title = tr("Colour from a photo")
        self.setWindowTitle(f"{title} — {code}" if code else title)
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge, self._code = bridge, code
        self.photo: Opened | None = None
        self.found: Measured | None = None
        self.canvas = PhotoCanvas()
        self.job = PhotoJob(self)
        self.side = PhotoSide(for_swatch=bool(code))
        self.message = MessageBar(bridge)
        self.write = button(tr("&Write it down") if code else tr("&Find what is near"),
                            kind="primary")  # fmt: skip
        self.leave = button(tr("&Leave it"))
        self._soon = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._lay_out()
        self._connect()
        self._offer()

    def open_photo(self, path: Path) -> None:
        """Read a photo from a file."""
        self._clear()
        self.job.open(path)

    @Slot(QMimeData)
    def take(self, mime: QMimeData) -> None:
        """Take what was dropped or copied: a file, or a picture itself."""
        files = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
        image = QGuiApplication.clipboard().image() if not files and mime.hasImage() else QImage()
        dropped = mime.imageData()
        if isinstance(dropped, QImage) and not dropped.isNull():
            image = dropped
        if files:
            self.open_photo(files[0])
        elif not image.isNull():
            self._clear()
            self.job.open(None, _png(image), tr("picture.png"))
        else:
            self.message.refuse(tr("That is no photo. Nothing was changed; drop a JPEG or PNG."))

    def marks(self) -> Marks:
        """Give what is marked."""
        rects = self.canvas.rects
        cards = tuple(one for name, one in rects.items() if name.startswith(CARD))
        target = self.canvas.target if self.side.by_target else None
        return Marks(target, rects["swatch"], cards, self.side.reflectance.value() / 100)

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.side.open_it.setFocus(Qt.FocusReason.OtherFocusReason)

    @override
    def done(self, result: int) -> None:
        self._soon.stop()
        self.job.close()
        super().done(result)

    def _ask_file(self) -> None:
        chosen, _ = QFileDialog.getOpenFileName(self, tr("Open a photo"), "", tr(KINDS))
        if chosen:
            self.open_photo(Path(chosen))

    def _clear(self) -> None:
        self.message.put_away()
        self.found = None
        self._offer()

    @Slot(object)
    def _opened(self, photo: Opened) -> None:
        self.photo = photo
        self.canvas.show_photo(photo.shown, photo.picture.size)
        seen = photo.guess.target is not None
        self.side.choose_way(TARGET if seen else CARD)
        self.side.said.setText(
            tr("A target was seen: look whether its points sit on the patches, and correct it.")
            if seen
            else tr("No target was seen. Mark its corners yourself, or measure beside a card.")
        )
        self._mark(afresh=True)

    def _mark(self, *, afresh: bool = False) -> None:
        """Put the marks on the photo that the way of measuring needs."""
        if self.photo is None:
            return
        width, height = self.photo.picture.size
        rects: dict[str, Rect] = {} if afresh else dict(self.canvas.rects)
        rects.setdefault("swatch", self.photo.guess.swatch)
        target = None
        if self.side.by_target:
            middle = (width * 0.15, height * 0.15, width * 0.7, height * 0.45)
            target = self.photo.guess.target or _corners(middle)
        elif not any(name.startswith(CARD) for name in rects):
            rects["card1"] = (width * 0.08, height * 0.08, width * 0.12, height * 0.12)
        self.canvas.mark(target, rects)
        self._offer()
        self._measure()

    def _another_card(self) -> None:
        if self.photo is None:
            return
        width, height = self.photo.picture.size
        rects = dict(self.canvas.rects)
        number = sum(name.startswith(CARD) for name in rects) + 1
        place = (width * (0.08 + 0.2 * (number - 1)), height * 0.82, width * 0.12, height * 0.12)
        rects[f"{CARD}{number}"] = place
        self.canvas.mark(self.canvas.target, rects)
        self._offer()
        self._measure()

    def _measure(self) -> None:
        if self.photo is not None:
            self.found = None
            self._offer()
            self.job.measure(self.photo, self.marks())

    @Slot(object)
    def _measured(self, found: "Measured") -> None:
        self.message.put_away()
        self.found = found
        source = "relative" if found.relative else "photo"
        two_u = found.two_u.ciede2000 if found.two_u is not None else None
        sure = found.two_u
        more = round_words(found.lab, *((sure.chroma, sure.hue) if sure else (None, None)))
        said = colour_words(found.lab, source, two_u)
        self.side.show_colour(found.shown, said, found.warnings, more)
        self._say_evenness()
        self._offer()

    @Slot()
    def _say_evenness(self) -> None:
        """Say how even the nine spots are, where that was asked for."""
        asked = self.found is not None and self.side.spots.isChecked()
        if self.found is None or not asked:
            self.side.even.show_words("")
        elif not self.found.spots.colours:
            self.side.even.show_words(tr("The frame is too small for nine spots: go nearer."))
        else:
            spots = self.found.spots
            even = evenness(spots.colours, noise=spots.noise)
            self.side.even.show_words(even_sentence(even, spots.noise))

    @Slot(str)
    def _failed(self, words: str) -> None:
        self.found = None
        self.side.show_colour("", "", ())
        self.message.refuse(words)
        self._offer()

    def _offer(self) -> None:
        cards = sum(name.startswith(CARD) for name in self.canvas.rects)
        self.write.setEnabled(self.found is not None)
        self.side.offer(there=self.photo is not None, more_cards=cards < MOST_CARDS)

    def _write(self) -> None:
        """Write the colour into the swatch, or hand it to the search."""
        found = self.found
        if found is None:
            return
        if not self._code:
            self.colour_found.emit(found.lab)
            self.accept()
            return
        self.write.setEnabled(False)
        two_u = found.two_u.ciede2000 if found.two_u is not None else None
        spots = found.spots.colours if self.side.spots.isChecked() else ()
        command = ReadSwatch(
            self._code,
            None if spots else found.lab,
            "relative" if found.relative else "photo",
            half=str(self.side.half.currentData()),
            two_u=two_u,
            method=found.method,
            warnings=found.warnings,
            spots=spots,
            noise=found.spots.noise if spots else 0.0,
            note=self.photo.name if self.photo is not None else "",
        )
        self._bridge.do(command, self._written, failed=self._refused, asked=self.message.question)

    def _written(self, outcome: Outcome) -> None:
        self.read.emit(outcome)
        if self.side.keep_photo.isChecked() and self.photo is not None:
            note = NoteSwatch(self._code, content=self.photo.content, name=self.photo.name)
            self._bridge.do(note, self._kept, failed=self._refused)
        else:
            self.accept()

    def _kept(self, _outcome: Outcome) -> None:
        self.accept()

    def _refused(self, words: str) -> None:
        self.message.refuse(words)
        self._offer()

    def _connect(self) -> None:
        self.side.open_it.clicked.connect(self._ask_file)
        self.canvas.dropped.connect(self.take)
        self.canvas.changed.connect(self._soon.start)
        self._soon.timeout.connect(self._measure)
        self.side.way_chosen.connect(partial(self._mark, afresh=False))
        self.side.reflectance.valueChanged.connect(self._soon.start)
        self.side.spots.toggled.connect(self._say_evenness)
        self.side.turn.clicked.connect(self.canvas.turn_target)
        self.side.add_card.clicked.connect(self._another_card)
        self.job.opened.connect(self._opened)
        self.job.measured.connect(self._measured)
        self.job.failed.connect(self._failed)
        self.job.stage.connect(self.side.show_stage)
        self.side.stopped.connect(self.job.stop)
        self.write.clicked.connect(self._write)
        self.leave.clicked.connect(self.reject)
        QShortcut(QKeySequence.StandardKey.Paste, self).activated.connect(self._paste)

    def _paste(self) -> None:
        self.take(QGuiApplication.clipboard().mimeData())

    def _lay_out(self) -> None:
        pane = scrolled(self.side, name=tr("What is measured"))
        pane.setFixedWidth(em(self, 19))
        halves = QHBoxLayout()
        halves.setSpacing(12)
        halves.addWidget(self.canvas, 1)
        halves.addWidget(pane)
        foot = FlowLayout(gap=10)
        for widget in (growing(Words()), self.write, self.leave):
            foot.addWidget(widget)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(10)
        whole.addLayout(halves, 1)
        whole.addWidget(self.message)
        whole.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 70), em(self, 44)).boundedTo(room))


def _corners(rect: Rect) -> tuple[tuple[float, float], ...]:
    left, top, wide, high = rect
    return (left, top), (left + wide, top), (left + wide, top + high), (left, top + high)


def _png(image: QImage) -> bytes:
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.convertToFormat(QImage.Format.Format_RGB888).save(buffer, "PNG")  # type: ignore[call-overload]
    return bytes(buffer.data().data())
