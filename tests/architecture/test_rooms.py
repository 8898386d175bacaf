"""The rooms of DEVELOPERS.md hold: directions of import, a core without Qt, sizes, words."""

import ast
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.support.tree import TREE, modules, tracked

LONGEST_FILE = 400
LONGEST_FUNCTION = 60

CORE = """
import importlib, sys
sys.modules["PySide6"] = None
for name in sys.argv[1:]:
    importlib.import_module(name)
print(len(sys.argv[1:]))
"""


def test_the_import_contracts_hold() -> None:
    command = [str(Path(sys.executable).with_name("lint-imports")), "--no-cache"]
    done = subprocess.run(command, cwd=TREE, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    assert re.search(r"Contracts: [1-9]\d* kept, 0 broken", done.stdout)


def test_all_but_the_window_and_the_boot_work_without_qt() -> None:
    names = [
        ".".join(path.relative_to(TREE).with_suffix("").parts).removesuffix(".__init__")
        for path in modules()
    ]
    core = [name for name in names if not re.match(r"studio_log\.(ui|app|__main__)\b", name)]
    command = [sys.executable, "-c", CORE, *core]
    done = subprocess.run(command, cwd=TREE, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) == len(core) > 10


def test_no_file_is_longer_than_it_can_be_read() -> None:
    lengths = {path: len(path.read_text("utf-8").splitlines()) for path in modules()}
    assert {p.name: n for p, n in lengths.items() if n > LONGEST_FILE} == {}


def functions(path: Path) -> Iterator[tuple[str, int]]:
    """Every function of a file with its length in lines."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield f"{path.name}: {node.name}", (node.end_lineno or 0) - node.lineno + 1


def test_no_function_is_longer_than_it_can_be_read() -> None:
    lengths = {name: length for path in modules() for name, length in functions(path)}
    assert lengths
    assert {name: n for name, n in lengths.items() if n > LONGEST_FUNCTION} == {}


WAITS = {"time.sleep", "qtbot.wait", "QTest.qWait", "QTest.qSleep"}


def waits(text: str) -> Iterator[int]:
    """Lines that wait by the clock without a comment `# waits ...` that gives the reason."""
    lines = text.splitlines()
    for node in ast.walk(ast.parse(text)):
        if not isinstance(node, ast.Call) or ast.unparse(node.func) not in WAITS:
            continue
        if "# waits " not in lines[node.lineno - 1]:
            yield node.lineno


def test_a_wait_by_the_clock_is_seen() -> None:
    text = "import time\ntime.sleep(1)\ntime.sleep(2)  # waits for a chance moment of the kill\n"
    assert list(waits(text + "def t(qtbot): qtbot.wait(50)\n")) == [2, 4]


def test_no_test_waits_by_the_clock_without_a_reason() -> None:
    found = [
        f"{path.relative_to(TREE)}:{line}"
        for path in sorted((TREE / "tests").rglob("*.py"))
        for line in waits(path.read_text("utf-8"))
    ]
    assert found == []


# Written apart, so that this file does not hold what it looks for.
FORBIDDEN = [
    ".".join(parts)
    for parts in (
        ("pypi", "org"),
        ("pythonhosted", "org"),
        ("deb", "debian", "org"),
        ("npmjs", "org"),
        ("npmjs", "com"),
    )
] + [f"/{folder}/" for folder in ("work", "root")]


@pytest.mark.parametrize("word", FORBIDDEN)
def test_no_tracked_file_names_a_registry_or_a_path_of_one_machine(word: str) -> None:
    found = [
        str(path.relative_to(TREE))
        for path in tracked()
        if word.encode() in path.read_bytes() and path.suffix not in {".png", ".pdf", ".ttf"}
    ]
    assert found == []
