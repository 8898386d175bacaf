"""The calendar, read back by two libraries that other programs read calendars with.

Forms are those of RFC 5545: 3.1 lines and folding, 3.3.11 text, 3.6.1 and 3.6.6 what an event
and an alarm must hold, 3.8.7 versions. The clock changes are those of
tests/reference/dst_transitions.csv.
"""

import unicodedata
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import icalendar
import pytest
import recurring_ical_events
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.calendar_ahead import CalendarEvent, events_of_lot
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services import calendar_work
from studio_log.services.baths import MarkBath, NewBath
from studio_log.services.calendar import CalendarFor, SaveCalendar
from studio_log.services.calendar_file import LONGEST, calendar_bytes
from studio_log.services.calendar_memory import FILE_NAME, Told, read_memory, tell
from studio_log.services.commands import ChangeSettings, Mark, SetLot, Undo
from tests.support.builders import DAY, HOUR, LONDON, MINUTE, NINE, Story, a_method, a_step, spread
from tests.support.fixtures import Workshop
from tests.support.reference import rows

DAYS_OF_CHANGE = [
    row for row in rows("dst_transitions.csv")
    if row["zone"] in {"Europe/London", "America/New_York", "Australia/Lord_Howe"}
]  # fmt: skip


def saved(shop: Workshop, to: Path, *codes: str) -> dict[str, Any]:
    """Write the calendar and give its events by the act and lot they are titled with."""
    shop.studio.ask(SaveCalendar(to, codes))
    read = icalendar.Calendar.from_ical(to.read_bytes())
    return {str(one["SUMMARY"]): one for one in read.walk("VEVENT")}


def by_uid(shop: Workshop, to: Path) -> dict[str, Any]:
    """Write the calendar and give its events by their names."""
    shop.studio.ask(SaveCalendar(to))
    read = icalendar.Calendar.from_ical(to.read_bytes())
    return {str(one["UID"]): one for one in read.walk("VEVENT")}


def lines_of(data: bytes) -> list[bytes]:
    assert data.endswith(b"\r\n")
    return data[:-2].split(b"\r\n")


def soaking(shop: Workshop, name: str = "runners") -> str:
    code = shop.new(name=name)
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    return code


def test_what_is_worked_out_is_what_another_program_reads(shop: Workshop, tmp_path: Path):
    code = soaking(shop)
    ahead = shop.studio.ask(CalendarFor())
    read = by_uid(shop, tmp_path / "plan.ics")
    assert read.keys() == ahead.events.keys()
    kinds = {one.key.removeprefix(f"{code}/").partition("/")[2] for one in ahead.events.values()}
    assert kinds == {"start", "end", "tend", "dry", "mark/ready", "mark/paint", "mark/resists"}
    for uid, event in ahead.events.items():
        one = read[uid]
        assert one.decoded("DTSTART") == event.start
        assert one.decoded("DTEND") == event.end
        assert str(one["SUMMARY"]) == event.title
        assert str(one.get("DESCRIPTION", "")) == event.why
        rung = sorted(moment.trigger for moment in one.alarms.times)
        assert rung == sorted(event.alarms)


def test_what_an_event_must_hold_is_there_once(shop: Workshop, tmp_path: Path):
    soaking(shop)
    shop.studio.ask(SaveCalendar(tmp_path / "plan.ics"))
    read = icalendar.Calendar.from_ical((tmp_path / "plan.ics").read_bytes())
    assert read["VERSION"] == "2.0"
    assert read["PRODID"]
    assert "METHOD" not in read, "RFC 5546 asks an ORGANIZER of whoever names a method"
    events = read.walk("VEVENT")
    assert events
    for one in events:
        for name in ("UID", "DTSTAMP", "DTSTART", "DTEND", "SEQUENCE", "LAST-MODIFIED", "STATUS"):
            assert not isinstance(one[name], list)
        assert one.decoded("DTSTAMP") == one.decoded("LAST-MODIFIED")
        assert one.decoded("DTEND") > one.decoded("DTSTART")
        assert one.errors == []
        for alarm in one.walk("VALARM"):
            assert alarm["ACTION"] == "DISPLAY"
            assert alarm["DESCRIPTION"]
            assert "TRIGGER" in alarm
    assert len({str(one["UID"]) for one in events}) == len(events)


