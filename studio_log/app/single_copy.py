"""One window a studio: a second start raises the first one and ends."""

import hashlib
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Slot
from PySide6.QtNetwork import QLocalServer, QLocalSocket

PATIENCE_MS = 500


def door_name(folder: Path) -> str:
    """Give the name under which a studio's window can be called."""
    digest = hashlib.sha256(str(folder.resolve()).encode()).hexdigest()[:20]
    return f"studio-log-{digest}"


def call_first(folder: Path) -> bool:
    """Ask the window that has this studio open to come forward; False where there is none."""
    socket = QLocalSocket()
    socket.connectToServer(door_name(folder))
    if not socket.waitForConnected(PATIENCE_MS):
        return False
    socket.write(b"raise\n")
    socket.waitForBytesWritten(PATIENCE_MS)
    socket.disconnectFromServer()
    return True


class Door(QObject):
    """Hears a second start of the same studio."""

    def __init__(self, folder: Path, called: Callable[[], None], parent: QObject) -> None:
        super().__init__(parent)
        self._called = called
        self._server = QLocalServer(self)
        self._server.setSocketOptions(QLocalServer.SocketOption.UserAccessOption)
        self._server.newConnection.connect(self._answer)
        name = door_name(folder)
        if not self._server.listen(name):
            # A window that was killed left its name behind.
            QLocalServer.removeServer(name)
            self._server.listen(name)

    @Slot()
    def _answer(self) -> None:
        while (socket := self._server.nextPendingConnection()) is not None:
            socket.disconnected.connect(socket.deleteLater)
            self._called()

    def close(self) -> None:
        """Hear no more."""
        self._server.close()
