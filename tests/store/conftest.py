"""An open studio in a folder of its own."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from studio_log.store.database import Store, open_store


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "studio"


@pytest.fixture
def store(folder: Path) -> Iterator[Store]:
    with open_store(folder) as opened:
        yield opened
