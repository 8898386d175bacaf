"""Reading a piece as a dyer types it: "2 x linen 180x45cm 185g/m2"."""

import re
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.mass_text import MASS_WORDS, VOLUME_WORDS
from studio_log.domain.number_text import NUMBER, clean, plain, quoted
from studio_log.domain.piece_scan import (
    GAP,
    LENGTH_WORDS,
    Density,
    Line,
    Side,
    Weight,
    gsm_of,
    metres,
    take_count,
    take_density,
    take_sides,
    take_weighed,
    take_weight,
)
from studio_log.domain.pieces import Piece, Weighed

LONGEST: Final = 300
MOST_PIECES: Final = 500
MOST_GRAMS: Final = 100_000.0
LEAST_GRAMS: Final = 0.01
MOST_LENGTH_M: Final = 200.0
MOST_WIDTH_M: Final = 20.0
LEAST_SIDE_M: Final = 0.001
MOST_WORDS: Final = 8

FIBRES: Final = frozenset({
    "abaca", "acrylic", "alpaca", "angora", "bamboo", "banana", "canapa", "cashmere", "cloth",
    "cotton", "cupro", "eri", "flax", "hemp", "jute", "kapok", "linen", "lyocell", "modal",
    "mohair", "nettle", "nylon", "paper", "pineapple", "polyester", "raffia", "ramie", "rayon",
    "silk", "sisal", "soy", "straw", "tencel", "tussah", "viscose", "wood", "wool", "yak",
})  # fmt: skip
"""Fibres that are known by name; any other first word is taken as the fibre too."""
_WITH_FIBRE: Final = frozenset({"organic", "raw", "recycled", "wild", "mercerised", "mercerized"})
"""Words that belong to the fibre after them: "organic cotton"."""
_FILLER: Final = frozenset({
    "a", "all", "and", "an", "at", "by", "each", "in", "is", "long", "of", "on", "piece",
    "pieces", "pcs", "pc", "the", "weighing", "weighs", "weight", "wide", "width", "with", "x",
    "total", "together", "altogether", "apiece", "dry", "scale", "off", "about", "length",
})  # fmt: skip
_NO_WORDS: Final = (
    frozenset({"nan", "inf", "infinity", "none", "null", "minus", "momme", "gsm"})
    | frozenset(LENGTH_WORDS)
    | frozenset(MASS_WORDS)
    | frozenset(VOLUME_WORDS)
)
_WORD: Final = r"[^\W\d_][\w'&/-]{0,29}\.?|[0-9]{1,3}/[0-9]{1,2}|[0-9]{1,2}-?ply|[0-9]{1,3}%"
"""A word of letters, the count of a yarn (10/2), a share of fibre (55%)."""
_OUNCES: Final = re.compile(rf"(?:{NUMBER}) ?(?:oz|ounces?)\.?", re.IGNORECASE)
_TOGETHER: Final = r"\b(?:together|altogether|in all|in total|total)\b"
_EXAMPLES: Final = (
    "Write it as “2 x linen 180x45cm 185g/m2”, “3 yd of 45 in, 4.5 oz/yd2” or “cotton skein 200 g”."
)


@dataclass(frozen=True)
class PieceReading:
    """The pieces of one typed line, and what was understood, as a sentence."""

    pieces: tuple[Piece, ...]
    understood: str


@dataclass(frozen=True)
class _Typed:
    """What stands in the line, in the dyer's own units; `grams` is each piece's."""

    count: int
    sides: tuple[Side, ...]
    assumed_cm: bool
    density: Density | None
    grams: float | None
    together: bool
    weighed: Weighed | None


