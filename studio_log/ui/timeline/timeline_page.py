"""The timeline with its heading, its buttons and its legend."""

from collections.abc import Sequence
from datetime import datetime
from html import escape

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.present.lanes import Closed, Lane, Night
from studio_log.present.timeline_shared import SharedRow
from studio_log.present.timeline_shared_words import clash_story
from studio_log.ui.theme import dress_button, dress_label, theme
from studio_log.ui.timeline.legend import Legend
from studio_log.ui.timeline.sheet_scroll import ZOOM_STEP
from studio_log.ui.timeline.timeline_view import TimelineView

_OPEN = tr_later("Open all folds")
_FOLD = tr_later("Fold all")
HINT = tr_later("quiet stretches are pleated; click a pleat to open it")
LINES_TIP = tr_later("Show who uses vessels, drying line and heat, and where lots meet (L)")


class TimelinePage(QWidget):
    """Steps over time."""

    lot_chosen = Signal(str)
    step_chosen = Signal(str, int)
    plan_wanted = Signal(str, int, object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("sheet", True)
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.view = TimelineView(self)
        self.legend = Legend(self)
        self.heading = QLabel(tr("Steps over time"))
        self.hint = QLabel(tr(HINT))
        self.lines_button = QPushButton(tr("Lines"))
        self.lines_button.setCheckable(True)
        self.now_button = QPushButton(tr("Now"))
        self.out_button = QPushButton("−")
        self.in_button = QPushButton("+")
        self.folds_button = QPushButton(tr(_OPEN))
        self._dress()
        self._arrange()
        self._connect()

    def show_lanes(
        self, lanes: Sequence[Lane], nights: Sequence[Night], now: datetime, zone: str
    ) -> None:
        """Show lots; see `TimelineView.show_lanes`."""
        self.view.show_lanes(lanes, nights, now, zone)
        self.legend.show_signs(self.view.signs())
        self.hint.setText(self.view.cut_words or tr(HINT))
        self._fit_hint()

    def show_around(
        self, closed: Sequence[Closed], shared: Sequence[SharedRow], *, left_out: int = 0
    ) -> None:
        """Take what stands around the lots; see `TimelineView.show_around`."""
        self.view.show_around(closed, shared, left_out=left_out)
        self.lines_button.setEnabled(bool(shared))
        ahead = [clash_story(row, one) for row in shared for one in row.clashes]
        self.lines_button.setText(tr("Lines · {count}", count=len(ahead)) if ahead else tr("Lines"))
        count = tr("1 time") if len(ahead) == 1 else tr("{count} times", count=len(ahead))
        told = (
            tr("Lots meet {count}; the first: {first} ", count=count, first=ahead[0])
            if ahead
            else ""
        )
        self.lines_button.setToolTip(f"<qt>{escape(told + tr(LINES_TIP))}</qt>")
        self.lines_button.setAccessibleDescription(told)

    def be_part(self) -> None:
        """Be the part of a page that says itself what this shows, in little room."""
        self.legend.hide()
        self.heading.hide()
        gap = theme().metrics.m
        self._whole.setContentsMargins(gap, gap, gap, gap)

    def toggle_lines(self) -> None:
        """Show the rows for vessels, line and heat, or put them away."""
        self.lines_button.toggle()

    def set_now(self, now: datetime) -> None:
        """Move the now line."""
        self.view.set_now(now)

    def choose(self, code: str) -> None:
        """Highlight a lot."""
        self.view.choose(code)

    def wanted_height(self) -> int:
        """Give the height in pixels that shows every lane, the buttons and the legend."""
        around = self.height() - self.view.height()
        return around + self.view.wanted_height()

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_hint()

    def _dress(self) -> None:
        dress_label(self.heading, "title")
        dress_label(self.hint, "small")
        for button, name, tip in (
            (self.lines_button, tr("Lines for vessels, drying line and heat"), tr(LINES_TIP)),
            (self.now_button, tr("Find now"), tr("Find now (N)")),
            (self.out_button, tr("Zoom out"), tr("Zoom out (−)")),
            (self.in_button, tr("Zoom in"), tr("Zoom in (+)")),
            (self.folds_button, tr(_OPEN), tr("Open or fold every pleat")),
        ):
            button.setAccessibleName(name)
            button.setToolTip(tip)
            dress_button(button, "plain")
        self.heading.setBuddy(self.view)
        # It hides where it would be cut, and must not keep the page wide by itself.
        self.hint.setMinimumWidth(1)

    def _arrange(self) -> None:
        metrics = theme().metrics
        top = QHBoxLayout()
        top.setSpacing(metrics.m)
        top.addWidget(self.heading)
        top.addWidget(self.hint)
        top.addStretch(1)
        for button in self._buttons():
            top.addWidget(button)
        whole = self._whole = QVBoxLayout(self)
        whole.setContentsMargins(metrics.xl, metrics.l, metrics.xl, metrics.m)
        whole.setSpacing(metrics.m)
        whole.addLayout(top)
        whole.addWidget(self.view, 1)
        whole.addWidget(self.legend)

    def _buttons(self) -> tuple[QPushButton, ...]:
        return (
            self.lines_button,
            self.now_button,
            self.out_button,
            self.in_button,
            self.folds_button,
        )

    def _connect(self) -> None:
        self.lines_button.toggled.connect(self.view.show_shared)
        self.view.shared_toggled.connect(self._lines_shown)
        self.view.lot_chosen.connect(self.lot_chosen)
        self.view.step_chosen.connect(self.step_chosen)
        self.view.plan_wanted.connect(self.plan_wanted)
        self.view.folds_changed.connect(self._tell_folds)
        self.now_button.clicked.connect(self._find_now)
        self.in_button.clicked.connect(self._zoom_in)
        self.out_button.clicked.connect(self._zoom_out)
        self.folds_button.clicked.connect(self._toggle_folds)

    @Slot(bool)
    def _lines_shown(self, shown: bool) -> None:  # noqa: FBT001 - a signal's value
        self.lines_button.setChecked(shown)
        self.legend.show_signs(self.view.signs())

    @Slot()
    def _find_now(self) -> None:
        self.view.find_now()

    @Slot()
    def _zoom_in(self) -> None:
        self.view.zoom_here(ZOOM_STEP)

    @Slot()
    def _zoom_out(self) -> None:
        self.view.zoom_here(1 / ZOOM_STEP)

    @Slot()
    def _toggle_folds(self) -> None:
        self.view.toggle_all_folds()

    @Slot()
    def _tell_folds(self) -> None:
        pleats = self.view.pleats
        text = tr(_FOLD) if pleats and self.view.all_folds_open else tr(_OPEN)
        self.folds_button.setText(text)
        self.folds_button.setAccessibleName(text)
        any_lanes = not self.view.is_empty
        for button in (self.now_button, self.out_button, self.in_button):
            button.setEnabled(any_lanes)
        self.folds_button.setEnabled(any_lanes and bool(pleats))
        self._fit_hint()

    def _fit_hint(self) -> None:
        """Show the hint only where it is not cut."""
        widths = sum(button.sizeHint().width() for button in self._buttons())
        taken = self.heading.sizeHint().width() + widths
        gaps = 8 * theme().metrics.xl
        self.hint.setVisible(taken + self.hint.sizeHint().width() + gaps <= self.width())
