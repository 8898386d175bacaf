"""A room sensor's file: the ways makers write CSV, and what nobody meant."""

from contextlib import suppress
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.sensor_file import LARGEST, RoomLog, RoomReading, read_sensor
from studio_log.domain.sensor_times import reader_of

ZONE = "Europe/London"
NOON = datetime(2026, 6, 9, 11, 0, tzinfo=UTC)
"""12:00 on a London wall in June (BST, UTC+1)."""
TWO = (RoomReading(NOON, 21.5, 60.0), RoomReading(NOON + timedelta(minutes=10), 21.0, 62.0))


def read(text: str | bytes, **kw: bool) -> RoomLog:
    data = text if isinstance(text, bytes) else text.encode()
    return read_sensor(data, name="room.csv", zone=ZONE, **kw)


@pytest.mark.parametrize(
    "text",
    [
        "Time,Temperature (°C),Humidity (%)\n2026-06-09 12:00,21.5,60\n2026-06-09 12:10,21.0,62\n",
        "time;temp;rh\n09.06.2026 12:00;21,5;60\n09.06.2026 12:10;21,0;62\n",
        "Timestamp\tTemp\tRH\n2026/06/09 12:00:00\t21.5\t60\n2026/06/09 12:10:00\t21\t62",
        "timestamp,temperature_c,humidity\n2026-06-09T11:00:00Z,21.5,60\n2026-06-09T13:10+02:00,21,62",
        "Date,Clock time,Temp °F,Humidity\n2026-06-09,12:00,70.7,60\n2026-06-09,12:10,69.8,62\n",
        ('Zeit;Temperatur [°C];Luftfeuchte [%]\r\n"9.6.2026 12:00";"21,5";"60"\r\n'
        '"9.6.2026 12:10";"21,0";"62"\r\n'),
        "epoch time,temp,hum\n1781002800,21.5,60\n1781003400000,21,62\n",
        ("Sensor 4, bench\nfirmware,1.2\n\ntime,temp,humidity,dew point temp\n"
        "06/09/26 12:00 PM,21.5 °C,60 %,13\n06/09/26 12:10 PM,21.0 °C,62 %,13\n6/19/26,x,y,z"),
        ("Dew point temperature,Temperature,Humidity,Time\n13,21.5,60,2026-06-09 12:00\n"
        "13,21.0,62,2026-06-09 12:10\n"),
    ],
    ids=["commas", "german", "tabs", "utc", "two-columns", "quoted", "epoch", "head", "dew"],
)  # fmt: skip
def test_a_file_is_read_as_its_maker_writes_it(text: str) -> None:
    found = read(text)
    assert [one.at for one in found.readings] == [one.at for one in TWO]
    for one, other in zip(found.readings, TWO, strict=True):
        assert one.celsius == pytest.approx(other.celsius)
        assert one.humidity == other.humidity


def test_other_alphabets_of_bytes_are_read() -> None:
    text = "time;temp °C;humidity\n2026-06-09 12:00;21,5;60\n2026-06-09 12:10;21,0;62\n"
    for data in (text.encode("utf-16"), text.encode("cp1252"), b"\xef\xbb\xbf" + text.encode()):
        assert read(data).readings == TWO


def test_lines_that_cannot_be_read_are_left_out_counted_and_named() -> None:
    good = "\n".join(f"2026-06-09 12:{n:02},21,60" for n in range(20))
    bad = "2026-06-09 13:00,--,60\n2026-06-09 13:10,21,150\n2026-13-40 13:20,21,60\n,,\nnonsense\n"
    found = read(f"time,temp,humidity\n{good}\n{bad}")
    assert len(found.readings) == 20
    assert found.left_out == 5
    assert "left out: 22, 23, 24…" in found.understood


def test_the_edges_of_what_a_room_can_be_count_as_within() -> None:
    lines = ("2026-06-09 12:00,-40,0", "2026-06-09 12:10,60,100", "2026-06-09 12:20,-41,50",
             "2026-06-09 12:30,20,100.1")  # fmt: skip
    found = read("\n".join(["time,temp °C,humidity", *lines]))
    assert [one.celsius for one in found.readings] == [-40, 60]
    assert found.left_out == 2, "as many as were read: still a sensor's file"
    assert found.understood.endswith("left out: 4, 5")


def test_readings_come_in_order_and_an_instant_once() -> None:
    found = read(
        "time,temp,rh\n2026-06-09 12:10,1,62\n2026-06-09 12:00,21.5,60\n2026-06-09 12:10,21,62"
    )
    assert found.readings == TWO


def test_the_hour_that_comes_twice_is_the_first_and_the_one_that_never_comes_is_kept() -> None:
    """RFC 5545, 3.3.5; London, 29 March and 25 October 2026."""
    found = read("time,temp,rh\n2026-03-29 01:30,20,50\n2026-10-25 01:30,20,50\n")
    assert [one.at for one in found.readings] == [
        datetime(2026, 3, 29, 1, 30, tzinfo=UTC),
        datetime(2026, 10, 25, 0, 30, tzinfo=UTC),
    ]


