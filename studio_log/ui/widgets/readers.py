"""What weights, volumes and spans typed in a form mean, said in both systems of units."""

from collections.abc import Callable
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.language.words import counted, tr, tr_later
from studio_log.present import words
from studio_log.ui.widgets.understood import Understood

LONGEST_CURE: Final = 3650


def weight(text: str) -> Understood[float]:
    """Read a weight: grams."""
    return _read(text, read_grams, words.mass)


def volume(text: str) -> Understood[float]:
    """Read a volume: litres."""
    return _read(text, read_litres, words.litres)


def days(text: str) -> Understood[int]:
    """Read a number of days, "90", "90 d" or "3 months" of 30 days."""
    plain = text.casefold().split()
    figure, unit = "".join(plain[:1]), " ".join(plain[1:])
    bare = figure.rstrip("abcdefghijklmnopqrstuvwxyz")
    unit = unit or figure[len(bare) :]
    length = _SPANS.get(unit)
    if not (bare.isascii() and bare.isdigit() and len(bare) <= 4) or length is None:
        return Understood(fault=tr("The cure is a whole number of days, as in 90, or 12 weeks."))
    found = int(bare) * length
    if found > LONGEST_CURE:
        return Understood(fault=tr("A cure lasts up to 3,650 days, as in 90."))
    return Understood(found, counted(found, tr_later("{n} day"), tr_later("{n} days")))


def _read(text: str, read: Callable[[str], float], say: Callable[..., str]) -> Understood[float]:
    if not text.strip():
        return Understood()
    try:
        found = read(text)
    except Refusal as refusal:
        return Understood(fault=str(refusal))
    return Understood(
        found,
        tr(
            "Understood: {metric} = {us}",
            metric=say(found, "metric"),
            us=say(found, "us"),
        ),
    )


_SPANS: Final = {
    **dict.fromkeys(("", "d", "day", "days"), 1),
    **dict.fromkeys(("w", "week", "weeks"), 7),
    **dict.fromkeys(("month", "months"), 30),
}
"""Days in a unit; a month of a cure is 30 of them, as schools that say three months mean 90."""
