"""Starting at login: read as it is, switched on and off by writing one file of the user's own.

Nothing is remembered here: what counts is the file that the system itself reads at login.
"""

import contextlib
import os
import shlex
import shutil
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.outside.login_forms import FORMS, XDG, Found
from studio_log.services.whole_file import write_whole

SCRIPT: Final = "studio-log"
UNIT: Final = "studio-log.service"
MODE: Final = 0o644
LARGEST: Final = 100_000
"""Bytes; what is larger is no start file of ours and is not read to its end."""
_PACKAGE: Final = Path(__file__).resolve().parent.parent

_OFF: Final = "Studio Log does not start at login."
_ANEW: Final = "Switch it on to write it anew."


def command_of_this_program(argv0: str, executable: str) -> list[str]:
    """Give the words that start this copy of the program from any folder, without options.

    `argv0` is what was started, `executable` the interpreter. From the source tree that is
    the tree's own start file, which finds the libraries and makes them good.
    """
    python = Path(executable).absolute()  # not resolved: a link tells which libraries are meant
    silent = python.with_name("pythonw.exe")  # Windows: shows no console
    if not silent.is_file():
        for script in (Path(argv0).absolute(), python.with_name(SCRIPT)):
            if script.name == SCRIPT and script.is_file() and os.access(script, os.X_OK):
                return [str(script)]
    start = _PACKAGE.parent / "packaging" / "start.py"
    if start.is_file():
        return [str(silent if silent.is_file() else python.resolve()), str(start)]
    return [str(silent if silent.is_file() else python), "-m", "studio_log"]


class LoginStart:
    """The switch for starting one command at login, for this user."""

    def __init__(
        self,
        command: Sequence[str],
        *,
        config_home: Path | None = None,
        platform: str = sys.platform,
    ) -> None:
        """Take the words to start; `config_home` stands in for the platform's own folder."""
        self._command = tuple(command)
        self._form = FORMS.get(platform, XDG)
        self._home = self._form.home() if config_home is None else config_home
        self.path = self._home / self._form.place

    def state(self) -> tuple[bool, str]:
        """Say whether the program starts at the next login, and in words what is there."""
        on, words = self._start_file()
        return on, " ".join(filter(None, (words, self._service(on=on))))

    def switch(self, on: bool) -> str:  # noqa: FBT001 - the switch's own word
        """Switch on or off and give words on what is so now; Refusal where it cannot be done."""
        self._refuse_foreign()
        if on:
            self._write(self._text())
            return self._with_doubt("Studio Log starts at the next login.")
        if self._shared():
            self._write(self._form.hides)
        else:
            self._take_away()
        return _OFF

    # -- reading ---------------------------------------------------------------------------

    def _start_file(self) -> tuple[bool, str]:
        try:
            where = self.path if _is_there(self.path) else self._shared()
            if where is None:
                return False, _OFF
            found = self._read(where)
        except OSError as error:
            return False, f"{self.path} cannot be read ({error.strerror}): see to its rights."
        except ValueError:
            return False, f"{_OFF} {self.path} cannot be understood. {_ANEW}"
        if found is None:
            return False, f"{_OFF} {where} is not of Studio Log's making; it is left alone."
        return self._judged(where, found)

    def _judged(self, where: Path, found: Found) -> tuple[bool, str]:
        if not found.on:
            return False, f"{_OFF} {where} is there, but switched off."
        gone = next((one for one in _programs(found) if shutil.which(one) is None), None)
        gone = gone or next((one for one in found.command[1:2] if _is_gone(one)), None)
        if gone is not None:
            return False, f"{_OFF} {where} names {gone}, which is not there any more. {_ANEW}"
        if found.command != self._command:
            shown = shlex.join(found.command)
            return True, (
                f"Something else than this copy with this studio starts at login: {shown}. "
                "Switch off and on to start this one."
            )
        return True, self._with_doubt("Studio Log starts at login.")

    def _with_doubt(self, words: str) -> str:
        return " ".join(filter(None, (words, self._form.doubt(self._command))))

    def _read(self, where: Path) -> Found | None:
        """Read a start file; None where it is not ours."""
        if not where.is_file():
            return None
        with where.open("rb") as file:
            data = file.read(LARGEST + 1)
        ours = len(data) <= LARGEST and self._form.mark.encode() in data
        return self._form.read(data) if ours else None

    def _shared(self) -> Path | None:
        """Give the start file that holds for every user, if there is one."""
        homes = self._form.shared()
        return next(
            (one / self._form.place for one in homes if _is_there(one / self._form.place)), None
        )

    def _service(self, *, on: bool) -> str:
        """Say whether the service without a window is switched on too (Linux only)."""
        if self._form is not XDG:
            return ""
        wants = (self._home / "systemd" / "user").glob("*.wants")
        links = [one / UNIT for one in wants if _is_there(one / UNIT)]
        if not links:
            return ""
        if not any(one.exists() for one in links):
            return f"The service {UNIT} is switched on, but its file is gone."
        too = "too; only one of the two rings" if on else "and reminds without the window"
        return f"The service {UNIT} is switched on {too}."

    # -- writing ---------------------------------------------------------------------------

    def _refuse_foreign(self) -> None:
        if not _is_there(self.path):
            return
        try:
            found = self._read(self.path)
        except OSError as error:
            raise self._refusal(error.strerror or "it cannot be read") from error
        except ValueError:
            return  # ours, but spoilt: it may be replaced
        if found is None:
            raise self._refusal("something of that name is there that Studio Log did not write")

    def _text(self) -> str:
        try:
            text = self._form.write(self._command)
            text.encode("utf-8")
        except ValueError as error:
            raise Refusal(
                "Starting at login cannot be switched on: the name of the program or of the "
                f"studio's folder holds what a start file cannot hold ({_why(error)}). Nothing "
                "was changed. Give the folder another name, then try again."
            ) from error
        return text

    def _write(self, text: str) -> None:
        data = text.replace("\n", self._form.newline).encode("utf-8")
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            write_whole(self.path, data)
        except OSError as error:
            blocked = isinstance(error, FileExistsError | NotADirectoryError)
            why = "a file stands where its folder should be" if blocked else error.strerror
            raise self._refusal(why or "no folder can be made there") from error
        except Refusal as refusal:
            cause = refusal.__cause__
            why = cause.strerror if isinstance(cause, OSError) else ""
            raise self._refusal(why or "it cannot be written") from refusal
        with contextlib.suppress(OSError):  # a disk that knows no rights
            self.path.chmod(MODE)

    def _take_away(self) -> None:
        try:
            self.path.unlink(missing_ok=True)
        except OSError as error:
            raise self._refusal(error.strerror or "it cannot be taken away") from error

    def _refusal(self, why: str) -> Refusal:
        return Refusal(
            f"Starting at login was not changed: {self.path} ({why}). What is there was left as it "
            "is. Put it right or take it away, then try again."
        )


def _is_there(path: Path) -> bool:
    """Say whether anything has that name, a link to nothing as well."""
    return os.path.lexists(path)


def _programs(found: Found) -> list[str]:
    return [one for one in (*found.command[:1], found.needs) if one]


def _is_gone(word: str) -> bool:
    """Say whether a word names a script that is not there."""
    return word.endswith(".py") and not Path(word).exists()


def _why(error: ValueError) -> str:
    return "a sign that is not text" if isinstance(error, UnicodeError) else str(error)
