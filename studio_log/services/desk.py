"""The desk: what a handler works on, inside one transaction and one reading of the clock."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import Any, Literal
from zoneinfo import ZoneInfo

from studio_log.domain.due import milk_reminder, reminders_of
from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.lot_amounts import uses_of
from studio_log.domain.lots import Lot, cure_of
from studio_log.domain.methods import Method
from studio_log.domain.milks import Milk, milk_from
from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Cause, Record, Reminder, reconcile
from studio_log.domain.replay import StandsOn, apply, replay
from studio_log.domain.swatches import swatch_from
from studio_log.present.words import whole_moment
from studio_log.services.records import record_from, record_to_store
from studio_log.services.settings import Settings
from studio_log.services.swatch_lines import swatch_line
from studio_log.store.values import LotLine, MilkLine, StepLine
from studio_log.store.work import Work

AHEAD_LIMIT = timedelta(minutes=2)
LONG_AGO = timedelta(days=400)
LONGEST_HUSH = timedelta(hours=26)
"""From one morning to the next, the clocks going back between."""
BEFORE_ANY_LOT = timedelta(days=50 * 365)
CODE = re.compile(r"\s*(\d{2})\s*-\s*(\d{1,5})\s*\Z")


def whole_code(text: str) -> str:
    """Give a lot code as it is written, from one typed carelessly ("26-31" is 26-031)."""
    found = CODE.match(text)
    return f"{found[1]}-{int(found[2]):03d}" if found else text.strip()[:40]


@dataclass
class Desk:
    """One transaction: the store's work, the present, the settings and the method book."""

    work: Work
    now: datetime
    zone: str
    settings: Settings
    book: Mapping[tuple[str, int], Method]
    cache: dict[str, tuple[int, Lot]]
    touched: set[str] = field(default_factory=set)

    @property
    def quiet(self) -> QuietHours:
        """Quiet hours in the zone in force."""
        return self.settings.quiet(self.zone)

    def may_ring_from(self, at: datetime) -> datetime:
        """Give the first moment from `at` on that is neither quiet nor hushed."""
        hush = self.hush_until
        return self.quiet.waking(at if hush is None else max(at, hush))

    @property
    def hush_until(self) -> datetime | None:
        """Until when nothing is to disturb; None where nothing was said or it is over.

        An end more than a day ahead was set by a clock that was wrong, and does not count.
        """
        if not self.settings.hush_until:
            return None
        until = datetime.fromisoformat(self.settings.hush_until)
        return until if self.now < until <= self.now + LONGEST_HUSH else None

    @property
    def units(self) -> Literal["metric", "us"]:
        """Units in which figures are shown; any may be typed."""
        return "us" if self.settings.units == "us" else "metric"

    @property
    def year(self) -> int:
        """Local year of the present."""
        return self.now.astimezone(ZoneInfo(self.zone)).year

    def method(self, slug: str) -> Method:
        """Give the latest version of a method; Refusal that names the ones there are."""
        versions = [method for (name, _), method in self.book.items() if name == slug]
        if not versions:
            names = ", ".join(sorted({name for name, _ in self.book}))
            raise Refusal(f"There is no method {slug!r}. Nothing was changed; there are: {names}.")
        return max(versions, key=lambda method: method.version)

    def entries(self, subject: str) -> tuple[Entry, ...]:
        """Give a journal, as written."""
        return self.work.journal.of(subject)

    def lot(self, code: str) -> Lot:
        """Give the lot as it stands; Refusal for an unknown code."""
        code = whole_code(code)
        entries = self.entries(code)
        if not entries or entries[0].act is not Act.NEW:
            raise Refusal(f"There is no lot {code}. Nothing was changed; `lot list` shows them.")
        kept = self.cache.get(code)
        if kept is not None and kept[0] == entries[-1].number:
            return kept[1]
        lot = replay(entries, self.book)
        self.cache[code] = (entries[-1].number, lot)
        return lot

    def check_time(self, at: datetime, *, sure: bool) -> None:
        """Refuse a moment in the future or before any lot; ask about one very long ago."""
        if at > self.now + AHEAD_LIMIT:
            raise Refusal(
                "That moment is still ahead. Nothing was changed; enter it once it has happened."
            )
        if at < self.now - BEFORE_ANY_LOT:
            raise Refusal("That moment lies too far back. Nothing was changed; look at the year.")
        if at < self.now - LONG_AGO and not sure:
            raise Question(f"{at:%d %B %Y} is more than a year ago. Is that right?")

    @property
    def clock_fault(self) -> str:
        """Say that the clock is behind the last entry, as with a dead battery; "" if not."""
        last = self.work.journal.last_written()
        if last is None or self.now >= last - AHEAD_LIMIT:
            return ""
        here, then = (whole_moment(at, self.zone) for at in (self.now, last))
        return f"This laptop's clock says {here}, yet the last entry was written {then}."

    def entry(self, subject: str, act: Act, at: datetime | None = None, **more: Any) -> Entry:
        """Make an entry, not written yet."""
        return Entry(subject, act, at or self.now, self.now, self.zone, **more)

    def write(self, lot: Lot | None, entry: Entry, *, sure: bool = False) -> Lot:
        """Check an entry against the lot, append it, and give the lot after it."""
        self.check_time(entry.at, sure=sure)
        if sure:
            entry = replace(entry, data={**entry.data, "sure": True})
        after = (
            replay([replace(entry, number=1)], self.book)
            if lot is None
            else apply(lot, entry, self.book)
        )
        written = self.work.journal.append(entry)
        self.cache[entry.subject] = (written.number, after)
        self.touched.add(entry.subject)
        return after

    def rewrite(self, subject: str, entry: Entry) -> Lot:
        """Append an entry about another one, if the whole journal still reads with it."""
        entries = self.entries(subject)
        number = entries[-1].number + 1 if entries else 1
        try:
            after = replay((*entries, replace(entry, number=number)), self.book)
        except StandsOn as stands:
            # The corrected entry itself is refused: its own words, and `sure` may answer them.
            if stands.entry.number == entry.target:
                raise stands.refusal from None
            raise
        written = self.work.journal.append(entry)
        self.cache[subject] = (written.number, after)
        self.touched.add(subject)
        return after

    def milk(self, code: str) -> Milk:
        """Give a milk by its code."""
        return milk_from(self.entries(code.strip().upper()))

    def milks(self) -> list[Milk]:
        """Give every milk, the latest last."""
        return [milk_from(self.entries(line.code)) for line in self.work.milks.all()]

    def milk_of(self, code: str, milks: Sequence[Milk] | None = None) -> Milk | None:
        """Give the latest milk made for a lot and not used up, or None.

        Whoever asks for many lots reads the `milks` once and hands them in.
        """
        known = self.milks() if milks is None else milks
        own = [milk for milk in known if code in milk.lots and not milk.finished]
        return max(own, key=lambda milk: milk.made_at, default=None)

    def reminders(self, lot: Lot, milks: Sequence[Milk] | None = None) -> list[Reminder]:
        """Work out a lot's reminders, with those about its milk (see `milk_of`)."""
        found = reminders_of(
            lot, self.now, self.quiet, spoiling_at_night=self.settings.spoiling_at_night
        )
        milk = milk_reminder(lot, self.milk_of(lot.code, milks), self.now, self.quiet)
        return [*found, milk] if milk is not None else found

    def settle(self, lot: Lot, cause: Cause) -> list[Reminder]:
        """Write what lists need of a lot and bring its reminders into line; gives them."""
        self.work.lots.put(lot_line(lot, self.now, self.cache[lot.code][0]))
        self.work.steps.replace(lot.code, step_lines(lot))
        self.work.uses.replace(lot.code, uses_of(lot))
        self._settle_swatches(lot)
        kept = [record_from(one) for one in self.work.reminders.of(lot.code)]
        worked_out = self.reminders(lot)
        self.put_records(reconcile(worked_out, kept, self.now, cause))
        return worked_out

    def _settle_swatches(self, lot: Lot) -> None:
        """Keep what the swatches of a lot say of it true: its name, the methods it had walked."""
        journals = self.work.journal.of_many(self.work.swatches.codes_of_lot(lot.code))
        self.work.swatches.put_all(
            swatch_line(swatch_from(entries), lot, entries[-1].number)
            for entries in journals.values()
        )

    def put_records(self, records: Iterable[Record]) -> None:
        """Keep what became of reminders."""
        self.work.reminders.put_all([record_to_store(one, self.now) for one in records])

    def put_milk(self, milk: Milk) -> None:
        """Write what lists need of a milk."""
        self.work.milks.put(
            MilkLine(
                code=milk.code,
                made_at=milk.made_at,
                litres=milk.litres,
                strength_g_per_l=milk.strength,
                place="cold" if milk.cold else "room",
                use_by=milk.use_by,
                lots=milk.lots,
                finished=milk.finished,
            )
        )


