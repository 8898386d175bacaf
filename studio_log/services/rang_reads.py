"""What rang: worked out from what the studio wrote down as it rang."""

import gc
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import datetime, timedelta
from typing import Final

from studio_log.domain.reminders import Fate, Kind
from studio_log.language.words import tr, tr_later
from studio_log.services.desk import Desk
from studio_log.services.rang import ANSWERED, NOT_NEEDED, OPEN, WAITS, Rang, Try, WhatRangFor
from studio_log.services.reminder_words import WORTH_SAYING
from studio_log.store.reminders import RangLine

USUAL: Final = timedelta(days=90)
ONE_RING: Final = timedelta(minutes=1)
"""Channels that answer within this of each other told of the same ring."""
LOOKS: Final = frozenset({Kind.LOOK_AHEAD.value, Kind.EVENING_LOOK.value, Kind.COPY_OLD.value})
STATES: Final[Mapping[str, str]] = {
    Fate.WAITING.value: WAITS,
    Fate.RAISED.value: OPEN,
    Fate.ANSWERED.value: ANSWERED,
    Fate.VOID.value: NOT_NEEDED,
}
KINDS: Final[Mapping[str, str]] = {
    Kind.START.value: tr_later("to begin"),
    Kind.TEND.value: tr_later("tending"),
    Kind.MAY_END.value: tr_later("may end"),
    Kind.READY.value: tr_later("ready"),
    Kind.LAST_CALL.value: tr_later("last call"),
    Kind.PAST.value: tr_later("past its limit"),
    Kind.IS_DRY.value: tr_later("is it dry?"),
    Kind.USE_BY.value: tr_later("use by"),
    Kind.CURE_MARK.value: tr_later("mark of the cure"),
    Kind.MAKE_READY.value: tr_later("make ready"),
    Kind.REFRESH.value: tr_later("refresh"),
    Kind.LOOK_AHEAD.value: tr_later("look ahead"),
    Kind.EVENING_LOOK.value: tr_later("evening look"),
    Kind.COPY_OLD.value: tr_later("old copies"),
}


def what_rang(_house: object, desk: Desk, question: WhatRangFor) -> tuple[Rang, ...]:
    """Give what rang or should have rung by now, the latest due first."""
    with _uncollected():
        rows = _rows(desk, question)
    wanted = question.find.casefold().split()
    return tuple(row for row in rows if not wanted or _holds(row, wanted))


@contextmanager
def _uncollected() -> Iterator[None]:
    """Keep the collector still: making thousands of rows it would look through everything.

    It would do so several times, for half of the time that the answer takes, and find nothing.
    """
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def _rows(desk: Desk, question: WhatRangFor) -> list[Rang]:
    until = question.until or desk.now
    since = question.since or until - USUAL
    found, tried = desk.work.reminders.that_rang(since, until, min(until, desk.now))
    tries: dict[str, list[Try]] = {}
    for key, at, channel, ok, words in tried:
        tries.setdefault(key, []).append(Try(at, channel, ok, words))
    return [_row(desk, one, tuple(tries.get(one.key, ()))) for one in found]


def _holds(row: Rang, wanted: Sequence[str]) -> bool:
    said = [word for one in row.tries for word in (one.channel, one.words)]
    parts = (row.lot, row.name, row.step, row.title, row.kind, row.urgency, row.answer, row.state,
             row.void_why, *row.channels, *said)  # fmt: skip
    whole = "\n".join(parts).casefold()
    return all(word in whole for word in wanted)


def _row(desk: Desk, kept: RangLine, tries: tuple[Try, ...]) -> Rang:
    rings = _rings(kept, tries)
    late = next((at - kept.due for at in rings if at >= kept.due), None)
    told = kept.kind in LOOKS
    shown = (*kept.channels, *(one.channel for one in tries if one.ok))
    return Rang(
        key=kept.key,
        lot="" if told else kept.subject,
        name=kept.name,
        step=kept.step,
        title=kept.title,
        kind=tr(KINDS.get(kept.kind, kept.kind.replace("_", " "))),
        urgency=kept.urgency,
        due=kept.due,
        rings=rings,
        times=max(kept.raise_count, len(rings)) if rings else 0,
        late=late,
        quiet_until=_quiet_until(desk, kept.due, late),
        channels=tuple(dict.fromkeys(shown)),
        answer=kept.answer,
        answered_at=kept.answered_at,
        void_at=kept.void_at,
        void_why=kept.void_why,
        state=STATES.get(kept.status, kept.status),
        rings_at=kept.rings_at if kept.status in {Fate.WAITING, Fate.RAISED} else None,
        tries=tries,
        told=told,
        zone=desk.zone,
    )


def _rings(kept: RangLine, tries: Sequence[Try]) -> tuple[datetime, ...]:
    """Give the moments of its rings; none where no channel ever showed it.

    What an undo brought back stands as raised, silent, on the bench: that was no ring.
    """
    shown = [one.at for one in tries if one.ok]
    if not shown and not kept.channels:
        return ()
    known = _apart([*shown, *filter(None, [kept.raised_at])])
    if kept.last_rung_at is not None and len(known) < kept.raise_count:
        # The window alone rang it: no channel of the desktop has an answer on record.
        known = _apart([*known, kept.last_rung_at])
    return known


def _apart(moments: Iterable[datetime]) -> tuple[datetime, ...]:
    """Give moments in order, those of one ring once."""
    found: list[datetime] = []
    for at in sorted(moments):
        if not found or at - found[-1] > ONE_RING:
            found.append(at)
    return tuple(found)


def _quiet_until(desk: Desk, due: datetime, late: timedelta | None) -> datetime | None:
    """Give the end of the quiet hours that held it, where it rang as they ended.

    The hours are those in force now; that it rang at their end is what makes it known.
    """
    if late is None or late < WORTH_SAYING:
        return None
    end = desk.quiet.waking(due)
    return end if end > due and timedelta(0) <= due + late - end <= ONE_RING else None
