"""The chime: its files are what the script makes, and a player is handed the right one."""

import array
import stat
import subprocess
import sys
import wave
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studio_log.ui import chime as module
from studio_log.ui.chime import Chime, sound_file
from tests.support.tree import TREE

SOUNDS = ("rings", "ends", "spoils")


def samples(path: Path) -> list[int]:
    with wave.open(str(path)) as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (1, 2, 22_050)
        return list(array.array("h", file.readframes(file.getnframes())))


def test_the_sounds_are_what_the_script_makes(tmp_path: Path) -> None:
    script = TREE / "packaging" / "chimes.py"
    subprocess.run([sys.executable, str(script), str(tmp_path)], check=True, timeout=60)
    for name in SOUNDS:
        made, shipped = samples(tmp_path / f"{name}.wav"), samples(sound_file(name))  # type: ignore[arg-type]
        assert len(made) == len(shipped)
        # Mathematical libraries differ in their last digit.
        assert max(abs(a - b) for a, b in zip(made, shipped, strict=True)) <= 1


@pytest.mark.parametrize("name", SOUNDS)
def test_a_sound_is_short_heard_and_ends_quietly(name: str) -> None:
    heard = samples(TREE / "resources" / "sounds" / f"{name}.wav")
    loudest = max(abs(value) for value in heard)
    assert 15_000 < loudest < 25_000, "neither faint nor clipped"
    assert len(heard) < 2 * 22_050
    assert abs(heard[0]) < 50
    assert max(abs(value) for value in heard[-20:]) < 200, "no click at the end"


def test_the_player_is_handed_the_file_of_the_sound(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = tmp_path / "told"
    player = tmp_path / "aplay"
    player.write_text(f'#!/bin/sh\necho "$@" > {told}.part && mv {told}.part {told}\n')
    player.chmod(player.stat().st_mode | stat.S_IXUSR)
    here = {"aplay": str(player)}
    monkeypatch.setattr(module.shutil, "which", here.get)
    chime = Chime()
    chime.sound("spoils")
    qtbot.waitUntil(told.exists)
    assert told.read_text().split() == ["-q", str(sound_file("spoils"))]
    told.unlink()
    chime.on = False
    chime.sound("rings")
    assert not told.exists()


@pytest.mark.usefixtures("qapp")
def test_without_a_player_the_systems_own_signal_sounds(monkeypatch: pytest.MonkeyPatch) -> None:
    beeps: list[int] = []
    monkeypatch.setattr(module.shutil, "which", lambda _name: None)
    monkeypatch.setattr(module.QApplication, "beep", lambda: beeps.append(1))
    Chime().sound()
    assert beeps == [1]
