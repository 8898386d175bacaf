"""Clocks that are wrong, that jump, and that travel: nothing is lost, doubled or early."""

from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.errors import Question
from studio_log.domain.journal import Act
from studio_log.services import questions as q
from studio_log.services.commands import AnswerReminder, ChangeSettings, Mark, NewMilk, Redo, Undo
from tests.support.builders import DAY, HOUR, MINUTE, NINE
from tests.support.fixtures import open_workshop

READY = NINE + 12 * HOUR
DEAD = datetime(2000, 1, 1, 0, 3, tzinfo=UTC)
"""What a laptop with a dead clock battery believes."""


@pytest.fixture
def soaking(shop):
    shop.do(ChangeSettings({"quiet_start": "00:00", "quiet_end": "00:00"}))
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    return code


def rung(texts, code, kind="ready"):
    return [text for text in texts if f"{code}/1/{kind}" in text.keys]


# -- the clock set forward and back --------------------------------------------------------


@pytest.mark.parametrize("back", [1 * MINUTE, 5 * MINUTE, 9 * MINUTE])
def test_set_back_by_minutes_it_does_not_ring_twice(shop, soaking, back):
    assert rung(shop.ring(at=READY), soaking)
    told = shop.ring_on_from(READY - back, READY + 10 * MINUTE - timedelta(seconds=1))
    assert not rung(told, soaking), "it rang at this moment already"
    assert rung(shop.ring(at=READY + 10 * MINUTE), soaking), "and rings again after its gap"


@pytest.mark.parametrize("days", [1, 3, 400])
def test_one_rung_by_a_clock_that_was_days_ahead_rings_at_its_moment(shop, soaking, days):
    shop.ring(at=READY + days * DAY)
    shop.clock.set(NINE + HOUR)
    assert not rung(shop.ring(), soaking)
    assert shop.records(soaking)["1/ready"].status == "waiting"
    assert not rung(shop.ring(at=READY - MINUTE), soaking), "nothing rings early"
    assert rung(shop.ring(at=READY), soaking)


def test_one_overdue_rings_on_by_its_gaps_after_the_clock_went_back_a_day(shop, soaking):
    """Due at 21:00; the clock runs a day ahead, rings, and is put right at 22:00."""
    shop.ring(at=READY + DAY)
    shop.clock.set(READY + HOUR)
    assert not rung(shop.ring(), soaking), "the dyer has just heard it"
    again = shop.ring_on(READY + 2 * HOUR)
    assert [one for at, one in again if f"{soaking}/1/ready" in one.keys]


def test_set_forward_by_days_all_is_told_in_one_notice_oldest_danger_first(shop, soaking):
    other = shop.new("second")
    shop.mark(other, "bean-soak", Act.START, at=NINE - 4 * HOUR)
    (text,) = shop.ring(at=READY + 21 * DAY)
    first, second = text.body.splitlines()
    assert other in first
    assert soaking in second
    assert "late" in first
    assert not shop.ring(minutes=1)


# -- a dead clock battery ------------------------------------------------------------------


def test_a_dead_battery_rings_nothing_and_comes_back_without_ringing_twice(shop, soaking):
    shop.ring(at=READY)
    shop.clock.set(DEAD)
    assert not shop.ring()
    assert not shop.ring(hours=3)
    assert not shop.ring(at=READY + 5 * MINUTE), "it rang five minutes ago"
    assert rung(shop.ring(at=READY + 10 * MINUTE), soaking)


@pytest.mark.parametrize(
    "act",
    [
        lambda code: Mark(code, "1", Act.END),
        lambda code: Mark(code, "1", Act.NOTE, note="smells of beans"),
        lambda code: AnswerReminder(f"{code}/1/ready", "done"),
        Undo,
        Redo,
        lambda code: NewMilk(lots=(code,), litres=1.0),
    ],
)
def test_acts_from_before_the_last_entry_are_asked_about(shop, soaking, act):
    shop.ring(at=READY)
    before = shop.everything()
    shop.clock.set(DEAD)
    with pytest.raises(Question, match=r"clock says Sat 1 January 2000.*last entry was written"):
        shop.do(act(soaking))
    assert shop.everything() == before


def test_who_insists_is_asked_no_more(shop, soaking):
    shop.clock.set(DEAD)
    shop.mark(soaking, "1", Act.NOTE, note="the clock is wrong", sure=True)
    shop.clock.move(minutes=1)
    shop.mark(soaking, "1", Act.NOTE, note="still wrong", sure=True)
    assert [one.note for one in shop.entries(soaking)[-2:]] == ["the clock is wrong", "still wrong"]
    assert shop.new("a lot of the year 2000").startswith("00-")


@pytest.mark.usefixtures("soaking")
def test_the_status_says_that_the_clock_is_wrong(shop):
    assert not [one for one in shop.studio.ask(q.StatusFor()).warnings if "clock" in one]
    shop.clock.set(DEAD)
    (words,) = [one for one in shop.studio.ask(q.StatusFor()).warnings if "clock" in one]
    assert "1 January 2000" in words
    assert "9 June 2026" in words


def test_a_clock_corrected_by_a_minute_asks_nothing(shop, soaking):
    shop.clock.move(minutes=-1)
    assert shop.mark(soaking, "1", Act.NOTE, note="by the network's time")


# -- off for weeks, and away ---------------------------------------------------------------


def test_a_laptop_off_for_three_weeks_tells_all_once(shop, soaking, tmp_path, clock):
    codes = [soaking, *(shop.new(f"lot {n}") for n in range(11))]
    for code in codes[1:]:
        shop.mark(code, "bean-soak", Act.START)
    shop.studio.close()
    clock.set(NINE + 21 * DAY)
    again = open_workshop(tmp_path / "studio", clock)
    try:
        texts = again.ring()
        assert [text.title for text in texts] == ["12 things need hands"]
        assert {key.split("/")[0] for key in texts[0].keys} == set(codes)
        assert not again.ring(minutes=1)
    finally:
        again.studio.close()


def test_a_journey_moves_the_night_and_nothing_that_is_measured(shop):
    """Quiet hours are local; the soak's length is not. London to Kolkata: 4 h 30 min ahead."""
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START, at=NINE - MINUTE)
    shop.ring()
    assert shop.records(code)["1/ready"].rings_at == READY - MINUTE
    due = shop.records(code)["1/past"].due
    shop.clock.place = "Asia/Kolkata"
    shop.ring(minutes=1)
    after = shop.records(code)
    assert after["1/past"].due == due
    # 21:00 in London is 01:30 in Kolkata: the moment before bed there is 21:50, that is 17:20.
    assert after["1/ready"].rings_at < READY - 3 * HOUR
