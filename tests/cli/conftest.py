"""A command line before a fake house."""

import pytest

from tests.cli.fake_house import Line


@pytest.fixture
def line() -> Line:
    """A command line whose studio notes what it is asked."""
    return Line()
