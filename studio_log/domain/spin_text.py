"""Reading how cloth was spun: "hand", "1200 rpm", "60 %"."""

import re
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import NUMBER, clean, plain, quoted, read_number
from studio_log.language.words import tr
from studio_log.science import water_held
from studio_log.science.water_held import DRIPPING, WRUNG, WaterHeld

LONGEST: Final = 40
_BY_HAND: Final = frozenset({"hand", "by hand", "wrung", "hand wrung", "hand-wrung", "squeezed"})
_DRIPPING: Final = frozenset({"drip", "dripping", "dripped", "not spun", "unspun"})
_TURNS: Final = r"(?:rpm|r\.p\.m\.|/ ?min|u/min|turns(?: a minute)?)"


@dataclass(frozen=True)
class Spun:
    """How much water cloth is taken to hold, and in words what that was read from."""

    held: WaterHeld
    words: str


def read_spun(text: str) -> Spun:
    """Give the water that cloth holds after "hand", "drip", "1200rpm" or a weighed "60%".

    Per cent are water to the weight of the dry cloth. A bare number is refused: it may be either.
    """
    typed = clean(text, "how the cloth was spun", longest=LONGEST).casefold()
    if typed in _BY_HAND:
        return Spun(WRUNG, tr("wrung by hand"))
    if typed in _DRIPPING:
        return Spun(DRIPPING, tr("hung dripping"))
    turns = re.fullmatch(rf"({NUMBER}) ?{_TURNS}", typed)
    share = re.fullmatch(rf"({NUMBER}) ?%", typed)
    try:
        if turns:
            speed = read_number(turns[1])
            return Spun(water_held.spun(speed), tr("spun at {rpm} rpm", rpm=plain(speed, 0)))
        if share:
            part = read_number(share[1])
            words = tr("{part} % of its weight in water, weighed", part=plain(part, 1))
            return Spun(water_held.weighed(part / 100), words)
    except ValueError:
        raise Refusal(
            f"{quoted(text)} is outside what a spin leaves: {water_held.SLOWEST_RPM:g} to "
            f"{water_held.FASTEST_RPM:g} rpm, or up to 500 % of water. Nothing was changed. "
            "Weigh the cloth wet and dry and give per cent."
        ) from None
    raise Refusal(
        f"{quoted(text)} cannot be read as a way of spinning. Nothing was changed. "
        "Write it as hand, drip, 1200rpm or 60% (water to dry cloth)."
    )
