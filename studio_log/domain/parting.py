"""Pieces that leave a lot or come together in one, as the journals of both sides tell it.

A split copies the standing history under the new code; what parts the two comes after it. A
join does the same with the history of one of the lots (see `meeting`), and then says what
pieces the joined lot has. Each act is a function of lot and entry alone.
"""

from collections.abc import Iterable
from dataclasses import replace

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Entry
from studio_log.domain.lots import Lot, last_cure
from studio_log.domain.starting import piece_from


def _share(lot: Lot, kept: Iterable[int]) -> Lot:
    """Keep some pieces; a weight off the scale is shared out by the pieces' own weights."""
    numbers = set(kept)
    pieces = tuple(piece for piece in lot.pieces if piece.number in numbers)
    if not pieces or len(pieces) == len(lot.pieces):
        raise Refusal("A split moves some of the pieces, not none and not all of them.")
    grams = lot.given_grams
    if grams is not None:
        weights = {piece.number: piece.grams or 1.0 for piece in lot.pieces}
        grams *= sum(weights[piece.number] for piece in pieces) / sum(weights.values())
    return replace(lot, pieces=pieces, given_grams=grams)


def split_off(lot: Lot, entry: Entry) -> Lot:
    """Give the lot without the pieces that left it."""
    gone = set(entry.data["pieces"])
    lot = _share(lot, [piece.number for piece in lot.pieces if piece.number not in gone])
    child = entry.data.get("child")
    return replace(lot, children=(*lot.children, child)) if child else lot


def split_from(lot: Lot, entry: Entry) -> Lot:
    """Give the new lot with the pieces that it took along."""
    lot = _share(lot, entry.data["pieces"])
    return replace(
        lot,
        name=str(entry.data["name"]),
        parents=(str(entry.data["parent"]),),  # its own parents are told by its journal
        children=(),
    )


def join_into(lot: Lot, entry: Entry) -> Lot:
    """Give the lot whose pieces all went into another: nothing more is due on it."""
    child = str(entry.data["child"])
    return replace(lot, stopped=(entry.at, ""), children=(*lot.children, child), joined_into=child)


def join_from(lot: Lot, entry: Entry) -> Lot:
    """Give the joined lot: the steps of the history copied before, the pieces of all."""
    data = entry.data
    return replace(
        lot,
        name=str(data["name"]),
        pieces=tuple(piece_from(piece) for piece in data["pieces"]),
        given_grams=data.get("grams"),
        weighed=data.get("weighed"),
        cure_days=data.get("cure_days"),
        cure_join=last_cure(lot.methods),
        place=str(data.get("place", "")),
        vessel_litres=data.get("vessel_litres"),
        vessel=str(data.get("vessel", lot.vessel)),
        parents=tuple(str(code) for code in data["parents"]),
        children=(),
    )
