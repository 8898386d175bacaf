"""How a process speaks: its language, and figures and dates as the place writes them.

It can be handed to another process, whose sentences then stand between the window's own.
"""

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from studio_log.language.languages import LANGUAGES
from studio_log.language.region import PLAIN, Region, live_in
from studio_log.language.words import ENGLISH, speak


class BadTongueError(ValueError):
    """A way to speak that there is not; the words say why."""


@dataclass(frozen=True, slots=True)
class Tongue:
    """A language, the folder its catalogue lies in, and the place."""

    language: str = "en"
    folder: str = ""
    region: Region = PLAIN

    @property
    def fields(self) -> dict[str, Any]:
        """Give it as JSON has it, for `read_tongue`."""
        return {
            "language": self.language,
            "folder": self.folder,
            "decimal": self.region.decimal,
            "month_first": self.region.month_first,
        }


PLAIN_ENGLISH: Final = Tongue()

_in_force: Tongue = PLAIN_ENGLISH


def tongue() -> Tongue:
    """Give how this process speaks."""
    return _in_force


def speak_as(wanted: Tongue) -> None:
    """Speak so from now on, in every thread. A catalogue that cannot be read leaves English."""
    global _in_force  # noqa: PLW0603 - a process speaks one way at a time
    _in_force = wanted
    live_in(wanted.region)
    speak(ENGLISH if wanted.language == "en" else _catalogue(wanted))


def _catalogue(wanted: Tongue) -> Mapping[str, str]:
    # Imported here, so that what speaks English imports no XML (10 ms).
    from studio_log.language.catalogue import catalogue_of  # noqa: PLC0415

    with suppress(OSError, SyntaxError):  # an XML that is broken is a SyntaxError
        return catalogue_of(wanted.language, Path(wanted.folder))
    return ENGLISH


def read_tongue(value: Any) -> Tongue:
    """Give a tongue out of its fields; BadTongueError says what is amiss. {} is plain English."""
    known = PLAIN_ENGLISH.fields
    if not isinstance(value, dict) or not set(value) <= set(known):
        raise BadTongueError(f"A language is told by {', '.join(known)} only.")
    told = known | value
    if not isinstance(told["language"], str) or told["language"] not in LANGUAGES:
        raise BadTongueError(f"The language has to be one of {', '.join(LANGUAGES)}.")
    if not isinstance(told["folder"], str) or "\0" in told["folder"]:
        raise BadTongueError("The folder of the languages is no folder.")
    if told["decimal"] not in (".", ",") or not isinstance(told["month_first"], bool):
        raise BadTongueError("A place writes a point or a comma, and its months first or not.")
    region = Region(decimal=told["decimal"], month_first=told["month_first"])
    return Tongue(told["language"], told["folder"], region)
