"""Ringing: each reminder once, in one notice, never after an answer, whatever is killed.

Notices go to a list, the clock is moved by hand.
"""

from itertools import pairwise

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services import questions as q
from studio_log.services.commands import (
    AnswerReminder,
    ChangeSettings,
    Mark,
    NewMilk,
    RaiseDue,
    Undo,
)
from studio_log.services.studio import RETRY
from tests.support.builders import HOUR, MINUTE, NINE
from tests.support.fixtures import open_workshop


@pytest.fixture
def soaking(shop):
    """A lot whose beans lie in water since nine: earliest 17:00, aim 21:00, latest 03:00."""
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    return code


# -- once, at its moment -------------------------------------------------------------------


def test_the_alarm_is_set_to_the_next_moment_and_the_notice_says_lot_and_act(shop, soaking):
    assert shop.alarm.at == NINE + 8 * HOUR
    assert not shop.ring(at=NINE + 8 * HOUR - MINUTE)
    (notice,) = shop.ring(at=NINE + 8 * HOUR)
    assert notice.title == f"From now on: drain the beans {soaking} runners"
    (notice,) = shop.ring(at=NINE + 12 * HOUR)
    assert notice.title == f"Drain the beans {soaking} runners"
    assert notice.urgency == "now"
    assert "late" not in notice.body
    assert "sour" in notice.body


def test_each_is_raised_once_a_ring(shop, soaking):
    assert len(shop.ring(at=NINE + 12 * HOUR)) == 1
    assert not shop.ring()
    assert not shop.ring(minutes=9)
    again = shop.ring(minutes=1)
    assert [one.title for one in again] == [f"Drain the beans {soaking} runners"]
    record = shop.records(soaking)["1/ready"]
    assert (record.status, record.raise_count) == ("raised", 2)
    assert record.raised_at == NINE + 12 * HOUR


def test_the_gaps_between_rings_grow(shop):
    shop.do(ChangeSettings({"quiet_start": "00:00", "quiet_end": "00:00"}))
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    rung = [at for at, text in shop.ring_on(NINE + 18 * HOUR - MINUTE) if "Drain" in text.title]
    gaps = [later - earlier for earlier, later in pairwise(rung)]
    assert rung[0] == NINE + 12 * HOUR
    assert len(gaps) >= 4
    assert gaps == sorted(gaps)
    assert gaps[-1] > gaps[0]


def test_an_answered_one_never_rings_again(shop, soaking):
    shop.ring(at=NINE + 12 * HOUR)
    shop.do(AnswerReminder(f"{soaking}/1/ready", "done"))
    assert shop.lot(soaking).step(1).end == NINE + 12 * HOUR
    assert shop.records(soaking)["1/ready"].status == "answered"
    rung = shop.ring_on(NINE + 60 * HOUR)
    assert rung
    assert not [text for _, text in rung if any("/1/" in key for key in text.keys)]


def test_an_answer_may_state_its_time(shop, soaking):
    shop.ring(at=NINE + 12 * HOUR + 40 * MINUTE)
    shop.do(AnswerReminder(f"{soaking}/1/ready", "done", at=NINE + 12 * HOUR))
    assert shop.lot(soaking).step(1).end == NINE + 12 * HOUR


def test_an_answer_is_given_once(shop, soaking):
    shop.ring(at=NINE + 12 * HOUR)
    shop.do(AnswerReminder(f"{soaking}/1/ready", "done"))
    before = shop.everything()
    with pytest.raises(Refusal, match="answered already"):
        shop.do(AnswerReminder(f"{soaking}/1/ready", "done"))
    assert shop.everything() == before


def test_an_answer_can_be_taken_back(shop, soaking):
    shop.ring(at=NINE + 12 * HOUR)
    outcome = shop.do(AnswerReminder(f"{soaking}/1/ready", "done"))
    shop.do(Undo(outcome.subject))
    assert shop.lot(soaking).step(1).running
    assert shop.records(soaking)["1/ready"].status == "raised"


@pytest.mark.parametrize(
    ("answer", "rest", "until"),
    [
        ("putoff", {"put_off": 10 * MINUTE}, NINE + 12 * HOUR + 10 * MINUTE),
        ("putoff", {"put_off": 30 * MINUTE}, NINE + 12 * HOUR + 30 * MINUTE),
        ("putoff", {"until_morning": True}, NINE + 22 * HOUR),
    ],
)
def test_one_put_off_is_silent_until_then(shop, soaking, answer, rest, until):
    shop.ring(at=NINE + 12 * HOUR)
    shop.do(AnswerReminder(f"{soaking}/1/ready", answer, **rest))
    key = f"{soaking}/1/ready"
    rung = [at for at, text in shop.ring_on(until + MINUTE) if key in text.keys]
    assert rung[0] == until


