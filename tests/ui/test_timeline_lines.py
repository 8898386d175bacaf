"""The rows for vessels, line and heat under hands: shown, walked through, pointed at, painted."""

from collections.abc import Iterator
from datetime import timedelta
from zoneinfo import ZoneInfo

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QToolTip
from pytestqt.qtbot import QtBot

from studio_log.domain.methods import StepKind
from studio_log.domain.sharing import Shared, Taking
from studio_log.present.lanes import Closed
from studio_log.present.timeline_shared import Stock, shared_rows
from studio_log.ui.theme import apply_theme, theme
from studio_log.ui.timeline.timeline_page import TimelinePage
from studio_log.ui.timeline.timeline_view import TimelineView
from tests.ui.timeline_lots import NOW, ZONE, h, lots, nights

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
Key = Qt.Key


def soak(code: str, start: float, end: float) -> Taking:
    return Taking(
        Shared.VESSEL, "blue tub", code, "Runners", 3, "First soak", StepKind.SOAK, h(start),
        h(end), False, 1.0,
    )  # fmt: skip


@pytest.fixture
def page(qtbot: QtBot, qapp: QApplication) -> Iterator[TimelinePage]:
    apply_theme(qapp, "light", family="DejaVu Sans")
    made = TimelinePage()
    qtbot.addWidget(made)
    made.resize(1200, 760)
    takings = [soak("26-031", -4, 9), soak("26-029", 4, 20)]
    made.show_around([], shared_rows(takings, Stock(), NOW, ZONE))
    made.show_lanes(lots(), nights(), NOW, ZONE)
    made.show()
    made.activateWindow()
    made.view.setFocus()
    qtbot.waitUntil(made.view.hasFocus)
    yield made
    QToolTip.hideText()


def at(view: TimelineView, hours: float, row: int, y: float = 20) -> QPointF:
    place = view.scene().place
    top = place.header + row * view.scene().sheet.sizes.row - place.scroll_y
    return QPointF(round(place.to_view(view.scene().sheet.scale.x(h(hours)))), top + y)


def test_a_key_and_a_button_show_the_lines_and_put_them_away(
    page: TimelinePage, qtbot: QtBot
) -> None:
    view = page.view
    assert view.scene().shared == ()
    qtbot.keyClick(view, Key.Key_L)
    assert page.lines_button.isChecked()
    assert [layout.row.title for _, layout in view.scene().shared] == ["blue tub"]
    words = [word for one in page.legend.rows().placed(page.legend.width()) for word in (one.word,)]
    assert "lots meet" in words
    page.lines_button.click()
    assert not view.shows_shared
    assert view.scene().shared == ()
    words = [word for one in page.legend.rows().placed(page.legend.width()) for word in (one.word,)]
    assert "lots meet" not in words


def test_the_button_tells_of_meetings_while_the_lines_are_put_away(page: TimelinePage) -> None:
    assert page.lines_button.text() == "Lines · 1"
    told = page.lines_button.accessibleDescription()
    assert told.startswith("Lots meet 1 time; the first: 26-029 and 26-031 meet in blue tub")
    page.show_around([], shared_rows([soak("<b>x</b>", 1, 2)], Stock(), NOW, ZONE))
    assert page.lines_button.text() == "Lines"
    assert page.lines_button.accessibleDescription() == ""


def test_where_two_lots_meet_is_seen_and_told(page: TimelinePage) -> None:
    view = page.view
    page.toggle_lines()
    told = view.story_at(at(view, 6, 8))
    assert told.startswith("26-029 and 26-031 meet in blue tub, today ")
    assert view.story_at(at(view, -2, 8, 12)).startswith("26-031 Runners — First soak, step 3, in")
    assert view.story_at(at(view, 30, 8)).startswith("blue tub, vessel. Now: 26-031.")
    assert view.story_at(QPointF(20, at(view, 0, 8).y())).startswith("blue tub, vessel.")


def test_the_lot_itself_tells_whom_it_meets_also_while_the_lines_are_put_away(
    page: TimelinePage, qtbot: QtBot
) -> None:
    view = page.view
    told = view.story_at(at(view, 1, 0))  # the first soak of 26-031
    assert told.startswith("First soak 10–18 h: running")
    assert "26-029 and 26-031 meet in blue tub, today " in told
    assert "meet" not in view.story_at(at(view, -10, 0))  # its beans
    qtbot.keyClick(view, Key.Key_Right)
    assert view.accessibleDescription() == told


