"""The journal on disk: gapless numbers, whole entries, nothing changed afterwards."""

import sqlite3
from dataclasses import replace
from datetime import UTC, datetime, timedelta, timezone

import psycopg
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy.exc import StatementError

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.domain.journal import Act
from studio_log.store import plain
from tests.store.examples import HOUR, NINE, an_entry


def test_entries_come_back_as_they_were_written(store):
    entry = an_entry(
        act=Act.TEND, step=4, note="turned — twice\n“é” 🧵", zone="Europe/Lisbon",
        written=NINE + HOUR, readings={"temperature": 21.5, "look": "even"},
        data={"pieces": [1, 2], "deep": {"a": None, "b": True}}, target=1,
    )  # fmt: skip
    with store.work() as work:
        given_back = work.journal.append(entry)
    assert given_back == replace(entry, number=1)
    with store.reading() as look:
        assert look.journal.of("26-001") == (given_back,)


def test_each_subject_counts_from_one(store):
    with store.work() as work:
        numbers = [
            work.journal.append(an_entry(code)).number for code in ("26-001", "26-002", "26-001")
        ]
    assert numbers == [1, 1, 2]


def test_instants_come_back_in_utc_to_the_microsecond(store):
    at = datetime(2026, 10, 25, 2, 30, 0, 123456, tzinfo=timezone(timedelta(hours=2)))
    with store.work() as work:
        work.journal.append(an_entry(at=at))
    with store.reading() as look:
        (entry,) = look.journal.of("26-001")
    assert entry.at == at
    assert entry.at.utcoffset() == timedelta(0)
    assert entry.at.hour == 0


def test_a_moment_without_a_zone_is_refused_and_nothing_written(store):
    with pytest.raises(StatementError), store.work() as work:
        work.journal.append(an_entry(at=datetime(2026, 6, 9, 9, 0)))  # noqa: DTZ001
    with store.reading() as look:
        assert look.journal.subjects() == ()


def test_an_error_takes_all_of_the_work_back(store):
    def write_and_fail():
        with store.work() as work:
            work.journal.append(an_entry())
            work.settings.put("studio", "x")
            raise KeyError

    with pytest.raises(KeyError):
        write_and_fail()
    with store.reading() as look:
        assert look.journal.of("26-001") == ()
        assert look.settings.all() == {}


def test_bytes_that_are_no_text_are_refused(store):
    with pytest.raises(Refusal, match="no text"), store.work() as work:
        work.journal.append(an_entry(note="turned \udcff"))
    with store.reading() as look:
        assert look.journal.subjects() == ()


def test_a_nul_sign_is_kept_by_a_file_and_refused_by_a_server(file_store, store):
    """PostgreSQL's text holds none (its documentation, 8.3 Character Types)."""
    entry = an_entry(note="turned \x00")
    with file_store.work() as work:
        assert work.journal.append(entry).note == entry.note
    if store is file_store:
        return
    with pytest.raises(Refusal, match="no text"), store.work() as work:
        work.journal.append(entry)


def test_questions_about_the_whole_journal(store):
    with store.work() as work:
        assert work.journal.last_written() is None
        assert work.journal.mark() == 0
        work.journal.append(an_entry("26-001", written=NINE + HOUR))
        mark = work.journal.mark()
        work.journal.append(an_entry("M26-001", Act.MILK_NEW))
        work.journal.append(an_entry("26_001"))
    with store.reading() as look:
        assert look.journal.subjects() == ("26-001", "26_001", "M26-001")
        assert look.journal.subjects("M") == ("M26-001",)
        assert look.journal.subjects("26_") == ("26_001",), "a low line is no wildcard"
        assert look.journal.last_written() == NINE, "of the last entry, not the latest moment"
        assert look.journal.touched_since(mark) == ("26_001", "M26-001")
        assert look.journal.touched_since(look.journal.mark()) == ()
        many = look.journal.of_many(["26-001", "M26-001", "none"])
        assert {code: len(entries) for code, entries in many.items()} == {
            "26-001": 1,
            "M26-001": 1,
        }


