"""The child's side of planning in a process of its own: one ask comes in, messages go out.

Lines of JSON both ways. In: the ask, then perhaps `{"end": true}`; when the way in closes, the
parent is gone and so goes the child, whatever it is at. Out: any number of `{"better": fields}`,
then one `{"done": fields}` or `{"failed": sentence}`.
"""

import json
import os
import signal
import sys
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from threading import Lock, Thread
from time import monotonic
from typing import Any, BinaryIO, Final

from studio_log.language.tongue import PLAIN_ENGLISH, BadTongueError, Tongue, read_tongue, speak_as
from studio_log.language.words import tr, tr_later
from studio_log.planning.effort import ENGINES, MOST_SECONDS, WrongPlanError
from studio_log.planning.read import LARGEST

LONGEST_ASK: Final = 3 * LARGEST
"""Bytes: a problem, an old plan, and room for how JSON writes them."""
APART_S: Final = 0.1
"""Seconds between two better plans that are told of; the first is told at once."""
MOST_NUMBER: Final = 2**31 - 1
NICER: Final = 10
"""Added to the process's niceness, so that the window stays smooth."""


class BadAskError(Exception):
    """An ask that makes no sense; the words say why."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked, its limits checked; the problem is as it came, for its reader."""

    do: str
    problem: bytes
    engine: str
    seconds: float
    tries: int | None
    seed: int
    keep: dict[str, Any] | None
    more: dict[str, Any]
    tongue: Tongue = PLAIN_ENGLISH


class Talk:
    """Says what is found, and hears when it is to end."""

    def __init__(self, come: BinaryIO, go: BinaryIO) -> None:
        self._come, self._go = come, go
        self._lock = Lock()
        self._begun, self._seconds = monotonic(), MOST_SECONDS
        self._said, self._kept = -APART_S, None  # type: tuple[float, dict[str, Any] | None]
        self.told = False

    def asked(self) -> Asked:
        """Read the ask; BadAskError where it makes no sense. From then on the end is heard."""
        line = self._come.readline(LONGEST_ASK + 1)
        if not line.endswith(b"\n"):
            raise BadAskError("What is to be planned is missing, cut short or too long.")
        found = read_ask(line)
        self._seconds = found.seconds
        Thread(target=self._listen, name="end of planning", daemon=True).start()
        return found

    def _listen(self) -> None:
        while self._come.readline(1000):
            self.told = True
        os._exit(0)  # nobody is there to hear what would still be found

    def over(self) -> bool:
        """Say whether it is time to end; tells what was held back."""
        if self._kept is not None and self.passed() - self._said >= APART_S:
            self._say_kept()
        return self.told or self.passed() >= self._seconds

    def passed(self) -> float:
        """Give the seconds since it was begun."""
        return monotonic() - self._begun

    def better(self, fields: dict[str, Any]) -> None:
        """Tell of a better plan: at once, or a moment later if one was told just now."""
        self._kept = fields
        if self.passed() - self._said >= APART_S:
            self._say_kept()

    def _say_kept(self) -> None:
        with self._lock:
            kept, self._kept = self._kept, None
            self._said = self.passed()
        if kept is not None:
            self.say({"better": kept | {"seconds": round(self.passed(), 3)}})

    def done(self, fields: dict[str, Any]) -> None:
        """Tell what came of it, as the last."""
        self.say({"done": fields | {"seconds": round(self.passed(), 3)}})

    def say(self, message: Mapping[str, Any]) -> None:
        """Send one message."""
        data = json.dumps(message, separators=(",", ":"), default=str).encode()
        with self._lock:
            self._go.write(data + b"\n")
            self._go.flush()


def read_ask(line: bytes) -> Asked:
    """Give an ask out of a line of JSON; BadAskError where it makes no sense."""
    try:
        value = json.loads(line)
    except (ValueError, RecursionError):
        value = None
    if not isinstance(value, dict) or not isinstance(value.get("problem"), dict):
        raise BadAskError("What is to be planned is no object with a problem.")
    seconds, tries = value.get("seconds"), value.get("tries")
    seed: Any = value.get("seed")
    if not isinstance(seconds, int | float) or not 0 < seconds <= MOST_SECONDS:
        raise BadAskError(f"Planning is asked for no number of seconds up to {MOST_SECONDS:g}.")
    if not _counts(seed) or not (tries is None or _counts(tries)):
        raise BadAskError("Tries and seed have to be whole numbers, not below 0.")
    if value.get("engine") not in ENGINES or not isinstance(value.get("do"), str):
        raise BadAskError(f"The engine has to be one of {', '.join(ENGINES)}.")
    if not isinstance(value.get("keep"), dict | None) or not isinstance(value.get("more"), dict):
        raise BadAskError("The plan to keep to is no plan.")
    problem = json.dumps(value["problem"]).encode()
    return Asked(
        value["do"], problem, value["engine"], float(seconds), tries, int(seed),
        value["keep"], value["more"], _tongue(value.get("tongue", {})),
    )  # fmt: skip


def _tongue(value: Any) -> Tongue:
    try:
        return read_tongue(value)
    except BadTongueError as bad:
        raise BadAskError(str(bad)) from None


def _counts(number: Any) -> bool:
    return isinstance(number, int) and 0 <= number <= MOST_NUMBER


Act = Callable[[Asked, Talk], dict[str, Any]]
"""Gives the fields of what came of an ask; the plans on the way go through Talk.better."""


def run(acts: Mapping[str, Act]) -> int:
    """Do what the way in asks for, with one of the acts; the exit of the process."""
    with suppress(AttributeError, OSError):  # not every system knows of it, or lets one
        os.nice(NICER)
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl+C is for the parent, which says "end"
    talk = Talk(sys.stdin.buffer, sys.stdout.buffer)
    try:
        _answer(talk, acts)
    except OSError:
        return 1  # the parent hears nothing any more
    return 0


def _nobody(asked: Asked, _talk: Talk) -> dict[str, Any]:
    raise BadAskError(f"Nobody here knows how to do {asked.do[:40]!r}.")


def _answer(talk: Talk, acts: Mapping[str, Act]) -> None:
    try:
        asked = talk.asked()
        speak_as(asked.tongue)
        fields = acts.get(asked.do, _nobody)(asked, talk)
    except BadAskError as bad:
        talk.say({"failed": tr("{fault} Nothing was planned.", fault=bad)})
    except WrongPlanError as wrong:
        text = tr_later("A plan broke a rule and was not taken: {faults}")
        talk.say({"failed": tr(text, faults=str(wrong)[:400])})
    except BrokenPipeError:
        raise
    except Exception as fault:  # noqa: BLE001 - whatever it is, the window is told of it
        words = f"{type(fault).__name__}: {str(fault)[:200]}"
        text = tr_later("Planning ended by a fault of this program ({words}).")
        talk.say({"failed": tr(text, words=words)})
    else:
        talk.done(fields)
