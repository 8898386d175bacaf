"""The timeline under hands: what is seen, pointed at, walked through, zoomed and folded."""

from collections.abc import Iterator
from datetime import timedelta

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QColor, QImage, QWheelEvent
from PySide6.QtWidgets import QApplication, QToolTip
from pytestqt.qtbot import QtBot

from studio_log.domain.methods import StepKind
from studio_log.present.lanes import Lane
from studio_log.ui.theme import apply_theme, theme
from studio_log.ui.timeline.header_painter import flag_place, pleat_tab
from studio_log.ui.timeline.sheet_scroll import NOTHING
from studio_log.ui.timeline.timeline_page import TimelinePage
from studio_log.ui.timeline.timeline_view import TimelineView
from tests.ui.timeline_lots import NOW, ZONE, h, lots, nights

# The off-screen platform says that it has no window manager to hand sizes to.
pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")

HOUR = timedelta(hours=1)


@pytest.fixture
def view(qtbot: QtBot, qapp: QApplication) -> Iterator[TimelineView]:
    apply_theme(qapp, "light", family="DejaVu Sans")
    made = TimelineView()
    qtbot.addWidget(made)
    made.resize(1000, 460)
    made.glide.length = 0
    made.show_lanes(lots(), nights(), NOW, ZONE)
    made.show()
    made.activateWindow()
    made.setFocus()
    qtbot.waitUntil(made.hasFocus)
    yield made
    QToolTip.hideText()


def x_of(view: TimelineView, hours: float) -> float:
    scene = view.scene()
    return scene.place.to_view(scene.sheet.scale.x(h(hours)))


def point(view: TimelineView, hours: float, row: int) -> QPoint:
    sizes, place = view.scene().sheet.sizes, view.scene().place
    y = place.header + row * sizes.row + sizes.bar_top + sizes.bar / 2 - place.scroll_y
    return QPoint(round(x_of(view, hours)), round(y))


def click(qtbot: QtBot, view: TimelineView, at: QPoint) -> None:
    qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=at)


def press(qtbot: QtBot, view: TimelineView, *keys: Qt.Key) -> None:
    for key in keys:
        qtbot.keyClick(view, key)


def story(view: TimelineView) -> str:
    return view.accessibleDescription()


def test_at_first_eighteen_hours_before_now_are_at_the_left_edge(view: TimelineView) -> None:
    assert x_of(view, -18) == pytest.approx(view.scene().place.gutter, abs=1)


def test_on_a_wide_sheet_the_next_36_hours_take_about_60_per_cent(view: TimelineView) -> None:
    view.resize(1400, 500)
    place = view.scene().place
    share = (x_of(view, 36) - x_of(view, 0)) / (place.width - place.gutter)
    assert 0.55 <= share <= 0.61


def test_the_flag_of_now_hides_no_label(view: TimelineView) -> None:
    flag = flag_place(view.scene(), view._tools())
    place = view.scene().place
    assert flag.top() >= place.days + place.hours
    assert flag.bottom() <= place.header
    assert flag.left() <= x_of(view, 0) <= flag.right()


def test_when_now_is_out_of_sight_a_tab_at_that_edge_brings_it_back(
    view: TimelineView, qtbot: QtBot
) -> None:
    bar, tab = view.horizontalScrollBar(), view._now_tab
    assert not tab.isVisible()
    for far, words, at_left in ((bar.maximum(), "◂ now 13:08", True), (0, "now 13:08 ▸", False)):
        view.zoom_by(4)  # so that there is something beyond both edges
        bar.setValue(far and bar.maximum())
        assert tab.isVisible()
        assert tab.text() == words
        place = view.scene().place
        assert (tab.x() == place.gutter) is at_left
        assert place.gutter <= tab.x() <= tab.geometry().right() <= place.width
        assert tab.y() >= place.days + place.hours
        assert tab.geometry().bottom() < place.header
        tab.setFocus()
        qtbot.keyClick(tab, Qt.Key.Key_Space)
        assert place.gutter < x_of(view, 0) < place.width
        assert not tab.isVisible()
        assert view.hasFocus()


def test_a_screen_reader_finds_the_tab_of_now(view: TimelineView) -> None:
    view.horizontalScrollBar().setValue(view.horizontalScrollBar().maximum())
    interface = QAccessible.queryAccessibleInterface(view._now_tab)
    told = interface.text(QAccessible.Text.Name)
    assert told == "Find now: 13:08, earlier than what is seen"
    assert interface.role() == QAccessible.Role.PushButton


