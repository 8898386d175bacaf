"""The window “Methods”: a list, a page or two side by side, and the studio's own."""

from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import QCoreApplication, Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QLineEdit,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.errors import Refusal
from studio_log.domain.mass_text import read_grams
from studio_log.domain.method_copy import own_copy
from studio_log.domain.methods import Method
from studio_log.domain.number_text import plain
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import ChangeSettings, ImportMethod, Outcome
from studio_log.services.method_file import read_method_file
from studio_log.services.method_page import CautionsFor, MethodPage, MethodPageFor, differences
from studio_log.services.questions import MethodsFor, SettingsFor
from studio_log.services.settings import Settings
from studio_log.ui.bridge import Bridge
from studio_log.ui.methods.editor import MethodEditor
from studio_log.ui.methods.method_list import MethodList
from studio_log.ui.methods.page_files import FILES, PageFiles
from studio_log.ui.methods.page_html import differences_html
from studio_log.ui.methods.page_view import PageView
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em

SOON_MS: Final = 250
SAFE_MS: Final = 2_000
"""A draft is kept once nothing was changed for so long, whatever happens to the program."""
ALONE: Final = tr_later("Compare with…")
PAGE_GRAMS: Final = "100 g"
UNDO_AWAY: Final = tr_later("The draft before it is one Undo away.")


