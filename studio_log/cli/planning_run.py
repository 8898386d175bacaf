"""Plans the log or a problem file; imported when the command runs, for it brings the planner."""

import json
import signal
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import UTC
from threading import current_thread, main_thread
from time import monotonic
from types import FrameType
from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.planning_apart import Away, with_optimizer
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import quoted
from studio_log.language.calendar_words import DAYS, MONTHS
from studio_log.planning.answer import answer, instants, invalid, mended
from studio_log.planning.change_json import change_of_text, change_to_json
from studio_log.planning.change_kinds import LeaveOut
from studio_log.planning.changes import apply_change
from studio_log.planning.effort import MOST_SECONDS, Effort
from studio_log.planning.engine import Impossible
from studio_log.planning.explained import explained
from studio_log.planning.late_words import span_words
from studio_log.planning.problem import BadProblemError, Plan, Problem
from studio_log.planning.project import Project
from studio_log.planning.read import LARGEST, read_problem
from studio_log.planning.read_plan import read_plan
from studio_log.planning.sessions import sessions_of
from studio_log.planning.what_fits import beside, what_fits
from studio_log.present.plan_visits import HandsOn, Visit, plan_days
from studio_log.services.commands import Outcome
from studio_log.services.method_file import small_file
from studio_log.services.plan import AcceptPlan, PlanFor, PlanSetup

SECONDS: Final = 20.0
LEAST_S: Final = 0.5
FOR_PLANNING: Final = 0.7
"""Of the seconds, where a plan is late; the others are for ways out."""
PROVED: Final = {
    "optimal": "No plan is better; that is proved.",
    "feasible": "The best plan found in {seconds:.1f} s; whether there is a better one is open.",
}
TOLD: Final = ("why", "reasons", "ways_out")
"""Fields of an answer that say why not."""
LEFT_OUT: Final = "{} is left out of this plan."


class Ending:
    """Says when planning ends: the seconds are over, it was told to, or a sketch is there."""

    def __init__(self, seconds: float, clock: Callable[[], float]) -> None:
        self._clock, self._begun = clock, clock()
        self.seconds = seconds
        self.told = False
        self.late = True
        """Whether ways out will be looked for: the best plan is late, or there is none yet."""

    def over(self) -> bool:
        """Say whether it is time to end planning; ways out need some of the seconds."""
        share = FOR_PLANNING if self.late else 1.0
        return self.told or self.passed() >= share * self.seconds

    def all_over(self) -> bool:
        """Say whether it is time to end looking for ways out too."""
        return self.told or self.passed() >= self.seconds

    def passed(self) -> float:
        """Give the seconds since it was begun."""
        return self._clock() - self._begun

    def tell(self, *_: object) -> None:
        """End as soon as can be."""
        self.told = True


@dataclass(frozen=True)
class _Asked:
    """A problem as bytes of JSON, what it is called, and what the log could not plan of it."""

    data: bytes
    name: str
    notes: tuple[str, ...] = ()
    of_log: bool = False
    keep: Mapping[str, Any] | None = None
    """The plan that lots of the log follow."""


def plan_file(turn: Turn) -> int:
    """Plan the file that a command names, else the log; 1 for a problem that is refused."""
    ending = Ending(_seconds(turn.values["seconds"]), monotonic)
    apart = with_optimizer(turn.values["engine"])
    asked = _asked(turn)
    try:
        problem = _changed(read_problem(asked.data), turn.values["change"])
    except BadProblemError as bad:
        if not turn.values["json"]:
            faults = "\n".join((*bad.faults, *asked.notes))
            raise Refusal(
                f"{asked.name} cannot be planned. Nothing was changed.\n{faults}"
            ) from None
        turn.say_json({**invalid(bad.faults), "seconds": round(ending.passed(), 3)})
        return 1
    ending.late = isinstance(problem, Problem)
    with _told_by_ctrl_c(ending):
        fits, left, fields = _planned(turn, asked, problem, ending, apart=apart)
    plan = read_plan(fits, fields) if isinstance(fits, Problem) and fields["starts"] else None
    fields = {**fields, "seconds": round(ending.passed(), 3)}
    fields["why"] = [*asked.notes, *fields["why"], *(LEFT_OUT.format(one.lot) for one in left)]
    _say(turn, fields, lambda: _lines(fits, fields, plan))
    return 0


