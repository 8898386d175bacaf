"""The photos of a lot: small ones in a row, and the chosen one large within the page."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from PySide6.QtCore import QPoint, QRect, QSize, Qt, Signal
from PySide6.QtGui import QIcon, QImage, QKeyEvent, QPainter, QPaintEvent, QPixmap, QShortcut
from PySide6.QtWidgets import QApplication, QSizePolicy, QToolButton, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.ui.lots.photos_thumbs import PictureMaker
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, button, em, emptied

Photo = Mapping[str, Any]
SMALL = 9
"""Line heights of a small picture; a large one has 28."""
LARGE = 28
MISSING = tr_later("The file of this photo is not in the studio's folder any more: {file}")


def caption(photo: Photo) -> str:
    """Say when a photo was and what it shows: "Tue 9 June 14:02 · First soak · a fold"."""
    return " · ".join(str(photo[name]) for name in ("when", "step", "note") if photo.get(name))


def squared(pixmap: QPixmap) -> QPixmap:
    """Give a picture in the middle of a clear square, so that captions stand in one line."""
    side = max(pixmap.width(), pixmap.height())
    square = QPixmap(side, side)
    square.fill(Qt.GlobalColor.transparent)
    painter = QPainter(square)
    drawn = QRect(0, 0, pixmap.width(), pixmap.height())
    drawn.moveCenter(square.rect().center())
    painter.drawPixmap(drawn, pixmap)
    painter.end()
    square.setDevicePixelRatio(pixmap.devicePixelRatio())
    return square


class LargePicture(QWidget):
    """A picture as large as it is or as the page is wide, whichever is less."""

    def __init__(self) -> None:
        super().__init__()
        self._pixmap = QPixmap()
        policy = QSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def pixmap(self) -> QPixmap:
        """Give what is shown."""
        return self._pixmap

    def show_picture(self, pixmap: QPixmap) -> None:
        """Show another; a null one shows nothing."""
        self._pixmap = pixmap
        self.updateGeometry()
        self.update()

    @override
    def hasHeightForWidth(self) -> bool:
        return True

    @override
    def heightForWidth(self, width: int) -> int:
        return self._fitted(width).height()

    @override
    def sizeHint(self) -> QSize:
        return self._pixmap.deviceIndependentSize().toSize()

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawPixmap(QRect(QPoint(0, 0), self._fitted(self.width())), self._pixmap)
        painter.end()

    def _fitted(self, width: int) -> QSize:
        whole = self.sizeHint()
        if whole.width() <= width:
            return whole
        return QSize(width, round(whole.height() * width / whole.width()))


class PhotosView(QWidget):
    """Enter or a click opens a photo large; Escape closes it; Delete takes its entry back."""

    emptied_of_focus = Signal()
    """The last photo went, and it had the keyboard."""
    take_back = Signal(int)

    def __init__(self, maker: PictureMaker) -> None:
        super().__init__()
        self._maker = maker
        self._photos: tuple[Photo, ...] = ()
        self.thumbs: list[QToolButton] = []
        self.at: int | None = None
        """Which photo is large; None where none is."""
        self._row = QWidget()
        self._flow = FlowLayout(self._row, gap=8)
        self.large = LargePicture()
        self.words = Words()
        self.back = button(tr("&All photos"))
        self.before = button("‹", says=tr("The photo before"))
        self.after = button("›", says=tr("The next photo"))
        self.away = button(tr("&Take this photo back"), kind="danger")
        self._tools = QWidget()
        tools = FlowLayout(self._tools, gap=8)
        for one in (self.back, self.before, self.after, self.away):
            tools.addWidget(one)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        for widget in (self._row, self._tools, self.large, self.words):
            column.addWidget(widget)
        self.back.clicked.connect(self.close_large)
        self.before.clicked.connect(self._earlier)
        self.after.clicked.connect(self._later)
        self.away.clicked.connect(self._take_back)
        # Buttons take the arrows for themselves, so these are shortcuts.
        here = Qt.ShortcutContext.WidgetWithChildrenShortcut
        self._arrows = (
            QShortcut(Qt.Key.Key_Left, self, self._earlier, context=here),
            QShortcut(Qt.Key.Key_Right, self, self._later, context=here),
        )
        maker.made.connect(self._made)
        self._show()

    def show_photos(self, photos: Sequence[Photo]) -> None:
        """Show these, the latest last."""
        if tuple(photos) == self._photos:
            return
        place = self._place_of_focus()
        self._photos = tuple(photos)
        self.at = None
        emptied(self._flow)
        self.thumbs = [self._thumb(photo) for photo in self._photos]
        for thumb in self.thumbs:
            self._flow.addWidget(thumb)
        for photo in self._photos:
            self._want(photo, SMALL)
        self._show()
        if place is not None:
            self._give_focus(place)

    def _place_of_focus(self) -> int | None:
        """Give which photo has the keyboard, large or small; None where it is elsewhere."""
        here = self.focusWidget() if self.isAncestorOf(self._in_focus()) else None
        if here is None:
            return None
        small = (at for at, one in enumerate(self.thumbs) if one is here)
        return self.at if self.at is not None else next(small, None)

    def _in_focus(self) -> QWidget:
        return QApplication.focusWidget() or self.window()

    def _give_focus(self, place: int) -> None:
        """Give the keyboard to the photo that has moved up, or away where none is left."""
        if self.thumbs:
            self.thumbs[min(place, len(self.thumbs) - 1)].setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.emptied_of_focus.emit()

    def open(self, at: int) -> None:
        """Show one large."""
        self.at = at % len(self._photos)
        self.large.show_picture(QPixmap())
        self._want(self._photos[self.at], LARGE)
        self._show()
        self.back.setFocus(Qt.FocusReason.OtherFocusReason)

    def close_large(self) -> None:
        """Go back to all of them."""
        at, self.at = self.at, None
        self._show()
        if at is not None and at < len(self.thumbs):
            self.thumbs[at].setFocus(Qt.FocusReason.OtherFocusReason)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key is Qt.Key.Key_Delete:
            self._take_back()
        elif self.at is not None and key is Qt.Key.Key_Escape:
            self.close_large()
        else:
            super().keyPressEvent(event)

    def _thumb(self, photo: Photo) -> QToolButton:
        thumb = QToolButton()
        thumb.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        thumb.setIconSize(QSize(em(self, SMALL), em(self, SMALL)))
        thumb.setText(f"{photo['when']}\n{photo.get('step') or ' '}")
        thumb.setAccessibleName(f"Photo, {caption(photo)}")
        thumb.setToolTip(caption(photo))
        thumb.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        thumb.clicked.connect(self._clicked)
        return thumb

    def _clicked(self) -> None:
        sender = self.sender()
        self.open(next(at for at, one in enumerate(self.thumbs) if one is sender))

    def _want(self, photo: Photo, lines: int) -> None:
        side = round(em(self, lines) * self.devicePixelRatioF())
        key = f"{lines}/{photo['hash']}"
        image = self._maker.want(key, Path(str(photo["file"])), side)
        if image is not None:
            self._made(key, image)

    def _made(self, key: str, image: QImage) -> None:
        lines, _, digest = key.partition("/")
        pixmap = QPixmap.fromImage(image)
        pixmap.setDevicePixelRatio(self.devicePixelRatioF())
        for photo, thumb in zip(self._photos, self.thumbs, strict=True):
            if photo["hash"] != digest:
                continue
            if image.isNull():
                self._lost(photo, thumb)
            elif lines == str(SMALL):
                thumb.setIcon(QIcon(squared(pixmap)))
            elif self.at is not None and self._photos[self.at]["hash"] == digest:
                self.large.show_picture(pixmap)
                self.large.setAccessibleName(caption(photo))

    def _lost(self, photo: Photo, thumb: QToolButton) -> None:
        thumb.setText(tr("the file\nis missing"))
        thumb.setToolTip(tr(MISSING, file=photo["file"]))
        if self.at is not None and self._photos[self.at] is photo:
            self.words.setText(tr(MISSING, file=photo["file"]))

    def _show(self) -> None:
        large = self.at is not None
        self._row.setVisible(not large and bool(self._photos))
        for widget in (self._tools, self.large, self.words):
            widget.setVisible(large)
        for arrow in self._arrows:
            arrow.setEnabled(large)
        self.before.setEnabled(len(self._photos) > 1)
        self.after.setEnabled(len(self._photos) > 1)
        if self.at is not None:
            self.words.setText(caption(self._photos[self.at]))

    def _earlier(self) -> None:
        if self.at is not None:
            self.open(self.at - 1)

    def _later(self) -> None:
        if self.at is not None:
            self.open(self.at + 1)

    def _take_back(self) -> None:
        at = self.at
        if at is None:
            at = next((at for at, one in enumerate(self.thumbs) if one.hasFocus()), None)
        if at is not None:
            self.take_back.emit(int(self._photos[at]["entry"]))
