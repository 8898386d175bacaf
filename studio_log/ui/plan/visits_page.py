"""The sessions of a plan as days and visits: when to come, and what to do for which lot."""

from collections.abc import Mapping, Sequence
from html import escape
from typing import Final
from urllib.parse import quote, unquote

from PySide6.QtCore import QUrl, Signal, Slot
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFrame, QTextBrowser, QVBoxLayout, QWidget

from studio_log.domain.calendar_words import day_words
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.plan_visits import PlanDay, Visit
from studio_log.present.words import clock
from studio_log.ui.theme.look import theme

EMPTY: Final = tr_later("No plan is made yet. Say what you want at the left, then press “Plan”.")
Moved = frozenset[tuple[str, str]]
"""Acts, as lot and step of the planner, that stand elsewhere than in the plan before."""


class VisitsPage(QWidget):
    """Shows the visits; a lot in them can be chosen."""

    chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._days: Sequence[PlanDay] = ()
        self._zone = "UTC"
        self._names: Mapping[str, str] = {}
        self.sheet = QTextBrowser()
        self.sheet.setOpenLinks(False)
        self.sheet.setFrameShape(QFrame.Shape.NoFrame)
        self.sheet.setAccessibleName(tr("Visits of the plan"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.sheet)
        self.sheet.anchorClicked.connect(self._choose)
        self.show_days((), "UTC", {})

    def show_days(
        self,
        days: Sequence[PlanDay],
        zone: str,
        names: Mapping[str, str],
        moved: Moved = frozenset(),
    ) -> None:
        """Show these days; a lot is called by its name."""
        self._days, self._zone, self._names = days, zone, names
        bar = self.sheet.verticalScrollBar()
        place = bar.value()
        self.sheet.setHtml("".join(self._day(day, moved) for day in days) or f"<p>{tr(EMPTY)}</p>")
        bar.setValue(place)

    def text(self) -> str:
        """Give all of it as lines, for another program."""
        lines: list[str] = []
        for day in self._days:
            lines.append(day_words(day.day))
            for visit in day.visits:
                lines.append(f"  {self._hours(visit)}")
                lines += [
                    f"    {self._name(code)}: {_orders(visit, code)}" for code in visit.by_lot
                ]
        return "\n".join(lines)

    @Slot()
    def copy(self) -> None:
        """Put all of it on the clipboard."""
        QGuiApplication.clipboard().setText(self.text())

    def _day(self, day: PlanDay, moved: Moved) -> str:
        count = counted(len(day.visits), tr_later("{n} visit"), tr_later("{n} visits"))
        soft = theme().colours.soft.name()
        rows = "".join(self._visit(visit, moved) for visit in day.visits)
        return (
            f'<p style="margin:12px 0 2px 0"><b>{escape(day_words(day.day))}</b> '
            f'<span style="color:{soft}">· {escape(count)}</span></p>'
            f'<table cellspacing="0" cellpadding="3" width="100%">{rows}</table>'
        )

    def _visit(self, visit: Visit, moved: Moved) -> str:
        rows, elsewhere = [], tr("(moved)")
        for number, (code, acts) in enumerate(visit.by_lot.items()):
            hours = self._hours(visit) if number == 0 else ""
            told = (
                f'<a href="{quote(code, safe="")}">'
                f"{escape(self._name(code))}</a>: {escape(_orders(visit, code))}"
            )
            if any((one.lot, one.step) in moved for one in acts):
                told = f"{told} <b>{escape(elsewhere)}</b>"
            rows.append(
                f'<tr><td width="110" style="white-space:nowrap">{hours}</td><td>{told}</td></tr>'
            )
        return "".join(rows)

    def _hours(self, visit: Visit) -> str:
        return f"{clock(visit.start, self._zone)}–{clock(visit.end, self._zone)}"

    def _name(self, code: str) -> str:
        return self._names.get(code, code)

    @Slot(QUrl)
    def _choose(self, link: QUrl) -> None:
        self.chosen.emit(unquote(link.toString(QUrl.ComponentFormattingOption.FullyEncoded)))


def _orders(visit: Visit, code: str) -> str:
    """Give what is done for a lot in a visit, each order once: "Spin the cloth, hang it up"."""
    orders = list(dict.fromkeys(one.order for one in visit.by_lot[code]))
    return ", ".join([*orders[:1], *(f"{one[:1].lower()}{one[1:]}" for one in orders[1:])])
