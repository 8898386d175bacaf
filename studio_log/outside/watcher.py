"""Watches the studio's file, so that what another process marks is seen at once."""

import logging
import os
import threading
from collections.abc import Callable
from pathlib import Path
from typing import Final

from typing_extensions import override
from watchdog.events import (
    EVENT_TYPE_CLOSED,
    EVENT_TYPE_CREATED,
    EVENT_TYPE_DELETED,
    EVENT_TYPE_MODIFIED,
    EVENT_TYPE_MOVED,
    FileSystemEvent,
    FileSystemEventHandler,
)
from watchdog.observers import Observer

NAMES: Final = ("studio.sqlite3-wal", "studio.sqlite3")
"""The file's journal and the file: one of them changes with every commit."""
CHANGES: Final = frozenset(
    {EVENT_TYPE_CREATED, EVENT_TYPE_DELETED, EVENT_TYPE_MODIFIED, EVENT_TYPE_MOVED}
)
"""Mere opening and reading is no change: else the look would cause the next look."""
BELL: Final = "bell.lock"
"""Closed by whoever held the bell: also by a process that was killed."""
AGAIN_S: Final = (0.3, 1.0, 3.0)
"""After a change it is looked again: a commit is heard of while a slow disk still writes it."""
TOGETHER_S: Final = 0.05
"""Changes within this many seconds are told once."""
LOOK_EVERY_S: Final = 1.0

_log = logging.getLogger(__name__)


class FolderWatcher:
    """Calls `on_change`, in a thread of its own, when the studio in a folder has changed.

    `words` is "" where the system tells of changes, and says so where they are looked for
    once a second instead.
    """

    def __init__(self, folder: Path, on_change: Callable[[], None]) -> None:
        self.words = ""
        self._folder = folder
        self._on_change = on_change
        self._changed = threading.Event()
        self._closing = threading.Event()
        self._observer = Observer()
        self._threads = [threading.Thread(target=self._tell, name="studio changes", daemon=True)]
        try:
            self._observer.schedule(_Ear(self._changed), str(folder), recursive=False)
            self._observer.start()
        except (OSError, RuntimeError) as error:
            reason = getattr(error, "strerror", None) or str(error)
            self.words = (
                f"This system does not tell of changes by other programs ({reason}); "
                "the log looks for them once a second."
            )
            _log.info("%s", self.words)
            self._threads.append(
                threading.Thread(target=self._look, name="studio look", daemon=True)
            )
        for thread in self._threads:
            thread.start()

    def close(self) -> None:
        """Stop and join the threads; nothing is told afterwards."""
        self._closing.set()
        self._changed.set()
        if self._observer.is_alive():
            self._observer.stop()
            self._observer.join()
        for thread in self._threads:
            thread.join()

    def _tell(self) -> None:
        while True:
            self._changed.wait()
            self._closing.wait(TOGETHER_S)
            self._changed.clear()
            if self._closing.is_set():  # asked after clearing, which may have taken the wake-up
                return
            self._call()
            for seconds in AGAIN_S:
                if self._changed.wait(seconds):
                    break  # there is more: told at the head of the loop
                self._call()

    def _call(self) -> None:
        try:
            self._on_change()
        except Exception:  # noqa: BLE001 - whatever it was, the thread goes on
            _log.exception("what was changed could not be told")

    def _look(self) -> None:
        seen = self._state()
        while not self._closing.wait(LOOK_EVERY_S):
            now = self._state()
            if now != seen:
                seen = now
                self._changed.set()

    def _state(self) -> tuple[tuple[int, int] | None, ...]:
        return tuple(_mark(self._folder / name) for name in NAMES)


class _Ear(FileSystemEventHandler):
    """Hears what the system tells of the folder; keeps what concerns the studio's file."""

    def __init__(self, changed: threading.Event) -> None:
        self._changed = changed

    @override
    def on_any_event(self, event: FileSystemEvent) -> None:
        paths = (event.src_path, event.dest_path)
        names = {os.path.basename(os.fsdecode(path)) for path in paths}  # noqa: PTH119
        given_up = event.event_type == EVENT_TYPE_CLOSED and BELL in names
        if given_up or (event.event_type in CHANGES and not names.isdisjoint(NAMES)):
            self._changed.set()


def _mark(path: Path) -> tuple[int, int] | None:
    """Give time and size of a file's last change; None where it is not there."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size
