"""Notices that a killed process left on the screen: the next one takes them over.

The bus and the service are real to both processes; what was closed and replaced is what the
service was asked. Calls: Desktop Notifications Specification 1.2.
"""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from studio_log.outside.notice_memory import FILE_NAME
from studio_log.outside.notices import DesktopNotice
from studio_log.services.ports import NoticeText
from tests.outside.service import FakeService, bus_daemon, wait_until

ABLE = ("body", "actions")
STIR = NoticeText("Stir 26-031", "3 h in", "now", ("a", "b"), (("done", "Stirred"),), "a")
SPIN = NoticeText("Spin 26-031", "", "soon", ("c",), (("done", "Spun"), ("later", "In 10 min")))
Make = Callable[[], DesktopNotice]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / FILE_NAME


@pytest.fixture
def pressed() -> list[tuple[NoticeText, str]]:
    return []


@pytest.fixture
def make(file: Path, pressed: list[tuple[NoticeText, str]]) -> Iterator[Make]:
    """Make the channel of one process after the other."""
    made: list[DesktopNotice] = []

    def one() -> DesktopNotice:
        made.append(DesktopNotice(acted=lambda *told: pressed.append(told), memory=file))
        return made[-1]

    yield one
    for channel in made:
        channel.close()


def kill(notice: DesktopNotice) -> None:
    """Cut a channel off as a kill does: nothing is said, nothing is tidied."""
    connection = notice._service._connection  # type: ignore[union-attr]
    assert connection is not None
    connection.drop()
    assert connection.join(5.0)


def killed_after(make: Make, *texts: NoticeText) -> None:
    first = make()
    assert first.take_over() == ()
    for text in texts:
        assert first.show(text)[0].ok
    kill(first)


def test_what_a_killed_process_left_is_taken_away_when_it_is_answered(bus: str, make: Make) -> None:
    with FakeService(bus) as service:
        killed_after(make, STIR, SPIN)
        second = make()
        assert second.take_over() == (STIR.keys, SPIN.keys)
        second.revise(("b", "a"), None)
        assert service.closed == [1]
        kill(second)
        third = make()
        assert third.take_over() == (SPIN.keys,)
        third.revise(SPIN.keys, None)
    assert service.closed == [1, 2]


def test_what_rings_again_takes_the_place_of_what_was_left(bus: str, make: Make) -> None:
    with FakeService(bus) as service:
        killed_after(make, STIR, SPIN)
        second = make()
        second.take_over()
        words = second.show(SPIN)[0].words
        second.revise(STIR.keys, NoticeText("Stir", "", "now", ("b",)))
        assert [one.replaces for one in service.shown] == [0, 0, 2, 1]
        assert words == "shown, receipt 2"
        kill(second)
        assert make().take_over() == (SPIN.keys, ("b",))
    assert service.closed == []


def test_the_buttons_of_what_was_left_are_answered(
    bus: str, make: Make, pressed: list[tuple[NoticeText, str]]
) -> None:
    with FakeService(bus, capabilities=ABLE) as service:
        killed_after(make, STIR, SPIN)
        make().take_over()
        service.invoke(1, "done")
        service.invoke(1, "later")  # was not offered
        service.invoke(2, "default")
        service.invoke(3, "done")
        service.invoke(2, "later")
        wait_until(lambda: len(pressed) == 3)
    told = [(text.keys, text.answers, text.answers_to, answer) for text, answer in pressed]
    assert told == [
        (STIR.keys, STIR.answers, "a", "done"),
        (SPIN.keys, SPIN.answers, "", "open"),
        (SPIN.keys, SPIN.answers, "", "later"),
    ]


def test_what_was_closed_by_hand_is_not_taken_over(bus: str, make: Make) -> None:
    with FakeService(bus) as service:
        first = make()
        first.take_over()
        first.show(STIR)
        first.show(SPIN)
        service.dismiss(1)
        assert first.look()[0]  # its answer comes after the signal
        kill(first)
        assert make().take_over() == (SPIN.keys,)


def test_after_an_orderly_end_they_are_taken_over_as_well(bus: str, make: Make) -> None:
    with FakeService(bus):
        first = make()
        first.take_over()
        first.show(STIR)
        first.close()
        assert make().take_over() == (STIR.keys,)


