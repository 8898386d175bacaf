"""What closing the window does: it steps back, and the reminders go on; said once."""

from typing import Final

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMainWindow

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import ChangeSettings
from studio_log.ui.ask import Ask
from studio_log.ui.bridge import Bridge

CLOSING_TRAY: Final = tr_later(
    "Closing the window keeps the reminders going; the icon in the tray "
    "opens it again. Ctrl+Q quits, and then nothing rings until Studio "
    "Log is started again."
)
CLOSING_MINIMISED: Final = tr_later(
    "This desktop has no tray, so closing makes the window small instead, "
    "and the reminders keep going. Ctrl+Q quits, and then nothing rings "
    "until Studio Log is started again."
)


def ask_about_closing(
    ask: Ask, window: QMainWindow, bridge: Bridge, *, to_tray: bool
) -> str | None:
    """Say what closing does, once; gives "keep", "quit" or None where the window stays."""
    answer = ask.closing(window, tr(CLOSING_TRAY) if to_tray else tr(CLOSING_MINIMISED))
    if answer is not None:
        bridge.do(ChangeSettings({"closing_said": True}))
    return answer


def step_back(window: QMainWindow, *, to_tray: bool) -> None:
    """Leave the screen and go on reminding."""
    if to_tray:
        QGuiApplication.setQuitOnLastWindowClosed(False)
        window.hide()
    else:
        window.showMinimized()
