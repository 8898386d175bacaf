"""Figures and words of the orders that spoil; each figure has its source in help/sources.md."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.language.words import tr_later

ALKALIS: Final = frozenset({"soda", "lime", "potash", "lye"})
"""Words in the short name of an amount that make its bath alkaline; alum beside it does not."""
ACETATES: Final = frozenset({"acetate", "vinegar"})
FIXERS: Final = frozenset({"chalk", "bran", "dung"})
IRONS: Final = frozenset({"iron", "ferrous", "copperas"})
PROTEIN_FIBRES: Final = frozenset(
    {"wool", "silk", "alpaca", "mohair", "cashmere", "angora", "yak", "eri", "tussah"}
)

MOST_IRON: Final = 4.0
"""% WOF on cellulose: above, iron makes cloth tender."""
MOST_IRON_PROTEIN: Final = 2.0
MOST_SODA_PROTEIN: Final = 1.0
"""% WOF: raw silk is boiled off with 0.9."""
ACETATE_DRIES: Final = timedelta(hours=12)
"""From dry, before cloth with acetate is chalked; and no smell of vinegar is left."""
WASHED_FROM: Final = timedelta(days=7)
"""From painting, before the first wash of paint bound with soy."""


@dataclass(frozen=True)
class HeatLimit:
    """Above `most` °C a material spoils; from `near` on it is time to take the heat off."""

    title: str
    most: float
    near: float
    reason: str


HEAT_LIMITS: Final[Mapping[str, HeatLimit]] = {
    "madder": HeatLimit(tr_later("madder"), 72, 70, tr_later("it turns brown for good")),
    "alkanet": HeatLimit(tr_later("alkanet"), 60, 58, tr_later("its colour is spoilt")),
    "turmeric": HeatLimit(tr_later("turmeric"), 65, 60, tr_later("its yellow dulls")),
    "sappan": HeatLimit(tr_later("sappanwood"), 80, 78, tr_later("its red dulls")),
    "sappanwood": HeatLimit(tr_later("sappanwood"), 80, 78, tr_later("its red dulls")),
    "chlorophyllin": HeatLimit(tr_later("chlorophyllin"), 80, 78, tr_later("its green dulls")),
    "myrobalan": HeatLimit(tr_later("myrobalan"), 83, 80, tr_later("its colour browns")),
    "cutch": HeatLimit(tr_later("cutch"), 90, 88, tr_later("its colour dulls")),
    "acetate": HeatLimit(
        tr_later("aluminium acetate"), 60, 58, tr_later("it breaks down before it is in the cloth")
    ),
    "iron": HeatLimit(tr_later("iron"), 77, 75, tr_later("it makes the cloth tender")),
    "ferrous": HeatLimit(tr_later("iron"), 77, 75, tr_later("it makes the cloth tender")),
    "beans": HeatLimit(
        tr_later("the soak"), 35, 30, tr_later("the water sours and takes what should bind")
    ),
}
"""By a word in the short name of an amount of the method."""
