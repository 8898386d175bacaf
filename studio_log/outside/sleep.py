"""Hears from the system when the machine wakes; where it cannot, the alarm's heartbeat sees it."""

import logging
import sys
import threading
from collections.abc import Callable
from typing import Final

from studio_log.outside.notice_parcel import Limit

ON_LINUX: bool = sys.platform.startswith("linux")
if sys.platform.startswith("linux"):  # elsewhere there is no system bus, and no jeepney
    from studio_log.outside.logind import Logind

GREETING_S: Final = 1.0
"""Longest that the system bus may take to answer; nobody waits for it but the watch's thread."""
LAST_WAIT_S: Final = 2.0
HEARD: Final = "waking from sleep is heard of through logind"
SEEN: Final = "waking from sleep is seen by the clock, within 35 s"

_log = logging.getLogger(__name__)


class SleepWatch:
    """Calls `woken`, in a thread of its own, as soon as the machine has woken from sleep.

    Without a system bus, without logind, or once the bus has died, it does nothing more.
    """

    def __init__(self, woken: Callable[[], None]) -> None:
        self._woken = woken
        self._guard = threading.Lock()
        self._closing = False
        self._logind: Logind | None = None
        self._thread = threading.Thread(target=self._listen, name="sleep watch", daemon=True)
        if ON_LINUX:
            self._thread.start()

    @property
    def words(self) -> str:
        """By what waking is noticed; never waits."""
        with self._guard:
            return HEARD if self._logind is not None and self._logind.there else SEEN

    def close(self) -> None:
        """End the thread; nothing is called afterwards."""
        with self._guard:
            self._closing = True
            if self._logind is not None:
                self._logind.shut()
        if self._thread.is_alive() and self._thread is not threading.current_thread():
            self._thread.join(LAST_WAIT_S)

    def _listen(self) -> None:
        limit = Limit(GREETING_S)
        try:
            logind = Logind(limit)
        except Exception as error:  # noqa: BLE001 - whatever it was, it goes on without
            _log.info("no system bus to hear of waking from: %s", error)
            return
        try:
            self._hear(logind, limit)
        except Exception as error:  # noqa: BLE001 - jeepney raises anything for what it cannot read
            if not self._closing:
                _log.info("the system bus is gone; waking is seen by the clock: %s", error)
        finally:
            with self._guard:
                self._logind = None
                logind.close()

    def _hear(self, logind: "Logind", limit: Limit) -> None:
        logind.greet(limit)
        with self._guard:
            if self._closing:
                return
            self._logind = logind
        for _ in logind.wakings():
            self._tell()

    def _tell(self) -> None:
        if self._closing:
            return
        try:
            self._woken()
        except Exception:  # noqa: BLE001 - whatever it was, the thread listens on
            _log.exception("waking was not dealt with; the clock shows it at the next heartbeat")
