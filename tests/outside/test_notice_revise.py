"""Notices that are put right or taken away once something was answered elsewhere."""

import threading
from collections.abc import Iterator

import pytest

from studio_log.outside.notice_parcel import Limit, Receipt
from studio_log.outside.notice_receipts import MOST_REMEMBERED, Receipts
from studio_log.outside.notices import DesktopNotice
from studio_log.services.ports import Delivery, NoticeText
from tests.outside.service import FakeService
from tests.support import threads

BOTH = NoticeText("2 things need hands", "Stir\nSpin", "now", ("a", "b"), (("later", "In 10 min"),))
ONE = NoticeText("Spin", "26-031", "now", ("b",), (("done", "Spun"),))


@pytest.fixture
def notice(bus: str) -> Iterator[DesktopNotice]:
    assert bus
    channel = DesktopNotice(acted=lambda _text, _answer: None)
    yield channel
    channel.close()


def test_a_notice_is_taken_away_for_exactly_its_keys_in_any_order(
    bus: str, notice: DesktopNotice
) -> None:
    with FakeService(bus) as service:
        notice.show(BOTH)
        notice.show(NoticeText("Wring", "", "now", ("c",)))
        for keys in (("a",), ("a", "b", "c"), ("z",), ()):
            notice.revise(keys, None)
        assert service.closed == []
        notice.revise(("b", "a"), None)
        notice.revise(("b", "a"), None)
    assert service.closed == [1]


# Hints: Desktop Notifications Specification 1.2, "Hints"; a category of a program's own begins
# with x- and its name, "Categories" (from memory).
def test_a_revision_takes_the_same_place_without_a_sound_and_goes_by_its_new_keys(
    bus: str, notice: DesktopNotice
) -> None:
    with FakeService(bus) as service:
        notice.show(BOTH)
        notice.revise(("b", "a"), ONE)
        notice.revise(("a", "b"), None)
        assert service.closed == []
        notice.revise(("b",), None)
    first, second = service.shown
    assert (second.replaces, second.title, second.body) == (1, "Spin", "26-031")
    hints = {
        "urgency": 1,
        "desktop-entry": "studio-log",
        "category": "x-studio-log.reminder",
        "resident": False,
        "transient": False,
    }
    assert first.hints == hints
    assert second.hints == hints | {"suppress-sound": True}
    assert service.closed == [1]


def test_a_revision_never_shows_what_was_not_on_the_screen(bus: str, notice: DesktopNotice) -> None:
    with FakeService(bus) as service:
        notice.revise(("b",), ONE)
        notice.show(BOTH)
        service.dismiss(1)
        notice.look()  # its answer comes after the signal
        notice.revise(("a", "b"), ONE)
    assert [one.title for one in service.shown] == [BOTH.title]


def test_two_notices_that_come_to_tell_the_same_become_one(bus: str, notice: DesktopNotice) -> None:
    with FakeService(bus) as service:
        notice.show(ONE)
        notice.show(BOTH)
        notice.revise(("a", "b"), ONE)
        assert service.closed == [1]
        notice.revise(("b",), None)
    assert service.closed == [1, 2]


def test_a_service_that_was_started_anew_gets_no_numbers_of_the_one_before(
    bus: str, notice: DesktopNotice
) -> None:
    with FakeService(bus, name="first") as first:
        notice.show(BOTH)
        assert notice.state()[1] == "desktop notices work: first answers, without buttons"
    with FakeService(bus, name="second", capabilities=("actions",)) as second:
        second.shown.clear()
        notice.revise(("a", "b"), ONE)
        notice.revise(("a", "b"), None)
        assert (second.shown, second.closed) == ([], [])
        assert notice.show(BOTH)[0].ok
        assert notice.state()[1] == (
            "desktop notices work: second answers, with buttons, titles only"
        )
    (shown,) = second.shown
    assert (first.shown[0].replaces, shown.replaces) == (0, 0)
    assert (shown.title, shown.body) == ("2 things need hands: Stir · Spin", "")
    assert shown.actions == ["default", "Open", "later", "In 10 min"]


def test_where_the_service_does_not_replace_the_earlier_notice_is_taken_away(
    bus: str, notice: DesktopNotice
) -> None:
    with FakeService(bus, replacing=False) as service:
        notice.show(BOTH)
        notice.show(BOTH)
        notice.revise(BOTH.keys, ONE)
        notice.revise(BOTH.keys, None)
        assert service.closed == [1, 2]
        notice.revise(ONE.keys, None)
    assert service.closed == [1, 2, 3]


def test_what_the_service_can_do_is_asked_once(bus: str, notice: DesktopNotice) -> None:
    with FakeService(bus) as service:
        for _ in range(3):
            notice.show(BOTH)
        notice.look()
        notice.revise(BOTH.keys, None)
    assert service.asked == [
        "GetServerInformation", "GetCapabilities", *["Notify"] * 3,
        "GetServerInformation", "CloseNotification",
    ]  # fmt: skip


