"""An open studio in a folder of its own, at a clock that the test moves."""

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import Lot
from studio_log.domain.pieces import Piece
from studio_log.services.commands import ChangeSettings, Mark, NewLot, Outcome
from studio_log.services.ports import NoticeText
from studio_log.services.studio import Studio
from studio_log.store.values import ReminderRecord
from tests.support.builders import LONG, NINE, shipped_texts
from tests.support.hand_clock import HandBell, HandClock, ListedAlarm, ListedNotice

PIECES = (
    Piece(1, "linen", length_m=1.8, width_m=0.45, gsm=185.0),
    Piece(2, "linen", length_m=1.8, width_m=0.45, gsm=185.0),
)
_EMPTY = TemporaryDirectory(prefix="studio-log-empty-")


@cache
def _empty_studio() -> Path:
    """A studio with the shipped methods and nothing else, made once: migrating takes long."""
    folder = Path(_EMPTY.name) / "studio"
    studio = Studio(folder, HandClock(NINE), shipped_texts(), {})
    # Tests count what rings: the looks ahead have tests of their own.
    studio.do(ChangeSettings({"look_ahead": "", "evening_look": ""}))
    studio.close()
    return folder


@dataclass
class Workshop:
    """A studio, its clock, and what it rang."""

    studio: Studio
    clock: HandClock
    notice: ListedNotice
    bell: HandBell
    alarm: ListedAlarm

    def do(self, command: object) -> Outcome:
        return self.studio.do(command)

    def new(self, name: str = "runners", method: str = LONG, **rest: object) -> str:
        pieces = rest.pop("pieces", PIECES)
        return self.do(NewLot(method, name, pieces, **rest)).code  # type: ignore[arg-type]

    def mark(self, code: str, step: str, act: Act, **rest: object) -> Outcome:
        return self.do(Mark(code, step, act, **rest))  # type: ignore[arg-type]

    def lot(self, code: str) -> Lot:
        with self.studio.store.reading() as look:
            return self.studio.desk(look).lot(code)

    def entries(self, code: str) -> tuple[Entry, ...]:
        with self.studio.store.reading() as look:
            return look.journal.of(code)

    def everything(self) -> dict[str, tuple[Entry, ...]]:
        """The whole journal."""
        with self.studio.store.reading() as look:
            return {code: look.journal.of(code) for code in look.journal.subjects()}

    def records(self, code: str) -> dict[str, ReminderRecord]:
        """What became of the reminders of a lot, by kind and number: "4/ready"."""
        with self.studio.store.reading() as look:
            return {one.key.partition("/")[2]: one for one in look.reminders.of(code)}

    def ring(self, at: datetime | None = None, **span: float) -> list[NoticeText]:
        """Move the clock, raise what is due, and give what rang by it."""
        if at is not None:
            self.clock.set(at)
        self.clock.at += timedelta(**span)
        before = len(self.notice.shown)
        self.studio.raise_due()
        return self.notice.shown[before:]

    def ring_on(
        self, until: datetime, seen: Callable[[datetime, NoticeText], None] | None = None
    ) -> list[tuple[datetime, NoticeText]]:
        """Let the clock run and ring at each moment the alarm is set to, up to one."""
        found = []
        for _ in range(300):
            at = self.studio.next_ring()
            if at is None or at > until:
                break
            moment = max(at, self.clock.at)
            for text in self.ring(at=moment):
                found.append((moment, text))
                if seen is not None:
                    seen(moment, text)
        else:
            raise AssertionError("the alarm rings without end")
        self.clock.set(max(until, self.clock.at))
        return found

    def ring_on_from(self, start: datetime, until: datetime) -> list[NoticeText]:
        """Set the clock, back if need be, and let it run and ring up to a moment."""
        texts = self.ring(at=start)
        return [*texts, *(text for _, text in self.ring_on(until))]

    def walk_to(self, code: str, slug: str) -> None:
        """Do every step before one, each for its aim."""
        for step in self.lot(code).steps:
            if step.slug == slug:
                return
            if step.optional or step.spec.lasts is None:
                continue
            if not self.lot(code).step(step.number).running:
                self.mark(code, str(step.number), Act.START)
            self.clock.at += step.spec.lasts.aim
            act = Act.DRY if step.spec.ask_dry else Act.END
            self.mark(code, str(step.number), act)


def open_workshop(folder: Path, clock: HandClock, *, copied: bool = True) -> Workshop:
    """Open a studio in a folder; a new one is a copy of the empty one."""
    if copied and not folder.exists():
        shutil.copytree(_empty_studio(), folder)
    studio = Studio(folder, clock, shipped_texts(), {})
    shop = Workshop(studio, clock, ListedNotice(), HandBell(), ListedAlarm())
    studio.notice, studio.bell, studio.alarm = shop.notice, shop.bell, shop.alarm
    return shop


@pytest.fixture
def clock() -> HandClock:
    return HandClock(NINE)


@pytest.fixture
def shop(tmp_path: Path, clock: HandClock) -> Iterator[Workshop]:
    """A studio at 09:00 on a Tuesday in June, in London, with a list for a notice."""
    opened = open_workshop(tmp_path / "studio", clock)
    yield opened
    opened.studio.close()


@pytest.fixture
def a_studio(shop: Workshop) -> Studio:
    return shop.studio
