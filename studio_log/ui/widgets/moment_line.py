"""A line for a moment in plain words, saying beside it what was understood."""

from datetime import datetime, timedelta
from typing import Final, Protocol

from typing_extensions import override

from studio_log.domain.day_text import Prefer
from studio_log.domain.errors import Refusal
from studio_log.domain.moment_text import MomentReading, read_moment
from studio_log.language.words import tr, tr_later
from studio_log.ui.widgets.understood import Understood, UnderstoodLine

AHEAD_LIMIT = timedelta(minutes=2)
"""Further ahead than this nothing can have happened; the studio refuses it likewise."""

AHEAD: Final = tr_later("{understood}: still ahead. Enter it once it has happened.")


class WallClock(Protocol):
    """What a moment is read against."""

    def now(self) -> datetime:
        """Give the present, aware."""
        ...

    def zone(self) -> str:
        """Give the zone in force."""
        ...


class MomentLine(UnderstoodLine[MomentReading]):
    """Reads "at eight last night", "13:08" or "-3h" while it is typed; blank means now."""

    def __init__(
        self,
        clock: WallClock,
        *,
        name: str,
        blank: str = "",
        prefer: Prefer = "past",
    ) -> None:
        self._clock = clock
        self._prefer: Prefer = prefer
        super().__init__(
            self._read_moment,
            name=name,
            hint=tr("13:08, -3h, at eight last night"),
            blank=blank or tr("blank means now"),
            slug="moment",
        )

    @property
    def at(self) -> datetime | None:
        """The moment understood, aware UTC; None where the line is blank."""
        return self.value.at if self.value is not None else None

    @override
    def remember(self) -> None:
        """Offer words another time, such as "at eight last night"; a bare time is of its day."""
        if any(sign.isalpha() for sign in self.text()):
            super().remember()

    def _read_moment(self, text: str) -> Understood[MomentReading]:
        now = self._clock.now()
        try:
            reading = read_moment(text, now=now, zone=self._clock.zone(), prefer=self._prefer)
        except Refusal as refusal:
            return Understood(fault=str(refusal))
        said = reading.understood
        if self._prefer == "past" and reading.at > now + AHEAD_LIMIT:
            return Understood(fault=tr(AHEAD, understood=said))
        words = tr("Understood: {understood}", understood=said)
        return Understood(reading, words, doubt=reading.doubt or "")
