"""Taking back, restoring and correcting what a swatch's journal says, by later entries."""

from dataclasses import replace
from functools import partial
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.reminders import Cause
from studio_log.domain.swatches import swatch_from
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Correct, Outcome
from studio_log.services.correcting import Reader
from studio_log.services.desk import Desk
from studio_log.services.journal_back import (
    Entries,
    Noun,
    correct_of,
    redo_of,
    refuse_readings,
    undo_of,
)
from studio_log.services.swatch_acts import swatch_readings
from studio_log.services.swatch_keeping import settle_swatch, swatch_entries


def _reader(_entries: Entries, target: Entry, command: Correct) -> Reader:
    refuse_readings(target, set(command.readings) - set(target.readings) - {"two_u"})
    if "spots" in target.data and set(command.readings) - {"two_u"}:
        raise Refusal(
            tr("Entry {number} is the mean of its spots, which a correction would leave behind. "
               "Nothing was changed; take it back, and write the spots down anew.",
               number=target.number)
        )  # fmt: skip
    return swatch_readings


def _written(desk: Desk, entries: Entries, entry: Entry, said: str, cause: Cause) -> Outcome:
    number = len(entries) + 1
    swatch = swatch_from((*entries, replace(entry, number=number)))
    desk.work.journal.append(entry)
    settle_swatch(desk, swatch, number, cause)
    return Outcome(
        said,
        lots=frozenset({swatch.lot}),
        swatches=frozenset({swatch.code}),
        subject=swatch.code,
        reminders=True,
    )


SWATCH: Final = Noun(
    swatch_entries,
    _written,
    Act.SWATCH_NEW,
    tr_later("More of {code} stands on its cutting. Take that back first. Nothing was changed."),
    _reader,
)
undo_swatch = partial(undo_of, SWATCH)
redo_swatch = partial(redo_of, SWATCH)
correct_swatch = partial(correct_of, SWATCH)
