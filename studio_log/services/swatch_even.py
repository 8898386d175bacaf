"""How even the colour of a swatch is over its spots, in figures and in words."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import plain
from studio_log.domain.swatches import Reading
from studio_log.language.words import tr, tr_later
from studio_log.science.colour.lab import Lab

if TYPE_CHECKING:
    from studio_log.science.colour.evenness import Spread, Unlevelness

MOST_SPOTS: Final = 60
BAND_WORDS: Final[Mapping[str, str]] = {
    "even": tr_later("even"),
    "slight": tr_later("slightly uneven"),
    "visible": tr_later("visibly uneven"),
    "strong": tr_later("strongly uneven"),
    "excellent": tr_later("excellent"),
    "good": tr_later("good"),
    "poor": tr_later("poor"),
    "bad": tr_later("bad"),
}
SAME: Final = 0.005
"""Less than this, in CIEDE2000, is written as 0: a coarse picture, not a perfect cloth."""
OWN_BANDS: Final = tr_later("bands of Studio Log, a proposal")
RUI_BANDS: Final = tr_later("bands of Chong, Li and Yeung 1992, from memory")


@dataclass(frozen=True)
class Evenness:
    """The spread of spots about their mean, and RUI where each has a spectrum."""

    spread: "Spread"
    unlevelness: "Unlevelness | None"


def evenness(
    spots: Sequence[Lab], spectra: Sequence[Sequence[float]] = (), noise: float = 0.0
) -> Evenness:
    """Work evenness out; Refusal where there are too few spots or too many."""
    from studio_log.science.colour.evenness import (  # noqa: PLC0415 - brings coloraide
        LEAST_SPOTS,
        from_400,
        spread,
        unlevelness,
    )

    if not LEAST_SPOTS <= len(spots) <= MOST_SPOTS:
        raise Refusal(
            tr("Evenness is told from {least} to {most} spots of one cloth, better 8 or more; "
               "there are {count}. Nothing was changed.",
               least=LEAST_SPOTS, most=MOST_SPOTS, count=len(spots))
        )  # fmt: skip
    whole = len(spectra) == len(spots) and all(min(one, default=0.0) > 0 for one in spectra)
    level = unlevelness([from_400(one) for one in spectra]) if whole else None
    return Evenness(spread(spots, noise), level)


def evenness_of(reading: Reading) -> Evenness | None:
    """Give how even a reading of several spots is; None for one of a single spot."""
    return evenness(reading.spots, reading.spectra, reading.noise) if reading.spots else None


def even_words(found: Evenness, noise: float = 0.0) -> str:
    """Say how even: the figure, its band, and whose band that is."""
    from studio_log.science.colour.evenness import GOOD_SPOTS  # noqa: PLC0415 - brings coloraide

    known = found.spread
    said = [
        tr("{band} over {count} spots: {mean} CIEDE2000 from their mean, {most} at most ({whose})",
           band=tr(BAND_WORDS[known.band]), count=known.spots, mean=plain(known.mean_apart, 2),
           most=plain(known.most_apart, 2), whose=tr(OWN_BANDS))
    ]  # fmt: skip
    if known.most_apart < SAME:
        said.append(tr("no two spots differ in any figure: finer than that was not read"))
    if noise >= SAME:
        said.append(tr("{noise} of the photo’s own grain taken off", noise=plain(noise, 2)))
    level = found.unlevelness
    if level is not None:
        said.append(
            tr("RUI {index}: {band} ({whose})", index=plain(level.index, 2),
               band=tr(BAND_WORDS[level.band]), whose=tr(RUI_BANDS))
        )  # fmt: skip
    if known.spots < GOOD_SPOTS:
        said.append(tr("few spots, better {least} or more", least=GOOD_SPOTS))
    return "; ".join(said)


def even_sentence(found: Evenness, noise: float = 0.0) -> str:
    """Say the same as a sentence of its own."""
    said = even_words(found, noise)
    return f"{said[:1].upper()}{said[1:]}."


def short_even_words(found: Evenness) -> str:
    """Say the same in one line, for a card."""
    parts = [
        tr("{band}, {mean} ΔE00 over {count} spots", band=tr(BAND_WORDS[found.spread.band]),
           mean=plain(found.spread.mean_apart, 2), count=found.spread.spots)
    ]  # fmt: skip
    if found.unlevelness is not None:
        parts.append(tr("RUI {index}", index=plain(found.unlevelness.index, 2)))
    return " · ".join(parts)
