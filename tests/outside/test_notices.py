"""Desktop notices against a real bus: what the service got, and what is said where it got none."""

import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from studio_log.outside import sending
from studio_log.outside.notices import PLYER, SERVICE, DesktopNotice
from studio_log.services.ports import Delivery, NoticeText
from tests.outside.service import FakeService, wait_until

HOSTILE = "-h & <b>"
STIR = NoticeText("Stir 26-031 Runners", "3 h in.\nElse folds dye as lines.", "soon", ("a", "b"))


def text(title: str = "Stir", body: str = "", urgency: str = "soon") -> NoticeText:
    return NoticeText(title, body, urgency, ("key",))


def test_the_service_gets_title_body_and_line_breaks_and_gives_a_receipt(bus: str) -> None:
    with FakeService(bus) as service:
        done = DesktopNotice().show(STIR)
    assert list(done) == [Delivery(SERVICE, ok=True, words="shown, receipt 1")]
    (shown,) = service.shown
    assert (shown.app_name, shown.title, shown.body) == ("Studio Log", STIR.title, STIR.body)


# Urgency levels 0 low, 1 normal, 2 critical; expiry -1 the server's choice, 0 never:
# Desktop Notifications Specification 1.2 (from memory).
@pytest.mark.parametrize(
    ("urgency", "level", "expires"),
    [("calm", 0, -1), ("soon", 1, -1), ("now", 1, 0), ("spoiling", 2, 0)],
)
def test_urgency_goes_along(bus: str, urgency: str, level: int, expires: int) -> None:
    with FakeService(bus) as service:
        DesktopNotice().show(text(urgency=urgency))
    assert service.shown[0].hints["urgency"] == level
    assert service.shown[0].expires == expires


@pytest.mark.parametrize(
    ("capabilities", "body"),
    [(("body", "body-markup"), "-h &amp; &lt;b&gt;"), (("body",), HOSTILE)],
)
def test_marks_are_escaped_where_the_service_reads_them(
    bus: str, capabilities: tuple[str, ...], body: str
) -> None:
    with FakeService(bus, capabilities=capabilities) as service:
        done = DesktopNotice().show(text(HOSTILE, HOSTILE))
    assert done[0].ok
    assert (service.shown[0].title, service.shown[0].body) == (HOSTILE, body)


def test_the_same_reminders_replace_their_notice_and_others_do_not(bus: str) -> None:
    notice = DesktopNotice()
    with FakeService(bus) as service:
        notice.show(STIR)
        notice.show(NoticeText("Stir again", "", "now", ("b", "a")))
        notice.show(NoticeText("Spin", "", "now", ("c",)))
        notice.show(NoticeText("A test", "", "now", ()))
        notice.show(NoticeText("A test", "", "now", ()))
    assert [one.replaces for one in service.shown] == [0, 1, 0, 0, 0]


def test_a_demo_says_so(bus: str) -> None:
    with FakeService(bus) as service:
        DesktopNotice(demo=True).show(text("Stir"))
    assert service.shown[0].title == "Demo: Stir"


@pytest.mark.parametrize(
    ("title", "body", "shown"),
    [
        ("", "", ("Studio Log", "")),
        (" \n ", "x", ("Studio Log", "x")),
        ("a\x00b\x1b[31m", "one\x00\ntwo", ("ab[31m", "one\ntwo")),
        ("lone \ud800 half", "\udfff", ("lone ? half", "?")),
        ("染め 🧵", "a\r\nb", ("染め 🧵", "a\nb")),
    ],
)
def test_hostile_text_is_shown_as_far_as_it_can_be(
    bus: str, title: str, body: str, shown: tuple[str, str]
) -> None:
    with FakeService(bus, capabilities=("body",)) as service:
        done = DesktopNotice().show(text(title, body))
    assert done[0].ok, done
    assert (service.shown[0].title, service.shown[0].body) == shown


def test_an_endless_text_is_cut(bus: str) -> None:
    with FakeService(bus) as service:
        done = DesktopNotice().show(text("t" * 100_000, "b" * 300_000))
    assert done[0].ok
    assert len(service.shown[0].title) == 300
    assert len(service.shown[0].body) == 4_000
    assert service.shown[0].body.endswith("…")


