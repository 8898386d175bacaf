"""Talking to the notification service of the desktop session, with a receipt for each notice."""

import contextlib
import os
import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final

from jeepney import DBusAddress, DBusErrorResponse, Message, new_method_call
from jeepney.bus import get_bus
from jeepney.io.blocking import DBusConnection, prep_socket
from jeepney.wrappers import unwrap_msg
from typing_extensions import override

SERVICE: Final = DBusAddress(
    "/org/freedesktop/Notifications",
    bus_name="org.freedesktop.Notifications",
    interface="org.freedesktop.Notifications",
)
NO_SERVICE: Final = "org.freedesktop.DBus.Error.ServiceUnknown"
BY_THE_SERVER: Final = -1
NEVER: Final = 0


class BusError(Exception):
    """The service did not take the notice; the words say why."""


@dataclass(frozen=True)
class Parcel:
    """A notice as the service takes it; `urgency` from 0 to 2, `replaces` an earlier id or 0."""

    app_name: str
    title: str
    body: str
    urgency: int
    replaces: int
    stays: bool


def post(parcel: Parcel, seconds: float) -> int:
    """Show a notice and give the service's receipt; BusError within so many seconds."""
    with _connected(seconds) as connection:
        body = parcel.body
        if reads_markup(connection):
            body = escaped(body)
        hints = {"urgency": ("y", parcel.urgency), "desktop-entry": ("s", "studio-log")}
        expires = NEVER if parcel.stays else BY_THE_SERVER
        call = new_method_call(
            SERVICE,
            "Notify",
            "susssasa{sv}i",
            (parcel.app_name, parcel.replaces, "", parcel.title, body, [], hints, expires),
        )
        return _receipt(_ask(connection, call))


def service_name(seconds: float) -> str:
    """Give the name of the service that answers; BusError where none does."""
    with _connected(seconds) as connection:
        answer = _ask(connection, new_method_call(SERVICE, "GetServerInformation"))
        name = answer[0] if answer and isinstance(answer[0], str) else ""
        plain = "".join(sign for sign in name if sign.isprintable()).strip()
        return plain[:40] or "a service"


def reads_markup(connection: DBusConnection) -> bool:
    """Say whether the service reads marks such as <b>; one that does not say may do so."""
    try:
        answer = _ask(connection, new_method_call(SERVICE, "GetCapabilities"))
    except _AnsweredError:
        return True
    listed = answer[0] if answer else ()
    return isinstance(listed, list) and "body-markup" in listed


def escaped(body: str) -> str:
    """Write &, < and > so that a service that reads marks shows them as they are."""
    return body.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


class _AnsweredError(BusError):
    """The service or the bus answered with an error."""


class _Connection(DBusConnection):  # type: ignore[misc]  # jeepney has no types
    """A connection whose every wait ends by one moment."""

    def __init__(self, sock: Any, until: float) -> None:
        self._until = until
        super().__init__(sock)

    @override
    def send_and_get_reply(self, message: Message, *, timeout: float | None = None) -> Message:
        left = max(self._until - time.monotonic(), 0.0)
        self.sock.settimeout(max(left, 0.001))
        return super().send_and_get_reply(message, timeout=left)


@contextlib.contextmanager
def _connected(seconds: float) -> Iterator[DBusConnection]:
    """Connect to the session's bus for one errand; every fault becomes a BusError."""
    if not os.environ.get("DBUS_SESSION_BUS_ADDRESS"):
        raise BusError("no desktop session to send to")
    until = time.monotonic() + seconds
    sock = None
    try:
        sock = prep_socket(get_bus("SESSION"), timeout=min(seconds, 1.0))
        with _Connection(sock, until) as connection:
            yield connection
    except TimeoutError:
        raise BusError(f"no answer within {seconds:g} s") from None
    except DBusErrorResponse as error:
        raise _AnsweredError(_error_words(error)) from None
    except (OSError, ValueError, KeyError, TypeError, RuntimeError, StopIteration) as error:
        raise BusError(f"the desktop session cannot be reached ({_reason(error)})") from None
    finally:
        if sock is not None:
            sock.close()


def _ask(connection: DBusConnection, call: Message) -> tuple[Any, ...]:
    try:
        answer: tuple[Any, ...] = unwrap_msg(connection.send_and_get_reply(call))
    except DBusErrorResponse as error:
        raise _AnsweredError(_error_words(error)) from None
    return answer


def _receipt(answer: tuple[Any, ...]) -> int:
    if len(answer) == 1 and isinstance(answer[0], int) and answer[0] > 0:
        return answer[0]
    raise BusError("it gave no receipt")


_WORDS: Final[Mapping[str, str]] = {
    NO_SERVICE: "no service answers",
    "org.freedesktop.DBus.Error.NameHasNoOwner": "no service answers",
    "org.freedesktop.DBus.Error.NoReply": "the service ended without an answer",
}


def _error_words(error: DBusErrorResponse) -> str:
    name = str(error.name)
    if name in _WORDS:
        return _WORDS[name]
    if name.startswith("org.freedesktop.DBus.Error.Spawn"):
        return "no service answers: it could not be started"
    return f"it answered with an error ({name.rpartition('.')[2][:60]})"


def _reason(error: Exception) -> str:
    return getattr(error, "strerror", None) or type(error).__name__
