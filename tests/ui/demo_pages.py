"""Every page of the program over the invented studio, for tests that look at all of them."""

import math
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import QEvent, QEventLoop
from PySide6.QtWidgets import QApplication, QWidget

from studio_log.app.demo import open_demo
from studio_log.app.errand import StepClock
from studio_log.app.window import plan_page
from studio_log.present.swatch_card import CardFacts
from studio_log.science.colour.lab import Lab
from studio_log.services.baths import NewBath
from studio_log.services.papers import RecordFor
from studio_log.services.questions import LotSheetFor, TagsFor
from studio_log.services.settings import Settings
from studio_log.services.studio import Studio
from studio_log.services.swatches import GradeSwatch, NewSwatch, ReadSwatch
from studio_log.services.trials import (
    DoArm,
    NewTrial,
    ReadTag,
    TrialFor,
    TrialPlan,
    UnveilTrial,
)
from studio_log.services.worker import InlineWorker
from studio_log.ui.across.across_view import AcrossView
from studio_log.ui.baths.bath_box import BathBox
from studio_log.ui.baths.bath_dialog import BathDialog
from studio_log.ui.baths.bath_forms import NEW
from studio_log.ui.bridge import Bridge
from studio_log.ui.calculator.calculator_box import CalculatorBox
from studio_log.ui.chime import Chime
from studio_log.ui.dyes.dyes_box import DyesBox
from studio_log.ui.help_box import HelpBox
from studio_log.ui.hours.hours_box import HoursBox
from studio_log.ui.keeping.calendar_box import CalendarBox
from studio_log.ui.keeping.copies_box import CopiesBox
from studio_log.ui.lots.lot_form import LotForm
from studio_log.ui.main_window import MainWindow
from studio_log.ui.methods.method_box import MethodBox
from studio_log.ui.moving.card_box import CardBox
from studio_log.ui.moving.export_box import ExportBox
from studio_log.ui.moving.import_box import ImportBox
from studio_log.ui.papers.paper_dialog import PaperDialog
from studio_log.ui.rang.rang_box import RangBox
from studio_log.ui.settings_dialog import SettingsDialog
from studio_log.ui.stock.stock_box import StockBox
from studio_log.ui.swatches.card_dialog import CardDialog
from studio_log.ui.swatches.forms import GRADE
from studio_log.ui.swatches.instrument_box import InstrumentBox
from studio_log.ui.swatches.near_box import NearBox
from studio_log.ui.swatches.photo_box import PhotoBox
from studio_log.ui.swatches.swatch_box import SwatchBox
from studio_log.ui.swatches.swatch_dialog import SwatchDialog
from studio_log.ui.tags.tag_dialog import TagDialog
from studio_log.ui.trials.form_dialog import TrialDialog
from studio_log.ui.trials.forms import DONE
from studio_log.ui.trials.new_dialog import NewTrialDialog
from studio_log.ui.trials.read_dialog import ReadDialog
from studio_log.ui.trials.trial_box import TrialBox
from studio_log.ui.welcome.welcome_page import WelcomePage
from tests.ui.window_kit import HandTray, WrittenAsk

ZONE: Final = "Europe/London"
MOMENT: Final = datetime(2026, 6, 9, 13, 8, tzinfo=ZoneInfo(ZONE)).astimezone(UTC)


@dataclass
class House:
    """The studio and what the pages ask it by."""

    studio: Studio
    bridge: Bridge


def _window(house: House) -> QWidget:
    window = MainWindow(house.bridge, ask=WrittenAsk(), tray=HandTray(available=True))  # type: ignore[arg-type]
    window.resize(1440, 900)
    window.start()
    window.choose_lot("26-001")
    return window


def _a_bath(house: House) -> str:
    return house.studio.do(NewBath("fructose-vat")).code


def _near(house: House) -> QWidget:
    box = NearBox(house.bridge)
    _a_swatch(house)
    box.take(Lab(50.0, 30.0, 20.0))
    return box


def _a_swatch(house: House) -> str:
    code = house.studio.do(NewSwatch("26-001", test_place="")).code
    house.studio.do(ReadSwatch(code, Lab(52.1, 31.8, 24.0), "photo", two_u=2.4))
    house.studio.do(ReadSwatch(code, Lab(56.0, 27.0, 22.0), "relative", half="test"))
    house.studio.do(GradeSwatch(code, "wash", "4-5"))
    return code


