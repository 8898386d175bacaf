"""How far the test half of a swatch has come from its master half, in words."""

from studio_log.domain.number_text import plain
from studio_log.domain.swatches import Swatch
from studio_log.language.words import tr


def halves_apart(of: Swatch) -> str:
    """Say the difference of the halves' colours; "" where they cannot be held against each other.

    A difference within the 2u of both together, by their squares, is said to be no more than that.
    """
    before, after = of.reading, of.tested
    if before is None or after is None or before.white != after.white:
        return ""
    if "relative" in {before.source, after.source}:
        return ""
    from studio_log.science.colour.differences import (  # noqa: PLC0415 - brings coloraide
        difference,
    )

    found = difference(before.lab, after.lab)
    said = tr("test half against master half: {apart} CIEDE2000, CMC 2:1 {cmc}; {light}, {strong}",
              apart=plain(found.ciede2000, 1), cmc=plain(found.cmc_2_1, 1),
              light=_way(found.lightness, tr("lighter"), tr("darker"), "L*"),
              strong=_way(found.chroma, tr("stronger"), tr("duller"), "C*"))  # fmt: skip
    if before.two_u is None or after.two_u is None:
        return said
    both = (before.two_u**2 + after.two_u**2) ** 0.5
    if found.ciede2000 > both:
        return said
    within = tr("no more than the 2u of both, {two_u}: nothing that is sure",
                two_u=plain(both, 1))  # fmt: skip
    return f"{said}; {within}"


def _way(value: float, more: str, less: str, sign: str) -> str:
    """Say a part of a difference: "4.6 lighter in L*"."""
    return tr("{size} {way} in {sign}", size=plain(abs(value), 1),
              way=more if value > 0 else less, sign=sign)  # fmt: skip
