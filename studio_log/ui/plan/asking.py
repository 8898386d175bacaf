"""The forms of wishes, as the studio's setup fills them."""

from PySide6.QtCore import QDate
from PySide6.QtWidgets import QWidget

from studio_log.services.plan import PlanSetup
from studio_log.ui.plan.wish_forms import GoalForm, WantedForm


def goal_form(setup: PlanSetup | None, number: int, parent: QWidget) -> GoalForm:
    """Give the form of a goal of the setup, or of a new one where it has none of this number."""
    goals = setup.goals if setup is not None else ()
    goal = goals[number] if 0 <= number < len(goals) else None
    taken = [one.name for one in goals if one is not goal]
    return GoalForm(_first_day(setup), taken, goal, parent)


def wanted_form(setup: PlanSetup, parent: QWidget) -> WantedForm:
    """Give the form of one lot more that is wanted."""
    return WantedForm(setup.methods, [line.code for line in setup.lots], parent)


def _first_day(setup: PlanSetup | None) -> QDate:
    first = str(setup.problem["start"])[:10] if setup is not None else ""
    return QDate.fromString(first, "yyyy-MM-dd") if first else QDate.currentDate()