@pytest.mark.usefixtures("soaking")
def test_the_consequence_of_putting_off_is_said(shop):
    shop.ring(at=NINE + 12 * HOUR)
    card = next(one for one in shop.studio.ask(q.BenchFor()).now if one.kind == "ready")
    assert "The limit is" in card.put_off_warning
    assert card.if_late in card.put_off_warning


# -- several -------------------------------------------------------------------------------


def test_several_due_together_ring_once_the_most_urgent_first(shop):
    codes = [shop.new(name) for name in ("early", "middle", "late")]
    for hours, code in zip((19, 12.5, 9), codes, strict=True):
        shop.mark(code, "bean-soak", Act.START, at=NINE - hours * HOUR)
    rung = shop.ring()
    assert len(rung) == 1
    lines = rung[0].body.splitlines()
    assert rung[0].title == "3 things need hands"
    assert rung[0].urgency == "spoiling"
    assert [code for line in lines for code in codes if code in line] == codes
    assert "Too long" in lines[0]
    assert "1 h late" in lines[0]
    assert {key.split("/")[0] for key in rung[0].keys} == set(codes)
    assert not shop.ring()


@pytest.mark.usefixtures("soaking")
def test_what_fell_due_while_the_machine_was_off_is_told_at_once_with_how_late(
    shop, tmp_path, clock
):
    other = shop.new("second pair")
    shop.mark(other, "bean-soak", Act.START, at=NINE - 2 * HOUR)
    shop.studio.close()
    clock.set(NINE + 24 * HOUR)
    again = open_workshop(tmp_path / "studio", clock)
    try:
        (notice,) = again.ring()
        assert notice.title == "2 things need hands"
        first, second = notice.body.splitlines()
        assert other in first, "the older danger first"
        assert "8 h late" in first
        assert "6 h late" in second
        assert not again.ring()
    finally:
        again.studio.close()


# -- nights --------------------------------------------------------------------------------


@pytest.mark.usefixtures("soaking")
def test_quiet_hours_hold_everything_until_their_end(shop):
    """Latest is 03:00; its warning waits for 07:00."""
    shop.ring(at=NINE + 12 * HOUR)
    evening = NINE + 13 * HOUR  # 22:00
    for hours in range(9):
        assert not shop.ring(at=evening + hours * HOUR)
        assert shop.alarm.at == evening + 9 * HOUR
    rung = shop.ring(at=evening + 9 * HOUR)
    assert len(rung) == 1
    assert "Too long" in rung[0].title
    assert "4 h late" in rung[0].body


def test_what_spoils_may_ring_at_night_where_the_dyer_allows_it(shop):
    shop.do(ChangeSettings({"spoiling_at_night": True}))
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    rung = shop.ring_on(NINE + 23 * HOUR)
    night = [(at, text) for at, text in rung if NINE + 13 * HOUR <= at < NINE + 22 * HOUR]
    assert night[0][0] == NINE + 18 * HOUR
    assert all(text.urgency == "spoiling" for _, text in night)


@pytest.mark.usefixtures("soaking")
def test_at_night_the_alarm_waits_for_what_may_ring(shop):
    """What is due and may not ring must not set the alarm off again and again."""
    shop.do(ChangeSettings({"spoiling_at_night": True}))
    shop.ring(at=NINE + 13 * HOUR - 5 * MINUTE)
    shop.clock.set(NINE + 13 * HOUR + 30 * MINUTE)
    assert not shop.ring()
    assert shop.alarm.at == NINE + 18 * HOUR


def test_moved_quiet_hours_move_what_is_coming(shop):
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START, at=NINE - 1 * MINUTE)
    shop.clock.move(hours=6)
    shop.do(Mark(code, "1", Act.NOTE, note="x"))
    due = shop.records(code)["1/ready"].rings_at
    assert due == NINE + 12 * HOUR - MINUTE
    shop.do(ChangeSettings({"quiet_start": "20:00"}))
    assert shop.records(code)["1/ready"].rings_at == NINE + 11 * HOUR - 10 * MINUTE


# -- killed, without a bell, deaf ----------------------------------------------------------


class Killed(BaseException):
    """As if the process ended here."""


def test_killed_between_showing_and_recording_it_is_shown_again(shop, soaking, tmp_path, clock):
    seen = []

    def die(text):
        seen.append(text)
        raise Killed

    shop.notice.before = die
    clock.set(NINE + 12 * HOUR)
    with pytest.raises(Killed):
        shop.do(RaiseDue())
    assert shop.records(soaking)["1/ready"].status == "waiting"
    shop.studio.close()
    again = open_workshop(tmp_path / "studio", clock)
    try:
        (notice,) = again.ring(minutes=1)
        assert notice.keys == seen[0].keys
        assert not again.ring()
    finally:
        again.studio.close()


