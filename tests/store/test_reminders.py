"""Reminders on disk."""

from studio_log.domain.journal import Act
from studio_log.store import plain
from tests.store.examples import HOUR, NINE, a_reminder


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


def test_the_next_moment_is_found_by_the_partial_index(store):
    with store.work() as work:
        work.reminders.put(a_reminder())
    line = plain.connect(store.path, "ro")
    steps = line.execute(
        "EXPLAIN QUERY PLAN SELECT min(rings_at) FROM reminder "
        "WHERE status IN ('waiting', 'raised')"
    ).fetchall()
    line.close()
    assert "ix_reminder_open_rings_at" in str(steps)
