"""Several processes on one studio: nothing lost, nothing twice, nothing waits for ever."""

import subprocess
import sys
import threading

import pytest

from studio_log.domain.errors import BadStudio
from studio_log.store.database import open_store
from tests.store.examples import an_entry, entries_in


@pytest.fixture
def store(file_store):
    """Give the file: what is tested here is its own."""
    return file_store


WRITER = """
import pathlib, sys
from studio_log.store.database import open_store
from tests.store.examples import an_entry
folder, name, count = pathlib.Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
with open_store(folder) as store:
    for turn in range(count):
        with store.work() as work:
            work.journal.append(an_entry(note=f"{name} {turn}"))
            work.next_code("lot", 2026)
"""


def start(folder, name, count):
    return subprocess.Popen(
        [sys.executable, "-c", WRITER, str(folder), name, str(count)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def finish(writers):
    return [(writer.communicate(timeout=100), writer.returncode) for writer in writers]


def test_two_processes_on_one_journal(folder):
    """The folder is new, so they also meet while making the studio."""
    writers = [start(folder, name, 200) for name in ("one", "two")]
    assert finish(writers) == [(("", ""), 0)] * 2
    with open_store(folder) as store:
        entries = entries_in(store)
        with store.work() as work:
            assert work.next_code("lot", 2026) == 401
    assert [entry.number for entry in entries] == list(range(1, 401))
    for name in ("one", "two"):
        mine = [entry.note for entry in entries if entry.note.startswith(name)]
        assert mine == [f"{name} {turn}" for turn in range(200)]


def test_many_begin_one_studio_at_once(folder):
    writers = [start(folder, f"w{number}", 1) for number in range(5)]
    assert finish(writers) == [(("", ""), 0)] * 5
    with open_store(folder) as store:
        assert len(entries_in(store)) == 5


def test_threads_of_one_process_making_one_studio(folder):
    """Closer together than processes ever start."""
    faults: list[BadStudio] = []
    gate = threading.Barrier(8)

    def make() -> None:
        gate.wait()
        try:
            with open_store(folder) as store, store.work() as work:
                work.journal.append(an_entry())
        except BadStudio as error:
            faults.append(error)

    makers = [threading.Thread(target=make) for _ in range(8)]
    for maker in makers:
        maker.start()
    for maker in makers:
        maker.join()
    assert faults == []
    with open_store(folder) as store:
        assert [entry.number for entry in entries_in(store)] == list(range(1, 9))


def test_threads_take_turns_in_one_store(store):
    def write() -> None:
        for _ in range(25):
            with store.work() as work:
                work.journal.append(an_entry())

    writers = [threading.Thread(target=write) for _ in range(4)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    assert [entry.number for entry in entries_in(store)] == list(range(1, 101))


@pytest.mark.long
def test_a_backup_while_another_writes(folder, tmp_path):
    from studio_log.store import backup, check

    with open_store(folder) as store:
        writer = start(folder, "one", 300)
        while store.data_version() == 1 and writer.poll() is None:
            pass
        sizes = []
        for number in range(10):
            copy = tmp_path / f"b{number}" / "studio.sqlite3"
            copy.parent.mkdir()
            backup.backup(store, copy)
            with open_store(copy.parent) as copied:
                sizes.append(len(entries_in(copied)))
                assert [one for one in check.check(copied) if "lists" not in one] == []
        assert finish([writer]) == [(("", ""), 0)]
        assert sizes == sorted(sizes)
        assert len(entries_in(store)) == 300
