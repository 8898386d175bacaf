"""The second way to a desktop notice: plyer, guarded so that no loss goes unseen."""

import shutil
import subprocess
import sys
import threading
from typing import Any, Final

from plyer import notification
from plyer.facades import Notification
from typing_extensions import override

from studio_log.outside.notice_parcel import escaped

ON_LINUX: bool = sys.platform.startswith("linux")
LONGEST_TITLE: Final = 64
LONGEST_BODY: Final = 256
"""In characters: Windows loses a longer notice without a word."""
SHOWN_S: Final = 10
_LEVELS: Final = ("low", "normal", "critical")


class SendingError(Exception):
    """The notice was not taken; the words say why."""


class NotifySend(Notification):  # type: ignore[misc]  # plyer has no types
    """plyer's notification for Linux: it looks at what became of the notice.

    plyer's own drops the exit status, takes a title that begins with a hyphen for an option
    and waits without end for a service that hangs.
    """

    def __init__(self, urgency: int, seconds: float) -> None:
        self._level = _LEVELS[urgency]
        self._seconds = seconds

    @override
    def _notify(self, **given: Any) -> None:
        program = shutil.which("notify-send")
        if program is None:
            raise SendingError("notify-send is not installed")
        # notify-send reads \n and its like in the body as marks.
        body = escaped(given["message"]).replace("\\", "\\\\")
        command = [program, f"--app-name={given['app_name']}", f"--urgency={self._level}"]
        try:
            done = subprocess.run(  # noqa: S603 - found above, and -- ends the options
                [*command, "--", given["title"], body],
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.PIPE,
                timeout=self._seconds,
                check=False,
            )
        except subprocess.TimeoutExpired:
            raise SendingError(f"no answer within {self._seconds:.1f} s") from None
        except (OSError, ValueError) as error:
            raise SendingError(f"notify-send could not be run ({type(error).__name__})") from None
        if done.returncode != 0:
            raise SendingError(_said(done.stderr))


def send(app_name: str, title: str, body: str, *, urgency: int, seconds: float) -> None:
    """Send a notice through plyer; SendingError within so many seconds where it was not taken.

    On other systems than Linux nothing tells whether the person saw it.
    """
    if ON_LINUX:
        NotifySend(urgency, seconds).notify(title=title, message=body, app_name=app_name)
        return
    trouble: list[BaseException] = []

    def call() -> None:
        try:
            notification.notify(
                title=title[:LONGEST_TITLE],
                message=body[:LONGEST_BODY],
                app_name=app_name,
                timeout=SHOWN_S,
            )
        except Exception as error:  # noqa: BLE001 - plyer raises anything
            trouble.append(error)

    # Windows keeps the call for as long as the notice is shown: that is no fault.
    thread = threading.Thread(target=call, name="plyer", daemon=True)
    thread.start()
    thread.join(seconds)
    if trouble:
        raise SendingError(f"plyer could not show it ({type(trouble[0]).__name__})")


def _said(stderr: bytes) -> str:
    """Give the first line that notify-send wrote, as words."""
    lines = stderr.decode("utf-8", "replace").strip().splitlines()
    if any("ServiceUnknown" in line or "not provided by any" in line for line in lines):
        return "no service answers"
    return f"notify-send refused: {lines[-1].strip()[:120]}" if lines else "notify-send refused"
