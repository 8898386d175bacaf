"""What the program stands on: the lock files name it all, and Qt's binding counts rightly."""

import re
import subprocess
import sys
import tomllib

import pytest

from tests.support.tree import TREE


def normal(name: str) -> str:
    """A project name as PEP 503 compares it."""
    return re.sub(r"[-_.]+", "-", name).lower()


def locked(file: str) -> dict[str, str]:
    """Name -> version of every line of a lock file."""
    text = (TREE / file).read_text("utf-8")
    return {normal(n): v for n, v in re.findall(r"^([\w.-]+)==(\S+)", text, re.MULTILINE)}


def asked_for(group: str) -> list[str]:
    """Names that pyproject.toml asks for: the program's own, those of a group or of an extra."""
    told = tomllib.loads((TREE / "pyproject.toml").read_text("utf-8"))
    groups = told["dependency-groups"] | told["project"]["optional-dependencies"]
    wanted = groups[group] if group else told["project"]["dependencies"]
    return [normal(re.split(r"[\s;<>=!~\[]", line)[0]) for line in wanted]


@pytest.mark.parametrize(
    ("group", "file"),
    [
        ("", "requirements.lock"),
        ("", "requirements-test.lock"),
        ("shared", "requirements.lock"),
        ("shared", "requirements-test.lock"),
        ("test", "requirements-test.lock"),
    ],
)
def test_every_dependency_is_in_the_lock_file(group: str, file: str) -> None:
    wanted = asked_for(group)
    assert wanted
    assert [name for name in wanted if name not in locked(file)] == []


def test_both_lock_files_agree_on_every_version() -> None:
    tests = locked("requirements-test.lock")
    assert {n: v for n, v in locked("requirements.lock").items() if tests.get(n) != v} == {}


@pytest.mark.parametrize("file", ["requirements.lock", "requirements-test.lock"])
def test_a_server_is_reached_without_a_library_of_the_system(file: str) -> None:
    # "binary" brings libpq along (psycopg.org, "Binary installation").
    assert locked(file)["psycopg-binary"] == locked(file)["psycopg"]


@pytest.mark.parametrize("file", ["requirements.lock", "requirements-test.lock"])
def test_every_locked_package_carries_a_hash(file: str) -> None:
    text = (TREE / file).read_text("utf-8").replace("\\\n", " ")
    lines = [line for line in text.splitlines() if "==" in line and not line.startswith("#")]
    assert lines
    assert [line for line in lines if "--hash=sha256:" not in line] == []


COUNTING = """
from PySide6.QtGui import QPainterPath
from PySide6.QtWidgets import QApplication, QLabel
app = QApplication([])
label, path = QLabel(), QPainterPath()
for number in range(6000):
    label.setText("lot")
    path.addRect(0, 0, 1, 1)
print(path.elementCount())
"""


def test_qt_calls_do_not_wear_out_none() -> None:
    """PySide6 6.12.0 on Python 3.11 loses a reference to None a call and dies at about 5,000."""
    command = [sys.executable, "-c", COUNTING]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    # A rectangle is a move and four lines (Qt documentation, QPainterPath::addRect).
    assert int(done.stdout) == 6000 * 5
