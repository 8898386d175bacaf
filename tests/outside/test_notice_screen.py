"""Notices on a real screen by a real service, dunst: shown, pressed, replaced, taken away.

Counts and presses come from dunstctl(1), not from what we believe.
"""

import os
import queue
import signal
import subprocess
import time
from collections.abc import Iterator

import pytest

from studio_log.outside.notices import DesktopNotice
from studio_log.services.ports import NoticeText
from tests.outside.service import wait_until

pytestmark = pytest.mark.screen
STIR = NoticeText(
    "Stir 26-031 <Runners>",
    "3 h in & counting",
    "now",
    ("a", "b"),
    (("done", "Stirred"), ("later", "In 10 min")),
)
SPIN = NoticeText("Spin 26-031", "", "now", ("b",), (("done", "Spun"),))


def dunst(*words: str) -> str:
    done = subprocess.run(["dunstctl", *words], capture_output=True, text=True, check=True)
    return done.stdout.strip()


def displayed(count: int) -> None:
    wait_until(lambda: dunst("count", "displayed") == str(count))


@pytest.fixture
def pressed() -> "queue.Queue[tuple[NoticeText, str]]":
    return queue.Queue()


@pytest.fixture
def notice(pressed: "queue.Queue[tuple[NoticeText, str]]") -> Iterator[DesktopNotice]:
    dunst("close-all")
    displayed(0)
    channel = DesktopNotice(acted=lambda text, answer: pressed.put((text, answer)))
    yield channel
    channel.close()
    dunst("close-all")


def test_a_notice_is_shown_replaced_revised_and_taken_away(notice: DesktopNotice) -> None:
    assert notice.look() == (True, "desktop notices work: dunst answers, with buttons")
    assert notice.show(STIR)[0].ok
    displayed(1)
    notice.show(STIR)
    displayed(1)
    notice.show(NoticeText("Wring", "", "now", ("c",)))
    displayed(2)
    notice.revise(("b", "a"), SPIN)
    displayed(2)
    notice.revise(("b",), None)
    displayed(1)
    notice.revise(("c",), None)
    displayed(0)


def test_a_click_on_the_notice_opens(
    notice: DesktopNotice, pressed: "queue.Queue[tuple[NoticeText, str]]"
) -> None:
    notice.show(STIR)
    displayed(1)
    dunst("action", "0")
    assert pressed.get(timeout=10.0) == (STIR, "open")


def test_a_notice_that_was_closed_by_hand_is_not_brought_back(notice: DesktopNotice) -> None:
    notice.show(STIR)
    displayed(1)
    dunst("close")
    displayed(0)
    assert notice.look()[0]  # its answer comes after the news of the closing
    notice.revise(STIR.keys, SPIN)
    notice.show(NoticeText("Wring", "", "now", ("c",)))
    displayed(1)


def test_a_service_that_is_stopped_holds_nobody_up_and_is_found_again(
    notice: DesktopNotice,
) -> None:
    notice.show(STIR)
    found = subprocess.run(
        ["dbus-send", "--session", "--print-reply=literal", "--dest=org.freedesktop.DBus", "/",
         "org.freedesktop.DBus.GetConnectionUnixProcessID",
         "string:org.freedesktop.Notifications"],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    process = int(found.stdout.split()[-1])
    os.kill(process, signal.SIGSTOP)
    try:
        begun = time.monotonic()
        done = notice.show(SPIN)
        assert time.monotonic() - begun < 3.5  # 3 s and the slack of a busy machine
    finally:
        os.kill(process, signal.SIGCONT)
    assert [one.ok for one in done] == [False, False]
    assert notice.show(STIR)[0].ok
    assert notice.state()[0]
