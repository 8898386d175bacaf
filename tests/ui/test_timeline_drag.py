"""A planned moment under the hand: dragged, nudged by keys, set, and let go of."""

from datetime import datetime, timedelta

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.domain.windows import windows_of
from studio_log.services import questions as q
from studio_log.ui.theme import apply_theme, theme
from studio_log.ui.timeline.drag_sheet import FIXED
from studio_log.ui.timeline.timeline_view import TimelineView
from tests.support.fixtures import Workshop, a_studio, clock, shop

__all__ = ["a_studio", "clock", "shop"]

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
Key = Qt.Key
LEFT = Qt.MouseButton.LeftButton
SHIFT = Qt.KeyboardModifier.ShiftModifier


class Scene:
    """A view on one real lot whose first soak runs, and what it asked to plan."""

    def __init__(self, shop: Workshop, view: TimelineView) -> None:
        self.shop, self.view = shop, view
        self.code = shop.new()
        shop.walk_to(self.code, "first-soak")
        shop.mark(self.code, "first-soak", Act.START)
        self.planned: list[tuple[str, int, datetime]] = []
        view.plan_wanted.connect(self._take)
        self.show()
        self.dip = next(s.number for s in shop.lot(self.code).steps if s.slug == "dip-2")

    def _take(self, code: str, step: int, at: datetime) -> None:
        self.planned.append((code, step, at))

    def show(self) -> None:
        told = self.shop.studio.ask(q.TimelineFor())
        self.view.show_lanes(told.lanes, told.nights, told.now, told.zone)

    def best(self) -> datetime:
        lot, now = self.shop.lot(self.code), self.shop.clock.now()
        facts = self.view._state.lanes[0].facts
        assert facts is not None
        return windows_of(lot, now, facts.quiet)[self.dip].best_start

    def point(self, at: datetime) -> QPoint:
        scene = self.view.scene()
        sizes, place = scene.sheet.sizes, scene.place
        x = place.to_view(scene.sheet.scale.x(at))
        return QPoint(round(x), round(place.header + sizes.bar_top + sizes.bar / 2))


@pytest.fixture
def scene(qtbot: QtBot, qapp: QApplication, shop: Workshop) -> Scene:
    apply_theme(qapp, "light", family="DejaVu Sans")
    view = TimelineView()
    qtbot.addWidget(view)
    view.resize(1100, 460)
    made = Scene(shop, view)
    view.show()
    view.activateWindow()
    view.setFocus()
    qtbot.waitUntil(view.hasFocus)
    return made


def drag(qtbot: QtBot, scene: Scene, by: int) -> None:
    port, at = scene.view.viewport(), scene.point(scene.best())
    qtbot.mousePress(port, LEFT, pos=at)
    for part in (0.3, 0.7, 1.0):
        qtbot.mouseMove(port, at + QPoint(round(by * part), 0))


def test_a_drag_shows_what_moves_before_it_is_let_go(scene: Scene, qtbot: QtBot) -> None:
    before = scene.best()
    plain = scene.view.viewport().grab().toImage()
    drag(qtbot, scene, 40)
    held = scene.view._hand.held
    assert held is not None
    assert held.at > before
    assert len(held.ghosts) > 1
    assert scene.view._slip.isVisible()
    assert "with it" in held.words
    assert scene.view.accessibleDescription() == held.words
    assert scene.view.viewport().grab().toImage() != plain
    assert scene.planned == []
    qtbot.mouseRelease(scene.view.viewport(), LEFT)
    assert scene.planned == [(scene.code, scene.dip, held.at)]
    assert scene.view._hand.held is None


def test_what_was_shown_is_what_is_written(scene: Scene, qtbot: QtBot) -> None:
    drag(qtbot, scene, 40)
    qtbot.mouseRelease(scene.view.viewport(), LEFT)
    ((code, step, at),) = scene.planned
    scene.shop.mark(code, str(step), Act.PLAN, at=at)
    assert scene.best() == at


