"""The private Python folder: made, filled from a lock file by hash, tried, and only then stamped.

All that set-up leaves lies inside that one folder: `ready` (the stamp, written last),
`unfinished` (there from the first moment until the stamp), `set-up.lock` and `set-up.log`.
A folder with `unfinished` in it was interrupted and is built again from nothing.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import platform
import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from _system import Need, mend
from _trouble import DISK_FULL, SetUpFailed, told_plainly

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

Say = Callable[[str], None]

KEPT: Final = frozenset({"set-up.lock", "set-up.log", ".gitignore", "unfinished"})
FORM: Final = "1"  # raise it when a change of this file must build every folder again
ROOM_BYTES: Final = 1_500_000_000  # measured: 878 MB for the tests, and room to unpack
# Would send packages elsewhere, or another Python's modules in.
_MISLEADING: Final = ("PYTHONHOME", "PYTHONPATH", "PIP_USER", "PIP_TARGET", "PIP_PREFIX")
_FETCHED: Final = re.compile(r"\s*(?:Downloading|Using cached) (\S+?)-\d\S* \(([^)]+)\)")


@dataclass(frozen=True)
class Ground:
    """A private Python folder and the lock file that says what lies in it."""

    folder: Path
    lock_file: Path

    @property
    def python(self) -> Path:
        """The interpreter in the folder."""
        return self.folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")

    @property
    def log(self) -> Path:
        """All that the tools printed during set-up."""
        return self.folder / "set-up.log"

    def stamp(self) -> str:
        """Name what the folder must have been made from: lock file, Python, form."""
        lock = hashlib.sha256(self.lock_file.read_bytes()).hexdigest()
        return f"{FORM} {platform.python_implementation()} {platform.python_version()} {lock}"

    def is_ready(self) -> bool:
        """Whether the folder was finished from this very lock file and Python."""
        try:
            written = (self.folder / "ready").read_text("utf-8")
        except (OSError, UnicodeDecodeError):
            return False
        return written == self.stamp() and self.python.exists()


def choose(tree: Path, lock_name: str, folder_name: str) -> Ground:
    """Choose the folder beside the program; in the cache where the tree is read-only."""
    beside = Ground(tree / folder_name, tree / lock_name)
    if not beside.lock_file.is_file():
        raise SetUpFailed(f"{beside.lock_file} is missing: this copy of Studio Log is incomplete.")
    if beside.is_ready():
        return beside
    if os.access(beside.folder if beside.folder.is_dir() else tree, os.W_OK):
        return beside
    cache = Path(os.environ.get("XDG_CACHE_HOME") or os.path.expanduser("~/.cache"))  # noqa: PTH111 - never raises
    key = hashlib.sha256(str(tree).encode()).hexdigest()[:12]
    return Ground(cache / "studio-log" / f"{folder_name.lstrip('.')}-{key}", beside.lock_file)


def make_ready(ground: Ground, needs: Sequence[Need], say: Say) -> None:
    """Set the folder up unless its stamp says that it is; raise SetUpFailed with plain words."""
    if ground.is_ready():
        return
    try:
        ground.folder.mkdir(parents=True, exist_ok=True)
        with only_one(ground, say):
            if not ground.is_ready():
                _set_up(ground, needs, say)
    except OSError as error:
        words = told_plainly("Setting up", f"{error.strerror or error}: {error.filename or ''}")
        raise SetUpFailed(f"{words}\nThe folder is {ground.folder}.") from error


@contextlib.contextmanager
def only_one(ground: Ground, say: Say) -> Iterator[None]:
    """Wait for any other set-up of this folder; the system frees it even after a kill."""
    with (ground.folder / "set-up.lock").open("a", encoding="utf-8") as file:
        if sys.platform == "win32":
            msvcrt.locking(file.fileno(), msvcrt.LK_LOCK, 1)
        else:
            try:
                fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except BlockingIOError:
                say("Another start is setting up just now; waiting for it.")
                fcntl.flock(file, fcntl.LOCK_EX)
        yield


def _set_up(ground: Ground, needs: Sequence[Need], say: Say) -> None:
    say(f"Setting up in {ground.folder} (once; a minute or so).")
    say("1/4 Looking at what this machine has")
    mend(needs, say)
    _room_for(ground)
    say("2/4 Making a private Python folder")
    _make_folder(ground)
    say("3/4 Fetching and installing the packages")
    _install(ground, say)
    say("4/4 Trying them")
    _try_out(ground)
    half = ground.folder / "ready.half"
    half.write_text(ground.stamp(), "utf-8")
    (ground.folder / "unfinished").unlink()
    half.replace(ground.folder / "ready")
    say("Set up.")


def _room_for(ground: Ground) -> None:
    free = shutil.disk_usage(ground.folder).free
    if free < ROOM_BYTES and not ground.python.exists():
        raise SetUpFailed(
            f"{DISK_FULL} Setting up takes about {ROOM_BYTES // 1_000_000} MB in {ground.folder}; "
            f"{free // 1_000_000} MB are free."
        )


def _make_folder(ground: Ground) -> None:
    """Keep a folder that only lacks newer packages; build anything else from nothing."""
    unfinished = ground.folder / "unfinished"
    usable = not unfinished.exists() and _is_usable(ground)
    if not usable and not (ground.folder / "pyvenv.cfg").exists():
        strangers = [child.name for child in ground.folder.iterdir() if child.name not in KEPT]
        if strangers and not unfinished.exists():
            raise SetUpFailed(
                f"{ground.folder} holds {strangers[0]} and was not made by set-up. Move it away."
            )
    unfinished.touch()
    (ground.folder / "ready").unlink(missing_ok=True)
    (ground.folder / ".gitignore").write_text("*\n", "utf-8")
    if usable:
        return
    for child in ground.folder.iterdir():
        if child.name in KEPT:
            continue
        if child.is_dir() and not child.is_symlink():
            shutil.rmtree(child)
        else:
            child.unlink()
    command = [sys.executable, "-I", "-m", "venv", str(ground.folder)]
    _logged(ground, "Making the private Python folder", command)


def _is_usable(ground: Ground) -> bool:
    """Whether the folder's Python runs, has pip, and is the version that set-up runs on."""
    if not ground.python.exists():
        return False
    told = "import pip, platform; print(platform.python_version())"
    done = subprocess.run(
        [ground.python, "-I", "-c", told], capture_output=True, text=True, check=False
    )
    return done.returncode == 0 and done.stdout.strip() == platform.python_version()


