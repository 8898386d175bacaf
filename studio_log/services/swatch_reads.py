"""What is asked of swatches: the list, one with its diary, and those near a colour."""

from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import datetime
from typing import Any, Final
from zoneinfo import ZoneInfo

from studio_log.domain.depth import depth_of
from studio_log.domain.errors import Refusal
from studio_log.domain.instrument_table import Sample
from studio_log.domain.journal import Entry, standing
from studio_log.domain.lots import Cure, Lot, cure_of
from studio_log.domain.number_text import plain
from studio_log.domain.swatches import Grade, Reading, Remark, Swatch, swatch_from
from studio_log.language.calendar_words import date_words
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.colour_words import colour_words
from studio_log.present.swatch_card import CardFacts
from studio_log.present.words import moment
from studio_log.science.colour.shown import shown_as
from studio_log.services.desk import Desk, whole_code
from studio_log.services.journal_back import last_of, next_redo
from studio_log.services.swatch_apart import halves_apart
from studio_log.services.swatch_even import even_words, evenness_of, short_even_words
from studio_log.services.swatch_keeping import lot_of, swatch_entries
from studio_log.services.swatch_lines import swatch_line, walked
from studio_log.services.swatch_near import near
from studio_log.services.swatch_shown import as_shown
from studio_log.services.swatches import (
    SCALE_WORDS,
    TEST_WORDS,
    CardsFor,
    NearFor,
    SwatchesFor,
    SwatchesThere,
    SwatchFor,
    SwatchPage,
    SwatchShown,
    Told,
)
from studio_log.store.swatches import ORDERS
from studio_log.store.values import SwatchQuery

LONGEST_FIND: Final = 200
MOST_LINES: Final = 5_000
MOST_CARDS: Final = 2_000
DAY_S: Final = 86_400.0
HALF_WORDS: Final[Mapping[str, str]] = {
    "master": tr_later("master half"), "test": tr_later("test half"),
    "adjacent": tr_later("cloth beside it, before"),
    "stained": tr_later("cloth beside it, after"),
}  # fmt: skip


def swatches(_house: Any, desk: Desk, question: SwatchesFor) -> SwatchesThere:
    """Give the list of swatches."""
    if question.order not in ORDERS or not 0 < question.limit <= MOST_LINES:
        known = ", ".join(ORDERS)
        raise Refusal(
            tr("The order is one of {known}, and up to {most} swatches are listed at once.",
               known=known, most=MOST_LINES)
        )  # fmt: skip
    found = desk.work.swatches.page(
        SwatchQuery(
            words=tuple(question.find[:LONGEST_FIND].casefold().split()),
            lots=tuple(map(whole_code, question.lots)),
            ended=question.ended,
            read_only=question.read_only,
            order=question.order,
            limit=question.limit,
            offset=max(0, question.offset),
        )
    )
    lines = as_shown(desk, found.lines)
    return SwatchesThere(tuple(_aged(desk, lines) if question.ages else lines), found.total)


def _aged(desk: Desk, lines: Sequence[SwatchShown]) -> list[SwatchShown]:
    """Give the lines with the age of the cure when each was cut; a lot is read once."""
    cures = {}
    for code in {one.lot for one in lines}:
        with suppress(Refusal):
            cures[code] = cure_of(desk.lot(code))
    return [replace(one, age_d=cured_days(cures.get(one.lot), one.cut_at)) for one in lines]


def cured_days(cure: Cure | None, at: datetime) -> float | None:
    """Give the days that a cure had lasted at a moment, None before it began."""
    if cure is None or cure.fully_dry > at:
        return None
    return cure.age(at).total_seconds() / DAY_S


def swatch(_house: Any, desk: Desk, question: SwatchFor) -> SwatchPage:
    """Give one swatch, whole."""
    entries = swatch_entries(desk, question.code)
    of = swatch_from(entries)
    lot = lot_of(desk, of)
    (line,) = as_shown(desk, [swatch_line(of, lot, entries[-1].number)])
    back, gone = last_of(entries), next_redo(entries)
    return SwatchPage(
        line=line,
        swatch=of,
        piece_words=_piece_words(lot, of),
        step_words=_step_words(lot, of),
        halves=halves_words(of),
        chain=_chain(desk, lot, of),
        apart_words=halves_apart(of),
        grades=_latest_grades(of),
        even_words=_even_words(of.spots) if of.spots is not None else "",
        age_words=_age_words(lot, of),
        history=_history(desk, of, standing(entries)),
        photos=_photos(desk, of),
        undo=back.act.words if back else "",
        redo=gone.act.words if gone else "",
    )


def cards(house: Any, desk: Desk, question: CardsFor) -> tuple[CardFacts, ...]:
    """Give what stands on the cards of swatches."""
    if not 0 < len(question.codes) <= MOST_CARDS:
        raise Refusal(tr("Name 1 to {most} swatches.", most=MOST_CARDS))
    return tuple(_card(swatch(house, desk, SwatchFor(code)), desk) for code in question.codes)


def _card(page: SwatchPage, desk: Desk) -> CardFacts:
    line = page.line
    day = date_words(line.cut_at.astimezone(ZoneInfo(desk.zone)).date(), short=True, year=True)
    cut = ", ".join(filter(None, (tr("cut {when}", when=day), page.piece_words, page.age_words)))
    return CardFacts(
        code=line.code,
        name=line.name,
        lot=f"{line.lot} {line.lot_name}".strip(),
        chain=page.chain,
        colour=line.colour_words if line.lab is not None else "",
        even=_short_even(page.swatch),
        cut=cut,
        halves=page.halves,
        studio=desk.settings.studio,
    )


