"""Which copies are kept, and those on another disk with their photos.

The rule is the program's own: 7 days, the last of 4 weeks (ISO 8601: from Monday) and of 12
months. It is tried by living through years of days, some of them without the laptop.
"""

import hashlib
import random
import shutil
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from studio_log.domain.errors import BadStudio
from studio_log.store import backup, faults, files, photo_files, plain, restore
from studio_log.store.backup import days_to_keep
from studio_log.store.compare import compare
from studio_log.store.database import Store, open_store
from studio_log.store.photos import FOLDER, PhotoRecord
from tests.store.examples import NINE, an_entry, entries_in, fill


@pytest.fixture
def store(file_store):
    """Give the file: what is tested here is its own."""
    return file_store


DAY = timedelta(days=1)


def lived(first: date, days: int, away: random.Random | None = None) -> Iterator[tuple]:
    """Live through days, one copy each; gives the day and what is kept."""
    kept: set[date] = set()
    for count in range(days):
        today = first + count * DAY
        if away is not None and away.random() < 0.3:
            continue
        kept = days_to_keep({*kept, today}, today)
        yield today, kept


@pytest.mark.parametrize("seed", [None, 1, 2, 3])
def test_through_three_years_the_rule_holds_on_every_day(seed: int | None):
    away = None if seed is None else random.Random(seed)
    taken: list[date] = []
    for today, kept in lived(date(2026, 1, 1), 3 * 365, away):
        taken.append(today)
        assert {day for day in taken if today - day < 7 * DAY} <= kept
        weeks = {day.isocalendar()[:2]: day for day in taken}
        months = {(day.year, day.month): day for day in taken}
        assert {weeks[one] for one in sorted(weeks)[-4:]} <= kept
        assert {months[one] for one in sorted(months)[-12:]} <= kept
        assert len(kept) <= 7 + 4 + 12


def test_a_year_back_there_is_a_copy_of_each_month():
    *_, (today, kept) = lived(date(2026, 1, 1), 500)
    assert today == date(2027, 5, 15)
    ends = [date(2027, month + 1, 1) - DAY for month in range(1, 5)]
    ends += [date(2026, month, 1) - DAY for month in range(7, 13)] + [date(2026, 12, 31)]
    assert set(ends) <= kept
    assert min(kept) == date(2026, 6, 30)


def test_a_copy_dated_ahead_by_a_wrong_clock_costs_no_other():
    days = {date(2026, 6, 9), date(2030, 1, 1)}
    assert days_to_keep(days, date(2026, 6, 9)) == days


@pytest.fixture
def stick(tmp_path: Path) -> Path:
    made = tmp_path / "stick"
    made.mkdir()
    return made


def a_photo(store: Store, number: int, content: bytes) -> str:
    """Keep a photo of a lot as the log does; gives its file's name."""
    digest = hashlib.sha256(content).hexdigest()
    with store.work() as work:
        record = PhotoRecord("26-001", number, digest, "jpg", "wet.jpg", len(content), 4, 3)
        work.photos.put(record, content)
    return f"{digest}.jpg"


def elsewhere(stick: Path) -> Path:
    (found,) = stick.iterdir()
    return found


def test_a_copy_on_a_stick_is_whole_and_holds_the_photos(store: Store, stick: Path):
    fill(store)
    names = {a_photo(store, number, b"photo %d" % number) for number in (1, 2)}
    made = backup.copy_elsewhere(store.path, stick, NINE)
    assert made is not None
    assert made.photos == photo_files.PhotosCopied(copied=2)
    folder = elsewhere(stick)
    assert folder.name.startswith("studio-log-copies-")
    assert {one.name for one in (folder / "studio-log-photos").iterdir()} == names
    assert plain.examine(made.path) == plain.HEAD
    shutil.copyfile(made.path, stick / files.FILE_NAME)
    with open_store(stick) as copied:
        assert entries_in(copied) == entries_in(store)


def test_only_what_is_not_there_yet_is_copied(store: Store, stick: Path):
    fill(store)
    a_photo(store, 1, b"one")
    backup.copy_elsewhere(store.path, stick, NINE)
    assert backup.copy_elsewhere(store.path, stick, NINE) is None, "today's is there"
    name = a_photo(store, 2, b"two")
    made = backup.copy_elsewhere(store.path, stick, NINE + DAY)
    assert made.photos == photo_files.PhotosCopied(copied=1, there=1)
    lies = elsewhere(stick) / "studio-log-photos" / name
    lies.write_bytes(b"tw")  # half a photo, of a stick that was pulled out
    again = backup.copy_elsewhere(store.path, stick, NINE + DAY, anew=True)
    assert again.photos == photo_files.PhotosCopied(copied=1, there=1)
    assert lies.read_bytes() == b"two"


def test_a_photo_that_is_spoilt_here_is_named_and_not_spread(store: Store, stick: Path):
    fill(store)
    good, bad = (a_photo(store, number, b"photo %d" % number) for number in (1, 2))
    backup.copy_elsewhere(store.path, stick, NINE)
    (store.folder / FOLDER / bad).write_bytes(b"photo X")
    (store.folder / FOLDER / good).unlink()
    other = stick.parent / "other"
    other.mkdir()
    made = backup.copy_elsewhere(store.path, other, NINE)
    assert made.photos.lost == tuple(sorted((good, bad)))
    assert not (elsewhere(other) / "studio-log-photos").exists()
    assert (elsewhere(stick) / "studio-log-photos" / bad).read_bytes() == b"photo 2"


