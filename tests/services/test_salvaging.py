"""A damaged file is read as far as it can be, and what is lost is told: never a traceback.

The damage is the tests' own: cut short, bits turned over, pages of rubbish, by a seed. That
rows are read rightly is held against SQLite itself, which reads the same whole file.
"""

import random
import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest

from studio_log.domain.errors import BadStudio
from studio_log.domain.journal import Act, Entry
from studio_log.services.baths import NewBath
from studio_log.services.commands import ChangeSettings, NewMilk
from studio_log.services.mending import LOST_NOTE
from studio_log.services.salvaging import is_damaged, look_over, salvage
from studio_log.services.stock import NewMaterial
from studio_log.services.studio import Studio
from studio_log.store import check, files, plain
from studio_log.store.raw_pages import Pages
from studio_log.store.salvage import RULES, read_all
from tests.support.builders import NINE, shipped_texts
from tests.support.fixtures import open_workshop
from tests.support.hand_clock import HandClock

SHIPPED = shipped_texts()
LONG_NOTE = "Läufer; «lang» \U0001f9f5 " * 400
"""Longer than a page: it lies on pages of its own."""


@pytest.fixture(scope="module")
def good(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A studio of some lots at work, with milk, bath and stock; closed, without a log."""
    folder = tmp_path_factory.mktemp("salvage") / "good"
    clock = HandClock(NINE)
    shop = open_workshop(folder, clock)
    shop.do(ChangeSettings({"studio": "Harbour Lane Cloth Studio"}))
    for number in range(6):
        code = shop.new(f"cloth {number}")
        shop.mark(code, "1", Act.START)
        shop.mark(code, "1", Act.NOTE, note=LONG_NOTE if number % 2 else "short")
        clock.move(hours=12)
        shop.mark(code, "1", Act.END)
        for turn in range(12):
            clock.move(minutes=3)
            shop.mark(code, "1", Act.NOTE, note=f"turned {turn} times, é")
    shop.do(NewMilk(lots=("26-001",), litres=1.0, strength=100.0))
    shop.do(NewBath("chalk"))
    shop.do(NewMaterial("Soda ash", amount=1000.0, unit="g"))
    shop.studio.close()
    shutil.rmtree(folder / files.COPIES)
    return folder


@pytest.fixture(scope="module")
def written(good: Path) -> dict[tuple[str, int], Entry]:
    return entries_of(good)


def entries_of(folder: Path) -> dict[tuple[str, int], Entry]:
    studio = Studio(folder, HandClock(NINE + timedelta(days=9)), SHIPPED, {})
    try:
        with studio.store.reading() as look:
            found = look.journal.of_many(look.journal.subjects())
            return {(one.subject, one.number): one for kept in found.values() for one in kept}
    finally:
        studio.close()


@pytest.fixture
def folder(good: Path, tmp_path: Path) -> Path:
    shutil.copytree(good, tmp_path / "studio", ignore=shutil.ignore_patterns("copies"))
    return tmp_path / "studio"


def change(folder: Path, how: Callable[[bytes], bytes]) -> bytes:
    path = folder / files.FILE_NAME
    damaged = how(path.read_bytes())
    path.write_bytes(damaged)
    return damaged


def judged(folder: Path, written: dict[tuple[str, int], Entry]) -> str:
    """Repair what is damaged, and hold what came out against what was written."""
    damaged = (folder / files.FILE_NAME).read_bytes()
    if not is_damaged(folder):
        assert entries_of(folder) == written, "what opens without a word is whole"
        return "whole"
    before = look_over(folder, SHIPPED)
    assert (folder / files.FILE_NAME).read_bytes() == damaged, "looking changes nothing"
    done = salvage(folder, SHIPPED, NINE)
    assert done.lines[: len(before.lines)] == before.lines
    assert done.kept is not None
    assert done.kept.read_bytes() == damaged, "the damaged file is kept"
    after = entries_of(folder)
    noted = {key for key, entry in after.items() if entry.data.get("lost")}
    for key, entry in after.items():
        assert key in noted or entry == written[key], "nothing comes out that was not written"
    told = " ".join(done.lines)
    lost = written.keys() - (after.keys() - noted)
    if lost:
        assert done.lost or "make" in told, (lost, done.lines)
    for code, number in noted:
        assert code in told
        assert after[code, number].note == LOST_NOTE
    studio = Studio(folder, HandClock(NINE + timedelta(days=9)), SHIPPED, {})
    try:
        studio.rebuild()
        assert check.check(studio.store) == []
        assert [one for one in studio.check() if "does not read" not in one] == []
    finally:
        studio.close()
    return "lost" if lost else "mended"


def test_rows_are_read_as_sqlite_reads_them(folder: Path, written):
    pages = Pages(folder / files.FILE_NAME)
    found = read_all(folder / files.FILE_NAME)
    assert written == {
        (code, number): one for code, kept in found.entries.items() for number, one in kept.items()
    }
    assert found.spoilt == set()
    assert found.ever == len(written)
    assert any(len(entry.note) > pages.size for entry in written.values()), "some lie on two pages"
    with closing(plain.connect(folder / files.FILE_NAME, "ro")) as line:
        for table, rule in RULES.items():
            told = line.execute(f"SELECT count(*) FROM {table}").fetchone()[0]
            assert len(found.rows.get(table, {})) == told, table
            columns = [row[1] for row in line.execute(f"PRAGMA table_info({table})")]
            assert tuple(columns) == rule.names, "as the migrations have laid the columns"


def test_what_lies_in_the_log_only_is_read_too(good: Path, tmp_path: Path):
    shop = open_workshop(tmp_path / "open", HandClock(NINE))
    code = shop.new()
    for number in range(30):
        shop.mark(code, "1", Act.NOTE, note=f"note {number}")
    for suffix in ("", "-wal"):
        beside = tmp_path / "open" / f"{files.FILE_NAME}{suffix}"
        shutil.copyfile(beside, tmp_path / f"{files.FILE_NAME}{suffix}")
    found = read_all(tmp_path / files.FILE_NAME)
    shop.studio.close()
    assert sorted(found.entries[code]) == list(range(1, 32))
    assert good.exists()


SHARES = [0.0, 0.001, 0.01, 0.03, 0.08, 0.15, 0.25, 0.35, 0.5, 0.6, 0.75, 0.9, 0.97, 0.999]


@pytest.mark.parametrize("share", SHARES)
def test_a_file_cut_short_anywhere(folder: Path, written, share: float):
    change(folder, lambda content: content[: int(len(content) * share)] or b"\0")
    # Of the last page a few bytes may be missing that nothing is written on.
    assert judged(folder, written) in {"lost", "mended", *(["whole"] if share > 0.99 else [])}


@pytest.mark.parametrize("seed", range(8))
def test_bits_turned_over_anywhere(folder: Path, written, seed: int):
    chance = random.Random(f"bits {seed}")

    def flip(content: bytes) -> bytes:
        changed = bytearray(content)
        for _ in range(1 + seed * 3):
            changed[chance.randrange(len(changed))] ^= 1 << chance.randrange(8)
        return bytes(changed)

    change(folder, flip)
    assert judged(folder, written) in {"whole", "mended", "lost"}


@pytest.mark.long
def test_single_bits_turned_over_at_forty_places(good: Path, written, tmp_path: Path):
    chance = random.Random("many bits")
    seen = set()
    for turn in range(40):
        folder = tmp_path / f"turn{turn}"
        shutil.copytree(good, folder, ignore=shutil.ignore_patterns("copies"))

        def flip(content: bytes) -> bytes:
            changed = bytearray(content)
            changed[chance.randrange(len(changed))] ^= 1 << chance.randrange(8)
            return bytes(changed)

        change(folder, flip)
        seen.add(judged(folder, written))
        shutil.rmtree(folder)
    assert "whole" in seen, "a bit in an unused place harms nothing"
    assert seen - {"whole"}


def pages_of(folder: Path) -> Iterator[int]:
    yield from range((folder / files.FILE_NAME).stat().st_size // 4096)


@pytest.mark.parametrize("seed", range(6))
def test_pages_of_rubbish(folder: Path, written, seed: int):
    chance = random.Random(f"pages {seed}")
    hit = chance.sample(list(pages_of(folder)), 1 + seed)

    def spoil(content: bytes) -> bytes:
        changed = bytearray(content)
        for page in hit:
            changed[page * 4096 : (page + 1) * 4096] = chance.randbytes(4096)
        return bytes(changed)

    change(folder, spoil)
    assert judged(folder, written) in {"mended", "lost"}


@pytest.mark.parametrize("filler", [b"\0", b"\xff", b"\x0d"])
def test_a_head_or_an_end_that_is_overwritten(folder: Path, written, filler: bytes):
    change(folder, lambda content: filler * 4096 + content[4096:])
    assert judged(folder, written) in {"mended", "lost"}
    change(folder, lambda content: content[:-8192] + filler * 8192)
    judged(folder, entries_of_damaged(folder, written))


def entries_of_damaged(folder: Path, written):
    """What could still be in the file by now: the entries of before and the notes for the lost."""
    found = read_all_from_copy(folder)
    return {**written, **found}


def read_all_from_copy(folder: Path):
    place = folder.parent / "look.sqlite3"
    shutil.copyfile(folder / files.FILE_NAME, place)
    found = read_all(place)
    return {(c, n): one for c, kept in found.entries.items() for n, one in kept.items()}


def spoil_entry(folder: Path, code: str, number: int, column: str = "note") -> None:
    """Change one value of an entry in place, past all triggers: its seal tells."""
    with closing(sqlite3.connect(folder / files.FILE_NAME, isolation_level=None)) as line:
        line.execute("DROP TRIGGER IF EXISTS entry_no_update")
        line.execute(
            f"UPDATE entry SET {column} = 'spoilt' WHERE subject = ? AND number = ?", (code, number)
        )


def test_a_lost_note_of_a_lot_leaves_the_rest_in_its_place(folder: Path, written):
    spoil_entry(folder, "26-002", 6)
    assert is_damaged(folder)
    assert judged(folder, written) == "lost"
    after = entries_of(folder)
    assert after["26-002", 6].note == LOST_NOTE
    assert after["26-002", 7] == written["26-002", 7]


def test_which_entry_is_lost_is_said(folder: Path):
    spoil_entry(folder, "26-003", 6)
    spoil_entry(folder, "26-003", 7)
    spoil_entry(folder, "26-003", 9)
    told = salvage(folder, SHIPPED, NINE)
    assert "Entries 6, 7 and 9 of 26-003 are lost. A note in the journal says so." in told.lines
    assert told.lost


def test_without_its_beginning_a_lot_is_told_in_the_report(folder: Path, written):
    spoil_entry(folder, "26-004", 1, "data")
    told = salvage(folder, SHIPPED, NINE)
    assert "Entry 1 of 26-004 is lost." in told.lines
    last = max(number for code, number in written if code == "26-004")
    assert any(f"Entries 2 to {last} of 26-004 could be read" in line for line in told.lines)
    assert told.kept is not None
    text = told.kept.with_suffix(".txt").read_text("utf-8")
    assert "turned 11 times, é" in text
    assert LONG_NOTE.strip() in text
    after = entries_of(folder)
    assert not any(code == "26-004" for code, _ in after)


def test_a_lot_of_which_nothing_is_left_is_named_by_the_lists(folder: Path, written):
    """Its entries are gone without a trace; the line of the list still knows how many."""
    with closing(sqlite3.connect(folder / files.FILE_NAME, isolation_level=None)) as line:
        line.execute("DROP TRIGGER entry_no_delete")
        line.execute("DELETE FROM entry WHERE subject = '26-005'")
        line.execute("VACUUM")
    spoil_entry(folder, "26-006", 5)
    last = max(number for code, number in written if code == "26-005")
    told = salvage(folder, SHIPPED, NINE)
    assert f"Entries 1 to {last} of 26-005 are lost." in told.lines
    assert told.lost


def test_what_is_lost_here_comes_from_the_copies(folder: Path, good: Path, written):
    (folder / files.COPIES).mkdir()
    with closing(plain.connect(good / files.FILE_NAME, "ro")) as line:
        line.execute("VACUUM INTO ?", (str(folder / files.COPIES / "day-2026-06-09.sqlite3"),))
    spoil_entry(folder, "26-004", 1, "data")
    spoil_entry(folder, "M26-001", 1, "data")
    told = salvage(folder, SHIPPED, NINE)
    assert "1 entry of 26-004 came from day-2026-06-09.sqlite3." in told.lines
    assert not told.lost
    assert entries_of(folder) == written


def test_a_studio_whose_file_is_gone_comes_from_its_copies(folder: Path, good: Path, written):
    (folder / files.COPIES).mkdir()
    shutil.copyfile(good / files.FILE_NAME, folder / files.COPIES / "day-2026-06-09.sqlite3")
    (folder / files.FILE_NAME).unlink()
    assert is_damaged(folder)
    told = salvage(folder, SHIPPED, NINE)
    assert told.kept is None
    assert entries_of(folder) == written


def test_a_copy_that_went_on_otherwise_gives_nothing(folder: Path, tmp_path: Path, written):
    other = open_workshop(tmp_path / "other", HandClock(NINE + timedelta(days=1)))
    code = other.new("another studio's lot")
    for number in range(30):
        other.mark(code, "1", Act.NOTE, note=f"theirs {number}")
    other.studio.close()
    (folder / files.COPIES).mkdir()
    shutil.copyfile(
        tmp_path / "other" / files.FILE_NAME, folder / files.COPIES / "day-2026-06-10.sqlite3"
    )
    spoil_entry(folder, "26-002", 6)
    told = salvage(folder, SHIPPED, NINE)
    assert not any("came from" in line for line in told.lines)
    assert entries_of(folder).keys() == written.keys()


def test_no_code_is_ever_given_again(folder: Path):
    with closing(sqlite3.connect(folder / files.FILE_NAME, isolation_level=None)) as line:
        line.execute("DELETE FROM counter")
    spoil_entry(folder, "26-006", 3)
    salvage(folder, SHIPPED, NINE)
    shop = open_workshop(folder, HandClock(NINE + timedelta(days=9)), copied=False)
    assert shop.new() == "26-007"
    assert shop.do(NewBath("chalk")).code == "B26-002"
    shop.studio.close()


def test_settings_and_methods_come_along(folder: Path):
    change(folder, lambda content: b"\xff" * 100 + content[100:])
    salvage(folder, SHIPPED, NINE)
    shop = open_workshop(folder, HandClock(NINE + timedelta(days=9)), copied=False)
    assert shop.studio.settings.studio == "Harbour Lane Cloth Studio"
    assert len(shop.studio.book) >= len(SHIPPED)
    shop.studio.close()


def test_nothing_but_rubbish_gives_an_empty_studio_and_says_so(folder: Path):
    change(folder, lambda content: random.Random(5).randbytes(len(content)))
    told = salvage(folder, SHIPPED, NINE)
    assert told.lines[0].startswith("0 entries of 0 journals")
    assert told.lost
    assert told.kept is not None
    assert entries_of(folder) == {}


def test_a_studio_that_is_whole_or_another_kind_of_file_is_left_alone(folder: Path, tmp_path):
    assert not is_damaged(folder)
    other = tmp_path / "other"
    other.mkdir()
    with closing(sqlite3.connect(other / files.FILE_NAME)) as line:
        line.execute("CREATE TABLE letters (words)")
    with pytest.raises(BadStudio, match="not the file of a studio"):
        is_damaged(other)
    assert not is_damaged(tmp_path / "none")
    assert not (tmp_path / "none").exists()


def test_a_disk_that_refuses_leaves_everything_as_it_was(folder: Path, monkeypatch):
    damaged = change(folder, lambda content: content[: len(content) // 2])

    def fail(_path: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(files, "settle", fail)
    with pytest.raises(BadStudio, match="full"):
        salvage(folder, SHIPPED, NINE)
    assert (folder / files.FILE_NAME).read_bytes() == damaged
    assert [path.name for path in folder.iterdir() if path.name.startswith(".salvage")] == []