@pytest.mark.parametrize("row", DAYS_OF_CHANGE, ids=lambda row: f"{row['zone']} {row['utc']}")
def test_across_a_clock_change_a_soak_lasts_its_true_hours(row: dict[str, str]):
    """Read by the day as a calendar shows it: the wall clock has jumped, the hours have not."""
    zone = ZoneInfo(row["zone"])
    jump = datetime.fromisoformat(row["utc"])
    begun = jump - 5 * HOUR
    made = a_method(a_step("soak", lasts=spread(10, 14, 18)), slug="long-soak")
    story = Story(made, at=begun)
    story.mark(Act.START, "soak")
    quiet = LONDON.__class__(LONDON.start, LONDON.start, row["zone"])
    events = {"soak": events_of_lot(story.lot, begun, quiet)[-1]}
    told, _ = tell(events, {}, begun, {})
    read = icalendar.Calendar.from_ical(calendar_bytes(told, "Studio"))
    end = begun + 14 * HOUR
    day = end.astimezone(zone).date()
    (found,) = recurring_ical_events.of(read).at(day)
    there = found["DTSTART"].dt.astimezone(zone)
    shift = timedelta(minutes=float(row["shift_min"]))
    wall = begun.astimezone(zone).replace(tzinfo=None) + 14 * HOUR + shift
    assert there.replace(tzinfo=None) == wall
    assert found["DTSTART"].dt == end


def test_each_day_shows_what_falls_on_it_by_the_local_clock(shop: Workshop, tmp_path: Path):
    """23:30 UTC is the next day in London in summer: 00:30 BST."""
    code = shop.new()
    shop.clock.set(datetime(2026, 6, 9, 22, 0, tzinfo=UTC))
    shop.mark(code, "1", Act.START)
    ahead = shop.studio.ask(CalendarFor())
    shop.studio.ask(SaveCalendar(tmp_path / "plan.ics"))
    read = recurring_ical_events.of(
        icalendar.Calendar.from_ical((tmp_path / "plan.ics").read_bytes())
    )
    for event in ahead.events.values():
        day = event.start.astimezone(ZoneInfo("Europe/London"))
        start = day.replace(hour=0, minute=0)
        shown = {str(one["UID"]) for one in read.between(start, start + DAY)}
        assert {uid for uid, one in ahead.events.items() if one is event} <= shown


NASTY = "Läufer, 6; «Ohne\\Ende» \U0001f9f5\U0001f469\u200d\U0001f33e “x” " * 4


def test_long_names_with_commas_and_emoji_are_folded_whole(shop: Workshop, tmp_path: Path):
    name = NASTY[:180].strip()
    soaking(shop, name=name)
    to = tmp_path / "plan.ics"
    found = saved(shop, to)
    assert any(title.endswith(name) for title in found)
    data = to.read_bytes()
    assert b"\n" not in data.replace(b"\r\n", b"")
    for line in lines_of(data):
        assert len(line) <= 75
        line.decode("utf-8")  # no sign is cut in two


@given(text=st.text(max_size=600), place=st.text(max_size=300))
@settings(deadline=None, max_examples=60)
def test_whatever_a_text_holds_the_lines_are_short_and_the_text_comes_back(text: str, place: str):
    event = CalendarEvent("26-001/1/start", "26-001", NINE, NINE + HOUR, text, text, place, (NINE,))
    data = calendar_bytes([Told("u", 0, NINE, cancelled=False, event=event)], text)
    assert all(len(line) <= 75 for line in lines_of(data))
    (read,) = icalendar.Calendar.from_ical(data).walk("VEVENT")
    kept = "".join(
        sign for sign in text if sign in "\n\t" or unicodedata.category(sign) not in {"Cc", "Cs"}
    )
    assert str(read.get("DESCRIPTION", "")) == kept
    assert str(read["SUMMARY"]) == " ".join(kept.split())[: LONGEST["title"]] or len(kept) > 250


def test_nothing_new_gives_the_same_file_byte_for_byte(shop: Workshop, tmp_path: Path):
    soaking(shop)
    shop.studio.ask(SaveCalendar(tmp_path / "one.ics"))
    shop.clock.move(minutes=10)
    shop.studio.ask(SaveCalendar(tmp_path / "two.ics"))
    assert (tmp_path / "one.ics").read_bytes() == (tmp_path / "two.ics").read_bytes()


def test_what_moved_keeps_its_name_and_gets_a_greater_number(shop: Workshop, tmp_path: Path):
    code = soaking(shop)
    to = tmp_path / "plan.ics"
    before = by_uid(shop, to)
    shop.clock.move(minutes=3)
    moved = shop.lot(code).open_steps()[0].start + 15 * HOUR
    shop.do(Mark(code, "first-soak", Act.PLAN, at=moved))
    after = by_uid(shop, to)
    changed = [
        uid for uid in before.keys() & after.keys()
        if before[uid].decoded("DTSTART") != after[uid].decoded("DTSTART")
    ]  # fmt: skip
    assert changed
    for uid in changed:
        assert int(after[uid]["SEQUENCE"]) > int(before[uid]["SEQUENCE"])
        assert after[uid].decoded("LAST-MODIFIED") == shop.clock.at.replace(microsecond=0)


