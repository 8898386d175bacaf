"""What the fields of the new-lot form mean, line by line; no widget in it."""

from dataclasses import dataclass

from studio_log.domain.errors import Refusal
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
