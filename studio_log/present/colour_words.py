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


def _tenth(value: float) -> str:
    """Write a figure with its tenth, so that colours stand under each other alike."""
    written = f"{value:.1f}".replace(".", region().decimal)
    return "0" + written[2:] if written.startswith("-0") and float(f"{value:.1f}") == 0 else written
