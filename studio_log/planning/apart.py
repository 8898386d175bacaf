"""Planning in a process of its own, so that the window and the clock stay smooth.

`Apart` starts the process, hands it an ask and hands each message on. What it says is believed
only as far as it has the form of a message; how long it may take, only as far as was agreed.
"""

import json
import os
import subprocess
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields
from importlib.util import find_spec
from pathlib import Path
from threading import Lock, Thread, Timer, current_thread
from typing import IO, Any, Final

from studio_log.language.words import tr, tr_later
from studio_log.planning.effort import MOST_SECONDS

PATIENCE_S: Final = 0.15
"""Seconds from being told to end until the process is ended and the best so far is taken."""
OVERTIME_S: Final = 3.0
"""Seconds beyond those that were asked for, until it is told to end."""
LONGEST_MESSAGE: Final = 16_000_000
"""Bytes; the longest plan has 4,000 steps."""
JOBS: Final = {"own": "studio_log.planning.job", "optimizer": "studio_log.optimizer"}
MISSING: Final = tr_later(
    "The optimizer is not installed. Add it with: pip install 'studio-log[optimizer]'. "
    "The planner plans without it too."
)
BROKEN: Final = tr_later("The planning process ended before it was done.")
Message = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Ask:
    """What to plan; plain values only, as JSON has them.

    `problem` is an object of the form studio-plan/1 or rcpsp-max/1; `keep` the fields of an older
    plan to keep to; `more` holds what another `do` than "plan" has to know.
    """

    problem: Mapping[str, Any]
    do: str = "plan"
    engine: str = "auto"
    seconds: float = 20.0
    tries: int | None = None
    seed: int = 1
    keep: Mapping[str, Any] | None = None
    more: Mapping[str, Any] = field(default_factory=dict)
    tongue: Mapping[str, Any] = field(default_factory=dict)
    """How it speaks, as `language.tongue` has it; English where nothing is said."""


def has_optimizer() -> bool:
    """Say whether the optional optimizer is installed, without importing it."""
    return all(find_spec(name) is not None for name in ("ortools", JOBS["optimizer"]))


def job_of(engine: str) -> str | None:
    """Give the module that plans with an engine; None where it is not installed."""
    if engine == "auto":
        engine = "optimizer" if has_optimizer() else "own"
    if engine not in JOBS:
        raise ValueError(f"no engine is called {engine}")
    return None if engine == "optimizer" and not has_optimizer() else JOBS[engine]


