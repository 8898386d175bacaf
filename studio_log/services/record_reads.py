"""The whole record of a lot in words: every page that a folder on the shelf would hold."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, Final

from studio_log.domain.journal import standing
from studio_log.domain.lots import Lot
from studio_log.domain.pieces import Piece
from studio_log.domain.windows import StepWindow, windows_of
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.present.paper.blocks import (
    Block,
    Cell,
    Column,
    Heading,
    Picture,
    Pictures,
    Said,
    Table,
    Words,
    cell,
)
from studio_log.services import questions as q
from studio_log.services.desk import Desk
from studio_log.services.journal_reads import readings_words
from studio_log.services.method_page import sources_of
from studio_log.services.paper_reads import (
    card,
    day_sheet,
    document_of,
    heed,
    kind_words,
    moment,
    window_lines,
)
from studio_log.services.papers import DRAWING, CardFor, DaySheetFor, Drawn, Paper, RecordFor
from studio_log.services.sheet_reads import lot_sheet
from studio_log.services.swatch_reads import swatches
from studio_log.services.swatches import SwatchesFor
from studio_log.services.timeline_reads import timeline

_DRAWING_RATIO: Final = 182 / 44
_PHOTO_HIGH: Final = 70.0
MOST_PHOTOS: Final = 60
"""On paper; all of them are in the folder of an export."""


def record(house: Any, desk: Desk, question: RecordFor) -> Paper:
    """Give the record of a lot, on as many pages as it takes."""
    lot = desk.lot(question.code)
    sheet = lot_sheet(house, desk, q.LotSheetFor(lot.code))
    told = timeline(desk, q.TimelineFor((lot.code,)))
    photos = _photos(desk, sheet)
    blocks: list[Block] = [_facts(desk, lot, sheet)]
    if told.lanes:
        drawing = Picture(DRAWING, _DRAWING_RATIO)
        blocks += [Heading(tr("Steps over time")), Pictures((drawing,), high=44)]
    blocks += [Heading(tr("Pieces")), _pieces(desk, lot)]
    blocks += [Heading(tr("Steps")), _steps(desk, lot, sheet)]
    blocks += _readings(desk, lot)
    blocks += _swatches(house, desk, lot)
    blocks += _pictures(photos)
    blocks += [Heading(tr("Journal")), _journal(desk, sheet)]
    blocks += heed(house, lot)
    blocks += _sources(lot)
    under = (tr("Record of the lot"), sheet.heading)
    title = f"{lot.code}  {sheet.name}"
    return Paper(
        f"record-{lot.code}",
        document_of(desk, title, lot.code, under, tuple(blocks)),
        Drawn(told.lanes, told.nights, told.now, told.zone) if told.lanes else None,
        tuple((str(one["hash"]), str(one["file"])) for one in photos),
    )


def _facts(desk: Desk, lot: Lot, sheet: q.LotSheet) -> Table:
    use = f"{moment(desk, lot.use.at)} {lot.use.note}".strip() if lot.use else ""
    methods = "; ".join(
        tr("{title}, version {n}", title=one.title, n=one.version) for one in lot.methods
    )
    facts = (
        (tr("State"), sheet.doing),
        (tr("Begun on"), moment(desk, lot.begun)),
        (tr("Methods"), methods),
        (tr("Weight"), words.mass(lot.grams, desk.units)),
        (tr("Shelf or place"), lot.place),
        (tr("Vessel"), "; ".join(part for part in (lot.vessel, sheet.vessel_words) if part)),
        (tr("Milk"), sheet.milk_words),
        (tr("Cure"), sheet.cure_words),
        (tr("Used"), use),
        (tr("Lineage"), sheet.lineage),
        (tr("Materials cost"), sheet.cost_words),
    )
    rows = tuple((cell(name, bold=True), cell(said)) for name, said in facts if said)
    return Table((Column("", mm=36), Column("", share=1)), rows, heads=False)


def _pieces(desk: Desk, lot: Lot) -> Table:
    columns = (
        Column("", mm=10), Column(tr("Cloth"), share=3), Column(tr("Length × width"), share=2),
        Column(tr("Weight of cloth"), share=2), Column(tr("Weight"), share=2),
    )  # fmt: skip
    return Table(columns, tuple(_piece(desk, one) for one in lot.pieces))


def _piece(desk: Desk, piece: Piece) -> tuple[Cell, ...]:
    size = ""
    if piece.length_m is not None and piece.width_m is not None:
        long, wide = (words.length(one, desk.units) for one in (piece.length_m, piece.width_m))
        size = f"{long} × {wide}"
    gsm = words.density(piece.gsm, desk.units) if piece.gsm is not None else ""
    weight = words.mass(piece.grams, desk.units) if piece.grams is not None else ""
    return tuple(cell(said) for said in (str(piece.number), piece.title, size, gsm, weight))


def _steps(desk: Desk, lot: Lot, sheet: q.LotSheet) -> Table:
    windows = windows_of(lot, desk.now, desk.quiet)
    columns = (
        Column("", mm=9), Column(tr("Step"), share=4), Column(tr("Planned"), share=4.4),
        Column(tr("Begun"), share=3), Column(tr("Ended"), share=3),
        Column(tr("Amounts and readings"), share=6),
    )  # fmt: skip
    return Table(
        columns, tuple(_step(desk, line, windows.get(line.number)) for line in sheet.steps)
    )


def _step(desk: Desk, line: q.StepLine, window: StepWindow | None) -> tuple[Cell, ...]:
    begun = moment(desk, line.start) if line.start else ""
    ended = moment(desk, line.end) if line.end else ""
    if line.state == "skipped":
        begun = line.actual
    broken = (Said(line.broken, bold=True, size="small"),) if line.broken else ()
    warned = tuple(Said(one.words, size="small", bold=True) for one in line.warned)
    title = (Said(line.title, bold=True), Said(kind_words(line.kind), size="small"))
    details = (*cell(line.details, size="small"), *broken, *warned)  # type: ignore[misc]
    planned = [Said(one, size="small") for one in window_lines(desk, line, window)]
    planned += [Said(line.planned, size="small")] if line.planned else []
    return (cell(str(line.order)), title, tuple(planned),
            cell(begun, size="small"), cell(ended, size="small"), details)  # fmt: skip


def _readings(desk: Desk, lot: Lot) -> list[Block]:
    rows = tuple(
        (
            cell(moment(desk, entry.at)),
            cell(lot.step(entry.step).title if entry.step else ""),
            cell(readings_words(entry)),
        )
        for entry in standing(desk.entries(lot.code))
        if entry.readings
    )
    columns = (
        Column(tr("When"), share=2),
        Column(tr("Step"), share=2),
        Column(tr("Read"), share=4),
    )
    return [Heading(tr("Readings")), Table(columns, rows)] if rows else []


def _swatches(house: Any, desk: Desk, lot: Lot) -> list[Block]:
    """Give what was kept of the lot: where, in which colour, how it stood its tests."""
    found = swatches(house, desk, SwatchesFor(lots=(lot.code,), ended=True, order="cut")).lines
    heads = (
        (tr("Swatch"), 2),
        (tr("Cut"), 2),
        (tr("Colour"), 5),
        (tr("Tests"), 3),
        (tr("Place"), 3),
    )
    columns = tuple(Column(head, share=share) for head, share in heads)
    rows = tuple(
        (
            (Said(one.code, bold=True), Said(one.name, size="small")),
            cell(moment(desk, one.cut_at), size="small"),
            cell(one.colour_words, size="small"),
            cell("; ".join(f"{test} {grade}" for test, grade in one.grades.items()), size="small"),
            cell("; ".join(filter(None, (one.place, one.test_place))), size="small"),
        )
        for one in found
    )
    return [Heading(tr("Swatches")), Table(columns, rows)] if rows else []


def _photos(desk: Desk, sheet: q.LotSheet) -> list[dict[str, Any]]:
    """Give the photos, each with when it was kept as paper says it."""
    found = sheet.data.get("photos")
    at = {line.number: moment(desk, line.at) for line in sheet.entries}
    told = found if isinstance(found, list) else []
    return [{**one, "when": at.get(one["entry"], one["when"])} for one in told]


def _pictures(photos: list[dict[str, Any]]) -> list[Block]:
    if not photos:
        return []
    shown = tuple(
        Picture(str(one["hash"]), one["width"] / max(1, one["height"]), _said(one))
        for one in photos[-MOST_PHOTOS:]
    )
    left = len(photos) - len(shown)
    more = [Words(tr("{n} older photos are not shown here.", n=left))] if left else []
    return [Heading(tr("Photos")), *more, Pictures(shown, high=_PHOTO_HIGH, across=2)]


def _said(photo: dict[str, Any]) -> str:
    parts = (photo["when"], photo["step"], photo["note"] or photo["name"])
    return " · ".join(str(part) for part in parts if part)


def _journal(desk: Desk, sheet: q.LotSheet) -> Table:
    columns = (Column("", mm=10), Column(tr("Happened"), share=2), Column(tr("Written"), share=2),
               Column(tr("What"), share=6))  # fmt: skip
    changed = sheet.data.get("became")
    became = changed if isinstance(changed, dict) else {}
    return Table(columns, tuple(_entry(desk, one, became) for one in sheet.entries))


def _entry(desk: Desk, line: q.EntryLine, became: dict[str, str]) -> tuple[Cell, ...]:
    said = [Said(line.words)]
    if line.note:
        said.append(Said(line.note, size="small"))
    if line.taken_back:
        said.append(Said(tr("taken back"), bold=True, size="small"))
    if (now := became.get(str(line.number))) is not None:
        said.append(Said(tr("corrected to: {words}", words=now), bold=True, size="small"))
    at, written = (cell(moment(desk, one), size="small") for one in (line.at, line.written))
    return (cell(str(line.number), size="small"), at, written, tuple(said))


def _sources(lot: Lot) -> Iterator[Block]:
    yield Heading(tr("Where the figures come from"))
    said = dict.fromkeys(one for method in lot.methods for one in sources_of(method))
    yield Table((Column("", share=1),), tuple((cell(one, size="small"),) for one in said),
                heads=False)  # fmt: skip


ANSWERS: Final[Mapping[type, Callable[[Any, Desk, Any], Paper]]] = {
    CardFor: card,
    RecordFor: record,
    DaySheetFor: day_sheet,
}
