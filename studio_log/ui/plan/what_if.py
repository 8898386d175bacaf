"""What if: changes tried on a copy of the studio, each a chip that takes it back."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any, Final

from PySide6.QtCore import QDate, Qt, Signal, Slot
from PySide6.QtWidgets import (
    QDialog,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.calendar_words import day_words
from studio_log.language.words import tr
from studio_log.planning.vessel_words import vessel_words
from studio_log.services.plan import PlanSetup
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.month import month_ahead
from studio_log.ui.widgets.parts import Words, button, emptied

Change = Mapping[str, Any]
"""As the planner reads it: an object with `change` and what it asks for."""
LINE_M: Final = 4
EVENING: Final = ("19:00", "21:00")


@dataclass(frozen=True)
class Tried:
    """What is tried in one go, and its words."""

    words: str
    changes: tuple[Change, ...]


def offers(setup: PlanSetup) -> list[Tried]:
    """Give what can be tried without asking more."""
    litres = max((one.litres for one in setup.vessels if one.kind == "bucket"), default=20.0)
    found = [
        Tried(
            tr("one more bucket of {litres:g} L", litres=litres),
            ({"change": "add_vessel", "kind": "bucket", "litres": litres},),
        )
    ]
    vessels = setup.problem["resources"]["vessels"]
    if vessels:
        last = max(vessels, key=lambda one: sum(one["kind"] == two["kind"] for two in vessels))
        found.append(
            Tried(
                tr(
                    "without {vessel} ({litres:g} L)",
                    vessel=vessel_words(last["id"]),
                    litres=last["litres"],
                ),
                ({"change": "remove_vessel", "vessel": last["id"]},),
            )
        )
    if setup.problem["resources"]["line_m"]:
        found.append(
            Tried(tr("{n} m more line", n=LINE_M), ({"change": "more_line", "metres": LINE_M},))
        )
    if setup.problem["resources"]["burners"]:
        found.append(Tried(tr("one more burner"), ({"change": "more_burners", "burners": 1},)))
    days = ["mon", "tue", "wed", "thu", "fri"]
    begins, ends = EVENING
    found.append(
        Tried(
            tr("weekday evenings {begins}–{ends}", begins=begins, ends=ends),
            ({"change": "add_hours", "days": days, "from": begins, "to": ends},),
        )
    )
    return found


class DayBox(QDialog):
    """Asks for a day."""

    def __init__(self, title: str, first: QDate, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.calendar = month_ahead(first)
        buttons = Answers(tr("&Try it"))
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self.calendar.activated.connect(self.accept)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 14, 16, 12)
        column.setSpacing(10)
        column.addWidget(self.calendar)
        column.addWidget(buttons)


class WhatIf(QWidget):
    """Holds the changes that are tried; says when they change."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.tried: list[Tried] = []
        self._setup: PlanSetup | None = None
        self.add = button(tr("What &if…"))
        self.menu = QMenu(self.add)
        self.menu.setAccessibleName(tr("What if"))
        self.add.setMenu(self.menu)
        self.said = Words(tr("Tried on a copy, the studio stays as it is:"), tone="ochre_ink")
        self._chips = QWidget()
        self._flow = FlowLayout(gap=6)
        self._chips.setLayout(self._flow)
        self.dialog: DayBox | None = None
        self.menu.aboutToShow.connect(self._fill)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(self.said)
        column.addWidget(self._chips)
        self._show()

    @property
    def changes(self) -> list[Change]:
        """The changes, in order, as the planner reads them."""
        return [change for one in self.tried for change in one.changes]

    def show_setup(self, setup: PlanSetup) -> None:
        """Take what the studio has, for what can be offered."""
        self._setup = setup

    def take(self, tried: Tried) -> None:
        """Try one thing more."""
        if tried not in self.tried:
            self.tried.append(tried)
        self._show()
        self.changed.emit()

    def forget(self) -> None:
        """Try nothing any more, and say nothing of it."""
        self.tried = []
        self._show()

    @Slot()
    def clear(self) -> None:
        """Try nothing any more."""
        if self.tried:
            self.forget()
            self.changed.emit()

    def ask_day(self, title: str, made: Callable[[QDate], Tried]) -> None:
        """Ask for a day and try what is made of it."""
        start = str(self._setup.problem["start"]) if self._setup is not None else ""
        first = QDate.fromString(start[:10], "yyyy-MM-dd")
        self.dialog = DayBox(title, first, self)
        dialog = self.dialog
        dialog.accepted.connect(lambda: self.take(made(dialog.calendar.selectedDate())))
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.open()

    def _fill(self) -> None:
        self.menu.clear()
        self.menu.addAction(tr("Close a &day…"), partial(self.ask_day, tr("Close a day"), closed))
        self.menu.addAction(
            tr("&Come in on a day…"), partial(self.ask_day, tr("Come in on a day"), opened)
        )
        self.menu.addSeparator()
        for one in offers(self._setup) if self._setup is not None else ():
            self.menu.addAction(f"{one.words[:1].upper()}{one.words[1:]}", partial(self.take, one))

    def _show(self) -> None:
        emptied(self._flow)
        for number, one in enumerate(self.tried):
            self._flow.addWidget(self._chip(number, one))
        if len(self.tried) > 1:
            self._flow.addWidget(self._button(tr("Take all back"), self.clear))
        self.setVisible(bool(self.tried))

    def _chip(self, number: int, one: Tried) -> QPushButton:
        made = self._button(f"{one.words}  ✕", partial(self._drop, number))
        made.setAccessibleName(tr("Take back: {words}", words=one.words))
        return made

    def _button(self, words: str, act: Callable[[], object]) -> QPushButton:
        made = button(words)
        made.setObjectName("chip")
        made.clicked.connect(act)
        return made

    def _drop(self, number: int) -> None:
        del self.tried[number]
        self._show()
        self.changed.emit()


def closed(day: QDate) -> Tried:
    """Close a day."""
    words = tr("closed on {day}", day=day_words(day.toPython()))  # type: ignore[arg-type]
    return Tried(words, ({"change": "close_day", "date": day.toString("yyyy-MM-dd")},))


def opened(day: QDate) -> Tried:
    """Come in on a day from nine to five, whatever its hours."""
    words = tr("in on {day}, 09:00–17:00", day=day_words(day.toPython()))  # type: ignore[arg-type]
    date = day.toString("yyyy-MM-dd")
    return Tried(words, ({"change": "add_session", "date": date, "from": "09:00", "to": "17:00"},))
