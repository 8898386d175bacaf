"""The window “Trials”: the list at the left, the chosen one beside it."""

from datetime import date
from functools import partial
from pathlib import Path
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import QRect, QSize, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Command, Outcome, Redo, Undo
from studio_log.services.questions import LotLines, LotLinesFor
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
from studio_log.ui.errors import MessageBar
from studio_log.ui.trials.form_dialog import TrialDialog
from studio_log.ui.trials.forms import BREAK, FORMS, TrialForm
from studio_log.ui.trials.new_dialog import NewTrialDialog
from studio_log.ui.trials.read_dialog import ReadDialog
from studio_log.ui.trials.report_out import write_report
from studio_log.ui.trials.trial_view import TrialView
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, scrolled

WIDE: Final = 19
"""Of the list, in line heights; it never takes more than a third."""
STALE_MS: Final = 60_000
NOTHING: Final = tr_later(
    "No trial is kept yet. Did the long cure matter? A trial plans the pieces, draws their order "
    "by chance, rings for each arm, hides what is what while you read, and says what the answer is "
    "worth. Begin with “New trial”."
)


class TrialBox(QDialog):
    """Shows what the studio answers; asks again when a trial has changed."""

    tags_wanted = Signal(object)
    """A tuple of TagFacts that are to be printed."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None, code: str = "") -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Trials — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge, self._wanted = bridge, code
        self._names: dict[str, str] = {}
        self.page: TrialPage | None = None
        self.report: TrialReport | None = None
        self.dialog: QDialog | None = None
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Trials"))
        self.list.setWordWrap(True)
        self.list.setTextElideMode(Qt.TextElideMode.ElideNone)
        self.list.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.new = button(tr("&New trial…"), kind="primary")
        self.ended_too = QCheckBox(tr("Those that are &over"))
        self.view = TrialView()
        self.empty = Words(tr(NOTHING), tone="soft")
        self.said = Words(tone="soft")
        self.message = MessageBar(bridge)
        self.undo, self.redo = button(tr("&Undo")), button(tr("Red&o"))
        self.leave = button(tr("C&lose"))
        self._pages = QStackedWidget()
        self._stale = QTimer(self, interval=STALE_MS)
        self._lay_out()
        self._connect()

    @property
    def code(self) -> str:
        """Code of the chosen trial, "" for none."""
        item = self.list.currentItem()
        return "" if self.list.currentRow() < 0 else str(item.data(Qt.ItemDataRole.UserRole))

    @Slot()
    def refresh(self) -> None:
        """Ask for the list, and through it for the chosen trial."""
        self._bridge.ask(TrialsFor(ended=self.ended_too.isChecked()), self._show_list)

    def on_changed(self, outcome: Outcome) -> None:
        """Ask anew where a trial, its lots or its swatches were touched."""
        touched = outcome.trials or outcome.lots or outcome.swatches or outcome.settings
        if touched or outcome is FOREIGN:
            self.refresh()

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

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()
        self._bridge.ask(LotLinesFor(), self._learn_names)
        self._stale.start()
        self.list.setFocus(Qt.FocusReason.OtherFocusReason)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._side.setFixedWidth(min(em(self, WIDE), self.width() // 3))
        self._fit_lines()

    def _fit_lines(self) -> None:
        """Make each line of the list as high as its words need: a list view cuts the last ones."""
        room = QRect(0, 0, self._side.width() - em(self, 2), 10_000)
        for row in range(self.list.count()):
            item = self.list.item(row)
            high = (
                self.list.fontMetrics()
                .boundingRect(room, int(Qt.TextFlag.TextWordWrap), item.text())
                .height()
            )
            item.setSizeHint(QSize(room.width() // 2, high + em(self, 1)))

    def _open(self, box: QDialog) -> None:
        self.dialog = box
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.open()

    def _connect(self) -> None:
        self.list.currentRowChanged.connect(self._turned)
        self.new.clicked.connect(self.open_new)
        self.ended_too.toggled.connect(self.refresh)
        self.view.act_wanted.connect(self._act)
        self.undo.clicked.connect(partial(self._back, Undo))
        self.redo.clicked.connect(partial(self._back, Redo))
        self.leave.clicked.connect(self.reject)
        self._stale.timeout.connect(self.refresh)
        self._bridge.changed.connect(self.on_changed)

    def _lay_out(self) -> None:
        self._side = QWidget()
        side = QVBoxLayout(self._side)
        side.setContentsMargins(0, 0, 0, 0)
        side.setSpacing(8)
        for widget in (self.new, self.list, self.ended_too):
            side.addWidget(widget)
        blank = QWidget()
        column = QVBoxLayout(blank)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.empty)
        column.addStretch(1)
        self._pages.addWidget(blank)
        self._pages.addWidget(scrolled(self.view, name=tr("The chosen trial")))
        halves = QHBoxLayout()
        halves.setSpacing(12)
        halves.addWidget(self._side)
        halves.addWidget(self._pages, 1)
        foot = FlowLayout(gap=10)
        for part in (growing(self.said), self.undo, self.redo, self.leave):
            foot.addWidget(part)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 12, 16, 12)
        whole.addLayout(halves, 1)
        whole.addWidget(self.message)
        whole.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 72), em(self, 46)).boundedTo(room))

    def _learn_names(self, lines: LotLines) -> None:
        self._names = {one.code: one.name for one in lines.lines}

    def _show_list(self, lines: tuple[TrialLine, ...]) -> None:
        wanted = self._wanted or self.code
        codes = [one.code for one in lines]
        if self._wanted and self._wanted not in codes and not self.ended_too.isChecked():
            self.ended_too.setChecked(True)  # asks again, with those that are over
            return
        self._wanted = ""
        self.list.blockSignals(True)
        self.list.clear()
        for one in lines:
            item = QListWidgetItem(
                f"{one.code}  {one.question}\n{one.words}\n{tr('Next: {next}', next=one.next)}",
                self.list,
            )
            item.setData(Qt.ItemDataRole.UserRole, one.code)
        if codes:
            self.list.setCurrentRow(codes.index(wanted) if wanted in codes else 0)
        self.list.blockSignals(False)
        self._fit_lines()
        if codes:
            self._turned()
        else:
            self.page = None
            self._pages.setCurrentIndex(0)
            self._offer_back()

    @Slot()
    def _turned(self) -> None:
        if self.code:
            self._bridge.ask(TrialFor(self.code), self._show_page, failed=self.message.refuse)

    def _show_page(self, page: TrialPage) -> None:
        if page.line.code != self.code:
            return  # another one has been chosen since
        self.page = page
        self.view.show_page(page)
        self._pages.setCurrentIndex(1)
        self._offer_back()
        if not page.line.veiled and any(one.value is not None for one in page.units):
            self._bridge.ask(TrialReportFor(page.line.code), self._show_report)
        else:
            self.report = None
            self.view.show_report(None)

    def _show_report(self, report: TrialReport) -> None:
        if report.code == self.code:
            self.report = report
            self.view.show_report(report)

    def _offer_back(self) -> None:
        page = self.page
        self.undo.setEnabled(bool(page and page.undo))
        self.redo.setEnabled(bool(page and page.redo))
        self.undo.setToolTip(tr("Take back: {words}", words=page.undo) if page else "")
        self.redo.setToolTip(tr("Restore: {words}", words=page.redo) if page and page.redo else "")

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

    def _do(self, command: Command) -> None:
        self.message.put_away()
        self._bridge.do(
            command, self._done, failed=self.message.refuse, asked=self.message.question
        )

    def _done(self, outcome: Outcome) -> None:
        self.said.setText(" ".join((outcome.words, *outcome.advice)))
        if outcome.code:
            self._wanted = outcome.code

    def _back(self, make: type[Undo] | type[Redo]) -> None:
        if self.page is not None:
            self._do(make(self.page.line.code))
