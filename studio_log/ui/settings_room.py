"""The workshop itself on the settings page: when it is open, its drying line and its burners."""

from typing import Final

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QDoubleSpinBox, QLineEdit, QSpinBox, QWidget

from studio_log.domain.errors import Refusal
from studio_log.domain.open_hours import open_words, read_open, write_open
from studio_log.language.words import tr, tr_later
from studio_log.science.units import convert
from studio_log.services.settings import Settings
from studio_log.ui.settings_parts import Checked, Section, soft
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import roomy

ADVICE: Final = tr_later(
    "The timeline shades the hours in which the workshop is closed, and tells where lots meet on "
    "the line or on a burner. No reminder goes by it."
)
NOT_SAID: Final = tr_later("not said")
UNITS: Final = {"metric": ("m", " m"), "us": ("yd", " yd")}
_MOST: Final = 9_999.0


class RoomSection(Section):
    """Edits what there is in the workshop; what is empty or nought counts as not said."""

    def __init__(self, settings: Settings) -> None:
        super().__init__(tr("Workshop"), tr(ADVICE))
        self._before = settings
        self._unit, suffix = UNITS[settings.units]
        self.hours = QLineEdit(settings.open_hours)
        self.hours.setMaxLength(400)
        self.hours.setPlaceholderText("mon-fri 09:00-17:00; sat 10:00-14:00")
        self.line = QDoubleSpinBox()
        self.line.setDecimals(1)
        self.line.setRange(0, _MOST)
        self.line.setSuffix(suffix)
        self.line.setValue(convert(settings.line_metres, "m", self._unit))
        self._shown = self.line.value()
        self.burners = QSpinBox()
        self.burners.setRange(0, 99)
        self.burners.setValue(settings.burners)
        for field in (self.line, self.burners):
            field.setSpecialValueText(tr(NOT_SAID))
            roomy(field)
            calm(field)
        self.understood = soft("")
        self.understood.setAccessibleName(tr("What was understood of the open hours"))
        self._read_hours = Checked(self.hours, self._fault)
        self.row(tr("Dail&y opening hours"), self.hours)
        self.wide(self._read_hours.fault)
        self.wide(self.understood)
        self.row(tr("Drying line"), self.line)
        self.row(tr("Burners"), self.burners)
        self.hours.textChanged.connect(self.read)
        self.read()

    @Slot()
    def read(self) -> bool:
        """Say what was understood of the hours, or what is wrong; True where nothing is."""
        fine = self._read_hours.read()
        told = tr("Open: {hours}.", hours=open_words(read_open(self.hours.text()))) if fine else ""
        self.understood.show_words(told)
        return fine

    def first_fault(self) -> QWidget | None:
        """Give the field that something is wrong with."""
        return self.hours if self._read_hours.fault.text() else None

    def changes(self) -> dict[str, object]:
        """Give what stands in the fields, by the settings' names; a length left alone as it was."""
        metres = self._before.line_metres
        if self.line.value() != self._shown:
            metres = convert(self.line.value(), self._unit, "m")
        return {
            "open_hours": write_open(read_open(self.hours.text())),
            "line_metres": metres,
            "burners": self.burners.value(),
        }

    def _fault(self) -> str:
        try:
            read_open(self.hours.text())
        except Refusal as refusal:
            return str(refusal)
        return ""
