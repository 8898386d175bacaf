"""Swatches as lists show them: their colour for the screen, and words beside it."""

import json
from collections.abc import Sequence

from studio_log.present.colour_words import colour_words
from studio_log.present.words import moment
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.shown import shown_as
from studio_log.services.desk import Desk
from studio_log.services.swatches import SwatchShown
from studio_log.store.values import SwatchLine


def shown_lines(desk: Desk, codes: Sequence[str]) -> list[SwatchShown]:
    """Give these swatches as a list shows them, in the order of the codes."""
    found = desk.work.swatches.of(codes)
    return as_shown(desk, [found[code] for code in codes if code in found])


def as_shown(desk: Desk, lines: Sequence[SwatchLine]) -> list[SwatchShown]:
    """Give lines of the store with colours for the screen and words."""
    lots = desk.work.lots.of(sorted({line.lot for line in lines}))
    names = {code: line.name for code, line in lots.items()}
    return [_shown(desk, line, names.get(line.lot, "")) for line in lines]


def _shown(desk: Desk, line: SwatchLine, lot_name: str) -> SwatchShown:
    lab, colour, beyond = None, "", False
    if line.lightness is not None and line.a is not None and line.b is not None:
        lab = Lab(line.lightness, line.a, line.b)
        colour, beyond = shown_as(lab)
    return SwatchShown(
        code=line.code,
        lot=line.lot,
        lot_name=lot_name,
        name=line.name,
        cut_at=line.cut_at,
        cut_words=moment(line.cut_at, desk.now, desk.zone),
        chain=tuple(filter(None, line.chain.split("\n"))),
        place=line.place,
        test_place=line.test_place,
        lab=lab,
        white=line.white,
        source=line.source,
        two_u=line.two_u,
        shown=colour,
        beyond=beyond,
        colour_words=colour_words(lab, line.source, line.two_u),
        grades=json.loads(line.grades),
        ended=line.ended,
        piece=line.piece,
        step=line.step,
    )