def _short_even(of: Swatch) -> str:
    found = evenness_of(of.spots) if of.spots is not None else None
    return short_even_words(found) if found is not None else ""


def _even_words(one: Reading) -> str:
    found = evenness_of(one)
    return even_words(found, one.noise) if found is not None else ""


def halves_words(of: Swatch) -> str:
    """Say where the halves are kept."""
    place = of.place or tr("not said where")
    if of.test_place is None:
        return tr("in one piece: {place}", place=place)
    return tr("master half: {place}; test half: {test}",
              place=place, test=of.test_place or tr("not said where"))  # fmt: skip


def _piece_words(lot: Lot | None, of: Swatch) -> str:
    if of.piece is None:
        return ""
    title = next((one.title for one in (lot.pieces if lot else ()) if one.number == of.piece), "")
    return (
        tr("piece {number}: {title}", number=of.piece, title=title)
        if title
        else tr("piece {number}", number=of.piece)
    )


def _step_words(lot: Lot | None, of: Swatch) -> str:
    step = next((one for one in (lot.steps if lot else ()) if one.number == of.step), None)
    return step.title if step else ""


def _chain(desk: Desk, lot: Lot | None, of: Swatch) -> tuple[str, ...]:
    if lot is None:
        return ()
    zone = ZoneInfo(desk.zone)

    def day(at: Any) -> str:
        return date_words(at.astimezone(zone).date(), short=True, year=True)

    return tuple(
        tr("{method}: {first} to {last}", method=method.title, first=day(first), last=day(last))
        if last is not None and day(first) != day(last)
        else tr("{method}: {first}", method=method.title, first=day(first))
        if last is not None
        else tr("{method}: since {first}", method=method.title, first=day(first))
        for method, first, last in walked(lot, of.cut_at)
    )


def _age_words(lot: Lot | None, of: Swatch) -> str:
    """Say how many days the lot had cured when the swatch was cut."""
    days = cured_days(cure_of(lot) if lot else None, of.cut_at)
    if days is None:
        return ""
    return counted(
        int(days),
        tr_later("cured {n} day when it was cut"),
        tr_later("cured {n} days when it was cut"),
    )


def _history(desk: Desk, of: Swatch, entries: tuple[Entry, ...]) -> tuple[Told, ...]:
    told = {one.entry: _read_words(one) for one in of.readings}
    told |= {one.entry: grade_words(one) for one in of.grades}
    told |= {one.entry: _remark_words(one) for one in of.remarks}
    colours = {one.entry: shown_as(one.lab)[0] for one in of.readings}
    found = [
        Told(
            entry.number,
            entry.at,
            moment(entry.at, desk.now, desk.zone),
            told.get(entry.number, entry.act.words),
            colours.get(entry.number, ""),
        )
        for entry in entries
    ]
    return tuple(sorted(found, key=lambda one: (one.at, one.entry), reverse=True))


def _read_words(one: Reading) -> str:
    parts = [tr(HALF_WORDS[one.half]), colour_words(one.lab, one.source, one.two_u)]
    parts += filter(
        None,
        (_even_words(one), _depth_words(one), one.method, one.white, one.note, *one.warnings),
    )
    return " · ".join(parts)


def _depth_words(one: Reading) -> str:
    """Say how deep a reading with a spectrum is."""
    depth = depth_of(Sample("", one.lab, one.white, one.reflectance))
    if depth is None:
        return ""
    return tr("K/S {figure} at {nm} nm", figure=plain(depth.peak, 2), nm=depth.nm)


def grade_words(one: Grade) -> str:
    """Say a grade: "light 4-5 (change, grey scale: 4.42), estimated grade, 4 weeks"."""
    scale = tr(SCALE_WORDS[one.scale])
    if one.figure is not None:
        scale = tr("{scale}: {figure}", scale=scale, figure=plain(one.figure, 2))
    said = tr("{test} {grade} ({scale})", test=tr(TEST_WORDS[one.test]), grade=one.grade,
              scale=scale)  # fmt: skip
    estimated = tr("estimated grade") if one.estimated else ""
    return ", ".join(filter(None, (said, estimated, one.length, one.note)))


def _latest_grades(of: Swatch) -> tuple[str, ...]:
    latest = {(one.test, one.scale): one for one in sorted(of.grades, key=lambda one: one.at)}
    return tuple(grade_words(replace(one, note="")) for one in latest.values())


def _remark_words(one: Remark) -> str:
    return one.note or tr("a photo")


def _photos(desk: Desk, of: Swatch) -> tuple[Mapping[str, str], ...]:
    named = [one for one in of.remarks if one.photo]
    known = desk.work.photos.of_hashes(one.photo for one in named)
    folder = desk.work.photos.folder
    return tuple(
        {
            "file": str(folder / known[one.photo].file),
            "name": known[one.photo].name,
            "note": one.note,
            "when": moment(one.at, desk.now, desk.zone),
        }
        for one in named
        if one.photo in known
    )


ANSWERS: Final[Mapping[type, Callable[[Any, Desk, Any], Any]]] = {
    SwatchesFor: swatches,
    SwatchFor: swatch,
    CardsFor: cards,
    NearFor: near,
}
