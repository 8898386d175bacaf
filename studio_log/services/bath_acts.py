"""What is done with baths and vats: each act an entry of the bath's own journal."""

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

from studio_log.domain.bath_kinds import KINDS
from studio_log.domain.baths import Bath, bath_from
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.reminders import Cause, Kind, Record
from studio_log.language.words import tr, tr_later
from studio_log.present import words
from studio_log.services.bath_keeping import bath_entries, settle_bath
from studio_log.services.baths import MarkBath, NewBath, SetBath
from studio_log.services.commands import AnswerReminder, Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import LONGEST_NAME, MOST_GRAMS, MOST_LITRES, clean
from studio_log.services.marking import MOST_AHEAD, checked_readings, find_step
from studio_log.services.own_journals import PUT_OFF, put_off, seen

MOST_LOTS: Final = 50
MOST_FED: Final = 20
LONGEST_DIP: Final = timedelta(days=2)
BOUNDS: Final[Mapping[str, tuple[float, float]]] = {"ph": (0.0, 14.0), "temperature": (0.0, 105.0)}
"""Readings that are figures, and what they lie between."""
PH: Final = "pH {}"
HEAT: Final = "{} °C"
MEASURED: Final = ("ph", "temperature", "colour", "flower")
"""What is read in a bath: pH, °C, and the liquid and the flower of a vat in words."""
DONE: Final[Mapping[Act, str]] = {
    Act.BATH_USE: tr_later("used"),
    Act.BATH_DIP: tr_later("dipped"),
    Act.BATH_FEED: tr_later("fed"),
    Act.BATH_REFRESH: tr_later("refreshed"),
    Act.BATH_READY: tr_later("made ready"),
    Act.PLAN: tr_later("planned anew"),
}
"""What an act makes of a reminder that it ends."""
ANSWER_ACT: Final[Mapping[Kind, Act]] = {
    Kind.MAKE_READY: Act.BATH_READY,
    Kind.REFRESH: Act.BATH_REFRESH,
}
"""The act that answers a reminder of a bath; any other is seen and no more."""


SAID: Final[Mapping[Act, str]] = {
    Act.BATH_USE: tr_later("{code}: cloth went through, {at}."),
    Act.BATH_DIP: tr_later("{code}: a dip, {at}."),
    Act.BATH_READ: tr_later("{code}: read, {at}."),
    Act.BATH_FEED: tr_later("{code}: fed, {at}."),
    Act.BATH_REFRESH: tr_later("{code}: refreshed, {at}."),
    Act.BATH_READY: tr_later("{code}: made ready, {at}."),
    Act.PLAN: tr_later("{code}: its next use is planned for {at}."),
    Act.NOTE: tr_later("{code}: a remark, {at}."),
}


def new_bath(desk: Desk, command: NewBath) -> Outcome:
    """Make a bath."""
    kind = KINDS.get(command.kind)
    if kind is None:
        raise Refusal(
            tr("There is no kind of bath {kind}. Nothing was made; there are: {kinds}.",
               kind=repr(command.kind[:40]), kinds=", ".join(KINDS))
        )  # fmt: skip
    data: dict[str, Any] = {"kind": kind.slug, "name": _name(command.name)}
    data["litres"] = kind.litres if command.litres is None else _litres(command.litres)
    data["place"] = clean(command.place, tr("The place"), LONGEST_NAME)
    if command.refresh_grams is not None:
        data["own_refresh"] = _grams(command.refresh_grams)
    code = f"B{desk.year % 100:02d}-{desk.work.next_code('bath', desk.year):03d}"
    entry = desk.entry(code, Act.BATH_NEW, command.made_at, data=data)
    said = tr("Bath {code}, {title}, is recorded.", code=code, title=tr(kind.title))
    return _written(desk, (), entry, said, sure=command.sure)


def set_bath(desk: Desk, command: SetBath) -> Outcome:
    """Change a bath's name, place, volume or limit, or finish it."""
    entries = bath_entries(desk, command.code)
    data: dict[str, Any] = {}
    if command.name is not None:
        data["name"] = _name(command.name)
    if command.place is not None:
        data["place"] = clean(command.place, tr("The place"), LONGEST_NAME)
    if command.litres is not None:
        data["litres"] = _litres(command.litres)
    if command.refresh_grams is not None:
        data["own_refresh"] = _grams(command.refresh_grams)
    if command.finished is not None:
        data["finished"] = command.finished
    if not data:
        raise Refusal(
            tr("Say what changes: name, place, litres, its limit, or that it is finished.")
        )
    code = entries[0].subject
    entry = desk.entry(code, Act.BATH_SET, data=data)
    said = (
        tr("Bath {code} is finished.", code=code)
        if command.finished
        else tr("Bath {code} is changed.", code=code)
    )
    return _written(desk, entries, entry, said, sure=command.sure)


