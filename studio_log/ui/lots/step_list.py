"""The steps of a lot in order, the chosen one opened under its row."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.services.questions import StepLine
from studio_log.ui.lots.step_detail import StepDetail
from studio_log.ui.lots.step_row import Columns, StepRow, mark_width
from studio_log.ui.widgets.parts import Words

CLOSED = frozenset({"done", "skipped"})
HEADINGS = (
    tr_later("Step"),
    tr_later("Planned"),
    tr_later("Actual, or when"),
    tr_later("Amounts and readings"),
)


def current(steps: Sequence[StepLine]) -> int | None:
    """Give the number of the step to act on: the running one, else the first open one."""
    for state in ("running", "open"):
        for step in steps:
            if step.state == state:
                return step.number
    return steps[-1].number if steps else None


class StepList(QWidget):
    """Rows under a heading; arrows walk, Enter or a click opens."""

    opened = Signal(QWidget)
    """The part that was opened and should be in sight."""

    def __init__(self, detail: StepDetail) -> None:
        super().__init__()
        self.detail = detail
        self.rows: list[StepRow] = []
        self._chosen: int | None = None
        self._states: dict[int, str] = {}
        self._heading = self._make_heading()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 6, 0, 0)
        self._column.setSpacing(1)
        self._column.addWidget(self._heading)
        self._column.addWidget(detail)
        detail.hide()

    @property
    def chosen(self) -> int | None:
        """Number of the open step."""
        return self._chosen

    def forget_choice(self) -> None:
        """Open the current step of whatever comes next."""
        self._chosen = None
        self._states = {}

    def row(self, number: int) -> StepRow | None:
        """Give the row of a step."""
        return next((row for row in self.rows if row.step.number == number), None)

    def show_steps(self, steps: Sequence[StepLine]) -> None:
        """Show these; once the open step is closed the current one opens."""
        if [row.step.number for row in self.rows] != [step.number for step in steps]:
            self._build(steps)
        for row, step in zip(self.rows, steps, strict=True):
            row.show_step(step)
        states = {step.number: step.state for step in steps}
        chosen = self._chosen
        just_closed = (
            chosen is not None
            and states.get(chosen) in CLOSED
            and self._states.get(chosen, "done") not in CLOSED
        )
        self._states = states
        if chosen not in states or just_closed:
            chosen = current(steps)
        self._open(chosen)

    def choose(self, number: int) -> None:
        """Open one step."""
        self._open(number)
        row = self.row(number)
        if row is not None:
            row.setFocus(Qt.FocusReason.OtherFocusReason)
            self.opened.emit(row)

    def focus_current(self) -> None:
        """Give the keyboard to the open row."""
        row = self.row(self._chosen) if self._chosen is not None else None
        if row is not None:
            row.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _open(self, number: int | None) -> None:
        self._chosen = number
        for one in self.rows:
            one.set_chosen(chosen=one.step.number == number)
        row = self.row(number) if number is not None else None
        if row is None:
            self.detail.hide()
            return
        place = self._column.indexOf(row) + 1
        if self._column.indexOf(self.detail) != place:
            self._column.removeWidget(self.detail)
            self._column.insertWidget(self._column.indexOf(row) + 1, self.detail)
            QWidget.setTabOrder(row, self.detail.moment.line)
        self.detail.show_step(row.step)
        self.detail.show()

    def _build(self, steps: Sequence[StepLine]) -> None:
        self._column.removeWidget(self.detail)
        for row in self.rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.rows = [StepRow(step) for step in steps]
        for row in self.rows:
            row.chosen.connect(self.choose)
            row.walked.connect(self._walk)
            self._column.addWidget(row)
        self._column.addWidget(self.detail)
        self._heading.setVisible(bool(steps))

    def _walk(self, way: int) -> None:
        at = next((at for at, row in enumerate(self.rows) if row.hasFocus()), None)
        if at is not None and 0 <= at + way < len(self.rows):
            row = self.rows[at + way]
            row.setFocus(Qt.FocusReason.OtherFocusReason)
            self.opened.emit(row)

    def _make_heading(self) -> QWidget:
        heading = QWidget()
        line = QHBoxLayout(heading)
        line.setContentsMargins(10, 2, 10, 2)
        line.setSpacing(6)
        line.addSpacing(mark_width() + 6)
        first, second, third, fourth = (
            Words(tr(words), tone="soft", size="small", bold=True) for words in HEADINGS
        )
        line.addWidget(Columns((first, second, third, fourth)), 1)
        return heading
