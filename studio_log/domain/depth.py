"""How deep a sample is dyed: K/S by Kubelka and Munk, and its strength to a standard."""

from dataclasses import dataclass

from studio_log.domain.errors import Refusal
from studio_log.domain.instrument_table import Sample
from studio_log.domain.number_text import quoted
from studio_log.language.words import tr
from studio_log.science.colour.spectra import (
    WAVELENGTHS,
    k_over_s,
    ks_peak,
    ks_sum,
    strength_percent,
)


@dataclass(frozen=True)
class Depth:
    """The largest K/S with its wavelength in nm, and K/S summed over 400 to 700 nm by 10."""

    nm: int
    peak: float
    total: float


def depth_of(sample: Sample) -> Depth | None:
    """Give the depth of a sample; None without a spectrum, or where K/S has no meaning in it."""
    figures = sample.reflectance
    if not figures or not all(0 < one <= 1 for one in figures):
        return None
    return Depth(*ks_peak(figures), ks_sum(figures))


def strength_of(sample: Sample, standard: Sample, ground: Sample | None = None) -> float | None:
    """Give the strength to a standard in per cent, at the standard's wavelength of most K/S.

    None where the sample has no depth; Refusal where the standard, or the ground, has none.
    """
    deep = depth_of(standard)
    if deep is None or (ground is not None and depth_of(ground) is None):
        raise Refusal(
            tr("Strength needs spectra of the standard and the ground, above 0 and up to 100 %. "
               "Nothing was changed.")
        )  # fmt: skip
    if depth_of(sample) is None:
        return None
    at = WAVELENGTHS.index(deep.nm)
    own, base = k_over_s(sample.reflectance[at]), k_over_s(standard.reflectance[at])
    bare = k_over_s(ground.reflectance[at]) if ground is not None else 0.0
    if base <= bare:
        raise Refusal(
            tr("The standard {name} is no deeper than the ground. Nothing was changed.",
               name=quoted(standard.name))
        )  # fmt: skip
    return strength_percent(own, base, bare)
