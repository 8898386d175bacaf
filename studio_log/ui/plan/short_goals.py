"""Goals that a plan does not fill: pieces are not there, or their lots are left out of it."""

from collections.abc import Sequence
from dataclasses import dataclass

from studio_log.language.words import tr
from studio_log.services.plan import PlanSetup
from studio_log.ui.plan.told import Fields
from studio_log.ui.plan.what_if import Change


@dataclass(frozen=True, slots=True)
class ShortGoal:
    """A goal, the pieces that it lacks, and those that it asks for."""

    name: str
    lacking: int
    pieces: int

    def words(self) -> str:
        """Say it in a sentence."""
        return tr(
            "{goal} lacks {n} of its {pieces} pieces in this plan.",
            goal=self.name,
            n=self.lacking,
            pieces=self.pieces,
        )


def short_goals(
    fields: Fields, setup: PlanSetup, changes: Sequence[Change] = ()
) -> list[ShortGoal]:
    """Give the goals that a plan does not fill, but for those of which a change asks less.

    What the planner calls late counts no pieces but those that the lots of the plan have.
    """
    serves = fields.get("serves")
    if serves is None or not fields["starts"]:
        return []
    agreed = {one["goal"] for one in changes if "goal" in one}
    lacks = [
        ShortGoal(one.name, one.pieces - sum(serves.get(one.name, {}).values()), one.pieces)
        for one in setup.goals
        if one.name not in agreed
    ]
    return [one for one in lacks if one.lacking > 0]
