"""The plane of swatches in the window: painted, walked by pointer and keys, saved as a file."""

import math
from collections.abc import Sequence
from pathlib import Path
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QLabel, QToolTip
from typing_extensions import override

from studio_log.language.words import counted, tr, tr_later
from studio_log.present.hues import Palette
from studio_log.present.swatch_files import csv_of, svg_of
from studio_log.present.swatch_looks import BY_AGE, LAYOUTS, PLANE, file_plot, file_title
from studio_log.present.swatch_plot import Coloured, Dot, Plot
from studio_log.services.swatch_plane import coloured
from studio_log.services.swatches import SwatchShown
from studio_log.services.whole_file import write_whole
from studio_log.ui.swatches.plot_paint import paint_dot, paint_plot, plot_png
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import em

BESIDE: Final = 3
"""Pixels beside a swatch that still are a click on it."""
KEYS: Final = {Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1}


class PlotView(QLabel):
    """Paints the plane; a click chooses a swatch, arrows go from one to the next by hue."""

    chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setPixmap(QPixmap(1, 1))  # a label with a picture: so it is read aloud as one
        self._swatches: tuple[Coloured, ...] = ()
        self._look = PLANE
        self._code = ""
        self._painted: tuple[Palette, QPixmap] | None = None
        self.plot = file_plot((), PLANE)
        self.setMinimumSize(em(self, 16), em(self, 14))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)

    def show_swatches(self, lines: Sequence[SwatchShown], look: str = PLANE) -> None:
        """Show these in one of `LAYOUTS`: on one plane, lot by lot, or by the age of the cure."""
        self._swatches, self._look = coloured(lines), look
        self._relay()
        count = counted(len(self._swatches), tr_later("{n} swatch"), tr_later("{n} swatches"))
        name = (
            tr("{count} by the age of their cure", count=count)
            if look == BY_AGE
            else tr("{count} by a* and b*", count=count)
        )
        self.setAccessibleName(name)

    def choose(self, code: str) -> None:
        """Mark a swatch."""
        self._code = code
        self.setAccessibleDescription(next((o.told for o in self._swatches if o.code == code), ""))
        self.update()

    def save(self, path: Path) -> Path:
        """Write SVG, PNG or CSV by the name's ending, and give what was written; may refuse."""
        kind = path.suffix.casefold()
        if kind == ".csv":
            write_whole(path, b"\xef\xbb\xbf" + csv_of(self._swatches).encode())
        elif kind == ".png":
            write_whole(path, plot_png(self._file_plot()))
        else:
            path = path if kind == ".svg" else path.with_name(f"{path.name}.svg")
            write_whole(path, svg_of(self._file_plot(), file_title(self._look)).encode())
        return path

    @override
    def sizeHint(self) -> QSize:
        return QSize(em(self, 36), em(self, 32))

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._relay()

    @override
    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.FontChange:
            self._relay()

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        palette = theme().palette
        painter.drawPixmap(0, 0, self._ground(palette))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        _paint_chosen(painter, self.plot, self._code)
        if not self._swatches:
            painter.setPen(QColor(palette.soft))
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(self.rect(), flags, tr("No swatch here has a colour yet."))
        if self.hasFocus():
            painter.setPen(QPen(QColor(palette.focus), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        painter.end()

    @override
    def mousePressEvent(self, event: QMouseEvent) -> None:
        dot = self.dot_at(event.position())
        if dot is not None:
            self.chosen.emit(dot.code)

    @override
    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        over = self.dot_at(event.position()) is not None
        shape = Qt.CursorShape.PointingHandCursor if over else Qt.CursorShape.ArrowCursor
        self.setCursor(shape)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        way = KEYS.get(Qt.Key(event.key()))
        if way is None or not self._swatches:
            super().keyPressEvent(event)
            return
        order = [one.code for one in sorted(self._swatches, key=lambda one: one.lab.hue or 0.0)]
        at = order.index(self._code) + way if self._code in order else 0
        self.chosen.emit(order[at % len(order)])

    @override
    def event(self, event: QEvent) -> bool:
        if isinstance(event, QHelpEvent) and event.type() is QEvent.Type.ToolTip:
            dot = self.dot_at(QPointF(event.pos()))
            if dot is None:
                QToolTip.hideText()
            else:
                QToolTip.showText(event.globalPos(), dot.told, self)
            return True
        return super().event(event)

    def dot_at(self, point: QPointF) -> Dot | None:
        """Give the swatch that lies there, the nearest of several."""
        x, y = point.x(), point.y()
        near = [
            dot
            for panel in self.plot.panels
            for dot in panel.dots
            if abs(dot.x - x) <= dot.radius + BESIDE and abs(dot.y - y) <= dot.radius + BESIDE
        ]
        found = min(near, key=lambda dot: math.hypot(dot.x - x, dot.y - y), default=None)
        if found is None or math.hypot(found.x - x, found.y - y) > found.radius + BESIDE:
            return None
        return found

    def _ground(self, palette: Palette) -> QPixmap:
        """Give all but what is chosen, painted once: thousands of swatches take their time."""
        if self._painted is None or self._painted[0] is not palette:
            share = self.devicePixelRatioF()
            pixmap = QPixmap(self.size() * share)
            pixmap.setDevicePixelRatio(share)
            pixmap.fill(QColor(palette.panel))
            painter = QPainter(pixmap)
            painter.setFont(self.font())
            paint_plot(painter, self.plot, (palette.ink, palette.soft, palette.line))
            painter.end()
            self._painted = palette, pixmap
        return self._painted[1]

    def _relay(self) -> None:
        self._painted = None
        size = (float(self.width()), float(self.height()))
        self.plot = LAYOUTS[self._look](self._swatches, size, float(em(self)))
        self.update()

    def _file_plot(self) -> Plot:
        return file_plot(self._swatches, self._look)


def _paint_chosen(painter: QPainter, plot: Plot, code: str) -> None:
    """Paint a chosen swatch once more, above those that lie on it, with a ring about it."""
    palette = theme().palette
    for panel in plot.panels:
        for dot in panel.dots:
            if dot.code == code:
                paint_dot(painter, dot, (palette.ink, palette.soft, palette.line))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.setPen(QPen(QColor(palette.focus), 2.5))
                painter.drawEllipse(QPointF(dot.x, dot.y), dot.radius + 4, dot.radius + 4)
