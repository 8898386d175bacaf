"""Answers to questions; one table says who answers what."""

from collections.abc import Callable, Iterator, Mapping
from datetime import datetime, timedelta
from typing import Any, Protocol
from zoneinfo import ZoneInfo

from studio_log.domain.amounts import countable, vessel_fits, work_out
from studio_log.domain.cautions import Caution
from studio_log.domain.codes import is_provisional
from studio_log.domain.errors import Refusal
from studio_log.domain.lot_amounts import beans_of
from studio_log.domain.methods import Basis
from studio_log.domain.milks import Milk
from studio_log.domain.number_text import plain
from studio_log.domain.tags import TagFacts, TagRow
from studio_log.language.calendar_words import date_words
from studio_log.language.words import tr, tr_later
from studio_log.present import words
from studio_log.services import (
    card_acts,
    hours_reads,
    notebook_acts,
    record_reads,
    sharing,
    shelf,
    stock_reads,
    swatch_reads,
    trial_reads,
)
from studio_log.services import questions as q
from studio_log.services.bath_reads import bath_lines, bath_page
from studio_log.services.baths import BathFor, BathsFor
from studio_log.services.bench_reads import bench, reminders_due
from studio_log.services.calendar import CalendarFor, CalendarMatterFor, SaveCalendar
from studio_log.services.calendar_reads import calendar_ahead, calendar_matter, save_calendar
from studio_log.services.commands import Outcome
from studio_log.services.copies import CompareCopy, CopiesFor
from studio_log.services.copy_keeping import Studio as Safekeeper
from studio_log.services.copy_keeping import compared, copies_seen
from studio_log.services.desk import Desk, whole_code
from studio_log.services.drying_reads import DryingFactorFor, drying_factor
from studio_log.services.joining import join_offer, join_seen
from studio_log.services.joins import JoinFor, JoinOfferFor
from studio_log.services.limits import check_grams
from studio_log.services.list_reads import lot_lines, lot_rows, lots_found
from studio_log.services.method_page import CautionsFor, MethodPageFor
from studio_log.services.method_reads import method_page
from studio_log.services.milk_words import milk_until
from studio_log.services.moves import export_work
from studio_log.services.moving import ExportFor
from studio_log.services.photos import picture
from studio_log.services.pictures import PictureFor
from studio_log.services.places import PlacesFor
from studio_log.services.plan import PlanFor, PlannedFor
from studio_log.services.plan_reads import plan_setup, planned_timeline
from studio_log.services.plan_slips import slip_words
from studio_log.services.rang import WhatRangFor
from studio_log.services.rang_reads import what_rang
from studio_log.services.ringing import next_ring
from studio_log.services.search import FindLots, LotRowsFor
from studio_log.services.shared import SharedFor
from studio_log.services.sharing_words import waiting_words
from studio_log.services.sheet_reads import in_units, lot_sheet, tag_caution
from studio_log.services.shelf import Shelf
from studio_log.services.telling import Telling
from studio_log.services.timeline_reads import timeline


class House(Safekeeper, Protocol):
    """What the answers need of the studio beside the desk."""

    telling: Telling
    cautions: Mapping[str, Caution]
    shelf: Shelf
    last_act: tuple[Outcome, datetime] | None


def answer(house: House, desk: Desk, question: object) -> Any:
    """Answer a question of services.questions."""
    return _ANSWERS[type(question)](house, desk, question)


def _methods(_house: House, desk: Desk, _question: q.MethodsFor) -> q.Methods:
    latest = {slug: desk.method(slug) for slug, _ in desk.book}
    # Soy first: what the logbook is opened for most.
    return tuple(sorted(latest.values(), key=lambda one: ("soy" not in one.brings, one.slug)))


def _amounts(_house: House, desk: Desk, question: q.AmountsFor) -> q.AmountsAnswer:
    method = desk.method(question.slug)
    area = question.area_m2
    rules = countable([rule for step in method.steps for rule in step.amounts], area_m2=area)
    grams = check_grams(question.grams)
    worked = work_out(rules, grams=grams, changed=question.changed, area_m2=area)
    amounts = in_units(worked, desk)
    bath = next((one for one in amounts if one.vessel), None)
    if bath is None or question.vessel_litres is None:
        return q.AmountsAnswer(amounts, "", None)
    fit = vessel_fits(bath.value, grams, question.vessel_litres)
    return q.AmountsAnswer(amounts, fit.sentence, fit.fits)


