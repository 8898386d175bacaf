"""The looks ahead in words: the day in the morning, the night in the evening.

`day_ahead` and `evening_ahead` work them out; whoever tells them needs this door only.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from studio_log.domain.day_ahead import DayAct, DayAhead, acts_of_day
from studio_log.domain.evening_ahead import Tonight, tonight
from studio_log.domain.methods import StepKind
from studio_log.language.calendar_words import day_words as date_words
from studio_log.language.words import counted, tr, tr_later

__all__ = [
    "DayAct", "DayAhead", "Tonight",
    "acts_of_day", "day_lines", "day_words", "tonight", "tonight_words",
]  # fmt: skip

MOST_LINES = 6
MOST_SENTENCES = 3


def day_words(ahead: DayAhead, now: datetime, zone: str) -> str:
    """Say the day in one sentence: "Today: 5 acts, first at 9:10, last before 22:30."; or ""."""
    if not ahead.acts:
        return ""
    day = _day_name(ahead.since, now, zone).capitalize()
    first, last = ahead.acts[0], ahead.acts[-1]
    if ahead.count == 1:
        when = tr("due already") if first.overdue else tr("at {at}", at=_clock(first.at, zone))
        return tr(
            "{day}: 1 act, {when}: {words} {code}.",
            day=day,
            when=when,
            words=first.words,
            code=first.code,
        )
    late = sum(act.overdue for act in ahead.acts)
    following = next((act for act in ahead.acts if not act.overdue), None)
    if following is None:
        return tr("{day}: {count} acts, and all are due already.", day=day, count=ahead.count)
    start = tr("first at {at}", at=_clock(first.at, zone))
    if late:
        one, many = tr_later("{n} is due already"), tr_later("{n} are due already")
        start = counted(late, one, many)
        start += tr(", the next at {at}", at=_clock(following.at, zone))
    last_by = ahead.last_by or last.latest
    last_words = _clock(last_by, zone)
    last_words = tr("midnight") if last_words == "0:00" else last_words
    whole = (
        tr_later("{day}: {count} acts, {start}, last before {last}.")
        if last_by > last.at
        else tr_later("{day}: {count} acts, {start}, last at {last}.")
    )
    return tr(whole, day=day, count=ahead.count, start=start, last=last_words)


def day_lines(ahead: DayAhead, now: datetime, zone: str) -> tuple[str, ...]:
    """Give a line for each act, "9:10 stir 26-003 Alder runners"; past six how many more."""
    lines = []
    for act in ahead.acts[:MOST_LINES]:
        when = tr("now:") if act.overdue and act.at <= now else _clock(act.at, zone)
        lines.append(f"{when} {act.words} {act.code} {act.name}".rstrip())
    rest = ahead.count - MOST_LINES
    return (*lines, tr("and {rest} more", rest=rest)) if rest > 0 else tuple(lines)


def tonight_words(found: Sequence[Tonight], now: datetime, zone: str) -> str:
    """Say what to start tonight, a sentence each, past three how many more; "" for nothing."""
    said = [_evening_sentence(one, now, zone) for one in found[:MOST_SENTENCES]]
    if not said:
        return ""
    head = tr("Tonight") if found[0].must else tr("Good tonight")
    rest = len(found) - MOST_SENTENCES
    sentences = [f"{head}: {said[0]}", *(tr("Also: {one}", one=one) for one in said[1:])]
    return " ".join([*sentences, tr("And {rest} more.", rest=rest)] if rest > 0 else sentences)


def _evening_sentence(one: Tonight, now: datetime, zone: str) -> str:
    pressing = one.by - now < timedelta(minutes=1)
    when = tr("now") if pressing else tr("by {at}", at=_clock(one.by, zone))
    order = tr("{words} for {code} {when}", words=one.words, code=one.code, when=when)
    if one.ends is None:
        return f"{order}."
    first, last = (_clock(at, zone) for at in one.ends)
    day = _day_name(one.ends[0], now, zone)
    until = _day_name(one.ends[1], now, zone)
    span = (
        tr("{day} at {first}", day=day, first=first)
        if one.ends[0] == one.ends[1]
        else tr("{day} {first} to {last}", day=day, first=first, last=last)
    )
    if until != day:
        span = tr("{day} {first} to {until} {last}", day=day, first=first, until=until, last=last)
    ends = tr("they end") if one.kind is StepKind.BEANS else tr("it ends")
    return tr("{order} and {ends} {span}.", order=order, ends=ends, span=span)


def _clock(at: datetime, zone: str) -> str:
    """Give the time on the wall as it is spoken: "9:10"."""
    local = at.astimezone(ZoneInfo(zone))
    return f"{local.hour}:{local:%M}"


def _day_name(at: datetime, now: datetime, zone: str) -> str:
    there, here = (moment.astimezone(ZoneInfo(zone)).date() for moment in (at, now))
    near = {0: tr_later("today"), 1: tr_later("tomorrow")}
    name = near.get((there - here).days)
    return tr(name) if name else date_words(there)
