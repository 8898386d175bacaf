"""How the window looks: `apply_theme` dresses the program, `theme` tells painters the rest."""

from studio_log.ui.theme.dress import dress_button, dress_card, dress_label, repolish
from studio_log.ui.theme.icons import icon, icon_folder, program_icon
from studio_log.ui.theme.look import apply_theme, theme
from studio_log.ui.theme.metrics import Metrics
from studio_log.ui.theme.state import Theme

__all__ = [
    "Metrics",
    "Theme",
    "apply_theme",
    "dress_button",
    "dress_card",
    "dress_label",
    "icon",
    "icon_folder",
    "program_icon",
    "repolish",
    "theme",
]
