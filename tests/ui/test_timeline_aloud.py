"""The timeline asked through Qt's own tree for accessibility: every lot, bar, drop and stitch.

What it looks for is W3C, WCAG 2.2, success criterion 4.1.2: name, role and state of every part.
"""

import gc

import pytest
from PySide6.QtCore import QEvent, QPoint, QRect, Qt
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from studio_log.domain.methods import StepKind
from studio_log.domain.sharing import Shared, Taking
from studio_log.present.timeline_shared import Stock, shared_rows
from studio_log.ui.theme import apply_theme
from studio_log.ui.timeline.timeline_view import TimelineView
from tests.ui.timeline_lots import NOW, ZONE, h, lots, nights

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
Role = QAccessible.Role


@pytest.fixture
def view(qtbot: QtBot, qapp: QApplication) -> TimelineView:
    apply_theme(qapp, "light", family="DejaVu Sans")
    made = TimelineView()
    qtbot.addWidget(made)
    made.resize(1100, 460)
    made.show_lanes(lots(), nights(), NOW, ZONE)
    made.show()
    made.activateWindow()
    made.setFocus()
    qtbot.waitUntil(made.hasFocus)
    return made


def tree(view: TimelineView) -> QAccessibleInterface:
    found = QAccessible.queryAccessibleInterface(view)
    assert found is not None
    return found


def name(part: QAccessibleInterface) -> str:
    return part.text(QAccessible.Text.Name)


def children(part: QAccessibleInterface) -> list[QAccessibleInterface]:
    return [part.child(at) for at in range(part.childCount())]


def rows(view: TimelineView) -> list[QAccessibleInterface]:
    return [part for part in children(tree(view)) if part.role() is Role.ListItem]


def test_the_sheet_is_a_list_of_lots_and_keeps_its_own_name_and_story(view: TimelineView) -> None:
    top = tree(view)
    assert top.role() is Role.List
    assert name(top) == "Steps over time"
    assert top.text(QAccessible.Text.Description) == view.accessibleDescription()
    told = [name(part) for part in rows(view)]
    assert told[0].startswith("Pleats")
    assert told[1] == "26-031 Linen table runners × 2. Now: First soak 10–18 h."
    assert told[-1] == "26-014 -h & <b>bold</b>. Now: <i>Dry</i> & turn."
    assert len(told) == 1 + 8


def test_each_bar_drop_stitch_and_mark_tells_its_story(view: TimelineView) -> None:
    for row, lane in zip(rows(view)[1:], lots(), strict=True):
        told = [name(part) for part in children(row)]
        things = (*lane.bars, *lane.drops, *lane.stitches, *lane.marks)
        assert sorted(told) == sorted(thing.story for thing in things)
        assert all(part.role() is Role.ListItem for part in children(row))
    pleats = [name(part) for part in children(rows(view)[0])]
    assert len(pleats) == len(view.pleats)
    assert all("in which nobody is needed" in one for one in pleats)


def test_parents_and_places_agree_both_ways(view: TimelineView) -> None:
    top = tree(view)
    for at, part in enumerate(children(top)):
        assert top.indexOfChild(part) == at
    row = rows(view)[2]
    assert row.parent().object() is view
    for at, part in enumerate(children(row)):
        assert row.indexOfChild(part) == at
        assert name(part.parent()) == name(row)
    assert top.child(-1) is None
    assert row.child(99) is None
    assert top.indexOfChild(row.child(0)) == -1


def test_scroll_bars_and_the_tab_of_now_are_still_found(view: TimelineView) -> None:
    view.zoom_by(3)
    view.horizontalScrollBar().setValue(view.horizontalScrollBar().maximum())
    left, found = [tree(view)], []
    while left:
        part = left.pop()
        left += [one for one in children(part) if one is not None]
        found.append((part.role(), name(part)))
    assert (Role.PushButton, "Find now: 13:08, earlier than what is seen") in found
    assert Role.ScrollBar in {role for role, _ in found}


def test_what_has_the_keyboard_says_so(view: TimelineView, qtbot: QtBot) -> None:
    for key in (Qt.Key.Key_Down, Qt.Key.Key_Right):
        qtbot.keyClick(view, key)
    focused = [part for part in children(rows(view)[2]) if part.state().focused]
    assert [name(part) for part in focused] == [view.accessibleDescription()]
    assert name(tree(view).focusChild()) == view.accessibleDescription()
    view.clearFocus()
    assert not any(part.state().focused for part in children(rows(view)[2]))


def test_a_part_lies_where_it_is_painted_and_is_found_there(view: TimelineView) -> None:
    scene = view.scene()
    row = rows(view)[2]  # 26-030
    drying = next(part for part in children(row) if name(part).startswith("Dry: running"))
    x = round(scene.place.to_view(scene.sheet.scale.x(h(1))))
    y = round(scene.place.header + 1.5 * scene.sheet.sizes.row)
    point = view.viewport().mapToGlobal(QPoint(x, y))
    assert drying.rect().contains(point)
    assert name(tree(view).childAt(point.x(), point.y())) == name(row)
    assert name(row.childAt(point.x(), point.y())) == name(drying)
    view.verticalScrollBar().setValue(view.verticalScrollBar().maximum())
    last = rows(view)[-1]
    assert not last.state().offscreen
    view.resize(1100, 180)
    view.verticalScrollBar().setValue(0)
    assert last.rect() == QRect()
    assert last.state().offscreen


def test_the_lines_are_read_too(view: TimelineView) -> None:
    taking = Taking(
        Shared.LINE, "", "26-031", "Runners", 5, "Dry", StepKind.DRY, h(1), h(5), False, 4.0
    )
    view.show_around([], shared_rows([taking], Stock(), NOW, ZONE))
    view.show_lanes(lots(), nights(), NOW, ZONE)
    view.show_shared(True)
    line = rows(view)[-1]
    assert name(line).startswith("Drying line, length not said.")
    (one,) = children(line)
    assert name(one).startswith("26-031 Runners — Dry, step 5, on the drying line: 4 m")
    assert not one.rect().isEmpty()


def test_a_part_kept_while_lots_go_is_no_longer_valid_and_says_nothing(view: TimelineView) -> None:
    row = rows(view)[-1]
    bar = row.child(0)
    assert row.isValid()
    assert bar.isValid()
    view.show_lanes(lots()[:2], nights(), NOW, ZONE)
    assert not row.isValid()
    assert not bar.isValid()
    assert (name(row), name(bar), row.childCount()) == ("", "", 0)
    assert row.rect() == bar.rect() == QRect()
    assert row.state().invalid


@pytest.mark.long
def test_views_come_and_go_while_somebody_listens(qapp: QApplication) -> None:
    for _ in range(20):
        made = TimelineView()
        made.show_lanes(lots(), nights(), NOW, ZONE)
        assert [name(part) for part in children(rows(made)[3])]
        made.deleteLater()
        qapp.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        del made
        gc.collect()
    button = QPushButton("Now")
    assert name(QAccessible.queryAccessibleInterface(button)) == "Now"
