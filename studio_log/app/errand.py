"""One lot's whole life off-screen, at a hurried clock: what rang is printed, pictures kept.

It runs where no screen is: two lots are made in an empty studio, share a milk, ring, are
answered, cure and are used; the window's picture, a tag and the record are left in a folder.
"""

import os
import sys
import tempfile
from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.piece_text import read_piece
from studio_log.domain.reminders import Kind
from studio_log.present import words
from studio_log.services import questions as q
from studio_log.services.commands import (
    AnswerReminder,
    ChangeSettings,
    Mark,
    NewLot,
    NewMilk,
    NoteTagsPrinted,
    SplitLot,
)
from studio_log.services.ports import Delivery, NoticeText
from studio_log.services.studio import Studio

MOST_RINGS = 250
PICTURE = (1440, 900)


class StepClock:
    """A clock that stands still until it is put forward."""

    def __init__(self, start: datetime, zone: str) -> None:
        self._now = start
        self._zone = zone

    def now(self) -> datetime:
        """Give the moment it stands at."""
        return self._now

    def zone(self) -> str:
        """Give its zone."""
        return self._zone

    def real(self, span: timedelta) -> timedelta:
        """Give no time at all: nothing is waited for."""
        return span * 0

    def jump(self, to: datetime) -> None:
        """Put it forward; back never."""
        self._now = max(self._now, to)


class PrintedNotice:
    """Prints what rings, with the moment it rang at."""

    def __init__(self, clock: StepClock) -> None:
        self._clock = clock
        self.count = 0

    def show(self, text: NoticeText) -> Sequence[Delivery]:
        """Print one notice."""
        self.count += 1
        at = self._clock.now().astimezone(ZoneInfo(self._clock.zone()))
        first, *rest = [text.title, *text.body.splitlines()]
        print(f"{at:%a %d %b %H:%M}  {first}")  # noqa: T201 - its purpose
        for line in rest:
            print(f"                  {line}")  # noqa: T201 - its purpose
        return [Delivery("printed", ok=True, words="printed")]

    def state(self) -> tuple[bool, str]:
        """Say what works here."""
        return True, "what rings is printed (off-screen demo)"

    def revise(self, keys: tuple[str, ...], text: NoticeText | None) -> None:
        """Leave what is printed as it is."""

    def take_over(self) -> tuple[tuple[str, ...], ...]:
        """Nothing stands on a screen."""
        return ()

    def hand_over(self) -> None:
        """Nothing stands on a screen."""

    def stale(self) -> bool:
        """Say that printing always works."""
        return False

    def look(self) -> tuple[bool, str]:
        """Say what works here."""
        return self.state()

    def close(self) -> None:
        """Nothing is held."""


