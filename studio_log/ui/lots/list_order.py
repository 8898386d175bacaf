"""In which order the lots stand: a menu beside the search field."""

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QActionGroup

from studio_log.language.words import tr, tr_later
from studio_log.ui.lots.list_tool import ToolChip

Order = tuple[str, bool]
"""One of domain.search_text.SORTS, and whether it runs backwards."""
ORDERS: Final = (
    ("need", tr_later("What needs &hands first"), tr_later("By need")),
    ("newest", tr_later("&Newest first"), tr_later("By newest")),
    ("code", tr_later("&Code"), tr_later("By code")),
    ("name", tr_later("N&ame"), tr_later("By name")),
    ("weight", tr_later("&Weight, heaviest first"), tr_later("By weight")),
    ("coats", tr_later("C&oats, most first"), tr_later("By coats")),
    ("age", tr_later("Age of the cu&re, oldest first"), tr_later("By age")),
    ("ready", tr_later("Rea&dy soonest"), tr_later("By ready")),
    ("begun", tr_later("Be&gun last, first"), tr_later("By begun")),
    ("fibre", tr_later("&Fibre"), tr_later("By fibre")),
    ("shelf", tr_later("&Shelf"), tr_later("By shelf")),
)
FALLING: Final = frozenset({"newest", "weight", "coats", "age", "begun"})
"""Orders that begin with the greatest."""
BACKWARDS: Final = tr_later("&Backwards")


def order_text(order: Order) -> str:
    """Give an order as it is kept: "weight backwards"."""
    return f"{order[0]} backwards" if order[1] else order[0]


def arrow(order: Order) -> str:
    """Say which way an order runs: the greatest first or last."""
    name, backwards = order
    if name == "need":
        return " ↑" if backwards else ""
    return " ↓" if (name in FALLING) != backwards else " ↑"


def read_order(text: str) -> Order:
    """Give the order of a kept text."""
    return text.removesuffix(" backwards"), text.endswith(" backwards")


class OrderButton(ToolChip):
    """Shows the order in force; its menu chooses another."""

    chosen = Signal(str, bool)

    def __init__(self) -> None:
        super().__init__(tr("By need"), "order")
        self.order: Order = ("need", False)
        menu = self.menu()
        self._group = QActionGroup(self)
        for name, words, _brief in ORDERS:
            action = menu.addAction(tr(words))
            action.setCheckable(True)
            action.setData(name)
            self._group.addAction(action)
        menu.addSeparator()
        self.backwards = menu.addAction(tr(BACKWARDS))
        self.backwards.setCheckable(True)
        self._group.triggered.connect(self._chosen)
        self.backwards.triggered.connect(self._turned)
        self.show_order(self.order)

    def show_order(self, order: Order) -> None:
        """Show the order in force."""
        self.order = order
        name, backwards = order
        for action in self._group.actions():
            action.setChecked(action.data() == name)
        self.backwards.setChecked(backwards)
        whole, brief = next((words for one, *words in ORDERS if one == name), (name, name))
        self.call(f"{tr(brief)}{arrow(order)}")
        which = tr_later("Order: {order}, backwards") if backwards else tr_later("Order: {order}")
        said = tr(which, order=tr(whole))
        self.setAccessibleName(said.replace("&", ""))
        self.setToolTip(self.accessibleName())

    def _chosen(self) -> None:
        action = self._group.checkedAction()
        if action is not None:
            self.chosen.emit(str(action.data()), self.order[1])

    def _turned(self, backwards: bool) -> None:  # noqa: FBT001 - Qt hands it on so
        self.chosen.emit(self.order[0], backwards)
