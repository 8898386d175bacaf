"""The window “Swatches”: all of them in their true colour, the chosen one beside them."""

from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import QMimeData, QSize, Qt, QTimer, Signal, Slot
from PySide6.QtGui import (
    QDragEnterEvent,
    QDropEvent,
    QKeySequence,
    QResizeEvent,
    QShortcut,
    QShowEvent,
)
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFileDialog,
    QHBoxLayout,
    QStackedWidget,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.present.swatch_card import CardFacts
from studio_log.services.commands import Outcome
from studio_log.services.swatches import (
    CardsFor,
    LightTest,
    NoteSwatch,
    SetSwatch,
    SwatchesFor,
    SwatchesThere,
    SwatchFor,
    SwatchPage,
)
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.kept.kept_box import KeptBox
from studio_log.ui.swatches.card_dialog import CardDialog
from studio_log.ui.swatches.forms import CHANGE, GRADE, LIGHT, NEW, READ, REMARK, SwatchForm
from studio_log.ui.swatches.instrument_box import InstrumentBox
from studio_log.ui.swatches.near_box import NearBox
from studio_log.ui.swatches.photo_box import PhotoBox
from studio_log.ui.swatches.swatch_dialog import SwatchDialog
from studio_log.ui.swatches.swatch_pane import SwatchPane
from studio_log.ui.swatches.swatch_view import SwatchView
from studio_log.ui.swatches.tiles import PAGE
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.find_line import FindLine
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import button, em, scrolled

ORDERS: Final = (
    ("newest", tr_later("newest first")),
    ("code", tr_later("by code")),
    ("lot", tr_later("by lot")),
    ("light", tr_later("lightest first")),
    ("dark", tr_later("darkest first")),
)
SIZE: Final = QSize(72, 44)
TYPING_MS: Final = 180
PLANE_MOST: Final = 5_000
"""Swatches shown by colour at once."""


