"""Public holidays: against published lists, offline, and where nothing is known."""

import csv
import subprocess
import sys
from datetime import date

import pytest

from studio_log.domain.errors import Refusal
from studio_log.language.words import ENGLISH, speak
from studio_log.services.public_holidays import (
    check_form,
    check_place,
    holidays_between,
    place_of,
    places,
)
from tests.support.tree import TREE

FIRST, LAST = date(2026, 1, 1), date(2027, 12, 31)
PUBLISHED = TREE / "tests" / "reference" / "public_holidays.csv"
PROCLAIMED_SINCE = {"GB-SCT": {date(2026, 6, 15)}}
"""In the library and not in the copy of the list: made a holiday after the list was written."""


def published() -> dict[str, set[date]]:
    lines = [line for line in PUBLISHED.read_text("utf-8").splitlines() if not line.startswith("#")]
    found: dict[str, set[date]] = {}
    for row in csv.DictReader(lines):
        found.setdefault(row["place"], set()).add(date.fromisoformat(row["date"]))
    return found


@pytest.mark.parametrize("place", ["GB-ENG", "GB-WLS", "GB-SCT", "GB-NIR", "DE-BY"])
def test_holidays_are_those_that_are_published(place: str) -> None:
    """Where a feast on a weekend has a substitute, the feast itself is named too."""
    known = holidays_between(place, FIRST, LAST)
    wanted = published()[place]
    assert len(wanted) >= 16
    assert wanted <= set(known.names)
    more = set(known.names) - wanted - PROCLAIMED_SINCE.get(place, set())
    assert all(day.weekday() >= 5 for day in more), more
    assert known.doubt == ""


def test_the_names_are_the_places_own_in_its_language_or_in_ours() -> None:
    assert holidays_between("DE-BY", FIRST, FIRST).names == {FIRST: "New Year's Day"}
    speak({"en_US": "de"})
    try:
        assert holidays_between("DE-BY", FIRST, FIRST).names == {FIRST: "Neujahr"}
        assert holidays_between("GB-ENG", FIRST, FIRST).names == {FIRST: "New Year's Day"}
    finally:
        speak(ENGLISH)


def test_no_place_has_no_holidays_and_an_unknown_one_says_so() -> None:
    assert holidays_between("", FIRST, LAST).names == {}
    unknown = holidays_between("XX", FIRST, LAST)
    assert (unknown.names, unknown.doubt) == ({}, "No holidays are known of “XX”; none is counted.")
    gone = holidays_between("GB-ZZZ", FIRST, LAST)
    assert "GB-ZZZ" in gone.doubt


def test_years_beyond_the_data_are_said_in_words() -> None:
    known = holidays_between("DE-BY", date(2099, 12, 31), date(2200, 1, 1))
    assert max(known.names).year == 2100
    assert known.doubt.startswith("Holidays of DE-BY are known from 1991 to 2100")


@pytest.mark.parametrize(
    "text", ["gb", "GB-", "GBR", "GB-ENG\n", "../etc", "GB-" + "x" * 40, "GB_ENG", "G\x00", "ＧＢ"]
)
def test_what_is_no_place_is_refused_before_anything_is_imported(text: str) -> None:
    with pytest.raises(Refusal, match="names no place with holidays"):
        check_form(text)


def test_a_place_nobody_knows_is_refused_when_it_is_chosen() -> None:
    for text in ("XX", "GB-BY", "DE-ZZ"):
        with pytest.raises(Refusal, match="No holidays are known of"):
            check_place(text)
    for text in ("", "GB", "GB-ENG", "CH-Stadt Zurich", "FR-6AE"):
        assert check_place(text) == text


def test_places_and_their_parts_have_names_in_words() -> None:
    names = {one.code: one.name for one in places()}
    assert len(names) > 200
    assert (names["GB"], names["CZ"], names["IM"]) == ("United Kingdom", "Czechia", "Isle of Man")
    kingdom, austria = place_of("GB-ENG"), place_of("AT")
    assert kingdom is not None
    assert dict(kingdom.parts)["SCT"] == "Scotland"
    assert austria is not None
    assert dict(austria.parts)["3"] == "Niederösterreich"
    assert place_of("XX") is None


SETTINGS = """
import sys
from studio_log.services.settings_check import read_settings
from studio_log.services import reads
read_settings({"holiday_place": "GB-ENG"}, strict=True)
before = [name for name in sys.modules if name.split(".")[0] == "holidays"]
from datetime import date
from studio_log.services.studio_hours import studio_hours
day = date(2026, 12, 25)
hours, _ = studio_hours(read_settings({"holiday_place": "GB-ENG"}), day, day)
print(before, hours.on(day).words, "holidays" in sys.modules)
"""


def test_the_library_is_brought_in_when_a_holiday_is_asked_for_and_not_before() -> None:
    done = subprocess.run(
        [sys.executable, "-c", SETTINGS], cwd=TREE, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout == "[] Christmas Day True\n"


WITHOUT = """
import sys
sys.modules["holidays"] = None
from datetime import date
from studio_log.services.public_holidays import holidays_between, places
known = holidays_between("GB", date(2026, 12, 25), date(2026, 12, 25))
print(known.names, known.doubt, places())
"""


def test_without_the_library_no_holiday_is_known_and_nothing_breaks() -> None:
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT], cwd=TREE, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout == "{} No holidays are known of “GB”; none is counted. ()\n"


def test_every_place_of_the_list_can_be_asked_about() -> None:
    """Each country's class is there, and each part that is offered is taken."""
    for one in places():
        whole = place_of(one.code)
        assert whole is not None, one
        assert all(check_form(f"{one.code}-{part}") for part, _ in whole.parts), one
    for text in ("AT-3", "CH-Stadt Zurich", "IT-BZ", "US-CA"):
        assert holidays_between(text, FIRST, LAST).names