def test_what_fell_away_is_called_off_and_comes_back_by_undo(shop: Workshop, tmp_path: Path):
    code = soaking(shop)
    to = tmp_path / "plan.ics"
    before = by_uid(shop, to)
    assert all(one["STATUS"] == "CONFIRMED" for one in before.values())
    shop.do(Mark(code, "first-soak", Act.STOP, note="moths"))
    gone = by_uid(shop, to)
    ahead = {uid for uid, one in before.items() if one.decoded("DTEND") > shop.clock.at}
    assert ahead
    assert gone.keys() == ahead
    for uid, one in gone.items():
        assert one["STATUS"] == "CANCELLED"
        assert one.decoded("DTSTART") == before[uid].decoded("DTSTART")
        assert int(one["SEQUENCE"]) > int(before[uid]["SEQUENCE"])
        assert one.walk("VALARM") == []
    shop.do(Undo(code))
    back = by_uid(shop, to)
    for uid, one in gone.items():
        assert back[uid]["STATUS"] == "CONFIRMED"
        assert int(back[uid]["SEQUENCE"]) > int(one["SEQUENCE"])
    shop.do(Mark(code, "first-soak", Act.STOP, note="moths"))
    shop.studio.ask(SaveCalendar(to))
    shop.clock.move(days=400)
    shop.studio.ask(SaveCalendar(to))
    assert b"VEVENT" not in to.read_bytes(), "long after, nobody needs to be told any more"


def test_one_lot_alone_calls_nothing_off_of_another(shop: Workshop, tmp_path: Path):
    one, other = soaking(shop, "one"), soaking(shop, "other")
    saved(shop, tmp_path / "all.ics")
    found = saved(shop, tmp_path / "one.ics", one)
    assert all(one in title for title in found)
    assert all(event["STATUS"] == "CONFIRMED" for event in found.values())
    assert any(other in title for title in saved(shop, tmp_path / "all.ics"))


def test_names_of_events_tell_two_studios_apart_and_stay_after_a_rename(
    shop: Workshop, tmp_path: Path
):
    code = soaking(shop)
    uids = by_uid(shop, tmp_path / "a.ics").keys()
    shop.do(SetLot(code, name="another name"))
    assert by_uid(shop, tmp_path / "a.ics").keys() == uids
    born = shop.entries(code)[0].written
    assert all(code not in uid and str(born) not in uid for uid in uids)


@pytest.mark.parametrize(
    "spoilt",
    ["", "{", "[]", '{"events": []}', '{"events": {"u": 1}}', '{"events": {"u": {}}}', "[" * 5000],
)
def test_a_spoilt_memory_costs_nothing_but_sharp_numbers(
    shop: Workshop, tmp_path: Path, spoilt: str
):
    code = soaking(shop)
    saved(shop, tmp_path / "a.ics")
    (shop.studio.folder / FILE_NAME).write_text(spoilt, encoding="utf-8")
    assert read_memory(shop.studio.folder) == {}
    found = saved(shop, tmp_path / "a.ics")
    least = shop.entries(code)[-1].number
    assert all(int(one["SEQUENCE"]) >= least for one in found.values())


def test_tendings_are_the_alarms_of_one_event_that_keeps_nobody_busy(
    shop: Workshop, tmp_path: Path
):
    soaking(shop)
    found = saved(shop, tmp_path / "a.ics")
    (stir,) = [one for title, one in found.items() if title.startswith(("Stir", "Turn"))]
    assert stir["TRANSP"] == "TRANSPARENT"
    assert len(stir.walk("VALARM")) > 1


def test_a_cure_has_its_marks_and_a_bath_its_use(shop: Workshop, tmp_path: Path):
    code = shop.new()
    shop.walk_to(code, "cure")
    bath = shop.do(NewBath("chalk", name="crock")).code
    use = shop.clock.at + 3 * DAY
    shop.do(MarkBath(bath, Act.PLAN, planned=use))
    found = saved(shop, tmp_path / "a.ics")
    dry = [one for one in shop.lot(code).steps if one.spec.ask_dry and one.end][-1].end
    ready = found[next(title for title in found if title.startswith("Cured"))]
    assert abs(ready.decoded("DTSTART") - (dry + 90 * DAY)) < 12 * HOUR
    used = found[next(title for title in found if title.startswith("Use"))]
    assert used.decoded("DTSTART") == use.replace(second=0, microsecond=0)
    assert {str(title) for title in saved(shop, tmp_path / "b.ics", bath)} == {
        title for title in found if bath in title
    }


