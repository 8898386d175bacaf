"""Keeps the screen on while it is asked to, by the desktop session's own services.

The calls are those of the Idle Inhibition Service Draft (org.freedesktop.ScreenSaver) and of the
desktop portal's Inhibit (org.freedesktop.portal.Inhibit). Either lets go by itself when the
connection of whoever asked ends, so that nothing stays behind a program that was killed.
"""

import contextlib
import sys
import threading
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, Final

from studio_log.outside.notice_parcel import BusError, Limit

ON_LINUX: bool = sys.platform.startswith("linux")
if sys.platform.startswith("linux"):  # elsewhere there is no session bus, and no jeepney
    from jeepney import DBusAddress, Message, new_method_call

    from studio_log.outside.bus import Connection

if TYPE_CHECKING:
    from types import TracebackType

SECONDS: Final = 1.0
"""Longest that one call may take."""
JOIN_S: Final = 2.0
NAME: Final = "studio-log"
WHY: Final = "The next things are shown across the room."
IDLE: Final = 8
"""The portal's flag for "the session goes idle"."""
KEPT: Final = "The screen stays on until you leave this view or press W again."
RESTS: Final = "The screen may rest again."
NOWHERE: Final = "The screen cannot be kept on from here"
_ADVICE: Final = "Set its rest in the system’s settings."
_LetGo = Callable[["Connection", Limit], None]


class ScreenAwake:
    """Any thread may call; each switch takes a second or two at most."""

    def __init__(self) -> None:
        self._guard = threading.Lock()
        self._held: Connection | None = None
        self._let_go: _LetGo | None = None

    @property
    def on(self) -> bool:
        """Whether the screen is kept on; false once the session's bus has gone."""
        held = self._held
        return held is not None and not held.over

    def keep(self, on: bool) -> str:  # noqa: FBT001 - the one thing that it is told
        """Keep the screen on, or let it rest again; gives words for the person, never raises."""
        with self._guard:
            if not on:
                self._release()
                return RESTS
            if self.on:
                return KEPT
            return self._take()

    def close(self) -> None:
        """Let the screen rest again."""
        with self._guard:
            self._release()

    def __enter__(self) -> "ScreenAwake":
        return self

    def __exit__(
        self,
        _kind: type[BaseException] | None,
        _error: BaseException | None,
        _trace: "TracebackType | None",
    ) -> None:
        self.close()

    def _take(self) -> str:
        if not ON_LINUX:
            return f"{NOWHERE}: that is not written for this system. {_ADVICE}"
        self._release()
        try:
            held = Connection(_ignore, _ignore, Limit(SECONDS))
        except BusError as error:
            return f"{NOWHERE}: {error}. {_ADVICE}"
        trouble = ""
        for ask in (_ask_screen_saver, _ask_portal):
            try:
                self._let_go = ask(held, Limit(SECONDS))
            except BusError as error:
                trouble = trouble or str(error)
            else:
                self._held = held
                return KEPT
        _end(held)
        return f"{NOWHERE}: {trouble}. {_ADVICE}"

    def _release(self) -> None:
        held, self._held = self._held, None
        let_go, self._let_go = self._let_go, None
        if held is None:
            return
        if let_go is not None and not held.over:
            with contextlib.suppress(BusError):  # the end of the connection says the same
                let_go(held, Limit(SECONDS))
        _end(held)


def _ignore(*_what: object) -> None:
    """Hear nothing: neither service tells anything that matters here."""


def _end(held: "Connection") -> None:
    held.drop()
    held.join(JOIN_S)


def _ask_screen_saver(held: "Connection", limit: Limit) -> _LetGo:
    """Ask the screen saver's service; BusError where there is none or it will not."""
    service = DBusAddress(
        "/org/freedesktop/ScreenSaver", "org.freedesktop.ScreenSaver", "org.freedesktop.ScreenSaver"
    )
    answer = held.call(new_method_call(service, "Inhibit", "ss", (NAME, WHY)), limit)
    cookie = _only(answer, int)

    def let_go(held: "Connection", limit: Limit) -> None:
        held.call(new_method_call(service, "UnInhibit", "u", (cookie,)), limit)

    return let_go


def _ask_portal(held: "Connection", limit: Limit) -> _LetGo:
    """Ask the desktop's portal; BusError where there is none or it will not."""
    name = "org.freedesktop.portal.Desktop"
    portal = DBusAddress("/org/freedesktop/portal/desktop", name, "org.freedesktop.portal.Inhibit")
    options = {"reason": ("s", WHY)}
    call = new_method_call(portal, "Inhibit", "sua{sv}", ("", IDLE, options))
    request = DBusAddress(
        _only(held.call(call, limit), str), name, "org.freedesktop.portal.Request"
    )

    def let_go(held: "Connection", limit: Limit) -> None:
        held.call(new_method_call(request, "Close"), limit)

    return let_go


def _only(answer: "Message", kind: type[Any]) -> Any:
    """Give the one value of an answer; BusError where it is something else."""
    if len(answer.body) != 1 or not isinstance(answer.body[0], kind):
        raise BusError("the service answered with something else than agreed")
    return answer.body[0]
