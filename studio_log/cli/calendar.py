"""The plan as a file for a calendar."""

from pathlib import Path
from typing import Final

from studio_log.cli import values
from studio_log.cli.form import SURE, Form, Option, Word
from studio_log.cli.turn import INSIST, Turn
from studio_log.domain.errors import Question
from studio_log.services.calendar import SaveCalendar
from studio_log.services.places import is_calendar


def _calendar(turn: Turn) -> int:
    path = values.file_path(turn.values["to"], "The name of the file")
    codes = tuple(values.any_code(code) for word in turn.values["code"] for code in word.split(","))
    if not turn.values["sure"] and _is_other(path):
        raise Question(f"{path} is there already and is no calendar. Nothing was written. "
                       f"Put this in its place? {INSIST}")  # fmt: skip
    turn.say(turn.studio.ask(SaveCalendar(path, codes)))
    return 0


def _is_other(path: Path) -> bool:
    """Say whether something that is no calendar would be overwritten."""
    try:
        return path.is_file() and not is_calendar(path)
    except OSError:  # what cannot be asked cannot be written either
        return False


FORMS: Final = (
    Form(
        ("calendar",),
        "Write what is ahead as iCalendar, with alarms; of all lots, or of those named.",
        _calendar,
        (Word("CODE", "lots or baths", many=True, optional=True),),
        (Option("--to", "the file to write", "FILE.ics", required=True), SURE),
    ),
)