def test_what_waits_does_not_wander_with_the_clock(shop: Workshop):
    code = shop.new()
    shop.mark(code, "1", Act.START)
    shop.clock.move(hours=12)
    shop.mark(code, "1", Act.END)
    shop.clock.move(minutes=30)
    first = {
        one.key: one for one in shop.studio.ask(CalendarFor()).events.values() if "/2/" in one.key
    }
    shop.clock.move(minutes=7)
    later = {one.key: one for one in shop.studio.ask(CalendarFor()).events.values()}
    start = next(iter(first.values()))
    assert later[start.key].start == start.start


def test_a_lot_that_nobody_began_or_planned_has_no_events(shop: Workshop):
    shop.new()
    assert shop.studio.ask(CalendarFor()).events == {}


def test_what_is_known_of_a_lot_is_worked_out_again_where_something_fell_due(shop: Workshop):
    """Worked out twice, with and without what is known, at moments a quarter of an hour apart."""
    code = soaking(shop)
    other = shop.new("second")
    shop.mark(other, "1", Act.START)
    for _ in range(200):
        kept = shop.studio.ask(CalendarFor())
        calendar_work._known.clear()
        fresh = shop.studio.ask(CalendarFor())
        assert kept.events == fresh.events
        shop.clock.move(minutes=15)
    assert code in {one.subject for one in kept.events.values()}


def test_a_lot_whose_journal_does_not_read_keeps_no_other_from_the_calendar(shop: Workshop):
    code, other = soaking(shop), shop.new("second")
    shop.mark(other, "1", Act.START)
    lost = shop.lot(other).method.key
    shop.studio.cache.clear()
    del shop.studio.book[lost]
    assert shop.studio.ask(CalendarFor()).events == {}
    shop.studio._know()
    assert {one.subject for one in shop.studio.ask(CalendarFor()).events.values()} == {code, other}


def test_planned_acts_close_together_are_a_session_as_well(shop: Workshop, tmp_path: Path):
    one, two, far = (shop.new(name) for name in ("one", "two", "far"))
    at = NINE + DAY
    for code, minutes in ((one, 0), (two, 20), (far, 300)):
        shop.do(Mark(code, "1", Act.PLAN, at=at + minutes * MINUTE))
    found = saved(shop, tmp_path / "a.ics")
    (session,) = [event for title, event in found.items() if title.startswith("Session")]
    assert str(session["SUMMARY"]) == "Session: 2 acts, lots: 2"
    assert session.decoded("DTSTART") == at
    assert at + 20 * MINUTE < session.decoded("DTEND") < at + 60 * MINUTE
    assert session["TRANSP"] == "TRANSPARENT"
    assert session.walk("VALARM") == []
    assert one in str(session["DESCRIPTION"])
    assert far not in str(session["DESCRIPTION"])
    shop.do(Mark(two, "1", Act.PLAN, at=at + 200 * MINUTE))
    gone = by_uid(shop, tmp_path / "a.ics")[str(session["UID"])]
    assert gone["STATUS"] == "CANCELLED"
    assert not any(title.startswith("Session") for title in saved(shop, tmp_path / "b.ics", one))


def test_a_code_that_is_not_there_writes_nothing(shop: Workshop, tmp_path: Path):
    with pytest.raises(Refusal, match="no lot 26-777"):
        shop.studio.ask(SaveCalendar(tmp_path / "a.ics", ("26-777",)))
    with pytest.raises(Refusal, match="no bath B26-777"):
        shop.studio.ask(SaveCalendar(tmp_path / "a.ics", ("B26-777",)))
    assert list(tmp_path.glob("*.ics")) == []


def test_quiet_hours_move_an_event_and_its_alarm(shop: Workshop):
    code = soaking(shop)
    before = {one.key: one for one in shop.studio.ask(CalendarFor()).events.values()}
    key = next(key for key in before if key.endswith("/end"))
    night = before[key].start.astimezone(ZoneInfo("Europe/London"))
    shop.do(
        ChangeSettings(
            {
                "quiet_start": f"{(night - 10 * MINUTE):%H:%M}",
                "quiet_end": f"{(night + 90 * MINUTE):%H:%M}",
            }
        )
    )
    after = {one.key: one for one in shop.studio.ask(CalendarFor()).events.values()}
    assert after[key].start != before[key].start
    assert after[key].alarms[0] == after[key].start
    assert code in after[key].title
