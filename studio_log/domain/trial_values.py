"""What a piece of a trial came to, in the unit of its measure, and how sure a photo is of it."""

import math

from studio_log.science.colour.lab import Lab


def value_of(measure: str, lab: Lab) -> float | None:
    """Give what a colour says in a measure; None where it says nothing."""
    if measure == "chroma":
        return math.hypot(lab.a, lab.b)
    return lab.lightness if measure == "lightness" else None


def two_u_of(measure: str, lab: Lab, two_u: float) -> float:
    """Give a 2u in CIEDE2000 in the unit of a measure, were all of it in that alone.

    By the weights S_L and S_C of CIEDE2000 (Sharma, Wu and Dalal 2005), so that it is never told
    too small.
    """
    if measure == "chroma":
        return two_u * (1 + 0.045 * math.hypot(lab.a, lab.b))
    if measure == "lightness":
        off = (lab.lightness - 50) ** 2
        return two_u * (1 + 0.015 * off / math.sqrt(20 + off))
    return two_u
