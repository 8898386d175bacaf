"""The studio of a desk in the planner's form, and a plan's moments back on its lots."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any, Final
from zoneinfo import ZoneInfo

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.following import Moments
from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import Lot, LotState
from studio_log.domain.piece_text import read_piece
from studio_log.domain.pieces import Piece
from studio_log.domain.plan_form import Means, PlanTime, Wishes, begin_of, horizon_days, studio_form
from studio_log.domain.plan_lots import PlanLot, plan_lot
from studio_log.domain.plan_milks import milk_forms, sharings
from studio_log.domain.plan_moments import kept_spans, moments_of
from studio_log.domain.plan_overdue import pressed
from studio_log.domain.plan_wishes import (
    PlanGoal,
    SharedMilk,
    WantedLot,
    read_goals,
    read_shared,
    read_slow_days,
    read_wanted,
)
from studio_log.domain.served import served
from studio_log.domain.starting import begin, piece_data
from studio_log.domain.vessel_text import read_vessels
from studio_log.language.words import tr, tr_later
from studio_log.services.desk import Desk
from studio_log.services.studio_hours import studio_hours, waking_hours

MOST_LOTS: Final = 120
"""More lots at once are not planned."""
MOST_WORTH: Final = 240.0
"""Hours; from here on fewer sessions come before everything but dates."""
_PLANNED_STATES: Final = frozenset(
    {LotState.PLANNED, LotState.IN_WORK, LotState.CURING, LotState.READY}
)


@dataclass(frozen=True)
class PlanStudio:
    """All lots that a plan can speak of, in the log's form and the planner's."""

    lots: Mapping[str, Lot]
    """By code; those that are wanted by their names."""
    forms: Mapping[str, PlanLot]
    wanted: Mapping[str, WantedLot]
    goals: tuple[PlanGoal, ...]
    shared: tuple[SharedMilk, ...]
    """Milks that serve several lots, all of which are here."""
    notes: tuple[str, ...]

    def served_by(self, maker: str) -> tuple[str, ...]:
        """Give the other lots that a lot's milk serves."""
        return next((one.lots for one in self.shared if one.maker == maker), ())

    def moments(
        self,
        starts: Mapping[str, Mapping[str, datetime]],
        ends: Mapping[str, Mapping[str, datetime]],
    ) -> dict[str, Moments]:
        """Give the log's moments of a plan; Refusal where it is of another studio than this one."""
        found: dict[str, Moments] = {}
        for code, steps in starts.items():
            form = self.forms.get(code)
            if form is None or not set(steps) <= set(form.places):
                text = tr_later(
                    "{lot} has changed since this was planned. Nothing was changed; plan again."
                )
                raise Refusal(tr(text, lot=code))
            found[code] = moments_of(form.places, steps, ends.get(code, {}))
        return found


def plan_studio_of(desk: Desk) -> PlanStudio:
    """Take every lot that is not over, and those that are wanted."""
    zone, means = ZoneInfo(desk.zone), means_of(desk)
    notes: list[str] = []
    wanted = {one.name: one for one in read_wanted(desk.settings.plan_wanted)}
    every = {**_lots_of_log(desk, notes), **dict(_lots_wanted(desk, wanted, notes))}
    shared, doubts = sharings(read_shared(desk.settings.plan_milks), every, desk.now)
    milk_of = {code: one.maker for one in shared for code in one.lots}
    milks = desk.milks()
    lots: dict[str, Lot] = {}
    forms: dict[str, PlanLot] = {}
    for code, own in every.items():
        lot = served(own, milk_of.get(code, ""))
        milk = None if code in wanted else desk.milk_of(code, milks)
        form = plan_lot(lot, desk.now, zone, means.shop, milk_by=milk.use_by if milk else None)
        if form is not None:
            lots[code], forms[code] = lot, form
    notes += [*doubts, *(note for one in forms.values() for note in one.notes)]
    goals = read_goals(desk.settings.plan_goals)
    shared = tuple(one for one in shared if {one.maker, *one.lots} <= set(forms))
    return PlanStudio(lots, forms, wanted, goals, shared, tuple(notes))


