"""The chime in the program itself, where no desktop notice can be relied on."""

import importlib
import shutil
import sys
from pathlib import Path
from typing import Final, Literal

from PySide6.QtCore import QProcess
from PySide6.QtWidgets import QApplication

from studio_log.ui.theme.icons import icon_folder

Sound = Literal["rings", "ends", "spoils"]
PLAYERS: Final = (("pw-play",), ("paplay",), ("aplay", "-q"), ("afplay",))
"""Programs that play a WAV file and end, the likeliest of each system first."""


def sound_file(sound: Sound) -> Path:
    """Give the file of one of the program's own sounds."""
    return icon_folder().parent / "sounds" / f"{sound}.wav"


def find_player() -> tuple[str, ...]:
    """Give the first player that this system has, () for none."""
    for name, *options in PLAYERS:
        found = shutil.which(name)
        if found is not None:
            return (found, *options)
    return ()


class Chime:
    """Sounds once, never waits for it; silent while it is switched off."""

    def __init__(self) -> None:
        self.on = True
        self._player: tuple[str, ...] | None = None

    def sound(self, sound: Sound = "rings") -> None:
        """Play a sound of our own; where nothing plays files, the system's own signal."""
        if self.on and not self.play(sound_file(sound)):
            QApplication.beep()

    def play(self, path: Path) -> bool:
        """Hand a file to a player; False where there is none or it cannot be started."""
        if sys.platform == "win32":  # pragma: no cover - written, not run
            winsound = importlib.import_module("winsound")
            winsound.PlaySound(str(path), winsound.SND_FILENAME | winsound.SND_ASYNC)
            return True
        if self._player is None:
            self._player = find_player()
        if not self._player:
            return False
        program, *options = self._player
        started, _process = QProcess.startDetached(program, [*options, str(path)])
        return started
