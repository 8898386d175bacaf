"""Which lots a query asks for, and in which order, as conditions for the database."""

from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Select,
    String,
    and_,
    case,
    cast,
    exists,
    false,
    func,
    literal,
    or_,
    select,
    text,
    true,
)

from studio_log.domain.lots import LotState
from studio_log.domain.reminders import Urgency
from studio_log.store.kinds import days_between
from studio_log.store.search import holds
from studio_log.store.tables import CURED, DIPPED, LOT, REMINDER, STEP, STILL_OPEN
from studio_log.store.values import LotQuery

CURING = LotState.CURING.value
READY = LotState.READY.value
NEEDED_FIRST = ("in-work", "ready", "curing", "planned", "used", "stopped")


def wanted(query: LotQuery) -> ColumnElement[bool]:
    """Give the condition of a query."""
    parts: list[ColumnElement[bool]] = [true()]
    if query.states:
        parts.append(or_(*(_in_state(state, query.now) for state in query.states)))
    if query.live_only:
        parts.append(LOT.c.ended == false())
    found = holds(query.find)
    if found is not None:
        parts.append(found)
    parts += [*_of_cloth(query), *_of_time(query)]
    return and_(*parts)


def _of_cloth(query: LotQuery) -> list[ColumnElement[bool]]:
    search = query.search
    parts = [LOT.c.fibre.icontains(fibre, autoescape=True) for fibre in search.fibres]
    if search.place:
        parts.append(LOT.c.place.icontains(search.place, autoescape=True))
    if search.over_grams is not None:
        parts.append(LOT.c.grams > search.over_grams)
    if search.under_grams is not None:
        parts.append(LOT.c.grams < search.under_grams)
    if search.coats is not None:
        dips = func.count()
        enough = dips == search.coats if search.coats_exact else dips >= search.coats
        dipped = select(STEP.c.lot).where(text(DIPPED)).group_by(STEP.c.lot).having(enough)
        parts.append(LOT.c.code.in_(dipped))
    return parts


def _of_time(query: LotQuery) -> list[ColumnElement[bool]]:
    search, parts = query.search, []
    if query.begun_from is not None:
        parts.append(LOT.c.begun_at >= query.begun_from)
    if query.begun_before is not None:
        parts.append(LOT.c.begun_at < query.begun_before)
    if search.cured_over is not None:
        parts.append(_cured(search.cured_over, query, over=True))
    if search.cured_under is not None:
        parts.append(_cured(search.cured_under, query, over=False))
    return parts


def _cured(days: float, query: LotQuery, *, over: bool) -> ColumnElement[bool]:
    """Give the condition on the age of a cure, which stands still once it has ended."""
    if query.now is None:
        return false()
    since = query.now - timedelta(days=days)
    dry = LOT.c.fully_dry_at
    old = dry <= since if over else dry > since
    here = and_(STEP.c.lot == LOT.c.code, text(f"step.{CURED}"), STEP.c.end.is_not(None))
    age = days_between(STEP.c.end, dry)
    ended_so = exists().where(here, age >= days if over else age < days)
    return and_(dry.is_not(None), or_(and_(old, ~exists().where(here)), ended_so))


def state_at(now: datetime | None) -> ColumnElement[str]:
    """Give the state of a lot at a moment: a cure runs out by the clock alone."""
    if now is None:
        return LOT.c.state_hint
    over = and_(LOT.c.state_hint == CURING, LOT.c.ready_at <= now)
    return case((over, READY), else_=LOT.c.state_hint)


def _in_state(state: str, now: datetime | None) -> ColumnElement[bool]:
    put_so: ColumnElement[bool] = LOT.c.state_hint == state
    if now is None or state not in (CURING, READY):
        return put_so
    if state == CURING:
        return and_(put_so, or_(LOT.c.ready_at.is_(None), LOT.c.ready_at > now))
    return or_(put_so, and_(LOT.c.state_hint == CURING, LOT.c.ready_at <= now))


def needs(now: datetime | None) -> Select[Any]:
    """Give each open reminder in order of when it rings, as `both`: its lot, how pressing it is.

    The order has SQLite walk the small index of what is open, not all that ever rang.
    """
    ranks = {urgency.value: urgency.rank for urgency in Urgency}
    rank: ColumnElement[int] = case(ranks, value=REMINDER.c.urgency, else_=0)
    if now is not None:
        rank = case((REMINDER.c.due <= now, rank), else_=0)
    both = REMINDER.c.subject + literal(" ") + cast(rank, String)
    asked = select(both.label("both"))
    return asked.where(text(STILL_OPEN)).order_by(REMINDER.c.rings_at)
