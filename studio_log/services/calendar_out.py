"""Putting the plan into a calendar's file: once where the dyer says, or each time it changes."""

import threading
from pathlib import Path
from typing import Final

from studio_log.language.words import counted, tr_later
from studio_log.services.calendar import CalendarAhead
from studio_log.services.calendar_file import calendar_bytes
from studio_log.services.calendar_memory import keep_memory, read_memory, tell
from studio_log.services.whole_file import write_whole

FILE_IN_FOLDER: Final = "studio-log.ics"
"""What the file is called where a folder was chosen."""

_turn = threading.Lock()
"""One at a time: what was told last is read, changed and kept again."""


def write_calendar(ahead: CalendarAhead, to: Path) -> str:
    """Write what is ahead to a file, whole; gives words for the person.

    A file that says the same already is left as it is, with its date. Refusal where it cannot
    be written.
    """
    with _turn:
        memory = read_memory(ahead.folder)
        told, after = tell(ahead.events, memory, ahead.now, ahead.floors, ahead.covered)
        data = calendar_bytes(told, ahead.name)
        if not _says(to, data):
            write_whole(to, data)
        if after != memory:
            keep_memory(ahead.folder, after)
    return counted(
        len(ahead.events),
        tr_later("1 event of the plan is in {file}."),
        tr_later("{n} events of the plan are in {file}."),
        file=to,
    )


def _says(path: Path, data: bytes) -> bool:
    try:
        return path.stat().st_size == len(data) and path.read_bytes() == data
    except OSError:
        return False


def file_in(chosen: Path) -> Path:
    """Give the file to write for what was chosen: in a folder one of our own name."""
    return chosen / FILE_IN_FOLDER if chosen.is_dir() else chosen
