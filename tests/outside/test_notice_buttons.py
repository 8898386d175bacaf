"""The buttons in a notice: what is offered, what a press comes to, and whose signals count.

Names of actions, signals and hints: Desktop Notifications Specification 1.2.
"""

import logging
import queue
import socket
import threading
from collections.abc import Iterator

import pytest
from dbus_fast import Variant

from studio_log.outside.bus import LARGEST
from studio_log.outside.notices import DesktopNotice
from studio_log.services.ports import NoticeText
from tests.outside.service import NAME, FakeService

ABLE = ("body", "body-markup", "actions")
PATIENCE = 10.0
STIR = NoticeText(
    "Stir 26-031", "3 h in", "now", ("a", "b"), (("done", "Stirred"), ("later", "In 10 min"))
)


class Heard:
    """Notes what was pressed and in which thread; can be waited for."""

    def __init__(self) -> None:
        self._all: queue.Queue[tuple[NoticeText, str]] = queue.Queue()
        self.threads: set[str] = set()

    def __call__(self, text: NoticeText, answer: str) -> None:
        self.threads.add(threading.current_thread().name)
        self._all.put((text, answer))

    def next(self) -> tuple[NoticeText, str]:
        return self._all.get(timeout=PATIENCE)

    def empty(self) -> bool:
        return self._all.empty()


@pytest.fixture
def heard() -> Heard:
    return Heard()


@pytest.fixture
def notice(bus: str, heard: Heard) -> Iterator[DesktopNotice]:
    assert bus
    channel = DesktopNotice(acted=heard)
    yield channel
    channel.close()


def test_answers_become_buttons_after_the_click_on_the_notice(
    bus: str, notice: DesktopNotice
) -> None:
    with FakeService(bus, capabilities=ABLE) as service:
        notice.show(STIR)
    assert service.shown[0].actions == [
        "default", "Open", "done", "Stirred", "later", "In 10 min"
    ]  # fmt: skip


@pytest.mark.parametrize("capabilities", [(), ("body",), ("body", "body-markup", "sound")])
def test_a_service_without_buttons_is_sent_none(
    bus: str, notice: DesktopNotice, capabilities: tuple[str, ...]
) -> None:
    with FakeService(bus, capabilities=capabilities) as service:
        assert notice.show(STIR)[0].ok
    assert service.shown[0].actions == []


def test_where_nobody_hears_a_button_none_is_offered(bus: str) -> None:
    channel = DesktopNotice()
    with FakeService(bus, capabilities=ABLE) as service:
        channel.show(STIR)
    channel.close()
    assert service.shown[0].actions == []


def test_hostile_words_of_a_button_are_shown_as_far_as_they_can_be(
    bus: str, notice: DesktopNotice
) -> None:
    answers = (("done", "lone \ud800\x00 half"), ("", "no key"), ("later", " "), ("damp", "x" * 99))
    with FakeService(bus, capabilities=ABLE) as service:
        assert notice.show(NoticeText("Dry?", "", "soon", ("a",), answers))[0].ok
    assert service.shown[0].actions == [
        "default", "Open", "done", "lone ? half", "damp", "x" * 59 + "…"
    ]  # fmt: skip


@pytest.mark.parametrize("unicast", [False, True])
def test_a_press_is_heard_with_its_notice_in_the_listening_thread(
    bus: str, notice: DesktopNotice, heard: Heard, unicast: bool
) -> None:
    with FakeService(bus, capabilities=ABLE, unicast=unicast) as service:
        notice.show(STIR)
        service.invoke(1, "later")
        assert heard.next() == (STIR, "later")
        service.invoke(1, "default")
        assert heard.next() == (STIR, "open")
    assert heard.threads == {"notice bus"}


def test_a_press_in_the_same_breath_as_the_receipt_is_not_lost(
    bus: str, notice: DesktopNotice, heard: Heard
) -> None:
    with FakeService(bus, capabilities=ABLE, at_once="done"):
        for number in range(50):
            text = NoticeText(str(number), "", "now", (str(number),), STIR.answers)
            notice.show(text)
            assert heard.next() == (text, "done")


def test_a_double_click_counts_once_and_a_later_press_again(bus: str, heard: Heard) -> None:
    seconds = [0.0]
    notice = DesktopNotice(acted=heard, monotonic=lambda: seconds[0])
    with FakeService(bus, capabilities=ABLE) as service:
        notice.show(STIR)
        for _ in range(3):
            service.invoke(1, "done")
        service.invoke(1, "default")
        assert [heard.next()[1], heard.next()[1]] == ["done", "open"]
        seconds[0] = 2.5  # the first may have come to nothing
        service.invoke(1, "done")
        assert heard.next() == (STIR, "done")
        notice.show(STIR)
        service.invoke(1, "done")
        assert heard.next() == (STIR, "done")
    notice.close()


