"""Notices go by a messenger of their own and are kept true while they stand on the screen."""

import threading
from concurrent.futures import Future

import pytest

from studio_log.domain.journal import Act
from studio_log.services import questions as q
from studio_log.services.commands import AnswerReminder, ChangeSettings, NoteShown, Undo
from studio_log.services.ports import NoticeText, Raised
from studio_log.services.studio import RETRY
from studio_log.services.worker import ThreadWorker
from tests.support.builders import HOUR, MINUTE, NINE

TWELVE_HOURS_ON = NINE + 12 * HOUR


class HandWorker:
    """Keeps what it is handed until the test lets it run, as a slow service would."""

    def __init__(self):
        self.kept = []

    def submit(self, task, *args):
        future = Future()
        self.kept.append((future, task, args))
        return future

    def run(self):
        while self.kept:
            future, task, args = self.kept.pop(0)
            try:
                future.set_result(task(*args))
            except Exception as error:  # noqa: BLE001 - the future carries it
                future.set_exception(error)

    def close(self):
        self.run()


@pytest.fixture
def soaking(shop):
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    return code


@pytest.fixture
def slow(shop):
    worker = HandWorker()
    shop.studio.telling.send_by(worker, lambda call: call())
    return worker


def ready(code):
    return f"{code}/1/ready"


# -- the messenger -------------------------------------------------------------------------


def test_it_is_recorded_only_once_it_was_shown(shop, soaking, slow):
    assert not shop.ring(at=TWELVE_HOURS_ON)
    assert shop.records(soaking)["1/ready"].status == "waiting"
    slow.run()
    assert shop.records(soaking)["1/ready"].status == "raised"
    assert len(shop.notice.shown) == 1


def test_while_it_is_being_shown_it_is_not_shown_again(shop, soaking, slow):
    shop.ring(at=TWELVE_HOURS_ON)
    for _ in range(5):
        shop.ring(seconds=1)
    assert shop.alarm.at == shop.clock.at + RETRY
    slow.run()
    shop.ring()
    slow.run()
    assert len(shop.notice.shown) == 1
    assert shop.records(soaking)["1/ready"].raise_count == 1


def test_an_answer_is_taken_while_a_service_hangs_and_its_notice_goes(shop, soaking, slow):
    shop.ring(at=TWELVE_HOURS_ON)
    shop.do(AnswerReminder(ready(soaking), "done"))
    assert shop.records(soaking)["1/ready"].status == "answered"
    slow.run()
    assert shop.records(soaking)["1/ready"].status == "answered"
    (text,) = shop.notice.shown
    assert shop.notice.revised == [(text.keys, None)]


def test_a_real_messenger_hands_home_to_the_studio_s_thread(shop, soaking):
    home, messenger = ThreadWorker(), ThreadWorker("messenger")
    seen = []
    shop.notice.before = lambda _text: seen.append(threading.current_thread().name)
    shop.studio.telling.send_by(messenger, home.submit)
    try:
        shop.ring(at=TWELVE_HOURS_ON)
        messenger.close()
    finally:
        home.close()
    assert seen[0].startswith("messenger")
    assert shop.records(soaking)["1/ready"].status == "raised"


def test_a_notice_that_breaks_is_recorded_as_such(shop, soaking, caplog):
    def broken(_text):
        raise ZeroDivisionError("no bus at all")

    shop.notice.before = broken
    shop.ring(at=TWELVE_HOURS_ON)
    assert "could not be shown" in caplog.text
    assert shop.records(soaking)["1/ready"].channels == ("the window",)


# -- what stands on the screen -------------------------------------------------------------


def two_due(shop):
    codes = [shop.new(name) for name in ("one", "two")]
    for code in codes:
        shop.mark(code, "bean-soak", Act.START)
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    assert text.title == "2 things need hands"
    return codes, text


def test_an_answered_one_leaves_the_notice_and_the_other_stays(shop):
    (one, two), text = two_due(shop)
    shop.do(AnswerReminder(ready(one), "done"))
    keys, left = shop.notice.revised[-1]
    assert keys == text.keys
    assert left.title == f"Drain the beans {two} two"
    assert not [key for key in left.keys if key.startswith(one)]
    shop.do(AnswerReminder(ready(two), "done"))
    assert shop.notice.revised[-1] == (left.keys, None)
    assert shop.studio.telling.standing == ()


def test_one_put_off_leaves_the_screen_and_comes_back(shop, soaking):
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    shop.do(AnswerReminder(ready(soaking), "putoff", put_off=10 * MINUTE))
    assert shop.notice.revised[-1] == (text.keys, None)
    assert shop.ring(minutes=10)


def test_one_that_rings_again_alone_leaves_the_older_notice(shop):
    """Of two told together the second is put off; the first rings again by itself."""
    (one, two), _ = two_due(shop)
    shop.do(AnswerReminder(ready(two), "putoff", put_off=12 * MINUTE))
    shop.ring(minutes=10)  # the first, again
    shop.ring(minutes=2)  # the second
    standing = [key for keys in shop.studio.telling.standing for key in keys]
    assert sorted(standing) == sorted(set(standing)), "no reminder stands in two notices"
    assert {ready(one), ready(two)} <= set(standing)


