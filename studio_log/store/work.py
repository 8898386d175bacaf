"""One transaction and what can be done in it."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from sqlalchemy import delete, text
from sqlmodel import Session

from studio_log.domain.codes import PROVISIONAL
from studio_log.store.folder_in import Folder, put, put_photos
from studio_log.store.journal import Journal
from studio_log.store.lots import Lots
from studio_log.store.methods import Methods
from studio_log.store.milks import Milks
from studio_log.store.photos import Photos
from studio_log.store.reminders import Reminders
from studio_log.store.search import LotWords
from studio_log.store.small import Counters, Deliveries, SettingsKept
from studio_log.store.steps import Steps
from studio_log.store.swatches import Swatches
from studio_log.store.tables import LOT, MILK, REMINDER, STEP, SWATCH, USE
from studio_log.store.uses import Uses


class Work:
    """The nouns of the store inside one transaction; of no use once that is over."""

    def __init__(self, session: Session) -> None:
        self.session = self._session = session
        """For those of this room who read rows and no nouns."""
        self.provisional = False
        """Whether codes are given until the server gives its own (see `store.shared`)."""
        self.journal = Journal(session)
        self.lots = Lots(session)
        self.steps = Steps(session)
        self.reminders = Reminders(session)
        self.milks = Milks(session)
        self.uses = Uses(session)
        self.swatches = Swatches(session)
        self.methods = Methods(session)
        self.photos = Photos(session)
        self.settings = SettingsKept(session)
        self.deliveries = Deliveries(session)

    @property
    def folder(self) -> Path:
        """The studio's folder."""
        return self.photos.folder.parent

    def next_code(self, kind: str, year: int) -> int:
        """Give the next number for a code ("lot", "bath") of a year; it is never given again.

        With the transaction rolled back it was not given.
        """
        counters = Counters(self._session)
        if self.provisional:
            return PROVISIONAL + counters.next(f"away-{kind}", year)
        return counters.next(kind, year)

    def take(self, folder: Folder) -> None:
        """Write all that an exported folder holds into this studio, which has to be empty."""
        put(self._session, folder)

    def take_photos(self, folder: Folder, *, only_look: bool) -> None:
        """Keep the pictures of an exported folder, or see that they are what they should be."""
        put_photos(folder, None if only_look else self.photos.folder)

    def take_rows(
        self, names: Sequence[str], table: str, found: Sequence[Mapping[str, Any]]
    ) -> None:
        """Write rows that were read raw out of a damaged file, as they were there."""
        columns = ", ".join(f'"{name}"' for name in names)
        places = ", ".join(f":{name}" for name in names)
        asked = text(f'INSERT OR REPLACE INTO "{table}" ({columns}) VALUES ({places})')  # noqa: S608
        if found:
            self._session.execute(asked, [dict(row) for row in found])

    def clear_projections(self, *, reminders: bool = False) -> None:
        """Empty what is worked out from the journal, before it is worked out again.

        Reminders stay unless asked for: that one rang, and how, stands in no journal.
        """
        for table in (USE, SWATCH, STEP, LOT, MILK, *((REMINDER,) if reminders else ())):
            self._session.execute(delete(table))
        LotWords(self._session).clear()
