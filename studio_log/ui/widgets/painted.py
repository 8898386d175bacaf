"""A widget that paints itself has to say what it is: Qt gives it no role of its own."""

from typing import Final

from PySide6.QtCore import QObject
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import QAccessibleWidget, QWidget

_installed: Final[list[bool]] = []


class Painted(QWidget):
    """Is read aloud with a role; its name and what it tells are those of any widget."""

    reads_as = QAccessible.Role.Chart

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        if not _installed:
            _installed.append(True)
            QAccessible.installFactory(_read_aloud)


def _read_aloud(_name: str, thing: QObject) -> QAccessibleInterface | None:
    return QAccessibleWidget(thing, thing.reads_as) if isinstance(thing, Painted) else None