def test_day_and_month_are_asked_about_only_where_they_may_change_places() -> None:
    head = "time,temp,rh\n"
    with pytest.raises(Question, match="06/09/2026"):
        read(f"{head}06/09/2026 12:00,20,50\n")
    for twelfth in ("12/06/2026", "06/12/2026", "12/11/2026"):
        with pytest.raises(Question, match=twelfth):
            read(f"{head}{twelfth} 12:00,20,50\n")
    assert read(f"{head}06/06/2026 12:00,20,50\n").readings[0].at.day == 6
    assert read(f"{head}06/09/2026 12:00,20,50\n", day_first=False).readings[0].at == NOON
    assert read(f"{head}09/06/2026 12:00,20,50\n", day_first=True).readings[0].at == NOON
    assert read(f"{head}09/06/2026 12:00,20,50\n13/06/2026 12:00,20,50").readings[0].at == NOON
    assert read(f"{head}06/09/2026 12:00,20,50\n06/13/2026 12:00,20,50").readings[0].at == NOON


def test_heat_without_a_scale_is_asked_about_where_no_bench_is_so_warm() -> None:
    text = "time,temp,rh\n2026-06-09 12:00,70.7,60\n2026-06-09 12:10,69.8,62\n"
    with pytest.raises(Question, match="in °F"):
        read(text)
    assert read(text, fahrenheit=True).readings[0].celsius == pytest.approx(21.5)
    with pytest.raises(Refusal, match="cannot be read"):
        read(text, fahrenheit=False)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "no text"), (b"\x00\x01\x02", "no text"), (b"\x89PNG\r\n\x1a\n\x00", "no text"),
        (b"\xff\xfe\x00", "no text"), (b"a,b\n1,2\n", "names its columns"),
        (b"time,temp,humidity\n", "holds no readings"),
        (b"time,temp,humidity\nx,y,z\n", "cannot be read"),
        (b"time,temp,humidity\n2026-06-09 12:00,20,50\nx\ny\nz\n", "Most lines"),
        (b"time,temp,humidity\n" + b"," * 5_000, "signs"),
        (b"x" * (LARGEST + 1), "larger than 20 MB"),
        (b"\n" * 300_001 + b"x", "lines"),
        (b'time,temp,humidity\n"' + b"a\n" * 200_000, "runs on"),
        (b"time,temp\n2026-06-09 12:00,20\n", "names its columns"),
    ],
)  # fmt: skip
def test_what_is_no_sensors_file_is_refused_in_a_sentence(data: bytes, words: str) -> None:
    with pytest.raises(Refusal, match=words) as refused:
        read(data)
    assert "Nothing was kept" in str(refused.value)


@pytest.mark.parametrize(
    ("text", "hour"),
    [("2026-01-09 12:05 AM", 0), ("2026-01-09 12:05 PM", 12), ("2026-01-09 1:05 pm", 13),
     ("2026-01-09 1:05 a.m.", 1), ("2026-01-09 0:05", 0), ("2026-01-09", 0), ("9.1.26 7:05", 7),
     ("2026-01-09T07:05:00.123Z", 7), ("2026-01-09 09:05+02:00", 7), ("2026-01-09 0705", None),
     ("2026-01-09 0:05 AM", None), ("2026-01-09 13:05 PM", None), ("1999-12-31 23:00", None),
     ("2000-01-01 07:05", 7), ("2100-01-01 07:05", None)],
)  # fmt: skip
def test_the_clock_of_a_sensor_is_read_as_it_is_meant(text: str, hour: int | None) -> None:
    """London in January, so that the wall shows UTC."""
    at = reader_of([], ZONE, day_first=True)(text)
    assert (None if at is None else at.hour) == hour


@pytest.mark.parametrize(
    "text",
    ["2026-02-30 12:00", "9999-01-01 00:00", "2026-06-09 25:00", "12:00", "", "32/01/2026 10:00",
     "13:00 PM 2026", "2026-06-09 13:00 PM", "1" * 30, "2026-06-09T12:00+99:99"],
)  # fmt: skip
def test_a_moment_that_is_none_is_none(text: str) -> None:
    assert reader_of([], ZONE, day_first=True)(text) is None


@given(st.binary(max_size=400))
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    with suppress(Refusal):  # anything else that is raised fails the test
        assert read(b"time,temp,humidity\n2026-06-09 12:00,20,50\n" + data).readings


@given(st.text(alphabet="0123456789/-.: TZapmAPM+,;\"'\t\n%°CF", max_size=300))
def test_any_lines_are_read_or_refused(text: str) -> None:
    with suppress(Refusal):
        found = read(f"time,temp,humidity\n2026-06-09 12:00,20,50\n{text}")
        assert all(-40 <= one.celsius <= 60 and 0 <= one.humidity <= 100 for one in found.readings)
        moments = [one.at for one in found.readings]
        assert moments == sorted(set(moments))
