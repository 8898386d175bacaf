"""What a correction of an entry says, of a lot as of a bath."""

from collections.abc import Callable, Mapping
from typing import Any

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.language.words import tr
from studio_log.services.commands import Correct
from studio_log.services.desk import Desk
from studio_log.services.limits import clean
from studio_log.services.meanwhile import ask_about_entry

Reader = Callable[[Mapping[str, Any]], dict[str, Any]]
"""Gives readings as they are kept, or refuses them."""


def correction(
    desk: Desk, command: Correct, target: Entry, checked: Reader, *, keep_sure: bool
) -> Entry:
    """Give the entry that corrects moment, note or readings of another; Refusal of an empty one.

    `checked` gives the readings as they are kept, or refuses them; `keep_sure` writes down as
    well that the person was asked about the moment.
    """
    if command.seen is not None and not command.sure:
        ask_about_entry(desk, target.subject, command.seen, target.number)
    data: dict[str, Any] = {}
    if command.at is not None:
        desk.check_time(command.at, sure=command.sure)
        data["at"] = True
    if command.sure and keep_sure:
        data["sure"] = True
    note = clean(command.note, tr("The note")) if command.note is not None else ""
    readings = checked(command.readings)
    if command.at is None and not note and not readings:
        raise Refusal(tr("Say what is to be corrected: --at, --note or --reading."))
    return desk.entry(
        target.subject, Act.CORRECT, command.at, note=note, readings=readings, data=data,
        target=target.number,
    )  # fmt: skip
