"""Reminders of a trial: soy an arm, dye an arm, dye all. The same in, the same out."""

from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping
from datetime import UTC, date, datetime, time, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Kind, Reminder, Urgency
from studio_log.domain.trial_design import dye_day, soy_day
from studio_log.domain.trials import Cell, Trial, Unit
from studio_log.language.calendar_words import date_words
from studio_log.language.words import tr

MORNING: Final = time(9)
"""When the arm of a day is told (common practice, no source)."""

MOST_TAGS: Final = 60
"""Tags that one reminder tells; the window has them all."""


def on_day(day: date, zone: str) -> datetime:
    """Give the moment at which something of a day is told."""
    return datetime.combine(day, MORNING, ZoneInfo(zone)).astimezone(UTC)


def open_groups(
    trial: Trial, dry: Mapping[Cell, date]
) -> Iterator[tuple[str, int, date, tuple[int, ...]]]:
    """Give what is still to be done: "soy" or "dye", arm (0: all), day, blocks; by arm."""
    if trial.way == "backwards":
        for arm in trial.arms:
            blocks = [b for a, b in trial.cells if a == arm.number and (a, b) not in trial.soyed
                      and (a, b) not in trial.dyed]  # fmt: skip
            if arm.age_d is not None and blocks:
                yield "soy", arm.number, soy_day(trial, arm.number), tuple(blocks)
        if any(cell not in trial.dyed for cell in trial.cells):
            yield "dye", 0, trial.day, ()
        return
    days: dict[tuple[int, date], list[int]] = defaultdict(list)
    for cell in trial.cells:
        if cell not in trial.dyed:
            days[cell[0], dye_day(trial, cell, dry.get(cell))].append(cell[1])
    for (number, day), blocks in sorted(days.items(), key=lambda one: (one[0][1], one[0][0])):
        yield "dye", number, day, tuple(blocks)


def trial_reminders(trial: Trial, dry: Mapping[Cell, date], quiet: QuietHours) -> list[Reminder]:
    """Give every reminder of a trial that is due or coming, in order of time.

    `dry` says on which day the lot of an arm and block was fully dry, where that is known.
    """
    if not trial.live:
        return []
    found = [_reminder(trial, *group, quiet) for group in open_groups(trial, dry)]
    kept = [one for one in found if one.key.partition("/")[2] not in trial.answered]
    return sorted(kept, key=lambda one: (one.rings_at, one.key))


def _reminder(
    trial: Trial, what: str, arm: int, day: date, blocks: tuple[int, ...], quiet: QuietHours
) -> Reminder:
    due = on_day(day, quiet.zone)
    tail = f"{what}/{arm}/{min(blocks, default=0)}"
    title, why, late = _SAID[what if arm else "all"](trial, arm, day)
    if blocks and len(blocks) < len(trial.blocks):
        named = ", ".join(trial.block_words(one) for one in blocks)
        why = f"{why} " + tr("Of {blocks}.", blocks=named)
    return Reminder(
        key=f"{trial.code}/{tail}",
        subject=trial.code,
        step=None,
        kind=Kind.TRIAL_ARM,
        urgency=Urgency.SOON,
        due=due,
        rings_at=quiet.waking(due),
        title=title,
        why=why,
        if_late=late,
    )


def _soy(trial: Trial, arm: int, _day: date) -> tuple[str, str, str]:
    by = date_words(soy_day(trial, arm) + timedelta(days=trial.lead_d), short=True, year=True)
    bath = date_words(trial.day, short=True, year=True)
    return (
        tr("Soak beans for arm {arm} of {code}", arm=trial.arm(arm).words, code=trial.code),
        tr("Its cloth is to be dry on {by}, to meet the one bath on {bath}.", by=by, bath=bath),
        tr("Its cure is shorter by each day; the report counts the days as they were."),
    )


def _dye(trial: Trial, arm: int, day: date) -> tuple[str, str, str]:
    tags = ", ".join(one.tag for one in in_dip_order(trial) if one.arm == arm)
    return (
        tr("Dye arm {arm} of {code} on {day}", arm=trial.arm(arm).words, code=trial.code,
           day=date_words(day, short=True)),
        tr("In this order: {tags}.", tags=tags),
        tr("Its cure is longer by each day; the report counts the days as they were."),
    )  # fmt: skip


def _all(trial: Trial, _arm: int, _day: date) -> tuple[str, str, str]:
    tags = [one.tag for one in in_dip_order(trial)]
    told = " ".join(tags[:MOST_TAGS]) + (" …" if len(tags) > MOST_TAGS else "")
    order = tr("In this order: {tags}.", tags=told)
    return (
        tr("Dye all arms of {code} in one bath", code=trial.code),
        order,
        tr("All cures are longer by each day; the report counts the days as they were."),
    )


def in_dip_order(trial: Trial) -> list[Unit]:
    """Give the units in the order in which they are dipped."""
    return sorted(trial.units, key=lambda one: one.dip)


_SAID: Final[Mapping[str, Callable[[Trial, int, date], tuple[str, str, str]]]] = {
    "soy": _soy,
    "dye": _dye,
    "all": _all,
}
