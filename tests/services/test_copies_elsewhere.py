"""Copies on another disk: kept up by themselves, missed in time, and never in the way."""

import errno
import shutil
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from studio_log.domain.journal import Act
from studio_log.services import copies_elsewhere
from studio_log.services.commands import ChangeSettings
from studio_log.services.copies import CopiesFor, TakeCopy
from studio_log.services.keeping import Keeper
from studio_log.services.pictures import AddPhoto
from studio_log.services.places import ChangePlaces
from studio_log.services.questions import StatusFor
from studio_log.services.rang import WhatRangFor
from studio_log.services.worker import InlineWorker
from studio_log.store import plain
from tests.support.builders import DAY
from tests.support.fixtures import Workshop, open_workshop
from tests.support.tree import TREE

PICTURE = TREE / "tests" / "reference" / "pictures" / "plain.jpg"


@pytest.fixture
def keeper(shop: Workshop) -> Iterator[Keeper]:
    made = Keeper(shop.studio, InlineWorker().submit, timedelta(0))
    shop.studio.listeners.append(made.heard)
    shop.studio.upkeep.day_begun = made.soon
    yield made
    made.close()


@pytest.fixture
def stick(tmp_path: Path) -> Path:
    made = tmp_path / "stick"
    made.mkdir()
    return made


def seen_to(keeper: Keeper) -> None:
    for _ in range(3):
        keeper._worker.submit(lambda: None).result()


def days(stick: Path) -> list[str]:
    return sorted(path.name for path in stick.glob("*/day-*.sqlite3"))


def warnings(shop: Workshop) -> tuple[str, ...]:
    return shop.studio.ask(StatusFor()).warnings


def test_each_day_a_copy_with_photos_is_written_there(shop: Workshop, keeper: Keeper, stick: Path):
    code = shop.new()
    shop.do(AddPhoto(code, PICTURE))
    shop.do(ChangePlaces(copies=str(stick)))
    seen_to(keeper)
    assert days(stick) == ["day-2026-06-09.sqlite3"]
    assert len(list(stick.glob("*/studio-log-photos/*.jpg"))) == 1
    shop.clock.move(days=1)
    shop.mark(code, "1", Act.NOTE, note="a day later")
    seen_to(keeper)
    assert days(stick) == ["day-2026-06-09.sqlite3", "day-2026-06-10.sqlite3"]
    listed = shop.studio.ask(CopiesFor())
    assert sum(str(stick) in one.words for one in listed.copies) == 2
    assert listed.elsewhere == str(stick)
    assert "10 June 2026" in listed.elsewhere_words
    assert warnings(shop) == ()


def test_taking_one_now_writes_there_anew(shop: Workshop, keeper: Keeper, stick: Path):
    shop.new("one")
    shop.do(ChangePlaces(copies=str(stick)))
    seen_to(keeper)
    (copy,) = stick.glob("*/day-*.sqlite3")
    before = copy.read_bytes()
    shop.new("two")
    seen_to(keeper)
    assert copy.read_bytes() == before
    shop.do(TakeCopy())
    seen_to(keeper)
    assert copy.read_bytes() != before
    assert shop.studio.ask(StatusFor()).copy == "copy kept today"


def test_a_stick_that_is_away_for_some_days_is_no_fault_then_it_is(
    shop: Workshop, keeper: Keeper, stick: Path
):
    code = shop.new()
    shop.do(ChangePlaces(copies=str(stick)))
    seen_to(keeper)
    shutil.rmtree(stick)
    for day in range(1, 12):
        shop.clock.move(days=1)
        shop.mark(code, "1", Act.NOTE, note=f"day {day}")
        seen_to(keeper)
        if day <= 7:
            assert warnings(shop) == (), day
            assert "it is not there" in shop.studio.ask(CopiesFor()).elsewhere_words
        else:
            (told,) = warnings(shop)
            assert "The last good copy there is of 9 June 2026." in told
            assert str(stick) in told
    stick.mkdir()
    shop.mark(code, "1", Act.NOTE, note="it is back")
    seen_to(keeper)
    assert days(stick) == ["day-2026-06-20.sqlite3"]
    assert warnings(shop) == ()


