"""A private session bus with a notification service of our own on it.

The calls are those of the Desktop Notifications Specification 1.2 (org.freedesktop.Notifications).
"""

import asyncio
import contextlib
import subprocess
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from dbus_fast import DBusError, Message, MessageType, Variant
from dbus_fast.aio import MessageBus
from dbus_fast.constants import NameFlag

NAME = "org.freedesktop.Notifications"
PATH = "/org/freedesktop/Notifications"
CONFIG = """<!DOCTYPE busconfig PUBLIC "-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN"
 "http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd">
<busconfig>
  <type>session</type>
  <listen>unix:path={folder}/bus</listen>
  <auth>EXTERNAL</auth>
  <policy context="default">
    <allow send_destination="*" eavesdrop="true"/>
    <allow eavesdrop="true"/>
    <allow own="*"/>
    <allow user="*"/>
  </policy>
</busconfig>
"""


def wait_until(true: Callable[[], bool]) -> None:
    """Wait for what another thread or process brings about; 10 s at most."""
    for _ in range(1_000):
        if true():
            return
        time.sleep(0.01)  # waits for another thread or process
    raise AssertionError("it did not come about")


@contextlib.contextmanager
def private_bus(folder: Path) -> Iterator[str]:
    """Run a bus that starts no services; give its address."""
    with bus_daemon(folder) as (address, _daemon):
        yield address


@contextlib.contextmanager
def bus_daemon(folder: Path) -> Iterator[tuple[str, subprocess.Popen[str]]]:
    """Run a bus that starts no services; give its address and the process, to be ended at will."""
    config = folder / "bus.conf"
    config.write_text(CONFIG.format(folder=folder), "utf-8")
    daemon = subprocess.Popen(
        ["dbus-daemon", f"--config-file={config}", "--nofork", "--print-address=1"],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )
    assert daemon.stdout is not None
    try:
        address = daemon.stdout.readline().strip()
        assert address.startswith("unix:path=")
        yield address, daemon
    finally:
        daemon.kill()
        daemon.wait()
        daemon.stdout.close()


@dataclass
class Shown:
    """One call of Notify as it came in."""

    app_name: str
    replaces: int
    title: str
    body: str
    actions: list[str]
    hints: dict[str, Any]
    expires: int
    sender: str
    receipt: int


@dataclass
class FakeService:
    """Answers in a thread; `mode` is ok, error or silent; `mute` names calls left unanswered."""

    address: str
    mode: str = "ok"
    capabilities: tuple[str, ...] = ("body", "body-markup")
    name: str = "ring heap"
    mute: frozenset[str] = frozenset()
    refuse: frozenset[str] = frozenset()
    """Names of calls that are answered with an error."""
    odd: frozenset[str] = frozenset()
    """Names of calls that are answered with something else than agreed."""
    unicast: bool = False
    """Signals go to whoever sent the notice, and to nobody else."""
    replacing: bool = True
    """Whether a notice takes the place of the one it names."""
    at_once: str = ""
    """An action that is invoked in the same breath as each notice is taken."""
    shown: list[Shown] = field(default_factory=list)
    closed: list[int] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)
    _up: threading.Event = field(default_factory=threading.Event)
    _next: int = 0

    def __enter__(self) -> "FakeService":
        self._thread = threading.Thread(target=lambda: asyncio.run(self._serve()))
        self._thread.start()
        assert self._up.wait(10)
        return self

    def __exit__(self, *_args: object) -> None:
        with contextlib.suppress(RuntimeError):  # its loop is closed: the bus ended before
            self._loop.call_soon_threadsafe(self._end.set)
        self._thread.join()

    def invoke(self, receipt: int, key: str) -> None:
        """Tell that a button was pressed."""
        self.emit("ActionInvoked", "us", [receipt, key])

    def dismiss(self, receipt: int, reason: int = 2) -> None:
        """Tell that a notice was taken from the screen, by the person unless said otherwise."""
        self.emit("NotificationClosed", "uu", [receipt, reason])

    def emit(
        self, member: str, signature: str, body: list[Any], interface: str = NAME, to: str = ""
    ) -> None:
        """Send a signal; it is on its way when this returns."""
        told = to or (self.shown[-1].sender if self.unicast else None)
        signal = Message(
            message_type=MessageType.SIGNAL,
            destination=told,
            path=PATH,
            interface=interface,
            member=member,
            signature=signature,
            body=body,
        )
        asyncio.run_coroutine_threadsafe(self._send(signal), self._loop).result(10)

    def step_down(self) -> None:
        """Leave the name to others, but stay on the bus."""
        asyncio.run_coroutine_threadsafe(self._bus.release_name(NAME), self._loop).result(10)

    async def _send(self, signal: Message) -> None:
        await self._bus.send(signal)

    async def _serve(self) -> None:
        self._loop, self._end = asyncio.get_running_loop(), asyncio.Event()
        self._bus = bus = await MessageBus(bus_address=self.address).connect()
        bus.add_message_handler(self._take)
        await bus.request_name(NAME, NameFlag.DO_NOT_QUEUE)
        self._up.set()
        ended = asyncio.ensure_future(bus.wait_for_disconnect())
        await asyncio.wait(
            [asyncio.ensure_future(self._end.wait()), ended], return_when=asyncio.FIRST_COMPLETED
        )
        bus.disconnect()
        with contextlib.suppress(OSError, EOFError):
            await ended

    def _take(self, call: Message) -> Message | bool | None:
        if call.message_type is not MessageType.METHOD_CALL or call.interface != NAME:
            return None
        self.asked.append(str(call.member))
        if self.mode == "silent" or call.member in self.mute:
            return True
        if self.mode == "error" or call.member in self.refuse:
            raise DBusError(f"{NAME}.Full", "the heap is full")
        reply = Message.new_method_return(call, *self._answer(call))
        if call.member == "Notify" and self.at_once:
            self._bus.send(reply)
            signal = [self.shown[-1].receipt, self.at_once]
            self._bus.send(Message.new_signal(PATH, NAME, "ActionInvoked", "us", signal))
            return True
        return reply

    def _answer(self, call: Message) -> tuple[str, list[Any]]:
        if call.member in self.odd:
            return "x", [-7]
        if call.member == "GetServerInformation":
            return "ssss", [self.name, "Harbour Lane", "1", "1.2"]
        if call.member == "GetCapabilities":
            return "as", [list(self.capabilities)]
        if call.member == "CloseNotification":
            self.closed.append(call.body[0])
            return "", []
        name, replaces, _icon, title, body, actions, hints, expires = call.body
        plain = {key: one.value for key, one in hints.items() if isinstance(one, Variant)}
        stays = self.replacing and replaces
        self._next += 0 if stays else 1
        receipt = replaces if stays else self._next
        told = (name, replaces, title, body, actions, plain, expires)
        self.shown.append(Shown(*told, sender=str(call.sender), receipt=receipt))
        return "u", [receipt]