def test_a_service_that_refuses_is_said_by_both_channels(bus: str) -> None:
    notice = DesktopNotice()
    with FakeService(bus, mode="error"):
        done = notice.show(STIR)
        state = notice.state()
        assert notice.look() == state
    assert [(one.channel, one.ok) for one in done] == [(SERVICE, False), (PLYER, False)]
    assert done[0].words == "it answered with an error (Full)"
    assert state == (
        False,
        "desktop notices are off: the service answers with an error; ringing here only",
    )


ASKING = frozenset({"GetServerInformation", "GetCapabilities"})


@pytest.mark.parametrize("calls", [ASKING, frozenset({"GetCapabilities"})])
@pytest.mark.parametrize("how", ["refuse", "odd"])
def test_a_service_that_does_not_say_what_it_can_do_gets_the_plainest_notice(
    bus: str, how: str, calls: frozenset[str]
) -> None:
    notice = DesktopNotice(acted=lambda _text, _answer: None)
    with FakeService(bus, capabilities=("body", "actions")) as service:
        setattr(service, how, calls)
        done = notice.show(text("Stir", HOSTILE))
    notice.close()
    assert done[0].ok
    assert service.shown[0].body == "-h &amp; &lt;b&gt;"
    assert service.shown[0].actions == []


def test_a_service_that_gives_no_receipt_is_not_believed(bus: str) -> None:
    notice = DesktopNotice()
    with FakeService(bus, odd=frozenset({"Notify"})) as service:
        done = notice.show(STIR)
        service.odd = frozenset()
        assert notice.show(STIR)[0].ok
    assert done[0] == Delivery(SERVICE, ok=False, words="it gave no receipt")


def test_a_silent_service_holds_nobody_up_for_more_than_three_seconds(bus: str) -> None:
    notice = DesktopNotice()
    with FakeService(bus, mode="silent"):
        begun = time.monotonic()
        done = notice.show(text(HOSTILE, HOSTILE))
        took = time.monotonic() - begun
    assert [one.ok for one in done] == [False, False]
    assert "no answer within 2 s" in done[0].words
    assert took < 3.5  # 3 s and the slack of a busy machine


