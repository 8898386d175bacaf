"""Desktop notices by every channel there is, each attempt with its outcome, never an error."""

import contextlib
import logging
import sys
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.outside.notice_memory import NoticeMemory
from studio_log.outside.notice_parcel import (
    CLOSING,
    BusError,
    Dress,
    Limit,
    Parcel,
    Receipt,
    level,
)
from studio_log.outside.notice_receipts import Receipts
from studio_log.outside.sending import ON_LINUX, SendingError, send
from studio_log.services.ports import Delivery, NoticeText

if sys.platform.startswith("linux"):  # elsewhere there is no session bus, and no jeepney
    from studio_log.outside.notice_service import NoticeService

SERVICE: Final = "desktop (notification service)"
PLYER: Final = "desktop (plyer)"
WHOLE_S: Final = 2.9
"""Longest that showing may take, both channels together."""
SERVICE_S: Final = 2.0
LEAST_PLYER_S: Final = 0.5
FRESH_S: Final = 30.0
"""How long an answer about the service is believed."""
State = tuple[bool, str]
Acted = Callable[[NoticeText, str], None]
NOT_ASKED: Final[State] = (True, tr_later("desktop notices: not asked yet"))
BY_PLYER: Final[State] = (
    True,
    tr_later("desktop notices are sent through plyer; nothing tells if they are seen"),
)

_log = logging.getLogger(__name__)


class DesktopNotice:
    """Shows notices on the desktop. Any thread may call; nothing blocks longer than 3 s.

    `acted` hears what was pressed, in the thread that listens to the bus: it hands that on, and
    calls nothing of this class. `memory` is the file in which a later process finds the notices
    of this one; None keeps none.
    """

    def __init__(
        self,
        app_name: str = "Studio Log",
        *,
        demo: bool = False,
        acted: Acted | None = None,
        memory: Path | None = None,
        monotonic: Callable[[], float] = time.monotonic,
    ) -> None:
        self._dress = Dress(app_name, demo, heard=acted is not None)
        self._acted = acted
        self._monotonic = monotonic
        self._guard = threading.Lock()
        self._memory = NoticeMemory(memory) if memory is not None else None
        self._receipts = Receipts(monotonic, self._note)
        self._closed = False
        self._state = NOT_ASKED
        self._asked: float | None = None
        self._service = NoticeService(_Ears(self, self._receipts)) if ON_LINUX else None

    def show(self, text: NoticeText) -> Sequence[Delivery]:
        """Show it and say what each channel answered; later ones only where earlier fail."""
        if self._closed:
            return (Delivery(SERVICE, ok=False, words=CLOSING),)
        whole = Limit(WHOLE_S)
        done = []
        if self._service is not None:
            done.append(self._by_service(self._service, text))
            if done[0].ok:
                return tuple(done)
        parcel = self._dress.parcel(text, None, quiet=False)
        done.append(_by_plyer(parcel, max(whole.left(), LEAST_PLYER_S)))
        self._remember(BY_PLYER if done[-1].ok else _off(done[0].words))
        return tuple(done)

    def revise(self, keys: tuple[str, ...], text: NoticeText | None) -> None:
        """Put another text in place of the notice for these keys, quietly; None takes it away.

        Nothing happens where no notice for exactly these keys is on the screen, and nothing can
        be revised that went through plyer.
        """
        receipt = self._receipts.of(keys)
        if self._service is None or receipt is None:
            return
        try:
            with _bus_errors():
                if text is None:
                    self._withdraw(self._service, receipt, Limit(SERVICE_S))
                else:
                    self._post(self._service, text, receipt, quiet=True)
        except BusError as error:
            _log.info("a notice could not be revised: %s", error)

    def take_over(self) -> tuple[tuple[str, ...], ...]:
        """Take the notices over that an earlier process left; give their keys, oldest first.

        From now on this process keeps the file. Notices of another run of the service, or of
        another session, are forgotten. May take 2 s.
        """
        if self._service is None or self._memory is None or self._closed:
            return ()
        left = self._memory.begin()
        if not left:
            return ()
        self._receipts.adopt(left)
        limit = Limit(SERVICE_S)
        try:
            with _bus_errors():
                able = self._service.look(limit)
                self._remember((True, able.words()))
                self._receipts.keep_only(able.owner)
                for receipt in [one for one, text in left if not text.keys]:
                    self._withdraw(self._service, receipt, limit)
        except BusError as error:
            # They stay known: a service that hangs may answer later, and is then the same.
            _log.info("notices of an earlier run could not be looked at: %s", error)
            self._remember(_off(str(error)))
        return tuple(text.keys for _, text in self._receipts.standing() if text.keys)

    def hand_over(self) -> None:
        """Leave what stands on the screen to the process that shows notices from now on."""
        if self._memory is not None:
            self._memory.end()
            self._receipts.forget_all()

    def state(self) -> tuple[bool, str]:
        """Say what was last known of desktop notices, and in words; never waits."""
        with self._guard:
            return self._state

    def stale(self) -> bool:
        """Say whether the state is older than 30 s or was never asked; then `look` is due."""
        with self._guard:
            return self._asked is None or self._monotonic() - self._asked >= FRESH_S

    def look(self) -> tuple[bool, str]:
        """Ask the service anew and give the state; may take 2 s."""
        if self._closed:
            return self.state()
        if self._service is None:
            return self._remember(BY_PLYER)
        try:
            with _bus_errors():
                return self._remember((True, self._service.look(Limit(SERVICE_S)).words()))
        except BusError as error:
            return self._remember(_off(str(error)))

    def close(self) -> None:
        """Let go of the bus and join its thread; notices on the screen stay."""
        with self._guard:
            self._closed = True
            self._state = (False, f"desktop notices are off: {CLOSING}")
        if self._service is not None:
            self._service.close()
        if self._memory is not None:
            self._memory.end()

    def heard(self, text: NoticeText, answer: str) -> None:
        """Hand on what was pressed; whatever that leads to, the listening goes on."""
        try:
            if self._acted is not None:
                self._acted(text, answer)
        except Exception:  # noqa: BLE001 - whatever it was, the thread listens on
            _log.exception("the answer %r to a notice could not be handed on", answer)

    def doubt(self, state: State | None) -> None:
        """Hear that the last state holds no longer; None where it is not known what does."""
        with self._guard:
            self._asked = None
            if state is not None and not self._closed:
                self._state = state

    def _by_service(self, service: "NoticeService", text: NoticeText) -> Delivery:
        try:
            with _bus_errors():
                receipt = self._post(service, text, self._receipts.of(text.keys), quiet=False)
        except BusError as error:
            return Delivery(SERVICE, ok=False, words=str(error))
        return Delivery(SERVICE, ok=True, words=f"shown, receipt {receipt.number}")

    def _post(
        self, service: "NoticeService", text: NoticeText, replaces: Receipt | None, *, quiet: bool
    ) -> Receipt:
        taken: list[Receipt] = []
        others: list[Receipt] = []

        def keep(receipt: Receipt) -> None:
            others.extend(self._receipts.keep(receipt, text, replaces))
            taken.append(receipt)

        limit = Limit(SERVICE_S)
        able = service.post(self._dress.parcel(text, replaces, quiet=quiet), keep, limit)
        self._remember((True, able.words()))
        with contextlib.suppress(BusError):
            for one in others:  # the same reminders are not told of twice
                self._withdraw(service, one, limit)
        return taken[0]

    def _withdraw(self, service: "NoticeService", receipt: Receipt, limit: Limit) -> None:
        """Take a notice away; forgotten only then, so that a kill in between leaves it known."""
        service.withdraw(receipt, limit)
        self._receipts.forget(receipt)

    def _note(self) -> None:
        if self._memory is not None:
            self._memory.write(self._receipts.standing)

    def _remember(self, state: State) -> State:
        with self._guard:
            if not self._closed:
                self._state = state
                self._asked = self._monotonic()
            return self._state


