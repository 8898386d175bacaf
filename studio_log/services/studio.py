"""The studio: do a command, answer a question, ring what is due.

One clock reading a command, one transaction, one outcome; listeners hear of it after the
commit, and the alarm is set to the next moment anybody is needed.
"""

from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import asdict
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Any
from zoneinfo import ZoneInfo

from studio_log.domain.cautions import Caution
from studio_log.domain.errors import Refusal
from studio_log.domain.method_text import read_method
from studio_log.domain.milks import milk_from
from studio_log.domain.reminders import Cause
from studio_log.domain.replay import replay
from studio_log.services import commands as c
from studio_log.services import (
    lot_acts,
    marking,
    milk_acts,
    reads,
    ringing,
    taking_back,
)
from studio_log.services.desk import Desk, lot_line, step_lines
from studio_log.services.ports import Alarm, Bell, Clock, Listener, Notice, NoticeText
from studio_log.services.settings import Settings
from studio_log.services.settings_check import read_settings
from studio_log.store.backup import backup, daily_copy
from studio_log.store.check import check
from studio_log.store.database import Store, open_store
from studio_log.store.restore import restore
from studio_log.store.work import Work

if TYPE_CHECKING:
    from studio_log.domain.lots import Lot
    from studio_log.domain.methods import Method

Handler = Callable[[Desk, Any], c.Outcome]
HANDLERS: Mapping[type, Handler] = {
    c.NewLot: lot_acts.new_lot,
    c.GoOn: lot_acts.go_on,
    c.SetLot: lot_acts.set_lot,
    c.SplitLot: lot_acts.split_lot,
    c.NoteTagsPrinted: lot_acts.note_printed,
    c.Mark: marking.mark,
    c.Undo: taking_back.undo,
    c.Redo: taking_back.redo,
    c.Correct: taking_back.correct,
    c.NewMilk: milk_acts.new_milk,
    c.SetMilk: milk_acts.set_milk,
    c.AnswerReminder: ringing.answer,
}
TAKE_BACK_FOR = timedelta(minutes=10)
RETRY = timedelta(seconds=30)
"""When another process has the bell, or a moment has passed while nothing may ring."""