def test_a_notice_that_was_dismissed_is_forgotten(
    bus: str, notice: DesktopNotice, heard: Heard
) -> None:
    other = NoticeText("Spin", "", "now", ("c",), (("done", "Spun"),))
    with FakeService(bus, capabilities=ABLE) as service:
        notice.show(STIR)
        notice.show(other)
        service.dismiss(1)
        service.invoke(1, "done")
        service.invoke(2, "done")
        assert heard.next() == (other, "done")
        notice.show(STIR)
    assert service.shown[-1].replaces == 0
    assert heard.empty()


HOSTILE: list[tuple[str, str, list[object]]] = [
    ("ActionInvoked", "us", [99, "done"]),
    ("ActionInvoked", "us", [1, "no such button"]),
    ("ActionInvoked", "us", [1, ""]),
    ("ActionInvoked", "us", [1, "x" * 100_000]),
    ("ActionInvoked", "us", [1, "x" * (LARGEST + 70_000)]),
    ("ActionInvoked", "us", [2**32 - 1, "done"]),
    ("ActionInvoked", "su", ["done", 1]),
    ("ActionInvoked", "is", [1, "done"]),
    ("ActionInvoked", "bs", [True, "done"]),
    ("ActionInvoked", "", []),
    ("ActionInvoked", "usa{sv}", [1, "done", {"a": Variant("v", Variant("as", ["b"]))}]),
    ("NotificationClosed", "s", ["1"]),
    ("NotificationClosed", "uu", [99, 1]),
    ("NotificationClosed", "", []),
    ("NameOwnerChanged", "sss", [NAME, ":1.1", ""]),
    ("ActivationToken", "us", [1, "token"]),
]


def test_signals_that_are_not_for_us_or_make_no_sense_are_passed_over(
    bus: str, notice: DesktopNotice, heard: Heard
) -> None:
    with FakeService(bus, capabilities=ABLE, unicast=True) as service:
        notice.show(STIR)
        for member, signature, body in HOSTILE:
            service.emit(member, signature, body)
        service.emit("NameOwnerChanged", "sss", [NAME, "", ""], interface="org.freedesktop.DBus")
        service.invoke(1, "done")
        assert heard.next() == (STIR, "done")
        assert heard.empty()
        assert notice.state() == (True, "desktop notices work: ring heap answers, with buttons")


def test_another_program_cannot_press_our_buttons(
    bus: str, notice: DesktopNotice, heard: Heard
) -> None:
    with FakeService(bus, capabilities=ABLE) as service:
        notice.show(STIR)
        with FakeService(bus) as intruder:  # the name is taken: it is a guest like any other
            intruder.emit("ActionInvoked", "us", [1, "done"], to=service.shown[0].sender)
            intruder.emit("NotificationClosed", "uu", [1, 2], to=service.shown[0].sender)
        service.invoke(1, "later")
        assert heard.next() == (STIR, "later")
        assert heard.empty()


def test_an_answer_that_fails_is_logged_and_the_next_is_heard(
    bus: str, caplog: pytest.LogCaptureFixture
) -> None:
    answers: queue.Queue[str] = queue.Queue()

    def fail(_text: NoticeText, answer: str) -> None:
        answers.put(answer)
        raise OSError("no room")

    channel = DesktopNotice(acted=fail)
    with FakeService(bus, capabilities=ABLE) as service, caplog.at_level(logging.ERROR):
        channel.show(STIR)
        service.invoke(1, "done")
        service.invoke(1, "later")
        assert [answers.get(timeout=PATIENCE) for _ in range(2)] == ["done", "later"]
        assert channel.show(STIR)[0].ok
    channel.close()
    assert "the answer 'done' to a notice could not be handed on" in caplog.text


def test_a_show_from_the_listening_thread_fails_at_once_instead_of_waiting_for_itself(
    bus: str,
) -> None:
    outcomes: queue.Queue[str] = queue.Queue()
    channel = DesktopNotice(
        acted=lambda text, _answer: outcomes.put(channel.show(text)[0].words),
    )
    with FakeService(bus, capabilities=ABLE) as service:
        channel.show(STIR)
        service.invoke(1, "done")
        said = outcomes.get(timeout=PATIENCE)
        channel.close()
    assert said == "the thread that listens cannot wait for an answer"


def test_a_press_may_close_the_channel(bus: str) -> None:
    closed = threading.Event()

    def acted(_text: NoticeText, _answer: str) -> None:
        channel.close()
        closed.set()

    channel = DesktopNotice(acted=acted)
    with FakeService(bus, capabilities=ABLE) as service:
        channel.show(STIR)
        service.invoke(1, "default")
        assert closed.wait(PATIENCE)
    assert not channel.show(STIR)[0].ok


def test_nonsense_on_the_connection_itself_ends_it_and_the_next_show_has_another(
    bus: str, notice: DesktopNotice, heard: Heard
) -> None:
    with FakeService(bus, capabilities=ABLE) as service:
        notice.show(STIR)
        connection = notice._service._connection  # type: ignore[union-attr]
        assert connection is not None
        connection._socket.shutdown(socket.SHUT_RD)
        connection.join(PATIENCE)
        notice.show(STIR)
        service.invoke(1, "done")
        assert heard.next() == (STIR, "done")
    assert service.shown[0].sender != service.shown[1].sender
    assert service.shown[1].replaces == 1  # the same service: its receipt holds
