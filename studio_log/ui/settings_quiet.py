"""Quiet hours on the settings page: every night, the nights that differ, what was understood."""

from collections.abc import Callable
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from PySide6.QtCore import QTime, Signal, Slot
from PySide6.QtWidgets import QCheckBox, QGridLayout, QLabel, QTimeEdit, QWidget

from studio_log.domain.calendar_words import long_weekday_name, weekday_name
from studio_log.domain.errors import Refusal
from studio_log.domain.quiet import Night, QuietHours
from studio_log.domain.quiet_text import Days, Hours, check_hours, check_week, read_days
from studio_log.language.region import week
from studio_log.language.words import tr, tr_later
from studio_log.services.settings import Settings
from studio_log.ui.settings_parts import (
    GAP,
    INDENT,
    Fault,
    Section,
    flowing,
    label_for,
    soft,
    time_field,
    together,
)

EVENING = 17
ADVICE = tr_later(
    "Nothing rings in them; it waits until they end. Equal times mean no quiet hours."
)
LONG_STRETCH = timedelta(hours=20)
NAMED_BY = tr_later(
    "A night is named by its evening: Saturday 00:30 to 09:00 is the "
    "night after Saturday, and begins on Sunday at 00:30."
)
NONE = tr_later("Nothing is held back: there are no quiet hours.")


class WeekdayRow:
    """One weekday's night: quiet or not, from, until, and its fault below."""

    def __init__(self, weekday: int, hours: Hours | None, usual: Hours) -> None:
        self.name = long_weekday_name(weekday)
        self.quiet = QCheckBox(tr("quiet"))
        self.quiet.setAccessibleName(tr("{name} night is quiet", name=self.name))
        self.start = time_field("22:00", tr("{name} night from", name=self.name))
        self.end = time_field("07:00", tr("{name} night until", name=self.name))
        self.to = QLabel(tr("to"))
        self.fault = Fault(self.start)
        self.show(hours, usual)
        self.quiet.toggled.connect(self._follow)

    def hours(self) -> Hours | None:
        """Give the night's hours, None for a night without."""
        return _hours(self.start, self.end) if self.quiet.isChecked() else None

    def show(self, hours: Hours | None, usual: Hours) -> None:
        """Show hours; without any, the usual ones wait in the fields."""
        self.quiet.setChecked(hours is not None)
        shown = hours or usual
        if shown.minutes:
            _set(self.start, shown.start)
            _set(self.end, shown.end)
        self._follow()

    def read(self) -> bool:
        """Say what is wrong with it; True where nothing is."""
        self.fault.say(self._words())
        return not self.fault.text()

    def _words(self) -> str:
        hours = self.hours()
        if hours is None:
            return ""
        if not hours.minutes:
            return tr(
                "{name} night begins and ends at {start:%H:%M}. Untick “quiet”.",
                name=self.name,
                start=hours.start,
            )
        try:
            check_hours(hours, tr("{name} night", name=self.name))
        except Refusal as refusal:
            return str(refusal)
        return ""

    @Slot()
    def _follow(self) -> None:
        for widget in (self.start, self.to, self.end):
            widget.setEnabled(self.quiet.isChecked())


