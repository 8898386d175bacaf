"""A form made of data: what was understood stands beneath each field."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QCompleter, QFormLayout, QLineEdit, QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.commands import Command, Outcome
from studio_log.ui.bridge import Bridge
from studio_log.ui.kept.sending_box import WRITE, SendingBox
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.understood import Understood, UnderstoodLine

Reader = Callable[[str], Understood[Any]]
Choices = tuple[tuple[Any, str], ...]
"""Value and words of each, in the language spoken."""
Values = Mapping[str, Any]
"""What was read, by the slug of its field; what was left blank is not in it."""


@dataclass(frozen=True)
class FormField:
    """One line of a form; with `choices` a box of them."""

    slug: str
    label: str
    hint: str = ""
    read: Reader = Understood
    needed: bool = False
    choices: Choices = ()
    filled: str = ""
    lots: bool = False
    """Whether it offers the lots by their names."""
    kept_as: str = ""
    """The name under which it offers what was typed last, "" where it does not."""


class FormBox(SendingBox):
    """Shows the fields in a row each, and a moment where the act has one."""

    def __init__(
        self,
        bridge: Bridge,
        fields: Sequence[FormField],
        *,
        moment: bool,
        names: Mapping[str, str] | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(bridge, tr(WRITE), parent)
        self._rows = tuple(fields)
        self.fields: dict[str, UnderstoodLine[Any] | QComboBox] = {
            one.slug: self._field(one, names or {}) for one in self._rows
        }
        self.moment = MomentLine(bridge, name=tr("When")) if moment else None
        inner = QWidget()
        form = spaced_form(inner)
        for of in self._rows:
            form.addRow(tr(of.label), self.fields[of.slug])
        if self.moment is not None:
            form.addRow(tr("W&hen"), self.moment)
        self._inner = inner

    @property
    def values(self) -> dict[str, Any]:
        """What was read, and `at` where the form has a moment."""
        found: dict[str, Any] = {}
        for slug, field in self.fields.items():
            value = field.currentData() if isinstance(field, QComboBox) else field.value
            if value is not None:
                found[slug] = value
        return found if self.moment is None else {**found, "at": self.moment.at}

    @override
    def command(self) -> Command | None:
        for of in self._rows:
            field = self.fields[of.slug]
            if isinstance(field, UnderstoodLine) and not self.stands(
                field, bare(of.label), needed=of.needed
            ):
                return None
        if self.moment is not None and not self.stands(self.moment, tr("When"), needed=False):
            return None
        return self.made()

    def made(self) -> Command:
        """Make the command of what was read; every field is understood by now."""
        raise NotImplementedError

    def show_form(self, title: str, says: str) -> None:
        """Lay it out beneath its title; `says` explains it, "" where nothing needs to be."""
        lines = 3.3 * len(self._rows) + (4 if self.moment is not None else 0) + 9
        self.lay_out(title, says, self._inner, lines)

    def _field(self, of: FormField, names: Mapping[str, str]) -> "UnderstoodLine[Any] | QComboBox":
        if of.choices:
            box = QComboBox()
            box.setAccessibleName(bare(of.label))
            for value, words in of.choices:
                box.addItem(words, value)
            calm(box)
            return box
        field: UnderstoodLine[Any] = UnderstoodLine(
            of.read, name=bare(of.label), hint=tr(of.hint) if of.hint else "", slug=of.kept_as
        )
        if of.lots:
            offer_lots(field.line, names)
        if of.filled:
            field.setText(of.filled)
        field.entered.connect(self.submit)
        return field

    @override
    def _done(self, outcome: Outcome) -> None:
        for field in self.fields.values():
            if isinstance(field, UnderstoodLine):
                field.remember()
        super()._done(outcome)


def spaced_form(holder: QWidget) -> QFormLayout:
    """Give the layout of a form's rows; a field goes below its label where there is no room."""
    form = QFormLayout(holder)
    form.setContentsMargins(2, 0, 8, 0)
    form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
    form.setHorizontalSpacing(14)
    form.setVerticalSpacing(10)
    return form


def offer_lots(line: QLineEdit, names: Mapping[str, str]) -> None:
    """Offer lots by their codes and names, whatever part of them is typed."""
    if not names:
        return
    completer = QCompleter([f"{code} {name}".strip() for code, name in names.items()], line)
    completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
    completer.setFilterMode(Qt.MatchFlag.MatchContains)
    line.setCompleter(completer)


def bare(label: str) -> str:
    """Give the words of a label without the mark of its key."""
    return tr(label).replace("&", "")