class SwatchBox(KeptBox[SwatchPage]):
    """Shows what the studio answers; asks again when a swatch has changed."""

    lot_wanted = Signal(str)
    title = tr_later("Swatches — Studio Log")
    lots = "all"

    def __init__(
        self, bridge: Bridge, parent: QWidget | None = None, code: str = "", lot: str = ""
    ) -> None:
        super().__init__(bridge, parent, code)
        self.setAcceptDrops(True)
        self.lot = lot
        """The lot that a new swatch is offered to be cut from."""
        self.pane = SwatchPane()
        self.search = FindLine(tr("Find: lot, name, method, place"), tr("Find swatches"))
        self.order = QComboBox()
        self.ended_too = QCheckBox(tr("Those no longer &kept"))
        self.new = button(tr("&New swatch…"), kind="primary")
        self.by_colour = button(tr("Find by &colour…"))
        self.view = SwatchView()
        self._right = QStackedWidget()
        self._soon = QTimer(self, singleShot=True, interval=TYPING_MS)
        self._lay_out()
        self._connect()

    @property
    @override
    def code(self) -> str:
        return self.pane.code

    @override
    def choose(self, code: str) -> None:
        """Choose a swatch, whatever was looked for."""
        self.search.clear()
        super().choose(code)

    @Slot()
    @override
    def refresh(self) -> None:
        self._bridge.ask(self._question(0), self._show_list, failed=self.message.refuse)

    @override
    def on_changed(self, outcome: Outcome) -> None:
        if outcome.swatches or outcome.lots or outcome.settings or outcome is FOREIGN:
            self.refresh()

    def open_form(self, form: SwatchForm) -> SwatchDialog:
        """Open a form for the chosen swatch, or for a new one."""
        code = "" if form is NEW or self.page is None else self.page.line.code
        box = SwatchDialog(
            self._bridge, form, code, filled=self._filled(form), names=self._names, parent=self
        )
        box.done_with.connect(self._done)
        self._open(box)
        return box

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.search.setFocus(Qt.FocusReason.OtherFocusReason)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._right.setFixedWidth(max(min(em(self, 27), self.width() * 2 // 5), em(self, 15)))

    @override
    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if event.mimeData().hasUrls() and self.page is not None:
            event.acceptProposedAction()

    @override
    def dropEvent(self, event: QDropEvent) -> None:
        event.acceptProposedAction()
        self.take(event.mimeData())

    def take(self, mime: QMimeData) -> None:
        """Read the chosen swatch's colour from a photo that was dropped."""
        files = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
        if files and self.page is not None:
            self.read_photo(files[0])

    def _question(self, offset: int) -> SwatchesFor:
        return SwatchesFor(
            find=self.search.text(),
            ended=self.ended_too.isChecked(),
            order=str(self.order.currentData()),
            limit=PAGE,
            offset=offset,
        )

    def _filled(self, form: SwatchForm) -> dict[str, str]:
        if form is NEW:
            return {"lot": f"{self.lot} {self._names.get(self.lot, '')}".strip()}
        page = self.page
        if form is not CHANGE or page is None:
            return {}
        line = page.line
        return {"name": line.name, "place": line.place, "test_place": line.test_place or ""}

    def _connect(self) -> None:
        self.pane.chosen.connect(self._turned)
        self.pane.more_wanted.connect(self._more)
        self.pane.plane_wanted.connect(self._ask_plane)
        self.pane.far_chosen.connect(self.choose)
        self.pane.saved.connect(self.said.setText)
        self.pane.refused.connect(self.message.refuse)
        self.search.textChanged.connect(self._soon.start)
        self.search.down.connect(self.pane.grid.setFocus)
        self._soon.timeout.connect(self.refresh)
        self.order.currentIndexChanged.connect(self.refresh)
        self.ended_too.toggled.connect(self.refresh)
        self.new.clicked.connect(partial(self.open_form, NEW))
        self.by_colour.clicked.connect(partial(self._act, "colour"))
        self.view.act_wanted.connect(self._act)
        self.view.lot_wanted.connect(self._to_lot)
        QShortcut(QKeySequence.StandardKey.Find, self).activated.connect(self.search.setFocus)

    def _lay_out(self) -> None:
        for value, words in ORDERS:
            self.order.addItem(tr(words), value)
        self.order.setAccessibleName(tr("Order of the swatches"))
        calm(self.order)
        self.search.setMinimumWidth(em(self, 12))
        head = FlowLayout(gap=8)
        for widget in (self.new, self.by_colour, growing(self.search), self.order, self.ended_too):
            head.addWidget(widget)
        self._right.addWidget(QWidget())
        self._right.addWidget(scrolled(self.view, name=tr("The chosen swatch")))
        halves = QHBoxLayout()
        halves.setSpacing(12)
        halves.addWidget(self.pane, 1)
        halves.addWidget(self._right)
        self.lay_out([head, halves], SIZE)

    def _show_list(self, there: SwatchesThere) -> None:
        wanted = self._wanted or self.code
        self._wanted = ""
        first = not self.pane.model.lines and bool(there.lines)
        self.pane.show_list(there, wanted, searching=bool(self.search.text().strip()))
        if first and not self.search.text():
            self.pane.grid.setFocus(Qt.FocusReason.OtherFocusReason)
        self._turned()

    def _ask_plane(self) -> None:
        ages = self.pane.ages_wanted
        asked = replace(self._question(0), read_only=True, limit=PLANE_MOST, ages=ages)
        self._bridge.ask(asked, self.pane.show_plane, failed=self.message.refuse)

    @Slot(int)
    def _more(self, offset: int) -> None:
        self._bridge.ask(self._question(offset), self.pane.add)

    @Slot()
    def _turned(self) -> None:
        if self.code:
            self._bridge.ask(SwatchFor(self.code), self._show_page, failed=self.message.refuse)
        else:
            self.page = None
            self._right.setCurrentIndex(0)
            self._offer_back()

    def _show_page(self, page: SwatchPage) -> None:
        if page.line.code != self.code:
            return  # another one has been chosen since
        self.page = page
        self.pane.plot.choose(page.line.code)
        self.view.show_page(page)
        self._right.setCurrentIndex(1)
        self._offer_back()

    def _act(self, slug: str) -> None:
        forms = {"typed": READ, "grade": GRADE, "remark": REMARK, "change": CHANGE,
                 "light": LIGHT}  # fmt: skip
        if slug in forms:
            self.open_form(forms[slug])
        elif slug == "instrument" and self.page is not None:
            self.read_instrument()
        elif slug == "photo" and self.page is not None:
            self.read_photo()
        elif slug in {"near", "colour"}:
            self.find_near()
        elif self.page is not None:
            self._act_on(self.page.line.code, slug)

    def _act_on(self, code: str, slug: str) -> None:
        if slug == "card":
            self._bridge.ask(CardsFor((code,)), self.print_cards)
        elif slug == "picture":
            self.keep_picture()
        elif slug == "light_end":
            self._do(LightTest(code, ended=True))
        elif slug in {"ended", "kept"}:
            self._do(SetSwatch(code, ended=slug == "ended"))

    def read_photo(self, path: Path | None = None) -> PhotoBox:
        """Open a photo to read the chosen swatch's colour from."""
        box = PhotoBox(self._bridge, self.page.line.code if self.page is not None else "", self)
        box.read.connect(self._done)
        self._open(box)
        if path is not None:
            box.open_photo(path)
        return box

    def read_instrument(self) -> InstrumentBox:
        """Open what an instrument wrote, pasted or from a file."""
        box = InstrumentBox(self._bridge, self.page.line.code if self.page else "", self)
        box.read.connect(self._done)
        self._open(box)
        return box

    def _photo_for(self, near: NearBox) -> None:
        """Open a photo to look for what is near a colour in it."""
        box = PhotoBox(self._bridge, parent=near)
        box.colour_found.connect(near.take)
        self._open(box)

    def find_near(self) -> NearBox:
        """Open the search by colour, at the colour of the chosen swatch."""
        box = NearBox(self._bridge, self, self.page.line if self.page is not None else None)
        box.swatch_wanted.connect(self.choose)
        box.photo_wanted.connect(partial(self._photo_for, box))
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.show()
        self.dialog = box
        return box

    def print_cards(self, facts: tuple[CardFacts, ...]) -> None:
        """Show cards before they go to a printer or into a file."""
        self._open(CardDialog(facts, self))

    def keep_picture(self, path: str = "") -> None:
        """Keep a picture with the chosen swatch; asks which where none is given."""
        if self.page is None:
            return
        kinds = tr("Pictures (*.jpg *.jpeg *.png *.webp)")
        chosen = path or QFileDialog.getOpenFileName(self, tr("Keep a picture"), "", kinds)[0]
        if chosen:
            self._do(NoteSwatch(self.page.line.code, path=Path(chosen)))

    def _to_lot(self, code: str) -> None:
        self.lot_wanted.emit(code)
        self.accept()
