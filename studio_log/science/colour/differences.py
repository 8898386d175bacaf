"""How far two colours are apart: CIE76, CIEDE2000 and CMC 2:1.

CIEDE2000 by CIE 142 (Sharma, Wu and Dalal, Color Res. Appl. 30, 21-30, 2005, print 34 pairs that
it has to reproduce); CMC(l:c) by ISO 105-J03, where the first colour is the standard. The sums
are those of coloraide. All are without unit: 1 is about what an eye sees side by side.
"""

from dataclasses import dataclass

from coloraide import Color

from studio_log.science.colour.lab import Lab, hue_difference


@dataclass(frozen=True)
class Difference:
    """Two colours apart, the first being the standard; the parts are second less first."""

    cie76: float
    ciede2000: float
    cmc_2_1: float
    lightness: float
    """ΔL*: above 0 the second is lighter."""
    chroma: float
    """ΔC*: above 0 the second is stronger in colour."""
    hue: float
    """ΔH*, not an angle: above 0 the second lies further round, counter-clockwise."""


def difference(standard: Lab, sample: Lab) -> Difference:
    """Give how far a sample is from its standard, both to the same white."""
    one, other = _color(standard), _color(sample)
    lightness = sample.lightness - standard.lightness
    chroma = sample.chroma - standard.chroma
    cie76 = one.delta_e(other, method="76")
    return Difference(
        cie76=cie76,
        ciede2000=one.delta_e(other, method="2000"),
        cmc_2_1=one.delta_e(other, method="cmc", l=2, c=1),
        lightness=lightness,
        chroma=chroma,
        hue=hue_difference(standard, sample),
    )


def ciede2000(one: Lab, other: Lab) -> float:
    """Give CIEDE2000 alone, with kL = kC = kH = 1; it is the same both ways."""
    return _color(one).delta_e(_color(other), method="2000")


def _color(lab: Lab) -> Color:
    return Color("lab-d65", (lab.lightness, lab.a, lab.b))
