"""The journal of a lot: notes at any time, corrections in place, one list that never scrolls."""

from collections.abc import Iterator
from datetime import timedelta
from typing import Any

import pytest
from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import QStyleOptionComboBox
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.services.questions import LotSheetFor
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.entry_tools import EntryTools
from studio_log.ui.lots.journal_list import NUMBER_ROLE
from studio_log.ui.lots.lot_sheet import LotSheetPage
from studio_log.ui.typed import typed
from studio_log.ui.widgets.short_box import ShortBox
from tests.ui.window_kit import WrittenAsk, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", "does not support")


class Kit:
    """The sheet of a lot over a real studio, its journal in front."""

    def __init__(self, qtbot: QtBot, shop: Any) -> None:
        self.shop, self.qtbot = shop, qtbot
        self.code = shop.new()
        shop.mark(self.code, "bean-soak", Act.START)
        shop.clock.move(hours=1)
        shop.mark(self.code, "now", Act.NOTE, note="frothy", readings={"pH": 6.8, "smell": "sweet"})
        self.bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
        self.page = LotSheetPage(self.bridge, WrittenAsk())  # type: ignore[arg-type]
        qtbot.addWidget(self.page)
        self.page.resize(700, 420)
        self.page.show()
        self.page.choose(self.code)
        settle()
        self.page.journal_tab.click()
        settle()
        self.journal = self.page.journal

    def choose(self, number: int) -> EntryTools:
        """Choose the line of an entry and give what stands under it."""
        listed = self.journal.list
        rows = [
            row for row in range(listed.count()) if listed.item(row).data(NUMBER_ROLE) == number
        ]
        listed.setCurrentRow(rows[0])
        settle()
        tools = self.journal.tools
        assert tools is not None
        assert tools.entry.number == number
        return tools

    def words(self) -> list[tuple[str, bool]]:
        """Every line and whether it is struck through."""
        items = (self.journal.list.item(row) for row in range(self.journal.list.count()))
        return [(item.text(), item.font().strikeOut()) for item in items if item.text()]

    @property
    def entries(self) -> Any:
        return self.shop.entries(self.code)


@pytest.fixture
def kit(qtbot: QtBot, shop: Any) -> Iterator[Kit]:
    made = Kit(qtbot, shop)
    yield made
    made.bridge.close()


# -- a note or a reading at any time -------------------------------------------------------


def test_a_note_with_a_reading_is_written_for_the_whole_lot(kit: Kit) -> None:
    form = kit.journal.form
    form.note.setText("the room is colder than usual")
    form.readings.line.setText("room: 14 C")
    form.moment.line.setText("-10m")
    kit.qtbot.mouseClick(form.act, Qt.MouseButton.LeftButton)
    settle()
    last = kit.entries[-1]
    assert (last.act, last.step, last.note) == (Act.NOTE, None, "the room is colder than usual")
    assert dict(last.readings) == {"room": "14 °C"}
    assert last.at == kit.shop.clock.at - timedelta(minutes=10)
    assert form.note.text() == form.readings.text() == form.moment.text() == ""
    assert any("colder than usual" in words for words, _ in kit.words())


@pytest.mark.parametrize("how", [Act.STOP, Act.SKIP])
def test_a_note_is_taken_where_no_step_can_be_marked_any_more(kit: Kit, how: Act) -> None:
    """A stopped lot lies on a shelf for months and is looked over."""
    kit.shop.mark(kit.code, "bean-soak", how, sure=True)
    kit.page.refresh()
    settle()
    kit.journal.form.note.setText("a brown spot at the hem")
    kit.journal.form.send()
    settle()
    assert kit.entries[-1].note == "a brown spot at the hem"


def test_nothing_typed_is_said_and_a_mistake_stays_in_its_field(kit: Kit) -> None:
    form, before = kit.journal.form, kit.entries
    form.send()
    assert "Type a note or a reading" in form.said.words.text()
    form.readings.line.setText("68")
    form.send()
    assert kit.entries == before
    assert form.readings.text() == "68"
    assert "of what?" in form.readings.understood.text()


