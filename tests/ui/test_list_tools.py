"""Above the list: chips of a search, the menus of filters and orders; the list as a table."""

from collections.abc import Iterator
from contextlib import closing
from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studio_log.domain.search_text import SORTS, read_search, search_words
from studio_log.services.commands import SetLot
from studio_log.services.questions import SettingsFor
from studio_log.services.search import COLUMNS
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.list_cells import TABLE
from studio_log.ui.lots.list_filters import FILTERS, begun_words
from studio_log.ui.lots.list_order import ORDERS
from studio_log.ui.lots.list_table import LotTable
from studio_log.ui.lots.lot_list import LotList
from tests.support.fixtures import Workshop
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def lots(qtbot: QtBot, shop: Workshop) -> Iterator[LotList]:
    codes = [shop.new(name) for name in ("Runners", "Aprons", "Shirt")]
    for code, grams, place in zip(codes, (300.0, 900.0, 120.0), ("b", "a", ""), strict=True):
        shop.do(SetLot(code, grams=grams, place=place))
    with closing(Bridge(InlineWorker(), shop.studio, shop.clock)) as bridge:
        made = LotList(bridge)
        qtbot.addWidget(made)
        made.resize(900, 600)
        made.show()
        made.refresh()
        settle()
        yield made


def search(lots: LotList, words: str) -> None:
    lots.search.setText(words)
    lots.refresh()
    settle()


def names(lots: LotList) -> list[str]:
    return [line.name for line in lots.model.lines]


def heads(table: LotTable) -> list[str]:
    head = table.horizontalHeader()
    shown = [at for at in range(head.count()) if not head.isSectionHidden(at)]
    return [COLUMNS[at] for at in sorted(shown, key=head.visualIndex)]


def said_of(table: LotTable, name: str) -> str:
    return str(table.cells.headerData(COLUMNS.index(name), Qt.Orientation.Horizontal))


def test_each_part_is_a_chip_and_a_key_takes_it_away(lots: LotList) -> None:
    search(lots, "linen over 200 g, planned, runn")
    chips = [chip for chip in lots.understood.chips if chip.isVisible()]
    assert [chip.text() for chip in chips] == ["linen ×", "over 200 g ×", "planned ×", "“runn” ×"]
    assert chips[1].accessibleName() == "Take away: over 200 g"
    assert lots.search.nextInFocusChain() is chips[0], "Tab leads from the field to its parts"
    assert chips[0].nextInFocusChain() is chips[1]
    chips[0].setFocus()
    QTest.keyClick(chips[0], Qt.Key.Key_Right)
    assert chips[1].hasFocus()
    QTest.keyClick(chips[1], Qt.Key.Key_Delete)
    settle()
    assert lots.search.text() == "linen, planned, “runn”"
    assert lots.understood.parts == ("linen", "planned", "“runn”")
    assert chips[1].hasFocus(), "the keyboard stays near"
    for _ in range(3):
        QTest.keyClick(lots.understood.chips[0], Qt.Key.Key_Backspace)
        settle()
    assert lots.search.text() == ""
    assert lots.search.hasFocus()
    assert not lots.understood.isVisible()


@pytest.mark.parametrize("menu", FILTERS, ids=lambda one: one[0].strip("&"))
def test_every_filter_of_the_menu_is_understood_as_it_stands(menu) -> None:
    for words in menu[1]:
        found = search_words(read_search(words, date(2026, 6, 9)))
        assert len(found) == 1, words
        assert not found[0].startswith("“"), words


def test_the_months_of_the_menu_are_those_behind() -> None:
    offered = tuple(begun_words(date(2026, 2, 9)))
    assert offered[:3] == ("since February 2026", "since January 2026", "since December 2025")
    for words in offered:
        found = search_words(read_search(words, date(2026, 2, 9)))
        assert len(found) == 1
        assert found[0].startswith(("since 1 ", "begun in 20")), words


def test_a_filter_from_the_menu_stands_in_the_field_and_unsays_one_of_its_sort(
    lots: LotList,
) -> None:
    search(lots, "over 100 g")
    lots.head.filter.fill()
    weights = lots.head.filter.menu().actions()[1].menu()
    weights.actions()[1].trigger()
    settle()
    assert lots.search.text() == "over 250 g"
    assert names(lots) == ["Runners", "Aprons"]
    lots.head.filter.menu().actions()[-1].trigger()
    assert lots.search.text() == "over 250 g, at "
    assert lots.search.hasFocus()


