"""Acts of the menus that are not about one lot: ways about the window, look, reminders."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from typing import TYPE_CHECKING, Any, Final, TypeVar, cast

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QDialog, QWidget
from shiboken6 import isValid

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts
from studio_log.language.words import tr, tr_later
from studio_log.services.clock import zone_data_words
from studio_log.services.commands import ChangeSettings, Hush, Outcome
from studio_log.services.ports import Delivery
from studio_log.services.settings import Settings
from studio_log.ui.across.across_view import AcrossView
from studio_log.ui.ask import Ask
from studio_log.ui.baths.bath_box import BathBox
from studio_log.ui.bench.bench_page import BenchPage
from studio_log.ui.bridge import Bridge
from studio_log.ui.calculator.calculator_box import CalculatorBox
from studio_log.ui.chime import Chime
from studio_log.ui.dyes.dyes_box import DyesBox
from studio_log.ui.errors import MessageBar
from studio_log.ui.help_box import HelpBox
from studio_log.ui.hours.hours_box import HoursBox
from studio_log.ui.hushes import HUSHES
from studio_log.ui.keeping.calendar_box import CalendarBox
from studio_log.ui.keeping.copies_box import CopiesBox
from studio_log.ui.kept.kept_box import KeptBox
from studio_log.ui.lots.lot_list import LotList
from studio_log.ui.lots.lot_sheet import LotSheetPage
from studio_log.ui.methods.method_box import MethodBox
from studio_log.ui.moving.export_box import ExportBox
from studio_log.ui.moving.import_box import ImportBox
from studio_log.ui.panes import Panes
from studio_log.ui.rang.rang_box import RangBox
from studio_log.ui.settings_dialog import SettingsDialog
from studio_log.ui.sharing.sharing_box import SharingBox
from studio_log.ui.stock.stock_box import StockBox
from studio_log.ui.swatches.swatch_box import SwatchBox
from studio_log.ui.tags.tag_dialog import TagDialog
from studio_log.ui.theme.look import LEAST_TEXT, MOST_TEXT, theme
from studio_log.ui.timeline.sheet_out import copy_picture, print_sheet, save_picture
from studio_log.ui.timeline.timeline_view import TimelineView
from studio_log.ui.trials.trial_box import TrialBox

if TYPE_CHECKING:
    from studio_log.ui.across.wakefulness import Awake
    from studio_log.ui.settings_login import LoginStart
    from studio_log.ui.settings_look import LanguageChoice

TITLE: Final = tr_later("Studio Log — a dyer’s logbook")
ABOUT: Final = tr_later(
    "A logbook with reminders for a natural dyer’s workshop. Every lot’s "
    "record, its amounts, what it needs next and by when. It never "
    "replaces the supplier’s safety data sheet."
)
ONLY_HERE: Final = tr_later("The chime in this window is all that can be tried here.")


Box = TypeVar("Box", bound=QDialog)


@dataclass(frozen=True)
class Places:
    """The parts of the window that the menus lead to."""

    lots: LotList
    time: TimelineView
    sheet: LotSheetPage
    bench: BenchPage
    panes: Panes
    message: MessageBar
    chime: Chime


class MenuActs(QObject):
    """Does an act by its name in the table of the menus."""

    lot_wanted = Signal(str)
    """A lot is to be begun by the method of this name."""
    lot_shown = Signal(str)
    """The lot of this code is to be chosen."""

    def __init__(self, window: QWidget, bridge: Bridge, ask: Ask, places: Places) -> None:
        super().__init__(window)
        self._window = window
        self._bridge = bridge
        self._ask = ask
        self._at = places
        self.settings = Settings()
        self.across: AcrossView | None = None
        self._boxes: dict[type[QDialog], QDialog] = {}
        self.awake: Awake | None = None
        """What keeps the screen on; None where that cannot be."""
        self.login_start: LoginStart | None = None
        """What switches the start at login; None where that cannot be."""
        self.make_plan: Callable[[QWidget], QDialog] | None = None
        """What opens the page of the plan; whoever equips the window knows the planner."""
        self.language: LanguageChoice | None = None
        """What chooses the language of the next start; None where that cannot be."""
        self._table: dict[str, Callable[[], object]] = {
            "settings": self._settings_box,
            "hours": self.open_hours,
            "print_steps": self._print_steps,
            "copy_steps": self._copy_steps,
            "save_steps": self._save_steps,
            "calendar": self._calendar,
            "export": self._export,
            "import": self._import,
            "copies": self._copies,
            "sharing": self._sharing,
            "find": self._find,
            "to_lots": self._to_lots,
            "to_steps": self._to_steps,
            "to_bench": self._to_bench,
            "methods": self._methods,
            "calculator": self._calculator,
            "stock": self._stock,
            "dyes": self._dyes,
            "baths": self.open_baths,
            "swatches": self.open_swatches,
            "trials": self.open_trials,
            "plan": self.open_plan,
            "across": self._across,
            "lines": self._lines,
            "larger": self._larger,
            "smaller": self._smaller,
            "dark": self._dark,
            "answer": self._answer,
            "put_all_off": places.bench.put_all_off,
            "take_back": places.bench.take_last_back,
            **{one.slug: partial(self._hush, one.command) for one in HUSHES},
            "what_rang": self._what_rang,
            "ring_test": self._ring_test,
            "help": self._help,
            "whats_new": self._whats_new,
            "keys": self._keys,
            "about": self._about,
        }

    def do(self, slug: str) -> bool:
        """Do it; False where it is none of these."""
        act = self._table.get(slug)
        if act is None:
            return False
        act()
        return True

    def take_keyboard(self, page: str) -> None:
        """Give the keyboard to one of the panes by its name."""
        if page == "time":
            self._at.time.setFocus(Qt.FocusReason.OtherFocusReason)
        elif page == "lots":
            self._at.lots.rows.setFocus(Qt.FocusReason.OtherFocusReason)
        elif page == "lot":
            self._at.sheet.steps.focus_current()
        else:
            self._at.bench.focus_top()

    def _settings_box(self) -> None:
        box = SettingsDialog(
            self._bridge,
            self.settings,
            self._window,
            login_start=self.login_start,
            language=self.language,
            chime=self._at.chime,
        )
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.open()

    def open_hours(self) -> None:
        """Open the studio's hours."""
        self._one(HoursBox, lambda: HoursBox(self._bridge, self.settings, self._window))

    def _print_steps(self) -> None:
        self._out(partial(print_sheet, self._window), self._at.message.advise)

    def _copy_steps(self) -> None:
        self._out(copy_picture)

    def _save_steps(self) -> None:
        self._out(partial(save_picture, self._window))

    def _out(self, act: Callable[..., str | None], *more: object) -> None:
        """Take the sheet elsewhere, and say how it went."""
        try:
            said = act(self._at.time, self.settings.studio, *more)
        except Refusal as refusal:
            self._at.message.refuse(str(refusal))
        else:
            if said:
                self._at.message.advise(said)

    def _calendar(self) -> None:
        self._one(CalendarBox, lambda: CalendarBox(self._bridge, self._window))

    def _import(self) -> None:
        self._one(ImportBox, lambda: ImportBox(self._bridge, self._window))

    def _export(self) -> None:
        box = ExportBox(self._bridge, self._window)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.open()

    def _copies(self) -> None:
        self._one(CopiesBox, lambda: CopiesBox(self._bridge, self._window))

    def _sharing(self) -> None:
        self._one(SharingBox, lambda: SharingBox(self._bridge, self._window))

    def _find(self) -> None:
        self._at.panes.go("lots")
        self._at.lots.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self._at.lots.search.selectAll()

    def _to_lots(self) -> None:
        self._at.panes.go("lots")
        self.take_keyboard("lots")

    def _to_steps(self) -> None:
        self._at.panes.go("lot")
        self.take_keyboard("lot")

    def _to_bench(self) -> None:
        self._at.panes.go("bench")
        self.take_keyboard("bench")

    def _lines(self) -> None:
        self._at.panes.go("time")
        self._at.time.show_shared(not self._at.time.shows_shared)

    def _methods(self) -> None:
        self.open_method("")

    def open_method(self, slug: str) -> None:
        """Open the methods at the page of one, or where the list begins."""
        box = MethodBox(self._bridge, self._window, slug)
        box.lot_wanted.connect(self.lot_wanted)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.show()

    def _calculator(self) -> None:
        box = CalculatorBox(self._window)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.show()

    def _stock(self) -> None:
        self._one(StockBox, lambda: StockBox(self._bridge, self._window))

    def _dyes(self) -> None:
        self._one(DyesBox, self._make_dyes)

    def _make_dyes(self) -> DyesBox:
        box = DyesBox(self._bridge, self._window)
        box.lot_wanted.connect(self.lot_wanted)
        return box

    def open_baths(self, code: str = "") -> None:
        """Show the baths and vats, with one of them chosen."""
        self._choose(self._box(BathBox, lambda: BathBox(self._bridge, self._window)), code)

    def open_swatches(self, code: str = "") -> None:
        """Show the swatches, with one of them chosen; a new one is cut from the chosen lot."""
        box = self._box(SwatchBox, self._make_swatches)
        box.lot = self._at.lots.chosen
        self._choose(box, code)

    def _make_swatches(self) -> SwatchBox:
        box = SwatchBox(self._bridge, self._window)
        box.lot_wanted.connect(self.lot_shown)
        return box

    def open_trials(self, code: str = "") -> None:
        """Show the trials, with one of them chosen."""
        self._choose(self._box(TrialBox, self._make_trials), code)

    def _make_trials(self) -> TrialBox:
        box = TrialBox(self._bridge, self._window)
        box.tags_wanted.connect(partial(self._print_tags, box))
        return box

    def _print_tags(self, over: QWidget, facts: tuple[TagFacts, ...]) -> None:
        box = TagDialog(facts, over)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.open()

    def open_plan(self) -> None:
        """Open the plan, or bring it forward."""
        if self.make_plan is not None:
            self._one(QDialog, partial(self.make_plan, self._window))

    def _one(self, kind: type[Box], make: Callable[[], Box]) -> None:
        """Bring a window of its kind forward, or open it: none stands there twice."""
        _bring_forward(self._box(kind, make))

    def _box(self, kind: type[Box], make: Callable[[], Box]) -> Box:
        box = self._boxes.get(kind)
        if box is None or not isValid(box):
            box = self._boxes[kind] = make()
            box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        return cast("Box", box)

    @staticmethod
    def _choose(box: KeptBox[Any], code: str) -> None:
        if code:
            box.choose(code)
        _bring_forward(box)

    def _across(self) -> None:
        if self.across is None:
            self.across = AcrossView(self._bridge, self._at.chime, self._window, awake=self.awake)
        self.across.showFullScreen()

    def _larger(self) -> None:
        self._resize_text(10)

    def _smaller(self) -> None:
        self._resize_text(-10)

    def _resize_text(self, by: int) -> None:
        wanted = min(max(self.settings.text_percent + by, LEAST_TEXT), MOST_TEXT)
        # The next press may come before this one has gone through the studio.
        self.settings = replace(self.settings, text_percent=wanted)
        self._bridge.do(ChangeSettings({"text_percent": wanted}))

    def _dark(self) -> None:
        self._bridge.do(ChangeSettings({"theme": "light" if theme().is_dark else "dark"}))

    def _answer(self) -> None:
        self._at.bench.answer_top()

    def _hush(self, command: Hush) -> None:
        self._bridge.do(command, self._hushed)

    def _hushed(self, outcome: Outcome) -> None:
        self._at.message.advise(outcome.words)

    def _what_rang(self) -> None:
        self._one(RangBox, lambda: RangBox(self._bridge, self._window))

    def _ring_test(self) -> None:
        self._at.chime.sound()
        if not self._bridge.ring_test(self._test_rung):
            self._at.message.advise(tr(ONLY_HERE))

    def _test_rung(self, deliveries: list[Delivery]) -> None:
        said = "; ".join(f"{one.channel}: {one.words}" for one in deliveries)
        self._at.message.advise(
            tr("Test rung. {said}", said=said or tr("No channel answered; ringing here only."))
        )

    def _help(self) -> None:
        self._open_help("getting_started")

    def _whats_new(self) -> None:
        self._open_help("whats_new")

    def _open_help(self, page: str) -> None:
        box = HelpBox(self._window, page)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.show()

    def _keys(self) -> None:
        self._open_help("keys")

    def _about(self) -> None:
        self._ask.tell(
            self._window,
            tr(TITLE),
            f"{tr(ABOUT)} " + tr("Times go by the {zone}.", zone=zone_data_words()),
        )


def _bring_forward(box: QDialog) -> None:
    if not box.isVisible():
        box.show()
        return
    box.setWindowState(box.windowState() & ~Qt.WindowState.WindowMinimized)
    box.raise_()
    box.activateWindow()
