"""The other laptops of a studio on a server: sending what waits, ringing what they rang."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import datetime
from typing import Protocol

from studio_log.domain.lots import Lot
from studio_log.domain.reminders import Record
from studio_log.services import ringing
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk
from studio_log.services.keeping import Upkeep
from studio_log.services.sending import Sending, Sent
from studio_log.services.telling import Telling
from studio_log.store.database import Store
from studio_log.store.unsent import Unsent
from studio_log.store.work import Work


class Studio(Protocol):
    """The studio, as it is seen from here."""

    store: Store
    telling: Telling
    upkeep: Upkeep
    cache: dict[str, tuple[int, Lot]]

    def desk(self, work: Work) -> Desk:
        """Make the desk for one turn."""
        ...

    def has_bell(self) -> bool:
        """Say whether this process rings."""
        ...

    def tell_news(self, news: object) -> None:
        """Let the listeners know."""
        ...


class Laptops:
    """What one studio knows of the others; used from the studio's thread."""

    def __init__(self) -> None:
        self._rung: dict[str, datetime | None] = {}
        """When each reminder was last shown here."""
        self._heard: Callable[[], None] | None = None

    def listen(self, studio: Studio, heard: Callable[[], None]) -> None:
        """Have a call made, in some thread, when the studio's server tells of a change."""
        self._heard = heard
        studio.store.listen(heard)

    def listen_on(self, studio: Studio) -> None:
        """Go on listening where the studio was opened again."""
        if self._heard is not None:
            studio.store.listen(self._heard)

    def reach(self, studio: Studio) -> None:
        """Try a server that was out of reach, and send what was done here meanwhile."""
        sent: list[Sent] = []

        def send(work: Work, unsent: Unsent) -> None:
            desk = replace(studio.desk(work), cache={})
            sent[:] = [Sending(desk, unsent).run()]

        studio.store.reach(send)
        for one in sent:
            studio.cache.clear()  # the file is as the server has it
            studio.upkeep.say("sent", " ".join(one.aside))
            everything = frozenset({"*"})
            studio.tell_news(Outcome(one.words, lots=everything, reminders=True, settings=True))

    def rang(self, records: Iterable[Record], at: datetime) -> None:
        """Take note of what was just shown here."""
        self._rung.update({one.reminder.key: at for one in records})

    def echo(self, studio: Studio) -> None:
        """Show what another laptop has just rung: it rings where people are, once each time."""
        if not studio.store.address or not studio.store.rings or not studio.has_bell():
            return
        with studio.store.reading() as look:
            desk = studio.desk(look)
            rung = ringing.rung_lately(desk, self._rung)
            text = ringing.text_of(desk, rung, []) if rung else None
        self._rung.update({one.reminder.key: one.rung_at for one in rung})
        if text is not None:
            studio.tell_news(text)
            studio.telling.tell(text, lambda _deliveries: None)
