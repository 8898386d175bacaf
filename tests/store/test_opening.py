"""Opening a studio: made, found, refused with a sentence; never half changed."""

import errno
import os
import sqlite3
import subprocess
import sys
from contextlib import closing

import pytest

from studio_log.domain.errors import BadStudio
from studio_log.store import database, faults, files, plain
from studio_log.store.database import open_store
from tests.store.examples import an_entry, entries_in, fill, filled_folder


@pytest.fixture
def store(file_store):
    """Give the file: what is tested here is its own."""
    return file_store


def test_a_studio_is_made_with_its_folders(tmp_path):
    folder = tmp_path / "a b%20é#?" / "deep"
    with open_store(folder) as store:
        fill(store)
        assert store.warnings == ()
        assert (store.path, store.folder) == (folder / "studio.sqlite3", folder)
    with open_store(folder, create=False) as store:
        assert len(entries_in(store)) == 16


def test_how_the_file_is_kept(store):
    """Write-ahead log, FULL, foreign keys: libraries of the issue; numbers sqlite.org/pragma."""
    asked = {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "busy_timeout": 5000}
    with store.work():
        pass
    answers = {name: store._line._line.execute(f"PRAGMA {name}").fetchone()[0] for name in asked}
    assert answers == asked


def test_an_up_to_date_file_is_opened_without_alembic(folder):
    filled_folder(folder)
    script = (
        "import sys, pathlib; from studio_log.store.database import open_store;"
        f"s = open_store(pathlib.Path({str(folder)!r})); s.close();"
        "print(sorted(name for name in sys.modules if name.split('.')[0] in ('alembic', 'mako')))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], check=False, capture_output=True, text=True
    )
    assert (done.stdout.strip(), done.stderr) == ("[]", "")


def test_nothing_is_made_where_that_was_not_asked(tmp_path):
    with pytest.raises(BadStudio, match="no studio"):
        open_store(tmp_path, create=False)
    assert list(tmp_path.iterdir()) == []
    with pytest.raises(BadStudio, match="cannot be reached"):
        open_store(tmp_path / "gone", create=False)
    assert not (tmp_path / "gone").exists()


def test_a_file_in_the_place_of_the_folder(tmp_path):
    (tmp_path / "studio").write_text("x")
    with pytest.raises(BadStudio, match="cannot be reached"):
        open_store(tmp_path / "studio")
    with pytest.raises(BadStudio, match="cannot be reached"):
        open_store(tmp_path / "studio" / "below")


def test_a_name_too_long_for_the_disk(tmp_path):
    with pytest.raises(BadStudio, match="cannot be reached"):
        open_store(tmp_path / ("x" * 300))


def test_the_file_of_a_newer_version_is_left_alone(folder):
    filled_folder(folder)
    path = folder / files.FILE_NAME
    with closing(plain.connect(path, "rw")) as line:
        line.execute("UPDATE alembic_version SET version_num = '0999'")
    before = path.read_bytes()
    with pytest.raises(BadStudio, match="newer version") as caught:
        open_store(folder)
    assert "Install the newer version" in str(caught.value)
    assert path.read_bytes() == before


@pytest.mark.parametrize("content", [b"hello", b"SQLite format 3", bytes(4096), b"\xff" * 9000])
def test_a_file_that_is_no_database_is_left_alone(folder, content):
    folder.mkdir()
    path = folder / files.FILE_NAME
    path.write_bytes(content)
    with pytest.raises(BadStudio, match=r"damaged.*Restore"):
        open_store(folder)
    assert path.read_bytes() == content
    assert [one.name for one in folder.iterdir()] == [files.FILE_NAME]


def test_another_programs_database_is_left_alone(folder):
    folder.mkdir()
    path = folder / files.FILE_NAME
    with closing(sqlite3.connect(path)) as line:
        line.execute("CREATE TABLE shelf (jar)")
        line.commit()
    before = path.read_bytes()
    with pytest.raises(BadStudio, match="not the file of a studio"):
        open_store(folder)
    assert path.read_bytes() == before


