"""Fonts, pens and cached small pictures for painting the sheet in one theme."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QLinearGradient,
    QPainter,
    QPen,
    QPixmap,
    QStaticText,
)

from studio_log.domain.methods import StepKind
from studio_log.present.timeline_layout import RowSizes
from studio_log.ui.theme import Theme
from studio_log.ui.timeline.ribbons import Ribbon
from studio_log.ui.timeline.shapes import draw_kind, drop_path, plain_weave, twill

FRAME = 4
"""Pixels at the foot of a row that the frame of the keyboard takes."""
_MOST_TEXTS = 500
"""Kept at once; the log is open for months, and hours and names go by."""


class Ruler:
    """Measures texts in one font and remembers the last ones, also as laid out for drawing."""

    def __init__(self, font: QFont) -> None:
        self.font = font
        self.metrics = QFontMetricsF(font)
        self._widths: dict[str, float] = {}
        self._texts: dict[str, QStaticText] = {}

    def __call__(self, text: str) -> float:
        width = self._widths.get(text)
        if width is None:
            if len(self._widths) >= _MOST_TEXTS:
                self._widths.clear()
            width = self._widths[text] = self.metrics.horizontalAdvance(text)
        return width

    def draw(self, painter: QPainter, x: float, middle: float, text: str) -> None:
        """Draw with the pen's colour, its middle at a height; the painter must hold the font."""
        laid = self._texts.get(text)
        if laid is None:
            if len(self._texts) >= _MOST_TEXTS:
                self._texts.clear()
            laid = QStaticText(text)
            laid.setTextFormat(Qt.TextFormat.PlainText)
            laid.setPerformanceHint(QStaticText.PerformanceHint.AggressiveCaching)
            laid.prepare(font=self.font)
            self._texts[text] = laid
        painter.drawStaticText(QPointF(x, round(middle - self.metrics.height() / 2)), laid)


