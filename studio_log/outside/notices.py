"""Desktop notices by every channel there is, each attempt with its outcome, never an error."""

import threading
import time
from collections import OrderedDict
from collections.abc import Callable, Sequence
from typing import Final

from studio_log.outside.bus import BusError, Parcel, post, service_name
from studio_log.outside.sending import ON_LINUX, SendingError, send
from studio_log.services.ports import Delivery, NoticeText

SERVICE: Final = "desktop (notification service)"
PLYER: Final = "desktop (plyer)"
WHOLE_S: Final = 2.9
"""Longest that showing may take, both channels together."""
SERVICE_S: Final = 2.0
FRESH_S: Final = 30.0
"""How long an answer about the service is believed."""
LONGEST_TITLE: Final = 300
LONGEST_BODY: Final = 4_000
MOST_REMEMBERED: Final = 300
URGENCIES: Final = {"calm": 0, "soon": 1, "now": 1, "spoiling": 2}
STAYING: Final = frozenset({"now", "spoiling"})
"""These stay on the screen until they are answered."""


class DesktopNotice:
    """Shows notices on the desktop. Any thread may call; nothing blocks longer than 3 s."""

    def __init__(
        self,
        app_name: str = "Studio Log",
        *,
        demo: bool = False,
        monotonic: Callable[[], float] = time.monotonic,
    ) -> None:
        self._app_name = app_name
        self._demo = demo
        self._monotonic = monotonic
        self._guard = threading.Lock()
        self._receipts: OrderedDict[tuple[str, ...], int] = OrderedDict()
        self._state: tuple[bool, str] | None = None
        self._asked = 0.0

    def show(self, text: NoticeText) -> Sequence[Delivery]:
        """Show it and say what each channel answered; later ones only where earlier fail."""
        until = time.monotonic() + WHOLE_S
        title = _line(text.title) or self._app_name
        title = f"Demo: {title}" if self._demo else title
        body = _lines(text.body)
        done = []
        if ON_LINUX:
            done.append(self._by_service(text, title, body))
            if done[0].ok:
                return tuple(done)
        left = max(until - time.monotonic(), 0.5)
        done.append(self._by_plyer(text, title, body, left))
        self._remember(ok=done[-1].ok, words=done[0].words, name="")
        return tuple(done)

    def state(self) -> tuple[bool, str]:
        """Say whether desktop notices work, and in words what does."""
        with self._guard:
            if self._state is not None and self._monotonic() - self._asked < FRESH_S:
                return self._state
        if not ON_LINUX:
            return self._remember(ok=True, words="", name="this system")
        try:
            return self._remember(ok=True, words="", name=service_name(SERVICE_S))
        except BusError as error:
            return self._remember(ok=False, words=str(error), name="")

    def _by_service(self, text: NoticeText, title: str, body: str) -> Delivery:
        group = tuple(sorted(text.keys))
        with self._guard:
            replaces = self._receipts.get(group, 0)
        parcel = Parcel(
            self._app_name,
            title,
            body,
            URGENCIES.get(text.urgency, 1),
            replaces,
            stays=text.urgency in STAYING,
        )
        try:
            receipt = post(parcel, SERVICE_S)
        except BusError as error:
            return Delivery(SERVICE, ok=False, words=str(error))
        self._keep(group, receipt)
        return Delivery(SERVICE, ok=True, words=f"shown, receipt {receipt}")

    def _by_plyer(self, text: NoticeText, title: str, body: str, seconds: float) -> Delivery:
        urgency = URGENCIES.get(text.urgency, 1)
        try:
            send(self._app_name, title, body, urgency=urgency, seconds=seconds)
        except SendingError as error:
            return Delivery(PLYER, ok=False, words=str(error))
        except Exception as error:  # noqa: BLE001 - plyer may raise anything; a notice never does
            return Delivery(PLYER, ok=False, words=f"it failed ({type(error).__name__})")
        return Delivery(PLYER, ok=True, words="sent")

    def _keep(self, group: tuple[str, ...], receipt: int) -> None:
        """Keep the receipt, so that the next ring of the same reminders replaces this notice."""
        with self._guard:
            if group:
                self._receipts[group] = receipt
                self._receipts.move_to_end(group)
            while len(self._receipts) > MOST_REMEMBERED:
                self._receipts.popitem(last=False)
            if self._state is not None and not self._state[0]:
                self._state = None  # it works again: ask anew who answers

    def _remember(self, *, ok: bool, words: str, name: str) -> tuple[bool, str]:
        if ok and name:
            state = (True, f"desktop notices work: {name} answers")
        elif ok:
            state = (True, "desktop notices are sent through plyer; nothing tells if they are seen")
        else:
            refused = words.startswith("it answered")
            why = "the service answers with an error" if refused else "no service answers"
            state = (False, f"desktop notices are off: {why}; ringing here only")
        with self._guard:
            self._state = state
            self._asked = self._monotonic()
        return state


def _plain(text: str, *, keep: str = "") -> str:
    """Take out what no service takes: control characters, halves of characters."""
    kept = "".join(sign for sign in text if sign in keep or (ord(sign) >= 32 and sign != "\x7f"))
    return kept.encode("utf-8", "replace").decode("utf-8")


def _line(text: str) -> str:
    return _plain(" ".join(text.split()))[:LONGEST_TITLE].strip()


def _lines(text: str) -> str:
    kept = _plain(text.replace("\r\n", "\n"), keep="\n")
    return kept if len(kept) <= LONGEST_BODY else f"{kept[: LONGEST_BODY - 1]}…"
