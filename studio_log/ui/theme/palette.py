"""A palette of the studio as Qt's own, for everything that no style sheet reaches."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtGui import QColor, QPalette

from studio_log.present.hues import Palette

_Role = QPalette.ColorRole

_ROLES: Final[Mapping[QPalette.ColorRole, str]] = {
    _Role.Window: "ground",
    _Role.WindowText: "ink",
    _Role.Base: "raised",
    _Role.AlternateBase: "panel",
    _Role.Text: "ink",
    _Role.Button: "raised",
    _Role.ButtonText: "ink",
    _Role.BrightText: "danger_ink",
    _Role.Highlight: "accent",
    _Role.HighlightedText: "on_accent",
    _Role.Accent: "accent",
    _Role.PlaceholderText: "soft",
    _Role.ToolTipBase: "raised",
    _Role.ToolTipText: "ink",
    _Role.Link: "accent_ink",
    _Role.LinkVisited: "accent_ink",
    _Role.Light: "panel",
    _Role.Midlight: "line",
    _Role.Mid: "line",
    _Role.Dark: "outline",
    _Role.Shadow: "outline",
}
_UNABLE: Final = (_Role.WindowText, _Role.Text, _Role.ButtonText)


def qt_palette(palette: Palette) -> QPalette:
    """Translate the palette; text that cannot be used just now is softened."""
    made = QPalette()
    for role, name in _ROLES.items():
        made.setColor(role, QColor(getattr(palette, name)))
    for role in _UNABLE:
        made.setColor(QPalette.ColorGroup.Disabled, role, QColor(palette.outline))
    return made
