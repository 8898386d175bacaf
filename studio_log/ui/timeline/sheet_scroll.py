"""The sheet as something to scroll, zoom and fold; painting included, keys and mouse not."""

from datetime import datetime
from typing import Final

from PySide6.QtCore import QEvent, QRect, QRectF, QSize, Qt, Signal, Slot
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractScrollArea, QFrame, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.present.pleats import Pleat
from studio_log.present.time_scale import LEAST_ZOOM, MOST_ZOOM
from studio_log.ui.theme import theme
from studio_log.ui.timeline.glide import Glide
from studio_log.ui.timeline.header_painter import draw_header, now_text
from studio_log.ui.timeline.now_tab import NowTab
from studio_log.ui.timeline.pencils import Pencils
from studio_log.ui.timeline.scene_maker import Looking, make_scene, place_of, spot_place
from studio_log.ui.timeline.sheet_painter import Place, Scene, draw_body, draw_gutter, foot_height
from studio_log.ui.timeline.sheet_state import BEFORE_NOW, SheetState
from studio_log.ui.timeline.walk import Spot

NOTHING: Final = tr_later(
    "No lots are in work. Start a lot, and its steps appear here, hour by hour."
)
ZOOM_STEP: Final = 1.25
_DRESSED: Final = (QEvent.Type.PaletteChange, QEvent.Type.StyleChange, QEvent.Type.FontChange)