def _a_trial(house: House, *, unveiled: bool = True) -> str:
    """A trial of five ages, dyed and read; depth rises with age and levels off."""
    plan = TrialPlan((0.0, 3.0, 10.0, 30.0, 90.0), blocks=("1", "2", "3"), seed=7,
                     day=date(2026, 3, 1))  # fmt: skip
    code = house.studio.do(NewTrial("Does a long cure deepen madder?", plan)).code
    house.studio.do(DoArm(code, "dye"))
    trial = house.studio.ask(TrialFor(code)).trial
    for unit in sorted(trial.units, key=lambda one: one.read)[: None if unveiled else 12]:
        age = trial.arm(unit.arm).age_d or 0.0
        chroma = 26 + 9 * (1 - math.exp(-age / 15)) + 0.9 * unit.block
        chroma += 0.8 * math.sin(7.0 * unit.number)
        lab = Lab(52.0 - 0.4 * chroma, 0.82 * chroma, 0.57 * chroma)
        house.studio.do(ReadTag(code, unit.tag, lab=lab, two_u=2.0))
    if unveiled:
        house.studio.do(UnveilTrial(code))
    return code


def _reading(house: House) -> QWidget:
    code = _a_trial(house, unveiled=False)
    return ReadDialog(house.bridge, house.studio.ask(TrialFor(code)))


def _an_arm(house: House) -> QWidget:
    page = house.studio.ask(TrialFor(_a_trial(house)))
    return TrialDialog(house.bridge, DONE, page, MOMENT.date())


PAGES: Final[dict[str, Callable[[House], QWidget]]] = {
    "window": _window,
    "new lot": lambda house: LotForm(house.bridge),
    "settings": lambda house: SettingsDialog(house.bridge, Settings()),
    "hours": lambda house: HoursBox(house.bridge, house.studio.settings),
    "methods": lambda house: MethodBox(house.bridge),
    "what rang": lambda house: RangBox(house.bridge),
    "help": lambda _house: HelpBox(),
    "calculator": lambda _house: CalculatorBox(),
    "calendar": lambda house: CalendarBox(house.bridge),
    "copies": lambda house: CopiesBox(house.bridge),
    "baths": lambda house: BathBox(house.bridge, code=_a_bath(house)),
    "new bath": lambda house: BathDialog(house.bridge, NEW, ""),
    "plan": lambda house: plan_page(house.bridge, None),
    "stock": lambda house: StockBox(house.bridge),
    "swatches": lambda house: SwatchBox(house.bridge, code=_a_swatch(house)),
    "near": _near,
    "trials": lambda house: TrialBox(house.bridge, code=_a_trial(house)),
    "trial, veiled": lambda house: TrialBox(house.bridge, code=_a_trial(house, unveiled=False)),
    "new trial": lambda house: NewTrialDialog(house.bridge, MOMENT.date()),
    "read blind": _reading,
    "an arm": _an_arm,
    "an instrument": lambda house: InstrumentBox(house.bridge, "W26-001"),
    "a photo": lambda house: PhotoBox(house.bridge, "W26-001"),
    "cards": lambda _house: CardDialog([CardFacts("W26-001", "first coat", "26-001 Runners")]),
    "a grade": lambda house: SwatchDialog(house.bridge, GRADE, "W26-001"),
    "dyes": lambda house: DyesBox(house.bridge),
    "welcome": lambda house: WelcomePage(house.bridge),
    "tags": lambda house: TagDialog(house.studio.ask(TagsFor(("26-001",)))),
    "card": lambda house: CardBox(house.bridge, house.studio.ask(LotSheetFor("26-001"))),
    "import": lambda house: ImportBox(house.bridge),
    "export": lambda house: ExportBox(house.bridge),
    "paper": lambda house: PaperDialog(house.studio.ask(RecordFor("26-001"))),
    "across the room": lambda house: AcrossView(house.bridge, Chime()),
}


@contextmanager
def house() -> Iterator[House]:
    """Open the invented studio at a clock that stands still."""
    with tempfile.TemporaryDirectory() as folder:
        clock = StepClock(MOMENT, ZONE)
        studio = open_demo(Path(folder) / "studio", clock)
        bridge = Bridge(InlineWorker(), studio, clock)
        try:
            yield House(studio, bridge)
        finally:
            bridge.close()
            studio.close()


@contextmanager
def opened(name: str, house: House) -> Iterator[QWidget]:
    """Show one page; a window asks nobody when it closes."""
    page = PAGES[name](house)
    page.show()
    settle()
    try:
        yield page
    finally:
        if isinstance(page, MainWindow):
            page.quit()
        page.close()
        page.deleteLater()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)


def settle() -> None:
    """Let what was asked come home and be laid out."""
    for _ in range(12):
        QApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 50)
