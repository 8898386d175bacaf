"""The bench: what needs hands now, what comes later, and what can be taken back."""

from datetime import datetime, timedelta
from functools import partial
from typing import Final

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QApplication, QFrame, QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import AnswerReminder, Outcome, Undo
from studio_log.services.questions import Bench, BenchFor, Card
from studio_log.ui.ask import Ask
from studio_log.ui.bench.card_view import CardView
from studio_log.ui.bench.later_rows import LaterRows
from studio_log.ui.bridge import FOREIGN, Bridge, Doubt
from studio_log.ui.chime import Chime
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, scrolled
from studio_log.ui.widgets.wrap_button import WrapButton

NOTHING: Final = tr_later("Nothing needs hands just now.")
NO_TAKE_BACK: Final = tr_later("Nothing to take back")
TEN_MINUTES: Final = timedelta(minutes=10)


class BenchPage(QWidget):
    """Right in the window; every answer is one click, and one click takes it back."""

    lot_wanted = Signal(str, object)
    shown = Signal(object)
    """A Bench, whenever it was asked for anew."""

    def __init__(
        self, bridge: Bridge, ask: Ask, chime: Chime, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setObjectName("side")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._bridge = bridge
        self._ask = ask
        self._chime = chime
        self._bench: Bench | None = None
        self._views: dict[str, CardView] = {}
        self._ended: set[str] = set()
        self.count = Words(tone="soft", size="small")
        self.nothing = Words(tone="soft")
        self.later = LaterRows(tr("Later today"))
        self.tonight = LaterRows(tr("Tonight and tomorrow morning"))
        self.further = LaterRows(tr("Further on"))
        self.next_words = Words(tone="soft")
        self.quiet_words = Words(tone="soft")
        self.take_back = WrapButton(tr(NO_TAKE_BACK))
        self._cards = QVBoxLayout()
        self._lay_out()
        self._second = QTimer(self, interval=1000)
        self._second.timeout.connect(self.tick)
        self.take_back.clicked.connect(self.take_last_back)
        bridge.changed.connect(self.on_changed)

    @property
    def views(self) -> tuple[CardView, ...]:
        """The cards for now, top first."""
        if self._bench is None:
            return ()
        return tuple(self._views[card.key] for card in self._bench.now if card.key in self._views)

    def refresh(self) -> None:
        """Ask what needs hands."""
        self._bridge.ask(BenchFor(), self.show_bench)

    def on_changed(self, outcome: Outcome) -> None:
        """Ask again where a change touches what needs hands."""
        touched = outcome.lots or outcome.milks
        if outcome is FOREIGN or touched or outcome.reminders or outcome.settings:
            self.refresh()

    def show_bench(self, bench: Bench) -> None:
        """Show it; cards that stay keep their place under the hand."""
        before, self._bench = self._bench, bench
        had_focus = self._holds_focus()
        if before is None or before.now != bench.now:
            self._show_cards(bench.now)
        else:
            for view in self._views.values():
                view.set_waiting(waiting=False)
        self._show_rest(bench)
        self._count_down()
        if had_focus and self.views and not self._holds_focus():
            self.views[0].answer.setFocus(Qt.FocusReason.OtherFocusReason)
        self.shown.emit(bench)

    def answer_top(self) -> bool:
        """Answer the top card that rings, else the top card; False where there is none."""
        view = self.top()
        if view is None:
            return False
        self.answer(view.card.key)
        return True

    def top(self) -> CardView | None:
        """Give the card that Space answers, None for none."""
        free = [view for view in self.views if not view.waiting]
        ringing = [view for view in free if view.card.raised]
        return next(iter(ringing or free), None)

    def answer(self, key: str, answer: str = "done", at: datetime | None = None) -> None:
        """Send one answer of a card."""
        self._send(AnswerReminder(key, answer, at))

    def put_off(self, key: str, span: timedelta | None) -> None:
        """Put one reminder off by a span; None: until the next morning."""
        self._send(AnswerReminder(key, "putoff", put_off=span, until_morning=span is None))

    def put_all_off(self) -> None:
        """Put off everything that is on the bench, ten minutes."""
        for view in self.views:
            self.put_off(view.card.key, TEN_MINUTES)

    def take_last_back(self) -> None:
        """Take back the last act, while it can be."""
        if self._bench is not None and self._bench.take_back is not None:
            self.take_back.setEnabled(False)
            subject = self._bench.take_back.subject
            self._bridge.do(Undo(subject), failed=self._take_back_failed)

    def tick(self) -> None:
        """Count every running countdown down; chime once as each ends."""
        now = self._bridge.now()
        for view in self.views:
            if view.tick(now) and view.card.key not in self._ended:
                self._ended.add(view.card.key)
                self._chime.sound("ends")

    @property
    def counting(self) -> bool:
        """Whether a countdown runs."""
        return self._second.isActive()

    def focus_top(self) -> None:
        """Give the keyboard to the top card, or to the bench itself."""
        view = self.top()
        target: QWidget = view.answer if view is not None else self.take_back
        target.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _lay_out(self) -> None:
        head = FlowLayout(gap=10)
        head.addWidget(growing(Words(tr("At the bench"), size="title", bold=True)))
        self.count.setWordWrap(False)
        head.addWidget(self.count)
        body = QWidget()
        body.setObjectName("side")
        inner = QVBoxLayout(body)
        inner.setContentsMargins(14, 2, 14, 14)
        inner.setSpacing(10)
        self._cards.setSpacing(12)
        inner.addLayout(self._cards)
        rows = (self.later, self.tonight, self.further)
        for widget in (self.nothing, self.next_words, *rows, self.quiet_words):
            inner.addWidget(widget)
        inner.addStretch()
        foot = QVBoxLayout()
        foot.setContentsMargins(14, 8, 14, 12)
        foot.addWidget(self.take_back)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        top = QVBoxLayout()
        top.setContentsMargins(16, 14, 16, 10)
        top.addLayout(head)
        column.addLayout(top)
        column.addWidget(scrolled(body, name=tr("At the bench")), 1)
        rule = QFrame()
        rule.setObjectName("rule")
        column.addWidget(rule)
        column.addLayout(foot)

    def _show_cards(self, cards: tuple[Card, ...]) -> None:
        kept = {card.key for card in cards}
        for key in [key for key in self._views if key not in kept]:
            view = self._views.pop(key)
            self._cards.removeWidget(view)
            view.hide()
            view.deleteLater()
        self._ended &= kept
        for place, card in enumerate(cards):
            view = self._views.get(card.key) or self._new_view(card)
            view.show_card(card)
            if self._cards.indexOf(view) != place:
                self._cards.removeWidget(view)
                self._cards.insertWidget(place, view)

    def _new_view(self, card: Card) -> CardView:
        view = self._views[card.key] = CardView(card)
        view.done.connect(self.answer)
        view.second.connect(self._damp)
        view.put_off.connect(self.put_off)
        view.timed.connect(self._at_a_time)
        view.skipped.connect(self._skip)
        view.lot_wanted.connect(self.lot_wanted)
        return view

    def _show_rest(self, bench: Bench) -> None:
        now, zone = self._bridge.now(), self._bridge.zone()
        today = len(bench.later)
        due = tr("{count} due", count=len(bench.now)) if bench.now else tr("nothing due")
        self.count.setText(
            tr("{due} · {today} later today", due=due, today=today) if today else due
        )
        self.nothing.show_words("" if bench.now else tr(NOTHING))
        self.later.show_cards(bench.later, now, zone)
        self.tonight.show_cards(bench.tonight, now, zone)
        self.further.show_cards(bench.further, now, zone)
        self.next_words.show_words(bench.next_words)
        self.quiet_words.show_words(bench.quiet_words)
        back = bench.take_back if bench.take_back and bench.take_back.until > now else None
        self.take_back.setEnabled(back is not None)
        self.take_back.setText(
            tr("Take back: {words}", words=back.words) if back else tr(NO_TAKE_BACK)
        )
        self.take_back.updateGeometry()

    def _count_down(self) -> None:
        if any(view.card.countdown_to for view in self.views):
            self.tick()
            self._second.start()
        else:
            self._second.stop()

    def _holds_focus(self) -> bool:
        widget = QApplication.focusWidget()
        return isinstance(widget, QWidget) and self.isAncestorOf(widget)

    def _send(self, command: AnswerReminder) -> None:
        view = self._views.get(command.key)
        if view is not None:
            view.set_waiting(waiting=True)
        self._bridge.do(
            command,
            failed=partial(self._failed, command.key),
            asked=partial(self._asked, command.key),
        )

    def _failed(self, key: str, words: str) -> None:
        self._free(key)
        if words:
            self._bridge.refused.emit(words)

    def _asked(self, key: str, doubt: Doubt) -> None:
        self._free(key)
        self._bridge.questioned.emit(doubt)

    def _free(self, key: str) -> None:
        view = self._views.get(key)
        if view is not None:
            view.set_waiting(waiting=False)

    def _take_back_failed(self, words: str) -> None:
        self.take_back.setEnabled(True)
        if words:
            self._bridge.refused.emit(words)

    def _damp(self, key: str) -> None:
        self.answer(key, "damp")

    def _at_a_time(self, key: str) -> None:
        card = self._views[key].card
        at = self._ask.moment(
            self, tr("{lot}: {answer}, at what time?", lot=card.lot, answer=card.answer), "past"
        )
        if at is not None:
            self.answer(key, at=at)

    def _skip(self, key: str) -> None:
        card = self._views[key].card
        reason = self._ask.reason(
            self,
            tr("{lot}: skip “{title}”", lot=card.lot, title=card.title),
            tr("Why is it skipped?"),
        )
        if reason is not None:
            self._send(AnswerReminder(key, "skip", note=reason))