@pytest.mark.parametrize(
    ("number", "words"),
    [(errno.ENOSPC, "its disk is full"), (errno.EROFS, "it may not be written to")],
)
def test_a_full_or_locked_stick_is_a_sentence_and_tried_again_in_an_hour(
    shop: Workshop, keeper: Keeper, stick: Path, monkeypatch, number: int, words: str
):
    code = shop.new()
    tried = []

    def fail(_source: Path, target: Path) -> None:
        tried.append(target)
        raise OSError(number, "no")

    with monkeypatch.context() as patched:
        patched.setattr(plain, "fill", fail)
        shop.do(ChangePlaces(copies=str(stick)))
        for _ in range(4):
            shop.clock.move(minutes=10)
            shop.mark(code, "1", Act.NOTE, note="work goes on")
            seen_to(keeper)
        (fault,) = warnings(shop)
        assert words in fault
        assert str(stick) in fault
        assert "No copy is there yet." in fault
        assert len(tried) == 1
    shop.clock.move(hours=2)
    shop.mark(code, "1", Act.NOTE, note="room was made")
    seen_to(keeper)
    assert warnings(shop) == ()
    assert len(days(stick)) == 1


def test_an_old_copy_is_told_once_a_week_and_stands_among_what_rang(shop: Workshop, stick: Path):
    shop.do(ChangeSettings({"look_ahead": "08:00"}))
    shop.do(ChangePlaces(copies=str(stick)))
    folder = shop.studio.folder
    copies_elsewhere.note_elsewhere(folder, str(stick), date(2026, 6, 9), good=True)
    told = [
        (at, text) for at, text in shop.ring_on(shop.clock.at + 24 * DAY)
        if "last good copy" in text.body
    ]  # fmt: skip
    assert [f"{at:%m-%d %H:%M}" for at, _ in told] == ["06-17 07:00", "06-24 07:00", "07-01 07:00"]
    assert all(text.urgency == "calm" for _, text in told)
    assert str(stick) in told[0][1].body
    rows = shop.studio.ask(WhatRangFor(shop.clock.at - 60 * DAY, shop.clock.at, ""))
    assert sum(row.kind == "copy_old" or "opies" in row.title for row in rows) == 3


def test_fresh_copies_wake_nobody_up(shop: Workshop):
    at = shop.studio.next_ring()
    assert at is None
    assert shop.ring(days=40) == [], "the copy of the day is taken before anything is told"


def test_what_is_remembered_of_another_place_counts_for_nothing(shop: Workshop, stick: Path):
    folder = shop.studio.folder
    copies_elsewhere.note_elsewhere(folder, "/media/old", date(2026, 1, 1), good=True)
    shop.do(ChangePlaces(copies=str(stick)))
    assert copies_elsewhere.old_words(folder, date(2026, 6, 9)) == ""
    known = copies_elsewhere.note_elsewhere(folder, str(stick), date(2026, 6, 9), good=False)
    assert (known.last, known.since) == (None, date(2026, 6, 9))
    assert copies_elsewhere.old_words(folder, date(2026, 6, 17)) != ""


@pytest.mark.parametrize("spoilt", [b"", b"{", b"[]", b'{"where": 3, "last": 4}', b"\xff", b"9"])
def test_a_spoilt_memory_of_copies_is_none(tmp_path: Path, spoilt: bytes):
    (tmp_path / copies_elsewhere.FILE_NAME).write_bytes(spoilt)
    assert copies_elsewhere.read_elsewhere(tmp_path) == copies_elsewhere.Elsewhere()


def test_another_process_sees_that_a_copy_was_put_back(shop: Workshop, tmp_path: Path):
    """Its memory of a lot of the same code and number is of the other journal."""
    from studio_log.services.copies import BackupTo, RestoreCopy

    code = shop.new("first")
    shop.do(BackupTo(tmp_path / "b.sqlite3"))
    shop.mark(code, "1", Act.START)
    other = open_workshop(shop.studio.folder, shop.clock, copied=False)
    try:
        assert other.lot(code).steps[0].start is not None
        shop.do(RestoreCopy(tmp_path / "b.sqlite3", sure=True))
        shop.mark(code, "1", Act.NOTE, note="as many entries as before")
        other.studio.heard_of_change()
        assert other.lot(code).steps[0].start is None
    finally:
        other.studio.close()


def test_daily_copies_are_taken_by_acts_too(shop: Workshop):
    code = shop.new()
    shop.clock.move(days=3)
    shop.mark(code, "1", Act.NOTE, note="nothing rang for days")
    names = sorted(path.name for path in (shop.studio.folder / "copies").glob("day-*"))
    assert names == ["day-2026-06-09.sqlite3", "day-2026-06-12.sqlite3"]
