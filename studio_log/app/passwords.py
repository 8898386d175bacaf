"""Where the password of a studio's server comes from: typed, the environment, the keyring."""

import os
import threading
from typing import Final

from studio_log.outside.secrets import Secrets

VARIABLE: Final = "PGPASSWORD"
"""As PostgreSQL's own programs read it (postgresql.org/docs, "Environment Variables")."""


class Passwords:
    """The password of one server. It stays in this process's memory and in the keyring."""

    def __init__(self, address: str = "", keyring: Secrets | None = None) -> None:
        self._address = address
        self._keyring = keyring or Secrets()
        self._guard = threading.Lock()
        self._known: str | None = None

    @property
    def address(self) -> str:
        """The server's address, without the password."""
        return self._address

    def __call__(self) -> str:
        """Give it; "" where none is known, so that libpq looks into its own files."""
        with self._guard:
            if self._known is None:
                kept = self._keyring.get(self._address) if self._address else ""
                self._known = os.environ.get(VARIABLE) or kept or ""
            return self._known

    def learn(self, address: str, password: str) -> str:
        """Know a password from now on, here and in the keyring; gives words where not there."""
        with self._guard:
            self._address, self._known = address, password
        return self._keyring.put(address, password)
