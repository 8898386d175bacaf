"""What was done off the network goes to the server, with its true times and in its order.

Each entry has to read after those that stand on the server by now: somebody else may have
lifted the same cloth meanwhile. One that does not read any more is not forced in and not
lost: it is noted in the lot's journal in words. Codes given off the network become final.
"""

from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field, replace
from typing import Any, Final

from studio_log.domain.baths import bath_from
from studio_log.domain.codes import is_provisional, names_provisional, renamed
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import META, Act, Entry
from studio_log.domain.milks import milk_from
from studio_log.domain.reminders import Cause
from studio_log.domain.replay import replay
from studio_log.domain.swatches import swatch_from
from studio_log.domain.trials import trial_from
from studio_log.language.words import tr
from studio_log.present.words import moment
from studio_log.services.desk import Desk
from studio_log.services.subjects import is_lot, settle_any
from studio_log.store.photo_files import sound
from studio_log.store.unsent import Unsent

KINDS: Final[Mapping[str, str]] = {
    "M": "milk", "S": "stock", "B": "bath", "W": "swatch", "T": "trial",
}  # fmt: skip
"""What a code counts, by its letter; a lot has none."""
_READERS: Final[Mapping[str, Callable[[Iterable[Entry]], object]]] = {
    "M": milk_from, "B": bath_from, "W": swatch_from, "T": trial_from,
}  # fmt: skip


@dataclass
class Sent:
    """What became of it."""

    codes: dict[str, str] = field(default_factory=dict)
    """Provisional codes and the final ones."""
    entries: int = 0
    aside: list[str] = field(default_factory=list)
    """A sentence for each entry that did not read any more."""

    @property
    def words(self) -> str:
        """Say it to the person."""
        told = [tr("The server answers again.")]
        if self.entries:
            told.append(tr("Sent: {count} entries made meanwhile.", count=self.entries))
        told += [tr("{old} is {new} now.", old=old, new=new) for old, new in self.codes.items()]
        return " ".join([*told, *self.aside])


