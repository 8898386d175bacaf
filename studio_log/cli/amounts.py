"""The command that works out what a method takes for a weight of cloth."""

from dataclasses import replace
from typing import Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, UsageError
from studio_log.cli.methods import SLUG
from studio_log.cli.plain import plain
from studio_log.cli.turn import Turn
from studio_log.domain.amount_notes import note_of
from studio_log.domain.amounts import Amount
from studio_log.domain.base_weight import base_words
from studio_log.domain.errors import Refusal
from studio_log.domain.kitchen import measure_metric
from studio_log.domain.pieces import Weighed
from studio_log.domain.scale import OnScale, on_scale
from studio_log.present import words
from studio_log.services.limits import check_grams
from studio_log.services.questions import AmountsAnswer, AmountsFor


def _amounts(turn: Turn) -> int:
    grams, area = _cloth(turn)
    slug = values.slug(turn.values["slug"], "method's slug")
    step = values.grams(turn.values["scale"])
    question = AmountsFor(
        slug,
        grams,
        values.amounts(turn.values["amount"]),
        values.litres(turn.values["vessel"]),
        area,
    )
    found: AmountsAnswer = turn.studio.ask(question)
    scaled = {one.slug: _weighed(one, step) for one in found.amounts}
    amounts = [_in_cups(one, turn.values["cups"]) for one in found.amounts]
    base = _base(turn, grams)
    if turn.values["json"]:
        fits = found.vessel_fits
        vessel = None if fits is None else {"fits": fits, "words": found.vessel_words}
        fields = [
            {**plain(one), "scale": plain(scaled[one.slug]), "note": note_of(one)}
            for one in amounts
        ]
        turn.say_json(
            {"method": slug, "grams": grams, "weighed": turn.values["weighed"], "area_m2": area,
             "amounts": fields, "vessel": vessel}
        )  # fmt: skip
        return 0
    lines = [f"For {words.mass(grams)} of cloth:"]
    for one in amounts:
        lines.extend(_lines(one, scaled[one.slug]))
    turn.say("\n".join([*lines, *filter(None, [base, found.vessel_words])]))
    return 0


def _lines(one: Amount, scaled: OnScale | None) -> list[str]:
    """Say one amount; on the dyer's own scale where one was named."""
    kitchen = f" ({one.kitchen})" if one.kitchen else ""
    shown = one.shown if scaled is None else scaled.shown
    line = f"  {one.title}: {shown}{kitchen} — {one.how}"
    more = [scaled.advice if scaled is not None else "", note_of(one)]
    return [line, *(f"    {said}" for said in more if said)]


def _in_cups(one: Amount, cups: str | None) -> Amount:
    """Give the amount with the kitchen measure that was asked for; US ones unless said."""
    if cups != "metric" or one.litres is None:
        return one
    return replace(one, kitchen=measure_metric(one.litres))


def _base(turn: Turn, grams: float) -> str:
    """Say which weight was the base, where that was given."""
    weighed = turn.values["weighed"]
    if weighed is None:
        return ""
    pieces, _ = values.pieces(turn.values["piece"])
    return base_words(grams, Weighed(weighed), [piece.fibre for piece in pieces])


def _weighed(one: Amount, step: float | None) -> OnScale | None:
    """Give what the dyer's scale makes of it; what is measured in cups is no salt to dissolve."""
    if step is None or one.unit != "g":
        return None
    return on_scale(one.value, step, dissolves=one.litres is None)


def _cloth(turn: Turn) -> tuple[float, float | None]:
    """Give the grams of cloth from --weight or from the pieces, and their area where known."""
    given = turn.values
    if (given["weight"] is None) == (not given["piece"]):
        raise UsageError("The amounts go by --weight or by --piece: give one of them")
    grams = values.grams(given["weight"])
    if grams is not None:
        return grams, None
    pieces, understood = values.pieces(given["piece"])
    weights = [piece.grams for piece in pieces if piece.grams is not None]
    areas = [piece.area_m2 for piece in pieces if piece.area_m2 is not None]
    for line in understood:
        turn.tell(line)
    if len(weights) < len(pieces):
        raise Refusal(
            "The weight of the cloth is not known: give length, width and g/m², or --weight. "
            f"{values.NOTHING}"
        )
    return check_grams(sum(weights)), sum(areas) if len(areas) == len(pieces) else None


FORMS: Final = (
    Form(
        ("amounts",),
        "Work out a method's amounts, with their kitchen measures.",
        _amounts,
        (SLUG,),
        (
            Option("--weight", "weight of the cloth: 500g, 1 lb 2 oz", "WEIGHT"),
            Option("--piece", "cloth, such as “2 x linen 180x45cm 185g/m2”", "TEXT",
                   repeats=True, spreads=True),
            Option("--vessel", "what the bucket holds: 20L", "VOLUME"),
            Option("--amount", "your own figure: beans=35", "NAME=VALUE", repeats=True),
            Option("--weighed", "the weight of the cloth is that before or after scouring", "WHEN",
                   choices=tuple(Weighed)),
            Option("--cups", "cups and spoons to say; US ones unless said", "CUPS",
                   choices=("us", "metric")),
            Option("--scale", "the least step that your scale shows: 1g", "WEIGHT"),
            JSON,
        ),
    ),
)  # fmt: skip