def mark_bath(desk: Desk, command: MarkBath) -> Outcome:
    """Write what was done with a bath into its journal."""
    make = _DATA.get(command.act)
    if make is None:
        raise Refusal(tr("{act} is nothing that is done to a bath.", act=command.act.words))
    entries = bath_entries(desk, command.code)
    code = entries[0].subject
    entry = desk.entry(
        code,
        command.act,
        None if command.act is Act.PLAN else command.at,
        note=clean(command.note, tr("The note")),
        readings=bath_readings(command.readings),
        data=make(desk, command),
    )
    _says_something(entry)
    entry = replace(entry, step=_step_of(desk, command))
    at = command.planned or entry.at
    said = tr(
        SAID[command.act],
        code=code,
        at=words.moment(at, desk.now, desk.zone),
    )
    if command.act is Act.PLAN and command.planned is None:
        said = tr("{code}: no use is planned any more.", code=code)
    return _written(desk, entries, entry, said, sure=command.sure)


def _written(
    desk: Desk,
    before: tuple[Entry, ...],
    entry: Entry,
    said: str,
    *,
    sure: bool,
    cause: Cause | None = None,
) -> Outcome:
    """Check an entry against the bath, append it and say what it means for the bath."""
    desk.check_time(entry.at, sure=sure)
    bath = bath_from((*before, replace(entry, number=len(before) + 1)))
    desk.work.journal.append(entry)
    settle_bath(desk, bath, cause or Cause(None, DONE.get(entry.act, ""), why=entry.act.words))
    return Outcome(
        said,
        advice=tuple(_advice(bath, entry)),
        baths=frozenset({bath.code}),
        code="" if before else bath.code,
        subject=bath.code,
        reminders=True,
    )


def _advice(bath: Bath, entry: Entry) -> list[str]:
    """Say what the act leaves to be done: what is out of bounds, what wants refreshing."""
    found = [
        words for name, said in entry.readings.items() if (words := reading_fault(bath, name, said))
    ]
    if entry.act is Act.BATH_USE:
        if bath.refresh_since is not None and bath.kind.refresh is not None:
            found.append(tr("It wants refreshing now. {do}", do=tr(bath.kind.refresh.do)))
        elif bath.refresh_since is not None:
            found.append(tr("It wants refreshing now."))
        elif bath.kind.between:
            found.append(tr(bath.kind.between))
    return found


def reading_fault(bath: Bath, name: str, said: float | str) -> str:
    """Say what a reading tells against a bath, "" where it is as it should be."""
    within = {"ph": bath.kind.ph, "temperature": bath.heat}.get(name)
    if within is None or isinstance(said, str):
        return ""
    form = PH if name == "ph" else HEAT
    figure, why = form.format(f"{said:g}"), tr(within.why)
    if within.low is not None and said < within.low:
        return tr("{figure} is below {limit}: {why} (common practice).",
                  figure=figure, limit=form.format(f"{within.low:g}"), why=why)  # fmt: skip
    if within.high is not None and said > within.high:
        return tr("{figure} is above {limit}: {why} (common practice).",
                  figure=figure, limit=form.format(f"{within.high:g}"), why=why)  # fmt: skip
    return ""


def bath_readings(readings: Mapping[str, float | str]) -> dict[str, float | str]:
    """Give readings fit to keep: pH 0 to 14, 0 to 105 °C, the others in words."""
    kept = checked_readings(readings)
    for name, (low, high) in BOUNDS.items():
        value = kept.get(name)
        sound = isinstance(value, int | float) and low <= value <= high
        if value is not None and not sound:
            raise Refusal(
                tr("{value} is no {name} of a bath: from {low} to {high}. Nothing was changed.",
                   value=value, name=name, low=f"{low:g}", high=f"{high:g}")
            )  # fmt: skip
    return kept


def _says_something(entry: Entry) -> None:
    """Refuse an entry that would tell nothing."""
    if entry.act is Act.BATH_READ and not entry.readings and not entry.note:
        raise Refusal(tr("Say what was read: pH, heat, colour or flower. Nothing was changed."))
    if entry.act is Act.BATH_FEED and not entry.data.get("fed") and not entry.note:
        raise Refusal(tr("Say what the bath was fed. Nothing was changed."))
    if entry.act is Act.NOTE and not entry.note:
        raise Refusal(tr("The note is empty. Nothing was changed."))


