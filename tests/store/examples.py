"""Values and a filled studio for the tests of the store."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

from studio_log.domain.journal import Act, Entry
from studio_log.store.database import Store, open_store
from studio_log.store.values import LotLine, MilkLine, ReminderRecord, StepLine

NINE = datetime(2026, 6, 9, 9, 0, tzinfo=UTC)
HOUR = timedelta(hours=1)


def an_entry(subject="26-001", act=Act.NOTE, at=NINE, **rest):
    return Entry(subject, act, at, rest.pop("written", at), rest.pop("zone", "UTC"), **rest)


def a_lot(code="26-001", **rest):
    values = {"name": "runners", "state_hint": "in-work", "updated_at": NINE, "last_number": 1}
    return LotLine(code, **(values | rest))


def a_step(number=1, lot="26-001", **rest):
    values = {"order": number, "slug": f"s{number}", "title": "Soak", "kind": "soak"}
    return StepLine(lot, number, **({"state": "ahead"} | values | rest))


def a_reminder(key="26-001/1/ready", rings_at=NINE, **rest):
    values = {
        "subject": "26-001",
        "kind": "ready",
        "urgency": "soon",
        "due": rings_at,
        "title": "Lift the cloth",
        "updated_at": NINE,
    }
    return ReminderRecord(key, rings_at=rings_at, **(values | rest))


def fill(store: Store, lots: int = 3, entries: int = 5) -> None:
    """Write lots with steps and a milk, whole and in agreement."""
    with store.work() as work:
        for lot in range(1, lots + 1):
            code = f"26-{work.next_code('lot', 2026):03d}"
            work.journal.append(an_entry(code, Act.NEW, data={"name": f"cloth {lot}"}))
            for count in range(1, entries):
                note = f"turned {count} times, é"
                at = NINE + count * HOUR
                work.journal.append(an_entry(code, Act.TEND, at, step=1, note=note))
            work.lots.put(a_lot(code, last_number=entries, search_text=f"{code} Cloth {lot}"))
            work.steps.replace(code, [a_step(1, code), a_step(2, code)])
            work.reminders.put(a_reminder(f"{code}/1/ready", subject=code))
        work.journal.append(an_entry("M26-001", Act.MILK_NEW, data={"litres": 0.9}))
        work.milks.put(MilkLine("M26-001", litres=0.9, lots=("26-001",)))
        work.methods.put("soak-long", 1, "long soak", 'title = "long soak"\n')
        work.settings.put("studio", "Harbour Lane Cloth Studio")


def filled_folder(folder: Path, **size: int) -> Path:
    """Make a filled studio and close it, so that its file is whole without companions."""
    with open_store(folder) as store:
        fill(store, **size)
    return folder


def entries_in(store: Store) -> list[Entry]:
    with store.reading() as look:
        return [entry for code in look.journal.subjects() for entry in look.journal.of(code)]