@pytest.mark.parametrize(
    "address",
    ["", "unix:path=/nowhere/bus", "unix:path=", "tcp:host=localhost", "nonsense", "unix:a", ";"],
)
def test_without_a_bus_every_attempt_fails_and_the_words_are_true(
    address: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", address)
    notice = DesktopNotice()
    done = notice.show(text(HOSTILE))
    assert [(one.channel, one.ok) for one in done] == [(SERVICE, False), (PLYER, False)]
    assert all(one.words for one in done)
    assert notice.state() == (
        False,
        "desktop notices are off: no service answers; ringing here only",
    )


def test_a_bus_without_a_service_says_that_none_answers(bus: str) -> None:
    assert bus
    notice = DesktopNotice()
    assert notice.show(STIR)[0].words == "no service answers"
    assert notice.state()[1] == "desktop notices are off: no service answers; ringing here only"


def test_a_look_names_the_service_and_is_due_again_after_thirty_seconds(bus: str) -> None:
    seconds = [0.0]
    notice = DesktopNotice(monotonic=lambda: seconds[0])
    assert notice.stale()
    assert notice.look() == notice.state()
    assert notice.state()[1] == "desktop notices are off: no service answers; ringing here only"
    with FakeService(bus):
        assert notice.look() == (True, "desktop notices work: ring heap answers, without buttons")
        assert notice.state() == notice.look()
        seconds[0] = 29.0
        assert not notice.stale()
        seconds[0] = 31.0
        assert notice.stale()
        assert notice.look()[0]
        assert not notice.stale()


@pytest.mark.parametrize("capabilities", [("actions",), ("body", "actions", "body-markup")])
def test_the_state_says_what_the_service_can_do(bus: str, capabilities: tuple[str, ...]) -> None:
    notice = DesktopNotice()
    with FakeService(bus, capabilities=capabilities):
        words = notice.look()[1]
    titles = "" if "body" in capabilities else ", titles only"
    assert words == f"desktop notices work: ring heap answers, with buttons{titles}"


def test_the_name_of_a_service_is_cut_to_what_can_be_read(bus: str) -> None:
    notice = DesktopNotice()
    with FakeService(bus, name="\u202e\x07ring\nheap " + "x" * 99):
        words = notice.look()[1]
    assert (
        words == f"desktop notices work: {('ring heap ' + 'x' * 99)[:40]} answers, without buttons"
    )


def test_a_service_that_comes_or_goes_puts_the_state_in_doubt_without_being_asked(
    bus: str,
) -> None:
    notice = DesktopNotice()
    with FakeService(bus):
        assert notice.look()[0]
        assert not notice.stale()
    wait_until(notice.stale)
    assert not notice.state()[0]
    assert not notice.look()[0]
    assert not notice.stale()
    with FakeService(bus):
        wait_until(notice.stale)
        assert notice.look()[0]


def test_a_notice_that_fails_changes_the_state_at_once_and_so_does_one_that_works(bus: str) -> None:
    notice = DesktopNotice()
    with FakeService(bus):
        assert notice.look()[0]
    notice.show(STIR)
    assert not notice.state()[0]
    with FakeService(bus):
        notice.show(STIR)
        assert notice.state()[0]


def test_any_thread_may_show(bus: str) -> None:
    notice = DesktopNotice()
    results: list[bool] = []

    def show(number: int) -> None:
        results.append(notice.show(NoticeText(f"Stir {number}", "", "now", (str(number),)))[0].ok)

    with FakeService(bus) as service:
        threads = [threading.Thread(target=show, args=(number,)) for number in range(8)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
    assert results == [True] * 8
    assert {one.title for one in service.shown} == {f"Stir {number}" for number in range(8)}


def test_plyer_shows_a_title_that_looks_like_an_option_and_keeps_backslashes(bus: str) -> None:
    body = f"{HOSTILE}\nC:\\new"
    with FakeService(bus) as service:
        sending.send("Studio Log", "--version", body, urgency=2, seconds=3.0)
    (shown,) = service.shown
    assert shown.title == "--version"
    assert shown.body == "-h &amp; &lt;b&gt;\nC:\\new"
    assert shown.hints["urgency"] == 2
    assert shown.app_name == "Studio Log"


def test_without_notify_send_plyer_says_so(
    bus: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    assert bus
    monkeypatch.setenv("PATH", str(tmp_path))
    done = DesktopNotice().show(STIR)
    assert done[1] == Delivery(PLYER, ok=False, words="notify-send is not installed")


def test_where_only_plyer_gets_through_that_counts(
    bus: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    assert bus
    program = tmp_path / "notify-send"
    program.write_text("#!/bin/sh\nexit 0\n", "utf-8")
    program.chmod(0o755)
    monkeypatch.setenv("PATH", f"{tmp_path}:/usr/bin:/bin")
    notice = DesktopNotice()
    assert [one.ok for one in notice.show(STIR)] == [False, True]
    assert notice.state()[0]


def test_on_other_systems_plyer_itself_is_used_and_its_faults_are_said(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    given: list[dict[str, object]] = []

    class Plyer:
        @staticmethod
        def notify(**values: object) -> None:
            given.append(values)
            if len(given) > 1:
                raise NotImplementedError("No usable implementation found!")

    monkeypatch.setattr(sending, "ON_LINUX", False)
    monkeypatch.setattr("studio_log.outside.notices.ON_LINUX", False)
    monkeypatch.setattr(sending, "notification", Plyer)
    notice = DesktopNotice()
    assert list(notice.show(text("t" * 100, "b" * 300))) == [Delivery(PLYER, ok=True, words="sent")]
    # plyer on Windows refuses more than 64 and 256 characters, in a thread, unheard.
    assert (len(str(given[0]["title"])), len(str(given[0]["message"]))) == (64, 256)
    failed = notice.show(STIR)
    assert failed[0].words == "plyer could not show it (NotImplementedError)"
    assert not notice.state()[0]


def test_on_other_systems_no_bus_library_is_needed() -> None:
    program = (
        "import asyncio, ctypes, logging, subprocess, sys\n"
        "sys.platform = 'win32'\n"
        "sys.modules['jeepney'] = None\n"
        "from studio_log.outside.notices import DesktopNotice\n"
        "print(DesktopNotice().look())\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert "sent through plyer; nothing tells if they are seen" in done.stdout
