"""Kinds of bath and vat as data: their volume, when they want refreshing, pH, heat, cautions.

Each figure has its source in help/sources.md, "Baths and vats". They are starting values: a
bath may have its own volume and its own weight after which it is refreshed.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.domain.spoil_data import HEAT_LIMITS
from studio_log.language.words import tr_later


@dataclass(frozen=True)
class Range:
    """What a reading should lie in, °C or pH; None where that side is open. `why` tells it."""

    low: float | None
    high: float | None
    why: str


@dataclass(frozen=True)
class Refresh:
    """When a bath wants refreshing and how: after grams of cloth, or after so many uses."""

    do: str
    grams: float | None = None
    grams_per_litre: float | None = None
    uses: int | None = None


@dataclass(frozen=True)
class BathKind:
    """One kind of long-lived liquid."""

    slug: str
    title: str
    litres: float
    """Offered for a new one."""
    cautions: tuple[str, ...]
    """Short names of resources/cautions.toml."""
    refresh: Refresh | None = None
    tell: timedelta | None = None
    """From being made or refreshed to the reminder that it should be used up."""
    keeps: timedelta | None = None
    ph: Range | None = None
    heat: Range | None = None
    warm_to: float | None = None
    """°C to warm it to before use; None where it is used as it stands."""
    between: str = ""
    """What is done between two uses."""
    vat: bool = False
    """Cloth is dipped and aired; it is fed before use."""
    exhausts: bool = False
    """Its uses are counted: the second one is its first exhaust."""


DAY: Final = timedelta(days=1)
POWDER: Final = ("powder-mask", "spent-baths", "sds")
LIME_VAT: Final = ("lime", "vat-gloves", "powder-mask", "children-pets", "spent-baths", "sds")
SPENT: Final = 10_000.0
"""Grams of cloth after which a chalk or bran bath is spent."""
COOL: Final = Range(40.0, None, tr_later("a cooler vat idles: its pH falls and it goes blue"))
ALKALINE: Final = Range(10.0, None, tr_later("on cellulose a vat wants pH 10 to 11 and over"))

_KINDS: Final = (
    BathKind(
        "chalk", tr_later("chalk bath"), 5.0, POWDER,
        refresh=Refresh(tr_later("Pour it away and make it anew: 50 g of chalk to 5 L, warm."),
                        grams=SPENT),
    ),
    BathKind(
        "bran", tr_later("bran bath"), 5.0, ("mould", "spent-baths", "sds"),
        refresh=Refresh(tr_later("Pour it away and make it anew: 100 g of bran to 5 L, warm, "
                                 "stood for half an hour."), grams=SPENT),
    ),
    BathKind(
        "alum", tr_later("alum bath"), 10.0, ("alum", *POWDER),
        refresh=Refresh(tr_later("Make it anew: it has been recharged often enough."), uses=7),
        heat=Range(49.0, 60.0, tr_later("on cellulose alum wants hot tap water and no cooking")),
        between=tr_later("Recharge it with half of the first alum before it is used again."),
    ),
    BathKind(
        "acetate", tr_later("aluminium acetate bath"), 10.0, ("acetate", *POWDER),
        heat=Range(48.0, 60.0, tr_later("hotter, acetate breaks down before it is in the cloth")),
    ),
    BathKind(
        "triformate", tr_later("aluminium triformate bath"), 10.0, ("triformate", *POWDER),
        refresh=Refresh(tr_later("Recharge it with 20 g of triformate to each litre filled up "
                                 "to the mark."), grams_per_litre=180.0),
    ),
    BathKind(
        "tannin", tr_later("tannin bath"), 10.0, ("plant-powder", "mould", "spent-baths", "sds"),
        heat=Range(49.0, 60.0, tr_later("tannin wants hot tap water")),
        between=tr_later("Recharge it with half of the first tannin before it is used again."),
        tell=10 * DAY, keeps=14 * DAY,
    ),
    BathKind(
        "iron", tr_later("iron bath"), 10.0, ("iron-salt", "children-pets", *POWDER),
        heat=Range(None, 77.0, tr_later("hotter, iron makes the cloth tender")),
    ),
    BathKind(
        "dye", tr_later("dye bath"), 10.0,
        ("hot-bath", "dye-powder", "dye-vessels", "mould", "spent-baths", "sds"),
        tell=7 * DAY, keeps=14 * DAY, exhausts=True,
    ),
    BathKind(
        "fructose-vat", tr_later("indigo fructose vat"), 20.0, ("hot-bath", *LIME_VAT),
        ph=ALKALINE, heat=COOL, warm_to=50.0, vat=True,
    ),
    BathKind(
        "henna-vat", tr_later("indigo henna vat"), 20.0, ("hot-bath", *LIME_VAT),
        ph=ALKALINE, heat=COOL, warm_to=50.0, vat=True,
    ),
    BathKind(
        "fruit-vat", tr_later("indigo fruit vat"), 15.0, ("hot-bath", *LIME_VAT),
        ph=ALKALINE, heat=COOL, warm_to=50.0, vat=True,
    ),
    BathKind(
        "iron-vat", tr_later("indigo iron vat"), 30.0, ("iron-salt", *LIME_VAT),
        ph=Range(11.0, 13.0, tr_later("an iron vat works at pH 11 to 13")), vat=True,
    ),
    BathKind(
        "madder-vat", tr_later("indigo madder and bran vat"), 20.0,
        ("vat-gloves", "mould", "spent-baths", "sds"), vat=True,
    ),
    BathKind("other", tr_later("bath"), 10.0, ("spent-baths", "sds")),
)  # fmt: skip
KINDS: Final[Mapping[str, BathKind]] = {one.slug: one for one in _KINDS}


def heat_of(kind: BathKind, name: str) -> Range | None:
    """Give the heat a bath should have; a dye bath's goes by the dye that its name tells."""
    if not kind.exhausts:
        return kind.heat
    words = name.casefold().replace(",", " ").split()
    found = [HEAT_LIMITS[word] for word in words if word in HEAT_LIMITS]
    if not found:
        return kind.heat
    least = min(found, key=lambda one: one.most)
    return Range(None, least.most, least.reason)
