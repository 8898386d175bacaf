"""Manners: do not disturb, and the looks ahead of the day and of the evening."""

from datetime import timedelta

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services import questions as q
from studio_log.services.commands import AnswerReminder, ChangeSettings, Hush
from tests.support.builders import DAY, HOUR, MINUTE, NINE
from tests.support.fixtures import open_workshop

READY = NINE + 12 * HOUR


@pytest.fixture
def soaking(shop):
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    return code


# -- do not disturb ------------------------------------------------------------------------


def test_for_an_hour_nothing_rings_and_then_all_is_told_at_once(shop, soaking):
    other = shop.new("second")
    shop.mark(other, "bean-soak", Act.START, at=NINE - 10 * MINUTE)
    shop.clock.set(READY - 20 * MINUTE)
    shop.ring()
    said = shop.do(Hush(HOUR)).words
    assert said == "Nothing rings until today 21:40; then all that is due is told."
    for minutes in (15, 20, 24):
        assert not shop.ring(minutes=minutes)
    assert shop.alarm.at == READY + 40 * MINUTE
    (text,) = shop.ring(at=READY + 40 * MINUTE)
    assert {key.split("/")[0] for key in text.keys} == {soaking, other}


def test_until_morning_is_until_quiet_hours_end(shop, soaking):
    shop.clock.set(READY - MINUTE)
    shop.do(Hush(until_morning=True))
    assert not shop.ring(at=READY + HOUR - MINUTE)
    (text,) = shop.ring(at=NINE + 22 * HOUR)
    assert soaking in text.title


def test_it_can_be_ended_at_once(shop, soaking):
    shop.do(Hush(24 * HOUR))
    assert not shop.ring(at=READY)
    assert shop.do(Hush()).words == "Reminders may ring."
    (text,) = shop.ring()
    assert soaking in text.title


def test_what_spoils_rings_through_it_only_where_the_dyer_said_so(shop, soaking):
    no_night = {"quiet_start": "00:00", "quiet_end": "00:00"}
    shop.do(ChangeSettings({"spoiling_at_night": True, **no_night}))
    shop.clock.set(READY + 5 * HOUR + 59 * MINUTE)
    shop.ring()
    assert "Only what spoils rings" in shop.do(Hush(HOUR)).words
    (text,) = shop.ring(minutes=1)
    assert text.urgency == "spoiling"
    shop.do(ChangeSettings({"spoiling_at_night": False}))
    assert not shop.ring(minutes=10), "and its next ring waits"
    assert soaking in text.title


@pytest.mark.parametrize("span", [timedelta(0), -HOUR, 27 * HOUR, 400 * DAY])
def test_a_senseless_span_is_refused(shop, span):
    before = shop.studio.settings
    with pytest.raises(Refusal, match="a minute to a day"):
        shop.do(Hush(span))
    assert shop.studio.settings == before


def test_it_outlasts_a_restart_and_holds_in_every_window(shop, soaking, tmp_path, clock):
    shop.do(Hush(13 * HOUR))
    other = open_workshop(tmp_path / "studio", clock)
    try:
        assert not other.ring(at=READY)
        assert "do not disturb until" in other.studio.ask(q.StatusFor()).next_ring
        assert other.ring(at=NINE + 13 * HOUR) == [], "22:00: quiet hours have begun"
        assert other.ring(at=NINE + 22 * HOUR)
    finally:
        other.studio.close()
    assert soaking


def test_an_end_set_by_a_clock_that_was_wrong_does_not_silence_for_days(shop, soaking):
    shop.clock.set(NINE + 30 * DAY)
    shop.do(Hush(HOUR))
    shop.clock.set(READY)
    (text,) = shop.ring()
    assert soaking in text.title


def test_answers_and_acts_go_on_meanwhile(shop, soaking):
    shop.ring(at=READY)
    shop.do(Hush(HOUR))
    shop.do(AnswerReminder(f"{soaking}/1/ready", "done"))
    assert shop.lot(soaking).step(1).end == READY


