"""Grades of a swatch estimated from colours that were read: change of its halves, staining."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.swatches import Reading, Swatch
from studio_log.language.words import tr, tr_later
from studio_log.science.colour.lab import Lab


@dataclass(frozen=True)
class Estimated:
    """A step of a grey scale, the figure it was read from, and the entries of both colours."""

    grade: str
    figure: float
    entries: tuple[int, int]


@dataclass(frozen=True)
class _Scale:
    colours: Callable[[Swatch], tuple[Reading | None, Reading | None]]
    """The colours before and after."""
    grade: Callable[[Lab, Lab], tuple[str, float]]
    missing: str
    """What is said where one was not read."""


def _changed(before: Lab, after: Lab) -> tuple[str, float]:
    from studio_log.science.colour.grades import change  # noqa: PLC0415 - colour comes late

    found = change(before, after)
    return found.grade, found.figure


def _stained(before: Lab, after: Lab) -> tuple[str, float]:
    from studio_log.science.colour.grades import staining  # noqa: PLC0415 - colour comes late

    found = staining(before, after)
    return found.grade, found.figure


_SCALES: Final[Mapping[str, _Scale]] = {
    "change": _Scale(
        lambda swatch: (swatch.reading, swatch.tested),
        _changed,
        tr_later(
            "A grade is estimated from the colours of both halves: read the master half and the "
            "test half first, or give the grade. Nothing was changed."
        ),
    ),
    "staining": _Scale(
        lambda swatch: (swatch.latest("adjacent"), swatch.latest("stained")),
        _stained,
        tr_later(
            "Staining is estimated from the colours of the cloth beside it, before the test and "
            "after: read both first, or give the grade. Nothing was changed."
        ),
    ),
}
"""Change by ISO 105-A05, staining by ISO 105-A04."""


def estimated(swatch: Swatch, scale: str) -> Estimated:
    """Estimate a grade; Refusal where colours are missing, or were not read alike."""
    known = _SCALES.get(scale)
    if known is None:
        raise Refusal(
            tr("Only a change of colour and staining can be estimated; give the grade by eye.")
        )
    before, after = known.colours(swatch)
    if before is None or after is None:
        raise Refusal(tr(known.missing))
    if before.white != after.white or "relative" in {before.source, after.source}:
        raise Refusal(
            tr("The two colours cannot be held against each other: read both the same way, from a "
               "photo with a target or by one instrument. Nothing was changed.")
        )  # fmt: skip
    grade, figure = known.grade(before.lab, after.lab)
    return Estimated(grade, figure, (before.entry, after.entry))
