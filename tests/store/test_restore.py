"""A copy put back: checked first, the replaced studio kept, others told."""

import os
import shutil
import sqlite3
from contextlib import closing

import pytest

from studio_log.domain.errors import BadStudio
from studio_log.store import backup, check, files, plain, restore
from studio_log.store.database import open_store
from tests.store.examples import NINE, an_entry, entries_in, fill, filled_folder


@pytest.fixture
def store(file_store):
    """Give the file: what is tested here is its own."""
    return file_store


STAMP = "20260609T090000Z"


@pytest.fixture
def copy(tmp_path):
    """A good backup of a studio with three lots and a milk."""
    to = tmp_path / "usb.sqlite3"
    with open_store(filled_folder(tmp_path / "origin")) as store:
        backup.backup(store, to)
    return to


def test_a_copy_is_put_back_and_the_replaced_one_kept(folder, copy):
    with open_store(folder) as store, store.work() as work:
        work.journal.append(an_entry("26-077", note="only here"))
    kept = restore.restore(folder, copy, NINE)
    assert kept == folder / "copies" / f"replaced-{STAMP}.sqlite3"
    with open_store(folder) as store:
        assert len(entries_in(store)) == 16
        assert check.check(store) == []
    assert restore.restore(folder, kept, NINE) is not None
    with open_store(folder) as store:
        assert [entry.note for entry in entries_in(store)] == ["only here"]
    assert [path.name for path in folder.iterdir() if "restored" in path.name] == []


def test_those_who_have_it_open_see_it_as_anothers_change(store, copy):
    with store.work() as work:
        work.journal.append(an_entry("26-077"))
    before = store.data_version()
    kept = restore.restore(store.folder, copy, NINE)
    assert store.data_version() != before
    assert len(entries_in(store)) == 16
    with store.work() as work:
        assert work.journal.append(an_entry("26-001")).number == 6
    with closing(plain.connect(kept, "ro")) as line:
        assert line.execute("SELECT subject FROM entry").fetchall() == [("26-077",)]


def test_what_is_written_up_to_the_last_moment_is_in_the_kept_one(store, copy, monkeypatch):
    """The copy of the replaced studio is taken when nobody can write any more."""
    monkeypatch.setattr(plain, "WAIT_SECONDS", 0.05)
    refused = []
    real = plain.copy

    def copy_while_another_tries(source, target):
        with open_store(store.folder) as other:
            try:
                with other.work() as work:
                    work.journal.append(an_entry("26-088"))
            except BadStudio as error:
                refused.append(str(error))
        real(source, target)

    monkeypatch.setattr(plain, "copy", copy_while_another_tries)
    restore.restore(store.folder, copy, NINE)
    assert len(refused) == 1
    assert len(entries_in(store)) == 16


def test_a_held_studio_is_not_replaced(store, copy, monkeypatch):
    fill(store, lots=1)
    written = entries_in(store)
    monkeypatch.setattr(plain, "WAIT_SECONDS", 0.05)
    with closing(plain.connect(store.path, "rw")) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(BadStudio, match="held"):
            restore.restore(store.folder, copy, NINE)
    assert entries_in(store) == written
    assert not (store.folder / "copies").exists() or not list((store.folder / "copies").iterdir())


def test_into_an_empty_place(tmp_path, copy):
    assert restore.restore(tmp_path / "new" / "studio", copy, NINE) is None
    with open_store(tmp_path / "new" / "studio", create=False) as store:
        assert len(entries_in(store)) == 16


