"""The week under the hand: bars are made, moved and stretched with the mouse or the keys."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QAction,
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
)
from PySide6.QtWidgets import QMenu
from typing_extensions import override

from studio_log.domain.hours_draft import HoursDraft, Layer
from studio_log.domain.stretch_text import MINUTES_OF_DAY, Stretch, joined, stretch_words
from studio_log.language.calendar_words import long_weekday_name
from studio_log.language.words import tr, tr_later
from studio_log.present.week_axis import (
    STEP,
    Bars,
    Grip,
    pulled,
    room_for_one,
)
from studio_log.ui.hours.week_sheet import Held, WeekSheet

REACH: Final = 7.0
"""Pixels about a bar's end in which the hand has hold of it."""
USUAL: Final[Mapping[Layer, Stretch]] = {
    Layer.WORKING: (540, 720), Layer.QUIET: (1320, 1440), Layer.WAKING: (420, 1320),
}  # fmt: skip
"""Where a bar made by a key lies, if there is room."""
_Key = Qt.Key
_Cursor = Qt.CursorShape


class WeekView(WeekSheet):
    """Shows a draft's week and asks for other bars; it changes nothing itself."""

    edited = Signal(int, object)
    """A weekday and the bars wanted for it."""
    shaped = Signal(int, object)
    """The same while the hand is still on it; None where it let go of it."""
    line_wanted = Signal(int)
    """The weekday whose hours are to be typed."""
    copy_wanted = Signal(int, int)
    """A weekday whose hours another one is to have."""

    def __init__(self) -> None:
        super().__init__()
        self._copied: int | None = None
        self.setMouseTracking(True)

    def show_draft(self, draft: HoursDraft, layer: Layer) -> None:
        """Show a draft, with one of its layers in hand."""
        self.draft, self.layer, self._held = draft, layer, None
        self._at = (self._at[0], min(self._at[1], max(len(self._bars()) - 1, 0)))
        self._say()
        self.update()

    @override
    def mousePressEvent(self, event: QMouseEvent) -> None:
        row = self._row_at(event.position().y())
        if row is None or event.button() is not Qt.MouseButton.LeftButton:
            return
        x, bars = event.position().x(), self._bars(row)
        grip = self._grip(bars, x)
        self._at = (row, grip[0] if grip else max(len(bars) - 1, 0))
        self._held = Held(row, bars, self.axis.minute(x), grip)
        self._say()
        self.update()

    @override
    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        x = event.position().x()
        if self._held is None:
            self._show_cursor(self._row_at(event.position().y()), x)
            return
        self._held.drag(self.axis.minute(x))
        self.shaped.emit(self._days[self._held.row], self._held.bars)
        self.update()

    @override
    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        held, self._held = self._held, None
        if held is None:
            return
        new = set(held.bars) - set(held.before)
        if held.bars != held.before:
            self.edited.emit(self._days[held.row], held.bars)
            places = [n for n, bar in enumerate(self._bars(held.row)) if bar in new]
            self._at = (held.row, places[0] if places else 0)
        else:
            self.shaped.emit(self._days[held.row], None)
        self._say()
        self.update()

    @override
    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        row = self._row_at(event.position().y())
        if row is not None:
            self.line_wanted.emit(self._days[row])

    @override
    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Offer by menu what keys do; at the bar under the pointer, else at that in hand."""
        if event.reason() is QContextMenuEvent.Reason.Mouse:
            row = self._row_at(event.pos().y())
            if row is None:
                return
            grip = self._grip(self._bars(row), event.pos().x())
            self._at = (row, grip[0] if grip else 0)
            self.update()
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for words, act in _MENU:
            action = QAction(tr(words), menu)
            action.triggered.connect(partial(self._do, act))
            menu.addAction(action)
        menu.popup(event.globalPos())

    @override
    def leaveEvent(self, event: QEvent) -> None:
        self.setCursor(_Cursor.ArrowCursor)
        super().leaveEvent(event)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == _Key.Key_Escape and self._held is not None:
            self.shaped.emit(self._days[self._held.row], None)
            self._held = None
            self.update()
            return
        act = _KEYS.get((event.keyCombination().keyboardModifiers(), _Key(event.key())))
        if act is None:
            super().keyPressEvent(event)
            return
        self._do(act)

    @override
    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._say()
        self.update()

    @override
    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.update()

    def take_day(self, weekday: int) -> None:
        """Take a day in hand: its line has the keyboard."""
        self._at = (self._days.index(weekday), 0)

    def go(self, rows: int, bars: int) -> None:
        """Go to another row or bar."""
        row = min(max(self._at[0] + rows, 0), 6)
        bar = self._at[1] + bars if not rows else 0
        self._at = (row, min(max(bar, 0), max(len(self._bars(row)) - 1, 0)))

    def pull(self, grip: Grip, by: int) -> None:
        """Move or stretch the bar that has the keyboard."""
        bars = self._bars()
        if bars:
            place = self._at[1]
            grip = self._free(bars[place], grip)
            self._ask(pulled(bars, place, grip, by))

    def make(self) -> None:
        """Make a bar where there is room, and take hold of it."""
        bars = self._bars()
        quiet = self.draft.quiet[self.weekday] if self.layer is Layer.WORKING else ()
        awake = room_for_one(joined((*bars, *quiet)), USUAL[self.layer])
        made = awake or room_for_one(bars, USUAL[self.layer])
        if made is not None:
            after = tuple(sorted((*bars, made)))
            self._ask(after)
            there = self._bars()
            self._at = (self._at[0], there.index(made) if made in there else 0)

    def drop(self) -> None:
        """Take the bar that has the keyboard away."""
        bars = self._bars()
        if bars:
            self._ask((*bars[: self._at[1]], *bars[self._at[1] + 1 :]))
            self.go(0, 0)

    def copy(self) -> None:
        """Remember this day, to give its hours to others."""
        self._copied = self._days[self._at[0]]

    def paste(self) -> None:
        """Give this day the hours of the one remembered."""
        if self._copied is not None:
            self.copy_wanted.emit(self._copied, self._days[self._at[0]])

    def type(self) -> None:
        """Go to the line in which this day's hours are typed."""
        self.line_wanted.emit(self._days[self._at[0]])

    def _do(self, act: "Callable[[WeekView], None]") -> None:
        act(self)
        self._say()
        self.update()

    def _ask(self, bars: Bars) -> None:
        if bars != self._bars():
            self.edited.emit(self.weekday, bars)

    def _grip(self, bars: Bars, x: float) -> tuple[int, Grip] | None:
        found = self.axis.held(bars, x, REACH)
        return None if found is None else (found[0], self._free(bars[found[0]], found[1]))

    def _free(self, bar: Stretch, grip: Grip) -> Grip:
        """Give the end of a night that can be moved: at midnight it goes on in another row."""
        if self.layer is not Layer.QUIET or bar == (0, MINUTES_OF_DAY):
            return grip
        if bar[1] == MINUTES_OF_DAY:
            return Grip.START
        return Grip.END if bar[0] == 0 else grip

    def _show_cursor(self, row: int | None, x: float) -> None:
        grip = self._grip(self._bars(row), x) if row is not None else None
        if row is None:
            self.setCursor(_Cursor.ArrowCursor)
        elif grip is None:
            self.setCursor(_Cursor.CrossCursor)
        else:
            whole = grip[1] is Grip.WHOLE
            self.setCursor(_Cursor.OpenHandCursor if whole else _Cursor.SizeHorCursor)

    def _say(self) -> None:
        """Describe the view by what has the keyboard, and speak it where somebody listens."""
        bars = self._bars()
        what = stretch_words(bars[self._at[1] : self._at[1] + 1]) if bars else tr("no hours")
        story = tr("{day}: {hours}", day=long_weekday_name(self.weekday), hours=what)
        if story != self.accessibleDescription():
            self.setAccessibleDescription(story)
            if self.hasFocus() and QAccessible.isActive():
                QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, story))


