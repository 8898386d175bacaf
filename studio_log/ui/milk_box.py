"""The box that records a milk: for which lots, how much, how strong, kept where."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QFormLayout,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.number_text import plain
from studio_log.language.words import tr
from studio_log.services.commands import NewMilk, Outcome
from studio_log.services.questions import MilkOffer
from studio_log.ui.bridge import Bridge
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.fitting_area import FittingArea
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.parts import Words, em, scrolled
from studio_log.ui.widgets.readers import volume, weight
from studio_log.ui.widgets.understood import UnderstoodLine

MOST_LOTS: Final = 8
"""So many boxes are shown at once; more of them scroll."""


class MilkBox(QDialog):
    """Proposes what the method counts on; several lots may take one milk."""

    def __init__(self, bridge: Bridge, offer: MilkOffer, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Record the milk"))
        self._bridge = bridge
        self._offer = offer
        self._typed = False
        self.boxes: dict[str, QCheckBox] = {}
        self.beans = UnderstoodLine(
            weight, name=tr("Dry beans"), hint="180 g, 6.3 oz", slug="beans"
        )
        self.litres = UnderstoodLine(volume, name=tr("Milk"), hint="1.8 L, 7.6 cups", slug="milk")
        self.strength = Words(tone="soft", size="small")
        self.kept = QComboBox()
        self.kept.addItem(tr("cold: good for a further coat for 48 h"), userData=True)
        self.kept.addItem(tr("at room heat: good for 4 h"), userData=False)
        self.made = MomentLine(bridge, name=tr("Made at"), blank=tr("now"))
        self.fault = Words(tone="danger_ink")
        self.fault.hide()
        self.buttons = Answers(tr("&Record it"))
        self.take = self.buttons.do
        self._lay_out()
        self._propose()
        for line in (self.beans, self.litres):
            line.line.textEdited.connect(self._note_typed)
            line.changed.connect(self._say_strength)
        self._say_strength()
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)

    def chosen(self) -> tuple[str, ...]:
        """Give the codes of the lots that take this milk."""
        return tuple(code for code, box in self.boxes.items() if box.isChecked())

    def submit(self) -> None:
        """Record it; a figure that is not understood is said, and everything typed stays."""
        lines = (self.beans, self.litres, self.made)
        for line in lines:
            line.read_again()
        wrong = next((line.line for line in lines if not line.ok), None)
        if wrong is not None:
            wrong.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        command = NewMilk(
            lots=self.chosen(),
            beans_grams=self.beans.value,
            litres=self.litres.value,
            cold=bool(self.kept.currentData()),
            made_at=self.made.at,
        )
        self._bridge.do(command, self._recorded, failed=self.fault.show_words)

    def _recorded(self, _outcome: Outcome) -> None:
        for line in (self.beans, self.litres, self.made):
            line.remember()
        self.accept()

    def _note_typed(self) -> None:
        self._typed = True

    def _say_strength(self) -> None:
        """Say how strong the milk is by beans and litres; it is what the coats go by."""
        beans, litres = self.beans.value, self.litres.value
        words = ""
        if beans and litres:
            words = tr("That makes {grams} g of dry beans a litre.", grams=plain(beans / litres, 0))
        self.strength.show_words(words)

    def _propose(self) -> None:
        """Add the beans of the lots chosen, unless the dyer has typed figures."""
        if self._typed:
            return
        taken = set(self.chosen())
        grams = sum(beans for code, _, beans, _ in self._offer.lots if code in taken)
        self.beans.setText(f"{plain(round(grams), 0)} g" if grams else "")
        litres = grams / self._offer.strength
        self.litres.setText(f"{plain(litres, 2)} L" if grams else "")

    def _lay_out(self) -> None:
        self.setMinimumWidth(em(self, 26))
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(20, 18, 20, 0)
        column.setSpacing(10)
        column.addWidget(Words(tr("Record the milk"), size="large", bold=True))
        column.addWidget(
            Words(tr("Each coat then names its milk, and its life is watched."), tone="soft")
        )
        column.addWidget(self._lots())
        form = QFormLayout()
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        for words, field in (
            (tr("&Dry beans"), self.beans),
            (tr("&Milk"), self.litres),
            (tr("&Kept"), self.kept),
            (tr("Made &at"), self.made),
        ):
            form.addRow(words, field)
        column.addLayout(form)
        column.addWidget(self.strength)
        column.addStretch()
        foot = QVBoxLayout()
        foot.setContentsMargins(20, 10, 20, 16)
        foot.addWidget(self.fault)
        foot.addWidget(self.buttons)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(FittingArea(body, name=tr("Record the milk")), 1)
        whole.addLayout(foot)

    def _lots(self) -> QWidget:
        """Give a box to tick for each lot; many of them scroll, so that the buttons stay seen."""
        lots = QWidget()
        column = QVBoxLayout(lots)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        for code, name, _, proposed in self._offer.lots:
            box = QCheckBox(f"{code} {name}"[:80])
            box.setChecked(proposed)
            box.toggled.connect(self._propose)
            self.boxes[code] = box
            column.addWidget(box)
        return scrolled(lots, name=tr("Lots")) if len(self.boxes) > MOST_LOTS else lots
