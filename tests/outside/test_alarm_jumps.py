"""The alarm where clocks are set, the machine slept, or the dyer travels; and what a beat costs."""

import threading
import time
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from studio_log.outside.alarm import APART, HEARTBEAT, LEAST_GAP, ClockJumps, SchedulerAlarm
from studio_log.services.clock import HurriedClock, SystemClock
from tests.outside.alarm_kit import PATIENCE, START, HandClock, Ring, SetClock, an_alarm

QUIET = 0.25
MINUTES, HOURS, DAYS = timedelta(minutes=7), timedelta(hours=1), timedelta(days=21)
BEAT = timedelta(milliseconds=50)


@pytest.fixture
def ring() -> Ring:
    return Ring()


def test_the_heartbeat_keeps_the_promises_made_of_it() -> None:
    """At most 0.05 wake-ups a second, and told within 35 s of waking: the project's own bars."""
    assert 1 / HEARTBEAT.total_seconds() <= 0.05
    noticed = HEARTBEAT + APART
    assert noticed <= timedelta(seconds=35)


@pytest.mark.parametrize(
    ("by_the_clock", "by_time_itself", "jumped"),
    [
        (33.0, 33.0, False),
        (33.02, 33.0, False),  # a machine under load
        (34.5, 33.0, False),
        (31.5, 33.0, False),
        (35.5, 33.0, True),
        (30.5, 33.0, True),
        (-3567.0, 33.0, True),  # an hour back
        (8 * 3600.0, 12.0, True),  # a night asleep: the monotonic clock stood still
        (21 * 86_400.0, 5.0, True),
    ],
)
def test_a_jump_is_told_from_a_clock_that_goes(
    by_the_clock: float, by_time_itself: float, jumped: bool
) -> None:
    """Linux, clock_gettime(2): CLOCK_MONOTONIC does not count time that the system is suspended."""
    clock, steady = HandClock(), [1_000.0]
    jumps = ClockJumps(clock, lambda: steady[0])
    clock.at += timedelta(seconds=by_the_clock)
    steady[0] += by_time_itself
    assert jumps.jumped() is jumped
    assert not jumps.jumped(), "it was told once"


def test_a_hurried_clock_has_not_jumped_until_it_is_put_forward() -> None:
    steady = [50.0]
    clock = HurriedClock(START, 600.0, "Europe/London", monotonic=lambda: steady[0])
    jumps = ClockJumps(clock, lambda: steady[0])
    steady[0] += 33
    assert not jumps.jumped()
    clock.jump(clock.now() + timedelta(hours=1))  # six seconds at this pace
    assert jumps.jumped()


@pytest.mark.parametrize("by", [MINUTES, HOURS, DAYS])
def test_set_forward_past_the_moment_it_rings_at_the_next_beat(ring: Ring, by: timedelta) -> None:
    clock = SetClock()
    with an_alarm(ring, clock, BEAT) as alarm:
        alarm.set(clock.now() + by - timedelta(seconds=60))
        assert not ring.wait_for(1, QUIET)
        clock.off = by
        assert ring.wait_for(1)
        alarm.set(None)
        settled = ring.count + 1  # one may be on its way
        assert not ring.wait_for(settled + 1, QUIET)


@pytest.mark.parametrize("by", [MINUTES, -HOURS, DAYS, -DAYS])
def test_after_any_jump_everything_is_looked_at_anew_once(ring: Ring, by: timedelta) -> None:
    """Also with the moment still ahead, or with none set: what is due is the studio's to say."""
    clock = SetClock()
    with an_alarm(ring, clock, BEAT) as alarm:
        alarm.set(clock.now() + timedelta(days=60))
        assert not ring.wait_for(1, 0.2)
        clock.off = by
        assert ring.wait_for(1)
        assert not ring.wait_for(2, QUIET)
        alarm.set(None)
        clock.off = timedelta(0)
        assert ring.wait_for(2)
        assert not ring.wait_for(3, QUIET)


@pytest.mark.parametrize("by", [MINUTES, DAYS])
def test_after_a_jump_back_nothing_is_told_before_its_moment(by: timedelta) -> None:
    """The listener tells what is due by its clock, as the studio does."""
    clock = SetClock()
    due = clock.now() + timedelta(milliseconds=250)
    told: list[datetime] = []
    looks: list[int] = []
    seen = threading.Event()

    def tell() -> None:
        looks.append(1)
        if clock.now() >= due and not told:
            told.append(clock.now())
            seen.set()
        alarm.set(None if told else due)

    alarm = SchedulerAlarm(tell, clock, heartbeat=BEAT)
    alarm.set(due)
    clock.off = -by
    early = seen.wait(0.8)
    looked = len(looks)
    clock.off = timedelta(0)
    rang = seen.wait(PATIENCE)
    alarm.close()
    assert not early
    assert looked == 1, "the jump itself, and not the moment by the old clock"
    assert rang
    assert len(told) == 1
    assert told[0] >= due