def test_an_answer_in_another_process_takes_the_notice_away(shop, soaking, tmp_path, clock):
    from tests.support.fixtures import open_workshop

    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    other = open_workshop(tmp_path / "studio", clock)
    try:
        other.do(AnswerReminder(ready(soaking), "done"))
    finally:
        other.studio.close()
    assert shop.studio.heard_of_change() is not None
    assert shop.notice.revised == [(text.keys, None)]


# -- what an earlier process left ----------------------------------------------------------


def opened_anew(shop, left):
    """Give the studio to a process that finds these notices on the screen."""
    from tests.support.fixtures import open_workshop

    anew = open_workshop(shop.studio.folder, shop.clock)
    anew.notice.left = left
    return anew


def test_what_was_answered_while_nobody_rang_is_taken_away_at_once(shop):
    (one, two), text = two_due(shop)
    shop.studio.notice = None  # killed
    shop.do(AnswerReminder(ready(one), "done"))
    anew = opened_anew(shop, (("gone/1/ready",), text.keys))
    try:
        anew.ring()  # and what comes after the answer
        (keys, left), gone = anew.notice.revised
        assert (keys, left.title) == (text.keys, f"Drain the beans {two} two")
        assert gone == (("gone/1/ready",), None)
        assert anew.studio.telling.standing[0] == left.keys
        anew.do(AnswerReminder(ready(two), "done"))
        assert anew.notice.revised[-1] == (left.keys, None)
        anew.ring()
        assert anew.notice.bells == ["taken over"], "once"
    finally:
        anew.studio.close()


def test_what_still_rings_is_left_as_it_is(shop, soaking):
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    anew = opened_anew(shop, (text.keys,))
    heard = []
    anew.studio.listeners.append(heard.append)
    try:
        assert not anew.ring()
        assert anew.notice.revised == []
        assert anew.studio.telling.standing == (text.keys,)
        shop.do(AnswerReminder(ready(soaking), "done"))
        anew.studio.heard_of_change()
        assert anew.notice.revised == [(text.keys, None)]
    finally:
        anew.studio.close()


def test_one_that_rings_again_at_once_is_not_taken_away_with_its_older_notice(shop, soaking):
    """Put off while nobody rang, and due again when the next process starts."""
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    shop.studio.notice = None  # killed
    shop.do(AnswerReminder(ready(soaking), "putoff", put_off=10 * MINUTE))
    anew = opened_anew(shop, (text.keys,))
    worker = HandWorker()
    anew.studio.telling.send_by(worker, lambda call: call())
    try:
        anew.ring(minutes=10)
        worker.run()
        assert [one.keys for one in anew.notice.shown] == [text.keys]
        assert anew.notice.revised == []
        assert anew.studio.telling.standing == (text.keys,)
    finally:
        anew.studio.close()


def test_notices_come_and_go_with_the_bell(shop, soaking):
    shop.bell.mine = False
    shop.ring()
    shop.ring()
    assert shop.notice.bells == []
    shop.bell.mine = True
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    assert shop.notice.bells == ["taken over"]
    shop.bell.mine = False
    shop.ring()
    shop.ring()
    assert shop.notice.bells == ["taken over", "handed over"]
    shop.do(AnswerReminder(ready(soaking), "done"))
    assert shop.notice.revised == [], "another process's affair"
    shop.bell.mine, shop.notice.left = True, (text.keys,)
    shop.ring()
    assert shop.notice.bells[2:] == ["taken over"]
    assert shop.notice.revised == [(text.keys, None)]


def test_what_is_taken_over_after_the_bell_was_lost_is_left_alone(shop, slow):
    shop.notice.left = (("gone/1/ready",),)
    shop.ring()
    shop.bell.mine = False
    shop.ring()
    slow.run()
    assert shop.notice.bells == ["taken over", "handed over"]
    assert shop.studio.telling.standing == ()
    assert shop.notice.revised == []


def test_a_taking_over_that_breaks_holds_nothing_up(shop, soaking, monkeypatch, caplog):
    def broken():
        raise ZeroDivisionError("no bus at all")

    monkeypatch.setattr(shop.notice, "take_over", broken)
    assert shop.ring(at=TWELVE_HOURS_ON)
    assert "were not taken over" in caplog.text
    assert shop.records(soaking)["1/ready"].status == "raised"


def test_a_studio_without_a_bell_takes_nothing_over(shop):
    shop.studio.bell = None
    shop.notice.left = (("gone/1/ready",),)
    shop.ring()
    assert (shop.notice.bells, shop.notice.revised) == ([], [])


# -- answers in the notice -----------------------------------------------------------------


