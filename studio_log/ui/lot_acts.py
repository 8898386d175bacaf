"""What the window does with the chosen lot: make, change, split, join, print, take back."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal, Slot

from studio_log.domain.journal import Act
from studio_log.language.words import tr
from studio_log.services.commands import (
    ChangeSettings,
    GoOn,
    Mark,
    NoteTagsPrinted,
    Outcome,
    Redo,
    SetLot,
    SplitLot,
    Undo,
)
from studio_log.services.joins import JoinOffer, JoinOfferFor
from studio_log.services.papers import CardFor, DaySheetFor, Paper, RecordFor
from studio_log.services.questions import (
    LotSheet,
    Methods,
    MethodsFor,
    MilkOffer,
    MilkOfferFor,
    Tags,
    TagsFor,
    TakeBack,
)
from studio_log.services.settings import Settings
from studio_log.ui.lots.join_box import JoinBox
from studio_log.ui.lots.lot_form import LotForm
from studio_log.ui.lots.step_list import current
from studio_log.ui.methods.method_box import MethodBox
from studio_log.ui.milk_box import MilkBox
from studio_log.ui.moving.card_box import CardBox
from studio_log.ui.papers.paper_dialog import PaperDialog
from studio_log.ui.tags.tag_dialog import TagDialog

if TYPE_CHECKING:
    from datetime import datetime

    from PySide6.QtWidgets import QWidget

    from studio_log.present.paper.blocks import PageName
    from studio_log.ui.ask import Ask
    from studio_log.ui.bridge import Bridge


class LotActs(QObject):
    """Asks what an act still needs and sends it; knows the lot that is shown."""

    lot_made = Signal(str)

    def __init__(self, window: "QWidget", bridge: "Bridge", ask: "Ask") -> None:
        super().__init__(window)
        self._window = window
        self._bridge = bridge
        self._ask = ask
        self.sheet: LotSheet | None = None
        self.take_back: TakeBack | None = None
        self.vessel_litres = 10.0
        self.form: LotForm | None = None
        self.tags: TagDialog | None = None
        self.paper: PaperDialog | None = None
        self.settings = Settings()
        self.milk_box: MilkBox | None = None
        self.join_box: JoinBox | None = None

    def do(self, slug: str) -> None:
        """Do one act by its name; nothing where no lot is shown and it needs one."""
        if slug == "new_lot":
            self.new_lot()
        elif slug == "undo":
            self.undo()
        elif slug == "print_day":
            self.print_day()
        elif self.sheet is not None:
            getattr(self, f"_{slug}")(self.sheet)

    @Slot()
    def new_lot(self) -> None:
        """Open the form for a new lot."""
        self.new_lot_by("")

    @Slot(str)
    def new_lot_by(self, method: str) -> None:
        """Open the form for a new lot with a method chosen; "" leaves the choice."""
        self.form = LotForm(
            self._bridge, vessel_litres=self.vessel_litres, parent=self._window, method=method
        )
        self.form.made.connect(self.lot_made)
        self.form.method_wanted.connect(self._read_method)
        self.form.finished.connect(self._form_left)
        self.form.open()

    def _read_method(self, slug: str) -> None:
        """Open a method's page over the form, which holds the keyboard of the window."""
        if self.form is None:
            return
        box = MethodBox(self._bridge, self.form, slug)
        box.lot_wanted.connect(self.form.take_method)
        box.lot_wanted.connect(box.close)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.show()

    def record_milk(self, code: str) -> None:
        """Offer to record the milk of a lot that has just been strained."""
        self._bridge.ask(MilkOfferFor(code), self._show_milk)

    def _milk(self, sheet: LotSheet) -> None:
        self.record_milk(sheet.code)

    def _show_milk(self, offer: MilkOffer) -> None:
        if self.milk_box is not None:
            return
        self.milk_box = MilkBox(self._bridge, offer, self._window)
        self.milk_box.finished.connect(self._milk_left)
        self.milk_box.open()

    def _milk_left(self) -> None:
        if self.milk_box is not None:
            self.milk_box.deleteLater()
            self.milk_box = None

    def plan(self, code: str, step: int, at: "datetime") -> None:
        """Write where the dyer moved a planned moment to; undo takes it back."""
        self._bridge.do(Mark(code, str(step), Act.PLAN, at))

    def undo(self) -> None:
        """Take back the last act of all while it is fresh, else the latest of the lot shown."""
        if self.take_back is not None and self.take_back.until > self._bridge.now():
            self._bridge.do(Undo(self.take_back.subject))
        elif self.sheet is not None:
            self._bridge.do(Undo(self.sheet.code))

    def undo_words(self) -> str:
        """Say what undo would take back, "" for nothing."""
        if self.take_back is not None and self.take_back.until > self._bridge.now():
            return self.take_back.words
        return self.sheet.undo if self.sheet is not None else ""

    def _redo(self, sheet: LotSheet) -> None:
        self._bridge.do(Redo(sheet.code))

    def _split(self, sheet: LotSheet) -> None:
        choice = self._ask.split(self._window, sheet.pieces, sheet.name)
        if choice is not None:
            self._bridge.do(SplitLot(sheet.code, choice.pieces, choice.name), self._made)

    def _join(self, sheet: LotSheet) -> None:
        self._bridge.ask(JoinOfferFor(sheet.code), self._show_join)

    def _show_join(self, offer: JoinOffer) -> None:
        if self.join_box is not None:
            return
        self.join_box = JoinBox(self._bridge, offer, self._window)
        self.join_box.made.connect(self.lot_made)
        self.join_box.finished.connect(self._join_left)
        self.join_box.open()

    def _join_left(self) -> None:
        if self.join_box is not None:
            self.join_box.deleteLater()
            self.join_box = None

    def _go_on(self, _sheet: LotSheet) -> None:
        self._bridge.ask(MethodsFor(), self._choose_method)

    def _choose_method(self, methods: Methods) -> None:
        sheet = self.sheet
        if sheet is None:
            return
        slug = self._ask.method(self._window, methods)
        if slug is not None:
            self._bridge.do(GoOn(sheet.code, slug))

    def _change(self, sheet: LotSheet) -> None:
        place = str(sheet.data.get("place") or "")
        vessel = str(sheet.data.get("vessel") or "")
        change = self._ask.lot_change(self._window, sheet.name, place, vessel)
        if change is not None:
            self._bridge.do(
                SetLot(
                    sheet.code,
                    name=change.name if change.name != sheet.name else None,
                    place=change.place if change.place != place else None,
                    grams=change.grams,
                    weighed=change.weighed,
                    cure_days=change.cure_days,
                    vessel_litres=change.vessel_litres,
                    vessel=change.vessel if change.vessel != vessel else None,
                    seen=max((one.number for one in sheet.entries), default=0),
                )
            )

    def _stop(self, sheet: LotSheet) -> None:
        words = tr("Its steps end here and nothing rings for it any more. Why does it stop?")
        reason = self._ask.reason(self._window, tr("Stop {code}", code=sheet.code), words)
        if reason is None:
            return
        number = current(sheet.steps)
        step = "now" if number is None else str(number)
        self._bridge.do(Mark(sheet.code, step, Act.STOP, note=reason))

    def _print_tags(self, sheet: LotSheet) -> None:
        self._bridge.ask(TagsFor((sheet.code,)), self._show_tags)

    def _print_card(self, sheet: LotSheet) -> None:
        self._bridge.ask(CardFor(sheet.code), self._show_paper)

    def _card_times(self, sheet: LotSheet) -> None:
        box = CardBox(self._bridge, sheet, self._window)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.open()

    def _print_record(self, sheet: LotSheet) -> None:
        self._bridge.ask(RecordFor(sheet.code), self._show_paper)

    def print_day(self) -> None:
        """Show the day sheet before it is printed."""
        self._bridge.ask(DaySheetFor(), self._show_paper)

    def _show_paper(self, paper: Paper) -> None:
        page: PageName = "letter" if self.settings.units == "us" else "a4"
        self.paper = PaperDialog(paper, page, self._window)
        self.paper.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.paper.finished.connect(self._paper_left)
        self.paper.open()

    def _paper_left(self) -> None:
        self.paper = None

    def _show_tags(self, tags: Tags) -> None:
        self.tags = TagDialog(tags, self._window)
        own = self.settings
        self.tags.choose(own.tag_stock, own.tag_fields, own.tag_printers)
        self.tags.printed.connect(self._note_printed)
        self.tags.finished.connect(self._tags_left)
        self.tags.open()

    def _note_printed(self, codes: list[str]) -> None:
        self._bridge.do(NoteTagsPrinted(tuple(codes)))
        if self.tags is not None:
            self._bridge.do(ChangeSettings(self.tags.choices))

    def _made(self, outcome: Outcome) -> None:
        if outcome.code:
            self.lot_made.emit(outcome.code)

    def _form_left(self) -> None:
        if self.form is not None:
            self.form.deleteLater()
            self.form = None

    def _tags_left(self) -> None:
        if self.tags is not None:
            self.tags.deleteLater()
            self.tags = None