class SheetScroll(QAbstractScrollArea):
    """A sheet of lanes that keeps its place when time, lots, size or theme change."""

    folds_changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = SheetState()
        self._pencils: Pencils | None = None
        self._scene: Scene | None = None
        self._chosen = ""
        self._spot = Spot()
        self._nothing = tr(NOTHING)
        self._follows_now = True
        self._own_zoom = False
        self._placing = False
        self._held = (self._state.now, 0.0)
        """What stays where it is while the zoom changes: a moment, and its x in the viewport."""
        self.glide = Glide(self)
        self.glide.zoomed.connect(self._zoom_to)
        self._now_tab = NowTab(self.viewport())
        self._now_tab.clicked.connect(self._back_to_now)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.horizontalScrollBar().setSingleStep(40)
        self.verticalScrollBar().setSingleStep(24)

    def say_where_empty(self, words: str) -> None:
        """Take other words for a sheet without lots, to be painted and read aloud."""
        self._nothing = words
        self.setAccessibleDescription(words)
        self.viewport().update()

    def set_now(self, now: datetime) -> None:
        """Move the now line; the sheet goes with it unless the dyer looks elsewhere."""
        left = self._left_moment()
        self._state.set_now(now)
        self._settle(left)

    def find_now(self) -> None:
        """Bring now into sight at the zoom of the start, and follow it from then on."""
        self.glide.stop()
        self._follows_now, self._own_zoom = True, False
        self._settle(self._state.now)

    def zoom_by(self, factor: float, about: float | None = None) -> None:
        """Zoom at once about an x of the viewport; without it about now, or the middle."""
        self.glide.stop()
        self._held = self._about(about)
        self._zoom_to(self._state.zoom * factor)

    def glide_by(self, factor: float, about: float | None = None) -> None:
        """Zoom as `zoom_by`, but glide there; a further step adds to the one on its way."""
        wanted = self.glide.aim(self._state.zoom) * factor
        self._held = self._about(about)
        self.glide.go(self._state.zoom, min(max(wanted, LEAST_ZOOM), MOST_ZOOM))

    def toggle_pleat(self, pleat: Pleat) -> None:
        """Open a folded pleat or fold an opened one; its left end stays where it is."""
        place = self._place()
        left = max(place.to_view(self._state.scale.x(pleat.start)), place.gutter)
        self._follows_now = False
        self._state.toggle(pleat)
        self._hold(pleat.start, left)
        self.folds_changed.emit()

    def toggle_all_folds(self) -> None:
        """Open every fold, or fold all again where all are open."""
        left = self._left_moment()
        if self._state.all_open:
            self._state.fold_all()
        else:
            self._state.open_all()
        self._settle(left)
        self.folds_changed.emit()

    @property
    def all_folds_open(self) -> bool:
        """Whether nothing is folded."""
        return self._state.all_open

    @property
    def is_empty(self) -> bool:
        """Whether there is no lot to show."""
        return not self._state.lanes

    @property
    def pleats(self) -> tuple[Pleat, ...]:
        """The pleats of the sheet, folded and opened."""
        return self._state.pleats

    def scene(self) -> Scene:
        """Give what is painted now; made anew only when something changed."""
        if self._scene is None:
            self._scene = make_scene(self._state, self._looking(), self._tools())
        return self._scene

    @property
    def shown(self) -> SheetState:
        """What the sheet shows, to be read and not to be changed."""
        return self._state

    @property
    def keyboard_at(self) -> Spot | None:
        """Where the keyboard is, while the view has it."""
        return self._spot if self.hasFocus() else None

    def place_at(self, spot: Spot) -> QRect:
        """Give where a row, or a thing of it, lies in the viewport; empty where it has no place."""
        return spot_place(self._state, self._looking(), self._tools(), spot)

    def paint_on(self, painter: QPainter) -> None:
        """Draw the whole viewport."""
        tools = self._tools()
        painter.fillRect(self.viewport().rect(), tools.colours.panel)
        if self._state.lanes:
            scene = self.scene()
            draw_body(painter, scene, tools)
            draw_gutter(painter, scene, tools)
            draw_header(painter, scene, tools)
        else:
            painter.setPen(tools.colours.soft)
            room = QRectF(self.viewport().rect()).adjusted(24, 24, -24, -24)
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(room, flags, self._nothing)

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self.viewport())
        try:
            self.paint_on(painter)
        finally:  # a painter left open takes the whole program down
            painter.end()

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        left = self._left_moment()
        super().resizeEvent(event)
        self._settle(left)

    @override
    def scrollContentsBy(self, dx: int, dy: int) -> None:
        if not self._placing:
            self.glide.stop()
            self._follows_now = self._follows_now and not dx
        self._repaint()

    @override
    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in _DRESSED:
            left = self._left_moment()
            self._pencils = None
            self._settle(left)

    def wanted_height(self) -> int:
        """Give the height in pixels that shows every lane at once."""
        lanes = self._tools().sizes.row * max(self._state.row_count, 1)
        lanes += foot_height(self._state, self._tools())
        return round(self._place().header + lanes) + self.horizontalScrollBar().sizeHint().height()

    @override
    def sizeHint(self) -> QSize:
        return QSize(760, 420)

    def _tools(self) -> Pencils:
        in_force = theme()
        ratio = self.devicePixelRatioF()
        kept = self._pencils
        if kept is None or kept.theme is not in_force or kept.ratio != ratio:
            kept = self._pencils = Pencils(in_force, ratio)
            self._state.pleat_width = kept.pleat_width
            self._state.rebuild()
            self._scene = None
        return kept

    def _looking(self) -> Looking:
        size = self.viewport().size()
        return Looking(
            width=size.width(),
            height=size.height(),
            scroll_x=self.horizontalScrollBar().value(),
            scroll_y=self.verticalScrollBar().value(),
            chosen=self._chosen,
            spot=self._spot if self.hasFocus() else None,
        )

    def _place(self) -> Place:
        return place_of(self._state, self._looking(), self._tools())

    def _left_moment(self) -> datetime:
        """Give the moment at the left edge, to be held there."""
        place = self._place()
        return self._state.scale.moment(place.to_sheet(place.gutter))

    def _settle(self, left: datetime) -> None:
        """Find the place again after a change: now where it is followed, else the left edge."""
        place = self._place()
        width = place.width - place.gutter
        if not self._own_zoom:
            self._state.set_zoom(self._state.first_zoom(width))
        if self._follows_now:
            self._hold(self._state.now - BEFORE_NOW, place.gutter)
        else:
            self._hold(left, place.gutter)

    def _hold(self, moment: datetime, at: float) -> None:
        """Scroll so that a moment stands at an x of the viewport."""
        self._placing = True
        self._set_ranges()
        place = self._place()
        x = self._state.scale.x(moment)
        self.horizontalScrollBar().setValue(round(x - (at - place.gutter)))
        self._placing = False
        self._repaint()

    def _about(self, x: float | None) -> tuple[datetime, float]:
        """Give the moment to zoom about, and where it stands."""
        place = self._place()
        if x is None:
            x = place.to_view(self._state.scale.x(self._state.now))
            if not place.gutter <= x <= place.width:
                x = (place.gutter + place.width) / 2
        return self._state.scale.moment(place.to_sheet(x)), x

    @Slot(float)
    def _zoom_to(self, zoom: float) -> None:
        self._follows_now, self._own_zoom = False, True
        self._state.set_zoom(zoom)
        self._hold(*self._held)

    def _set_ranges(self) -> None:
        place, tools = self._place(), self._tools()
        across, down = self.horizontalScrollBar(), self.verticalScrollBar()
        if not self._state.lanes:
            across.setRange(0, 0)
            down.setRange(0, 0)
            return
        wide, high = place.width - place.gutter, place.height - place.header
        across.setPageStep(max(1, round(wide)))
        across.setRange(0, max(0, round(self._state.scale.width - wide)))
        down.setPageStep(max(1, round(high)))
        rows = self._state.row_count * tools.sizes.row + foot_height(self._state, tools)
        down.setRange(0, max(0, round(rows - high)))

    @Slot()
    def _back_to_now(self) -> None:
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.find_now()

    def _repaint(self) -> None:
        self._scene = None
        self._show_now_tab()
        self.viewport().update()

    def _show_now_tab(self) -> None:
        if not self._state.lanes:
            self._now_tab.hide()
            return
        place = self._place()
        x = place.to_view(self._state.scale.x(self._state.now))
        self._now_tab.show_for(place, x, now_text(self._state))
