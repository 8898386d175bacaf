"""The right to ring: a lock that the system takes away from a process that dies."""

import errno
import logging
import os
import sys
import threading
from pathlib import Path
from typing import Final

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

FILE_NAME: Final = "bell.lock"
ASKING: Final = os.O_RDWR if sys.platform == "win32" else os.O_RDONLY
TAKEN: Final = frozenset({errno.EAGAIN, errno.EACCES, errno.EWOULDBLOCK, errno.EDEADLK})

_log = logging.getLogger(__name__)


class FileBell:
    """The bell of the studio in a folder: one process at a time holds it. Any thread may ask.

    Whoever holds it keeps the file open for writing as well, and whoever asks does not. So
    its end, also by a kill, is the closing of a written file: the system tells the watchers
    of the folder (see `watcher`), and the next one takes the bell at once.
    """

    def __init__(self, folder: Path) -> None:
        self._path = folder / FILE_NAME
        self._handle: int | None = None
        self._mark: int | None = None
        self._guard = threading.Lock()
        self._warned = False

    def hold(self) -> bool:
        """Take or keep the bell without waiting; False while another process has it.

        Where the disk knows no locks the bell is given: to ring twice is better than never.
        """
        with self._guard:
            if self._handle is not None and not self._is_ours(self._handle):
                self._let_go()
            return self._handle is not None or self._take()

    def release(self) -> None:
        """Give it up."""
        with self._guard:
            self._let_go()

    def _take(self) -> bool:
        handle = None
        try:
            handle = os.open(self._path, ASKING | os.O_CREAT, 0o666)
            _lock(handle)
            self._mark = os.open(self._path, os.O_WRONLY)
        except OSError as error:
            if handle is not None:
                os.close(handle)
            if handle is not None and error.errno in TAKEN:
                return False
            self._warn(error)
            return True
        self._handle = handle
        return True

    def _is_ours(self, handle: int) -> bool:
        """Say whether the file locked is still the one of that name."""
        try:
            there, mine = self._path.stat(), os.fstat(handle)
        except OSError:
            return False
        return (there.st_dev, there.st_ino) == (mine.st_dev, mine.st_ino)

    def _let_go(self) -> None:
        for handle in (self._handle, self._mark):  # closing the first unlocks it
            if handle is not None:
                os.close(handle)
        self._handle = self._mark = None

    def _warn(self, error: OSError) -> None:
        if not self._warned:
            self._warned = True
            _log.warning("the studio's folder takes no lock (%s): ringing without", error.strerror)


if sys.platform == "win32":

    def _lock(handle: int) -> None:
        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)

else:

    def _lock(handle: int) -> None:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
