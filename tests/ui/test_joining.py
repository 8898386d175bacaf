"""Lots joined and split in the window: seen beforehand, and moved by mouse or key."""

from collections.abc import Iterator
from datetime import timedelta
from typing import Any

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QListWidget, QWidget
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.services.joins import JoinOfferFor
from studio_log.services.worker import InlineWorker
from studio_log.ui.ask import _SplitBox
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.join_box import ALONE, NO_LOT, JoinBox
from studio_log.ui.lots.lineage_view import LineageView
from studio_log.ui.widgets.piles import Piles
from tests.support.builders import SCOUR
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")

PIECES = tuple(Piece(number, "linen", given_grams=100.0) for number in (1, 2, 3))


class Kit:
    """The form over a real studio in which two lots stand at the same step."""

    def __init__(self, qtbot: QtBot, shop: Any) -> None:
        self.shop, self.qtbot = shop, qtbot
        self.first, self.second = shop.new(pieces=PIECES), shop.new()
        for code in (self.first, self.second):
            shop.mark(code, "bean-soak", Act.START)
            shop.clock.move(minutes=5)
        self.other = shop.new(method=SCOUR)
        self.bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
        self.made: list[str] = []
        self.box = self.open(self.first)

    def open(self, code: str) -> JoinBox:
        box = JoinBox(self.bridge, self.shop.studio.ask(JoinOfferFor(code)))
        self.qtbot.addWidget(box)
        box.made.connect(self.made.append)
        box.show()
        settle()
        return box

    def type(self, code: str) -> None:
        self.box.code.setText(code)
        self.qtbot.waitUntil(lambda: not self.box._soon.isActive())
        settle()


@pytest.fixture
def kit(qtbot: QtBot, shop: Any) -> Iterator[Kit]:
    made = Kit(qtbot, shop)
    yield made
    made.bridge.close()


def test_the_lots_that_can_join_are_listed_and_one_is_chosen_by_key(kit: Kit) -> None:
    assert kit.box.lots.count() == 1
    kit.box.lots.setFocus()
    kit.qtbot.keyClick(kit.box.lots, Qt.Key.Key_Down)
    assert kit.box.other == kit.second
    kit.qtbot.waitUntil(lambda: "5 pieces" in kit.box.becomes.text())
    assert f"{kit.first} and {kit.second} end in it" in kit.box.becomes.text()
    assert kit.shop.lot(kit.first).joined_into == "", "looking writes nothing"


def test_joining_makes_the_lot_and_says_its_code(kit: Kit) -> None:
    kit.type(kit.second)
    kit.box.name.setText("All runners")
    kit.qtbot.mouseClick(kit.box.join, Qt.MouseButton.LeftButton)
    settle()
    assert kit.made == ["26-004"]
    assert kit.shop.lot("26-004").name == "All runners"
    assert not kit.box.isVisible()


def test_what_keeps_two_lots_apart_is_said_in_the_form_and_nothing_is_joined(kit: Kit) -> None:
    kit.type(kit.other)
    assert "Let both go on to the same method" in kit.box.refusal.text()
    assert kit.box.refusal.isVisible()
    kit.qtbot.mouseClick(kit.box.join, Qt.MouseButton.LeftButton)
    settle()
    assert kit.box.isVisible()
    assert kit.box.other == kit.other, "what was typed stays"
    assert kit.made == []


@pytest.mark.parametrize("typed", ["nonsense", "26-9999", "-h & <b>"])
def test_a_code_that_is_none_is_said(kit: Kit, typed: str) -> None:
    kit.type(typed)
    assert "There is no lot" in kit.box.refusal.text()


def test_without_a_code_or_a_name_the_form_asks_for_it(kit: Kit) -> None:
    kit.type("")
    kit.box.submit()
    assert kit.box.refusal.text() == NO_LOT
    kit.type(kit.second)
    kit.box.name.setText(" ")
    kit.box.submit()
    assert "needs a name" in kit.box.refusal.text()
    assert kit.made == []


def test_a_doubt_stands_beside_what_becomes_and_the_button_answers_it(kit: Kit) -> None:
    kit.shop.clock.move(minutes=60)
    late = kit.shop.new()
    kit.shop.mark(late, "bean-soak", Act.START)
    kit.type(late)
    assert "began 70 min before" in kit.box.doubts.text()
    assert "all the same" in kit.box.join.text()
    kit.box.submit()
    settle()
    assert kit.shop.lot(kit.made[0]).step(1).start == kit.shop.clock.at
    assert kit.shop.lot(kit.made[0]).begun <= kit.shop.clock.at + timedelta(0)


