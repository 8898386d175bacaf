"""The set-up scripts stand alone: any Python reads them, the standard library carries them."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

from tests.support.tree import TREE

# pictures.py sets nothing up: it runs in the test folder's own Python, with the program.
SCRIPTS = sorted(set((TREE / "packaging").glob("*.py")) - {TREE / "packaging" / "pictures.py"})
DOORS = ["start.py", "test.py"]


@pytest.mark.parametrize("path", SCRIPTS, ids=lambda path: path.name)
def test_only_the_standard_library_is_imported(path: Path) -> None:
    own = {script.stem for script in SCRIPTS}
    found = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            found.add((node.module or "").partition(".")[0])
    assert found
    assert found - own - sys.stdlib_module_names == set()


@pytest.mark.parametrize("name", DOORS)
def test_an_old_python_reads_the_door_and_says_one_sentence(name: str) -> None:
    source = (TREE / "packaging" / name).read_bytes()
    assert source.isascii()  # Python 2 knows no other letters without being told
    tree = ast.parse(source, feature_version=(3, 4))
    assert not any(isinstance(node, ast.JoinedStr | ast.AnnAssign) for node in ast.walk(tree))
    run = (
        "import sys, runpy\n"
        "sys.version_info, sys.version = (3, 10, 4), '3.10.4 (main)'\n"
        "runpy.run_path(sys.argv[1], run_name='__main__')"
    )
    command = [sys.executable, "-c", run, str(TREE / "packaging" / name)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert done.stderr == "Studio Log needs Python 3.11 or newer; this is 3.10.4.\n"


@pytest.mark.parametrize("name", DOORS)
def test_the_door_opens_without_site_packages_from_any_folder(name: str, tmp_path: Path) -> None:
    run = "import sys, runpy; runpy.run_path(sys.argv[1], run_name='seen'); print('read')"
    command = [sys.executable, "-S", "-I", "-c", run, str(TREE / "packaging" / name)]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (0, "read\n"), done.stderr


@pytest.mark.parametrize(("name", "needs_it"), [("start.py", False), ("test.py", True)])
def test_only_tests_need_a_database_server(name: str, *, needs_it: bool) -> None:
    run = (
        "import sys, runpy; runpy.run_path(sys.argv[1], run_name='seen'); "
        "print('_postgres' in sys.modules)"
    )
    command = [sys.executable, "-c", run, str(TREE / "packaging" / name)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (0, f"{needs_it}\n"), done.stderr


def test_ci_calls_the_one_command_for_tests() -> None:
    path = TREE / ".ci" / "run"
    assert path.stat().st_mode & 0o111
    subprocess.run(["bash", "-n", str(path)], check=True)
    last = path.read_text("utf-8").splitlines()[-1]
    assert last == "exec python3 packaging/test.py </dev/null"
