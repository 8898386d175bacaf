"""A screen that is kept on, by stand-ins for both services on a private bus.

The calls are those of the Idle Inhibition Service Draft (Inhibit gives a cookie, UnInhibit takes
it) and of the desktop portal (Inhibit gives the path of a Request, which has Close).
"""

import contextlib
import os
import queue
import signal
import subprocess
import sys
import threading
from collections.abc import Iterator
from typing import Any

import pytest
from jeepney import (
    HeaderFields,
    MatchRule,
    Message,
    MessageType,
    new_error,
    new_method_return,
)
from jeepney.bus_messages import message_bus
from jeepney.io.blocking import open_dbus_connection

from studio_log.outside.awake import KEPT, RESTS, ScreenAwake
from tests.outside.service import wait_until

SAVER = "org.freedesktop.ScreenSaver"
PORTAL = "org.freedesktop.portal.Desktop"
REQUEST = "/org/freedesktop/portal/desktop/request/1_2/t"
CHILD = """
import sys
from studio_log.outside.awake import ScreenAwake
awake = ScreenAwake()
print(awake.keep(True), flush=True)
sys.stdin.read()
"""


class StandIn:
    """Answers under one name; keeps what it was asked, and which guests have gone."""

    def __init__(self, address: str, name: str, answers: dict[str, Any]) -> None:
        self.asked: list[tuple[str, tuple[Any, ...]]] = []
        self.askers: list[str] = []
        self.gone: queue.SimpleQueue[str] = queue.SimpleQueue()
        self._answers = answers
        self._connection = open_dbus_connection(bus=address)
        self._connection.send_and_get_reply(message_bus.RequestName(name))
        rule = MatchRule(
            type="signal", sender="org.freedesktop.DBus", member="NameOwnerChanged"
        )  # fmt: skip
        self._connection.send_and_get_reply(message_bus.AddMatch(rule))
        self._ended = False
        self._thread = threading.Thread(target=self._serve)
        self._thread.start()

    def close(self) -> None:
        """Leave the bus."""
        self._ended = True
        self._thread.join()
        self._connection.close()

    def _serve(self) -> None:
        while not self._ended:
            with contextlib.suppress(TimeoutError):
                self._take(self._connection.receive(timeout=0.05))

    def _take(self, message: Message) -> None:
        fields = message.header.fields
        member = fields.get(HeaderFields.member, "")
        if message.header.message_type is MessageType.signal:
            if member == "NameOwnerChanged" and not message.body[2]:
                self.gone.put(message.body[0])
            return
        if message.header.message_type is not MessageType.method_call:
            return
        self.asked.append((member, tuple(message.body)))
        self.askers.append(fields[HeaderFields.sender])
        found = self._answers.get(member)
        if found is None:
            answer = new_error(message, f"{SAVER}.Error.Refused")
        else:
            answer = new_method_return(message, *found)
        self._connection.send(answer)


@contextlib.contextmanager
def stand_in(address: str, name: str, answers: dict[str, Any]) -> Iterator[StandIn]:
    """Run a service of this name that gives these answers."""
    made = StandIn(address, name, answers)
    try:
        yield made
    finally:
        made.close()


def test_the_screen_saver_is_held_off_and_let_go(bus: str) -> None:
    answers = {"Inhibit": ("u", (77,)), "UnInhibit": ("", ())}
    with stand_in(bus, SAVER, answers) as saver, ScreenAwake() as awake:
        assert not awake.on
        assert awake.keep(True) == KEPT
        assert awake.keep(True) == KEPT
        assert awake.on
        assert awake.keep(False) == RESTS
        assert not awake.on
        assert [member for member, _ in saver.asked] == ["Inhibit", "UnInhibit"]
        assert saver.asked[0][1][0] == "studio-log"
        assert saver.asked[1][1] == (77,)


def test_without_a_screen_saver_the_portal_is_asked(bus: str) -> None:
    answers = {"Inhibit": ("o", (REQUEST,)), "Close": ("", ())}
    with stand_in(bus, PORTAL, answers) as portal, ScreenAwake() as awake:
        assert awake.keep(True) == KEPT
        window, flags, options = portal.asked[0][1]
        # Flag 8 is "idle" by the portal's documentation; its reason is an option.
        assert (window, flags, list(options)) == ("", 8, ["reason"])
        awake.close()
        assert [member for member, _ in portal.asked] == ["Inhibit", "Close"]


def test_a_screen_saver_that_refuses_leaves_it_to_the_portal(bus: str) -> None:
    answers = {"Inhibit": ("o", (REQUEST,)), "Close": ("", ())}
    with stand_in(bus, SAVER, {}) as saver, stand_in(bus, PORTAL, answers) as portal:
        with ScreenAwake() as awake:
            assert awake.keep(True) == KEPT
        assert [member for member, _ in saver.asked] == ["Inhibit"]
        assert [member for member, _ in portal.asked] == ["Inhibit", "Close"]


def test_an_odd_answer_is_not_taken_for_a_screen_that_stays_on(bus: str) -> None:
    with stand_in(bus, SAVER, {"Inhibit": ("s", ("yes",))}), ScreenAwake() as awake:
        words = awake.keep(True)
        assert not awake.on
    assert "something else than agreed" in words


@pytest.mark.usefixtures("bus")
def test_where_nothing_answers_it_says_so_and_what_to_do() -> None:
    with ScreenAwake() as awake:
        words = awake.keep(True)
        assert not awake.on
    assert words == (
        "The screen cannot be kept on from here: no service answers. "
        "Set its rest in the system’s settings."
    )


def test_without_a_session_it_says_so() -> None:
    with ScreenAwake() as awake:
        assert awake.keep(True).startswith("The screen cannot be kept on from here: ")
        assert awake.keep(False) == RESTS


def test_a_program_that_is_killed_holds_nothing(bus: str) -> None:
    answers = {"Inhibit": ("u", (5,)), "UnInhibit": ("", ())}
    with stand_in(bus, SAVER, answers) as saver:
        child = subprocess.Popen(
            [sys.executable, "-c", CHILD],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            env={**os.environ, "DBUS_SESSION_BUS_ADDRESS": bus},
        )
        with child:
            assert child.stdout is not None
            assert child.stdout.readline().strip() == KEPT
            child.send_signal(signal.SIGKILL)
        # The bus tells that its guest has gone: by that the service lets go.
        asker = saver.askers[0]
        wait_until(lambda: not saver.gone.empty() and saver.gone.get() == asker)
        assert [member for member, _ in saver.asked] == ["Inhibit"]
