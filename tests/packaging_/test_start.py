"""What start.py does with its arguments, and without a screen."""

import os
import time
from pathlib import Path

import _start
import pytest

from tests.support import sham_tree

MOMENT = time.struct_time((2026, 6, 9, 13, 8, 0, 1, 160, 1))


@pytest.mark.parametrize(
    ("line", "window"),
    [
        ("", True),
        ("--demo", True),
        ("--demo --pace 600 --minimised", True),
        ("--pace=600 --studio /somewhere", True),
        ("methods --json", False),
        ("--studio /somewhere due", False),
        ("--version", False),
        ("--demo --help", False),
    ],
)
def test_a_command_is_told_from_the_window(line: str, window: bool) -> None:
    assert _start.opens_window(line.split()) is window


@pytest.mark.parametrize(
    ("environment", "system", "screen"),
    [
        ({}, "linux", False),
        ({"DISPLAY": ""}, "linux", False),
        ({"DISPLAY": ":3"}, "linux", True),
        ({"WAYLAND_DISPLAY": "wayland-0"}, "linux", True),
        ({"QT_QPA_PLATFORM": "offscreen"}, "linux", True),
        ({"QT_QPA_PLATFORM": "offscreen:size=800x600"}, "linux", True),
        ({"QT_QPA_PLATFORM": "xcb"}, "linux", False),
        ({}, "win32", True),
        ({}, "darwin", True),
    ],
)
def test_a_screen_is_seen_by_its_variables(
    environment: dict[str, str], system: str, screen: bool
) -> None:
    assert _start.has_screen(environment, system) is screen


def test_the_picture_folder_is_new_and_dated(tmp_path: Path) -> None:
    first = _start.picture_folder(tmp_path, MOMENT)
    second = _start.picture_folder(tmp_path, MOMENT)
    assert first == tmp_path / "studio-log-demo-2026-06-09-1308"
    assert second == tmp_path / "studio-log-demo-2026-06-09-1308-2"
    assert first.is_dir()
    assert second.is_dir()


def test_where_the_current_folder_is_closed_the_pictures_go_to_temp(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "access", lambda _path, _mode: False)
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    assert _start.picture_folder(Path("/nowhere"), MOMENT).parent == tmp_path


def test_the_demo_becomes_the_errand(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    args = _start.off_screen(["--demo", "--minimised", "--pace", "600"])
    *kept, folder = args
    assert kept == ["--demo", "--pace", "600", "--errand"]
    assert Path(folder).parent == tmp_path
    assert folder in capsys.readouterr().err
    assert _start.off_screen(["--demo", "--errand", "/there"]) == ["--demo", "--errand", "/there"]


def test_without_a_screen_the_window_is_refused_before_any_set_up(tmp_path: Path) -> None:
    tree = sham_tree.make(tmp_path / "tree")
    done = sham_tree.start(tree, QT_QPA_PLATFORM=None)
    assert done.returncode == 1
    assert done.stdout == ""
    assert done.stderr.startswith("There is no screen here")
    assert "packaging/start.py --demo" in done.stderr
    assert not (tree / ".venv").exists()
