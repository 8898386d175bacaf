"""An old notebook taken in: what each column is, what becomes of each row, and a way back."""

from functools import partial
from html import escape
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSplitter,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.notebook import FIELDS
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.moving import TakeFolder
from studio_log.services.notebooks import (
    Choices,
    Notebook,
    NotebookFor,
    NotebookReport,
    RowSaid,
    TakeBackLots,
    TakeNotebook,
    TryNotebook,
)
from studio_log.services.questions import Methods, MethodsFor
from studio_log.ui.bridge import Bridge
from studio_log.ui.widgets.parts import Words, em, emptied, scrolled

ABOUT: Final = tr_later(
    "A table of an old notebook, as CSV or XLSX: each row becomes a lot. Say what each column is; "
    "at the right stands what becomes of each row. Nothing is changed until you take it in."
)
NAMES: Final = {
    "": tr_later("left out"),
    "name": tr_later("name of the lot"),
    "begun": tr_later("day it was begun"),
    "dry": tr_later("day it was fully dry"),
    "used": tr_later("day it was used"),
    "cloth": tr_later("cloth, in words"),
    "fibre": tr_later("fibre"),
    "count": tr_later("number of pieces"),
    "length": tr_later("length"),
    "width": tr_later("width"),
    "gsm": tr_later("weight of an area"),
    "weight": tr_later("weight"),
    "method": tr_later("method"),
    "place": tr_later("shelf or place"),
    "note": tr_later("note"),
    "reading": tr_later("reading"),
}
"""What a column can be."""
_SAMPLES: Final = 3


def _said(row: RowSaid) -> str:
    """Give a row's paragraph: a sign, its number, what becomes of it; bold where nothing does."""
    words = f"{'✓' if row.good else '✗'} {row.number}: {escape(row.words)}"
    return f"<p>{words}</p>" if row.good else f"<p><b>{words}</b></p>"


