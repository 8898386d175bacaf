"""The reminder service's language: chosen for this laptop, else that of the process's surroundings.

It has no Qt to ask.
"""

import os
from pathlib import Path
from typing import Final

from studio_log.app.paths import resource
from studio_log.language.catalogue import catalogue_of, language_for
from studio_log.language.choice import chosen_language
from studio_log.language.words import speak

SURROUNDINGS: Final = ("LC_ALL", "LC_MESSAGES", "LANG")


def speak_in_service(folder: Path) -> None:
    """Put the language into force for the reminder service, which has no window."""
    surroundings = filter(None, (os.environ.get(name) for name in SURROUNDINGS))
    language = chosen_language(folder) or language_for([*surroundings][:1])
    speak(catalogue_of(language, resource("translations")))
