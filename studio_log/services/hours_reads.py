"""The studio's hours answered from a desk."""

from collections.abc import Callable, Mapping
from datetime import timedelta
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.services.desk import Desk
from studio_log.services.public_holidays import holidays_between, place_of, places
from studio_log.services.studio_hours import (
    HolidayPlaceFor,
    HolidayPlacesFor,
    HolidaysFor,
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


ANSWERS: Final[Mapping[type, Callable[[Any, Desk, Any], Any]]] = {
    StudioHoursFor: hours_between,
    HolidayPlacesFor: lambda _house, _desk, _question: places(),
    HolidayPlaceFor: lambda _house, _desk, asked: place_of(asked.code),
    HolidaysFor: lambda _house, _desk, asked: holidays_between(
        asked.place, asked.first, asked.last
    ),
}
"""By question, for services.reads."""
