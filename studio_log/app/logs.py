"""The program's own log: a small file of faults, without notes or names."""

import logging
import logging.handlers

from studio_log.app.paths import log_folder

LARGEST = 500_000
"""Bytes a log file may have before a new one begins; two are kept."""


def start_logging() -> str:
    """Write warnings and faults to a file; give its path, or "" where none can be written."""
    try:
        folder = log_folder()
        folder.mkdir(parents=True, exist_ok=True)
        path = folder / "studio-log.log"
        handler = logging.handlers.RotatingFileHandler(
            path, maxBytes=LARGEST, backupCount=1, encoding="utf-8", delay=True
        )
    except OSError:
        return ""
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    root = logging.getLogger()
    root.addHandler(handler)
    root.setLevel(logging.WARNING)
    return str(path)