def _planned(
    turn: Turn, asked: _Asked, problem: Problem | Project, ending: Ending, *, apart: bool
) -> tuple[Problem | Project, tuple[Impossible, ...], dict[str, Any]]:
    """Give what was planned, the lots of the log that were left out, and the answer."""
    effort = _effort(turn, ending)
    fits, left = _fitting(problem, effort) if asked.of_log else (problem, ())
    away = None
    if apart and not turn.values["sketch"] and asked.keep is None:
        typed = [json.loads(one) for one in turn.values["change"]]
        away = Away(asked.data, typed, ending.seconds, ending.all_over)

    def planned() -> dict[str, Any]:
        if away is None:
            return _here(fits, effort, asked.keep)
        return _elsewhere(turn, _without(away, left, ending), ending)

    fields = planned()
    if asked.of_log and not fields["starts"] and isinstance(fits, Problem):
        fits, more = beside(fits, Effort(ending.all_over))
        left = (*left, *more)
        fields = planned() if more else fields
    if isinstance(problem, Problem):
        whole = fields if fields["starts"] and not left else None
        fields = _explained(problem, fields, whole, away, ending)
    return fits, left, fields


def _say(turn: Turn, fields: dict[str, Any], lines: Callable[[], list[str]]) -> None:
    """Say the answer, once the log's lots follow it where that is asked for."""
    outcome = _accepted(turn, fields) if turn.values["accept"] else None
    if turn.values["json"]:
        turn.say_json(fields if outcome is None else {**fields, "accepted": sorted(outcome.lots)})
    else:
        turn.say("\n".join(lines()))
        if outcome is not None:
            turn.say(outcome.words)


def _here(
    fits: Problem | Project, effort: Effort, keep: Mapping[str, Any] | None
) -> dict[str, Any]:
    """Plan what fits with our own engine, or mend what lots follow."""
    if keep is not None and isinstance(fits, Problem):
        return mended(fits, effort, read_plan(fits, keep)).fields
    return answer(fits, effort).fields


def _without(away: Away, left: tuple[Impossible, ...], ending: Ending) -> Away:
    """Give what the optimizer is asked without the lots that are left out."""
    outs = [change_to_json(LeaveOut(one.lot)) for one in left]
    return replace(away, changes=[*away.changes, *outs], over=ending.over)


def _elsewhere(turn: Turn, away: Away, ending: Ending) -> dict[str, Any]:
    """Plan with the optimizer, in a process of its own."""

    def on_better(fields: dict[str, Any]) -> None:
        score = fields.get("score")
        ending.late = bool(score and score[0])
        if score and not turn.values["json"]:
            turn.tell(f"After {ending.passed():.1f} s: {_score_words(score)}.")

    return away.ask("plan", on_better=on_better)


def _explained(
    problem: Problem,
    fields: dict[str, Any],
    whole: dict[str, Any] | None,
    away: Away | None,
    ending: Ending,
) -> dict[str, Any]:
    """Say why not better; `whole` are the fields where no lot is left out of the plan."""
    if away is None:
        plan = None if whole is None else read_plan(problem, whole)
        return explained(problem, fields, plan, Effort(stop=ending.all_over))
    if (whole is not None and not whole["score"][0]) or ending.all_over():
        return fields
    asked = replace(away, seconds=max(LEAST_S, ending.seconds - ending.passed()))
    told = asked.ask("why", keep=whole)
    return {**fields, **{key: told[key] for key in TOLD if told.get("reasons")}}


def _asked(turn: Turn) -> _Asked:
    if turn.values["file"] is not None:
        if turn.values["accept"]:
            raise Refusal(
                "A problem file has no lots of the log, so none can follow its plan. Nothing was "
                "changed; leave the file out to plan the log."
            )
        path = values.file_path(turn.values["file"], "The name of the problem's file")
        return _Asked(small_file(path, LARGEST), path.name)
    setup: PlanSetup = turn.studio.ask(PlanFor())
    if not setup.lots:
        raise Refusal(
            "No lot is there to be planned. Make one first, or say in the window's plan which lots "
            "are wanted. Nothing was changed."
        )
    data = json.dumps(setup.problem).encode()
    return _Asked(data, "The log", setup.notes, of_log=True, keep=setup.keep)


def _accepted(turn: Turn, fields: dict[str, Any]) -> Outcome:
    """Let the lots follow the plan; Refusal where there is none."""
    if not fields["starts"]:
        raise Refusal("There is no plan that lots could follow. Nothing was changed.")
    starts, ends = (instants(fields[key]) for key in ("starts", "ends"))
    changes = tuple(json.loads(one) for one in turn.values["change"])
    return turn.do(AcceptPlan(starts, ends, changes=changes))


