"""Find by colour: the swatches nearest to one, exactly, without measuring every one.

A few balls in CIELAB, each twice as wide, give some swatches at hand; the furthest of the best of
them says how far a nearer one can lie at most, and one more bound holds all of those.
"""

from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.services.desk import Desk
from studio_log.services.swatch_shown import shown_lines
from studio_log.services.swatches import NearFor, NearLine, SwatchShown
from studio_log.store.swatches import Coloured
from studio_log.store.values import ColourBound

FIRST: Final = 4.0
"""Radius of the first ball, in L*, a* and b*."""
WIDEST: Final = 500.0
AT_HAND: Final = 400
"""Of a crowded ball this many are enough for a first bound."""
MOST: Final = 1000


def near(_house: Any, desk: Desk, question: NearFor) -> tuple[NearLine, ...]:
    """Give the swatches nearest to a colour, the nearest first; alike ones by their codes."""
    if not 0 < question.most <= MOST:
        raise Refusal(tr("Ask for 1 to {most} swatches. Nothing was changed.", most=MOST))
    found = _nearest(desk, question)
    lines = {line.code: line for line in shown_lines(desk, [code for _, code in found])}
    return tuple(
        NearLine(apart, lines[code], _doubt(question, lines[code])) for apart, code in found
    )


def _nearest(desk: Desk, question: NearFor) -> list[tuple[float, str]]:
    from studio_log.science.colour.near import reach_of  # noqa: PLC0415 - brings numpy

    apart = question.within if question.within is not None else _enough(desk, question)
    reach = reach_of(question.lab, apart)
    found = _measured(question, _within(desk, question, reach.light, reach.across))
    return [one for one in found if question.within is None or one[0] <= question.within]


def _enough(desk: Desk, question: NearFor) -> float:
    """Give a difference within which so many are sure to be; the widest where there are fewer."""
    half = FIRST
    while half < WIDEST:
        most = AT_HAND + question.most
        best = _measured(question, _within(desk, question, half, half, most))
        if len(best) >= question.most:
            return best[-1][0]
        half *= 2
    return WIDEST


def _within(
    desk: Desk, question: NearFor, light: float, across: float, most: int | None = None
) -> Coloured:
    lab = question.lab
    centre = (lab.lightness, lab.a, lab.b)
    bound = ColourBound(centre, light, across, ended=question.ended)
    return desk.work.swatches.within(bound, most)


def _measured(question: NearFor, found: Coloured) -> list[tuple[float, str]]:
    """Give the nearest of these with their differences."""
    import numpy as np  # noqa: PLC0415 - for colours only

    from studio_log.science.colour.near import ciede2000_of  # noqa: PLC0415 - brings numpy

    codes = found.codes
    apart = ciede2000_of(question.lab, np.array(found.figures, dtype=np.float64).reshape(-1, 3))
    if question.but in codes:
        apart[codes.index(question.but)] = np.inf
    most = min(question.most, int(np.isfinite(apart).sum()))
    if not most:
        return []
    # All at least as near as the last one that counts, so that ties go by their codes.
    limit = float(np.partition(apart, most - 1)[most - 1])
    best = [(float(apart[at]), codes[at]) for at in np.flatnonzero(apart <= limit)]
    return sorted(best)[:most]


def _doubt(question: NearFor, line: SwatchShown) -> str:
    """Say why a difference may say less than it seems to."""
    if line.source == "relative":
        return tr("relative only: its photo had no target")
    if line.white != question.white:
        return tr("read for another observer ({white})", white=line.white)
    return ""
