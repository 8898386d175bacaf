"""Which threads a test left running."""

import threading
from collections.abc import Iterable

PATIENCE_S = 2.0


def running() -> frozenset[threading.Thread]:
    """Threads alive now; Python's stand-ins for threads that Qt started are not ours to end."""
    standing = threading.enumerate()
    return frozenset(t for t in standing if not isinstance(t, threading._DummyThread))


def left_behind(before: Iterable[threading.Thread], patience_s: float = PATIENCE_S) -> list[str]:
    """Names of the threads that were not there before and do not end within `patience_s`."""
    new = running() - frozenset(before)
    for thread in new:
        thread.join(patience_s)
    return sorted(thread.name for thread in new if thread.is_alive())