REST = "act, at, written, zone, step, 'x', readings, data, target, seal FROM entry"


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE entry SET note = 'other'",
        "DELETE FROM entry",
        "INSERT OR REPLACE INTO entry SELECT * FROM entry",
        f"INSERT OR REPLACE INTO entry SELECT 99, subject, number, {REST}",
        f"INSERT OR REPLACE INTO entry SELECT id, '26-002', number, {REST}",
        f"INSERT INTO entry SELECT 99, subject, 3, {REST}",
    ],
)
def test_sqlite_itself_refuses_to_change_an_entry(file_store, statement):
    with file_store.work() as work:
        written = work.journal.append(an_entry(note="as it was"))
    line = plain.connect(file_store.path, "rw")
    with pytest.raises(sqlite3.IntegrityError, match="entr"):
        line.execute(statement)
    line.close()
    with file_store.reading() as look:
        assert look.journal.of("26-001") == (written,)


@pytest.mark.parametrize(
    "statement",
    ["UPDATE entry SET note = 'other'", "DELETE FROM entry", "DELETE FROM entry WHERE number = 1"],
)
def test_a_server_refuses_to_change_an_entry(databases, tmp_path, statement):
    with databases.emptied(tmp_path) as server:
        with server.work() as work:
            written = work.journal.append(an_entry(note="as it was"))
        with psycopg.connect(databases.common) as line:
            with pytest.raises(psycopg.errors.RaiseException, match="entries are never"):
                line.execute(statement)
            line.rollback()
            with pytest.raises(psycopg.errors.RaiseException, match="takes the next number"):
                line.execute(
                    "INSERT INTO entry SELECT 99, subject, 3, act, at, written, zone, step, 'x', "
                    "readings, data, target, seal, 0 FROM entry"
                )
        with server.reading() as look:
            assert look.journal.of("26-001") == (written,)


CHANGES = [
    "note = 'turnee'",
    "at = '2026-06-09 09:00:01.000000'",
    "at = 'yesterday'",
    "at = 7",
    "act = 'dance'",
    "act = NULL",
    "readings = '{\"a\": '",
    "readings = '[]'",
    "data = 'null'",
    "data = x'ff'",
    "note = CAST(x'ff' AS TEXT)",
    "step = 5",
    "zone = 'Mars'",
    "target = 1",
]


@pytest.mark.parametrize("change", CHANGES)
def test_an_entry_spoiled_on_the_disk_is_never_given(file_store, change):
    with file_store.work() as work:
        work.journal.append(an_entry(note="turned"))
    line = plain.connect(file_store.path, "rw")
    line.execute("DROP TRIGGER entry_no_update")
    line.execute("PRAGMA ignore_check_constraints = ON")
    line.execute(f"UPDATE entry SET {change}" if "NULL" not in change else "SELECT 1")
    if "NULL" in change:
        line.execute("PRAGMA writable_schema = ON")
        line.execute("UPDATE sqlite_master SET sql = replace(sql, 'act VARCHAR NOT NULL', "
                     "'act VARCHAR') WHERE name = 'entry'")  # fmt: skip
        line.execute("PRAGMA writable_schema = RESET")
        line.execute(f"UPDATE entry SET {change}")
    line.close()
    with pytest.raises(BadStudio, match="damaged"), file_store.reading() as look:
        look.journal.of("26-001")


plain_json = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**60), 2**60) | st.text()
    | st.floats(allow_nan=False, allow_infinity=False),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)  # fmt: skip


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture],
          deadline=None)  # fmt: skip
@given(
    note=st.text(st.characters(exclude_characters="\x00", exclude_categories=["Cs"])),
    data=st.dictionaries(st.text(), plain_json, max_size=4),
    at=st.datetimes(datetime(2000, 1, 1), datetime(2100, 1, 1), timezones=st.just(UTC)),  # noqa: DTZ001
)
def test_whatever_an_entry_says_comes_back(store, note, data, at):
    with store.work() as work:
        written = work.journal.append(an_entry(note=note, data=data, at=at))
    with store.reading() as look:
        assert look.journal.of("26-001")[-1] == written
        assert written.data == data
