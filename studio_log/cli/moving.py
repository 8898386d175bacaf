"""The studio out as a folder, and in from one, or from the table of an old notebook."""

import sys
from pathlib import Path
from typing import Final

from studio_log.cli import values
from studio_log.cli.form import Form, Option, Word
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.notebook import FIELDS
from studio_log.services.moving import ExportFor, LongWork, Looked, TakeFolder
from studio_log.services.notebooks import (
    Choices,
    Notebook,
    NotebookFor,
    NotebookReport,
    TakeNotebook,
    TryNotebook,
)


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
    if path.is_dir() or path.suffix.casefold() == ".zip":
        return _folder(turn, path)
    book: Notebook = turn.studio.ask(NotebookFor(path))
    columns = book.columns if turn.values["columns"] is None else _columns(turn, book)
    choices = Choices(
        columns,
        values.slug(turn.values["method"] or Choices.method, "name of a method"),
        book.month_first,
        leave_out=turn.values["leave_out"],
    )
    if turn.values["dry_run"]:
        return _tried(turn, book, choices)
    return turn.finish(turn.do(TakeNotebook(book.sheet, choices, path.name)))


def _folder(turn: Turn, path: Path) -> int:
    try:
        return turn.finish(turn.do(TakeFolder(path, only_look=turn.values["dry_run"])))
    except Looked as looked:
        turn.say(str(looked))
        return 0


def _columns(turn: Turn, book: Notebook) -> tuple[str, ...]:
    """Give what each column is, as it was typed: "name,begun,-,weight"."""
    typed = [part.strip().strip("-") for part in turn.values["columns"].split(",")]
    unknown = [part for part in typed if part and part not in FIELDS]
    if unknown or len(typed) != len(book.sheet.heads):
        heads = ", ".join(book.sheet.heads)
        raise Refusal(
            f"Name one of {', '.join(FIELDS)}, or - for none, for each column: {heads}. Nothing "
            "was taken in."
        )
    return tuple(typed)


def _tried(turn: Turn, book: Notebook, choices: Choices) -> int:
    """Tell what each column was taken for and what would become of each row."""
    report: NotebookReport = turn.studio.ask(TryNotebook(book.sheet, choices))
    lines = [f"{book.path.name}: {book.sheet.told}"]
    pairs = zip(book.sheet.heads, choices.columns, strict=True)
    lines += [f"  {head} → {what or 'left out'}" for head, what in pairs]
    lines += [f"row {one.number}: {'' if one.good else 'NOT: '}{one.words}" for one in report.rows]
    lines.append(f"{report.good} of {len(report.rows)} rows can be taken in. Nothing was changed.")
    turn.say("\n".join(lines))
    return 0 if report.good == len(report.rows) else 1


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
        "Read an exported folder back, or make lots of an old notebook's table.",
        _import,
        (Word("FILE", "an exported folder or archive, or a table as CSV or XLSX"),),
        (
            Option("--dry-run", "look through it, tell what it says and change nothing"),
            Option("--columns", "what the columns of a table are, commas between", "LIST"),
            Option("--method", f"of rows that name none; else {Choices.method}", "SLUG"),
            Option("--leave-out", "leave rows out that cannot be read"),
        ),
    ),
)