def read_piece(text: str, *, first_number: int = 1) -> PieceReading:
    """Give the pieces that a line means, numbered from `first_number` on.

    A weight is each piece's unless "together" or "in all" is said. Sides without a unit are
    centimetres, and `understood` says so. Refuses nonsense; asks where oz/yd may be square
    or running.
    """
    line = Line(clean(text, "the piece", longest=LONGEST))
    typed = _typed(line)
    fibre, weave = _name(line, text, measured=bool(typed.sides or typed.density or typed.grams))
    length, width = _metres(typed)
    first = Piece(
        number=first_number,
        fibre=fibre,
        weave=weave,
        length_m=length,
        width_m=width,
        gsm=None if typed.density is None else gsm_of(typed.density, width),
        given_grams=typed.grams,
        weighed=typed.weighed,
    )
    _check_weight(first)
    pieces = tuple(
        Piece(**{**vars(first), "number": first_number + offset}) for offset in range(typed.count)
    )
    return PieceReading(pieces, _understood(typed, first))


def _typed(line: Line) -> _Typed:
    """Take the measures out, the closest-knit first, so that none is taken for another."""
    weighed = take_weighed(line)
    density = take_density(line)
    if density is not None and take_density(line) is not None:
        raise Refusal("Two weights of the cloth by area were typed. Nothing was kept. Say one.")
    weight = take_weight(line)
    together = weight is not None and line.take(_TOGETHER) is not None
    counted, sides = take_sides(line)
    if weight is not None and density is None and len(sides) == 2 and not together:
        _ask_about_ounces(line, weight, weighed)
    count = counted if counted is not None else take_count(line)
    if count is not None and not 1 <= count <= MOST_PIECES:
        raise Refusal(
            f"{count} pieces cannot be: a line holds 1 to {MOST_PIECES}. Nothing was kept."
        )
    number = count or 1
    return _Typed(
        count=number,
        sides=_with_units(sides),
        assumed_cm=bool(sides) and not any(side.unit for side in sides),
        density=density,
        grams=weight.grams / (number if together else 1) if weight else None,
        together=together,
        weighed=weighed,
    )


def _ask_about_ounces(line: Line, weight: Weight, weighed: Weighed | None) -> None:
    """Ask about "3 yd of 45 in, 4.5 oz", where the trade may mean the square yard."""
    said = line.find(r"\b(?:weigh(?:s|ing)|weight|each|apiece)\b") is not None
    if said or weighed is not None or not _OUNCES.fullmatch(weight.said):
        return
    raise Question(
        f"Is {weight.said} the weight of the piece, or of a square yard? "
        f"Write “weighing {weight.said}”, or oz/yd2."
    )


def _with_units(sides: tuple[Side, ...]) -> tuple[Side, ...]:
    """Give sides without a unit the one after them, or centimetres where none has one."""
    if not any(side.unit for side in sides):
        return tuple(Side(side.number, "cm") for side in sides)
    if not sides[-1].unit:
        raise Question(
            f"{plain(sides[-1].number, 3)} of what: {sides[0].unit}, cm or in? "
            "Write the unit after both sides."
        )
    return tuple(Side(side.number, side.unit or sides[-1].unit) for side in sides)


def _metres(typed: _Typed) -> tuple[float | None, float | None]:
    """Give length and width in metres; refuses what no loom or table holds."""
    lengths = [metres(side) for side in typed.sides]
    for length, most in zip(lengths, (MOST_LENGTH_M, MOST_WIDTH_M), strict=False):
        if not LEAST_SIDE_M <= length <= most:
            raise Refusal(
                f"A side of {plain(length, 3)} m cannot be: a piece is 1 mm to "
                f"{plain(MOST_LENGTH_M, 0)} m long and up to {plain(MOST_WIDTH_M, 0)} m wide. "
                "Nothing was kept."
            )
    padded = [*lengths, None, None]
    return padded[0], padded[1]


def _check_weight(piece: Piece) -> None:
    if piece.grams is not None and not LEAST_GRAMS <= piece.grams <= MOST_GRAMS:
        raise Refusal(
            f"A piece of {plain(piece.grams, 3)} g cannot be: it weighs from 0.01 g to 100 kg. "
            "Nothing was kept."
        )


