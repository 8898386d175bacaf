"""Faults of the disk and the file, said as sentences: what happened, what is kept, what to do."""

import errno
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy.exc import DBAPIError

from studio_log.domain.errors import BadStudio
from studio_log.language.words import tr_later


class Damaged(BadStudio):
    """The file is not whole."""


class Foreign(BadStudio):
    """The file is whole and something else."""


class Newer(BadStudio):
    """The file is from a newer version."""


class ServerGone(BadStudio):
    """The server cannot be reached; nothing of the work was written."""


class ServerUnsure(BadStudio):
    """The line broke while a commit was under way: it may have been written or not."""


class WrongPassword(BadStudio):
    """The server does not let this user in."""


FULL = (
    "The disk that holds the studio ({where}) is full. Nothing of this was written, and "
    "everything written before is kept. Free some space and do it again."
)
READ_ONLY = (
    "The studio in {where} may be read but not written: the folder or the file is read-only. "
    "Nothing was changed. Make it writable, or choose another folder with --studio."
)
LOCKED = (
    "Another program held the studio's file in {where} for more than five seconds. "
    "Nothing of this was written. Close the other program, or wait a little, and do it again."
)
DAMAGED = (
    "The studio's file in {where} is damaged. It was left as it is. Put a copy back "
    'with Restore (studio-log restore FILE; they are in "copies" beside it), or have what can be '
    "read put into a new file (studio-log check --repair)."
)
FOREIGN = (
    "{where} is not the file of a studio. It was left as it is. "
    "Choose the folder of a studio, or an empty one."
)
NEWER = (
    "The studio in {where} was written by a newer version of Studio Log. It was left as it is. "
    "Install the newer version here as well."
)
UNREACHABLE = (
    "The studio's folder {where} cannot be reached. Nothing was changed. Check that the "
    "folder is there and its disk is connected, or choose another one with --studio."
)
NO_STUDIO = (
    "There is no studio in {where}. Nothing was made. "
    "Check the folder's name, or start Studio Log once to make a studio there."
)
NETWORK = (
    "The folder {where} lies where a studio cannot be kept safely, probably on a network "
    "drive: it offers no memory shared between programs. Nothing was changed. "
    "Keep the studio on a disk of this computer."
)
DISK = (
    "The disk that holds the studio ({where}) failed to read or write. Nothing of this was "
    "written, and everything written before is kept. Check the disk, then do it again."
)
BROKEN_RULE = (
    "The studio's file in {where} refused what was to be written ({detail}). "
    "Nothing of this was written. Run studio-log check."
)

PRIMARY: dict[int, str] = {
    sqlite3.SQLITE_FULL: FULL,
    sqlite3.SQLITE_READONLY: READ_ONLY,
    sqlite3.SQLITE_PERM: READ_ONLY,
    sqlite3.SQLITE_BUSY: LOCKED,
    sqlite3.SQLITE_LOCKED: LOCKED,
    sqlite3.SQLITE_CORRUPT: DAMAGED,
    sqlite3.SQLITE_NOTADB: DAMAGED,
    sqlite3.SQLITE_FORMAT: DAMAGED,
    sqlite3.SQLITE_ERROR: DAMAGED,  # our statements are sound; the schema they meet is not
    sqlite3.SQLITE_CANTOPEN: UNREACHABLE,
    sqlite3.SQLITE_IOERR: DISK,
    sqlite3.SQLITE_PROTOCOL: NETWORK,
    sqlite3.SQLITE_NOLFS: DISK,
    sqlite3.SQLITE_TOOBIG: DAMAGED,
}
"""SQLite's primary result codes (sqlite.org/rescode.html) and what is said."""

EXTENDED: dict[int, str] = {
    sqlite3.SQLITE_IOERR_SHMOPEN: NETWORK,
    sqlite3.SQLITE_IOERR_SHMMAP: NETWORK,
    sqlite3.SQLITE_IOERR_SHMLOCK: NETWORK,
    sqlite3.SQLITE_IOERR_SHMSIZE: FULL,
}

SYSTEM: dict[int, str] = {
    errno.ENOSPC: FULL,
    errno.EDQUOT: FULL,
    errno.EFBIG: FULL,
    errno.EACCES: READ_ONLY,
    errno.EPERM: READ_ONLY,
    errno.EROFS: READ_ONLY,
    errno.ENOENT: UNREACHABLE,
    errno.ENOTDIR: UNREACHABLE,
    errno.ENODEV: UNREACHABLE,
    errno.ENXIO: UNREACHABLE,
    errno.ESTALE: UNREACHABLE,
    errno.ETIMEDOUT: UNREACHABLE,
    errno.EHOSTDOWN: UNREACHABLE,
    errno.ENOTCONN: UNREACHABLE,
    errno.ENAMETOOLONG: UNREACHABLE,
}


KINDS: dict[str, type[BadStudio]] = {DAMAGED: Damaged, FOREIGN: Foreign, NEWER: Newer}


def refusal(words: str, where: Path, detail: str = "") -> BadStudio:
    """Give the sentence with its place filled in."""
    return KINDS.get(words, BadStudio)(words.format(where=where, detail=detail))


def as_refusal(error: BaseException, where: Path) -> BadStudio:
    """Say an error of SQLite or of the system as a sentence."""
    error = _cause(error)
    return refusal(_sentence(error), where, str(error))


def _cause(error: BaseException) -> BaseException:
    """Give the driver's own error."""
    return error.orig if isinstance(error, DBAPIError) and error.orig is not None else error


def _sentence(error: BaseException) -> str:
    if isinstance(error, UnicodeDecodeError):
        return DAMAGED
    if isinstance(error, sqlite3.Error):
        code = getattr(error, "sqlite_errorcode", None)
        if code is None:  # raised by Python's own module, as for text that is not UTF-8
            return DAMAGED
        return EXTENDED.get(code) or PRIMARY.get(code & 0xFF, BROKEN_RULE)
    number = getattr(error, "errno", None)
    return SYSTEM.get(number, DISK) if number else DISK


def reason(refused: BadStudio) -> str:
    """Say in a few words why a place other than the studio's own refused."""
    if isinstance(refused, Damaged):
        return REASONS[DAMAGED]
    cause = refused.__cause__
    return REASONS.get(UNREACHABLE if cause is None else _sentence(cause), REASONS[DISK])


REASONS: dict[str, str] = {
    FULL: tr_later("its disk is full"),
    READ_ONLY: tr_later("it may not be written to"),
    UNREACHABLE: tr_later("it is not there"),
    DISK: tr_later("its disk failed to read or write"),
    DAMAGED: tr_later("what was written there could not be read back"),
}


@contextmanager
def told(where: Path) -> Iterator[None]:
    """Turn SQLite's errors inside into BadStudio; errors of any other kind pass."""
    try:
        yield
    except (DBAPIError, sqlite3.Error) as error:
        if not isinstance(_cause(error), sqlite3.Error):  # a server's, on its way to its own words
            raise
        raise as_refusal(error, where) from error


@contextmanager
def told_with_disk(where: Path) -> Iterator[None]:
    """Turn SQLite's errors and the system's inside into BadStudio.

    In a damaged file even the words of an error may not be text any more.
    """
    try:
        yield
    except (DBAPIError, sqlite3.Error, OSError, UnicodeDecodeError) as error:
        raise as_refusal(error, where) from error