def test_an_emptied_file_is_not_taken_for_a_new_one(folder):
    """SQLite discards the log of an empty file (sqlite.org/walformat), so it is not opened."""
    with open_store(folder) as store:
        fill(store)
        log = folder / "studio.sqlite3-wal"
        kept = log.read_bytes()
        os.truncate(store.path, 0)
        with pytest.raises(BadStudio, match="damaged"):
            open_store(folder)
        assert log.read_bytes() == kept
    for name in ("studio.sqlite3", "studio.sqlite3-wal", "studio.sqlite3-shm"):
        (folder / name).unlink(missing_ok=True)
    (folder / "studio.sqlite3").touch()
    (folder / "copies").mkdir()
    (folder / "copies" / "day-2026-06-08.sqlite3").write_bytes(b"x")
    with pytest.raises(BadStudio, match="damaged"):
        open_store(folder)


def test_a_start_cut_off_before_anything_was_written_is_begun_again(folder):
    folder.mkdir()
    (folder / files.FILE_NAME).touch()
    with open_store(folder) as store:
        fill(store)
        assert len(entries_in(store)) == 16


@pytest.mark.parametrize("what", ["folder", "file"])
def test_a_read_only_place(folder, monkeypatch, what):
    """The superuser may write anywhere, so the system's answer is put in its place."""
    filled_folder(folder)
    path = folder / files.FILE_NAME
    before = path.read_bytes()
    closed = {"folder": folder, "file": path}[what]
    monkeypatch.setattr(files.os, "access", lambda place, _mode: place != closed)
    with pytest.raises(BadStudio, match="read-only"):
        open_store(folder)
    assert path.read_bytes() == before


def test_a_place_turned_read_only_while_open(store):
    fill(store)
    store._line._line.execute("PRAGMA query_only = ON")
    with pytest.raises(BadStudio, match="read-only"), store.work() as work:
        work.journal.append(an_entry())
    store._line._line.execute("PRAGMA query_only = OFF")
    assert len(entries_in(store)) == 16


def test_a_reading_writes_nothing_and_leaves_the_store_writable(store):
    with pytest.raises(BadStudio), store.reading() as look:
        look.journal.append(an_entry())
    with store.work() as work:
        assert work.journal.append(an_entry()).number == 1


def test_a_folder_that_cannot_share_memory_is_refused(folder, monkeypatch):
    real = plain.connect

    class Remote:
        def __init__(self, line):
            self.line = line

        def execute(self, words):
            return self.line.execute("PRAGMA journal_mode = DELETE" if "WAL" in words else words)

        def close(self):
            self.line.close()

    monkeypatch.setattr(plain, "connect", lambda path, mode: Remote(real(path, mode)))
    with pytest.raises(BadStudio, match="network drive"):
        open_store(folder)


def test_a_file_held_too_long(store, monkeypatch):
    fill(store)
    monkeypatch.setattr(plain, "WAIT_SECONDS", 0.05)
    with closing(plain.connect(store.path, "rw")) as other, open_store(store.folder) as mine:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(BadStudio, match="held the studio's file"), mine.work() as work:
            work.journal.append(an_entry())
        assert len(entries_in(mine)) == 16, "reading goes on meanwhile"
        other.execute("ROLLBACK")
        with mine.work() as work:
            assert work.journal.append(an_entry()).number == 6


def test_a_full_disk_loses_nothing_and_the_work_goes_on_afterwards(store):
    fill(store)
    pages = store._line._line.execute("PRAGMA page_count").fetchone()[0]
    store._line._line.execute(f"PRAGMA max_page_count = {pages}")
    written = entries_in(store)
    with pytest.raises(BadStudio, match=r"full.*kept"), store.work() as work:
        work.journal.append(an_entry(note="x" * 200_000))
    assert entries_in(store) == written
    store._line._line.execute("PRAGMA max_page_count = 1000000")
    with store.work() as work:
        work.journal.append(an_entry())
    assert len(entries_in(store)) == len(written) + 1


