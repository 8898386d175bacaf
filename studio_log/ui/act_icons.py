"""Which of our icons an act of the window has, on its menu and its button."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QPushButton

from studio_log.ui.theme.icons import icon
from studio_log.ui.theme.look import theme

ICONS: Final[Mapping[str, str]] = {
    "new_lot": "plus",
    "print_tags": "print",
    "card_times": "answer",
    "print_card": "print",
    "print_record": "print",
    "print_day": "print",
    "print_steps": "print",
    "copy_steps": "copy",
    "save_steps": "save",
    "calendar": "calendar",
    "export": "save",
    "import": "plus",
    "copies": "copies",
    "sharing": "sharing",
    "settings": "settings",
    "quit": "quit",
    "undo": "undo",
    "redo": "redo",
    "split": "split",
    "join": "join",
    "go_on": "go-on",
    "change": "change",
    "milk": "milk",
    "stop": "stop",
    "find": "find",
    "to_lots": "lots",
    "to_steps": "steps",
    "to_bench": "bench",
    "methods": "methods",
    "calculator": "calculator",
    "stock": "stock",
    "dyes": "dyes",
    "baths": "bath",
    "swatches": "swatches",
    "trials": "trials",
    "plan": "plan",
    "hours": "hours",
    "lines": "lines",
    "across": "room",
    "larger": "larger",
    "smaller": "smaller",
    "answer": "answer",
    "put_all_off": "later",
    "take_back": "undo",
    "hush_hour": "quiet",
    "hush_morning": "dark",
    "hush_end": "bell",
    "what_rang": "what-rang",
    "ring_test": "bell",
    "help": "help",
    "whats_new": "new",
    "keys": "keys",
    "about": "about",
}
"""Slug of an act -> file of `resources/icons`. What is ticked has its tick and no icon."""


def dress_acts(acts: Mapping[str, QAction], buttons: Mapping[str, QPushButton]) -> None:
    """Draw the icons of acts and buttons in the theme's ink, at the size of its letters."""
    now = theme()
    side = round(now.metrics.line * 1.1)
    ink, unable, chosen = now.colours.ink, now.colours.soft, now.colours.on_accent
    for slug, act in acts.items():
        if slug in ICONS:
            act.setIcon(icon(ICONS[slug], ink, unable, chosen, side=side))
    for slug, made in buttons.items():
        made.setIcon(icon(ICONS[slug], ink, unable, side=side))
        made.setIconSize(QSize(side, side))