def test_a_lot_without_a_like_is_told_so(kit: Kit) -> None:
    box = kit.open(kit.other)
    assert box.alone.isVisible()
    assert box.alone.text() == ALONE
    assert not box.lots.isVisible()


# -- the two piles of a split --------------------------------------------------------------


@pytest.fixture
def piles(qtbot: QtBot) -> Piles:
    made = Piles(PIECES)
    qtbot.addWidget(made)
    made.show()
    return made


class Drop(QDropEvent):
    """A drop that comes from a pile, as the system would send it."""

    def __init__(self, source: QWidget, mime: QMimeData) -> None:
        super().__init__(
            QPointF(5, 5),
            Qt.DropAction.CopyAction | Qt.DropAction.MoveAction,
            mime,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.ShiftModifier,
        )
        self._source = source

    def source(self) -> QWidget:
        return self._source


def choose(pile: QListWidget, *rows: int) -> None:
    pile.clearSelection()
    for row in rows:
        pile.item(row).setSelected(True)


def test_chosen_pieces_go_over_by_the_arrow_and_come_back(piles: Piles, qtbot: QtBot) -> None:
    choose(piles.stays, 0, 2)
    qtbot.keyClick(piles.stays, Qt.Key.Key_Right)
    assert piles.leaving == (1, 3)
    assert "Stay (1)" in piles.stay_words.text()
    assert "Leave (2)" in piles.leave_words.text()
    choose(piles.leaves, 0)
    qtbot.keyClick(piles.leaves, Qt.Key.Key_Left)
    assert piles.stays.numbers == (1, 2), "each pile is kept in order of number"
    assert piles.leaving == (3,)


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_enter_moves_what_is_chosen(piles: Piles, qtbot: QtBot, key: Qt.Key) -> None:
    choose(piles.stays, 1)
    qtbot.keyClick(piles.stays, key)
    assert piles.leaving == (2,)


def test_the_buttons_move_and_are_dead_while_nothing_is_chosen(piles: Piles, qtbot: QtBot) -> None:
    assert not piles.over.isEnabled()
    choose(piles.stays, 0)
    qtbot.mouseClick(piles.over, Qt.MouseButton.LeftButton)
    assert piles.leaving == (1,)
    assert piles.back.isEnabled()


def test_a_piece_dropped_on_the_other_pile_lies_there_once(piles: Piles) -> None:
    choose(piles.stays, 1)
    mime = piles.stays.mimeData(piles.stays.selectedItems())
    event = Drop(piles.stays, mime)
    piles.leaves.dropEvent(event)
    assert event.isAccepted()
    assert event.dropAction() is Qt.DropAction.CopyAction, "the drag takes nothing away itself"
    assert (piles.stays.numbers, piles.leaving) == ((1, 3), (2,))


def test_a_drop_from_elsewhere_or_on_its_own_pile_changes_nothing(piles: Piles) -> None:
    stranger = QListWidget()
    stranger.addItem("no piece")
    choose(piles.stays, 1)
    mime = piles.stays.mimeData(piles.stays.selectedItems())
    for source in (stranger, piles.leaves):
        event = Drop(source, mime)
        piles.leaves.dropEvent(event)
        assert not event.isAccepted()
    assert (piles.stays.numbers, piles.leaving) == ((1, 2, 3), ())


def test_the_split_form_says_what_is_missing_and_keeps_the_piles(qtbot: QtBot) -> None:
    parent = QWidget()
    qtbot.addWidget(parent)
    box = _SplitBox(parent, PIECES, "Runners")
    box.show()
    box.take()
    assert box.isVisible()
    assert "at least one piece" in box.fault.text()
    box.piles.carry([1, 2, 3], leave=True)
    assert not box.fault.isVisible()
    box.take()
    assert "has to stay" in box.fault.text()
    box.piles.carry([2], leave=False)
    box.take()
    assert not box.isVisible()
    assert box.chosen == (1, 3)


# -- lineage -------------------------------------------------------------------------------


def test_the_drawing_says_how_lots_are_related(qtbot: QtBot) -> None:
    view = LineageView()
    qtbot.addWidget(view)
    view.show_lineage("26-003", ["26-001", "26-002"], [], joined=True)
    assert [one.accessibleName() for one in view.buttons] == [
        "joined from 26-001: open it",
        "joined from 26-002: open it",
    ]
    view.show_lineage("26-001", [], ["26-005", "26-003"], into="26-003")
    assert [one.accessibleName() for one in view.buttons] == [
        "split into 26-005: open it",
        "joined into 26-003: open it",
    ]
