"""The box of a form: sends once however often Enter is pressed, and keeps what is refused."""

from collections.abc import Callable, Iterator
from concurrent.futures import Future
from typing import Any

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studio_log.services.stock import NewMaterial, StockFor
from studio_log.ui.bridge import Bridge
from studio_log.ui.stock.stock_form import StockForm
from tests.support.fixtures import Workshop
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


class SlowWorker:
    """Holds every call until it is let go."""

    def __init__(self) -> None:
        self.held: list[tuple[Future[Any], Callable[[], Any]]] = []

    def submit(self, fn: Callable[..., Any], /, *args: Any) -> Future[Any]:
        """Keep the call."""
        future: Future[Any] = Future()
        self.held.append((future, lambda: fn(*args)))
        return future

    def let_go(self) -> None:
        """Run what is held."""
        held, self.held = self.held, []
        for future, call in held:
            try:
                future.set_result(call())
            except Exception as error:  # noqa: BLE001 - it is handed on, as a worker does
                future.set_exception(error)


@pytest.fixture
def worker() -> SlowWorker:
    return SlowWorker()


@pytest.fixture
def form(qtbot: QtBot, shop: Workshop, worker: SlowWorker) -> Iterator[StockForm]:
    bridge = Bridge(worker, shop.studio, shop.clock)
    made = StockForm(bridge, "new", None)
    qtbot.addWidget(made)
    made.show()
    settle()
    yield made
    bridge.close()


def test_enter_pressed_twice_writes_once(
    form: StockForm, worker: SlowWorker, shop: Workshop, qtbot: QtBot
) -> None:
    line = form.fields["title"].line  # type: ignore[union-attr]
    qtbot.keyClicks(line, "Soda ash")
    for _ in range(3):
        qtbot.keyClick(line, Qt.Key.Key_Return)
    assert len(worker.held) == 1
    worker.let_go()
    settle()
    assert not form.isVisible()
    assert [one.title for one in shop.studio.ask(StockFor())] == ["Soda ash"]


def test_what_was_refused_can_be_sent_again(
    form: StockForm, worker: SlowWorker, shop: Workshop, qtbot: QtBot
) -> None:
    shop.studio.do(NewMaterial("Soda ash"))
    line = form.fields["title"].line  # type: ignore[union-attr]
    qtbot.keyClicks(line, "Soda ash")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    worker.let_go()
    settle()
    assert form.isVisible()
    assert form.message.isVisible()
    assert line.text() == "Soda ash"
    line.setText("Alum")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    worker.let_go()
    settle()
    assert not form.isVisible()
    assert {one.title for one in shop.studio.ask(StockFor())} == {"Soda ash", "Alum"}
