"""The window of the hours: by mouse, by key and by typing; undone, kept, and never lost."""

import re
from collections.abc import Callable, Iterator
from datetime import date

import pytest
from PySide6.QtCore import QDate, QPoint, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QListWidget,
    QMenu,
    QToolButton,
    QWidget,
)
from pytestqt.qtbot import QtBot

from studio_log.domain.hours_draft import Layer
from studio_log.services.commands import ChangeSettings
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.hours.hours_box import LEFT, HoursBox
from studio_log.ui.theme.look import apply_theme, theme
from studio_log.ui.typed import remember_in, typed
from studio_log.ui.widgets.style import sheet
from tests.support.fixtures import Workshop
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", "raise()", "grabbing the keyboard")
"""The off-screen platform says this of windows, and of the list beneath a line that is searched."""

CTRL, SHIFT, ALT, NONE = (
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
    Qt.KeyboardModifier.NoModifier,
)
LEFT_BUTTON = Qt.MouseButton.LeftButton
WEEK = "mon-fri 09:00-17:00"
Open = Callable[[], HoursBox]


@pytest.fixture
def opened(qtbot: QtBot, shop: Workshop) -> Iterator[Open]:
    """9 June 2026 is a Tuesday; the studio is at Europe/London."""
    remember_in(None)
    shop.do(ChangeSettings({"open_hours": WEEK}))
    bridge = Bridge(InlineWorker(), shop.studio, shop.clock)

    def make() -> HoursBox:
        box = HoursBox(bridge, shop.studio.settings)
        qtbot.addWidget(box)
        box.resize(1200, 860)
        box.show()
        settle()
        return box

    yield make
    bridge.close()


def at(box: HoursBox, row: int, minute: int) -> QPoint:
    view = box.week.view
    return QPoint(round(view.axis.x(minute)), view.row_place(row).center().y())


