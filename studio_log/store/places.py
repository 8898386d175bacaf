"""Open a studio wherever it lies: in a folder, or on the server that the folder names."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from studio_log.domain.errors import BadStudio
from studio_log.store.database import Store, open_store
from studio_log.store.link import read_link

NO_DRIVER = (
    "This studio lies on a PostgreSQL server, and the part of Studio Log that speaks with one is "
    "not installed. Nothing was changed. Install Studio Log with its extra [shared]."
)


def open_any(folder: Path, password: Callable[[], str], *, now: datetime | None = None) -> Store:
    """Open the studio of a folder; `password` is asked where it lies on a server."""
    link = read_link(folder)
    if link is None:
        return open_store(folder, now=now)
    try:
        # Late: the driver takes a fifth of a second, and most studios are one laptop's own.
        from studio_log.store.shared import open_shared  # noqa: PLC0415
    except ImportError as error:
        raise BadStudio(NO_DRIVER) from error
    return open_shared(folder, link, password, now=now)
