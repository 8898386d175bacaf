"""The steps of a draft as a list: chosen, added, repeated, moved and taken out by keys."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Final

from PySide6.QtCore import QItemSelectionModel, QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPixmap, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.method_steps import (
    with_new_step,
    with_steps_moved,
    with_steps_repeated,
    without_steps,
)
from studio_log.domain.method_text import MethodDraft
from studio_log.domain.methods import MethodStep, StepKind
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import button, em

HEAD, CURE = -1, -2
"""What a row stands for, where it is no step."""
_Row = tuple[int, str, str, StepKind | None]
"""What it stands for, its name, what is said beneath, the kind of step."""
_ALT: Final = Qt.KeyboardModifier.AltModifier
_CTRL: Final = Qt.KeyboardModifier.ControlModifier
_NONE: Final = Qt.KeyboardModifier.NoModifier
_KEYS: Final[Mapping[tuple[Qt.KeyboardModifier, int], str]] = {
    (_NONE, Qt.Key.Key_Insert): "add",
    (_NONE, Qt.Key.Key_Delete): "out",
    (_CTRL, Qt.Key.Key_D): "repeat",
    (_ALT, Qt.Key.Key_Up): "up",
    (_ALT, Qt.Key.Key_Down): "down",
}


class _List(QListWidget):
    """The rows; Enter goes on to the fields."""

    keyed = Signal(str)
    entered = Signal()

    def fit(self) -> None:
        """Make each row as high as its words need at this width."""
        letters = self.fontMetrics()
        beside = em(self) // 3 + 2 * theme().metrics.m + theme().metrics.l
        room = QRect(0, 0, max(self.viewport().width() - beside, em(self, 3)), 10_000)
        for row in range(self.count()):
            item = self.item(row)
            high = letters.boundingRect(room, Qt.TextFlag.TextWordWrap, item.text()).height()
            item.setSizeHint(QSize(0, high + 2 * theme().metrics.s + 2))

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fit()

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        plain = event.modifiers() & (_ALT | _CTRL)
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.entered.emit()
        elif act := _KEYS.get((plain, event.key())):
            self.keyed.emit(act)
        else:
            super().keyPressEvent(event)


class StepRows(QWidget):
    """The head, each step and the cure; the buttons beneath change the steps."""

    chosen = Signal(int)
    """Number of the step from 0, or HEAD, or CURE."""
    wanted = Signal(object, str)
    entered = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.list = _List()
        self.list.setAccessibleName(tr("Steps of the method"))
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._acts: dict[str, Callable[[], None]] = {
            "add": self._add,
            "out": self._out,
            "repeat": self._repeat,
            "up": partial(self._move, -1),
            "down": partial(self._move, 1),
        }
        self.buttons = {
            act: button(text, says=says)
            for act, text, says in (
                ("add", tr("&Add"), tr("Add a step after this one")),
                ("repeat", tr("&Repeat"), tr("Repeat these steps after them")),
                ("up", tr("&Up"), tr("Move these steps up")),
                ("down", tr("&Down"), tr("Move these steps down")),
                ("out", tr("Ta&ke out"), tr("Take these steps out")),
            )
        }
        tips = ("Insert", "Ctrl+D", "Alt+Up", "Alt+Down", "Delete")
        below = FlowLayout(gap=6)
        for (act, made), key in zip(self.buttons.items(), tips, strict=True):
            made.setToolTip(tr("{act} ({key} in the list)", act=made.accessibleName(), key=key))
            made.clicked.connect(self._acts[act])
            below.addWidget(made)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.list, 1)
        column.addLayout(below)
        self.list.currentRowChanged.connect(self._row_changed)
        self.list.itemSelectionChanged.connect(self._allow)
        self.list.keyed.connect(self._keyed)
        self.list.entered.connect(self.entered)

    @property
    def place(self) -> int:
        """What is chosen: a step's number from 0, HEAD or CURE."""
        item = self.list.currentItem()
        return HEAD if self.list.currentRow() < 0 else int(item.data(Qt.ItemDataRole.UserRole))

    def show_draft(self, draft: MethodDraft) -> None:
        """Show the steps as they stand; what was chosen stays chosen by its place."""
        method = draft.method
        if method is None:
            return
        no_name = tr("No name")
        rows: list[_Row] = [(HEAD, tr("The method"), _tally(_count(draft, (), steps=False)), None)]
        rows += [
            (at, f"{at + 1}. {step.title or step.slug or no_name}",
             _below(step, _count(draft, ("steps", at))), step.kind)
            for at, step in enumerate(method.steps)
        ]  # fmt: skip
        if method.cure is not None or any(one.kind is StepKind.CURE for one in method.steps):
            rows.append((CURE, tr("Views of the cure"), _tally(_count(draft, ("cure",))), None))
        row = self.list.currentRow()
        self.list.blockSignals(True)
        while self.list.count() > len(rows):
            self.list.takeItem(self.list.count() - 1)
        for number, one in enumerate(rows):
            self._show_row(number, one)
        if self.list.currentRow() != min(max(row, 0), len(rows) - 1):
            self._set_row(min(max(row, 0), len(rows) - 1))
        self.list.blockSignals(False)
        self.list.fit()
        self._allow()

    def choose(self, place: int) -> None:
        """Choose a step by its number, or HEAD, or CURE."""
        for row in range(self.list.count()):
            if self.list.item(row).data(Qt.ItemDataRole.UserRole) == place:
                self._set_row(row)

    def step(self, by: int) -> None:
        """Choose the row before or after, where there is one."""
        row = self.list.currentRow() + by
        if 0 <= row < self.list.count():
            self._set_row(row)

    def _set_row(self, row: int) -> None:
        self.list.setCurrentRow(row, QItemSelectionModel.SelectionFlag.ClearAndSelect)

    def _show_row(self, number: int, row: _Row) -> None:
        place, title, below, kind = row
        item = self.list.item(number) if number < self.list.count() else QListWidgetItem(self.list)
        item.setText(f"{title}\n{below}" if below else title)
        item.setData(Qt.ItemDataRole.UserRole, place)
        item.setIcon(_swatch(theme().kind(kind).fill, em(self)) if kind else QPixmap())

    def _row_changed(self, row: int) -> None:
        if row >= 0:
            self.chosen.emit(self.place)

    def _run(self) -> tuple[int, int] | None:
        """Give the first and the last chosen step; None where no step is."""
        places = [int(one.data(Qt.ItemDataRole.UserRole)) for one in self.list.selectedItems()]
        steps = sorted(place for place in places if place >= 0)
        return (steps[0], steps[-1]) if steps else None

    def _steps(self) -> int:
        rows = (self.list.item(row) for row in range(self.list.count()))
        return sum(int(one.data(Qt.ItemDataRole.UserRole)) >= 0 for one in rows)

    def _allow(self) -> None:
        run, steps = self._run(), self._steps()
        allowed = {
            "add": True,
            "repeat": run is not None,
            "up": run is not None and run[0] > 0,
            "down": run is not None and run[1] < steps - 1,
            "out": run is not None and run[1] - run[0] + 1 < steps,
        }
        for act, made in self.buttons.items():
            made.setEnabled(allowed[act])

    def _keyed(self, act: str) -> None:
        if self.buttons[act].isEnabled():
            self._acts[act]()

    def _add(self) -> None:
        run = self._run()
        at = run[1] + 1 if run else (self._steps() if self.place == CURE else 0)
        self.wanted.emit(lambda text: with_new_step(text, at), "")
        self.choose(at)
        self.entered.emit()

    def _out(self) -> None:
        if run := self._run():
            self.wanted.emit(lambda text: without_steps(text, *run), "")
            self.choose(min(run[0], self._steps() - 1))
            self._row_changed(self.list.currentRow())

    def _repeat(self) -> None:
        if run := self._run():
            self.wanted.emit(lambda text: with_steps_repeated(text, *run), "")
            self._choose_run(run[1] + 1, 2 * run[1] - run[0] + 1)

    def _move(self, by: int) -> None:
        if run := self._run():
            self.wanted.emit(lambda text: with_steps_moved(text, *run, by), "")
            self._choose_run(run[0] + by, run[1] + by)

    def _choose_run(self, first: int, last: int) -> None:
        self.choose(first)
        self.list.clearSelection()
        for row in range(self.list.count()):
            item = self.list.item(row)
            item.setSelected(first <= int(item.data(Qt.ItemDataRole.UserRole)) <= last)


def _below(step: MethodStep, faults: int) -> str:
    if faults:
        return _tally(faults)
    return (
        words.window_words(step.lasts) if step.lasts is not None else tr("by the view of the cure")
    )


def _tally(faults: int) -> str:
    return tr("{n} to mend", n=faults) if faults else ""


def _count(draft: MethodDraft, base: tuple[str | int, ...], *, steps: bool = True) -> int:
    """Count the faults of a block; of the head those that lie in no other."""
    return sum(
        fault.path[: len(base)] == base
        and (steps or not (fault.path[:1] == ("cure",) or len(fault.path) > 1))
        for fault in draft.faults
    )


def _swatch(colour: QColor, side: int) -> QPixmap:
    made = QPixmap(QSize(side // 3, side))
    made.fill(colour)
    return made
