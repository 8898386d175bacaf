"""When cloth is dry: the model's worked example, its range, and the studio's own factor."""

import math
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.drying_factor import LEAST_SPREAD, Dried, Factor, learn
from studio_log.domain.drying_time import Hanging, drying_time, fibre_of, worked_out
from studio_log.domain.errors import Refusal
from studio_log.domain.estimates import Estimate, rough
from studio_log.domain.room_text import Room
from studio_log.domain.spin_text import read_spun

SPUN = read_spun("60%")
ROOM = Room(20, 50, 0.1)
CLOTH = Hanging(150, SPUN, ROOM)
DAY = datetime(2026, 6, 9, tzinfo=UTC)
HOUR = timedelta(hours=1)


def test_the_worked_example_and_its_range() -> None:
    """20 °C, 50 %, 0.1 m/s, 150 g/m², 60 %: 1.31 h, Ts 16.10, E 46.4; 0.6 to 1.6 indoors."""
    found = drying_time(CLOTH)
    assert found.time.aim / HOUR == pytest.approx(1.314, rel=0.01)
    assert found.time.earliest / HOUR == pytest.approx(1.314 * 0.6, rel=0.01)
    assert found.time.latest / HOUR == pytest.approx(1.314 * 1.6, rel=0.01)
    assert found.constant / HOUR == pytest.approx(0.517, rel=0.01)
    assert found.surface_c == pytest.approx(16.10, abs=0.05)
    assert found.rate == pytest.approx(46.4, rel=0.01)
    assert "A calculation" in found.time.why


def test_one_side_takes_twice_as_long_and_the_open_has_a_wider_range() -> None:
    one = drying_time(Hanging(150, SPUN, ROOM, sides=1)).time
    assert one.aim / HOUR == pytest.approx(2.63, rel=0.01)
    out = drying_time(Hanging(150, SPUN, ROOM, outdoors=True)).time
    assert (out.latest / out.aim, out.earliest / out.aim) == pytest.approx((2.0, 0.4), rel=1e-3)


def test_what_is_not_known_of_the_spin_widens_the_range() -> None:
    wrung = drying_time(Hanging(150, read_spun("hand"), ROOM)).time
    weighed = drying_time(Hanging(150, read_spun("120%"), ROOM)).time
    assert wrung.aim == weighed.aim
    assert wrung.earliest < weighed.earliest
    assert wrung.latest > weighed.latest


@pytest.mark.parametrize(
    ("name", "fibre"), [("linen", "linen"), ("organic cotton", "cotton"), ("Wool mix", "wool"),
                        ("ramie", "cotton"), ("", "cotton")],
)  # fmt: skip
def test_a_fibre_that_is_not_known_dries_as_cotton(name: str, fibre: str) -> None:
    assert fibre_of(name) == fibre


@pytest.mark.parametrize(
    ("room", "words"),
    [(Room(46, 50, 0.1), "rooms of 0 to 45"), (Room(-1, 50, 0.1), "rooms of 0 to 45"),
     (Room(20, 98, 0.1), "is full at 98 %"), (Room(20, 101, 0.1), "is full"),
     (Room(20, 50, 11), "up to 10 m/s"), (Room(math.nan, 50, 0.1), "rooms of"),
     (Room(20, math.nan, 0.1), "is full"), (Room(20, 50, math.nan), "up to 10")],
)  # fmt: skip
def test_a_room_the_model_does_not_know_is_refused(room: Room, words: str) -> None:
    with pytest.raises(Refusal, match=words):
        drying_time(Hanging(150, SPUN, room))


@pytest.mark.parametrize(
    "room", [Room(0, 50, 0.1), Room(45, 50, 0), Room(20, 97, 10), Room(20, 0, 0)]
)
def test_the_edges_of_what_it_knows_count_as_within(room: Room) -> None:
    assert drying_time(Hanging(150, SPUN, room)).time.aim > timedelta(0)


@pytest.mark.parametrize(("gsm", "sides"), [(0, 2), (math.nan, 2), (150, 3)])
def test_cloth_that_cannot_be_is_refused(gsm: float, sides: int) -> None:
    with pytest.raises(Refusal, match="one side or two"):
        drying_time(Hanging(gsm, SPUN, ROOM, sides=sides))


@given(st.floats(0, 45), st.floats(0, 97), st.floats(0, 10), st.floats(20, 800),
       st.sampled_from(["hand", "drip", "1000rpm", "40%", "15%"]))  # fmt: skip
