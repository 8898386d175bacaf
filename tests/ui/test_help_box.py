"""Every help page opens from the window, and links between pages are followed."""

import pytest
from PySide6.QtCore import Qt, QUrl
from pytestqt.qtbot import QtBot

from studio_log.ui.help_box import MISSING, PAGES, HelpBox


@pytest.mark.parametrize("slug", [slug for _, slug in PAGES])
def test_every_page_is_there_with_its_heading(qtbot: QtBot, slug: str) -> None:
    box = HelpBox(page=slug)
    qtbot.addWidget(box)
    words = box.text.toPlainText()
    assert words != MISSING
    assert len(words) > 200
    assert "#" not in words.splitlines()[0], "a heading, not its mark-up"


def test_a_key_is_found_on_its_page_and_what_is_not_there_is_said(qtbot: QtBot) -> None:
    box = HelpBox(page="keys")
    qtbot.addWidget(box)
    qtbot.keyClicks(box.finder, "Ctrl+M")
    assert box.text.textCursor().selectedText() == "Ctrl+M"
    qtbot.keyClicks(box.finder, "oon")
    assert box.found.text() == "Not on this page."
    box.finder.clear()
    qtbot.keyClicks(box.finder, "lot")
    first = box.text.textCursor().position()
    qtbot.keyClick(box.finder, Qt.Key.Key_Return)
    assert box.text.textCursor().position() > first


def test_a_link_leads_to_its_page_and_a_foreign_one_to_the_first(qtbot: QtBot) -> None:
    box = HelpBox(page="keys")
    qtbot.addWidget(box)
    box.text.anchorClicked.emit(QUrl("reminders.md"))
    assert box.pages.currentRow() == [slug for _, slug in PAGES].index("reminders")
    box.text.anchorClicked.emit(QUrl("https://example.invalid/x.md"))
    assert box.pages.currentRow() == 0
