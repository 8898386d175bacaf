"""The window of copies: listed, taken, compared, put back after the question, and elsewhere."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.services.commands import Mark
from studio_log.services.places import Places, read_places
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.keeping.copies_box import CopiesBox
from tests.support.fixtures import Workshop
from tests.ui.window_kit import press, settle, text

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge) -> Iterator[CopiesBox]:
    made = CopiesBox(bridge)
    qtbot.addWidget(made)
    made.show()
    settle()
    yield made
    made.close()


def rows(box: CopiesBox) -> list[str]:
    return [box.rows.item(row).text() for row in range(box.rows.count())]


def test_todays_copy_is_listed_and_taken_anew(box: CopiesBox, shop: Workshop, qtbot: QtBot):
    assert len(rows(box)) == 1
    assert rows(box)[0].startswith("today · of the day · ")
    shop.new("written after the copy")
    press(qtbot, box.take)
    assert text(box.message.words) == "A copy is kept."
    box.rows.setCurrentRow(0)
    settle()
    assert "Both hold the same journal." in text(box.told)


def test_a_copy_is_put_back_after_its_changes_were_seen(
    box: CopiesBox, shop: Workshop, qtbot: QtBot
):
    code = shop.new("before")
    press(qtbot, box.take)
    shop.mark(code, "1", Act.START)
    later = shop.new("after")
    assert not box.back.isHidden()
    box.rows.setCurrentRow(0)
    settle()
    assert f"gone of {code}." in text(box.told)
    assert f"gone with it: {later}." in text(box.told)
    press(qtbot, box.back)
    assert "Put this copy back?" in text(box.message.words)
    assert later in shop.everything(), "nothing yet"
    press(qtbot, box.message.no)
    assert later in shop.everything()
    press(qtbot, box.back)
    press(qtbot, box.message.yes)
    assert later not in shop.everything()
    assert [entry.act for entry in shop.entries(code)] == [Act.NEW]
    assert shop.lot(code).steps[0].start is None, "nothing is remembered of what is gone"
    assert any("what a copy replaced" in row for row in rows(box))
    assert "Both hold the same journal." in text(box.told), "as it is now, not as it was"


def test_every_page_asks_anew_after_a_copy_was_put_back(
    box: CopiesBox, shop: Workshop, qtbot: QtBot
):
    heard: list[object] = []
    box._bridge.changed.connect(heard.append)
    shop.new()
    press(qtbot, box.take)
    box.rows.setCurrentRow(0)
    settle()
    assert FOREIGN not in heard
    press(qtbot, box.back)
    press(qtbot, box.message.yes)
    assert FOREIGN in heard


def test_what_was_replaced_can_be_put_back_in_turn(box: CopiesBox, shop: Workshop, qtbot: QtBot):
    press(qtbot, box.take)
    code = shop.new("after")
    box.rows.setCurrentRow(0)
    settle()
    press(qtbot, box.back)
    press(qtbot, box.message.yes)
    assert code not in shop.everything()
    row = next(at for at, words in enumerate(rows(box)) if "replaced" in words)
    box.rows.setCurrentRow(row)
    settle()
    assert f"back with it: {code}." in text(box.told)
    press(qtbot, box.back)
    press(qtbot, box.message.yes)
    assert code in shop.everything()
    assert shop.do(Mark(code, "1", Act.START)).lots == {code}


def test_a_copy_to_a_file_and_a_file_that_is_none(
    box: CopiesBox, shop: Workshop, qtbot: QtBot, tmp_path: Path
):
    code = shop.new()
    box.pick_file = lambda _parent: str(tmp_path / "mine.sqlite3")
    press(qtbot, box.to_file)
    assert text(box.message.words) == f"A copy of the studio is in {tmp_path}/mine.sqlite3."
    letter = tmp_path / "letter.sqlite3"
    letter.write_text("Dear all")
    box.pick_copy = lambda _parent: str(letter)
    press(qtbot, box.from_file)
    assert "not a whole copy of a studio" in text(box.message.words)
    assert code in shop.everything()
    box.pick_copy = lambda _parent: str(tmp_path / "mine.sqlite3")
    press(qtbot, box.from_file)
    assert "Both hold the same journal." in text(box.message.words)


def test_another_disk_is_chosen_and_given_up(
    box: CopiesBox, shop: Workshop, qtbot: QtBot, tmp_path: Path
):
    box._choose_place(str(tmp_path))
    settle()
    assert read_places(shop.studio.folder) == Places(copies=str(tmp_path))
    assert text(box.elsewhere.where) == str(tmp_path)
    press(qtbot, box.elsewhere.drop)
    assert read_places(shop.studio.folder) == Places()
    box._choose_place(str(shop.studio.folder))
    settle()
    assert "the studio’s own folder" in text(box.elsewhere.fault)
