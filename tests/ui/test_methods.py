"""The window “Methods”: page, comparison, copy with live faults, files."""

from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studio_log.services.commands import ImportMethod
from studio_log.services.questions import MethodFor, MethodsFor
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.methods.drawing import drawing
from studio_log.ui.methods.method_box import MethodBox
from tests.support.builders import LONG
from tests.support.fixtures import Workshop
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")

SHORT = "soy-painting-short"


@pytest.fixture
def box(qtbot: QtBot, shop: Workshop) -> Iterator[MethodBox]:
    with closing(Bridge(InlineWorker(), shop.studio, shop.clock)) as bridge:
        made = MethodBox(bridge)
        qtbot.addWidget(made)
        made.resize(1024, 700)
        made.show()
        settle()
        yield made


def choose(box: MethodBox, slug: str) -> None:
    for row in range(box.list.count()):
        if box.list.item(row).data(Qt.ItemDataRole.UserRole) == slug:
            box.list.setCurrentRow(row)
    settle()


def test_a_method_is_read_with_amounts_for_the_weight_typed(box: MethodBox) -> None:
    choose(box, LONG)
    words = box.page.toPlainText()
    assert "Soy binder for immersion, long thin soak" in words
    assert "dry soybeans: 30 g" in words
    assert "safety data sheet" in words
    box.weight.setText("1 lb")
    assert box.understood.text() == "Amounts for 453.592 g of cloth"
    box._ask()
    settle()
    assert "dry soybeans: 136 g" in box.page.toPlainText()


def test_a_method_is_found_by_any_word_of_what_it_is_for(box: MethodBox) -> None:
    box.side.field.setText("painting strong")
    settle()
    shown = [row for row in range(box.list.count()) if not box.list.item(row).isHidden()]
    assert [box.list.item(row).data(Qt.ItemDataRole.UserRole) for row in shown] == [SHORT]
    assert box.slug == SHORT
    assert box.page.page is not None
    assert box.page.page.slug == SHORT
    box.side.field.setText("no such words")
    assert box.side.none.isVisible()
    assert box.slug == SHORT, "what is read stays"
    QTest.keyClick(box.side.field, Qt.Key.Key_Escape)
    assert box.side.field.text() == ""
    assert box.isVisible()


def test_a_lot_is_begun_with_the_method_that_is_read(box: MethodBox, qtbot: QtBot) -> None:
    choose(box, SHORT)
    with qtbot.waitSignal(box.lot_wanted) as said:
        box.begin.click()
    assert said.args == [SHORT]


def test_a_weight_that_is_none_is_said_beside_its_field_and_the_page_stays(box: MethodBox) -> None:
    before = box.page.toPlainText()
    box.weight.setText("much")
    settle()
    assert "much" in box.understood.text()
    assert box.page.toPlainText() == before


def test_two_stand_side_by_side_at_one_scale(box: MethodBox) -> None:
    choose(box, LONG)
    assert not box.other.isVisible()
    box.other_box.setCurrentIndex(box.other_box.findData(SHORT))
    settle()
    assert box.other.isVisible()
    assert box.page._hours == box.other._hours == max(box.page.hours(), box.other.hours())
    assert "First soak lasts: 10–18 h" in box.parted.toPlainText()
    box.other_box.setCurrentIndex(0)
    settle()
    assert not box.other.isVisible()


def test_a_copy_says_what_is_amiss_as_it_is_typed_and_is_saved_when_good(
    box: MethodBox, shop: Workshop
) -> None:
    choose(box, LONG)
    box.copy.click()
    text = box.editor.text.toPlainText()
    assert box.editor.save.isEnabled()
    box.editor.text.setPlainText(text.replace('earliest = "8 h"', 'earliest = "20 h"', 1))
    box.editor.check()
    assert "line" in box.editor.preview.faults.text()
    assert not box.editor.save.isEnabled()
    box.editor.text.setPlainText(text.replace('earliest = "8 h"', 'earliest = "9 h"', 1))
    box.editor.check()
    assert box.editor.preview.faults.text() == ""
    box.editor.save.click()
    settle()
    own = shop.studio.ask(MethodFor(f"{LONG}-own"))
    assert own.steps[0].lasts is not None
    assert own.steps[0].lasts.earliest.total_seconds() == 9 * 3600
    assert box.list.count() == len(shop.studio.ask(MethodsFor()))


def test_a_draft_left_is_there_again(box: MethodBox) -> None:
    choose(box, LONG)
    box.copy.click()
    box.editor.text.setPlainText("half a thought")
    box.editor.leave.click()
    settle()
    box.copy.click()
    assert box.editor.text.toPlainText() == "half a thought"
    assert "draft" in box.said.text()


def test_a_method_is_exported_and_read_back_the_same(
    box: MethodBox, shop: Workshop, tmp_path: Path
) -> None:
    choose(box, LONG)
    path = tmp_path / "out.toml"
    box.files.write_to(path)
    assert path.read_text(encoding="utf-8") == shop.studio.ask(MethodFor(LONG)).text
    box.take_file(path)
    assert box.turns.currentIndex() == 1
    assert "Nothing is kept until it is saved" in box.said.text()


def test_a_bad_file_is_told_and_nothing_is_changed(
    box: MethodBox, shop: Workshop, tmp_path: Path
) -> None:
    before = shop.studio.ask(MethodsFor())
    bad = tmp_path / "bad.toml"
    bad.write_bytes(b"\x00\x01 no method")
    box.take_file(bad)
    assert "bad.toml" in box.said.text()
    assert box.turns.currentIndex() == 0
    assert shop.studio.ask(MethodsFor()) == before


def test_what_the_studio_refuses_is_said_and_the_text_stays(box: MethodBox, shop: Workshop) -> None:
    shipped = shop.studio.ask(MethodFor(LONG)).text
    changed = shipped.replace('earliest = "8 h"', 'earliest = "9 h"', 1)
    box._edit(changed, "")
    box.editor.save.click()
    settle()
    assert "raise the version" in box.editor.refused.text()
    assert box.editor.text.toPlainText() == changed
    shop.do(ImportMethod(text=shipped, name="same"))  # the same text is no fault


def test_the_drawing_has_a_bar_for_each_step(box: MethodBox) -> None:
    choose(box, LONG)
    page = box.page.page
    assert page is not None
    image = drawing(page.drawn, 600)
    assert image.width() == 600
    row = (image.height() - 10) / (len(page.drawn) + 1)
    assert row > 10
    opaque = [
        any(image.pixelColor(x, round(row * (at + 1.45))).alpha() > 200 for x in range(240, 598))
        for at in range(len(page.drawn))
    ]
    assert all(opaque), opaque
