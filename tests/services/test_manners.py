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
