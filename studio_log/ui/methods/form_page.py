"""One page of the form: the head, a step or the cure, with every fault beside its field."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial
from typing import Any, Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from studio_log.domain.amounts import Amount
from studio_log.domain.method_draft import with_row, with_value, without_row
from studio_log.domain.method_faults import Fault
from studio_log.domain.method_lines import Path
from studio_log.domain.method_steps import short_name, unused
from studio_log.language.words import tr
from studio_log.ui.methods.fields import Field, FieldSpec, made
from studio_log.ui.methods.form_rows import (
    ROW_GAP,
    CautionTicks,
    RowList,
    at_path,
    row_of_fields,
)
from studio_log.ui.methods.form_tables import Rows, Section
from studio_log.ui.widgets.parts import Words

Change = Callable[[str], str]
"""Makes one text of a method into another; may refuse."""
SECTION_GAP: Final = 22


def fault_words(fault: Fault) -> str:
    """Say a fault where it is: without file and line."""
    said = f"{fault.what}; {fault.fix}."
    return said[:1].upper() + said[1:]


class FormPage(QWidget):
    """Shows a block of the draft; each change is handed on as a change of the text."""

    wanted = Signal(object, str)
    """A `Change`, and what it joins with in the history: one word typed is one step back."""
    undo_wanted = Signal(bool)

    def __init__(self, sections: Sequence[Section]) -> None:
        super().__init__()
        self._base: Path = ()
        self._data: Any = {}
        self.rest = Words(tone="danger_ink")
        self.rest.hide()
        self._fields: list[Field] = []
        self._lists: list[RowList] = []
        self._sections: list[tuple[Section, QWidget]] = []
        self.cautions: CautionTicks | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 14, 16, 18)
        column.addWidget(self.rest)
        column.setSpacing(SECTION_GAP)
        for section in sections:
            part = QWidget()
            inner = QVBoxLayout(part)
            inner.setContentsMargins(0, 0, 0, 0)
            inner.setSpacing(ROW_GAP)
            self._add(inner, section)
            self._sections.append((section, part))
            column.addWidget(part)
        column.addStretch()

    def fields(self) -> Iterator[Field]:
        """Give every field there is now."""
        yield from self._fields
        for rows in self._lists:
            yield from rows.fields

    def show_block(
        self, data: object, base: Path, faults: Iterable[Fault], amounts: Mapping[str, Amount]
    ) -> None:
        """Show the block at `base`; faults elsewhere are left out, `amounts` are for 100 g."""
        if base != self._base:
            for field in self.fields():
                field.forget()
        self._base, self._data = base, data
        for rows in self._lists:
            rows.show_rows(at_path(data, rows.spec.path), amounts)
        for field in self._fields:
            field.fault = ""
            field.show_value(at_path(data, field.spec.path))
        if self.cautions is not None:
            self.cautions.show_chosen(at_path(data, ("cautions",)))
        for rows in self._lists:
            rows.say_amounts(amounts)
        self._say_faults(faults)
        self._show_needed()

    def first(self) -> Field:
        """Give the first field, or the first with a fault."""
        fields = list(self.fields())
        return next((field for field in fields if field.fault), fields[0])

    def _show_needed(self) -> None:
        """Hide what this kind of step has no use for, unless something stands in it."""
        kind = at_path(self._data, ("kind",))
        for section, part in self._sections:
            if section.kinds:
                paths = [spec.path for row in section.rows for spec in row]
                filled = any(at_path(self._data, path) is not None for path in paths[-3:])
                part.setVisible(kind in section.kinds.split() or filled)

    def _say_faults(self, faults: Iterable[Fault]) -> None:
        rest: list[str] = []
        said: dict[int, list[str]] = {}
        fields = list(self.fields())
        paths = [field.spec.path for field in fields]
        for fault in faults:
            at = nearest_field(fault.path[len(self._base) :], paths)
            if at is None:
                rest.append(fault_words(fault))
            else:
                said.setdefault(at, []).append(fault_words(fault))
        for at, words in said.items():
            fields[at].say("", " ".join(words))
        self.rest.show_words("\n".join(rest))

    def _add(self, column: QVBoxLayout, section: Section) -> None:
        column.addWidget(Words(tr(section.heading), size="large", bold=True))
        if section.advice:
            column.addWidget(Words(tr(section.advice), tone="soft", size="small"))
        for row in section.rows:
            fields = [self._made(spec) for spec in row]
            self._fields += fields
            column.addLayout(row_of_fields(fields))
        if section.listed is not None:
            rows = RowList(section.listed, self._made)
            rows.add_wanted.connect(self._add_row)
            rows.out_wanted.connect(self._take_out)
            self._lists.append(rows)
            column.addWidget(rows)
        if section.cautions:
            self.cautions = CautionTicks()
            self.cautions.chosen.connect(partial(self._write, ("cautions",)))
            column.addWidget(self.cautions)

    def _made(self, spec: FieldSpec) -> Field:
        field = made(spec)
        field.written.connect(self._write)
        field.undo_wanted.connect(self.undo_wanted)
        field.left.connect(self._left)
        return field

    def _left(self, path: Path) -> None:
        """Call what is new by a short name of its title, once the title is written."""
        place = (*path[:-1], "slug")
        slug, title = at_path(self._data, place), at_path(self._data, path)
        if path[-1] == "title" and isinstance(slug, str) and slug.startswith("new-"):
            name = short_name(str(title or ""))
            if name and not name.startswith("new-"):
                whole = (*self._base, *place)
                self.wanted.emit(lambda text: with_value(text, whole, unused(text, name)), "")

    def _write(self, path: Path, value: object) -> None:
        whole = (*self._base, *path)
        self.wanted.emit(lambda text: with_value(text, whole, value), str(whole))

    def _add_row(self, spec: Rows) -> None:
        whole = (*self._base, *spec.path)
        row = dict(spec.new)
        if "days" in row:
            row["days"] = max(_days(at_path(self._data, spec.path)), default=0) + 30
            self.wanted.emit(lambda text: with_row(text, whole, row), "")
        else:
            name = short_name(str(row["title"]))
            self.wanted.emit(
                lambda text: with_row(text, whole, {"slug": unused(text, name), **row}), ""
            )
        rows = next(one for one in self._lists if one.spec is spec)
        if rows.fields:
            rows.fields[-sum(len(line) for line in spec.rows)].box.setFocus()

    def _take_out(self, path: Path) -> None:
        whole = (*self._base, *path)
        self.wanted.emit(lambda text: without_row(text, whole), "")


def nearest_field(path: Path, fields: Sequence[Path]) -> int | None:
    """Give which field a fault belongs to: the one it lies in, else the first inside its table."""
    inside = [at for at, one in enumerate(fields) if path[: len(one)] == one]
    if inside:
        return max(inside, key=lambda at: len(fields[at]))
    around = (at for at, one in enumerate(fields) if path and one[: len(path)] == path)
    return next(around, None)


def _days(rows: object) -> Iterator[int]:
    for row in rows if isinstance(rows, list) else []:
        days = at_path(row, ("days",))
        if isinstance(days, int):
            yield days
