"""The chosen swatch: its colour large, what it is, how it was made, and its diary."""

from dataclasses import replace
from typing import Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QImageIOHandler, QImageReader, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QLabel,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.swatches import SwatchPage, SwatchShown
from studio_log.ui.kept.act_buttons import ActButtons, ActRow
from studio_log.ui.swatches.tiles import paint_cloth
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, em, emptied
from studio_log.ui.widgets.wrap_button import WrapButton

ACTS: Final[tuple[ActRow, ...]] = (
    ("photo", tr_later("Read the colour from a &photo…"), "primary"),
    ("instrument", tr_later("From an &instrument…"), "plain"),
    ("typed", tr_later("T&yped…"), "quiet"),
    ("grade", tr_later("&Grade…"), "plain"),
    ("light", tr_later("&Begin the light test…"), "plain"),
    ("light_end", tr_later("End the light test"), "plain"),
    ("remark", tr_later("&Remark…"), "quiet"),
    ("picture", tr_later("Keep a pictur&e…"), "quiet"),
    ("change", tr_later("C&hange…"), "quiet"),
    ("near", tr_later("&What is near it"), "plain"),
    ("card", tr_later("Print its car&d…"), "quiet"),
    ("ended", tr_later("Kept no longer"), "quiet"),
    ("kept", tr_later("Kept after all"), "quiet"),
)
MOST_LINES: Final = 200
THUMB: Final = 7
"""Height of a picture, in line heights."""


