"""What a plan counts on beyond the studio as it is, written into the studio: hours, means, goals.

It is what "what if" tries and ways out ask for, as the planner's JSON has it. What is about a step
of one lot, and about no studio, is not kept.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, replace
from datetime import date, datetime, timedelta
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.open_hours import Opening, read_open, write_open
from studio_log.domain.plan_form import WEEKDAYS
from studio_log.domain.plan_wishes import PlanGoal, read_goals, write_wishes
from studio_log.domain.single_days import SingleDay, read_single_days, with_day, write_single_days
from studio_log.domain.stretch_text import Stretch, joined, read_stretches
from studio_log.domain.studio_hours import week_of
from studio_log.domain.vessel_text import OwnVessel, read_vessels, write_vessels
from studio_log.language.words import tr
from studio_log.services.settings import Settings
from studio_log.services.settings_check import read_settings
from studio_log.services.studio_hours import studio_hours

Change = Mapping[str, Any]
MOST_CHANGES: Final = 40


def with_changes(settings: Settings, changes: Sequence[Change]) -> Settings:
    """Give the settings of a studio that has what a plan counts on; Refusal where that is odd."""
    if len(changes) > MOST_CHANGES:
        raise _refused()
    for change in changes:
        keep = _KEEPS.get(str(change.get("change")))
        try:
            settings = settings if keep is None else keep(settings, change)
        except (KeyError, TypeError, ValueError, OverflowError):
            raise _refused() from None
    return read_settings(asdict(settings), strict=True)


def is_kept(changes: Sequence[Change]) -> bool:
    """Say whether anything of some changes can be written into the studio."""
    return any(one.get("change") in _KEEPS for one in changes)


def _refused() -> Refusal:
    return Refusal(tr("What the plan counts on does not read. Nothing was changed; plan again."))


# -- hours -------------------------------------------------------------------------------


def _stretch(change: Change) -> Stretch:
    ((start, end),) = read_stretches(f"{change['from']}-{change['to']}")
    return start, end


def _session(settings: Settings, change: Change) -> Settings:
    day = date.fromisoformat(change["date"])
    hours, _ = studio_hours(settings, day, day)
    return _with_day(settings, day, joined((*hours.on(day).working, _stretch(change))))


def _closed(settings: Settings, change: Change) -> Settings:
    return _with_day(settings, date.fromisoformat(change["date"]), ())


def _with_day(settings: Settings, day: date, working: tuple[Stretch, ...]) -> Settings:
    days = with_day(read_single_days(settings.single_days), SingleDay(day, day, working))
    return replace(settings, single_days=write_single_days(days))


def _weekly(settings: Settings, change: Change) -> Settings:
    if not settings.open_hours:
        return settings  # always open
    more, week = _stretch(change), week_of(read_open(settings.open_hours))
    days = {WEEKDAYS.index(one) for one in change["days"]}
    openings = (
        Opening(weekday, start, end)
        for weekday, own in enumerate(week)
        for start, end in joined((*own, *((more,) if weekday in days else ())))
    )
    return replace(settings, open_hours=write_open(tuple(openings)))


# -- means -------------------------------------------------------------------------------


def _one_more(settings: Settings, change: Change) -> Settings:
    own = OwnVessel(str(change["kind"]), float(change["litres"]))
    return replace(settings, vessels=write_vessels((*read_vessels(settings.vessels), own)))


def _one_less(settings: Settings, change: Change) -> Settings:
    """Take a vessel out by the name that a plan gives it: kind and number."""
    kind, _, number = str(change["vessel"]).rpartition(" ")
    own = list(read_vessels(settings.vessels))
    places = [at for at, one in enumerate(own) if one.kind == kind]
    if not 1 <= int(number) <= len(places):
        raise ValueError(number)
    del own[places[int(number) - 1]]
    return replace(settings, vessels=write_vessels(tuple(own)))


def _more(setting: str, key: str) -> Callable[[Settings, Change], Settings]:
    def keep(settings: Settings, change: Change) -> Settings:
        return replace(settings, **{setting: getattr(settings, setting) + change[key]})

    return keep


# -- goals -------------------------------------------------------------------------------


def _goal(
    change_goal: Callable[[PlanGoal, Change], tuple[PlanGoal, ...]],
) -> Callable[[Settings, Change], Settings]:
    def keep(settings: Settings, change: Change) -> Settings:
        goals: list[PlanGoal] = []
        for one in read_goals(settings.plan_goals):
            goals += change_goal(one, change) if one.name == change["goal"] else (one,)
        return replace(settings, plan_goals=write_wishes(tuple(goals)))

    return keep


def _later(goal: PlanGoal, change: Change) -> tuple[PlanGoal, ...]:
    at = datetime.fromisoformat(goal.at) + timedelta(minutes=int(change["minutes"]))
    return (replace(goal, at=at.strftime("%Y-%m-%dT%H:%M")),)


def _fewer(goal: PlanGoal, change: Change) -> tuple[PlanGoal, ...]:
    return (replace(goal, pieces=int(change["pieces"])),) if change["pieces"] else ()


def _less_cured(goal: PlanGoal, change: Change) -> tuple[PlanGoal, ...]:
    """Part a goal as the planner does: some pieces are cured for other days."""
    pieces, days = int(change["pieces"]), int(change["days"])
    if pieces >= goal.pieces:
        return (replace(goal, cured_days=days),)
    name = tr("{goal}, {days} days cured", goal=goal.name, days=days)
    other = replace(goal, name=name, pieces=pieces, cured_days=days)
    return replace(goal, pieces=goal.pieces - pieces), other


_KEEPS: Final[Mapping[str, Callable[[Settings, Change], Settings]]] = {
    "add_session": _session,
    "close_day": _closed,
    "add_hours": _weekly,
    "add_vessel": _one_more,
    "remove_vessel": _one_less,
    "more_line": _more("line_metres", "metres"),
    "more_burners": _more("burners", "burners"),
    "more_hands": _more("hands", "hands"),
    "later_goal": _goal(_later),
    "goal_pieces": _goal(_fewer),
    "goal_cured": _goal(_less_cured),
}
"""By kind of change, how it is kept."""
