"""The lot list with 20,000 lots: first rows, a keystroke, memory while scrolling; seen, too.

Prints each against its bar and, in the same run, against a plain SELECT or LIKE of sqlite3.
With --keep FOLDER the studio is left there, for looking at.
"""

import argparse
import gc
import os
import sqlite3
import sys
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parents[2]))

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QApplication
from sqlalchemy import insert, text

from studio_log.domain.journal import Act, Entry
from studio_log.domain.search_text import SORTS
from studio_log.services.search import FindLots, LotRowsFor
from studio_log.services.studio import Studio
from studio_log.services.worker import InlineWorker
from studio_log.store.journal import row_of
from studio_log.store.tables import ENTRY
from studio_log.store.work import Work
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.lot_list import LotList
from tests.speed.report import verdict
from tests.support.builders import NINE, shipped_texts
from tests.support.fixtures import Workshop, open_workshop
from tests.support.hand_clock import HandClock

FIBRES = ("linen", "cotton", "hemp", "ramie", "nettle")
NAMES = ("table runners", "shirt", "curtain for the stair", "napkins", "scarf", "apron")
TYPED = ("cotton", "cotton, over 250 g", "cotton, over 250 g, soyed once, cured over 3", "shelf 17",
         "brul", "26-17", "curtain sta")  # fmt: skip
STEP_COPY = text(
    'INSERT INTO step (lot, number, "order", slug, title, kind, state, start, "end", coat) '
    'SELECT :code, number, "order", slug, title, kind, state, start, "end", coat '
    "FROM step WHERE lot = :model"
)
LIKE = "SELECT * FROM lot WHERE search_text LIKE '%cotton%' ORDER BY code"
REMINDER_COLUMNS = (
    "step, kind, urgency, due, rings_at, title, why, if_late, status, raised_at, raise_count, "
    "last_rung_at, answered_at, answer, void_at, void_why, channels, retold, updated_at"
)
REMINDER_COPY = text(
    f"INSERT INTO reminder (key, subject, {REMINDER_COLUMNS}) "
    f"SELECT :code || substr(key, 7), :code, {REMINDER_COLUMNS} "
    "FROM reminder WHERE subject = :model"
)


def fill(shop: Workshop, count: int) -> None:
    """Copy a planned, a running, a curing and a used lot under many codes and names."""
    models = [shop.new() for _ in range(4)]
    shop.walk_to(models[3], "cure")
    shop.mark(models[3], "now", Act.USE)
    shop.walk_to(models[2], "cure")
    shop.mark(models[1], "1", Act.START)
    with shop.studio.store.work() as work:
        for number in range(len(models) + 1, count + 1):
            # A studio of many years: most of its lots were used long ago.
            place = 3 if number % 10 else number // 10 % 4
            copy(work, work.journal.of(models[place]), number)


def copy(work: Work, entries: tuple[Entry, ...], number: int) -> None:
    """Write one lot as its model is, with a cloth, a name, a weight and a note of its own."""
    code, model = f"26-{number:03d}", entries[0].subject
    fibre, grams = FIBRES[number % 5], 120.0 + number % 700
    new = entries[0].data
    pieces = [{**piece, "fibre": fibre} for piece in new["pieces"]]
    data = {**new, "name": f"{fibre} {NAMES[number % 6]} {number}", "pieces": pieces,
            "grams": grams, "place": f"shelf {number % 40}"}  # fmt: skip
    own = [replace(entry, subject=code) for entry in entries]
    own[0] = replace(own[0], data=data)
    own[-1] = replace(own[-1], note="smells of crème brûlée" if number % 50 == 0 else "even")
    # One by one: a trigger looks at the number of each.
    work._session.connection().execute(insert(ENTRY), [row_of(entry) for entry in own])
    line = work.lots.get(model)
    assert line is not None
    work.lots.put(
        replace(line, code=code, name=data["name"], fibre=fibre, grams=grams, place=data["place"],
                search_text=f"{code} {data['name']} {data['place']}")
    )  # fmt: skip
    for copied in (STEP_COPY, REMINDER_COPY):
        work._session.connection().execute(copied, {"code": code, "model": model})


def ms(act: Callable[[], object], times: int = 7) -> float:
    """Give the median milliseconds of an act."""
    taken = []
    for _ in range(times):
        before = perf_counter()
        act()
        taken.append((perf_counter() - before) * 1000)
    return median(taken)


