"""The window “Baths and vats”: filled, empty, refused, doubted, taken back, at any size."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.services.baths import BathFor, BathsFor, MarkBath, NewBath, SetBath
from studio_log.ui.baths.bath_box import NOTHING, BathBox
from studio_log.ui.baths.bath_dialog import BathDialog
from studio_log.ui.baths.bath_forms import FORMS, NEW
from studio_log.ui.bridge import Bridge
from studio_log.ui.main_window import MainWindow
from studio_log.ui.theme.look import apply_theme
from tests.support.builders import DAY, HOUR
from tests.support.fixtures import Workshop
from tests.ui.window_kit import HandTray, WrittenAsk, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge) -> BathBox:
    made = BathBox(bridge)
    qtbot.addWidget(made)
    made.show()
    settle()
    return made


def press(box: BathBox, slug: str) -> None:
    box.view.buttons[slug].click()
    settle()


def dialog(box: BathBox) -> BathDialog:
    assert isinstance(box.dialog, BathDialog)
    return box.dialog


def fill(box: BathBox, **typed: str) -> None:
    for slug, text in typed.items():
        line = dialog(box).row(slug).line
        assert isinstance(line, QLineEdit)
        line.setText(text)


def send(box: BathBox) -> None:
    dialog(box).keep.click()
    settle()


def make(box: BathBox, kind: str = "chalk", **typed: str) -> None:
    box.new.click()
    settle()
    chosen = dialog(box).row("kind").line
    assert isinstance(chosen, QComboBox)
    chosen.setCurrentIndex(chosen.findData(kind))
    fill(box, **typed)
    send(box)


def test_an_empty_studio_says_how_to_begin(box: BathBox) -> None:
    assert box.empty.isVisible()
    assert box.empty.text() == NOTHING
    assert not box.undo.isEnabled()


def test_a_bath_is_made_and_chosen_with_what_its_kind_offers(box: BathBox, shop: Workshop) -> None:
    make(box, "fructose-vat", name="Big blue")
    (line,) = shop.studio.ask(BathsFor())
    assert (line.name, line.litres) == ("Big blue", 20.0)
    assert box.code == line.code
    assert box.view.title.text() == f"{line.code} Big blue"
    assert box.view.buttons["dip"].isVisible()
    assert not box.view.buttons["ready"].isVisible()
    assert "is recorded" in box.said.text()


def test_cloth_goes_through_and_the_list_the_page_and_the_diary_say_so(
    box: BathBox, shop: Workshop
) -> None:
    lot = shop.new("runners")
    make(box)
    press(box, "use")
    fill(box, lots=lot, grams="2 lb", ph="8,2")
    rows = {row.of.slug: row.heard.text() for row in dialog(box).rows}
    assert rows["grams"] == "Understood: 907.2 g"  # 1 lb is 453.59237 g (NIST SP 811)
    assert rows["ph"] == "Understood: pH 8.2"
    send(box)
    assert "907.2 g of 10 kg through" in box.list.item(0).text()
    assert box.view.told()[0] == f"907.2 g through: {lot} · pH 8.2"
    assert f"{lot} runners" in box.view.lots.text()


def test_a_mistake_is_said_beside_its_field_and_what_was_typed_stays(
    box: BathBox, shop: Workshop
) -> None:
    make(box)
    press(box, "use")
    fill(box, lots="calico", grams="some", note="after lunch")
    send(box)
    row = dialog(box).row("lots")
    assert "no lot’s code" in row.heard.text()
    assert row.heard.text() in row.line.accessibleDescription()
    assert "cannot be read" in dialog(box).row("grams").heard.text()
    fill(box, lots="26-404", grams="300 g")
    send(box)  # understood, yet the studio knows no such lot
    assert dialog(box).message.isVisible()
    assert dialog(box).row("note").line.text() == "after lunch"  # type: ignore[union-attr]
    assert len(shop.entries(box.code)) == 1
    fill(box, lots="")
    send(box)
    assert len(shop.entries(box.code)) == 2


def test_a_doubt_is_asked_in_the_box_and_may_be_insisted_on(box: BathBox, shop: Workshop) -> None:
    shop.do(NewBath("chalk", made_at=shop.clock.at - 800 * DAY, sure=True))
    box.refresh()
    settle()
    press(box, "use")
    fill(box, grams="300 g")
    moment = dialog(box).moment
    assert moment is not None
    moment.line.setText("2025-01-09 12:00")
    send(box)
    message = dialog(box).message
    assert message.yes.isVisible()
    message.yes.click()
    settle()
    assert len(shop.entries(box.code)) == 2


def test_a_plan_is_ahead_and_is_withdrawn(box: BathBox, shop: Workshop) -> None:
    make(box, "fructose-vat")
    press(box, "plan")
    send(box)  # without a moment nothing is sent
    assert len(shop.entries(box.code)) == 1
    moment = dialog(box).moment
    assert moment is not None
    moment.line.setText("tomorrow 12:00")
    send(box)
    assert "planned tomorrow 12:00" in box.view.state.text()
    assert box.view.buttons["ready"].isVisible()
    press(box, "withdraw")
    assert shop.studio.ask(BathFor(box.code)).line.planned is None
    assert not box.view.buttons["withdraw"].isVisible()


def test_undo_and_redo_take_back_what_was_done_here(box: BathBox, shop: Workshop) -> None:
    make(box)
    press(box, "note")
    fill(box, note="smells of nothing")
    send(box)
    assert "smells of nothing" in box.view.told()[0]
    box.undo.click()
    settle()
    assert box.view.told()[0].endswith("(taken back)")
    assert box.redo.isEnabled()
    box.redo.click()
    settle()
    assert not box.view.told()[0].endswith("(taken back)")
    assert not box.redo.isEnabled()
    assert shop.entries(box.code)[-1].act is Act.REDO


def test_finished_baths_are_shown_where_they_are_wanted(box: BathBox, shop: Workshop) -> None:
    make(box)
    press(box, "finish")
    assert box.list.count() == 0
    assert box.empty.isVisible()
    box.ended_too.click()
    settle()
    assert box.list.count() == 1
    assert not box.view.buttons["use"].isVisible()
    press(box, "reopen")
    assert shop.studio.ask(BathsFor())[0].finished is False


def test_what_another_window_did_is_shown(box: BathBox, shop: Workshop, bridge: Bridge) -> None:
    make(box)
    outcome = shop.do(MarkBath(box.code, Act.BATH_USE, grams=10_000))
    bridge.tell_changed(outcome)
    settle()
    assert "Wants refreshing" in box.list.item(0).text()
    assert box.view.urgent.text() == "Wants refreshing."


def test_changing_it_leaves_what_was_not_touched(box: BathBox, shop: Workshop) -> None:
    make(box, "chalk", name="Tub", place="yard", refresh="4 kg")
    press(box, "set")
    fill(box, name="Big tub")
    send(box)
    (line,) = shop.studio.ask(BathsFor())
    assert (line.name, line.place, line.litres, line.refresh_grams) == ("Big tub", "yard", 5, 4000)


def test_a_card_of_a_bath_at_the_bench_opens_it(
    qtbot: QtBot, shop: Workshop, bridge: Bridge
) -> None:
    code = shop.do(NewBath("tannin")).code
    window = MainWindow(bridge, ask=WrittenAsk(), tray=HandTray(available=False))  # type: ignore[arg-type]
    qtbot.addWidget(window)
    window.start()
    window.show()
    settle()
    window.choose_step(code, None)
    settle()
    (opened,) = window.findChildren(BathBox)
    assert opened.code == code
    opened.close()
    window.quit()


def test_ctrl_7_opens_the_window(qtbot: QtBot, bridge: Bridge) -> None:
    window = MainWindow(bridge, ask=WrittenAsk(), tray=HandTray(available=False))  # type: ignore[arg-type]
    qtbot.addWidget(window)
    window.start()
    window.show()
    settle()
    assert window.actions_by_slug["baths"].shortcut().toString() == "Ctrl+7"
    window.actions_by_slug["baths"].trigger()
    settle()
    assert len(window.findChildren(BathBox)) == 1
    window.quit()


@pytest.mark.parametrize("form", [NEW, *FORMS], ids=lambda form: form.slug)
@pytest.mark.parametrize("percent", [100, 200])
def test_every_form_fits_at_any_size_of_text(
    qtbot: QtBot, bridge: Bridge, form, percent: int
) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    apply_theme(app, "light", percent)
    made = BathDialog(bridge, form, "B26-001")
    qtbot.addWidget(made)
    made.resize(480, 560)
    made.show()
    settle()
    for row in made.rows:
        if row.heard.isVisible():
            assert row.heard.width() <= made.width()
        assert row.line.accessibleName()
        assert "&" not in row.line.accessibleName()
    assert made.keep.visibleRegion().boundingRect().size() == made.keep.size()
    apply_theme(app, "light", 100)


def test_a_long_diary_is_cut_and_says_so(box: BathBox, shop: Workshop) -> None:
    code = shop.do(NewBath("chalk", made_at=shop.clock.at - 300 * HOUR)).code
    for number in range(210):
        at = shop.clock.at - (210 - number) * HOUR
        shop.do(MarkBath(code, Act.NOTE, at=at, note=f"remark {number}"))
    shop.do(SetBath(code, place="yard"))
    box.choose(code)
    settle()
    told = box.view.told()
    assert len(told) == 201
    assert told[-1].startswith("… and 12 earlier")


def test_the_keyboard_leads_to_the_list_and_the_acts(box: BathBox, qtbot: QtBot) -> None:
    make(box)
    make(box, "alum")
    box.list.setFocus()
    first = box.code
    qtbot.keyClick(box.list, Qt.Key.Key_Down)
    settle()
    assert box.code != first
    assert box.view.title.text().startswith(box.code)
