"""The chosen lot whole: how it stands, its steps, and its journal."""

from datetime import datetime
from functools import partial
from typing import Final

from PySide6.QtCore import QPoint, QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication, QKeySequence, QShortcut
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget
from shiboken6 import isValid
from typing_extensions import override

from studio_log.domain.journal import Act
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Mark, Outcome, SetLot, Undo
from studio_log.services.questions import LotSheet, LotSheetFor, StepLine
from studio_log.ui.ask import Ask
from studio_log.ui.bridge import FOREIGN, Bridge, touches
from studio_log.ui.errors import MessageBar
from studio_log.ui.lots.journal_page import JournalPage
from studio_log.ui.lots.lineage_view import LineageView
from studio_log.ui.lots.method_heading import MethodHeading
from studio_log.ui.lots.photos_page import PhotosPage, carries_pictures
from studio_log.ui.lots.step_detail import StepDetail
from studio_log.ui.lots.step_list import StepList
from studio_log.ui.lots.step_row import StepRow
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, button, chip, scrolled

NOTHING: Final = tr_later("Choose a lot at the left, and its steps stand here.")
CLOSED: Final = ("done", "skipped")
ACTS: Final = (
    ("change", tr_later("Chan&ge…")),
    ("split", tr_later("Split…")),
    ("join", tr_later("Join…")),
    ("go_on", tr_later("Go on…")),
    ("print_tags", tr_later("Print tag")),
    ("stop", tr_later("Stop…")),
)
ROOM_ABOVE: Final = 24
"""Pixels seen above and below what was brought in sight."""
PHOTOS: Final = tr_later("P&hotos")


class _Body(QWidget):
    """As high as its words need at its width; wrapped words ask for more when asked narrow."""

    @override
    def minimumSizeHint(self) -> QSize:
        return QSize(super().minimumSizeHint().width(), 0)


