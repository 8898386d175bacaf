"""Whose holidays are closed: country and part by name, and which of the next are worked."""

from dataclasses import replace
from datetime import date, timedelta
from functools import partial
from typing import Final

from PySide6.QtCore import QLocale, Qt, Signal, Slot
from PySide6.QtWidgets import (
    QComboBox,
    QCompleter,
    QGridLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.hours_draft import HoursDraft, openings_of
from studio_log.domain.single_days import SingleDay, with_day, without_day
from studio_log.domain.stretch_text import stretch_words
from studio_log.domain.studio_hours import StudioHours, week_of
from studio_log.language.words import tr, tr_later
from studio_log.present.hours_words import day_with_year
from studio_log.services.public_holidays import SPOKEN, HolidaysKnown, Place
from studio_log.services.studio_hours import HolidayPlaceFor, HolidayPlacesFor, HolidaysFor
from studio_log.ui.bridge import Bridge
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, em

AHEAD: Final = timedelta(days=366)
NOWHERE: Final = tr_later("no country")
WHOLE: Final = tr_later("the whole country")
NO_COUNTRY: Final = tr_later("No country is called “{text}”. Choose one of the list.")
ADVICE: Final = tr_later(
    "Holidays are closed unless a tick says that you work. They are worked out on this laptop; "
    "days that a government adds later are not among them."
)
_DAY: Final = Qt.ItemDataRole.UserRole


class HolidaysPane(QWidget):
    """Chooses the place of a draft and which of its holidays are worked."""

    edited = Signal(object, str)
    known = Signal()
    """The holidays of the place have come home."""

    def __init__(self, bridge: Bridge, today: date) -> None:
        super().__init__()
        self._bridge, self._today = bridge, today
        self.draft = HoursDraft()
        self.names: dict[date, str] = {}
        self._shown_place: str | None = None
        self.country, self.line = _search_box(tr("Country"))
        self.part = QComboBox()
        self.part.setAccessibleName(tr("Part of the country"))
        calm(self.part)
        self.fault = Words(tone="danger_ink")
        self.doubt = Words(tone="ochre_ink")
        self.list = QListWidget()
        self.list.setAccessibleName(tr("The next holidays; a tick means that you work"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setMinimumHeight(em(self, 11))
        self._lay_out()
        self.country.activated.connect(self._country_chosen)
        self.line.editingFinished.connect(self._country_typed)
        self.part.activated.connect(self._part_chosen)
        self.list.itemChanged.connect(self._ticked)
        bridge.ask(HolidayPlacesFor(), self._show_places)

    def show_draft(self, draft: HoursDraft) -> None:
        """Show a draft's place and what is worked of its holidays."""
        self.draft = draft
        if draft.place != self._shown_place:
            self._shown_place = draft.place
            self._show_country()
            self._bridge.ask(HolidayPlaceFor(draft.place), self._show_parts)
            last = self._today + AHEAD
            known = HolidaysFor(draft.place, self._today, last)
            self._bridge.ask(known, partial(self._show_holidays, draft.place))
        else:
            self._fill()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(Words(tr("Holidays"), size="large", bold=True))
        column.addWidget(Words(tr(ADVICE), tone="soft"))
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        for row, (words, box) in enumerate(
            ((tr("Coun&try"), self.country), (tr("Pa&rt"), self.part))
        ):
            label = QLabel(words)
            label.setBuddy(box)
            grid.addWidget(label, row, 0)
            grid.addWidget(box, row, 1)
        column.addLayout(grid)
        for told in (self.fault, self.doubt):
            told.hide()
            column.addWidget(told)
        column.addWidget(self.list, 100)
        column.addStretch(1)

    def _show_places(self, places: tuple[Place, ...]) -> None:
        self.country.clear()
        self.country.addItem(tr(NOWHERE), "")
        for one in places:
            self.country.addItem(_named(one), one.code)
        self._show_country()

    def _show_country(self) -> None:
        at = self.country.findData(self.draft.place[:2])
        self.country.setCurrentIndex(at)
        if at < 0:
            self.country.setEditText(self.draft.place)
        self.fault.show_words("")

    def _show_parts(self, place: Place | None) -> None:
        if (place.code if place else "") != self.draft.place[:2]:
            return  # another one has been chosen since
        self.part.clear()
        self.part.addItem(tr(WHOLE), "")
        for code, name in place.parts if place else ():
            self.part.addItem(name, code)
        self.part.setCurrentIndex(max(self.part.findData(self.draft.place[3:]), 0))
        self.part.setEnabled(self.part.count() > 1)

    def _show_holidays(self, place: str, known: HolidaysKnown) -> None:
        if place == self.draft.place:
            self.names = dict(known.names)
            self.doubt.show_words(known.doubt)
            self._fill()
            self.known.emit()

    def _fill(self) -> None:
        self.list.blockSignals(True)
        row = self.list.currentRow()
        self.list.clear()
        week = week_of(openings_of(self.draft.working))
        hours = StudioHours(openings_of(self.draft.working), self.draft.singles, self.names)
        for day, name in sorted(self.names.items()):
            working = hours.on(day).working
            usual = week[day.weekday()]
            item = QListWidgetItem(f"{day_with_year(day)}\n{name} — {_state(working, usual)}")
            item.setData(_DAY, day)
            item.setCheckState(Qt.CheckState.Checked if working else Qt.CheckState.Unchecked)
            if not usual and not working:
                item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsUserCheckable)
            self.list.addItem(item)
        self.list.setCurrentRow(min(max(row, 0), self.list.count() - 1))
        self.list.setVisible(bool(self.names))
        self.list.blockSignals(False)

    def _ticked(self, item: QListWidgetItem) -> None:
        day = item.data(_DAY)
        if item.checkState() is Qt.CheckState.Checked:
            singles = with_day(self.draft.singles, SingleDay(day, day, None))
        else:
            singles = without_day(self.draft.singles, day)
        self._ask(singles=singles)

    @Slot(int)
    def _country_chosen(self, row: int) -> None:
        self._take(str(self.country.itemData(row) or ""))

    @Slot()
    def _country_typed(self) -> None:
        """Take a name that was typed in full, in any letters; leave what is no name and say so."""
        text = self.country.currentText().strip()
        wanted = text.casefold()
        names = ((self.country.itemText(n), n) for n in range(self.country.count()))
        found = [n for name, n in names if wanted in {name.casefold(), _first(name).casefold()}]
        if not text or found:
            self.fault.show_words("")
            self._take(str(self.country.itemData(found[0]) or "") if found else "")
        elif text != self.draft.place:
            self.fault.show_words(tr(NO_COUNTRY, text=text[:40]))

    def _take(self, country: str) -> None:
        """Take a country; the one that is chosen already keeps its part."""
        if country != self.draft.place[:2]:
            self._ask(place=country)

    @Slot(int)
    def _part_chosen(self, row: int) -> None:
        part = str(self.part.itemData(row) or "")
        country = self.draft.place[:2]
        self._ask(place=f"{country}-{part}" if part else country)

    def _ask(
        self, *, place: str | None = None, singles: tuple[SingleDay, ...] | None = None
    ) -> None:
        made = replace(
            self.draft,
            place=self.draft.place if place is None else place,
            singles=self.draft.singles if singles is None else singles,
        )
        if made != self.draft:
            self.edited.emit(made, "")


def _state(working: tuple[tuple[int, int], ...], usual: tuple[tuple[int, int], ...]) -> str:
    """Say what a holiday comes to."""
    if working:
        return tr("we work, {hours}", hours=stretch_words(working))
    return tr("closed") if usual else tr("closed anyway on this weekday")


def _search_box(name: str) -> tuple[QComboBox, QLineEdit]:
    """Give a box whose list is searched by any part of a name."""
    box = QComboBox()
    line, completer = QLineEdit(), QCompleter()
    box.setLineEdit(line)
    box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
    for one in (box, line):
        one.setAccessibleName(name)
    line.setMaxLength(80)
    box.setMinimumContentsLength(12)
    box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    completer.setModel(box.model())
    completer.setFilterMode(Qt.MatchFlag.MatchContains)
    completer.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
    completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
    completer.setParent(box)
    box.setCompleter(completer)
    calm(box)
    return box, line


def _named(place: Place) -> str:
    """Name a country as the world and as it calls itself: "Germany — Deutschland"."""
    territory = QLocale.codeToTerritory(place.code)
    spoken = QLocale(QLocale(tr(SPOKEN)).language(), territory)
    there = QLocale(QLocale.Language.AnyLanguage, territory)
    if spoken.territory() == territory and spoken.language() is not QLocale.Language.English:
        there = spoken
    own = there.nativeTerritoryName() if there.territory() == territory else ""
    return f"{place.name} — {own}" if own and own != place.name else place.name


def _first(name: str) -> str:
    return name.partition(" — ")[0]
