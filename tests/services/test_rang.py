"""What rang tells the truth: when each was due, when and how it rang, how it was answered."""

import csv
import io
from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.journal import Act
from studio_log.services.commands import AnswerReminder, ChangeSettings, NoteShown, Undo
from studio_log.services.rang import Rang, Try, WhatRangFor
from studio_log.services.rang_export import COLUMNS, rang_csv
from studio_log.services.rang_reads import what_rang
from studio_log.services.rang_words import (
    answer_words,
    clock_words,
    details,
    how_words,
    rang_words,
    tame,
    what_words,
)
from studio_log.store.values import ReminderRecord
from tests.support.builders import DAY, HOUR, MINUTE, NINE

SECOND = timedelta(seconds=1)


def rang(shop, **question) -> tuple[Rang, ...]:
    with shop.studio.store.reading() as look:
        return what_rang(shop.studio, shop.studio.desk(look), WhatRangFor(**question))


def one(shop, tail: str, **question) -> Rang:
    (found,) = [row for row in rang(shop, **question) if row.key.endswith(tail)]
    return found


def by_list(row: Rang) -> list[Try]:
    """The attempts of the desktop's stand-in; the window's own are another matter."""
    return [attempt for attempt in row.tries if attempt.channel == "list"]


def whole(shop, tail: str) -> str:
    return "\n".join(details(one(shop, tail), shop.clock.now()))


def a_row(**rest) -> Rang:
    values = {
        "key": "26-031/4/tend/1", "lot": "26-031", "name": "Runners", "step": "First soak",
        "title": "Stir 26-031 Runners", "kind": "tending", "urgency": "now", "due": NINE,
        "rings": (NINE,), "times": 1, "late": timedelta(0), "quiet_until": None,
        "channels": ("the window",), "answer": "", "answered_at": None, "void_at": None,
        "void_why": "", "state": "open", "rings_at": None, "tries": (), "told": False,
        "zone": "Europe/London",
    }  # fmt: skip
    return Rang(**(values | rest))


@pytest.fixture
def code(shop) -> str:
    """Beans that lie in water since nine: earliest 17:00, aim 21:00, latest 03:00."""
    made = shop.new()
    shop.mark(made, "bean-soak", Act.START)
    return made


# -- what is told ------------------------------------------------------------------------


def test_in_an_empty_studio_nothing_rang(shop):
    assert rang(shop) == ()
    assert list(csv.reader(io.StringIO(rang_csv(()).decode()))) == [list(COLUMNS)]


def test_each_ring_is_told_with_its_channel_and_its_answer(shop, code):
    shop.ring(at=NINE + 12 * HOUR)
    shop.ring(minutes=10)
    shop.clock.move(minutes=5)
    shop.do(AnswerReminder(f"{code}/1/ready", "done"))
    row = one(shop, "/1/ready")
    assert (row.due, row.rings) == (NINE + 12 * HOUR, (row.due, row.due + 10 * MINUTE))
    assert (row.times, row.late, row.state) == (2, timedelta(0), "answered")
    assert (row.answer, row.answered_at) == ("done", row.due + 15 * MINUTE)
    assert by_list(row) == [
        Try(row.due, "list", True, "kept"),
        Try(row.due + 10 * MINUTE, "list", True, "kept"),
    ]
    told = whole(shop, "/1/ready").splitlines()
    assert [line for line in told if "window: " not in line] == [
        f"{code} runners · Bean soak",
        "Due Tue 9 June, 21:00 (ready, now).",
        "Rang 21:00:00, 21:10, by list, the window.",
        "Answered 21:15 (15 min after the first ring): done.",
        "Every channel that was tried, and what it answered:",
        "• 21:00:00 list: shown, kept",
        "• 21:10:00 list: shown, kept",
    ]


@pytest.mark.usefixtures("code")
def test_what_came_late_says_by_how_much(shop):
    shop.ring(at=NINE + 12 * HOUR + 40 * MINUTE)
    row = one(shop, "/1/ready")
    assert row.late == 40 * MINUTE
    assert rang_words(row) == "21:40:00, told 40 min late"
    assert "Told 40 min late." in whole(shop, "/1/ready")


@pytest.mark.usefixtures("code")
def test_what_waited_for_the_end_of_quiet_hours_says_so(shop):
    rung = dict(shop.ring_on(NINE + 23 * HOUR))
    assert rung
    row = one(shop, "/1/past")
    assert row.due == shop.clock.local("2026-06-10 03:00")
    assert row.quiet_until == row.first_rung == shop.clock.local("2026-06-10 07:00")
    assert rang_words(row).startswith("07:00:00, waited for quiet hours to end, 07:00")


@pytest.mark.usefixtures("code")
def test_one_that_rang_later_than_quiet_hours_ended_is_plainly_late(shop):
    shop.ring(at=shop.clock.local("2026-06-10 07:40"))
    row = one(shop, "/1/past")
    assert row.quiet_until is None
    assert "told 4 h 40 min late" in rang_words(row)


