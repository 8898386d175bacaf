"""The forms of the stock: a new material, and what was bought, taken or counted."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.stock import MoveMaterial, NewMaterial, StockLine
from studio_log.ui.bridge import Bridge
from studio_log.ui.kept.form_box import FormBox, FormField
from studio_log.ui.stock import readers


def _text(slug: str, label: str, hint: str, *, needed: bool = False) -> FormField:
    """Give a field of words, that offers what was typed there before."""
    return FormField(slug, label, hint, needed=needed, kept_as=f"stock-{slug}")


_AMOUNT: Final = FormField("amount", tr_later("&How much"), "500 g", readers.quantity, needed=True)
_BOUGHT: Final = (
    FormField("price", tr_later("&Price"), "12.50", readers.price),
    _text("batch", tr_later("&Batch"), tr_later("the supplier’s, if any")),
    FormField("best_before", tr_later("Best be&fore"), "2027-03-31", readers.day),
)
_NOTE: Final = _text("note", tr_later("&Note"), tr_later("a note, if any"))
_NEW: Final = (
    _text("title", tr_later("&Name"), tr_later("soda ash"), needed=True),
    _text("material", tr_later("What &methods call it"), tr_later("soda-ash; else by its name")),
    FormField("amount", tr_later("What is t&here"), "1 kg", readers.quantity),
    *_BOUGHT,
    FormField("low", tr_later("Buy again be&low"), "200 g", readers.quantity),
    _text("place", tr_later("Pl&ace"), tr_later("shelf 2")),
)
FIELDS: Final[Mapping[str, tuple[FormField, ...]]] = {
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


class StockForm(FormBox):
    """Writes one thing down of a material, or takes a new one in."""

    def __init__(
        self, bridge: Bridge, act: str, line: StockLine | None, parent: QWidget | None = None
    ) -> None:
        super().__init__(bridge, FIELDS[act], moment=False, parent=parent)
        self._act, self._line = act, line
        title = tr(TITLES[act], title=line.title if line else "")
        self.setWindowTitle(title)
        self.show_form(title, "")

    @override
    def made(self) -> NewMaterial | MoveMaterial:
        typed = {slug: value for slug, value in self.values.items() if value}
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
