"""One lot, whole: its steps with planned and actual times, amounts, journal; and as JSON."""

from dataclasses import replace
from typing import Any, Final
from zoneinfo import ZoneInfo

from studio_log.domain.amounts import Amount, vessel_fits
from studio_log.domain.journal import Entry, standing, taken_back
from studio_log.domain.lot_amounts import amounts_of
from studio_log.domain.lots import Lot, LotStep, StepState, cure_days_of, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.windows import StepWindow, short_span, windows_of
from studio_log.language.words import tr, tr_later
from studio_log.present import words
from studio_log.services import questions as q
from studio_log.services.bath_reads import baths_of_lot
from studio_log.services.desk import Desk
from studio_log.services.estimate_words import estimate_words
from studio_log.services.journal_reads import became, entry_lines, readings_words
from studio_log.services.list_reads import doing_words
from studio_log.services.marking import best_words
from studio_log.services.milk_words import milk_until, served_words
from studio_log.services.photos import photos_data
from studio_log.services.plan_words import follows_words
from studio_log.services.sheet_json import sheet_data
from studio_log.services.spoil_reads import warned_of
from studio_log.services.stock_reads import cost_of_lot
from studio_log.services.swatch_keeping import swatches_of_lot
from studio_log.services.taking_back import entry_words, last_undoable

START_ACTS = (
    ("start", tr_later("Begin")),
    ("end", tr_later("Done")),
    ("skip", tr_later("Skip…")),
    ("note", tr_later("Note…")),
)


def lot_sheet(house: Any, desk: Desk, question: q.LotSheetFor) -> q.LotSheet:
    """Give the sheet of one lot."""
    lot = desk.lot(question.code)
    entries = desk.entries(lot.code)
    windows = windows_of(lot, desk.now, desk.quiet)
    lines = tuple(
        step_line(house, desk, lot, step, windows.get(step.number), order)
        for order, step in enumerate(lot.steps, start=1)
    )
    lines = tuple(
        _foretold(desk, lot, line, windows.get(line.number), entries)
        for line in with_readings(lines, entries)
    )
    undoable = last_undoable(entries)
    gone = taken_back(entries)
    milk = desk.milk_of(lot.code)
    return q.LotSheet(
        code=lot.code,
        name=lot.name,
        state=lot.state(desk.now).value,
        heading=_heading(lot, desk),
        doing=doing_words(desk, lot),
        pieces=lot.pieces,
        steps=lines,
        entries=entry_lines(lot, entries),
        cure_words=_cure_words(desk, lot),
        vessel_words=_vessel_words(lot, lines),
        cost_words=cost_of_lot(desk, lot).words,
        bath_words=baths_of_lot(desk, lot.code),
        swatch_words=swatches_of_lot(desk, lot.code),
        cautions=(" · ".join(short),) if (short := short_cautions(house, lot)) else (),
        lineage=_lineage(lot),
        milk_words=_milk_words(desk, milk) or served_words(desk, lot),
        plan_words=follows_words(desk, lot),
        undo=entry_words(undoable, lot) if undoable and not lot.voided else "",
        redo=entry_words(gone[-1], lot) if gone else "",
        data={
            **sheet_data(desk, lot, entries, windows, lines),
            "became": became(lot, entries, desk),
            "photos": photos_data(desk, lot, entries),
        },
    )


SOY: Final = "soy-allergen"
"""The caution that stays with the cloth when the method that brought it is done."""


def short_cautions(house: Any, lot: Lot) -> tuple[str, ...]:
    """Give the cautions of the method in few words each, gravest first; steps tell theirs whole.

    Cloth that was soyed by an earlier method still says so.
    """
    slugs = {slug for step in lot.method.steps for slug in step.cautions}
    if _is_soyed(lot):
        slugs.add(SOY)
    return tuple(one.short for slug, one in house.cautions.items() if slug in slugs)


def tag_caution(house: Any, lot: Lot) -> str:
    """Give what a tag prints: the gravest caution, and that the cloth is soyed where it is."""
    said = list(short_cautions(house, lot)[:1])
    if _is_soyed(lot) and SOY in house.cautions and house.cautions[SOY].short not in said:
        said.append(house.cautions[SOY].short)
    return "; ".join(said)


def _is_soyed(lot: Lot) -> bool:
    return any(
        "soy" in method.brings or any(SOY in step.cautions for step in method.steps)
        for method in lot.methods
    )