def test_one_that_was_answered_while_it_was_shown_stays_answered(shop, soaking):
    shop.notice.before = lambda _text: shop.do(AnswerReminder(f"{soaking}/1/ready", "done"))
    shop.ring(at=NINE + 12 * HOUR)
    assert shop.records(soaking)["1/ready"].status == "answered"
    shop.notice.before = None
    assert not [one for one in shop.ring(minutes=15) if f"{soaking}/1/ready" in one.keys]


def test_without_the_bell_nothing_rings_and_nothing_is_recorded(shop, soaking):
    shop.bell.mine = False
    assert not shop.ring(at=NINE + 12 * HOUR)
    assert shop.records(soaking)["1/ready"].status == "waiting"
    assert shop.alarm.at == shop.clock.at + RETRY
    shop.bell.mine = True
    assert len(shop.ring(seconds=30)) == 1


def test_a_deaf_channel_leaves_the_window(shop, soaking):
    shop.notice.works = False
    assert len(shop.ring(at=NINE + 12 * HOUR)) == 1
    record = shop.records(soaking)["1/ready"]
    assert record.channels == ("the window",)
    with shop.studio.store.reading() as look:
        attempts = look.deliveries.of(record.key)
    found = [(one.channel, one.ok, one.words) for one in attempts]
    assert found == [("list", False, "deaf"), ("the window", True, "shown")]


def test_two_windows_on_one_studio_ring_once_and_answer_for_both(shop, soaking, tmp_path, clock):
    other = open_workshop(tmp_path / "studio", clock)
    try:
        assert len(shop.ring(at=NINE + 12 * HOUR)) == 1
        assert not other.ring()
        other.do(AnswerReminder(f"{soaking}/1/ready", "done"))
        heard = shop.studio.heard_of_change()
        assert heard is not None
        assert not shop.lot(soaking).step(1).running
        assert not [t for t in shop.ring(minutes=20) if f"{soaking}/1/ready" in t.keys]
        assert shop.studio.heard_of_change() is None
    finally:
        other.studio.close()


# -- short steps, drying -------------------------------------------------------------------


def test_a_short_step_is_counted_down_without_a_notice(shop):
    code = shop.new()
    shop.walk_to(code, "spin-1")
    card = next(one for one in shop.studio.ask(q.BenchFor()).now if one.lot == code)
    assert card.countdown_to == shop.clock.at + 5 * MINUTE
    assert not shop.ring(minutes=5)
    assert shop.records(code)["5/ready"].channels == ("the window",)
    (notice,) = shop.ring(minutes=5)
    assert "Too long" in notice.title, "that it spoils is told by every channel"


def test_still_damp_asks_again_and_dry_ends_it(shop):
    code = shop.new()
    shop.walk_to(code, "dry-1")
    hung = shop.clock.at
    number = next(step.number for step in shop.lot(code).steps if step.slug == "dry-1")
    (asked,) = shop.ring(at=max(hung + 6 * HOUR, shop.studio.next_ring()))
    assert asked.title.startswith("Is it dry?")
    shop.do(AnswerReminder(f"{code}/{number}/is_dry/0", "damp"))
    at = shop.studio.next_ring()
    assert at > shop.clock.at
    (asked,) = shop.ring(at=at)
    assert asked.title.startswith("Is it dry?")
    shop.do(AnswerReminder(f"{code}/{number}/is_dry/1", "done"))
    step = shop.lot(code).step(number)
    assert step.end == shop.clock.at
    assert len(step.damp) == 1


# -- milk ----------------------------------------------------------------------------------


def test_beans_are_to_soak_the_evening_before_the_milk_is_too_old(shop):
    code = shop.new()
    shop.walk_to(code, "first-soak")
    shop.do(NewMilk(lots=(code,), made_at=shop.clock.at - 40 * HOUR))
    shop.mark(code, "first-soak", Act.START)
    rung = shop.ring_on(shop.clock.at + 40 * HOUR)
    told = [(at, text) for at, text in rung if any("use_by" in key for key in text.keys)]
    assert told
    at, _ = told[0]
    assert at < shop.clock.at + 40 * HOUR


@pytest.mark.usefixtures("soaking")
def test_the_same_moment_asked_twice_is_the_same(shop):
    question = q.RemindersFor(within=86400.0)
    assert shop.studio.ask(question) == shop.studio.ask(question)
    shop.clock.move(hours=13)
    late = {one.kind.value: seconds for one, seconds in shop.studio.ask(q.RemindersFor())}
    assert late["ready"] == 3600.0
    for within in (-1.0, float("nan"), float("inf"), 1e12):
        with pytest.raises(Refusal, match="Look ahead"):
            shop.studio.ask(q.RemindersFor(within=within))
