"""Which language a laptop speaks: a small file of the studio's folder, `language.json`.

It is no setting of the studio: two laptops on one log may speak two languages. A file that is
missing, broken or names a language that there is not is passed over: the system's is spoken then.
"""

import json
from pathlib import Path
from typing import Final

from studio_log.language.languages import LANGUAGES

NAME: Final = "language.json"
LARGEST_FILE: Final = 400
FOLLOW: Final = ""
"""Chosen where the system's language is spoken."""


def chosen_language(folder: Path) -> str:
    """Give the language chosen for a studio's folder, or `FOLLOW`."""
    path = folder / NAME
    try:
        if path.stat().st_size > LARGEST_FILE:
            return FOLLOW
        told = json.loads(path.read_text(encoding="utf-8"))
        wanted = told.get("language", FOLLOW)
    except (OSError, ValueError, AttributeError, RecursionError):
        return FOLLOW
    return wanted if wanted in LANGUAGES else FOLLOW


def file_text(language: str) -> bytes:
    """Give what the file holds for a choice."""
    return json.dumps({"language": language}).encode()
