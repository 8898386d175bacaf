"""The command that estimates how long cloth takes to dry."""

from datetime import UTC, timedelta
from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import JSON, SURE, Form, Option, UsageError
from studio_log.cli.plain import plain
from studio_log.cli.turn import Turn
from studio_log.domain.cloth_text import read_gsm
from studio_log.domain.drying_factor import LEAST_LOGGED, Factor
from studio_log.domain.drying_time import DryingEstimate, Hanging, drying_time
from studio_log.domain.errors import Refusal
from studio_log.domain.room_air import LONGEST_GAP, damp_warnings, mean_air
from studio_log.domain.room_text import ROOM_AIR_M_S, Room, read_air, read_celsius, read_humidity
from studio_log.domain.sensor_file import LARGEST, read_sensor
from studio_log.domain.spin_text import read_spun
from studio_log.present.words import span
from studio_log.science.drying import FIBRES
from studio_log.services.commands import ChangeSettings
from studio_log.services.drying_reads import DryingFactorFor
from studio_log.services.method_file import small_file


def _dry(turn: Turn) -> int:
    given = turn.values
    room = _room(turn)
    hanging = Hanging(
        gsm=read_gsm(given["gsm"]),
        spun=read_spun(given["spun"]),
        room=room,
        sides=int(given["sides"] or 2),
        fibre=given["fibre"] or "cotton",
        outdoors=given["outdoors"],
    )
    drying_time(hanging)  # what cannot be worked out is refused before anything is kept
    found = drying_time(hanging, _factor(turn))
    warned = damp_warnings(room.humidity, timedelta(0))
    if given["json"]:
        turn.say_json({**_fields(found, room), "warnings": plain(warned)})
    else:
        time = found.time.as_said
        said = f"between {span(time.earliest)} and {span(time.latest)}"
        lines = [f"Dry after about {span(time.aim)}, {said}.", time.why]
        turn.say("\n".join([*lines, *(one.words for one in warned)]))
    return 0


def _room(turn: Turn) -> Room:
    """Give the air from what was typed, or from the last hours of a sensor's file."""
    given = turn.values
    typed = given["temperature"], given["humidity"]
    air = ROOM_AIR_M_S if given["air"] is None else read_air(given["air"])
    if given["room"] is None:
        if None in typed:
            raise UsageError("The room is told by --temperature and --humidity, or by --room")
        return Room(read_celsius(typed[0]), read_humidity(typed[1]), air)
    if typed != (None, None):
        raise UsageError("Give --room, or --temperature and --humidity; not both")
    path = values.file_path(given["room"], "The name of the sensor's file")
    log = read_sensor(
        small_file(path, LARGEST),
        name=path.name,
        zone=str(UTC),  # only how long ago counts here
        day_first=None if given["dates"] is None else given["dates"] == "day",
        fahrenheit=None if given["degrees"] is None else given["degrees"] == "f",
    )
    last = log.readings[-1].at
    mean = mean_air(log.readings, last - LONGEST_GAP, last + timedelta(minutes=1))
    if mean is None:  # the last reading stands for its own minute
        raise Refusal(f"{path.name} has no readings of its last hours. Nothing was changed.")
    turn.tell(f"{path.name}: {log.understood}")
    return Room(mean.celsius, mean.humidity, air)


def _factor(turn: Turn) -> Factor | None:
    """Give the studio's own factor where it was asked for; from a moment on, if one was named."""
    since = turn.moment("since")
    if since is not None and since > turn.studio.clock.now():
        raise Refusal("--since lies ahead. Nothing was changed. Give a time in the past.")
    if since is not None:
        turn.do(ChangeSettings({"dryings_since": since.isoformat()}))
    if since is None and not turn.values["learnt"]:
        return None
    factor: Factor | None = turn.studio.ask(DryingFactorFor())
    if factor is None:
        turn.tell(
            f"Fewer than {LEAST_LOGGED} dryings are logged with room and wet weight: no factor "
            "of the studio's own yet."
        )
    return factor


def _fields(found: DryingEstimate, room: Room) -> dict[str, Any]:
    return {
        **plain(found.time),
        "constant": plain(found.constant),
        "surface_c": round(found.surface_c, 3),
        "rate_g_m2_h": round(found.rate, 3),
        "temperature_c": round(room.celsius, 2),
        "humidity": round(room.humidity, 2),
        "air_m_s": room.air_m_s,
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
            Option("--temperature", "of the room: 20, 68F", "HEAT"),
            Option("--humidity", "of the room near the cloth: 50", "PERCENT"),
            Option("--room", "a room sensor's CSV, whose last 3 hours count", "FILE"),
            Option("--dates", "what comes first in its dates", "FIRST", choices=("day", "month")),
            Option("--degrees", "its temperatures, where it does not say", "SCALE",
                   choices=("c", "f")),
            Option("--air", "moving air: 0.1 m/s, still, room, fan; room unless said", "SPEED"),
            Option("--sides", "sides that meet the air; 2 unless said", "N", choices=("1", "2")),
            Option("--fibre", "cotton unless said", "FIBRE", choices=tuple(FIBRES)),
            Option("--outdoors", "on a line in the open: a wider range; sun is not counted"),
            Option("--learnt", "bend it to the dryings that this studio has logged"),
            Option("--since", "learn only from dryings after this moment, and keep that", "TIME"),
            SURE,
            JSON,
        ),
    ),
)  # fmt: skip
