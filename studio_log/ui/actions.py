"""The window's acts as data: menu, words and keys."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from studio_log.ui.hushes import HUSHES


@dataclass(frozen=True)
class ActionRow:
    """One act of the menu bar; `slug` "-" is a line between acts."""

    menu: str
    slug: str
    text: str = ""
    keys: str = ""
    checkable: bool = False


ACTIONS: Final = (
    ActionRow("&File", "new_lot", "&New lot…", "Ctrl+N"),
    ActionRow("&File", "print_tags", "&Print tags…", "Ctrl+P"),
    ActionRow("&File", "-"),
    ActionRow("&File", "settings", "&Settings…", "Ctrl+,"),
    ActionRow("&File", "-"),
    ActionRow("&File", "quit", "&Quit", "Ctrl+Q"),
    ActionRow("&Lot", "undo", "&Undo", "Ctrl+Z"),
    ActionRow("&Lot", "redo", "&Redo", "Ctrl+Shift+Z"),
    ActionRow("&Lot", "-"),
    ActionRow("&Lot", "split", "S&plit…", "Ctrl+Shift+S"),
    ActionRow("&Lot", "go_on", "&Go on to a method…", "Ctrl+G"),
    ActionRow("&Lot", "change", "&Name, place, weight, cure…", "F2"),
    ActionRow("&Lot", "milk", "Record the &milk…", "Ctrl+M"),
    ActionRow("&Lot", "stop", "S&top this lot…"),
    ActionRow("&View", "find", "&Find a lot", "Ctrl+F"),
    ActionRow("&View", "to_lots", "Go to the &lots", "Ctrl+1"),
    ActionRow("&View", "to_steps", "Go to the s&teps", "Ctrl+2"),
    ActionRow("&View", "to_bench", "Go to the &bench", "Ctrl+3"),
    ActionRow("&View", "-"),
    ActionRow("&View", "methods", "&Methods…", "Ctrl+4"),
    ActionRow("&View", "across", "&Across the room", "F11"),
    ActionRow("&View", "-"),
    ActionRow("&View", "larger", "L&arger text", "Ctrl++"),
    ActionRow("&View", "smaller", "S&maller text", "Ctrl+-"),
    ActionRow("&View", "dark", "&Dark", checkable=True),
    ActionRow("&Reminders", "answer", "&Answer what rings (Space)"),
    ActionRow("&Reminders", "put_all_off", "&Put everything off 10 min", "Ctrl+Shift+P"),
    ActionRow("&Reminders", "take_back", "&Take back the last act", "Ctrl+Backspace"),
    ActionRow("&Reminders", "-"),
    *(ActionRow("&Reminders", one.slug, one.text, one.keys) for one in HUSHES),
    ActionRow("&Reminders", "-"),
    ActionRow("&Reminders", "what_rang", "&What rang…", "Ctrl+Shift+R"),
    ActionRow("&Reminders", "ring_test", "Ring a t&est"),
    ActionRow("&Help", "help", "&Help pages", "F1"),
    ActionRow("&Help", "whats_new", "&What is new"),
    ActionRow("&Help", "keys", "&Keys"),
    ActionRow("&Help", "about", "&About Studio Log"),
)


def build(window: QMainWindow) -> dict[str, QAction]:
    """Fill the window's menu bar; gives the acts by slug, unconnected."""
    made: dict[str, QAction] = {}
    menus: dict[str, QMenu] = {}
    for row in ACTIONS:
        menu = menus.get(row.menu)
        if menu is None:
            menu = menus[row.menu] = window.menuBar().addMenu(row.menu)
        if row.slug == "-":
            menu.addSeparator()
            continue
        action = QAction(row.text, window)
        action.setCheckable(row.checkable)
        if row.keys:
            action.setShortcut(QKeySequence(row.keys))
        menu.addAction(action)
        made[row.slug] = action
    return made
