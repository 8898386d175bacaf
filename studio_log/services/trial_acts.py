"""What is done with trials: each act an entry of the trial's own journal."""

import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.number_text import quoted
from studio_log.domain.reminders import Cause
from studio_log.domain.swatch_text import MOST_2U, check_lab
from studio_log.domain.trial_design import MOST_SEED, lay_out
from studio_log.domain.trial_due import open_groups
from studio_log.domain.trial_text import arms_of, named_arm
from studio_log.domain.trials import MEASURES, WAYS, Arm, Cell, Trial, Way, control_of, trial_from
from studio_log.language.words import tr
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import LONGEST_NAME, clean
from studio_log.services.swatch_keeping import swatch_of
from studio_log.services.trial_keeping import dry_days, local_day, settle_trial, trial_entries
from studio_log.services.trials import (
    DoArm,
    GiveLot,
    GiveSwatch,
    NewTrial,
    NoteTrial,
    ReadTag,
    SetTrial,
    TrialPlan,
    UnveilTrial,
)

MOST_LEAD: Final = 60
MOST_AHEAD: Final = timedelta(days=3650)
DONE: Final = "done"
"""What an act makes of a reminder that it ends."""


def checked_plan(desk: Desk, plan: TrialPlan) -> tuple[tuple[Arm, ...], tuple[str, ...], date]:
    """Give arms, names of blocks and the day of a plan; Refusal where it is none."""
    if plan.way not in WAYS or plan.measure not in MEASURES:
        raise Refusal(
            tr("A trial goes {ways}, and is read by {measures}. Nothing was changed.",
               ways=", ".join(WAYS), measures=", ".join(MEASURES))
        )  # fmt: skip
    if not 0 <= plan.lead_d <= MOST_LEAD:
        raise Refusal(
            tr("From beans to dry cloth it takes 0 to {most} days. Nothing was changed.",
               most=MOST_LEAD)
        )  # fmt: skip
    arms = arms_of(plan.ages, plan.others)
    if plan.control.strip():
        named_arm(plan.control, arms)
    blocks = tuple(
        clean(one, tr("The batch"), LONGEST_NAME).replace("\n", " ") for one in plan.blocks
    )
    if len({one.casefold() for one in blocks}) < len(blocks) or not all(blocks):
        raise Refusal(tr("Each batch has a name of its own. Nothing was changed."))
    return arms, blocks, _day(desk, plan, arms)


def _day(desk: Desk, plan: TrialPlan, arms: Sequence[Arm]) -> date:
    """Give the day of a plan; where none was said the first on which it can be."""
    today = local_day(desk, desk.now)
    oldest = timedelta(days=round(max(arm.age_d or 0.0 for arm in arms)))
    first = today + timedelta(days=plan.lead_d)
    day = plan.day or (first + oldest if plan.way == "backwards" else first)
    if not today - MOST_AHEAD <= day <= today + MOST_AHEAD:
        raise Refusal(tr("A trial lies within ten years. Nothing was changed; look at the day."))
    return day


def new_trial(desk: Desk, command: NewTrial) -> Outcome:
    """Plan a trial: draw its orders and its tags, and write them down."""
    plan = command.plan
    arms, blocks, day = checked_plan(desk, plan)
    question = _question(command.question)
    chance = random.SystemRandom()
    seed = chance.randrange(MOST_SEED + 1) if plan.seed is None else plan.seed
    way: Way = "backwards" if plan.way == "backwards" else "forwards"
    control = named_arm(plan.control, arms).number if plan.control.strip() else control_of(arms)
    units = lay_out(arms, len(blocks), plan.replicates, way=way, seed=seed)
    data: dict[str, Any] = {
        "question": question,
        "arms": [{"name": arm.name} if arm.age_d is None else {"age": arm.age_d} for arm in arms],
        "blocks": list(blocks),
        "replicates": plan.replicates,
        "units": [[u.arm, u.block, u.replicate, u.tag, u.dip, u.read] for u in units],
        "seed": seed,
        "way": way,
        "day": day.isoformat(),
        "lead": plan.lead_d,
        "measure": plan.measure,
    }
    if control is not None:
        data["control"] = control
    code = f"T{desk.year % 100:02d}-{desk.work.next_code('trial', desk.year):03d}"
    entry = desk.entry(code, Act.TRIAL_NEW, command.at, data=data)
    said = tr("Trial {code} is planned: {count} pieces.", code=code, count=len(units))
    return _written(desk, (), entry, said, sure=command.sure)