def test_nothing_can_be_revised_without_a_service(bus: str, notice: DesktopNotice) -> None:
    assert bus
    assert not notice.show(BOTH)[0].ok
    notice.revise(BOTH.keys, ONE)
    notice.revise(BOTH.keys, None)
    with FakeService(bus) as service:
        notice.revise(BOTH.keys, ONE)
    assert service.asked == []


def test_a_revision_that_is_refused_is_borne(bus: str, notice: DesktopNotice) -> None:
    with FakeService(bus) as service:
        notice.show(BOTH)
        service.mode = "error"
        notice.revise(BOTH.keys, ONE)
        notice.revise(BOTH.keys, None)
        service.mode = "ok"
        assert notice.show(ONE)[0].ok
    assert service.asked.count("Notify") == 3


def test_closing_is_final_may_be_done_twice_and_from_any_thread(bus: str) -> None:
    before = threads.running()
    notice = DesktopNotice()
    with FakeService(bus) as service:
        notice.show(BOTH)
        closing = [threading.Thread(target=notice.close) for _ in range(4)]
        for thread in closing:
            thread.start()
        for thread in closing:
            thread.join()
        notice.close()
        assert {one.name for one in threads.running() - before} <= {service._thread.name}
        done = notice.show(ONE)
        notice.revise(BOTH.keys, None)
        assert [(one.ok, one.words) for one in done] == [(False, "the program is ending")]
        assert notice.look() == (False, "desktop notices are off: the program is ending")
    assert service.closed == []
    assert len(service.shown) == 1


def test_a_channel_that_was_never_used_opens_nothing(bus: str) -> None:
    before = threads.running()
    notice = DesktopNotice()
    assert notice.state() == (True, "desktop notices: not asked yet")
    assert notice.stale()
    assert threads.running() == before
    notice.close()
    assert bus


def test_five_hundred_notices_leave_one_thread_and_three_hundred_receipts(
    bus: str, notice: DesktopNotice
) -> None:
    before = threads.running()
    with FakeService(bus) as service:
        for number in range(500):
            assert notice.show(NoticeText("Stir", "", "soon", (str(number % 400),)))[0].ok
        new = {one.name for one in threads.running() - before} - {service._thread.name}
        assert new == {"notice bus"}
        assert len(notice._receipts) == MOST_REMEMBERED
        assert len(notice._receipts._groups) == MOST_REMEMBERED
        connection = notice._service._connection  # type: ignore[union-attr]
        assert connection is not None
        assert connection._waiting == {}
        assert len({one.sender for one in service.shown}) == 1
        for number in range(400):
            notice.revise((str(number),), None)
        assert len(notice._receipts) == 0
        assert notice._receipts._groups == {}


def test_two_threads_that_tell_the_same_at_once_leave_one_notice(bus: str) -> None:
    notice = DesktopNotice()
    with FakeService(bus) as service:
        for round_ in range(20):
            text = NoticeText("Stir", "", "now", (str(round_),))
            gate = threading.Barrier(2)

            def show(text: NoticeText = text, gate: threading.Barrier = gate) -> None:
                gate.wait()
                notice.show(text)

            showing = [threading.Thread(target=show) for _ in range(2)]
            for thread in showing:
                thread.start()
            for thread in showing:
                thread.join()
        notice.close()
    on_screen = {one.receipt for one in service.shown} - set(service.closed)
    assert len(on_screen) == 20


def test_receipts_forget_the_oldest_and_those_of_other_services() -> None:
    receipts = Receipts()
    text = NoticeText("Stir", "", "now", ("a",), (("done", "Stirred"),))
    assert receipts.keep(Receipt("x", 1), text, None) == set()
    assert receipts.keep(Receipt("x", 2), text, None) == {Receipt("x", 1)}
    assert receipts.keep(Receipt("y", 1), text, None) == set()  # x is no longer there to ask
    assert receipts.press(Receipt("x", 1), "done") is None
    assert receipts.press(Receipt("y", 1), "done") == (text, "done")
    receipts.keep_only("x")
    assert receipts.of(("a",)) is None
    assert len(receipts) == 0


def test_a_limit_never_falls_below_nought() -> None:
    assert Limit(-1.0).left() == 0.0
    assert 0.0 < Limit(5.0).left() <= 5.0


def test_the_delivery_of_a_replaced_notice_names_its_receipt(
    bus: str, notice: DesktopNotice
) -> None:
    with FakeService(bus):
        words = [notice.show(BOTH)[0], notice.show(ONE)[0], notice.show(BOTH)[0]]
    channel = "desktop (notification service)"
    assert words == [
        Delivery(channel, ok=True, words=f"shown, receipt {number}") for number in (1, 2, 1)
    ]
