"""Whether lots can be joined, and what the joined lot would be.

Lots meet where the same method and the same step lie before them. Their pasts differ in
minutes or days; the joined lot carries on the history of the one whose last act came
last, for a cure counts from the last piece that was dry and a soak is long enough only once
it is so for every piece. What else differs is a doubt, said before anything is joined.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from studio_log.domain.errors import Refusal
from studio_log.domain.lots import Lot, LotStep, cure_days_of
from studio_log.domain.methods import StepKind
from studio_log.domain.pieces import Piece
from studio_log.domain.windows import short_span
from studio_log.language.words import counted, tr, tr_later

APART = timedelta(minutes=10)
"""Acts closer than this were one: two lots laid into the same bucket."""
APART_IN_CURE = timedelta(days=1)
"""A cure is counted in days."""

STOPPED = tr_later("{code} was stopped. Nothing was joined. Choose a lot that is in work.")
TAKEN_BACK = tr_later("{code} was taken back. Nothing was joined. Choose a lot that is in work.")
DRY_BEFORE = tr_later(
    "{other} was fully dry {span} before {code}. The cure of the joined lot counts from the later."
)
WAITED = tr_later("{other} has waited {span} longer than {code}. The later is counted from.")
BEGAN_BEFORE = tr_later(
    "{step} of {other} began {span} before that of {code}. The joined lot counts from the later: "
    "keep {span} inside the latest end, for the earlier's sake."
)
WEIGHED = {"before": tr_later("before scouring"), "after": tr_later("after scouring")}
NOT_SAID = tr_later("nobody said when")


@dataclass(frozen=True)
class Meeting:
    """What a join comes to. `base` is the lot whose history is carried on."""

    lots: tuple[Lot, ...]
    base: Lot
    pieces: tuple[Piece, ...]
    grams: float | None
    """Dry weight in grams where one of the lots was weighed, else None: worked out."""
    weighed: str | None
    cure_days: int | None
    place: str
    vessel_litres: float | None
    vessel: str
    doubts: tuple[str, ...]

    def joined(self, code: str, name: str) -> Lot:
        """Give the lot that the join makes."""
        return replace(
            self.base,
            code=code,
            name=name,
            pieces=self.pieces,
            given_grams=self.grams,
            weighed=self.weighed,
            cure_days=self.cure_days,
            place=self.place,
            vessel_litres=self.vessel_litres,
            vessel=self.vessel,
            parents=tuple(lot.code for lot in self.lots),
            children=(),
        )


def meet(lots: Sequence[Lot]) -> Meeting:
    """Give what joining the lots comes to; Refusal where they cannot meet."""
    if len(lots) < 2 or len({lot.code for lot in lots}) < len(lots):
        raise Refusal(tr("A join needs two different lots. Nothing was joined."))
    for lot in lots:
        still_walks(lot)
    for other in lots[1:]:
        _same_place(lots[0], other)
    base = max(lots, key=lambda lot: since(lot) or lot.begun)
    return Meeting(
        lots=tuple(lots),
        base=base,
        pieces=_numbered(lots),
        grams=_weight(lots),
        weighed=lots[0].weighed if len({lot.weighed for lot in lots}) == 1 else None,
        cure_days=_cure_days(lots, base),
        place=base.place or next((lot.place for lot in lots if lot.place), ""),
        vessel=base.vessel or next((lot.vessel for lot in lots if lot.vessel), ""),
        vessel_litres=max((lot.vessel_litres or 0.0 for lot in lots), default=0.0) or None,
        doubts=tuple(
            words for doubt in _DOUBTS for other in lots if other is not base
            if (words := doubt(base, other))
        ),
    )  # fmt: skip


def since(lot: Lot) -> datetime | None:
    """Give when the last act on its steps was; None where none was begun."""
    begun = [step.start for step in lot.open_steps() if step.start is not None]
    ended = [step.end for step in lot.steps if step.end is not None]
    return max(begun or ended, default=None)


def ahead(lot: Lot) -> list[LotStep]:
    """Give the steps that are not closed, without optional coats that nobody began."""
    return [step for step in lot.steps if not step.closed and lot.taken(step)]


def still_walks(lot: Lot) -> None:
    """Refuse a lot that has ended: stopped, taken back, or joined into another."""
    if lot.joined_into:
        raise Refusal(
            tr(
                "{code} was joined into {child} already. Nothing was joined.",
                code=lot.code,
                child=lot.joined_into,
            )
        )
    if lot.voided or lot.stopped is not None:
        raise Refusal(tr(TAKEN_BACK if lot.voided else STOPPED, code=lot.code))


def _same_place(one: Lot, other: Lot) -> None:
    if one.method.key != other.method.key:
        raise Refusal(
            tr(
                "{code} follows {method}, {other} follows {other_method}. Nothing was joined. Let "
                "both go on to the same method first.",
                code=one.code,
                method=_method(one),
                other=other.code,
                other_method=_method(other),
            )
        )
    if _position(one) != _position(other):
        raise Refusal(
            tr(
                "{one}; {other}. Nothing was joined. Bring both to the same step, then join them.",
                one=where(one),
                other=where(other),
            )
        )
    if (one.use is None) != (other.use is None):
        used, fresh = (one, other) if one.use is not None else (other, one)
        raise Refusal(
            tr(
                "The use of {used} is on record, that of {fresh} is not. Nothing was joined. "
                "Record the use of {fresh} first, or let each go its way.",
                used=used.code,
                fresh=fresh.code,
            )
        )


def _method(lot: Lot) -> str:
    return tr("{title}, version {n}", title=lot.method.title, n=lot.method.version)


def _position(lot: Lot) -> list[tuple[str, str, bool]]:
    return [(lot.methods[step.join].slug, step.slug, step.running) for step in ahead(lot)]


def where(lot: Lot) -> str:
    """Say where a lot stands: "26-001 is in First soak", "26-002 has Bean soak ahead"."""
    left = ahead(lot)
    running = next((step for step in left if step.running), None)
    if running is not None:
        return tr("{code} is in {step}", code=lot.code, step=running.title)
    if left:
        return tr("{code} has {step} ahead", code=lot.code, step=left[0].title)
    return tr("{code} has no step left", code=lot.code)


def _numbered(lots: Sequence[Lot]) -> tuple[Piece, ...]:
    """Give the pieces of all; numbers stay while no two are alike, as after a split."""
    pieces = [piece for lot in lots for piece in lot.pieces]
    if len({piece.number for piece in pieces}) == len(pieces):
        return tuple(sorted(pieces, key=lambda piece: piece.number))
    return tuple(replace(piece, number=number) for number, piece in enumerate(pieces, 1))


def _weight(lots: Sequence[Lot]) -> float | None:
    if all(lot.given_grams is None for lot in lots):
        return None
    weights = [lot.grams for lot in lots]
    unknown = next((lot.code for lot in lots if lot.grams is None), "")
    if unknown:
        raise Refusal(
            tr(
                "The weight of {code} is not known. Nothing was joined. Weigh it first.",
                code=unknown,
            )
        )
    return sum(grams for grams in weights if grams is not None)


def _view(lot: Lot) -> int | None:
    """Give the days of the cure that the lot goes by, None where its method has no cure."""
    if lot.method.cure is None:
        return None
    return cure_days_of(lot, len(lot.methods) - 1)


def _cure_days(lots: Sequence[Lot], base: Lot) -> int | None:
    views = {view for view in map(_view, lots) if view is not None}
    return max(views) if len(views) > 1 else base.cure_days


def _past_differs(base: Lot, other: Lot) -> str:
    pasts = [[method.title for method in lot.methods[:-1]] for lot in (base, other)]
    if pasts[0] == pasts[1]:
        return ""
    said = [", ".join(past) or tr("nothing") for past in pasts]
    return tr(
        "Before {method} {code} went through {past}, {other} through {other_past}.",
        method=base.method.title,
        code=base.code,
        past=said[0],
        other=other.code,
        other_past=said[1],
    )


def _coats_differ(base: Lot, other: Lot) -> str:
    counts = [_coats(lot) for lot in (base, other)]
    if counts[0] == counts[1]:
        return ""
    return tr(
        "{code} has had {coats}, {other} {other_coats}.",
        code=base.code,
        coats=_of_coats(counts[0]),
        other=other.code,
        other_coats=_of_coats(counts[1]),
    )


def _coats(lot: Lot) -> int:
    """Count the coats of the last method that are on and dry."""
    last = len(lot.methods) - 1
    return len(
        {
            step.coat
            for step in lot.steps
            if step.join == last and step.coat is not None and step.end is not None
        }
    )


def _of_coats(count: int) -> str:
    return counted(count, tr_later("{n} coat"), tr_later("{n} coats"))


def _times_differ(base: Lot, other: Lot) -> str:
    late, early = since(base), since(other)
    if late is None or early is None:
        return ""
    running = next((step for step in ahead(base) if step.running), None)
    curing = running is not None and running.spec.kind is StepKind.CURE
    if late - early <= (APART_IN_CURE if curing else APART):
        return ""
    span = short_span(_rounded(late - early))
    if running is None:
        words, step = WAITED, ""
    else:
        words, step = DRY_BEFORE if curing else BEGAN_BEFORE, running.title
    return tr(words, other=other.code, code=base.code, span=span, step=step)


def _rounded(span: timedelta) -> timedelta:
    """Round to minutes under two hours, to hours under three days, else to days."""
    if span < timedelta(hours=2):
        return span
    unit = timedelta(hours=1) if span <= timedelta(hours=72) else timedelta(days=1)
    return round(span / unit) * unit


def _weighing_differs(base: Lot, other: Lot) -> str:
    if base.weighed == other.weighed or None in {base.given_grams, other.given_grams}:
        return ""
    said = [tr(WEIGHED.get(lot.weighed or "", NOT_SAID)) for lot in (base, other)]
    return tr(
        "{code} was weighed {when}, {other} {other_when}; the weights are added as they are.",
        code=base.code,
        when=said[0],
        other=other.code,
        other_when=said[1],
    )


def _cures_differ(base: Lot, other: Lot) -> str:
    views = (_view(base), _view(other))
    if views[0] == views[1]:
        return ""
    return tr(
        "The cure of {code} is {days} d, that of {other} {other_days} d; the longer is taken.",
        code=base.code,
        days=views[0],
        other=other.code,
        other_days=views[1],
    )


def _amounts_differ(base: Lot, other: Lot) -> str:
    if dict(base.amounts_changed) == dict(other.amounts_changed):
        return ""
    return tr("The figures that you changed differ; those of {code} are kept.", code=base.code)


_DOUBTS: tuple[Callable[[Lot, Lot], str], ...] = (
    _past_differs,
    _coats_differ,
    _times_differ,
    _weighing_differs,
    _cures_differ,
    _amounts_differ,
)
"""What may differ between lots that meet, each told in one sentence or not at all."""
