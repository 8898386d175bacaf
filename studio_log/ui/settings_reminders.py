"""How reminders are told, on the settings page: at night, the two looks ahead, the chime."""

from functools import partial
from typing import Final

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import (
    QCheckBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSlider,
    QTimeEdit,
    QWidget,
)

from studio_log.language.words import tr, tr_later
from studio_log.services.settings import Settings
from studio_log.ui.chime import Chime, Sound
from studio_log.ui.settings_parts import (
    GAP,
    Section,
    flowing,
    label_for,
    time_field,
    time_text,
    together,
)
from studio_log.ui.theme.look import theme
from studio_log.ui.theme.state import Theme
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import button

SOUNDS: Final[tuple[tuple[str, Sound, str], ...]] = (
    (tr_later("A &reminder"), "rings", tr_later("Try the chime of a reminder")),
    (tr_later("A countdown’s en&d"), "ends", tr_later("Try the chime of a countdown’s end")),
    (tr_later("Sp&oiling"), "spoils", tr_later("Try the chime of what is spoiling")),
)
LOOKS: Final = (
    (
        tr_later("Say in the morning w&hat the day holds"),
        tr_later("&at"),
        tr_later("Time of the morning’s look ahead"),
    ),
    (
        tr_later("Say in the &evening what to start"),
        tr_later("a&t"),
        tr_later("Time of the evening’s look ahead"),
    ),
)


class RemindersSection(Section):
    """Edits how and when the program makes itself heard."""

    def __init__(self, settings: Settings, chime: Chime | None) -> None:
        super().__init__(tr("Reminders"))
        self._chime = chime or Chime()
        self.spoiling = QCheckBox(tr("What spoils &may ring in quiet hours"))
        self.spoiling.setChecked(settings.spoiling_at_night)
        self.look = _look(settings.look_ahead, Settings.look_ahead, *LOOKS[0])
        self.evening = _look(settings.evening_look, Settings.evening_look, *LOOKS[1])
        self.chime = QCheckBox(tr("Sound a &chime when a reminder rings"))
        self.chime.setChecked(settings.chime)
        self.volume = QSlider(Qt.Orientation.Horizontal)
        self.volume.setRange(0, 100)
        self.volume.setSingleStep(5)
        self.volume.setPageStep(10)
        self.volume.setValue(settings.chime_volume)
        calm(self.volume)
        self.volume.setStyleSheet(_slider_sheet(theme()))
        self.loud = QLabel()
        self.tries: list[QPushButton] = []
        self._lay_out()
        self.chime.toggled.connect(self._follow)
        self.volume.valueChanged.connect(self._follow)
        self._follow()

    def changes(self) -> dict[str, object]:
        """Give what is chosen, by the settings' names."""
        return {
            "spoiling_at_night": self.spoiling.isChecked(),
            "look_ahead": _kept(*self.look[:2]),
            "evening_look": _kept(*self.evening[:2]),
            "chime": self.chime.isChecked(),
            "chime_volume": self.volume.value(),
        }

    def try_it(self, sound: Sound) -> None:
        """Sound one of the three as loud as the slider stands now."""
        chime = self._chime
        before = chime.on, chime.volume
        chime.on, chime.volume = True, self.volume.value()
        try:
            chime.sound(sound)
        finally:
            chime.on, chime.volume = before

    def _lay_out(self) -> None:
        self.wide(self.spoiling)
        for look in _looks(self.look, self.evening):
            self.wide(look)
        self.wide(self.chime)
        loud = QWidget()
        line = QHBoxLayout(loud)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(GAP)
        line.addWidget(self.volume, 1)
        self.loud.setMinimumWidth(self.loud.fontMetrics().horizontalAdvance(tr("silent 0 %")))
        line.addWidget(self.loud)
        self.volume.setAccessibleName(tr("Volume of the chime in percent"))
        self.row(tr("&Volume"), loud, leads_to=self.volume)
        for words, sound, says in SOUNDS:
            made = button(tr(words), says=tr(says))
            made.clicked.connect(partial(self.try_it, sound))
            self.tries.append(made)
        self.row(tr("Try it"), flowing(*self.tries), leads_to=self.tries[0])

    @Slot()
    def _follow(self) -> None:
        on, percent = self.chime.isChecked(), self.volume.value()
        self.volume.setEnabled(on)
        for made in self.tries:
            made.setEnabled(on and percent > 0)
        self.loud.setText(f"{percent} %" if percent else tr("0 %, silent"))


def _slider_sheet(look: Theme) -> str:
    """Give the slider's look: on the dark ground the system's own knob would hardly be seen."""
    c = look.palette
    knob = round(look.metrics.line)
    over = (knob + 2) // 2 - 2
    return f"""
QSlider {{ min-height: {knob + 8}px; }}
QSlider::groove:horizontal {{ height: 4px; border-radius: 2px; background: {c.outline}; }}
QSlider::sub-page:horizontal {{ border-radius: 2px; background: {c.accent}; }}
QSlider::handle:horizontal {{ width: {knob}px; margin: -{over}px 0; background: {c.accent};
  border: 1px solid {c.accent}; border-radius: {knob // 2}px; }}
QSlider::handle:horizontal:disabled, QSlider::sub-page:horizontal:disabled {{
  background: {c.outline}; border-color: {c.outline}; }}
"""


_Look = tuple[QCheckBox, QTimeEdit, QLabel]


def _look(kept: str, usual: str, words: str, at: str, name: str) -> _Look:
    """Give box, time and the word between them; the time waits while the box is not ticked."""
    box = QCheckBox(tr(words))
    field = time_field(kept or usual, tr(name))
    label = label_for(tr(at), field)
    box.setChecked(bool(kept))
    for widget in (field, label):
        widget.setEnabled(bool(kept))
        box.toggled.connect(widget.setEnabled)
    return box, field, label


def _kept(box: QCheckBox, field: QTimeEdit) -> str:
    return time_text(field) if box.isChecked() else ""


def _looks(*looks: _Look) -> list[QWidget]:
    """Give a row for each; their times stand below one another where there is room."""
    widest = max(box.sizeHint().width() for box, _, _ in looks)
    for box, _, _ in looks:
        box.setMinimumWidth(widest)
    return [flowing(box, together(label, field)) for box, field, label in looks]