def test_a_refused_note_is_said_in_the_form_and_stays(kit: Kit) -> None:
    kit.shop.clock.move(minutes=-30)  # the clock is behind: that is a doubt
    kit.journal.form.note.setText("frothy still")
    kit.journal.form.send()
    settle()
    said = kit.journal.form.said
    assert said.isVisible()
    assert "clock" in said.words.text()
    assert kit.journal.form.note.text() == "frothy still"
    said.yes.click()
    settle()
    assert kit.entries[-1].note == "frothy still"


# -- corrections ---------------------------------------------------------------------------


def test_a_reading_is_put_right_and_the_old_one_is_struck_through(kit: Kit) -> None:
    tools = kit.choose(3)
    tools.correct.click()
    settle()
    form = tools.form
    assert form is not None
    assert form.readings.text() == "pH: 6.8; smell: sweet"
    form.readings.line.setText("pH: 7.2; smell: sweet")
    kit.qtbot.mouseClick(form.act, Qt.MouseButton.LeftButton)
    settle()
    last = kit.entries[-1]
    assert (last.act, last.target, dict(last.readings)) == (Act.CORRECT, 3, {"pH": 7.2})
    struck = [words for words, through in kit.words() if through]
    assert len(struck) == 1
    assert "pH 6.8" in struck[0]
    assert "(corrected by entry 4)" in struck[0]
    stands = [words for words, through in kit.words() if words.startswith("now:")]
    assert "pH 7.2" in stands[0]
    assert "smell: sweet" in stands[0]
    sheet = kit.shop.studio.ask(LotSheetFor(kit.code))
    assert sheet.entries[2].readings == {"pH": 7.2, "smell": "sweet"}


def test_time_and_note_are_put_right_alone(kit: Kit) -> None:
    tools = kit.choose(2)
    tools.begin()
    assert tools.form is not None
    tools.form.moment.line.setText("-2h")
    tools.form.note.setText("it was earlier")
    tools.form.send()
    settle()
    last = kit.entries[-1]
    assert last.at == kit.shop.clock.at - timedelta(hours=2)
    assert (last.note, dict(last.readings)) == ("it was earlier", {})
    assert kit.shop.lot(kit.code).step(1).start == last.at


def test_a_correction_without_a_change_is_not_written(kit: Kit) -> None:
    before = kit.entries
    tools = kit.choose(3)
    tools.begin()
    assert tools.form is not None
    tools.form.send()
    settle()
    assert kit.entries == before
    assert "Nothing is changed yet" in tools.form.said.words.text()


def test_a_correction_that_makes_no_sense_is_refused_beside_the_form(kit: Kit) -> None:
    kit.shop.clock.move(hours=12)
    kit.shop.mark(kit.code, "bean-soak", Act.END)
    kit.page.refresh()
    settle()
    before = kit.entries
    tools = kit.choose(4)
    tools.begin()
    assert tools.form is not None
    tools.form.moment.line.setText("-20h")
    tools.form.send()
    settle()
    assert kit.entries == before
    assert "cannot end before it began" in tools.form.said.words.text()
    assert tools.form.moment.text() == "-20h"


def test_a_correction_half_typed_is_there_when_the_entry_is_chosen_again(kit: Kit) -> None:
    tools = kit.choose(3)
    tools.begin()
    assert tools.form is not None
    tools.form.note.setText("a strip, not the m")
    tools.form.draft.keep_now()
    kit.choose(2)
    again = kit.choose(3)
    assert again.form is not None
    assert again.form.note.text() == "a strip, not the m"
    again.form.leave.click()
    settle()
    assert again.form is None
    assert typed().draft(again.key) is None


