"""How the window “Plan” stands: what scrolls ends with its words, the keyboard is not lost."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QDate
from PySide6.QtWidgets import QApplication, QScrollArea, QWidget
from pytestqt.qtbot import QtBot

from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.plan.plan_face import WHY, PlanFace
from studio_log.ui.plan.told import Group
from studio_log.ui.plan.what_if import DayBox
from studio_log.ui.widgets.parts import Words
from tests.support.fixtures import Workshop
from tests.ui.plan_kit import Sheet

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")

LONG = "26-003 cannot be done in these hours: First soak may last 17 h 40 min at most, " * 3


@pytest.fixture
def face(qtbot: QtBot, shop: Workshop) -> Iterator[PlanFace]:
    bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
    made = PlanFace(bridge, Sheet)  # type: ignore[arg-type]
    qtbot.addWidget(made)
    made.resize(1300, 800)
    made.show()
    settle()
    yield made
    made.close()
    bridge.close()


def settle() -> None:
    for _ in range(6):
        QApplication.processEvents()


def end_of_words(area: QScrollArea) -> int:
    inside = area.widget()
    assert inside is not None
    return max(
        one.geometry().bottom()
        for one in inside.findChildren(Words)
        if one.parentWidget() is inside and one.isVisibleTo(inside)
    )


@pytest.mark.parametrize("width", [900, 1300])
def test_reasons_scroll_to_their_last_words_and_no_further(face: PlanFace, width: int) -> None:
    face.resize(width, 800)
    face.chips.button(WHY).click()
    face.turns.setCurrentIndex(WHY)
    face.why.show_groups([Group([f"{LONG} {n}" for n in range(12)], ())], looking=False)
    settle()
    area = face.why.findChild(QScrollArea)
    assert isinstance(area, QScrollArea)
    assert area.verticalScrollBar().maximum() > 0
    inside = area.widget()
    assert inside is not None
    assert inside.height() - end_of_words(area) < 20


def test_what_is_otherwise_scrolls_to_its_last_words(face: PlanFace) -> None:
    face.turns.setCurrentIndex(1)
    face.otherwise.show_rows([{"kind": "moved", "words": f"{LONG} {n}"} for n in range(12)])
    settle()
    area = face.otherwise.findChild(QScrollArea)
    assert isinstance(area, QScrollArea)
    inside = area.widget()
    assert inside is not None
    assert inside.height() - end_of_words(area) < 20


def test_the_keyboard_stays_with_planning_while_its_buttons_come_and_go(face: PlanFace) -> None:
    face.show_running(running=False)
    face.plan_it.setFocus()
    face.show_running(running=True)
    assert face.focusWidget() is face.stop
    face.show_running(running=False)
    assert face.focusWidget() is face.plan_it
    face.longer.setFocus()
    face.show_running(running=True)
    assert face.focusWidget() is face.stop


def test_a_field_that_is_typed_in_keeps_the_keyboard(face: PlanFace) -> None:
    face.show_running(running=False)
    face.pane.vessels.line.setFocus()
    face.show_running(running=True)
    face.show_running(running=False)
    assert face.focusWidget() is face.pane.vessels.line


def test_what_counts_more_stands_first_so_that_no_wish_pushes_it_out(face: PlanFace) -> None:
    face.pane.goals.show_rows([f"Class {n}: 6 pieces cured 30 d" for n in range(24)])
    settle()
    assert in_sight(face.pane.slider, face._side)


def in_sight(widget: QWidget, area: QScrollArea) -> bool:
    top = widget.mapTo(area.viewport(), widget.rect().topLeft())
    bottom = widget.mapTo(area.viewport(), widget.rect().bottomRight())
    seen = area.viewport().rect()
    return seen.contains(top) and seen.contains(bottom)


def test_no_name_of_a_day_is_cut_in_the_month(face: PlanFace) -> None:
    day = DayBox("Close a day", QDate(2026, 11, 28), face)
    names = [day.calendar.locale().dayName(n, day.calendar.locale().FormatType.ShortFormat)
             for n in range(1, 8)]  # fmt: skip
    widest = max(map(day.calendar.fontMetrics().horizontalAdvance, names))
    # Cells have 12 pixels of padding at either side in the studio's own dress.
    assert day.calendar.minimumWidth() / 7 > widest + 2 * 12
