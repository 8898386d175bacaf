"""The system's keyring: the one door to the library of that name.

A password goes there or nowhere. A keyring that is locked, missing, keeps plain text or does
not answer within some seconds is told of in words, and the password is asked for again at the
next start.
"""

import logging
import threading
from collections.abc import Callable
from typing import Any, Final

from studio_log.language.words import tr, tr_later

SERVICE: Final = "Studio Log"
PATIENCE_S: Final = 8.0
"""A keyring that is locked shows a question of its own, which takes a person a moment."""
NOT_KEPT: Final = tr_later(
    "The password could not be kept in the system’s keyring ({why}); it was written nowhere, and "
    "will be asked for at the next start."
)
PLAIN: Final = ("keyrings.alt", "keyring.backends.null")
"""Modules of backends that keep passwords as text, or not at all."""

_log = logging.getLogger(__name__)


class Keyring:
    """Passwords of servers by their addresses; any thread may call."""

    def __init__(self, patience_s: float = PATIENCE_S) -> None:
        self._patience = patience_s

    def get(self, address: str) -> str:
        """Give the password kept for an address, "" where there is none or no keyring."""
        found, _ = self._asked(lambda keyring: keyring.get_password(SERVICE, address))
        return found if isinstance(found, str) else ""

    def put(self, address: str, password: str) -> str:
        """Keep a password; gives a sentence where it was not."""
        _, why = self._asked(lambda keyring: keyring.set_password(SERVICE, address, password))
        return tr(NOT_KEPT, why=why) if why else ""

    def forget(self, address: str) -> None:
        """Take a password out; nothing is said where there is none."""
        self._asked(lambda keyring: keyring.delete_password(SERVICE, address))

    def _asked(self, ask: Callable[[Any], Any]) -> tuple[Any, str]:
        """Ask the keyring on a thread of its own; gives its answer, and why there is none."""
        answer: list[tuple[Any, str]] = []

        def run() -> None:
            answer.append(_answered(ask))

        thread = threading.Thread(target=run, name="keyring", daemon=True)
        thread.start()
        thread.join(self._patience)
        return answer[0] if answer else (None, tr("it does not answer"))


def _answered(ask: Callable[[Any], Any]) -> tuple[Any, str]:
    try:
        # Late: it looks through all installed backends, and most studios need none.
        import keyring  # noqa: PLC0415

        if why := _unfit(keyring.get_keyring()):
            return None, why
        return ask(keyring), ""
    except ImportError:
        return None, tr("none is installed")
    except Exception as error:  # noqa: BLE001 - each backend has errors of its own
        _log.info("the keyring refused: %s", type(error).__name__)
        return None, tr("it refused")


def _unfit(backend: Any) -> str:
    """Say why a backend is not trusted with a password; "" for one that is."""
    module = type(backend).__module__
    if module.startswith("keyring.backends.fail"):
        return tr("this system has none")
    if module.startswith(PLAIN):
        return tr("it keeps plain text")
    return ""
