"""A new trial: what it needs and what it can resolve stands beside it while it is typed."""

from datetime import date
from typing import Any, Final

from PySide6.QtCore import QTimer, Slot
from PySide6.QtWidgets import QComboBox, QSpinBox, QWidget
from typing_extensions import override

from studio_log.domain.number_text import plain
from studio_log.domain.trial_design import DEFAULT_AGES, MOST_REPLICATES
from studio_log.domain.trials import MEASURES
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Command
from studio_log.services.trials import NewTrial, TrialNeeds, TrialNeedsFor, TrialPlan
from studio_log.ui.bridge import Bridge
from studio_log.ui.kept.form_box import spaced_form
from studio_log.ui.kept.sending_box import SendingBox
from studio_log.ui.trials.readers import ages, day_reader, named
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, roomy
from studio_log.ui.widgets.understood import Understood, UnderstoodLine

TYPING_MS: Final = 250
WAYS: Final = (
    ("forwards", tr_later("forwards: each age dyed on its own day")),
    ("backwards", tr_later("backwards: all ages meet one bath on one day")),
)
BATCHES: Final = "1, 2, 3"
REPLICATES: Final = 2
LEAD_D: Final = 3


class NewTrialDialog(SendingBox):
    """Asks for a trial and plans it."""

    def __init__(self, bridge: Bridge, today: date, parent: QWidget | None = None) -> None:
        super().__init__(bridge, tr("&Plan it"), parent)
        self.setWindowTitle(tr("New trial"))
        self.question: UnderstoodLine[str] = UnderstoodLine(
            Understood, name=tr("Question"), hint=tr("Does a long cure deepen madder?")
        )
        self.ages: UnderstoodLine[tuple[float, ...]] = UnderstoodLine(ages, name=tr("Cure ages"))
        self.others: UnderstoodLine[tuple[str, ...]] = UnderstoodLine(
            named, name=tr("Other arms"), hint=tr("no soy, alum only")
        )
        self.control: UnderstoodLine[str] = UnderstoodLine(
            Understood, name=tr("Control"), hint=tr("age 0, else the first other arm")
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
            control=self.control.text(),
        )

    @override
    def command(self) -> Command | None:
        lines: tuple[UnderstoodLine[Any], ...] = (
            self.question, self.ages, self.others, self.blocks, self.day,
        )  # fmt: skip
        for line in lines:
            if not self.stands(line, tr("Question"), needed=line is self.question):
                return None
        return NewTrial(self.question.text(), self.plan)

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

    def _connect(self) -> None:
        lines: tuple[UnderstoodLine[Any], ...] = (
            self.ages, self.others, self.control, self.blocks, self.day,
        )  # fmt: skip
        for line in lines:
            line.changed.connect(self._soon.start)
        for box in (self.way, self.measure):
            box.currentIndexChanged.connect(self._soon.start)
        for spin in (self.each, self.lead):
            spin.valueChanged.connect(self._soon.start)
        self._soon.timeout.connect(self._look)

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
        form = spaced_form(inner)
        rows: tuple[tuple[str, QWidget], ...] = (
            (tr("&Question"), self.question), (tr("Cure &ages"), self.ages),
            (tr("&Other arms"), self.others), (tr("&Control"), self.control),
            (tr("&Batches"), self.blocks),
            (tr("Pieces of &each"), self.each), (tr("&Way"), self.way), (tr("Da&y"), self.day),
            (tr("Days to &dry cloth"), self.lead), (tr("&Read by"), self.measure),
        )  # fmt: skip
        for label, field in rows:
            form.addRow(label, field)
        says = tr("One question; arms that differ in one thing; enough pieces of each.")
        said = (self.fault, self.needs, self.warnings)
        self.lay_out(tr("New trial"), says, inner, 52, wide=48, below=said)


def _figure(least: int, most: int, value: int, name: str) -> QSpinBox:
    made = QSpinBox()
    made.setRange(least, most)
    made.setValue(value)
    made.setAccessibleName(name)
    roomy(made)
    calm(made)
    return made
