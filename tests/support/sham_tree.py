"""A small stand-in for the project, with the real set-up scripts in it."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

from tests.support.tree import TREE

# Prints what it was started with, so that a test can read it.
PROGRAM = """\
import json, os, sys
import segno
names = ("QT_QPA_PLATFORM", "PYTHONPATH")
print(json.dumps({"args": sys.argv[1:], "python": sys.executable, "cwd": os.getcwd(),
                  **{name: os.environ.get(name) for name in names}}))
"""


def make(folder: Path) -> Path:
    """A tree with the set-up scripts, a one-package lock file and a program that tells its call."""
    (folder / "studio_log").mkdir(parents=True)
    (folder / "studio_log" / "__init__.py").touch()
    (folder / "studio_log" / "__main__.py").write_text(PROGRAM, "utf-8")
    shutil.copytree(TREE / "packaging", folder / "packaging")
    whole = (TREE / "requirements.lock").read_text("utf-8")
    one = re.search(r"^segno==(?:.*\\\n)*.*\n", whole, re.MULTILINE)
    assert one
    (folder / "requirements.lock").write_text(one[0], "utf-8")
    return folder


def environment(**changes: str | None) -> dict[str, str]:
    """The test's surroundings with some names changed, or taken away by None."""
    merged: dict[str, str | None] = {**os.environ, **changes}
    merged.setdefault("QT_QPA_PLATFORM", None)
    return {name: value for name, value in merged.items() if value is not None}


def command(tree: Path, *args: str) -> list[str]:
    """The command a person types, without a look at the site packages of the test's Python."""
    base = sys._base_executable  # type: ignore[attr-defined]
    return [base, "-I", str(tree / "packaging" / "start.py"), *args]


def start(
    tree: Path, *args: str, cwd: Path | None = None, **changes: str | None
) -> subprocess.CompletedProcess[str]:
    """Run start.py to its end."""
    return subprocess.run(
        command(tree, *args),
        cwd=cwd or tree,
        env=environment(**changes),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )
