"""The panel beside a photo: how it is measured, what came out, what is being done."""

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDoubleSpinBox,
    QFormLayout,
    QProgressBar,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr, tr_later
from studio_log.ui.swatches.halves import fill_halves
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, button, em, roomy

TARGET, CARD = "target", "card"
WAYS: Final = (
    (TARGET, tr_later("beside a 24-patch target")),
    (CARD, tr_later("beside a grey or white card")),
)
STAGES: Final = {
    "read": tr_later("Reading the photo…"),
    "seek": tr_later("Looking for the target…"),
    "measure": tr_later("Measuring…"),
}
GREY: Final = 18.0
"""Per cent: the usual grey card (a trade value, from memory)."""
HOW: Final = tr_later(
    "Lay swatch and target flat in one soft light from the side, without flash. Then drag the "
    "target’s corners to its outer corners, dark skin first, and the swatch’s frame onto even "
    "cloth. Space goes to the next handle, arrows move it."
)


class PhotoSide(QWidget):
    """Fields and words; it measures nothing itself."""

    way_chosen = Signal()
    """It is to be measured the other way."""
    stopped = Signal()

    def __init__(self, *, for_swatch: bool) -> None:
        super().__init__()
        self.open_it = button(tr("&Open a photo…"), kind="primary")
        self.way = QComboBox()
        self.half = QComboBox()
        self.reflectance = QDoubleSpinBox()
        self.turn = button(tr("&Turn the target"))
        self.add_card = button(tr("&Add a card"))
        self.spots = QCheckBox(tr("As nine &spots: how even it is"))
        self.keep_photo = QCheckBox(tr("&Keep the photo with the swatch"))
        self.patch = Words()
        self.colour = Words(bold=True)
        self.round = Words()
        self.said = Words(tr(HOW), tone="soft")
        self.even = Words()
        self.warned = Words(tone="ochre_ink")
        self.busy = QProgressBar()
        self.doing = Words(tone="soft", size="small")
        self.stop = button(tr("&Stop"))
        self._form = QFormLayout()
        self._make_fields()
        self._lay_out()
        self.keep_photo.setVisible(for_swatch)
        self.spots.setVisible(for_swatch)
        self._form.setRowVisible(self.half, for_swatch)
        self.way.currentIndexChanged.connect(self.way_chosen)
        self.stop.clicked.connect(self.stopped)

    @property
    def by_target(self) -> bool:
        """Whether it is measured by the target."""
        return bool(self.way.currentData() == TARGET)

    def choose_way(self, way: str) -> None:
        """Choose how it is measured, unheard."""
        self.way.blockSignals(True)
        self.way.setCurrentIndex(self.way.findData(way))
        self.way.blockSignals(False)

    def show_stage(self, stage: str) -> None:
        """Say what is being done, "" for nothing."""
        self.busy.setVisible(bool(stage))
        self.stop.setVisible(bool(stage))
        self.doing.show_words(tr(STAGES[stage]) if stage else "")

    def show_colour(
        self, colour: str, words: str, warnings: tuple[str, ...], more: str = ""
    ) -> None:
        """Show what was measured, `more` beneath it; "" for nothing."""
        ground = colour or "transparent"
        self.patch.setStyleSheet(f"background: {ground}; border: 1px solid palette(mid);")
        self.patch.setAccessibleName(tr("The colour measured: {code}", code=colour))
        self.colour.show_words(words)
        self.round.show_words(more)
        self.warned.show_words("\n".join(f"⚠ {one}" for one in warnings))

    def offer(self, *, there: bool, more_cards: bool) -> None:
        """Offer what fits the way of measuring."""
        self.turn.setVisible(self.by_target)
        self.turn.setEnabled(there)
        self.add_card.setEnabled(there and more_cards)
        self._form.setRowVisible(self.reflectance, not self.by_target)

    def _make_fields(self) -> None:
        for value, words in WAYS:
            self.way.addItem(tr(words), value)
        fill_halves(self.half)
        self.reflectance.setRange(1, 100)
        self.reflectance.setValue(GREY)
        self.reflectance.setSuffix(" %")
        self.reflectance.setDecimals(1)
        roomy(self.reflectance)
        for field in (self.way, self.reflectance):
            calm(field)
        for box in (self.way, self.half):  # long words are cut in the box, not the pane
            box.setSizeAdjustPolicy(
                QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )
            box.setMinimumContentsLength(8)
        self.way.setAccessibleName(tr("How it is measured"))
        self.reflectance.setAccessibleName(tr("What the card reflects"))
        self.patch.setFixedHeight(em(self, 4))
        self.busy.setRange(0, 0)
        self.busy.setTextVisible(False)
        self.busy.setFixedHeight(max(em(self, 0.4), 6))
        self.busy.setAccessibleName(tr("Work on the photo"))

    def _lay_out(self) -> None:
        self._form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        self._form.addRow(tr("&How it is measured"), self.way)
        self._form.addRow(tr("What the card &reflects"), self.reflectance)
        self._form.addRow(tr("Which &cloth"), self.half)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 6, 0)
        column.setSpacing(10)
        column.addWidget(self.open_it)
        column.addLayout(self._form)
        shown: tuple[QWidget, ...] = (
            self.turn, self.add_card, self.patch, self.colour, self.round, self.spots, self.even,
            self.warned, self.said, self.keep_photo,
        )  # fmt: skip
        for widget in shown:
            column.addWidget(widget)
        column.addStretch(1)
        at_work: tuple[QWidget, ...] = (self.doing, self.busy, self.stop)
        for widget in at_work:
            column.addWidget(widget)
            widget.hide()
        self.show_colour("", "", ())
