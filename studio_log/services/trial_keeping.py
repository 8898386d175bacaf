"""Trials at the desk: reading them from the journal, and bringing their reminders into line."""

from contextlib import suppress
from datetime import date, datetime
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Entry
from studio_log.domain.lots import cure_of
from studio_log.domain.reminders import Cause, Reminder
from studio_log.domain.trial_due import trial_reminders
from studio_log.domain.trial_text import TRIAL_CODE, whole_trial_code
from studio_log.domain.trials import Cell, Trial, Unit, trial_from
from studio_log.language.words import tr
from studio_log.services.desk import Desk
from studio_log.services.own_journals import align, every

TRIALS: Final = "T"
"""What the code of every trial begins with."""


def trial_entries(desk: Desk, text: str) -> tuple[Entry, ...]:
    """Give the journal of a trial; Refusal for an unknown code."""
    code = whole_trial_code(text)
    entries = desk.entries(code)
    if not entries:
        raise Refusal(
            tr("There is no trial {code}. Nothing was changed; `trial list` shows them.", code=code)
        )
    return entries


def trial_of(desk: Desk, code: str) -> Trial:
    """Give a trial as it stands; Refusal for an unknown code."""
    return trial_from(trial_entries(desk, code))


def trials(desk: Desk) -> list[Trial]:
    """Give every trial that was not taken back, in the order of their codes."""
    return every(desk, TRIALS, trial_from)


def code_named(desk: Desk, name: str) -> str:
    """Give the code of a trial, named by it or by words that only its question holds."""
    if TRIAL_CODE.match(name):
        return whole_trial_code(name)
    words = name.casefold().split()
    found = [one for one in trials(desk) if all(word in one.question.casefold() for word in words)]
    if len(found) == 1 and words:
        return found[0].code
    known = ", ".join(one.code for one in found[:8])
    raise Refusal(
        tr("Several trials hold “{name}”: {known}. Give the code of one.",
           name=name[:60], known=known)
        if words and found
        else tr("There is no trial “{name}”; `trial list` shows them.", name=name[:60])
    )  # fmt: skip


def local_day(desk: Desk, at: datetime) -> date:
    """Give the day of a moment on the studio's wall."""
    return at.astimezone(ZoneInfo(desk.zone)).date()


def dry_days(desk: Desk, trial: Trial) -> dict[Cell, date]:
    """Give the day on which the lot of each arm and block was fully dry, where it is known."""
    known: dict[str, date] = {}
    for code in set(trial.lots.values()):
        with suppress(Refusal):
            cure = cure_of(desk.lot(code))
            if cure is not None:
                known[code] = local_day(desk, cure.fully_dry)
    return {cell: known[code] for cell, code in trial.lots.items() if code in known}


def age_of(desk: Desk, trial: Trial, unit: Unit, dry: dict[Cell, date]) -> float | None:
    """Give a piece's cure age in days, as it came to be, else as planned; None for no age.

    Days of the calendar from dry to dyed, as the dyer counts. Age 0 stays a control.
    """
    planned = trial.arm(unit.arm).age_d
    dyed = trial.dyed.get(unit.cell)
    if not planned or dyed is None or unit.cell not in dry:
        return planned
    return float(max((local_day(desk, dyed) - dry[unit.cell]).days, 0))


def reminders_of_trial(desk: Desk, trial: Trial) -> list[Reminder]:
    """Work a trial's reminders out."""
    return trial_reminders(trial, dry_days(desk, trial), desk.quiet)


def settle_trial(desk: Desk, trial: Trial, cause: Cause) -> list[Reminder]:
    """Bring a trial's reminders into line with its journal; gives those worked out."""
    return align(desk, trial.code, reminders_of_trial(desk, trial), cause)
