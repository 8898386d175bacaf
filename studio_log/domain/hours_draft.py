"""The week's hours while they are edited: a value that is read from the settings and written back.

Three layers of each weekday: working, quiet, waking. Quiet hours are kept as nights, named by their
evening, and seen as stretches of the days that they touch; both ways are here.
"""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import time
from enum import StrEnum
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.open_hours import Opening, read_open, write_open
from studio_log.domain.quiet_text import Hours, check_week, read_days, write_days
from studio_log.domain.single_days import SingleDay, read_single_days, write_single_days
from studio_log.domain.stretch_text import (
    MINUTES_OF_DAY,
    Stretch,
    joined,
    minute_of,
    read_stretches,
    stretch_words,
)
from studio_log.domain.studio_hours import Week, quiet_week, waking_week, week_of
from studio_log.language.calendar_words import DAYS, long_weekday_name

Nights = tuple[Hours | None, ...]
"""The night after each evening, Monday first; None for one without quiet hours."""
NAMES: Final = (
    "open_hours", "waking_hours", "quiet_start", "quiet_end", "quiet_days", "single_days",
    "holiday_place",
)  # fmt: skip
"""The settings that a draft holds."""
_NOON: Final = 720
_NOTHING: Final[Week] = ((),) * 7


class Layer(StrEnum):
    """What of a week is edited."""

    WORKING = "working"
    QUIET = "quiet"
    WAKING = "waking"


@dataclass(frozen=True)
class HoursDraft:
    """All hours of the studio; a week without any working, or waking, stretch says nothing."""

    working: Week = _NOTHING
    waking: Week = _NOTHING
    nights: Nights = (None,) * 7
    singles: tuple[SingleDay, ...] = ()
    place: str = ""

    def bars(self, layer: Layer, weekday: int) -> tuple[Stretch, ...]:
        """Give the stretches of a weekday as they are drawn, in order."""
        if layer is Layer.QUIET:
            return self.quiet[weekday]
        return (self.working if layer is Layer.WORKING else self.waking)[weekday]

    @property
    def quiet(self) -> Week:
        """The quiet stretches of each weekday."""
        return quiet_week(_NONE, tuple(enumerate(self.nights)))

    @property
    def awake(self) -> Week:
        """The waking stretches that count, also where nothing was said."""
        return waking_week(openings_of(self.waking), _NONE, tuple(enumerate(self.nights)))


_NONE: Final = Hours(time(0), time(0))


def draft_from(values: Mapping[str, str]) -> HoursDraft:
    """Read a draft from the settings it holds, by name; Refusal where one cannot be read."""
    every = Hours(_time(values["quiet_start"]), _time(values["quiet_end"]))
    differing = dict(read_days(values["quiet_days"]))
    usual = every if every.minutes else None
    return HoursDraft(
        working=_said(values["open_hours"]),
        waking=_said(values["waking_hours"]),
        nights=tuple(differing.get(day, usual) for day in range(7)),
        singles=read_single_days(values["single_days"]),
        place=values["holiday_place"],
    )


def draft_values(draft: HoursDraft) -> dict[str, str]:
    """Write a draft as settings; Refusal in words where it cannot be kept as it stands."""
    counts = Counter(night for night in draft.nights if night is not None)
    usual = counts.most_common(1)[0][0] if counts else None
    every = usual or _NONE
    days = tuple((day, night) for day, night in enumerate(draft.nights) if night != usual)
    check_week(every, days)
    found = {
        "open_hours": write_open(openings_of(draft.working)),
        "waking_hours": write_open(openings_of(draft.waking)),
        "quiet_start": f"{every.start:%H:%M}",
        "quiet_end": f"{every.end:%H:%M}",
        "quiet_days": write_days(days),
        "single_days": write_single_days(draft.singles),
        "holiday_place": draft.place,
    }
    read_open(found["open_hours"])
    read_open(found["waking_hours"])
    read_single_days(found["single_days"])
    return found


