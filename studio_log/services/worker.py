"""The one thread that owns the data, and an inline twin of it for commands and tests."""

import contextlib
import logging
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from typing import Any, Protocol

_log = logging.getLogger(__name__)


def _log_fault(done: "Future[Any]") -> None:
    """Log the fault of a task whose outcome nobody waits for."""
    error = done.exception()
    if error is not None:
        _log.error("a task of the studio failed", exc_info=error)


class Worker(Protocol):
    """Runs what it is handed, one after the other."""

    def submit(self, task: Callable[..., Any], *args: Any) -> "Future[Any]":
        """Run a task after those handed in before it; errors come with the future."""
        ...

    def close(self) -> None:
        """Finish what was handed in, then end."""
        ...


class ThreadWorker:
    """One thread, in order."""

    def __init__(self, name: str = "studio") -> None:
        self._pool = ThreadPoolExecutor(max_workers=1, thread_name_prefix=name)

    def submit(self, task: Callable[..., Any], *args: Any) -> "Future[Any]":
        """Run a task on the thread."""
        return self._pool.submit(task, *args)

    def hand_on(self, task: Callable[[], object]) -> None:
        """Run a task that nobody waits for: its fault is logged; at the end it is dropped."""
        with contextlib.suppress(RuntimeError):
            self._pool.submit(task).add_done_callback(_log_fault)

    def close(self) -> None:
        """Finish what was handed in and join the thread."""
        self._pool.shutdown(wait=True)


class InlineWorker:
    """Runs each task at once, where it is called."""

    def submit(self, task: Callable[..., Any], *args: Any) -> "Future[Any]":
        """Run a task now."""
        future: Future[Any] = Future()
        try:
            future.set_result(task(*args))
        except BaseException as error:  # noqa: BLE001 - the future carries it to the caller
            future.set_exception(error)
        return future

    def close(self) -> None:
        """Nothing is left to finish."""
