"""The sessions of a plan as days and visits: when to come, and what to do for which lot."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from html import escape
from typing import Final
from urllib.parse import quote, unquote

from PySide6.QtCore import QUrl, Signal, Slot
from PySide6.QtGui import QFontMetrics, QGuiApplication
from PySide6.QtWidgets import QFrame, QTextBrowser, QVBoxLayout, QWidget

from studio_log.language.calendar_words import day_words
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.plan_visits import HandsOn, PlanDay, Tended
from studio_log.present.words import clock
from studio_log.ui.theme.look import theme

EMPTY: Final = tr_later("No plan is made yet. Say what you want at the left, then press “Plan”.")
WIDEST: Final = "00:00–00:00  "
"""What the column of hours has room for."""
Moved = frozenset[tuple[str, str]]
"""Acts, as lot and step of the planner, that stand elsewhere than in the plan before."""


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a day: when, for which lot, what; calm where no visit is made for it."""

    start: datetime
    hours: str
    lot: str
    words: str
    moved: bool = False
    calm: bool = False


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
            lines += [
                f"  {one.hours} {self._name(one.lot)}: {one.words}" for one in self._rows(day)
            ]
        return "\n".join(lines)

    @Slot()
    def copy(self) -> None:
        """Put all of it on the clipboard."""
        QGuiApplication.clipboard().setText(self.text())

    def _day(self, day: PlanDay, moved: Moved) -> str:
        rows = "".join(self._line(one) for one in self._rows(day, moved))
        soft = theme().colours.soft.name()
        count = len(day.visits)
        said = counted(count, tr_later("{n} visit"), tr_later("{n} visits"))
        told = f' <span style="color:{soft}">· {escape(said)}</span>' if count else ""
        return (
            f'<p style="margin:12px 0 2px 0"><b>{escape(day_words(day.day))}</b>{told}</p>'
            f'<table cellspacing="0" cellpadding="3" width="100%">{rows}</table>'
        )

    def _line(self, row: Row) -> str:
        link = f'<a href="{quote(row.lot, safe="")}">{escape(self._name(row.lot))}</a>'
        told = f"{link}: {escape(row.words)}"
        if row.moved:
            elsewhere = escape(tr("(moved)"))
            told = f"{told} <b>{elsewhere}</b>"
        ink = f"color:{theme().colours.soft.name()}" if row.calm else ""
        wide = QFontMetrics(self.sheet.font()).horizontalAdvance(WIDEST)
        return (
            f'<tr><td width="{wide}" style="white-space:nowrap;{ink}">{row.hours}</td>'
            f'<td style="{ink}">{told}</td></tr>'
        )

    def _rows(self, day: PlanDay, moved: Moved = frozenset()) -> list[Row]:
        """Give a day's lines in order of time."""
        rows = [*self._visits(day, moved), *map(self._tended, day.tended)]
        return sorted(rows, key=lambda one: one.start)

    def _visits(self, day: PlanDay, moved: Moved) -> Iterator[Row]:
        """Give a line for what is done for one lot in a row; the first says how long one is in."""
        for visit in day.visits:
            for number, acts in enumerate(visit.runs):
                start = acts[0].start
                hours = clock(start, self._zone)
                if number == 0:
                    hours = f"{hours}–{clock(visit.end, self._zone)}"
                elsewhere = any((one.lot, one.step) in moved for one in acts)
                yield Row(start, hours, acts[0].lot, _orders(acts), elsewhere)

    def _tended(self, one: Tended) -> Row:
        act = f"{one.act[:1].lower()}{one.act[1:]}"
        many = tr(
            "{act}, {n} times until {at}", act=act, n=one.times, at=clock(one.end, self._zone)
        )
        words = many if one.times > 1 else act
        return Row(one.start, clock(one.start, self._zone), one.lot, words, calm=True)

    def _name(self, code: str) -> str:
        return self._names.get(code, code)

    @Slot(QUrl)
    def _choose(self, link: QUrl) -> None:
        self.chosen.emit(unquote(link.toString(QUrl.ComponentFormattingOption.FullyEncoded)))


def _orders(acts: Sequence[HandsOn]) -> str:
    """Give what is done, each order once: "Spin the cloth, hang it up"."""
    orders = list(dict.fromkeys(one.order for one in acts))
    return ", ".join([*orders[:1], *(f"{one[:1].lower()}{one[1:]}" for one in orders[1:])])
