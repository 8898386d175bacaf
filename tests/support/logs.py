"""Which warnings a test let the program write to its log."""

import contextlib
import logging
from collections.abc import Iterator

from typing_extensions import override


class Listening(logging.Handler):
    """Keeps every record from WARNING upwards as a line."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.lines: list[str] = []

    @override
    def emit(self, record: logging.LogRecord) -> None:
        self.lines.append(f"{record.levelname} {record.name}: {record.getMessage()}")


@contextlib.contextmanager
def listening() -> Iterator[list[str]]:
    """Give the list to which every warning of the whole program is added meanwhile."""
    handler = Listening()
    root = logging.getLogger()
    root.addHandler(handler)
    try:
        yield handler.lines
    finally:
        root.removeHandler(handler)