def _step_of(desk: Desk, command: MarkBath) -> int | None:
    """Give the number of the lot's step that the cloth was at, None where none is named."""
    if not command.step:
        return None
    if len(command.lots) != 1:
        raise Refusal(tr("A step belongs to one lot: name that lot alone. Nothing was changed."))
    step = find_step(desk.lot(command.lots[0]), command.step, Act.NOTE)
    return step.number if step is not None else None


def _lots(desk: Desk, command: MarkBath) -> list[str]:
    if len(command.lots) > MOST_LOTS:
        raise Refusal(tr("Fifty lots at once at most. Nothing was changed."))
    return list(dict.fromkeys(desk.lot(code).code for code in command.lots))


def _use_data(desk: Desk, command: MarkBath) -> dict[str, Any]:
    codes = _lots(desk, command)
    grams = command.grams
    if grams is None:
        own = [desk.lot(code).grams for code in codes]
        known = [one for one in own if one is not None]
        if not codes or len(known) < len(own):
            raise Refusal(
                tr("Say how much cloth went through: its weight, or a lot whose weight is known. "
                   "Nothing was changed.")
            )  # fmt: skip
        grams = sum(known)
    step = _step_of(desk, command)
    data: dict[str, Any] = {"lots": codes, "grams": _grams(grams)}
    return data if step is None else {**data, "step": step}


def _dip_data(desk: Desk, command: MarkBath) -> dict[str, Any]:
    data: dict[str, Any] = {"lots": _lots(desk, command)}
    for name in ("dipped", "aired"):
        span = getattr(command, name)
        if span is None:
            continue
        if not timedelta(0) < span <= LONGEST_DIP:
            raise Refusal(tr("A dip or an airing lasts up to two days. Nothing was changed."))
        data[name] = span.total_seconds()
    return data


def _fed_data(_desk: Desk, command: MarkBath) -> dict[str, Any]:
    if len(command.fed) > MOST_FED:
        raise Refusal(tr("Twenty things at once at most. Nothing was changed."))
    fed = [clean(one, tr("What was fed"), LONGEST_NAME) for one in command.fed]
    return {"fed": [one for one in fed if one]}


def _plan_data(desk: Desk, command: MarkBath) -> dict[str, Any]:
    at = command.planned
    if at is None:
        return {"planned": None}
    if not desk.now - timedelta(minutes=2) <= at <= desk.now + MOST_AHEAD:
        raise Refusal(tr("Plan a use that is still ahead, within ten years. Nothing was changed."))
    return {"planned": at.isoformat()}


def _no_data(_desk: Desk, _command: MarkBath) -> dict[str, Any]:
    return {}


_DATA: Final[Mapping[Act, Callable[[Desk, MarkBath], dict[str, Any]]]] = {
    Act.BATH_USE: _use_data,
    Act.BATH_DIP: _dip_data,
    Act.BATH_READ: _no_data,
    Act.BATH_FEED: _fed_data,
    Act.BATH_REFRESH: _fed_data,
    Act.BATH_READY: _fed_data,
    Act.PLAN: _plan_data,
    Act.NOTE: _no_data,
}
MARKABLE: Final = frozenset(_DATA)


def _name(text: str) -> str:
    return clean(text, tr("The name"), LONGEST_NAME).replace("\n", " ").replace("\t", " ")


def _litres(litres: float) -> float:
    if not math.isfinite(litres) or not 0 < litres <= MOST_LITRES:
        raise Refusal(tr("A bath has more than nothing and up to 5,000 L. Nothing was changed."))
    return float(litres)


def _grams(grams: float) -> float:
    if not math.isfinite(grams) or not 0 < grams <= MOST_GRAMS:
        raise Refusal(tr("Cloth weighs more than nothing and up to 500 kg. Nothing was changed."))
    return float(grams)


def answer_bath(desk: Desk, record: Record, command: AnswerReminder) -> Outcome:
    """Answer a reminder of a bath: by the act that fits it, or as seen, or put it off."""
    one = record.reminder
    if command.answer == PUT_OFF:
        said = put_off(desk, record, command)
        return Outcome(said, baths=frozenset({one.subject}), reminders=True)
    act = ANSWER_ACT.get(one.kind) if command.answer == "done" else None
    if act is not None:
        return mark_bath(
            desk, MarkBath(one.subject, act, command.at, command.note, sure=command.sure)
        )
    note = seen(desk, one, command)
    before = bath_entries(desk, one.subject)
    cause = Cause(None, note.answer, key=one.key)
    return _written(desk, before, note.entry, note.said, sure=command.sure, cause=cause)


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {
    NewBath: new_bath,
    SetBath: set_bath,
    MarkBath: mark_bath,
}
