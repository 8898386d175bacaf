"""The theme in force: colours, metrics and fonts for everything that paints itself."""

from dataclasses import dataclass, fields
from typing import Final

from PySide6.QtGui import QColor, QFont, QFontMetricsF

from studio_log.domain.methods import StepKind
from studio_log.present.hues import HUES, PALETTES, Hue, Palette, Scheme
from studio_log.ui.theme.metrics import Metrics

FONT_STEPS: Final = {"small": 0.86, "body": 1.0, "title": 1.15, "heading": 1.3, "digits": 3.2}
"""Sizes of text as shares of the body's."""


@dataclass(frozen=True)
class KindColours:
    """A hue as QColors; see `present.hues.Hue`."""

    name: str
    fill: QColor
    on_fill: QColor
    tint: QColor
    edge: QColor


@dataclass(frozen=True)
class Colours:
    """A palette as QColors; see `present.hues.Palette`."""

    ground: QColor
    panel: QColor
    raised: QColor
    night: QColor
    line: QColor
    outline: QColor
    ink: QColor
    soft: QColor
    accent: QColor
    on_accent: QColor
    accent_ink: QColor
    chosen: QColor
    danger: QColor
    on_danger: QColor
    danger_ink: QColor
    danger_ground: QColor
    ochre: QColor
    on_ochre: QColor
    ochre_ink: QColor
    ochre_ground: QColor
    indigo_ground: QColor
    good_ink: QColor
    focus: QColor


class Theme:
    """One scheme at one size of text; never changed, a new one takes its place."""

    def __init__(self, scheme: Scheme, font: QFont) -> None:
        self.scheme: Scheme = scheme
        self.palette: Palette = PALETTES[scheme]
        self.colours = Colours(
            **{f.name: QColor(getattr(self.palette, f.name)) for f in fields(Palette)}
        )
        self._kinds = {kind: _kind_colours(hue) for kind, hue in HUES[scheme].items()}
        self._font = QFont(font)
        self.metrics = Metrics(line=QFontMetricsF(font).height())

    @property
    def is_dark(self) -> bool:
        """Whether a dark palette is in force."""
        return self.scheme in ("dark", "strong-dark")

    def kind(self, kind: StepKind) -> KindColours:
        """Give the colours of one kind of step."""
        return self._kinds[kind]

    def font(self, step: str = "body", *, bold: bool = False) -> QFont:
        """Give a font of one of `FONT_STEPS`."""
        font = QFont(self._font)
        font.setPointSizeF(self._font.pointSizeF() * FONT_STEPS[step])
        font.setBold(bold)
        return font


def _kind_colours(hue: Hue) -> KindColours:
    return KindColours(
        hue.name, QColor(hue.fill), QColor(hue.on_fill), QColor(hue.tint), QColor(hue.edge)
    )
