"""Sums of beans and milk: the soak, the soaked weight, the milk and what of it stays on cloth."""

from typing import Final

from studio_log.domain.amount_shown import grams_shown, litres_shown
from studio_log.domain.errors import Refusal
from studio_log.domain.estimates import hours, rough
from studio_log.domain.number_text import plain
from studio_log.domain.soak_time import COLDEST_C, WARMEST_C, soak_time, soaked_words
from studio_log.language.words import tr, tr_later
from studio_log.present.calculator.parts import Answer, Calculation, Curve, Input, Values, number
from studio_log.present.words import span
from studio_log.science import soaking, soy_milk

CURVE_HOURS: Final = 24
RIGHT_TO_A_FIFTH: Final = tr_later(
    "Right to a fifth at best: beans differ, and so does the straining."
)


def _soak(values: Values) -> Answer:
    found = soak_time(number(values, "celsius"))
    time = found.time.as_said
    change = found.change_water
    lines = [
        tr("Between {earliest} and {latest}; look after {look}.",
           earliest=span(time.earliest), latest=span(time.latest), look=span(rough(found.look_at))),
        tr("Fresh water after {span}.", span=span(rough(change))) if change is not None else "",
        tr("The water may sour after {span}.", span=span(rough(found.sours_after))),
        time.why,
    ]  # fmt: skip
    return Answer(
        tr("about {span}", span=span(time.aim)),
        tuple(filter(None, lines)),
        tr("Peleg’s equation fitted to published soaks; souring: food rules. See “Sources”."),
    )


def _soak_curve(values: Values) -> Curve:
    celsius = min(max(number(values, "celsius"), COLDEST_C), WARMEST_C)
    xs = tuple(step / 2 for step in range(2 * CURVE_HOURS + 1))
    band = soaking.TIME_BAND
    likely = tuple(1 + soaking.gain_after(x, celsius) / 100 for x in xs)
    least = tuple(1 + soaking.gain_after(x / (1 + band), celsius) / 100 for x in xs)
    most = tuple(1 + soaking.gain_after(x / (1 - band), celsius) / 100 for x in xs)
    through = soaking.hours_to(soaking.FULL_GAIN, celsius)
    return Curve(
        xs, least, likely, most, tr("hours"), tr("times the dry weight"),
        (through, 1 + soaking.FULL_GAIN / 100) if through <= CURVE_HOURS else None,
        tr("Weight of the beans over {hours} hours at {celsius} °C; twice the dry weight after "
           "{span}.", hours=CURVE_HOURS, celsius=plain(celsius, 1),
           span=span(rough(hours(through)))),
    )  # fmt: skip


def _soaked(values: Values) -> Answer:
    dry, soaked = number(values, "dry"), number(values, "soaked")
    words = soaked_words(dry, soaked)
    figure, _, rest = words.partition(": ")
    grind = tr("Water of the first grind: {litres}.",
               litres=litres_shown(soy_milk.grind_litres(soaked)))  # fmt: skip
    return Answer(
        figure, (rest.capitalize(), grind), tr("Soaked beans weigh 2.0 to 2.6 times the dry ones.")
    )


def _milk(values: Values) -> Answer:
    beans, litres = number(values, "beans"), number(values, "litres")
    water = litres * 1000 / beans
    protein = soy_milk.protein_per_litre(beans, litres)
    strength = tr("{grams} g of dry beans to the litre, one part to {parts} of water.",
                  grams=plain(beans / litres, 0), parts=plain(water, 1))  # fmt: skip
    weak = ""
    if water < soy_milk.LEAST_WATER:
        weak = tr("Below {parts} parts of water a part of the protein will not dissolve.",
                  parts=plain(soy_milk.LEAST_WATER, 0))  # fmt: skip
    return Answer(
        tr("about {grams} g of protein a litre", grams=plain(protein, 0)),
        tuple(filter(None, [strength, weak, tr(RIGHT_TO_A_FIFTH)])),
        tr("Protein of the bean: food tables; recovery: Yuwono and Susanto."),
    )