def memory() -> float:
    """Give the memory in use by this process, in MB."""
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6


def measure(studio: Studio, path: Path) -> None:
    """Print what the list costs."""

    def first() -> None:
        studio.cache.clear()
        studio.ask(FindLots("", "all"))

    with closing(sqlite3.connect(path)) as line:
        plain = ms(lambda: line.execute("SELECT * FROM lot ORDER BY code LIMIT 30").fetchall())
        like = ms(lambda: line.execute(LIKE).fetchall())
    taken = ms(first)
    verdict("First rows of all", taken, 150, "ms", f"SELECT of 30 rows {plain:.2f} ms")
    costs = {}
    for typed in TYPED:
        for end in range(1, len(typed) + 1):
            costs[typed[:end]] = ms(lambda find=typed[:end]: studio.ask(FindLots(find)), 3)
    worst = max(costs, key=lambda find: costs[find])
    against = f"LIKE over all {like:.1f} ms, median {median(costs.values()):.1f} ms"
    verdict(f"Worst keystroke “{worst}”", costs[worst], 30, "ms", against)
    orders = {
        sort: ms(lambda by=sort: studio.ask(FindLots("cotton", "all", by)), 3) for sort in SORTS
    }
    slow = max(orders, key=lambda sort: orders[sort])
    median_of = f"median of {len(SORTS)} orders {median(orders.values()):.1f} ms"
    verdict(f"Worst order “{slow}” of a keystroke", orders[slow], 30, "ms", median_of)
    codes = studio.ask(FindLots("", "all")).codes

    def scroll() -> None:
        for at in range(0, len(codes), 100):
            studio.ask(LotRowsFor(codes[at : at + 20]))
        gc.collect()

    scroll()
    before = memory()
    scroll()
    grown = (memory() - before) / before * 100
    verdict("Memory grown by scrolling all", max(grown, 0.0), 2, "%", f"{before:.0f} MB before")


def measure_window(studio: Studio, clock: HandClock) -> None:
    """Print what the window's own thread does of it: what was found is laid out and painted."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    app = QApplication.instance() or QApplication([])
    answers = {
        typed[:end]: studio.ask(FindLots(typed[:end], "all"))
        for typed in TYPED
        for end in range(len(typed) + 1)
    }
    with closing(Bridge(InlineWorker(), studio, clock)) as bridge:
        lots = LotList(bridge)
        lots.resize(600, 800)
        lots.show()

        def seen(typed: str) -> None:
            lots._show(answers[typed])
            app.processEvents()
            lots.rows.viewport().repaint()

        for name, act in (("rows", lots.look.as_rows), ("a table", lots.look.as_table)):
            act.trigger()
            seen("")
            costs = {typed: ms(lambda find=typed: seen(find), 3) for typed in answers}
            worst = max(costs, key=lambda find: costs[find])
            said = f"median {median(costs.values()):.1f} ms"
            verdict(f"Worst keystroke shown as {name}, “{worst}”", costs[worst], 30, "ms", said)
            seen("")
            scrolled(lots, app)
            before = memory()
            scrolled(lots, app)
            grown = (memory() - before) / before * 100
            verdict(f"Memory grown by scrolling {name}", max(grown, 0.0), 2, "%", "of all lots")


def scrolled(lots: LotList, app: QCoreApplication) -> None:
    """Scroll from the first lot to the last in 300 leaps, each seen."""
    bar = lots.rows.verticalScrollBar()
    for leap in range(301):
        bar.setValue(bar.maximum() * leap // 300)
        app.processEvents()
    gc.collect()


def main() -> int:
    """Fill a studio and measure."""
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("--lots", type=int, default=20_000)
    words.add_argument("--keep", type=Path)
    given = words.parse_args()
    with TemporaryDirectory() as spare:
        folder = given.keep or Path(spare) / "studio"
        shop = open_workshop(folder, HandClock(NINE))
        fill(shop, given.lots)
        shop.studio.close()
        studio = Studio(folder, shop.clock, shipped_texts(), {})
        measure(studio, folder / "studio.sqlite3")
        measure_window(studio, shop.clock)
        studio.close()
    return 0


if __name__ == "__main__":
    sys.exit(main())
