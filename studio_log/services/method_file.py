"""A method's file from anywhere: hostile until it is read."""

import stat
from pathlib import Path
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.method_text import read_method_bytes

LONGEST_FILE: Final = 1_000_000
"""Bytes; the longest method shipped has 20,000."""
NOTHING: Final = "Nothing was changed."


def small_file(path: Path, most: int = LONGEST_FILE) -> bytes:
    """Give what stands in a regular file of so many bytes at most; Refusal for anything else."""
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode):
            raise Refusal(f"{path} is no file that can be read. {NOTHING}")
        if found.st_size > most:
            raise Refusal(f"{path} is larger than {most // 1000} kB. {NOTHING}")
        with path.open("rb") as file:
            return file.read(most + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name cannot be used"
        raise Refusal(f"{path} cannot be read ({reason}). {NOTHING}") from None


def read_method_file(path: Path) -> str:
    """Give the text of a method's file; Refusal with its faults where it is none."""
    return read_method_bytes(small_file(path), name=path.name).text
