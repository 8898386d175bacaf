"""How long 10,000 open reminders take: brought into line, and looked through for what rings.

Beside them, in the same run, what the same number of rows costs at the least: copying as many
frozen values, and reading as many rows with Python's own sqlite3.
"""

import argparse
import sqlite3
import sys
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parents[2]))

from studio_log.domain.reminders import (
    Cause,
    Fate,
    Kind,
    Record,
    Reminder,
    Urgency,
    reconcile,
)
from studio_log.services.records import record_to_store
from tests.speed.report import verdict
from tests.support.builders import NINE
from tests.support.fixtures import Workshop, open_workshop
from tests.support.hand_clock import HandClock

COUNT, ROUNDS, BAR_MS = 10_000, 15, 100.0
A_LOT_HAS = 25


def reminder(number: int, ahead: timedelta) -> Reminder:
    """Give one of many reminders: number, and how far ahead it falls due."""
    lot, step = f"26-{1 + number // A_LOT_HAS:03d}", 1 + number % A_LOT_HAS
    due = NINE + ahead + timedelta(minutes=number % 6000)
    kind = (Kind.TEND, Kind.READY, Kind.IS_DRY, Kind.LAST_CALL)[number % 4]
    return Reminder(
        f"{lot}/{step}/{kind}", lot, step, kind, Urgency.SOON, due, due,
        f"Stir {lot} runners", "It is due.", "Folds dye as lines.",
    )  # fmt: skip


def mixed(count: int) -> tuple[list[Reminder], list[Record]]:
    """Give reminders and records: of each four one unchanged, one moved, one new, one gone.

    Half of those unchanged have rung already.
    """
    ahead, worked_out, kept = timedelta(hours=1), [], []
    for number in range(count + count // 3):
        fate, rung = number % 4, number % 8 == 0
        one = reminder(number, -timedelta(days=9) if rung else ahead)
        if fate != 2:
            before = replace(one, due=one.due - ahead / 2) if fate == 1 else one
            kept.append(Record(before, Fate.RAISED, NINE, 2, NINE) if rung else Record(before))
        if fate != 3:
            worked_out.append(one)
    return worked_out[:count], kept[:count]


def timed(act: Callable[[], object], rounds: int) -> float:
    """Give the median milliseconds of a call."""
    taken = []
    for _ in range(rounds):
        before = perf_counter()
        act()
        taken.append((perf_counter() - before) * 1000)
    return median(taken)


def in_line(count: int, rounds: int) -> str:
    """Time `reconcile`."""
    worked_out, kept = mixed(count)
    fates = {"changed": 0, "void": 0}
    for one in reconcile(worked_out, kept, NINE, Cause()):
        fates["void" if one.fate is Fate.VOID else "changed"] += 1
    least = timed(lambda: [replace(one, times=3) for one in kept], rounds)
    took = timed(lambda: reconcile(worked_out, kept, NINE, Cause()), rounds)
    told = f"{fates['changed']} new or moved, {fates['void']} gone"
    against = f"{took / least:.1f} times copying as many records, {least:.1f} ms; {told}"
    return verdict(f"{count} reminders brought into line", took, BAR_MS, "ms", against)


def looked_through(shop: Workshop, count: int, rounds: int) -> list[str]:
    """Time the questions that every alarm asks of a table with so many open rows."""
    records = [record_to_store(Record(reminder(n, timedelta(hours=1))), NINE) for n in range(count)]
    with shop.studio.store.work() as work:
        work.reminders.put_all(records)
    file = shop.studio.folder / "studio.sqlite3"
    with sqlite3.connect(file) as plain:
        least = timed(lambda: plain.execute("select * from reminder").fetchall(), rounds)
    plain.close()
    told = f"reading every row plainly {least:.1f} ms"

    def due() -> None:
        with shop.studio.store.reading() as look:
            look.reminders.due(shop.clock.at)

    lines = []
    for ahead, name in ((0, "none"), (60 + count // 10, f"{count // 10}")):
        shop.clock.move(minutes=ahead)
        lines.append(verdict(f"due, {name} of {count}", timed(due, rounds), BAR_MS, "ms", told))
    shop.clock.set(NINE)
    took = timed(shop.studio.next_ring, rounds)
    return [verdict(f"next_ring, {count} open", took, BAR_MS, "ms", told), *lines]


def main(argv: list[str] | None = None) -> list[str]:
    """Measure; gives the lines that were printed."""
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--seconds", type=float, help="measure about so long")
    words.add_argument("--count", type=int, default=COUNT)
    options = words.parse_args(argv)
    rounds = ROUNDS if options.seconds is None else max(1, int(options.seconds / 0.5))
    lines = [in_line(options.count, rounds)]
    with TemporaryDirectory(prefix="studio-log-speed-") as home:
        shop = open_workshop(Path(home) / "studio", HandClock(NINE))
        try:
            lines += looked_through(shop, options.count, rounds)
        finally:
            shop.studio.close()
    return lines


if __name__ == "__main__":
    main()
