"""Buses and services that hang, lie or end: nobody is held up, and the next notice finds its way.

The limits are shortened here, except in the tests marked long, which keep to the real ones.
"""

import contextlib
import queue
import signal
import socket
import subprocess
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from jeepney.bus_messages import message_bus

from studio_log.outside import bus as bus_room
from studio_log.outside import notice_service, notices
from studio_log.outside.bus import LARGEST, Connection, _Cutter
from studio_log.outside.notice_parcel import BusError, Limit
from studio_log.outside.notices import DesktopNotice
from studio_log.services.ports import NoticeText
from tests.outside.service import FakeService, bus_daemon, wait_until
from tests.support import threads

STIR = NoticeText("Stir", "3 h in", "now", ("a",), (("done", "Stirred"),))
HELD_UP_S = 3.5
"""3 s and the slack of a busy machine."""
Daemon = subprocess.Popen[str]


@pytest.fixture
def daemon(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[tuple[str, Daemon]]:
    with bus_daemon(tmp_path) as (address, process):
        monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", address)
        yield address, process


@pytest.fixture
def notice(request: pytest.FixtureRequest) -> Iterator[DesktopNotice]:
    if "daemon" in request.fixturenames:
        request.getfixturevalue("daemon")
    channel = DesktopNotice(acted=lambda _text, _answer: None)
    yield channel
    channel.close()


@pytest.fixture
def soon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(notices, "SERVICE_S", 0.4)
    monkeypatch.setattr(notices, "WHOLE_S", 0.6)
    monkeypatch.setattr(notices, "LEAST_PLYER_S", 0.2)
    monkeypatch.setattr(bus_room, "GREETING_S", 0.2)


@contextlib.contextmanager
def strange_bus(folder: Path, says: bytes | None) -> Iterator[str]:
    """Listen like a bus. None: accept nobody; else greet each caller and then say this, once."""
    with socket.socket(socket.AF_UNIX) as door, contextlib.ExitStack() as guests:
        door.bind(str(folder / "strange"))
        door.listen(8)

        def serve() -> None:
            with contextlib.suppress(OSError):
                while True:
                    guest = guests.enter_context(door.accept()[0])
                    guest.recv(1024)
                    guest.sendall(b"OK 0123456789abcdef0123456789abcdef\r\n" if says else b"")
                    guest.recv(1024)
                    guest.sendall(says or b"")

        host = threading.Thread(target=serve)
        if says is not None:
            host.start()
        try:
            yield f"unix:path={folder / 'strange'}"
        finally:
            with contextlib.suppress(OSError):
                door.shutdown(socket.SHUT_RDWR)
            if says is not None:
                host.join()


def took(act: Callable[[], object]) -> float:
    begun = time.monotonic()
    act()
    return time.monotonic() - begun


def open_files() -> int:
    return len(list(Path("/proc/self/fd").iterdir()))


STRANGE = {
    "never accepts": None,
    "accepts and never speaks": b"",
    "greets and stops in a message": b"l\x02\x01\x01\x00\x00",
    "greets and talks nonsense": b"HTTP/1.1 400 Bad Request\r\n\r\n" * 9,
    "announces a message without end": b"l\x04\x00\x01" + b"\xff" * 60,
    "sends a head that means nothing": b"l\x02\x00\x01\0\0\0\0\x01\0\0\0\x08\0\0\0" + b"\xee" * 90,
}


@pytest.mark.usefixtures("soon")
@pytest.mark.parametrize("says", STRANGE.values(), ids=STRANGE)
def test_a_bus_that_is_none_is_given_up_in_time(
    says: bytes | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, notice: DesktopNotice
) -> None:
    with strange_bus(tmp_path, says) as address:
        monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", address)
        begun = time.monotonic()
        done = notice.show(STIR)
        notice.look()
        assert time.monotonic() - begun < 2.0
    assert [one.ok for one in done] == [False, False]
    assert done[0].words.startswith(("the desktop session", "no answer within"))
    assert notice.state()[1] == "desktop notices are off: no service answers; ringing here only"


@pytest.mark.usefixtures("soon")
def test_a_bus_that_stands_still_is_left_and_found_again(
    daemon: tuple[str, Daemon], notice: DesktopNotice
) -> None:
    address, process = daemon
    with FakeService(address) as service:
        notice.show(STIR)
        process.send_signal(signal.SIGSTOP)
        try:
            assert took(lambda: notice.show(STIR)) < 2.0
            assert took(lambda: notice.revise(STIR.keys, None)) < 2.0
        finally:
            process.send_signal(signal.SIGCONT)
        assert notice.show(STIR)[0].ok
        assert notice.look()[0]
    assert service.shown[-1].sender != service.shown[0].sender


@pytest.mark.usefixtures("soon")
@pytest.mark.parametrize("mute", ["GetServerInformation", "GetCapabilities", "Notify"])
def test_a_service_that_stops_answering_is_left_and_found_again(
    daemon: tuple[str, Daemon], notice: DesktopNotice, mute: str
) -> None:
    with FakeService(daemon[0], mute=frozenset({mute})) as service:
        held_up = took(lambda: notice.show(STIR))
        done = notice.show(STIR)
        service.mute = frozenset()
        assert notice.show(STIR)[0].ok
    assert held_up < 2.0
    assert done[0].words == "no answer within 0.4 s"


@pytest.mark.usefixtures("soon")
def test_a_service_that_does_not_take_a_notice_away_holds_nobody_up(
    daemon: tuple[str, Daemon], notice: DesktopNotice
) -> None:
    with FakeService(daemon[0], mute=frozenset({"CloseNotification"})) as service:
        notice.show(STIR)
        assert took(lambda: notice.revise(STIR.keys, None)) < 2.0
        assert notice.show(STIR)[0].ok
    assert service.closed == []


def test_a_bus_that_is_killed_in_a_call_ends_the_call_at_once(
    daemon: tuple[str, Daemon], notice: DesktopNotice, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PATH", "")  # no second channel: the first one's time is looked at
    address, process = daemon
    outcome: queue.Queue[str] = queue.Queue()
    with FakeService(address, mute=frozenset({"Notify"})) as service:
        showing = threading.Thread(target=lambda: outcome.put(notice.show(STIR)[0].words))
        showing.start()
        wait_until(lambda: "Notify" in service.asked)
        process.kill()
        process.wait()
        assert outcome.get(timeout=1.5) == bus_room.ENDED
        showing.join()
    assert notice.state()[1] == "desktop notices are off: no service answers; ringing here only"


def test_a_connection_that_comes_about_after_the_closing_is_given_up(
    daemon: tuple[str, Daemon], notice: DesktopNotice, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(notice_service, "LAST_WAIT_S", 0.05)
    monkeypatch.setattr(notices, "SERVICE_S", 20.0)
    monkeypatch.setattr(bus_room, "GREETING_S", 20.0)
    monkeypatch.setenv("PATH", "")
    before = threads.running()
    words: queue.Queue[str] = queue.Queue()
    daemon[1].send_signal(signal.SIGSTOP)
    try:
        showing = threading.Thread(target=lambda: words.put(notice.show(STIR)[0].words))
        showing.start()
        opening = notice._service._opening  # type: ignore[union-attr]
        wait_until(opening.locked)
        notice.close()
    finally:
        daemon[1].send_signal(signal.SIGCONT)
    assert words.get(timeout=10.0) == "the program is ending"
    showing.join()
    assert threads.left_behind(before) == []


def test_a_message_too_large_to_concern_us_is_passed_over_and_the_next_is_read() -> None:
    cutter = _Cutter()
    small = message_bus.Hello().serialise(7)
    large = message_bus.AddMatch("x" * LARGEST).serialise(8)
    stream = small + large + small + large[:9]
    got = [one for at in range(0, len(stream), 999) for one in cutter.cut(stream[at : at + 999])]
    assert got == [small, small]
    assert len(cutter._kept) == 9


@pytest.mark.usefixtures("soon")
def test_a_show_that_hangs_holds_up_neither_the_state_nor_another_thread_for_long(
    daemon: tuple[str, Daemon], notice: DesktopNotice
) -> None:
    with FakeService(daemon[0], mode="silent"):
        showing = [threading.Thread(target=notice.show, args=(STIR,)) for _ in range(4)]
        begun = time.monotonic()
        for thread in showing:
            thread.start()
        assert notice.state() == (True, "desktop notices: not asked yet")
        assert any(thread.is_alive() for thread in showing)
        for thread in showing:
            thread.join()
        assert time.monotonic() - begun < 2.0


@pytest.mark.usefixtures("soon")
def test_closing_ends_a_call_that_hangs(
    daemon: tuple[str, Daemon], notice: DesktopNotice, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(notices, "SERVICE_S", 60.0)
    outcome: queue.Queue[bool] = queue.Queue()
    with FakeService(daemon[0], mode="silent") as service:
        showing = threading.Thread(target=lambda: outcome.put(notice.show(STIR)[0].ok))
        showing.start()
        wait_until(lambda: bool(service.asked))
        notice.close()
        assert outcome.get(timeout=5.0) is False
        showing.join()


@pytest.mark.usefixtures("soon")
def test_fifty_faults_leave_no_threads_and_no_open_files(
    daemon: tuple[str, Daemon], notice: DesktopNotice, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(notices, "SERVICE_S", 0.02)
    monkeypatch.setenv("PATH", "")
    with FakeService(daemon[0]) as service:
        notice.show(STIR)
        before = threads.running()
        files = open_files()
        service.mode = "silent"
        for _ in range(50):
            assert not notice.show(STIR)[0].ok
        service.mode = "ok"
        monkeypatch.setattr(notices, "SERVICE_S", 2.0)
        assert notice.show(STIR)[0].ok
        for one in notice._service._old:  # type: ignore[union-attr]
            one.join(5.0)
        new = threads.running() - before
        assert [one.name for one in new] == ["notice bus"]
        assert open_files() <= files


def test_a_bus_that_reads_nothing_holds_up_no_sender(daemon: tuple[str, Daemon]) -> None:
    connection = Connection(lambda _me, _message: None, lambda _connection: None, Limit(2.0))
    daemon[1].send_signal(signal.SIGSTOP)
    try:
        huge = message_bus.AddMatch("x" * 8_000_000)  # no socket's store holds it
        begun = time.monotonic()
        with pytest.raises(BusError, match=r"no answer within 0\.3 s"):
            connection.call(huge, Limit(0.3))
        assert time.monotonic() - begun < 2.0
        assert connection.over
        assert connection.join(5.0)
    finally:
        daemon[1].send_signal(signal.SIGCONT)


def test_what_nobody_foresaw_is_a_delivery_that_failed_and_is_logged(
    daemon: tuple[str, Daemon],
    notice: DesktopNotice,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
) -> None:
    with FakeService(daemon[0]):
        notice.show(STIR)
        monkeypatch.setattr(notice._service, "_open", lambda _limit: 1 / 0)
        assert notice.show(STIR)[0].words == "it failed (ZeroDivisionError)"
        assert not notice.look()[0]
        notice.revise(STIR.keys, None)
    assert caplog.text.count("was not foreseen") == 3


@pytest.mark.long
@pytest.mark.parametrize("says", [None, b"", b"l\x02\x01\x01\x00\x00"])
def test_a_bus_that_hangs_takes_three_seconds_at_most(
    says: bytes | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, notice: DesktopNotice
) -> None:
    with strange_bus(tmp_path, says) as address:
        monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", address)
        for act in (lambda: notice.show(STIR), notice.look, lambda: notice.show(STIR)):
            assert took(act) < HELD_UP_S


@pytest.mark.long
def test_a_hung_service_or_bus_takes_three_seconds_at_most(
    daemon: tuple[str, Daemon], notice: DesktopNotice
) -> None:
    address, process = daemon
    with FakeService(address) as service:
        notice.show(STIR)
        service.mode = "silent"
        for act in (lambda: notice.show(STIR), notice.look, lambda: notice.show(STIR)):
            assert took(act) < HELD_UP_S
        service.mode = "ok"
        assert notice.show(STIR)[0].ok
        process.send_signal(signal.SIGSTOP)
        try:
            for act in (lambda: notice.show(STIR), notice.look, notice.close):
                assert took(act) < HELD_UP_S
        finally:
            process.send_signal(signal.SIGCONT)