class QuietSection(Section):
    """Edits the week's nights and says what it made of them."""

    changed = Signal()

    def __init__(
        self, settings: Settings, now: Callable[[], datetime], zone: Callable[[], str]
    ) -> None:
        super().__init__(tr("Quiet hours"), tr(ADVICE))
        self._now, self._zone = now, zone
        self.start = time_field(settings.quiet_start, tr("Every night quiet from"))
        self.end = time_field(settings.quiet_end, tr("Every night quiet until"))
        self._usual = self.every()
        self.differ = QCheckBox(tr("&Some nights differ"))
        days = dict(read_days(settings.quiet_days))
        self.rows = [
            WeekdayRow(
                day, days.get(day, self._usual if self._usual.minutes else None), self._usual
            )
            for day in range(7)
        ]
        self.differ.setChecked(bool(days))
        self.fault = Fault(self.start)
        self.understood = soft("")
        self.understood.setAccessibleName(tr("What was understood of the quiet hours"))
        self._lay_out()
        self._listen()
        self.read()

    def every(self) -> Hours:
        """Give the hours of every night that does not differ."""
        return _hours(self.start, self.end)

    def days(self) -> Days:
        """Give the nights that differ from every night; none while the box is not ticked."""
        if not self.differ.isChecked():
            return ()
        usual = self.every() if self.every().minutes else None
        told = ((day, row.hours()) for day, row in enumerate(self.rows))
        return tuple((day, hours) for day, hours in told if hours != usual)

    def read(self) -> bool:
        """Say what was understood, or what is wrong; True where nothing is."""
        every = self.every()
        rows = self.rows if self.differ.isChecked() else []
        # Each row is read, also behind one that is wrong: all that is wrong is to be seen.
        wrong = [row for row in rows if not row.read()]
        words = ""
        try:
            check_hours(every, tr("Every night"))
            if not wrong:
                check_week(every, self.days())
        except Refusal as refusal:
            words = str(refusal)
        self.fault.say(words)
        fine = not words and not wrong
        self.understood.show_words(self._understood() if fine else "")
        return fine

    def first_fault(self) -> QWidget | None:
        """Give the first field that something is wrong with."""
        faults = [self.fault, *(row.fault for row in self.rows if self.differ.isChecked())]
        return next((one.field for one in faults if one.text()), None)

    def _understood(self) -> str:
        quiet = QuietHours(self.every().start, self.every().end, self._zone(), self.days())
        told = next_quiet_words(quiet, self._now())
        return f"{quiet.words}. {told}" if quiet.days else told

    def _lay_out(self) -> None:
        until = label_for(tr("&until"), self.end)
        self.row(
            tr("Every night &from"),
            flowing(self.start, together(until, self.end)),
            leads_to=self.start,
        )
        self.wide(self.fault)
        self.wide(self.differ)
        self.week = QWidget()
        grid = QGridLayout(self.week)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(GAP)
        grid.setVerticalSpacing(6)
        for line, row in enumerate(self.rows[day] for day in week()):
            name = QLabel(row.name)
            name.setContentsMargins(INDENT, 0, 0, 0)
            parts = (name, row.quiet, row.start, row.to, row.end)
            for place, widget in enumerate(parts):
                grid.addWidget(widget, 2 * line, place)
            grid.addWidget(row.fault, 2 * line + 1, 0, 1, 6)
        grid.setColumnStretch(5, 1)
        grid.addWidget(soft(tr(NAMED_BY)), 14, 0, 1, 6)
        self.week.setVisible(self.differ.isChecked())
        self.wide(self.week)
        self.wide(self.understood)

    def _listen(self) -> None:
        for field in (self.start, self.end):
            field.timeChanged.connect(self._every_changed)
        self.differ.toggled.connect(self._differ)
        for row in self.rows:
            row.quiet.toggled.connect(self._read)
            row.start.timeChanged.connect(self._read)
            row.end.timeChanged.connect(self._read)

    @Slot()
    def _every_changed(self) -> None:
        """Take along the nights that were like every night."""
        before, self._usual = self._usual, self.every()
        for row in self.rows:
            if row.hours() == (before if before.minutes else None):
                row.show(self._usual if self._usual.minutes else None, self._usual)
        self._read()

    @Slot()
    def _differ(self) -> None:
        self.week.setVisible(self.differ.isChecked())
        self._read()

    @Slot()
    def _read(self) -> None:
        self.read()
        self.changed.emit()


def next_quiet_words(quiet: QuietHours, now: datetime) -> str:
    """Say when it is quiet next: "Next quiet: tonight 22:00 to 07:00."."""
    zone = ZoneInfo(quiet.zone)
    night = next(quiet.nights(now, now + timedelta(days=8)), None)
    if night is None:
        return tr(NONE)
    end = _end_words(night, zone)
    if night.start <= now:
        return tr("It is quiet now, until {end}.", end=end)
    start = night.start.astimezone(zone)
    small_hours = start.hour < 12
    evening = start.date() - timedelta(days=1) if small_hours else start.date()
    ahead = (evening - now.astimezone(zone).date()).days
    if ahead <= 0:
        day = tr("tonight") if small_hours or start.hour >= EVENING else tr("today")
    else:
        day = tr("tomorrow") if ahead == 1 else weekday_name(evening.weekday())
        day = tr("{day} night", day=day) if small_hours else day
    return tr("Next quiet: {day} {start:%H:%M} to {end}.", day=day, start=start, end=end)


def _end_words(night: Night, zone: ZoneInfo) -> str:
    end = night.end.astimezone(zone)
    if night.end - night.start > LONG_STRETCH:
        return f"{weekday_name(end.weekday())} {end:%H:%M}"
    return f"{end:%H:%M}"


def _hours(start: QTimeEdit, end: QTimeEdit) -> Hours:
    return Hours(*(time(at.hour(), at.minute()) for at in (start.time(), end.time())))


def _set(field: QTimeEdit, at: time) -> None:
    field.setTime(QTime(at.hour, at.minute))
