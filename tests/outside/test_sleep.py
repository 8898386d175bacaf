"""Waking from sleep, told by a stand-in logind on a private bus.

The signal is that of org.freedesktop.login1(5): PrepareForSleep(true) before sleep, (false) after.
"""

import contextlib
import socket
import threading
import time
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from jeepney import DBusAddress, HeaderFields, Message, new_signal
from jeepney.bus_messages import message_bus
from jeepney.io.blocking import DBusConnection, open_dbus_connection

from studio_log.outside import sleep
from studio_log.outside.logind import BUS, Logind
from studio_log.outside.notice_parcel import Limit
from studio_log.outside.sleep import HEARD, SEEN, SleepWatch
from tests.outside import service
from tests.outside.alarm_kit import HandClock, Ring, an_alarm
from tests.outside.service import wait_until

NAME = "org.freedesktop.login1"
PATH = "/org/freedesktop/login1"
MANAGER = DBusAddress(PATH, NAME, "org.freedesktop.login1.Manager")
QUIET = 0.3


@pytest.fixture
def system_bus(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[str]:
    with service.private_bus(tmp_path) as address:
        monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", address)
        yield address


@pytest.fixture
def woken() -> Ring:
    return Ring()


@contextlib.contextmanager
def logind(address: str, name: str = NAME) -> Iterator[DBusConnection]:
    """Somebody on the bus; the login service, if that name is asked for."""
    with open_dbus_connection(bus=address) as connection:
        if name:
            connection.send_and_get_reply(message_bus.RequestName(name))
        yield connection


@contextlib.contextmanager
def a_watch(woken: Callable[[], None]) -> Iterator[SleepWatch]:
    watch = SleepWatch(woken)
    try:
        yield watch
    finally:
        watch.close()


def prepare(falls_asleep: bool, to: str = "", path: str = PATH) -> Message:
    manager = DBusAddress(path, NAME, MANAGER.interface)
    signal = new_signal(manager, "PrepareForSleep", "b", (falls_asleep,))
    if to:
        signal.header.fields[HeaderFields.destination] = to
    return signal


def heard(watch: SleepWatch) -> bool:
    return watch.words == HEARD


def listening(watch: SleepWatch, there: bool = True) -> None:
    """Wait until it has looked for logind and found what there is."""
    wait_until(lambda: heard(watch) is there)


def test_waking_is_told_and_falling_asleep_is_not(system_bus: str, woken: Ring) -> None:
    with logind(system_bus) as service_of_logins, a_watch(woken) as watch:
        listening(watch)
        service_of_logins.send(prepare(True))
        assert not woken.wait_for(1, QUIET)
        service_of_logins.send(prepare(False))
        assert woken.wait_for(1)
        service_of_logins.send(prepare(True))
        service_of_logins.send(prepare(False))
        assert woken.wait_for(2)
        assert not woken.wait_for(3, QUIET)
    assert woken.threads == {"sleep watch"}


def test_waking_rings_an_alarm_set_far_ahead(system_bus: str, woken: Ring) -> None:
    with logind(system_bus) as service_of_logins, an_alarm(woken, HandClock()) as alarm:
        alarm.set(datetime(2030, 1, 1, tzinfo=UTC))
        with a_watch(alarm.look_again) as watch:
            listening(watch)
            service_of_logins.send(prepare(False))
            assert woken.wait_for(1)


def test_whoever_is_not_logind_is_not_believed(system_bus: str, woken: Ring) -> None:
    """Neither to all nor sent to us alone, which no match rule holds back."""
    with (
        logind(system_bus) as true_one,
        logind(system_bus, "org.example.Sham") as sham,
        a_watch(woken) as watch,
    ):
        listening(watch)
        (names,) = sham.send_and_get_reply(message_bus.ListNames()).body
        others = {true_one.unique_name, sham.unique_name}
        ours = [one for one in names if one.startswith(":") and one not in others]
        assert len(ours) == 1
        sham.send(prepare(False))
        sham.send(prepare(False, to=ours[0]))
        sham.send_and_get_reply(message_bus.GetId())  # both have passed the bus
        assert not woken.wait_for(1, QUIET)
        true_one.send(prepare(False, to=ours[0]))
        assert woken.wait_for(1)
        assert not woken.wait_for(2, QUIET)


def test_other_signals_of_logind_are_nothing_to_it(system_bus: str, woken: Ring) -> None:
    with logind(system_bus) as service_of_logins, a_watch(woken) as watch:
        listening(watch)
        service_of_logins.send(new_signal(MANAGER, "PrepareForShutdown", "b", (False,)))
        service_of_logins.send(new_signal(MANAGER, "PrepareForSleep", "s", ("false",)))
        service_of_logins.send(new_signal(MANAGER, "PrepareForSleep"))
        service_of_logins.send(prepare(False, path="/org/freedesktop/other"))
        assert not woken.wait_for(1, QUIET)
        service_of_logins.send(prepare(False))
        assert woken.wait_for(1)


def test_a_logind_that_comes_later_and_one_that_goes(system_bus: str, woken: Ring) -> None:
    with a_watch(woken) as watch:
        assert watch.words == SEEN
        with logind(system_bus) as service_of_logins:
            listening(watch)
            service_of_logins.send(prepare(False))
            assert woken.wait_for(1)
        listening(watch, there=False)
        with logind(system_bus) as another:
            listening(watch)
            another.send(prepare(False))
            assert woken.wait_for(2)


def test_a_logind_that_the_bus_would_start_is_counted_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, woken: Ring
) -> None:
    services = tmp_path / "services"
    services.mkdir()
    (services / f"{NAME}.service").write_text(f"[D-BUS Service]\nName={NAME}\nExec=/bin/false\n")
    with_services = f"<servicedir>{services}</servicedir>\n  <auth>"
    monkeypatch.setattr(service, "CONFIG", service.CONFIG.replace("<auth>", with_services))
    with service.private_bus(tmp_path) as address:
        monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", address)
        with a_watch(woken) as watch:
            listening(watch)
            with logind(address) as service_of_logins:
                service_of_logins.send_and_get_reply(message_bus.GetId())
                wait_until(lambda: watch._logind is not None and watch._logind._owner != "")
                service_of_logins.send(prepare(False))
                assert woken.wait_for(1)


