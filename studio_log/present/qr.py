"""A text as a QR code: its dark runs, and the size at which a printer can draw it evenly."""

import math
from dataclasses import dataclass

import segno

QUIET = 4
"""White modules on every side (ISO/IEC 18004)."""
MM_PER_INCH = 25.4
STURDY = (4, 3, 2, 1)
"""Versions for a lot's code, the best first. At level Q a reader restores version 4 with a stain
over a tenth of its area, wherever it lies beside the three eyes; version 3 nearly always, 2 mostly,
1 hardly: its eyes and lines leave too little for the code (tried on 300 stains each)."""


@dataclass(frozen=True)
class Run:
    """Dark modules side by side, counted from the symbol's top left corner."""

    row: int
    column: int
    length: int


@dataclass(frozen=True)
class QrSymbol:
    """A QR code without its quiet zone."""

    text: str
    version: int
    modules: int
    """On each side."""
    mode: str
    """numeric, alphanumeric or byte."""
    runs: tuple[Run, ...]


def encode(text: str, level: str = "Q", version: int | None = None) -> QrSymbol:
    """Give the smallest symbol for a text at an error correction level: L, M, Q or H.

    A `version` makes it larger, with more to restore it from: see `STURDY`.

    Level Q still reads with about a quarter of the codewords spoilt (ISO/IEC 18004): a
    tag hangs beside dye baths. ValueError where the text is empty or too long.
    """
    if not text:
        raise ValueError("an empty text makes no QR code")
    # The level asked for is kept and not raised where there is room, so that the size
    # of a symbol follows from the length of its text alone.
    code = segno.make(text, error=level, boost_error=False, micro=False, version=version)
    rows = [tuple(bool(module) for module in row) for row in code.matrix]
    runs = tuple(run for number, row in enumerate(rows) for run in _runs(number, row))
    return QrSymbol(text, int(code.version), len(rows), str(code.mode), runs)


def _runs(number: int, row: tuple[bool, ...]) -> list[Run]:
    """Gather the dark modules of one row into runs."""
    found: list[Run] = []
    start: int | None = None
    for column, dark in enumerate((*row, False)):
        if dark and start is None:
            start = column
        elif not dark and start is not None:
            found.append(Run(number, start, column - start))
            start = None
    return found


def printed_module(least_mm: float, dots_per_inch: int) -> tuple[int, float]:
    """Give dots and mm of the smallest module of whole printer dots not under `least_mm`.

    Whole dots make all modules equal; rounding up keeps them readable. The rule is ours.
    """
    # The small allowance keeps 0.508 mm at 600 to the inch at 12 dots, not 13.
    dots = max(1, math.ceil(least_mm * dots_per_inch / MM_PER_INCH - 1e-6))
    return dots, dots * MM_PER_INCH / dots_per_inch


def side_with_quiet(modules: int, module_mm: float) -> float:
    """Give the side of symbol and quiet zone together, in mm."""
    return (modules + 2 * QUIET) * module_mm
