"""A private bus for the tests of notices."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.outside import service


@pytest.fixture
def bus(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[str]:
    """The address of a session bus of the test's own, on which nothing answers yet."""
    with service.private_bus(tmp_path) as address:
        monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", address)
        yield address
