"""One connection to the desktop session's bus: calls that end in time, signals to a listener."""

import contextlib
import itertools
import logging
import os
import select
import socket
import struct
import threading
from collections.abc import Callable, Iterator
from concurrent.futures import Future
from pathlib import Path
from typing import Any, Final

from jeepney import HeaderFields, Message, MessageType
from jeepney.bus import get_connectable_addresses
from jeepney.bus_messages import message_bus
from jeepney.io.blocking import prep_socket
from jeepney.low_level import calc_msg_size

from studio_log.outside.notice_parcel import BusError, Limit

ENDED: Final = "the desktop session cannot be reached (the connection ended)"
GREETING_S: Final = 1.0
"""Longest that one bus may take to accept a connection."""
LEAST_S: Final = 0.001
PIECE: Final = 65_536
LARGEST: Final = 262_144
"""In bytes: nothing that concerns us is larger, and reading it would hold up what does."""
HEAD: Final = 16
"""So many bytes of a message tell how long it is: D-Bus Specification, "Message Format"."""

_log = logging.getLogger(__name__)
_Then = Callable[[Message], None]
_Hear = Callable[["Connection", Message], None]


class AnsweredError(BusError):
    """The service or the bus answered with an error: the connection itself is sound."""

    def __init__(self, name: str, sender: str) -> None:
        super().__init__(error_words(name))
        self.name = name
        self.sender = sender


class Connection:
    """Any thread may call. A thread of its own listens, without a wake-up while nothing comes.

    It holds until its first fault; then it is over, and a new one has to be made.
    """

    def __init__(self, hear: _Hear, ended: Callable[["Connection"], None], limit: Limit) -> None:
        self._hear = hear
        self._ended = ended
        self._guard = threading.Lock()
        self._sending = threading.Lock()
        self._serials = itertools.count(1)
        self._waiting: dict[int, tuple[Future[Message], _Then | None]] = {}
        self._bus_id = ""
        self.over = False
        self._socket = _connected(limit)
        self._listener = threading.Thread(target=self._listen, name="notice bus", daemon=True)
        self._listener.start()
        try:
            self.call(message_bus.Hello(), limit)
            answer = self.call(message_bus.GetId(), limit)
            self._bus_id = str(answer.body[0]) if answer.body else ""
        except BusError:
            self.drop()
            raise

    def call(self, message: Message, limit: Limit, then: _Then | None = None) -> Message:
        """Give the answer; BusError within the limit, AnsweredError where it is an error.

        `then` is called with a good answer in the listening thread, before any later signal.
        """
        if threading.current_thread() is self._listener:
            raise BusError("the thread that listens cannot wait for an answer")
        answer: Future[Message] = Future()
        serial = self._expect(answer, then)
        try:
            self._send(message, serial, limit)
            got = answer.result(limit.left())
        except TimeoutError:
            self.drop()
            raise BusError(f"no answer within {limit.seconds:g} s") from None
        except OSError as error:
            self.drop()
            raise BusError(unreachable(error)) from None
        finally:
            with self._guard:
                self._waiting.pop(serial, None)
        if got.header.message_type is MessageType.error:
            raise AnsweredError(field(got, HeaderFields.error_name), sender_of(got))
        return got

    def whole(self, unique: str) -> str:
        """Give a guest's name as it holds across buses: each bus counts its guests from one."""
        return f"{self._bus_id} {unique}"

    def unique(self, whole: str) -> str:
        """Give a guest's name on this bus; "" for a guest of another one."""
        bus, _, unique = whole.partition(" ")
        return unique if bus == self._bus_id else ""

    def drop(self) -> None:
        """End it, from any thread; calls that wait fail at once."""
        with self._guard:
            self.over = True
        with contextlib.suppress(OSError):
            self._socket.shutdown(socket.SHUT_RDWR)

    def join(self, seconds: float) -> bool:
        """Wait for the listening thread of a dropped connection; say whether it has ended."""
        if threading.current_thread() is not self._listener:
            self._listener.join(seconds)
        return not self._listener.is_alive()

    def _expect(self, answer: Future[Message], then: _Then | None) -> int:
        with self._guard:
            if self.over:
                raise BusError(ENDED)
            serial = next(self._serials)
            self._waiting[serial] = (answer, then)
        return serial

    def _send(self, message: Message, serial: int, limit: Limit) -> None:
        try:
            written = message.serialise(serial)
        except (ValueError, TypeError, struct.error) as error:
            raise BusError(f"it cannot be written ({type(error).__name__})") from None
        if not self._sending.acquire(timeout=limit.left()):
            raise TimeoutError
        try:
            self._socket.settimeout(max(limit.left(), LEAST_S))
            self._socket.sendall(written)
        finally:
            self._sending.release()

    def _listen(self) -> None:
        try:
            for raw in self._pieces():
                self._take(raw)
        except (OSError, ValueError, KeyError, struct.error) as error:
            _log.info("the desktop session's bus is gone: %s", unreachable(error))
        with self._guard:
            self.over = True
            waiting, self._waiting = self._waiting, {}
        for answer, _then in waiting.values():
            answer.set_exception(BusError(ENDED))
        with self._sending:
            self._socket.close()
        self._ended(self)

    def _pieces(self) -> Iterator[bytes]:
        """Give each message as it came in, until the other side or `drop` ends it."""
        # Waiting is done here and not in recv, which obeys the time limit of those who send.
        something = select.poll()
        something.register(self._socket, select.POLLIN)
        cutter = _Cutter()
        while True:
            something.poll()
            got = self._socket.recv(PIECE)
            if not got:
                return
            yield from cutter.cut(got)

    def _take(self, raw: bytes) -> None:
        try:
            message = Message.from_buffer(raw)
        except Exception:  # noqa: BLE001 - jeepney raises anything; the thread listens on
            _log.debug("a message of the desktop session could not be read", exc_info=True)
            return
        try:
            kind = message.header.message_type
            if kind is MessageType.signal:
                self._hear(self, message)
            elif kind in (MessageType.method_return, MessageType.error):
                self._answer(message)
        except Exception:  # noqa: BLE001 - whatever it was, the thread listens on
            _log.exception("a message of the desktop session was not dealt with")

    def _answer(self, message: Message) -> None:
        with self._guard:
            waiting = self._waiting.pop(
                message.header.fields.get(HeaderFields.reply_serial, 0), None
            )
        if waiting is None:
            return
        answer, then = waiting
        try:
            if then is not None and message.header.message_type is not MessageType.error:
                then(message)
        finally:
            answer.set_result(message)