def lot_line(lot: Lot, now: datetime, number: int) -> LotLine:
    """Give what lists need of a lot."""
    cure = cure_of(lot)
    state = lot.state(now)
    fibres = sorted({piece.title for piece in lot.pieces})
    words = (lot.code, lot.name, lot.place, lot.method.title, *fibres)
    return LotLine(
        code=lot.code,
        name=lot.name,
        state_hint=("curing" if state.value == "ready" and cure and cure.running else state.value),
        updated_at=now,
        place=lot.place,
        method_slug=lot.method.slug,
        method_version=lot.method.version,
        grams=lot.grams,
        fibre=", ".join(fibres),
        begun_at=lot.begun,
        fully_dry_at=cure.fully_dry if cure else None,
        ready_at=cure.ready_at if cure and cure.running else None,
        used_at=lot.use.at if lot.use else None,
        ended=state.value in {"used", "stopped"},
        search_text=" ".join(words),
        last_number=number,
    )


def step_lines(lot: Lot) -> list[StepLine]:
    """Give what lists need of a lot's steps."""
    return [
        StepLine(
            lot=lot.code,
            number=step.number,
            order=place,
            slug=step.slug,
            title=step.title,
            kind=step.spec.kind.value,
            state=lot.state_of(step).value,
            start=step.start,
            end=step.end,
            coat=step.coat,
        )
        for place, step in enumerate(lot.steps, start=1)
    ]
