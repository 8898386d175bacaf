"""The plan's questions answered: its problem, and the timeline as it would be."""

from dataclasses import replace
from typing import Any

from studio_log.domain.following import following
from studio_log.domain.lots import Lot
from studio_log.domain.open_hours import read_open
from studio_log.domain.plan_form import short_goals
from studio_log.domain.plan_lots import Part
from studio_log.domain.plan_wishes import read_shared, read_slow_days
from studio_log.domain.served import MAKING, making_milk, takes_milk
from studio_log.domain.studio_hours import week_of
from studio_log.domain.vessel_text import read_vessels
from studio_log.language.words import listed, tr
from studio_log.present.hours_words import week_in_words
from studio_log.services import questions as q
from studio_log.services.desk import Desk
from studio_log.services.list_reads import doing_words
from studio_log.services.plan import PlanFor, PlanLine, PlannedFor, PlanSetup
from studio_log.services.plan_studio import PlanStudio, kept_plan, plan_studio_of, problem_of
from studio_log.services.timeline_reads import lane, sheet_of


def plan_setup(_house: Any, desk: Desk, _question: PlanFor) -> PlanSetup:
    """Give the studio as a problem, and what it was made of."""
    studio = plan_studio_of(desk)
    problem, doubts = problem_of(desk, studio)
    notes = [*studio.notes, *doubts, *_short(studio)]
    return PlanSetup(
        problem,
        tuple(_line(desk, studio, code) for code in studio.forms),
        studio.goals,
        tuple(studio.wanted.values()),
        read_slow_days(desk.settings.plan_slow_days),
        read_vessels(desk.settings.vessels),
        _open_words(desk.settings.open_hours),
        tuple(notes),
        desk.now,
        desk.zone,
        kept_plan(studio),
        desk.settings.plan_visit_hours,
        tuple((slug, desk.method(slug).title) for slug in sorted({slug for slug, _ in desk.book})),
        read_shared(desk.settings.plan_milks),
    )


def _open_words(kept: str) -> str:
    openings = read_open(kept)
    return week_in_words(week_of(openings)) if openings else tr("always")


def _line(desk: Desk, studio: PlanStudio, code: str) -> PlanLine:
    lot, form = studio.lots[code], studio.forms[code]
    wanted = code in studio.wanted
    return PlanLine(
        code,
        lot.name,
        tr("wanted: {method}", method=lot.method.title) if wanted else doing_words(desk, lot),
        len(lot.pieces),
        wanted=wanted,
        open=form.is_open,
        follows=any(step.plan_end is not None for step in lot.steps),
        places=form.places,
        orders={
            name: _order(lot, *place, studio.served_by(code)) for name, place in form.places.items()
        },
        tendings={
            name: tending.act
            for name, (number, _) in form.places.items()
            if (tending := lot.step(number).spec.tending) is not None
        },
        makes_milk=bool(making_milk(lot)),
        takes_milk=takes_milk(lot),
    )


def _order(lot: Lot, number: int, part: Part, others: tuple[str, ...]) -> str:
    """Say what is to be done at one of the planner's steps; milk for `others` is said so."""
    spec = lot.step(number).spec
    order = spec.end_order if part is Part.END else spec.order
    if not others or spec.kind not in MAKING:
        return order
    return tr("{order}, for {others} too", order=order, others=listed(others))


def _short(studio: PlanStudio) -> list[str]:
    return [
        tr(
            "{goal} wants {pieces} pieces; the lots that can serve it have {there}. "
            "It is planned for those; add a lot that is wanted.",
            goal=goal.name,
            pieces=goal.pieces,
            there=there,
        )
        for goal, there in short_goals(studio.goals, tuple(studio.forms.values()))
    ]


def planned_timeline(_house: Any, desk: Desk, question: PlannedFor) -> q.Timeline:
    """Give the timeline of the lots of a plan, as if they followed it."""
    studio = plan_studio_of(desk)
    moments = studio.moments(question.starts, question.ends)
    lanes = [
        lane(desk, following(studio.lots[code], ends, studio.lots[code].milk_of))
        for code, ends in moments.items()
        if studio.forms[code].is_open
    ]
    # One that is wanted has no code: its name stands there already.
    lanes = [replace(one, name=tr("wanted")) if one.code in studio.wanted else one for one in lanes]
    return sheet_of(desk, lanes)
