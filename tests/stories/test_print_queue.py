"""Tags and papers to a real queue: a print service of our own takes them, page by page, in size."""

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image

from tests.support.tree import TREE

pytestmark = pytest.mark.story
SYSTEM = "/usr/sbin:/usr/bin:/sbin"
RULES = "<Location />\nOrder allow,deny\nAllow all\n</Location>\n"
POLICY = "<Policy default>\n<Limit All>\nOrder allow,deny\nAllow all\n</Limit>\n</Policy>\n"
SCRIPT = """
import sys
from PySide6.QtPrintSupport import QPrinter, QPrinterInfo
from PySide6.QtWidgets import QApplication
from studio_log.domain.tags import TagFacts, TagRow
from studio_log.present.paper.blocks import PAGES, Column, Document, Frames, Said, Table
from studio_log.present.tag_stock import find_stock
from studio_log.services.papers import Paper
from studio_log.ui.ink.device import MM_PER_INCH, paint_all
from studio_log.ui.ink.printing import any_printer, hold_to_size
from studio_log.ui.papers.painting import PagePainter, lay_out
from studio_log.ui.tags.printing import print_tags

app = QApplication([])
assert any_printer()
rows = (TagRow("first soak", "9 Jun 09:20"), TagRow("dip 2"))
tag = TagFacts("26-031", "Runners", "412 g", "soy", "begun 8 June", rows, "soy: allergen", "")
for stock in ("tag-80x50", "a4-4x11"):
    printer = QPrinter(QPrinterInfo.printerInfo("paper"), QPrinter.PrinterMode.HighResolution)
    print_tags(printer, [tag] * 3, find_stock(stock))
table = Table((Column("Step", share=1), Column("Begun", mm=31)),
              tuple(((Said(f"Step {n}"),), Frames()) for n in range(60)), least=11)
paper = Paper("card", Document("26-031 Runners", "26-031", ("Step card",), "", "", "", (table,)))
printer = QPrinter(QPrinterInfo.printerInfo("paper"), QPrinter.PrinterMode.HighResolution)
hold_to_size(printer, PAGES["a4"], "card")
dots = printer.resolution() / MM_PER_INCH
paint_all(printer, lay_out(paper, "a4"), PagePainter(paper), dots)
"""


def needs(tool: str) -> str:
    found = shutil.which(tool) or shutil.which(tool, path=SYSTEM)
    if found is None:
        pytest.skip(f"{tool} is not installed")
    return found


@pytest.fixture
def queue() -> Iterator[tuple[dict[str, str], Path]]:
    """A print service with one queue that keeps what it gets; the system's own is not touched."""
    service = Path(needs("cupsd")).resolve()
    share = service.parent.parent
    with tempfile.TemporaryDirectory(prefix="queue-") as name:  # a socket's path has to be short
        place = Path(name)
        for folder in ("root", "spool/tmp", "cache", "state/certs"):
            (place / folder).mkdir(parents=True)
        (place / "root/cupsd.conf").write_text(
            f"Listen {place}/socket\nBrowsing No\nWebInterface No\nDefaultAuthType None\n"
            f"PreserveJobFiles Yes\n{RULES}{POLICY}"
        )
        (place / "root/cups-files.conf").write_text(
            f"ServerRoot {place}/root\nServerBin {share}/lib/cups\nDataDir {share}/share/cups\n"
            f"RequestRoot {place}/spool\nTempDir {place}/spool/tmp\nCacheDir {place}/cache\n"
            f"StateDir {place}/state\nAccessLog {place}/access\nErrorLog {place}/errors\n"
            f"PageLog {place}/pages\nFileDevice Yes\n"
        )
        running = subprocess.Popen(
            [service, "-f", "-c", place / "root/cupsd.conf", "-s", place / "root/cups-files.conf"],
            stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        try:
            around = {**os.environ, "CUPS_SERVER": f"{place}/socket"}
            _set_up(around, place)
            yield around, place / "spool"
        finally:
            running.terminate()
            running.wait(20)


def _set_up(around: dict[str, str], place: Path) -> None:
    made = [needs("lpadmin"), "-p", "paper", "-E", "-v", "file:///dev/null",
            "-o", "printer-is-shared=false"]  # fmt: skip
    for _ in range(100):
        if (place / "socket").exists():
            subprocess.run(made, env=around, check=True, timeout=60)
            return
        time.sleep(0.1)  # waits for the service to open its socket
    pytest.fail(f"the print service did not come up: {(place / 'errors').read_text()[-500:]}")


def _told(job: Path) -> str:
    command = [needs("pdfinfo"), job]
    return subprocess.run(command, capture_output=True, check=True, text=True).stdout


def test_tags_and_a_card_reach_the_queue_in_their_true_size(
    queue: tuple[dict[str, str], Path], tmp_path: Path
) -> None:
    around, spool = queue
    around["QT_QPA_PLATFORM"] = "offscreen"
    command = [sys.executable, "-c", SCRIPT]
    subprocess.run(command, cwd=TREE, env=around, check=True, timeout=120)
    jobs = sorted(spool.glob("d*-001"))
    told = [_told(job) for job in jobs]
    # 80 × 50 mm are 226.8 × 141.7 points; A4 (ISO 216) is 595.3 × 841.9.
    sizes = [next(line for line in one.splitlines() if "Page size" in line) for one in told]
    assert ["227 x 142" in size or "226.7" in size for size in sizes] == [True, False, False]
    assert ["595" in size and "842" in size for size in sizes] == [False, True, True]
    pages = [int(one.split("Pages:")[1].split()[0]) for one in told]
    assert pages[:2] == [3, 1]
    assert pages[2] > 1
    for job, count in zip(jobs, (3, 3, 1), strict=True):
        stem = tmp_path / job.name
        render = [needs("pdftoppm"), "-r", "300", "-gray", "-png", job, stem]
        subprocess.run(render, check=True)
        found = [one.text for page in sorted(tmp_path.glob(f"{job.name}-*.png"))
                 for one in zxingcpp.read_barcodes(Image.open(page))]  # fmt: skip
        assert found == ["26-031"] * count