@pytest.mark.parametrize("spoil", ["head", "cut", "empty", "text"])
def test_in_the_place_of_a_damaged_studio(folder, copy, spoil):
    with open_store(folder) as store:
        fill(store, lots=9)
    path = folder / files.FILE_NAME
    content = path.read_bytes()
    damaged = {
        "head": b"x" * 100 + content[100:],
        "cut": content[: len(content) // 2],
        "empty": b"",
        "text": b"not a database",
    }[spoil]
    path.write_bytes(damaged)
    (folder / "studio.sqlite3-wal").write_bytes(b"an old log")
    kept = restore.restore(folder, copy, NINE)
    assert kept is not None
    assert kept.read_bytes() == damaged
    assert kept.with_name(kept.name + "-wal").read_bytes() == b"an old log"
    with open_store(folder) as store:
        assert len(entries_in(store)) == 16
        assert check.check(store) == []


def spoil(path, *statements):
    with closing(plain.connect(path, "rw")) as line:
        for statement in statements:
            line.execute(statement)


HOSTILE = {
    "a trigger": ["CREATE TRIGGER t AFTER INSERT ON lot BEGIN DELETE FROM setting; END"],
    "a view": ["CREATE VIEW v AS SELECT 1"],
    "a table": ["CREATE TABLE extra (x)"],
    "an index": ["CREATE INDEX i ON lot (name)"],
    "a missing table": ["DROP TABLE delivery"],
    "a missing trigger": ["DROP TRIGGER entry_no_delete"],
    "another trigger of the same name": [
        "DROP TRIGGER entry_no_delete",
        "CREATE TRIGGER entry_no_delete BEFORE DELETE ON entry BEGIN SELECT 1; END",
    ],
    "a view in the place of a table": ["DROP TABLE delivery", "CREATE VIEW delivery AS SELECT 1"],
    "a virtual table": ["CREATE VIRTUAL TABLE f USING fts5(x)"],
    "orphans": ["PRAGMA foreign_keys = OFF", "DELETE FROM lot WHERE code = '26-001'"],
    "a newer version": ["UPDATE alembic_version SET version_num = '0999'"],
    "a version before the first": ["UPDATE alembic_version SET version_num = '0000'"],
    "no version": ["DELETE FROM alembic_version"],
    "two versions": ["INSERT INTO alembic_version VALUES ('0000')"],
    "an odd version": ["UPDATE alembic_version SET version_num = 'main'"],
    "another application": ["PRAGMA application_id = 7"],
}


@pytest.mark.parametrize("what", HOSTILE)
def test_a_hostile_copy_is_refused_and_the_studio_stays(store, copy, what):
    spoil(copy, *HOSTILE[what])
    refused(store, copy)


def refused(store, source, words="is not a whole copy of a studio"):
    """Try to restore; hold that it is refused and that nothing whatever has changed."""
    with store.work() as work:
        work.journal.append(an_entry("26-077"))
    written = entries_in(store)
    there = sorted(path.name for path in store.folder.iterdir())
    with pytest.raises(BadStudio, match=words) as caught:
        restore.restore(store.folder, source, NINE)
    assert str(source) in str(caught.value)
    assert "The studio was left as it is" in str(caught.value)
    assert entries_in(store) == written
    assert sorted(path.name for path in store.folder.iterdir()) == there


@pytest.mark.parametrize("content", [b"", b"x", b"PK\x03\x04", plain.MAGIC, plain.MAGIC * 400])
def test_a_file_of_another_kind_is_refused(store, tmp_path, content):
    source = tmp_path / "odd.sqlite3"
    source.write_bytes(content)
    refused(store, source)


def test_no_file_a_folder_itself_and_a_pipe(store, tmp_path):
    refused(store, tmp_path / "gone.sqlite3")
    refused(store, tmp_path)
    refused(store, store.path)
    os.mkfifo(tmp_path / "pipe")
    refused(store, tmp_path / "pipe")


def test_a_huge_file_is_refused_before_it_is_copied(store, copy):
    os.truncate(copy, restore.LARGEST + 4096)  # a sparse file: takes no room
    refused(store, copy, "larger than 2 GB")


def test_an_empty_database_is_refused(store, tmp_path):
    source = tmp_path / "empty.sqlite3"
    with closing(sqlite3.connect(source)) as line:
        line.execute("CREATE TABLE t (x)")
        line.execute("DROP TABLE t")
        line.commit()
    refused(store, source)


def test_text_stored_in_another_way_is_refused(store, tmp_path, copy):
    source = tmp_path / "wide.sqlite3"
    with closing(plain.connect(copy, "ro")) as good, closing(sqlite3.connect(source)) as line:
        line.execute("PRAGMA encoding = 'UTF-16'")
        dump = [one for one in good.iterdump() if "sqlite_seq" not in one]
        line.executescript("\n".join(one for one in dump if "lot_words" not in one))
        line.execute(f"PRAGMA application_id = {plain.APPLICATION_ID}")
    refused(store, source, "stored in another way")


def test_pages_of_another_size_are_taken(store, copy):
    spoil(copy, "PRAGMA page_size = 1024", "VACUUM")
    restore.restore(store.folder, copy, NINE)
    assert len(entries_in(store)) == 16
    assert check.check(store) == []


def test_a_copy_still_in_use_is_taken_with_its_log(store, tmp_path):
    with open_store(tmp_path / "other") as other:
        fill(other)
        assert (tmp_path / "other" / "studio.sqlite3-wal").stat().st_size > 0
        restore.restore(store.folder, other.path, NINE)
    assert len(entries_in(store)) == 16


def test_a_full_disk_leaves_all_as_it_was(store, copy, monkeypatch):
    def fail(_source, target):
        target.write_bytes(b"half")
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(shutil, "copyfile", fail)
    fill(store, lots=1)
    with pytest.raises(BadStudio, match="full"):
        restore.restore(store.folder, copy, NINE)
    assert [path.name for path in store.folder.iterdir() if "restored" in path.name] == []
    assert len(entries_in(store)) == 6
