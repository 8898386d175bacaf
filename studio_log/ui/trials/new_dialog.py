"""A new trial: what it needs and what it can resolve stands beside it while it is typed."""

from datetime import date
from typing import Any, Final

from PySide6.QtCore import Qt, QTimer, Signal, Slot
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.number_text import plain
from studio_log.domain.trial_design import DEFAULT_AGES, MOST_REPLICATES
from studio_log.domain.trials import MEASURES
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.trials import NewTrial, TrialNeeds, TrialNeedsFor, TrialPlan
from studio_log.ui.bridge import Bridge, Doubt
from studio_log.ui.errors import MessageBar
from studio_log.ui.theme.dress import dress_button
from studio_log.ui.trials.readers import ages, day_reader, named, words
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, em, roomy, scrolled
from studio_log.ui.widgets.understood import UnderstoodLine

TYPING_MS: Final = 250
WAYS: Final = (
    ("forwards", tr_later("forwards: each age dyed on its own day")),
    ("backwards", tr_later("backwards: all ages meet one bath on one day")),
)
BATCHES: Final = "1, 2, 3"
REPLICATES: Final = 2
LEAD_D: Final = 3


class NewTrialDialog(QDialog):
    """Asks for a trial and plans it; nothing typed is lost by a refusal."""

    done_with = Signal(object)
    """The Outcome of what was done."""

    def __init__(self, bridge: Bridge, today: date, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self.setWindowTitle(tr("New trial"))
        self.question: UnderstoodLine[str] = UnderstoodLine(
            words, name=tr("Question"), hint=tr("Does a long cure deepen madder?")
        )
        self.ages: UnderstoodLine[tuple[float, ...]] = UnderstoodLine(ages, name=tr("Cure ages"))
        self.others: UnderstoodLine[tuple[str, ...]] = UnderstoodLine(
            named, name=tr("Other arms"), hint=tr("no soy, alum only")
        )
        self.blocks: UnderstoodLine[tuple[str, ...]] = UnderstoodLine(named, name=tr("Batches"))
        self.each = _figure(1, MOST_REPLICATES, REPLICATES, tr("Pieces of each arm and batch"))
        self.lead = _figure(0, 60, LEAD_D, tr("Days from beans to dry cloth"))
        self.way, self.measure = QComboBox(), QComboBox()
        self.day: UnderstoodLine[date] = UnderstoodLine(
            day_reader(today), name=tr("Day"), blank=tr("blank means as soon as can be")
        )
        self.needs = Words()
        self.warnings = Words(tone="ochre_ink")
        self.fault = Words(tone="danger_ink")
        self.message = MessageBar(bridge)
        self.buttons = QDialogButtonBox()
        self._soon = QTimer(self, singleShot=True, interval=TYPING_MS)
        self._fill()
        self._lay_out()
        self._connect()
        self._look()

    @property
    def plan(self) -> TrialPlan:
        """What is typed so far."""
        return TrialPlan(
            ages=self.ages.value or (),
            others=self.others.value or (),
            blocks=self.blocks.value or (),
            replicates=self.each.value(),
            way=str(self.way.currentData()),
            day=self.day.value,
            lead_d=self.lead.value(),
            measure=str(self.measure.currentData()),
        )

    @Slot()
    def submit(self) -> None:
        """Plan it; the first field that is wrong or missing gets the keyboard."""
        self.message.put_away()
        for field in (self.question, self.ages, self.others, self.blocks, self.day):
            field.read_again()
            if not field.ok:
                field.line.setFocus(Qt.FocusReason.OtherFocusReason)
                return
        if self.question.blank:
            self.message.refuse(tr("Fill in: {label}", label=tr("Question")))
            self.question.line.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        self.keep.setEnabled(False)
        command = NewTrial(self.question.text(), self.plan)
        self._bridge.do(command, self._done, failed=self._refused, asked=self._doubted)

    def _fill(self) -> None:
        self.ages.setText(", ".join(plain(one, 1) for one in DEFAULT_AGES))
        self.blocks.setText(BATCHES)
        for box, rows, name in (
            (self.way, WAYS, tr("Way")),
            (self.measure, [(slug, one.words) for slug, one in MEASURES.items()], tr("Read by")),
        ):
            box.setAccessibleName(name)
            calm(box)
            for value, said in rows:
                box.addItem(tr(said), value)
        role = QDialogButtonBox.ButtonRole
        self.keep = self.buttons.addButton(tr("&Plan it"), role.AcceptRole)
        self.buttons.addButton(tr("Lea&ve it"), role.RejectRole)
        dress_button(self.keep, "primary")
        self.keep.setDefault(True)

    def _connect(self) -> None:
        lines: tuple[UnderstoodLine[Any], ...] = (self.ages, self.others, self.blocks, self.day)
        for line in lines:
            line.changed.connect(self._soon.start)
        for box in (self.way, self.measure):
            box.currentIndexChanged.connect(self._soon.start)
        for spin in (self.each, self.lead):
            spin.valueChanged.connect(self._soon.start)
        self._soon.timeout.connect(self._look)
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)

    @Slot()
    def _look(self) -> None:
        self._bridge.ask(TrialNeedsFor(self.plan), self.show_needs)

    def show_needs(self, needs: TrialNeeds) -> None:
        """Say what the plan needs, or what is wrong with it."""
        self.needs.show_words("\n".join(needs.words))
        self.warnings.show_words("\n".join(needs.warnings))
        self.fault.show_words(needs.fault)

    def _lay_out(self) -> None:
        inner = QWidget()
        form = QFormLayout(inner)
        form.setContentsMargins(2, 0, 8, 0)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        form.setHorizontalSpacing(14)
        form.setVerticalSpacing(8)
        rows: tuple[tuple[str, QWidget], ...] = (
            (tr("&Question"), self.question), (tr("Cure &ages"), self.ages),
            (tr("&Other arms"), self.others), (tr("&Batches"), self.blocks),
            (tr("Pieces of &each"), self.each), (tr("&Way"), self.way), (tr("Da&y"), self.day),
            (tr("Days to &dry cloth"), self.lead), (tr("&Read by"), self.measure),
        )  # fmt: skip
        for label, field in rows:
            form.addRow(label, field)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 14)
        column.setSpacing(10)
        column.addWidget(Words(tr("New trial"), size="large", bold=True))
        column.addWidget(
            Words(tr("One question; arms that differ in one thing; enough pieces of each."),
                  tone="soft")
        )  # fmt: skip
        column.addWidget(scrolled(inner, name=tr("Fields")), 1)
        for said in (self.fault, self.needs, self.warnings):
            column.addWidget(said)
        column.addWidget(self.message)
        column.addWidget(self.buttons)
        room = self.screen().availableGeometry().size()
        self.resize(min(em(self, 48), room.width() - 40), min(em(self, 46), room.height() - 80))

    def _done(self, outcome: Outcome) -> None:
        self.done_with.emit(outcome)
        self.accept()

    def _refused(self, said: str) -> None:
        self.keep.setEnabled(True)
        self.message.refuse(said or tr("That did not work. What you typed is kept; try again."))

    def _doubted(self, doubt: Doubt) -> None:
        self.keep.setEnabled(True)
        self.message.question(doubt)


def _figure(least: int, most: int, value: int, name: str) -> QSpinBox:
    made = QSpinBox()
    made.setRange(least, most)
    made.setValue(value)
    made.setAccessibleName(name)
    roomy(made)
    calm(made)
    return made
