"""When cloth will be dry: the heat balance for its room, bent to what this studio has seen."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.domain.drying_factor import Factor
from studio_log.domain.errors import Refusal
from studio_log.domain.estimates import Estimate, hours
from studio_log.domain.number_text import plain
from studio_log.domain.room_text import Room
from studio_log.domain.spin_text import Spun
from studio_log.language.words import tr, tr_later
from studio_log.science import drying
from studio_log.science.drying import Evaporation, WetCloth, drying_hours, evaporation, regain_of
from studio_log.science.psychrometrics import Air

ROOMS_C: Final = (0.0, 45.0)
MOST_HUMIDITY: Final = 97.0
"""Above this the air takes so little that nothing can be said."""
MOST_AIR_M_S: Final = 10.0
FULL_AIR: Final = "Nothing dries in it: open up, warm the room or draw the water out of its air."


@dataclass(frozen=True)
class Hanging:
    """Cloth as it hangs: dry g/m², how it was spun, its room, sides that meet the air."""

    gsm: float
    spun: Spun
    room: Room
    sides: int = 2
    fibre: str = "cotton"
    outdoors: bool = False


@dataclass(frozen=True)
class DryingEstimate:
    """When the cloth will be dry, and what its wet surface does meanwhile.

    `surface_c` is its temperature in °C, `rate` what one side gives off in g/m²h, `constant`
    how long that rate lasts. `factor` is the studio's own, None where too little was logged.
    """

    time: Estimate
    constant: timedelta
    surface_c: float
    rate: float
    factor: Factor | None


def drying_time(hanging: Hanging, factor: Factor | None = None) -> DryingEstimate:
    """Give how long the cloth takes to dry, with its range.

    Without a factor of the studio's own the range is that of the model and of the spin. Refuses a
    room outside 0 to 45 °C, above 97 % or 10 m/s, and cloth that cannot be.
    """
    _check(hanging)
    room = hanging.room
    wet = evaporation(Air(room.celsius, room.humidity), room.air_m_s)
    held = hanging.spun.held
    likely = drying_hours(_cloth(hanging, held.likely), wet.rate)
    if factor is None:
        low, high = drying.OUTDOORS if hanging.outdoors else drying.INDOORS
        least = drying_hours(_cloth(hanging, held.least), wet.rate).total * low
        most = drying_hours(_cloth(hanging, held.most), wet.rate).total * high
        aim = likely.total
    else:  # what was logged has the spin's own spread in it
        aim = likely.total * factor.mean
        least, most = aim / factor.spread, aim * factor.spread
    return DryingEstimate(
        time=Estimate(hours(least), hours(aim), hours(most), _why(hanging, wet, factor)),
        constant=hours(likely.constant),
        surface_c=wet.surface_c,
        rate=wet.rate,
        factor=factor,
    )


def fibre_of(name: str) -> str:
    """Give the fibre of the model that a name stands for; cotton where it is not known."""
    words = name.casefold().split()
    return next((word for word in words if word in drying.FIBRES), "cotton")


def worked_out(hanging: Hanging) -> timedelta:
    """Give the model's own time, without range or factor: what logged dryings are held against."""
    return drying_time(hanging).time.aim


def _cloth(hanging: Hanging, water: float) -> WetCloth:
    fibre = fibre_of(hanging.fibre)
    regain = regain_of(fibre, hanging.room.humidity)
    critical = drying.FIBRES[fibre].critical
    return WetCloth(hanging.gsm, water, critical, regain, hanging.sides)


def _check(hanging: Hanging) -> None:
    room = hanging.room
    low, high = ROOMS_C
    if not low <= room.celsius <= high:
        raise Refusal(
            f"Drying is worked out for rooms of {low:g} to {high:g} °C, not {room.celsius:g}. "
            "Nothing was changed."
        )
    if not 0 <= room.humidity <= MOST_HUMIDITY:
        raise Refusal(f"The air of the room is full at {room.humidity:g} %. {FULL_AIR}")
    if not 0 <= room.air_m_s <= MOST_AIR_M_S:
        raise Refusal(
            f"Drying is worked out for air of up to {MOST_AIR_M_S:g} m/s, not {room.air_m_s:g}. "
            "Nothing was changed."
        )
    if hanging.sides not in (1, 2) or not hanging.gsm > 0:
        raise Refusal("Cloth weighs something and dries on one side or two. Nothing was changed.")


def _why(hanging: Hanging, wet: Evaporation, factor: Factor | None) -> str:
    room = hanging.room
    said = tr(
        "{gsm} g/m² {fibre}, {spun}, at {celsius} °C and {humidity} % with air of {air} m/s: each "
        "of {sides} sides gives off {rate} g/m² an hour at {surface} °C.",
        gsm=plain(hanging.gsm, 0),
        fibre=fibre_of(hanging.fibre),
        spun=hanging.spun.words,
        celsius=plain(room.celsius, 1),
        humidity=plain(room.humidity, 0),
        air=plain(room.air_m_s, 2),
        sides=hanging.sides,
        rate=plain(wet.rate, 0),
        surface=plain(wet.surface_c, 1),
    )
    return f"{said} {factor.words if factor is not None else tr(_NO_FACTOR)}"


_NO_FACTOR: Final = tr_later(
    "A calculation: real cloth takes about half to one and a half times as long. "
    "Log dryings with the room's heat and humidity, and your own factor is learnt."
)