class _Ears:
    """What the service tells, brought to the receipts and to the notice channel."""

    def __init__(self, channel: DesktopNotice, receipts: Receipts) -> None:
        self._channel = channel
        self._receipts = receipts

    def pressed(self, receipt: Receipt, key: str) -> None:
        """Hear that a button was pressed."""
        answered = self._receipts.press(receipt, key)
        if answered is not None:
            self._channel.heard(*answered)

    def gone(self, receipt: Receipt) -> None:
        """Hear that a notice has left the screen."""
        self._receipts.forget(receipt)

    def served_by(self, owner: str) -> None:
        """Hear who is the service; the numbers of another one mean nothing to it."""
        self._receipts.keep_only(owner)
        self._channel.doubt(None if owner else _off("no service answers"))

    def cut_off(self) -> None:
        """Hear that the connection ended; the same service may be there after it."""
        self._channel.doubt(_off("no service answers"))


@contextlib.contextmanager
def _bus_errors() -> Iterator[None]:
    """Make whatever goes wrong a BusError: no notice ever costs the program more than itself."""
    try:
        yield
    except BusError:
        raise
    except Exception as error:  # noqa: BLE001 - it is logged, and goes on as the error it is here
        _log.exception("a desktop notice failed in a way that was not foreseen")
        raise BusError(f"it failed ({type(error).__name__})") from None


def _by_plyer(parcel: Parcel, seconds: float) -> Delivery:
    urgency = level(parcel.urgency)
    try:
        send(parcel.app_name, parcel.title, parcel.body, urgency=urgency, seconds=seconds)
    except SendingError as error:
        return Delivery(PLYER, ok=False, words=str(error))
    except Exception as error:  # noqa: BLE001 - plyer may raise anything; a notice never does
        return Delivery(PLYER, ok=False, words=f"it failed ({type(error).__name__})")
    return Delivery(PLYER, ok=True, words="sent")


def _off(words: str) -> State:
    refused = words.startswith("it answered")
    if refused:
        return False, tr(
            "desktop notices are off: the service answers with an error; ringing here only"
        )
    return False, tr("desktop notices are off: no service answers; ringing here only")