def test_arrows_walk_into_the_lines_and_enter_opens_the_step(
    page: TimelinePage, qtbot: QtBot
) -> None:
    view = page.view
    page.toggle_lines()
    for _ in range(12):
        qtbot.keyClick(view, Key.Key_Down)
    assert view.accessibleDescription().startswith("blue tub, vessel.")
    qtbot.keyClick(view, Key.Key_Right)
    assert "26-031 Runners — First soak" in view.accessibleDescription()
    assert view.scene().focus is not None
    qtbot.keyClick(view, Key.Key_Right)
    assert view.accessibleDescription().startswith("26-029 and 26-031 meet")
    assert view.scene().focus is not None
    qtbot.keyClick(view, Key.Key_Right)
    with qtbot.waitSignal(view.step_chosen) as said:
        qtbot.keyClick(view, Key.Key_Return)
    assert said.args == ["26-029", 3]
    qtbot.keyClick(view, Key.Key_L)  # the row under the keyboard goes away
    assert view.accessibleDescription()
    qtbot.keyClick(view, Key.Key_Up)
    assert view.story_at(at(view, 0, 0)) != ""


def test_a_click_on_the_name_of_a_line_does_nothing(page: TimelinePage, qtbot: QtBot) -> None:
    view = page.view
    page.toggle_lines()
    before = view.horizontalScrollBar().value()
    with qtbot.assertNotEmitted(view.lot_chosen):
        y = round(at(view, 0, 8).y())
        qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(20, y))
    assert view.horizontalScrollBar().value() == before


def shades(picture: QImage, left: QPointF, right: QPointF, y: float) -> set[str]:
    xs = range(round(left.x()), round(right.x()))
    return {picture.pixelColor(x, round(y)).name() for x in xs}


def test_a_meeting_is_a_lattice_that_needs_no_colour(page: TimelinePage) -> None:
    view = page.view
    page.toggle_lines()
    picture = view.viewport().grab().toImage()
    danger = theme().colours.danger.name()
    y = at(view, 0, 8, 6).y()
    inside = shades(picture, at(view, 4.3, 8), at(view, 8.7, 8), y)
    assert danger in inside
    assert len(inside) > 1  # lattice: danger and what lies under it by turns
    assert danger not in shades(picture, at(view, 10, 8), at(view, 19, 8), y)


def test_why_a_day_is_closed_is_told_on_that_day_only(page: TimelinePage) -> None:
    view = page.view
    days = ((NOW.astimezone(ZoneInfo(ZONE)).date(), "closed: fair"),)
    page.show_around([Closed(h(6), h(20), days)], ())
    page.show_lanes(lots(), nights(), NOW, ZONE)
    assert "Tue 9 June: closed: fair. " in view.story_at(at(view, 8.5, 7))  # 21:38 in Paris
    assert "fair" not in view.story_at(at(view, 19, 7))


def test_closed_hours_are_woven_otherwise_than_the_night_and_told(page: TimelinePage) -> None:
    view = page.view
    page.show_around([Closed(h(6), h(20))], ())
    page.show_lanes(lots(), nights(), NOW, ZONE)
    # Quiet from 22:30 in Paris, 9.37 h from now; nothing lies on the last lane after 8 h.
    told = {at_hours: view.story_at(at(view, at_hours, 7)) for at_hours in (8.5, 15, 19)}
    assert told[8.5].startswith("The workshop is closed, today 19:08 to tomorrow 09:08. 26-014")
    assert told[15].startswith("Quiet hours, ")
    assert "The workshop is closed" in told[15]
    assert "Quiet" not in told[19]
    picture = view.viewport().grab().toImage()

    def ground(hours: float) -> set[str]:
        left, right = at(view, hours, 7), at(view, hours + 0.8, 7)
        return {
            picture.pixelColor(x, round(left.y()) + dy).name()
            for x in range(round(left.x()), round(right.x()))
            for dy in range(-10, 14)
        }

    light, dark, plain = ground(18.6), ground(15.2), ground(21.2)
    assert plain < light  # threads on the same ground
    assert light != dark
    words = [word for one in page.legend.rows().placed(page.legend.width()) for word in (one.word,)]
    assert words[-2:] == ["quiet hours", "workshop closed"]


def test_without_lots_there_are_no_lines(page: TimelinePage) -> None:
    page.show_around([], ())
    page.show_lanes([], [], NOW + timedelta(hours=1), ZONE)
    assert not page.lines_button.isEnabled()
    page.view.show_shared(True)
    assert page.view.scene().shared == ()
