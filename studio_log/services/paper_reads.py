"""The step card and the day sheet in words; the record has a file of its own."""

from collections.abc import Iterator
from datetime import datetime
from typing import Any, Final

from studio_log.domain.lots import Lot
from studio_log.domain.methods import StepKind
from studio_log.domain.reminders import Record
from studio_log.domain.wall_clock import known_zone
from studio_log.domain.windows import StepWindow, windows_of
from studio_log.language.calendar_words import date_words, weekday_name
from studio_log.language.region import region
from studio_log.language.words import tr, tr_later
from studio_log.present import words
from studio_log.present.hues import KIND_WORDS
from studio_log.present.paper.blocks import (
    Block,
    Cell,
    Column,
    Document,
    Frames,
    Heading,
    Lines,
    Said,
    Table,
    Tick,
    Words,
    cell,
)
from studio_log.services import questions as q
from studio_log.services.bench_reads import day_parts
from studio_log.services.desk import Desk
from studio_log.services.papers import CardFor, DaySheetFor, Paper
from studio_log.services.sheet_reads import lot_sheet

SHEET_FIRST: Final = tr_later(
    "The supplier’s safety data sheet and local rules come first; this paper does not replace them."
)
_CARD: Final = tr_later("Step card")
_SPAN: Final = 30.5
"""Width of a column of frames, mm."""


def card(house: Any, desk: Desk, question: CardFor) -> Paper:
    """Give the card for the wall: every step with its window, amounts, and frames to fill in."""
    lot = desk.lot(question.code)
    sheet = lot_sheet(house, desk, q.LotSheetFor(lot.code))
    windows = windows_of(lot, desk.now, desk.quiet)
    columns = (
        Column("", mm=8),
        Column(tr("Step"), share=1),
        Column(tr("When"), mm=44),
        Column(f"{tr('Begun')} {_order()}", mm=_SPAN),
        Column(f"{tr('Ended')} {_order()}", mm=_SPAN),
    )
    rows = tuple(_card_row(desk, lot, line, windows.get(line.number)) for line in sheet.steps)
    blocks = (Table(columns, rows, least=11.0), Heading(tr("Notes")), Lines(3), *heed(house, lot))
    return Paper(f"card-{lot.code}", _document(desk, lot, sheet, tr(_CARD), blocks))


def _order() -> str:
    """Say what goes into the frames first."""
    return tr("(month/day)") if region().month_first else tr("(day/month)")


def _card_row(
    desk: Desk, lot: Lot, line: q.StepLine, window: StepWindow | None
) -> tuple[Cell, ...]:
    step = lot.step(line.number)
    said = [Said(line.title, bold=True)]
    said += [Said(tr("if you choose to"), size="small")] if line.optional else []
    if not step.closed:
        named = (
            f"{one.title} {words.amount_with_kitchen(one, desk.units)}" for one in line.amounts
        )
        said += [Said(line.do, size="small"), Said("; ".join(named))]
        said += [Said(one.words, size="small", bold=True) for one in line.warned]
    known = _known(desk, line)
    when = [Said(one) for one in window_lines(desk, line, window)]
    when += [Said(line.planned, size="small")] if line.planned and not step.closed else []
    return (cell(str(line.order)), tuple(said), tuple(when), known[0], known[1])


def _known(desk: Desk, line: q.StepLine) -> tuple[Cell, Cell]:
    """Give what is written down already, and frames for what is not."""
    if line.state == "skipped":
        return cell(line.actual, size="small"), ()
    if line.kind is StepKind.CURE and line.start is None:
        return (), ()
    begun: Cell = cell(moment(desk, line.start)) if line.start else Frames()
    ended: Cell = cell(moment(desk, line.end)) if line.end else Frames()
    if line.end is not None and line.start is None:
        begun = cell(tr("not known"))
    return begun, () if line.kind is StepKind.CURE else ended


def moment(desk: Desk, at: datetime) -> str:
    """Write a moment as paper needs it, never "today": "Tue 9 Jun 13:08"."""
    local, now = (one.astimezone(known_zone(desk.zone)).date() for one in (at, desk.now))
    day = date_words(local, short=True, year=local.year != now.year)
    return f"{weekday_name(local.weekday())} {day} {words.clock(at, desk.zone)}"


