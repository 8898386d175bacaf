"""Twenty laptops at once on one studio: no entry lost, no deadlock, how long an act takes.

    STUDIO_LOG_TEST_POSTGRES=postgresql://… python tests/speed/laptops.py [CLIENTS] [ACTS]

Each client is a process of its own with a folder of its own, marks acts on lots that all of
them share, and waits PAUSE seconds between two acts (0: as fast as it can). Printed: median,
95th percentile and worst time of an act, from asking until this laptop shows it, against the
same acts on a file by one process in the same run.
"""

import multiprocessing as mp
import shutil
import statistics
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from studio_log.domain.journal import Act
from studio_log.services.clock import SystemClock
from studio_log.services.commands import Mark, NewLot
from studio_log.services.studio import Studio
from studio_log.store.database import open_store
from studio_log.store.link import Link, write_link
from studio_log.store.moving_in import move_in
from studio_log.store.server import open_server
from tests.support.builders import LONG, shipped_texts
from tests.support.fixtures import PIECES
from tests.support.servers import Databases, Known, typed

LOTS = 10


def opened(folder: Path, password: str = "") -> Studio:
    return Studio(folder, SystemClock(), shipped_texts(), {}, Known(password))


def acts(studio: Studio, codes: list[str], count: int, name: str, pause: float) -> list[float]:
    """Note something on each lot in turn; gives how long each act took, in seconds."""
    took = []
    for number in range(count):
        begun = time.perf_counter()
        code = codes[number % len(codes)]
        studio.do(Mark(code, "1", Act.NOTE, note=f"{name} {number}"))
        took.append(time.perf_counter() - begun)
        time.sleep(pause)  # waits as a person does between two acts
    return took


@dataclass(frozen=True)
class Round:
    """What every client does, and where it meets the others."""

    codes: list[str]
    count: int
    pause: float
    password: str
    gate: Any
    out: Any


def client(folder: str, name: str, of: Round) -> None:
    studio = opened(Path(folder), of.password)
    of.gate.wait()
    of.out.put(acts(studio, of.codes, of.count, name, of.pause))
    studio.close()


def told(words: str, took: list[float]) -> float:
    ordered = sorted(took)
    p95 = ordered[int(len(ordered) * 0.95)]
    print(
        f"{words}: {len(took)} acts, median {statistics.median(took) * 1e3:.1f} ms, "
        f"p95 {p95 * 1e3:.1f} ms, worst {ordered[-1] * 1e3:.1f} ms"
    )
    return p95


def main(clients: int, count: int, pause: float) -> None:
    databases = Databases()
    scratch = Path(tempfile.mkdtemp(prefix="studio-log-laptops-"))
    try:
        run(databases.new(), scratch, clients, count, pause)
    finally:
        databases.close()
        shutil.rmtree(scratch, ignore_errors=True)


def run(address: str, scratch: Path, clients: int, count: int, pause: float) -> None:
    found = typed(address)
    first = opened(scratch / "first")
    codes = [first.do(NewLot(LONG, f"lot {n}", PIECES)).code for n in range(LOTS)]
    first.close()
    shutil.copytree(scratch / "first", scratch / "alone")
    with (
        open_store(scratch / "first") as local,
        open_server(found.address, Known(found.password), scratch, create=True) as server,
    ):
        move_in(local, server, lambda _done, _all: None)
    alone = opened(scratch / "alone")
    before = told("one laptop, its own file", acts(alone, codes, count, "alone", 0))
    alone.close()
    write_link(scratch / "first", Link(found.address))
    one = opened(scratch / "first", found.password)
    told("one laptop, the server", acts(one, codes, count, "one", 0))
    of = Round(codes, count, pause, found.password, mp.Barrier(clients + 1), mp.Queue())
    took, spent = together(scratch, Link(found.address), clients, of)
    p95 = told(f"{clients} laptops at once, pause {pause:g} s", took)
    one.store.catch_up()
    with one.store.reading() as look:
        notes = [e for code in codes for e in look.journal.of(code) if e.act is Act.NOTE]
    wanted = (clients + 1) * count
    print(f"entries {len(notes)} of {wanted}; {len(took) / spent:.0f} acts a second; "
          f"p95 against a file {p95 / before:.1f}")  # fmt: skip
    print("\n".join(one.check()[:5]) or "nothing amiss")
    one.close()


def together(scratch: Path, link: Link, clients: int, of: Round) -> tuple[list[float], float]:
    """Let all clients act at once; gives how long each act took, and all of them."""
    people = []
    for number in range(clients):
        folder = scratch / f"laptop-{number}"
        write_link(folder, link)
        people.append(mp.Process(target=client, args=(str(folder), f"laptop {number}", of)))
        people[-1].start()
    of.gate.wait()
    begun = time.perf_counter()
    took = [one for _ in people for one in of.out.get()]
    for person in people:
        person.join()
    return took, time.perf_counter() - begun


if __name__ == "__main__":
    main(
        int(sys.argv[1]) if len(sys.argv) > 1 else 20,
        int(sys.argv[2]) if len(sys.argv) > 2 else 50,
        float(sys.argv[3]) if len(sys.argv) > 3 else 0.0,
    )