def _lots_of_log(desk: Desk, notes: list[str]) -> dict[str, Lot]:
    codes = list(desk.work.lots.live_codes())
    if len(codes) > MOST_LOTS:
        text = tr_later("{n} of {all} lots are left out of the plan.")
        notes.append(tr(text, n=len(codes) - MOST_LOTS, all=len(codes)))
    lots = (desk.lot(code) for code in sorted(codes)[-MOST_LOTS:])
    return {one.code: one for one in lots if one.state(desk.now) in _PLANNED_STATES}


def _lots_wanted(
    desk: Desk, wanted: Mapping[str, WantedLot], notes: list[str]
) -> Iterator[tuple[str, Lot]]:
    """Give the lots that would be made; what is wrong with a wish is a note."""
    for name, one in wanted.items():
        try:
            yield name, wanted_lot(desk, one)
        except (Refusal, Question) as refusal:
            notes.append(f"{name}: {refusal}")


def wanted_lot(desk: Desk, wanted: WantedLot) -> Lot:
    """Give the lot that would be made of a wish; its code is the wish's name."""
    pieces = _pieces(wanted.pieces)
    method = desk.method(wanted.method)
    data = {
        "name": wanted.name,
        "method": list(method.key),
        "pieces": [piece_data(one) for one in pieces],
        "vessel_litres": desk.settings.vessel_litres,
    }
    entry = Entry(wanted.name, Act.NEW, desk.now, desk.now, desk.zone, number=1, data=data)
    return begin(entry, desk.book)


def _pieces(text: str) -> tuple[Piece, ...]:
    found: list[Piece] = []
    for line in filter(str.strip, text.splitlines()):
        found += read_piece(line, first_number=len(found) + 1).pieces
    return tuple(found)


def means_of(desk: Desk) -> Means:
    """Give what the studio works with, by its settings."""
    kept = desk.settings
    vessels = read_vessels(kept.vessels)
    return Means(vessels, kept.line_metres, kept.burners, kept.vessel_litres, kept.hands)


def problem_of(desk: Desk, studio: PlanStudio) -> tuple[dict[str, Any], tuple[str, ...]]:
    """Give the problem of the form studio-plan/1, and in words what is odd about it."""
    zone, forms = ZoneInfo(desk.zone), list(studio.forms.values())
    count = horizon_days(desk.now, zone, studio.goals, sum(one.is_open for one in forms))
    first = begin_of(desk.now, zone).astimezone(zone).date()
    last = first + timedelta(days=count)
    hours, doubt = studio_hours(desk.settings, first, last)
    days = tuple(hours.between(first, last))
    time = PlanTime(desk.now, zone, count, days, hours.week, waking_hours(desk.settings))
    forms, overdue = pressed(forms, time)
    hours_worth = desk.settings.plan_visit_hours
    worth = None if hours_worth >= MOST_WORTH else round(hours_worth * 60)
    wishes = Wishes(studio.goals, read_slow_days(desk.settings.plan_slow_days), worth)
    form = studio_form(time, means_of(desk), forms, wishes)
    milks = milk_forms(studio.shared, studio.lots, studio.forms)
    return {**form, "milks": milks}, tuple(filter(None, (*overdue, doubt)))


def kept_plan(studio: PlanStudio) -> dict[str, Any] | None:
    """Give the plan that lots follow, as the planner's answer has it; None where none does."""
    starts: dict[str, dict[str, str]] = {}
    ends: dict[str, dict[str, str]] = {}
    for code, form in studio.forms.items():
        one = kept_spans(studio.lots[code], form)
        if one:
            starts[code] = {name: _instant(start) for name, (start, _) in one.items()}
            ends[code] = {name: _instant(end) for name, (_, end) in one.items()}
    return {"starts": starts, "ends": ends, "score": [0, 0, 0]} if starts else None


def _instant(at: datetime) -> str:
    return at.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