def _heading(lot: Lot, desk: Desk) -> str:
    grams, area = lot.grams, lot.area_m2
    parts = [lot.method.title]
    if grams is not None:
        weighed = tr(" ({weighed} scour)", weighed=lot.weighed) if lot.weighed else ""
        parts.append(f"{words.mass(grams, desk.units)}{weighed}")
    if area is not None:
        parts.append(f"{area:.2f} m²")
    parts += [part for part in (lot.place, lot.vessel) if part]
    return " · ".join(parts)


def _milk_words(desk: Desk, milk: Any) -> str:
    if milk is None:
        return ""
    good = milk_until(milk, desk)
    others = ", ".join(milk.lots)
    return tr(
        "Milk {code} (for {others}), good for a further coat until {good}",
        code=milk.code,
        others=others,
        good=good,
    )


def _lineage(lot: Lot) -> str:
    parts = []
    if lot.parents:
        how = tr("joined from") if lot.joined else tr("split from")
        parts.append(f"{how} {', '.join(lot.parents)}")
    if split := [code for code in lot.children if code != lot.joined_into]:
        parts.append(tr("split into {join}", join=", ".join(split)))
    if lot.joined_into:
        parts.append(tr("joined into {joined_into}", joined_into=lot.joined_into))
    return "; ".join(parts)


def _cure_words(desk: Desk, lot: Lot) -> str:
    cure = cure_of(lot)
    if cure is None:
        return ""
    age = cure.age(desk.now)
    since = words.moment(cure.fully_dry, desk.now, desk.zone)
    frozen = "" if cure.running else tr(", frozen when the cure ended")
    marks = "; ".join(
        tr(
            "{name} {moment} (day {day})",
            name=mark.name,
            moment=words.moment(mark.at, desk.now, desk.zone),
            day=mark.day,
        )
        for mark in cure.marks
    )
    return tr(
        "Fully dry {since}, cure age {days:.1f} d{frozen}. {marks}.",
        since=since,
        days=age.total_seconds() / 86400,
        frozen=frozen,
        marks=marks,
    )


def _vessel_words(lot: Lot, lines: tuple[q.StepLine, ...]) -> str:
    litres, grams = lot.vessel_litres, lot.grams
    bath = next((one for line in lines for one in line.amounts if one.vessel), None)
    if litres is None or grams is None or bath is None:
        return ""
    return vessel_fits(bath.value, grams, litres).sentence


def in_units(amounts: tuple[Amount, ...], desk: Desk) -> tuple[Amount, ...]:
    """Give the amounts as they are shown in the dyer's units; the values stay in g and L."""
    if desk.units == "metric":
        return amounts
    return tuple(replace(one, shown=words.amount(one, desk.units), kitchen="") for one in amounts)


def step_line(
    house: Any,
    desk: Desk,
    lot: Lot,
    step: LotStep,
    window: StepWindow | None,
    order: int,
) -> q.StepLine:
    """Give one step of the sheet."""
    state = lot.state_of(step)
    amounts = in_units(amounts_of(lot, step), desk)
    return q.StepLine(
        number=step.number,
        order=order,
        slug=step.slug,
        title=step.title,
        kind=step.spec.kind,
        state=state.value,
        planned=planned_words(lot, step),
        actual=_actual_words(desk, step),
        when=_when_words(desk, step, window),
        why=best_words(desk, step, window) if window and step.running else waits_for(lot, step),
        broken=_broken_words(window),
        amounts=amounts,
        details=_details(desk, step, amounts),
        do=step.spec.do,
        cautions=tuple(
            house.cautions[slug].text for slug in step.spec.cautions if slug in house.cautions
        ),
        start=step.start,
        end=step.end,
        optional=step.optional,
        acts=_acts(lot, step, state),
    )


def planned_words(lot: Lot, step: LotStep) -> str:
    """Say how long a step is to last or how soon it must come."""
    if step.spec.kind is StepKind.CURE:
        return f"{cure_days_of(lot, step.join)} d"
    lasts, gap = step.spec.lasts, step.spec.gap
    text = words.window_words(lasts) if lasts else ""
    if gap.at_once:
        return tr("at once, {text}", text=text)
    if gap.most is not None:
        behind = tr(" of {after}", after=gap.after) if gap.after else ""
        return tr(
            "within {span}{behind}, {text}",
            span=short_span(gap.most),
            behind=behind,
            text=text,
        )
    return text


def waits_for(lot: Lot, step: LotStep) -> str:
    """Say what the next step still waits for: "waits for: Spin out"; "" where it may begin."""
    ahead = [one for one in lot.steps if lot.state_of(one) is StepState.AHEAD]
    if not ahead or ahead[0].number != step.number:
        return ""
    before = next((one for one in lot.before(step) if not one.closed), None)
    if before is None:
        return ""
    what = (
        tr("{title} to be dry", title=before.title)
        if before.spec.ask_dry is not None
        else before.title
    )
    return tr("waits for: {what}", what=what)


