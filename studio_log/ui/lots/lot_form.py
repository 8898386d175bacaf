"""The form for a new lot: what is typed is said back, and the amounts stand beside it."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QDialog, QWidget
from typing_extensions import override

from studio_log.domain.journal import Act
from studio_log.domain.methods import Method
from studio_log.domain.number_text import plain
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Mark, NewLot, Outcome
from studio_log.services.questions import AmountsAnswer, AmountsFor, MethodsFor
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.lots.amount_rows import AmountRows
from studio_log.ui.lots.form_layout import FormParts, lay_out, turn
from studio_log.ui.lots.lot_fields import LotFields
from studio_log.ui.lots.method_heading import MethodHeading
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.parts import Words
from studio_log.ui.widgets.readers import weight

TYPING_MS: Final = 150
NO_WEIGHT: Final = tr_later("The amounts stand here once the weight of the cloth is known.")
FAILED: Final = tr_later("That did not work. What you typed is kept; try again.")


class LotForm(QDialog):
    """Makes a lot; nothing typed is lost by a refusal, and no box gets in the way."""

    made = Signal(str)
    """Code of the lot made."""
    method_wanted = Signal(str)
    """Short name of the method whose page is to be read beside the form."""

    def __init__(
        self,
        bridge: Bridge,
        *,
        vessel_litres: float = 10.0,
        parent: QWidget | None = None,
        method: str = "",
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("New lot"))
        self.setModal(True)
        self._bridge = bridge
        self._methods: dict[str, Method] = {}
        self._changed: dict[str, float] = {}
        self._busy = False
        self._wanted = method
        self._take_over(LotFields(self, bridge, vessel_litres))
        self.message = MessageBar(bridge)
        self.amounts = AmountRows()
        self.amounts_said = Words(tr(NO_WEIGHT), tone="soft")
        self.vessel_said = Words()
        self.summary = MethodHeading("small")
        self.summary.method_wanted.connect(self.method_wanted)
        self.buttons = Answers(tr("&Make the lot"))
        self.make, self.leave = self.buttons.do, self.buttons.leave
        self.halves = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._soon = QTimer(self, singleShot=True, interval=TYPING_MS)
        self._parts = FormParts(
            self,
            self.halves,
            self.fields,
            (self.amounts_said, self.amounts, self.vessel_said, self.summary),
            self.message,
            self.buttons,
            (self.typed.left, self.typed.afresh),
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
        return self.typed.grams

    def show_methods(self, methods: Sequence[Method]) -> None:
        """Offer these methods, and put back what was typed before."""
        self._methods = {method.slug: method for method in methods}
        for method in methods:
            self.method_box.addItem(method.title, method.slug)
        self._method_chosen()
        self.typed.bring_back()
        if self._wanted in self._methods:
            self.method_box.setCurrentIndex(self.method_box.findData(self._wanted))
        self.name.setFocus(Qt.FocusReason.OtherFocusReason)

    def take_method(self, slug: str) -> None:
        """Choose a method; one that is not offered leaves the choice as it is."""
        at = self.method_box.findData(slug)
        if at >= 0:
            self.method_box.setCurrentIndex(at)

    def read_fields(self) -> None:
        """Say what was understood of everything typed, and ask for the amounts."""
        self.typed.say_what_is_understood()
        self._soon.start()

    def submit(self) -> None:
        """Make the lot where every field was understood; else say which was not."""
        method = self.method
        if self._busy or not self.typed.checked() or method is None:
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
            pieces=self.typed.read.pieces,
            grams=weight(self.weight.text()).value,
            weighed=self.weighed.currentData(),
            cure_days=self.cure.currentData() if method.cure is not None else None,
            place=self.place.text().strip(),
            vessel_litres=self.typed.litres,
            vessel=self.vessel_name.text().strip(),
            amounts=dict(self._changed),
        )

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        turn(self._parts)

    def _take_over(self, typed: LotFields) -> None:
        self.typed, self.fields = typed, typed.by_name
        self.name, self.pieces, self.place = typed.name, typed.pieces, typed.place
        self.method_box, self.weighed, self.cure = typed.method_box, typed.weighed, typed.cure
        self.weight, self.vessel, self.start = typed.weight, typed.vessel, typed.start
        self.vessel_name = typed.vessel_name

    def _connect(self) -> None:
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)
        self.typed.afresh.clicked.connect(self.typed.start_afresh)
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
        said = f"{method.title}. {' '.join(method.summary.split())}" if method else ""
        named = [{"slug": method.slug, "title": method.title}] if method else []
        self.summary.show_heading(said, named)
        self.typed.offer_cure(method)
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
            self.amounts_said.show_words(tr(NO_WEIGHT))
            return
        question = AmountsFor(method.slug, grams, dict(self._changed), self.typed.litres)
        self._bridge.ask(question, self._show_amounts, failed=self._amounts_refused)

    def _show_amounts(self, answer: AmountsAnswer) -> None:
        grams = self.grams
        if grams is None:
            return
        self.amounts_said.show_words(tr("For {grams} g of cloth", grams=plain(grams, 1)))
        self.amounts.show()
        self.amounts.show_amounts(answer.amounts)
        self.vessel_said.set_tone("danger_ink" if answer.vessel_fits is False else "good_ink")
        self.vessel_said.show_words(answer.vessel_words)

    def _amounts_refused(self, words: str) -> None:
        self.amounts_said.show_words(words)

    def _amount_changed(self, slug: str, value: float) -> None:
        self._changed[slug] = value
        self._ask_amounts()

    def _made(self, outcome: Outcome) -> None:
        method, at = self.method, self.start.at
        if at is not None and method is not None and method.steps:
            self._bridge.do(Mark(outcome.code, method.steps[0].slug, Act.START, at))
        self.typed.taken()
        self.made.emit(outcome.code)
        self.accept()

    def _refused(self, words: str) -> None:
        self._free()
        self.message.refuse(words or tr(FAILED))

    def _doubted(self, doubt: object) -> None:
        self._free()
        self.message.question(doubt)  # type: ignore[arg-type]

    def _free(self) -> None:
        self._busy = False
        self.make.setEnabled(True)
