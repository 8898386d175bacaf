"""What the fields of the new-lot form mean, line by line; no widget in it."""

from dataclasses import dataclass

from studio_log.domain.errors import Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.domain.piece_text import read_piece
from studio_log.domain.pieces import Piece


@dataclass(frozen=True)
class PiecesRead:
    """The pieces of all lines, numbered through, and what was understood of each line."""

    pieces: tuple[Piece, ...]
    understood: str
    fault: str = ""

    @property
    def grams(self) -> float | None:
        """Dry weight of all pieces in grams, None where one is unknown."""
        weights = [piece.grams for piece in self.pieces]
        known = [grams for grams in weights if grams is not None]
        return sum(known) if known and len(known) == len(weights) else None


@dataclass(frozen=True)
class FigureRead:
    """A weight in grams or a volume in litres; None where the field is blank."""

    value: float | None
    fault: str = ""


def read_pieces(text: str) -> PiecesRead:
    """Read one piece text a line; what was understood of the good lines stays beside a fault."""
    pieces: list[Piece] = []
    understood: list[str] = []
    fault = ""
    for line in text.splitlines():
        if not line.strip():
            continue
        try:
            reading = read_piece(line, first_number=len(pieces) + 1)
        except Refusal as refusal:
            fault = fault or str(refusal)
            continue
        pieces.extend(reading.pieces)
        understood.append(reading.understood)
    return PiecesRead(tuple(pieces), "\n".join(understood), fault)


def read_weight(text: str) -> FigureRead:
    """Read a weight with its unit; blank is none."""
    if not text.strip():
        return FigureRead(None)
    try:
        return FigureRead(read_grams(text))
    except Refusal as refusal:
        return FigureRead(None, str(refusal))


def read_volume(text: str) -> FigureRead:
    """Read a volume with its unit; blank is none."""
    if not text.strip():
        return FigureRead(None)
    try:
        return FigureRead(read_litres(text))
    except Refusal as refusal:
        return FigureRead(None, str(refusal))
