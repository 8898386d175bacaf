"""The program's log holds neither notes nor names: canary words are looked for in it."""

import logging
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from studio_log.app.logs import start_logging
from studio_log.domain.errors import BadStudio, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import Mark
from studio_log.services.worker import ThreadWorker
from studio_log.store.tables import ENTRY
from tests.support.fixtures import Workshop

CANARY = "Kanarienvogel"
"""Stands for whatever a dyer types."""


@pytest.fixture
def log(caplog: pytest.LogCaptureFixture) -> Iterator[Path]:
    """The log file of the program, as it is begun at its start; its warnings are announced."""
    root = logging.getLogger()
    before, level = list(root.handlers), root.level
    path = Path(start_logging())
    yield path
    for handler in set(root.handlers) - set(before):
        root.removeHandler(handler)
        handler.close()
    root.setLevel(level)
    caplog.clear()


def failing(task) -> None:
    """Have the worker run a task that nobody waits for."""
    worker = ThreadWorker()
    worker.hand_on(task)
    worker.close()


def test_a_statement_that_fails_is_told_without_its_values(shop: Workshop, log: Path):
    """Two faults of the database: one that is caught as damage, one that nobody foresaw."""
    code = shop.new(CANARY)
    with closing(sqlite3.connect(shop.studio.store.path, isolation_level=None)) as line:
        line.execute("DROP TABLE step")
    failing(lambda: shop.do(Mark(code, "1", Act.NOTE, note=f"{CANARY} typed")))

    def unforeseen() -> None:
        with shop.studio.store.work() as work:
            row = dict.fromkeys(("subject", "act", "zone", "note"), CANARY)
            work._session.execute(ENTRY.insert(), [{**row, "number": CANARY}])

    failing(unforeseen)
    told = log.read_text("utf-8")
    assert "a task of the studio failed" in told
    assert told.count("sqlite3.") + told.count("sqlalchemy.") >= 1
    assert "in do" in told, "where it failed is told"
    assert CANARY not in told


@pytest.mark.parametrize(
    "error",
    [Refusal(f"There is no lot {CANARY}."), BadStudio(CANARY), KeyError(CANARY),
     ValueError(f"{CANARY}: no date"), OSError(2, "No such file", f"/home/{CANARY}/x")],
    ids=lambda error: type(error).__name__,
)  # fmt: skip
def test_what_an_exception_says_is_not_told_nor_what_is_behind_it(log: Path, error: Exception):
    def fails() -> None:
        try:
            raise error
        except Exception as cause:
            raise RuntimeError(f"because of {CANARY}") from cause

    failing(fails)
    told = log.read_text("utf-8")
    assert type(error).__name__ in told
    assert "RuntimeError" in told
    assert "in fails" in told
    assert CANARY not in told


def test_what_a_library_fills_into_its_words_is_left_out(log: Path):
    logging.getLogger("some.library").warning("could not read %s", CANARY)
    logging.getLogger("some.library").error("could not read " + CANARY)  # noqa: G003 - as some do
    told = log.read_text("utf-8")
    assert "could not read %s" in told
    assert "some.library" in told
    assert CANARY not in told
