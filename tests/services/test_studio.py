"""The studio as a whole: one transaction, told after it; repaired from its journal alone."""

import sqlite3
import threading
from contextlib import closing
from datetime import timedelta

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services import questions as q
from studio_log.services.clock import HurriedClock, SystemClock
from studio_log.services.commands import (
    AnswerReminder,
    ChangeSettings,
    ImportMethod,
    Mark,
    NewLot,
    NewMilk,
    Outcome,
    RaiseDue,
)
from studio_log.services.desk import Desk
from studio_log.services.ports import NoticeText, Raised
from studio_log.services.worker import InlineWorker, ThreadWorker
from studio_log.store.methods import Methods
from tests.support.builders import DAY, HOUR, LONG, NINE, shipped_texts
from tests.support.fixtures import PIECES, open_workshop
from tests.support.hand_clock import HandClock


def change_file(shop, *statements: str) -> None:
    with closing(sqlite3.connect(shop.studio.store.path)) as line, line:
        for statement in statements:
            line.execute(statement)


def test_listeners_hear_of_a_command_once_it_is_written(shop):
    heard = []

    def listen(outcome):
        heard.append((outcome, len(shop.everything())))

    shop.studio.listeners.append(listen)
    code = shop.new()
    assert [(one.code, lots) for one, lots in heard] == [(code, 1)]
    with pytest.raises(Refusal):
        shop.mark(code, "99", Act.START)
    assert len(heard) == 1
    shop.mark(code, "1", Act.START)
    shop.ring(at=NINE + 12 * HOUR)
    assert [type(one) for one, _ in heard] == [Outcome, Outcome, NoticeText, Raised, Outcome]


def test_a_question_changes_nothing(shop):
    code = shop.new()
    shop.mark(code, "1", Act.START)
    before = shop.studio.store.data_version(), shop.everything(), shop.records(code)
    for question in (q.LotLinesFor(), q.LotSheetFor(code), q.BenchFor(), q.TimelineFor(),
                     q.RemindersFor(), q.MethodsFor(), q.MilksFor(), q.StatusFor(),
                     q.TagsFor((code,)), q.SettingsFor()):  # fmt: skip
        assert shop.studio.ask(question) == shop.studio.ask(question)
    assert (shop.studio.store.data_version(), shop.everything(), shop.records(code)) == before


def test_all_is_there_after_closing_and_opening_again(shop, tmp_path, clock):
    code = shop.new()
    shop.walk_to(code, "dry-1")
    milk = shop.do(NewMilk(lots=(code,), litres=0.9)).code
    lot, records, alarm = shop.lot(code), shop.records(code), shop.studio.next_ring()
    shop.studio.close()
    again = open_workshop(tmp_path / "studio", clock)
    try:
        assert again.lot(code) == lot
        assert again.records(code) == records
        assert again.studio.next_ring() == alarm
        assert [line.code for line in again.studio.ask(q.MilksFor())] == [milk]
        assert again.studio.check() == []
    finally:
        again.studio.close()


@pytest.mark.parametrize(
    ("statement", "words"),
    [
        ("UPDATE step SET start = NULL, state = 'ahead' WHERE number = 1", "kept steps"),
        ("DELETE FROM step", "steps"),
        ("UPDATE lot SET name = 'another'", "kept line"),
        ("UPDATE lot SET last_number = 1", "older than its journal"),
        ("DELETE FROM milk", "M26-001"),
    ],
)
def test_what_lists_keep_is_worked_out_anew_from_the_journal(shop, statement, words):
    code = shop.new()
    shop.mark(code, "1", Act.START)
    shop.do(NewMilk(lots=(code,), litres=0.9))
    with shop.studio.store.reading() as look:
        before = look.lots.get(code), look.steps.of(code), look.milks.all()
    change_file(shop, statement)
    assert any(words in sentence for sentence in shop.studio.check())
    assert shop.studio.check(repair=True)
    assert shop.studio.check() == []
    with shop.studio.store.reading() as look:
        assert (look.lots.get(code), look.steps.of(code), look.milks.all()) == before


def test_working_out_anew_rings_nothing_again(shop):
    """That a reminder rang or was seen stands in no journal, and is not forgotten."""
    code = shop.new()
    shop.walk_to(code, "cure")
    shop.ring_on(shop.clock.at + 12 * DAY + 12 * HOUR)
    (key,) = [one.key for one in shop.studio.ask(q.BenchFor()).now if one.kind == "cure_mark"]
    shop.do(AnswerReminder(key, "done"))
    other = shop.new("second")
    shop.mark(other, "1", Act.START, at=shop.clock.at - 13 * HOUR)
    assert shop.ring_on(shop.clock.at + DAY)
    before = shop.records(code), shop.records(other)
    shop.studio.check(repair=True)
    again = shop.records(code), shop.records(other)
    assert [{key: one.status for key, one in lot.items()} for lot in again] == [
        {key: one.status for key, one in lot.items()} for lot in before
    ]
    assert not shop.ring(seconds=1)


def test_working_out_anew_keeps_what_is_said_of_milk(shop):
    code = shop.new()
    shop.walk_to(code, "dip-2")
    shop.do(NewMilk(lots=(code,), cold=False, made_at=shop.clock.at - 3 * HOUR))
    shop.clock.move(hours=2)
    shop.mark(code, "now", Act.NOTE, note="x")
    before = {key: one.status for key, one in shop.records(code).items()}
    assert any("use_by" in key for key in before)
    shop.studio.check(repair=True)
    assert {key: one.status for key, one in shop.records(code).items()} == before