FILLER = """
import pathlib, resource, signal, sys
from studio_log.domain.errors import BadStudio
from studio_log.store.database import open_store
from tests.store.examples import an_entry
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
with open_store(pathlib.Path(sys.argv[1])) as store:
    resource.setrlimit(resource.RLIMIT_FSIZE, (1_000_000, 1_000_000))
    count = 0
    try:
        while count < 5000:
            with store.work() as work:
                work.journal.append(an_entry(note="x" * 500))
            count += 1
    except BadStudio as error:
        print(count, error)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="needs a limit on the size of files")
def test_a_disk_that_takes_no_more_keeps_what_was_confirmed(folder):
    done = subprocess.run(
        [sys.executable, "-c", FILLER, str(folder)], check=False, capture_output=True, text=True
    )
    count, _, words = done.stdout.partition(" ")
    assert "Nothing of this was written, and everything written before is kept" in words
    assert int(count) > 50
    with open_store(folder) as store:
        assert len(entries_in(store)) == int(count)


def test_others_commits_are_seen_and_own_ones_not_counted(store):
    with open_store(store.folder) as other:
        first = store.data_version()
        with store.work() as work:
            work.journal.append(an_entry())
        assert store.data_version() == first
        with other.work() as work:
            work.journal.append(an_entry())
        assert store.data_version() != first
        assert len(entries_in(store)) == 2


def test_a_reading_sees_one_state_only(store):
    fill(store)
    with open_store(store.folder) as other, store.reading() as look:
        before = look.journal.mark()
        with other.work() as work:
            work.journal.append(an_entry())
        assert look.journal.mark() == before


def test_one_transaction_at_a_time_in_one_store(store):
    with store.work(), pytest.raises(RuntimeError, match="One transaction"), store.reading():
        pass
    with store.work() as work:
        assert work.journal.append(an_entry()).number == 1


def test_work_is_of_no_use_after_its_end(store):
    with store.work() as work:
        pass
    with pytest.raises(Exception, match="closed"):
        work.journal.append(an_entry())
    assert entries_in(store) == []


def test_closing_twice_does_no_harm(folder):
    store = open_store(folder)
    store.close()
    store.close()
    with pytest.raises(BadStudio), store.work():
        pass


@pytest.mark.parametrize(
    "place",
    ["Dropbox", "Dropbox (Studio)", "OneDrive - Weavers", "Nextcloud", "Google Drive", "My Drive"],
)
def test_a_synced_folder_is_named(tmp_path, place):
    with open_store(tmp_path / place / "dye" / "studio") as store:
        fill(store)
        (warning,) = store.warnings
    assert place in warning


@pytest.mark.parametrize("mark", [".stfolder", ".dropbox"])
def test_a_mark_of_a_syncing_program_in_a_folder_above(tmp_path, mark):
    (tmp_path / mark).mkdir()
    with open_store(tmp_path / "studio") as store:
        assert any(mark in warning for warning in store.warnings)


@pytest.mark.parametrize(
    "name",
    [
        "studio (conflicted copy 2026-06-09).sqlite3",
        "studio (laptop's conflicted copy).sqlite3",
        "studio.sync-conflict-20260609-090000-ABCDEFG.sqlite3",
    ],
)
def test_a_conflict_copy_is_named_and_left(folder, name):
    folder.mkdir()
    (folder / name).write_bytes(b"x")
    (folder / "studio notes.txt").touch()
    with open_store(folder) as store:
        (warning,) = store.warnings
    assert name in warning
    assert (folder / name).read_bytes() == b"x"


SENTENCES = [
    (sqlite3.SQLITE_FULL, "full"),
    (sqlite3.SQLITE_IOERR_SHMOPEN, "network"),
    (sqlite3.SQLITE_IOERR_WRITE, "failed to read or write"),
    (sqlite3.SQLITE_READONLY_DIRECTORY, "read-only"),
    (sqlite3.SQLITE_CANTOPEN, "cannot be reached"),
    (sqlite3.SQLITE_CORRUPT_INDEX, "damaged"),
    (sqlite3.SQLITE_NOTADB, "damaged"),
    (sqlite3.SQLITE_BUSY_SNAPSHOT, "held"),
    (sqlite3.SQLITE_CONSTRAINT_UNIQUE, "refused"),
]


@pytest.mark.parametrize(("code", "words"), SENTENCES)
def test_each_code_of_sqlite_has_its_sentence(tmp_path, code, words):
    """Codes and their meaning: sqlite.org/rescode.html."""
    error = sqlite3.OperationalError("words of the library")
    error.sqlite_errorcode = code
    said = str(faults.as_refusal(error, tmp_path))
    assert words in said
    assert str(tmp_path) in said


@pytest.mark.parametrize(
    ("number", "words"),
    [("ENOSPC", "full"), ("EROFS", "read-only"), ("ESTALE", "reached"), ("EIO", "failed")],
)
def test_errors_of_the_system_while_opening_are_sentences(folder, monkeypatch, number, words):
    def fail(_folder):
        raise OSError(getattr(errno, number), "words of the system")

    monkeypatch.setattr(database.files, "sync_warnings", fail)
    with pytest.raises(BadStudio, match=words):
        open_store(folder)
