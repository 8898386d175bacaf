"""The workshop itself on the settings page: its drying line and its burners."""

from typing import Final

from PySide6.QtWidgets import QDoubleSpinBox, QSpinBox

from studio_log.language.words import tr, tr_later
from studio_log.science.units import convert
from studio_log.services.settings import Settings
from studio_log.ui.settings_parts import Section
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import roomy

ADVICE: Final = tr_later(
    "The timeline tells where lots meet on the line or on a burner. No reminder goes by it."
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
        self.row(tr("Drying line"), self.line)
        self.row(tr("Burners"), self.burners)

    def changes(self) -> dict[str, object]:
        """Give what stands in the fields, by the settings' names; a length left alone as it was."""
        metres = self._before.line_metres
        if self.line.value() != self._shown:
            metres = convert(self.line.value(), self._unit, "m")
        return {
            "line_metres": metres,
            "burners": self.burners.value(),
        }
