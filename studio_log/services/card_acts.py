"""Times from a card: looked over by the same rules as every mark, and written as one act."""

from collections.abc import Callable, Iterator, Mapping
from datetime import datetime
from typing import Any, Final

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.replay import apply
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.services.card_times import CardRow, CardSaid, TakeCard, TryCard
from studio_log.services.commands import Mark, Outcome
from studio_log.services.desk import Desk
from studio_log.services.marking import mark


def try_card(_house: Any, desk: Desk, question: TryCard) -> tuple[CardSaid, ...]:
    """Replay the rows over the lot, one after the other, and say what is amiss with each."""
    lot, found = desk.lot(question.code), []
    last: datetime | None = None
    for row in question.rows:
        if row.begun is None and row.ended is None:
            continue
        said, lot = _tried(desk, lot, row)
        first = row.begun or row.ended
        if said.kind != "fault" and last is not None and first is not None and first < last:
            early = tr("It stands before the row above it. Is the day right?")
            said = CardSaid(row.step, "doubt", f"{early} {said.words}".strip())
        found.append(said)
        last = max(filter(None, (last, row.begun, row.ended)))
    return tuple(found)


def _tried(desk: Desk, lot: Lot, row: CardRow) -> tuple[CardSaid, Lot]:
    doubts: list[str] = []
    for act, at in _acts(lot, row):
        entry = desk.entry(lot.code, act, at, step=row.step)
        try:
            desk.check_time(at, sure=False)
            lot = apply(lot, entry, desk.book)
        except Question as question:
            doubts.append(str(question))
            try:
                lot = apply(lot, _sure(entry), desk.book)
            except Refusal as refusal:
                return CardSaid(row.step, "fault", str(refusal)), lot
        except Refusal as refusal:
            return CardSaid(row.step, "fault", str(refusal)), lot
    doubts += _length_doubt(lot.step(row.step))
    if doubts:
        return CardSaid(row.step, "doubt", " ".join(dict.fromkeys(doubts))), lot
    return CardSaid(row.step, "good"), lot


def _sure(entry: Entry) -> Entry:
    return Entry(**{**entry.__dict__, "data": {**entry.data, "sure": True}})


def _length_doubt(step: LotStep) -> list[str]:
    """Ask about a step that took far longer or shorter than its method says."""
    lasts = step.spec.lasts
    if lasts is None or step.start is None or step.end is None:
        return []
    took = step.end - step.start
    if lasts.earliest <= took <= lasts.latest:
        return []
    said = words.window_words(lasts)
    return [tr("It took {took}; the method says {lasts}.", took=words.span(took), lasts=said)]


def _acts(lot: Lot, row: CardRow) -> Iterator[tuple[Act, datetime]]:
    """Give what a row means: only what is not written down already."""
    step = lot.step(row.step)
    if row.begun is not None and step.start is None:
        yield Act.START, row.begun
    if row.ended is not None and step.end is None:
        yield (Act.DRY if step.spec.ask_dry is not None else Act.END), row.ended


def take_card(desk: Desk, command: TakeCard) -> Outcome:
    """Write the rows down in the order of the steps; Question or Refusal, and none is."""
    said = try_card(None, desk, TryCard(command.code, command.rows))
    if not said:
        raise Refusal(tr("Nothing is typed. Nothing was changed."))
    bad = [one for one in said if one.kind == "fault"]
    doubts = [one for one in said if one.kind == "doubt"]
    titles = {step.number: step.title for step in desk.lot(command.code).steps}
    if bad:
        first = bad[0]
        raise Refusal(f"{titles[first.step]}: {first.words}")
    if doubts and not command.sure:
        told = " ".join(f"{titles[one.step]}: {one.words}" for one in doubts)
        raise Question(told)
    for row in command.rows:
        for act, at in _acts(desk.lot(command.code), row):
            mark(desk, Mark(command.code, str(row.step), act, at, sure=True))
    lot = desk.lot(command.code)
    return Outcome(
        tr("{code}: {n} steps are written down from the card.", code=lot.code, n=len(said)),
        lots=frozenset({lot.code}),
        reminders=True,
        subject=lot.code,
    )


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {TakeCard: take_card}
ANSWERS: Final[Mapping[type, Callable[[Any, Desk, Any], Any]]] = {TryCard: try_card}