def test_a_click_on_a_bar_opens_its_lot_and_step(view: TimelineView, qtbot: QtBot) -> None:
    lot_seen, steps_seen = [], []
    view.lot_chosen.connect(lot_seen.append)
    view.step_chosen.connect(lambda code, step: steps_seen.append((code, step)))
    click(qtbot, view, point(view, 7, 1))
    assert lot_seen == ["26-030"]
    assert steps_seen == [("26-030", 6)]
    assert view.chosen == "26-030"


def test_a_click_on_a_code_opens_the_lot_alone(view: TimelineView, qtbot: QtBot) -> None:
    steps_seen = []
    view.step_chosen.connect(lambda code, step: steps_seen.append((code, step)))
    with qtbot.waitSignal(view.lot_chosen) as said:
        click(qtbot, view, QPoint(20, point(view, 0, 2).y()))
    assert said.args == ["26-029"]
    assert steps_seen == []


def test_choosing_from_outside_says_nothing_back(view: TimelineView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(view.lot_chosen):
        view.choose("26-027")
    assert view.scene().chosen == 3


def test_a_click_on_a_pleat_opens_it_and_on_its_tab_folds_it(
    view: TimelineView, qtbot: QtBot
) -> None:
    pleat = next(p for p in view.pleats if p.start > NOW)
    view.horizontalScrollBar().setValue(round(view.scene().sheet.scale.x(pleat.start)) - 200)
    width = view.scene().sheet.scale.width
    click(qtbot, view, pleat_tab(view.scene(), pleat, view._tools()).center().toPoint())
    opened = next(p for p in view.pleats if p.holds(pleat.key))
    assert opened.opened
    days = (pleat.end - pleat.start) / HOUR * view.scene().sheet.scale.zoom
    assert view.scene().sheet.scale.width == pytest.approx(
        width + days - view._tools().pleat_width, abs=1
    )
    click(qtbot, view, pleat_tab(view.scene(), opened, view._tools()).center().toPoint())
    assert view.scene().sheet.scale.width == pytest.approx(width, abs=1)


def test_opening_a_pleat_moves_nothing_left_of_it(view: TimelineView) -> None:
    pleat = next(p for p in view.pleats if p.start > NOW)
    before = x_of(view, 0)
    view.toggle_pleat(pleat)
    assert x_of(view, 0) == pytest.approx(before, abs=1)


def test_arrows_walk_lanes_and_steps_and_tell_each_story(view: TimelineView, qtbot: QtBot) -> None:
    press(qtbot, view, Qt.Key.Key_Down)
    assert story(view) == "26-030 Cotton lawn, 3 m. Now: Dry."
    press(qtbot, view, Qt.Key.Key_Right)
    assert story(view).startswith("Dry: running")
    press(qtbot, view, Qt.Key.Key_Right)
    assert story(view) == "Second dip"
    press(qtbot, view, Qt.Key.Key_Left)
    assert story(view).startswith("Dry: running")
    with qtbot.waitSignal(view.step_chosen) as said:
        press(qtbot, view, Qt.Key.Key_Return)
    assert said.args == ["26-030", 4]


def test_above_the_first_lane_the_keys_open_and_fold_pleats(
    view: TimelineView, qtbot: QtBot
) -> None:
    press(qtbot, view, Qt.Key.Key_Up)
    assert "in which nobody is needed. Click or press Enter to open it." in story(view)
    press(qtbot, view, Qt.Key.Key_Return)
    assert view.pleats[0].opened
    assert story(view).endswith("Enter to fold it.")
    press(qtbot, view, Qt.Key.Key_Right, Qt.Key.Key_Return)
    assert view.pleats[1].opened


def test_what_the_keys_reach_is_brought_into_sight(view: TimelineView, qtbot: QtBot) -> None:
    press(qtbot, view, Qt.Key.Key_Down, *[Qt.Key.Key_Right] * 12)
    assert story(view) == "Ready"
    place = view.scene().place
    assert place.gutter < x_of(view, 15.2 + 90 * 24) < place.width
    for key in (Qt.Key.Key_N, Qt.Key.Key_Home):
        view.horizontalScrollBar().setValue(0)
        press(qtbot, view, key)
        assert place.gutter < x_of(view, 0) < place.width


def test_a_ring_is_drawn_around_what_has_the_keyboard(view: TimelineView, qtbot: QtBot) -> None:
    def ringed() -> int:
        picture = view.viewport().grab().toImage()
        ring = theme().colours.focus
        return sum(
            picture.pixelColor(x, y) == ring
            for x in range(picture.width())
            for y in range(picture.height())
        )

    press(qtbot, view, Qt.Key.Key_Right)
    assert ringed() > 40
    view.clearFocus()
    assert ringed() == 0


def test_the_wheel_with_ctrl_zooms_about_the_pointer(view: TimelineView) -> None:
    at = QPointF(600, 200)
    scene = view.scene()
    under = scene.sheet.scale.moment(scene.place.to_sheet(at.x()))
    zoom = scene.sheet.scale.zoom
    turn(view, at, 120, Qt.KeyboardModifier.ControlModifier)
    scene = view.scene()
    assert scene.sheet.scale.zoom > zoom
    assert scene.place.to_view(scene.sheet.scale.x(under)) == pytest.approx(600, abs=1)


def test_the_wheel_alone_scrolls_lanes_and_with_shift_time(view: TimelineView) -> None:
    view.resize(900, 260)
    across, down = view.horizontalScrollBar().value(), view.verticalScrollBar().value()
    turn(view, QPointF(500, 200), -120, Qt.KeyboardModifier.NoModifier)
    assert view.verticalScrollBar().value() > down
    assert view.horizontalScrollBar().value() == across
    turn(view, QPointF(500, 200), -120, Qt.KeyboardModifier.ShiftModifier)
    assert view.horizontalScrollBar().value() > across


def turn(view: TimelineView, at: QPointF, by: int, keys: Qt.KeyboardModifier) -> None:
    event = QWheelEvent(
        at,
        QPointF(view.viewport().mapToGlobal(at)),
        QPoint(0, 0),
        QPoint(0, by),
        Qt.MouseButton.NoButton,
        keys,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(view.viewport(), event)


def test_plus_and_minus_zoom_about_now(view: TimelineView, qtbot: QtBot) -> None:
    before, zoom = x_of(view, 0), view.scene().sheet.scale.zoom
    press(qtbot, view, Qt.Key.Key_Plus)
    assert view.scene().sheet.scale.zoom == pytest.approx(1.25 * zoom)
    assert x_of(view, 0) == pytest.approx(before, abs=1)
    press(qtbot, view, Qt.Key.Key_Minus)
    assert view.scene().sheet.scale.zoom == pytest.approx(zoom)


def test_on_a_step_the_keys_zoom_about_it(view: TimelineView, qtbot: QtBot) -> None:
    press(qtbot, view, Qt.Key.Key_Down, Qt.Key.Key_Right, Qt.Key.Key_Right)
    before, now = x_of(view, 4.65), x_of(view, 0)
    press(qtbot, view, Qt.Key.Key_Plus, Qt.Key.Key_Plus)
    assert x_of(view, 4.65) == pytest.approx(before, abs=2)
    assert x_of(view, 0) < now


def test_the_sheet_follows_now_through_a_night(view: TimelineView) -> None:
    before = x_of(view, 0)
    view.set_now(h(9.5))
    assert x_of(view, 9.5) == pytest.approx(before, abs=1)


def test_the_sheet_stays_where_the_dyer_has_scrolled_to(view: TimelineView) -> None:
    view.horizontalScrollBar().setValue(view.horizontalScrollBar().value() + 300)
    before = x_of(view, 40)
    view.set_now(h(0.25))
    view.show_lanes(lots(), nights(), h(0.5), ZONE)
    assert x_of(view, 40) == pytest.approx(before, abs=1)


def test_a_hostile_name_is_shown_as_it_was_written(view: TimelineView, qtbot: QtBot) -> None:
    assert view.story_at(QPointF(20, point(view, 0, 7).y())) == (
        "26-014 -h & <b>bold</b>. Now: <i>Dry</i> & turn."
    )
    qtbot.mouseMove(view.viewport(), QPoint(20, point(view, 0, 6).y()))
    view.verticalScrollBar().setValue(view.verticalScrollBar().maximum())
    press(qtbot, view, *[Qt.Key.Key_Down] * 7)
    assert "<b>bold</b>" in story(view)


def test_pointing_tells_the_story(view: TimelineView) -> None:
    assert view.story_at(QPointF(point(view, 2, 0))).startswith("First soak 10–18 h: running")
    assert view.story_at(QPointF(x_of(view, 0), view.scene().place.header - 12)).startswith("Now.")


def test_screen_readers_hear_name_and_story(view: TimelineView, qtbot: QtBot) -> None:
    interface = QAccessible.queryAccessibleInterface(view)
    assert interface.text(QAccessible.Text.Name) == "Steps over time"
    press(qtbot, view, Qt.Key.Key_Down, Qt.Key.Key_Right)
    told = interface.text(QAccessible.Text.Description)
    assert told.startswith("Dry: running")


def test_only_the_lanes_in_sight_are_laid_out(view: TimelineView) -> None:
    many = [Lane(f"26-{n:03d}", f"Lot {n}", lots()[0].bars) for n in range(500)]
    view.show_lanes(many, nights(), NOW, ZONE)
    assert len(view.scene().rows) < 15
    view.choose("26-400")
    assert any(layout.lane.code == "26-400" for _, layout in view.scene().rows)


def test_what_is_left_out_is_said_on_the_sheet_and_above_it(
    qtbot: QtBot, qapp: QApplication
) -> None:
    apply_theme(qapp, "light", family="DejaVu Sans")
    page = TimelinePage()
    qtbot.addWidget(page)
    page.resize(1100, 500)
    page.show_lanes(lots(), nights(), NOW, ZONE)
    page.show()
    down = page.view.verticalScrollBar()
    without = down.maximum()
    assert "pleat" in page.hint.text()
    page.show_around([], (), left_out=1192)
    page.show_lanes(lots(), nights(), NOW, ZONE)
    assert page.hint.text() == "8 of 1,200 lots: those that need hands first"
    assert down.maximum() > without
    down.setValue(down.maximum())
    foot = page.view.viewport().grab().toImage()
    line = [foot.pixelColor(x, foot.height() - 14) for x in range(10, 400)]
    assert any(shade.lightness() < 120 for shade in line)  # words where else is bare ground


def test_with_no_lots_it_says_so_kindly(view: TimelineView, qtbot: QtBot) -> None:
    view.show_lanes([], [], NOW, ZONE)
    assert story(view) == NOTHING
    press(qtbot, view, Qt.Key.Key_Down, Qt.Key.Key_Return, Qt.Key.Key_N)
    assert view.horizontalScrollBar().maximum() == 0
    picture = view.viewport().grab().toImage()
    assert theme().colours.soft in colours_of(picture)


def colours_of(picture: QImage) -> list[QColor]:
    return [
        picture.pixelColor(x, y)
        for x in range(picture.width())
        for y in range(picture.height() // 3, 2 * picture.height() // 3)
    ]


def test_done_is_dyed_and_ahead_is_pale(view: TimelineView) -> None:
    picture = view.viewport().grab().toImage()
    soak = theme().kind(StepKind.SOAK)
    left, right = point(view, -3.4, 0), point(view, 3, 0)
    edge = round(view.scene().sheet.sizes.bar / 2) - 4
    assert picture.pixelColor(left.x(), left.y() - edge) == soak.fill
    assert picture.pixelColor(right.x(), right.y() - edge) == soak.tint


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_change_of_theme_repaints_in_its_colours(
    view: TimelineView, qapp: QApplication, scheme: str
) -> None:
    apply_theme(qapp, scheme, 150, family="DejaVu Sans")  # type: ignore[arg-type]
    picture = view.viewport().grab().toImage()
    assert picture.pixelColor(2, 2) == theme().colours.panel


def test_the_page_tells_what_its_buttons_do(qtbot: QtBot, qapp: QApplication) -> None:
    apply_theme(qapp, "light", family="DejaVu Sans")
    page = TimelinePage()
    qtbot.addWidget(page)
    page.resize(1000, 500)
    page.show()
    page.show_lanes(lots(), nights(), NOW, ZONE)
    width = page.view.scene().sheet.scale.width
    page.folds_button.click()
    assert page.folds_button.text() == "Fold all"
    assert page.view.all_folds_open
    page.folds_button.click()
    assert page.folds_button.text() == "Open all folds"
    assert page.view.scene().sheet.scale.width == pytest.approx(width)
    page.view.glide.length = 0
    zoom = page.view.scene().sheet.scale.zoom
    page.in_button.click()
    page.out_button.click()
    page.out_button.click()
    assert page.view.scene().sheet.scale.zoom == pytest.approx(zoom / 1.25)
    page.now_button.click()
    assert page.view.scene().sheet.scale.zoom == pytest.approx(zoom)
    assert "Beans" in page.legend.accessibleDescription()
    with qtbot.waitSignal(page.lot_chosen) as said:
        page.view.enter()
    assert said.args == ["26-031"]


def test_the_legend_wraps_and_is_never_cut(qtbot: QtBot, qapp: QApplication) -> None:
    apply_theme(qapp, "light", 200, family="DejaVu Sans")
    page = TimelinePage()
    qtbot.addWidget(page)
    page.resize(900, 600)
    page.show()
    page.show_lanes(lots(), nights(), NOW, ZONE)
    qapp.processEvents()
    placed = page.legend.rows().placed(page.legend.width())
    assert len(placed) > 10
    assert max(one.place.bottom() for one in placed) <= page.legend.height() + 1
    assert max(one.place.right() for one in placed) <= page.legend.width()
    apply_theme(qapp, "light", family="DejaVu Sans")


def test_a_sheet_without_lots_says_what_its_page_says(qtbot: QtBot) -> None:
    made = TimelineView()
    qtbot.addWidget(made)
    made.show_lanes((), (), NOW, ZONE)
    assert made.accessibleDescription() == NOTHING
    made.say_where_empty("No plan is made yet.")
    assert made.accessibleDescription() == "No plan is made yet."
