"""The window “Trials”: the list at the left, the chosen one beside it."""

from datetime import date
from pathlib import Path
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import QSize, Signal
from PySide6.QtWidgets import QFileDialog, QWidget
from typing_extensions import override

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.questions import Question
from studio_log.services.trials import (
    SetTrial,
    TrialFor,
    TrialLine,
    TrialPage,
    TrialReport,
    TrialReportFor,
    TrialsFor,
    TrialTagsFor,
    UnveilTrial,
)
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.kept.listed_box import ListedBox
from studio_log.ui.trials.form_dialog import TrialDialog
from studio_log.ui.trials.forms import BREAK, FORMS, TrialForm
from studio_log.ui.trials.new_dialog import NewTrialDialog
from studio_log.ui.trials.read_dialog import ReadDialog
from studio_log.ui.trials.report_out import write_report
from studio_log.ui.trials.trial_view import TrialView

SIZE: Final = QSize(72, 46)
NOTHING: Final = tr_later(
    "No trial is kept yet. Did the long cure matter? A trial plans the pieces, draws their order "
    "by chance, rings for each arm, hides what is what while you read, and says what the answer is "
    "worth. Begin with “New trial”."
)


class TrialBox(ListedBox[TrialPage]):
    """Shows what the studio answers; asks again when a trial has changed."""

    tags_wanted = Signal(object)
    """A tuple of TagFacts that are to be printed."""
    title = tr_later("Trials — Studio Log")
    name = tr_later("Trials")
    new_words = tr_later("&New trial…")
    ended_words = tr_later("Those that are &over")
    view_name = tr_later("The chosen trial")
    nothing = NOTHING
    wide = 19

    def __init__(self, bridge: Bridge, parent: QWidget | None = None, code: str = "") -> None:
        super().__init__(bridge, parent, code)
        self.report: TrialReport | None = None
        self.view = TrialView()
        self.lay_out_halves(self.view, SIZE)
        self.new.clicked.connect(self.open_new)
        self.view.act_wanted.connect(self._act)

    @override
    def on_changed(self, outcome: Outcome) -> None:
        touched = outcome.trials or outcome.lots or outcome.swatches or outcome.settings
        if touched or outcome is FOREIGN:
            self.refresh()

    @override
    def list_question(self) -> Question:
        return TrialsFor(ended=self.ended_too.isChecked())

    @override
    def page_question(self, code: str) -> Question:
        return TrialFor(code)

    @override
    def line_words(self, line: TrialLine) -> str:
        after = tr("Next: {next}", next=line.next)
        return f"{line.code}  {line.question}\n{line.words}\n{after}"

    @override
    def show_page(self, page: TrialPage) -> None:
        self.view.show_page(page)
        if not page.line.veiled and any(one.value is not None for one in page.units):
            self._bridge.ask(TrialReportFor(page.line.code), self._show_report)
        else:
            self.report = None
            self.view.show_report(None)

    def today(self) -> date:
        """Give the day on the studio's wall."""
        return self._bridge.now().astimezone(ZoneInfo(self._bridge.zone())).date()

    def open_new(self) -> NewTrialDialog:
        """Open the form of a new trial."""
        box = NewTrialDialog(self._bridge, self.today(), self)
        box.done_with.connect(self._done)
        self._open(box)
        return box

    def open_form(self, form: TrialForm) -> TrialDialog | None:
        """Open a form for the chosen trial."""
        if self.page is None:
            return None
        box = TrialDialog(
            self._bridge, form, self.page, self.today(), names=self._names, parent=self
        )
        box.done_with.connect(self._done)
        self._open(box)
        return box

    def open_reading(self) -> ReadDialog | None:
        """Open the blind reading, at the next tag."""
        if self.page is None:
            return None
        box = ReadDialog(self._bridge, self.page, self)
        box.done_with.connect(self._done)
        self._open(box)
        return box

    def _show_report(self, report: TrialReport) -> None:
        if report.code == self.code:
            self.report = report
            self.view.show_report(report)

    def _act(self, slug: str) -> None:
        if self.page is None:
            return
        code = self.page.line.code
        if slug in FORMS:
            self.open_form(FORMS[slug])
        elif slug == "read":
            self.open_reading()
        elif slug == "unveil" and self.page.left:
            self.open_form(BREAK)
        elif slug == "unveil":
            self._do(UnveilTrial(code))
        elif slug == "tags":
            self._bridge.ask(TrialTagsFor(code), self.tags_wanted.emit)
        elif slug == "save":
            self.save_report()
        else:
            self._do(SetTrial(code, ended=slug == "end"))

    def save_report(self, path: str = "") -> None:
        """Write the report to a file; asks where to if that is not said."""
        if self.report is None:
            return
        kinds = tr("Report (*.pdf *.svg *.png *.csv)")
        name = f"{self.report.code}.pdf"
        chosen = path or QFileDialog.getSaveFileName(self, tr("Save the report"), name, kinds)[0]
        if not chosen:
            return
        to = Path(chosen) if Path(chosen).suffix else Path(f"{chosen}.pdf")
        try:
            write_report(to, self.report)
        except Refusal as refusal:
            self.message.refuse(str(refusal))
        else:
            self.said.setText(tr("Saved as {path}.", path=to))
