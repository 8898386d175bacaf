"""The form for a new lot: what is typed is said back, and the amounts stand beside it."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QLineEdit,
    QPlainTextEdit,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.journal import Act
from studio_log.domain.methods import Method
from studio_log.domain.number_text import plain
from studio_log.services.commands import Mark, NewLot, Outcome
from studio_log.services.questions import AmountsAnswer, AmountsFor, MethodsFor
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.lots.amount_rows import AmountRows
from studio_log.ui.lots.form_layout import Field, FormParts, lay_out, turn
from studio_log.ui.lots.lot_reading import PiecesRead, read_pieces, read_volume, read_weight
from studio_log.ui.theme.dress import dress_button
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.parts import Words

TYPING_MS: Final = 150
NO_WEIGHT: Final = "The amounts stand here once the weight of the cloth is known."
PIECE_EXAMPLE: Final = "2 x linen runners 180x45cm 185g/m2"
WEIGHED: Final = (("not said", None), ("before scouring", "before"), ("after scouring", "after"))


class LotForm(QDialog):
    """Makes a lot; nothing typed is lost by a refusal, and no box gets in the way."""

    made = Signal(str)
    """Code of the lot made."""

    def __init__(
        self, bridge: Bridge, *, vessel_litres: float = 10.0, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("New lot")
        self.setModal(True)
        self._bridge = bridge
        self._methods: dict[str, Method] = {}
        self._changed: dict[str, float] = {}
        self._pieces = PiecesRead((), "")
        self._busy = False
        self._make_fields(vessel_litres)
        self.message = MessageBar(bridge)
        self.amounts = AmountRows()
        self.amounts_said = Words(NO_WEIGHT, tone="soft")
        self.vessel_said = Words()
        self.summary = Words(tone="soft", size="small")
        self.buttons = QDialogButtonBox()
        self.make = self.buttons.addButton("&Make the lot", QDialogButtonBox.ButtonRole.AcceptRole)
        self.leave = self.buttons.addButton("&Leave it", QDialogButtonBox.ButtonRole.RejectRole)
        dress_button(self.make, "primary")
        self.make.setDefault(True)
        self.halves = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._soon = QTimer(self, singleShot=True, interval=TYPING_MS)
        self._parts = FormParts(
            self,
            self.halves,
            self.fields,
            (self.amounts_said, self.amounts, self.vessel_said, self.summary),
            self.message,
            self.buttons,
        )
        self.amounts.hide()
        self.vessel_said.hide()
        lay_out(self._parts)
        self._connect()
        bridge.ask(MethodsFor(), self.show_methods)

    @property
    def method(self) -> Method | None:
        """The method chosen, None until methods came."""
        return self._methods.get(str(self.method_box.currentData()))

    @property
    def grams(self) -> float | None:
        """Dry weight in grams: as weighed, else worked out from the pieces."""
        return read_weight(self.weight.text()).value or self._pieces.grams

    def show_methods(self, methods: Sequence[Method]) -> None:
        """Offer these methods."""
        self._methods = {method.slug: method for method in methods}
        for method in methods:
            self.method_box.addItem(method.title, method.slug)
        self._method_chosen()

    def read_fields(self) -> None:
        """Say what was understood of everything typed, and ask for the amounts."""
        self._pieces = read_pieces(self.pieces.toPlainText())
        self.fields["pieces"].understand(self._pieces.understood, self._pieces.fault)
        for slug, line, read in (("weight", self.weight, read_weight),
                                 ("vessel", self.vessel, read_volume)):  # fmt: skip
            self.fields[slug].understand("", read(line.text()).fault)
        self.fields["weighed"].setVisible(bool(self.weight.text().strip()))
        self._soon.start()

    def submit(self) -> None:
        """Make the lot where every field was understood; else say which was not."""
        if self._busy or not self._checked():
            return
        method = self.method
        if method is None:
            return
        self._busy = True
        self.make.setEnabled(False)
        self.message.put_away()
        self._bridge.do(self.command(method), self._made, failed=self._refused, asked=self._doubted)

    def command(self, method: Method) -> NewLot:
        """Give the request that the fields make."""
        return NewLot(
            method=method.slug,
            name=self.name.text().strip(),
            pieces=self._pieces.pieces,
            grams=read_weight(self.weight.text()).value,
            weighed=self.weighed.currentData(),
            cure_days=self.cure.currentData() if method.cure is not None else None,
            place=self.place.text().strip(),
            vessel_litres=read_volume(self.vessel.text()).value,
            vessel=self.vessel_name.text().strip(),
            amounts=dict(self._changed),
        )

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        turn(self._parts)

    def _make_fields(self, vessel_litres: float) -> None:
        self.name = QLineEdit()
        self.name.setMaxLength(200)
        self.name.setPlaceholderText("Linen table runners")
        self.method_box = QComboBox()
        self.pieces = QPlainTextEdit()
        self.pieces.setPlaceholderText(PIECE_EXAMPLE)
        self.pieces.setTabChangesFocus(True)
        self.weight = QLineEdit()
        self.weight.setPlaceholderText("off the scale, if weighed: 412 g, 14.5 oz")
        self.weighed = QComboBox()
        for words, value in WEIGHED:
            self.weighed.addItem(words, value)
        self.cure = QComboBox()
        self.vessel = QLineEdit(f"{plain(vessel_litres, 1)} L")
        self.vessel_name = QLineEdit()
        self.vessel_name.setPlaceholderText("blue tub, if lots share it")
        self.place = QLineEdit()
        self.place.setPlaceholderText("shelf, line or room, if you like")
        self.start = MomentLine(
            self._bridge, name="First step started", blank="leave it blank while it has not begun"
        )
        self.start.line.setPlaceholderText("at eight last night, 13:08, -3h")
        for box in (self.method_box, self.weighed, self.cure):
            calm(box)
        for line in (self.weight, self.vessel, self.vessel_name, self.place):
            line.setMaxLength(200)
        self.fields = {
            "name": Field("&Name", self.name),
            "method": Field("Me&thod", self.method_box),
            "pieces": Field("&Pieces, one line each", self.pieces),
            "weight": Field("&Weight of the whole, dry", self.weight),
            "weighed": Field("We&ighed", self.weighed),
            "cure": Field("&Cure", self.cure),
            "vessel": Field("&Bucket", self.vessel),
            "vessel_name": Field("Bucket’s na&me", self.vessel_name),
            "place": Field("P&lace", self.place),
            "start": Field("&First step started", self.start),
        }

    def _connect(self) -> None:
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)
        self._soon.timeout.connect(self._ask_amounts)
        self.method_box.currentIndexChanged.connect(self._method_chosen)
        self.cure.currentIndexChanged.connect(self._cure_chosen)
        self.pieces.textChanged.connect(self.read_fields)
        self.weight.textChanged.connect(self.read_fields)
        self.vessel.textChanged.connect(self.read_fields)
        self.name.textChanged.connect(self._name_typed)
        self.amounts.changed.connect(self._amount_changed)

    def _name_typed(self) -> None:
        self.fields["name"].understand("", "")

    def _method_chosen(self) -> None:
        method = self.method
        self._changed.clear()
        self.summary.show_words(
            f"{method.title}. {' '.join(method.summary.split())}" if method else ""
        )
        self.cure.clear()
        plan = method.cure if method is not None else None
        self.fields["cure"].setVisible(plan is not None)
        if plan is not None:
            for view in plan.views:
                days = "1 day" if view.days == 1 else f"{view.days} days"
                said = view.title if days in view.title else f"{days} — {view.title}"
                self.cure.addItem(said, view.days)
            self.cure.setCurrentIndex(max(self.cure.findData(plan.default_days), 0))
        if method is not None and method.steps:
            self.fields["start"].name(f"&First step: “{method.steps[0].title}” started")
        self.read_fields()

    def _cure_chosen(self) -> None:
        """Say the chosen view in full with its source; the box itself may be too narrow."""
        method, days = self.method, self.cure.currentData()
        views = method.cure.views if method is not None and method.cure is not None else ()
        said = next((f"{one.title} — {one.source}" for one in views if one.days == days), "")
        self.fields["cure"].understand(said, "")

    def _ask_amounts(self) -> None:
        method, grams = self.method, self.grams
        if method is None or grams is None:
            self.amounts.hide()
            self.vessel_said.hide()
            self.amounts_said.show_words(NO_WEIGHT)
            return
        litres = read_volume(self.vessel.text()).value
        question = AmountsFor(method.slug, grams, dict(self._changed), litres)
        self._bridge.ask(question, self._show_amounts, failed=self._amounts_refused)

    def _show_amounts(self, answer: AmountsAnswer) -> None:
        grams = self.grams
        if grams is None:
            return
        self.amounts_said.show_words(f"For {plain(grams, 1)} g of cloth")
        self.amounts.show()
        self.amounts.show_amounts(answer.amounts)
        self.vessel_said.set_tone("danger_ink" if answer.vessel_fits is False else "good_ink")
        self.vessel_said.show_words(answer.vessel_words)

    def _amounts_refused(self, words: str) -> None:
        self.amounts_said.show_words(words)

    def _amount_changed(self, slug: str, value: float) -> None:
        self._changed[slug] = value
        self._ask_amounts()

    def _checked(self) -> bool:
        self.read_fields()
        self.start.read_again()
        name = "" if self.name.text().strip() else "A lot needs a name."
        self.fields["name"].understand("", name)
        wrong = [field for field in self.fields.values() if field.fault]
        if wrong:
            wrong[0].target.setFocus(Qt.FocusReason.OtherFocusReason)
            return False
        if not self.start.ok:
            self.start.line.setFocus(Qt.FocusReason.OtherFocusReason)
            return False
        return True

    def _made(self, outcome: Outcome) -> None:
        method, at = self.method, self.start.at
        if at is not None and method is not None and method.steps:
            self._bridge.do(Mark(outcome.code, method.steps[0].slug, Act.START, at))
        self.made.emit(outcome.code)
        self.accept()

    def _refused(self, words: str) -> None:
        self._free()
        self.message.refuse(words or "That did not work. What you typed is kept; try again.")

    def _doubted(self, doubt: object) -> None:
        self._free()
        self.message.question(doubt)  # type: ignore[arg-type]

    def _free(self) -> None:
        self._busy = False
        self.make.setEnabled(True)