def _question(text: str) -> str:
    found = clean(text, tr("The question"), LONGEST_NAME).replace("\n", " ").replace("\t", " ")
    if not found:
        raise Refusal(tr("A trial has one question: say it. Nothing was changed."))
    return found


def set_trial(desk: Desk, command: SetTrial) -> Outcome:
    """Change what is known of a trial."""
    entries = trial_entries(desk, command.code)
    data: dict[str, Any] = {}
    if command.question is not None:
        data["question"] = _question(command.question)
    if command.day is not None:
        data["day"] = command.day.isoformat()
    if command.ended is not None:
        data["ended"] = command.ended
    if command.control is not None:
        data["control"] = _new_control(trial_from(entries), command.control)
    if not data:
        raise Refusal(
            tr("Say what changes: the question, the day, the control, or that it is over.")
        )
    code = entries[0].subject
    said = tr("Trial {code} is changed.", code=code)
    return _written(desk, entries, desk.entry(code, Act.TRIAL_SET, data=data), said, sure=False)


def _new_control(trial: Trial, typed: str) -> int:
    """Give the number of an arm that is to be the control; Refusal once something was read."""
    arm = named_arm(typed, trial.arms)
    if trial.readings and arm.number != trial.control:
        raise Refusal(
            tr("{code}: pieces were read already, and a control chosen by what was seen proves "
               "nothing. Nothing was changed.", code=trial.code)
        )  # fmt: skip
    return arm.number


def give_lot(desk: Desk, command: GiveLot) -> Outcome:
    """Say which lot pieces come from."""
    entries = trial_entries(desk, command.code)
    trial = trial_from(entries)
    lot = desk.lot(command.lot)
    if lot.voided:
        raise Refusal(tr("{lot} was taken back. Nothing was changed.", lot=lot.code))
    cells = _cells(trial, command.arms, command.blocks)
    data = {"lots": [[arm, block, lot.code] for arm, block in cells]}
    entry = desk.entry(trial.code, Act.TRIAL_UNITS, data=data)
    said = tr("{code}: pieces of {lot} belong to it.", code=trial.code, lot=lot.code)
    return _written(desk, entries, entry, said, sure=False)


def give_swatch(desk: Desk, command: GiveSwatch) -> Outcome:
    """Say which swatch was cut from the piece of a tag."""
    entries = trial_entries(desk, command.code)
    trial = trial_from(entries)
    unit, swatch = trial.unit(command.tag), swatch_of(desk, command.swatch)
    other = next((n for n, code in trial.swatches.items() if code == swatch.code), None)
    if swatch.voided or other not in {None, unit.number}:
        raise Refusal(
            tr("{swatch} was taken back, or is the swatch of another tag. Nothing was changed.",
               swatch=swatch.code)
        )  # fmt: skip
    data = {"swatches": [[unit.number, swatch.code]]}
    entry = desk.entry(trial.code, Act.TRIAL_UNITS, data=data)
    said = tr("{code}: {swatch} is the swatch of tag {tag}.",
              code=trial.code, swatch=swatch.code, tag=unit.tag)  # fmt: skip
    return _written(desk, entries, entry, said, sure=False)


