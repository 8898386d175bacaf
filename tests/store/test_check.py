"""A look through a whole studio finds what is wrong and names it."""

import re
from contextlib import closing

import pytest

from studio_log.domain.journal import Act
from studio_log.store import check, plain
from tests.store.examples import a_reminder, an_entry, fill


@pytest.fixture
def store(file_store):
    """Give the file: what is tested here is its own."""
    return file_store


def test_a_sound_studio_has_nothing_wrong(store):
    assert check.check(store) == []
    fill(store)
    assert check.check(store) == []


FREE = "DROP TRIGGER entry_no_update"
OPEN = "DROP TRIGGER entry_no_delete"
WRONG = [
    (
        [OPEN, "DELETE FROM entry WHERE subject = '26-002' AND number = 3"],
        "not all entries of 26-002",
    ),
    ([FREE, "UPDATE entry SET data = '{' WHERE subject = '26-002'"], "entry 1 of 26-002"),
    ([FREE, "UPDATE entry SET act = 'dance' WHERE subject = '26-003'"], "entry 1 of 26-003"),
    ([FREE, "UPDATE entry SET note = 'x' WHERE subject = '26-003'"], "entry 1 of 26-003"),
    (["DELETE FROM lot WHERE code = '26-001'"], "Lot 26-001 is missing"),
    (["DELETE FROM milk"], "Milk M26-001 is missing"),
    (["DELETE FROM step WHERE lot = '26-001'"], "26-001 has no steps"),
    (["UPDATE lot SET last_number = 4 WHERE code = '26-001'"], "26-001 is older"),
    (["UPDATE lot SET code = '26-009' WHERE code = '26-001'"], "26-009.*no journal"),
    (
        ["PRAGMA foreign_keys = OFF", "UPDATE step SET lot = 'x' WHERE lot = '26-001'"],
        "of step hangs on a lot",
    ),
    (["UPDATE lot SET begun_at = 'noon' WHERE code = '26-001'"], "begun_at of line 1 of lot"),
    (["UPDATE reminder SET rings_at = '' WHERE subject = '26-002'"], "rings_at of line 2"),
    (["UPDATE reminder SET channels = '{'"], "reminder 26-001/1/ready cannot|reminder 26-001"),
    (["UPDATE setting SET value = 'Harbour'"], "setting studio"),
    (["UPDATE method SET text = 'x'"], "version 1 of method soak-long"),
    (["UPDATE reminder SET subject = '26-555' WHERE subject = '26-002'"], "about 26-555"),
]


@pytest.mark.parametrize(("statements", "words"), WRONG)
def test_what_is_wrong_is_named(store, statements, words):
    fill(store)
    with closing(plain.connect(store.path, "rw")) as line:
        for statement in statements:
            line.execute(statement)
    found = check.check(store)
    assert found
    assert any(re.search(words, sentence) for sentence in found), found
    assert all(sentence.endswith(".") for sentence in found)


def test_an_act_on_nothing_is_named(store):
    with store.work() as work:
        work.journal.append(an_entry(act=Act.UNDO, target=7))
    assert any("acts on an entry that is not before it" in one for one in check.check(store))


def test_an_index_that_disagrees_is_found(store):
    fill(store)
    with closing(plain.connect(store.path, "rw")) as line:
        line.execute("PRAGMA writable_schema = ON")
        line.execute(
            "UPDATE sqlite_master SET sql = 'CREATE INDEX ix_lot_ended ON lot (name)' "
            "WHERE name = 'ix_lot_ended'"
        )
    assert any("ix_lot_ended" in one for one in check.check(store))


def test_checking_changes_nothing(store):
    fill(store)
    with store.work() as work:
        work.reminders.put(a_reminder(subject="26-404"))
    before = store.data_version(), store._line._line.total_changes
    assert len(check.check(store)) == 1
    assert (store.data_version(), store._line._line.total_changes) == before