def test_a_range_is_in_order_and_above_nought(
    celsius: float, humidity: float, air: float, gsm: float, how: str
) -> None:
    time = drying_time(Hanging(gsm, read_spun(how), Room(celsius, humidity, air))).time
    assert timedelta(0) <= time.earliest <= time.aim <= time.latest < timedelta(days=400)
    said = time.as_said
    assert said.earliest <= time.earliest
    assert said.latest >= time.latest


@pytest.mark.parametrize(
    ("minutes", "said"), [(43, 45), (79, 75), (5 * 60 + 20, 5 * 60 + 30), (14 * 60 + 20, 14 * 60)]
)
def test_an_estimate_is_said_only_as_near_as_it_is(minutes: int, said: int) -> None:
    assert rough(timedelta(minutes=minutes)) == timedelta(minutes=said)


# -- the studio's own factor ---------------------------------------------------------------


def dryings(*ratios: float, start: datetime = DAY) -> list[Dried]:
    return [Dried(start + timedelta(days=n), HOUR, HOUR * ratio) for n, ratio in enumerate(ratios)]


def test_fewer_than_five_dryings_teach_nothing() -> None:
    assert learn(dryings(1.3, 1.4, 1.3, 1.5)) is None


def test_the_factor_is_the_geometric_mean_with_its_spread() -> None:
    """Five ratios 1, 2, 4, 2, 1: mean 16^(1/5), s of ln 0.580 (computed by hand)."""
    factor = learn(dryings(1, 2, 4, 2, 1))
    assert factor is not None
    assert factor.mean == pytest.approx(16 ** (1 / 5))
    logs = [0.0, math.log(2), math.log(4), math.log(2), 0.0]
    mean = sum(logs) / 5
    s = math.sqrt(sum((one - mean) ** 2 for one in logs) / 4)
    assert s == pytest.approx(0.580, abs=5e-4)
    assert factor.spread == pytest.approx(math.exp(2 * s * math.sqrt(1.2)))
    assert factor.count == 5
    assert factor.words.startswith("5 dryings logged here took 1.74 times")


def test_dryings_all_alike_still_leave_some_room() -> None:
    factor = learn(dryings(1.5, 1.5, 1.5, 1.5, 1.5))
    assert factor is not None
    assert (factor.mean, factor.spread) == (pytest.approx(1.5), LEAST_SPREAD)


def test_it_is_reset_by_counting_from_a_day_on() -> None:
    every = dryings(*[3.0] * 6) + dryings(*[1.0] * 5, start=DAY + timedelta(days=30))
    factor = learn(every, since=DAY + timedelta(days=30))
    assert factor is not None
    assert factor.mean == pytest.approx(1.0)
    assert learn(every, since=DAY + timedelta(days=31)) is None


def test_only_the_latest_forty_count_whatever_their_order() -> None:
    every = dryings(*[9.0] * 20, *[2.0] * 40)
    factor = learn(reversed(every))
    assert factor is not None
    assert (factor.mean, factor.count) == (pytest.approx(2.0), 40)


def test_a_drying_that_nobody_watched_is_left_out() -> None:
    wild = [Dried(DAY, HOUR, timedelta(days=9)), Dried(DAY, HOUR, timedelta(0)),
            Dried(DAY, timedelta(0), HOUR)]  # fmt: skip
    assert learn(dryings(1, 1, 1, 1) + wild) is None


def test_with_a_factor_the_estimate_is_the_studios_own() -> None:
    plain = worked_out(CLOTH)
    found = drying_time(CLOTH, Factor(1.5, 1.2, 7))
    assert found.time.aim / plain == pytest.approx(1.5, rel=1e-3)
    assert found.time.latest / found.time.aim == pytest.approx(1.2, rel=1e-3)
    assert found.time.aim / found.time.earliest == pytest.approx(1.2, rel=1e-3)
    assert "7 dryings logged here" in found.time.why


@given(st.lists(st.floats(0.1, 10), min_size=5, max_size=40), st.floats(0.5, 2))
def test_the_factor_follows_the_dryings(ratios: list[float], times: float) -> None:
    one, other = learn(dryings(*ratios)), learn(dryings(*(times * r for r in ratios)))
    assert one is not None
    assert other is not None
    assert other.mean == pytest.approx(one.mean * times, rel=1e-3)
    assert min(ratios) * 0.99 <= one.mean <= max(ratios) * 1.01


def test_an_estimate_keeps_what_it_stands_on_when_it_is_said() -> None:
    assert Estimate(HOUR, HOUR, HOUR, "why").as_said == Estimate(HOUR, HOUR, HOUR, "why")