def test_esc_lets_go_and_nothing_is_asked(scene: Scene, qtbot: QtBot) -> None:
    drag(qtbot, scene, 40)
    qtbot.keyClick(scene.view, Key.Key_Escape)
    assert scene.view._hand.held is None
    assert not scene.view._slip.isVisible()
    qtbot.mouseRelease(scene.view.viewport(), LEFT)
    assert scene.planned == []


def test_a_press_that_trembles_is_a_click(scene: Scene, qtbot: QtBot) -> None:
    with qtbot.waitSignal(scene.view.step_chosen) as chosen:
        drag(qtbot, scene, 3)
        qtbot.mouseRelease(scene.view.viewport(), LEFT)
    assert chosen.args == [scene.code, scene.dip]
    assert scene.planned == []


def walk_to_dip(qtbot: QtBot, scene: Scene) -> None:
    for _ in range(30):
        qtbot.keyClick(scene.view, Key.Key_Right)
        if f"step {scene.dip}:" in scene.view.accessibleDescription():
            return
    raise AssertionError("the keyboard does not reach the dip")


def test_keys_move_set_and_cancel(scene: Scene, qtbot: QtBot) -> None:
    walk_to_dip(qtbot, scene)
    before = scene.best()
    qtbot.keyClick(scene.view, Key.Key_Right, SHIFT)
    qtbot.keyClick(scene.view, Key.Key_Shift)  # pressed anew for the next nudge
    qtbot.keyClick(scene.view, Key.Key_Right, SHIFT)
    held = scene.view._hand.held
    assert held is not None
    assert 0 < (held.at - before).total_seconds() <= 45 * 60
    qtbot.keyClick(scene.view, Key.Key_Escape)
    assert scene.planned == []
    assert f"step {scene.dip}:" in scene.view.accessibleDescription()
    qtbot.keyClick(scene.view, Key.Key_Right, SHIFT)
    qtbot.keyClick(scene.view, Key.Key_Return)
    assert len(scene.planned) == 1
    assert scene.planned[0][2] > before


def test_what_cannot_be_moved_says_why(scene: Scene, qtbot: QtBot) -> None:
    for _ in range(30):
        qtbot.keyClick(scene.view, Key.Key_Left)
    qtbot.keyClick(scene.view, Key.Key_Right, SHIFT)
    assert scene.view._hand.held is None
    assert scene.view.accessibleDescription() == FIXED


def test_screen_readers_hear_the_whole_story_of_the_focused_step(
    scene: Scene, qtbot: QtBot
) -> None:
    walk_to_dip(qtbot, scene)
    interface = QAccessible.queryAccessibleInterface(scene.view)
    told = interface.text(QAccessible.Text.Description)
    for part in (scene.code, ": ahead.", "Best begun ", "Begin it ", "If it waits: ", "Next: "):
        assert part in told
    assert scene.view._slip.isVisible()


def test_the_slip_of_words_stays_inside_at_twice_the_text(
    scene: Scene, qtbot: QtBot, qapp: QApplication
) -> None:
    apply_theme(qapp, "dark", 200, family="DejaVu Sans")
    drag(qtbot, scene, 40)
    slip = scene.view._slip
    assert scene.view.window().rect().contains(slip.geometry())
    assert slip.height() >= slip.heightForWidth(slip.width())
    qtbot.keyClick(scene.view, Key.Key_Escape)


def test_a_move_is_lost_kindly_when_its_lot_goes(scene: Scene, qtbot: QtBot) -> None:
    drag(qtbot, scene, 40)
    state = scene.view._state
    scene.view.show_lanes([], [], state.now, "Europe/London")
    assert scene.view._hand.held is None
    qtbot.mouseRelease(scene.view.viewport(), LEFT)
    assert scene.planned == []


def test_nights_and_the_line_of_now_tell_what_they_are(scene: Scene) -> None:
    state, place = scene.view._state, scene.view.scene().place
    night = next(one for one in state.nights if one.start > state.now)
    y = place.header + 1  # above bars, drops and stitches: the bare cloth

    def told(at: datetime) -> str:
        return scene.view.story_at(QPointF(place.to_view(state.scale.x(at)), y))

    assert told(night.start + timedelta(minutes=30)).startswith("Quiet hours, ")
    assert not told(night.start - timedelta(hours=1)).startswith("Quiet hours, ")
    assert told(state.now).startswith("Now: today ")
    assert scene.code in told(state.now)


