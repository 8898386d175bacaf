"""The machine's login service on the system bus, as far as it tells of sleep and waking.

Names and the signal are those of org.freedesktop.login1(5); the rest is the D-Bus Specification.
"""

import contextlib
import itertools
import os
import socket
from collections.abc import Iterator
from typing import Any, Final

from jeepney import HeaderFields, Message, MessageType
from jeepney.bus import get_connectable_addresses
from jeepney.bus_messages import message_bus
from jeepney.io.blocking import prep_socket
from jeepney.low_level import Parser

from studio_log.outside.bus import LEAST_S, field, sender_of
from studio_log.outside.notice_parcel import Limit

NAME: Final = "org.freedesktop.login1"
PATH: Final = "/org/freedesktop/login1"
FACE: Final = "org.freedesktop.login1.Manager"
SIGNAL: Final = "PrepareForSleep"
BUS: Final = "org.freedesktop.DBus"
USUAL: Final = "unix:path=/var/run/dbus/system_bus_socket"
"""Where the system bus is unless DBUS_SYSTEM_BUS_ADDRESS says otherwise."""
OWNER_RULE: Final = f"type='signal',sender='{BUS}',member='NameOwnerChanged',arg0='{NAME}'"
SLEEP_RULE: Final = (
    f"type='signal',sender='{NAME}',path='{PATH}',interface='{FACE}',member='{SIGNAL}'"
)
PIECE: Final = 65_536


class Logind:
    """One connection to the system bus; OSError or ValueError where none answers in time."""

    def __init__(self, limit: Limit) -> None:
        self._socket = _connected(limit)
        self._serials = itertools.count(1)
        self._parser = Parser()
        self._owner = ""
        self._owner_told = False
        self._may_start = False
        self._wakings = 0

    @property
    def there(self) -> bool:
        """Whether it runs, or the bus would start it for whoever lets the machine sleep."""
        return bool(self._owner) or self._may_start

    def greet(self, limit: Limit) -> None:
        """Ask the bus to pass on what it says; TimeoutError past the limit."""
        self._ask(message_bus.Hello(), limit)
        self._ask(message_bus.AddMatch(OWNER_RULE), limit)
        # Who it is has to be known first: anybody may send us a signal that looks the same.
        owner = self._ask(message_bus.GetNameOwner(NAME), limit)
        if not self._owner_told:
            # What the bus told meanwhile is as new as its answer or newer.
            self._owner = str(owner[0]) if owner else ""
        startable = self._ask(message_bus.ListActivatableNames(), limit)
        self._may_start = bool(startable) and NAME in startable[0]
        self._ask(message_bus.AddMatch(SLEEP_RULE), limit)
        self._socket.settimeout(None)

    def wakings(self) -> Iterator[None]:
        """Give each waking as it is told, until the connection ends."""
        while True:
            for _ in range(self._wakings):
                yield
            self._wakings = 0
            for message in self._read():
                self._hear(message)

    def shut(self) -> None:
        """End the connection, from any thread: whoever reads it stops."""
        with contextlib.suppress(OSError):
            self._socket.shutdown(socket.SHUT_RDWR)

    def close(self) -> None:
        """Give the socket back; called by the thread that reads."""
        self._socket.close()

    def _ask(self, call: Message, limit: Limit) -> tuple[Any, ...]:
        """Give what the bus answers; nothing where that is an error."""
        serial = next(self._serials)
        self._socket.settimeout(max(limit.left(), LEAST_S))
        self._socket.sendall(call.serialise(serial))
        answer: Message | None = None
        while answer is None:
            self._socket.settimeout(max(limit.left(), LEAST_S))
            for message in self._read():
                if message.header.fields.get(HeaderFields.reply_serial) == serial:
                    answer = message
                else:
                    self._hear(message)
        good = answer.header.message_type is MessageType.method_return
        return tuple(answer.body) if good else ()

    def _read(self) -> list[Message]:
        got = self._socket.recv(PIECE)
        if not got:
            raise ConnectionResetError("the system bus ended the connection")
        found: list[Message] = self._parser.feed(got)
        return found

    def _hear(self, message: Message) -> None:
        if message.header.message_type is not MessageType.signal:
            return
        member, sender = field(message, HeaderFields.member), sender_of(message)
        signature = field(message, HeaderFields.signature)
        if (member, sender, signature) == ("NameOwnerChanged", BUS, "sss"):
            name, _old, new = message.body
            if name == NAME:
                self._owner, self._owner_told = str(new), True
        elif (member, signature) == (SIGNAL, "b") and sender and sender == self._owner:
            falls_asleep = message.body[0]
            self._wakings += 0 if falls_asleep else 1


def _connected(limit: Limit) -> socket.socket:
    trouble: Exception | None = None
    for address in get_connectable_addresses(os.environ.get("DBUS_SYSTEM_BUS_ADDRESS") or USUAL):
        try:
            sock: socket.socket = prep_socket(address, timeout=max(limit.left(), LEAST_S))
        except (OSError, ValueError) as error:
            trouble = trouble or error
        else:
            return sock
    raise trouble or OSError("the system bus has no address")