def _fitting(
    problem: Problem | Project, effort: Effort
) -> tuple[Problem | Project, tuple[Impossible, ...]]:
    return what_fits(problem, effort) if isinstance(problem, Problem) else (problem, ())


def _changed(problem: Problem | Project, typed: list[str]) -> Problem | Project:
    """Give the problem with the changes that are typed as JSON, one after the other."""
    for number, text in enumerate(typed, 1):
        where = f"Change {number}"
        if not isinstance(problem, Problem):
            raise BadProblemError((f"{where} is for a studio, and the file is a project.",))
        problem = apply_change(problem, change_of_text(text, where))
    return problem


def _seconds(typed: str | None) -> float:
    if typed is None:
        return SECONDS
    try:
        found = float(typed)
    except ValueError:
        found = 0.0
    if not 0.0 < found <= MOST_SECONDS:
        raise Refusal(
            f"{quoted(values.shown(typed))} is no number of seconds up to {MOST_SECONDS:g}. "
            "Nothing was changed."
        )
    return found


def _effort(turn: Turn, ending: Ending) -> Effort:
    """Give how long to plan; a better plan is told of as it comes, unless a script listens."""

    def on_better(plan: Any) -> None:
        ending.late = isinstance(plan, Plan) and plan.score.late > 0
        if turn.values["sketch"]:
            ending.tell()
        elif not turn.values["json"] and isinstance(plan, Plan):
            turn.tell(f"After {ending.passed():.1f} s: {_score_words(list(plan.score.parts()))}.")

    return Effort(stop=ending.over, on_better=on_better)


@contextmanager
def _told_by_ctrl_c(ending: Ending) -> Iterator[None]:
    """Let Ctrl+C end the planning, not the program: the best plan so far is the answer."""
    if current_thread() is not main_thread():
        yield
        return

    def tell(_signal: int, _frame: FrameType | None) -> None:
        ending.tell()

    before = signal.signal(signal.SIGINT, tell)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


# -- words -------------------------------------------------------------------------------


def _lines(problem: Problem | Project, fields: dict[str, Any], plan: Plan | None) -> list[str]:
    proved = PROVED.get(fields["status"], "").format(**fields)
    if isinstance(problem, Project):
        if fields["makespan"] is None:
            return list(fields["why"])
        starts = [
            f"{name}: {at} to {fields['ends'][name]}" for name, at in fields["starts"].items()
        ]
        return [f"Over after {fields['makespan']}. {proved}", *starts]
    ways = _ways(fields["ways_out"])
    if plan is None:
        return [*fields["why"], *ways]
    head = f"{_score_words(fields['score'])}. {proved}"
    changed = [one["words"] for one in fields.get("differences", ())]
    return [
        f"{head[0].upper()}{head[1:]}",
        *fields["why"],
        *ways,
        *changed,
        "",
        *_visits(problem, plan),
    ]


def _ways(ways: list[dict[str, Any]]) -> list[str]:
    """Give a line a way out."""
    told = [f"- {one['sentence']}" for one in ways]
    return ["", "Ways out, a plan was made for each:", *told] if told else []


def _score_words(score: list[int]) -> str:
    late, sessions, fine = score
    dates = "no date late" if not late else f"{span_words(late)} late together"
    return f"{sessions} sessions, {dates}, {span_words(fine)} off target and to taking down"


def _visits(problem: Problem, plan: Plan) -> list[str]:
    """Give a line a visit: when to come, and what to do for which lot."""
    acts = [
        HandsOn(problem.clock.utc(span.start), problem.clock.utc(span.end), lot, step, step)
        for session in sessions_of(problem, plan)
        for lot, step in session.steps
        for span in [plan.spans[lot][step]]
    ]
    zone = problem.clock.zone
    days = plan_days(acts, "UTC" if zone is None else zone.key)
    return [_visit_words(problem, visit) for day in days for visit in day.visits]


def _visit_words(problem: Problem, visit: Visit) -> str:
    zone = problem.clock.zone or UTC
    start, end = (at.astimezone(zone) for at in (visit.start, visit.end))
    day = f"{DAYS[start.weekday()]} {start.day} {MONTHS[start.month - 1][:3]} {start.year}"
    told = "; ".join(f"{acts[0].lot} {', '.join(one.order for one in acts)}" for acts in visit.runs)
    return f"{day}, {start:%H:%M}–{end:%H:%M}: {told}"
