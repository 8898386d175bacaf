"""The window light test of a swatch: begun, ended, and its reminders answered."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.reminders import Record
from studio_log.domain.swatches import swatch_from
from studio_log.language.words import tr
from studio_log.services.commands import AnswerReminder, Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import LONGEST_NAME, clean
from studio_log.services.own_journals import PUT_OFF, put_off, seen
from studio_log.services.swatch_acts import written
from studio_log.services.swatch_keeping import swatch_entries
from studio_log.services.swatches import LightTest


def light_test(desk: Desk, command: LightTest) -> Outcome:
    """Hang the test half into the light, or take it down for good."""
    entries = swatch_entries(desk, command.code)
    swatch = swatch_from(entries)
    if command.ended and swatch.light_begun is None:
        raise Refusal(tr("No light test of {code} runs. Nothing was changed.", code=swatch.code))
    if not command.ended and swatch.test_place is None:
        raise Refusal(
            tr("{code} is not cut in halves: one half stays in the dark, to be compared with. "
               "Nothing was changed; cut it and say where the test half is.", code=swatch.code)
        )  # fmt: skip
    if not command.ended and swatch.light_begun is not None:
        raise Refusal(
            tr("A light test of {code} runs already. Nothing was changed; end it first.",
               code=swatch.code)
        )  # fmt: skip
    data = {"test": "light", "place": clean(command.place, tr("The place"), LONGEST_NAME)}
    entry = desk.entry(
        swatch.code, Act.SWATCH_TEST, command.at, note=clean(command.note, tr("The note")),
        data={**data, "ended": True} if command.ended else data,
    )  # fmt: skip
    said = (
        tr("{code}: its light test has ended.", code=swatch.code)
        if command.ended
        else tr("{code}: its light test has begun; it is read after 2, 4 and 8 weeks.",
                code=swatch.code)
    )  # fmt: skip
    return written(desk, entries, entry, said, sure=command.sure)


def answer_swatch(desk: Desk, record: Record, command: AnswerReminder) -> Outcome:
    """Answer a reminder of a light test: seen, or put off; a grade answers it as well."""
    one = record.reminder
    if command.answer == PUT_OFF:
        said = put_off(desk, record, command)
        return Outcome(said, swatches=frozenset({one.subject}), reminders=True)
    note = seen(desk, one, command, command.at)
    before = swatch_entries(desk, one.subject)
    outcome = written(desk, before, note.entry, note.said, sure=command.sure, answer=note.answer)
    return replace(outcome, reminders=True)


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {LightTest: light_test}
