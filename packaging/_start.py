"""Start the program from the tree it lies in, after setting it up where that is needed."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import TYPE_CHECKING, Final

from _ground import Ground, choose, make_ready, surroundings
from _system import python_needs, window_needs
from _trouble import SetUpFailed

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

TREE: Final = Path(__file__).resolve().parent.parent
# Options that go with the window, and how many values each takes; anything else is a command.
WINDOW_OPTIONS: Final = {"--demo": 0, "--minimised": 0, "--pace": 1, "--studio": 1, "--errand": 1}
NO_SCREEN: Final = """\
There is no screen here (neither DISPLAY nor WAYLAND_DISPLAY is set), so the window cannot open.
To see the demo without one, with pictures written to a folder:
    python3 packaging/start.py --demo
The commands need no screen either, for example:
    python3 packaging/start.py methods"""


def say(line: str) -> None:
    """Tell the person at once; set-up talks on standard error, the program on standard output."""
    print(line, file=sys.stderr, flush=True)


def opens_window(args: Sequence[str]) -> bool:
    """Whether these arguments ask for the window and not for a command."""
    rest = list(args)
    while rest:
        name, equals, _ = rest.pop(0).partition("=")
        if name not in WINDOW_OPTIONS:
            return False
        if not equals:
            del rest[: WINDOW_OPTIONS[name]]
    return True


def has_screen(environment: Mapping[str, str], system: str = sys.platform) -> bool:
    """Whether a window can open; who names a Qt platform without a screen is taken at his word."""
    chosen = environment.get("QT_QPA_PLATFORM", "").partition(":")[0]
    if system != "linux" or chosen in {"offscreen", "minimal", "vnc", "linuxfb", "eglfs"}:
        return True
    return bool(environment.get("DISPLAY") or environment.get("WAYLAND_DISPLAY"))


def picture_folder(here: Path, moment: time.struct_time) -> Path:
    """Make a folder for the off-screen demo: in `here`, or in the temp folder if that is closed."""
    base = here if os.access(here, os.W_OK) else Path(tempfile.gettempdir())
    name = time.strftime("studio-log-demo-%Y-%m-%d-%H%M", moment)
    for number in range(1, 1000):
        folder = base / (name if number == 1 else f"{name}-{number}")
        try:
            folder.mkdir()
        except FileExistsError:
            continue
        return folder
    raise SetUpFailed(f"There are too many demo folders in {base}. Take some away.")


def off_screen(args: Sequence[str]) -> list[str]:
    """Turn the demo into the errand that needs no screen and writes its pictures to a folder."""
    kept = [arg for arg in args if arg != "--minimised"]
    if any(arg.partition("=")[0] == "--errand" for arg in kept):
        return kept
    folder = picture_folder(Path.cwd(), time.localtime())
    say(f"There is no screen here: the demo runs without one and writes its pictures to {folder}")
    return [*kept, "--errand", str(folder)]


def launch(ground: Ground, args: Sequence[str], extra: Mapping[str, str]) -> int:
    """Become the program; on systems without exec, wait for it and give its exit code."""
    # -P: a stray file in the current folder must not stand in for one of our modules.
    command = [str(ground.python), "-P", "-m", "studio_log", *args]
    environment = {**surroundings(), "PYTHONPATH": str(TREE), **extra}
    if os.name != "nt":
        sys.stderr.flush()
        os.execve(command[0], command, environment)  # noqa: S606 - the interpreter we made
    return subprocess.run(command, env=environment, check=False).returncode


def main(argv: Sequence[str]) -> int:
    """Exit code: the program's own, or 1 with a sentence where it cannot be started."""
    args, extra = list(argv), {}
    without_screen = opens_window(args) and not has_screen(os.environ)
    if without_screen and "--demo" not in args:
        say(NO_SCREEN)
        return 1
    try:
        ground = choose(TREE, "requirements.lock", ".venv")
        make_ready(ground, [*python_needs(), *window_needs()], say)
        if without_screen:
            args, extra = off_screen(args), {"QT_QPA_PLATFORM": "offscreen"}
    except SetUpFailed as failure:
        say(str(failure))
        return 1
    except KeyboardInterrupt:
        say("Stopped. The next start takes it up again.")
        return 130
    return launch(ground, args, extra)
