"""The sheet as a screen reader walks it: a list of lots, and in each its bars, drops and stitches.

Parts are made when one asks for them and tell what stands in their place then, by the same words
as pointer and keyboard. Qt keeps every part it was given until it is told to let go; so none is
taken back before the view itself goes.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, QPointF, QRect
from PySide6.QtGui import QAccessible, QAccessibleInterface, QWindow
from PySide6.QtWidgets import QAccessibleWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.present.timeline_hits import Hit
from studio_log.ui.timeline.sheet_scroll import SheetScroll
from studio_log.ui.timeline.walk import PLEAT_ROW, Spot, stops_of, told

if TYPE_CHECKING:
    from studio_log.ui.timeline.sheet_state import SheetState

_Role = QAccessible.Role
_PLEATS: Final = tr_later("Pleats: stretches in which nobody is needed")


class SheetParts(QAccessibleWidget):
    """The sheet: its rows, then the widgets that lie in it."""

    def __init__(self, sheet: SheetScroll) -> None:
        super().__init__(sheet, _Role.List, sheet.accessibleName())
        self.sheet = sheet
        self._made: dict[Spot, SheetPart] = {}
        sheet.destroyed.connect(_letting_go(self._made))

    @property
    def state_of_sheet(self) -> "SheetState":
        """What is shown."""
        return self.sheet.shown

    def part(self, spot: Spot) -> "SheetPart":
        """Give the part that tells what stands at a place."""
        part = self._made.get(spot)
        if part is None:
            part = self._made[spot] = SheetPart(self, spot)
            QAccessible.registerAccessibleInterface(part)
        return part

    def spots(self) -> list[Spot]:
        """List the rows, the pleats above all others."""
        state = self.state_of_sheet
        rows = range(PLEAT_ROW if state.pleats and state.lanes else 0, state.row_count)
        return [Spot(row) for row in rows]

    @override
    def childCount(self) -> int:
        return len(self.spots()) + super().childCount()

    @override
    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]
        spots = self.spots()
        if 0 <= index < len(spots):
            return self.part(spots[index])
        return super().child(index - len(spots))

    @override
    def indexOfChild(self, child: QAccessibleInterface) -> int:
        if isinstance(child, SheetPart):
            spots = self.spots()
            return spots.index(child.spot) if child.spot in spots else -1
        found = super().indexOfChild(child)
        return found if found < 0 else found + len(self.spots())

    @override
    def childAt(self, x: int, y: int) -> QAccessibleInterface | None:  # type: ignore[override]
        row = next((one for one in self.spots() if self.part(one).rect().contains(x, y)), None)
        return self.part(row) if row is not None else super().childAt(x, y)

    @override
    def focusChild(self) -> QAccessibleInterface | None:  # type: ignore[override]
        spot = self.sheet.keyboard_at
        return self.part(spot) if spot is not None else super().focusChild()


class SheetPart(QAccessibleInterface):
    """A row of the sheet, or one thing of a row."""

    def __init__(self, sheet: SheetParts, spot: Spot) -> None:
        super().__init__()
        self._sheet, self.spot = sheet, spot

    @override
    def isValid(self) -> bool:
        state = self._sheet.state_of_sheet
        if self.spot.stop is not None:
            return self.spot.stop < len(stops_of(self.spot.row, state))
        return self.spot in self._sheet.spots()

    @override
    def object(self) -> QObject | None:  # type: ignore[override]
        return None

    @override
    def role(self) -> QAccessible.Role:
        return _Role.ListItem

    @override
    def state(self) -> QAccessible.State:
        state = QAccessible.State()
        state.focusable = state.selectable = state.readOnly = True
        state.focused = self._sheet.sheet.keyboard_at == self.spot
        state.invalid = not self.isValid()
        state.offscreen = self.rect().isEmpty()
        return state

    @override
    def text(self, kind: QAccessible.Text) -> str:
        if kind is not QAccessible.Text.Name:
            return ""
        if self.spot == Spot(PLEAT_ROW):
            return tr(_PLEATS)
        hit = self._hit()
        return hit.story if hit is not None else ""

    @override
    def setText(self, kind: QAccessible.Text, text: str) -> None:
        """Nothing here can be typed over."""

    @override
    def parent(self) -> QAccessibleInterface:
        if self.spot.stop is None:
            return self._sheet
        return self._sheet.part(Spot(self.spot.row))

    @override
    def childCount(self) -> int:
        if self.spot.stop is not None:
            return 0
        return len(stops_of(self.spot.row, self._sheet.state_of_sheet))

    @override
    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]
        inside = 0 <= index < self.childCount()
        return self._sheet.part(Spot(self.spot.row, index)) if inside else None

    @override
    def indexOfChild(self, child: QAccessibleInterface) -> int:
        mine = isinstance(child, SheetPart) and child.spot.row == self.spot.row
        if not mine or not isinstance(child, SheetPart) or child.spot.stop is None:
            return -1
        return child.spot.stop

    @override
    def childAt(self, x: int, y: int) -> QAccessibleInterface | None:  # type: ignore[override]
        parts = (self._sheet.part(Spot(self.spot.row, at)) for at in range(self.childCount()))
        return next((part for part in parts if part.rect().contains(x, y)), None)

    @override
    def rect(self) -> QRect:
        if not self.isValid():
            return QRect()
        sheet = self._sheet.sheet
        seen = sheet.viewport().rect()
        place = sheet.place_at(self.spot).intersected(seen)
        if place.isEmpty():
            return QRect()
        corner = sheet.viewport().mapToGlobal(QPointF(place.topLeft())).toPoint()
        return QRect(corner, place.size())

    @override
    def window(self) -> QWindow | None:  # type: ignore[override]
        return self._sheet.window()

    def _hit(self) -> Hit | None:
        return told(self.spot, self._sheet.state_of_sheet)


def _letting_go(made: dict[Spot, SheetPart]) -> Callable[[], None]:
    """Give what is done when the view goes: Qt forgets its parts before Python does."""

    def let_go() -> None:
        for part in made.values():
            QAccessible.deleteAccessibleInterface(QAccessible.uniqueId(part))
        made.clear()

    return let_go


_installed: list[bool] = []


def speak_of_sheets() -> None:
    """Let Qt ask here about every sheet; once a program."""
    if not _installed:
        _installed.append(True)
        QAccessible.installFactory(_parts_of)


def _parts_of(_name: str, thing: QObject) -> QAccessibleInterface | None:
    return SheetParts(thing) if isinstance(thing, SheetScroll) else None