# -- looks ahead ---------------------------------------------------------------------------


def looking(shop, **settings):
    shop.do(ChangeSettings({"look_ahead": "08:00", "evening_look": "20:00", **settings}))


def look_records(shop):
    with shop.studio.store.reading() as look:
        return {one.kind: one for one in look.reminders.of("studio")}


def test_the_day_is_told_at_its_hour_once(shop, soaking):
    looking(shop)
    shop.clock.set(NINE + DAY - 2 * HOUR)  # 07:00, quiet hours end; the beans are past
    shop.do(AnswerReminder(f"{soaking}/1/past", "done"))
    at = NINE + DAY - HOUR  # 08:00
    told = [text for when, text in shop.ring_on(at) if when == at]
    looks = [text for text in told if "Today" in f"{text.title} {text.body}"]
    assert len(looks) == 1
    assert look_records(shop)["look_ahead"].answer == "told"
    assert look_records(shop)["look_ahead"].channels == ("list", "the window")
    again = [text for _, text in shop.ring_on(at + 5 * HOUR)]
    assert not [text for text in again if "Today" in f"{text.title} {text.body}"]


def test_what_is_due_and_the_look_ahead_are_one_notice(shop, soaking):
    looking(shop, look_ahead="09:30")
    shop.studio.raise_due()
    (text,) = shop.ring(at=NINE + DAY + HOUR)  # 10:00: off overnight
    assert soaking in text.title
    assert text.body.splitlines()[-1].startswith("Today: ")
    assert text.keys


def test_an_evening_says_what_to_start_tonight(shop):
    """Milk is strained; a first soak of 10 to 18 h begun before bed ends in the morning."""
    code = shop.new()
    shop.walk_to(code, "first-soak")
    shop.clock.set(NINE + 11 * HOUR + DAY)  # 20:00 on the next day
    shop.ring()
    looking(shop)
    texts = shop.ring()
    (text,) = [one for one in texts if "onight: " in one.body]
    assert code in text.body
    record = look_records(shop)["evening_look"]
    assert (record.status, record.answer) == ("answered", "told")
    assert not [one for one in shop.ring(minutes=5) if "onight: " in one.body]


def test_nothing_to_do_is_not_told(shop):
    looking(shop)
    assert [text for _, text in shop.ring_on(NINE + 3 * DAY)] == []
    assert look_records(shop) == {}


def test_in_quiet_hours_and_hushed_no_look_is_told_and_an_old_one_never(shop, soaking):
    looking(shop)
    shop.do(Hush(24 * HOUR))
    assert soaking
    shop.ring(at=NINE + 23 * HOUR)
    (text,) = shop.ring(at=NINE + 24 * HOUR)
    assert text.body.count("Today: ") == 1, "within six hours of its hour it is worth telling"
    later = shop.ring(at=NINE + 30 * HOUR)
    assert not [one for one in later if "Today: " in one.body]


def test_a_laptop_off_for_weeks_tells_one_look_only(shop, soaking, tmp_path, clock):
    looking(shop)
    shop.studio.close()
    clock.set(NINE + 21 * DAY)
    again = open_workshop(tmp_path / "studio", clock)
    try:
        (text,) = again.ring()
        assert soaking in text.title
        assert text.body.count("Today: ") == 1
        assert again.ring(minutes=1) == []
    finally:
        again.studio.close()


def test_the_alarm_is_set_to_the_looks(shop, soaking):
    assert soaking
    before = shop.studio.next_ring()
    looking(shop, look_ahead="09:10", evening_look="")
    assert before == NINE + 8 * HOUR
    assert shop.alarm.at == NINE + 10 * MINUTE


def test_switched_off_they_wake_nobody(shop):
    looking(shop, look_ahead="", evening_look="")
    assert shop.studio.next_ring() is None
