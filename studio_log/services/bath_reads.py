"""Baths and vats in words: the list, and one with its diary."""

from collections.abc import Callable, Mapping
from datetime import datetime
from typing import Any, Final

from studio_log.domain.bath_due import bath_reminders, label
from studio_log.domain.bath_kinds import Range
from studio_log.domain.baths import Bath, BathUse, Dip, Seen, bath_from
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import META, Act, Entry, standing
from studio_log.domain.number_text import plain
from studio_log.domain.reminders import Kind
from studio_log.language.words import counted, tr, tr_later
from studio_log.present import words
from studio_log.services.bath_acts import HEAT, MEASURED, PH, reading_fault
from studio_log.services.bath_keeping import bath_entries, baths
from studio_log.services.baths import BathFor, BathLine, BathPage, BathsFor, DiaryLine
from studio_log.services.desk import Desk, whole_code
from studio_log.services.journal_back import last_of, next_redo

NEEDS: Final[Mapping[Kind, str]] = {
    Kind.REFRESH: tr_later("wants refreshing"),
    Kind.USE_BY: tr_later("use it up, skim or simmer it"),
}
SIMPLY: Final[Mapping[Act, str]] = {
    Act.BATH_READ: tr_later("Read"),
    Act.BATH_FEED: tr_later("Fed"),
    Act.BATH_REFRESH: tr_later("Refreshed"),
    Act.BATH_READY: tr_later("Made ready"),
    Act.BATH_SET: tr_later("Changed"),
    Act.NOTE: tr_later("Note"),
    Act.VOID: tr_later("Taken back"),
}


def bath_lines(_house: object, desk: Desk, question: BathsFor) -> tuple[BathLine, ...]:
    """Give the baths: those that stand first, the latest made first among them."""
    found = baths(desk)
    if question.lot:
        code = desk.lot(whole_code(question.lot)).code
        found = [bath for bath in found if code in bath.lots]
    elif not question.finished:
        found = [bath for bath in found if not bath.finished]
    found.sort(key=lambda bath: (not bath.finished, bath.made_at, bath.code), reverse=True)
    return tuple(_line(desk, bath) for bath in found)


def bath_page(house: Any, desk: Desk, question: BathFor) -> BathPage:
    """Give one bath with its diary, the latest line first."""
    entries = bath_entries(desk, question.code)
    bath = bath_from(entries)
    last, gone = last_of(entries), next_redo(entries)
    shown = (house.cautions[slug].short for slug in bath.kind.cautions if slug in house.cautions)
    faults = (reading_fault(bath, name, seen.value) for name, seen in bath.read.items())
    return BathPage(
        line=_line(desk, bath),
        facts=tuple(filter(None, _facts(desk, bath))),
        warnings=tuple(filter(None, faults)),
        lots=tuple((code, _lot_name(desk, code)) for code in bath.lots),
        diary=tuple(reversed(list(_diary(desk, bath, entries)))),
        cautions=tuple(shown),
        vat=bath.kind.vat,
        warms=bath.kind.warm_to is not None,
        undo=last.act.words if last is not None else "",
        redo=gone.act.words if gone is not None else "",
    )


def baths_of_lot(desk: Desk, code: str) -> str:
    """Say which baths a lot went through, and which exhaust it had; "" for none."""
    told = [_lot_in(bath, code) for bath in baths(desk) if code in bath.lots]
    return tr("Baths: {baths}.", baths="; ".join(told)) if told else ""


def _lot_in(bath: Bath, code: str) -> str:
    """Name a bath as one lot met it: "B26-003 Madder (the fresh bath, exhaust 2)"."""
    head = f"{bath.code} {label(bath)}"
    had = [exhaust_words(use.exhaust) for use in bath.uses if code in use.lots and use.counted]
    return f"{head} ({', '.join(dict.fromkeys(had))})" if had else head


def _lot_name(desk: Desk, code: str) -> str:
    try:
        return desk.lot(code).name
    except Refusal:
        return ""


def _figure(bath: Bath, name: str) -> float | None:
    seen = bath.read.get(name)
    return float(seen.value) if seen and not isinstance(seen.value, str) else None


def _line(desk: Desk, bath: Bath) -> BathLine:
    urgent = _urgent(desk, bath)
    return BathLine(
        code=bath.code,
        name=label(bath),
        kind=bath.kind.slug,
        kind_words=tr(bath.kind.title),
        litres=bath.litres or bath.kind.litres,
        place=bath.place,
        made_at=bath.made_at,
        fresh_since=bath.fresh_since,
        grams=bath.grams,
        grams_since=bath.grams_since,
        uses=len(bath.uses),
        refresh_grams=bath.most_grams,
        refresh_due=bath.refresh_since is not None,
        next_exhaust=bath.next_exhaust if bath.kind.exhausts else None,
        ph=_figure(bath, "ph"),
        temperature=_figure(bath, "temperature"),
        planned=bath.plan.at if bath.plan is not None else None,
        use_by=bath.use_by,
        finished=bath.finished,
        lots=bath.lots,
        words=" · ".join(filter(None, _state(desk, bath))),
        urgent=urgent,
    )