def with_bars(
    draft: HoursDraft, layer: Layer, weekday: int, bars: tuple[Stretch, ...]
) -> HoursDraft:
    """Give the draft with other stretches on a weekday; a Refusal says why nights cannot be so."""
    week = tuple(joined(bars) if day == weekday else draft.bars(layer, day) for day in range(7))
    if layer is Layer.WORKING:
        return replace(draft, working=week)
    if layer is Layer.WAKING:
        return replace(draft, waking=week)
    return replace(draft, nights=_nights_of(week))


def typed(draft: HoursDraft, layer: Layer, weekday: int) -> str:
    """Give a weekday as it may be typed: its stretches, or the night after its evening."""
    if layer is not Layer.QUIET:
        return stretch_words(draft.bars(layer, weekday))
    night = draft.nights[weekday]
    return "" if night is None else night.words


def with_typed(draft: HoursDraft, layer: Layer, weekday: int, text: str) -> HoursDraft:
    """Give the draft with what was typed for a weekday; a Refusal says what is not understood."""
    if layer is not Layer.QUIET:
        return with_bars(draft, layer, weekday, read_stretches(text))
    nights = list(draft.nights)
    nights[weekday] = _read_night(text)
    return replace(draft, nights=tuple(nights))


def copied(draft: HoursDraft, layer: Layer, weekday: int, to: tuple[int, ...]) -> HoursDraft:
    """Give the draft with a weekday's hours on others too."""
    for day in to:
        if layer is Layer.QUIET:
            nights = list(draft.nights)
            nights[day] = nights[weekday]
            draft = replace(draft, nights=tuple(nights))
        else:
            draft = with_bars(draft, layer, day, draft.bars(layer, weekday))
    return draft


def openings_of(week: Week) -> tuple[Opening, ...]:
    """Give a week as openings, in order."""
    return tuple(
        Opening(weekday, start, end) for weekday in range(7) for start, end in week[weekday]
    )


def _said(text: str) -> Week:
    return week_of(read_open(text)) if read_open(text) else _NOTHING


def _read_night(text: str) -> Hours | None:
    """Read "22-7" or "22:00–07:00"; None for nothing."""
    plain = text.strip().casefold()
    if not plain:
        return None
    ends = plain.replace("–", "-").replace("—", "-").split("-")
    if len(ends) != 2 or not all(_is_time(end.strip()) for end in ends):
        raise Refusal(f"{text[:40]!r} is no night. Write it as “22-7”, or leave it empty for none.")
    start, end = (minute_of(one.strip()) % MINUTES_OF_DAY for one in ends)
    if start == end:
        raise Refusal("A night of no length is none. Leave it empty for a night without quiet.")
    return Hours(_clock_time(start), _clock_time(end))


def _is_time(text: str) -> bool:
    hour, _, minute = text.replace(".", ":").partition(":")
    figures = hour.isascii() and hour.isdigit() and len(hour) <= 2
    return figures and (not minute or (minute.isascii() and minute.isdigit() and len(minute) == 2))


def _nights_of(week: Week) -> Nights:
    """Name each quiet stretch by its evening; one that runs over midnight is one night."""
    whole = 7 * MINUTES_OF_DAY
    spans = list(
        joined(
            (day * MINUTES_OF_DAY + start, day * MINUTES_OF_DAY + end)
            for day in range(7)
            for start, end in week[day]
        )
    )
    if len(spans) > 1 and spans[0][0] == 0 and spans[-1][1] == whole:
        spans[-1] = (spans[-1][0], whole + spans.pop(0)[1])
    nights: list[Hours | None] = [None] * 7
    for start, end in spans:
        day, minute = divmod(start, MINUTES_OF_DAY)
        evening = (day - (minute < _NOON)) % 7
        if nights[evening] is not None:
            raise Refusal(
                f"{long_weekday_name(evening)} would have two nights. Let the one end before "
                "midnight where the next begins, or take one away."
            )
        if end - start >= MINUTES_OF_DAY:
            raise Refusal(f"{DAYS[evening]} night would never end. Leave some hours awake.")
        nights[evening] = Hours(_clock_time(minute), _clock_time(end % MINUTES_OF_DAY))
    return tuple(nights)


def _clock_time(minute: int) -> time:
    return time(minute // 60, minute % 60)


def _time(text: str) -> time:
    try:
        return time.fromisoformat(text)
    except ValueError:
        raise Refusal(f"{text[:20]!r} is no time of the day.") from None
