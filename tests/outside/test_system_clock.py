"""The system's zone as it changes while the program runs, and the zone data in use."""

import os
import sys
import time
import zoneinfo
from collections.abc import Callable, Iterator
from datetime import datetime
from importlib.resources import files
from pathlib import Path

import pytest

from studio_log.services.clock import LocalZone, SystemClock, zone_data_words


@pytest.fixture(autouse=True)
def _zone_as_before() -> Iterator[None]:
    """The C library keeps the zone it was told of last: tell it of the old one again."""
    before = os.environ.get("TZ")
    yield
    if before is not None:
        os.environ["TZ"] = before
    SystemClock().zone()
    time.tzset()


# -- the zone ----------------------------------------------------------------------------------


def test_the_zone_follows_the_system_while_the_program_runs(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The offsets of June are those of the IANA zones, from memory."""
    clock = SystemClock()
    for zone, hours in [("Europe/London", 1), ("Pacific/Auckland", 12), ("Asia/Kolkata", 5.5)]:
        monkeypatch.setenv("TZ", zone)
        assert clock.zone() == zone
        june = time.localtime(datetime.fromisoformat("2026-06-09T12:00Z").timestamp())
        assert june.tm_gmtoff == hours * 3600, "the C library has been told too"


@pytest.mark.parametrize(
    ("told", "zone"),
    [(":Europe/Paris", "Europe/Paris"), ("EST5EDT", "EST5EDT"),
     ("/usr/share/zoneinfo/Asia/Kolkata", "Asia/Kolkata")],
)  # fmt: skip
def test_a_zone_may_be_told_in_the_ways_of_the_c_library(
    monkeypatch: pytest.MonkeyPatch, told: str, zone: str
) -> None:
    """The forms of tzset(3): with a colon, as rules, as a file."""
    if told.startswith("/") and not Path(told).exists():
        pytest.skip("this system keeps its zones elsewhere")
    monkeypatch.setenv("TZ", told)
    assert SystemClock().zone() == zone


@pytest.mark.parametrize(
    "told", ["Mars/Phobos", "\udcff", "x" * 5000, "/etc/passwd", "/", "é", "."]
)
def test_a_broken_zone_never_raises_and_gives_one_that_is_known(
    monkeypatch: pytest.MonkeyPatch, told: str
) -> None:
    monkeypatch.setenv("TZ", told)
    zone = SystemClock().zone()
    assert zoneinfo.ZoneInfo(zone).key == zone


def no_zone() -> str | None:
    return None


def refused() -> str | None:
    raise zoneinfo.ZoneInfoNotFoundError("several zones are told")


@pytest.mark.parametrize("ask", [no_zone, refused, lambda: "Mars/Phobos", lambda: "../etc/passwd"])
def test_where_the_system_tells_no_zone_it_is_utc(ask: Callable[[], str | None]) -> None:
    assert LocalZone(ask).name() == "UTC"


def test_the_system_is_asked_again_only_where_something_changed(tmp_path: Path) -> None:
    link, text = tmp_path / "localtime", tmp_path / "timezone"
    asked: list[str] = []

    def ask() -> str:
        asked.append(text.read_text("ascii").strip())
        return asked[-1]

    text.write_text("Europe/London\n")
    link.symlink_to("/zones/Europe/London")
    zone = LocalZone(ask, (link, text))
    assert [zone.name() for _ in range(50)] == ["Europe/London"] * 50
    assert len(asked) == 1
    # As systems do it: a new link in place of the old, then the text.
    other = tmp_path / "new"
    other.symlink_to("/zones/Pacific/Auckland")
    other.rename(link)
    assert zone.name() == "Europe/London"
    text.write_text("Pacific/Auckland\n")
    os.utime(text, ns=(1, 1))  # a write within one tick of the file system's clock
    assert [zone.name() for _ in range(50)] == ["Pacific/Auckland"] * 50
    assert len(asked) == 3
    link.unlink()
    assert zone.name() == "Pacific/Auckland"
    assert len(asked) == 4


def test_where_no_file_tells_it_the_system_is_asked_each_half_minute(tmp_path: Path) -> None:
    zones = iter(["Europe/London", "Asia/Kolkata"])
    steady = [3_000.0]
    zone = LocalZone(lambda: next(zones), (tmp_path / "nothing",), lambda: steady[0])
    assert zone.name() == "Europe/London"
    steady[0] += 29
    assert zone.name() == "Europe/London"
    steady[0] += 2
    assert zone.name() == "Asia/Kolkata"


# -- the zone data -----------------------------------------------------------------------------


@pytest.fixture
def zones(tmp_path: Path) -> Iterator[Path]:
    """A system's zone data, with one zone in it and no edition told."""
    (tmp_path / "Europe").mkdir()
    (tmp_path / "Europe" / "London").write_bytes(b"TZif")
    zoneinfo.reset_tzpath(to=[str(tmp_path / "nowhere"), str(tmp_path)])
    yield tmp_path
    zoneinfo.reset_tzpath()
    zoneinfo.ZoneInfo.clear_cache()


@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        ("tzdata.zi", "# version 2025b\n# This zic input file is in the public domain.\n", "2025b"),
        ("tzdata.zi", "# version 2026a-dirty\n", "2026a-dirty"),
        ("+VERSION", "2024a\n", "2024a"),
        ("tzdata.zi", "# redo posix_only\n", "of unknown edition"),
        ("tzdata.zi", "", "of unknown edition"),
        ("tzdata.zi", "\xff\xfe", "of unknown edition"),
        ("zone.tab", "# 2020a\n", "of unknown edition"),
    ],
)
def test_the_edition_of_the_system_is_told(zones: Path, name: str, text: str, words: str) -> None:
    """The first line of tzdata.zi is that of the IANA releases; +VERSION is BSD's, from memory."""
    (zones / name).write_text(text, "latin-1")
    assert zone_data_words() == f"zone data {words} of the system"


def test_without_zones_of_the_system_the_package_is_told() -> None:
    """Its edition stands a second time in the package: in the first line of its tzdata.zi."""
    first = files("tzdata").joinpath("zoneinfo", "tzdata.zi").read_text("ascii").splitlines()[0]
    zoneinfo.reset_tzpath(to=[])
    try:
        words = zone_data_words()
    finally:
        zoneinfo.reset_tzpath()
    assert words == f"zone data {first.removeprefix('# version ')} of the package tzdata"


def test_without_any_zones_that_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "tzdata", None)
    zoneinfo.reset_tzpath(to=[])
    try:
        words = zone_data_words()
    finally:
        zoneinfo.reset_tzpath()
    assert words == "no zone data was found"
