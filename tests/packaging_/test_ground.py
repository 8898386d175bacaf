"""The stamp of the private Python folder, and which folder is taken."""

import fcntl
import os
import platform
import threading
from pathlib import Path

import _ground
import pytest
from _ground import Ground
from _system import Need
from _trouble import SetUpFailed


@pytest.fixture
def ground(tmp_path: Path) -> Ground:
    (tmp_path / "requirements.lock").write_text("segno==1.6.6\n", "utf-8")
    return _ground.choose(tmp_path, "requirements.lock", ".venv")


def finished(ground: Ground) -> Ground:
    """The same ground as a set-up that went through leaves it."""
    ground.python.parent.mkdir(parents=True)
    ground.python.touch()
    (ground.folder / "pyvenv.cfg").touch()
    (ground.folder / "ready").write_text(ground.stamp(), "utf-8")
    return ground


def test_a_finished_folder_is_taken_without_any_look(ground: Ground) -> None:
    finished(ground)

    def never() -> bool:
        pytest.fail("the machine was looked at")

    _ground.make_ready(ground, [Need("egl", "libegl1", never)], pytest.fail)
    assert ground.is_ready()


def test_another_lock_file_takes_the_stamp_away(ground: Ground) -> None:
    finished(ground).lock_file.write_text("segno==1.6.7\n", "utf-8")
    assert not ground.is_ready()


def test_another_python_takes_the_stamp_away(
    ground: Ground, monkeypatch: pytest.MonkeyPatch
) -> None:
    finished(ground)
    monkeypatch.setattr(platform, "python_version", lambda: "3.12.0")
    assert not ground.is_ready()


@pytest.mark.parametrize("damage", [b"", b"1 CPython", b"\xff\xfe"])
def test_a_damaged_stamp_counts_as_none(ground: Ground, damage: bytes) -> None:
    (finished(ground).folder / "ready").write_bytes(damage)
    assert not ground.is_ready()


def test_a_stamp_without_its_python_counts_as_none(ground: Ground) -> None:
    finished(ground).python.unlink()
    assert not ground.is_ready()


def test_a_tree_without_its_lock_file_is_called_incomplete(tmp_path: Path) -> None:
    with pytest.raises(SetUpFailed, match=r"requirements\.lock is missing"):
        _ground.choose(tmp_path, "requirements.lock", ".venv")


def test_a_tree_that_cannot_be_written_leads_to_the_cache(
    ground: Ground, monkeypatch: pytest.MonkeyPatch
) -> None:
    tree = ground.lock_file.parent
    # Root may write everywhere, so the answer is given here.
    monkeypatch.setattr(os, "access", lambda path, _mode: not Path(path).is_relative_to(tree))
    moved = _ground.choose(tree, "requirements.lock", ".venv")
    assert moved.folder.parent == Path(os.environ["XDG_CACHE_HOME"]) / "studio-log"
    assert moved.folder != _ground.choose(tree, "requirements.lock", ".venv-test").folder
    finished(ground)
    assert _ground.choose(tree, "requirements.lock", ".venv") == ground


def test_a_strange_folder_is_not_emptied(ground: Ground) -> None:
    ground.folder.mkdir()
    (ground.folder / "recipes.txt").write_text("madder", "utf-8")
    with pytest.raises(SetUpFailed, match=r"holds recipes\.txt and was not made by set-up"):
        _ground.make_ready(ground, [], lambda _line: None)
    assert (ground.folder / "recipes.txt").read_text("utf-8") == "madder"


def test_a_full_disk_is_said_before_anything_is_fetched(
    ground: Ground, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(_ground, "ROOM_BYTES", 10**18)
    with pytest.raises(SetUpFailed, match=r"^The disk is full"):
        _ground.make_ready(ground, [], lambda _line: None)
    assert not ground.python.exists()


def test_a_second_set_up_waits_for_the_first_and_says_so(ground: Ground) -> None:
    ground.folder.mkdir()
    said, waits, entered = list[str](), threading.Event(), threading.Event()

    def say(line: str) -> None:
        said.append(line)
        waits.set()

    def second() -> None:
        with _ground.only_one(ground, say):
            entered.set()

    with (ground.folder / "set-up.lock").open("a") as first:
        fcntl.flock(first, fcntl.LOCK_EX)
        thread = threading.Thread(target=second)
        thread.start()
        assert waits.wait(10)
        assert not entered.is_set()
    thread.join(10)
    assert entered.is_set()
    assert said == ["Another start is setting up just now; waiting for it."]


def test_what_would_mislead_the_private_python_is_taken_out(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("PYTHONPATH", "/elsewhere")
    monkeypatch.setenv("PIP_USER", "1")
    monkeypatch.setenv("PIP_TIMEOUT", "60")
    own = _ground.surroundings()
    assert not {"PYTHONPATH", "PIP_USER"} & own.keys()
    assert own["PIP_TIMEOUT"] == "60"
