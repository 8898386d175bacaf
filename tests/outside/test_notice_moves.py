"""A service or a bus that is another one than before: what is found, and what it is not asked."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from studio_log.outside.notices import DesktopNotice
from studio_log.services.ports import NoticeText
from tests.outside.service import FakeService, bus_daemon

STIR = NoticeText("Stir", "3 h in", "now", ("a",), (("done", "Stirred"),))


@pytest.fixture
def notice(bus: str) -> Iterator[DesktopNotice]:
    assert bus
    channel = DesktopNotice(acted=lambda _text, _answer: None)
    yield channel
    channel.close()


def test_another_bus_at_the_same_address_is_found_and_gets_no_old_numbers(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    channel = DesktopNotice(acted=lambda _text, _answer: None)
    other = NoticeText("Spin", "", "now", ("b",))
    senders = []
    for _ in range(2):
        with bus_daemon(tmp_path) as (address, process):
            monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", address)
            with FakeService(address) as service:
                channel.revise(other.keys, None)
                assert channel.show(STIR)[0].ok
                assert channel.show(other)[0].ok
                assert [one.replaces for one in service.shown] == [0, 0]
                assert service.closed == []
                senders.append(service.shown[0].sender)
                process.kill()  # before the service could say that it leaves
                process.wait()
    channel.close()
    # Both buses gave us the same name, and the service too: only their ids tell them apart.
    assert senders[0] == senders[1]


def test_a_service_that_stepped_down_is_sent_nothing_more(bus: str, notice: DesktopNotice) -> None:
    with FakeService(bus) as first:
        notice.show(STIR)
        first.step_down()
        with FakeService(bus) as second:
            assert notice.show(STIR)[0].ok
            notice.revise(STIR.keys, None)
    assert [one.replaces for one in (*first.shown, *second.shown)] == [0, 0]
    assert (len(second.shown), first.closed, second.closed) == (1, [], [1])


def test_a_service_that_left_unnoticed_costs_no_notice(bus: str, notice: DesktopNotice) -> None:
    with FakeService(bus) as service:
        notice.show(STIR)
        believed = notice._service  # type: ignore[attr-defined]
        assert believed is not None
        bus_id = believed._able.owner.split()[0]
        believed._able = replace(believed._able, owner=f"{bus_id} :1.999", markup=False)
        assert notice.show(NoticeText("Spin", "a & b", "now", ("b",)))[0].ok
    assert service.shown[-1].body == "a &amp; b"


def test_a_service_that_changed_while_the_connection_was_cut_gets_no_old_numbers(
    bus: str, notice: DesktopNotice
) -> None:
    other = NoticeText("Wring", "", "now", ("c",))
    with FakeService(bus):
        notice.show(STIR)
        notice.show(other)
        connection = notice._service._connection  # type: ignore[union-attr]
        assert connection is not None
        connection.drop()
        assert connection.join(5.0)
    with FakeService(bus) as second:
        notice.revise(STIR.keys, NoticeText("Spin", "", "now", ("b",)))
        notice.revise(STIR.keys, None)
        assert (second.shown, second.closed) == ([], [])
        assert notice.show(other)[0].ok
        assert second.shown[0].replaces == 0


def test_the_second_address_is_tried_where_the_first_is_dead(
    bus: str, notice: DesktopNotice, monkeypatch: pytest.MonkeyPatch
) -> None:
    addresses = f"unix:path=/nowhere/bus;{bus};nonsense"
    monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", addresses)
    with FakeService(bus):
        assert notice.show(STIR)[0].ok


# $XDG_RUNTIME_DIR/bus: where systemd runs a person's bus, and where libdbus looks without an
# address (from memory).
def test_without_an_address_the_usual_place_is_looked_at(
    bus: str,
    notice: DesktopNotice,
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
) -> None:
    monkeypatch.delenv("DBUS_SESSION_BUS_ADDRESS")
    with FakeService(bus):
        assert notice.show(STIR)[0].words == "no desktop session to send to"
        monkeypatch.setenv("XDG_RUNTIME_DIR", str(tmp_path))
        assert notice.show(STIR)[0].ok
