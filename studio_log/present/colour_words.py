"""Colours as words: L*, a*, b*, where they come from and how sure they are."""

from collections.abc import Mapping
from typing import Final

from studio_log.domain.number_text import plain
from studio_log.language.region import region
from studio_log.language.words import tr, tr_later
from studio_log.science.colour.lab import Lab

SOURCE_WORDS: Final[Mapping[str, str]] = {
    "instrument": tr_later("instrument"),
    "photo": tr_later("photo with target"),
    "relative": tr_later("photo without target, relative only"),
}


def colour_words(lab: Lab | None, source: str, two_u: float | None) -> str:
    """Say a colour with where it comes from and how sure it is."""
    if lab is None:
        return tr("colour not read yet")
    parts = [lab_words(lab)]
    if source:
        parts.append(tr(SOURCE_WORDS[source]))
    if two_u is not None:
        parts.append(tr("2u {figure}", figure=plain(two_u, 1)))
    return " · ".join(parts)


def lab_words(lab: Lab) -> str:
    """Write L*, a* and b* to a tenth."""
    figures = (_tenth(one) for one in (lab.lightness, lab.a, lab.b))
    return "L* {}  a* {}  b* {}".format(*figures)


def round_words(lab: Lab, two_u_chroma: float | None, two_u_hue: float | None) -> str:
    """Write C* and h, each with its 2u where it is known; the hue of a grey is not told."""
    strong = f"C* {_tenth(lab.chroma)}"
    if two_u_chroma is not None:
        strong += f" ± {_tenth(two_u_chroma)}"
    if lab.hue is None or (two_u_chroma is not None and two_u_hue is None):
        return tr("{chroma} · no hue", chroma=strong)
    hue = f"h {lab.hue:.0f}°"
    return f"{strong} · {hue} ± {two_u_hue:.0f}°" if two_u_hue is not None else f"{strong} · {hue}"


def _tenth(value: float) -> str:
    """Write a figure with its tenth, so that colours stand under each other alike."""
    written = f"{value:.1f}".replace(".", region().decimal)
    return "0" + written[2:] if written.startswith("-0") and float(f"{value:.1f}") == 0 else written
