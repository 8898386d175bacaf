"""The studio: do a command, answer a question, ring what is due.

One clock reading a command, one transaction, one outcome; listeners hear of it after the
commit, and the alarm is set to the next moment anybody is needed.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict
from datetime import date, datetime, timedelta
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

from studio_log.domain.cautions import Caution
from studio_log.domain.errors import Question, Refusal
from studio_log.domain.reminders import Record
from studio_log.language.words import tr
from studio_log.services import commands as c
from studio_log.services import copy_keeping, manners, reads, ringing, safety, sharing
from studio_log.services.desk import Desk
from studio_log.services.handlers import HANDLERS, TIMELESS
from studio_log.services.keeping import Upkeep
from studio_log.services.laptops import Laptops
from studio_log.services.method_reads import fresh_methods, import_method
from studio_log.services.open_studio import NoSecret, OpenStudio
from studio_log.services.places import ChangePlaces, change_places
from studio_log.services.ports import (
    Alarm,
    Bell,
    Clock,
    Delivery,
    Notice,
    NoticeText,
    Raised,
    Secret,
)
from studio_log.services.public_holidays import check_place
from studio_log.services.settings import WITHOUT_TIMES
from studio_log.services.settings_check import read_settings
from studio_log.services.shelf import Shelf
from studio_log.services.telling import Telling
from studio_log.store.faults import WrongPassword
from studio_log.store.places import open_any
from studio_log.store.work import Work

T = TypeVar("T")

TAKE_BACK_FOR = timedelta(minutes=10)
RETRY = timedelta(seconds=30)
"""When another process has the bell, or a moment has passed while nothing may ring."""


OUTSIDE: Mapping[type, Callable[[Any, Any], c.Outcome]] = {
    **copy_keeping.HANDLERS,
    **sharing.HANDLERS,
}


class Studio(OpenStudio):
    """One open studio. Used from one thread; every method may raise Refusal."""

    def __init__(
        self,
        folder: Path,
        clock: Clock,
        shipped: Mapping[str, str],
        cautions: Mapping[str, Caution],
        secret: Secret | None = None,
    ) -> None:
        """Open the studio in a folder; `shipped` maps file names to the methods' TOML.

        `secret` knows the password where the studio lies on a server.
        """
        super().__init__(folder, clock, shipped, secret or NoSecret())
        self.cautions = cautions
        self.shelf = Shelf()
        self.alarm: Alarm | None = None
        self.telling = Telling()
        self.telling.state_changed = partial(self._tell, c.Outcome(reminders=True))
        self.shows_here = ringing.IN_WINDOW
        """The channel that this process is itself; "" where nobody sees it."""
        self.bell: Bell | None = None
        self.last_act: tuple[c.Outcome, datetime] | None = None
        self.upkeep = Upkeep()
        self._copied: date | None = None
        self._ending = self._waits_for_bell = False
        self._zone_seen = ""
        self._unheard_until = clock.now()
        self._looked: set[str] = set()
        self._laptops = Laptops()
        self._begin()
        self._keep_copy_daily()

    # -- settings and methods ------------------------------------------------------

    def _begin(self) -> None:
        """Know the studio that was opened, and give it the methods of this version."""
        if self.store.address:
            self._know()  # what is sent is worked out by settings and methods
            self._laptops.reach(self)
        if isinstance(self.store.refused, WrongPassword):  # which can be asked for
            self.store.close()
            raise self.store.refused
        self._seen = self.store.data_version()
        self._know()
        if fresh := fresh_methods(self._shipped, self.book):
            self._in_work(partial(self._ship, fresh))

    @property
    def notice(self) -> Notice | None:
        """The desktop's notices; None where this process shows none."""
        return self.telling.notice

    @notice.setter
    def notice(self, notice: Notice | None) -> None:
        self.telling.notice = notice

    def _keep_copy_daily(self) -> None:
        """Keep today's copy, once a day; a failing one is said, never in the way."""
        today = self.local_now().date()
        if self._copied == today:
            return
        self._copied = today
        copy_keeping.keep_daily(self, self.local_now())
        self.upkeep.day_begun()

    # -- doing ----------------------------------------------------------------------

    def do(self, command: object) -> c.Outcome:
        """Do one command; Refusal or Question where it is not done, and nothing changed."""
        if isinstance(command, c.RaiseDue):
            return self.raise_due()
        if (outside := OUTSIDE.get(type(command))) is not None:
            self._after(done := outside(self, command))
            return done
        settings, book = self._settings, dict(self.book)

        def turn(work: Work) -> c.Outcome:
            self._settings, self.book = settings, dict(book)
            outcome = self._handle(self.desk(work), command)
            self._anchor = work.journal.anchor()
            return outcome

        try:
            outcome = self._in_work(turn)
        except BaseException:
            # These may know what the rolled-back transaction never wrote.
            self.cache.clear()
            self._settings, self.book = settings, book
            raise
        if isinstance(command, c.Undo) or outcome.final:
            self.last_act = None
        elif outcome.subject:
            self.last_act = (outcome, self.clock.now())
        self._after(outcome)
        return outcome

    def _handle(self, desk: Desk, command: object) -> c.Outcome:
        if isinstance(command, c.ChangeSettings):
            return self._change_settings(desk, command)
        if isinstance(command, c.ImportMethod):
            return import_method(desk, command, self.book)
        if isinstance(command, ChangePlaces):
            change_places(self.folder, command)
            return c.Outcome(tr("The place is kept."))
        if isinstance(command, c.Hush):
            self._change_settings(desk, manners.hush(desk, command))
            return c.Outcome(manners.hush_words(desk), settings=True, reminders=True)
        if desk.clock_fault and type(command) not in TIMELESS and not command.sure:  # type: ignore[attr-defined]
            raise Question(f"{desk.clock_fault} Write it down with this time all the same?")
        outcome = HANDLERS[type(command)](desk, command)
        if outcome.settings:
            self.read_kept_settings(desk.work)
        return outcome

    def _after(self, outcome: c.Outcome) -> None:
        self._keep_copy_daily()
        self.set_alarm()
        if outcome.reminders and self.telling.standing:
            with self.store.reading() as look:
                desk = self.desk(look)
                self.telling.revise(ringing.ringing_keys(desk), partial(ringing.retold, desk))
        self._tell(outcome)

    def _change_settings(self, desk: Desk, command: c.ChangeSettings) -> c.Outcome:
        after = read_settings({**asdict(self._settings), **command.values}, strict=True)
        if "holiday_place" in command.values:
            check_place(after.holiday_place)
        self._keep_settings(desk.work, {name: getattr(after, name) for name in command.values})
        self._settings = after
        desk.settings, desk.zone = after, self.zone
        if command.values.keys() - WITHOUT_TIMES:
            self._settle_all(desk, "the settings changed")
        return c.Outcome("Settings are saved.", settings=True, reminders=True)

    # -- asking ---------------------------------------------------------------------

    def ask(self, question: object) -> Any:
        """Answer one question (see services.questions)."""
        with self.store.reading() as look:
            return reads.answer(self, self.desk(look), question)

    # -- ringing --------------------------------------------------------------------

    def raise_due(self) -> c.Outcome:
        """Raise what is due, if this process has the bell; then set the alarm again."""
        if self._ending or not self.store.rings:
            return c.Outcome()
        self._waits_for_bell = not self.telling.may_ring(self.bell, self._after)
        if self._waits_for_bell or self._unheard(self.clock.now()):
            self.set_alarm()
            return c.Outcome()
        self._keep_copy_daily()  # first, or a laptop that slept would be told of its old copies
        due, looks, text, counted = self._in_work(self._find_due)
        if text is not None:
            self._show(text, due, looks)
        lots = frozenset(one.reminder.subject for one in due)
        outcome = c.Outcome(text.title if text else "", lots=lots, reminders=bool(due) or counted)
        if counted and text is None:
            self._after(outcome)
        else:
            self.set_alarm()  # what was shown is told of once it is recorded
        return outcome

    def _find_due(
        self, work: Work
    ) -> tuple[list[Record], list[manners.Look], NoticeText | None, bool]:
        """Give what rings now, the looks that are due, their notice; whether any was quiet."""
        desk = self.desk(work)
        self._follow_zone(desk)
        due, counted = ringing.find_due(desk, under_way=self.telling.under_way)
        looks = manners.looks_due(desk, self._looked)
        text = ringing.text_of(desk, due, looks) if due or looks else None
        return due, looks, text, counted

    def _follow_zone(self, desk: Desk) -> None:
        """Work everything out anew where the laptop has travelled: nights are local."""
        before, self._zone_seen = self._zone_seen, desk.zone
        if before and before != desk.zone:
            self._settle_all(desk, "the time zone changed")

    def _settle_all(self, desk: Desk, why: str) -> None:
        safety.settle_all(desk, why)

    def _show(self, text: NoticeText, due: list[Record], looks: list[manners.Look]) -> None:
        """Show at once here, and by the messenger on the desktop; what came of it is recorded."""
        self._tell(text)
        self.telling.tell(text, partial(self._told, text, due, looks))

    def _told(
        self,
        text: NoticeText,
        due: list[Record],
        looks: list[manners.Look],
        deliveries: Sequence[Delivery],
    ) -> None:
        """Record what came of showing; where nobody can have seen it, it is shown again."""
        here = (self.shows_here,) if self.shows_here else ()
        shown = (*(one.channel for one in deliveries if one.ok), *here)

        def turn(work: Work) -> None:
            desk = self.desk(work)
            if shown:
                ringing.record_raised(desk, ringing.still_open(desk, due), shown)
                manners.record_looks(desk, looks, shown)
            seen = (Delivery(one, ok=True, words="shown") for one in here)
            ringing.record_deliveries(desk, due, (*deliveries, *seen))

        self._in_work(turn)
        self._laptops.rang(due, self.clock.now())
        if not shown:
            self._unheard_until = self.clock.now() + RETRY
            self._looked.difference_update(one.key for one in looks)
        self._tell(Raised(text, tuple(deliveries)))
        self._after(c.Outcome(reminders=True))

    def has_bell(self) -> bool:
        """Say whether this process rings; one without a bell is alone and does."""
        return self.bell is None or self.bell.hold()

    def answer_notice(self, text: NoticeText, answer: str) -> None:
        """Do what a button of a notice says; a refusal is told by a notice of its own."""
        try:
            for command in ringing.answers_of(self.store, text, answer):
                self.do(command)
        except Refusal as refusal:
            words = f"{refusal} Open Studio Log to answer it there."
            self.telling.say(NoticeText("Not written down", words, "soon", ()))
            self._after(c.Outcome(reminders=True))

    def next_ring(self) -> datetime | None:
        """Give when something may ring next, quiet hours kept; None where nothing will."""
        with self.store.reading() as look:
            desk = self.desk(look)
            moments = (ringing.next_ring(desk), manners.next_look(desk, self._looked))
            return min((at for at in moments if at is not None), default=None)

    def set_alarm(self) -> None:
        """Set the alarm to the next ring; soon again where this process may not ring."""
        if self.alarm is None or self._ending:
            return
        at, now = self.next_ring() if self.store.rings else None, self.clock.now()
        if at is not None and at <= now and self._must_wait(now):
            at = now + RETRY
        self.alarm.set(at)

    def _must_wait(self, now: datetime) -> bool:
        """Say whether what is due cannot ring now: shown already, unheard, or not our bell."""
        if self.telling.under_way or self._unheard(now):
            return True
        return self.bell is not None and not self.bell.hold()

    def _unheard(self, now: datetime) -> bool:
        """Say whether nobody could see what was shown just now; a clock set back ends that."""
        return now < self._unheard_until <= now + RETRY

    def heard_of_change(self) -> c.Outcome | None:
        """Look whether another process has written; tell the listeners if so.

        Without a change the bell may have been given up: it is asked for again.
        """
        self._laptops.reach(self)
        seen = self.store.data_version()
        if seen == self._seen:
            if self._waits_for_bell:
                self.raise_due()
            return None
        self._seen = seen
        self._know()
        self._laptops.echo(self)
        self._after(outcome := c.Outcome(reminders=True, settings=True, lots=frozenset({"*"})))
        return outcome

    # -- safety ---------------------------------------------------------------------

    def backup(self, to: Path) -> str:
        """Write a verified copy of the studio, with its photos."""
        return copy_keeping.backup_words(self, to)

    def begin_anew(self) -> None:
        """Open the file again, in which another journal may stand now."""
        self.cache.clear()
        self.store.close()
        self.store = open_any(self.folder, self.secret, now=self.clock.now())
        self._begin()
        self._laptops.listen_on(self)
        self.last_act = None

    def listen(self, heard: Callable[[], None]) -> None:
        """Have a call made, in some thread, when the studio's server tells of a change."""
        self._laptops.listen(self, heard)

    def check(self, *, repair: bool = False) -> list[str]:
        """Look for damage; with `repair` work out anew what can be derived from the journal."""
        found = safety.look_through(self.store, self.desk)
        if repair:
            self.rebuild()
        return found

    def rebuild(self) -> None:
        """Work out every kept line and reminder anew from the journal."""
        self.cache.clear()
        self._in_work(lambda work: safety.rebuild(self.desk(work)))
        self._after(c.Outcome(reminders=True, settings=True, lots=frozenset({"*"})))

    def stop_ringing(self) -> None:
        """Raise nothing from now on; what is under way still comes home."""
        self._ending = True
        if self.alarm is not None:
            self.alarm.close()

    def close(self) -> None:
        """Stop ringing and close the file."""
        self.stop_ringing()
        self.telling.close()
        if self.bell is not None:
            self.bell.release()
        self.store.close()
