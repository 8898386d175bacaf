"""What nobody can mean: bounds of the figures a command may carry."""

import math
import unicodedata
from dataclasses import replace

from studio_log.domain.errors import Refusal
from studio_log.domain.pieces import Piece

LONGEST_NAME = 200
LONGEST_NOTE = 10_000
MOST_PIECES = 500
MOST_GRAMS = 500_000.0
MOST_LITRES = 5_000.0
MOST_CURE_DAYS = 3_650
MEASURES = {
    "length_m": ("length in metres", 10_000.0),
    "width_m": ("width in metres", 100.0),
    "gsm": ("weight in g/m²", 10_000.0),
    "given_grams": ("weight in grams", MOST_GRAMS),
}
"""Measures of a piece: above nothing, and at most this."""


def clean(text: str, what: str, longest: int = LONGEST_NOTE) -> str:
    """Give a text fit to keep, without blanks around; Refusal where it cannot be kept.

    Control characters (but for line breaks and tabs) and halves of surrogates cannot be.
    """
    kept = text.strip()
    if len(kept) > longest:
        raise Refusal(
            f"{what} may have {longest:,} characters, not {len(kept):,}. Nothing was changed. "
            "Shorten it."
        )
    if any(unicodedata.category(sign) in {"Cc", "Cs"} and sign not in "\n\t" for sign in kept):
        raise Refusal(
            f"{what} holds signs that cannot be kept. Nothing was changed. Type it again as "
            "plain text."
        )
    return kept


def check_grams(grams: float) -> float:
    """Give the weight back; Refusal unless it is above 0 g and at most 500 kg."""
    if not math.isfinite(grams) or not 0 < grams <= MOST_GRAMS:
        raise Refusal("A lot weighs more than nothing and up to 500 kg. Nothing was changed.")
    return float(grams)


def check_litres(litres: float | None) -> float | None:
    """Give the volume back; Refusal unless it is above 0 L and at most 5,000 L."""
    if litres is not None and (not math.isfinite(litres) or not 0 < litres <= MOST_LITRES):
        raise Refusal("A vessel holds more than nothing and up to 5,000 L. Nothing was changed.")
    return litres


def check_cure_days(days: int | None) -> int | None:
    """Give the days back; Refusal unless 0 to 3,650."""
    if days is not None and not 0 <= days <= MOST_CURE_DAYS:
        raise Refusal("A cure lasts from 0 to 3,650 days. Nothing was changed.")
    return days


def check_pieces(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """Give the pieces back, numbered from 1; Refusal for none or too many."""
    if not pieces:
        raise Refusal("A lot needs at least one piece. Nothing was made; describe the cloth.")
    if len(pieces) > MOST_PIECES:
        raise Refusal(f"A lot may have {MOST_PIECES} pieces, not {len(pieces)}. Make two lots.")
    return tuple(_piece(piece, number) for number, piece in enumerate(pieces, 1))


def _piece(piece: Piece, number: int) -> Piece:
    for name, (words, most) in MEASURES.items():
        value = getattr(piece, name)
        if value is not None and not (math.isfinite(value) and 0 < value <= most):
            raise Refusal(f"Piece {number}: {value} is no {words}. Nothing was made.")
    return replace(
        piece,
        number=number,
        fibre=clean(piece.fibre, "The fibre", LONGEST_NAME),
        weave=clean(piece.weave, "The weave", LONGEST_NAME),
    )