def test_a_listener_that_fails_is_logged_and_told_again(
    system_bus: str, woken: Ring, caplog: pytest.LogCaptureFixture
) -> None:
    def broken_once() -> None:
        woken()
        if woken.count == 1:
            raise OSError("the disk is full")

    with logind(system_bus) as service_of_logins, a_watch(broken_once) as watch:
        listening(watch)
        service_of_logins.send(prepare(False))
        service_of_logins.send(prepare(False))
        assert woken.wait_for(2)
    assert "waking was not dealt with" in caplog.text


# -- without a bus, and at the end -----------------------------------------------------------


def ended(watch: SleepWatch) -> None:
    watch._thread.join(10)
    assert not watch._thread.is_alive()


@pytest.mark.parametrize(
    "address",
    ["unix:path=/nowhere/at/all", "unix:path=/etc/passwd", "tcp:host=localhost,port=1", "nonsense",
     "unix:", ";", "unix:path=/nowhere;unix:path=/nowhere/either"],
)  # fmt: skip
def test_without_a_bus_the_clock_sees_it(
    monkeypatch: pytest.MonkeyPatch, woken: Ring, address: str
) -> None:
    monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", address)
    with a_watch(woken) as watch:
        ended(watch)
        assert watch.words == SEEN
    assert woken.count == 0


def test_the_second_of_two_addresses_is_tried(
    system_bus: str, monkeypatch: pytest.MonkeyPatch, woken: Ring
) -> None:
    monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", f"unix:path=/nowhere;{system_bus}")
    with logind(system_bus), a_watch(woken) as watch:
        listening(watch)


def test_on_another_system_nothing_is_begun(monkeypatch: pytest.MonkeyPatch, woken: Ring) -> None:
    monkeypatch.setattr(sleep, "ON_LINUX", False)
    before = threading.active_count()
    watch = SleepWatch(woken)
    assert threading.active_count() == before
    assert watch.words == SEEN
    watch.close()
    watch.close()