class ClothPatch(QWidget):
    """Shows the colours of the halves side by side, flat and true."""

    def __init__(self) -> None:
        super().__init__()
        self._halves: tuple[SwatchShown, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMinimumHeight(em(self, 6))

    def show_halves(self, halves: tuple[SwatchShown, ...], words: str) -> None:
        """Show one or two colours; `words` are read aloud."""
        self._halves = halves
        self.setAccessibleName(words)
        self.setToolTip(words)
        self.update()

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        count = max(len(self._halves), 1)
        wide = self.width() // count
        for at, half in enumerate(self._halves):
            box = self.rect().adjusted(at * wide, 0, -(count - 1 - at) * wide, 0)
            paint_cloth(painter, box.adjusted(0, 0, -1, -1), half)
        painter.end()


class SwatchView(QWidget):
    """Shows a `SwatchPage`; an act is wanted by a button, never done here."""

    act_wanted = Signal(str)
    lot_wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.title = Words(size="title", bold=True)
        self.patch = ClothPatch()
        self.under = Words(tone="soft", size="small")
        self.colour = Words(bold=True)
        self.facts = Words()
        self.lot = WrapButton("", kind="quiet", grows=False, left=True)
        self.chain = Words()
        self.diary_head = Words(tr("Diary"), size="large", bold=True)
        self.acts = ActButtons(ACTS, self)
        self.buttons = self.acts.by_slug
        self._lot_code = ""
        self._pictures = FlowLayout(gap=8)
        self._diary = QGridLayout()
        self._lay_out()
        self.lot.clicked.connect(self._want_lot)
        self.acts.wanted.connect(self.act_wanted)

    def show_page(self, page: SwatchPage) -> None:
        """Show this swatch."""
        line = page.line
        self._lot_code = line.lot
        self.title.setText(f"{line.code} {line.name}".strip())
        halves = halves_of(page)
        self.patch.show_halves(halves, line.colour_words)
        self.under.show_words(
            tr("Left the master half, right the test half.") if halves[1:] else ""
        )
        self.colour.setText(line.colour_words)
        beyond = tr("No screen shows this colour: what is seen is only near it.")
        cut = tr("cut {when}", when=line.cut_words)
        facts = (
            beyond if line.beyond else "",
            page.halves,
            ", ".join(filter(None, (cut, page.piece_words, page.step_words))),
            page.age_words,
            page.even_words,
            page.apart_words,
            *page.grades,
            tr("Kept no longer.") if line.ended else "",
        )
        self.facts.setText("\n".join(one[:1].upper() + one[1:] for one in facts if one))
        self.lot.setText(tr("Lot {words}", words=f"{line.lot} {line.lot_name}".strip()))
        self.lot.setAccessibleName(tr("Go to the lot {code}", code=line.lot))
        self.chain.show_words("\n".join(page.chain) or tr("No method was begun by then."))
        self.buttons["ended"].setVisible(not line.ended)
        self.buttons["kept"].setVisible(line.ended)
        runs = page.swatch.light_begun is not None
        self.buttons["light"].setVisible(not runs and page.swatch.test_place is not None)
        self.buttons["light_end"].setVisible(runs)
        self.buttons["near"].setVisible(line.lab is not None)
        self.acts.layout.invalidate()
        self._show_pictures(page)
        self._show_diary(page)

    def told(self) -> list[str]:
        """Give the lines of the diary as they are shown."""
        items = (self._diary.itemAtPosition(row, 2) for row in range(self._diary.rowCount()))
        shown = (item.widget() for item in items if item is not None)
        return [words.text() for words in shown if isinstance(words, Words)]

    def _lay_out(self) -> None:
        card = QFrame()
        card.setProperty("card", "indigo")
        inner = QVBoxLayout(card)
        inner.setContentsMargins(14, 10, 14, 10)
        inner.setSpacing(4)
        for part in (self.colour, self.facts):
            inner.addWidget(part)
        inner.addWidget(self.lot)
        inner.addWidget(self.chain)
        self._diary.setHorizontalSpacing(12)
        self._diary.setVerticalSpacing(6)
        self._diary.setColumnStretch(2, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 2, 12, 8)
        column.setSpacing(10)
        for widget in (self.title, self.patch, self.under, card):
            column.addWidget(widget)
        column.addLayout(self.acts.layout)
        column.addLayout(self._pictures)
        column.addWidget(self.diary_head)
        column.addLayout(self._diary)
        column.addStretch(1)

    def _show_pictures(self, page: SwatchPage) -> None:
        emptied(self._pictures)
        for photo in page.photos:
            thumb = QLabel()
            thumb.setPixmap(small_picture(photo["file"], em(self, THUMB)))
            words = " · ".join(filter(None, (photo["name"], photo["note"], photo["when"])))
            thumb.setToolTip(words)
            thumb.setAccessibleName(words)
            self._pictures.addWidget(thumb)

    def _show_diary(self, page: SwatchPage) -> None:
        emptied(self._diary)
        top = Qt.AlignmentFlag.AlignTop
        for row, one in enumerate(page.history[:MOST_LINES]):
            when = Words(one.when, tone="soft")
            when.setWordWrap(False)
            self._diary.addWidget(when, row, 0, top)
            if one.shown:
                self._diary.addWidget(_dot(one.shown, em(self)), row, 1, top)
            self._diary.addWidget(Words(one.words), row, 2)

    def _want_lot(self) -> None:
        self.lot_wanted.emit(self._lot_code)


def halves_of(page: SwatchPage) -> tuple[SwatchShown, ...]:
    """Give the colours to show beside each other: the swatch's, and its test half's if read."""
    tested = page.swatch.tested
    if tested is None:
        return (page.line,)
    shown = next((one.shown for one in page.history if one.entry == tested.entry), "")
    return page.line, replace(page.line, shown=shown, source=tested.source, beyond=False)


def small_picture(path: str, height: int) -> QPixmap:
    """Give a picture so high, upright; an empty one where it cannot be read."""
    reader = QImageReader(path)
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and size.height() > 0:
        turned = reader.transformation() & QImageIOHandler.Transformation.TransformationRotate90
        share = height / max(size.width() if turned else size.height(), 1)
        reader.setScaledSize(QSize(round(size.width() * share), round(size.height() * share)))
    return QPixmap.fromImage(reader.read())


def _dot(colour: str, side: int) -> QLabel:
    """Give a small square of a colour; the words beside it say which."""
    made = QLabel()
    square = QPixmap(side, side)
    square.fill(colour)
    made.setPixmap(square)
    return made
