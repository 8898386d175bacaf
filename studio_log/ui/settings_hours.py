"""The studio's hours on the settings page: what they are, and the way to where they are edited."""

from PySide6.QtCore import Qt

from studio_log.domain.errors import Refusal
from studio_log.domain.hours_draft import draft_from
from studio_log.language.words import tr
from studio_log.present.hours_words import draft_words
from studio_log.present.quiet_words import next_quiet_words
from studio_log.services.questions import SettingsFor
from studio_log.services.settings import Settings
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.hours.hours_box import HoursBox, settings_of
from studio_log.ui.settings_parts import Section, flowing, soft
from studio_log.ui.widgets.parts import Words, button


class HoursSection(Section):
    """Tells the working, quiet and waking hours; they are changed in their own window."""

    def __init__(self, bridge: Bridge, settings: Settings) -> None:
        super().__init__(tr("Hours"))
        self._bridge = bridge
        self._settings = settings
        self.told = soft("")
        self.told.setAccessibleName(tr("The hours as they are"))
        self.next_quiet: Words = soft("")
        self.change = button(tr("Change the ho&urs…"))
        for widget in (self.told, self.next_quiet, flowing(self.change)):
            self.wide(widget)
        self.change.clicked.connect(self.open_hours)
        bridge.changed.connect(self._changed)
        self._show(settings)

    def open_hours(self) -> HoursBox:
        """Open the hours over the settings."""
        box = HoursBox(self._bridge, self._settings, self.window())
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.open()
        return box

    def _changed(self, outcome: object) -> None:
        if outcome is FOREIGN or getattr(outcome, "settings", False):
            self._bridge.ask(SettingsFor(), self._show)

    def _show(self, settings: Settings) -> None:
        self._settings = settings
        try:
            told = draft_words(draft_from(settings_of(settings)))
        except Refusal as refusal:  # kept by another version
            told = str(refusal)
        self.told.show_words(told)
        quiet = settings.quiet(settings.zone or self._bridge.zone())
        self.next_quiet.show_words(next_quiet_words(quiet, self._bridge.now()))
