"""The face of the window “Plan”: its parts and where they stand; what they do is `plan_box`."""

from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QDialog,
    QHBoxLayout,
    QProgressBar,
    QPushButton,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.plan.otherwise_page import OtherwisePage
from studio_log.ui.plan.time_sheet import MakeSheet, as_widget
from studio_log.ui.plan.visits_page import VisitsPage
from studio_log.ui.plan.what_if import WhatIf
from studio_log.ui.plan.why_page import WhyPage
from studio_log.ui.plan.wishes_pane import WishesPane
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, one_of, scrolled

PAGES: Final = (tr_later("&Visits"), tr_later("What is &otherwise"), tr_later("Wh&y not better"))
OTHERWISE, WHY = 1, 2
SIDE: Final = 21
"""Width of the left pane, in line heights; never more than two fifths."""
LINES: Final = 6
"""Lines of a page that are seen at least, below the chips."""
SHEET_LINES: Final = 10
"""Height of the plan over time at least, in line heights: its hours and a lot."""
FULL: Final = 1000
"""What the bar of the search counts to."""


class _Split(QSplitter):
    """Asks for no more height than its parts need; where even that is not there, all scrolls."""

    @override
    def sizeHint(self) -> QSize:
        return self.minimumSizeHint()


class _Below(QWidget):
    """The lower part: as high as the lines of its chips and some lines of a page, at least."""

    def __init__(self, turn: FlowLayout) -> None:
        super().__init__()
        self._turn = turn

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.setMinimumHeight(self._turn.heightForWidth(self.width()) + em(self, LINES))


class PlanFace(QDialog):
    """Wishes at the left; at the right the plan over time, above its visits and reasons."""

    def __init__(
        self, bridge: Bridge, make_sheet: MakeSheet, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Plan — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self.pane = WishesPane(bridge)
        self.sheet = make_sheet()
        self.visits, self.why, self.what_if = VisitsPage(), WhyPage(), WhatIf()
        self.otherwise = OtherwisePage()
        self.head = Words(tr("Planning…"), size="large")
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setMaximumHeight(6)
        self.bar.setRange(0, FULL)
        self.bar.setAccessibleName(tr("How far the search is"))
        self.plan_it = button(tr("Pla&n"))
        self.stop = button(tr("&Stop"))
        self.longer = button(tr("Look longe&r"))
        self.unmove = button(tr("&Undo the move"))
        self.unmove.hide()
        self.unfollow = button(tr("Take the followed plan bac&k"))
        self.unfollow.hide()
        self.refollow = button(tr("Follow i&t again"))
        self.refollow.hide()
        self.follow = button(tr("&Follow this plan…"), kind="primary")
        self.copy = button(tr("&Copy the visits"), kind="quiet")
        self.leave = button(tr("Close"))
        self.message = MessageBar(bridge)
        self.turns = QStackedWidget()
        self.chips = self._make_chips()
        self._side = scrolled(self.pane, name=tr("What is wanted, and the studio’s means"))
        self._lay_out()

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._side.setMaximumWidth(max(self._least(), min(em(self, SIDE), self.width() * 2 // 5)))
        self._side.setMinimumWidth(self._least())
        as_widget(self.sheet).setMinimumHeight(em(self, SHEET_LINES))
        self._plan.setMinimumWidth(self._inside.minimumSizeHint().width() + self._bar_width())

    def _least(self) -> int:
        """Give the width below which the left pane is cut; where there is more, it grows."""
        return self.pane.minimumSizeHint().width() + self._bar_width()

    def _bar_width(self) -> int:
        return self._plan.verticalScrollBar().sizeHint().width()

    def show_running(self, *, running: bool) -> None:
        """Show what can be done while it is planned, or after."""
        self.bar.setValue(0)
        self.bar.setVisible(running)
        come = (self.stop,) if running else (self.plan_it, self.longer)
        gone = (self.plan_it, self.longer) if running else (self.stop,)
        held = self.focusWidget() in gone
        for one in come:
            one.show()
        if held:  # else the keyboard would stand on whatever comes next
            come[0].setFocus()
        for one in gone:
            one.hide()

    def offer(self, act: QPushButton, shown: bool, /) -> None:  # noqa: FBT001 - bound to a signal
        """Offer an act, or no more; the keyboard then stands on planning."""
        if not shown and self.focusWidget() is act:
            (self.stop if self.plan_it.isHidden() else self.plan_it).setFocus()
        act.setVisible(shown)

    def count(self, page: int, number: int) -> None:
        """Say on its chip how much stands on a page."""
        words = tr(PAGES[page])
        self.chips.button(page).setText(f"{words} · {number}" if number else words)

    def _make_chips(self) -> QButtonGroup:
        titles = map(tr, PAGES)
        rows = ((at, words, words.replace("&", "")) for at, words in enumerate(titles))
        return one_of(self, rows, chosen=0)

    def _lay_out(self) -> None:
        self._inside = QWidget()
        right = QVBoxLayout(self._inside)
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(8)
        right.addLayout(self._head())
        for widget in (self.head, self.bar, self.what_if, self.message):
            right.addWidget(widget)
        self.split = _Split(Qt.Orientation.Vertical)
        self.split.setChildrenCollapsible(False)
        for at, (part, share) in enumerate(((as_widget(self.sheet), 5), (self._below(), 4))):
            self.split.addWidget(part)
            self.split.setStretchFactor(at, share)
        right.addWidget(self.split, 1)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(12)
        whole.addWidget(self._side, 2)
        self._plan = scrolled(self._inside, name=tr("The plan"))
        whole.addWidget(self._plan, 3)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 92), em(self, 54)).boundedTo(room))

    def _head(self) -> FlowLayout:
        head = FlowLayout(gap=8)
        acts = (self.plan_it, self.longer, self.stop, self.what_if.add, self.unmove)
        for widget in (*acts, growing(Words()), self.unfollow, self.refollow, self.follow):
            head.addWidget(widget)
        return head

    def _below(self) -> QWidget:
        for page in (self.visits, self.otherwise, self.why):
            self.turns.addWidget(page)
        turn = FlowLayout(gap=8)
        chips = (self.chips.button(at) for at in range(len(PAGES)))
        for widget in (*chips, growing(Words()), self.copy, self.leave):
            turn.addWidget(widget)
        below = _Below(turn)
        lower = QVBoxLayout(below)
        lower.setContentsMargins(0, 4, 0, 0)
        lower.setSpacing(6)
        lower.addLayout(turn)
        lower.addWidget(self.turns, 1)
        return below
