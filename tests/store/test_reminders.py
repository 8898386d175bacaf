"""Reminders on disk."""

from datetime import timedelta

import pytest

from studio_log.domain.errors import BadStudio
from studio_log.domain.journal import Act
from studio_log.store import plain
from studio_log.store.values import DeliveryRecord
from tests.store.examples import HOUR, NINE, a_lot, a_reminder, a_step


def test_a_reminder_comes_back_whole(store):
    record = a_reminder(
        step=3, why="aim reached", if_late="it goes blotchy", status="answered",
        raised_at=NINE, raise_count=2, last_rung_at=NINE + HOUR, answered_at=NINE + 2 * HOUR,
        answer=Act.END.value, void_at=NINE, void_why="stopped", channels=("desktop", "bar"),
        retold=True,
    )  # fmt: skip
    with store.work() as work:
        work.reminders.put(a_reminder())
        work.reminders.put(record)
        assert work.reminders.get(record.key) == record
        assert work.reminders.get("other") is None


def test_what_rings_and_when_next(store):
    with store.work() as work:
        assert work.reminders.next_at() is None
        work.reminders.put_all(
            [
                a_reminder("b", NINE),
                a_reminder("a", NINE - HOUR, status="raised"),
                a_reminder("c", NINE + HOUR),
                a_reminder("d", NINE - 3 * HOUR, status="answered"),
                a_reminder("e", NINE - 3 * HOUR, status="void"),
            ]
        )

        def keys(records):
            return [record.key for record in records]

        assert keys(work.reminders.due(NINE)) == ["a", "b"]
        assert keys(work.reminders.due(NINE - HOUR)) == ["a"]
        assert keys(work.reminders.due(NINE - 2 * HOUR)) == []
        assert work.reminders.next_at() == NINE - HOUR
        assert keys(work.reminders.open()) == ["a", "b", "c"]
        assert keys(work.reminders.raised()) == ["a"]
        assert len(work.reminders.of("26-001")) == 5


def test_since_gives_the_latest_change_first(store):
    with store.work() as work:
        work.reminders.put_all(
            a_reminder(key, updated_at=NINE + hours * HOUR)
            for key, hours in (("a", 0), ("b", 2), ("c", 1))
        )
        assert [one.key for one in work.reminders.since(NINE + HOUR)] == ["b", "c"]


def test_many_at_once_are_written_once_each(store):
    records = [a_reminder(f"k{number:04d}") for number in range(1000)]
    with store.work() as work:
        work.reminders.put_all(records[:700])
        work.reminders.put_all(a_reminder(one.key, urgency="now") for one in records)
        found = work.reminders.of("26-001")
    assert len(found) == 1000
    assert {one.urgency for one in found} == {"now"}


def test_the_next_moment_is_found_by_the_partial_index(file_store):
    with file_store.work() as work:
        work.reminders.put(a_reminder())
    line = plain.connect(file_store.path, "ro")
    steps = line.execute(
        "EXPLAIN QUERY PLAN SELECT min(rings_at) FROM reminder "
        "WHERE status IN ('waiting', 'raised')"
    ).fetchall()
    line.close()
    assert "ix_reminder_open_rings_at" in str(steps)


def test_what_rang_is_found_by_due_ring_answer_void_and_attempt(store):
    since, until = NINE, NINE + 2 * HOUR
    before, inside, after = NINE - HOUR, NINE + HOUR, NINE + 3 * HOUR
    with store.work() as work:
        work.reminders.put_all(
            [
                a_reminder("due", inside),
                a_reminder("ring", before, raised_at=inside, raise_count=1),
                a_reminder("again", before, raised_at=before, last_rung_at=inside, raise_count=2),
                a_reminder("answer", before, answered_at=inside),
                a_reminder("void", before, void_at=inside),
                a_reminder("attempt", before, raised_at=before, raise_count=2),
                a_reminder("ahead", after, void_at=inside),
                a_reminder("early", after, raised_at=inside, raise_count=1),
                a_reminder("long ago", before, raised_at=before, raise_count=1),
                a_reminder("tried", before),
            ]
        )
        work.deliveries.add(DeliveryRecord("attempt", inside, "desktop", ok=True))
        work.deliveries.add(DeliveryRecord("tried", inside, "desktop", ok=False))
        found, tries = work.reminders.that_rang(since, until, until)
    keys = [one.key for one in found]
    assert keys[:2] == ["early", "due"], "the latest due first"
    assert sorted(keys[2:]) == ["again", "answer", "attempt", "ring", "void"]
    assert [one[:4] for one in tries] == [("attempt", inside, "desktop", True)]


def test_what_rang_comes_with_its_names_and_every_moment_whole(store):
    moments = {
        name: NINE + number * HOUR
        for number, name in enumerate(
            ("raised_at", "last_rung_at", "answered_at", "void_at"), start=1
        )
    }
    kept = a_reminder(
        step=2, answer="tended", void_why="stopped", raise_count=3, channels=("desktop", "bar"),
        status="answered", **moments,
    )  # fmt: skip
    with store.work() as work:
        work.lots.put(a_lot(name="runners"))
        work.steps.replace("26-001", [a_step(2, title="First soak")])
        work.reminders.put_all([kept, a_reminder("studio/x", subject="studio")])
        found, tries = work.reminders.that_rang(NINE, NINE, NINE)
    whole = next(one for one in found if one.key == kept.key)
    assert (whole.name, whole.step) == ("runners", "First soak")
    assert {name: getattr(whole, name) for name in moments} == moments
    assert whole.due.utcoffset() == timedelta(0)
    same = ("due", "rings_at", "title", "answer", "void_why", "raise_count", "channels", "status")
    assert {name: getattr(whole, name) for name in same} == {
        name: getattr(kept, name) for name in same
    }
    assert next(one for one in found if one.key == "studio/x").name == ""
    assert tries == []


def test_a_moment_that_is_none_is_a_damaged_studio(file_store):
    with file_store.work() as work:
        work.reminders.put(a_reminder())
    line = plain.connect(file_store.path, "rw")
    line.execute("UPDATE reminder SET raised_at = 'yesterday', raise_count = 1")
    line.commit()
    line.close()
    with file_store.reading() as look, pytest.raises(BadStudio, match="cannot be read"):
        look.reminders.that_rang(NINE, NINE, NINE)
