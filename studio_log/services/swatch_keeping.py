"""Swatches at the desk: reading them from the journal, and keeping their lines."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Entry
from studio_log.domain.light_test import light_reminders
from studio_log.domain.lots import Lot
from studio_log.domain.reminders import Cause, Reminder
from studio_log.domain.swatch_text import whole_swatch_code
from studio_log.domain.swatches import Swatch, swatch_from
from studio_log.language.words import tr
from studio_log.services.desk import Desk
from studio_log.services.own_journals import align
from studio_log.services.swatch_lines import swatch_line

SWATCHES: Final = "W"
"""What the code of every swatch begins with."""
MOST_NAMED: Final = 6
"""Of a lot's swatches, on its page."""


def is_swatch(code: str) -> bool:
    """Say whether a code is that of a swatch."""
    return code[:1].upper() == SWATCHES


def swatch_entries(desk: Desk, text: str) -> tuple[Entry, ...]:
    """Give the journal of a swatch; Refusal for an unknown code."""
    code = whole_swatch_code(text)
    entries = desk.entries(code)
    if not entries:
        raise Refusal(
            tr("There is no swatch {code}. Nothing was changed; `swatch list` shows them.",
               code=code)
        )  # fmt: skip
    return entries


def swatch_of(desk: Desk, code: str) -> Swatch:
    """Give a swatch as it stands; Refusal for an unknown code."""
    return swatch_from(swatch_entries(desk, code))


def lot_of(desk: Desk, swatch: Swatch) -> Lot | None:
    """Give the lot that a swatch was cut from; None where its journal does not read."""
    with suppress(Refusal):
        return desk.lot(swatch.lot)
    return None


def swatches_of_lot(desk: Desk, lot: str) -> str:
    """Say which swatches were cut from a lot, the latest last; "" for none."""
    codes = desk.work.swatches.codes_of_lot(lot)
    lines = desk.work.swatches.of(codes[-MOST_NAMED:])
    told = [f"{code} {lines[code].name}".strip() for code in codes[-MOST_NAMED:]]
    more = len(codes) - len(told)
    if more > 0:
        told.insert(0, tr("{count} earlier", count=more))
    return tr("Swatches: {swatches}.", swatches="; ".join(told)) if told else ""


def settle_swatch(
    desk: Desk, swatch: Swatch, number: int, cause: Cause | None = None
) -> list[Reminder]:
    """Write what lists need of a swatch, or take its line away where it was taken back.

    With a cause its reminders are brought into line; gives those worked out.
    """
    if swatch.voided:
        desk.work.swatches.remove(swatch.code)
    else:
        desk.work.swatches.put(swatch_line(swatch, lot_of(desk, swatch), number))
    worked_out = [] if swatch.voided else light_reminders(swatch, desk.quiet)
    return worked_out if cause is None else align(desk, swatch.code, worked_out, cause)


def tested(desk: Desk) -> list[Swatch]:
    """Give the swatches with an open reminder: those in the light."""
    codes = {one.subject for one in desk.work.reminders.open() if is_swatch(one.subject)}
    return [swatch_of(desk, code) for code in sorted(codes)]


def unlike_swatches(desk: Desk) -> Iterator[str]:
    """Name the swatches whose kept lines differ from their journal, or whose journal fails."""
    codes = desk.work.journal.subjects(SWATCHES)
    kept = desk.work.swatches.of(codes)
    for code in codes:
        entries = desk.entries(code)
        try:
            swatch = swatch_from(entries)
        except Refusal as refusal:
            yield f"The journal of {code} does not read: {refusal}"
            continue
        fresh = swatch_line(swatch, lot_of(desk, swatch), entries[-1].number)
        wanted = None if swatch.voided else replace(fresh, search_text=fresh.search_text.casefold())
        if kept.get(code) != wanted:
            yield f"The kept line of {code} differs from its journal."


def settle_swatches(desk: Desk) -> None:
    """Write the lines of all swatches anew; one whose journal does not read is left out."""
    for code in desk.work.journal.subjects(SWATCHES):
        with suppress(Refusal):
            entries = desk.entries(code)
            cause = Cause(undoing=True, why="worked out anew")
            settle_swatch(desk, swatch_from(entries), entries[-1].number, cause)