class Sending:
    """Writes what waits, on a desk whose work is a transaction on the server."""

    def __init__(self, desk: Desk, unsent: Unsent) -> None:
        self._desk = desk
        self._unsent = unsent
        self._numbers: dict[tuple[str, int], int | None] = {}
        """Where each entry stands on the server, by where it stood here; None set aside."""
        self._aside: set[tuple[str, int]] = set()
        self._touched: dict[str, None] = {}
        self.sent = Sent()

    def run(self) -> Sent:
        """Write all of it; nothing is written where an error other than a Refusal comes."""
        self._methods()
        for entry in self._unsent.entries:
            self._send(entry)
        self._photos()
        self._settings()
        self._reminders()
        for code in self._touched:
            self._settle(code)
        for record in self._unsent.deliveries:
            key = renamed(record.reminder_key, self.sent.codes)
            self._desk.work.deliveries.add(replace(record, reminder_key=key, id=0))
        return self.sent

    # -- entries -----------------------------------------------------------------------

    def _send(self, entry: Entry) -> None:
        here = (entry.subject, entry.number)
        subject = self._subject(entry)
        there = self._desk.entries(subject)
        data = renamed(dict(entry.data), self.sent.codes)
        sent = replace(entry, subject=subject, data=data, number=len(there) + 1)
        if (known := _same(there, sent)) is not None:
            self._numbers[here] = known
            return
        try:
            sent = self._aimed(entry, sent)
            self._read((*there, sent))
        except Refusal as refusal:
            self._aside.add(here)
            self._numbers[here] = self._set_aside(entry, subject, str(refusal))
            return
        self._numbers[here] = self._desk.work.journal.append(sent).number
        self._touched[subject] = None
        self.sent.entries += 1

    def _subject(self, entry: Entry) -> str:
        """Give the final code of an entry's subject; a new one where it has none yet."""
        code = entry.subject
        if not is_provisional(code):
            return code
        if code not in self.sent.codes:
            self.sent.codes[code] = self._known(entry) or self._new_code(code)
        return self.sent.codes[code]

    def _known(self, entry: Entry) -> str:
        """Give the code under which the server has this beginning already, "" for none."""
        letter = entry.subject[0] if entry.subject[0].isalpha() else ""
        for code in self._desk.work.journal.written_at(entry.written):
            alike = code.startswith(letter) if letter else is_lot(code)
            first = self._desk.entries(code)[:1]
            if alike and first and _alike(first[0], entry):
                return code
        return ""

    def _new_code(self, code: str) -> str:
        letter = code[0] if code[0].isalpha() else ""
        year = code.removeprefix(letter).partition("-")[0]
        number = self._desk.work.next_code(KINDS.get(letter, "lot"), int(year))
        return f"{letter}{year}-{number:03d}"

    def _aimed(self, entry: Entry, sent: Entry) -> Entry:
        """Have an entry about another one name it as it is numbered there."""
        if entry.target is None:
            return sent
        target = (entry.subject, entry.target)
        if target in self._aside:
            raise Refusal(tr("What it is about was not written either."))
        return replace(sent, target=self._numbers.get(target, entry.target))

    def _read(self, entries: tuple[Entry, ...]) -> None:
        """See that a journal reads; Refusal where it does not."""
        subject = entries[-1].subject
        if is_lot(subject):
            replay(entries, self._desk.book)
        elif (read := _READERS.get(subject[:1])) is not None:
            read(entries)

    def _set_aside(self, entry: Entry, subject: str, why: str) -> int | None:
        """Note in the lot's journal what did not fit; gives the note's number, if it has one."""
        at = moment(entry.at, self._desk.now, self._desk.zone)
        what = f"{entry.act.words}, {at}" + (f": {entry.note}" if entry.note else "")
        words = tr(
            "Done on this laptop while the server was out of reach, and not written as an act: "
            "{what}. {why}",
            what=what, why=why,
        )  # fmt: skip
        self.sent.aside.append(f"{subject}: {words}")
        if entry.act in META or not is_lot(subject):
            return None
        # Its own time, and the data of no act: only a photo goes on hanging on it.
        data = {"photo": entry.data["photo"]} if "photo" in entry.data else {}
        note = replace(
            entry, subject=subject, act=Act.NOTE, note=words, data=data, target=None, step=None,
            number=len(self._desk.entries(subject)) + 1,
        )  # fmt: skip
        known = _same(self._desk.entries(subject), note)
        if known is not None:
            return known
        try:
            self._read((*self._desk.entries(subject), note))
        except Refusal:
            return None
        self._touched[subject] = None
        return self._desk.work.journal.append(note).number

    # -- what is no entry ----------------------------------------------------------------

    def _methods(self) -> None:
        known = {(one.slug, one.version) for one in self._desk.work.methods.all()}
        for one in self._unsent.methods:
            if (one.slug, one.version) not in known:
                self._desk.work.methods.put(one.slug, one.version, one.title, one.text)

    def _photos(self) -> None:
        photos = self._desk.work.photos
        for record in self._unsent.photos:
            lot = self.sent.codes.get(record.lot, record.lot)
            number = self._numbers.get((record.lot, record.entry), record.entry)
            content = sound(photos.folder / record.file)
            if number is not None and content is not None:
                photos.put(replace(record, lot=lot, entry=number), content)

    def _settings(self) -> None:
        """Take over what nobody else changed meanwhile; say where somebody did."""
        there = self._desk.work.settings.all()
        for name, value, before in self._unsent.settings:
            if there.get(name) in (before, value):
                self._desk.work.settings.put(name, renamed(value, self.sent.codes))
            else:
                self.sent.aside.append(
                    tr("The setting {name} was changed elsewhere too; that one stands.", name=name)
                )

    def _reminders(self) -> None:
        """Take over what became of reminders, where nothing became of them elsewhere."""
        reminders = self._desk.work.reminders
        for now, before in self._unsent.reminders:
            there = reminders.get(now.key)
            if there is not None and there == before:
                reminders.put(now)
                self._touched[now.subject] = None

    def _settle(self, code: str) -> None:
        cause = Cause(why=tr("told from another laptop"))
        with suppress(Refusal):
            if code[:1] == "M":
                self._desk.put_milk(self._desk.milk(code))
                for lot in self._desk.milk(code).lots:
                    self._desk.settle(self._desk.lot(lot), cause)
            elif code[:1] != "S":
                settle_any(self._desk, code, cause)


def _alike(there: Entry, here: Entry) -> bool:
    """Say whether an entry of the server is one made here, sent once already.

    `written` is to the microsecond. Data that name provisional codes differ by them.
    """
    if names_provisional(here.data):
        return _told(there) == _told(here)
    return (_told(there), dict(there.data)) == (_told(here), dict(here.data))


def _told(entry: Entry) -> tuple[Any, ...]:
    return (entry.act, entry.at, entry.written, entry.zone, entry.step, entry.note,
            dict(entry.readings))  # fmt: skip


def _same(entries: Iterable[Entry], sent: Entry) -> int | None:
    """Give the number under which a journal has an entry already, None where it has not."""
    return next((one.number for one in entries if _alike(one, sent)), None)