def _urgent(desk: Desk, bath: Bath) -> str:
    """Say what a bath wants now, "" for nothing; a spent one says so before it rings."""
    kinds = {
        one.kind: one
        for one in bath_reminders(bath, desk.now, desk.quiet)
        if one.rings_at <= desk.now or one.kind is Kind.REFRESH
    }
    return "; ".join(
        tr(NEEDS[kind]) if kind in NEEDS else tr("make it ready now") for kind in kinds
    )


def _state(desk: Desk, bath: Bath) -> list[str]:
    if bath.voided:
        return [tr("taken back")]
    found = [tr("finished")] if bath.finished else []
    found.append(_through(desk, bath))
    if bath.kind.exhausts:
        found.append(exhaust_words(bath.next_exhaust, ahead=True))
    found.append(_last_read(desk, bath))
    if bath.plan is not None:
        at = words.moment(bath.plan.at, desk.now, desk.zone)
        found.append(tr("planned {at}", at=at))
    return found


def exhaust_words(number: int, *, ahead: bool = False) -> str:
    """Say which bath a use has: the fresh one, or which exhaust of it."""
    if ahead:
        return (
            tr("next: the fresh bath")
            if number == 0
            else tr("next: exhaust {number}", number=number)
        )
    return tr("the fresh bath") if number == 0 else tr("exhaust {number}", number=number)


def _through(desk: Desk, bath: Bath) -> str:
    if not bath.uses:
        return tr("nothing through yet")
    since, most = bath.grams_since, bath.most_grams
    if most is None:
        return tr("{mass} through", mass=words.mass(bath.grams, desk.units))
    return tr("{mass} of {most} through",
              mass=words.mass(since, desk.units), most=words.mass(most, desk.units))  # fmt: skip


def _last_read(desk: Desk, bath: Bath) -> str:
    parts = [said for name in ("ph", "temperature") if (said := _said(name, bath.read.get(name)))]
    if not parts:
        return ""
    latest = max(bath.read[name].at for name in ("ph", "temperature") if name in bath.read)
    at = words.moment(latest, desk.now, desk.zone)
    return tr("{read} ({at})", read=", ".join(parts), at=at)


def _said(name: str, seen: Seen | None) -> str:
    return "" if seen is None else reading_words(name, seen.value)


def reading_words(name: str, value: float | str) -> str:
    """Say one reading: "pH 10.5", "48 °C", "liquid: yellow-green"."""
    figure = value if isinstance(value, str) else plain(value, 1)
    forms: Mapping[str, Callable[[], str]] = {
        "ph": lambda: PH.format(figure),
        "temperature": lambda: HEAT.format(figure),
        "colour": lambda: tr("liquid: {said}", said=figure),
        "flower": lambda: tr("flower: {said}", said=figure),
    }
    form = forms.get(name)
    return form() if form is not None else f"{name}: {figure}"


def _facts(desk: Desk, bath: Bath) -> list[str]:
    made = words.moment(bath.made_at, desk.now, desk.zone)
    litres = words.litres(bath.litres or bath.kind.litres, desk.units)
    where = tr(", {place}", place=bath.place) if bath.place else ""
    facts = [tr("{litres}{where}, made {made}.", litres=litres, where=where, made=made)]
    if bath.refreshed:
        since = words.moment(bath.fresh_since, desk.now, desk.zone)
        facts.append(tr("Refreshed last {since}.", since=since))
    facts.append(_uses_fact(desk, bath))
    facts.append(_limit_fact(desk, bath))
    facts.extend(_range_facts(bath))
    if bath.plan is not None:
        at = words.moment(bath.plan.at, desk.now, desk.zone)
        ready = tr(" It has been made ready.") if bath.plan.ready else ""
        facts.append(tr("Its next use is planned for {at}.", at=at) + ready)
    if bath.use_by is not None:
        by = words.day(bath.use_by, desk.zone, desk.now)
        facts.append(tr("Likely good until {by} (common practice).", by=by))
    facts.append(tr(bath.kind.between) if bath.kind.between else "")
    return facts


def _uses_fact(desk: Desk, bath: Bath) -> str:
    if not bath.uses:
        return tr("No cloth has gone through it yet.")
    uses = counted(len(bath.uses), tr_later("{n} use"), tr_later("{n} uses"))
    mass = words.mass(bath.grams, desk.units)
    said = tr("{mass} of cloth in {uses}.", mass=mass, uses=uses)
    if bath.kind.exhausts:
        said += " " + tr("The next one has {which}.", which=exhaust_words(bath.next_exhaust))
    return said