def _name(line: Line, text: str, *, measured: bool) -> tuple[str, str]:
    """Give fibre and weave from the words that are left, as typed."""
    words = [word for word in re.split(rf"[ ,;:(){GAP}]+", line.rest) if word]
    kept = [word for word in words if word.casefold() not in _FILLER and word not in {"100%", "."}]
    for word in kept:
        known = re.fullmatch(_WORD, word, re.IGNORECASE)
        if known is None or word.casefold().rstrip(".") in _NO_WORDS:
            raise Refusal(
                f"{quoted(word)} in {quoted(text)} cannot be read. Nothing was kept. {_EXAMPLES}"
            )
    if len(kept) > MOST_WORDS:
        raise Refusal(
            f"More than {MOST_WORDS} words were typed for the name of the cloth. "
            f"Nothing was kept. {_EXAMPLES}"
        )
    fibre, weave = _fibre_first(kept)
    if not measured and not any(word.casefold() in FIBRES for word in kept):
        raise Refusal(
            f"{quoted(text)} names no fibre and no measure. Nothing was kept. {_EXAMPLES}"
        )
    return fibre, weave


def _fibre_first(words: list[str]) -> tuple[str, str]:
    """Divide words into fibre and weave; "cloth" where there is none."""
    if not words:
        return "cloth", ""
    at = next((n for n, word in enumerate(words) if word.casefold() in FIBRES), 0)
    begun = at
    while begun > 0 and words[begun - 1].casefold() in _WITH_FIBRE:
        begun -= 1
    return " ".join(words[begun : at + 1]), " ".join(words[:begun] + words[at + 1 :])


def _understood(typed: _Typed, piece: Piece) -> str:
    """Say what was read: count, name, size, weight of the area, weight."""
    many = typed.count > 1
    said = [f"{typed.count} {'pieces' if many else 'piece'} of {piece.title}"]
    if typed.sides:
        each = " each" if many else ""
        assumed = " (no unit was typed: taken as centimetres)" if typed.assumed_cm else ""
        said.append(f", {_size_words(typed.sides)}{each}{assumed}")
    if typed.density and piece.gsm:
        said.append(f" at {_density_words(typed.density, piece.gsm)}")
    said.append(f": {_weight_words(typed, piece)}")
    return "".join(said)


def _size_words(sides: tuple[Side, ...]) -> str:
    units = {side.unit for side in sides}
    if len(units) == 1:
        size = " × ".join(plain(side.number, 3) for side in sides) + f" {sides[0].unit}"
    else:
        size = " × ".join(f"{plain(side.number, 3)} {side.unit}" for side in sides)
    if units <= {"mm", "cm", "m"}:
        return size if len(sides) == 2 else f"{size} long"
    metric = " × ".join(plain(metres(side) * 100, 1) for side in sides)
    return f"{size} ({metric} cm)" if len(sides) == 2 else f"{size} long ({metric} cm)"


def _density_words(density: Density, gsm: float) -> str:
    units = {
        "g/m2": "g/m²", "kg/m2": "kg/m²", "oz/yd2": "oz/yd²", "lb/yd2": "lb/yd²",
        "g/m": "g per running metre", "oz/yd": "oz per running yard",
    }  # fmt: skip
    said = f"{plain(density.number, 3)} {units.get(density.unit, density.unit)}"
    return said if density.unit == "g/m2" else f"{said} ({plain(gsm, 1)} g/m²)"


def _weight_words(typed: _Typed, piece: Piece) -> str:
    if piece.grams is None:
        missing = "its g/m²" if len(typed.sides) == 2 else "its size and g/m²"
        return f"weight not known; weigh it or add {missing}"
    said = f"{plain(piece.grams, 1 if piece.grams >= 1 else 2)} g"
    if typed.count > 1:
        said += f" each, {plain(piece.grams * typed.count, 1)} g in all"
    if typed.grams is not None:
        said += ", weighed" if typed.weighed is None else f", weighed {typed.weighed} scouring"
        area = piece.area_m2
        if area is not None and piece.gsm is not None:
            said += f" (its size would give {plain(area * piece.gsm, 1)} g each)"
    return said