def milk_line(milk: Milk, desk: Desk) -> q.MilkLine:
    """Give a milk with its life in words."""
    place = tr("cold") if milk.cold else tr("at room heat")
    if milk.celsius is not None:
        place = tr("at {celsius} °C", celsius=plain(milk.celsius, 1))
    fresh = tr("good until") if desk.now <= milk.use_by else tr("too old for a further coat since")
    litres = f"{words.litres(milk.litres, desk.units)}, " if milk.litres else ""
    return q.MilkLine(
        code=milk.code,
        litres=milk.litres,
        strength=milk.strength,
        cold=milk.cold,
        made_at=milk.made_at,
        use_by=milk.use_by,
        lots=milk.lots,
        finished=milk.finished,
        words=tr(
            "{code}: {litres}kept {place}, {fresh} {good}",
            code=milk.code,
            litres=litres,
            place=place,
            fresh=fresh,
            good=milk_until(milk, desk),
        ),
    )


def _milks(_house: House, desk: Desk, question: q.MilksFor) -> tuple[q.MilkLine, ...]:
    return tuple(
        milk_line(milk, desk) for milk in desk.milks() if question.finished or not milk.finished
    )


def _milk_offer(_house: House, desk: Desk, question: q.MilkOfferFor) -> q.MilkOffer:
    """Propose the lot itself, and every lot that has strained today and has no milk yet."""
    own = desk.lot(question.code)
    rows = []
    strength = 100.0
    for code in desk.work.lots.live_codes():
        lot = desk.lot(code)
        # A further coat that nobody has begun asks for no milk, save of the lot's own dyer.
        wanting = [
            step for step in lot.steps
            if step.spec.uses_milk and step.start is None and not step.closed
            and (lot.taken(step) or code == own.code)
        ]  # fmt: skip
        beans = beans_of(lot)
        counts_on_it = lot.milk_of == own.code
        if not wanting or not (lot.started or counts_on_it) or beans is None:
            continue
        near = wanting[0].join == len(lot.methods) - 1 and desk.milk_of(code) is None
        before = lot.steps[: lot.place_of(wanting[0].number)]
        strained = all(step.closed or step.spec.makes_milk for step in before)
        taken = code == own.code or counts_on_it or (near and strained)
        rows.append((code, lot.name, beans, taken))
    for step in own.method.steps:
        for rule in step.amounts:
            if step.makes_milk and rule.basis is Basis.PER_LITRE:
                strength = float(own.amounts_changed.get(rule.slug, rule.value))
    return q.MilkOffer(tuple(rows), strength)


CLOCK_WRONG = tr_later("{fault} Until it is right, reminders may come early or late.")
TAG_KINDS = frozenset({"soak", "dip", "cure", "scour"})


def _tags(house: House, desk: Desk, question: q.TagsFor) -> q.Tags:
    if not question.codes:
        raise Refusal(tr("Say which lots: give their codes."))
    for code in question.codes:
        if is_provisional(whole_code(code)):
            raise Refusal(
                tr(
                    "{code} is a provisional code, given while the server is out of reach. No tag "
                    "was printed: print it once the lot has its number.",
                    code=whole_code(code),
                )
            )
    return tuple(_tag(house, desk, whole_code(code)) for code in question.codes)


def _short_day(at: datetime, zone: str) -> str:
    """Give a day as it fits on a tag: "9 Jun 2026"."""
    return date_words(at.astimezone(ZoneInfo(zone)).date(), short=True, year=True)


def _short_moment(at: datetime, zone: str) -> str:
    """Give a moment as it fits on a tag: "9 Jun 09:20"."""
    return f"{_short_day(at, zone)[:-5]} {words.clock(at, zone)}"