def _limit_fact(desk: Desk, bath: Bath) -> str:
    rule = bath.kind.refresh
    if bath.own_refresh is None and rule is not None and rule.uses is not None:
        return tr("Made anew after {uses} uses (common practice); {done} so far.",
                  uses=rule.uses, done=len(bath.uses_since))  # fmt: skip
    most = bath.most_grams
    if most is None:
        return ""
    mass, since = words.mass(most, desk.units), words.mass(bath.grams_since, desk.units)
    own = tr("the studio’s own figure") if bath.own_refresh else tr("common practice")
    return tr("Refreshed after {mass} of cloth ({own}); {since} since it was fresh.",
              mass=mass, own=own, since=since)  # fmt: skip


def _range_facts(bath: Bath) -> list[str]:
    """Say what it should measure, where no reading has told a fault that says so."""
    found = []
    for name, form, within in (("ph", PH, bath.kind.ph), ("temperature", HEAT, bath.heat)):
        seen = bath.read.get(name)
        told = seen is not None and reading_fault(bath, name, seen.value)
        if within is not None and not told:
            found.append(
                tr(
                    "{limits}: {why} (common practice).",
                    limits=_limits(within, form),
                    why=tr(within.why),
                )
            )
    return found


def _limits(within: Range, form: str) -> str:
    low, high = within.low, within.high
    if low is not None and high is not None:
        return form.format(f"{low:g}–{high:g}")
    if low is not None:
        return tr("{low} and over", low=form.format(f"{low:g}"))
    return tr("Up to {high}", high=form.format(f"{high:g}"))


def _diary(desk: Desk, bath: Bath, entries: tuple[Entry, ...]) -> list[DiaryLine]:
    stand = {one.number: one for one in standing(entries)}
    corrected = {one.target: one.number for one in entries if one.act is Act.CORRECT}
    uses = {one.number: one for one in bath.uses}
    dips = {one.number: one for one in bath.dips}
    shown = [one for one in entries if one.act not in META]
    current = [stand.get(one.number, one) for one in shown]
    current.sort(key=lambda one: (one.at, one.number))
    return [
        DiaryLine(
            number=one.number,
            at=one.at,
            written=one.written,
            act=one.act.value,
            words=_entry_words(desk, one, uses.get(one.number), dips.get(one.number)),
            readings=dict(one.readings),
            lots=tuple(one.data.get("lots", ())),
            step=one.step,
            grams=one.data.get("grams"),
            exhaust=_exhaust(uses.get(one.number)),
            note=one.note,
            taken_back=one.number not in stand,
            corrected_by=corrected.get(one.number),
            when=words.moment(one.at, desk.now, desk.zone),
        )
        for one in current
    ]


def _exhaust(use: BathUse | None) -> int | None:
    return use.exhaust if use is not None and use.counted else None


def _entry_words(desk: Desk, entry: Entry, use: BathUse | None, dip: Dip | None) -> str:
    make = _TOLD.get(entry.act)
    head = make(desk, entry, use, dip) if make is not None else tr(SIMPLY[entry.act])
    if entry.data.get("fed"):
        head = f"{head}: {', '.join(map(str, entry.data['fed']))}"
    names = [name for name in MEASURED if name in entry.readings]
    names += [name for name in entry.readings if name not in MEASURED]
    read = [reading_words(name, entry.readings[name]) for name in names]
    return " · ".join([head, *read])


def _told_new(desk: Desk, entry: Entry, _use: BathUse | None, _dip: Dip | None) -> str:
    litres = words.litres(entry.data.get("litres"), desk.units)
    return tr("Made, {litres}", litres=litres)


def _told_use(desk: Desk, entry: Entry, use: BathUse | None, _dip: Dip | None) -> str:
    mass = words.mass(entry.data.get("grams"), desk.units)
    lots = ", ".join(entry.data.get("lots", ())) or tr("cloth of no lot")
    step = tr(", step {step}", step=entry.step) if entry.step is not None else ""
    count = f" ({exhaust_words(use.exhaust)})" if use is not None and use.counted else ""
    return tr("{mass} through: {lots}{step}", mass=mass, lots=lots, step=step) + count


def _told_dip(_desk: Desk, entry: Entry, _use: BathUse | None, dip: Dip | None) -> str:
    lots = ", ".join(entry.data.get("lots", ())) or tr("cloth of no lot")
    if dip is None:
        return tr("Dip: {lots}", lots=lots)
    head = tr("Dip {nth}: {lots}", nth=dip.nth, lots=lots)
    if dip.dipped is not None:
        head += tr(", {span} in", span=words.span(dip.dipped))
    return head + (tr(", aired {span}", span=words.span(dip.aired)) if dip.aired else "")


def _told_plan(desk: Desk, entry: Entry, _use: BathUse | None, _dip: Dip | None) -> str:
    said = entry.data.get("planned")
    if not said:
        return tr("Plan withdrawn")
    at = words.moment(datetime.fromisoformat(said), desk.now, desk.zone)
    return tr("Use planned for {at}", at=at)


_Told = Callable[[Desk, Entry, BathUse | None, Dip | None], str]
_TOLD: Final[Mapping[Act, _Told]] = {
    Act.BATH_NEW: _told_new,
    Act.BATH_USE: _told_use,
    Act.BATH_DIP: _told_dip,
    Act.PLAN: _told_plan,
}
