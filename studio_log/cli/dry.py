"""The command that estimates how long cloth takes to dry."""

from typing import Any, Final

from studio_log.cli.form import JSON, Form, Option
from studio_log.cli.plain import plain
from studio_log.cli.turn import Turn
from studio_log.domain.cloth_text import read_gsm
from studio_log.domain.drying_time import DryingEstimate, Hanging, drying_time
from studio_log.domain.room_text import Room, read_air, read_celsius, read_humidity
from studio_log.domain.spin_text import read_spun
from studio_log.present.words import span
from studio_log.science.drying import FIBRES

ROOM_AIR: Final = "room"
"""Where nobody says how the air moves: as in a room with people in it."""


def _dry(turn: Turn) -> int:
    given = turn.values
    room = Room(
        read_celsius(given["temperature"]),
        read_humidity(given["humidity"]),
        read_air(given["air"] or ROOM_AIR),
    )
    hanging = Hanging(
        gsm=read_gsm(given["gsm"]),
        spun=read_spun(given["spun"]),
        room=room,
        sides=int(given["sides"] or 2),
        fibre=given["fibre"] or "cotton",
        outdoors=given["outdoors"],
    )
    found = drying_time(hanging)
    if given["json"]:
        turn.say_json(_fields(found))
    else:
        time = found.time.as_said
        turn.say(
            f"Dry after about {span(time.aim)}, between {span(time.earliest)} and "
            f"{span(time.latest)}.\n{time.why}"
        )
    return 0


def _fields(found: DryingEstimate) -> dict[str, Any]:
    return {
        **plain(found.time),
        "constant": plain(found.constant),
        "surface_c": round(found.surface_c, 3),
        "rate_g_m2_h": round(found.rate, 3),
        "factor": plain(found.factor),
    }


FORMS: Final = (
    Form(
        ("dry",),
        "Estimate how long wet cloth takes to dry.",
        _dry,
        options=(
            Option("--gsm", "weight of the dry cloth: 150, 4.5oz/yd2", "WEIGHT", required=True),
            Option("--spun", "hand, drip, 1200rpm, or weighed: 60%", "HOW", required=True),
            Option("--temperature", "of the room: 20, 68F", "HEAT", required=True),
            Option("--humidity", "of the room near the cloth: 50", "PERCENT", required=True),
            Option("--air", "moving air: 0.1 m/s, still, room, fan; room unless said", "SPEED"),
            Option("--sides", "sides that meet the air; 2 unless said", "N", choices=("1", "2")),
            Option("--fibre", "cotton unless said", "FIBRE", choices=tuple(FIBRES)),
            Option("--outdoors", "on a line in the open: a wider range; sun is not counted"),
            JSON,
        ),
    ),
)
