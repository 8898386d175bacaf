"""The studio's hours answered from a desk."""

from datetime import timedelta
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.services.desk import Desk
from studio_log.services.studio_hours import (
    StudioHoursAnswer,
    StudioHoursFor,
    studio_hours,
    waking_hours,
)

LONGEST_SPAN: Final = timedelta(days=3700)
"""Ten years and more at once is nobody's plan."""


def hours_between(_house: Any, desk: Desk, question: StudioHoursFor) -> StudioHoursAnswer:
    """Answer for each day of the span; Refusal for one backwards or above ten years."""
    first, last = question.first, question.last
    if not timedelta(0) <= last - first <= LONGEST_SPAN:
        raise Refusal("Hours are told from a day to a later one, up to ten years on.")
    hours, doubt = studio_hours(desk.settings, first, last)
    return StudioHoursAnswer(tuple(hours.between(first, last)), waking_hours(desk.settings), doubt)
