"""Marking acts on steps, by number, by name or "now"; and what that means for later."""

from collections.abc import Mapping
from datetime import UTC, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act, standing
from studio_log.domain.lots import Lot, LotStep, StepState, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.reminders import Cause
from studio_log.domain.replay import TWICE
from studio_log.domain.windows import start_advice, windows_of
from studio_log.present.words import moment
from studio_log.services.commands import AnswerReminder, Mark, Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import clean
from studio_log.services.spoil_reads import spoils_of_step

LOT_ACTS = frozenset({Act.USE, Act.STOP, Act.NOTE})
"""Acts that may stand for the whole lot, without a step."""
MARKABLE = frozenset(list(Act)[:12])
ANSWERS: Mapping[Act, str] = {
    Act.START: "started",
    Act.END: "done",
    Act.TEND: "tended",
    Act.DRY: "dry",
    Act.DAMP: "still damp",
    Act.SKIP: "skipped",
    Act.USE: "used",
    Act.PUTOFF: "",
}
MOST_OFF = timedelta(days=60)
MOST_AHEAD = timedelta(days=3650)
LONGEST_READING = 60


def mark(desk: Desk, command: Mark) -> Outcome:
    """Mark an act."""
    if command.act not in MARKABLE:
        raise Refusal(f"{command.act.value!r} is not an act that can be marked.")
    lot = desk.lot(command.code)
    step = find_step(lot, command.step, command.act)
    _not_twice(desk, lot, command)
    at = desk.now if command.act in {Act.PLAN, Act.PUTOFF} else command.at
    entry = desk.entry(
        lot.code,
        command.act,
        at,
        step=step.number if step else None,
        note=clean(command.note, "The note"),
        readings=checked_readings(command.readings),
        data=_data(desk, lot, step, command),
    )
    after = desk.write(lot, entry, sure=command.sure)
    cause = Cause(
        step.number if step else None,
        ANSWERS.get(command.act, ""),
        why=f"{command.act.words} marked",
    )
    desk.settle(after, cause)
    return Outcome(
        _words(desk, after, step, command.act, entry.at),
        advice=(
            *_spoils(after, step, command),
            *_advice(desk, after, step, command.act),
        ),
        lots=frozenset({lot.code}),
        reminders=True,
        subject=lot.code,
        wants_milk=lot.code if _made_milk(desk, step, command.act, lot.code) else "",
    )


def _not_twice(desk: Desk, lot: Lot, command: Mark) -> None:
    """Ask where a step is repeated twice within a minute: that is a double click."""
    if command.act is not Act.REPEAT or command.sure:
        return
    last = standing(desk.entries(lot.code))[-1]
    if last.act is Act.REPEAT and desk.now - last.written < TWICE:
        raise Question("It was repeated within the same minute. Once more all the same?")


def _made_milk(desk: Desk, step: LotStep | None, act: Act, code: str) -> bool:
    """Say whether this act made milk that no batch on record stands for yet."""
    made = act is Act.END and step is not None and step.spec.makes_milk
    milk = desk.milk_of(code) if made else None
    return made and (milk is None or milk.use_by < desk.now)


def find_step(lot: Lot, text: str, act: Act) -> LotStep | None:
    """Give the step a person means; None where the act is the whole lot's."""
    wanted = text.strip().lower()
    if wanted == "now":
        return _now_step(lot, act)
    if wanted.isdecimal() and len(wanted) < 6:
        return lot.step(int(wanted))
    named = [step for step in lot.steps if step.slug == wanted]
    if named:
        return named[-1]
    names = ", ".join(step.slug for step in lot.steps)
    raise Refusal(f"{lot.code} has no step {text[:40]!r}. Nothing was changed; it has: {names}.")


def _now_step(lot: Lot, act: Act) -> LotStep | None:
    if act in LOT_ACTS:
        cure = cure_of(lot)
        return cure.step if cure is not None and act is Act.USE else None
    running = [step for step in lot.open_steps() if step.spec.kind is not StepKind.CURE]
    opened = [
        step for step in lot.steps if not step.optional and lot.state_of(step) is StepState.OPEN
    ]
    chosen = running if act is not Act.START and running else (opened or running)
    if not chosen:
        raise Refusal(f"No step of {lot.code} is open now. Nothing was changed; name the step.")
    if len(chosen) > 1 and running:
        names = ", ".join(f"{step.number} ({step.slug})" for step in chosen)
        raise Refusal(f"Several steps of {lot.code} are open: {names}. Name the one you mean.")
    return chosen[0]


def checked_readings(readings: Mapping[str, float | str]) -> dict[str, float | str]:
    """Give the readings fit to keep; Refusal for one without a name or out of bounds."""
    kept = {}
    for name, value in readings.items():
        label = clean(name, "A reading's name", LONGEST_READING)
        if not label:
            raise Refusal("A reading needs a name, as in temperature=21. Nothing was changed.")
        if isinstance(value, int | float) and not -1e9 < value < 1e9:
            raise Refusal(f"{label}: {value} is no reading. Nothing was changed.")
        kept[label] = clean(value, label, LONGEST_READING * 4) if isinstance(value, str) else value
    return kept