class Apart:
    """One planning in a process of its own.

    `tell` gets each message from a thread: {"better": fields}, and as the last {"done": fields}
    or {"failed": sentence}; fields are those of `answer`. After `kill` it gets nothing more.
    """

    def __init__(self, ask: Ask, tell: Callable[[Message], None]) -> None:
        self._ask, self._tell = ask, tell
        self._lock = Lock()
        self._process: subprocess.Popen[bytes] | None = None
        self._best: Mapping[str, Any] | None = None
        self._asked = self._told = self._killed = self._over = False
        seconds = ask.seconds if 0 < ask.seconds < MOST_SECONDS else MOST_SECONDS
        self._timers = [Timer(seconds + OVERTIME_S, self.end)]
        self._reader = Thread(target=self._run, name="planning apart", daemon=True)
        self._timers[0].daemon = True
        self._timers[0].start()
        self._reader.start()

    @property
    def running(self) -> bool:
        """Whether the last message is still to come."""
        return self._reader.is_alive() and not self._over

    def end(self) -> None:
        """Ask it to end: the best plan so far comes as done, within 0.2 s."""
        with self._lock:
            if self._told or self._over:
                return
            self._told = True
            late = Timer(PATIENCE_S, self._stop)
            late.daemon = True
            self._timers.append(late)
            late.start()
            self._send_end()

    def kill(self) -> None:
        """End it at once; nothing more is told. Returns when its thread and process are over."""
        with self._lock:
            self._killed = True
        self._stop()
        if self._reader is not current_thread():
            self._reader.join()

    def wait(self, seconds: float | None = None) -> bool:
        """Wait until the last message was told; gives whether it was."""
        self._reader.join(seconds)
        return not self._reader.is_alive()

    # -- the reader's thread ---------------------------------------------------------------

    def _run(self) -> None:
        try:
            last = self._talk()
        except (OSError, TypeError, ValueError) as error:
            last = {"failed": tr("Planning could not be started ({error}).", error=error)}
        finally:
            self._end_process()
        self._hand(last)

    def _talk(self) -> Message:
        """Start the process, ask, and hand on what it says but the last, which is given."""
        module = job_of(self._ask.engine)
        if module is None:
            return {"failed": tr(MISSING)}
        data = json.dumps({one.name: getattr(self._ask, one.name) for one in fields(Ask)})
        process = self._started(module)
        if process is None or process.stdin is None or process.stdout is None:
            return {"failed": tr(BROKEN)}
        try:
            process.stdin.write(data.encode() + b"\n")
            process.stdin.flush()
        except OSError:
            return self._broken(process)
        with self._lock:
            self._asked = True
            if self._told:
                self._send_end()
        return self._heard(process.stdout) or self._broken(process)

    def _heard(self, said: IO[bytes]) -> Message | None:
        """Hand on better plans; give the last message, None where the process says none."""
        while line := said.readline(LONGEST_MESSAGE):
            message = read_message(line)
            if message is None:
                return {"failed": tr("The planning process said what makes no sense.")}
            if "better" not in message:
                return message
            self._best = message["better"]
            self._hand(message)
        return None

    def _started(self, module: str) -> subprocess.Popen[bytes] | None:
        """Start the process; None where all is over already."""
        root = str(Path(__file__).parents[2])
        paths = [root, *filter(None, [os.environ.get("PYTHONPATH")])]
        with self._lock:
            if self._killed:
                return None
            self._process = subprocess.Popen(  # noqa: S603 - our own interpreter and module
                [sys.executable, "-P", "-m", module],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.DEVNULL,
                env={**os.environ, "PYTHONPATH": os.pathsep.join(paths)},
            )
            return self._process

    def _send_end(self) -> None:
        """Send that it shall end; one that was not asked yet hears it behind the ask."""
        process = self._process
        if not self._asked or process is None or process.stdin is None or process.stdin.closed:
            return
        try:
            os.write(process.stdin.fileno(), b'{"end": true}\n')
        except OSError:
            return

    def _broken(self, process: subprocess.Popen[bytes]) -> Message:
        """Give the last message of a process that said none."""
        if self._told:
            return {"done": self._best or nothing()}
        text = tr_later("The planning process ended before it was done (it gave {code}).")
        return {"failed": tr(text, code=process.wait())}

    def _hand(self, message: Message) -> None:
        """Hand a message on, unless nobody wants it any more."""
        with self._lock:
            if self._killed:
                return
            self._over = "better" not in message
        self._tell(message)

    def _stop(self) -> None:
        with self._lock:
            if self._process is not None:
                self._process.kill()

    def _end_process(self) -> None:
        """Let nothing be left of it: no process, no zombie, no way open, no timer."""
        process = self._process
        if process is not None:
            process.kill()
            for way in (process.stdin, process.stdout):
                try:
                    if way is not None:
                        way.close()
                except OSError:  # what was not written yet is not wanted any more
                    continue
            process.wait()
        with self._lock:
            timers = list(self._timers)
            self._told = True  # no further timer is begun
        for timer in timers:
            timer.cancel()
            if timer is not current_thread():
                timer.join()


def nothing() -> Message:
    """Give the answer where no plan was found before the end."""
    return {
        "status": "unknown", "starts": {}, "ends": {}, "sessions": [], "bound": None, "score": None,
        "why": [tr("Planning was ended before a plan was found.")], "ways_out": [],
    }  # fmt: skip


def read_message(line: bytes) -> Message | None:
    """Give a message out of a line; None where it has not the form of one."""
    try:
        value = json.loads(line)
    except (ValueError, RecursionError):
        return None
    if not isinstance(value, dict) or len(value) != 1:
        return None
    ((kind, content),) = value.items()
    wanted: dict[str, type] = {"better": dict, "done": dict, "failed": str}
    return value if isinstance(content, wanted.get(kind, ())) else None
