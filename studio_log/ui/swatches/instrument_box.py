"""From an instrument: its file or what was pasted from it, the samples in it, one written down."""

from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import QMimeData, QSize, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QColor, QDragEnterEvent, QDropEvent, QIcon, QPixmap
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QFileDialog,
    QFormLayout,
    QPlainTextEdit,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.depth import depth_of, strength_of
from studio_log.domain.errors import Refusal
from studio_log.domain.instrument_file import LARGEST, read_instrument
from studio_log.domain.instrument_table import Instrument, Sample
from studio_log.domain.number_text import plain
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.colour_words import lab_words
from studio_log.science.colour.shown import shown_as
from studio_log.services.commands import Outcome
from studio_log.services.method_file import small_file
from studio_log.services.swatch_even import even_sentence, evenness
from studio_log.services.swatches import ReadSwatch
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.swatches.halves import fill_halves
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em
from studio_log.ui.widgets.understood import Understood, UnderstoodLine

COLUMNS: Final = (
    tr_later("Sample"), tr_later("Colour"), tr_later("K/S"), tr_later("Light"),
    tr_later("Strength"),
)  # fmt: skip
STRENGTH: Final = len(COLUMNS) - 1
SHOWN: Final = 1_000
"""Samples listed; a file may hold more."""
TYPING_MS: Final = 200
HINT: Final = tr_later(
    "Paste what the instrument gave: L*, a*, b*, or reflectance from 400 to 700 nm by 10, as a "
    "table or as CGATS.17. Or open its file."
)
KINDS: Final = tr_later("Tables (*.csv *.txt *.tsv *.cgats);;All files (*)")


