"""What is worth knowing beside an amount: another salt, the density used, a milk's protein."""

import re
from collections.abc import Mapping
from typing import Final

from studio_log.domain.amount_shown import grams_shown
from studio_log.domain.amounts import Amount
from studio_log.domain.number_text import plain
from studio_log.language.words import tr, tr_later
from studio_log.science.salts import SALTS, in_place_of
from studio_log.science.soy_milk import protein_per_litre
from studio_log.science.units import convert

_SWAPS: Final[Mapping[str, tuple[str, str]]] = {
    "soda-ash": ("soda-ash", "washing-soda"),
    "washing-soda": ("washing-soda", "soda-ash"),
    "alum": ("alum", "aluminium-sulphate"),
    "aluminium-sulphate": ("aluminium-sulphate", "alum"),
    "sodium-acetate": ("sodium-acetate", "sodium-acetate-dry"),
}
"""Short name of an amount -> the salt it is taken for, and the one that may stand for it."""
_TITLES: Final[Mapping[str, str]] = {
    "washing-soda": tr_later("washing soda crystals"),
    "soda-ash": tr_later("soda ash"),
    "aluminium-sulphate": tr_later("aluminium sulphate of 18 waters"),
    "alum": tr_later("alum"),
    "sodium-acetate-dry": tr_later("sodium acetate without water"),
}


def note_of(amount: Amount) -> str:
    """Give a sentence about one amount, "" where there is nothing to say."""
    if amount.unit == "g":
        return " ".join(filter(None, [_other_salt(amount), _density(amount)]))
    if amount.slug == "milk" and amount.rule_unit == "g/L":
        grams = protein_per_litre(amount.rule_value, 1.0)
        return tr("About {grams} g of protein to the litre.", grams=plain(grams, 0))
    return ""


def _density(amount: Amount) -> str:
    """Say the density that its cups were worked out with."""
    if amount.cup_grams is None:
        return ""
    return tr(
        "Cups at {grams} g to the US cup, {density} g/mL.",
        grams=plain(amount.cup_grams, 0),
        density=plain(amount.cup_grams / convert(1, "cup", "mL"), 2),
    )


def _other_salt(amount: Amount) -> str:
    """Say how much of another salt holds as much of what counts."""
    swap = _SWAPS.get(re.sub(r"-\d+$", "", amount.slug))
    if swap is None:
        return ""
    salt, other = swap
    if SALTS[salt].counts == "carbonate":
        words = tr_later("Or {grams} of {salt}: the bag says which it is.")
    else:
        words = tr_later("Or {grams} of {salt}.")
    grams = grams_shown(in_place_of(amount.value, salt, other))
    return tr(words, grams=grams, salt=tr(_TITLES[other]))
