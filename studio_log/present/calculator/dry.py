"""The sum of drying: how long cloth takes in a room, and how the humidity bears on it."""

from typing import Final

from studio_log.domain.drying_time import (
    MOST_HUMIDITY,
    DryingEstimate,
    Hanging,
    drying_time,
)
from studio_log.domain.number_text import plain
from studio_log.domain.room_text import Room
from studio_log.domain.spin_text import read_spun
from studio_log.language.words import tr, tr_later
from studio_log.present.calculator.parts import Answer, Calculation, Curve, Input, Values, number
from studio_log.present.words import span
from studio_log.science.drying import FIBRES

DRIEST: Final = 20
DAMPEST: Final = 90
HOUR_S: Final = 3600.0


def _estimate(values: Values, humidity: float) -> DryingEstimate:
    room = Room(number(values, "celsius"), humidity, number(values, "air"))
    hanging = Hanging(
        gsm=number(values, "gsm"),
        spun=read_spun(str(values["spun"])),
        room=room,
        sides=int(str(values["sides"])),
        fibre=str(values["fibre"]),
    )
    return drying_time(hanging)


def _dry(values: Values) -> Answer:
    found = _estimate(values, number(values, "humidity"))
    time = found.time.as_said
    return Answer(
        tr("about {span}", span=span(time.aim)),
        (
            tr("Between {earliest} and {latest}.",
               earliest=span(time.earliest), latest=span(time.latest)),
            time.why,
        ),
        tr("A heat balance of the wet surface; see “Sources”. Dry is observed, not assumed."),
    )  # fmt: skip


def _curve(values: Values) -> Curve:
    xs = tuple(float(x) for x in range(DRIEST, DAMPEST + 1, 2))
    found = [_estimate(values, x).time for x in xs]
    here = min(number(values, "humidity"), MOST_HUMIDITY)
    aim = _estimate(values, here).time.aim.total_seconds() / HOUR_S
    return Curve(
        xs,
        tuple(one.earliest.total_seconds() / HOUR_S for one in found),
        tuple(one.aim.total_seconds() / HOUR_S for one in found),
        tuple(one.latest.total_seconds() / HOUR_S for one in found),
        tr("humidity of the room, %"),
        tr("hours to dry"),
        (here, aim) if DRIEST <= here <= DAMPEST else None,
        tr("Hours to dry over the humidity of the room; at {humidity} % about {hours}.",
           humidity=plain(here, 0), hours=plain(aim, 1)),
    )  # fmt: skip


CALCULATIONS: Final = (
    Calculation(
        "dry", tr_later("How long cloth dries"),
        tr_later("Hung free in a room, from how it was spun and what the air is like."),
        (
            Input("gsm", tr_later("Weight by &area"), "gsm", "150 g/m²",
                  tr_later("Of the dry cloth: 150 g/m², 4.5 oz/yd², 16 momme.")),
            Input("spun", tr_later("&Spun"), "spun", "1200 rpm",
                  tr_later("hand, drip, 1200 rpm, or water weighed: 60 %.")),
            Input("celsius", tr_later("&Heat of the room"), "celsius", "20 °C",
                  tr_later("Near the cloth, from 0 to 45 °C.")),
            Input("humidity", tr_later("H&umidity"), "humidity", "55 %",
                  tr_later("Near the cloth, not at the window.")),
            Input("air", tr_later("&Moving air"), "air", "room",
                  tr_later("still, room, fan, or metres a second.")),
            Input("sides", tr_later("Si&des in the air"), "choice", "2",
                  tr_later("One where it lies or hangs on a wall."),
                  (("2", tr_later("both sides")), ("1", tr_later("one side")))),
            Input("fibre", tr_later("&Fibre"), "choice", "cotton",
                  tr_later("How much water it keeps when it feels dry."),
                  tuple((name, name) for name in FIBRES)),
        ),
        _dry, _curve,
    ),
)  # fmt: skip
