"""An open studio in a folder of its own, or on a server."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from studio_log.store.database import Store, open_store
from studio_log.store.turns import Turns
from tests.support.servers import Databases, databases

__all__ = ["databases"]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "studio"


@pytest.fixture
def file_store(folder: Path) -> Iterator[Store]:
    with open_store(folder) as opened:
        yield opened


@pytest.fixture(params=["file", "server"])
def store(request: pytest.FixtureRequest) -> Iterator[Turns]:
    """Give the same empty studio in either database; what is a file's own takes `file_store`."""
    if request.param == "file":
        yield request.getfixturevalue("file_store")
        return
    folder: Path = request.getfixturevalue("tmp_path") / "studio"
    folder.mkdir(exist_ok=True)
    made: Databases = request.getfixturevalue("databases")
    with made.emptied(folder) as opened:
        yield opened
