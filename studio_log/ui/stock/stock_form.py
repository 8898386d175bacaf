"""The forms of the stock: a new material, and what was bought, taken or counted."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QFormLayout, QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.stock import MoveMaterial, NewMaterial, StockLine
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.stock import readers
from studio_log.ui.theme.dress import dress_button
from studio_log.ui.widgets.parts import em
from studio_log.ui.widgets.understood import Understood, UnderstoodLine


@dataclass(frozen=True)
class Field:
    """One line of a form."""

    slug: str
    label: str
    hint: str = ""
    reader: str = "text"
    needed: bool = False


_AMOUNT: Final = Field("amount", tr_later("&How much"), "500 g", "quantity", needed=True)
_BOUGHT: Final = (
    Field("price", tr_later("&Price"), "12.50", "price"),
    Field("batch", tr_later("&Batch"), tr_later("the supplier’s, if any")),
    Field("best_before", tr_later("Best be&fore"), "2027-03-31", "day"),
)
_NOTE: Final = Field("note", tr_later("&Note"), tr_later("a note, if any"))
_NEW: Final = (
    Field("title", tr_later("&Name"), tr_later("soda ash"), needed=True),
    Field("material", tr_later("What &methods call it"), tr_later("soda-ash; else by its name")),
    Field("amount", tr_later("What is t&here"), "1 kg", "quantity"),
    *_BOUGHT,
    Field("low", tr_later("Buy again be&low"), "200 g", "quantity"),
    Field("place", tr_later("Pl&ace"), tr_later("shelf 2")),
)
FIELDS: Final[Mapping[str, tuple[Field, ...]]] = {
    "new": _NEW,
    "buy": (_AMOUNT, *_BOUGHT, _NOTE),
    "draw": (_AMOUNT, _NOTE),
    "count": (_AMOUNT, _NOTE),
}
TITLES: Final[Mapping[str, str]] = {
    "new": tr_later("New material"),
    "buy": tr_later("Bought: {title}"),
    "draw": tr_later("Taken by hand: {title}"),
    "count": tr_later("Counted: {title}"),
}
_READERS: Final[Mapping[str, Callable[[str], Understood[Any]]]] = {
    "text": Understood,
    "quantity": readers.quantity,
    "price": readers.price,
    "day": readers.day,
}


class StockForm(QDialog):
    """Writes one thing down; nothing typed is lost by a refusal."""

    def __init__(
        self, bridge: Bridge, act: str, line: StockLine | None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._bridge, self._act, self._line = bridge, act, line
        self.setWindowTitle(tr(TITLES[act], title=line.title if line else ""))
        self.setModal(True)
        self.fields: dict[str, UnderstoodLine[Any]] = {}
        self.code = ""
        self.message = MessageBar(bridge)
        self.buttons = QDialogButtonBox()
        role = QDialogButtonBox.ButtonRole
        self.keep = self.buttons.addButton(tr("&Write it down"), role.AcceptRole)
        self.buttons.addButton(tr("&Leave it"), role.RejectRole)
        dress_button(self.keep, "primary")
        self.keep.setDefault(True)
        self._lay_out()
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)

    def submit(self) -> None:
        """Send it; the first field that is wrong or missing gets the keyboard."""
        self.message.put_away()
        for of in FIELDS[self._act]:
            field = self.fields[of.slug]
            if not field.ok or (of.needed and field.blank):
                if field.ok:
                    self.message.refuse(tr("Fill in: {label}", label=_bare(of.label)))
                field.line.setFocus()
                return
        self._bridge.do(self.command(), self._kept, failed=self.message.refuse)

    def command(self) -> NewMaterial | MoveMaterial:
        """Give what the form says."""
        typed = {slug: field.value for slug, field in self.fields.items() if field.value}
        amount, low = typed.pop("amount", None), typed.pop("low", None)
        if self._act == "new":
            unit = (amount or low or readers.Quantity(0, "g")).unit
            return NewMaterial(
                unit=unit,
                amount=amount.value if amount else None,
                low=low.value if low else None,
                **typed,
            )
        code = self._line.code if self._line else ""
        return MoveMaterial(code, self._act, amount.value, amount.unit, **typed)

    def _lay_out(self) -> None:
        form = QFormLayout()
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        form.setHorizontalSpacing(14)
        form.setVerticalSpacing(10)
        for of in FIELDS[self._act]:
            field: UnderstoodLine[Any] = UnderstoodLine(
                _READERS[of.reader],
                name=_bare(of.label),
                hint=tr(of.hint),
                slug=f"stock-{of.slug}" if of.reader == "text" else "",
            )
            field.entered.connect(self.submit)
            form.addRow(tr(of.label), field)
            self.fields[of.slug] = field
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 14)
        column.setSpacing(12)
        column.addLayout(form)
        column.addStretch(1)
        column.addWidget(self.message)
        column.addWidget(self.buttons)
        self.resize(em(self, 32), self.sizeHint().height())

    def _kept(self, outcome: Outcome) -> None:
        for field in self.fields.values():
            field.remember()
        self.code = outcome.code
        self.accept()


def _bare(label: str) -> str:
    return tr(label).replace("&", "")
