"""The window of the plan for tests: it plans in this process, with few tries."""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from studio_log.planning.apart import Ask
from studio_log.planning.job import ACTS
from studio_log.planning.talking import Asked
from studio_log.services.commands import ChangeSettings
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.plan.plan_box import PlanBox
from studio_log.ui.plan.run import PlanRun
from tests.support.fixtures import Workshop


class Sheet(QWidget):
    """A timeline that only keeps what it is shown."""

    plan_wanted = Signal(str, int, object)

    def __init__(self) -> None:
        super().__init__()
        self.lanes: Any = ()
        self.chosen = ""

    def show_lanes(self, lanes: Any, *_rest: object) -> None:
        self.lanes = lanes

    def show_around(self, *_rest: object, left_out: int = 0) -> None:
        assert left_out == 0

    def choose(self, code: str) -> None:
        self.chosen = code


class Told:
    """Hears the planner in this process: a few tries, then it is over."""

    def __init__(self) -> None:
        self.told = False

    def over(self) -> bool:
        return False

    def passed(self) -> float:
        return 0.0

    def better(self, _fields: dict[str, Any]) -> None:
        return


def plan_here(monkeypatch: pytest.MonkeyPatch) -> None:
    """The process is tried in tests/planning: here its acts are done at once, with few tries."""

    def start(run: PlanRun, ask: Ask) -> None:
        run.close()
        problem = json.dumps(ask.problem).encode()
        keep = dict(ask.keep) if ask.keep is not None else None
        asked = Asked(ask.do, problem, "own", 1.0, 3, 1, keep, dict(ask.more))
        fields = ACTS[ask.do](asked, Told())  # type: ignore[arg-type]
        run._heard.emit(run._number, {"done": json.loads(json.dumps(fields))})

    monkeypatch.setattr(PlanRun, "start", start)


@pytest.fixture
def box(qtbot: QtBot, shop: Workshop, monkeypatch: pytest.MonkeyPatch) -> Iterator[PlanBox]:
    plan_here(monkeypatch)
    shop.do(ChangeSettings({"open_hours": "mon-sat 08:00-19:00", "vessels": "2 buckets of 20 L"}))
    bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
    made = PlanBox(bridge, Sheet)  # type: ignore[arg-type]
    qtbot.addWidget(made)
    yield made
    made.close()
    bridge.close()


def settle(box: PlanBox) -> None:
    for _ in range(12):
        QApplication.processEvents()
    if box._soon.isActive():
        box._soon.stop()
        box.refresh()
        settle(box)


def shown(box: PlanBox) -> None:
    box.show()
    settle(box)