class Studio:
    """One open studio. Used from one thread; every method may raise Refusal."""

    def __init__(
        self,
        folder: Path,
        clock: Clock,
        shipped: Mapping[str, str],
        cautions: Mapping[str, Caution],
    ) -> None:
        """Open the studio in a folder; `shipped` maps file names to the methods' TOML."""
        self.folder = folder
        self.clock = clock
        self.cautions = cautions
        self.store: Store = open_store(folder, now=clock.now())
        self.book: dict[tuple[str, int], Method] = {}
        self.cache: dict[str, tuple[int, Lot]] = {}
        self.listeners: list[Listener] = []
        self.alarm: Alarm | None = None
        self.notice: Notice | None = None
        self.bell: Bell | None = None
        self.last_act: tuple[c.Outcome, datetime] | None = None
        self.copy_words = ""
        self._copied: date | None = None
        self._seen = self.store.data_version()
        self._settings = Settings()
        self._ship(shipped)
        self._keep_copy_daily()

    # -- settings and methods ------------------------------------------------------

    def _ship(self, shipped: Mapping[str, str]) -> None:
        """Bring the shipped methods into the studio once; a lot keeps its version."""
        with self.store.reading() as look:
            kept = {(one.slug, one.version): one.text for one in look.methods.all()}
            self._settings = read_settings(look.settings.all())
        self.book = {key: read_method(text, name=key[0]) for key, text in kept.items()}
        fresh = [read_method(text, name=name) for name, text in shipped.items()]
        fresh = [method for method in fresh if method.key not in self.book]
        if not fresh:
            return
        with self.store.work() as work:
            for method in fresh:
                work.methods.put(method.slug, method.version, method.title, method.text)
                self.book[method.key] = method

    @property
    def settings(self) -> Settings:
        """The settings in force."""
        return self._settings

    def read_kept_settings(self, work: Work) -> None:
        """Take the settings over as the store has them."""
        self._settings = read_settings(work.settings.all())

    @property
    def zone(self) -> str:
        """The zone in force: the studio's own, else the system's."""
        return self._settings.zone or self.clock.zone()

    def _keep_copy(self) -> None:
        """Keep today's copy; a failing one is said, never in the way."""
        try:
            made = daily_copy(self.store, self._local_now())
            self.copy_words = f"copy kept {made.stem[-10:]}" if made else "copy kept today"
        except Refusal as refusal:
            self.copy_words = f"no copy could be kept today: {refusal}"

    def _local_now(self) -> datetime:
        """Give the present in the studio's zone: a copy a day goes by the dyer's days."""
        return self.clock.now().astimezone(ZoneInfo(self.zone))

    def desk(self, work: Work) -> Desk:
        """Make the desk for one turn: the clock is read here, once."""
        return Desk(work, self.clock.now(), self.zone, self._settings, self.book, self.cache)

    # -- doing ----------------------------------------------------------------------

    def do(self, command: object) -> c.Outcome:
        """Do one command; Refusal or Question where it is not done, and nothing changed."""
        if isinstance(command, c.RaiseDue):
            return self.raise_due()
        settings, book = self._settings, dict(self.book)
        try:
            with self.store.work() as work:
                outcome = self._handle(self.desk(work), command)
        except BaseException:
            # These may know what the rolled-back transaction never wrote.
            self.cache.clear()
            self._settings, self.book = settings, book
            raise
        if outcome.subject and not isinstance(command, c.Undo):
            self.last_act = (outcome, self.clock.now())
        elif isinstance(command, c.Undo):
            self.last_act = None
        self._after(outcome)
        return outcome

    def _handle(self, desk: Desk, command: object) -> c.Outcome:
        if isinstance(command, c.ChangeSettings):
            return self._change_settings(desk, command)
        if isinstance(command, c.ImportMethod):
            return self._import_method(desk, command)
        return HANDLERS[type(command)](desk, command)

    def _after(self, outcome: c.Outcome) -> None:
        self.set_alarm()
        for listener in list(self.listeners):
            listener(outcome)

    def _change_settings(self, desk: Desk, command: c.ChangeSettings) -> c.Outcome:
        after = read_settings({**asdict(self._settings), **command.values}, strict=True)
        desk.work.settings.put_all(dict(command.values))
        self._settings = after
        desk.settings, desk.zone = after, self.zone
        for code in desk.work.lots.live_codes():
            desk.settle(desk.lot(code), Cause(why="the settings changed"))
        return c.Outcome("Settings are saved.", settings=True, reminders=True)

    def _import_method(self, desk: Desk, command: c.ImportMethod) -> c.Outcome:
        method = read_method(command.text, name=command.name)
        kept = self.book.get(method.key)
        if kept is not None and kept.text != method.text:
            raise Refusal(
                f"This studio has {method.slug} at version {method.version} with another text. "
                "Nothing was changed; raise the version in the file."
            )
        desk.work.methods.put(method.slug, method.version, method.title, method.text)
        self.book[method.key] = method
        return c.Outcome(f"{method.title}, version {method.version}, is in the studio.")

    # -- asking ---------------------------------------------------------------------

    def ask(self, question: object) -> Any:
        """Answer one question (see services.questions)."""
        with self.store.reading() as look:
            return reads.answer(self, self.desk(look), question)

    # -- ringing --------------------------------------------------------------------

    def raise_due(self) -> c.Outcome:
        """Raise what is due, if this process has the bell; then set the alarm again."""
        if self.bell is not None and not self.bell.hold():
            self.set_alarm()
            return c.Outcome()
        with self.store.work() as work:
            due, counted = ringing.find_due(self.desk(work))
        text = None
        if due:
            text = self._show(due)
        outcome = c.Outcome(
            reminders=bool(due) or counted,
            lots=frozenset(one.reminder.subject for one in due),
            words=text.title if text else "",
        )
        self._keep_copy_daily()
        if outcome.reminders:
            self._after(outcome)
        else:
            self.set_alarm()
        return outcome

    def _show(self, due: list[Any]) -> NoticeText:
        text = ringing.notice_text(due, self.clock.now())
        deliveries = self.notice.show(text) if self.notice is not None else ()
        shown = tuple(one.channel for one in deliveries if one.ok) or (ringing.IN_WINDOW,)
        with self.store.work() as work:
            desk = self.desk(work)
            left = ringing.still_open(desk, due)
            ringing.record_raised(desk, left, shown)
            ringing.record_deliveries(desk, due, deliveries)
        for listener in list(self.listeners):
            listener(text)
        return text

    def _keep_copy_daily(self) -> None:
        today = self._local_now().date()
        if self._copied != today:
            self._copied = today
            self._keep_copy()

    def next_ring(self) -> datetime | None:
        """Give when something may ring next, quiet hours kept; None where nothing is open."""
        with self.store.reading() as look:
            return ringing.next_ring(self.desk(look))

    def set_alarm(self) -> None:
        """Set the alarm to the next ring; soon again where this process may not ring."""
        if self.alarm is None:
            return
        at = self.next_ring()
        if at is not None and at <= self.clock.now() and self.bell is not None:
            at = at if self.bell.hold() else self.clock.now() + RETRY
        self.alarm.set(at)

    def heard_of_change(self) -> c.Outcome | None:
        """Look whether another process has written; tell the listeners if so."""
        seen = self.store.data_version()
        if seen == self._seen:
            return None
        self._seen = seen
        with self.store.reading() as look:
            self.read_kept_settings(look)
        outcome = c.Outcome(reminders=True, settings=True, lots=frozenset({"*"}))
        self._after(outcome)
        return outcome

    # -- safety ---------------------------------------------------------------------

    def backup(self, to: Path) -> str:
        """Write a verified copy of the studio."""
        backup(self.store, to)
        return f"A copy of the studio is in {to}."

    def restore(self, source: Path) -> str:
        """Put a copy back in place of the present file, which is kept."""
        now = self.clock.now()
        self.store.close()
        try:
            kept = restore(self.folder, source, now)
        finally:
            self.store = open_store(self.folder, now=now)
            self.cache.clear()
            self._ship({})
        self._after(c.Outcome(reminders=True, settings=True, lots=frozenset({"*"})))
        return f"The studio is restored from {source}. What was here before is kept: {kept}."

    def check(self, *, repair: bool = False) -> list[str]:
        """Look for damage; with `repair` work out anew what can be derived from the journal."""
        found = check(self.store)
        found.extend(self._unlike())
        if repair:
            self.rebuild()
        return found

    def _unlike(self) -> list[str]:
        """Name the lots whose kept lines differ from what their journal says."""
        found = []
        with self.store.reading() as look:
            desk = self.desk(look)
            for code in _lot_codes(look):
                try:
                    lot = replay(look.journal.of(code), self.book)
                except Refusal as refusal:
                    found.append(f"The journal of {code} does not read: {refusal}")
                    continue
                if tuple(step_lines(lot)) != tuple(look.steps.of(code)):
                    found.append(f"The kept steps of {code} differ from its journal.")
                kept = look.lots.get(code)
                number = look.journal.last_number(code)
                fresh = lot_line(lot, desk.now, number)
                if kept is None or (kept.name, kept.last_number) != (fresh.name, number):
                    found.append(f"The kept line of {code} differs from its journal.")
        return found

    def rebuild(self) -> None:
        """Work out every kept line and reminder anew from the journal."""
        self.cache.clear()
        with self.store.work() as work:
            work.clear_projections()
            desk = self.desk(work)
            for code in work.journal.subjects("M"):  # first, for lots look at their milk
                with suppress(Refusal):
                    desk.put_milk(milk_from(work.journal.of(code)))
            for code in _lot_codes(work):
                with suppress(Refusal):
                    desk.settle(desk.lot(code), Cause(undoing=True, why="worked out anew"))
        self._after(c.Outcome(reminders=True, settings=True, lots=frozenset({"*"})))

    def close(self) -> None:
        """Stop ringing and close the file."""
        if self.alarm is not None:
            self.alarm.close()
        if self.bell is not None:
            self.bell.release()
        self.store.close()


def _lot_codes(look: Work) -> list[str]:
    return [code for code in look.journal.subjects() if not code.startswith("M")]