def run_errand(to: str) -> int:
    """Run it, from one moment in which somebody is needed to the next; gives the exit code."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    folder = Path(to)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(prefix="studio-log-demo-") as scratch:
            _run(folder, Path(scratch))
    except (Refusal, OSError) as error:
        print(f"The demo could not be run: {error}", file=sys.stderr)  # noqa: T201
        return 1
    return 0


def _run(folder: Path, scratch: Path) -> None:
    from studio_log.app.compose import open_studio
    from studio_log.app.demo import open_demo
    from studio_log.app.pictures import window_picture
    from studio_log.services.clock import SystemClock

    zone = SystemClock().zone()
    day = SystemClock().now().astimezone(ZoneInfo(zone)).date()
    nine = datetime(day.year, day.month, day.day, 9, tzinfo=ZoneInfo(zone)).astimezone(UTC)
    clock = StepClock(nine, zone)
    demo = open_demo(scratch / "demo", clock)
    window_picture(demo, clock, folder / "window.png", PICTURE)
    demo.close()
    studio = open_studio(scratch / "errand", clock=clock)
    studio.notice = notice = PrintedNotice(clock)
    told = {"studio": "Harbour Lane Cloth Studio", "welcomed": True}
    studio.do(ChangeSettings({**told, "look_ahead": "", "evening_look": ""}))
    live_through(
        studio, clock, lambda: window_picture(studio, clock, folder / "errand.png", PICTURE)
    )
    print_tags(studio, folder / "tag.pdf")
    studio.close()
    print(f"{notice.count} notices rang. Pictures and tag are in {folder}.")  # noqa: T201


def live_through(studio: Studio, clock: StepClock, in_the_soak: Callable[[], None]) -> None:
    """Take two lots from the beans to the use: one is split, half painted, half cured on.

    `in_the_soak` is called once, when the first lot lies in its milk.
    """
    pieces = read_piece("2 x linen runners 180x45cm 185g/m2").pieces
    method = "soy-immersion-long"
    one = studio.do(NewLot(method, "Linen table runners", pieces, vessel_litres=10.0)).code
    two = studio.do(NewLot(method, "Linen runners, second pair", pieces)).code
    now = clock.now()
    studio.do(Mark(one, "bean-soak", Act.START, at=now - timedelta(hours=13)))
    studio.do(Mark(two, "bean-soak", Act.START, at=now - timedelta(hours=12, minutes=30)))
    day_ten: datetime | None = None
    damp_said = False
    waiting = True
    for _ in range(MOST_RINGS):
        at = studio.next_ring()
        if at is None:
            break
        if day_ten is not None and at >= day_ten:
            _paint_half(studio, clock, one, day_ten)
            day_ten = None
            continue
        clock.jump(at)
        studio.raise_due()
        damp_said = _answer_all(studio, clock, damp_said=damp_said)
        day_ten = _tenth_day(studio, one) if day_ten is None else day_ten
        if waiting and studio.ask(q.LotSheetFor(one)).steps[3].state == "running":
            waiting = False
            in_the_soak()


def _answer_all(studio: Studio, clock: StepClock, *, damp_said: bool) -> bool:
    """Answer what is on the bench; the first drying is still damp once."""
    for card in studio.ask(q.BenchFor()).now:
        if card.countdown_to is not None:
            clock.jump(card.countdown_to)
        if card.kind == Kind.MAY_END.value:
            continue  # the aim is waited for
        answer = "done"
        if card.kind == Kind.IS_DRY.value and not damp_said:
            answer, damp_said = "damp", True
        outcome = studio.do(AnswerReminder(card.key, answer, sure=True))
        if outcome.wants_milk:
            _record_milk(studio)
    return damp_said


def _record_milk(studio: Studio) -> None:
    """Both lots take one milk; it is recorded with the first."""
    if not studio.ask(q.MilksFor()):
        lots = tuple(line.code for line in studio.ask(q.LotLinesFor()).lines)
        print(studio.do(NewMilk(lots=lots, beans_grams=180.0, strength=100.0)).words)  # noqa: T201


def _tenth_day(studio: Studio, code: str) -> datetime | None:
    sheet = studio.ask(q.LotSheetFor(code))
    cure = sheet.data.get("cure")
    if sheet.state != "curing" or not isinstance(cure, dict) or len(sheet.pieces) < 2:
        return None
    return datetime.fromisoformat(str(cure["fully_dry"])) + timedelta(days=10)


def _paint_half(studio: Studio, clock: StepClock, code: str, at: datetime) -> None:
    clock.jump(at)
    half = studio.do(SplitLot(code, (2,), "Linen runner, painted half"))
    used = studio.do(Mark(half.code, "now", Act.USE, note="painted"))
    print(f"{words.day(at, clock.zone())}: {half.words} {used.words}")  # noqa: T201


def print_tags(studio: Studio, path: Path) -> None:
    """Write the tag of the first lot and put it on record."""
    from studio_log.ui.tags.pdf import write_pdf

    codes = (studio.ask(q.LotLinesFor("all")).lines[0].code,)
    write_pdf(path, studio.ask(q.TagsFor(codes)), "tag-80x50")
    studio.do(NoteTagsPrinted(codes))
