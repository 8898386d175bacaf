"""How the window's own parts look, by the properties they carry.

Given to the main window, on top of the style of the whole program: words, panes, chips, rows.
"""

from typing import Final

from studio_log.present.hues import Palette
from studio_log.ui.theme.state import Theme

SIZES: Final = {"small": 0.9, "body": 1.0, "large": 1.12, "title": 1.3, "digits": 4.2}
LEAST_DIGITS: Final = 64
"""Height of the countdown's digits in pixels, read from across the bench."""
_TONES: Final = ("ink", "soft", "accent_ink", "danger_ink", "ochre_ink", "good_ink")
_POINT: Final = 96 / 72


def sheet(theme: Theme) -> str:
    """Give the style sheet that goes with a theme."""
    return "\n".join((*_words(theme.palette, theme.font().pointSizeF()), _parts(theme)))


def _words(colours: Palette, points: float) -> list[str]:
    rules = [f'Words[tone="{tone}"] {{ color: {getattr(colours, tone)}; }}' for tone in _TONES]
    for size, factor in SIZES.items():
        if size == "digits":
            pixels = max(round(points * factor * _POINT), LEAST_DIGITS)
            rules.append(f'Words[letters="digits"] {{ font-size: {pixels}px; }}')
        else:
            rules.append(f'Words[letters="{size}"] {{ font-size: {points * factor:.1f}pt; }}')
    rules.append('Words[bold="true"] { font-weight: 700; }')
    return rules


def _parts(theme: Theme) -> str:
    c, line = theme.palette, round(theme.metrics.line)
    return f"""
QWidget#side {{ background: {c.ground}; }}
QWidget#sheet {{ background: {c.panel}; }}
QWidget#topbar {{ background: {c.ground}; border-bottom: 1px solid {c.line}; }}
QWidget#statusline {{ background: {c.ground}; border-top: 1px solid {c.line}; }}
QFrame#rule {{ background: {c.line}; border: none; max-height: 1px; min-height: 1px; }}
QFrame#bar {{ background: {c.indigo_ground}; border: none; border-bottom: 1px solid {c.line}; }}
QFrame#bar[urgency="now"], QFrame#bar[urgency="spoiling"] {{ background: {c.danger_ground}; }}
QFrame#bar[urgency="soon"] {{ background: {c.ochre_ground}; }}
QPushButton:focus {{ outline: none; }}
QPushButton#chip {{ border-radius: {line // 2 + 4}px; padding: 2px {line // 2}px;
  min-height: {line + 2}px; }}
QPushButton#chip:checked {{ background: {c.accent}; color: {c.on_accent}; }}
QPushButton#chip:focus {{ border: 2px solid {c.focus}; padding: 1px {line // 2 - 1}px; }}
QFrame#steprow {{ border: 2px solid transparent; border-radius: 4px; background: transparent; }}
QFrame#steprow[chosen="true"] {{ background: {c.chosen}; }}
QFrame#steprow:focus {{ border: 2px solid {c.focus}; }}
QFrame#stepdetail {{ background: {c.raised}; border: 1px solid {c.line}; border-radius: 6px; }}
QListView#lots, QListView#lots:focus {{ background: {c.ground}; border: none; }}
QListView#lots::item {{ padding: 0; }}
QListView#lots::item:focus {{ border: none; }}
"""
