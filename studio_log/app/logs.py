"""The program's own log: a small file of faults, without notes or names.

What an exception says may quote what was typed: SQLAlchemy's holds the values of a statement, a
refusal the name of a lot. So only its kind and the places it passed are written down.
"""

import logging
import logging.handlers
import sqlite3
import traceback
from collections.abc import Iterator
from types import TracebackType
from typing import Final

from typing_extensions import override

from studio_log.app.paths import log_folder

LARGEST = 500_000
"""Bytes a log file may have before a new one begins; two are kept."""
OURS: Final = "studio_log"
MOST_CAUSES: Final = 8


class FaultFormatter(logging.Formatter):
    """Writes where a fault arose and of what kind it was, never what it says."""

    @override
    def format(self, record: logging.LogRecord) -> str:
        # Another handler may have written the exception already, with its words.
        kept, record.exc_text = record.exc_text, None
        try:
            return super().format(record)
        finally:
            record.exc_text = kept

    @override
    def formatMessage(self, record: logging.LogRecord) -> str:
        if not record.name.startswith(OURS):
            # What a library fills into its words may be ours.
            record.message = str(record.msg) if record.args else f"{record.levelname.lower()} told"
        return super().formatMessage(record)

    @override
    def formatException(
        self,
        ei: tuple[type[BaseException], BaseException, TracebackType | None]
        | tuple[None, None, None],
    ) -> str:
        return "\n".join(_told(ei[1])) if ei[1] is not None else ""

    @override
    def formatStack(self, stack_info: str) -> str:
        return ""


def _told(error: BaseException) -> Iterator[str]:
    """Tell an exception and those behind it, the first cause first."""
    chain: list[BaseException] = []
    one: BaseException | None = error
    while one is not None and one not in chain and len(chain) < MOST_CAUSES:
        chain.append(one)
        one = one.__cause__ or one.__context__
    for one in reversed(chain):
        for frame in traceback.extract_tb(one.__traceback__):
            yield f"  {frame.filename}:{frame.lineno} in {frame.name}"
        yield _kind(one)


def _kind(error: BaseException) -> str:
    kind = f"{type(error).__module__}.{type(error).__qualname__}"
    if isinstance(error, sqlite3.Error):
        return f"{kind} {getattr(error, 'sqlite_errorname', '')}".strip()
    if isinstance(error, OSError) and error.errno is not None:
        return f"{kind} errno {error.errno}"
    return kind


def start_logging() -> str:
    """Write warnings and faults to a file; give its path, or "" where none can be written."""
    try:
        folder = log_folder()
        folder.mkdir(parents=True, exist_ok=True)
        path = folder / "studio-log.log"
        handler = logging.handlers.RotatingFileHandler(
            path, maxBytes=LARGEST, backupCount=1, encoding="utf-8", delay=True
        )
    except OSError:
        return ""
    handler.setFormatter(FaultFormatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    root = logging.getLogger()
    root.addHandler(handler)
    root.setLevel(logging.WARNING)
    return str(path)