def test_the_moment_is_kept_after_a_small_jump_back(ring: Ring) -> None:
    """The scheduler waits by one clock and the moment stands on the other: neither rings early."""
    clock = SetClock()
    with an_alarm(ring, clock, timedelta(seconds=60)) as alarm:
        at = clock.now() + timedelta(milliseconds=200)
        alarm.set(at)
        clock.off = -timedelta(milliseconds=400)
        assert ring.wait_for(1)
        assert clock.now() >= at


def test_a_journey_is_looked_at_once(ring: Ring) -> None:
    clock = SetClock()
    with an_alarm(ring, clock, BEAT) as alarm:
        alarm.set(clock.now() + timedelta(days=3))
        assert not ring.wait_for(1, 0.2)
        clock.travel("Pacific/Auckland")
        assert ring.wait_for(1)
        assert not ring.wait_for(2, QUIET)


def test_a_beat_that_finds_nothing_wakes_nobody(ring: Ring) -> None:
    """Counted by Linux: proc(5), voluntary_ctxt_switches."""
    clock = SystemClock()
    before = threading.enumerate()
    with an_alarm(ring, clock, timedelta(milliseconds=40)) as alarm:
        alarm.set(clock.now() + timedelta(days=3))
        time.sleep(0.2)  # waits until its threads have come to rest
        own = [one for one in threading.enumerate() if one not in before]
        begun = {one.name: switches(one) for one in own}
        time.sleep(0.8)  # waits for twenty beats
        woken = {one.name: switches(one) - begun[one.name] for one in own}
    assert woken.pop("alarm heartbeat") >= 5  # the count does count
    assert set(woken.values()) == {0}
    assert ring.count == 0


def switches(thread: threading.Thread) -> int:
    status = Path(f"/proc/self/task/{thread.native_id}/status").read_text("utf-8")
    return int(status.partition("\nvoluntary_ctxt_switches:")[2].split()[0])


@pytest.mark.parametrize("pace", [60.0, 36_000.0])
def test_the_heartbeat_does_not_take_a_hurried_clock_for_one_that_jumps(
    ring: Ring, pace: float
) -> None:
    clock = HurriedClock(START, pace, "Europe/London")
    with an_alarm(ring, clock, timedelta(milliseconds=30)) as alarm:
        alarm.set(START + timedelta(days=400))
        assert not ring.wait_for(1, QUIET)
        clock.jump(START + timedelta(days=300))
        assert ring.wait_for(1)


def test_it_looks_again_at_once_and_keeps_its_moment(ring: Ring) -> None:
    clock = SystemClock()
    with an_alarm(ring, clock) as alarm:
        alarm.set(clock.now() + timedelta(milliseconds=600))
        alarm.look_again()
        assert ring.wait_for(1, 0.4)
        assert ring.wait_for(2)
        assert not ring.wait_for(3, QUIET)


def test_it_looks_again_without_a_moment_set_and_whoever_sets_one_meanwhile(ring: Ring) -> None:
    with an_alarm(ring, HandClock()) as alarm:
        alarm.look_again()
        assert ring.wait_for(1)
        alarm.look_again()  # waits out the least gap
        alarm.set(START + timedelta(hours=1))
        alarm.set(None)
        assert ring.wait_for(2)


def test_many_that_wake_it_at_once_do_not_make_a_storm(ring: Ring) -> None:
    with an_alarm(ring, HandClock()) as alarm:
        begun = time.monotonic()
        wakers = [threading.Thread(target=alarm.look_again) for _ in range(40)]
        for one in wakers:
            one.start()
        for one in wakers:
            one.join()
        took = timedelta(seconds=time.monotonic() - begun)
        assert ring.wait_for(1)
        # One a gap while they come, which is slowly on a busy machine, and one after the last.
        most = took // LEAST_GAP + 2
        assert not ring.wait_for(most + 1, QUIET)


def test_a_look_that_fails_is_tried_again_at_the_heartbeat(
    ring: Ring, caplog: pytest.LogCaptureFixture
) -> None:
    def broken_once() -> None:
        ring()
        if ring.count == 1:
            raise OSError("the disk is full")

    alarm = SchedulerAlarm(broken_once, HandClock(), heartbeat=BEAT)
    alarm.look_again()
    again = ring.wait_for(2)
    quiet = not ring.wait_for(3, QUIET)
    alarm.close()
    assert again
    assert quiet
    assert "ringing failed" in caplog.text


def test_clocks_that_cannot_be_compared_do_not_stop_the_heart(
    ring: Ring, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    clock = SetClock()
    with an_alarm(ring, clock, BEAT) as alarm:
        alarm.set(clock.now() + timedelta(days=1))
        with monkeypatch.context() as broken:
            broken.setattr(clock, "zone", broken_zone)
            assert ring.wait_for(2)
        time.sleep(0.2)  # waits out what is on its way
        settled = ring.count
        assert not ring.wait_for(settled + 1, QUIET)
        clock.off = timedelta(days=2)
        assert ring.wait_for(settled + 1)
    assert "the clocks could not be compared" in caplog.text


def broken_zone() -> str:
    raise OSError("the disk is gone")


def test_a_closed_alarm_does_not_look_again(ring: Ring) -> None:
    alarm = SchedulerAlarm(ring, HandClock())
    alarm.close()
    alarm.look_again()
    assert not ring.wait_for(1, 0.2)
