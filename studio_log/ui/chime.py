"""The chime in the program itself, where no desktop notice can be relied on."""

import array
import importlib
import os
import shutil
import sys
import tempfile
import wave
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from PySide6.QtCore import QProcess, QStandardPaths
from PySide6.QtWidgets import QApplication

from studio_log.ui.theme.icons import icon_folder

Sound = Literal["rings", "ends", "spoils"]
PLAYERS: Final = (("pw-play",), ("paplay",), ("aplay", "-q"), ("afplay",))
"""Programs that play a WAV file and end, the likeliest of each system first."""
FULL: Final = 100


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


def gain(percent: int) -> float:
    """Give the factor of the samples for a volume in percent: its square.

    The ear hears ratios, so a straight line would do most of its work below 20 %; the square
    lies near enough to the ear's own law (common practice of mixing desks, no source).
    """
    return (min(max(percent, 0), FULL) / FULL) ** 2


class Chime:
    """Sounds once, never waits for it; silent while it is switched off or at volume 0."""

    def __init__(self) -> None:
        self.on = True
        self.volume = FULL
        """Percent of the sound as it was made."""
        self._player: tuple[str, ...] | None = None
        self._made: dict[tuple[Sound, int], Path] = {}

    def sound(self, sound: Sound = "rings") -> None:
        """Play a sound of our own; where nothing plays files, the system's own signal."""
        if not self.on or self.volume <= 0:
            return
        path = self._at_volume(sound)
        if path is None or not self.play(path):
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

    def _at_volume(self, sound: Sound) -> Path | None:
        """Give the sound as loud as is wished, made once; None where its file is of no use.

        Players differ in how they are told a volume, so the samples themselves are made
        quieter. Where that cannot be kept, too loud is better than unheard.
        """
        volume = min(self.volume, FULL)
        made = self._made.get((sound, volume))
        # The system may empty its cache while the program is open, which is for months.
        if made is not None and made.is_file():
            return made
        whole = sound_file(sound)
        try:
            quieter = _scaled(whole, gain(volume))
        except (OSError, EOFError, wave.Error):
            return None
        path = whole if volume == FULL else _kept(f"{sound}-{volume}.wav", quieter)
        self._made[sound, volume] = path or whole
        return self._made[sound, volume]


@dataclass(frozen=True)
class _Samples:
    """Sound of 16 bits: channels, samples a second, and the samples as a WAV file has them."""

    channels: int
    rate: int
    data: bytes


def _scaled(path: Path, factor: float) -> _Samples:
    """Give a WAV file's samples times a factor; wave.Error or EOFError where it is broken."""
    with wave.open(str(path), "rb") as file:
        channels, width, count = file.getnchannels(), file.getsampwidth(), file.getnframes()
        rate, raw = file.getframerate(), file.readframes(count)
    if width != 2 or not count:
        raise wave.Error("not 16-bit samples")
    if len(raw) < count * channels * width:
        raise EOFError("the file ends before its samples do")
    heard = array.array("h", raw)
    if sys.byteorder == "big":
        heard.byteswap()
    quieter = array.array("h", (round(one * factor) for one in heard))
    if sys.byteorder == "big":
        quieter.byteswap()
    return _Samples(channels, rate, quieter.tobytes())


def _kept(name: str, sound: _Samples) -> Path | None:
    """Write a sound into the cache, whole or not at all; None where it cannot be written."""
    place = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.CacheLocation)
    folder = Path(place) / "chimes"
    part: Path | None = None
    try:
        folder.mkdir(parents=True, exist_ok=True)
        handle, made = tempfile.mkstemp(suffix=".part", dir=folder)
        part = Path(made)
        with os.fdopen(handle, "wb") as to, wave.open(to, "wb") as file:
            file.setnchannels(sound.channels)
            file.setsampwidth(2)
            file.setframerate(sound.rate)
            file.writeframes(sound.data)
        return part.replace(folder / name)
    except OSError:
        if part is not None:
            part.unlink(missing_ok=True)
        return None
