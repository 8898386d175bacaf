"""The window “Baths and vats”: the list at the left, the chosen one and its diary beside it."""

from functools import partial
from typing import Final

from PySide6.QtCore import QSize, Qt, QTimer, Slot
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.journal import Act
from studio_log.language.words import tr, tr_later
from studio_log.services.baths import BathFor, BathLine, BathPage, BathsFor, MarkBath, SetBath
from studio_log.services.commands import Outcome, Redo, Undo
from studio_log.services.questions import LotLines, LotLinesFor
from studio_log.ui.baths.bath_dialog import BathDialog
from studio_log.ui.baths.bath_forms import FORMS, NEW, BathForm
from studio_log.ui.baths.bath_view import BathView
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, scrolled

WIDE: Final = 20
"""Of the list, in line heights; it never takes more than a third."""
STALE_MS: Final = 60_000
NOTHING: Final = tr_later(
    "No bath is kept yet. A chalk bath, a mordant, an indigo vat or a dye bath with its exhausts: "
    "each gets a diary, counts the cloth that went through it, and says when it wants refreshing. "
    "Begin with “New bath”."
)


class BathBox(QDialog):
    """Shows what the studio answers; asks again when a bath has changed."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None, code: str = "") -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Baths and vats — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge = bridge
        self._wanted = code
        self._names: dict[str, str] = {}
        self.page: BathPage | None = None
        self.dialog: BathDialog | None = None
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Baths and vats"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.new = button(tr(NEW.button), kind="primary")
        self.finished_too = QCheckBox(tr("Finished t&oo"))
        self.view = BathView()
        self.empty = Words(tr(NOTHING), tone="soft")
        self.said = Words(tone="soft")
        self.message = MessageBar(bridge)
        self.undo = button(tr("&Undo"))
        self.redo = button(tr("Red&o"))
        self.leave = button(tr("C&lose"))
        self._pages = QStackedWidget()
        self._stale = QTimer(self, interval=STALE_MS)
        self._lay_out()
        self._connect()

    @property
    def code(self) -> str:
        """Code of the chosen bath, "" for none."""
        item = self.list.currentItem()
        return "" if self.list.currentRow() < 0 else str(item.data(Qt.ItemDataRole.UserRole))

    def choose(self, code: str) -> None:
        """Choose a bath, also one that is finished."""
        self._wanted = code
        self.refresh()

    @Slot()
    def refresh(self) -> None:
        """Ask for the list, and through it for the chosen bath."""
        self._bridge.ask(BathsFor(finished=self.finished_too.isChecked()), self._show_list)

    def on_changed(self, outcome: Outcome) -> None:
        """Ask anew where a bath was touched, here or by another program."""
        if outcome.baths or outcome.settings or outcome is FOREIGN:
            self.refresh()

    def open_form(self, form: BathForm) -> None:
        """Open the form of one act on the chosen bath."""
        page = self.page
        code = "" if form is NEW or page is None else page.line.code
        filled = form.filled(page) if code and page is not None else {}
        self.dialog = BathDialog(
            self._bridge, form, code, filled=filled, names=self._names, parent=self
        )
        self.dialog.done_with.connect(self._done)
        self.dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.dialog.open()

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()
        self._bridge.ask(LotLinesFor(), self._learn_names)
        self._stale.start()

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._side.setFixedWidth(min(em(self, WIDE), self.width() // 3))

    def _connect(self) -> None:
        self.list.currentRowChanged.connect(self._turned)
        self.new.clicked.connect(partial(self.open_form, NEW))
        self.finished_too.toggled.connect(self.refresh)
        self.view.act_wanted.connect(self._act)
        self.undo.clicked.connect(self._undo)
        self.redo.clicked.connect(self._redo)
        self.leave.clicked.connect(self.reject)
        self._stale.timeout.connect(self.refresh)
        self._bridge.changed.connect(self.on_changed)

    def _lay_out(self) -> None:
        self._side = QWidget()
        side = QVBoxLayout(self._side)
        side.setContentsMargins(0, 0, 0, 0)
        side.setSpacing(8)
        for widget in (self.new, self.list, self.finished_too):
            side.addWidget(widget)
        blank = QWidget()
        column = QVBoxLayout(blank)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.empty)
        column.addStretch(1)
        self._pages.addWidget(blank)
        self._pages.addWidget(scrolled(self.view, name=tr("The chosen bath")))
        halves = QHBoxLayout()
        halves.setSpacing(12)
        halves.addWidget(self._side)
        halves.addWidget(self._pages, 1)
        foot = FlowLayout(gap=10)
        for part in (growing(self.said), self.undo, self.redo, self.leave):
            foot.addWidget(part)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 12, 16, 12)
        whole.addLayout(halves, 1)
        whole.addWidget(self.message)
        whole.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 66), em(self, 44)).boundedTo(room))

    def _learn_names(self, lines: LotLines) -> None:
        self._names = {one.code: one.name for one in lines.lines}

    def _show_list(self, lines: tuple[BathLine, ...]) -> None:
        wanted = self._wanted or self.code
        codes = [one.code for one in lines]
        if self._wanted and self._wanted not in codes and not self.finished_too.isChecked():
            self.finished_too.setChecked(True)  # asks again, with the finished ones
            return
        self._wanted = ""
        self.list.blockSignals(True)
        self.list.clear()
        for one in lines:
            due = f"\n{one.urgent[:1].upper()}{one.urgent[1:]}" if one.urgent else ""
            item = QListWidgetItem(f"{one.code} {one.name}\n{one.words}{due}", self.list)
            item.setData(Qt.ItemDataRole.UserRole, one.code)
        if codes:
            self.list.setCurrentRow(codes.index(wanted) if wanted in codes else 0)
        self.list.blockSignals(False)
        if not codes:
            self._show_none()
        else:
            self._turned()

    def _show_none(self) -> None:
        self.page = None
        self.empty.setText(tr(NOTHING))
        self._pages.setCurrentIndex(0)
        self._offer_back()

    @Slot()
    def _turned(self) -> None:
        if self.code:
            self._bridge.ask(BathFor(self.code), self._show_page, failed=self.message.refuse)

    def _show_page(self, page: BathPage) -> None:
        if page.line.code != self.code:
            return  # another one has been chosen since
        self.page = page
        self.view.show_page(page)
        self._pages.setCurrentIndex(1)
        self._offer_back()

    def _offer_back(self) -> None:
        page = self.page
        self.undo.setEnabled(bool(page and page.undo))
        self.redo.setEnabled(bool(page and page.redo))
        self.undo.setToolTip(tr("Take back: {words}", words=page.undo) if page else "")
        self.redo.setToolTip(tr("Restore: {words}", words=page.redo) if page and page.redo else "")

    def _act(self, slug: str) -> None:
        if self.page is None:
            return
        code = self.page.line.code
        form = next((one for one in FORMS if one.slug == slug), None)
        if form is not None:
            self.open_form(form)
        elif slug == "withdraw":
            self._do(MarkBath(code, Act.PLAN))
        else:
            self._do(SetBath(code, finished=slug == "finish"))

    def _do(self, command: MarkBath | SetBath | Undo | Redo) -> None:
        self.message.put_away()
        self._bridge.do(
            command, self._done, failed=self.message.refuse, asked=self.message.question
        )

    def _done(self, outcome: Outcome) -> None:
        self.said.setText(" ".join((outcome.words, *outcome.advice)))
        self.dialog = None
        if outcome.code:
            self._wanted = outcome.code

    def _undo(self) -> None:
        if self.page is not None:
            self._do(Undo(self.page.line.code))

    def _redo(self) -> None:
        if self.page is not None:
            self._do(Redo(self.page.line.code))
