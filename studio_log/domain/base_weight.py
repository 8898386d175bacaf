"""Which weight the per cents go by: cloth weighed before scouring, or after."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.domain.number_text import plain
from studio_log.domain.pieces import Weighed
from studio_log.language.words import tr
from studio_log.science.bath_sums import after_loss, before_loss

LOSSES: Final[Mapping[str, tuple[float, float]]] = {"cellulose": (4.0, 8.0), "silk": (20.0, 25.0)}
"""Per cent of its weight that cloth loses by a good scour, raw silk by degumming."""


@dataclass(frozen=True)
class OtherBase:
    """The grams the same cloth weighs on the other side of its scour, least and most."""

    least: float
    most: float


def other_base(grams: float, weighed: Weighed, fibres: Iterable[str] = ()) -> OtherBase:
    """Give what cloth of `grams`, weighed before or after, weighs after or before scouring."""
    silk = any("silk" in fibre.casefold() for fibre in fibres)
    little, much = LOSSES["silk" if silk else "cellulose"]
    if weighed is Weighed.BEFORE:
        return OtherBase(after_loss(grams, much), after_loss(grams, little))
    return OtherBase(before_loss(grams, little), before_loss(grams, much))


def base_words(grams: float, weighed: Weighed, fibres: Iterable[str] = ()) -> str:
    """Say which weight was the base, and what the other would be."""
    other = other_base(grams, weighed, fibres)
    least, most = plain(other.least, 0), plain(other.most, 0)
    if weighed is Weighed.BEFORE:
        return tr(
            "Weighed before scouring; scoured it weighs about {least} to {most} g. Per cent here "
            "go by the weight before.",
            least=least,
            most=most,
        )
    return tr(
        "Weighed after scouring; before it weighed about {least} to {most} g. Per cent here go by "
        "the weight after.",
        least=least,
        most=most,
    )
