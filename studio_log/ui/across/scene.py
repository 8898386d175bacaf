"""What stands across the room, in words: a plain function of the answers and the clock."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.present.words import clock, countdown, day, span
from studio_log.services.questions import Bench, Card, Status
from studio_log.services.settings import Settings
from studio_log.ui.widgets.parts import URGENT_WORDS

MOST: Final = 3
LONGEST_HUSH: Final = timedelta(days=1)
"""A later end was set by a clock that was wrong, and does not count; as when reminders ring."""
_NOBODY: Final = Bench((), (), (), "", "")
NOTHING: Final = tr_later("Nothing is waiting.")
NOT_YET: Final = tr_later("One moment …")
NO_LOT: Final = tr_later("A new lot is begun in the log’s own window.")


@dataclass(frozen=True)
class Thing:
    """One reminder, as it is read from five metres away."""

    key: str
    lot: str
    when: str
    """"Now", "Soon", "16:00", or what is left of a countdown: "1:59"."""
    act: str
    """With the code of its lot: "Stir 26-031"."""
    name: str
    since: str
    why: str
    answer: str
    """"" for what is not due yet."""
    second: str
    urgency: str
    warning: str = ""
    """What putting off costs, "" where it costs nothing."""
    counts: bool = False
    """Whether `when` is a countdown."""

    @property
    def story(self) -> str:
        """The whole in words; a countdown is left out, since it would be told each second."""
        when = tr("Running") if self.counts else self.when
        return ". ".join(part for part in (f"{when}: {self.act} {self.name}", self.since) if part)


@dataclass(frozen=True)
class Scene:
    """Everything that is shown: the hour, how it rings, the next things, what can be taken back."""

    hour: str
    day: str
    states: tuple[str, ...]
    things: tuple[Thing, ...]
    due: int
    """So many things need hands now, with those that are not shown."""
    empty: str
    """Said where nothing is due; "" where something is."""
    take_back: str
    """The lot from which the last act can be taken back, "" for none."""
    night: bool
    running: bool
    """Whether a countdown runs, so that seconds count."""

    @property
    def first(self) -> Thing | None:
        """The one thing that a key answers, None where nothing is due."""
        return self.things[0] if self.things and self.things[0].answer else None


@dataclass(frozen=True)
class Heard:
    """The answers that the scene is made of."""

    bench: Bench | None
    """None until it was answered for the first time."""
    settings: Settings
    status: Status | None = None
    awake: bool = False


def make_scene(heard: Heard, now: datetime, zone: str) -> Scene:
    """Give what is to be shown at this moment."""
    bench = heard.bench or _NOBODY
    due = [card for card in bench.now if card.raised]
    due += [card for card in bench.now if not card.raised]
    coming = bench.coming
    things = [_thing(card, now, due=True) for card in due]
    things += [_thing(card, now, due=False) for card in coming[: max(MOST - len(due), 0)]]
    night = heard.settings.quiet(zone).around(now)
    states = _states(heard, now, zone)
    if night is not None:
        states = (tr("quiet hours until {at}", at=clock(night.end, zone)), *states)
    back = bench.take_back
    empty = "" if due else _empty(coming)
    return Scene(
        hour=clock(now, zone),
        day=day(now, zone),
        states=states,
        things=tuple(things[:MOST]),
        due=len(due),
        empty=tr(NOT_YET) if heard.bench is None else empty,
        take_back=back.subject if back is not None and back.until > now else "",
        night=night is not None,
        running=any(card.countdown_to is not None for card in due[:MOST]),
    )


def written(thing: Thing, answer: str, at: str) -> str:
    """Say what was written down: "Stirred 26-003 at 14:02"; `at` is the hour on the wall."""
    if answer == "damp":
        return tr(
            "{second}: {lot} at {at}; it asks again", second=thing.second, lot=thing.lot, at=at
        )
    if answer == "putoff":
        return tr("Put off: {act}", act=thing.act)
    done = {tr("Begin now"): tr("Begun"), tr("Start now"): tr("Begun")}.get(
        thing.answer, thing.answer
    )
    return tr("{done} {lot} at {at}", done=done, lot=thing.lot, at=at)


def _thing(card: Card, now: datetime, *, due: bool) -> Thing:
    act, found, name = card.title.partition(f" {card.lot} ")
    counts = due and card.countdown_to is not None
    words = card.due_words.replace(tr("today {at}", at=""), "")
    if card.countdown_to is not None and due:
        when = countdown(card.countdown_to - now)
    else:
        when = tr(URGENT_WORDS.get(card.urgency, "Now")) if due else words
    since = words if due else _ahead(card.due - now)
    return Thing(
        key=card.key,
        lot=card.lot,
        when=when,
        act=f"{act} {card.lot}" if found else _with_lot(card),
        name=name.replace(" × ", "\N{NO-BREAK SPACE}×\N{NO-BREAK SPACE}"),
        since=since,
        why=card.why,
        answer=card.answer if due else "",
        second=card.second if due else "",
        urgency=card.urgency,
        warning=card.put_off_warning,
        counts=counts,
    )


def _with_lot(card: Card) -> str:
    return card.title if card.lot in card.title else f"{card.lot} · {card.title}"


def _ahead(left: timedelta) -> str:
    """Say how long it is until then; "" for what was put off, whose first moment is past."""
    return tr("in {span}", span=span(left)) if left >= timedelta(minutes=1) else ""


def _empty(coming: tuple[Card, ...]) -> str:
    if not coming:
        return tr(NOTHING)
    return tr("Nothing until {when}", when=coming[0].due_words.replace(tr("today {at}", at=""), ""))


def _states(heard: Heard, now: datetime, zone: str) -> tuple[str, ...]:
    said = [_chime(heard.settings)]
    hush = _hush_end(heard.settings, now)
    if hush is not None:
        said.append(tr("do not disturb until {at}", at=clock(hush, zone)))
    if heard.status is not None and not heard.status.channels_ok:
        said.append(heard.status.channels)
    if heard.awake:
        said.append(tr("screen kept awake"))
    return tuple(said)


def _chime(settings: Settings) -> str:
    if not settings.chime:
        return tr("chime off")
    if settings.chime_volume <= 0:
        return tr("chime silent: its volume is 0")
    return tr("chime on, {chime_volume} %", chime_volume=settings.chime_volume)


def _hush_end(settings: Settings, now: datetime) -> datetime | None:
    if not settings.hush_until:
        return None
    until = datetime.fromisoformat(settings.hush_until)
    return until if now < until <= now + LONGEST_HUSH else None
