"""What rang: the question and its rows, in words that screens and commands share."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final, NamedTuple

from studio_log.language.words import tr_later

OPEN: Final = "open"
ANSWERED: Final = "answered"
NOT_NEEDED: Final = tr_later("no longer needed")
WAITS: Final = "waits"


@dataclass(frozen=True)
class WhatRangFor:
    """Every reminder that rang, or should have, in a span; the last 90 days where none is given.

    `find` are words that all have to stand in a row: code, name, title, answer, channel.
    """

    since: datetime | None = None
    until: datetime | None = None
    find: str = ""


class Try(NamedTuple):
    """One attempt to show a reminder by one channel, and what the channel said."""

    at: datetime
    channel: str
    ok: bool
    words: str


class Rang(NamedTuple):
    """One reminder and everything that is known of what became of it.

    A tuple, since thousands are made at once.
    """

    key: str
    lot: str
    """Code of the lot; "" where it is about the whole studio."""
    name: str
    step: str
    """The step's title, "" where there is none."""
    title: str
    kind: str
    """In words: "last call"."""
    urgency: str
    due: datetime
    rings: tuple[datetime, ...]
    """The moments at which it is known to have rung, in order."""
    times: int
    """How often it rang: more often than `rings` where a moment was not written down."""
    late: timedelta | None
    """From due to the first ring after it; None where it did not ring, or only before."""
    quiet_until: datetime | None
    """When the quiet hours ended that it fell due in, where it rang just then."""
    channels: tuple[str, ...]
    """All that showed it, once each."""
    answer: str
    answered_at: datetime | None
    void_at: datetime | None
    void_why: str
    state: str
    """open, answered, no longer needed, or waits."""
    rings_at: datetime | None
    """When it is to ring (again), None where it is closed."""
    tries: tuple[Try, ...]
    told: bool
    """Whether it only told something and wanted no answer, as a look ahead does."""
    zone: str
    """The zone in force, in which its moments are read."""

    @property
    def first_rung(self) -> datetime | None:
        """When it rang first, None where it never did."""
        return self.rings[0] if self.rings else None

    @property
    def last_rung(self) -> datetime | None:
        """When it rang last, None where it never did."""
        return self.rings[-1] if self.rings else None
