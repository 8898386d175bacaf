"""Sums of cloth and baths: share of the cloth's weight, litres, solutions, salts, used baths."""

from typing import Final

from studio_log.domain.amount_shown import grams_shown, litres_shown
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import plain
from studio_log.domain.scale import on_scale
from studio_log.language.words import tr, tr_later
from studio_log.present.calculator.parts import Answer, Calculation, Input, Values, number
from studio_log.science import bath_sums
from studio_log.science.salts import SALTS, acetate_for, in_place_of

PROPORTION: Final = tr_later("Plain proportion, as dye houses define it.")
CLOTH: Final = Input(
    "cloth", tr_later("&Cloth"), "grams", "300 g",
    tr_later("Its dry weight, scoured and fully dry."),
)  # fmt: skip


def _share(values: Values) -> Answer:
    grams = bath_sums.share_of(number(values, "cloth"), number(values, "share"))
    weighed = on_scale(grams, number(values, "step"))
    return Answer(weighed.shown, tuple(filter(None, [weighed.advice])), tr(PROPORTION))


def _bath(values: Values) -> Answer:
    litres = bath_sums.bath_litres(number(values, "cloth"), number(values, "ratio"))
    needed = litres / 0.9
    lines = tr(
        "A vessel of {litres} or more leaves a tenth free at its rim.",
        litres=litres_shown(needed, up=True),
    )
    return Answer(litres_shown(litres), (lines,), tr(PROPORTION))


def _stock(values: Values) -> Answer:
    grams, strength = number(values, "grams"), number(values, "strength")
    if strength > 100:
        raise Refusal(tr("A stock solution is weaker than 100 %."))
    litres = bath_sums.stock_millilitres(grams, strength) / 1000
    made = tr("{strength} % means {strength} g made up to 100 mL.", strength=plain(strength, 2))
    return Answer(litres_shown(litres), (made,), tr(PROPORTION))


def _salt(values: Values) -> Answer:
    grams, one, other = number(values, "grams"), str(values["salt"]), str(values["other"])
    if SALTS[one].counts != SALTS[other].counts:
        raise Refusal(
            tr("{other} does not stand for {salt}: they hold different things.",
               other=tr(SALTS[other].title).capitalize(), salt=tr(SALTS[one].title))
        )  # fmt: skip
    swapped = in_place_of(grams, one, other)
    line = tr(
        "{grams} of {salt} hold as much as that of {other}. Good to the purity of what stands on "
        "the shelf: crystals dry out and powders draw water.",
        grams=grams_shown(grams), salt=tr(SALTS[one].title), other=tr(SALTS[other].title),
    )  # fmt: skip
    return Answer(grams_shown(swapped), (line,), tr("Standard atomic weights (IUPAC, 2021)."))


def _acetate(values: Values) -> Answer:
    grams, salt = number(values, "alum"), str(values["salt"])
    line = tr(
        "Three parts of acetate to one of aluminium turn {alum} of alum into aluminium acetate.",
        alum=grams_shown(number(values, "alum")),
    )
    source = tr("Standard atomic weights (IUPAC, 2021).")
    return Answer(grams_shown(acetate_for(grams, salt)), (line,), source)


def _recharge(values: Values) -> Answer:
    grams = bath_sums.recharge_grams(number(values, "first"), number(values, "share"))
    return Answer(grams_shown(grams), (), tr(PROPORTION))


def _loss(values: Values) -> Answer:
    grams, loss = number(values, "cloth"), number(values, "loss")
    after, before = bath_sums.after_loss(grams, loss), bath_sums.before_loss(grams, loss)
    return Answer(
        grams_shown(after),
        (tr("If {cloth} is the weight after scouring, it was {before} before.",
            cloth=grams_shown(grams), before=grams_shown(before)),),
        tr(PROPORTION),
    )  # fmt: skip


def _by_area(values: Values) -> Answer:
    gsm, width, long = (number(values, slug) for slug in ("gsm", "width", "length"))
    running = bath_sums.running_grams(gsm, width)
    line = tr("One running metre weighs {grams}.", grams=grams_shown(running))
    return Answer(grams_shown(running * long), (line,), tr(PROPORTION))


def _shrunk(values: Values) -> Answer:
    before, after = number(values, "before"), number(values, "after")
    lost = bath_sums.shrinkage_percent(before, after)
    words = tr("{share} % shorter", share=plain(lost, 1))
    if lost < 0:
        words = tr("{share} % longer", share=plain(-lost, 1))
    return Answer(words, (), tr(PROPORTION))


