"""What keeps the calendar and further copies up to date, on a thread that nobody waits for.

The studio's thread is asked for values only; whatever writes to a stick, a share or a synced
folder happens here, since such a place may hang.
"""

import threading
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Protocol

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.language.words import tr
from studio_log.services.calendar import CalendarAhead, CalendarMatter, CalendarMatterFor
from studio_log.services.calendar_out import file_in, write_calendar
from studio_log.services.calendar_work import worked_out
from studio_log.services.commands import Outcome
from studio_log.services.copies import CopySeen
from studio_log.services.copies_elsewhere import (
    elsewhere_words,
    failed_words,
    lost_words,
    note_elsewhere,
    old_words,
)
from studio_log.services.copies_listed import listed_elsewhere
from studio_log.services.places import PlacesSeen, read_places
from studio_log.services.worker import ThreadWorker
from studio_log.store import files
from studio_log.store.backup import copy_elsewhere

if TYPE_CHECKING:
    from concurrent.futures import Future

SETTLE: Final = timedelta(seconds=5)
"""After a change the dyer often does another one: the file is written once for both."""


AGAIN: Final = timedelta(hours=1)
"""After which a disk that refused is tried again; one that was away is tried at each change."""


def _nothing() -> None:
    """Do nothing."""


class Upkeep:
    """What the window is told of calendar and copies; read and written on the studio's thread."""

    def __init__(self) -> None:
        self.copy_words = ""
        self.calendar_words = ""
        self.elsewhere_words = ""
        self.copies_there: tuple[CopySeen, ...] = ()
        """Those in the place on another disk, as they were last seen."""
        self.anew = False
        """Whether a copy is to be written there although today's is there."""
        self.faults: dict[str, str] = {}
        """Sentences by what they are about."""

        self.day_begun: Callable[[], None] = _nothing
        """Called once a day, after the day's copy."""

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

    def local_now(self) -> datetime:
        """Give the present in the studio's zone."""
        ...

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
        self._again_at = datetime.min.replace(tzinfo=UTC)
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
        if self._submit(self._studio.has_bell).result():
            self._follow_plan()
            self._copy_elsewhere()

    def _follow_plan(self) -> None:
        chosen = read_places(self._studio.folder).calendar
        if not chosen:
            self._submit(partial(self._say, "")).result()
            return
        matter: CalendarMatter = self._submit(self._studio.ask, CalendarMatterFor()).result()
        told = _written(worked_out(matter), Path(chosen))
        self._submit(partial(self._say, *told)).result()

    def _copy_elsewhere(self) -> None:
        """Take today's copy to the chosen place; a disk that refuses is tried hourly."""
        folder, chosen = self._studio.folder, read_places(self._studio.folder).copies
        now: datetime = self._submit(self._studio.local_now).result()
        if chosen and (self._studio.upkeep.anew or now >= self._again_at):
            words, fault = self._copied_to(Path(chosen), now)
            there = tuple(listed_elsewhere(Path(chosen)))
            self._submit(partial(self._say_copies, words, fault, there)).result()
        elif not chosen:
            self._submit(partial(self._say_copies, "", "", ())).result()
        told = "copies" in self._studio.upkeep.faults  # it says how old the last one is
        old = old_words(folder, now.date(), only_here=told)
        self._submit(partial(self._studio.upkeep.say, "old copies", old)).result()

    def _copied_to(self, chosen: Path, now: datetime) -> tuple[str, str]:
        """Copy, and give words on it and a sentence where it failed."""
        folder, today = self._studio.folder, now.date()
        anew, self._studio.upkeep.anew = self._studio.upkeep.anew, False
        self._again_at = now
        try:
            made = copy_elsewhere(folder / files.FILE_NAME, chosen, now, anew=anew)
        except BadStudio as refused:
            if chosen.is_dir():
                self._again_at = now + AGAIN
            known = note_elsewhere(folder, str(chosen), today, good=False)
            return failed_words(known, str(chosen), refused, today)
        known = note_elsewhere(folder, str(chosen), today, good=True)
        lost = made.photos.lost if made is not None else ()
        return elsewhere_words(known), lost_words(len(lost))

    def _say_copies(self, words: str, fault: str, there: tuple[CopySeen, ...]) -> None:
        upkeep = self._studio.upkeep
        news = upkeep.say("copies", fault) or upkeep.elsewhere_words != words
        news = news or upkeep.copies_there != there
        upkeep.elsewhere_words, upkeep.copies_there = words, there
        if news:
            self._studio.tell_news(Outcome(FOLLOWED, reminders=True))

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
