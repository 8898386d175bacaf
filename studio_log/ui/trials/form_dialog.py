"""The box of one form of a trial: what was understood stands beneath each field."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import (
    QComboBox,
    QCompleter,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr
from studio_log.services.commands import Command, Outcome
from studio_log.services.trials import TrialPage
from studio_log.ui.bridge import Bridge, Doubt
from studio_log.ui.errors import MessageBar
from studio_log.ui.theme.dress import dress_button
from studio_log.ui.trials.forms import Field, TrialForm
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.parts import Words, em, scrolled
from studio_log.ui.widgets.understood import UnderstoodLine


class TrialDialog(QDialog):
    """Asks for one thing and sends it; nothing typed is lost by a refusal."""

    done_with = Signal(object)
    """The Outcome of what was done."""

    def __init__(
        self,
        bridge: Bridge,
        form: TrialForm,
        page: TrialPage,
        today: date,
        *,
        names: Mapping[str, str] | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._bridge, self.form, self._code = bridge, form, page.line.code
        self.setWindowTitle(f"{tr(form.title)} — {self._code}")
        self._rows = form.fields(page, today)
        self.fields: dict[str, UnderstoodLine[Any] | QComboBox] = {
            one.slug: self._field(one, names or {}) for one in self._rows
        }
        self.moment = (
            MomentLine(bridge, name=tr("When"), blank=tr("blank means now"))
            if form.moment
            else None
        )
        self.message = MessageBar(bridge)
        self.buttons = QDialogButtonBox()
        role = QDialogButtonBox.ButtonRole
        self.keep = self.buttons.addButton(tr("&Write it down"), role.AcceptRole)
        self.buttons.addButton(tr("Lea&ve it"), role.RejectRole)
        dress_button(self.keep, "primary")
        self.keep.setDefault(True)
        self._lay_out()
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)

    @Slot()
    def submit(self) -> None:
        """Send it; the first field that is wrong or missing gets the keyboard."""
        self.message.put_away()
        for of in self._rows:
            field = self.fields[of.slug]
            if isinstance(field, QComboBox):
                continue
            field.read_again()
            if not field.ok or (of.needed and field.blank):
                if field.ok:
                    self.message.refuse(tr("Fill in: {label}", label=_bare(of.label)))
                field.line.setFocus(Qt.FocusReason.OtherFocusReason)
                return
        if self.moment is not None:
            self.moment.read_again()
            if not self.moment.ok:
                self.moment.line.setFocus(Qt.FocusReason.OtherFocusReason)
                return
        self.keep.setEnabled(False)
        self._bridge.do(self.command(), self._done, failed=self._refused, asked=self._doubted)

    def command(self) -> Command:
        """Give what the form says."""
        found: dict[str, Any] = {}
        for slug, field in self.fields.items():
            value = field.currentData() if isinstance(field, QComboBox) else field.value
            if value is not None:
                found[slug] = value
        if self.moment is not None:
            found["at"] = self.moment.at
        return self.form.command(self._code, found)

    def _field(self, of: Field, names: Mapping[str, str]) -> "UnderstoodLine[Any] | QComboBox":
        if of.choices:
            box = QComboBox()
            box.setAccessibleName(_bare(of.label))
            for value, words in of.choices:
                box.addItem(words, value)
            calm(box)
            return box
        field: UnderstoodLine[Any] = UnderstoodLine(
            of.read, name=_bare(of.label), hint=tr(of.hint) if of.hint else ""
        )
        if of.slug == "lot" and names:
            offered = [f"{code} {name}".strip() for code, name in names.items()]
            completer = QCompleter(offered, field.line)
            completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
            completer.setFilterMode(Qt.MatchFlag.MatchContains)
            field.line.setCompleter(completer)
        if of.filled:
            field.setText(of.filled)
        field.entered.connect(self.submit)
        return field

    def _lay_out(self) -> None:
        inner = QWidget()
        form = QFormLayout(inner)
        form.setContentsMargins(2, 0, 8, 0)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        form.setHorizontalSpacing(14)
        form.setVerticalSpacing(10)
        for of in self._rows:
            form.addRow(tr(of.label), self.fields[of.slug])
        if self.moment is not None:
            form.addRow(tr("W&hen"), self.moment)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 14)
        column.setSpacing(10)
        column.addWidget(Words(tr(self.form.title), size="large", bold=True))
        if self.form.says:
            column.addWidget(Words(tr(self.form.says), tone="soft"))
        column.addWidget(scrolled(inner, name=tr("Fields")), 1)
        column.addWidget(self.message)
        column.addWidget(self.buttons)
        lines = 2.9 * len(self._rows) + (4 if self.moment is not None else 0) + 10
        room = self.screen().availableGeometry().size()
        self.resize(min(em(self, 40), room.width() - 40), min(em(self, lines), room.height() - 80))

    def _done(self, outcome: Outcome) -> None:
        self.done_with.emit(outcome)
        self.accept()

    def _refused(self, words: str) -> None:
        self.keep.setEnabled(True)
        self.message.refuse(words or tr("That did not work. What you typed is kept; try again."))

    def _doubted(self, doubt: Doubt) -> None:
        self.keep.setEnabled(True)
        self.message.question(doubt)


def _bare(label: str) -> str:
    return tr(label).replace("&", "")