def test_what_was_taken_back_offers_nothing_and_keys_do_what_buttons_do(kit: Kit) -> None:
    kit.choose(3)
    kit.qtbot.keyClick(kit.journal.list, Qt.Key.Key_Return)
    settle()
    assert kit.journal.tools is not None
    assert kit.journal.tools.form is not None
    kit.qtbot.keyClick(kit.journal.list, Qt.Key.Key_Delete)
    settle()
    assert kit.entries[-1].act is Act.UNDO
    tools = kit.choose(3)
    assert not tools.back.isEnabled()
    assert not tools.correct.isEnabled()
    before = kit.entries
    kit.qtbot.keyClick(kit.journal.list, Qt.Key.Key_Delete)
    settle()
    assert kit.entries == before


# -- one list in one page ------------------------------------------------------------------


def filled(kit: Kit, count: int = 40) -> None:
    for number in range(count):
        kit.shop.clock.move(minutes=2)
        note = f"look {number}: the same as before, " + "and long enough to wrap " * 6
        kit.shop.mark(kit.code, "now", Act.NOTE, note=note)
    kit.page.refresh()
    settle()


def test_the_list_is_as_high_as_its_entries_so_only_the_page_scrolls(kit: Kit) -> None:
    filled(kit)
    listed = kit.journal.list
    kit.qtbot.waitUntil(lambda: listed.verticalScrollBar().maximum() == 0)
    last = listed.visualItemRect(listed.item(listed.count() - 1))
    assert listed.viewport().rect().contains(last)
    assert kit.page.area.verticalScrollBar().maximum() > 1000
    kit.page.resize(420, 420)
    high = listed.height()
    # Narrower: more lines, a higher list.
    kit.qtbot.waitUntil(lambda: listed.height() > high)
    kit.qtbot.waitUntil(lambda: listed.verticalScrollBar().maximum() == 0)


def test_no_entry_is_cut(kit: Kit) -> None:
    filled(kit, 3)
    listed = kit.journal.list
    for row in range(listed.count()):
        item = listed.item(row)
        room = QRect(0, 0, listed.viewport().width() - 32, 10_000)
        words = listed.fontMetrics().boundingRect(room, Qt.TextFlag.TextWordWrap, item.text())
        assert listed.visualItemRect(item).height() >= words.height(), item.text()[:30]


def test_the_chosen_entry_is_brought_in_sight_by_the_page(kit: Kit) -> None:
    filled(kit)
    listed, bar = kit.journal.list, kit.page.area.verticalScrollBar()
    assert bar.value() == 0
    kit.choose(1)
    item = listed.currentItem()
    assert item is not None
    body = kit.page.area.widget()
    assert body is not None
    kit.qtbot.waitUntil(lambda: bar.value() > 0)
    top = listed.viewport().mapTo(body, listed.visualItemRect(item).topLeft()).y()
    assert bar.value() <= top <= bar.value() + kit.page.area.viewport().height()


def test_what_can_be_done_stands_right_under_the_chosen_entry(kit: Kit) -> None:
    filled(kit, 4)
    tools = kit.choose(4)
    listed = kit.journal.list
    item = listed.currentItem()
    assert item is not None
    above, below = listed.visualItemRect(item), tools.geometry()
    assert 0 <= below.top() - above.bottom() < 12
    assert tools.height() >= tools.sizeHint().height() - 8


# -- the box of the cure -------------------------------------------------------------------


def test_a_closed_box_says_the_short_form_and_has_room_for_it(qtbot: QtBot) -> None:
    box = ShortBox()
    qtbot.addWidget(box)
    box.offer("3 days — three days in air, the least for painted cloth", "3 days", 3)
    box.offer("180 days — half a year, kept for a season or longer", "180 days", 180)
    box.show()
    box.resize(box.minimumSizeHint())
    option = QStyleOptionComboBox()
    box.initStyleOption(option)
    assert option.currentText == "3 days"
    assert box.width() > box.fontMetrics().horizontalAdvance("180 days")
    assert box.itemText(0).endswith("painted cloth"), "open it tells each choice at length"
    assert box.currentData() == 3
