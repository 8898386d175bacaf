"""The bar at the top: the studio, day and time, and the three buttons used most."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from studio_log.language.words import tr
from studio_log.present.words import clock, day
from studio_log.ui.bridge import Bridge
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button


class TopBar(QWidget):
    """Breaks its line where the window is narrow."""

    def __init__(self, bridge: Bridge) -> None:
        super().__init__()
        self.setObjectName("topbar")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._bridge = bridge
        self.studio = Words(size="title", bold=True)
        self.studio.setWordWrap(False)
        self.moment = Words(tone="soft")
        self.moment.setWordWrap(False)
        self.new_lot = button(tr("New lot…"))
        self.print_tags = button(tr("Print tags…"))
        self.undo = button(tr("Undo"))
        self.buttons = {
            "new_lot": self.new_lot,
            "print_tags": self.print_tags,
            "undo": self.undo,
        }
        self._line = line = FlowLayout(self, gap=12)
        line.setContentsMargins(18, 8, 16, 9)
        for widget in (self.studio, growing(self.moment), *self.buttons.values()):
            line.addWidget(widget)

    def add(self, widget: QWidget) -> None:
        """Take in what turns the pages of a narrow window."""
        self._line.addWidget(widget)

    def show_studio(self, name: str) -> None:
        """Show the studio's name."""
        self.studio.setText(name or tr("Studio Log"))

    def tick(self, *, rests: bool = False) -> None:
        """Show day and time; at rest, as of when the window holds."""
        now, zone = self._bridge.now(), self._bridge.zone()
        of = tr("as of ") if rests else ""
        self.moment.setText(f"{day(now, zone)} · {of}{clock(now, zone)}")
