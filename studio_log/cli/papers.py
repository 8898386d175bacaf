"""Papers as PDF: the step card for the wall, the whole record, the day sheet."""

from collections.abc import Callable
from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import Form, Option, Word
from studio_log.cli.safety import FILE_NAME
from studio_log.cli.turn import Turn
from studio_log.present.paper.blocks import PAGES, PageName
from studio_log.services.papers import CardFor, DaySheetFor, Paper, RecordFor
from studio_log.services.questions import SettingsFor

_TO: Final = Option("--to", "the PDF to write", "FILE", required=True)
_PAGE: Final = Option(
    "--page",
    "the paper; else the one that goes with the studio's units",
    "PAGE",
    choices=tuple(PAGES),
)
_LOT: Final = (Word("CODE", "a lot code"),)


def page_for(units: str) -> PageName:
    """Give the paper that is in the printers where these units are used."""
    return "letter" if units == "us" else "a4"


def _write(turn: Turn, question: object) -> int:
    path = values.file_path(turn.values["to"], FILE_NAME)
    paper: Paper = turn.studio.ask(question)
    page: PageName = turn.values["page"] or page_for(turn.studio.ask(SettingsFor()).units)
    turn.say(turn.house.write_paper(path, paper, page))
    return 0


def _of_lot(kind: Callable[[str], Any]) -> Callable[[Turn], int]:
    return lambda turn: _write(turn, kind(values.lot_code(turn.values["code"])))


FORMS: Final = (
    Form(
        ("card",),
        "Write the step card of a lot, for the wall, to a PDF.",
        _of_lot(CardFor),
        _LOT,
        (_TO, _PAGE),
    ),
    Form(
        ("record",),
        "Write the whole record of a lot to a PDF.",
        _of_lot(RecordFor),
        _LOT,
        (_TO, _PAGE),
    ),
    Form(
        ("day",),
        "Write what is due today and tonight to a PDF, to tick off.",
        lambda turn: _write(turn, DaySheetFor()),
        (),
        (_TO, _PAGE),
    ),
)