class _Cutter:
    """Cuts what comes in into messages; one that is far too large is passed over."""

    def __init__(self) -> None:
        self._kept = bytearray()
        self._pass_over = 0

    def cut(self, got: bytes) -> Iterator[bytes]:
        """Give the messages that are whole now; ValueError or KeyError for what is none."""
        self._kept += got
        while True:
            passed = min(self._pass_over, len(self._kept))
            del self._kept[:passed]
            self._pass_over -= passed
            if self._pass_over or len(self._kept) < HEAD:
                return
            size = calc_msg_size(bytes(self._kept[:HEAD]))
            if size > LARGEST:
                self._pass_over = size
                continue
            if len(self._kept) < size:
                return
            yield bytes(self._kept[:size])
            del self._kept[:size]


def _connected(limit: Limit) -> socket.socket:
    """Give a socket that a bus of the session has accepted; BusError where none does."""
    trouble: Exception | None = None
    try:
        for address in _addresses():
            try:
                seconds = max(min(GREETING_S, limit.left()), LEAST_S)
                sock: socket.socket = prep_socket(address, timeout=seconds)
            except (OSError, ValueError) as error:
                trouble = trouble or error
            else:
                return sock
    except (ValueError, RuntimeError) as error:  # an address that cannot be read
        trouble = trouble or error
    raise BusError(unreachable(trouble or ValueError())) from None


def _addresses() -> Iterator[str]:
    told = os.environ.get("DBUS_SESSION_BUS_ADDRESS", "")
    if told:
        yield from get_connectable_addresses(told)
        return
    # Where the session's manager runs the bus it stands here, also for a service of its own.
    usual = Path(os.environ.get("XDG_RUNTIME_DIR") or "/nowhere", "bus")
    if not usual.is_socket():
        raise BusError("no desktop session to send to")
    yield str(usual)


def sender_of(message: Message) -> str:
    """Give the name that the bus has put on a message."""
    return field(message, HeaderFields.sender)


def field(message: Message, which: HeaderFields) -> str:
    """Give a field of a message's head; "" where it is missing."""
    found: Any = message.header.fields.get(which, "")
    return found if isinstance(found, str) else ""


NO_SERVICE: Final = "org.freedesktop.DBus.Error.ServiceUnknown"
NO_OWNER: Final = "org.freedesktop.DBus.Error.NameHasNoOwner"
_WORDS: Final = {
    NO_SERVICE: "no service answers",
    NO_OWNER: "no service answers",
    "org.freedesktop.DBus.Error.NoReply": "the service ended without an answer",
}


def error_words(name: str) -> str:
    """Say what an error that was answered means."""
    if name in _WORDS:
        return _WORDS[name]
    if name.startswith("org.freedesktop.DBus.Error.Spawn"):
        return "no service answers: it could not be started"
    return f"it answered with an error ({name.rpartition('.')[2][:60]})"


def unreachable(error: Exception) -> str:
    """Say why the bus cannot be reached."""
    if isinstance(error, TimeoutError):
        return "the desktop session does not answer"
    reason = getattr(error, "strerror", None) or type(error).__name__
    return f"the desktop session cannot be reached ({reason})"
