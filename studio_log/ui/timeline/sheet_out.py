"""The sheet taken elsewhere: onto the clipboard, into a PNG file, to a printer."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtWidgets import QFileDialog, QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.services.whole_file import write_whole
from studio_log.ui.theme import theme
from studio_log.ui.timeline.paper import picture_of
from studio_log.ui.timeline.timeline_view import TimelineView

NOTHING = tr_later("No lots are in work, so there is no sheet. Nothing was made.")
COPIED = tr_later("The steps are copied as a picture. Paste them where you need them.")
TOO_LARGE = tr_later(
    "There is too little memory for a picture of this sheet. Nothing was made. "
    "Choose a smaller size of text, or print it."
)


def title_of(studio: str) -> str:
    """Name the sheet after the studio."""
    name = tr("Steps over time")
    return f"{studio} — {name}" if studio else name


def copy_picture(view: TimelineView, studio: str) -> str:
    """Put the sheet onto the clipboard; gives what to say, or a Refusal says why not."""
    QGuiApplication.clipboard().setImage(_picture(view, studio))
    return tr(COPIED)


def save_picture(parent: QWidget, view: TimelineView, studio: str) -> str:
    """Ask where to and write a PNG, wholly or not at all; "" where the person left it."""
    picture = _picture(view, studio)
    chosen, _ = QFileDialog.getSaveFileName(
        parent, tr("Save the steps as a picture"), tr("steps.png"), tr("Pictures (*.png)")
    )
    if not chosen:
        return ""
    path = Path(chosen) if Path(chosen).suffix else Path(f"{chosen}.png")
    write_whole(path, png_bytes(picture))
    return tr("Saved as {path}.", path=path)


def print_sheet(
    parent: QWidget, view: TimelineView, studio: str, said: Callable[[str], None]
) -> None:
    """Open the system's print dialog; `said` is told how it went. Refusal where nothing can be."""
    if view.is_empty:
        raise Refusal(tr(NOTHING))
    from studio_log.ui.timeline.printing import print_stretch  # noqa: PLC0415 - brings a lot in

    print_stretch(parent, view.stretch(title_of(studio)), said)


def png_bytes(picture: QImage) -> bytes:
    """Give a picture as a PNG file's bytes."""
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    if not picture.save(buffer, "PNG"):  # type: ignore[call-overload]
        raise Refusal(tr(TOO_LARGE))
    return bytes(buffer.data().data())


def _picture(view: TimelineView, studio: str) -> QImage:
    if view.is_empty:
        raise Refusal(tr(NOTHING))
    width, ratio = view.viewport().width(), view.devicePixelRatioF()
    picture = picture_of(view.stretch(title_of(studio)), theme(), width, ratio)
    if picture.isNull():
        raise Refusal(tr(TOO_LARGE))
    return picture
