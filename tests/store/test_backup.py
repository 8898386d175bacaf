"""Copies where the person says, and one a day for seven days."""

import sqlite3
from contextlib import closing
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from studio_log.domain.errors import BadStudio
from studio_log.store import backup, check, files, plain
from studio_log.store.database import open_store
from tests.store.examples import NINE, entries_in, fill


@pytest.fixture
def store(file_store):
    """Give the file: what is tested here is its own."""
    return file_store


DAY = timedelta(days=1)


def test_a_backup_holds_all_that_is_committed(store, tmp_path):
    fill(store)
    to = tmp_path / "usb" / "studio.sqlite3"
    to.parent.mkdir()
    backup.backup(store, to)
    assert [one.name for one in to.parent.iterdir()] == ["studio.sqlite3"], "one file, no parts"
    written = entries_in(store)
    with open_store(to.parent) as copied:
        assert entries_in(copied) == written
        assert check.check(copied) == []


def test_a_backup_is_a_plain_file_that_opens_in_a_read_only_place(store, tmp_path):
    fill(store)
    backup.backup(store, tmp_path / "b.sqlite3")
    with closing(sqlite3.connect(f"file:{tmp_path}/b.sqlite3?immutable=1", uri=True)) as line:
        assert line.execute("PRAGMA journal_mode").fetchone() == ("delete",)
        assert line.execute("SELECT count(*) FROM entry").fetchone() == (16,)


def test_a_backup_replaces_an_older_one_and_nothing_else(store, tmp_path):
    to = tmp_path / "b.sqlite3"
    backup.backup(store, to)
    fill(store)
    backup.backup(store, to)
    with closing(plain.connect(to, "ro")) as line:
        assert line.execute("SELECT count(*) FROM entry").fetchone() == (16,)
    letter = tmp_path / "letter.odt"
    letter.write_text("dear all")
    with pytest.raises(BadStudio, match="no backup of a studio"):
        backup.backup(store, letter)
    assert letter.read_text() == "dear all"


def test_where_a_backup_cannot_go(store, tmp_path):
    with pytest.raises(BadStudio, match="studio itself"):
        backup.backup(store, store.path)
    with pytest.raises(BadStudio, match="a folder"):
        backup.backup(store, tmp_path)
    with pytest.raises(BadStudio, match="cannot be reached"):
        backup.backup(store, tmp_path / "gone" / "b.sqlite3")


def test_a_backup_that_fails_leaves_the_older_one(store, tmp_path, monkeypatch):
    to = tmp_path / "b.sqlite3"
    backup.backup(store, to)
    kept = to.read_bytes()
    fill(store)

    def fail(_path):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(files, "settle", fail)
    with pytest.raises(BadStudio, match="full"):
        backup.backup(store, to)
    assert to.read_bytes() == kept
    assert [one.name for one in tmp_path.iterdir() if "part" in one.name] == []


def names(store):
    return [path.name for path in backup.days_kept(store).values()]


def test_one_copy_a_day_for_seven_days(store):
    fill(store)
    for day in range(10):
        made = backup.daily_copy(store, NINE + day * DAY)
        assert made == store.folder / "copies" / f"day-2026-06-{9 + day:02d}.sqlite3"
        assert backup.daily_copy(store, NINE + day * DAY + timedelta(hours=3)) is None
    assert names(store) == [f"day-2026-06-{day:02d}.sqlite3" for day in range(12, 19)]


def test_the_day_is_that_of_the_zone_handed_in(store):
    late = datetime(2026, 6, 9, 23, 30, tzinfo=ZoneInfo("Europe/Lisbon"))
    backup.daily_copy(store, late)
    assert names(store) == ["day-2026-06-09.sqlite3"]


def test_other_files_among_the_copies_stay(store):
    copies = store.folder / "copies"
    copies.mkdir()
    others = ["before-0002-20200101T000000Z.sqlite3", "day-2020-13-45.sqlite3", "day-old.sqlite3"]
    for name in others:
        (copies / name).write_bytes(b"x")
    for day in range(6, 9):  # of its week and month the last is kept
        (copies / f"day-2020-01-0{day}.sqlite3").write_bytes(b"x")
    backup.daily_copy(store, NINE)
    there = sorted(path.name for path in copies.iterdir())
    assert there == sorted([*others, "day-2020-01-08.sqlite3", "day-2026-06-09.sqlite3"])


def test_a_clock_set_back_removes_nothing(store):
    backup.daily_copy(store, NINE + 400 * DAY)
    backup.daily_copy(store, NINE)
    assert names(store) == ["day-2026-06-09.sqlite3", "day-2027-07-14.sqlite3"]


def test_old_copies_stay_where_the_new_one_fails(store, monkeypatch):
    backup.daily_copy(store, NINE)

    def fail(_source, _target):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(plain, "fill", fail)
    with pytest.raises(BadStudio, match="full"):
        backup.daily_copy(store, NINE + 30 * DAY)
    assert names(store) == ["day-2026-06-09.sqlite3"]
