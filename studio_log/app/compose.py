"""Puts a studio together: the only place that knows which concrete parts are used."""

from collections.abc import Callable
from pathlib import Path

from studio_log.app.paths import resource, studio_folder
from studio_log.domain.cautions import read_cautions
from studio_log.outside.alarm import SchedulerAlarm
from studio_log.outside.bell import FileBell
from studio_log.outside.notices import DesktopNotice
from studio_log.services.clock import SystemClock
from studio_log.services.ports import Clock
from studio_log.services.studio import Studio


def shipped_methods() -> dict[str, str]:
    """Give the methods that come with the program: file name to TOML."""
    folder = resource("methods")
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.toml"))}


def open_studio(where: str | Path | None, *, clock: Clock | None = None) -> Studio:
    """Open (or make) the studio at a place; it does not ring."""
    folder = where if isinstance(where, Path) else studio_folder(where)
    cautions = read_cautions(resource("cautions.toml").read_text(encoding="utf-8"))
    return Studio(folder, clock or SystemClock(), shipped_methods(), cautions)


def let_ring(
    studio: Studio, ring: Callable[[], None], *, demo: bool = False, desktop: bool = True
) -> None:
    """Give a studio its alarm, its notices and its bell; `ring` is called by the alarm's thread.

    `ring` must hand `studio.raise_due` to the thread that owns the studio.
    """
    studio.notice = DesktopNotice(demo=demo) if desktop else None
    studio.bell = FileBell(studio.folder)
    studio.alarm = SchedulerAlarm(ring, studio.clock)