def test_one_reminder_can_be_answered_in_its_notice(shop, soaking):
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    assert text.answers == (("done", "Drained"), ("later", "In 10 min"))
    shop.studio.answer_notice(text, "done")
    assert shop.lot(soaking).step(1).end == TWELVE_HOURS_ON
    back = shop.studio.ask(q.BenchFor()).take_back
    shop.do(Undo(back.subject))
    assert shop.lot(soaking).step(1).running


def test_is_it_dry_has_both_answers(shop):
    code = shop.new()
    shop.walk_to(code, "dry-1")
    shop.clock.set(shop.studio.next_ring())
    (text,) = shop.ring()
    assert [answer for answer, _ in text.answers] == ["done", "damp", "later"]
    shop.studio.answer_notice(text, "damp")
    number = int(text.answers_to.split("/")[1])
    assert len(shop.lot(code).step(number).damp) == 1


def test_several_can_be_put_off_together_each_once(shop):
    codes, text = two_due(shop)
    assert text.answers == (("later", "In 10 min"),)
    before = len(shop.everything()[codes[0]])
    shop.studio.answer_notice(text, "later")
    assert len(shop.everything()[codes[0]]) == before + 1
    assert not shop.ring(minutes=9)
    (again,) = shop.ring(minutes=1)
    assert again.title == "2 things need hands"


def test_a_button_pressed_after_the_answer_changes_nothing_and_says_so(shop, soaking):
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    shop.do(AnswerReminder(ready(soaking), "done"))
    before = shop.everything()
    shop.studio.answer_notice(text, "done")
    assert shop.everything() == before
    assert shop.notice.shown[-1].title == "Not written down"
    assert "answered already" in shop.notice.shown[-1].body
    shop.studio.answer_notice(text, "later")
    assert shop.everything() == before


@pytest.mark.usefixtures("soaking")
def test_a_doubtful_answer_is_not_written_and_said(shop):
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    shop.clock.set(NINE - HOUR)  # the clock is set back behind the last entry
    before = shop.everything()
    shop.studio.answer_notice(text, "done")
    assert shop.everything() == before
    assert "Open Studio Log" in shop.notice.shown[-1].body


# -- channels ------------------------------------------------------------------------------


def test_where_nobody_can_see_it_it_is_tried_again_and_never_called_raised(shop, soaking):
    """A service without a window whose desktop takes no notice."""
    shop.studio.shows_here = ""
    shop.notice.works = False
    shop.ring(at=TWELVE_HOURS_ON)
    record = shop.records(soaking)["1/ready"]
    assert (record.status, record.channels) == ("waiting", ())
    assert shop.alarm.at == shop.clock.at + RETRY
    for _ in range(4):
        shop.ring(seconds=30)
    with shop.studio.store.reading() as look:
        assert len(look.deliveries.of(record.key)) == 1, "the same failure is recorded once"
    shop.notice.works = True
    shop.ring(seconds=30)
    record = shop.records(soaking)["1/ready"]
    assert (record.status, record.channels) == ("raised", ("list",))


def test_each_record_says_by_which_channels_it_was_shown(shop, soaking):
    shop.ring(at=TWELVE_HOURS_ON)
    assert shop.records(soaking)["1/ready"].channels == ("list", "the window")
    shop.do(NoteShown((ready(soaking),), "the tray", "handed to the tray"))
    record = shop.records(soaking)["1/ready"]
    assert record.channels == ("list", "the window", "the tray")
    assert record.status == "raised"


def test_the_window_hears_before_and_after(shop, soaking):
    heard = []
    shop.studio.listeners.append(heard.append)
    shop.notice.works = False
    shop.ring(at=TWELVE_HOURS_ON)
    before, after = [one for one in heard if isinstance(one, NoticeText | Raised)]
    assert isinstance(before, NoticeText)
    assert after.text == before
    assert not after.on_desktop
    assert soaking in before.title


def test_a_heap_of_reminders_is_told_in_a_notice_of_eight_lines(shop):
    for number in range(20):
        shop.mark(shop.new(f"lot {number}"), "bean-soak", Act.START)
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    lines = text.body.splitlines()
    assert text.title == "20 things need hands"
    assert len(lines) == 8
    assert lines[-1] == "… and 13 more on the bench."


def test_after_a_clock_set_back_an_unheard_one_does_not_stay_silent_for_days(shop, soaking):
    shop.studio.shows_here = ""
    shop.notice.works = False
    shop.ring(at=TWELVE_HOURS_ON + 72 * HOUR)
    shop.notice.works = True
    (text,) = shop.ring(at=TWELVE_HOURS_ON)
    assert soaking in text.title


def test_a_look_ahead_that_nobody_could_see_is_told_later(shop, soaking):
    shop.studio.shows_here = ""
    shop.do(ChangeSettings({"look_ahead": "09:30"}))
    shop.clock.set(NINE + 25 * HOUR)
    shop.notice.works = False
    shop.ring()
    assert not shop.ring(seconds=5), "it is tried again after half a minute"
    shop.notice.works = True
    (text,) = shop.ring(seconds=30)
    assert "Today: " in text.body
    assert soaking in text.title
