"""Figures and dates as a place writes them; the places are those of Qt's common locale data."""

from collections.abc import Iterator
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale

from studio_log.app.paths import resource
from studio_log.app.tongue import region_of
from studio_log.domain.errors import Question
from studio_log.domain.number_text import plain, pointed, read_number
from studio_log.domain.piece_text import read_piece
from studio_log.language.calendar_words import date_words, day_words
from studio_log.language.catalogue import read_catalogue
from studio_log.language.choice import chosen_language, file_text
from studio_log.language.region import PLAIN, Region, live_in, week
from studio_log.language.words import ENGLISH, counted, speak, tr
from studio_log.present.words import mass, moment

NINTH = date(2026, 6, 9)


@pytest.fixture(autouse=True)
def _here() -> Iterator[None]:
    yield
    live_in(PLAIN)
    speak(ENGLISH)


@pytest.mark.parametrize(
    ("name", "region"),
    [
        ("de_DE", Region(",", 0, month_first=False)),
        ("en_GB", Region(".", 0, month_first=False)),
        ("en_US", Region(".", 6, month_first=True)),
        ("sv_SE", Region(",", 0, month_first=False)),
        ("ar_EG", Region(".", 5, month_first=False)),
    ],
)
def test_a_place_is_read_from_the_common_locale_data(name: str, region: Region) -> None:
    assert region_of(QLocale(name)) == region


def test_a_decimal_comma_is_written_and_read_back() -> None:
    live_in(Region(decimal=","))
    assert mass(149.85) == "149,9 g"
    assert mass(1234.5) == "1,235 kg"
    assert read_number("1,235") == 1.235
    assert pointed(1.5, 2) == "1.5"  # what is kept stays as it was
    for value in (0.4, 12.25, 149.9, 1.235):
        assert read_number(plain(value, 3)) == value


def test_the_doubtful_sign_is_the_other_one() -> None:
    with pytest.raises(Question, match="1,800"):
        read_number("1,800")
    assert read_number("1.800") == 1.8
    live_in(Region(decimal=","))
    with pytest.raises(Question, match=r"1800, or as 1,800.*without the point"):
        read_number("1.800")


def test_a_piece_typed_with_a_comma_is_the_same_piece() -> None:
    with_point = read_piece("180 x 45.5 cm linen, 185 g/m2")
    live_in(Region(decimal=","))
    with_comma = read_piece("180 x 45,5 cm linen, 185 g/m2")
    assert with_comma.pieces == with_point.pieces
    assert "45,5" in with_comma.understood


def test_a_date_is_said_in_the_order_of_the_place() -> None:
    assert day_words(NINTH) == "Tue 9 June"
    live_in(Region(month_first=True))
    assert day_words(NINTH) == "Tue June 9"
    assert date_words(NINTH, short=True, year=True) == "Jun 9 2026"


def test_a_week_begins_with_the_day_of_the_place() -> None:
    assert week() == (0, 1, 2, 3, 4, 5, 6)
    live_in(Region(first_day=6))
    assert week() == (6, 0, 1, 2, 3, 4, 5)


def test_a_moment_is_said_in_german() -> None:
    speak(read_catalogue(resource("translations") / "studio_log_de.ts"))
    now = datetime(2026, 6, 9, 12, tzinfo=UTC)
    assert moment(now, now, "Europe/Berlin") == "heute 14:00"
    assert day_words(NINTH) == "Di 9. Juni"


def test_values_are_put_in_and_braces_without_values_stay() -> None:
    assert tr("{a} of {b}", a=1, b="{x}") == "1 of {x}"
    assert tr("{a} stays") == "{a} stays"
    assert counted(1, "{n} lot", "{n} lots") == "1 lot"
    assert counted(0, "{n} lot", "{n} lots") == "0 lots"


@pytest.mark.parametrize(
    "told",
    [b"", b"{", b"[]", b'{"language": 3}', b'{"language": "xx"}', b"[" * 300, b" " * 500, b"\xff"],
)
def test_a_broken_choice_follows_the_system(tmp_path: Path, told: bytes) -> None:
    (tmp_path / "language.json").write_bytes(told)
    assert chosen_language(tmp_path) == ""


def test_a_choice_is_read_back(tmp_path: Path) -> None:
    assert chosen_language(tmp_path) == ""
    (tmp_path / "language.json").write_bytes(file_text("de"))
    assert chosen_language(tmp_path) == "de"
