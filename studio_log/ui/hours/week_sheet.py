"""The week as it is seen: its rows, where they lie, and what is drawn in them."""

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy
from typing_extensions import override

from studio_log.domain.hours_draft import HoursDraft, Layer
from studio_log.language.region import week
from studio_log.language.words import tr
from studio_log.present.week_axis import Axis, Bars, Grip, drawn, pulled, snapped
from studio_log.ui.hours.week_paint import Row, Scene, paint_week
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.painted import Painted
from studio_log.ui.widgets.parts import em

NARROWEST: Final = 13
"""Of the axis with its edges, in line heights."""


class Held:
    """A bar on its way: where it was taken hold of, and the bars before."""

    def __init__(self, row: int, bars: Bars, at: float, grip: tuple[int, Grip] | None) -> None:
        self.row, self.before, self.at, self.grip = row, bars, at, grip
        self.bars = bars

    def drag(self, minute: float) -> None:
        """Take it to another minute; a new bar is drawn where nothing was held."""
        if self.grip is None:
            self.bars = drawn(self.before, snapped(self.at), snapped(minute))
        else:
            place, grip = self.grip
            edge = self.before[place][1 if grip is Grip.END else 0]
            by = snapped(edge + minute - self.at) - edge if minute != self.at else 0
            self.bars = pulled(self.before, place, grip, by)


class WeekSheet(Painted):
    """Paints a draft's week, with one of its layers in hand."""

    def __init__(self) -> None:
        super().__init__()
        self.draft = HoursDraft()
        self.layer = Layer.WORKING
        self._days = week()
        self._places: list[tuple[int, int]] = []
        self._at = (0, 0)
        self._held: Held | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumWidth(em(self, NARROWEST))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(tr("The week, by hand"))

    def show_rows(self, places: list[tuple[int, int]]) -> None:
        """Take where each row lies: its top and height, in the order of the week."""
        self._places = places
        self.update()

    @property
    def axis(self) -> Axis:
        """Where the day lies; half a label is left at either side."""
        side = em(self, 1.1)
        return Axis(side, max(self.width() - 2 * side, 1))

    def row_place(self, row: int) -> QRect:
        """Give where a row lies."""
        top, high = self._places[row]
        return QRect(0, top, self.width(), high)

    @property
    def weekday(self) -> int:
        """The weekday that has the keyboard."""
        return self._days[self._at[0]]

    @override
    def sizeHint(self) -> QSize:
        return QSize(em(self, 34), em(self, 14))

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        rows = [
            Row(day, top, high, self._bars(number))
            for number, (day, (top, high)) in enumerate(zip(self._days, self._places, strict=False))
        ]
        at = (self._held.row, -1) if self._held is not None else self._at
        ratio = self.devicePixelRatioF()
        scene = Scene(self.draft, self.layer, rows, self.axis, at, self.hasFocus(), ratio)
        with QPainter(self) as painter:
            paint_week(painter, scene, theme(), (self.width(), self.height()))

    def _bars(self, row: int | None = None) -> Bars:
        row = self._at[0] if row is None else row
        if self._held is not None and self._held.row == row:
            return self._held.bars
        return self.draft.bars(self.layer, self._days[row])

    def _row_at(self, y: float) -> int | None:
        return next(
            (n for n, (top, high) in enumerate(self._places) if top <= y < top + high), None
        )