def test_lost_reminders_are_worked_out_anew(shop):
    code = shop.new()
    shop.mark(code, "1", Act.START)
    before = shop.records(code)
    change_file(shop, "DELETE FROM reminder")
    shop.studio.check(repair=True)
    assert shop.records(code) == before


def test_a_method_keeps_the_version_a_lot_joined(shop):
    text = shipped_texts()[f"{LONG}.toml"]
    code = shop.new()
    newer = text.replace("version = 1", "version = 2", 1).replace('"12 h"', '"13 h"', 1)
    shop.do(ImportMethod(newer, "mine.toml"))
    second = shop.new()
    assert shop.lot(code).method.version == 1
    assert shop.lot(second).method.version == 2
    aims = [shop.lot(one).steps[0].spec.lasts.aim for one in (code, second)]
    assert aims == [12 * HOUR, 13 * HOUR]


def test_another_text_under_the_same_version_is_refused(shop):
    text = shipped_texts()[f"{LONG}.toml"].replace('"12 h"', '"13 h"', 1)
    book = dict(shop.studio.book)
    with pytest.raises(Refusal, match="raise the version"):
        shop.do(ImportMethod(text, "mine.toml"))
    assert shop.studio.book == book
    shop.do(ImportMethod(shipped_texts()[f"{LONG}.toml"], "same.toml"))


def test_what_was_not_written_is_not_in_force(shop, monkeypatch):
    """Settings and methods are taken over with the commit, not before."""
    shop.new()
    before = shop.studio.settings, dict(shop.studio.book)

    def fail(*_: object) -> None:
        raise OSError("no space left on device")

    monkeypatch.setattr(Desk, "settle", fail)
    with pytest.raises((OSError, Refusal)):
        shop.do(ChangeSettings({"quiet_start": "20:00"}))
    newer = shipped_texts()[f"{LONG}.toml"].replace("version = 1", "version = 2", 1)
    monkeypatch.setattr(Methods, "put", fail)
    with pytest.raises((OSError, Refusal)):
        shop.do(ImportMethod(newer, "mine.toml"))
    assert (shop.studio.settings, dict(shop.studio.book)) == before


def test_a_copy_a_day_is_kept(shop):
    shop.new()
    for _ in range(10):
        shop.clock.move(days=1)
        shop.do(RaiseDue())
    kept = sorted(path.name for path in (shop.studio.folder).rglob("day-*.sqlite3"))
    assert kept[-1] == "day-2026-06-19.sqlite3"
    assert len(kept) == 7


def test_many_acts_in_one_studio_stay_in_order(shop):
    code = shop.new()
    shop.mark(code, "1", Act.START)
    for number in range(40):
        shop.clock.move(minutes=2)
        shop.do(Mark(code, "1", Act.NOTE, note=str(number)))
    entries = shop.entries(code)
    assert [entry.number for entry in entries] == list(range(1, 43))
    assert [entry.note for entry in entries[2:]] == [str(number) for number in range(40)]


# -- clock and worker ----------------------------------------------------------------------


def test_a_hurried_clock_runs_at_its_pace_and_jumps_only_ahead():
    wall = [100.0]
    clock = HurriedClock(NINE, 600.0, "Europe/London", monotonic=lambda: wall[0])
    assert (clock.now(), clock.zone()) == (NINE, "Europe/London")
    wall[0] += 6.0
    assert clock.now() == NINE + HOUR
    assert clock.real(HOUR) == timedelta(seconds=6)
    clock.jump(NINE + 3 * HOUR)
    wall[0] += 6.0
    assert clock.now() == NINE + 4 * HOUR
    clock.jump(NINE)
    assert clock.now() == NINE + 4 * HOUR


def test_the_system_clock_gives_utc_and_a_zone():
    clock = SystemClock("Pacific/Auckland")
    assert clock.now().utcoffset() == timedelta(0)
    assert clock.zone() == "Pacific/Auckland"
    assert SystemClock().zone()
    assert clock.real(HOUR) == HOUR


def test_the_studio_works_on_one_thread_in_order(tmp_path):
    worker = ThreadWorker()
    threads: list[int] = []

    def make(number: int) -> str:
        threads.append(threading.get_ident())
        return shop.do(NewLot(LONG, f"lot {number}", PIECES)).code

    def opened():
        return open_workshop(tmp_path / "studio", HandClock(NINE))

    shop = worker.submit(opened).result()
    try:
        codes = [future.result() for future in [worker.submit(make, n) for n in range(5)]]
        assert codes == [f"26-00{n}" for n in range(1, 6)]
        assert len(set(threads)) == 1
        assert threading.get_ident() not in threads
        with pytest.raises(Refusal):
            worker.submit(shop.do, NewLot("none", "x", PIECES)).result()
    finally:
        worker.submit(shop.studio.close).result()
        worker.close()


def test_the_inline_worker_gives_errors_by_its_future():
    worker = InlineWorker()
    assert worker.submit(lambda: 5).result() == 5

    def fail() -> None:
        raise Refusal("No.")

    with pytest.raises(Refusal, match="No"):
        worker.submit(fail).result()
    worker.close()
