"""The line at the bottom: saved, reminders and their channels, next ring, last copy."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from studio_log.language.words import tr
from studio_log.services.questions import Status, StatusFor
from studio_log.ui.bridge import Bridge
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words


class StatusLine(QWidget):
    """Says truly how things stand; warnings stand out and come first."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("statusline")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setAccessibleName(tr("Status"))
        self._bridge = bridge
        self.warnings = Words(tone="danger_ink", size="small")
        self.saved = Words(tone="soft", size="small")
        self.channels = Words(tone="soft", size="small")
        self.next_ring = Words(tone="soft", size="small")
        self.copy = Words(tone="soft", size="small")
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 6, 16, 6)
        column.setSpacing(2)
        column.addWidget(self.warnings)
        line = FlowLayout(gap=18)
        for words in (self.saved, self.channels, self.next_ring, self.copy):
            words.setWordWrap(False)
            line.addWidget(words)
        column.addLayout(line)
        self.warnings.hide()

    def refresh(self) -> None:
        """Ask how things stand."""
        self._bridge.ask(StatusFor(), self.show_status)

    def show_status(self, status: Status) -> None:
        """Show how things stand."""
        self.warnings.show_words(" ".join(status.warnings))
        self.saved.show_words(status.saved)
        self.channels.show_words(status.channels)
        self.channels.set_tone("soft" if status.channels_ok else "danger_ink")
        self.next_ring.show_words(status.next_ring)
        self.copy.show_words(status.copy)