def test_what_never_rang_says_why(shop, code):
    shop.clock.set(NINE + 11 * HOUR)
    shop.do(AnswerReminder(f"{code}/1/ready", "done"))
    shop.clock.set(NINE + 13 * HOUR)
    row = one(shop, "/1/ready")
    assert (row.rings, row.times, row.late, row.channels) == ((), 0, None, ())
    assert rang_words(row) == "did not ring: answered before"


def test_what_is_void_says_why(shop, code):
    shop.ring(at=NINE + 12 * HOUR)
    shop.mark(code, "1", Act.STOP, note="grey")
    row = one(shop, "/1/ready")
    assert (row.state, row.void_at) == ("no longer needed", shop.clock.now())
    assert "No longer needed, 21:00 (stop marked)." in whole(shop, "/1/ready")


@pytest.mark.usefixtures("code")
def test_what_is_due_and_silent_yet_is_told(shop):
    shop.clock.set(shop.clock.local("2026-06-10 04:00"))
    row = one(shop, "/1/past")
    assert (row.state, rang_words(row)) == ("waits", "did not ring yet")
    assert answer_words(row) == "waits: rings 07:00"


@pytest.mark.usefixtures("code")
def test_what_lies_ahead_is_not_told(shop):
    assert rang(shop) == ()


def test_one_put_off_keeps_its_rings_and_says_when_it_rings_again(shop, code):
    shop.ring(at=NINE + 12 * HOUR)
    shop.do(AnswerReminder(f"{code}/1/ready", "putoff", put_off=30 * MINUTE))
    row = one(shop, "/1/ready")
    assert (row.state, row.rings) == ("waits", (NINE + 12 * HOUR,))
    assert answer_words(row) == "waits: rings again 21:30"
    shop.ring(minutes=30)
    assert one(shop, "/1/ready").rings == (NINE + 12 * HOUR, NINE + 12 * HOUR + 30 * MINUTE)


def test_a_channel_that_answers_a_little_later_told_of_the_same_ring(shop, code):
    shop.ring(at=NINE + 12 * HOUR)
    shop.clock.at += 2 * SECOND
    shop.do(NoteShown((f"{code}/1/ready",), "the tray", "shown"))
    row = one(shop, "/1/ready")
    assert (row.times, row.rings) == (1, (NINE + 12 * HOUR,))
    assert "the tray" in how_words(row)


@pytest.mark.usefixtures("code")
def test_a_channel_that_failed_is_told_as_failed(shop):
    shop.notice.works = False
    shop.ring(at=NINE + 12 * HOUR)
    row = one(shop, "/1/ready")
    assert how_words(row) == "the window"
    assert by_list(row) == [Try(NINE + 12 * HOUR, "list", False, "deaf")]
    told = whole(shop, "/1/ready")
    assert "• 21:00:00 list: failed, deaf" in told
    assert "written down once" in told


@pytest.mark.usefixtures("code")
def test_where_no_channel_took_it_it_did_not_ring(shop):
    shop.studio.shows_here = ""
    shop.notice.works = False
    shop.ring(at=NINE + 12 * HOUR)
    row = one(shop, "/1/ready")
    assert (row.rings, row.times) == ((), 0)
    assert how_words(row) == "failed: list"
    assert "Did not ring yet. It was tried, and no channel took it." in whole(shop, "/1/ready")


def test_what_an_undo_brings_back_in_silence_is_no_ring(shop, code):
    shop.clock.set(NINE + 12 * HOUR + MINUTE)
    outcome = shop.do(AnswerReminder(f"{code}/1/ready", "done"))
    shop.do(Undo(outcome.subject))
    row = one(shop, "/1/ready")
    assert (row.state, row.rings, row.times) == ("open", (), 0)
    assert rang_words(row) == "did not ring: it came back when an act was taken back"


def test_rings_whose_moment_was_not_written_down_are_counted():
    row = a_row(times=4, rings=(NINE, NINE + HOUR))
    assert "It rang 2 times more at moments not written down." in "\n".join(details(row, NINE))


def test_a_look_ahead_is_told_of_the_studio(shop):
    shop.do(ChangeSettings({"look_ahead": "08:00"}))
    with shop.studio.store.work() as work:
        work.reminders.put(
            ReminderRecord(
                "studio/2026-06-09/look_ahead", "studio", "look_ahead", "calm", NINE - HOUR,
                NINE - HOUR, "Today: 5 acts", NINE - HOUR, status="answered",
                raised_at=NINE - HOUR, raise_count=1, last_rung_at=NINE - HOUR,
                answered_at=NINE - HOUR, answer="told", channels=("list",),
            )
        )  # fmt: skip
    (row,) = rang(shop)
    assert (row.lot, row.kind, row.told) == ("", "look ahead", True)
    assert (what_words(row), answer_words(row)) == ("Today: 5 acts", "told; wanted no answer")
    assert details(row, NINE)[0] == "the studio"


# -- span and search -----------------------------------------------------------------------


