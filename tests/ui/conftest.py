"""A real studio for the screens that are tried on one."""

from collections.abc import Iterator

import pytest

from studio_log.ui.typed import remember_in
from tests.support.fixtures import clock, shop

__all__ = ["clock", "shop"]


@pytest.fixture(autouse=True)
def _nothing_typed_before() -> Iterator[None]:
    """What one test types is not offered to the next."""
    remember_in(None)
    yield
    remember_in(None)
