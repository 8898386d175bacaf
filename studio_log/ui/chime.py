"""The chime in the program itself, where no desktop notice can be relied on."""

from PySide6.QtWidgets import QApplication


class Chime:
    """Sounds once; silent while it is switched off."""

    def __init__(self) -> None:
        self.on = True

    def sound(self) -> None:
        """Sound the system's own signal."""
        if self.on:
            QApplication.beep()
