"""The one thread that owns the data, and an inline twin of it for commands and tests."""

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from typing import Any, Protocol


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

    def __init__(self) -> None:
        self._pool = ThreadPoolExecutor(max_workers=1, thread_name_prefix="studio")

    def submit(self, task: Callable[..., Any], *args: Any) -> "Future[Any]":
        """Run a task on the thread."""
        return self._pool.submit(task, *args)

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