def pull(box: HoursBox, row: int, start: int, end: int) -> None:
    view = box.week.view
    QTest.mousePress(view, LEFT_BUTTON, NONE, at(box, row, start))
    QTest.mouseMove(view, at(box, row, (start + end) // 2))
    QTest.mouseMove(view, at(box, row, end))
    QTest.mouseRelease(view, LEFT_BUTTON, NONE, at(box, row, end))
    settle()


def key(box: HoursBox, which: Qt.Key, held: Qt.KeyboardModifier = NONE) -> None:
    QTest.keyClick(box.week.view, which, held)
    settle()


def type_in(line: QLineEdit, text: str) -> None:
    line.setFocus()
    line.selectAll()
    QTest.keyClick(line, Qt.Key.Key_Delete)
    QTest.keyClicks(line, text)
    settle()


# -- by mouse ------------------------------------------------------------------------------


def test_a_bar_is_made_moved_and_stretched_with_the_mouse(opened: Open) -> None:
    box = opened()
    pull(box, 5, 602, 838)
    assert box.draft.working[5] == ((600, 840),)
    pull(box, 5, 720, 782)
    assert box.draft.working[5] == ((660, 900),)
    pull(box, 5, 899, 963)
    assert box.draft.working[5] == ((660, 960),)
    pull(box, 5, 661, 596)
    assert box.draft.working[5] == ((600, 960),)
    assert box.week.lines[5].text() == "10:00–16:00"
    assert "Sat 10:00–16:00" in box.week.understood.text()


def test_what_a_bar_comes_to_is_said_while_it_is_pulled_and_escape_lets_go(opened: Open) -> None:
    box = opened()
    view = box.week.view
    QTest.mousePress(view, LEFT_BUTTON, NONE, at(box, 5, 600))
    QTest.mouseMove(view, at(box, 5, 720))
    assert box.week.lines[5].text() == "10:00–12:00"
    assert box.draft.working[5] == ()
    key(box, Qt.Key.Key_Escape)
    QTest.mouseRelease(view, LEFT_BUTTON, NONE, at(box, 5, 720))
    settle()
    assert box.draft.working[5] == ()
    assert box.week.lines[5].text() == ""


def test_a_night_is_pulled_at_the_end_that_is_free(opened: Open) -> None:
    box = opened()
    box.week.choose(Layer.QUIET)
    pull(box, 0, 200, 260)  # the small hours of Monday: the night after Sunday ends an hour later
    assert box.week.lines[6].text() == "22:00–08:00"
    pull(box, 4, 1321, 1410)
    assert box.week.lines[4].text() == "23:30–07:00"
    pull(box, 2, 780, 840)  # a nap would be a second night of Wednesday
    assert "Wednesday would have two nights" in box.week.fault.text()
    assert box.week.lines[2].text() == "22:00–07:00"


def test_a_bar_is_taken_away_by_the_menu_under_the_pointer(opened: Open) -> None:
    box = opened()
    view = box.week.view
    place = at(box, 2, 700)
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, place, view.mapToGlobal(place))
    QApplication.sendEvent(view, event)
    (menu,) = view.findChildren(QMenu)
    take = next(one for one in menu.actions() if one.text() == "&Take the bar away")
    take.trigger()
    menu.close()
    settle()
    assert box.draft.working[:4] == (((540, 1020),), ((540, 1020),), (), ((540, 1020),))


def test_a_double_click_leads_to_the_line(opened: Open) -> None:
    box = opened()
    QTest.mouseDClick(box.week.view, LEFT_BUTTON, NONE, at(box, 3, 600))
    settle()
    assert box.focusWidget() is box.week.lines[3]


# -- by key --------------------------------------------------------------------------------


def test_all_the_same_is_done_by_key(opened: Open) -> None:
    box = opened()
    box.week.view.setFocus()
    for _ in range(5):
        key(box, Qt.Key.Key_Down)
    key(box, Qt.Key.Key_Insert)
    assert box.draft.working[5] == ((540, 720),)
    key(box, Qt.Key.Key_Right, CTRL)
    key(box, Qt.Key.Key_Right, SHIFT)
    key(box, Qt.Key.Key_Left, ALT)
    assert box.draft.working[5] == ((540, 750),)
    assert box.week.view.accessibleDescription() == "Saturday: 09:00–12:30"
    key(box, Qt.Key.Key_C, CTRL)
    key(box, Qt.Key.Key_Down)
    key(box, Qt.Key.Key_V, CTRL)
    assert box.draft.working[6] == ((540, 750),)
    key(box, Qt.Key.Key_Delete)
    assert box.draft.working[6] == ()
    assert box.week.view.accessibleDescription() == "Sunday: no hours"
    key(box, Qt.Key.Key_F2)
    assert box.focusWidget() is box.week.lines[6]


def test_a_bar_made_by_key_keeps_out_of_the_night(opened: Open) -> None:
    box = opened()
    box.week.view.setFocus()
    key(box, Qt.Key.Key_Insert)
    assert box.draft.working[0] == ((540, 1020), (1080, 1260))
    for _ in range(9):
        key(box, Qt.Key.Key_Insert)
    assert sum(end - start for start, end in box.draft.working[0]) == 1440, "the day is full"


def test_a_day_is_copied_by_the_menu(opened: Open) -> None:
    box = opened()
    type_in(box.week.lines[2], "9-12:30, 13:30-17")
    box.week._fill_menu()
    acts = box.week.menu.actions()
    assert acts[0].text() == "Wednesday, to Monday–Friday"
    acts[0].trigger()
    settle()
    assert box.draft.working[:5] == (((540, 750), (810, 1020)),) * 5
    assert box.draft.working[5] == ()


# -- by typing -----------------------------------------------------------------------------


def test_what_is_typed_is_understood_as_it_is_typed(opened: Open) -> None:
    box = opened()
    line = box.week.lines[0]
    type_in(line, "9-12:30, 13:30-17")
    assert box.draft.working[0] == ((540, 750), (810, 1020))
    assert line.text() == "9-12:30, 13:30-17", "letters stay while they are typed"
    box.week.view.setFocus()
    settle()
    assert line.text() == "09:00–12:30, 13:30–17:00"


def test_what_is_not_understood_stays_and_holds_back_the_keeping(
    opened: Open, shop: Workshop
) -> None:
    box = opened()
    type_in(box.week.lines[0], "9-12, 11-13")
    assert "overlap" in box.week.fault.text()
    assert "overlap" in box.week.lines[0].accessibleDescription()
    box.week.choose(Layer.WAKING)
    box.week.choose(Layer.WORKING)
    assert box.week.lines[0].text() == "9-12, 11-13"
    box.week.choose(Layer.QUIET)
    box.submit()
    settle()
    assert box.isVisible()
    assert box.week.layer is Layer.WORKING
    assert box.focusWidget() is box.week.lines[0]
    assert "overlap" in box.message.words.text()
    assert shop.studio.settings.open_hours == WEEK


def test_a_line_takes_its_own_letters_back(opened: Open) -> None:
    box = opened()
    line = box.week.lines[5]
    type_in(line, "10-14")
    QTest.keyClick(line, Qt.Key.Key_Z, CTRL)
    settle()
    assert line.text() == ""
    assert box.draft.working[5] == ()


def test_a_line_letter_by_letter_is_one_step_of_undo(opened: Open) -> None:
    box = opened()
    type_in(box.week.lines[5], "10-14")
    pull(box, 6, 600, 720)
    box.week.view.setFocus()
    QTest.keyClick(box, Qt.Key.Key_Z, CTRL)
    settle()
    assert (box.draft.working[5], box.draft.working[6]) == (((600, 840),), ())
    box.take_back()
    assert box.draft.working[5] == ()
    assert not box.undo.isEnabled()
    box.restore()
    box.restore()
    assert box.draft.working[6] == ((600, 720),)


# -- kept and not lost ---------------------------------------------------------------------


def test_what_was_changed_is_kept_and_nothing_else(opened: Open, shop: Workshop) -> None:
    box = opened()
    type_in(box.week.lines[5], "10-14")
    box.week.choose(Layer.QUIET)
    type_in(box.week.lines[6], "21-6")
    box.keep.click()
    settle()
    assert not box.isVisible()
    kept = shop.studio.settings
    assert kept.open_hours == "mon-fri 09:00-17:00; sat 10:00-14:00"
    assert (kept.quiet_start, kept.quiet_days) == ("22:00", "sun 21:00-06:00")
    assert kept.waking_hours == ""
    assert typed().draft("hours") is None


def test_what_is_left_without_keeping_stands_here_again(opened: Open, shop: Workshop) -> None:
    box = opened()
    type_in(box.week.lines[5], "10-14")
    type_in(box.week.lines[6], "11-")
    box.days.month.setSelectedDate(QDate(2026, 6, 19))
    type_in(box.days.why, "fair")
    box.leave.click()
    settle()
    again = opened()
    assert again.message.words.text() == LEFT
    assert again.draft.working[5] == ((600, 840),)
    assert again.week.lines[6].text() == "11-"
    assert (again.days.day, again.days.why.text()) == (date(2026, 6, 19), "fair")
    again.take_back()
    assert again.draft.working[5] == ()
    assert shop.studio.settings.open_hours == WEEK


def test_hours_set_elsewhere_are_shown_or_told(opened: Open, shop: Workshop) -> None:
    box = opened()
    elsewhere = ChangeSettings({"open_hours": "sat 10:00-14:00"})
    box._bridge.do(elsewhere)
    settle()
    assert box.draft.working[5] == ((600, 840),)
    assert box.draft.working[0] == ()
    type_in(box.week.lines[6], "11-12")
    box._bridge.do(ChangeSettings({"open_hours": WEEK, "burners": 2}))
    settle()
    assert "changed elsewhere" in box.message.words.text()
    assert box.draft.working[6] == ((660, 720),)
    box.submit()
    settle()
    assert shop.studio.settings.open_hours == "sat 10:00-14:00; sun 11:00-12:00"


def test_a_draft_that_makes_no_sense_is_passed_over(opened: Open, shop: Workshop) -> None:
    opened().close()
    typed().keep_draft(
        "hours", {"changed": "open_hours", "open_hours": "\x00<b>"}, shop.clock.now()
    )
    box = opened()
    assert box.draft.working[0] == ((540, 1020),)
    assert box.message.isHidden()


# -- holidays ------------------------------------------------------------------------------


def test_a_country_is_found_by_name_and_its_holidays_are_closed(
    opened: Open, shop: Workshop
) -> None:
    box = opened()
    pane = box.holidays
    type_in(pane.line, "united kingdom")
    QTest.keyClick(pane.line, Qt.Key.Key_Return)
    settle()
    assert box.draft.place == "GB"
    pane.part.setCurrentIndex(pane.part.findText("Scotland"))
    pane.part.activated.emit(pane.part.currentIndex())
    settle()
    assert box.draft.place == "GB-SCT"
    told = [pane.list.item(row).text() for row in range(pane.list.count())]
    assert any("Mon 30 November 2026" in one and "closed" in one for one in told)
    assert box.isVisible(), "Enter in a line keeps the window open"
    box.keep.click()
    settle()
    assert shop.studio.settings.holiday_place == "GB-SCT"


def test_a_country_that_is_none_is_said_and_stays_as_it_was_typed(opened: Open) -> None:
    box = opened()
    type_in(box.holidays.line, "Atlantis")
    QTest.keyClick(box.holidays.line, Qt.Key.Key_Return)
    settle()
    assert "No country is called “Atlantis”" in box.holidays.fault.text()
    assert box.holidays.line.text() == "Atlantis"
    assert box.draft.place == ""


def test_a_tick_works_a_holiday_and_taking_it_away_closes_it_again(
    opened: Open, shop: Workshop
) -> None:
    shop.do(ChangeSettings({"holiday_place": "GB-ENG"}))
    box = opened()
    rows: QListWidget = box.holidays.list
    places = [n for n in range(rows.count()) if "28 December 2026" in rows.item(n).text()]
    item = rows.item(places[0])
    item.setCheckState(Qt.CheckState.Checked)
    settle()
    assert "we work, 09:00–17:00" in rows.item(places[0]).text()
    box.keep.click()
    settle()
    assert shop.studio.settings.single_days == "2026-12-28 usual"
    again = opened()
    again.holidays.list.item(places[0]).setCheckState(Qt.CheckState.Unchecked)
    settle()
    assert again.draft.singles == ()
    saturday = next(n for n in range(rows.count()) if "26 December" in rows.item(n).text())
    free = again.holidays.list.item(saturday)
    assert "closed anyway" in free.text()
    assert not free.flags() & Qt.ItemFlag.ItemIsUserCheckable


# -- single days ---------------------------------------------------------------------------


def test_a_single_day_is_put_in_changed_and_taken_out(opened: Open, shop: Workshop) -> None:
    box = opened()
    days = box.days
    days.month.setSelectedDate(QDate(2026, 6, 19))
    type_in(days.hours, "10-12")
    type_in(days.why, "fair; in town")
    assert days.understood.text() == ("To put in: Fri 19 June 2026: 10:00–12:00 — fair, in town")
    QTest.keyClick(days.why, Qt.Key.Key_Return)
    settle()
    assert days.hours.text() == days.why.text() == ""
    assert days.chosen.text() == "Fri 19 June 2026: now open 10:00–12:00: fair, in town"
    days._row_chosen(days.list.item(0))
    type_in(days.hours, "closed")
    days.put.click()
    settle()
    box.keep.click()
    settle()
    assert shop.studio.settings.single_days == "2026-06-19 closed: fair, in town"
    again = opened()
    again.days.month.setSelectedDate(QDate(2026, 6, 19))
    settle()
    again.days.take.click()
    settle()
    assert again.draft.singles == ()


def test_a_run_of_days_is_put_in_at_once(opened: Open) -> None:
    box = opened()
    box.days.month.setSelectedDate(QDate(2026, 8, 3))
    type_in(box.days.last, "14 aug")
    box.days.put.click()
    settle()
    assert [(one.first, one.last) for one in box.draft.singles] == [
        (date(2026, 8, 3), date(2026, 8, 14))
    ]


def test_a_day_typed_wrongly_is_said_and_cannot_be_put_in(opened: Open) -> None:
    box = opened()
    for line, text, says in (
        (box.days.hours, "noon", "is no stretch"),
        (box.days.last, "some time", "is no day"),
        (box.days.last, "2020-01-01", "spans no days"),
    ):
        type_in(line, text)
        assert says in box.days.understood.text()
        assert not box.days.put.isEnabled()
        line.clear()
    type_in(box.days.why, "fair")
    box.submit()
    settle()
    assert box.isVisible()
    assert "not put in" in box.message.words.text()


# -- reached and seen ----------------------------------------------------------------------


def test_every_field_has_a_name_and_no_letter_leads_to_two(opened: Open) -> None:
    box = opened()
    fields = [
        one for kind in (QLineEdit, QComboBox, QAbstractButton, QListWidget, QWidget)
        for one in box.findChildren(kind)
        if one.isVisible() and one.focusPolicy() is not Qt.FocusPolicy.NoFocus
        and not isinstance(one.parent(), QAbstractSpinBox) and not isinstance(one, QToolButton)
        and "qt_" not in one.objectName()
    ]  # fmt: skip
    assert len(fields) > 20
    for one in fields:
        name = one.accessibleName() or (one.text() if isinstance(one, QAbstractButton) else "")
        assert name.strip(), one
    reached: dict[str, list[QWidget]] = {}
    for one in [*box.findChildren(QLabel), *box.findChildren(QAbstractButton)]:
        to = one.buddy() if isinstance(one, QLabel) else one
        letter = re.search(r"&(\w)", one.text())
        if letter and to is not None and one.isVisible():
            reached.setdefault(letter[1].casefold(), []).append(to)
    assert {letter: to for letter, to in reached.items() if len(to) > 1} == {}


@pytest.mark.parametrize("scheme", ["light", "dark", "strong-light"])
@pytest.mark.parametrize(("size", "percent"), [((1440, 900), 100), ((1024, 700), 200)])
def test_nothing_is_cut(opened: Open, scheme: str, size: tuple[int, int], percent: int) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    apply_theme(app, scheme, percent)  # type: ignore[arg-type]
    box = opened()
    box.setStyleSheet(sheet(theme()))
    box.resize(*size)
    settle()
    page, view = box._area.widget(), box._area.viewport()
    assert page.width() <= view.width()
    for label in box.findChildren(QLabel):
        if label.isVisible() and label.text():
            needed = label.heightForWidth(label.width())
            assert label.height() >= max(needed, label.fontMetrics().height()), label.text()
    for one in box.findChildren(QAbstractButton):
        if one.isVisible() and not isinstance(one, QToolButton):
            assert one.width() >= one.minimumSizeHint().width(), one.text()
            assert one.mapTo(box, one.rect().bottomRight()).x() < box.width(), one.text()
