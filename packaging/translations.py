"""Bring the catalogues up to the texts of the code; what is new in them waits for a translator.

    .venv-test/bin/python packaging/translations.py

Qt's own tool reads the code (`tr`, `tr_later`) and leaves what is translated as it is. The .ts
files are then edited in Qt Linguist, and read by the program as they are.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from typing import Final

TREE: Final = Path(__file__).resolve().parent.parent
ROOM: Final = TREE / "resources" / "translations"
TOOL: Final = Path(sys.executable).with_name("pyside6-lupdate")


def update(catalogue: Path) -> int:
    """Bring one catalogue up to date; gives the tool's exit code."""
    sources = sorted(str(path) for path in (TREE / "studio_log").rglob("*.py"))
    ask = [str(TOOL), *sources, "-tr-function-alias", "QT_TR_NOOP+=tr_later"]
    ask += ["-locations", "none", "-no-obsolete"]
    language = catalogue.stem.removeprefix("studio_log_")
    return subprocess.run(
        [*ask, "-target-language", language, "-ts", str(catalogue)], check=False
    ).returncode


def main() -> int:
    """Bring every catalogue up to date."""
    return max((update(path) for path in sorted(ROOM.glob("*.ts"))), default=0)


if __name__ == "__main__":
    sys.exit(main())
