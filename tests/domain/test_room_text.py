"""Rooms and cloth as they are typed; °F and miles by NIST SP 811 App. B."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.cloth_text import read_gsm, read_metres, read_square_metres
from studio_log.domain.errors import Question, Refusal
from studio_log.domain.room_text import read_air, read_celsius, read_humidity
from studio_log.domain.spin_text import read_spun
from studio_log.science.water_held import DRIPPING, WRUNG


@pytest.mark.parametrize(
    ("text", "celsius"),
    [("20", 20), ("20C", 20), ("20 °C", 20), ("21,5", 21.5), ("68 F", 20), ("68°F", 20),
     ("-5 °C", -5), ("−5", -5), ("23 F", -5), ("160 F", 71.1111), ("110 fahrenheit", 43.3333),
     ("90 °C", 90), ("20 1/2 C", 20.5), ("45", 45), ("+7", 7)],
)  # fmt: skip
def test_heat_is_read(text: str, celsius: float) -> None:
    assert read_celsius(text) == pytest.approx(celsius, abs=1e-4)


@pytest.mark.parametrize("text", ["68", "46", "160", "1,200 C"])
def test_a_doubtful_heat_is_asked_about(text: str) -> None:
    with pytest.raises(Question, match=r"68|46|160|1200"):
        read_celsius(text)


@pytest.mark.parametrize("text", ["", "warm", "20 K", "nan", "1e3 C", "-60 C", "500 C", "20 C C"])
def test_what_is_no_heat_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was changed") as refused:
        read_celsius(text)
    assert not isinstance(refused.value, Question)


@pytest.mark.parametrize(
    ("text", "percent"), [("50", 50), ("65 %", 65), ("64,5%", 64.5), ("50 % RH", 50), ("0", 0)]
)
def test_humidity_is_read(text: str, percent: float) -> None:
    assert read_humidity(text) == percent


@pytest.mark.parametrize("text", ["", "-1", "101", "damp", "50 g", "nan"])
def test_what_is_no_humidity_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was changed"):
        read_humidity(text)


@pytest.mark.parametrize(
    ("text", "speed"),
    [("0.1", 0.1), ("0,5 m/s", 0.5), ("3.6 km/h", 1), ("1 mph", 0.44704), ("60 ft/min", 0.3048),
     ("still", 0), ("Room", 0.1), ("fan", 1)],
)  # fmt: skip
def test_moving_air_is_read(text: str, speed: float) -> None:
    assert read_air(text) == pytest.approx(speed)


@pytest.mark.parametrize("text", ["", "-1", "windy", "50", "1 knot", "inf"])
def test_what_is_no_moving_air_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was changed"):
        read_air(text)


@pytest.mark.parametrize(
    ("text", "gsm"),
    [("150", 150), ("150 gsm", 150), ("150 g/m²", 150),
     ("4.5 oz/yd2", 152.5759), ("16 momme", 69.439), ("½ lb/yd2", 271.246)],
)  # fmt: skip
def test_the_weight_of_cloth_is_read(text: str, gsm: float) -> None:
    """oz/yd² 33.9057 and momme 4.33993 g/m² by definition (NIST Handbook 44)."""
    assert read_gsm(text) == pytest.approx(gsm, rel=1e-4)


def test_a_running_weight_goes_by_the_width() -> None:
    """UK tailoring ounces: per running yard of 58 in (London Lounge forum); computed."""
    width = read_metres("58 in")
    assert read_gsm("12 oz per running yard", width_m=width) == pytest.approx(252.54, abs=0.05)
    with pytest.raises(Refusal, match="needs the width"):
        read_gsm("12 oz per running yard")
    with pytest.raises(Question, match="square yard or per running yard"):
        read_gsm("12 oz/yd", width_m=width)


@pytest.mark.parametrize("text", ["", "heavy", "150 g", "150 g/m2 linen", "0", "4", "9999", "-150"])
def test_what_is_no_weight_of_cloth_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was"):
        read_gsm(text)


@pytest.mark.parametrize(
    ("text", "metres"),
    [("1.5 m", 1.5), ("45 in", 1.143), ("2 1/2 yd", 2.286), ("150cm", 1.5), ("3 ft", 0.9144)],
)
def test_a_length_is_read(text: str, metres: float) -> None:
    assert read_metres(text) == metres


@pytest.mark.parametrize(
    ("text", "square"),
    [("2.5 m2", 2.5), ("3 sq yd", 2.50838208), ("180 x 45 cm", 0.81), ("1 m x 45 in", 1.143),
     ("180x45cm", 0.81), ("10 sq ft", 0.9290304), ("100 cm²", 0.01)],
)  # fmt: skip
def test_an_area_is_read(text: str, square: float) -> None:
    assert read_square_metres(text) == pytest.approx(square, rel=1e-12)


@pytest.mark.parametrize("text", ["", "5", "180 x 45", "1 m", "x", "1 m x", "0 m2", "1x1x1m"])
def test_what_is_no_length_or_area_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was"):
        read_square_metres(text)
    if text != "1 m":
        with pytest.raises(Refusal, match="Nothing was"):
            read_metres(text)


@pytest.mark.parametrize("text", ["hand", "Wrung", "by hand"])
def test_wringing_is_read(text: str) -> None:
    assert read_spun(text).held == WRUNG


def test_spinning_and_weighing_are_read() -> None:
    """52 % at 1200 rpm (printed for household machines); a weighed share is taken as it is."""
    assert read_spun("1200rpm").held.likely == pytest.approx(0.52)
    assert read_spun("1200 rpm").words == "spun at 1200 rpm"
    assert read_spun("60%").held.most == pytest.approx(0.60)
    assert read_spun("drip").held == DRIPPING


@pytest.mark.parametrize("text", ["", "60", "fast", "100 rpm", "9000rpm", "600%", "0%", "-60%"])
def test_what_is_no_way_of_spinning_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was changed"):
        read_spun(text)


@given(st.text(max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    for read in (read_celsius, read_humidity, read_air, read_gsm, read_metres, read_square_metres):
        with suppress(Refusal):  # anything else that is raised fails the test
            assert read(text) > -41
    with suppress(Refusal):
        assert read_spun(text).held.likely > 0


@given(st.integers(-40, 150))
def test_heat_in_both_scales_is_the_same(celsius: int) -> None:
    fahrenheit = celsius * 9 / 5 + 32
    assert read_celsius(f"{fahrenheit:g} F") == pytest.approx(read_celsius(f"{celsius} C"))
