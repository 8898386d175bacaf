"""What the next process has to know of the notices on the screen, in a small file.

A process that is killed leaves its notices behind. Whoever has the bell next reads here which
they are: it can take them away or replace them, and their buttons are answered. The file is
never waited for and never trusted; where it fails, old notices stay until they are closed by hand.
"""

import json
import logging
import os
import re
import stat
import threading
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, Final

from studio_log.outside.notice_parcel import LONGEST_BUTTON, LONGEST_TITLE, URGENCIES, Receipt
from studio_log.outside.notice_receipts import MOST_REMEMBERED
from studio_log.services.ports import NoticeText

FILE_NAME: Final = "notices.json"
FORM: Final = 1
LARGEST: Final = 262_144
"""In bytes; three hundred usual notices are a third of it."""
MOST_KEYS: Final = 500
MOST_ANSWERS: Final = 8
LONGEST_KEY: Final = 200
LARGEST_NUMBER: Final = 2**32 - 1
"""Receipts are of the bus's type u: D-Bus Specification, "Basic types"."""
# The id of a bus is 32 hex digits, the name of a guest begins with a colon and has at most 255
# characters: D-Bus Specification, "UUIDs" and "Valid Names".
BUS_ID: Final = re.compile(r"[0-9a-f]{32}")
GUEST: Final = re.compile(r":[A-Za-z0-9_.-]{1,254}")
READING: Final = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0)
"""A pipe of that name would be waited for otherwise."""
WRITING: Final = (
    os.O_WRONLY
    | os.O_CREAT
    | os.O_TRUNC
    | getattr(os, "O_NONBLOCK", 0)
    | getattr(os, "O_NOFOLLOW", 0)
)
Left = tuple[Receipt, NoticeText]
"""A notice on the screen; one that is to be taken away has no keys."""

_log = logging.getLogger(__name__)


class NoticeMemory:
    """The file of one studio; written only between `begin` and `end`. Any thread may call.

    Nothing here raises an error. It is not forced to the disk: after a loss of power the
    session it tells of is gone as well.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        self._guard = threading.Lock()
        self._ours = False
        self._last = b""
        self._said = False

    def begin(self) -> list[Left]:
        """Give what an earlier process left, oldest first; the file is ours from now on."""
        with self._guard:
            self._ours, self._last = True, b""
            try:
                return _checked(json.loads(_content(self._path)))
            except FileNotFoundError:
                return []
            except (OSError, ValueError, RecursionError) as error:
                _log.info("which notices an earlier run left is not known: %s", error)
                return []

    def end(self) -> None:
        """Write no more: the file is another process's, or whoever comes next reads it."""
        with self._guard:
            self._ours = False

    def write(self, standing: Callable[[], Sequence[Left]]) -> None:
        """Write which notices stand; `standing` is asked when nobody else writes."""
        with self._guard:
            if not self._ours:
                return
            told = _written(standing())
            if told == self._last:
                return
            try:
                self._put(told)
            except OSError as error:
                if not self._said:
                    self._said = True
                    _log.info("which notices stand could not be kept: %s", error)

    def _put(self, told: bytes) -> None:
        self._last = b""
        if told:
            beside = self._path.with_name(f"{self._path.name}.new")
            with os.fdopen(os.open(beside, WRITING, 0o600), "wb") as out:
                out.write(told)
            beside.replace(self._path)  # whole or not at all, whenever the process dies
        else:
            self._path.unlink(missing_ok=True)
        self._last = told


def _written(standing: Sequence[Left]) -> bytes:
    """Give the file's text, b"" for nothing; what does not fit is left out, oldest first."""
    kept: list[bytes] = []
    owner, room = "", LARGEST - 200  # for what stands around the notices
    for receipt, text in reversed(standing[-MOST_REMEMBERED:]):
        owner, row = owner or receipt.owner, _row(receipt, text)
        if receipt.owner != owner or not _fits(owner, row):
            continue
        one = json.dumps(row).encode("ascii")
        room -= len(one) + 2
        if room < 0:
            break
        kept.append(one)
    bus, _, service = owner.partition(" ")
    if not kept or not BUS_ID.fullmatch(bus) or not GUEST.fullmatch(service):
        return b""
    head = json.dumps({"form": FORM, "bus": bus, "service": service})[:-1].encode("ascii")
    return head + b', "notices": [\n' + b",\n".join(reversed(kept)) + b"\n]}\n"


def _row(receipt: Receipt, text: NoticeText) -> dict[str, object]:
    return {
        "number": receipt.number,
        "title": text.title[:LONGEST_TITLE],
        "urgency": text.urgency,
        "keys": list(text.keys),
        "answers": [[key, words[:LONGEST_BUTTON]] for key, words in text.answers],
        "answers_to": text.answers_to,
    }


def _fits(owner: str, row: dict[str, object]) -> bool:
    """Say whether a notice could be read again."""
    try:
        _notice(owner, row)
    except ValueError:
        return False
    return True


def _content(path: Path) -> bytes:
    """Give what stands in a file; ValueError for what is none, or far too large."""
    with os.fdopen(os.open(path, READING), "rb") as told:
        about = os.fstat(told.fileno())
        if not stat.S_ISREG(about.st_mode) or about.st_size > LARGEST:
            raise ValueError("it is no file that we wrote")
        return told.read(LARGEST)


def _checked(told: Any) -> list[Left]:
    """Give the notices of a file that was read; ValueError for anything that is amiss."""
    if not isinstance(told, dict) or told.get("form") != FORM:
        raise ValueError("it has another form")
    bus, service = _text(told.get("bus"), 32), _text(told.get("service"), 255)
    if not BUS_ID.fullmatch(bus) or not GUEST.fullmatch(service):
        raise ValueError("it names no service")
    rows = _list(told.get("notices"), MOST_REMEMBERED)
    left = [_notice(f"{bus} {service}", row) for row in rows]
    if len({receipt.number for receipt, _ in left}) < len(left):
        raise ValueError("two notices have one number")
    return left


def _notice(owner: str, row: Any) -> Left:
    if not isinstance(row, dict):
        raise ValueError("a notice is none")  # noqa: TRY004 - any fault of the file is one fault
    number, urgency = row.get("number"), _text(row.get("urgency"), 20)
    if type(number) is not int or not 0 < number <= LARGEST_NUMBER or urgency not in URGENCIES:
        raise ValueError("a number or an urgency is none")
    text = NoticeText(
        title=_text(row.get("title"), LONGEST_TITLE),
        body="",
        urgency=urgency,
        keys=tuple(_text(key, LONGEST_KEY) for key in _list(row.get("keys"), MOST_KEYS)),
        answers=tuple(_answer(one) for one in _list(row.get("answers"), MOST_ANSWERS)),
        answers_to=_text(row.get("answers_to"), LONGEST_KEY),
    )
    return Receipt(owner, number), text


def _answer(told: Any) -> tuple[str, str]:
    pair = _list(told, 2)
    if len(pair) != 2:
        raise ValueError("an answer is none")
    return _text(pair[0], LONGEST_BUTTON), _text(pair[1], LONGEST_BUTTON)


def _text(told: Any, longest: int) -> str:
    if not isinstance(told, str) or len(told) > longest:
        raise ValueError("a text is none, or too long")
    return told


def _list(told: Any, most: int) -> list[Any]:
    if not isinstance(told, list) or len(told) > most:
        raise ValueError("a list is none, or too long")
    return told
