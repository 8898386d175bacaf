"""The project's own files, for tests that read them."""

import subprocess
from functools import cache
from pathlib import Path

TREE = Path(__file__).resolve().parents[2]


def modules() -> list[Path]:
    """Every Python file of the program."""
    return sorted((TREE / "studio_log").rglob("*.py"))


@cache
def tracked() -> tuple[Path, ...]:
    """Every file under version control that is there; without git, the folders that ship."""
    # Root in a clone of another owner would else be refused.
    command = ["git", "-c", "safe.directory=*", "-C", str(TREE), "ls-files", "-z"]
    try:
        listed = subprocess.run(command, capture_output=True, check=True, text=True).stdout
    except (OSError, subprocess.CalledProcessError):
        folders = ("studio_log", "resources", "tests", "packaging")
        found = [path for folder in folders for path in (TREE / folder).rglob("*")]
        found += [TREE / ".ci" / "run", *TREE.iterdir()]
        return tuple(path for path in found if path.is_file() and "__pycache__" not in path.parts)
    paths = (TREE / name for name in listed.split("\0") if name)
    return tuple(path for path in paths if path.is_file())
