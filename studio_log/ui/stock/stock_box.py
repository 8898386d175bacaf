"""The window “Stock”: materials on one page, what to buy on the other."""

from functools import partial
from typing import Final

from PySide6.QtCore import QSize, Qt, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QButtonGroup, QDialog, QStackedWidget, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Outcome, Undo
from studio_log.services.stock import (
    SetMaterial,
    ShoppingFor,
    ShoppingLine,
    StockFor,
    StockLine,
)
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.stock.shelf_page import ShelfPage
from studio_log.ui.stock.shopping_page import ShoppingPage
from studio_log.ui.stock.stock_form import StockForm
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, one_of

PAGES: Final = (tr_later("&Materials"), tr_later("What to bu&y"))
ACTS: Final = (
    ("buy", tr_later("&Bought…")),
    ("draw", tr_later("&Taken…")),
    ("count", tr_later("&Counted…")),
)


class StockBox(QDialog):
    """Shows and changes the stock."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Stock — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge = bridge
        self.shelf, self.shopping = ShelfPage(), ShoppingPage()
        self.turns = QStackedWidget()
        for page in (self.shelf, self.shopping):
            self.turns.addWidget(page)
        self.chips = self._make_chips()
        self.new = button(tr("&New material…"), kind="primary")
        self.moves = {act: button(tr(words)) for act, words in ACTS}
        self.back = button(tr("Take b&ack"))
        self.gone = button(tr("&Kept no longer"), kind="quiet")
        self.close_it = button(tr("C&lose"))
        self.message = MessageBar(bridge)
        self._lay_out()
        self._connect()
        self._chosen(None)

    @Slot()
    def refresh(self, choose: str = "") -> None:
        """Ask for both lists anew."""
        self._bridge.ask(StockFor(), partial(self._show_shelf, choose))
        self._bridge.ask(ShoppingFor(self.shopping.within), self._show_shopping)

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()

    def open_form(self, act: str) -> StockForm:
        """Open a form for the chosen material, or for a new one."""
        form = StockForm(self._bridge, act, None if act == "new" else self.shelf.line, self)
        form.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        form.done_with.connect(lambda outcome: self.refresh(outcome.code))
        form.open()
        return form

    def _show_shelf(self, choose: str, lines: tuple[StockLine, ...]) -> None:
        self.shelf.show_lines(lines, choose)

    def _show_shopping(self, lines: tuple[ShoppingLine, ...]) -> None:
        self.shopping.show_lines(lines)

    @Slot(object)
    def _chosen(self, line: StockLine | None) -> None:
        for made in (*self.moves.values(), self.back, self.gone):
            made.setEnabled(line is not None)

    def _take_back(self) -> None:
        if self.shelf.line is not None:
            self._send(Undo(self.shelf.line.code))

    def _end(self) -> None:
        if self.shelf.line is not None:
            self._send(SetMaterial(self.shelf.line.code, ended=True))

    def _send(self, command: Undo | SetMaterial) -> None:
        self.message.put_away()
        self._bridge.do(command, self._done, failed=self.message.refuse)

    def _done(self, outcome: Outcome) -> None:
        self.message.advise(outcome.words)
        self.refresh()

    def _make_chips(self) -> QButtonGroup:
        titles = map(tr, PAGES)
        rows = ((at, words, words.replace("&", "")) for at, words in enumerate(titles))
        return one_of(self, rows, chosen=0)

    def _lay_out(self) -> None:
        head = FlowLayout(gap=8)
        for at in range(len(PAGES)):
            head.addWidget(self.chips.button(at))
        head.addWidget(growing(Words()))
        head.addWidget(self.new)
        foot = FlowLayout(gap=8)
        for widget in (*self.moves.values(), self.back, self.gone, growing(Words()), self.close_it):
            foot.addWidget(widget)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(12)
        whole.addLayout(head)
        whole.addWidget(self.turns, 1)
        whole.addWidget(self.message)
        whole.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 62), em(self, 42)).boundedTo(room))

    def _connect(self) -> None:
        self.chips.idClicked.connect(self._turn)
        self.new.clicked.connect(partial(self.open_form, "new"))
        for act, made in self.moves.items():
            made.clicked.connect(partial(self.open_form, act))
        self.back.clicked.connect(self._take_back)
        self.gone.clicked.connect(self._end)
        self.close_it.clicked.connect(self.reject)
        self.shelf.chosen.connect(self._chosen)
        self.shopping.asked.connect(self.refresh)

    @Slot(int)
    def _turn(self, page: int) -> None:
        self.turns.setCurrentIndex(page)
        for made in (*self.moves.values(), self.back, self.gone):
            made.setVisible(page == 0)
