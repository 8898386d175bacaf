"""Amounts on the screen: what, how much, in the kitchen, and the figure it follows from."""

from collections.abc import Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QDoubleSpinBox, QVBoxLayout, QWidget

from studio_log.domain.amounts import Amount
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, emptied, roomy

SETTLE_MS = 400


class AmountRows(QWidget):
    """One amount a block; where it is the dyer's to change, with a field for its figure."""

    changed = Signal(str, float)
    """Slug, and the new figure, once it has stood still."""

    def __init__(self) -> None:
        super().__init__()
        self._amounts: tuple[Amount, ...] = ()
        self._spins: dict[str, QDoubleSpinBox] = {}
        self._labels: dict[str, tuple[Words, Words]] = {}
        self._touched = ""
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        self._settle = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._settle.timeout.connect(self._settled)

    def spin(self, slug: str) -> QDoubleSpinBox:
        """Give the field of an amount's figure; KeyError where it has none."""
        return self._spins[slug]

    def show_amounts(self, amounts: Sequence[Amount]) -> None:
        """Show these; fields in which somebody types are left alone."""
        if [one.slug for one in amounts] != [one.slug for one in self._amounts]:
            self._build(amounts)
        self._amounts = tuple(amounts)
        for amount in amounts:
            self._update(amount)

    def words(self) -> str:
        """Everything shown, one amount a line."""
        return "\n".join(f"{big.text()} {small.text()}" for big, small in self._labels.values())

    def _build(self, amounts: Sequence[Amount]) -> None:
        emptied(self._column)
        self._spins.clear()
        self._labels.clear()
        for amount in amounts:
            self._column.addWidget(self._new_row(amount))
        widest = max((spin.sizeHint().width() for spin in self._spins.values()), default=0)
        for spin in self._spins.values():
            spin.setMinimumWidth(widest)

    def _new_row(self, amount: Amount) -> QWidget:
        """Give words with the field beside them, under them where it is narrow."""
        big, small = Words(bold=True), Words(tone="soft", size="small")
        self._labels[amount.slug] = (big, small)
        words = QWidget()
        words.setMinimumWidth(round(theme().metrics.line * 9))
        column = QVBoxLayout(words)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(1)
        column.addWidget(big)
        column.addWidget(small)
        column.addStretch()
        row = QWidget()
        line = FlowLayout(row, gap=12)
        line.addWidget(growing(words))
        if amount.editable:
            line.addWidget(self._new_spin(amount))
        return row

    def _update(self, amount: Amount) -> None:
        big, small = self._labels[amount.slug]
        big.setText(f"{amount.shown} {amount.title}")
        kitchen = f"{amount.kitchen} · " if amount.kitchen else ""
        small.setText(f"{kitchen}{amount.how}")
        spin = self._spins.get(amount.slug)
        if spin is not None and not spin.hasFocus() and self._touched != amount.slug:
            before = spin.blockSignals(True)
            spin.setValue(amount.rule_value)
            spin.blockSignals(before)

    def _new_spin(self, amount: Amount) -> QDoubleSpinBox:
        spin = QDoubleSpinBox()
        spin.setDecimals(1 if (amount.rule_value * 10) % 1 == 0 else 2)
        spin.setRange(0.01, 100_000)
        spin.setValue(amount.rule_value)
        spin.setSuffix(f" {amount.rule_unit}")
        spin.setAccessibleName(f"{amount.title}, {amount.rule_unit}")
        roomy(spin)
        calm(spin)
        spin.setProperty("slug", amount.slug)
        spin.valueChanged.connect(self._typed)
        self._spins[amount.slug] = spin
        return spin

    def _typed(self, _value: float) -> None:
        self._touched = str(self.sender().property("slug"))
        self._settle.start()

    def _settled(self) -> None:
        slug, self._touched = self._touched, ""
        if slug in self._spins:
            self.changed.emit(slug, self._spins[slug].value())
