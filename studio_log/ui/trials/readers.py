"""What is understood of what is typed about a trial."""

from collections.abc import Callable
from datetime import date, timedelta
from typing import Any, Final, TypeVar

from studio_log.domain.day_text import take_day
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import plain
from studio_log.domain.swatch_text import read_lab, whole_swatch_code
from studio_log.domain.trial_text import read_ages, read_figure
from studio_log.language.calendar_words import date_words
from studio_log.language.words import tr
from studio_log.present.colour_words import lab_words
from studio_log.ui.widgets.understood import Understood

Value = TypeVar("Value")
LONG_PAST: Final = timedelta(days=31)


def _read(
    text: str, read: Callable[[str], Value], say: Callable[[Value], str]
) -> Understood[Value]:
    if not text.strip():
        return Understood()
    try:
        found = read(text)
    except Refusal as refusal:
        return Understood(fault=str(refusal))
    return Understood(found, say(found))


def ages(text: str) -> Understood[tuple[float, ...]]:
    """Read cure ages in days."""
    return _read(
        text,
        read_ages,
        lambda found: tr("{ages} d", ages=", ".join(plain(one, 1) for one in found)),
    )


def named(text: str) -> Understood[tuple[str, ...]]:
    """Read names with commas between."""
    found = tuple(filter(None, (part.strip() for part in text.split(","))))
    return Understood(found or None, " · ".join(found))


def swatch(text: str) -> Understood[str]:
    """Read the code of a swatch."""
    return _read(text, whole_swatch_code, str)


def day_reader(today: date) -> Callable[[str], Understood[date]]:
    """Give the reader of a day seen from today: "9 July" is the next one."""

    def read(text: str) -> date:
        folded = " ".join(text.casefold().split())
        found = take_day(folded, today)
        if found is None or found[1].strip():
            raise Refusal(tr("That is no day, such as 9 July or 2026-07-09."))
        day = found[0].day
        if day < today - LONG_PAST and not any(
            len(one) == 4 and one.isdigit() for one in folded.replace("-", " ").split()
        ):
            day = date(day.year + 1, day.month, min(day.day, 28) if day.month == 2 else day.day)
        return day

    return lambda text: _read(text, read, lambda found: date_words(found, year=True))


def reading_of(measure: str) -> Callable[[str], Understood[Any]]:
    """Give the reader of one piece: a figure in its measure, or a colour where that says it."""

    def read(text: str) -> Any:
        if measure in {"chroma", "lightness"} and _parts(text) == 3:
            return read_lab(text)
        return read_figure(text, measure)

    def say(found: Any) -> str:
        return plain(found, 2) if isinstance(found, float) else lab_words(found)

    return lambda text: _read(text, read, say)


def _parts(text: str) -> int:
    """Count figures: "52,1;31,8;24" and "52.1, 31.8, 24" have three, "34,2" is one."""
    if ";" in text:
        return text.count(";") + 1
    return text.count(",") + 1 if text.count(",") == 2 else len(text.split())