def test_every_order_is_offered_and_the_chosen_one_is_kept(
    lots: LotList, shop: Workshop, qtbot: QtBot
) -> None:
    assert {name for name, *_words in ORDERS} == set(SORTS)
    lots.order.chosen.emit("weight", False)
    settle()
    assert names(lots) == ["Aprons", "Runners", "Shirt"]
    lots.order.backwards.trigger()
    settle()
    assert names(lots) == ["Shirt", "Runners", "Aprons"]
    assert shop.studio.ask(SettingsFor()).list_sort == "weight backwards"
    assert lots.order.accessibleName() == "Order: Weight, heaviest first, backwards"
    again = LotList(lots._bridge)
    qtbot.addWidget(again)
    settle()
    assert names(again) == ["Shirt", "Runners", "Aprons"]


def test_an_order_that_was_typed_is_shown_and_gives_way_to_one_that_is_chosen(
    lots: LotList,
) -> None:
    search(lots, "by name backwards")
    assert lots.order.order == ("name", True)
    assert names(lots) == ["Shirt", "Runners", "Aprons"]
    lots.order.chosen.emit("name", False)
    settle()
    assert lots.search.text() == ""
    assert names(lots) == ["Aprons", "Runners", "Shirt"]


def test_lots_without_a_shelf_come_last_either_way(lots: LotList) -> None:
    search(lots, "by shelf")
    assert names(lots) == ["Aprons", "Runners", "Shirt"]
    search(lots, "by shelf backwards")
    assert names(lots) == ["Runners", "Aprons", "Shirt"]


def test_the_table_shows_columns_and_its_heads_put_it_in_order(
    lots: LotList, shop: Workshop
) -> None:
    lots.look.as_table.trigger()
    settle()
    table = lots.table
    assert table.isVisible()
    assert not lots.view.isVisible()
    assert heads(table) == ["code", "name", "next", "when", "weight", "age", "shelf"]
    weight = COLUMNS.index("weight")
    assert table.cells.index(0, weight).data() == "300 g"
    table.horizontalHeader().sectionClicked.emit(weight)
    settle()
    assert table.cells.index(0, weight).data() == "900 g"
    assert said_of(table, "weight") == "Weight ↓"
    table.horizontalHeader().sectionClicked.emit(weight)
    settle()
    assert table.cells.index(0, weight).data() == "120 g"
    assert said_of(table, "weight") == "Weight ↑"
    table.horizontalHeader().sectionClicked.emit(COLUMNS.index("vessel"))
    assert lots.order.order == ("weight", True), "a bucket gives no order"
    assert shop.studio.ask(SettingsFor()).list_table


def test_columns_are_chosen_moved_and_kept_and_the_last_one_stays(
    lots: LotList, shop: Workshop, qtbot: QtBot
) -> None:
    lots.look.as_table.trigger()
    lots.look._fill()
    ticks = {str(one.data()): one for one in lots.look.which.actions()}
    assert set(ticks) == set(TABLE) == set(COLUMNS)
    ticks["fibre"].trigger()
    settle()
    assert heads(lots.table)[-1] == "fibre"
    head = lots.table.horizontalHeader()
    head.moveSection(head.visualIndex(COLUMNS.index("fibre")), 0)
    qtbot.waitUntil(
        lambda: shop.studio.ask(SettingsFor()).list_columns.startswith("fibre code name")
    )
    lots._keep_columns(("name",))
    lots.look._fill()
    assert [one.isEnabled() for one in lots.look.which.actions() if one.isChecked()] == [False]


def test_rows_and_table_have_one_chosen_lot_and_enter_opens_it(lots: LotList) -> None:
    opened: list[str] = []
    lots.lot_opened.connect(opened.append)
    lots.choose("26-002")
    lots.look.as_table.trigger()
    settle()
    assert lots.table.currentIndex().row() == lots.model.row_of("26-002")
    QTest.keyClick(lots.table, Qt.Key.Key_Down)
    assert lots.chosen == "26-003"
    QTest.keyClick(lots.table, Qt.Key.Key_Return)
    assert opened == ["26-003"]
    lots.look.as_rows.trigger()
    settle()
    assert lots.view.currentIndex().row() == lots.model.row_of("26-003")


def test_a_cell_is_read_out_with_its_heading(lots: LotList) -> None:
    index = lots.table.cells.index(0, COLUMNS.index("weight"))
    assert index.data(Qt.ItemDataRole.AccessibleTextRole) == "Weight: 300 g"
    empty = lots.table.cells.index(0, COLUMNS.index("age"))
    assert empty.data(Qt.ItemDataRole.AccessibleTextRole) == "Cure age: nothing"


def test_in_a_narrow_pane_the_tools_are_icons_with_names(lots: LotList) -> None:
    lots.resize(200, 600)
    settle()
    assert {tool.text() for tool in lots.head.tools} == {""}
    assert all(tool.accessibleName() and not tool.icon().isNull() for tool in lots.head.tools)
    lots.resize(900, 600)
    settle()
    assert lots.head.filter.text() == "Filter"