class ImportBox(QDialog):
    """Shows a table, tries it at each change, and takes it in as one act."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._book: Notebook | None = None
        self._codes: tuple[str, ...] = ()
        self.columns: list[QComboBox] = []
        self.setWindowTitle(tr("Take in an old notebook"))
        self._make()
        self._lay_out()
        self.back_button.hide()  # after it was laid out: a box of buttons shows what it takes
        self._connect()
        self._soon = QTimer(self, singleShot=True, interval=150)
        self._soon.timeout.connect(self._try)
        self.resize(980, 640)
        bridge.ask(MethodsFor(), self._show_methods)

    def _make(self) -> None:
        self.choose_button = QPushButton(tr("Choose a &file…"), self)
        self.told = Words(tone="soft")
        self.method = QComboBox(self)
        self.method.setAccessibleName(tr("Method of rows that name none"))
        self.method.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.month_first = QCheckBox(tr("In 6/9/2024 the &month comes first"), self)
        self.leave_out = QCheckBox(tr("&Leave out rows that cannot be read"), self)
        self._grid_holder = QWidget()
        self.grid = QGridLayout(self._grid_holder)
        self.grid.setColumnStretch(1, 1)
        self.rows = QTextBrowser(self)
        self.rows.setAccessibleName(tr("What becomes of each row"))
        self.said = Words()
        self.take_button = QPushButton(tr("&Take it in"), self)
        self.back_button = QPushButton(tr("Take it &back"), self)
        self.close_button = QPushButton(tr("&Close"), self)
        self.take_button.setEnabled(False)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.choose_button)
        head.addWidget(self.told, 1)
        left = QWidget()
        column = QVBoxLayout(left)
        column.addWidget(self._grid_holder)
        label = QLabel(tr("Met&hod of rows that name none"))
        label.setBuddy(self.method)
        for part in (label, self.method, self.month_first):
            column.addWidget(part)
        column.addStretch(1)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(scrolled(left, name=tr("What each column is")))
        split.addWidget(self.rows)
        split.setStretchFactor(0, 2)
        split.setStretchFactor(1, 3)
        split.setChildrenCollapsible(False)
        buttons = QDialogButtonBox(self)
        role = QDialogButtonBox.ButtonRole
        buttons.addButton(self.take_button, role.ActionRole)
        buttons.addButton(self.back_button, role.ActionRole)
        buttons.addButton(self.close_button, role.RejectRole)
        whole = QVBoxLayout(self)
        whole.addWidget(Words(tr(ABOUT), tone="soft"))
        whole.addLayout(head)
        whole.addWidget(split, 1)
        whole.addWidget(self.leave_out)
        whole.addWidget(self.said)
        whole.addWidget(buttons)

    def _connect(self) -> None:
        self.choose_button.clicked.connect(self._choose)
        self.method.currentIndexChanged.connect(self._changed)
        self.month_first.toggled.connect(self._changed)
        self.leave_out.toggled.connect(self._changed)
        self.take_button.clicked.connect(self._take)
        self.back_button.clicked.connect(self._take_back)
        self.close_button.clicked.connect(self.reject)

    def _show_methods(self, methods: Methods) -> None:
        for one in methods:
            self.method.addItem(one.title, one.slug)
        self.method.setCurrentIndex(max(0, self.method.findData(Choices.method)))

    def _choose(self) -> None:
        kinds = tr("Tables and exported studios (*.csv *.txt *.tsv *.xlsx *.zip)")
        chosen, _ = QFileDialog.getOpenFileName(self, tr("Choose a table"), "", kinds)
        if chosen:
            self.open_file(Path(chosen))

    def open_file(self, path: Path) -> None:
        """Look at a table, or take an exported archive into this studio while it is empty."""
        if path.is_dir() or path.suffix.casefold() == ".zip":
            self._bridge.do(TakeFolder(path), self._taken, failed=self._failed)
        else:
            self._bridge.ask(NotebookFor(path), self.show_book, failed=self._failed)

    def show_book(self, book: Notebook) -> None:
        """Show a table with the guess of its columns."""
        self._book, self._codes = book, ()
        self.back_button.hide()
        self.told.setText(
            tr("{name}: {told}, {n} rows", name=book.path.name, told=book.sheet.told,
               n=len(book.sheet.rows))
        )  # fmt: skip
        self.month_first.setChecked(book.month_first)
        emptied(self.grid)
        self.columns = []
        for number, head in enumerate(book.sheet.heads):
            self._add_column(number, head, book)
        self._changed()

    def _add_column(self, number: int, head: str, book: Notebook) -> None:
        cells = (row[number].strip() for row in book.sheet.rows)
        samples = ", ".join([cell for cell in cells if cell][:_SAMPLES])
        words = Words(f"{head[:60]}\n{samples[:80]}" if samples else head[:60])
        box = QComboBox()
        for slug in ("", *FIELDS):
            box.addItem(tr(NAMES[slug]), slug)
        box.setCurrentIndex(box.findData(book.columns[number]))
        box.setAccessibleName(tr("What “{head}” is", head=head[:60]))
        box.setMinimumWidth(em(self, 9))
        box.currentIndexChanged.connect(self._changed)
        self.grid.addWidget(words, number, 0, 1, 2)
        self.grid.addWidget(box, number, 2)
        self.columns.append(box)

    @property
    def choices(self) -> Choices:
        """What is chosen."""
        return Choices(
            tuple(str(box.currentData()) for box in self.columns),
            str(self.method.currentData() or Choices.method),
            self.month_first.isChecked(),
            self.leave_out.isChecked(),
        )

    def _changed(self) -> None:
        if self._book is not None:
            self.take_button.setEnabled(False)
            self._soon.start()

    def _try(self) -> None:
        if self._book is not None:
            question = TryNotebook(self._book.sheet, self.choices)
            self._bridge.ask(question, self._show_report, failed=self._failed)

    def _show_report(self, report: NotebookReport) -> None:
        self.rows.setHtml("".join(map(_said, report.rows)))
        every = len(report.rows)
        self.said.setText(
            tr("{good} of {every} rows can be taken in.", good=report.good, every=every)
        )
        ready = report.good == every or (report.good > 0 and self.leave_out.isChecked())
        self.take_button.setEnabled(ready and not self._codes)

    def _take(self) -> None:
        if self._book is None:
            return
        self.take_button.setEnabled(False)
        command = TakeNotebook(self._book.sheet, self.choices, self._book.path.name)
        self._bridge.do(command, self._taken, failed=self._failed)

    def _taken(self, outcome: Outcome) -> None:
        self._codes = tuple(sorted(outcome.lots - {"*"}))
        self.said.setText(outcome.words)
        self.back_button.setVisible(bool(self._codes))

    def _take_back(self) -> None:
        self.back_button.setEnabled(False)
        done = partial(self._taken_back)
        self._bridge.do(TakeBackLots(self._codes), done, failed=self._failed)

    def _taken_back(self, outcome: Outcome) -> None:
        self._codes = ()
        self.back_button.setEnabled(True)
        self.back_button.hide()
        self.said.setText(outcome.words)
        self.take_button.setEnabled(True)

    def _failed(self, words: str) -> None:
        self.back_button.setEnabled(True)
        self.said.setText(words)