class MethodBox(QDialog):
    """Reads, compares, copies, edits, exports and imports methods."""

    lot_wanted = Signal(str)
    """Short name of the method with which a lot is to begin."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None, slug: str = "") -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Methods — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self.setAcceptDrops(True)
        self._bridge = bridge
        self._wanted = slug
        self._methods: dict[str, Method] = {}
        self._kept = ""
        self._begun = ""
        self._grams = 100.0
        self.side = MethodList()
        self.list = self.side.list
        self.weight = QLineEdit(PAGE_GRAMS)
        self.weight.setAccessibleName(tr("Amounts for so much cloth"))
        self.understood = Words(tone="soft", size="small")
        self.other_box = QComboBox()
        self.other_box.setAccessibleName(tr("Compare with"))
        self.page, self.other = PageView(), PageView()
        self.parted = PageView()
        self.parted.setAccessibleName(tr("Where they part"))
        self.editor = MethodEditor()
        self.said = Words(tone="soft")
        self.files = PageFiles(self, self.page, self.said.show_words)
        self._soon = QTimer(self, singleShot=True, interval=SOON_MS)
        self._safe = QTimer(self, singleShot=True, interval=SAFE_MS)
        self._lay_out()
        self._connect()

    def refresh(self) -> None:
        """Ask for the methods."""
        self._bridge.ask(CautionsFor(), self.editor.know_cautions)
        self._bridge.ask(SettingsFor(), self._learn)
        self._bridge.ask(MethodsFor(), self._show_methods)

    @property
    def slug(self) -> str:
        """The method shown; "" while there is none."""
        return self.side.slug

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.list.setFocus(Qt.FocusReason.OtherFocusReason)
        self.refresh()

    @override
    def closeEvent(self, event: QCloseEvent) -> None:
        self._keep_draft()
        super().closeEvent(event)

    @override
    def reject(self) -> None:
        self._keep_draft()
        super().reject()

    @override
    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    @override
    def dropEvent(self, event: QDropEvent) -> None:
        files = [url.toLocalFile() for url in event.mimeData().urls() if url.isLocalFile()]
        if files:
            self.take_file(Path(files[0]))

    def take_file(self, path: Path) -> None:
        """Show a file's text with its drawing before anything is kept; say why if it cannot be."""
        try:
            text = read_method_file(path)
        except Refusal as refusal:
            self.said.show_words(str(refusal))
            return
        before = self.editor.draft.text if self._editing else self._kept
        read = tr("Read from {file}. Nothing is kept until it is saved.", file=path.name)
        self._edit(text, read, before)

    def _lay_out(self) -> None:
        self._head = self._made_head()
        self.pages = QSplitter()
        self.pages.setChildrenCollapsible(False)
        for view in (self.page, self.other):
            self.pages.addWidget(view)
        self._read = QSplitter(Qt.Orientation.Vertical)
        self._read.addWidget(self.pages)
        self._read.addWidget(self.parted)
        self.turns = QStackedWidget()
        self.turns.addWidget(self._read)
        self.turns.addWidget(self.editor)
        halves = QHBoxLayout()
        halves.addWidget(self.side)
        halves.addWidget(self.turns, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 12, 16, 12)
        whole.addWidget(self._head)
        whole.addLayout(halves, 1)
        whole.addLayout(self._foot())
        self.other.hide()
        self.parted.hide()
        room = self.screen().availableSize()
        self.resize(min(em(self, 66), room.width()), min(em(self, 44), room.height()))

    def _made_head(self) -> QWidget:
        made = QWidget()
        head = FlowLayout(made, gap=10)
        of = Words(tr("Cloth"))
        of.setWordWrap(False)
        for widget in (of, self.weight, growing(self.understood), self.other_box):
            head.addWidget(widget)
        self.weight.setFixedWidth(em(self, 7))
        self.other_box.setFixedWidth(em(self, 21))
        return made

    def _foot(self) -> FlowLayout:
        self.copy = button(tr("Copy and &edit…"))
        self.begin = button(tr("&New lot with it…"))
        self.to_paper = button(tr("&Print…"))
        self.to_pdf = button(tr("Save as P&DF…"))
        self.export = button(tr("E&xport…"))
        self.fetch = button(tr("&Import…"))
        self.leave = button(tr("&Close"))
        foot = FlowLayout(gap=8)
        for widget in (growing(self.said), *self._reading_acts()):
            foot.addWidget(widget)
        return foot

    def _reading_acts(self) -> tuple[QWidget, ...]:
        """Give the buttons that are there while a page is read."""
        return (
            self.begin, self.copy, self.to_paper, self.to_pdf, self.export, self.fetch, self.leave,
        )  # fmt: skip

    def _connect(self) -> None:
        self._soon.timeout.connect(self._ask)
        self.list.currentRowChanged.connect(self._ask)
        self.other_box.currentIndexChanged.connect(self._ask)
        self.weight.textChanged.connect(self._weigh)
        self.copy.clicked.connect(self._copy)
        self.begin.clicked.connect(self._begin_lot)
        self.to_paper.clicked.connect(self.files.print)
        self.to_pdf.clicked.connect(self.files.save_pdf)
        self.export.clicked.connect(self.files.export)
        self.fetch.clicked.connect(self._fetch)
        self.leave.clicked.connect(self.close)
        self.editor.left.connect(self._leave_editor)
        self.editor.given_up.connect(self._give_up)
        self._safe.timeout.connect(self._keep_draft)
        self.editor.draft.read.connect(self._draft_read)
        app = QCoreApplication.instance()
        if app is not None:
            app.aboutToQuit.connect(self._keep_draft)
        self.editor.saved.connect(self._save)
        self._weigh()

    def _show_methods(self, methods: tuple[Method, ...]) -> None:
        chosen = self._wanted or self.slug
        self._wanted = ""
        self._methods = {one.slug: one for one in methods}
        self._fill_others(methods)
        self.side.show_methods(methods, chosen)
        self._ask()

    def _fill_others(self, methods: tuple[Method, ...]) -> None:
        before = self.other_box.currentData()
        self.other_box.blockSignals(True)
        self.other_box.clear()
        self.other_box.addItem(tr(ALONE), "")
        for one in methods:
            self.other_box.addItem(one.title, one.slug)
        self.other_box.setCurrentIndex(max(self.other_box.findData(before), 0))
        self.other_box.blockSignals(False)

    def _weigh(self) -> None:
        """Say what the weight is understood as; a mistake is said beside it."""
        try:
            self._grams = read_grams(self.weight.text())
        except Refusal as refusal:
            self.understood.set_tone("danger_ink")
            self.understood.setText(str(refusal))
            return
        self.understood.set_tone("soft")
        grams = plain(self._grams, 3)
        self.understood.setText(tr("Amounts for {n} g of cloth", n=grams))
        self._soon.start()

    def _ask(self) -> None:
        self._soon.stop()
        if self.slug:
            question = MethodPageFor(self.slug, self._grams)
            self._bridge.ask(question, self._show_page, failed=self.said.show_words)

    def _show_page(self, page: MethodPage) -> None:
        other = str(self.other_box.currentData() or "")
        beside = other in self._methods and other != page.slug
        self.other.setVisible(beside)
        self.parted.setVisible(beside)
        self.page.show_page(page)
        if beside:
            question = MethodPageFor(other, self._grams)
            self._bridge.ask(question, partial(self._show_other, page))

    def _show_other(self, page: MethodPage, other: MethodPage) -> None:
        self.other.show_page(other)
        hours = max(self.page.hours(), self.other.hours())
        self.page.show_page(page, hours)
        self.other.show_page(other, hours)
        self.parted.setHtml(differences_html(differences(page.method, other.method)))
        height = self._read.height()
        self._read.setSizes([height * 2 // 3, height // 3])

    def _copy(self) -> None:
        if self.page.page is not None:
            known = {one.slug: one.version for one in self._methods.values()}
            text = own_copy(self.page.page.method, known)
            if self._kept:
                self._edit(
                    self._kept,
                    tr("The draft you left is here again. Give it up to begin with another."),
                )
                self._begun = ""
            else:
                self._edit(text, tr("A copy: the method it came from stays."))

    @property
    def _editing(self) -> bool:
        return self.turns.currentIndex() == 1

    def _edit(self, text: str, words: str, before: str = "") -> None:
        """Turn to the editor; where a draft gives way, it is one step back."""
        self._begun = text
        self.turns.setCurrentIndex(1)
        self.editor.edit(before or text)
        if before and before != text:
            self.editor.draft.change(lambda _before: text)
            words = f"{words} {tr(UNDO_AWAY)}"
        self.said.show_words(words)
        self._is_editing(editing=True)

    def _is_editing(self, *, editing: bool) -> None:
        for widget in (self.side, self._head, *self._reading_acts()):
            widget.setVisible(not editing)

    def _learn(self, settings: Settings) -> None:
        self._kept = settings.method_draft

    def _draft_read(self, _draft: object) -> None:
        self._safe.start()

    def _keep_draft(self) -> None:
        """Keep what is being written in the studio, once it differs from what it began as."""
        text = self.editor.draft.text
        if self._editing and text not in (self._begun, self._kept):
            self._put_draft(text)

    def _put_draft(self, text: str) -> None:
        if text != self._kept:
            self._kept = text
            self._bridge.do(ChangeSettings({"method_draft": text}), failed=self.said.show_words)

    def _leave_editor(self) -> None:
        self._keep_draft()
        self._turn_back(tr("The draft is kept.") if self._kept else "")

    def _give_up(self) -> None:
        self._turn_back(tr("The draft is given up. Nothing else was changed."))
        self._put_draft("")

    def _turn_back(self, words: str) -> None:
        self._safe.stop()
        self.turns.setCurrentIndex(0)
        self._is_editing(editing=False)
        self.said.show_words(words)

    def _save(self, text: str) -> None:
        command = ImportMethod(text=text, name="the text")
        self._bridge.do(command, self._saved, failed=self.editor.refuse)

    def _saved(self, outcome: Outcome) -> None:
        self._turn_back(outcome.words)
        self._put_draft("")
        self.refresh()

    def _begin_lot(self) -> None:
        if self.slug:
            self.lot_wanted.emit(self.slug)

    def _fetch(self) -> None:
        path, _ = QFileDialog.getOpenFileName(self, tr("Import a method"), "", tr(FILES))
        if path:
            self.take_file(Path(path))