def _life(values: Values) -> Answer:
    celsius = number(values, "celsius")
    if not 0 <= celsius <= soy_milk.WARMEST_C:
        raise Refusal(
            tr("Milk is kept between 0 and {most} °C.", most=plain(soy_milk.WARMEST_C, 0))
        )
    keeps = hours(soy_milk.keeps_hours(celsius))
    return Answer(
        tr("about {span}", span=span(rough(keeps))),
        (tr("Smell it before it meets cloth; sour or thick milk goes away."),),
        tr("A proposal, bracketed by food rules; no paper says it of raw milk as a binder."),
    )


def _left(values: Values) -> Answer:
    dry, wet = number(values, "dry"), number(values, "wet")
    if wet <= dry:
        raise Refusal(tr("Wet cloth weighs more than dry cloth."))
    held = (wet - dry) / dry
    protein = soy_milk.protein_on_cloth(
        soy_milk.protein_per_litre(number(values, "beans"), number(values, "litres")), held
    )
    return Answer(
        tr("at most {grams} g of protein on 100 g of cloth", grams=plain(protein, 2)),
        (
            tr("It holds {grams} of the bath, {share} % of its dry weight.",
               grams=grams_shown(wet - dry), share=plain(held * 100, 0)),
            tr("What was only in the water between the threads can drip or wash away. "
               "Weigh the dry cloth to know what stayed."),
        ),
        tr("Plain proportion from the protein of the milk; see “The milk”."),
    )  # fmt: skip


def _gain(values: Values) -> Answer:
    before, after = number(values, "before"), number(values, "after")
    gain = (after - before) / before * 100
    words = tr("{share} % heavier", share=plain(gain, 2))
    if gain < 0:
        words = tr("{share} % lighter", share=plain(-gain, 2))
    return Answer(
        words,
        (tr("Weigh both times in the same air: cotton takes up about as much water from damp air "
            "as a coat of soy weighs."),),
        tr("Plain proportion."),
    )  # fmt: skip


BEANS: Final = Input("beans", tr_later("Dry &beans"), "grams", "90 g", tr_later("Before the soak."))
LITRES: Final = Input(
    "litres", tr_later("&Milk made of them"), "litres", "0.9 L",
    tr_later("All of it, with the thinning."),
)  # fmt: skip

CALCULATIONS: Final = (
    Calculation(
        "soak", tr_later("How long beans soak"),
        tr_later("From the heat of the water, in a room as warm."),
        (Input("celsius", tr_later("&Water and room"), "celsius", "20 °C",
               tr_later("The water takes the room’s heat within an hour or two.")),),
        _soak, _soak_curve,
    ),
    Calculation(
        "soaked", tr_later("Are the beans through?"),
        tr_later("From their drained weight."),
        (
            Input("dry", tr_later("&Dry weight"), "grams", "90 g", tr_later("Before the soak.")),
            Input("soaked", tr_later("D&rained weight"), "grams", "200 g",
                  tr_later("Drained and shaken, not dried off.")),
        ),
        _soaked,
    ),
    Calculation(
        "milk", tr_later("The milk"),
        tr_later("Its strength, and what of the beans is in it."),
        (BEANS, LITRES),
        _milk,
    ),
    Calculation(
        "life", tr_later("How long milk keeps"),
        tr_later("Raw milk, covered, from when it was strained."),
        (Input("celsius", tr_later("&Where it stands"), "celsius", "20 °C",
               tr_later("The refrigerator is about 4 °C.")),),
        _life,
    ),
    Calculation(
        "left", tr_later("What a coat leaves"),
        tr_later("Milk and protein that cloth carries into drying, from two weighings."),
        (
            Input("dry", tr_later("&Dry cloth"), "grams", "300 g", tr_later("Before the bath.")),
            Input("wet", tr_later("&Spun cloth"), "grams", "480 g",
                  tr_later("As it goes to the line.")),
            BEANS,
            LITRES,
        ),
        _left,
    ),
    Calculation(
        "gain", tr_later("Weight gained by coats"),
        tr_later("What all coats together left, fully dry."),
        (
            Input("before", tr_later("&Before"), "grams", "300 g", tr_later("Scoured and dry.")),
            Input("after", tr_later("&After"), "grams", "312 g", tr_later("Coated and fully dry.")),
        ),
        _gain,
    ),
)  # fmt: skip