def test_two_studios_on_one_stick_have_folders_of_their_own(store: Store, stick: Path, tmp_path):
    fill(store)
    with open_store(tmp_path / "other") as other:
        with other.work() as work:
            work.journal.append(an_entry("26-001", note="another studio"))
        backup.copy_elsewhere(other.path, stick, NINE)
    backup.copy_elsewhere(store.path, stick, NINE)
    assert len(list(stick.iterdir())) == 2


def test_an_empty_studio_needs_no_copy_elsewhere(store: Store, stick: Path):
    assert backup.copy_elsewhere(store.path, stick, NINE) is None
    assert list(stick.iterdir()) == []


def test_a_stick_that_is_gone_full_or_write_protected_is_said(store: Store, stick, monkeypatch):
    fill(store)
    with pytest.raises(BadStudio) as gone:
        backup.copy_elsewhere(store.path, stick / "no", NINE)
    assert faults.reason(gone.value) == "it is not there"
    for number, words in ((28, "its disk is full"), (30, "it may not be written to"),
                          (5, "its disk failed to read or write")):  # fmt: skip

        def fail(_source, _target, number=number):
            raise OSError(number, "no")

        monkeypatch.setattr(plain, "fill", fail)
        with pytest.raises(BadStudio) as refused:
            backup.copy_elsewhere(store.path, stick, NINE)
        assert faults.reason(refused.value) == words
        assert list(elsewhere(stick).iterdir()) == [], "no half copy stays"


def test_a_full_stick_keeps_its_older_copies(store: Store, stick: Path, monkeypatch):
    fill(store)
    backup.copy_elsewhere(store.path, stick, NINE)
    before = {path: path.read_bytes() for path in elsewhere(stick).iterdir()}

    def fail(_path):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(files, "settle", fail)
    with pytest.raises(BadStudio):
        backup.copy_elsewhere(store.path, stick, NINE + 60 * DAY)
    assert {path: path.read_bytes() for path in elsewhere(stick).iterdir()} == before


# -- what a copy would change ---------------------------------------------------------------


def test_the_same_journal_differs_in_nothing(store: Store, stick: Path):
    fill(store)
    made = backup.backup(store, stick / "b.sqlite3")
    seen = compare(store.folder, made.path)
    assert seen.here == seen.there
    assert (seen.here.lots, seen.here.entries) == (3, 16)
    assert (seen.newer, seen.older, seen.parted, seen.missing, seen.back) == ((),) * 5
    assert [one.name for one in store.folder.iterdir() if "compared" in one.name] == []


def test_each_journal_stands_in_the_group_it_belongs_to(store: Store, stick: Path):
    fill(store)
    to = stick / "b.sqlite3"
    with store.work() as work:
        work.journal.append(an_entry("26-777", note="only in the copy"))
        work.journal.append(an_entry("26-002", note="further in the copy"))
        work.journal.append(an_entry("26-003", note="there"))
    backup.backup(store, to)
    restore.restore(store.folder, _older(stick), NINE)
    with store.work() as work:
        work.journal.append(an_entry("26-001", note="further here"))
        work.journal.append(an_entry("26-003", note="here"))
        work.journal.append(an_entry("26-888", note="only here"))
    before = store.path.read_bytes()
    seen = compare(store.folder, to)
    assert seen.older == ("26-001",)
    assert seen.newer == ("26-002",)
    assert seen.parted == ("26-003",)
    assert seen.missing == ("26-888",)
    assert seen.back == ("26-777",)
    assert store.path.read_bytes() == before, "looking changes nothing"


def _older(stick: Path) -> Path:
    """A copy of a studio as `fill` left it: the same entries, sealed alike."""
    with open_store(stick / "older") as older:
        fill(older)
        return backup.backup(older, stick / "older.sqlite3").path


def test_a_copy_that_restore_would_refuse_is_refused_here_too(store: Store, stick: Path):
    fill(store)
    letter = stick / "letter.sqlite3"
    letter.write_text("dear all")
    with pytest.raises(BadStudio, match="not a whole copy"):
        compare(store.folder, letter)


def test_where_the_studio_itself_is_damaged_that_is_said(store: Store, stick: Path):
    fill(store)
    made = backup.backup(store, stick / "b.sqlite3")
    store.close()
    for suffix in ("-wal", "-shm"):
        store.path.with_name(store.path.name + suffix).unlink(missing_ok=True)
    store.path.write_bytes(b"no studio")
    seen = compare(store.folder, made.path)
    assert not seen.here.readable
    assert seen.there.entries == 16


def test_photos_come_back_with_the_copy(store: Store, stick: Path, tmp_path: Path):
    fill(store)
    name = a_photo(store, 1, b"one")
    lost = a_photo(store, 2, b"two")
    made = backup.backup(store, stick / "b.sqlite3")
    assert made.photos.copied == 2
    (stick / "studio-log-photos" / lost).write_bytes(b"tw0")
    new = tmp_path / "new laptop"
    new.mkdir()
    assert compare(new, made.path).photos_lost == 0, "both lie there, one of them spoilt"
    restore.restore(new, made.path, NINE)
    assert (new / FOLDER / name).read_bytes() == b"one"
    assert not (new / FOLDER / lost).exists(), "a spoilt photo is not taken for the real one"
    (stick / "studio-log-photos" / name).unlink()
    (stick / "studio-log-photos" / lost).unlink()
    assert compare(tmp_path / "third", made.path).photos_lost == 2
