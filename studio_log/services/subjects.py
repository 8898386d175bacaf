"""Whatever has a journal of its own beside lots: settled, answered and told by its letter."""

from collections.abc import Callable, Iterator, Mapping
from typing import Final

from studio_log.domain.bath_due import bath_reminders
from studio_log.domain.light_test import light_reminders
from studio_log.domain.reminders import Cause, Record, Reminder
from studio_log.domain.swatches import swatch_from
from studio_log.services.bath_acts import answer_bath
from studio_log.services.bath_keeping import BATHS, bath_of, baths, settle_bath
from studio_log.services.commands import AnswerReminder, Outcome
from studio_log.services.desk import Desk
from studio_log.services.light_acts import answer_swatch
from studio_log.services.swatch_keeping import SWATCHES, settle_swatch, swatch_entries, tested
from studio_log.services.trial_back import answer_trial
from studio_log.services.trial_keeping import (
    TRIALS,
    reminders_of_trial,
    settle_trial,
    trial_of,
    trials,
)


def is_lot(code: str) -> bool:
    """Say whether a code is that of a lot: it begins with a figure."""
    return code[:1].isdigit()


def _settle_swatch(desk: Desk, code: str, cause: Cause) -> list[Reminder]:
    entries = swatch_entries(desk, code)
    return settle_swatch(desk, swatch_from(entries), entries[-1].number, cause)


_SETTLE: Final[Mapping[str, Callable[[Desk, str, Cause], list[Reminder]]]] = {
    BATHS: lambda desk, code, cause: settle_bath(desk, bath_of(desk, code), cause),
    SWATCHES: _settle_swatch,
    TRIALS: lambda desk, code, cause: settle_trial(desk, trial_of(desk, code), cause),
}
ANSWERS: Final[Mapping[str, Callable[[Desk, Record, AnswerReminder], Outcome]]] = {
    BATHS: answer_bath,
    SWATCHES: answer_swatch,
    TRIALS: answer_trial,
}
"""What answers a reminder, by the letter of its subject."""


def settle_any(desk: Desk, code: str, cause: Cause) -> list[Reminder]:
    """Settle whatever the code names."""
    other = _SETTLE.get(code[:1])
    return desk.settle(desk.lot(code), cause) if other is None else other(desk, code, cause)


def settle_others(desk: Desk, cause: Cause) -> None:
    """Settle all that may have reminders and is no lot."""
    for bath in baths(desk):
        settle_bath(desk, bath, cause)
    for trial in trials(desk):
        settle_trial(desk, trial, cause)
    for swatch in tested(desk):
        _settle_swatch(desk, swatch.code, cause)


def reminders_of_others(desk: Desk) -> Iterator[Reminder]:
    """Work out every reminder of what is no lot."""
    for bath in baths(desk):
        yield from bath_reminders(bath, desk.now, desk.quiet)
    for trial in trials(desk):
        yield from reminders_of_trial(desk, trial)
    for swatch in tested(desk):
        yield from light_reminders(swatch, desk.quiet)
