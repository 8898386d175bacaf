"""What a start brings in: nothing that the first window does not need."""

import json
import subprocess
import sys

import pytest

from tests.support.tree import TREE

WINDOW = """
import json, sys, tempfile
from pathlib import Path
from studio_log.app.demo import open_demo
from studio_log.app.errand import StepClock
from studio_log.app.pictures import the_app
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.main_window import MainWindow
from studio_log.ui.theme.look import apply_theme
from datetime import UTC, datetime

app = the_app()
apply_theme(app, "light", 100)
clock = StepClock(datetime(2026, 6, 9, 12, 8, tzinfo=UTC), "Europe/London")
with tempfile.TemporaryDirectory() as scratch:
    studio = open_demo(Path(scratch) / "demo", clock)
    window = MainWindow(Bridge(InlineWorker(), studio, clock))
    window.start()
    window.show()
    window.choose_lot("26-001")
    for _ in range(20):
        app.processEvents()
    shown = window.isVisible() and window.sheet.sheet is not None
    studio.close()
print(json.dumps([shown, sorted(sys.modules)]))
"""


@pytest.fixture(scope="module")
def brought_in() -> set[str]:
    """Every module that is there once the window shows a lot."""
    done = subprocess.run(
        [sys.executable, "-c", WINDOW], cwd=TREE, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    shown, modules = json.loads(done.stdout.splitlines()[-1])
    assert shown, "the window and a lot were up"
    return set(modules)


@pytest.mark.parametrize("package", ["PIL", "PySide6.QtPrintSupport", "holidays", "icalendar"])
def test_what_few_need_is_not_brought_in_by_the_start(brought_in: set[str], package: str) -> None:
    """Pillow is for photos, printing for paper, holidays and calendars for who chose a place."""
    there = {name for name in brought_in if name == package or name.startswith(f"{package}.")}
    assert there == set()


@pytest.mark.parametrize("package", ["alembic", "icalendar", "PIL", "PySide6"])
def test_a_command_waits_for_no_library_that_few_need(package: str) -> None:
    """Alembic alone takes half a second: for who migrates or puts a copy back."""
    program = f"import sys, studio_log.app.commands; print({package!r} in sys.modules)"
    told = subprocess.run(
        [sys.executable, "-c", program], cwd=TREE, capture_output=True, text=True, check=True
    )
    assert told.stdout.strip() == "False"
