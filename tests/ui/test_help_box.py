"""Every help page opens from the window, and links between pages are followed."""

import pytest
from PySide6.QtCore import QUrl
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


def test_a_link_leads_to_its_page_and_a_foreign_one_to_the_first(qtbot: QtBot) -> None:
    box = HelpBox(page="keys")
    qtbot.addWidget(box)
    box.text.anchorClicked.emit(QUrl("reminders.md"))
    assert box.pages.currentRow() == [slug for _, slug in PAGES].index("reminders")
    box.text.anchorClicked.emit(QUrl("https://example.invalid/x.md"))
    assert box.pages.currentRow() == 0
