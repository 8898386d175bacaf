"""Writing a file wholly or not at all."""

import os
import tempfile
from pathlib import Path

from studio_log.domain.errors import Refusal


def write_whole(path: Path, data: bytes, *, wait: bool = True) -> None:
    """Write beside, then put in place; what stood at `path` stays until then.

    With `wait` it is on the disk once this ends; without, a loss of power may bring back what
    stood there before, never half of it. Refusal where it fails; nothing was changed.
    """
    beside: Path | None = None
    try:
        if path.is_dir():
            raise IsADirectoryError(0, "it is a folder", str(path))
        handle, name = tempfile.mkstemp(prefix=".writing-", suffix=".part", dir=path.parent)
        beside = Path(name)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            if wait:
                file.flush()
                os.fsync(file.fileno())
        beside.chmod(_usual_mode())
        beside.replace(path)
    except (OSError, ValueError) as error:
        if beside is not None:
            beside.unlink(missing_ok=True)
        reason = getattr(error, "strerror", None) or "the name cannot be used"
        raise Refusal(
            f"{path} could not be written ({reason}). Nothing there was changed. "
            "Choose another place or make room, then try again."
        ) from error


def _usual_mode() -> int:
    """Give the rights a new file would have: the temporary one is for its owner only."""
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
