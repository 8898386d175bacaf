"""The cloth drawn along by mouse and fingers, and what stays a click."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QNativeGestureEvent, QPointingDevice
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolTip
from pytestqt.qtbot import QtBot

from studio_log.ui.theme import apply_theme
from studio_log.ui.timeline.timeline_view import TimelineView
from tests.ui.timeline_lots import NOW, ZONE, h, lots, nights

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
LEFT = Qt.MouseButton.LeftButton
Shape = Qt.CursorShape


@pytest.fixture
def view(qtbot: QtBot, qapp: QApplication) -> Iterator[TimelineView]:
    apply_theme(qapp, "light", family="DejaVu Sans")
    made = TimelineView()
    qtbot.addWidget(made)
    made.resize(1000, 300)
    made.show_lanes(lots(), nights(), NOW, ZONE)
    made.show()
    yield made
    QToolTip.hideText()


def at(view: TimelineView, hours: float, row: int) -> QPoint:
    scene = view.scene()
    sizes, place = scene.sheet.sizes, scene.place
    y = place.header + row * sizes.row + sizes.bar_top + sizes.bar / 2 - place.scroll_y
    return QPoint(round(place.to_view(scene.sheet.scale.x(h(hours)))), round(y))


def drawn(view: TimelineView, start: QPoint, by: QPoint) -> None:
    port = view.viewport()
    QTest.mousePress(port, LEFT, pos=start)
    for part in (0.4, 1.0):
        QTest.mouseMove(port, start + QPoint(round(by.x() * part), round(by.y() * part)))


def test_the_ground_is_drawn_along_both_ways(view: TimelineView) -> None:
    start = at(view, 40, 2)
    across, down = view.horizontalScrollBar().value(), view.verticalScrollBar().value()
    drawn(view, start, QPoint(-120, -50))
    assert view.viewport().cursor().shape() is Shape.ClosedHandCursor
    assert view.horizontalScrollBar().value() == across + 120
    assert view.verticalScrollBar().value() == down + 50
    QTest.mouseRelease(view.viewport(), LEFT, pos=start + QPoint(-120, -50))
    assert view.viewport().cursor().shape() is not Shape.ClosedHandCursor
    view.set_now(h(0.5))
    assert view.horizontalScrollBar().value() == across + 120  # now is not followed any more


def test_a_bar_is_drawn_along_too_and_then_not_opened(view: TimelineView, qtbot: QtBot) -> None:
    start = at(view, 7, 1)
    with qtbot.assertNotEmitted(view.lot_chosen):
        drawn(view, start, QPoint(60, 0))
        QTest.mouseRelease(view.viewport(), LEFT, pos=start + QPoint(60, 0))
    with qtbot.waitSignal(view.step_chosen) as said:
        drawn(view, at(view, 7, 1), QPoint(3, 2))  # a hand that trembles still clicks
        QTest.mouseRelease(view.viewport(), LEFT, pos=at(view, 7, 1))
    assert said.args == ["26-030", 6]


def test_the_middle_button_draws_and_never_clicks(view: TimelineView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(view.lot_chosen):
        QTest.mouseClick(view.viewport(), Qt.MouseButton.MiddleButton, pos=at(view, 7, 1))


@pytest.mark.parametrize(
    ("hours", "row", "shape"),
    [(40, 2, Shape.OpenHandCursor), (7, 1, Shape.PointingHandCursor)],
)
def test_the_pointer_tells_what_a_press_would_do(
    view: TimelineView, hours: float, row: int, shape: Qt.CursorShape
) -> None:
    QTest.mouseMove(view.viewport(), at(view, hours, row))
    assert view.viewport().cursor().shape() is shape


@pytest.mark.parametrize("value", [0.2, -0.15])
def test_two_fingers_on_a_touch_pad_zoom_about_the_pointer(
    view: TimelineView, value: float
) -> None:
    point = QPointF(620, 200)
    scene = view.scene()
    held, zoom = scene.sheet.scale.moment(scene.place.to_sheet(620)), scene.sheet.scale.zoom
    event = QNativeGestureEvent(
        Qt.NativeGestureType.ZoomNativeGesture,
        QPointingDevice.primaryPointingDevice(),
        2,
        point,
        point,
        QPointF(view.viewport().mapToGlobal(point)),
        value,
        QPointF(),
    )
    assert QApplication.sendEvent(view.viewport(), event)
    scene = view.scene()
    assert scene.sheet.scale.zoom == pytest.approx(zoom * (1 + value))
    assert scene.place.to_view(scene.sheet.scale.x(held)) == pytest.approx(620, abs=1)


def test_two_fingers_on_a_screen_zoom_about_their_middle(view: TimelineView, qtbot: QtBot) -> None:
    port = view.viewport()
    scene = view.scene()
    held, zoom = scene.sheet.scale.moment(scene.place.to_sheet(600)), scene.sheet.scale.zoom
    device = QTest.createTouchDevice()
    first, second = QPoint(560, 200), QPoint(640, 200)
    QTest.touchEvent(port, device).press(0, first, port).press(1, second, port)
    for spread in (20, 40, 60, 80):
        moved = QTest.touchEvent(port, device)
        moved.move(0, first - QPoint(spread, 0), port).move(1, second + QPoint(spread, 0), port)
        moved.commit()
    QTest.touchEvent(port, device).release(0, first, port).release(1, second, port)
    qtbot.wait(20)  # waits for the gesture to be told of
    scene = view.scene()
    assert scene.sheet.scale.zoom > 1.5 * zoom
    assert scene.place.to_view(scene.sheet.scale.x(held)) == pytest.approx(600, abs=12)


def test_other_gestures_are_left_alone(view: TimelineView) -> None:
    zoom = view.scene().sheet.scale.zoom
    event = QNativeGestureEvent(
        Qt.NativeGestureType.RotateNativeGesture,
        QPointingDevice.primaryPointingDevice(),
        2,
        QPointF(600, 200),
        QPointF(600, 200),
        QPointF(600, 200),
        0.4,
        QPointF(),
    )
    QApplication.sendEvent(view.viewport(), event)
    assert view.scene().sheet.scale.zoom == zoom
    assert event.type() is QEvent.Type.NativeGesture


def test_a_notch_of_the_wheel_glides_and_holds_what_is_under_the_pointer(
    view: TimelineView, qtbot: QtBot
) -> None:
    scene = view.scene()
    held, zoom = scene.sheet.scale.moment(scene.place.to_sheet(620)), scene.sheet.scale.zoom
    seen: list[float] = []

    def look(now: float) -> None:
        place, scale = view.scene().place, view.scene().sheet.scale
        seen.append(now)
        assert place.to_view(scale.x(held)) == pytest.approx(620, abs=1)

    view.glide.zoomed.connect(look)
    view.glide_by(1.25, 620)
    view.glide_by(1.25, 620)  # a second notch before the first has come to rest adds to it
    qtbot.waitUntil(lambda: view.glide.state() is view.glide.State.Stopped)
    assert view.scene().sheet.scale.zoom == pytest.approx(zoom * 1.25**2)
    assert seen == sorted(seen)
    assert len(seen) > 2


def test_a_hand_on_the_cloth_ends_the_glide(view: TimelineView) -> None:
    view.glide_by(4)
    view.horizontalScrollBar().setValue(view.horizontalScrollBar().value() + 30)
    assert view.glide.state() is view.glide.State.Stopped
    zoom = view.scene().sheet.scale.zoom
    view.glide_by(1e9)
    view.glide.setCurrentTime(view.glide.length)
    assert view.scene().sheet.scale.zoom == 3000  # two minutes in 100 px, and no nearer
    assert zoom < 3000
