"""What the children of the nursery do; each gives an exit code."""

import contextlib
import io
import os
from pathlib import Path

from studio_log.app.commands import Reminding
from studio_log.app.compose import open_studio
from studio_log.domain.errors import Refusal
from studio_log.services.commands import AnswerReminder


def remind(folder: str) -> int:
    """Run the reminder service until it is ended or killed."""
    return Reminding(folder, io.StringIO()).run()


def answer(folder: str, key: str) -> int:
    """Answer one reminder."""
    studio = open_studio(Path(folder))
    try:
        studio.do(AnswerReminder(key, "done", sure=True))
    except Refusal:
        return 3
    finally:
        studio.close()
    return 0


def reap() -> None:
    """Take leave of children that have ended, so that none stays as a zombie."""
    with contextlib.suppress(ChildProcessError):
        while os.waitpid(-1, os.WNOHANG)[0]:
            pass
