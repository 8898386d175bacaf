"""The help pages, read in a window of their own."""

from pathlib import Path
from typing import Final

from PySide6.QtCore import QSize, Qt, QUrl
from PySide6.QtGui import QKeySequence, QShortcut, QTextCursor
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr, tr_later
from studio_log.ui.theme.icons import icon_folder
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import Words, em

PAGES: Final = (
    (tr_later("Getting started"), "getting_started"),
    (tr_later("How times may be typed"), "times"),
    (tr_later("The timeline"), "timeline"),
    (tr_later("Hours"), "hours"),
    (tr_later("Reminders"), "reminders"),
    (tr_later("Reminders without the window"), "reminding"),
    (tr_later("Across the room"), "across"),
    (tr_later("Methods"), "methods"),
    (tr_later("Dyes and materials"), "dyes"),
    (tr_later("Calculator"), "calculator"),
    (tr_later("The stock"), "stock"),
    (tr_later("Baths and vats"), "baths"),
    (tr_later("Planning"), "plan"),
    (tr_later("Swatches"), "swatches"),
    (tr_later("Colour"), "colour"),
    (tr_later("Trials"), "trials"),
    (tr_later("Calendar and copies"), "keeping"),
    (tr_later("Several laptops"), "laptops"),
    (tr_later("Paper, out and in"), "paper"),
    (tr_later("Safety"), "safety"),
    (tr_later("Keys"), "keys"),
    (tr_later("Commands"), "commands"),
    (tr_later("Sources of the figures"), "sources"),
    (tr_later("What is new"), "whats_new"),
)
MISSING: Final = tr_later("This page is missing from the installation. Install the program anew.")


def help_folder() -> Path:
    """Give the folder of the help pages, beside the icons."""
    return icon_folder().parent / "help"


class HelpBox(QDialog):
    """A list of pages and the page; links between pages are followed, others are not."""

    def __init__(self, parent: QWidget | None = None, page: str = "getting_started") -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Help — Studio Log"))
        self.resize(em(self, 60), em(self, 40))
        self.finder = QLineEdit()
        self.finder.setPlaceholderText(tr("Find on this page"))
        self.finder.setAccessibleName(tr("Find on this page"))
        self.finder.setClearButtonEnabled(True)
        self.found = Words(tone="soft", size="small")
        self.pages = QListWidget()
        self.pages.setAccessibleName(tr("Help pages"))
        for narrow in (self.pages, self.finder, self.found):
            narrow.setMaximumWidth(em(self, 16))
        self.text = QTextBrowser()
        self.text.setOpenLinks(False)
        self.text.setAccessibleName(tr("Help page"))
        # A list filled before it is shown keeps rows too low for the style's padding.
        row_height = QSize(0, round(theme().metrics.line * 1.8))
        for title, _ in PAGES:
            item = QListWidgetItem(tr(title), self.pages)
            item.setSizeHint(row_height)
        side = QVBoxLayout()
        for widget in (self.finder, self.found, self.pages):
            side.addWidget(widget)
        row = QHBoxLayout(self)
        row.addLayout(side)
        row.addWidget(self.text, 1)
        QShortcut(QKeySequence.StandardKey.Find, self, self._to_find)
        self.finder.textEdited.connect(self._look_anew)
        self.finder.returnPressed.connect(self._look_on)
        self.pages.currentRowChanged.connect(self._show_row)
        self.text.anchorClicked.connect(self._follow)
        self.show_page(page)

    def show_page(self, slug: str) -> None:
        """Show one page by its file's name."""
        slugs = [name for _, name in PAGES]
        self.pages.setCurrentRow(slugs.index(slug) if slug in slugs else 0)

    def _to_find(self) -> None:
        self.finder.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.finder.selectAll()

    def _look_anew(self) -> None:
        """Find from the head of the page as it is typed."""
        self.text.moveCursor(QTextCursor.MoveOperation.Start)
        self._look_on()

    def _look_on(self) -> None:
        """Find the next place, from the head again after the last."""
        words = self.finder.text()
        found = not words or self.text.find(words)
        if not found:
            self.text.moveCursor(QTextCursor.MoveOperation.Start)
            found = self.text.find(words)
        self.found.show_words("" if found else tr("Not on this page."))

    def _show_row(self, row: int) -> None:
        path = help_folder() / f"{PAGES[row][1]}.md"
        try:
            self.text.setMarkdown(path.read_text(encoding="utf-8"))
        except OSError:
            self.text.setPlainText(tr(MISSING))

    def _follow(self, link: QUrl) -> None:
        self.show_page(Path(link.path()).stem)
