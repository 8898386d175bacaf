"""Reading a damaged studio into a new file, for the window as for the command."""

from collections.abc import Sequence
from pathlib import Path

from studio_log.app.compose import open_studio, shipped_methods
from studio_log.domain.errors import BadStudio, Refusal
from studio_log.outside.bell import FileBell
from studio_log.services.clock import SystemClock
from studio_log.services.salvaging import is_damaged, look_over, salvage
from studio_log.store.restore import restore


def could_be_read(folder: Path) -> Sequence[str]:
    """Say what could be read of a damaged studio; nothing for one that is not."""
    return look_over(folder, shipped_methods()).lines if needs_mending(folder) else ()


def needs_mending(folder: Path) -> bool:
    """Say whether a studio is damaged; one that cannot be reached at all is not known to be."""
    try:
        return is_damaged(folder)
    except BadStudio:
        return False


def mended(folder: Path) -> Sequence[str]:
    """Read a damaged file into a new one, and work everything else out anew; say what was done."""
    done: list[str] = []
    if is_damaged(folder):
        bell = FileBell(folder)
        if not bell.hold():
            raise Refusal(
                "Studio Log is open on this studio. Nothing was changed; close its window, or "
                "the reminder service, and repair it then."
            )
        try:
            done += salvage(folder, shipped_methods(), SystemClock().now()).lines
        finally:
            bell.release()
    studio = open_studio(folder)
    try:
        studio.rebuild()
    finally:
        studio.close()
    return [*done, "Worked out anew from the journal."]


def restored(folder: Path, source: Path) -> Sequence[str]:
    """Put a copy in a studio's place, whatever is there now; say what was done."""
    kept = restore(folder, source, SystemClock().now())
    before = [f"What was here before is kept: {kept}."] if kept is not None else []
    return [f"The studio is restored from {source}.", *before]