@pytest.mark.usefixtures("code")
def test_ninety_days_are_told_the_latest_due_first(shop):
    shop.ring_on(NINE + 2 * DAY)
    rows = rang(shop)
    assert len(rows) > 2
    assert [row.due for row in rows] == sorted((row.due for row in rows), reverse=True)
    shop.clock.set(shop.clock.now() + 91 * DAY)
    assert rang(shop) == ()
    assert rang(shop, since=NINE)


@pytest.mark.parametrize(
    "find", ["", "RÜNNERS", "26-001", "drain", "done", "list kept", "soak ready", "the window"]
)
def test_what_is_seen_can_be_found(shop, find):
    code = shop.new("Rünners")
    shop.mark(code, "bean-soak", Act.START)
    shop.ring(at=NINE + 12 * HOUR)
    shop.do(AnswerReminder(f"{code}/1/ready", "done"))
    assert [row.key for row in rang(shop, find=find) if row.rings][:1] == [f"{code}/1/ready"]


@pytest.mark.parametrize("find", ["rünners nothing", "%", "_", "' OR 1=1"])
def test_what_is_not_there_is_not_found(shop, find):
    code = shop.new("Rünners")
    shop.mark(code, "bean-soak", Act.START)
    shop.ring(at=NINE + 12 * HOUR)
    assert rang(shop)
    assert rang(shop, find=find) == ()


# -- clocks and hostile names -------------------------------------------------------------


def test_two_equal_times_of_the_night_the_clocks_go_back_are_told_apart():
    # In London the clock showed 01:30 twice on 25 October 2026, at 00:30 and 01:30 UTC: summer
    # time ends at 01:00 UTC on the last Sunday of October (tests/reference/dst_transitions.csv).
    first = datetime(2026, 10, 25, 0, 30, tzinfo=UTC)
    row = a_row(due=first, rings=(first, first + HOUR), times=2, late=timedelta(0))
    told = "\n".join(details(row, first))
    assert "Due Sun 25 October, 01:30 BST" in told
    assert "Rang 01:30:00 BST, 01:30 GMT" in told
    (cells,) = csv.DictReader(io.StringIO(rang_csv([row]).decode(), newline=""))
    assert cells["rings"] == "2026-10-25T01:30:00+01:00 2026-10-25T01:30:00+00:00"


def test_a_zone_without_letters_is_told_by_its_offset():
    # Lord Howe Island goes back half an hour, from +11:00 to +10:30: the time zone database.
    first = datetime(2026, 4, 4, 14, 45, tzinfo=UTC)
    assert clock_words(first, "Australia/Lord_Howe") == "01:45 UTC+1100"
    assert clock_words(first + HOUR / 2, "Australia/Lord_Howe") == "01:45 UTC+1030"


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("plain", "plain"),
        ("two\nlines\tand  blanks", "two lines and blanks"),
        ("bell\a and \x1b[31mred", "bell� and �[31mred"),
        ("turned \N{RIGHT-TO-LEFT OVERRIDE}kcab", "turned kcab"),
        ("שלום linen", "שלום linen"),
        ("half \ud800", "half �"),
    ],
)
def test_any_text_is_shown_in_one_tame_line(typed, shown):
    assert tame(typed) == shown


def test_the_file_reads_back_cell_by_cell_and_no_cell_is_a_formula():
    # RFC 4180: CRLF, quotes doubled. What begins with = + - @ or a tab is a formula to a
    # spreadsheet (common practice: an apostrophe before it makes it text).
    names = [
        "=cmd|' /C calc'!A0",
        "+1",
        "-h & <b>",
        "@sum",
        "\t=1",
        'a "quote", a comma',
        "é" * 200,
    ]
    data = rang_csv([a_row(name=name) for name in names])
    assert data.endswith(b"\r\n")
    assert data.count(b"\r\n") == len(names) + 1
    rows = list(csv.DictReader(io.StringIO(data.decode("utf-8"), newline="")))
    found = [row["name"] for row in rows]
    assert found == [
        "'=cmd|' /C calc'!A0", "'+1", "'-h & <b>", "'@sum", "'=1", 'a "quote", a comma', "é" * 200,
    ]  # fmt: skip
    assert rows[0]["due"] == "2026-06-09T09:00:00+01:00"
    assert not [cell for row in rows for cell in row.values() if cell[:1] in set("=+-@\t\r\n")]


def test_tries_stand_one_a_line_in_their_cell():
    tries = (Try(NINE, "desktop", False, "no\nservice"), Try(NINE, "=tray", True, ""))
    (row,) = csv.DictReader(io.StringIO(rang_csv([a_row(tries=tries)]).decode(), newline=""))
    assert row["tries"].splitlines() == [
        "2026-06-09T09:00:00+01:00 desktop: failed, no service",
        "2026-06-09T09:00:00+01:00 =tray: shown",
    ]


def test_one_that_rang_before_its_moment_of_now_says_so():
    row = a_row(due=NINE + HOUR, rings=(NINE,), late=None)
    assert "It rang before its moment as it stands now" in "\n".join(details(row, NINE))
    assert rang_words(row) == "09:00:00"
