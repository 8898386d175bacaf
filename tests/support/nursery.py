"""Processes of the program that start in a moment, for tests that kill many of them.

A nursery has imported the program once; each child is forked from it, and is a process of
its own with its own threads, files and bus connection.
"""

import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import Final

from tests.support.tree import TREE

NURSERY: Final = """
import io, os, sys, traceback
from studio_log.app import commands
from studio_log.app.logs import start_logging
from studio_log.outside import watcher
from tests.support import nursery_work

start_logging()
sys.stdout.write("ready\\n")
sys.stdout.flush()
for line in sys.stdin:
    name, *words = line.rstrip("\\n").split("\\t")
    child = os.fork()
    if child == 0:
        # What the child says goes nowhere near the nursery's own answers.
        nowhere = os.open(os.devnull, os.O_RDWR)
        os.dup2(nowhere, 0)
        os.dup2(nowhere, 1)
        code = 1
        try:
            code = getattr(nursery_work, name)(*words)
        except BaseException:
            traceback.print_exc()
        finally:
            os._exit(code)
    sys.stdout.write(f"{child}\\n")
    sys.stdout.flush()
    nursery_work.reap()
"""


class Nursery:
    """Forks processes that do one of the works of `tests.support.nursery_work`."""

    def __init__(self, said: Path, **env: str) -> None:
        self._said = said.open("ab")
        self._process = subprocess.Popen(
            [sys.executable, "-c", NURSERY],
            env={**os.environ, "PYTHONPATH": str(TREE), **env},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=self._said,
            text=True,
        )
        assert self._process.stdout is not None
        assert self._process.stdout.readline() == "ready\n"

    def start(self, work: str, *words: str) -> int:
        """Start a work in a process; give its number."""
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.write("\t".join((work, *words)) + "\n")
        self._process.stdin.flush()
        return int(self._process.stdout.readline())

    def close(self) -> None:
        """End the nursery; its children are the caller's to end before."""
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.close()
        self._process.wait(20)
        self._process.stdout.close()
        self._said.close()


def kill(number: int) -> bool:
    """Kill a process at once; False where it has ended by itself."""
    try:
        os.kill(number, signal.SIGKILL)
    except ProcessLookupError:
        return False
    return True
