"""Waiting, without a window, to be told to end."""

import contextlib
import signal
import socket
from collections.abc import Callable, Iterator


@contextlib.contextmanager
def told_to_end() -> Iterator[Callable[[], None]]:
    """Give a call that waits for SIGTERM or SIGINT, whichever thread the system tells of it.

    A byte through a socket wakes the wait: a lock would only be woken if the main thread
    itself were told. What was handled before is handled so again afterwards.
    """
    ours, theirs = socket.socketpair()
    with ours, theirs:
        theirs.settimeout(0)
        wake_up = signal.set_wakeup_fd(theirs.fileno())
        told = (signal.SIGTERM, signal.SIGINT)
        before = [signal.signal(number, _taken) for number in told]
        try:
            yield lambda: _wait(ours)
        finally:
            for number, handler in zip(told, before, strict=True):
                signal.signal(number, handler)
            signal.set_wakeup_fd(wake_up)


def _wait(ours: socket.socket) -> None:
    while ours.recv(1)[0] not in (signal.SIGTERM, signal.SIGINT):
        pass


def _taken(_number: int, _frame: object) -> None:
    """Do nothing here: the byte tells."""
