"""A private session bus with a notification service of our own on it.

The calls are those of the Desktop Notifications Specification 1.2 (org.freedesktop.Notifications).
"""

import asyncio
import contextlib
import subprocess
import threading
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from dbus_fast import DBusError, Message, MessageType, Variant
from dbus_fast.aio import MessageBus
from dbus_fast.constants import NameFlag

NAME = "org.freedesktop.Notifications"
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


@contextlib.contextmanager
def private_bus(folder: Path) -> Iterator[str]:
    """Run a bus that starts no services; give its address."""
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
        yield address
    finally:
        daemon.terminate()
        daemon.wait()
        daemon.stdout.close()


@dataclass
class Shown:
    """One call of Notify as it came in."""

    app_name: str
    replaces: int
    title: str
    body: str
    hints: dict[str, Any]
    expires: int


@dataclass
class FakeService:
    """Answers in a thread; `mode` is ok, error or silent."""

    address: str
    mode: str = "ok"
    capabilities: tuple[str, ...] = ("body", "body-markup")
    shown: list[Shown] = field(default_factory=list)
    _up: threading.Event = field(default_factory=threading.Event)
    _next: int = 0

    def __enter__(self) -> "FakeService":
        self._thread = threading.Thread(target=lambda: asyncio.run(self._serve()))
        self._thread.start()
        assert self._up.wait(10)
        return self

    def __exit__(self, *_args: object) -> None:
        self._loop.call_soon_threadsafe(self._end.set)
        self._thread.join()

    async def _serve(self) -> None:
        self._loop, self._end = asyncio.get_running_loop(), asyncio.Event()
        bus = await MessageBus(bus_address=self.address).connect()
        bus.add_message_handler(self._take)
        await bus.request_name(NAME, NameFlag.DO_NOT_QUEUE)
        self._up.set()
        await self._end.wait()
        bus.disconnect()
        await bus.wait_for_disconnect()

    def _take(self, call: Message) -> Message | bool | None:
        if call.message_type is not MessageType.METHOD_CALL or call.interface != NAME:
            return None
        if self.mode == "silent":
            return True
        if self.mode == "error":
            raise DBusError(f"{NAME}.Full", "the heap is full")
        return Message.new_method_return(call, *self._answer(call))

    def _answer(self, call: Message) -> tuple[str, list[Any]]:
        if call.member == "GetServerInformation":
            return "ssss", ["ring heap", "Harbour Lane", "1", "1.2"]
        if call.member == "GetCapabilities":
            return "as", [list(self.capabilities)]
        name, replaces, _icon, title, body, _actions, hints, expires = call.body
        plain = {key: one.value for key, one in hints.items() if isinstance(one, Variant)}
        self.shown.append(Shown(name, replaces, title, body, plain, expires))
        self._next += 1
        return "u", [replaces or self._next]
