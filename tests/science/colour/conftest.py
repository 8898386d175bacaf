"""Photos made once for the tests of a folder."""

from typing import Any

import pytest

from tests.science.colour import made_photos


@pytest.fixture(scope="session")
def scene() -> Any:
    """Linear light of the made-up scene."""
    return made_photos.scene()