def window_lines(desk: Desk, line: q.StepLine, window: StepWindow | None) -> Iterator[str]:
    """Say when a step is best begun or ended, and by when at the latest."""
    if window is None:
        return
    running = line.state == "running"
    frame = window.end if running or line.kind is StepKind.CURE else window.start
    best = window.best_end if frame is window.end else window.best_start
    if line.kind is StepKind.CURE:
        yield tr("ready {moment}", moment=moment(desk, best))
        return
    verb = tr_later("end {moment}") if running else tr_later("begin {moment}")
    yield tr(verb, moment=moment(desk, best))
    if frame.latest is not None and frame.latest > best:
        yield tr("latest {moment}", moment=moment(desk, frame.latest))


def heed(house: Any, lot: Lot) -> tuple[Block, ...]:
    """Give the cautions of a lot's methods, whole, and whose word comes first."""
    slugs = {slug for method in lot.methods for step in method.steps for slug in step.cautions}
    found = [one for slug, one in house.cautions.items() if slug in slugs]
    rows = tuple(
        ((Said(one.title, bold=True), Said(" ".join(one.text.split()), size="small")),)
        for one in found
    )
    table = (Table((Column("", share=1),), rows, heads=False),) if rows else ()
    return (Heading(tr("Cautions")), *table, Words(tr(SHEET_FIRST), bold=True, size="small"))


def _document(
    desk: Desk, lot: Lot, sheet: q.LotSheet, what: str, blocks: tuple[Block, ...]
) -> Document:
    return document_of(desk, f"{lot.code}  {sheet.name}", lot.code, (what, sheet.heading), blocks)


def document_of(
    desk: Desk, title: str, code: str, under: tuple[str, ...], blocks: tuple[Block, ...]
) -> Document:
    """Put a document together, with who printed it when."""
    return Document(
        title=title,
        code=code,
        under=under,
        head=f"{title} · {under[0]}" if under else title,
        studio=desk.settings.studio,
        printed=tr("as of {whole_moment}", whole_moment=words.whole_moment(desk.now, desk.zone)),
        blocks=blocks,
    )


_PARTS: Final = (
    tr_later("Now"),
    tr_later("Later today"),
    tr_later("Tonight and in the morning"),
)


def day_sheet(_house: Any, desk: Desk, _question: DaySheetFor) -> Paper:
    """Give what is due now, today and tonight, by time, with boxes to tick."""
    parts = day_parts(desk)
    blocks: list[Block] = []
    for head, records in zip(_PARTS, parts, strict=True):
        blocks.append(Heading(tr(head)))
        ordered = sorted(records, key=lambda one: (one.reminder.rings_at, one.reminder.key))
        blocks.append(_day_table(desk, ordered) if ordered else Words(tr("Nothing is due.")))
    blocks += [Heading(tr("Notes")), Lines(4)]
    title = tr("Day sheet, {day}", day=words.day(desk.now, desk.zone))
    under = (desk.settings.studio,) if desk.settings.studio else ()
    return Paper("day-sheet", document_of(desk, title, "", under, tuple(blocks)))


def _day_table(desk: Desk, records: list[Record]) -> Table:
    columns = (
        Column("", mm=8),
        Column(tr("Time"), mm=31),
        Column(tr("Lot"), mm=18),
        Column(tr("What to do"), share=1),
        Column(tr("Done at"), mm=20),
    )
    return Table(columns, tuple(_day_row(desk, one) for one in records), least=10.0)


def _day_row(desk: Desk, record: Record) -> tuple[Cell, ...]:
    one = record.reminder
    why = " ".join(part for part in (one.why, one.if_late) if part)
    told = (Said(one.title, bold=True), *((Said(why, size="small"),) if why else ()))
    at = one.due if one.due <= desk.now else one.rings_at
    return (Tick(), cell(moment(desk, at)), cell(one.subject, bold=True), told, Frames(day=False))


def kind_words(kind: StepKind) -> str:
    """Name a kind of step."""
    return tr(KIND_WORDS[kind])
