"""What the tray does beside opening the window: it tells where the desktop does not."""

from PySide6.QtCore import QObject, Slot

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Hush, NoteShown
from studio_log.services.ports import Raised
from studio_log.ui.bridge import Bridge
from studio_log.ui.tray import Tray

TRAY = tr_later("the tray")


class TrayDuty(QObject):
    """Shows by the tray what no desktop notice could show, and puts that on record."""

    def __init__(self, bridge: Bridge, tray: Tray, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._tray = tray
        bridge.shown.connect(self._shown)
        tray.hush_wanted.connect(self._hush)

    @Slot(object)
    def _shown(self, raised: Raised) -> None:
        if not raised.on_desktop and self._tray.tell(raised.text) and raised.text.keys:
            words = tr("handed to the tray; nothing tells if it is seen")
            self._bridge.do(NoteShown(raised.text.keys, TRAY, words))

    @Slot(object)
    def _hush(self, command: Hush) -> None:
        self._bridge.do(command)
