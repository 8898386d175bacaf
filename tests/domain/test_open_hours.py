"""Open hours: their text, and what is refused."""

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.open_hours import open_words, read_open, write_open


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("", ""),
        (" ; ", ""),
        ("mon-fri 09:00-17:00; sat 10:00-14:00", "="),
        ("Mon – Fri 9:00 – 17:00;SATURDAY 10:00-14:00", "mon-fri 09:00-17:00; sat 10:00-14:00"),
        ("tue, thu & sat 10:00-24:00", "tue,thu,sat 10:00-24:00"),
        ("sat and sun 10:00-16:00", "sat,sun 10:00-16:00"),
        ("fri-mon 10:00-16:00", "mon,fri-sun 10:00-16:00"),
        ("mon 13:00-17:00; mon 9:00-12:00", "mon 09:00-12:00; mon 13:00-17:00"),
    ],
)
def test_open_hours_are_read_in_any_hand_and_kept_in_one(text: str, kept: str) -> None:
    written = write_open(read_open(text))
    assert written == (text if kept == "=" else kept)
    assert read_open(written) == read_open(text)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("mon", "names no open hours"),
        ("09:00-17:00", "names no open hours"),
        ("funday 09:00-17:00", "'funday' is no day of the week"),
        ("mon-tue-wed 09:00-17:00", "not days from one to another"),
        ("mon 17:00-09:00", "ends before it begins"),
        ("mon 09:00-09:00", "ends before it begins"),
        ("mon 09:00-24:01", "24:01 is no time"),
        ("mon 09:60-12:00", "09:60 is no time"),
        ("mon 99:00-99:30", "is no time"),
        ("mon,mon 09:00-12:00", "Mon is named twice"),
        ("mon 09:00-12:00; mon 11:00-13:00", "Mon is open twice at 11:00"),
        ("mon 09:00-12:00; mon 12:00-13:00", "Mon is open twice at 12:00"),
        ("mon 09:00-17:00\x00", "names no open hours"),
        ("mon ٠٩:00-17:00", "names no open hours"),
        ("mon 09:00-10:00;" * 60, "up to 400 letters"),
        ("- 09:00-17:00", "names no open hours"),
        ("mon- 09:00-17:00", "is no day of the week"),
    ],
)
def test_what_makes_no_sense_is_refused_in_words(text: str, says: str) -> None:
    with pytest.raises(Refusal, match=says):
        read_open(text)


def test_the_words_name_the_days() -> None:
    assert open_words(read_open("")) == "always"
    told = open_words(read_open("mon,tue 09:00-17:00; sat 10:00-14:00"))
    assert told == "Mon and Tue 09:00–17:00, Sat 10:00–14:00"