class Pencils:
    """Everything the painters need that depends on theme and screen only."""

    def __init__(self, theme: Theme, ratio: float) -> None:
        self.theme = theme
        self.colours = theme.colours
        self.ratio = ratio
        self.bold = Ruler(theme.font(bold=True))
        self.body = Ruler(theme.font())
        self.bar = Ruler(theme.font("small"))
        self.small = Ruler(theme.font("small"))
        self.tag = Ruler(theme.font("small", bold=True))
        self.sizes = _sizes(theme.metrics.scale)
        self.name_middle = _name_middle(self.sizes, self.small.metrics.height())
        self.night_chosen = _mixed(self.colours.night, self.colours.chosen)
        self.closed = plain_weave(_faded(self.colours.outline, 0.28), ratio)
        self.hour_line = QPen(_faded(self.colours.line, 0.55), 1)
        self.day_line = QPen(self.colours.line, 1)
        self.row_line = QPen(self.colours.line, 1)
        self.now_pen = QPen(self.colours.danger, 2)
        self.focus_pen = QPen(self.colours.focus, 2)
        self._pictures: dict[str, QPixmap] = {}
        self._pens: dict[tuple[int, float], QPen] = {}
        self._dyes: dict[StepKind, Dye] = {}

    @property
    def pleat_width(self) -> float:
        """A pleat holds its count of days, up to three figures."""
        return round(self.tag("888 d") + self.theme.metrics.l)

    def pen(self, colour: QColor, width: float) -> QPen:
        """Give a plain pen; each is made once."""
        key = (colour.rgba(), width)
        pen = self._pens.get(key)
        if pen is None:
            pen = self._pens[key] = QPen(colour, width)
        return pen

    def dye(self, kind: StepKind) -> "Dye":
        """Give all that bars of one kind are drawn with; made once."""
        dye = self._dyes.get(kind)
        if dye is None:
            dye = self._dyes[kind] = Dye(self, kind)
        return dye

    def glyph(self, kind: StepKind, colour: QColor) -> QPixmap:
        """Draw the small shape of a kind in a colour, at the size that bars hold."""
        side = self.sizes.glyph
        picture = QPixmap(round(side * self.ratio), round(side * self.ratio))
        picture.setDevicePixelRatio(self.ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_kind(painter, kind, QRectF(0, 0, side, side), colour)
        painter.end()
        return picture

    def drop(self, *, done: bool) -> QPixmap:
        """Give a drop, filled once the dip is done, with a rim of ground around it."""
        return self._kept(f"drop {done}", self.sizes.drop + 8, self.sizes.bar + 6, self._drop)

    def stitch(self, *, done: bool) -> QPixmap:
        """Give a stitch: sewn once it is done, hollow while it is ahead."""
        return self._kept(f"stitch {done}", self.sizes.stitch + 4, 8, self._stitch)

    def _kept(
        self, name: str, width: float, height: float, draw: Callable[[QPainter, QRectF, str], None]
    ) -> QPixmap:
        picture = self._pictures.get(name)
        if picture is None:
            place = QRectF(0, 0, round(width), round(height))
            picture = QPixmap((place.size() * self.ratio).toSize())
            picture.setDevicePixelRatio(self.ratio)
            picture.fill(Qt.GlobalColor.transparent)
            painter = QPainter(picture)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            draw(painter, place, name)
            painter.end()
            self._pictures[name] = picture
        return picture

    def _drop(self, painter: QPainter, place: QRectF, name: str) -> None:
        edge = self.theme.kind(StepKind.DIP).edge
        path = drop_path(place.center(), self.sizes.drop, self.sizes.bar - 2)
        painter.strokePath(path, QPen(self.colours.panel, 5))
        painter.fillPath(path, edge if name.endswith("True") else self.colours.panel)
        painter.strokePath(path, QPen(edge, 1.8))

    def _stitch(self, painter: QPainter, place: QRectF, name: str) -> None:
        done = name.endswith("True")
        painter.setPen(QPen(self.colours.ink if done else self.colours.soft, 1.2))
        painter.setBrush(self.colours.ink if done else self.colours.panel)
        painter.drawRoundedRect(place.adjusted(2, 2, -2, -2), 2, 2)

    def fold_shade(self, left: float, right: float) -> QLinearGradient:
        """Give the shade of one fold of cloth: light on its back, dark where it dips."""
        deep = 120 if self.theme.is_dark else 64
        shade = QLinearGradient(left, 0, right, 0)
        light = QColor(255, 255, 255, 14 if self.theme.is_dark else 90)
        shade.setColorAt(0.0, QColor(0, 0, 0, deep))
        shade.setColorAt(0.12, QColor(0, 0, 0, deep // 3))
        shade.setColorAt(0.42, light)
        shade.setColorAt(0.75, QColor(0, 0, 0, deep // 8))
        shade.setColorAt(1.0, QColor(0, 0, 0, deep // 2))
        return shade


class Dye:
    """What the bars of one kind of step are drawn with."""

    def __init__(self, pencils: Pencils, kind: StepKind) -> None:
        hue = self.hue = pencils.theme.kind(kind)
        high, ratio = pencils.sizes.bar, pencils.ratio
        bare = QPen(Qt.PenStyle.NoPen) if hue.edge == hue.fill else QPen(hue.edge, 1)
        edge, fill, tint = QPen(hue.edge, 1), QBrush(hue.fill), QBrush(hue.tint)
        hatch = twill(hue.edge, pencils.colours.panel, ratio)
        self.done = Ribbon(fill, bare, high, ratio)
        self.dyed = Ribbon(fill, edge, high, ratio)
        self.pale = Ribbon(tint, edge, high, ratio)
        self.soft = Ribbon(hatch, edge, high, ratio, round_by=0)
        self.planned_pen = QPen(hue.edge, 1.5)
        self.aim_pen = QPen(hue.edge, 2)
        self.glyph_on_fill = pencils.glyph(kind, hue.on_fill)
        self.glyph_on_tint = pencils.glyph(kind, hue.edge)


def _sizes(scale: float) -> RowSizes:
    plain = RowSizes()
    return RowSizes(
        row=round(plain.row * scale),
        bar_top=round(plain.bar_top * scale),
        bar=round(plain.bar * scale),
        planned_gap=plain.planned_gap,
        strip_top=round(plain.strip_top * scale),
        strip=round(plain.strip * scale),
        pad=plain.pad * (0.5 + scale / 2),
        glyph=round(plain.glyph * scale),
        drop=plain.drop * scale,
        stitch=plain.stitch * scale,
        mark=plain.mark * scale,
    )


def _name_middle(sizes: RowSizes, high: float) -> float:
    """Give where the middle of a lot's name lies in its row: beside its strip, within the frame."""
    return min(sizes.strip_top + sizes.strip / 2 - 1, sizes.row - FRAME - high / 2)


def _mixed(one: QColor, other: QColor) -> QColor:
    return QColor.fromRgbF(
        (one.redF() + other.redF()) / 2,
        (one.greenF() + other.greenF()) / 2,
        (one.blueF() + other.blueF()) / 2,
    )


def _faded(colour: QColor, alpha: float) -> QColor:
    faded = QColor(colour)
    faded.setAlphaF(alpha)
    return faded
