"""The settings: few, in headed sections, each with its words; all changeable at any time."""

from typing import Final

from PySide6.QtCore import QSize, Qt, Slot
from PySide6.QtWidgets import (
    QDialog,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import plain
from studio_log.domain.wall_clock import known_zone
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import ChangeSettings, Outcome
from studio_log.services.settings import Settings
from studio_log.ui.bridge import Bridge
from studio_log.ui.chime import Chime
from studio_log.ui.errors import MessageBar
from studio_log.ui.settings_hours import HoursSection
from studio_log.ui.settings_login import LoginSection, LoginStart
from studio_log.ui.settings_look import AS_SYSTEM, LanguageChoice, LookSection
from studio_log.ui.settings_parts import Checked, Section, choice
from studio_log.ui.settings_reminders import RemindersSection
from studio_log.ui.settings_room import RoomSection
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.parts import em, scrolled
from studio_log.ui.widgets.readers import volume

UNITS: Final = ((tr_later("metric"), "metric"), (tr_later("US"), "us"))
NO_BUCKET: Final = tr_later("Say how much the bucket holds, such as 10 L.")
BETWEEN: Final = 26
"""Pixels between two sections: space parts them, no line."""


class SettingsDialog(QDialog):
    """Shows the settings and sends those that were changed."""

    def __init__(
        self,
        bridge: Bridge,
        settings: Settings,
        parent: QWidget | None = None,
        *,
        login_start: LoginStart | None = None,
        chime: Chime | None = None,
        language: LanguageChoice | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Settings"))
        self.setModal(True)
        self._bridge = bridge
        self._before = settings
        self._make_fields(settings)
        self.hours = HoursSection(bridge, settings)
        self.room = RoomSection(settings)
        self.reminders = RemindersSection(settings, chime)
        self.login = LoginSection(login_start)
        self.look = LookSection(settings, language)
        self.message = MessageBar(bridge)
        self.buttons = Answers(tr("&Keep these"))
        self.keep = self.buttons.do
        self._lay_out()
        self.zone.editingFinished.connect(self._read_zone.read)
        self.vessel.editingFinished.connect(self._read_vessel.read)
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)

    def changes(self, litres: float) -> dict[str, object]:
        """Give the settings that differ from those before, by name."""
        now: dict[str, object] = {
            "studio": self.studio.text().strip(),
            "units": self.units.currentData(),
            "vessel_litres": litres,
            "zone": self.zone.text().strip(),
            **self.room.changes(),
            **self.reminders.changes(),
            **self.look.changes(),
        }
        return {name: value for name, value in now.items() if value != getattr(self._before, name)}

    @Slot()
    def submit(self) -> None:
        """Send what was changed; the box stays open where something is wrong or refused."""
        self.message.put_away()
        faulty = self._first_fault()
        if faulty is not None:
            self._lead_to(faulty)
            return
        if not self.login.submit():
            self._lead_to(self.login.login)
            return
        if not self.look.submit():
            self._lead_to(self.look.speech)
            return
        litres = volume(self.vessel.text()).value
        changes = self.changes(self._before.vessel_litres if litres is None else litres)
        if not changes:
            self.accept()
            return
        self._bridge.do(ChangeSettings(changes), self._kept, failed=self.message.refuse)

    def _first_fault(self) -> QWidget | None:
        """Have every fault said beside its field, and give the first of these fields."""
        fine = [one.read() for one in (self._read_vessel, self._read_zone)]
        for one, good in zip((self._read_vessel, self._read_zone), fine, strict=True):
            if not good:
                return one.fault.field
        return None

    def _lead_to(self, field: QWidget) -> None:
        field.setFocus(Qt.FocusReason.OtherFocusReason)
        self._area.ensureWidgetVisible(field, 0, em(self, 3))

    def _make_fields(self, settings: Settings) -> None:
        self.studio = QLineEdit(settings.studio)
        self.studio.setMaxLength(120)
        self.units = choice(UNITS, settings.units)
        self.vessel = QLineEdit(f"{plain(settings.vessel_litres, 1)} L")
        self.vessel.setMaxLength(60)
        self._read_vessel = Checked(self.vessel, self._vessel_fault)
        self.zone = QLineEdit(settings.zone)
        self.zone.setMaxLength(60)
        self.zone.setPlaceholderText(tr(AS_SYSTEM))
        self._read_zone = Checked(self.zone, self._zone_fault)

    def _vessel_fault(self) -> str:
        read = volume(self.vessel.text())
        return read.fault or ("" if read.value is not None else tr(NO_BUCKET))

    def _zone_fault(self) -> str:
        try:
            known_zone(self.zone.text().strip() or "UTC")
        except Refusal as refusal:
            return str(refusal)
        return ""

    def _sections(self) -> tuple[Section, ...]:
        studio = Section(tr("Studio"))
        studio.row(tr("&Name of the studio"), self.studio)
        studio.row(tr("Un&its"), self.units)
        studio.row(tr("&Bucket for a new lot"), self.vessel)
        studio.wide(self._read_vessel.fault)
        studio.row(tr("Time &zone"), self.zone)
        studio.wide(self._read_zone.fault)
        return studio, self.hours, self.room, self.reminders, self.login, self.look

    def _lay_out(self) -> None:
        body = QWidget()
        page = QVBoxLayout(body)
        page.setContentsMargins(20, 18, 20, 18)
        page.setSpacing(BETWEEN)
        sections = self._sections()
        for section in sections:
            page.addWidget(section)
        page.addStretch(1)
        labels = [label for section in sections for label in section.labels]
        # One column of fields from top to bottom, though each section lays out its own.
        widest = max(label.sizeHint().width() for label in labels)
        for label in labels:
            label.setMinimumWidth(widest)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        self._area: QScrollArea = scrolled(body, name=tr("Settings"))
        column.addWidget(self._area, 1)
        column.addWidget(self.message)
        foot = QVBoxLayout()
        foot.setContentsMargins(20, 8, 20, 14)
        foot.addWidget(self.buttons)
        column.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(40, 60)
        self.resize(QSize(em(self, 38), em(self, 48)).boundedTo(room))

    def _kept(self, _outcome: Outcome) -> None:
        self.accept()