def _data(desk: Desk, lot: Lot, step: LotStep | None, command: Mark) -> dict[str, Any]:
    if command.act is Act.PUTOFF:
        return {"until": put_off_until(desk, command).isoformat()}
    if command.act is Act.PLAN:
        return {"planned": _planned(desk, lot, step, command).isoformat()}
    if command.act is Act.START and step is not None and step.spec.uses_milk:
        return _milk_data(desk, lot, command)
    return {}


def put_off_until(desk: Desk, command: Mark | AnswerReminder) -> datetime:
    """Give the moment to put off to; Refusal unless it is ahead and within 60 days."""
    if command.until_morning:
        return next_morning(desk)
    span = command.put_off
    if span is None and command.at is not None:
        span = command.at - desk.now
    if span is None or not timedelta(0) < span <= MOST_OFF:
        raise Refusal("Say for how long to put it off, as in 10m or 2h, up to 60 days.")
    return desk.now + span


def next_morning(desk: Desk) -> datetime:
    """Give the end of the coming quiet hours; 07:00 where there are none."""
    night = next(desk.quiet.nights(desk.now, desk.now + timedelta(days=2)), None)
    if night is not None:
        return night.end
    zone = ZoneInfo(desk.zone)
    day = desk.now.astimezone(zone).date() + timedelta(days=1)
    return datetime.combine(day, time(7), zone).astimezone(UTC)


def _planned(desk: Desk, lot: Lot, step: LotStep | None, command: Mark) -> datetime:
    if step is None or command.at is None:
        raise Refusal("Say which step and, with --at, when it is planned. Nothing was changed.")
    if abs(command.at - desk.now) > MOST_AHEAD:
        raise Refusal("Plan within ten years. Nothing was changed; look at the year.")
    window = windows_of(lot, desk.now, desk.quiet).get(step.number)
    if window is None:
        raise Refusal(f"{step.title} of {lot.code} is closed already. Nothing was changed.")
    bounds = window.end if step.running else window.start
    if command.at < desk.now or not bounds.holds(command.at):
        last = moment(bounds.latest, desk.now, desk.zone) if bounds.latest else "any time after"
        first = moment(max(bounds.earliest, desk.now), desk.now, desk.zone)
        raise Refusal(
            f"{step.title} can be planned from {first} to {last}, not "
            f"{moment(command.at, desk.now, desk.zone)}. Nothing was changed."
        )
    return command.at


def _milk_data(desk: Desk, lot: Lot, command: Mark) -> dict[str, Any]:
    milk = desk.milk_of(lot.code)
    if milk is None:
        return {}
    at = command.at or desk.now
    if at > milk.use_by and not command.sure:
        raise Question(
            f"Milk {milk.code} was good until {moment(milk.use_by, desk.now, desk.zone)}. "
            "Use it all the same?"
        )
    return {"milk": milk.code}


def _words(desk: Desk, lot: Lot, step: LotStep | None, act: Act, at: datetime) -> str:
    what = step.title if step else lot.name
    if act is Act.PLAN and step is not None:
        planned = lot.step(step.number).plan or at
        return f"{lot.code} {what}: planned for {moment(planned, desk.now, desk.zone)}."
    return f"{lot.code} {what}: {act.words}, {moment(at, desk.now, desk.zone)}."


def _spoils(lot: Lot, step: LotStep | None, command: Mark) -> list[str]:
    """Say what is about to spoil, where a step was begun or something was read in it."""
    if step is None or (command.act is not Act.START and not command.readings):
        return []
    return spoils_of_step(lot, lot.step(step.number))


def _advice(desk: Desk, lot: Lot, step: LotStep | None, act: Act) -> list[str]:
    """Say when a step that has begun is best ended, and when starting otherwise were better."""
    if act not in {Act.START, Act.END, Act.DRY}:
        return []
    windows = windows_of(lot, desk.now, desk.quiet)
    found: list[str] = []
    for one in lot.open_steps():
        window = windows.get(one.number)
        if window is None or one.spec.kind is StepKind.CURE or one.start is None:
            continue
        found.extend(filter(None, [best_words(desk, one, window), _waking_start(desk, one)]))
    if _made_milk(desk, step, act, lot.code):
        found.append("Record the milk, so that each coat names it.")
    return found


def best_words(desk: Desk, step: LotStep, window: Any) -> str:
    """Say why a best moment is what it is, where it was moved; "" where it was not."""
    night = window.moved.night
    if night is None or window.moved.clash is not None:
        return ""
    best = moment(window.moved.at, desk.now, desk.zone)
    aim = moment(window.end.aim, desk.now, desk.zone)
    latest = window.end.latest
    until = f" to {moment(latest, desk.now, desk.zone)}" if latest else ""
    return (
        f"{step.title}: best ended {best}. The aim, {aim}, falls in quiet hours "
        f"({desk.quiet.words}); this is the waking moment nearest to it in the window "
        f"({moment(window.end.earliest, desk.now, desk.zone)}{until})."
    )


def _waking_start(desk: Desk, step: LotStep) -> str:
    lasts = step.spec.lasts
    if lasts is None or step.start is None:
        return ""
    found = start_advice(step, lasts, step.start, desk.quiet)
    if found is None:
        return ""
    before, after = (moment(at, desk.now, desk.zone) for at in found)
    return (
        f"{step.title} would have to end in quiet hours. Start by {before} or after {after} "
        "and it ends in waking hours."
    )
