"""Hears from the server that somebody wrote there, without asking again and again."""

import logging
import os
import select
import threading
from typing import Any, Final, Protocol

import psycopg

from studio_log.domain.server_address import ServerAddress
from studio_log.store.server import CHANNEL, Password, connect

AGAIN_S: Final = (1.0, 2.0, 5.0, 10.0, 30.0)
"""Between tries to reach a server that does not answer; the last one from then on."""
TOGETHER_S: Final = 0.02
"""Commits within this many seconds are told once."""

_log = logging.getLogger(__name__)


class Told(Protocol):
    """Hears of a change, or that the server fell silent."""

    def __call__(self, *, answers: bool) -> None:
        """Take note; in the ear's thread."""
        ...


class ServerEar:
    """Calls `told`, in a thread of its own, when the studio on a server has changed.

    Also when the line to it breaks (`answers` is False then), and when it is there again. It
    sleeps until the system wakes it: an idle studio costs nothing.
    """

    def __init__(self, address: ServerAddress, password: Password, told: Told) -> None:
        self._address = address
        self._password = password
        self._told = told
        self._closing = threading.Event()
        self._wake, self._woken = os.pipe()
        self._thread = threading.Thread(target=self._run, name="server ear", daemon=True)
        self._thread.start()

    def close(self) -> None:
        """Stop and join the thread; nothing is told afterwards."""
        self._closing.set()
        os.write(self._woken, b".")
        self._thread.join()
        os.close(self._wake)
        os.close(self._woken)

    def _run(self) -> None:
        tries = 0
        while not self._closing.is_set():
            try:
                with connect(self._address, self._password, autocommit=True) as line:
                    line.execute(f"LISTEN {CHANNEL}")
                    tries = 0
                    self._tell(answers=True)
                    self._listen(line)
            except (psycopg.Error, OSError) as error:
                _log.info("the server was not heard: %s", type(error).__name__)
            if self._closing.is_set():
                return
            if not tries:
                self._tell(answers=False)
            self._closing.wait(AGAIN_S[min(tries, len(AGAIN_S) - 1)])
            tries += 1

    def _listen(self, line: psycopg.Connection[Any]) -> None:
        """Tell of each change until the line breaks or we close."""
        while True:
            ready, _, _ = select.select([line.fileno(), self._wake], [], [])
            if self._wake in ready:
                return
            self._closing.wait(TOGETHER_S)
            line.pgconn.consume_input()  # OperationalError where the line broke
            heard = False
            while line.pgconn.notifies() is not None:
                heard = True
            if heard:
                self._tell(answers=True)

    def _tell(self, *, answers: bool) -> None:
        try:
            self._told(answers=answers)
        except Exception:  # noqa: BLE001 - whatever it was, the thread goes on
            _log.exception("what was changed could not be told")
