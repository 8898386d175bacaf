"""In which order the lots stand: a menu beside the search field."""

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QActionGroup

from studio_log.ui.lots.list_tool import ToolChip

Order = tuple[str, bool]
"""One of domain.search_text.SORTS, and whether it runs backwards."""
ORDERS: Final = (
    ("need", "What needs &hands first"),
    ("newest", "&Newest first"),
    ("code", "&Code"),
    ("name", "N&ame"),
    ("weight", "&Weight, heaviest first"),
    ("coats", "C&oats, most first"),
    ("age", "Age of the cu&re, oldest first"),
    ("ready", "Rea&dy soonest"),
    ("begun", "Be&gun last, first"),
    ("fibre", "&Fibre"),
    ("shelf", "&Shelf"),
)
FALLING: Final = frozenset({"newest", "weight", "coats", "age", "begun"})
"""Orders that begin with the greatest."""
BACKWARDS: Final = "&Backwards"


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
        super().__init__("By need", "order")
        self.order: Order = ("need", False)
        menu = self.menu()
        self._group = QActionGroup(self)
        for name, words in ORDERS:
            action = menu.addAction(words)
            action.setCheckable(True)
            action.setData(name)
            self._group.addAction(action)
        menu.addSeparator()
        self.backwards = menu.addAction(BACKWARDS)
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
        self.call(f"By {name}{arrow(order)}")
        whole = next((words for one, words in ORDERS if one == name), name).replace("&", "")
        self.setAccessibleName(f"Order: {whole}{', backwards' if backwards else ''}")
        self.setToolTip(self.accessibleName())

    def _chosen(self) -> None:
        action = self._group.checkedAction()
        if action is not None:
            self.chosen.emit(str(action.data()), self.order[1])

    def _turned(self, backwards: bool) -> None:  # noqa: FBT001 - Qt hands it on so
        self.chosen.emit(self.order[0], backwards)
