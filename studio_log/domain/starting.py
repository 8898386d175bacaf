"""How a lot begins: its first entry, its steps, its pieces as plain values."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict
from typing import Any

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Entry
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import Method
from studio_log.domain.pieces import Piece, Weighed

MethodBook = Mapping[tuple[str, int], Method]
"""Every method version a journal may name."""


def piece_data(piece: Piece) -> dict[str, Any]:
    """Give a piece as plain JSON values."""
    return asdict(piece)


def piece_from(data: Mapping[str, Any]) -> Piece:
    """Give the piece back from `piece_data`."""
    weighed = data.get("weighed")
    return Piece(**{**data, "weighed": Weighed(weighed) if weighed else None})


def steps_of(method: Method, *, join: int, first: int) -> tuple[LotStep, ...]:
    """Give a method's steps as a lot walks them; numbers run on from `first`."""
    return tuple(
        LotStep(
            number=first + index,
            slug=spec.slug,
            title=spec.title,
            spec=spec,
            join=join,
            coat=spec.coat,
            optional=spec.optional,
        )
        for index, spec in enumerate(method.steps)
    )


def method_named(key: Sequence[Any], book: MethodBook) -> Method:
    """Give the method an entry names; Refusal where the studio does not have that version."""
    slug, version = str(key[0]), int(key[1])
    try:
        return book[(slug, version)]
    except KeyError:
        raise Refusal(
            f"This studio has no method {slug!r} at version {version}. Nothing was changed; "
            "import its file and try again."
        ) from None


def begin(entry: Entry, book: MethodBook) -> Lot:
    """Give the lot that its first entry makes."""
    data = entry.data
    method = method_named(data["method"], book)
    pieces: Iterable[Mapping[str, Any]] = data.get("pieces", ())
    return Lot(
        code=entry.subject,
        name=str(data.get("name", "")),
        begun=entry.at,
        zone=entry.zone,
        pieces=tuple(piece_from(piece) for piece in pieces),
        methods=(method,),
        steps=steps_of(method, join=0, first=1),
        given_grams=data.get("grams"),
        weighed=data.get("weighed"),
        cure_days=data.get("cure_days"),
        place=str(data.get("place", "")),
        vessel_litres=data.get("vessel_litres"),
        vessel=str(data.get("vessel", "")),
        amounts_changed=dict(data.get("amounts", {})),
    )
