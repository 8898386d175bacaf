"""The notification service of the desktop session: what it can do, its notices, its signals.

Names and numbers are those of the Desktop Notifications Specification 1.2.
"""

import contextlib
import threading
from collections.abc import Callable, Iterator
from typing import Any, Final, Protocol

from jeepney import DBusAddress, HeaderFields, Message, new_method_call
from jeepney.bus_messages import message_bus

from studio_log.outside.bus import (
    NO_OWNER,
    NO_SERVICE,
    AnsweredError,
    Connection,
    field,
    sender_of,
)
from studio_log.outside.notice_parcel import (
    CLOSING,
    Abilities,
    BusError,
    Limit,
    Parcel,
    Receipt,
    line,
)

PATH: Final = "/org/freedesktop/Notifications"
NAME: Final = "org.freedesktop.Notifications"
BUS: Final = "org.freedesktop.DBus"
RULES: Final = (
    f"type='signal',sender='{BUS}',member='NameOwnerChanged',arg0='{NAME}'",
    f"type='signal',sender='{NAME}',interface='{NAME}',path='{PATH}'",
)
NOT_THERE: Final = frozenset({NO_SERVICE, NO_OWNER})
"""Errors of the bus that mean: the message reached nobody."""
LONGEST_NAME: Final = 40
LAST_WAIT_S: Final = 2.0


class Ears(Protocol):
    """Hears of the service, in the thread that listens: it does nothing that takes time."""

    def pressed(self, receipt: Receipt, key: str) -> None:
        """Hear that a button of a notice, or the notice itself, was pressed."""
        ...

    def gone(self, receipt: Receipt) -> None:
        """Hear that a notice has left the screen."""
        ...

    def served_by(self, owner: str) -> None:
        """Hear who is the service from now on; "" for nobody."""
        ...

    def cut_off(self) -> None:
        """Hear that the connection ended."""
        ...


