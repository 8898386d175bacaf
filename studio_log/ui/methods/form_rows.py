"""Parts of a page of the form that hold several: rows of fields, lists of small tables, ticks."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QFrame, QHBoxLayout, QVBoxLayout, QWidget

from studio_log.domain.amounts import Amount
from studio_log.domain.cautions import Caution
from studio_log.domain.method_lines import Path
from studio_log.domain.methods import Basis
from studio_log.language.words import tr
from studio_log.ui.methods.fields import ChoiceField, Field, FieldSpec, LineField
from studio_log.ui.methods.form_tables import Rows
from studio_log.ui.theme.dress import dress_card
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import button, emptied

ROW_GAP: Final = 12
SIDE_GAP: Final = 14
PAIRED: Final = 4
NEEDED_BY: Final[Mapping[str | int, frozenset[str]]] = {
    "of": frozenset(
        {Basis.PER_LITRE, Basis.TIMES_VOLUME, Basis.PARTS, Basis.IN_BATH, Basis.TIMES_WEIGHT}
    ),
    "unit": frozenset({Basis.FIXED}),
}
"""Fields of an amount that only some ways of counting it have a use for."""


def row_of_fields(fields: Sequence[Field]) -> FlowLayout:
    """Lay fields side by side, on further lines where room is short."""
    flow = FlowLayout(gap=SIDE_GAP, row_gap=ROW_GAP)
    for widget in _paired(fields) if len(fields) == PAIRED else fields:
        flow.addWidget(growing(widget))
    return flow


def _paired(fields: Sequence[QWidget]) -> Iterator[QWidget]:
    """Give two and two together: four stand in one line or in two, never three and one."""
    for at in range(0, len(fields), 2):
        yield Pair(fields[at : at + 2])


class Pair(QWidget):
    """Two fields side by side that are never parted."""

    def __init__(self, fields: Sequence[QWidget]) -> None:
        super().__init__()
        self.fields = fields
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(SIDE_GAP)
        for field in fields:
            line.addWidget(field, 1)


class RowList(QWidget):
    """The small tables of a list, each with a way to take it out, and a way to add one."""

    add_wanted = Signal(object)
    out_wanted = Signal(tuple)

    def __init__(self, spec: Rows, make: Callable[[FieldSpec], Field]) -> None:
        super().__init__()
        self.spec, self._make = spec, make
        self.fields: list[Field] = []
        self._count = 0
        self._column = QVBoxLayout()
        self._column.setSpacing(ROW_GAP)
        self.add = button(tr(spec.add))
        self.add.clicked.connect(partial(self.add_wanted.emit, spec))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(ROW_GAP)
        column.addLayout(self._column)
        column.addWidget(self.add, 0, Qt.AlignmentFlag.AlignLeft)

    def show_rows(self, rows: object, amounts: Mapping[str, Amount]) -> None:
        """Show these tables; the fields stay while their number stays."""
        found = rows if isinstance(rows, list) else []
        if len(found) != self._count:
            self._build(len(found))
        titles = [("", "nothing"), *((slug, one.title) for slug, one in amounts.items())]
        for field in self.fields:
            field.fault = ""
            if field.spec.path[-1] == "of" and isinstance(field, ChoiceField):
                field.offer(titles)
            field.show_value(at_path(found, field.spec.path[len(self.spec.path) :]))
        self._show_needed(found)

    def _show_needed(self, rows: list[object]) -> None:
        """Hide what an amount has no use for, unless something stands in it."""
        for field in self.fields:
            *place, name = field.spec.path[len(self.spec.path) :]
            if name in NEEDED_BY:
                needed = at_path(rows, (*place, "basis")) in NEEDED_BY[name]
                field.setVisible(needed or at_path(rows, (*place, name)) is not None)
        for pair in {field.parentWidget() for field in self.fields}:
            if isinstance(pair, Pair):
                pair.setVisible(any(not one.isHidden() for one in pair.fields))

    def say_amounts(self, amounts: Mapping[str, Amount]) -> None:
        """Say beside each figure what it comes to on 100 g of cloth."""
        slugs = {f.spec.path[-2]: _text(f) for f in self.fields if f.spec.path[-1] == "slug"}
        for field in self.fields:
            amount = amounts.get(slugs.get(field.spec.path[-2], ""))
            if field.spec.path[-1] == "value" and amount is not None:
                field.say(tr("{amount} on 100 g of cloth", amount=amount.shown), "")

    def _build(self, count: int) -> None:
        emptied(self._column)
        self.fields = []
        self._count = count
        for number in range(count):
            self._column.addWidget(self._card(number))

    def _card(self, number: int) -> QWidget:
        card = QFrame()
        dress_card(card, "plain")
        column = QVBoxLayout(card)
        column.setContentsMargins(12, 10, 12, 10)
        column.setSpacing(ROW_GAP)
        flow = FlowLayout()
        for line in self.spec.rows:
            fields = [self._make(_inside(one, (*self.spec.path, number))) for one in line]
            self.fields += fields
            flow = row_of_fields(fields)
            column.addLayout(flow)
        out = button(tr("Take it out"), says=tr(self.spec.out, n=number + 1))
        out.clicked.connect(partial(self.out_wanted.emit, (*self.spec.path, number)))
        flow.addWidget(out)
        return card


class CautionTicks(QWidget):
    """A tick box for each caution that there are words for."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._ticks: dict[str, QCheckBox] = {}
        self._named: list[str] = []
        self._flow = FlowLayout(self, gap=SIDE_GAP)

    def offer(self, cautions: Sequence[Caution]) -> None:
        """Offer these cautions."""
        emptied(self._flow)
        self._ticks = {}
        for one in cautions:
            tick = QCheckBox(one.title)
            tick.setToolTip(one.text)
            tick.setAccessibleDescription(one.text)
            tick.clicked.connect(self._clicked)
            self._ticks[one.slug] = tick
            self._flow.addWidget(tick)
        self.show_chosen(self._named)

    def show_chosen(self, named: object) -> None:
        """Tick what the step names."""
        self._named = [str(one) for one in named] if isinstance(named, list) else []
        for slug, tick in self._ticks.items():
            tick.setChecked(slug in self._named)

    def _clicked(self) -> None:
        """Keep the order in which they were named; what is new comes last."""
        ticked = [slug for slug, tick in self._ticks.items() if tick.isChecked()]
        kept = [slug for slug in self._named if slug in ticked or slug not in self._ticks]
        new = [slug for slug in ticked if slug not in kept]
        self.chosen.emit([*kept, *new] or None)


def _inside(spec: FieldSpec, base: Path) -> FieldSpec:
    return replace(spec, path=(*base, *spec.path))


def at_path(data: object, path: Path) -> object:
    """Give what stands at a path in plain values; None where nothing does."""
    for part in path:
        if isinstance(data, Mapping):
            data = data.get(part)
        elif isinstance(data, list) and isinstance(part, int) and part < len(data):
            data = data[part]
        else:
            return None
    return data


def _text(field: Field) -> str:
    return field.line.text().strip() if isinstance(field, LineField) else ""
