"""The whole set-up with real folders and a real installation of one small package."""

import json
import os
import shutil
import signal
import subprocess
import time
from pathlib import Path

import pytest

from tests.support import sham_tree

pytestmark = pytest.mark.long


@pytest.fixture
def tree(tmp_path: Path) -> Path:
    return sham_tree.make(tmp_path / "a tree with spaces")


@pytest.fixture(scope="module")
def finished_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    tree = sham_tree.make(tmp_path_factory.mktemp("once") / "tree")
    done = sham_tree.start(tree, "methods")
    assert done.returncode == 0, done.stderr
    return tree


@pytest.fixture
def finished(finished_once: Path, tmp_path: Path) -> Path:
    """A tree that has been set up, in another place than that in which it was."""
    return Path(shutil.copytree(finished_once, tmp_path / "finished", symlinks=True))


def until(process: subprocess.Popen[str], sign: str) -> None:
    """Read what set-up says up to the line that begins with `sign`."""
    assert process.stderr
    for line in process.stderr:
        if line.startswith(sign):
            return
    pytest.fail(f"set-up never said {sign}")


def test_first_and_second_start(tree: Path, tmp_path: Path) -> None:
    stray = tmp_path / "stray"
    stray.mkdir()
    (stray / "segno.py").write_text("raise SystemExit('the stray one')", "utf-8")
    first = sham_tree.start(tree, "due", "--at", "-3h", cwd=stray)
    assert first.returncode == 0, first.stderr
    steps = [line[:3] for line in first.stderr.splitlines() if line[1:2] == "/"]
    assert steps == ["1/4", "2/4", "3/4", "4/4"]
    called = json.loads(first.stdout)
    assert called["args"] == ["due", "--at", "-3h"]
    assert called["cwd"] == str(stray)
    assert Path(called["python"]).is_relative_to(tree / ".venv")
    assert "pip install" in (tree / ".venv" / "set-up.log").read_text("utf-8")

    begun = time.monotonic()
    second = sham_tree.start(tree, "methods")
    assert time.monotonic() - begun < 2  # promised in the README
    assert second.stderr == ""
    assert json.loads(second.stdout)["args"] == ["methods"]


def test_without_a_screen_the_demo_runs_as_an_errand(tree: Path, tmp_path: Path) -> None:
    done = sham_tree.start(tree, "--demo", cwd=tmp_path, QT_QPA_PLATFORM=None)
    assert done.returncode == 0, done.stderr
    called = json.loads(done.stdout)
    demo, errand, folder = called["args"]
    assert (demo, errand) == ("--demo", "--errand")
    assert Path(folder).is_dir()
    assert called["QT_QPA_PLATFORM"] == "offscreen"


@pytest.mark.parametrize("moment", ["2/4", "3/4"])
def test_a_set_up_killed_half_way_is_repaired_by_the_next(tree: Path, moment: str) -> None:
    with subprocess.Popen(
        sham_tree.command(tree, "methods"),
        env=sham_tree.environment(),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    ) as process:
        until(process, moment)
        os.killpg(process.pid, signal.SIGKILL)
    assert process.returncode == -signal.SIGKILL
    assert not (tree / ".venv" / "ready").exists()
    done = sham_tree.start(tree, "methods")
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout)["args"] == ["methods"]
    assert not (tree / ".venv" / "unfinished").exists()


def test_a_half_copied_package_is_not_trusted(finished: Path) -> None:
    # What a kill while unpacking leaves: pip itself believes that the package is there.
    (installed,) = (finished / ".venv").glob("lib/*/site-packages/segno/__init__.py")
    installed.write_text("raise ImportError('half a file')", "utf-8")
    (finished / ".venv" / "ready").rename(finished / ".venv" / "unfinished")
    done = sham_tree.start(finished, "methods")
    assert done.returncode == 0, done.stderr
    assert "3/4" in done.stderr


def test_two_starts_at_once_do_not_collide(tree: Path) -> None:
    both = [
        subprocess.Popen(
            sham_tree.command(tree, "methods"),
            env=sham_tree.environment(),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        for _ in range(2)
    ]
    told = [process.communicate(timeout=300) for process in both]
    assert [process.returncode for process in both] == [0, 0], told
    assert sum("Set up." in errors for _, errors in told) == 1
    assert all(json.loads(out)["args"] == ["methods"] for out, _ in told)


def test_a_changed_lock_file_is_followed_in_the_same_folder(finished: Path) -> None:
    mark = finished / ".venv" / "lib" / "still-the-same-folder"
    mark.touch()
    with (finished / "requirements.lock").open("a", encoding="utf-8") as lock:
        lock.write("# another version\n")
    again = sham_tree.start(finished, "methods")
    assert "Set up." in again.stderr
    assert mark.exists()
    assert sham_tree.start(finished, "methods").stderr == ""


def test_a_package_with_another_hash_is_refused(tree: Path) -> None:
    lock = tree / "requirements.lock"
    name, *_ = lock.read_text("utf-8").splitlines()
    lock.write_text(f"{name}\n    --hash=sha256:{'0' * 64}\n", "utf-8")
    done = sham_tree.start(tree, "methods")
    assert done.returncode == 1
    assert "not the one this version was tested with" in done.stderr
    assert str(tree / ".venv" / "set-up.log") in done.stderr
    assert "Traceback" not in done.stderr
    assert not list((tree / ".venv").glob("lib/*/site-packages/segno"))


def test_offline_is_said_plainly_and_the_next_start_goes_through(tree: Path) -> None:
    # A port on this machine that nothing listens on; pip's own settings name the index.
    nowhere: dict[str, str] = {
        "PIP_CONFIG_FILE": os.devnull,
        "PIP_INDEX_URL": "http://127.0.0.1:9/simple",
        "PIP_EXTRA_INDEX_URL": "",
        "PIP_FIND_LINKS": "",
        "PIP_RETRIES": "1",
        "PIP_CACHE_DIR": str(tree / "no-cache"),
    }
    done = sham_tree.start(tree, "methods", cwd=tree, **nowhere)
    assert done.returncode == 1
    assert "does not reach the network" in done.stderr
    assert "Traceback" not in done.stderr
    assert sham_tree.start(tree, "methods").returncode == 0


def test_a_moved_tree_starts_without_another_set_up(finished: Path) -> None:
    done = sham_tree.start(finished, "methods")
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["PYTHONPATH"] == str(finished)