class NoticeService:
    """Keeps one connection, made when it is first needed and anew after any fault.

    Any thread but the listening one may call; each call ends within its limit or with a BusError.
    """

    def __init__(self, ears: Ears) -> None:
        self._ears = ears
        self._opening = threading.Lock()
        self._connection: Connection | None = None
        self._old: list[Connection] = []
        self._able: Abilities | None = None
        self._owners = 0  # how many changes of the owner were heard
        self._closed = False

    def look(self, limit: Limit) -> Abilities:
        """Ask the service whether it lives, and give what it can do."""
        connection = self._open(limit)
        owner, name = self._name(connection, limit)
        known = self._able
        if known is not None and (known.owner, known.name) == (owner, name):
            return known
        return self._ask(connection, owner, name, limit)

    def post(self, parcel: Parcel, keep: Callable[[Receipt], None], limit: Limit) -> Abilities:
        """Show a notice; give what the service that took it can do.

        `keep` gets the receipt before anything is heard of that notice.
        """
        try:
            return self._post(parcel, keep, limit)
        except AnsweredError as error:
            self._able = None
            if error.name not in NOT_THERE:
                raise
        # The service that was known has gone and nobody got it: whoever follows it may.
        return self._post(parcel, keep, limit)

    def withdraw(self, receipt: Receipt, limit: Limit) -> None:
        """Take a notice from the screen; nothing where its service is no longer there."""
        connection = self._open(limit)
        owner = connection.unique(receipt.owner)
        if owner:
            # An answered error means that the notice is gone already, or its service is.
            with contextlib.suppress(AnsweredError):
                self._call(connection, owner, "CloseNotification", limit, "u", receipt.number)

    def close(self) -> None:
        """End the connection and its thread; every call fails from now on."""
        self._closed = True
        limit = Limit(LAST_WAIT_S)
        with contextlib.suppress(BusError), self._alone(limit):
            if self._connection is not None:
                self._connection.drop()
                self._old.append(self._connection)
                self._connection = None
        for one in self._old:
            one.join(limit.left())

    def _post(self, parcel: Parcel, keep: Callable[[Receipt], None], limit: Limit) -> Abilities:
        connection = self._open(limit)
        able = self._able or self._guess(connection, limit)
        owner = connection.unique(able.owner)
        if parcel.quiet and (parcel.replaces is None or parcel.replaces.owner != able.owner):
            raise BusError("that notice is no longer there")

        def taken(answer: Message) -> None:
            number = _number(answer)
            if number:
                keep(Receipt(connection.whole(sender_of(answer)), number))

        fields = parcel.fields(able)
        # The owner is asked by its own name: a number means nothing to whoever follows it.
        answer = self._call(
            connection, owner, "Notify", limit, "susssasa{sv}i", *fields, then=taken
        )
        if not _number(answer):
            raise BusError("it gave no receipt")
        return able

    def _guess(self, connection: Connection, limit: Limit) -> Abilities:
        """Give what the service can do; where it answers that with an error, the least."""
        try:
            return self._ask(connection, *self._name(connection, limit), limit)
        except AnsweredError as error:
            if error.sender in ("", BUS):
                raise
            return Abilities(connection.whole(error.sender), "a service")

    def _name(self, connection: Connection, limit: Limit) -> tuple[str, str]:
        answer = self._call(connection, NAME, "GetServerInformation", limit)
        told = answer.body[0] if answer.body and isinstance(answer.body[0], str) else ""
        plain = "".join(sign for sign in line(told) if sign.isprintable())
        return connection.whole(sender_of(answer)), plain[:LONGEST_NAME] or "a service"

    def _ask(self, connection: Connection, owner: str, name: str, limit: Limit) -> Abilities:
        heard = self._owners
        try:
            answer = self._call(connection, connection.unique(owner), "GetCapabilities", limit)
        except AnsweredError as error:
            if error.name in NOT_THERE:
                raise
            able = Abilities(owner, name)
        else:
            able = _read(owner, name, answer)
        if heard == self._owners and connection is self._connection:
            self._able = able
        return able

    def _call(
        self,
        connection: Connection,
        to: str,
        member: str,
        limit: Limit,
        signature: str | None = None,
        *body: Any,
        then: Callable[[Message], None] | None = None,
    ) -> Message:
        try:
            address = DBusAddress(PATH, bus_name=to, interface=NAME)
        except ValueError:  # no name of this bus: the one that was meant is not on it
            raise AnsweredError(NO_OWNER, BUS) from None
        return connection.call(new_method_call(address, member, signature, body), limit, then)

    @contextlib.contextmanager
    def _alone(self, limit: Limit) -> Iterator[None]:
        if not self._opening.acquire(timeout=limit.left()):
            raise BusError(f"no answer within {limit.seconds:g} s")
        try:
            yield
        finally:
            self._opening.release()

    def _open(self, limit: Limit) -> Connection:
        with self._alone(limit):
            self._refuse_if_closed()
            if self._connection is not None:
                if not self._connection.over:
                    return self._connection
                self._old.append(self._connection)
                self._connection = None
            self._old = [one for one in self._old if not one.join(0.0)]
            self._able = None
            connection = Connection(self._hear, self._ended, limit)
            try:
                for rule in RULES:
                    connection.call(message_bus.AddMatch(rule), limit)
            except BusError:
                connection.drop()
                raise
            self._connection = connection
        if self._closed:
            connection.drop()
        self._refuse_if_closed()
        return connection

    def _refuse_if_closed(self) -> None:
        if self._closed:
            raise BusError(CLOSING)

    def _hear(self, connection: Connection, message: Message) -> None:
        interface, member = (field(message, one) for one in (_INTERFACE, _MEMBER))
        signature, sender = field(message, HeaderFields.signature), sender_of(message)
        if (interface, member, sender) == (BUS, "NameOwnerChanged", BUS) and signature == "sss":
            name, _old, new = message.body
            if name == NAME:
                self._owners += 1
                self._able = None
                self._ears.served_by(connection.whole(new) if new else "")
        elif (interface, member, signature) == (NAME, "ActionInvoked", "us"):
            number, key = message.body
            self._ears.pressed(Receipt(connection.whole(sender), number), key)
        elif (interface, member, signature) == (NAME, "NotificationClosed", "uu"):
            self._ears.gone(Receipt(connection.whole(sender), message.body[0]))

    def _ended(self, connection: Connection) -> None:
        if connection is self._connection:
            self._able = None
            if not self._closed:
                self._ears.cut_off()


_INTERFACE: Final = HeaderFields.interface
_MEMBER: Final = HeaderFields.member


def _number(answer: Message) -> int:
    """Give the receipt's number; 0 where the service gave none."""
    signed = field(answer, HeaderFields.signature) == "u"
    return int(answer.body[0]) if signed else 0


def _read(owner: str, name: str, answer: Message) -> Abilities:
    listed = answer.body[0] if field(answer, HeaderFields.signature) == "as" else None
    if listed is None:
        return Abilities(owner, name)
    return Abilities(
        owner,
        name,
        body="body" in listed,
        markup="body-markup" in listed,
        buttons="actions" in listed,
    )
