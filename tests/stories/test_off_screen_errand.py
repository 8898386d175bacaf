"""Without a screen the demo runs one lot's life, prints what rang and leaves pictures and a tag."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image

from tests.support.tree import TREE

pytestmark = pytest.mark.story


def test_the_demo_without_a_screen_rings_paints_and_ends_well(tmp_path: Path) -> None:
    to = tmp_path / "pictures"
    done = subprocess.run(
        [sys.executable, "-m", "studio_log", "--demo", "--errand", str(to), "--pace", "600"],
        env={**os.environ, "PYTHONPATH": str(TREE), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True, text=True, check=False, timeout=240,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    for words in ("Drain the beans", "Stir 26-", "Is it dry?", "Paint within two days",
                  "ready for immersion", "split from", "Milk M26-001"):  # fmt: skip
        assert words.replace("26-", f"{year(done.stdout)}-") in done.stdout, words
    with Image.open(to / "window.png") as picture:
        assert picture.size == (1440, 900)
        colours = picture.convert("RGB").getcolors(1_000_000)
        assert colours is not None
        assert len(colours) > 200, "a window, not a grey slab"
    sheet = tmp_path / "tag"
    subprocess.run(
        ["pdftoppm", "-r", "300", "-png", "-singlefile", str(to / "tag.pdf"), str(sheet)],
        check=True, timeout=60,
    )  # fmt: skip
    with Image.open(sheet.with_suffix(".png")) as picture:
        codes = [found.text for found in zxingcpp.read_barcodes(picture)]
    assert len(codes) == 1
    assert re.fullmatch(rf"{year(done.stdout)}-00[123]", codes[0])


def year(text: str) -> str:
    """Give the two digits of the year that the lots' codes begin with."""
    at = text.index("Linen table runners")
    return text[:at].rsplit(maxsplit=1)[-1][:2]
