"""The built wheel works on its own: nothing of the tree is in reach of it."""

import json
import re
import shutil
import subprocess
import sys
import sysconfig
import tomllib
import venv
import zipfile
from collections.abc import Sequence
from pathlib import Path

import pytest

from tests.support.tree import TREE, tracked

pytestmark = pytest.mark.long

FIRST_METHODS = {"soy-immersion-long", "soy-painting-short", "scour-cellulose"}


def run(command: Sequence[str | Path], cwd: Path) -> str:
    """What a command printed on standard output; it must end well."""
    done = subprocess.run(command, cwd=cwd, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The tracked files as a fresh clone has them: what is only lying about is not built in."""
    folder = tmp_path_factory.mktemp("clone")
    for path in tracked():
        target = folder / path.relative_to(TREE)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, target)
    return folder


@pytest.fixture(scope="module")
def wheel(copy: Path) -> Path:
    """The wheel built by way of the source archive, as `pip install` of the archive would."""
    run([sys.executable, "-m", "build", "--no-isolation", "--outdir", "dist", "."], copy)
    (built,) = (copy / "dist").glob("*.whl")
    return built


@pytest.fixture(scope="module")
def programs(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The programs of a new Python folder that holds this wheel and borrows the libraries."""
    folder = tmp_path_factory.mktemp("installed")
    venv.create(folder, with_pip=True)
    programs = folder / "bin"
    install = ["-m", "pip", "install", "--no-deps", "--no-index", str(wheel)]
    run([programs / "python", *install], folder)
    (site,) = folder.glob("lib/python*/site-packages")
    (site / "borrowed.pth").write_text(sysconfig.get_path("purelib") + "\n", "utf-8")
    return programs


def test_the_wheel_holds_the_methods_and_the_licence_and_no_tests(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    methods = {Path(n).stem for n in names if n.startswith("studio_log/_resources/methods/")}
    assert methods >= FIRST_METHODS
    assert any(name.endswith("/licenses/LICENSE") for name in names)
    assert [n for n in names if re.match(r"(tests|packaging|resources)/", n)] == []


def test_the_installed_program_says_its_version(programs: Path, tmp_path: Path) -> None:
    project = tomllib.loads((TREE / "pyproject.toml").read_text("utf-8"))["project"]
    assert project["version"] in run([programs / "studio-log", "--version"], tmp_path)


def test_the_installed_program_finds_its_methods(programs: Path, tmp_path: Path) -> None:
    where = "import studio_log; print(studio_log.__file__)"
    module = run([programs / "python", "-I", "-c", where], tmp_path).strip()
    assert Path(module).is_relative_to(programs.parent)
    told = json.loads(run([programs / "studio-log", "methods", "--json"], tmp_path))
    assert {method["slug"] for method in told} >= FIRST_METHODS
