"""The hours by command: the days ahead, the week, single days, places, and nonsense."""

import json
from datetime import date

import pytest

from studio_log.domain.studio_hours import Cause, DayHours
from studio_log.services.commands import ChangeSettings
from studio_log.services.public_holidays import Place
from studio_log.services.questions import SettingsFor
from studio_log.services.settings import Settings
from studio_log.services.settings_check import read_settings
from studio_log.services.studio_hours import (
    HolidayPlaceFor,
    HolidayPlacesFor,
    StudioHoursAnswer,
    StudioHoursFor,
)
from tests.cli.fake_house import Line

KINGDOM = Place("GB", "United Kingdom", (("ENG", "England"), ("SCT", "Scotland")))


@pytest.fixture(autouse=True)
def _answers(line: Line) -> None:
    kept = Settings(single_days="2026-12-24 closed: fair\n2026-12-28 usual")
    line.studio.answers |= {
        SettingsFor: kept,
        HolidayPlacesFor: (Place("DE", "Germany"), Place("GB", "United Kingdom")),
        HolidayPlaceFor: KINGDOM,
        StudioHoursFor: StudioHoursAnswer(
            (
                DayHours(date(2026, 12, 24), ((540, 720), (780, 1020))),
                DayHours(date(2026, 12, 25), (), Cause.HOLIDAY, "Christmas Day"),
            ),
            (((420, 1320),),) * 7,
            "Holidays of GB are known from 1872 to 2100; outside it none is counted.",
        ),
    }


def changed(line: Line) -> dict[str, object]:
    """What the last command set; the services take it."""
    command = line.studio.done[-1]
    assert isinstance(command, ChangeSettings)
    read_settings(command.values, strict=True)
    return dict(command.values)


def test_the_days_ahead_are_shown_with_why_they_differ(line: Line) -> None:
    ended = line.run("hours", "show")
    assert ended.code == 0
    assert ended.out.splitlines() == [
        "Thu 24 December 2026  09:00-12:00, 13:00-17:00",
        "Fri 25 December 2026  closed  (Christmas Day)",
    ]
    assert "known from 1872" in ended.err
    assert line.studio.asked == [StudioHoursFor(date(2026, 6, 9), date(2026, 6, 22))]


def test_a_day_to_begin_at_and_their_number_are_handed_on(line: Line) -> None:
    told = json.loads(
        line.run("hours", "show", "--from", "2026-12-24", "--days", "2", "--json").out
    )
    assert line.studio.asked == [StudioHoursFor(date(2026, 12, 24), date(2026, 12, 25))]
    assert told["days"][1] == {
        "day": "2026-12-25", "weekday": "friday", "working": [], "cause": "holiday",
        "why": "Christmas Day",
    }  # fmt: skip
    assert told["waking"] == [[[420, 1320]]] * 7


def test_the_week_is_set(line: Line) -> None:
    line.run("hours", "set", "--working", "Mon – Fri 9:00–17:00", "--holidays", "GB-ENG")
    assert changed(line) == {"open_hours": "Mon – Fri 9:00–17:00", "holiday_place": "GB-ENG"}
    line.run("hours", "set", "--quiet", "21:30-06:00", "--nights", "sun off", "--waking", "")
    assert changed(line) == {
        "quiet_start": "21:30", "quiet_end": "06:00", "quiet_days": "sun off", "waking_hours": "",
    }  # fmt: skip
    line.run("hours", "set", "--quiet", "")
    assert changed(line) == {"quiet_start": "00:00", "quiet_end": "00:00"}


def test_a_single_day_is_said_changed_and_forgotten(line: Line) -> None:
    line.run("hours", "day", "2026-12-27", "10-12", "--why", "stocktaking")
    assert changed(line)["single_days"] == (
        "2026-12-24 closed: fair\n2026-12-27 10:00-12:00: stocktaking\n2026-12-28 usual"
    )
    line.run("hours", "day", "2026-12-23", "closed", "--to", "2026-12-28")
    assert changed(line)["single_days"] == "2026-12-23 to 2026-12-28 closed"
    line.run("hours", "day", "2026-12-24", "forget")
    assert changed(line)["single_days"] == "2026-12-28 usual"


def test_places_are_listed_found_and_parted(line: Line) -> None:
    assert line.run("hours", "places", "--find", "germ").out == "DE      Germany\n"
    assert line.run("hours", "places", "--find", "atlantis").out == "No such country.\n"
    assert line.run("hours", "places", "--find", "gb").out.splitlines() == [
        "GB      United Kingdom",
        "GB-ENG  United Kingdom, England",
        "GB-SCT  United Kingdom, Scotland",
    ]
    assert json.loads(line.run("hours", "places", "--json").out)[0] == {
        "place": "DE", "name": "Germany",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("set",), 2, "Say what to set"),
        (("set", "--quiet", "late"), 1, "is no night"),
        (("show", "--from", "christmas"), 1, "is no single day"),
        (("show", "--from", "2026-02-30"), 1, "There is no day"),
        (("show", "--days", "0"), 1, "no number of days"),
        (("show", "--days", "٣"), 1, "no number of days"),
        (("show", "--days", "9" * 40), 1, "no number of days"),
        (("day", "2026-12-24", "noon"), 1, "is no stretch"),
        (("day", "2026-12-24; 2026-12-25 closed", "closed"), 1, "is no single day"),
        (("day", "2026-12-24", "closed", "--why", "a\x00b"), 1, "plain text"),
        (("day", "2026-12-24", "closed", "--why", "a; 2027-01-01 closed"), 1, "One day"),
        (("day", "2026-12-24", "closed", "--to", "2020-01-01"), 1, "spans no days"),
        (("day", "2026-01-01", "forget"), 1, "Nothing was said of"),
        (("day", "\ud800", "closed"), 1, "is no single day"),
    ],
)
def test_nonsense_is_refused_in_words_and_changes_nothing(
    line: Line, words: tuple[str, ...], code: int, says: str
) -> None:
    ended = line.run("hours", *words)
    assert ended.code == code
    assert any(part in ended.err for part in says.split("|")), ended.err
    assert line.studio.done == []
