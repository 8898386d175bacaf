"""A real studio for the screens that are tried on one, and letters of the usual size for all."""

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication

from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.theme.look import apply_theme, theme
from tests.support.fixtures import Workshop, clock, shop

__all__ = ["clock", "shop"]


@pytest.fixture
def bridge(shop: Workshop) -> Iterator[Bridge]:
    """Between the screens and the real studio; what is asked is answered at once."""
    made = Bridge(InlineWorker(), shop.studio, shop.clock)
    yield made
    made.close()


@pytest.fixture(autouse=True)
def _looks_stay_as_they_were() -> Iterator[None]:
    """What a test did to size or colours is gone before the next; which that is, is chance."""
    before = _look()
    yield
    if before is not None and _look() != before:
        apply_theme(QApplication.instance(), "light", 100)  # type: ignore[arg-type]


def _look() -> tuple[float, str] | None:
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        return None
    return app.font().pointSizeF(), theme().scheme
