"""Holidays and single days in the month in which a day is chosen."""

from collections.abc import Mapping
from datetime import date

from PySide6.QtCore import QDate
from PySide6.QtGui import QColor, QFont, QTextCharFormat
from PySide6.QtWidgets import QCalendarWidget

from studio_log.domain.single_days import SingleDay
from studio_log.present.hours_words import single_words
from studio_log.ui.theme.look import theme


def mark_month(
    month: QCalendarWidget, holidays: Mapping[date, str], singles: tuple[SingleDay, ...]
) -> None:
    """Let holidays and single days stand out, each with its words for the pointer."""
    month.setDateTextFormat(QDate(), QTextCharFormat())
    colours = theme().colours
    marks = [(day, day, _letters(colours.danger_ink, name)) for day, name in holidays.items()]
    marks += [
        (one.first, one.last, _letters(colours.accent_ink, single_words(one))) for one in singles
    ]
    for first, last, letters in marks:
        for number in range(first.toordinal(), last.toordinal() + 1):
            day = date.fromordinal(number)
            month.setDateTextFormat(QDate(day.year, day.month, day.day), letters)


def _letters(ink: QColor, tip: str) -> QTextCharFormat:
    made = QTextCharFormat()
    made.setForeground(ink)
    made.setFontWeight(QFont.Weight.Bold)
    made.setFontUnderline(True)
    made.setToolTip(tip)
    return made