def test_a_service_that_was_started_anew_is_asked_to_close_nothing(
    bus: str, make: Make, file: Path
) -> None:
    with FakeService(bus):
        killed_after(make, STIR)
    with FakeService(bus) as service:
        second = make()
        assert second.take_over() == ()
        second.revise(STIR.keys, None)
        assert not file.exists()
        second.show(STIR)
    assert (service.closed, [one.replaces for one in service.shown]) == ([], [0])


def test_another_bus_is_asked_to_close_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, make: Make
) -> None:
    asked = []
    for known in ((), ()):
        with bus_daemon(tmp_path) as (address, _daemon), FakeService(address) as service:
            monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", address)
            channel = make()
            assert channel.take_over() == known
            channel.revise(STIR.keys, None)
            assert channel.show(STIR)[0].ok
            asked.append((service.closed, service.shown[0].replaces, service.shown[0].sender))
            kill(channel)
    # Names are counted anew on each bus: only the bus's id tells the two apart.
    assert asked == [([], 0, asked[0][2])] * 2


def test_a_service_that_hangs_meanwhile_is_asked_later(bus: str, make: Make) -> None:
    with FakeService(bus) as service:
        killed_after(make, STIR)
        service.mode = "silent"
        second = make()
        assert second.take_over() == (STIR.keys,)
        assert second.state()[0] is False
        service.mode = "ok"
        second.revise(STIR.keys, None)
    assert service.closed == [1]


def test_one_that_was_to_go_when_the_process_was_killed_goes_now(bus: str, make: Make) -> None:
    """Two notices had come to tell the same; the kill came before the older was closed."""
    with FakeService(bus) as service:
        first = make()
        first.take_over()
        first.show(SPIN)
        first.show(STIR)
        service.mute = frozenset({"CloseNotification"})
        first.revise(STIR.keys, SPIN)  # the service takes it and does not close the other
        service.mute = frozenset()
        kill(first)
        assert make().take_over() == (SPIN.keys,)
    assert service.closed == [1]
    assert service.shown[-1].receipt == 2


# -- whose the file is ----------------------------------------------------------------------


def test_a_process_without_the_bell_leaves_the_file_alone(bus: str, make: Make, file: Path) -> None:
    with FakeService(bus) as service:
        rings = make()
        rings.take_over()
        rings.show(STIR)
        kept = file.read_bytes()
        other = make()
        other.look()
        other.show(NoticeText("Not written down", "", "soon", ()))
        other.show(SPIN)
        other.revise(SPIN.keys, None)
        other.close()
        assert file.read_bytes() == kept
    assert service.closed == [3], "its own"


def test_with_the_bell_go_the_notices_and_their_buttons(
    bus: str, make: Make, file: Path, pressed: list[tuple[NoticeText, str]]
) -> None:
    with FakeService(bus, capabilities=ABLE) as service:
        first, second = make(), make()
        first.take_over()
        first.show(STIR)
        first.hand_over()
        assert second.take_over() == (STIR.keys,)
        kept = file.read_bytes()
        first.revise(STIR.keys, None)
        first.show(SPIN)
        assert (service.closed, file.read_bytes()) == ([], kept)
        service.invoke(1, "done")
        wait_until(lambda: bool(pressed))
        assert (first.look()[0], second.look()[0]) == (True, True)  # after the signal
        assert len(pressed) == 1
        second.show(NoticeText("Wring", "", "now", ("d",)))
        second.hand_over()
        assert first.take_over() == (SPIN.keys, STIR.keys, ("d",)), "its own stayed its own"


def test_what_tells_of_no_reminder_is_not_kept(bus: str, make: Make, file: Path) -> None:
    with FakeService(bus):
        channel = make()
        channel.take_over()
        channel.show(NoticeText("Looking ahead", "", "calm", ()))
        assert not file.exists()
        channel.show(STIR)
        assert file.exists()
        channel.revise(STIR.keys, None)
        assert not file.exists()


def test_without_anything_left_no_connection_is_made(make: Make) -> None:
    channel = make()
    assert channel.take_over() == ()
    assert channel.stale()
    channel.close()
    assert channel.take_over() == ()


def test_only_its_owner_reads_the_file(bus: str, make: Make, file: Path) -> None:
    with FakeService(bus):
        killed_after(make, STIR)
    assert file.stat().st_mode & 0o077 == 0
    assert [one.name for one in file.parent.glob(f"{FILE_NAME}*")] == [FILE_NAME]
