"""The alarm against the real clock, a hurried one and one moved by hand."""

import threading
from datetime import UTC, datetime, timedelta

import pytest

from studio_log.outside.alarm import SchedulerAlarm
from studio_log.services.clock import HurriedClock, SystemClock
from tests.outside.alarm_kit import PATIENCE, QUIET, SOON, START, HandClock, Ring, an_alarm


@pytest.fixture
def ring() -> Ring:
    return Ring()


def test_it_rings_at_the_moment_and_not_before(ring: Ring) -> None:
    clock = SystemClock()
    with an_alarm(ring, clock) as alarm:
        at = clock.now() + timedelta(milliseconds=150)
        alarm.set(at)
        assert ring.wait_for(1)
        assert clock.now() >= at
        assert not ring.wait_for(2, QUIET)


def test_a_later_setting_takes_the_place_of_the_earlier(ring: Ring) -> None:
    clock = SystemClock()
    with an_alarm(ring, clock) as alarm:
        alarm.set(clock.now() + SOON)
        alarm.set(clock.now() + timedelta(hours=1))
        assert not ring.wait_for(1, QUIET)


def test_none_takes_the_alarm_away_also_twice(ring: Ring) -> None:
    clock = SystemClock()
    with an_alarm(ring, clock) as alarm:
        alarm.set(clock.now() + SOON)
        alarm.set(None)
        alarm.set(None)
        assert not ring.wait_for(1, QUIET)


def test_a_moment_past_rings_at_once(ring: Ring) -> None:
    with an_alarm(ring, HandClock()) as alarm:
        alarm.set(START - timedelta(days=3))
        assert ring.wait_for(1)


def test_a_hurried_clock_is_kept_pace_with(ring: Ring) -> None:
    clock = HurriedClock(START, 36_000, "Europe/London")
    with an_alarm(ring, clock) as alarm:
        at = clock.now() + timedelta(hours=2)  # a fifth of a second
        alarm.set(at)
        assert ring.wait_for(1, 5.0)
        assert clock.now() >= at


def test_a_clock_that_jumps_ahead_rings_at_the_heartbeat(ring: Ring) -> None:
    clock = HandClock()
    with an_alarm(ring, clock, timedelta(milliseconds=50)) as alarm:
        alarm.set(START + timedelta(hours=6))
        assert not ring.wait_for(1, QUIET)
        clock.at += timedelta(hours=7)
        assert ring.wait_for(1)


def test_an_unheard_ring_is_repeated_at_the_heartbeat_until_set_anew(ring: Ring) -> None:
    with an_alarm(ring, HandClock(), timedelta(milliseconds=50)) as alarm:
        alarm.set(START)
        assert ring.wait_for(3)
        alarm.set(None)
        settled = ring.count + 1  # one may be on its way
        assert not ring.wait_for(settled + 1, QUIET)


def test_a_ring_that_fails_is_logged_and_tried_again(caplog: pytest.LogCaptureFixture) -> None:
    again = threading.Event()
    calls: list[int] = []

    def broken() -> None:
        calls.append(1)
        if len(calls) > 1:
            again.set()
            return
        raise OSError("the disk is full")

    alarm = SchedulerAlarm(broken, HandClock(), heartbeat=timedelta(milliseconds=50))
    alarm.set(START)
    assert again.wait(PATIENCE)
    alarm.close()
    assert "ringing failed" in caplog.text


def test_a_slow_listener_that_sets_the_past_again_is_not_called_in_a_storm() -> None:
    calls: list[int] = []
    done = threading.Event()
    alarm: SchedulerAlarm | None = None

    def set_again() -> None:
        calls.append(1)
        assert alarm is not None
        alarm.set(START)

    alarm = SchedulerAlarm(set_again, HandClock(), heartbeat=timedelta(seconds=60))
    alarm.set(START)
    done.wait(0.55)
    alarm.close()
    assert 2 <= len(calls) <= 7


def test_it_rings_in_one_thread_of_its_own(ring: Ring) -> None:
    with an_alarm(ring, HandClock(), timedelta(milliseconds=30)) as alarm:
        alarm.set(START)
        assert ring.wait_for(4)
    assert len(ring.threads) == 1
    assert threading.current_thread().name not in ring.threads


def test_a_closed_alarm_stays_silent_and_can_be_closed_twice(ring: Ring) -> None:
    clock = SystemClock()
    alarm = SchedulerAlarm(ring, clock)
    alarm.set(clock.now() + SOON)
    alarm.close()
    counted = ring.count
    alarm.set(clock.now())
    alarm.close()
    assert not ring.wait_for(counted + 1, QUIET)


def test_the_furthest_moment_there_is_can_be_set(ring: Ring) -> None:
    with an_alarm(ring, HandClock()) as alarm:
        alarm.set(datetime.max.replace(tzinfo=UTC))
        assert not ring.wait_for(1, 0.1)