_SALT_CHOICES: Final = tuple((slug, salt.title) for slug, salt in SALTS.items())
_ACETATES: Final = tuple(
    (slug, salt.title) for slug, salt in SALTS.items() if salt.counts == "acetate"
)

CALCULATIONS: Final = (
    Calculation(
        "share", tr_later("Share of the cloth’s weight"),
        tr_later("How much of a dye, a mordant or beans, as per cent of the weight of the cloth."),
        (
            CLOTH,
            Input("share", tr_later("&Share"), "percent", "12 %",
                  tr_later("Per cent of the weight of fibre (% WOF).")),
            Input("step", tr_later("S&tep of the scale"), "grams", "1 g",
                  tr_later("The least step that the scale shows.")),
        ),
        _share,
    ),
    Calculation(
        "bath", tr_later("Litres of a bath"),
        tr_later("How much bath the cloth swims in at a liquor ratio, and the vessel for it."),
        (
            CLOTH,
            Input("ratio", tr_later("Liquor &ratio"), "ratio", "20 : 1",
                  tr_later("Litres of bath to the kilogram of dry cloth.")),
        ),
        _bath,
    ),
    Calculation(
        "stock", tr_later("From a stock solution"),
        tr_later("How much of a solution holds a small weight that a scale cannot show."),
        (
            Input("grams", tr_later("&Weight wanted"), "grams", "3.4 g",
                  tr_later("What the recipe asks for.")),
            Input("strength", tr_later("&Strength"), "percent", "10 %",
                  tr_later("Grams in 100 mL of the solution.")),
        ),
        _stock,
    ),
    Calculation(
        "salt", tr_later("One salt in place of another"),
        tr_later("Washing soda for soda ash, crystals for a dried powder, one alum for another."),
        (
            Input("grams", tr_later("&Weight"), "grams", "100 g",
                  tr_later("What the recipe asks for.")),
            Input("salt", tr_later("The recipe’s &salt"), "choice", "soda-ash",
                  tr_later("What the recipe is written for."), _SALT_CHOICES),
            Input("other", tr_later("What is on the s&helf"), "choice", "washing-soda",
                  tr_later("What is there instead. Ask the supplier how much water it holds."),
                  _SALT_CHOICES),
        ),
        _salt,
    ),
    Calculation(
        "acetate", tr_later("Acetate to an alum"),
        tr_later("How much sodium acetate makes aluminium acetate out of alum."),
        (
            Input("alum", tr_later("&Alum"), "grams", "100 g", tr_later("Potassium alum.")),
            Input("salt", tr_later("A&cetate"), "choice", "sodium-acetate",
                  tr_later("With its water of crystals, or without."), _ACETATES),
        ),
        _acetate,
    ),
    Calculation(
        "recharge", tr_later("A used bath, recharged"),
        tr_later("What tops a used bath up, as a share of its first charge."),
        (
            Input("first", tr_later("&First charge"), "grams", "40 g",
                  tr_later("What went in at first.")),
            Input("share", tr_later("&Share"), "percent", "50 %",
                  tr_later("Of the first charge; mordant baths are often topped up by half.")),
        ),
        _recharge,
    ),
    Calculation(
        "loss", tr_later("Weight before and after scouring"),
        tr_later("Recipes count from one or the other; scouring takes size, wax and oil."),
        (
            Input("cloth", tr_later("&Cloth"), "grams", "300 g", tr_later("Its weight before.")),
            Input("loss", tr_later("&Loss"), "percent", "8 %",
                  tr_later("Per cent of the weight before. Weigh a swatch to know.")),
        ),
        _loss,
    ),
    Calculation(
        "area", tr_later("Cloth by its size"),
        tr_later("What a length of cloth weighs, from its weight by area and its width."),
        (
            Input("gsm", tr_later("Weight by &area"), "gsm", "150 g/m²",
                  tr_later("As on its label: 150 g/m², 4.5 oz/yd², 16 momme.")),
            Input("width", tr_later("&Width"), "metres", "1.14 m", tr_later("Of the roll.")),
            Input("length", tr_later("&Length"), "metres", "3 yd", tr_later("Of the cut.")),
        ),
        _by_area,
    ),
    Calculation(
        "shrinkage", tr_later("Shrinkage"),
        tr_later("What a length lost in the wash."),
        (
            Input("before", tr_later("&Before"), "metres", "50 cm", tr_later("Between two marks.")),
            Input("after", tr_later("&After"), "metres", "48 cm", tr_later("The same, washed.")),
        ),
        _shrunk,
    ),
)  # fmt: skip
