"""A month to choose a day in."""

from datetime import date
from typing import Final

from PySide6.QtCore import QDate, QLocale, Qt
from PySide6.QtGui import QIcon, QTextCharFormat
from PySide6.QtWidgets import QCalendarWidget, QTableView, QToolButton

from studio_log.language.region import week
from studio_log.language.words import tr, tr_later
from studio_log.services.public_holidays import SPOKEN
from studio_log.ui.theme.look import theme
from studio_log.ui.theme.state import Theme
from studio_log.ui.widgets.parts import em

_QT_DAYS: Final = tuple(Qt.DayOfWeek)
_ARROWS: Final = (
    ("qt_calendar_prevmonth", "‹", tr_later("The month before")),
    ("qt_calendar_nextmonth", "›", tr_later("The month after")),
)

NARROWEST: Final = 28
"""Line heights; in less than that the names of days are cut to dots."""


def month_of(today: date) -> QCalendarWidget:
    """Give a month with today chosen, in the language spoken and the place's order of days."""
    month = QCalendarWidget()
    month.setAccessibleName(tr("Month"))
    month.setLocale(QLocale(tr(SPOKEN)))
    month.setFirstDayOfWeek(_QT_DAYS[week()[0]])
    month.setVerticalHeaderFormat(QCalendarWidget.VerticalHeaderFormat.NoVerticalHeader)
    month.setHorizontalHeaderFormat(QCalendarWidget.HorizontalHeaderFormat.ShortDayNames)
    plain = QTextCharFormat()
    for day in _QT_DAYS[:7]:
        month.setWeekdayTextFormat(day, plain)
    month.setDateRange(QDate(today.year - 1, 1, 1), QDate(today.year + 10, 12, 31))
    month.setSelectedDate(QDate(today.year, today.month, today.day))
    month.setMinimumHeight(em(month, 13))
    for name, sign, says in _ARROWS:
        arrow = month.findChild(QToolButton, name)
        if isinstance(arrow, QToolButton):
            # The system's own arrows are black on any ground.
            arrow.setIcon(QIcon())
            arrow.setText(sign)
            arrow.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
            arrow.setAccessibleName(tr(says))
    days = month.findChild(QTableView)
    if isinstance(days, QTableView):
        days.setAccessibleName(tr("Days of the month"))
    month.setStyleSheet(_month_sheet(theme()))
    return month


def month_ahead(first: QDate) -> QCalendarWidget:
    """Give a month that has no window to take its width from, without the days before a day."""
    month = month_of(date(first.year(), first.month(), first.day()))
    month.setMinimumDate(first)
    month.setMinimumWidth(em(month, NARROWEST))
    return month


def _month_sheet(look: Theme) -> str:
    """Give the month the sheet's ground; the system's bar above it has the colour of a choice."""
    c = look.palette
    return f"""
QWidget#qt_calendar_navigationbar {{ background: {c.ground}; }}
QCalendarWidget QToolButton {{ border-color: transparent; background: transparent; }}
QCalendarWidget QToolButton:focus, QCalendarWidget QToolButton:hover {{ background: {c.chosen}; }}
QCalendarWidget QAbstractItemView {{ selection-background-color: {c.accent};
  selection-color: {c.on_accent}; }}
"""