def _cells(trial: Trial, arms: Sequence[int], blocks: Sequence[int]) -> list[Cell]:
    for given, known, what in (
        (arms, len(trial.arms), tr("arm")),
        (blocks, len(trial.blocks), tr("batch")),
    ):
        odd = next((one for one in given if not 1 <= one <= known), None)
        if odd is not None:
            raise Refusal(
                tr("{code} has no {what} {number}: they are 1 to {most}. Nothing was changed.",
                   code=trial.code, what=what, number=odd, most=known)
            )  # fmt: skip
    return [
        cell for cell in trial.cells
        if (not arms or cell[0] in arms) and (not blocks or cell[1] in blocks)
    ]  # fmt: skip


def do_arm(desk: Desk, command: DoArm) -> Outcome:
    """Write down that arms were soyed or dyed."""
    entries = trial_entries(desk, command.code)
    trial = trial_from(entries)
    if command.what not in {"soy", "dye"}:
        raise Refusal(tr("An arm is soyed or dyed: soy, dye. Nothing was changed."))
    before = trial.soyed if command.what == "soy" else trial.dyed
    cells = [one for one in _cells(trial, command.arms, command.blocks) if one not in before]
    if command.what == "soy":
        cells = [one for one in cells if trial.arm(one[0]).age_d is not None]
    if not cells:
        raise Refusal(
            tr("All of that was done before. Nothing was changed; take the entry back first, or "
               "correct its time.")
        )  # fmt: skip
    data = {"what": command.what, "cells": [list(cell) for cell in cells]}
    note = clean(command.note, tr("The note"))
    entry = desk.entry(trial.code, Act.TRIAL_ARM, command.at, note=note, data=data)
    named = ", ".join(dict.fromkeys(trial.arm(arm).words for arm, _ in cells))
    said = (
        tr("{code}: arm {arms} is soyed.", code=trial.code, arms=named)
        if command.what == "soy"
        else tr("{code}: arm {arms} is dyed.", code=trial.code, arms=named)
    )
    return _written(desk, entries, entry, said, sure=command.sure)


def read_tag(desk: Desk, command: ReadTag) -> Outcome:
    """Write down what was read of a tag."""
    entries = trial_entries(desk, command.code)
    trial = trial_from(entries)
    unit = trial.unit(command.tag)
    readings = {} if command.lost else _figures(trial, command)
    entry = desk.entry(
        trial.code, Act.TRIAL_READ, command.at, note=clean(command.note, tr("The note")),
        readings=readings, data={"unit": unit.number},
    )  # fmt: skip
    left = len([one for one in trial.unread if one.number != unit.number])
    what = tr("lost") if command.lost else tr("read")
    said = tr("{code}: tag {tag} is {what}, {left} left.",
              code=trial.code, tag=unit.tag, what=what, left=left)  # fmt: skip
    return _written(desk, entries, entry, said, sure=command.sure)


def _figures(trial: Trial, command: ReadTag) -> dict[str, float | str]:
    if (command.value is None) == (command.lab is None):
        raise Refusal(tr("Give a figure or a colour for the tag. Nothing was changed."))
    found: dict[str, float | str] = {}
    if command.lab is not None:
        if trial.measure not in {"chroma", "lightness"}:
            raise Refusal(
                tr("{code} is read by {measure}: a colour does not say that. Nothing was changed.",
                   code=trial.code, measure=tr(MEASURES[trial.measure].words))
            )  # fmt: skip
        lab = check_lab(command.lab)
        found = {"L": round(lab.lightness, 4), "a": round(lab.a, 4), "b": round(lab.b, 4)}
    else:
        found["value"] = command.value or 0.0
    if command.two_u is not None:
        found["two_u"] = command.two_u
    return trial_readings(trial, found)


