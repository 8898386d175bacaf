"""The timeline as people use it: what is shown, chosen, pointed at and walked through."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.present.lanes import Closed, Lane, Night
from studio_log.present.timeline_hits import Hit
from studio_log.present.timeline_layout import kinds_of
from studio_log.present.timeline_shared import SharedRow
from studio_log.ui.timeline.legend_rows import SIGNS, Sign
from studio_log.ui.timeline.paper import Stretch
from studio_log.ui.timeline.point_sheet import PointSheet
from studio_log.ui.timeline.read_aloud import speak_of_sheets
from studio_log.ui.timeline.sheet_scroll import ZOOM_STEP
from studio_log.ui.timeline.walk import Spot, moved, stepped, stops_of, told

_Key = Qt.Key


class TimelineView(PointSheet):
    """Lanes of lots over time; see `show_lanes`."""

    lot_chosen = Signal(str)
    step_chosen = Signal(str, int)
    shared_toggled = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        speak_of_sheets()
        self.setAccessibleName(tr("Steps over time"))
        self.setAccessibleDescription(self._nothing)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def show_lanes(
        self, lanes: Sequence[Lane], nights: Sequence[Night], now: datetime, zone: str
    ) -> None:
        """Show lots with the nights in an IANA zone; zoom, place and opened folds are kept.

        What else stands on the sheet is set by `show_around` before it.
        """
        left = self._left_moment()
        self._hand.lanes_changed(lanes, now)
        at = self._state.lanes[self._spot.row].code if self._on_a_lane() else self._chosen
        self._state.show(lanes, nights, now, ZoneInfo(zone))
        row = self._state.row_of(at)
        kept = row is not None and (row == self._spot.row or self._on_a_lane())
        if row is None:
            row = min(max(self._spot.row, 0), max(len(lanes) - 1, 0))
        self._spot = Spot(row, self._spot.stop if kept else None)
        self._settle(left)
        self._tell()
        self.folds_changed.emit()

    def show_around(
        self, closed: Sequence[Closed], shared: Sequence[SharedRow], *, left_out: int = 0
    ) -> None:
        """Take closed hours, what the lots share, and how many lots found no room."""
        self._state.closed, self._state.all_shared = tuple(closed), tuple(shared)
        self._state.left_out = left_out

    @property
    def cut_words(self) -> str:
        """Say how many lots are shown, where that is not all; else ""."""
        return self._state.cut_words

    def show_shared(self, shown: bool) -> None:  # noqa: FBT001 - a toggle's slot
        """Show the rows for vessels, line and heat below the lots, or put them away."""
        if shown == self._state.shows_shared:
            return
        self._state.shows_shared = shown
        self._spot = Spot(min(self._spot.row, max(self._state.row_count - 1, 0)))
        self._settle(self._left_moment())
        if shown and self._state.shared:
            self._show_row(self._state.row_count - 1)
            self._show_row(len(self._state.lanes))
        self._tell()
        self.shared_toggled.emit(shown)

    def signs(self) -> tuple[Sign, ...]:
        """List what the legend has to tell: kinds of step, and the signs that can be seen."""
        state = self._state
        if not state.lanes:
            return ()
        seen = {
            "planned": any(bar.planned for lane in state.lanes for bar in lane.bars),
            "quiet": bool(state.nights),
            "closed": bool(state.closed),
            "meet": bool(state.shared),
        }
        return (*kinds_of(state.lanes), *(sign for sign in SIGNS if seen.get(sign, True)))

    def stretch(self, title: str) -> Stretch:
        """Give what is seen of time, with every lot, for a picture or for paper."""
        place, scale = self._place(), self._state.scale
        first, last = (scale.moment(x) for x in place.window)
        return Stretch(self._state, first, min(last, scale.end), title, self.signs())

    @property
    def shows_shared(self) -> bool:
        """Whether these rows are shown."""
        return self._state.shows_shared

    def choose(self, code: str) -> None:
        """Highlight a lot and bring its lane into sight; says nothing to listeners."""
        self._chosen = code
        row = self._state.row_of(code)
        if row is not None:
            self._spot = self._spot if self._spot.row == row else Spot(row)
            self._show_row(row)
        self._repaint()

    @property
    def chosen(self) -> str:
        """Code of the highlighted lot, or ""."""
        return self._chosen

    def step_row(self, by: int) -> None:
        """Move the keyboard up or down a lane."""
        self._go(moved(self._spot, by, self._state))

    def step_along(self, by: int) -> None:
        """Move the keyboard to the next thing of its row."""
        self._go(stepped(self._spot, stops_of(self._spot.row, self._state), by, self._state.now))

    def zoom_here(self, factor: float) -> None:
        """Zoom about what the keyboard is on, where that is in sight; else about now."""
        hit = told(self._spot, self._state)
        place = self._place()
        x = place.to_view(self._state.scale.x(hit.at)) if hit is not None and hit.at else -1.0
        self.glide_by(factor, x if place.gutter <= x <= place.width else None)

    def enter(self) -> None:
        """Open what the keyboard is on: the lot, its step, or the pleat."""
        hit = told(self._spot, self._state)
        if hit is not None:
            self._act_on(hit)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self._hand_key(event):
            act = _KEYS.get(event.key())
            if act is None or not self._state.lanes:
                super().keyPressEvent(event)
            else:
                act(self)

    @override
    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._repaint()
        self._tell()

    @override
    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._cancel_move()
        self._slip.hide()
        self._repaint()

    def _on_a_lane(self) -> bool:
        """Whether somebody walks the lots by keys: new lanes then leave the keyboard there."""
        return self.hasFocus() and 0 <= self._spot.row < len(self._state.lanes)

    def _go(self, spot: Spot) -> None:
        self._spot = spot
        hit = told(spot, self._state)
        if spot.row >= 0:
            self._show_row(spot.row)
        if hit is not None and hit.at is not None:
            self._show_moment(hit.at)
        self._repaint()
        self._tell()
        self._slip.say(hit.story if hit is not None else "", self._spot_place())

    @override
    def _act_on(self, hit: Hit) -> None:
        if hit.part == "pleat":
            pleat = next((p for p in self._state.pleats if p.key == hit.at), None)
            if pleat is not None:
                self.toggle_pleat(pleat)
                self._tell()
        elif not hit.code:
            if hit.part == "lane":  # the flag
                self.find_now()
        else:
            self.choose(hit.code)
            self.lot_chosen.emit(hit.code)
            if hit.step is not None:
                self.step_chosen.emit(hit.code, hit.step)

    def _show_row(self, row: int) -> None:
        bar, place = self.verticalScrollBar(), self._place()
        height = self._tools().sizes.row
        room = place.height - place.header
        if row * height < bar.value():
            bar.setValue(round(row * height))
        elif (row + 1) * height > bar.value() + room:
            bar.setValue(round((row + 1) * height - room))

    def _show_moment(self, moment: datetime) -> None:
        """Scroll only if the moment is not well inside the window."""
        place = self._place()
        x = place.to_view(self._state.scale.x(moment))
        margin = min(48.0, (place.width - place.gutter) / 4)
        if not place.gutter + margin <= x <= place.width - margin:
            self._follows_now = False
            self._hold(moment, place.gutter + (place.width - place.gutter) / 3)

    def _tell(self) -> None:
        """Tell screen readers what the keyboard is on."""
        hit = told(self._spot, self._state)
        story = hit.story if hit else self._nothing
        if story == self._told:
            return
        self._told = story
        self._announce(story)


_KEYS: Final[Mapping[int, Callable[[TimelineView], None]]] = {
    _Key.Key_Up: lambda view: view.step_row(-1),
    _Key.Key_Down: lambda view: view.step_row(1),
    _Key.Key_Left: lambda view: view.step_along(-1),
    _Key.Key_Right: lambda view: view.step_along(1),
    _Key.Key_Return: TimelineView.enter,
    _Key.Key_Enter: TimelineView.enter,
    _Key.Key_L: lambda view: view.show_shared(not view.shows_shared),
    _Key.Key_Home: TimelineView.find_now,
    _Key.Key_N: TimelineView.find_now,
    _Key.Key_Plus: lambda view: view.zoom_here(ZOOM_STEP),
    _Key.Key_Equal: lambda view: view.zoom_here(ZOOM_STEP),
    _Key.Key_Minus: lambda view: view.zoom_here(1 / ZOOM_STEP),
}
"""What each key does, while there is anything to walk through."""
