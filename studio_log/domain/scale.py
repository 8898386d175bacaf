"""Weighing on the scale that stands there: its least step, and stock solutions below it."""

import math
from dataclasses import dataclass
from typing import Final

from studio_log.domain.amount_shown import litres_shown
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import plain
from studio_log.language.words import tr
from studio_log.science.bath_sums import stock_millilitres

MOST_OFF_PERCENT: Final = 5.0
"""From here on half a step is too much of the amount: a proposal, no source."""
STOCKS_PERCENT: Final = (10.0, 1.0)
"""Stock solutions offered, the stronger first: 10 g or 1 g made up to 100 mL; common practice."""
LEAST_STEP_G: Final = 0.001
MOST_STEP_G: Final = 100.0


@dataclass(frozen=True)
class OnScale:
    """An amount as a scale can weigh it.

    `grams` is the nearest step, `off_percent` how far half a step is off it; `advice` is a
    sentence where that is too much, else empty.
    """

    grams: float
    off_percent: float
    shown: str
    advice: str


def on_scale(grams: float, step_grams: float, *, dissolves: bool = True) -> OnScale:
    """Give an amount of grams rounded to a scale's least step, both in grams.

    Where the step is too coarse, the advice is a stock solution of what `dissolves`, else a finer
    scale.
    Refuses a step outside 1 mg to 100 g and an amount that is not above nought.
    """
    if not LEAST_STEP_G <= step_grams <= MOST_STEP_G:
        raise Refusal(
            f"A scale that shows steps of {step_grams:g} g is not meant: a step lies between "
            "1 mg and 100 g. Nothing was changed."
        )
    if not (math.isfinite(grams) and grams > 0):
        raise Refusal("An amount to weigh has to be above nought. Nothing was changed.")
    steps = math.floor(grams / step_grams + 0.5)
    off = step_grams / 2 / grams * 100
    weighed = steps * step_grams
    shown = f"{plain(weighed, 3)} g"
    if not steps:
        shown = tr("less than {step} g", step=plain(step_grams, 3))
    advice = "" if off <= MOST_OFF_PERCENT else _advice(grams, step_grams, dissolves=dissolves)
    return OnScale(weighed, off, shown, advice)


def _advice(grams: float, step_grams: float, *, dissolves: bool) -> str:
    if not dissolves:
        return tr(
            "A scale that shows steps of {step} g is too coarse for it: weigh it on a finer one.",
            step=plain(step_grams, 3),
        )
    stock = next((one for one in STOCKS_PERCENT if stock_millilitres(grams, one) >= 5), None)
    strength = stock or STOCKS_PERCENT[-1]
    measured = litres_shown(stock_millilitres(grams, strength) / 1000)
    return tr(
        "A scale that shows steps of {step} g is too coarse for it: measure {measured} of a "
        "{strength} % stock solution ({strength} g made up to 100 mL).",
        step=plain(step_grams, 3),
        measured=measured,
        strength=plain(strength, 0),
    )