def _actual_words(desk: Desk, step: LotStep) -> str:
    if step.skipped is not None:
        return tr("skipped: {why}", why=step.skipped) if step.skipped else tr("skipped")
    if step.start is None and step.end is None:
        return ""
    start = words.moment(step.start, desk.now, desk.zone) if step.start else "?"
    if step.end is None:
        return tr("{start} → now", start=start)
    zone = ZoneInfo(desk.zone)
    same_day = step.start and step.start.astimezone(zone).date() == step.end.astimezone(zone).date()
    end = words.clock(step.end, desk.zone) if same_day else ""
    return f"{start} → {end or words.moment(step.end, desk.now, desk.zone)}"


def _when_words(desk: Desk, step: LotStep, window: StepWindow | None) -> str:
    if window is None:
        return ""
    at = window.best_end if step.running else window.best_start
    verb = tr("best ended") if step.running else tr("best begun")
    if step.spec.kind is StepKind.CURE:
        verb = "ready"
        at = window.best_end
    return f"{verb} {words.moment(at, desk.now, desk.zone)}"


def _broken_words(window: StepWindow | None) -> str:
    if window is None or window.broken is None:
        return ""
    return tr(
        "{limit}: passed by {span}", limit=window.broken.limit, span=words.span(window.broken.by)
    )


def _details(desk: Desk, step: LotStep, amounts: tuple[Amount, ...]) -> str:
    parts = [f"{one.title} {one.shown}" + (f" ({one.kitchen})" if one.kitchen else "")
             for one in amounts]  # fmt: skip
    if step.milk:
        parts.append(tr("milk {milk}", milk=step.milk))
    if step.tended and step.spec.tending is not None:
        last = words.moment(step.tended[-1], desk.now, desk.zone)
        parts.append(
            tr(
                "{done} {count}×, last {last}",
                done=step.spec.tending.done.lower(),
                count=len(step.tended),
                last=last,
            )
        )
    if step.damp:
        parts.append(
            tr("still damp {moment}", moment=words.moment(step.damp[-1], desk.now, desk.zone))
        )
    return "; ".join(parts)


def _acts(lot: Lot, step: LotStep, state: StepState) -> tuple[tuple[str, str], ...]:
    """Give what may be done with a step now, the chief act first."""
    if lot.stopped is not None or lot.voided:
        return ()
    if state is StepState.RUNNING:
        return _running_acts(step)
    if step.spec.kind is StepKind.CURE:
        return ()
    if state in {StepState.OPEN, StepState.AHEAD}:
        return tuple((act, tr(said)) for act, said in START_ACTS)
    return (("repeat", tr("Repeat")), ("note", tr("Note…")))


def _running_acts(step: LotStep) -> tuple[tuple[str, str], ...]:
    if step.spec.kind is StepKind.CURE:
        return (("use", tr("Use now")), ("note", tr("Note…")))
    if step.spec.ask_dry is not None:
        return (
            ("dry", tr("Dry")),
            ("damp", tr("Still damp")),
            ("note", tr("Note…")),
            ("skip", tr("Skip…")),
        )
    tend = (("tend", step.spec.tending.done),) if step.spec.tending else ()
    return (("end", step.spec.end_done), *tend, ("note", tr("Note…")), ("skip", tr("Skip…")))


def _foretold(
    desk: Desk,
    lot: Lot,
    line: q.StepLine,
    window: StepWindow | None,
    entries: tuple[Entry, ...],
) -> q.StepLine:
    """Give a step with what is likely of it, after all else, and with what would spoil."""
    beans = next((one.value for one in line.amounts if one.slug == "beans"), None)
    said = estimate_words(desk, lot, lot.step(line.number), entries, beans)
    return replace(
        line,
        details="; ".join(filter(None, (line.details, said))),
        warned=warned_of(desk, lot, line, window, entries),
    )


def with_readings(
    lines: tuple[q.StepLine, ...], entries: tuple[Entry, ...]
) -> tuple[q.StepLine, ...]:
    """Give the steps with the readings that stand for each, after its amounts."""
    read: dict[int | None, list[str]] = {}
    for entry in standing(entries):
        if entry.readings:
            read.setdefault(entry.step, []).append(readings_words(entry))
    return tuple(
        replace(line, details="; ".join(filter(None, (line.details, *read[line.number]))))
        if line.number in read
        else line
        for line in lines
    )
