"""What holds for every test: its surroundings, and two guards over what it leaves behind.

A test that expects a warning in the log asks for `caplog` and looks at it itself.
"""

from collections.abc import Iterator

import pytest
from hypothesis import settings

from studio_log.ui.typed import remember_in
from tests.support import logs, surroundings, threads

surroundings.settle()
settings.register_profile("studio", deadline=None)  # a busy machine is no fault of the code
settings.load_profile("studio")


def pytest_runtest_setup(item: pytest.Item) -> None:
    """Pass over a test that needs a screen where the run has none."""
    if item.get_closest_marker("screen") and not surroundings.on_screen():
        pytest.skip("needs an X server and a session bus: python3 packaging/test.py")


def pytest_unconfigure() -> None:
    """Take the homes away."""
    surroundings.HOME.cleanup()


@pytest.fixture(autouse=True)
def _no_threads_left() -> Iterator[None]:
    before = threads.running()
    yield
    left = threads.left_behind(before)
    assert not left, f"the test left threads running: {left}"


@pytest.fixture(autouse=True)
def _no_warnings_unannounced(request: pytest.FixtureRequest) -> Iterator[None]:
    with logs.listening() as lines:
        yield
    if "caplog" not in request.fixturenames:
        assert not lines, f"the log holds warnings that the test did not announce: {lines}"


@pytest.fixture(autouse=True)
def _own_surroundings(
    _no_threads_left: None, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    remember_in(None)  # what one test types is not offered to the next
    surroundings.give(monkeypatch, with_bus=request.node.get_closest_marker("screen") is not None)
