"""The calendar that follows the plan: whole at every moment, and never in anybody's way."""

import json
import shutil
import threading
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import icalendar
import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import Outcome
from studio_log.services.keeping import Keeper
from studio_log.services.places import FILE_NAME, ChangePlaces, Places, read_places
from studio_log.services.questions import StatusFor
from studio_log.services.worker import InlineWorker
from tests.support.fixtures import Workshop

AT_ONCE = timedelta(0)


@pytest.fixture
def keeper(shop: Workshop) -> Iterator[Keeper]:
    """A keeper that hears of every change."""
    made = Keeper(shop.studio, InlineWorker().submit, AT_ONCE)
    shop.studio.listeners.append(made.heard)
    yield made
    made.close()


def events(path: Path) -> list[icalendar.Event]:
    return icalendar.Calendar.from_ical(path.read_bytes()).walk("VEVENT")


def seen_to(keeper: Keeper) -> None:
    """Wait until what was heard of so far is seen to."""
    keeper._worker.submit(lambda: None).result()


def begun(shop: Workshop) -> str:
    code = shop.new()
    shop.mark(code, "1", Act.START)
    return code


def test_a_chosen_file_follows_the_plan(shop: Workshop, keeper: Keeper, tmp_path: Path):
    to = tmp_path / "plan.ics"
    shop.do(ChangePlaces(calendar=str(to)))
    code = begun(shop)
    keeper.close()
    assert any(code in str(one["SUMMARY"]) for one in events(to))
    assert to.name in shop.studio.upkeep.calendar_words


def test_in_a_chosen_folder_the_file_has_a_name_of_its_own(
    shop: Workshop, keeper: Keeper, tmp_path: Path
):
    folder = tmp_path / "synced"
    folder.mkdir()
    (folder / "holiday.txt").write_text("mine")
    shop.do(ChangePlaces(calendar=str(folder)))
    begun(shop)
    keeper.close()
    assert events(folder / "studio-log.ics")
    assert (folder / "holiday.txt").read_text() == "mine"
    assert sorted(path.name for path in folder.iterdir()) == ["holiday.txt", "studio-log.ics"]


def test_whoever_reads_meanwhile_never_reads_half_a_file(
    shop: Workshop, keeper: Keeper, tmp_path: Path
):
    to = tmp_path / "plan.ics"
    shop.do(ChangePlaces(calendar=str(to)))
    code = begun(shop)
    halves, reads = [], 0
    over = threading.Event()

    def read_on() -> None:
        nonlocal reads
        while not over.is_set():
            if to.exists():
                reads += 1
                data = to.read_bytes()
                if not (data.startswith(b"BEGIN:VCAL") and data.endswith(b"END:VCALENDAR\r\n")):
                    halves.append(data)

    reader = threading.Thread(target=read_on)
    reader.start()
    for number in range(12):
        shop.clock.move(minutes=11)
        shop.mark(code, "1", Act.NOTE, note=f"look {number}")
        shop.mark(code, "1", Act.PUTOFF, put_off=timedelta(minutes=10))
        seen_to(keeper)
    over.set()
    reader.join()
    assert halves == []
    assert reads


def test_a_folder_that_is_gone_is_a_sentence_and_comes_back_by_itself(
    shop: Workshop, keeper: Keeper, tmp_path: Path
):
    folder = tmp_path / "stick"
    folder.mkdir()
    shop.do(ChangePlaces(calendar=str(folder / "plan.ics")))
    seen_to(keeper)
    shutil.rmtree(folder)
    code = begun(shop)
    seen_to(keeper)
    (fault,) = shop.studio.ask(StatusFor()).warnings
    assert str(folder) in fault
    assert "not there" in fault
    folder.mkdir()
    shop.mark(code, "1", Act.NOTE, note="the stick is back")
    keeper.close()
    assert shop.studio.ask(StatusFor()).warnings == ()
    assert events(folder / "plan.ics")


def test_where_another_process_rings_that_one_writes(
    shop: Workshop, keeper: Keeper, tmp_path: Path
):
    shop.bell.mine = False
    shop.do(ChangePlaces(calendar=str(tmp_path / "plan.ics")))
    begun(shop)
    keeper.close()
    assert not (tmp_path / "plan.ics").exists()


def test_giving_it_up_leaves_the_file_and_says_nothing_more(
    shop: Workshop, keeper: Keeper, tmp_path: Path
):
    to = tmp_path / "plan.ics"
    shop.do(ChangePlaces(calendar=str(to)))
    code = begun(shop)
    seen_to(keeper)
    before = to.read_bytes()
    shop.do(ChangePlaces(calendar=""))
    shop.mark(code, "1", Act.STOP, note="no more")
    keeper.close()
    assert to.read_bytes() == before
    assert shop.studio.upkeep.calendar_words == ""


def test_a_change_that_a_person_sees_is_told_once_and_begins_nothing_anew(
    shop: Workshop, keeper: Keeper, tmp_path: Path
):
    heard: list[object] = []
    shop.studio.listeners.append(heard.append)
    shop.do(ChangePlaces(calendar=str(tmp_path / "plan.ics")))
    begun(shop)
    keeper.close()
    told = [one for one in heard if isinstance(one, Outcome) and "outside" in one.words]
    assert 1 <= len(told) <= 2


@pytest.mark.parametrize("where", ["plan.ics", "relative/plan.ics", "\0"])
def test_a_place_that_is_none_is_refused(shop: Workshop, where: str):
    with pytest.raises(Refusal, match="Nothing was changed"):
        shop.do(ChangePlaces(calendar=where))
    assert read_places(shop.studio.folder) == Places()


def test_neither_the_studios_folder_nor_a_file_of_another_kind_is_taken(
    shop: Workshop, tmp_path: Path
):
    letter = tmp_path / "letter.txt"
    letter.write_text("Dear all")
    for where in (shop.studio.folder, shop.studio.folder / "a.ics", letter, tmp_path / "no" / "a"):
        with pytest.raises(Refusal, match="Nothing was changed"):
            shop.do(ChangePlaces(calendar=str(where)))
    for where in (shop.studio.folder, shop.studio.folder / "copies", letter, tmp_path / "no"):
        with pytest.raises(Refusal, match="Nothing was changed"):
            shop.do(ChangePlaces(copies=str(where)))
    assert letter.read_text() == "Dear all"
    assert read_places(shop.studio.folder) == Places()


@pytest.mark.parametrize(
    "spoilt", [b"", b"{", b"[]", b'{"calendar": 7}', b'{"calendar": "a.ics"}', b"\xff", b"[" * 9000]
)
def test_a_spoilt_file_of_places_names_none(tmp_path: Path, spoilt: bytes):
    (tmp_path / FILE_NAME).write_bytes(spoilt)
    assert read_places(tmp_path) == Places()


def test_a_name_that_makes_no_sense_any_more_is_passed_over_alone(tmp_path: Path):
    kept = {"calendar": str(tmp_path / "a.ics"), "copies": "nowhere", "more": 1}
    (tmp_path / FILE_NAME).write_text(json.dumps(kept))
    assert read_places(tmp_path) == Places(calendar=str(tmp_path / "a.ics"))
