"""What lists need of a swatch: worked out from its journal and from that of its lot."""

import json
from collections.abc import Iterator
from datetime import datetime

from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import Method
from studio_log.domain.swatches import Swatch
from studio_log.services.swatch_even import evenness_of
from studio_log.store.values import SwatchLine


def walked(lot: Lot, at: datetime) -> Iterator[tuple[Method, datetime, datetime | None]]:
    """Give the methods that a lot had begun by a moment, with their first and last act until then.

    The last act is None while any step of it runs.
    """
    for join, method in enumerate(lot.methods):
        steps = [step for step in lot.steps if step.join == join]
        begun = [when for step in steps if (when := _first(step)) is not None and when <= at]
        if not begun:
            continue
        open_ = any(
            step.start is not None and step.start <= at and (step.end is None or step.end > at)
            for step in steps
        )
        ends = [step.end for step in steps if step.end is not None and step.end <= at]
        yield method, min(begun), None if open_ else max(ends, default=None)


def _first(step: LotStep) -> datetime | None:
    return step.start or step.end


def _grades(swatch: Swatch) -> dict[str, str]:
    """Give the latest grade of each test, staining apart from change, and how even it is."""
    found = {
        f"{one.test} staining" if one.scale == "staining" else one.test: one.grade
        for one in sorted(swatch.grades, key=lambda one: one.at)
    }
    if swatch.spots is not None and (even := evenness_of(swatch.spots)) is not None:
        found["evenness"] = f"{even.spread.band}, {even.spread.mean_apart:.2f} ΔE00"
    return found


def swatch_line(swatch: Swatch, lot: Lot | None, number: int) -> SwatchLine:
    """Give the line of a swatch; `lot` None where its journal does not read."""
    chain = [method.title for method, *_ in walked(lot, swatch.cut_at)] if lot else []
    reading = swatch.reading
    lab = reading.lab if reading else None
    grades = _grades(swatch)
    words = (
        swatch.code, swatch.lot, lot.name if lot else "", swatch.name, swatch.place,
        swatch.test_place or "", *chain, *(one.note for one in swatch.remarks),
        *(one.note for one in swatch.readings), *grades,
    )  # fmt: skip
    return SwatchLine(
        code=swatch.code,
        lot=swatch.lot,
        cut_at=swatch.cut_at,
        piece=swatch.piece,
        step=swatch.step,
        name=swatch.name,
        place=swatch.place,
        test_place=swatch.test_place,
        chain="\n".join(chain),
        read_at=reading.at if reading else None,
        lightness=lab.lightness if lab else None,
        a=lab.a if lab else None,
        b=lab.b if lab else None,
        two_u=reading.two_u if reading else None,
        source=reading.source if reading else "",
        white=reading.white if reading else "",
        grades=json.dumps(grades),
        ended=swatch.ended,
        search_text=" ".join(filter(None, words)),
        last_number=number,
    )
