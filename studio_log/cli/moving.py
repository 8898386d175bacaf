"""The studio out as a folder, and in from one, or from the table of an old notebook."""

import sys
from typing import Final

from studio_log.cli import values
from studio_log.cli.form import Form, Option, Word
from studio_log.cli.turn import Turn
from studio_log.services.moving import ExportFor, LongWork, Looked, TakeFolder


def _export(turn: Turn) -> int:
    path = values.file_path(turn.values["to"], "The name of the folder")
    work: LongWork = turn.studio.ask(ExportFor(path, zipped=bool(turn.values["zip"])))
    turn.say(work.run(_Shown(turn)))
    return 0


class _Shown:
    """Tells on a terminal, and only there, how far it is."""

    def __init__(self, turn: Turn) -> None:
        err = turn.err
        self._err = err if err is not None and err is sys.stderr and err.isatty() else None

    def __call__(self, done: int, every: int) -> bool:
        if self._err is not None and every:
            end = "\n" if done >= every else ""
            print(f"\r{100 * done // every} %", end=end, file=self._err, flush=True)
        return True


def _import(turn: Turn) -> int:
    path = values.file_path(turn.values["file"], "The name of the folder or file")
    try:
        return turn.finish(turn.do(TakeFolder(path, only_look=turn.values["dry_run"])))
    except Looked as looked:
        turn.say(str(looked))
        return 0


FORMS: Final = (
    Form(
        ("export",),
        "Write everything as a folder: JSON, tables as CSV, photos.",
        _export,
        options=(
            Option("--to", "the folder to make", "DIR", required=True),
            Option("--zip", "make one ZIP archive of it"),
        ),
    ),
    Form(
        ("import",),
        "Read an exported folder back into an empty studio.",
        _import,
        (Word("FILE", "an exported folder or archive"),),
        (Option("--dry-run", "look through it and change nothing"),),
    ),
)