_NONE = Qt.KeyboardModifier.NoModifier
_CTRL = Qt.KeyboardModifier.ControlModifier
_SHIFT = Qt.KeyboardModifier.ShiftModifier
_ALT = Qt.KeyboardModifier.AltModifier
_KEYS: Final[Mapping[tuple[Qt.KeyboardModifier, Qt.Key], Callable[[WeekView], None]]] = {
    (_NONE, _Key.Key_Up): lambda view: view.go(-1, 0),
    (_NONE, _Key.Key_Down): lambda view: view.go(1, 0),
    (_NONE, _Key.Key_Left): lambda view: view.go(0, -1),
    (_NONE, _Key.Key_Right): lambda view: view.go(0, 1),
    (_CTRL, _Key.Key_Left): lambda view: view.pull(Grip.WHOLE, -STEP),
    (_CTRL, _Key.Key_Right): lambda view: view.pull(Grip.WHOLE, STEP),
    (_SHIFT, _Key.Key_Left): lambda view: view.pull(Grip.END, -STEP),
    (_SHIFT, _Key.Key_Right): lambda view: view.pull(Grip.END, STEP),
    (_ALT, _Key.Key_Left): lambda view: view.pull(Grip.START, -STEP),
    (_ALT, _Key.Key_Right): lambda view: view.pull(Grip.START, STEP),
    (_NONE, _Key.Key_Insert): WeekView.make,
    (_NONE, _Key.Key_Plus): WeekView.make,
    (_SHIFT, _Key.Key_Plus): WeekView.make,
    (_NONE, _Key.Key_Delete): WeekView.drop,
    (_NONE, _Key.Key_Backspace): WeekView.drop,
    (_CTRL, _Key.Key_C): WeekView.copy,
    (_CTRL, _Key.Key_V): WeekView.paste,
    (_NONE, _Key.Key_F2): WeekView.type,
    (_NONE, _Key.Key_Return): WeekView.type,
    (_NONE, _Key.Key_Enter): WeekView.type,
}
_MENU: Final[tuple[tuple[str, Callable[[WeekView], None]], ...]] = (
    (tr_later("&Make a bar"), WeekView.make),
    (tr_later("&Take the bar away"), WeekView.drop),
    (tr_later("T&ype the hours"), WeekView.type),
    (tr_later("&Copy this day"), WeekView.copy),
    (tr_later("&Give it the hours copied"), WeekView.paste),
)
