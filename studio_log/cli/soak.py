"""The command that estimates how long beans soak."""

from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, UsageError
from studio_log.cli.plain import plain
from studio_log.cli.turn import Turn
from studio_log.domain.estimates import rough
from studio_log.domain.room_text import read_celsius
from studio_log.domain.soak_time import SoakEstimate, soak_time, soaked_words
from studio_log.present.words import span


def _soak(turn: Turn) -> int:
    found = soak_time(read_celsius(turn.values["temperature"]))
    weights = _weights(turn)
    if turn.values["json"]:
        turn.say_json({**_fields(found), "soaked": weights or None})
    else:
        turn.say("\n".join([*_lines(found), *filter(None, [weights])]))
    return 0


def _weights(turn: Turn) -> str:
    """Say whether the beans are soaked through, where both weights were given."""
    beans, soaked = turn.values["beans"], turn.values["soaked"]
    if (beans is None) != (soaked is None):
        raise UsageError("--beans and --soaked go together: the dry and the drained weight")
    grams = values.grams(beans), values.grams(soaked)
    return "" if grams[0] is None or grams[1] is None else soaked_words(grams[0], grams[1])


def _fields(found: SoakEstimate) -> dict[str, Any]:
    return {
        **plain(found.time),
        "look_at": plain(found.look_at),
        "change_water": plain(found.change_water),
        "sours_after": plain(found.sours_after),
    }


def _lines(found: SoakEstimate) -> list[str]:
    time = found.time.as_said
    change = found.change_water
    range_words = f"between {span(time.earliest)} and {span(time.latest)}"
    look = f"Look after {span(rough(found.look_at))}"
    fresh = "" if change is None else f"; fresh water after {span(rough(change))}"
    sours = f"the water may sour after {span(rough(found.sours_after))}"
    return [
        f"Soaked after about {span(time.aim)}, {range_words}.",
        f"{look}{fresh}; {sours}.",
        time.why,
    ]


FORMS: Final = (
    Form(
        ("soak",),
        "Estimate how long dry soybeans soak.",
        _soak,
        options=(
            Option("--temperature", "of the water and the room: 20, 68F", "HEAT", required=True),
            Option("--beans", "their dry weight, to tell whether they are through", "WEIGHT"),
            Option("--soaked", "their drained weight", "WEIGHT"),
            JSON,
        ),
    ),
)
