"""The program's commands in a studio of their own, without a process for each of them.

What draws needs an application; who uses it asks for `qapp`, the one of the window's tests, since a
process has one for all its life.
"""

import io
import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from studio_log.app.commands import ProgramHouse
from studio_log.cli.main import run


@dataclass(frozen=True)
class Said:
    """How a command ended."""

    returncode: int
    stdout: str
    stderr: str


class ProgramLine:
    """Commands given to the program; what they say comes back."""

    def __init__(self, studio: Path) -> None:
        self.studio = studio

    def run(self, *words: str) -> Said:
        out, err = io.StringIO(), io.StringIO()
        argv = ["--studio", str(self.studio), *words]
        code = run(argv, house=ProgramHouse(), out=out, err=err)
        return Said(code, out.getvalue(), err.getvalue())

    def json(self, *words: str) -> Any:
        done = self.run(*words, "--json")
        assert done.returncode == 0, done.stderr
        return json.loads(done.stdout)