class LotSheetPage(QWidget):
    """Below the timeline; one step at a time is open for marking what happened."""

    shown = Signal(object)
    """A LotSheet, or None where no lot is chosen."""
    lot_wanted = Signal(str)
    """The code of a lot that this one was split from or into."""
    method_wanted = Signal(str)
    """The short name of the method whose page is to be opened."""
    act_wanted = Signal(str)
    """"split", "join", "go_on", "change", "print_tags" or "stop", for the lot shown."""

    def __init__(self, bridge: Bridge, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("sheet")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._bridge = bridge
        self._ask = ask
        self._code = ""
        self._sheet: LotSheet | None = None
        self.title = Words(tr(NOTHING), size="title", bold=True)
        self.heading = MethodHeading()
        self.facts = tuple(Words(tone=tone) for tone in ("soft", "ink", *("soft",) * 6))
        self.cautions = Words(tone="danger_ink", size="small")
        self.steps_tab = chip(tr("&Steps"))
        self.journal_tab = chip(tr("&Journal"))
        self.photos_tab = chip(tr(PHOTOS))
        self.detail = StepDetail(bridge)
        self.said = MessageBar(bridge, self.detail)
        self.detail.add_message(self.said)
        self.steps = StepList(self.detail)
        self.journal = JournalPage(bridge)
        self.photos = PhotosPage(bridge)
        self.lineage = LineageView()
        self.setAcceptDrops(True)
        # Of the whole window: who has just chosen a lot in the list means that lot.
        self._pasting = QShortcut(QKeySequence.StandardKey.Paste, self, self._paste)
        self.lot_buttons: dict[str, QPushButton] = {}
        self._in_sight: QWidget | None = None
        self._settled = QTimer(self, singleShot=True, interval=0)
        self._lay_out()
        self._connect()
        self._tools.hide()

    @property
    def code(self) -> str:
        """Code of the lot shown, "" for none."""
        return self._code

    @property
    def sheet(self) -> LotSheet | None:
        """What is shown, None until it came."""
        return self._sheet

    def choose(self, code: str) -> None:
        """Show another lot."""
        if code == self._code:
            return
        self._code = code
        self.steps.forget_choice()
        self.refresh()

    def choose_step(self, number: int) -> None:
        """Open one step of the lot shown."""
        self._show_tab(self.steps)
        self.steps.choose(number)

    def refresh(self) -> None:
        """Ask for the lot again."""
        if self._code:
            self._bridge.ask(LotSheetFor(self._code), self.show_sheet)

    def on_changed(self, outcome: Outcome) -> None:
        """Ask again where a change touches this lot."""
        if touches(outcome, self._code) or outcome.settings or outcome.milks or outcome is FOREIGN:
            self.refresh()

    def show_sheet(self, sheet: LotSheet) -> None:
        """Show the lot; an answer for one left meanwhile is dropped."""
        if sheet.code != self._code:
            return
        self._sheet = sheet
        self._tools.show()
        self.title.setText(f"{sheet.code} · {sheet.name}")
        doing = sheet.doing or sheet.state
        methods = sheet.data.get("methods")
        under = " · ".join(part for part in (sheet.heading, doing) if part)
        self.heading.show_heading(under, methods if isinstance(methods, list) else [])
        told = (sheet.data.get("parents"), sheet.data.get("children"))
        parents, children = (list(one) if isinstance(one, list) else [] for one in told)
        joined = bool(sheet.data.get("joined"))
        into = str(sheet.data.get("joined_into") or "")
        self.lineage.show_lineage(sheet.code, parents, children, joined=joined, into=into)
        lineage = "" if parents or children else sheet.lineage
        made_of = (sheet.vessel_words, sheet.bath_words, sheet.swatch_words, sheet.cost_words)
        said = (sheet.plan_words, sheet.cure_words, sheet.milk_words, *made_of, lineage)
        for words, text in zip(self.facts, said, strict=True):
            words.show_words(text)
        self.cautions.show_words("\n".join(f"⚠ {words}" for words in sheet.cautions))
        self.detail.belong_to(sheet.code)
        self.steps.show_steps(sheet.steps)
        became = sheet.data.get("became")
        self.journal.show_entries(
            sheet.entries,
            self._bridge.zone(),
            became if isinstance(became, dict) else {},
            code=sheet.code,
        )
        count = self.photos.show_sheet(sheet)
        photos = tr(PHOTOS)
        self.photos_tab.setText(f"{photos} ({count})" if count else photos)
        self.lot_buttons["split"].setEnabled(len(sheet.pieces) > 1)
        self.shown.emit(sheet)

    def _lay_out(self) -> None:
        self._tools = QWidget()
        tools = FlowLayout(self._tools, gap=6)
        tools.addWidget(self.steps_tab)
        tools.addWidget(self.journal_tab)
        tools.addWidget(self.photos_tab)
        for slug, text in ACTS:
            made = button(tr(text), kind="quiet")
            made.setProperty("slug", slug)
            made.clicked.connect(self._want)
            self.lot_buttons[slug] = made
            tools.addWidget(made)
        body = _Body()
        body.setObjectName("sheet")
        column = QVBoxLayout(body)
        column.setContentsMargins(20, 12, 20, 16)
        column.setSpacing(5)
        top: tuple[QWidget, ...] = (self.title, self.heading, *self.facts, self.lineage)
        # Each step says its own cautions where it opens; all of them together stand below.
        for widget in (*top, self._tools, self.steps, self.journal, self.photos, self.cautions):
            column.addWidget(widget)
        for words in (self.heading, *self.facts, self.cautions):
            words.hide()
        column.addStretch()
        self.area = scrolled(body, name=tr("The chosen lot"))
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.area)
        self._show_tab(self.steps)

    def _connect(self) -> None:
        self.heading.method_wanted.connect(self.method_wanted)
        self.steps_tab.clicked.connect(self._to_steps)
        self.journal_tab.clicked.connect(self._to_journal)
        self.photos_tab.clicked.connect(self._to_photos)
        self.photos.take_back.connect(self._take_back)
        self.photos.offered.connect(self._scroll_to)
        self.lineage.opened.connect(self.choose)
        self.lineage.opened.connect(self.lot_wanted)
        self._settled.timeout.connect(self._bring_in_sight)
        self.steps.opened.connect(self._scroll_to)
        self.detail.acted.connect(self._act)
        self.detail.moment.changed.connect(self.said.put_away)
        self.detail.amount_changed.connect(self._set_amount)
        self.journal.take_back.connect(self._take_back)
        self.journal.wanted_in_sight.connect(self._bring_part)
        self._bridge.changed.connect(self.on_changed)

    @override
    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if self._sheet is not None and carries_pictures(event.mimeData()):
            event.acceptProposedAction()

    @override
    def dropEvent(self, event: QDropEvent) -> None:
        if self.photos.take(event.mimeData()):
            event.acceptProposedAction()
            self._show_tab(self.photos)

    def _paste(self) -> None:
        """Take a picture that was copied; a field of text keeps the key for itself."""
        if self.photos.take(QGuiApplication.clipboard().mimeData()):
            self._show_tab(self.photos)

    def _to_steps(self) -> None:
        self._show_tab(self.steps)

    def _to_journal(self) -> None:
        self._show_tab(self.journal)

    def _to_photos(self) -> None:
        self._show_tab(self.photos)

    def _show_tab(self, shown: QWidget) -> None:
        tabs = (self.steps_tab, self.steps), (self.journal_tab, self.journal)
        for tab, page in (*tabs, (self.photos_tab, self.photos)):
            tab.setChecked(page is shown)
            page.setVisible(page is shown)

    def _scroll_to(self, widget: QWidget) -> None:
        self._in_sight = widget
        self._settled.start()

    def _bring_in_sight(self) -> None:
        """Scroll once the layout stands, so that row and opened step are seen together."""
        body, widget = self.area.widget(), self._in_sight
        if body is None or widget is None or not isValid(widget):
            return
        top = widget.mapTo(body, QPoint(0, 0)).y()
        bar, room = self.area.verticalScrollBar(), self.area.viewport().height()
        opened = isinstance(widget, StepRow) and widget.step.number == self.steps.chosen
        high = widget.height() + (self.detail.height() if opened else 0)
        lowest = top + high + 12 - room
        if bar.value() > top - 12 or bar.value() < lowest:
            bar.setValue(max(min(lowest, top - 12), 0) if bar.value() < lowest else top - 12)

    def _bring_part(self, part: QRect) -> None:
        """Scroll so that a part of the journal is seen; the list itself never scrolls."""
        body = self.area.widget()
        if body is not None:
            at = self.journal.mapTo(body, part.center())
            self.area.ensureVisible(0, at.y(), 0, part.height() // 2 + ROOM_ABOVE)

    def _want(self) -> None:
        self.act_wanted.emit(str(self.sender().property("slug")))

    def _act(self, act: str, at: datetime | None, note: str) -> None:
        step = self.detail.step
        if step is None:
            return
        said = self._asked_for(step, act, at, note)
        if said is None:
            return
        at, note = said
        self.said.put_away()
        self._bridge.do(
            Mark(self._code, str(step.number), Act(act), at, note, self.detail.readings.values),
            partial(self._acted, self.detail.entry_key),
            failed=self.said.refuse,
            asked=self.said.question,
        )

    def _asked_for(
        self, step: StepLine, act: str, at: datetime | None, note: str
    ) -> tuple[datetime | None, str] | None:
        """Ask for what an act still lacks: a reason to skip, the moment of a plan."""
        if act in ("skip", "stop") and not note:
            words = tr("Why is it skipped?") if act == "skip" else tr("Why does the lot stop here?")
            reason = self._ask.reason(self, f"{self._code}: {step.title}", words)
            return None if reason is None else (at, reason)
        if act == "plan":
            planned = self._ask.moment(
                self, tr("{step}: planned for when?", step=step.title), "next"
            )
            return None if planned is None else (planned, note)
        return at, note

    def _acted(self, key: str, _outcome: Outcome) -> None:
        self.detail.written(key)

    def _set_amount(self, slug: str, value: float) -> None:
        self._bridge.do(
            SetLot(self._code, amounts={slug: value}),
            failed=self.said.refuse,
            asked=self.said.question,
        )

    def _take_back(self, entry: int) -> None:
        self._bridge.do(Undo(self._code, entry))
