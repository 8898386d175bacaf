"""The settings: few, each with its words; all changeable at any time."""

from PySide6.QtCore import QSize, QTime
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLineEdit,
    QSpinBox,
    QTimeEdit,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.number_text import plain
from studio_log.services.commands import ChangeSettings, Outcome
from studio_log.services.settings import Settings
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.lots.lot_reading import read_volume
from studio_log.ui.theme.dress import dress_button
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import em, roomy, scrolled

UNITS = (("metric", "metric"), ("US", "us"))
THEMES = (("as the system has it", "system"), ("light", "light"), ("dark", "dark"))


class SettingsDialog(QDialog):
    """Shows the settings and sends those that were changed."""

    def __init__(self, bridge: Bridge, settings: Settings, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Settings")
        self.setModal(True)
        self._bridge = bridge
        self._before = settings
        self._make_fields(settings)
        self.message = MessageBar(bridge)
        self.buttons = QDialogButtonBox()
        self.keep = self.buttons.addButton("&Keep these", QDialogButtonBox.ButtonRole.AcceptRole)
        self.buttons.addButton("&Leave it", QDialogButtonBox.ButtonRole.RejectRole)
        dress_button(self.keep, "primary")
        self._lay_out()
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)

    def changes(self, litres: float) -> dict[str, object]:
        """Give the settings that differ from those before, by name."""
        now: dict[str, object] = {
            "studio": self.studio.text().strip(),
            "units": self.units.currentData(),
            "quiet_start": self.quiet_start.time().toString("HH:mm"),
            "quiet_end": self.quiet_end.time().toString("HH:mm"),
            "zone": self.zone.text().strip(),
            "spoiling_at_night": self.spoiling.isChecked(),
            "chime": self.chime.isChecked(),
            "vessel_litres": litres,
            "theme": self.scheme.currentData(),
            "text_percent": self.text.value(),
        }
        return {name: value for name, value in now.items() if value != getattr(self._before, name)}

    def submit(self) -> None:
        """Send what was changed; the box stays open where it is refused."""
        vessel = read_volume(self.vessel.text())
        if vessel.fault or vessel.value is None:
            self.message.refuse(vessel.fault or "Say how much the bucket holds, such as 10 L.")
            return
        changes = self.changes(vessel.value)
        if not changes:
            self.accept()
            return
        self._bridge.do(ChangeSettings(changes), self._kept, failed=self.message.refuse)

    def _make_fields(self, settings: Settings) -> None:
        self.studio = QLineEdit(settings.studio)
        self.studio.setMaxLength(120)
        self.units = _choice(UNITS, settings.units)
        self.quiet_start = _time(settings.quiet_start)
        self.quiet_end = _time(settings.quiet_end)
        self.zone = QLineEdit(settings.zone)
        self.zone.setMaxLength(60)
        self.zone.setPlaceholderText("as the system has it")
        self.spoiling = QCheckBox("What &spoils may ring in quiet hours")
        self.spoiling.setChecked(settings.spoiling_at_night)
        self.chime = QCheckBox("Sound a &chime when a reminder rings")
        self.chime.setChecked(settings.chime)
        self.vessel = QLineEdit(f"{plain(settings.vessel_litres, 1)} L")
        self.vessel.setMaxLength(60)
        self.scheme = _choice(THEMES, settings.theme)
        self.text = QSpinBox()
        self.text.setRange(80, 200)
        self.text.setSingleStep(10)
        roomy(self.text)
        self.text.setSuffix(" %")
        self.text.setValue(settings.text_percent)

    def _lay_out(self) -> None:
        body = QWidget()
        form = QFormLayout(body)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        form.setContentsMargins(20, 18, 20, 12)
        form.setVerticalSpacing(10)
        rows: tuple[tuple[str, QWidget], ...] = (
            ("&Name of the studio", self.studio),
            ("&Units", self.units),
            ("&Quiet hours from", self.quiet_start),
            ("un&til", self.quiet_end),
            ("Time &zone", self.zone),
            ("", self.spoiling),
            ("", self.chime),
            ("&Bucket offered for a new lot", self.vessel),
            ("&Look", self.scheme),
            ("Si&ze of text", self.text),
        )
        for words, field in rows:
            if isinstance(field, QComboBox | QAbstractSpinBox):
                calm(field)
            if not words:
                form.addRow(field)
            else:
                form.addRow(words, field)
                field.setAccessibleName(words.replace("&", ""))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(scrolled(body, name="Settings"), 1)
        column.addWidget(self.message)
        foot = QVBoxLayout()
        foot.setContentsMargins(20, 8, 20, 14)
        foot.addWidget(self.buttons)
        column.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(40, 60)
        self.resize(QSize(em(self, 34), em(self, 37)).boundedTo(room))

    def _kept(self, _outcome: Outcome) -> None:
        self.accept()


def _choice(rows: tuple[tuple[str, str], ...], value: str) -> QComboBox:
    box = QComboBox()
    for words, slug in rows:
        box.addItem(words, slug)
    box.setCurrentIndex(max(box.findData(value), 0))
    return box


def _time(text: str) -> QTimeEdit:
    field = QTimeEdit(QTime.fromString(text, "HH:mm"))
    field.setDisplayFormat("HH:mm")
    roomy(field)
    return field
