"""Reading the clock in what a dyer types: "13:08", "8 pm", "half past eight", "noon"."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import NUMBER_WORDS

_HOUR: Final = "(?:" + "|".join(NUMBER_WORDS) + "|[0-9]{1,2})"
_MINUTES: Final[Mapping[str, int]] = {
    "half": 30, "quarter": 15, "five": 5, "ten": 10, "twenty": 20, "twenty five": 25,
    "fifteen": 15, "thirty": 30, "forty": 40, "forty five": 45, "fifty": 50,
}  # fmt: skip
_SPOKEN: Final = (
    "(?:" + "|".join(sorted(_MINUTES, key=len, reverse=True)).replace(" ", "[ -]") + ")"
)
_COUNTED: Final = rf"(?P<minutes>{_SPOKEN}|[0-5]?[0-9])(?: minutes?)?"
_WAY: Final = "(?P<way>past|after|to|before|till)"
_FREE: Final = r"(?<![\w:.,/+-])"
_END: Final = r"(?![\w:/+-]|[.,][0-9])"
_HALF_DAY: Final = r"(?: ?(?P<half_day>am|pm))?"

MORNING, AFTERNOON, EVENING, NIGHT = "morning", "afternoon", "evening", "night"


@dataclass(frozen=True)
class ClockReading:
    """A time of day. `hours` are those it may mean, counted from midnight; 24 is the next.

    `by_twelve` means the figure is one of a twelve-hour clock, so that a part of the day
    may decide; `loose` that both halves of the day are open as long as nothing does.
    """

    hour: int
    minute: int = 0
    second: int = 0
    by_twelve: bool = False
    loose: bool = False
    midnight: bool = False

    @property
    def hours(self) -> tuple[int, ...]:
        """The hours it may mean on a given day, without a word for the part of the day."""
        if self.midnight:
            return (0, 24)
        if not self.loose:
            return (self.hour,)
        return (12, 24) if self.hour == 12 else (self.hour, self.hour + 12)

    def in_part(self, part: str) -> tuple[int, ...]:
        """Give the hours it may mean in a part of the day; empty where it does not fit."""
        if self.midnight:
            return (24,) if part == NIGHT else ()
        if self.by_twelve and self.hour in _BY_TWELVE[part]:
            return (_BY_TWELVE[part][self.hour],)
        if part == NIGHT and self.hour <= 5:
            return (self.hour + 24,)
        return (self.hour,) if self.hour in _BY_DAY[part] else ()


_BY_TWELVE: Final[Mapping[str, Mapping[int, int]]] = {
    MORNING: {hour: hour for hour in range(1, 12)},
    AFTERNOON: {12: 12, **{hour: hour + 12 for hour in range(1, 7)}},
    EVENING: {hour: hour + 12 for hour in range(4, 12)},
    NIGHT: {12: 24, **{h: h + 24 for h in range(1, 6)}, **{h: h + 12 for h in range(6, 12)}},
}
_BY_DAY: Final[Mapping[str, range]] = {
    MORNING: range(12), AFTERNOON: range(12, 19), EVENING: range(16, 24), NIGHT: range(18, 24),
}  # fmt: skip


def take_clock(plain: str) -> tuple[ClockReading, str] | None:
    """Give the first time of day in a clean lower-case text and the text without it."""
    for pattern, read in _PATTERNS:
        found = re.search(_FREE + pattern + _END, plain)
        if found is not None:
            return read(found), f"{plain[: found.start()]} {plain[found.end() :]}"
    return None


def _figures(found: re.Match[str]) -> ClockReading:
    hour, minute = int(found["hour"]), int(found["minute"] or 0)
    second = int(found["second"] or 0)
    return _checked(_halved(found, ClockReading(hour, minute, second, by_twelve=1 <= hour <= 12)))


def _hour_alone(found: re.Match[str]) -> ClockReading:
    return _checked(_halved(found, _hour_of(found["hour"])))


def _hour_of(said: str) -> ClockReading:
    """Read "eight", "8" or "20"; up to twelve both halves of the day are open."""
    hour = NUMBER_WORDS.get(said) or int(said)
    return ClockReading(hour, by_twelve=1 <= hour <= 12, loose=1 <= hour <= 12)


def _spoken(found: re.Match[str]) -> ClockReading:
    """Read "half past eight", "ten to nine"."""
    base = _hour_of(found["hour"])
    said = found["minutes"].replace("-", " ")
    minutes = _MINUTES[said] if said in _MINUTES else int(said)
    hour = base.hour
    if found["way"] not in {"past", "after"}:
        minutes, hour = 60 - minutes, hour - 1 if hour > 1 or not base.loose else 12
    return _checked(_halved(found, replace(base, hour=hour, minute=minutes)))


def _hour_and_minutes(found: re.Match[str]) -> ClockReading:
    """Read "eight thirty"."""
    minutes = _MINUTES[found["minutes"].replace("-", " ")]
    hour = NUMBER_WORDS[found["hour"]]
    return _halved(found, ClockReading(hour, minutes, by_twelve=True, loose=True))


def _halved(found: re.Match[str], clock: ClockReading) -> ClockReading:
    """Apply "am" or "pm" where it stands."""
    half_day = found["half_day"]
    if half_day is None:
        return clock
    if not 1 <= clock.hour <= 12:
        raise Refusal(
            f"{clock.hour} does not go with {half_day}. Nothing was changed. "
            "Write the time as 13:08 or 1:08 pm."
        )
    hour = clock.hour % 12 + (12 if half_day == "pm" else 0)
    return ClockReading(hour, clock.minute, clock.second)


def _checked(clock: ClockReading) -> ClockReading:
    if not (0 <= clock.hour < 24 and 0 <= clock.minute < 60 and 0 <= clock.second < 60):
        raise Refusal(
            f"{clock.hour}:{clock.minute:02} is no time on a clock. Nothing was changed. "
            "Write the time as 13:08 or 1:08 pm."
        )
    return clock


_PATTERNS: Final[tuple[tuple[str, Callable[[re.Match[str]], ClockReading]], ...]] = (
    (
        r"(?P<hour>[0-9]{1,2})[:.h](?P<minute>[0-9]{2})(?:[:.](?P<second>[0-9]{2}))?" + _HALF_DAY,
        _figures,
    ),
    (r"(?:noon|midday)", lambda _found: ClockReading(12)),
    (r"midnight", lambda _found: ClockReading(0, midnight=True)),
    (
        rf"(?:a )?{_COUNTED} {_WAY} (?P<hour>{_HOUR}){_HALF_DAY}",
        _spoken,
    ),
    (
        rf"(?P<hour>{'|'.join(NUMBER_WORDS)})[ -](?P<minutes>{_SPOKEN})" + _HALF_DAY,
        _hour_and_minutes,
    ),
    (rf"(?P<hour>{_HOUR})(?: ?oclock)?" + _HALF_DAY, _hour_alone),
)
