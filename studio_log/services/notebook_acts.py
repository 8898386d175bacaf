"""Rows of an old notebook become lots, in one transaction; and are taken back as one."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, standing
from studio_log.domain.methods import StepKind
from studio_log.domain.notebook import Draft, Reading, check_columns, guesses, read_row
from studio_log.domain.wall_clock import known_zone
from studio_log.language.calendar_words import date_words
from studio_log.language.region import region
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.services.commands import Mark, NewLot, Outcome, Undo
from studio_log.services.desk import Desk
from studio_log.services.lot_acts import new_lot
from studio_log.services.marking import mark
from studio_log.services.notebook_file import read_sheet
from studio_log.services.notebooks import (
    Choices,
    Notebook,
    NotebookFor,
    NotebookReport,
    RowSaid,
    TakeBackLots,
    TakeNotebook,
    TryNotebook,
)
from studio_log.services.taking_back import undo

MOST_SAID: Final = 5


def notebook(_house: Any, _desk: Desk, question: NotebookFor) -> Notebook:
    """Look at a table."""
    sheet = read_sheet(question.path)
    return Notebook(question.path, sheet, guesses(sheet.heads), region().month_first)


def try_notebook(_house: Any, desk: Desk, question: TryNotebook) -> NotebookReport:
    """Say what would become of each row."""
    return NotebookReport(tuple(said for said, _ in _rows(desk, question)))


def take_notebook(desk: Desk, command: TakeNotebook) -> Outcome:
    """Make the lots; Refusal, and none is made, where a row cannot be read."""
    rows = _rows(desk, command)
    bad = [said for said, draft in rows if draft is None]
    if bad and not command.choices.leave_out:
        told = "; ".join(f"row {one.number}: {one.words}" for one in bad[:MOST_SAID])
        more = f"; and {len(bad) - MOST_SAID} more" if len(bad) > MOST_SAID else ""
        raise Refusal(
            f"{len(bad)} of {len(rows)} rows cannot be taken in: {told}{more}. Nothing was taken "
            "in. Mend them, choose other columns, or leave them out."
        )
    codes = [_take(desk, draft, said.number, command) for said, draft in rows if draft]
    if not codes:
        raise Refusal("No row can be taken in. Nothing was changed.")
    return Outcome(
        f"{len(codes)} lots are taken in, {codes[0]} to {codes[-1]}."
        + (f" {len(bad)} rows are left out." if bad else ""),
        lots=frozenset(codes),
        reminders=True,
        code=codes[0],
    )


def _rows(desk: Desk, of: TryNotebook | TakeNotebook) -> list[tuple[RowSaid, Draft | None]]:
    check_columns(of.choices.columns)
    today = desk.now.astimezone(known_zone(desk.zone)).date()
    how = Reading(desk.zone, today, of.choices.month_first)
    found: list[tuple[RowSaid, Draft | None]] = []
    for number, row in zip(of.sheet.numbers, of.sheet.rows, strict=True):
        try:
            draft = read_row(of.sheet.heads, of.choices.columns, row, how)
            method = _method(desk, draft, of.choices)
        except Refusal as refusal:
            found.append((RowSaid(number, False, str(refusal)), None))  # noqa: FBT003
        else:
            said = _said(desk, draft, desk.method(method).title)
            found.append((RowSaid(number, True, said), draft))  # noqa: FBT003
    return found


def _method(desk: Desk, draft: Draft, choices: Choices) -> str:
    """Give the method that a row names, by its name or its short name; else the one for all."""
    if not draft.method:
        return desk.method(choices.method).slug
    wanted = draft.method.casefold()
    for slug, version in sorted(desk.book):
        if wanted in {slug, desk.book[slug, version].title.casefold()}:
            return slug
    raise Refusal(f"there is no method “{draft.method[:40]}”")


def _said(desk: Desk, draft: Draft, method: str) -> str:
    grams = draft.grams if draft.grams is not None else sum(one.grams or 0 for one in draft.pieces)
    parts = [draft.name, draft.understood, words.mass(grams, desk.units), method]
    for what, at in ((tr("begun"), draft.begun), (tr("dry"), draft.dry), (tr("used"), draft.used)):
        if at is not None:
            parts.append(f"{what} {date_words(at.date(), short=True, year=True)}")
    return " · ".join(part for part in parts if part)


def _take(desk: Desk, draft: Draft, number: int, command: TakeNotebook) -> str:
    begun = draft.begun or draft.dry or draft.used or desk.now
    made = new_lot(
        desk,
        NewLot(
            _method(desk, draft, command.choices), draft.name[:200], draft.pieces,
            grams=draft.grams, at=begun, place=draft.place[:200], sure=True,
        ),
    )  # fmt: skip
    source = f"from an old notebook, {command.name}, row {number}".replace(", ,", ",")
    note = "\n".join(part for part in (draft.note, source) if part)[:9_000]
    told = Mark(made.code, "now", Act.NOTE, begun, note, readings=draft.readings, sure=True)
    mark(desk, told)
    if draft.dry is not None:
        dryings = [one for one in desk.lot(made.code).steps
                   if one.spec.kind is StepKind.DRY and not one.optional]  # fmt: skip
        if dryings:
            mark(desk, Mark(made.code, str(dryings[-1].number), Act.DRY, draft.dry, sure=True))
    if draft.used is not None:
        mark(desk, Mark(made.code, "now", Act.USE, draft.used, sure=True))
    return made.code


def take_back_lots(desk: Desk, command: TakeBackLots) -> Outcome:
    """Take every entry of these lots back, the latest first; Refusal where work went on."""
    for code in command.codes:
        for entry in reversed(standing(desk.entries(code))):
            undo(desk, Undo(code, entry.number, sure=True))
    return Outcome(
        f"{len(command.codes)} lots are taken back. Their codes are not given again.",
        lots=frozenset(command.codes),
        reminders=True,
    )


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {
    TakeNotebook: take_notebook,
    TakeBackLots: take_back_lots,
}
ANSWERS: Final[Mapping[type, Callable[[Any, Desk, Any], Any]]] = {
    NotebookFor: notebook,
    TryNotebook: try_notebook,
}
