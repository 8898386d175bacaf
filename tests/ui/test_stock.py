"""The stock as it is used: taken in, bought, counted, taken back, listed to buy."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from pytestqt.qtbot import QtBot

from studio_log.services.stock import NewMaterial
from studio_log.ui.bridge import Bridge
from studio_log.ui.stock import readers
from studio_log.ui.stock.stock_box import StockBox
from studio_log.ui.stock.stock_form import FIELDS, StockForm
from tests.support.fixtures import Workshop
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge) -> Iterator[StockBox]:
    made = StockBox(bridge)
    qtbot.addWidget(made)
    made.show()
    settle()
    yield made
    made.close()


def fill(form: StockForm, qtbot: QtBot, **typed: str) -> None:
    for slug, text in typed.items():
        form.fields[slug].clear()
        qtbot.keyClicks(form.fields[slug].line, text)
    qtbot.mouseClick(form.keep, Qt.MouseButton.LeftButton)
    settle()


def cells(box: StockBox) -> list[list[str]]:
    tree = box.shelf.tree
    items = [tree.topLevelItem(row) for row in range(tree.topLevelItemCount())]
    return [[item.text(at) for at in range(3)] for item in items if item is not None]


def test_an_empty_shelf_says_how_to_begin(box: StockBox) -> None:
    assert box.shelf.empty.isVisible()
    assert "New material" in box.shelf.empty.text()
    assert not any(made.isEnabled() for made in box.moves.values())


def test_a_material_is_taken_in_bought_taken_and_counted(box: StockBox, qtbot: QtBot) -> None:
    fill(box.open_form("new"), qtbot, title="Soda ash", amount="1 kg", price="6.20", low="250 g")
    assert cells(box) == [["Soda ash", "1 kg", "enough"]]
    fill(box.open_form("draw"), qtbot, amount="800 g", note="spilt")
    assert cells(box) == [["Soda ash", "200 g", "low: buy again"]]
    fill(box.open_form("buy"), qtbot, amount="1 lb")
    assert cells(box)[0][1] == "653.6 g"
    fill(box.open_form("count"), qtbot, amount="600 g")
    assert cells(box)[0][1] == "600 g"
    assert "spilt" in box.shelf.words.toPlainText()
    qtbot.mouseClick(box.back, Qt.MouseButton.LeftButton)
    settle()
    assert cells(box)[0][1] == "653.6 g"
    assert "taken back" in box.message.words.text()


def test_a_mistake_is_said_at_its_field_and_nothing_typed_is_lost(
    box: StockBox, qtbot: QtBot, shop: Workshop
) -> None:
    form = box.open_form("new")
    fill(form, qtbot, title="Alum", amount="much", price="dear")
    assert form.isVisible()
    assert "such as 500 g" in form.fields["amount"].fault
    assert form.fields["price"].fault
    fill(form, qtbot, amount="500", price="3")
    assert "Say a unit" in form.fields["amount"].fault
    fill(form, qtbot, amount="500 g")
    assert len(cells(box)) == 1
    again = box.open_form("new")
    fill(again, qtbot, title="Alum", amount="1 kg")
    assert again.isVisible()  # it is there already: refused, and all of it still stands
    assert again.fields["amount"].text() == "1 kg"
    assert len(cells(box)) == 1
    assert shop.studio is not None


def test_what_is_missing_is_asked_for(box: StockBox, qtbot: QtBot) -> None:
    form = box.open_form("new")
    qtbot.mouseClick(form.keep, Qt.MouseButton.LeftButton)
    assert form.isVisible()
    assert "Name" in form.message.words.text()


def test_what_to_buy_follows_lots_and_days(box: StockBox, shop: Workshop) -> None:
    shop.new(method="scour-cellulose")
    box.refresh()
    settle()
    box.chips.button(1).click()
    tree = box.shopping.tree
    items = [tree.topLevelItem(at) for at in range(tree.topLevelItemCount())]
    wanted = {item.text(0): item.text(1) for item in items if item is not None}
    assert any(words.startswith("15 g") for words in wanted.values())
    text = box.shopping.copy_text()
    assert QGuiApplication.clipboard().text() == text
    assert text.count("\n") == len(wanted)
    assert not box.moves["buy"].isVisible()


def test_a_material_kept_no_longer_goes_from_the_list(
    box: StockBox, qtbot: QtBot, shop: Workshop
) -> None:
    shop.do(NewMaterial("chalk", amount=100.0))
    box.refresh()
    settle()
    qtbot.mouseClick(box.gone, Qt.MouseButton.LeftButton)
    settle()
    assert cells(box) == []
    assert box.shelf.empty.isVisible()


@pytest.mark.parametrize("act", FIELDS)
def test_every_letter_of_a_form_leads_to_one_field(act: str) -> None:
    letters = [one.label[one.label.index("&") + 1].casefold() for one in FIELDS[act]]
    assert len(set(letters)) == len(letters)
    assert not {"w"} & set(letters)  # “Write it down”


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (readers.quantity, "1/4 cup", readers.Quantity(pytest.approx(0.0591, abs=1e-4), "L")),
        (readers.quantity, "1 lb", readers.Quantity(pytest.approx(453.592, abs=1e-3), "g")),
        (readers.quantity, "12", None),
        (readers.price, "12,50", 12.5),
        (readers.price, "1,250", None),
        (readers.price, "free", None),
        (readers.day, "2027-02-30", None),
    ],
)
def test_what_is_typed_is_understood_or_refused(read: object, text: str, value: object) -> None:
    assert callable(read)
    found = read(text)
    assert found.value == value
    assert bool(found.fault) == (value is None)


def test_how_much_is_there_is_never_cut_where_it_is_narrow(box: StockBox, qtbot: QtBot) -> None:
    place = "on the long shelf by the door, behind the buckets"
    fill(box.open_form("new"), qtbot, title="Soybeans, dry", amount="1649 g", place=place)
    tree = box.shelf.tree
    for width in (1400, 700, 420):
        box.resize(width, 600)
        settle()
        assert tree.columnWidth(1) >= tree.sizeHintForColumn(1)
        assert sum(map(tree.columnWidth, range(5))) <= max(tree.viewport().width(), 420)
    assert tree.columnWidth(4) < tree.sizeHintForColumn(4), "the place gives way"