def test_a_late_step_says_so_under_the_keyboard(scene: Scene, qtbot: QtBot) -> None:
    soak = next(s for s in scene.shop.lot(scene.code).steps if s.slug == "first-soak")
    facts = scene.view._state.lanes[0].facts
    assert facts is not None
    scene.shop.clock.set(facts.planned[soak.number][1] + timedelta(hours=2))
    scene.shop.mark(scene.code, str(soak.number), Act.END, sure=True)
    scene.show()
    shape = next(one for one in scene.view.scene().rows[0][1].bars if one.bar.step == soak.number)
    assert shape.planned is not None  # the line of the plan is drawn under the bar
    for _ in range(30):
        qtbot.keyClick(scene.view, Key.Key_Left)
        if f"step {soak.number}:" in scene.view.accessibleDescription():
            break
    assert "; ended 2 h late." in scene.view.accessibleDescription()


def test_new_lanes_leave_the_keyboard_on_its_lot(scene: Scene, qtbot: QtBot) -> None:
    other = scene.shop.new("napkins")
    scene.shop.mark(other, "now", Act.START)
    scene.show()
    scene.view.choose(other)
    lanes = scene.view._state.lanes
    here = scene.view._state.row_of(scene.code)
    qtbot.keyClick(scene.view, Key.Key_Up if here == 0 else Key.Key_Down)
    walk_to_dip(qtbot, scene)
    scene.view.show_lanes(list(reversed(lanes)), [], scene.shop.clock.now(), "Europe/London")
    assert scene.view._state.lanes[scene.view._spot.row].code == scene.code
    assert f"step {scene.dip}:" in scene.view.accessibleDescription()


def test_a_low_timeline_lends_its_words_the_room_of_the_window(scene: Scene, qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.resize(900, 640)
    scene.view.setParent(window)
    scene.view.setGeometry(300, 60, 480, 200)
    window.show()
    scene.view.show()
    scene.view.setFocus()
    qtbot.waitUntil(scene.view.hasFocus)
    walk_to_dip(qtbot, scene)
    slip = scene.view._slip
    assert slip.isVisible()
    assert window.rect().contains(slip.geometry())
    assert slip.height() >= slip.heightForWidth(slip.width())
    scene.view.setParent(None)


def test_held_at_the_edge_a_moment_draws_the_sheet_along(scene: Scene, qtbot: QtBot) -> None:
    view, port = scene.view, scene.view.viewport()
    view.zoom_by(3)
    bar = view.horizontalScrollBar()
    bar.setValue(bar.value() + scene.point(scene.best()).x() - 900)
    start = bar.value()
    begin = scene.point(scene.best())
    qtbot.mousePress(port, LEFT, pos=begin)
    qtbot.mouseMove(port, QPoint(port.width() - 12, begin.y()))
    held = scene.view._hand.held
    assert held is not None
    at = held.at
    qtbot.waitUntil(lambda: bar.value() > start + 40)
    later = scene.view._hand.held
    assert later is not None
    assert later.at > at
    qtbot.mouseRelease(port, LEFT, pos=QPoint(port.width() - 12, begin.y()))
    assert scene.planned
    assert not view._edging.isActive()


def test_the_window_of_a_held_moment_is_framed(scene: Scene, qtbot: QtBot) -> None:
    view = scene.view
    drag(qtbot, scene, 40)
    reach = view._hand._reach
    assert reach is not None
    assert reach.since <= scene.best()
    brace = view.scene().place.to_view(view.scene().sheet.scale.x(reach.since))
    picture = view.viewport().grab().toImage()
    sizes, place = view.scene().sheet.sizes, view.scene().place
    top = round(place.header + sizes.bar_top) - 4
    column = {picture.pixelColor(round(brace) + dx, top + 8).name() for dx in (-1, 0, 1)}
    assert theme().colours.accent.name() in column
    qtbot.keyClick(view, Key.Key_Escape)
    assert view._hand._reach is None
