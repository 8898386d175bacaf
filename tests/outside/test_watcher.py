"""The watch over the studio's file: another process's commit, and what is none."""

import sqlite3
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest
from watchdog.observers import Observer

from studio_log.outside import watcher
from studio_log.outside.bell import FileBell
from studio_log.outside.watcher import FolderWatcher

FILE = "studio.sqlite3"
WRITE = """
import sqlite3, sys
base = sqlite3.connect(sys.argv[1], isolation_level=None)
base.execute("insert into entry values (1)")
print("written", flush=True)
sys.stdin.read()
"""
PATIENCE = 10.0
QUIET = 0.4


class Told:
    """Counts what it was told."""

    def __init__(self) -> None:
        self.count = 0
        self.event = threading.Event()

    def __call__(self) -> None:
        self.count += 1
        self.event.set()

    def settle(self) -> None:
        """Wait until nothing more comes."""
        while self.event.wait(QUIET):
            self.event.clear()
        self.count = 0


@pytest.fixture(autouse=True)
def _once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let it look once after a change: the tests count."""
    monkeypatch.setattr(watcher, "AGAIN_S", ())


@pytest.fixture
def base(tmp_path: Path) -> sqlite3.Connection:
    base = sqlite3.connect(tmp_path / FILE, isolation_level=None)
    base.execute("pragma journal_mode=wal")
    base.execute("create table entry (number integer)")
    return base


def write_elsewhere(folder: Path) -> float:
    """Commit in another process, which stays open; give when it was done (monotonic)."""
    command = [sys.executable, "-c", WRITE, str(folder / FILE)]
    with subprocess.Popen(
        command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        assert process.stdout.readline().strip() == "written"
        at = time.monotonic()
        assert process.stdin is not None
        process.stdin.close()
    return at


def test_a_commit_of_another_process_is_told_within_a_second(
    tmp_path: Path, base: sqlite3.Connection
) -> None:
    told = Told()
    watch = FolderWatcher(tmp_path, told)
    try:
        assert watch.words == ""
        begun = write_elsewhere(tmp_path)
        assert told.event.wait(PATIENCE)
        assert time.monotonic() - begun < 1.0
    finally:
        watch.close()
        base.close()


def test_reading_is_no_change(tmp_path: Path, base: sqlite3.Connection) -> None:
    told = Told()
    base.execute("insert into entry values (1)")
    watch = FolderWatcher(tmp_path, told)
    try:
        told.settle()
        for _ in range(3):
            assert base.execute("select count(*) from entry").fetchone() == (1,)
            (tmp_path / FILE).read_bytes()
        assert not told.event.wait(QUIET)
    finally:
        watch.close()
        base.close()


def test_a_burst_is_told_a_few_times_and_the_last_of_it_for_certain(
    tmp_path: Path, base: sqlite3.Connection
) -> None:
    seen: list[int] = []
    done = threading.Event()

    def look() -> None:
        with sqlite3.connect(tmp_path / FILE) as other:
            seen.append(other.execute("select count(*) from entry").fetchone()[0])
        other.close()
        if seen[-1] == 200:
            done.set()

    watch = FolderWatcher(tmp_path, look)
    try:
        for number in range(200):
            base.execute("insert into entry values (?)", (number,))
        assert done.wait(PATIENCE)
        assert len(seen) < 100
    finally:
        watch.close()
        base.close()


def test_a_listener_that_fails_is_logged_and_told_again(
    tmp_path: Path, base: sqlite3.Connection, caplog: pytest.LogCaptureFixture
) -> None:
    heard = threading.Semaphore(0)

    def broken() -> None:
        heard.release()
        raise RuntimeError("closing")

    watch = FolderWatcher(tmp_path, broken)
    try:
        for number in range(2):
            base.execute("insert into entry values (?)", (number,))
            assert heard.acquire(timeout=PATIENCE)
    finally:
        watch.close()
        base.close()
    assert "could not be told" in caplog.text


def test_without_the_systems_help_it_looks_once_a_second_and_says_so(
    tmp_path: Path, base: sqlite3.Connection, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(_self: object) -> None:
        raise OSError(28, "inotify watch limit reached")

    monkeypatch.setattr(Observer, "start", refuse)
    monkeypatch.setattr(watcher, "LOOK_EVERY_S", 0.1)
    told = Told()
    watch = FolderWatcher(tmp_path, told)
    try:
        assert "inotify watch limit reached" in watch.words
        assert "once a second" in watch.words
        assert not told.event.wait(QUIET)
        base.execute("insert into entry values (1)")
        assert told.event.wait(PATIENCE)
    finally:
        watch.close()
        base.close()


def test_a_folder_that_is_not_there_does_not_stop_the_program(tmp_path: Path) -> None:
    watch = FolderWatcher(tmp_path / "gone", Told())
    watch.close()
    assert watch.words


def test_a_bell_that_is_given_up_is_told_of_and_asking_for_it_is_not(tmp_path: Path) -> None:
    """Its holder may be killed: then the system closes the file."""
    told = Told()
    holder, asker = FileBell(tmp_path), FileBell(tmp_path)
    assert holder.hold()
    watch = FolderWatcher(tmp_path, told)
    try:
        told.settle()
        assert not asker.hold()
        assert not told.event.wait(QUIET), "whoever asks in vain wakes nobody"
        holder.release()
        assert told.event.wait(5)
        assert asker.hold()
    finally:
        watch.close()
        asker.release()


def test_a_commit_that_a_slow_disk_still_writes_is_looked_for_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(watcher, "AGAIN_S", (0.2, 0.6))
    calls = []
    enough = threading.Event()

    def look() -> None:
        calls.append(time.monotonic())
        if len(calls) == 3:
            enough.set()

    watch = FolderWatcher(tmp_path, look)
    try:
        (tmp_path / FILE).write_bytes(b"begun")
        assert enough.wait(10)
    finally:
        watch.close()
    assert calls[2] - calls[0] > 0.7


def test_an_end_told_while_a_change_is_taken_is_not_lost(
    tmp_path: Path, base: sqlite3.Connection, monkeypatch: pytest.MonkeyPatch
) -> None:
    about_to, go_on = threading.Event(), threading.Event()
    watching = FolderWatcher(tmp_path, Told())
    changed = watching._changed  # the moment lies between two of its lines
    clear = changed.clear

    def late() -> None:
        about_to.set()
        go_on.wait(PATIENCE)
        clear()

    monkeypatch.setattr(changed, "clear", late)
    base.execute("insert into entry values (1)")
    assert about_to.wait(PATIENCE)
    closing = threading.Thread(target=watching.close, daemon=True)
    closing.start()
    time.sleep(QUIET)  # waits until the end is told, and taken by what clears next
    go_on.set()
    closing.join(PATIENCE)
    assert not closing.is_alive()
