"""The system's keyring, which keeps the password of a studio's server: the library's one door.

A password goes there or nowhere: into no file and no log. Where there is no keyring, or it is
locked, fails, keeps plain text or does not answer in time, a sentence says so.
"""

from __future__ import annotations

import logging
import threading
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, TypeVar

from studio_log.language.words import tr, tr_later

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from keyring.backend import KeyringBackend

SERVICE: Final = "Studio Log"
PATIENCE_S: Final = 10.0
"""Longest that a call takes: a locked keyring asks a person for its own password meanwhile."""
RECOMMENDED: Final = 1
"""Backends below are not recommended, by the library's own measure (keyring, `priority`)."""
PLAIN: Final = ("keyrings.alt.", "keyring.backends.null")
"""Modules whose backends write passwords into files of their own, or keep nothing."""

NO_KEYRING: Final = tr_later(
    "The password is not kept, because this system has no keyring. It was written nowhere, and is "
    "asked for anew at each start."
)
NO_LIBRARY: Final = tr_later(
    "The password is not kept, because the library that speaks to the system’s keyring is not "
    "installed. It was written nowhere, and is asked for anew at each start."
)
PLAIN_TEXT: Final = tr_later(
    "The password is not kept, because this system’s keyring would keep it unprotected. It was "
    "written nowhere, and is asked for anew at each start."
)
LOCKED: Final = tr_later(
    "The password is not kept, because the system’s keyring stayed locked. It was written nowhere, "
    "and is asked for anew at each start. To have it kept, unlock the keyring, then type it again."
)
FAILED: Final = tr_later(
    "The password is not kept, because the system’s keyring failed. It was written nowhere, and is "
    "asked for anew at each start."
)
SILENT: Final = tr_later(
    "The system’s keyring does not answer, so the password is most likely not kept. It was written "
    "into no file, and is asked for anew at each start unless the keyring still takes it."
)
STILL_THERE: Final = tr_later(
    "The password could not be taken out of the system’s keyring. Take it out there by hand: it "
    "stands under “Studio Log”."
)
_MAY_HOLD: Final = frozenset({LOCKED, FAILED, SILENT})

_log = logging.getLogger(__name__)
_T = TypeVar("_T")


@dataclass(frozen=True)
class _Answer:
    """What a keyring said, or the sentence on why it said nothing."""

    value: object = None
    trouble: str = ""


class Secrets:
    """Passwords by the address of their server; any thread may call, and waits at most so long."""

    def __init__(self, patience_s: float = PATIENCE_S) -> None:
        self._patience_s = patience_s
        self._guard = threading.Lock()
        self._asking: threading.Thread | None = None

    def get(self, address_text: str) -> str | None:
        """Give the password kept for an address; None where there is none, or no keyring.

        The address must hold no password: a keyring shows it as the name of what it keeps.
        """
        found = self._asked(lambda ring: ring.get_password(SERVICE, address_text)).value
        return found if isinstance(found, str) else None

    def put(self, address_text: str, password: str) -> str:
        """Keep a password, instead of an older one; give "" or the sentence on why it is not."""

        def keep(ring: KeyringBackend) -> None:
            ring.set_password(SERVICE, address_text, password)
            if ring.get_password(SERVICE, address_text) != password:
                raise LookupError  # there are keyrings that take all and keep nothing

        trouble = self._asked(keep).trouble
        return tr(trouble) if trouble else ""

    def forget(self, address_text: str) -> str:
        """Take a password out, if there is one; give "" or the sentence that it may be there."""

        def take_out(ring: KeyringBackend) -> None:
            if ring.get_password(SERVICE, address_text) is not None:
                ring.delete_password(SERVICE, address_text)

        return tr(STILL_THERE) if self._asked(take_out).trouble in _MAY_HOLD else ""

    def _asked(self, ask: Callable[[KeyringBackend], _T]) -> _Answer:
        """Ask on a thread of its own, and leave it behind where it does not come back in time."""
        answers: list[_Answer] = []

        def run() -> None:
            answers.append(_answer(ask))

        with self._guard:
            # One that hangs is not asked again: threads would pile up behind it.
            if self._asking is not None and self._asking.is_alive():
                return _Answer(trouble=SILENT)
            self._asking = threading.Thread(target=run, name="keyring", daemon=True)
            self._asking.start()
            self._asking.join(self._patience_s)
            return answers[0] if answers else _Answer(trouble=SILENT)


class _NoFitKeyring(Exception):  # noqa: N818 - no error: many systems have none
    """There is no keyring that may have a password; its first argument is the sentence."""


def _answer(ask: Callable[[KeyringBackend], _T]) -> _Answer:
    try:
        return _Answer(ask(_fit_ring()))
    except Exception as error:  # noqa: BLE001 - each backend raises what its system gives it
        trouble = _trouble(error)
        if trouble == FAILED:
            # The words of an error may hold the password: only its kind is told.
            _log.info("the system's keyring failed: %s", type(error).__name__)
        return _Answer(trouble=trouble)


def _fit_ring() -> KeyringBackend:
    try:
        # Late: it looks through all that is installed, and most studios need no password.
        import keyring  # noqa: PLC0415
        from keyring.backends import fail, null  # noqa: PLC0415
    except ImportError:
        raise _NoFitKeyring(NO_LIBRARY) from None
    rings = list(_single(keyring.get_keyring()))
    if fit := next((ring for ring in rings if _is_fit(ring)), None):
        return fit
    is_none = all(isinstance(ring, fail.Keyring | null.Keyring) for ring in rings)
    raise _NoFitKeyring(NO_KEYRING if is_none else PLAIN_TEXT)


def _trouble(error: Exception) -> str:
    if isinstance(error, _NoFitKeyring):
        return str(error)
    from keyring.errors import KeyringLocked, NoKeyringError  # noqa: PLC0415 - there by now

    if isinstance(error, NoKeyringError):
        return NO_KEYRING
    return LOCKED if isinstance(error, KeyringLocked) else FAILED


def _single(chosen: KeyringBackend) -> Iterator[KeyringBackend]:
    """Give the backends one by one, the best first: a chain would try one after the other."""
    chained = getattr(chosen, "backends", None)
    yield from [chosen] if chained is None else chained


def _is_fit(ring: KeyringBackend) -> bool:
    module = f"{type(ring).__module__}."
    return ring.priority >= RECOMMENDED and not module.startswith(PLAIN)
