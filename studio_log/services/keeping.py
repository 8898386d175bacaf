"""What keeps the calendar and further copies up to date, on a thread that nobody waits for.

The studio's thread is asked for values only; whatever writes to a stick, a share or a synced
folder happens here, since such a place may hang.
"""

import threading
from collections.abc import Callable
from datetime import timedelta
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Protocol

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.services.calendar import CalendarAhead, CalendarFor
from studio_log.services.calendar_out import file_in, write_calendar
from studio_log.services.commands import Outcome
from studio_log.services.places import PlacesSeen, read_places
from studio_log.services.worker import ThreadWorker

if TYPE_CHECKING:
    from concurrent.futures import Future

SETTLE: Final = timedelta(seconds=5)
"""After a change the dyer often does another one: the file is written once for both."""


class Upkeep:
    """What the window is told of calendar and copies; read and written on the studio's thread."""

    def __init__(self) -> None:
        self.copy_words = ""
        self.calendar_words = ""
        self.faults: dict[str, str] = {}
        """Sentences by what they are about."""

    def seen(self, folder: Path) -> PlacesSeen:
        """Give what is chosen, and how it fares."""
        return PlacesSeen(read_places(folder), self.calendar_words, self.faults.get("calendar", ""))

    def say(self, about: str, fault: str) -> bool:
        """Put a sentence in place of the one before; say whether anything is new."""
        before = self.faults.get(about, "")
        if fault:
            self.faults[about] = fault
        else:
            self.faults.pop(about, None)
        return before != fault


class Studio(Protocol):
    """The studio as it is seen from here; called on its own thread only."""

    folder: Path
    upkeep: Upkeep

    def has_bell(self) -> bool:
        """Say whether this is the process that rings: one alone writes."""
        ...

    def ask(self, question: object) -> Any:
        """Answer a question."""
        ...

    def tell_news(self, outcome: Outcome) -> None:
        """Let the listeners know that something is told differently."""
        ...


class Keeper:
    """Writes the calendar after changes. `submit` runs a call on the studio's thread."""

    def __init__(
        self,
        studio: Studio,
        submit: Callable[..., "Future[Any]"],
        settle: timedelta = SETTLE,
    ) -> None:
        self._studio = studio
        self._submit = submit
        self._settle = settle.total_seconds()
        self._worker = ThreadWorker("keeper")
        self._ending = threading.Event()
        self._waiting = threading.Event()

    def heard(self, news: object) -> None:
        """Take note of a change; called on the studio's thread."""
        if isinstance(news, Outcome) and news.words != FOLLOWED:
            self.soon()

    def soon(self) -> None:
        """See to the places outside in a moment; called on the studio's thread."""
        if not self._waiting.is_set():
            self._waiting.set()
            self._worker.hand_on(self._follow)

    def close(self) -> None:
        """Write what still waits to be written, then end; the studio's thread still runs."""
        self._ending.set()
        self._worker.close()

    def _follow(self) -> None:
        self._ending.wait(self._settle)
        self._waiting.clear()
        chosen = read_places(self._studio.folder).calendar
        if not chosen:
            self._submit(partial(self._say, "")).result()
            return
        ahead = self._submit(self._ahead).result()
        if ahead is not None:
            self._submit(partial(self._say, *_written(ahead, Path(chosen)))).result()

    def _ahead(self) -> CalendarAhead | None:
        if not self._studio.has_bell():
            return None
        ahead: CalendarAhead = self._studio.ask(CalendarFor())
        return ahead

    def _say(self, words: str, fault: str = "") -> None:
        upkeep = self._studio.upkeep
        news = upkeep.say("calendar", fault) or upkeep.calendar_words != words
        upkeep.calendar_words = words
        if news:
            self._studio.tell_news(Outcome(FOLLOWED, reminders=True))


FOLLOWED: Final = "The places outside were seen to."
"""Begins no further look at them."""


def _written(ahead: CalendarAhead, chosen: Path) -> tuple[str, str]:
    """Write the calendar; gives words on what it holds, and a sentence where it failed."""
    try:
        if not (chosen.is_dir() or chosen.parent.is_dir()):
            return "", tr(
                "The calendar’s folder {folder} is not there. The calendar was not written; it "
                "is tried again with the next change.",
                folder=chosen if not chosen.suffix else chosen.parent,
            )
        return write_calendar(ahead, file_in(chosen)), ""
    except Refusal as refusal:
        return "", tr("The calendar does not follow the plan: {refusal}", refusal=refusal)
    except OSError as error:
        why = error.strerror or str(error)
        return "", tr("The calendar does not follow the plan: {refusal}", refusal=why)