def _tag(house: House, desk: Desk, code: str) -> TagFacts:
    lot = desk.lot(code)
    rows = []
    for step in lot.steps:
        if step.join != len(lot.methods) - 1 or step.spec.kind.value not in TAG_KINDS:
            continue
        if step.optional and not lot.taken(step):
            continue
        written = _short_moment(step.start, desk.zone) if step.start else ""
        rows.append(TagRow(step.title, written))
    grams = lot.grams
    return TagFacts(
        code=lot.code,
        name=lot.name,
        weight=words.mass(grams, desk.units) if grams is not None else "",
        method=lot.method.title,
        begun=tr("begun {short_day}", short_day=_short_day(lot.begun, desk.zone)),
        rows=tuple(rows),
        caution=tag_caution(house, lot),
        studio=desk.settings.studio,
    )


def _status(house: House, desk: Desk, _question: q.StatusFor) -> q.Status:
    last = desk.work.journal.last_written()
    saved = (
        tr("Saved {moment}", moment=words.moment(last, desk.now, desk.zone))
        if last
        else tr("Nothing saved yet")
    )
    works, channels = house.telling.state()
    at = next_ring(desk)
    ring = (
        tr("next ring {moment}", moment=words.moment(at, desk.now, desk.zone))
        if at
        else tr("nothing will ring")
    )
    if at is not None and at <= desk.now + timedelta(seconds=30):
        ring = tr("ringing now")
    if desk.hush_until is not None:
        ring = tr(
            "do not disturb until {moment}",
            moment=words.moment(desk.hush_until, desk.now, desk.zone),
        )
    faults = (tr(CLOCK_WRONG).format(fault=desk.clock_fault),) if desk.clock_fault else ()
    slipped = slip_words(desk)
    faults = (*faults, slipped) if slipped else faults
    warnings = (
        *faults,
        *_server_words(house, desk),
        *house.upkeep.faults.values(),
        *house.store.warnings,
    )
    return q.Status(saved, tr(channels), works, ring, house.upkeep.copy_words, warnings)


def _server_words(house: House, desk: Desk) -> Iterator[str]:
    """Say that the server is out of reach, and what waits for it."""
    if house.store.away:
        yield tr(
            "The studio’s server is out of reach. What is done here is kept, and sent when it "
            "answers."
        )
        if count := sharing.seen(house, desk).unsent:
            yield waiting_words(count)


_ANSWERS: Mapping[type, Callable[[House, Desk, Any], Any]] = {
    q.LotLinesFor: lot_lines,
    FindLots: lots_found,
    LotRowsFor: lambda _house, desk, question: lot_rows(desk, question.codes),
    q.LotSheetFor: lot_sheet,
    q.TimelineFor: lambda _house, desk, question: timeline(desk, question),
    q.BenchFor: bench,
    q.RemindersFor: lambda _house, desk, question: reminders_due(desk, question),
    q.MethodsFor: _methods,
    MethodPageFor: method_page,
    CautionsFor: lambda house, _desk, _question: tuple(house.cautions.values()),
    **shelf.ANSWERS,
    q.MethodFor: lambda _house, desk, question: desk.method(question.slug),
    q.AmountsFor: _amounts,
    DryingFactorFor: drying_factor,
    q.MilksFor: _milks,
    q.MilkOfferFor: _milk_offer,
    q.TagsFor: _tags,
    WhatRangFor: what_rang,
    PictureFor: picture,
    JoinOfferFor: join_offer,
    JoinFor: join_seen,
    **stock_reads.ANSWERS,
    **swatch_reads.ANSWERS,
    **trial_reads.ANSWERS,
    BathsFor: bath_lines,
    BathFor: bath_page,
    **hours_reads.ANSWERS,
    **record_reads.ANSWERS,
    CalendarFor: calendar_ahead,
    CalendarMatterFor: calendar_matter,
    SaveCalendar: save_calendar,
    CopiesFor: lambda house, _desk, question: copies_seen(house, question),
    CompareCopy: lambda house, _desk, question: compared(house, question),
    SharedFor: lambda house, desk, _question: sharing.seen(house, desk),
    PlacesFor: lambda house, _desk, _question: house.upkeep.seen(house.folder),
    PlanFor: plan_setup,
    PlannedFor: planned_timeline,
    ExportFor: export_work,
    **notebook_acts.ANSWERS,
    **card_acts.ANSWERS,
    q.SettingsFor: lambda _house, desk, _question: desk.settings,
    q.StatusFor: _status,
}
