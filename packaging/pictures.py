"""Make the pictures of the README anew, off-screen, from the demo at a clock that stands still.

    .venv-test/bin/python packaging/pictures.py [FOLDER]

Run it after a change of the window or the tag, look at the pictures, commit them. It
needs `pdftoppm` (poppler-utils). The same tree, fonts and Qt give the same pictures.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Final
from zoneinfo import ZoneInfo

if TYPE_CHECKING:
    from collections.abc import Sequence

TREE: Final = Path(__file__).resolve().parent.parent

# Before Qt is loaded: no screen, one language, one zone, no scaling of this machine's own.
os.environ |= {"QT_QPA_PLATFORM": "offscreen", "QT_SCALE_FACTOR": "1"}
os.environ |= {"LC_ALL": "C.UTF-8", "LANG": "C.UTF-8", "TZ": "Europe/London"}
time.tzset()
sys.path.insert(0, str(TREE))

from typing_extensions import override  # noqa: E402 - as below

from studio_log.app.demo import open_demo  # noqa: E402 - Qt comes after its surroundings
from studio_log.app.errand import PrintedNotice, StepClock  # noqa: E402 - as above
from studio_log.app.pictures import (  # noqa: E402 - as above
    methods_picture,
    plan_picture,
    swatches_picture,
    window_picture,
)
from studio_log.services.ports import Delivery, NoticeText  # noqa: E402 - as above
from studio_log.services.questions import TagsFor  # noqa: E402 - as above
from studio_log.ui.tags.pdf import write_pdf  # noqa: E402 - as above

ZONE: Final = "Europe/London"
MOMENT: Final = datetime(2026, 6, 9, 13, 8, tzinfo=ZoneInfo(ZONE)).astimezone(UTC)
NAMES: Final = (
    "window-light", "window-dark", "window-strong", "window-small", "methods", "plan", "swatches",
    "tag",
)  # fmt: skip
SIZE: Final = (1440, 900)
SMALL: Final = (1024, 700)
METHODS: Final = (1100, 760)
PLAN: Final = (1360, 860)
SWATCHES: Final = (1180, 760)
LOT: Final = "26-001"
LARGEST_BYTES: Final = 400_000
TAG_DOTS: Final = "200"


class Taken(PrintedNotice):
    """Stands for a desktop whose notification service takes every notice."""

    @override
    def show(self, text: NoticeText) -> Sequence[Delivery]:
        """Take it."""
        return [Delivery("desktop", ok=True, words=f"shown: {text.title}")]

    @override
    def state(self) -> tuple[bool, str]:
        """Say that notices work."""
        return True, "desktop notices work"


def make(to: Path) -> list[Path]:
    """Write the pictures as PNG into a folder; gives their paths."""
    clock = StepClock(MOMENT, ZONE)
    made = [to / f"{name}.png" for name in NAMES]
    with tempfile.TemporaryDirectory(prefix="studio-log-pictures-") as scratch:
        with closing(open_demo(Path(scratch) / "demo", clock)) as studio:
            studio.notice = Taken(clock)
            studio.raise_due()
            window_picture(studio, clock, made[0], SIZE, scheme="light", lot=LOT)
            window_picture(studio, clock, made[1], SIZE, scheme="dark", lot=LOT)
            window_picture(studio, clock, made[2], SIZE, scheme="strong-light", lot=LOT)
            window_picture(studio, clock, made[3], SMALL, scheme="light", lot=LOT)
            methods_picture(studio, clock, made[4], METHODS)
            plan_picture(studio, clock, made[5], PLAN)
            swatches_picture(studio, clock, made[6], SWATCHES)
            pdf = Path(scratch) / "tag.pdf"
            write_pdf(pdf, studio.ask(TagsFor((LOT,))), "tag-80x50")
        stem = str(made[-1].with_suffix(""))
        command = ["pdftoppm", "-r", TAG_DOTS, "-png", "-singlefile", str(pdf), stem]
        subprocess.run(command, check=True)
    return made


def main(args: list[str]) -> int:
    """Exit code: 1 with a sentence where the pictures could not be made or are too large."""
    if shutil.which("pdftoppm") is None:
        print("pdftoppm is missing. Install poppler-utils, then start again.", file=sys.stderr)
        return 1
    to = Path(args[0]) if args else TREE / "resources" / "pictures"
    to.mkdir(parents=True, exist_ok=True)
    sizes = {path: path.stat().st_size for path in make(to)}
    for path, size in sizes.items():
        print(f"{path} {size // 1000} kB")
    large = [path.name for path, size in sizes.items() if size > LARGEST_BYTES]
    if large:
        print(f"Larger than 400 kB: {', '.join(large)}.", file=sys.stderr)
    return 1 if large else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