def trial_readings(trial: Trial, readings: Mapping[str, float | str]) -> dict[str, float | str]:
    """Give readings fit to keep, of a reading or of a correction of one."""
    kind = MEASURES[trial.measure]
    bounds = {"value": (kind.low, kind.high), "two_u": (0.0, MOST_2U),
              "L": (0.0, 110.0), "a": (-200.0, 200.0), "b": (-200.0, 200.0)}  # fmt: skip
    kept: dict[str, float | str] = {}
    for name, value in readings.items():
        low, high = bounds.get(name, (1.0, 0.0))
        if not isinstance(value, int | float) or not low <= value <= high:
            raise Refusal(
                tr("{name} {value} is no reading of {measure}, {low} to {high}. Nothing was "
                   "changed.", name=name, value=quoted(str(value)), measure=tr(kind.words),
                   low=f"{kind.low:g}", high=f"{kind.high:g}")
            )  # fmt: skip
        kept[name] = float(value)
    return kept


def unveil(desk: Desk, command: UnveilTrial) -> Outcome:
    """Tell the tags from each other, once all is read or it is said that the blind is broken."""
    entries = trial_entries(desk, command.code)
    trial = trial_from(entries)
    if trial.unveiling is not None:
        raise Refusal(tr("{code} is unveiled already. Nothing was changed.", code=trial.code))
    left = len(trial.unread)
    if left and not command.broken:
        raise Refusal(
            tr("{left} tags of {code} are not read yet: they would not be read blind any more. "
               "Nothing was unveiled; read them, say which are lost, or say that the blind is "
               "broken.", left=left, code=trial.code)
        )  # fmt: skip
    data = {"broken": bool(left), "unread": left}
    note = clean(command.note, tr("The note"))
    entry = desk.entry(trial.code, Act.TRIAL_UNVEIL, note=note, data=data)
    said = tr("{code} is unveiled.", code=trial.code)
    if left:
        said = tr("{code} is unveiled with {left} tags unread; the journal keeps that the blind "
                  "is broken.", code=trial.code, left=left)  # fmt: skip
    return replace(_written(desk, entries, entry, said, sure=False), final=True)


def note_trial(desk: Desk, command: NoteTrial) -> Outcome:
    """Write down a remark."""
    entries = trial_entries(desk, command.code)
    note = clean(command.note, tr("The note"))
    if not note:
        raise Refusal(tr("The note is empty. Nothing was changed."))
    code = entries[0].subject
    entry = desk.entry(code, Act.NOTE, command.at, note=note)
    said = tr("{code}: a remark is written down.", code=code)
    return _written(desk, entries, entry, said, sure=command.sure)


def written_on(
    desk: Desk, before: tuple[Entry, ...], entry: Entry, said: str, cause: Cause
) -> Outcome:
    """Append an entry if the whole journal reads with it, and settle the reminders."""
    trial = trial_from((*before, replace(entry, number=len(before) + 1)))
    desk.work.journal.append(entry)
    settle_trial(desk, trial, cause)
    return Outcome(
        said,
        trials=frozenset({trial.code}),
        code="" if before else trial.code,
        subject=trial.code,
        reminders=True,
    )


def _written(
    desk: Desk, before: tuple[Entry, ...], entry: Entry, said: str, *, sure: bool
) -> Outcome:
    desk.check_time(entry.at, sure=sure)
    if before and trial_from(before).voided:
        raise Refusal(tr("{code} was taken back. Nothing was changed.", code=entry.subject))
    answer = DONE if entry.act is Act.TRIAL_ARM else ""
    return written_on(desk, before, entry, said, Cause(None, answer, why=entry.act.words))


def due_groups(desk: Desk, trial: Trial) -> Mapping[str, tuple[str, int, date, tuple[int, ...]]]:
    """Give what is still to be done, by the tail of its reminder's key."""
    groups = open_groups(trial, dry_days(desk, trial))
    return {f"{what}/{arm}/{min(blocks, default=0)}": (what, arm, day, blocks)
            for what, arm, day, blocks in groups}  # fmt: skip


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {
    NewTrial: new_trial,
    SetTrial: set_trial,
    GiveLot: give_lot,
    GiveSwatch: give_swatch,
    DoArm: do_arm,
    ReadTag: read_tag,
    UnveilTrial: unveil,
    NoteTrial: note_trial,
}