class InstrumentBox(QDialog):
    """Reads what was pasted while it is typed; nothing is taken away by a mistake in it."""

    read = Signal(object)
    """The Outcome of what was written down."""

    def __init__(self, bridge: Bridge, code: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        title = tr("From an instrument")
        self.setWindowTitle(f"{title} — {code}")
        self.setAcceptDrops(True)
        self._bridge, self._code = bridge, code
        self.found: Instrument | None = None
        self._from_file = ""
        self.text = QPlainTextEdit()
        self.open_it = button(tr("&Open a file…"))
        self.tree = QTreeWidget()
        self.half = QComboBox()
        self.standard = QComboBox()
        self._form = QFormLayout()
        self.spots = QCheckBox(tr("The samples are &spots of one cloth: how even it is"))
        self.method: UnderstoodLine[str] = UnderstoodLine(
            Understood, name=tr("Instrument"), hint=tr("its name"), slug="swatch-method"
        )
        self.notes = Words(tr(HINT), tone="soft")
        self.even = Words()
        self.message = MessageBar(bridge)
        self.write = button(tr("&Write it down"), kind="primary")
        self.leave = button(tr("&Leave it"))
        self._soon = QTimer(self, singleShot=True, interval=TYPING_MS)
        self._lay_out()
        self._connect()
        self._show(None)

    @property
    def sample(self) -> Sample | None:
        """The sample chosen."""
        item = self.tree.currentItem()
        if item is None or self.found is None:
            return None
        return self.found.samples[self.tree.indexOfTopLevelItem(item)]

    @property
    def as_spots(self) -> bool:
        """Whether all samples go down together, as spots of one cloth."""
        return self.spots.isChecked() and self.spots.isEnabled()

    def _spots(self) -> dict[str, Any]:
        samples = self.found.samples if self.found is not None else ()
        spectra = tuple(one.reflectance for one in samples)
        return {
            "spots": tuple(one.lab for one in samples),
            "spectra": spectra if all(spectra) else (),
        }

    @Slot()
    def say_evenness(self) -> None:
        """Say how even the samples are, where they are spots."""
        alike = self.found is not None and len({one.white for one in self.found.samples}) == 1
        count = len(self.found.samples) if self.found is not None else 0
        self.spots.setEnabled(alike and count > 1)
        if not self.as_spots:
            self.even.show_words("")
            return
        try:
            self.even.show_words(even_sentence(evenness(**self._spots())))
        except Refusal as refusal:
            self.even.show_words(str(refusal))

    def open_file(self, path: Path) -> None:
        """Read a file."""
        self.message.put_away()
        try:
            data = small_file(path, LARGEST)
            found = read_instrument(data, path.name)
        except Refusal as refusal:
            self._show(None)
            self.message.refuse(str(refusal))
            return
        self.text.blockSignals(True)
        self.text.setPlainText("")
        self.text.blockSignals(False)
        self._from_file = path.name
        self._show(found)

    @Slot()
    def read_text(self) -> None:
        """Read what stands in the field."""
        typed = self.text.toPlainText()
        self._from_file = ""
        self.message.put_away()
        if not typed.strip():
            self._show(None)
            return
        try:
            self._show(read_instrument(typed.encode("utf-8", "replace"), tr("what was pasted")))
        except Refusal as refusal:
            self._show(None)
            self.message.refuse(str(refusal))

    @override
    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    @override
    def dropEvent(self, event: QDropEvent) -> None:
        event.acceptProposedAction()
        self.take(event.mimeData())

    def take(self, mime: QMimeData) -> None:
        """Open the first file of what was dropped."""
        files = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
        if files:
            self.open_file(files[0])

    def _show(self, found: Instrument | None) -> None:
        self.found = found
        self.tree.clear()
        for one in found.samples[:SHOWN] if found else ():
            self.tree.addTopLevelItem(self._item(one))
        if (first := self.tree.topLevelItem(0)) is not None:
            self.tree.setCurrentItem(first)
        for at in range(len(COLUMNS)):
            self.tree.resizeColumnToContents(at)
        self.write.setEnabled(found is not None)
        self._offer_standards()
        self.say_evenness()
        if found is None:
            self.notes.setText(tr(HINT))
            return
        words = counted(len(found.samples), tr_later("{n} sample"), tr_later("{n} samples"))
        said = tr("{count} in {name}.", count=words, name=self._from_file or tr("what was pasted"))
        self.notes.setText(" ".join((said, *found.notes)))

    def _offer_standards(self) -> None:
        """Offer the samples with a depth as the one that strength is told against."""
        samples = self.found.samples[:SHOWN] if self.found is not None else ()
        deep = [(at, one.name) for at, one in enumerate(samples) if depth_of(one) is not None]
        self.standard.blockSignals(True)
        self.standard.clear()
        self.standard.addItem(tr("no standard"), None)
        for at, name in deep:
            self.standard.addItem(name, at)
        self.standard.blockSignals(False)
        self._form.setRowVisible(self.standard, len(deep) > 1)
        self.tell_strength()

    @Slot()
    def tell_strength(self) -> None:
        """Tell the strength of every sample to the standard that is chosen."""
        at = self.standard.currentData()
        self.tree.setColumnHidden(STRENGTH, at is None)
        if at is None or self.found is None:
            return
        standard = self.found.samples[at]
        for row, one in enumerate(self.found.samples[:SHOWN]):
            strong = strength_of(one, standard)
            item = self.tree.topLevelItem(row)
            if item is not None:
                item.setText(STRENGTH, "" if strong is None else f"{plain(strong, 1)} %")
        self.tree.resizeColumnToContents(STRENGTH)

    def _item(self, one: Sample) -> QTreeWidgetItem:
        depth = depth_of(one)
        deep = f"{plain(depth.peak, 2)} ({depth.nm} nm)" if depth is not None else ""
        item = QTreeWidgetItem([one.name, lab_words(one.lab), deep, one.white])
        square = QPixmap(em(self, 2.6), round(em(self, 1.3)))
        square.fill(QColor(shown_as(one.lab)[0]))
        icon = QIcon(square)
        icon.addPixmap(square, QIcon.Mode.Selected)  # else Qt would tint what is chosen
        item.setIcon(1, icon)
        return item

    def _ask_file(self) -> None:
        chosen, _ = QFileDialog.getOpenFileName(self, tr("Open a file"), "", tr(KINDS))
        if chosen:
            self.open_file(Path(chosen))

    def _write(self) -> None:
        one = self.sample
        if one is None:
            return
        self.write.setEnabled(False)
        name = "" if one.name.isdigit() or self.as_spots else one.name
        colours = self._spots() if self.as_spots else {"reflectance": one.reflectance}
        command = ReadSwatch(
            self._code,
            None if self.as_spots else one.lab,
            "instrument",
            half=str(self.half.currentData()),
            white=one.white,
            method=self.method.text(),
            note=", ".join(filter(None, (self._from_file, name))),
            **colours,
        )
        self._bridge.do(command, self._done, failed=self._refused, asked=self.message.question)

    def _done(self, outcome: Outcome) -> None:
        self.method.remember()
        self.read.emit(outcome)
        self.accept()

    def _refused(self, words: str) -> None:
        self.write.setEnabled(True)
        self.message.refuse(words)

    def _connect(self) -> None:
        self.text.textChanged.connect(self._soon.start)
        self._soon.timeout.connect(self.read_text)
        self.open_it.clicked.connect(self._ask_file)
        self.spots.toggled.connect(self.say_evenness)
        self.standard.currentIndexChanged.connect(self.tell_strength)
        self.write.clicked.connect(self._write)
        self.leave.clicked.connect(self.reject)

    def _dress(self) -> None:
        self.text.setAccessibleName(tr("What the instrument gave"))
        self.text.setPlaceholderText("52.1, 31.8, 24.0")
        self.text.setTabChangesFocus(True)
        self.text.setMaximumHeight(em(self, 8))
        self.text.setAcceptDrops(False)  # a file that is dropped is the box's to open
        self.tree.setHeaderLabels([tr(one) for one in COLUMNS])
        self.tree.setAccessibleName(tr("Samples"))
        self.tree.setRootIsDecorated(False)
        self.tree.setUniformRowHeights(True)
        self.tree.setIconSize(QSize(em(self, 2.6), round(em(self, 1.3))))
        fill_halves(self.half)
        self.standard.setAccessibleName(tr("Strength to"))
        calm(self.standard)

    def _lay_out(self) -> None:
        self._dress()
        form = self._form
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        form.addRow(tr("S&trength to"), self.standard)
        form.addRow(tr("Which &cloth"), self.half)
        form.addRow(tr("I&nstrument"), self.method)
        foot = FlowLayout(gap=10)
        for widget in (self.open_it, growing(Words()), self.write, self.leave):
            foot.addWidget(widget)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(10)
        whole.addWidget(self.text)
        whole.addWidget(self.notes)
        whole.addWidget(self.tree, 1)
        whole.addWidget(self.spots)
        whole.addWidget(self.even)
        whole.addLayout(form)
        whole.addWidget(self.message)
        whole.addLayout(foot)
        self.text.setFocus(Qt.FocusReason.OtherFocusReason)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 46), em(self, 38)).boundedTo(room))
