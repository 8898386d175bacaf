"""The chime: its files are what the script makes, and a player is handed the right one."""

import array
import math
import stat
import subprocess
import sys
import wave
from collections.abc import Callable
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studio_log.ui import chime as module
from studio_log.ui.chime import Chime, Sound, sound_file
from tests.support.tree import TREE

SOUNDS: tuple[Sound, ...] = ("rings", "ends", "spoils")


def samples(path: Path) -> list[int]:
    with wave.open(str(path)) as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (1, 2, 22_050)
        return list(array.array("h", file.readframes(file.getnframes())))


def test_the_sounds_are_what_the_script_makes(tmp_path: Path) -> None:
    script = TREE / "packaging" / "chimes.py"
    subprocess.run([sys.executable, str(script), str(tmp_path)], check=True, timeout=60)
    for name in SOUNDS:
        made, shipped = samples(tmp_path / f"{name}.wav"), samples(sound_file(name))
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


@pytest.fixture
def played(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A player that notes what it is handed; the file comes to be when it has."""
    told = tmp_path / "told"
    player = tmp_path / "aplay"
    player.write_text(f'#!/bin/sh\necho "$@" > {told}.part && mv {told}.part {told}\n')
    player.chmod(player.stat().st_mode | stat.S_IXUSR)
    monkeypatch.setattr(module.shutil, "which", {"aplay": str(player)}.get)
    return told


@pytest.fixture
def beeps(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """What the system's own signal was asked for."""
    heard: list[int] = []
    monkeypatch.setattr(module.QApplication, "beep", lambda: heard.append(1))
    return heard


def handed(qtbot: QtBot, told: Path) -> Path:
    """Give the file that the player was handed, once."""
    qtbot.waitUntil(told.exists)
    quiet, path = told.read_text().split()
    assert quiet == "-q"
    told.unlink()
    return Path(path)


def test_the_player_is_handed_the_file_of_the_sound(qtbot: QtBot, played: Path) -> None:
    chime = Chime()
    chime.sound("spoils")
    assert handed(qtbot, played) == sound_file("spoils")
    chime.on = False
    chime.sound("rings")
    chime.on, chime.volume = True, 0
    chime.sound("rings")
    chime.volume = 100
    chime.sound("ends")
    assert handed(qtbot, played) == sound_file("ends"), "nothing was played in between"


@pytest.mark.usefixtures("qapp")
def test_without_a_player_the_systems_own_signal_sounds(
    monkeypatch: pytest.MonkeyPatch, beeps: list[int]
) -> None:
    monkeypatch.setattr(module.shutil, "which", lambda _name: None)
    Chime().sound()
    assert beeps == [1]
    silent = Chime()
    silent.volume = 0
    silent.sound()
    silent.on, silent.volume = False, 50
    silent.sound()
    assert beeps == [1]


# -- volume --------------------------------------------------------------------------------


@pytest.mark.parametrize("name", SOUNDS)
@pytest.mark.parametrize("percent", [80, 50, 5])
def test_at_a_volume_the_samples_are_that_much_quieter(
    qtbot: QtBot, played: Path, name: Sound, percent: int
) -> None:
    """By the square: at half the volume a quarter of the amplitude, 12 dB less.

    20 log10(1/4) = -12.04 dB; of the measured sound, over all its samples.
    """
    chime = Chime()
    chime.volume = percent
    chime.sound(name)
    whole, quieter = samples(sound_file(name)), samples(handed(qtbot, played))
    assert len(quieter) == len(whole)
    gain = (percent / 100) ** 2
    assert max(abs(b - a * gain) for a, b in zip(whole, quieter, strict=True)) <= 0.5
    power = [math.sqrt(sum(one * one for one in heard)) for heard in (whole, quieter)]
    decibels = 20 * math.log10(power[1] / power[0])
    assert decibels == pytest.approx(40 * math.log10(percent / 100), abs=0.2)


def test_a_volume_is_made_once_and_again_where_it_was_taken_away(
    qtbot: QtBot, played: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []
    kept = module._kept
    monkeypatch.setattr(module, "_kept", lambda name, sound: made.append(name) or kept(name, sound))
    chime = Chime()
    chime.volume = 40
    for _ in range(3):
        chime.sound("rings")
        path = handed(qtbot, played)
    assert made == ["rings-40.wav"]
    chime.sound("ends")
    assert handed(qtbot, played).parent == path.parent
    assert made == ["rings-40.wav", "ends-40.wav"]
    path.unlink()
    chime.sound("rings")
    assert handed(qtbot, played) == path
    assert samples(path)
    assert made == ["rings-40.wav", "ends-40.wav", "rings-40.wav"]
    assert sorted(one.name for one in path.parent.iterdir()) == ["ends-40.wav", "rings-40.wav"]


def test_where_nothing_can_be_kept_the_chime_is_loud_rather_than_unheard(
    qtbot: QtBot, played: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("in the way")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    chime = Chime()
    chime.volume = 30
    chime.sound("spoils")
    assert handed(qtbot, played) == sound_file("spoils")


def wav(path: Path, *, width: int = 2, count: int = 100) -> None:
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(width)
        file.setframerate(22_050)
        file.writeframes(bytes(width * count))


def cut(path: Path) -> None:
    wav(path)
    path.write_bytes(path.read_bytes()[:-40])


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("volume", [100, 60])
@pytest.mark.parametrize(
    "make",
    [
        lambda _path: None,
        lambda path: path.write_bytes(b""),
        lambda path: path.write_bytes(b"RIFF\x00\x00\x00\x00WAVEjunk"),
        lambda path: path.write_text("no sound at all, only words"),
        lambda path: wav(path, width=1),
        lambda path: wav(path, count=0),
        cut,
        lambda path: path.mkdir(),
    ],
    ids=["missing", "empty", "head", "text", "8-bit", "no-samples", "cut", "folder"],
)
def test_a_missing_or_broken_sound_is_the_systems_own_signal(
    make: Callable[[Path], object], volume: int, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch, beeps: list[int], played: Path,
) -> None:  # fmt: skip
    make(tmp_path / "rings.wav")
    monkeypatch.setattr(module, "sound_file", lambda sound: tmp_path / f"{sound}.wav")
    chime = Chime()
    chime.volume = volume
    chime.sound()
    assert beeps == [1]
    assert not played.exists()
