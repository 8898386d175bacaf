"""A sheet on which planned moments can be moved, and whose words stand beside what they tell."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QKeyEvent, QPainter
from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.ui.timeline.drag_hand import Hand
from studio_log.ui.timeline.drag_words import WordSlip
from studio_log.ui.timeline.sheet_scroll import SheetScroll
from studio_log.ui.timeline.walk import told

_Key = Qt.Key
FIXED: Final = tr_later(
    "This cannot be moved. A planned step can be moved while it is "
    "ahead, and the end of one that runs; not what is done, nor what "
    "begins at once with the step before."
)
_BY: Final[Mapping[int, int]] = {_Key.Key_Left: -1, _Key.Key_Right: 1}
"""With Shift: which way a planned moment goes."""
_ALONE: Final = (_Key.Key_Shift, _Key.Key_Control, _Key.Key_Alt, _Key.Key_Meta)


class DragSheet(SheetScroll):
    """Takes a planned moment by keys, shows a move and says it; the mouse comes from the view."""

    plan_wanted = Signal(str, int, object)
    """A lot's code, a step and the moment it was moved to."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._told = ""
        self._hand = Hand()
        self._slip = WordSlip(self.viewport())

    @override
    def paint_on(self, painter: QPainter) -> None:
        super().paint_on(painter)
        self._hand.draw(painter, self.scene(), self._tools())

    def _hand_key(self, event: QKeyEvent) -> bool:
        """Move, set or let go of a planned moment; False where the key means something else."""
        key, held = event.key(), self._hand.held is not None
        if key in _ALONE:
            return False  # Shift is pressed anew for each nudge
        if key in _BY and event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            hit = told(self._spot, self._state)
            if hit is None or not self._hand.nudge(self.scene(), hit, _BY[key]):
                self._say(tr(FIXED), strong=False)
            else:
                self._show_move()
            return True
        if key == _Key.Key_Escape and (held or self._slip.isVisible()):
            self._cancel_move()
            self._slip.hide()
            self._announce(self._told)
            return True
        if held and key in (_Key.Key_Return, _Key.Key_Enter):
            self._set_move()
            return True
        self._cancel_move()
        self._slip.hide()
        return False

    def _show_move(self) -> None:
        if self._hand.held is not None:
            self._show_slip(self._hand.held.words, self._hand.place(self.scene(), self._tools()))
        self._repaint()

    def _set_move(self) -> None:
        """Let go: ask for the plan entry; what is shown follows once it is written."""
        made = self._hand.release()
        self._slip.hide()
        self._repaint()
        if made is not None:
            self.plan_wanted.emit(*made)

    def _cancel_move(self) -> None:
        if self._hand.cancel():
            self._slip.hide()
            self._repaint()

    def _say(self, words: str, *, strong: bool) -> None:
        self._slip.say(words, self._spot_place(), strong=strong)
        self._announce(words)

    def _show_slip(self, words: str, about: QRect) -> None:
        self._slip.say(words, about, strong=True)
        self._announce(words)

    def _spot_place(self) -> QRect:
        """Give where the keyboard is, in the viewport."""
        scene, sizes = self.scene(), self._tools().sizes
        place = scene.place
        top = place.header + max(self._spot.row, 0) * sizes.row - place.scroll_y
        if scene.focus is None:
            return QRect(0, round(top), round(place.gutter), round(sizes.row))
        left = max(place.to_view(scene.focus.left()), place.gutter)
        return QRect(round(left), round(top), round(scene.focus.width()), round(sizes.row))

    def _announce(self, story: str) -> None:
        """Describe the view by what is said now, and speak it where somebody listens."""
        if story == self.accessibleDescription():
            return
        self.setAccessibleDescription(story)
        if self.hasFocus() and QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, story))
