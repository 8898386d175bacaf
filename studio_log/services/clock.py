"""The clock: the one place where the time is read, and where the system's zone is."""

import importlib
import logging
import os
import stat
import sys
import threading
import time
import zoneinfo
from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Final

import tzlocal

ZONE_FILES: Final = (Path("/etc/localtime"), Path("/etc/timezone"))
"""What a system changes when its zone is changed: localtime(5), and Debian's name of it."""
LOOK_EVERY_S: Final = 30.0
"""Where there are no such files, the system is asked again after this long."""
FALLBACK: Final = "UTC"
NAMELESS: Final = "local"
"""What tzlocal calls a zone that it knows only by its file."""
A_ZONE: Final = "Europe/London"
"""A zone that every edition of the zone data has."""

_log = logging.getLogger(__name__)


def _name_told() -> str | None:
    """Ask the system anew for its zone; tzlocal keeps the one that it found first."""
    if sys.platform != "win32":
        time.tzset()  # else the C library would go by the old zone, and tzlocal warn of it
    name: str | None = None
    try:
        name = getattr(tzlocal.reload_localzone(), "key", None)
    except Exception as error:  # noqa: BLE001 - it raises anything, but keeps the name it found
        _log.info("the system's zone is told in an odd way: %s", error)
    if not name or name == NAMELESS:
        name = tzlocal.get_localzone_name()
    return name


class LocalZone:
    """The system's zone by its IANA name; a change while the program runs is noticed."""

    def __init__(
        self,
        ask: Callable[[], str | None] = _name_told,
        files: Sequence[Path] = ZONE_FILES,
        steady: Callable[[], float] = time.monotonic,
    ) -> None:
        self._ask = ask
        self._files = files
        self._steady = steady
        self._lock = threading.Lock()
        self._marks: tuple[object, ...] = ()
        self._name = FALLBACK

    def name(self) -> str:
        """Give the zone in force; "UTC" where the system's is not known here. Never raises."""
        with self._lock:
            marks = self._marks_now()
            if marks != self._marks:
                self._marks = marks
                self._name = self._read()
            return self._name

    def _read(self) -> str:
        try:
            name = self._ask()
            if name:
                zoneinfo.ZoneInfo(name)
        except Exception as error:  # noqa: BLE001 - tzlocal and broken files raise anything
            _log.info("the system's time zone is not known here, UTC is used: %s", error)
            return FALLBACK
        return name or FALLBACK

    def _marks_now(self) -> tuple[object, ...]:
        """Give what differs once the zone was changed; a few system calls."""
        files = [_mark(path) for path in self._files]
        late = None if any(files) else int(self._steady() / LOOK_EVERY_S)
        return (os.environ.get("TZ"), *files, late)


def _mark(path: Path) -> tuple[object, ...] | None:
    try:
        own = path.lstat()
        to = path.readlink() if stat.S_ISLNK(own.st_mode) else None
    except OSError:
        return None
    return (to, own.st_ino, own.st_mtime_ns)


_LOCAL: Final = LocalZone()


def zone_data_words() -> str:
    """Say which time-zone data is in use: Python takes the system's before the package's."""
    for folder in map(Path, zoneinfo.TZPATH):
        if (folder / A_ZONE).is_file():
            edition = _edition_of(folder)
            return f"zone data {edition or 'of unknown edition'} of the system"
    try:
        package = importlib.import_module("tzdata")
    except ImportError:
        return "no zone data was found"
    edition = str(getattr(package, "IANA_VERSION", "")) or "of unknown edition"
    return f"zone data {edition} of the package tzdata"


def _edition_of(folder: Path) -> str:
    """Give the edition as in "2026f", "" where the folder does not tell it.

    It stands in the first line of tzdata.zi, "# version 2026f", or alone in +VERSION.
    """
    for name in ("tzdata.zi", "+VERSION"):
        try:
            with (folder / name).open(encoding="ascii") as lines:
                words = lines.readline(80).split()
        except (OSError, ValueError):
            continue
        if words and words[-1][:4].isdigit():
            return words[-1]
    return ""


class SystemClock:
    """The machine's clock and zone; a studio's own zone wins over the system's."""

    def __init__(self, zone: str = "") -> None:
        self._zone = zone

    def now(self) -> datetime:
        """Give the present in UTC."""
        return datetime.now(UTC)  # noqa: TID251 - the one place that reads it

    def zone(self) -> str:
        """Give the zone in force by its IANA name; "UTC" where it is not known. Never raises."""
        return self._zone or _LOCAL.name()

    def real(self, span: timedelta) -> timedelta:
        """Give the span itself: this clock is not hurried."""
        return span


class HurriedClock:
    """A clock that runs `pace` times as fast from a given moment, and can be put forward."""

    def __init__(
        self,
        start: datetime,
        pace: float,
        zone: str,
        monotonic: Callable[[], float] = time.monotonic,
    ) -> None:
        self._monotonic = monotonic
        self._begun = start
        self._from = monotonic()
        self._pace = max(pace, 1.0)
        self._zone = zone

    def now(self) -> datetime:
        """Give the hurried present in UTC."""
        return self._begun + timedelta(seconds=(self._monotonic() - self._from) * self._pace)

    def zone(self) -> str:
        """Give the zone in force."""
        return self._zone

    def real(self, span: timedelta) -> timedelta:
        """Give how long the span lasts on the wall."""
        return span / self._pace

    def jump(self, to: datetime) -> None:
        """Put the clock forward to a moment ahead; back never."""
        now = self.now()
        if to > now:
            self._begun += to - now
