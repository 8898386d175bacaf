"""The window's acts as data: menu, words and keys."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow

from studio_log.language.words import tr, tr_later
from studio_log.ui.hushes import HUSHES


@dataclass(frozen=True)
class ActionRow:
    """One act of the menu bar; `slug` "-" is a line between acts."""

    menu: str
    slug: str
    text: str = ""
    keys: str = ""
    checkable: bool = False


MENUS: Final = (
    tr_later("&File"),
    tr_later("&Lot"),
    tr_later("&View"),
    tr_later("&Reminders"),
    tr_later("&Help"),
)

ACTIONS: Final = (
    ActionRow("&File", "new_lot", tr_later("&New lot…"), "Ctrl+N"),
    ActionRow("&File", "print_tags", tr_later("&Print tags…"), "Ctrl+P"),
    ActionRow("&File", "print_card", tr_later("Print the step ca&rd…"), "Ctrl+Alt+C"),
    ActionRow("&File", "print_record", tr_later("Print the &whole record…"), "Ctrl+Alt+R"),
    ActionRow("&File", "print_day", tr_later("Print the &day sheet…"), "Ctrl+Alt+D"),
    ActionRow("&File", "-"),
    ActionRow("&File", "print_steps", tr_later("Print the s&teps…"), "Ctrl+Alt+P"),
    ActionRow("&File", "copy_steps", tr_later("&Copy the steps as a picture"), "Ctrl+Shift+C"),
    ActionRow("&File", "save_steps", tr_later("S&ave the steps as a picture…")),
    ActionRow("&File", "-"),
    ActionRow("&File", "calendar", tr_later("Ca&lendar…"), "Ctrl+Shift+L"),
    ActionRow("&File", "import", tr_later("Take &in an old notebook…"), "Ctrl+Shift+I"),
    ActionRow("&File", "export", tr_later("&Export everything…"), "Ctrl+Shift+E"),
    ActionRow("&File", "copies", tr_later("C&opies…"), "Ctrl+Shift+K"),
    ActionRow("&File", "sharing", tr_later("Se&veral laptops…"), "Ctrl+Alt+L"),
    ActionRow("&File", "-"),
    ActionRow("&File", "settings", tr_later("&Settings…"), "Ctrl+,"),
    ActionRow("&File", "hours", tr_later("&Hours…"), "Ctrl+H"),
    ActionRow("&File", "-"),
    ActionRow("&File", "quit", tr_later("&Quit"), "Ctrl+Q"),
    ActionRow("&Lot", "undo", tr_later("&Undo"), "Ctrl+Z"),
    ActionRow("&Lot", "redo", tr_later("&Redo"), "Ctrl+Shift+Z"),
    ActionRow("&Lot", "-"),
    ActionRow("&Lot", "split", tr_later("S&plit…"), "Ctrl+Shift+S"),
    ActionRow("&Lot", "join", tr_later("&Join with another lot…"), "Ctrl+J"),
    ActionRow("&Lot", "go_on", tr_later("&Go on to a method…"), "Ctrl+G"),
    ActionRow("&Lot", "change", tr_later("&Name, place, weight, cure…"), "F2"),
    ActionRow("&Lot", "milk", tr_later("Record the &milk…"), "Ctrl+M"),
    ActionRow("&Lot", "card_times", tr_later("Times from the car&d…"), "Ctrl+Shift+T"),
    ActionRow("&Lot", "stop", tr_later("S&top this lot…")),
    ActionRow("&View", "find", tr_later("&Find a lot"), "Ctrl+F"),
    ActionRow("&View", "to_lots", tr_later("Go to the &lots"), "Ctrl+1"),
    ActionRow("&View", "to_steps", tr_later("Go to the s&teps"), "Ctrl+2"),
    ActionRow("&View", "to_bench", tr_later("Go to the &bench"), "Ctrl+3"),
    ActionRow("&View", "-"),
    ActionRow("&View", "methods", tr_later("&Methods…"), "Ctrl+4"),
    ActionRow("&View", "calculator", tr_later("&Calculator…"), "Ctrl+5"),
    ActionRow("&View", "stock", tr_later("Stoc&k…"), "Ctrl+6"),
    ActionRow("&View", "baths", tr_later("Baths and &vats…"), "Ctrl+7"),
    ActionRow("&View", "dyes", tr_later("D&yes and materials…"), "Ctrl+8"),
    ActionRow("&View", "swatches", tr_later("S&watches…"), "Ctrl+9"),
    ActionRow("&View", "trials", tr_later("Tr&ials…"), "Ctrl+T"),
    ActionRow("&View", "plan", tr_later("&Plan…"), "Ctrl+0"),
    ActionRow("&View", "across", tr_later("&Across the room"), "F11"),
    ActionRow("&View", "-"),
    ActionRow("&View", "lines", tr_later("L&ines for vessels, line and heat"), "Ctrl+L"),
    ActionRow("&View", "larger", tr_later("L&arger text"), "Ctrl++"),
    ActionRow("&View", "smaller", tr_later("S&maller text"), "Ctrl+-"),
    ActionRow("&View", "dark", tr_later("&Dark"), checkable=True),
    ActionRow("&Reminders", "answer", tr_later("&Answer what rings (Space)")),
    ActionRow(
        "&Reminders",
        "put_all_off",
        tr_later("&Put everything off 10 min"),
        "Ctrl+Shift+P",
    ),
    ActionRow("&Reminders", "take_back", tr_later("&Take back the last act"), "Ctrl+Backspace"),
    ActionRow("&Reminders", "-"),
    *(ActionRow("&Reminders", one.slug, one.text, one.keys) for one in HUSHES),
    ActionRow("&Reminders", "-"),
    ActionRow("&Reminders", "what_rang", tr_later("&What rang…"), "Ctrl+Shift+R"),
    ActionRow("&Reminders", "ring_test", tr_later("Ring a t&est")),
    ActionRow("&Help", "help", tr_later("&Help pages"), "F1"),
    ActionRow("&Help", "whats_new", tr_later("&What is new")),
    ActionRow("&Help", "keys", tr_later("&Keys")),
    ActionRow("&Help", "about", tr_later("&About Studio Log")),
)


def build(window: QMainWindow) -> dict[str, QAction]:
    """Fill the window's menu bar; gives the acts by slug, unconnected."""
    made: dict[str, QAction] = {}
    menus = {name: window.menuBar().addMenu(tr(name)) for name in MENUS}
    for row in ACTIONS:
        menu = menus[row.menu]
        if row.slug == "-":
            menu.addSeparator()
            continue
        action = QAction(tr(row.text), window)
        action.setCheckable(row.checkable)
        if row.keys:
            action.setShortcut(QKeySequence(row.keys))
        menu.addAction(action)
        made[row.slug] = action
    return made
