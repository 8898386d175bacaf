"""The network between a laptop and a server, which a test can cut and mend."""

import contextlib
import selectors
import socket
import threading
from typing import Final

_BIT: Final = 65_536


class Road:
    """Carries bytes from a port of this machine to a server's while it is open."""

    def __init__(self, host: str, port: int) -> None:
        self._to = (host, port)
        self._guard = threading.Lock()
        self._pairs: list[tuple[socket.socket, socket.socket]] = []
        self._listening: socket.socket | None = None
        self.port = 0
        self._threads: list[threading.Thread] = []
        self.mend()

    def mend(self) -> None:
        """Let it be travelled, by the same port as before."""
        listening = socket.create_server(("127.0.0.1", self.port), reuse_port=False)
        self.port = listening.getsockname()[1]
        self._listening = listening
        self._begin(self._welcome, listening)

    def cut(self) -> None:
        """Break every line at once and let none be made."""
        with self._guard:
            listening, self._listening = self._listening, None
            pairs, self._pairs = self._pairs, []
        if listening is not None:
            with contextlib.suppress(OSError):
                listening.shutdown(socket.SHUT_RDWR)
            listening.close()
        for pair in pairs:
            for end in pair:
                with contextlib.suppress(OSError):
                    end.shutdown(socket.SHUT_RDWR)
        for thread in self._threads:
            thread.join()
        self._threads.clear()

    close = cut

    def _begin(self, run: object, *more: object) -> None:
        thread = threading.Thread(target=run, args=more, name="road", daemon=True)  # type: ignore[arg-type]
        self._threads.append(thread)
        thread.start()

    def _welcome(self, listening: socket.socket) -> None:
        while True:
            try:
                near, _ = listening.accept()
            except OSError:
                return
            far = socket.create_connection(self._to)
            with self._guard:
                if self._listening is not listening:
                    near.close()
                    far.close()
                    return
                self._pairs.append((near, far))
            self._begin(self._carry, near, far)

    def _carry(self, near: socket.socket, far: socket.socket) -> None:
        ways = {near: far, far: near}
        with selectors.DefaultSelector() as watch, near, far:
            for end in ways:
                watch.register(end, selectors.EVENT_READ)
            while True:
                for key, _ in watch.select():
                    end = key.fileobj
                    assert isinstance(end, socket.socket)
                    try:
                        bit = end.recv(_BIT)
                        if not bit:
                            return
                        ways[end].sendall(bit)
                    except OSError:
                        return