def _install(ground: Ground, say: Say) -> None:
    def progress(line: str) -> None:
        if found := _FETCHED.match(line):
            say(f"      {found[1]} ({found[2]})")
        elif line.startswith("Installing collected packages"):
            say("      unpacking")

    options = ["--no-input", "--progress-bar", "off", "--only-binary", ":all:", "--no-deps"]
    command = [str(ground.python), "-I", "-m", "pip", "install", *options]
    command += ["--require-hashes", "-r", str(ground.lock_file)]
    _logged(ground, "Installing the packages", command, progress)


def _try_out(ground: Ground) -> None:
    """Load Qt's window part: the system library that a distribution lacks shows here."""
    if "pyside6-essentials==" not in ground.lock_file.read_text("utf-8"):
        return
    command = [str(ground.python), "-I", "-c", "import PySide6.QtWidgets"]
    _logged(ground, "Loading the window's library", command)


def _logged(
    ground: Ground, doing: str, command: Sequence[str], progress: Say = lambda _line: None
) -> None:
    """Run one tool, keep what it prints in the log, raise SetUpFailed with the reason."""
    lines: list[str] = []
    with (
        ground.log.open("a", encoding="utf-8") as log,
        subprocess.Popen(
            command,
            env=surroundings(),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            errors="replace",
        ) as tool,
    ):
        log.write(f"$ {' '.join(command)}\n")
        for line in tool.stdout or ():
            log.write(line)
            lines.append(line)
            progress(line)
    if tool.returncode != 0:
        words = told_plainly(doing, "".join(lines))
        raise SetUpFailed(f"{words}\nAll that was said is in {ground.log}.")


def surroundings() -> dict[str, str]:
    """Give the environment for the folder's Python, without what would mislead it."""
    return {name: value for name, value in os.environ.items() if name not in _MISLEADING}
