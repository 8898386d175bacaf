"""Swatches for the plane of colours: what is drawn of each, and all of it in words."""

from collections.abc import Sequence

from studio_log.present.swatch_plot import Coloured
from studio_log.services.swatches import SwatchShown


def coloured(lines: Sequence[SwatchShown]) -> tuple[Coloured, ...]:
    """Give the swatches that have a colour, for the plane."""
    return tuple(
        Coloured(
            one.code,
            one.lot,
            one.lot_name,
            one.lab,
            one.shown,
            one.source == "relative",
            told(one),
            one.age_d,
        )
        for one in lines
        if one.lab is not None
    )


def told(line: SwatchShown) -> str:
    """Say all of a tile in words: for who cannot see the colour, and for the pointer."""
    parts = [
        f"{line.code} {line.name}".strip(),
        f"{line.lot} {line.lot_name}".strip(),
        line.colour_words,
        *line.chain,
        line.cut_words,
    ]
    return "\n".join(filter(None, parts))
