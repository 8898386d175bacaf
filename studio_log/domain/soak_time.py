"""How long beans soak in a room, when to look, change the water and drain; soaked weights."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.estimates import Estimate, hours
from studio_log.domain.number_text import plain
from studio_log.language.words import tr
from studio_log.science import soaking
from studio_log.science.soaking import hours_to, soaked_ratio, sours_after

LOOK_SHARE: Final = 0.75
"""Part of the likely time after which a look is worth it: a proposal."""
WATER_SHARE: Final = 0.5
"""Part of the souring time after which the water is changed: a proposal."""
COLDEST_C: Final = soaking.COLDEST_C
WARMEST_C: Final = soaking.SOURS[-1][0]


@dataclass(frozen=True)
class SoakEstimate:
    """How long beans soak; all counted from when the water went on.

    `look_at` is when a look is worth it, `change_water` when fresh water is due, None where the
    beans are likely through before; `sours_after` when the water may turn.
    """

    time: Estimate
    look_at: timedelta
    change_water: timedelta | None
    sours_after: timedelta


def soak_time(celsius: float) -> SoakEstimate:
    """Give how long dry soybeans soak in water of a temperature, in a room as warm.

    They are through when they weigh twice what they did. The latest moment is never after the
    water may sour. Refuses below 4 °C, where they hardly swell, and above 35 °C.
    """
    if not celsius <= WARMEST_C:
        raise Refusal(
            f"A soak is worked out up to {WARMEST_C:g} °C, not for {celsius:g}. Do not soak hot: "
            "the water sours, and what should bind is lost into it. Find a cooler place."
        )
    if celsius < COLDEST_C:
        raise Refusal(
            f"A soak is worked out from {COLDEST_C:g} °C, not for {celsius:g}. So cold, beans "
            "hardly swell. Find a warmer place."
        )
    likely = hours_to(soaking.FULL_GAIN, celsius)
    sours = sours_after(celsius)
    latest = min(likely * (1 + soaking.TIME_BAND), sours)
    change = sours * WATER_SHARE
    return SoakEstimate(
        time=Estimate(
            hours(likely * (1 - soaking.TIME_BAND)), hours(likely), hours(latest), _why(celsius)
        ),
        look_at=hours(likely * LOOK_SHARE),
        change_water=hours(change) if change < latest else None,
        sours_after=hours(sours),
    )


def soaked_words(dry_grams: float, soaked_grams: float) -> str:
    """Say whether beans are soaked through by their drained weight; both in grams.

    Refuses weights that are not above nought.
    """
    try:
        ratio = soaked_ratio(dry_grams, soaked_grams)
    except ValueError:
        raise Refusal("Both weights of the beans are above nought. Nothing was changed.") from None
    said = tr("{ratio} times the dry weight", ratio=plain(ratio, 2))
    if ratio < soaking.RATIO_LEAST:
        least = plain(dry_grams * soaking.RATIO_LEAST, 0)
        return tr("{said}: keep soaking, to {least} g at least.", said=said, least=least)
    if ratio > soaking.RATIO_MOST:
        return tr("{said}: more than beans take up; drain them and weigh again.", said=said)
    return tr("{said}: soaked through.", said=said)


def _why(celsius: float) -> str:
    return tr(
        "At {celsius} °C beans are likely to have taken up their own weight by then; varieties "
        "differ by two fifths. Skins smooth and no hard core decide, and the nose.",
        celsius=plain(celsius, 1),
    )
