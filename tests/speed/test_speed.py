"""The speed scripts run to their end and print a value, a bar, a verdict and a baseline.

No time is asserted: the machine that runs tests may be doing anything else. What the bars mean
is read from the scripts themselves, with their whole numbers.
"""

import re
import subprocess
import sys

import pytest

from tests.speed.report import verdict
from tests.support.tree import TREE

pytestmark = pytest.mark.speed
LINE = re.compile(
    r"[^\n:]+: -?[\d.e+-]+ (?:/s|s/h|ms|s|%), bar [\d.]+ \S+, (?:holds|MISSED) \(.+\)"
)


@pytest.mark.parametrize(
    ("script", "words", "lines"),
    [
        ("reconcile.py", ("--count", "400", "--seconds", "1"), 4),
        ("month.py", ("--days", "2", "--lots", "3"), 1),
        ("lists.py", ("--lots", "200"), 8),
        ("lateness.py", ("--count", "5", "--seconds", "60"), 2),
        ("swatches.py", ("--count", "300", "--tries", "3"), 4),
        ("photo.py", ("--megapixels", "1", "--tries", "1"), 3),
        ("stalls.py", ("--cases", "nothing raised,no bus", "--seconds", "0.5"), 2),
        ("wakeups.py", ("--platforms", "offscreen", "--settle", "1", "--seconds", "2"), 8),
    ],
)
def test_a_script_prints_its_bars(script: str, words: tuple[str, ...], lines: int) -> None:
    command = [sys.executable, str(TREE / "tests" / "speed" / script), *words]
    ran = subprocess.run(command, capture_output=True, text=True, timeout=300, check=False)
    print(ran.stdout)
    assert ran.returncode == 0, ran.stderr
    assert len(LINE.findall(ran.stdout)) == lines


def test_a_verdict_says_whether_the_bar_holds(capsys: pytest.CaptureFixture[str]) -> None:
    assert "holds" in verdict("stall", 50.0, 50.0, "ms", "bare 6 ms")
    assert "MISSED" in verdict("stall", 50.1, 50.0, "ms", "bare 6 ms")
    assert len(LINE.findall(capsys.readouterr().out)) == 2