@pytest.mark.parametrize(
    "answer",
    [b"", b"OK 0123456789abcdef0123456789abcdef\r\n", b"\xff" * 99],
    ids=["nothing", "a welcome", "nonsense"],
)
def test_a_bus_that_does_not_answer_or_talks_nonsense_holds_nobody_up(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, woken: Ring, answer: bytes
) -> None:
    with socket.socket(socket.AF_UNIX) as deaf:
        deaf.bind(str(tmp_path / "deaf"))
        deaf.listen()
        monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", f"unix:path={tmp_path}/deaf")
        begun = time.monotonic()
        watch = SleepWatch(woken)
        made = time.monotonic() - begun
        taken, _ = deaf.accept()
        with taken:
            taken.sendall(answer)
            assert watch.words == SEEN
            ended(watch)
            took = time.monotonic() - begun
    watch.close()
    assert made < sleep.GREETING_S, "nobody waits for the greeting"
    assert took < 3 * sleep.GREETING_S


def test_once_the_bus_has_died_it_goes_on_without(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, woken: Ring
) -> None:
    with service.bus_daemon(tmp_path) as (address, daemon):
        monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", address)
        with logind(address), a_watch(woken) as watch:
            listening(watch)
            daemon.kill()
            ended(watch)
            assert watch.words == SEEN
    assert woken.count == 0


def test_closing_ends_the_thread_also_twice_and_nothing_is_told_after(
    system_bus: str, woken: Ring
) -> None:
    with logind(system_bus) as service_of_logins:
        watch = SleepWatch(woken)
        listening(watch)
        watch.close()
        assert not watch._thread.is_alive()
        assert watch.words == SEEN
        watch.close()
        service_of_logins.send(prepare(False))
        assert not woken.wait_for(1, QUIET)


def test_it_can_be_closed_at_once_and_by_whoever_is_told(system_bus: str, woken: Ring) -> None:
    SleepWatch(woken).close()

    def close() -> None:
        watch.close()
        woken()

    with logind(system_bus) as service_of_logins, a_watch(close) as watch:
        listening(watch)
        service_of_logins.send(prepare(False))
        assert woken.wait_for(1)
        ended(watch)


def test_while_nothing_comes_it_never_wakes(system_bus: str, woken: Ring) -> None:
    """Counted by Linux: proc(5), voluntary_ctxt_switches."""
    with logind(system_bus) as service_of_logins, a_watch(woken) as watch:
        listening(watch)
        time.sleep(0.1)  # waits until the thread has come to rest
        begun = switches(watch._thread)
        time.sleep(1.0)  # waits to see that nothing wakes
        idle = switches(watch._thread) - begun
        service_of_logins.send(prepare(False))
        assert woken.wait_for(1)
        wait_until(lambda: switches(watch._thread) > begun)  # the count does count
    assert idle == 0


def switches(thread: threading.Thread) -> int:
    status = Path(f"/proc/self/task/{thread.native_id}/status").read_text("utf-8")
    return int(status.partition("\nvoluntary_ctxt_switches:")[2].split()[0])


def test_a_logind_that_comes_in_one_piece_with_the_answer_is_not_forgotten(
    system_bus: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert system_bus
    bus = DBusAddress("/org/freedesktop/DBus", BUS, BUS)
    comes = new_signal(bus, "NameOwnerChanged", "sss", (NAME, "", ":1.9"))
    comes.header.fields[HeaderFields.sender] = BUS
    whole = Logind._ask

    def ask(self: Logind, call: Message, limit: Limit) -> tuple[object, ...]:
        answer = whole(self, call, limit)
        if call.header.fields[HeaderFields.member] != "GetNameOwner":
            return answer
        self._hear(comes)
        return ()

    monkeypatch.setattr(Logind, "_ask", ask)
    greeted = Logind(Limit(5.0))
    try:
        greeted.greet(Limit(5.0))
        assert greeted.there
    finally:
        greeted.close()
