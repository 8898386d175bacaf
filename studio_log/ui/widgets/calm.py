"""Fields that the wheel does not change by passing over them."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QWidget
from typing_extensions import override


class _Calm(QObject):
    """Hands a turn of the wheel on to the pane unless the field has the keyboard."""

    @override
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is not QEvent.Type.Wheel or not isinstance(watched, QWidget):
            return False
        if watched.hasFocus():
            return False
        event.ignore()
        return True


def calm(field: QWidget) -> None:
    """Let a field take the wheel only while it has the keyboard: amounts must not slip."""
    field.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    field.installEventFilter(_Calm(field))
