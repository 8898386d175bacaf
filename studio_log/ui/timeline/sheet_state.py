"""What the timeline shows and how near, without any widget: lanes, now, zoom and folds."""

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING, Final
from zoneinfo import ZoneInfo

from studio_log.language.words import tr
from studio_log.present.lanes import Closed, Lane, Night
from studio_log.present.pleats import Pleat, pleats, toggled
from studio_log.present.time_scale import TimeScale, time_scale
from studio_log.present.timeline_shared import SharedRow

if TYPE_CHECKING:
    from studio_log.present.timeline_layout import KeptLane

BEFORE_NOW: Final = timedelta(hours=18)
"""How much of the past is seen at first."""
NEXT: Final = timedelta(hours=36)
LEAST_SHARE, MOST_SHARE = 0.45, 0.6
"""The next 36 h get such a share of the width at first; on a wide sheet always the most."""
NARROW, WIDE = 700, 1200
_AIR: Final = timedelta(hours=12)
"""Left free after the last thing on the sheet."""
_HOUR: Final = timedelta(hours=1)
_NOWHERE: Final = datetime(2000, 1, 1, tzinfo=UTC)


class SheetState:
    """The lanes and the scale that follows from them."""

    def __init__(self) -> None:
        self.lanes: tuple[Lane, ...] = ()
        self.nights: tuple[Night, ...] = ()
        self.now = _NOWHERE
        self.zone = ZoneInfo("UTC")
        self.pleats: tuple[Pleat, ...] = ()
        self.opened: frozenset[datetime] = frozenset()
        self.pleat_width = 56.0
        self.zoom = 12.0
        self.laid: dict[int, KeptLane] = {}
        """What was laid out of these lanes at this scale and now; see `Sheet.kept`."""
        self.code_room: tuple[int, float] = (0, 0.0)
        self.rows: dict[str, int] = {}
        self.closed: tuple[Closed, ...] = ()
        self.all_shared: tuple[SharedRow, ...] = ()
        self.left_out = 0
        """Lots that found no room on the sheet."""
        self.shows_shared = False
        """Whether the rows for vessels, line and heat stand below the lots."""
        self.edges = (_NOWHERE, _NOWHERE)
        self.hands: list[datetime] = []
        self.scale: TimeScale = time_scale(_NOWHERE, _NOWHERE + NEXT, self.zoom)

    def show(
        self, lanes: Sequence[Lane], nights: Sequence[Night], now: datetime, zone: ZoneInfo
    ) -> None:
        """Take new lanes; what was opened stays open."""
        self.lanes = tuple(lanes)
        self.nights = tuple(sorted(nights, key=lambda night: night.start))
        self.now, self.zone = now, zone
        self.rows = {lane.code: row for row, lane in enumerate(self.lanes)}
        self.code_room = (0, 0.0)
        self.edges = self._edges()
        self.hands = sorted({moment for lane in self.lanes for moment in lane.hands})
        self.rebuild()

    @property
    def cut_words(self) -> str:
        """Say that lots are left out, and which; "" where none are."""
        if not self.left_out or not self.lanes:
            return ""
        shown = len(self.lanes)
        return tr(
            "{shown:,} of {every:,} lots: those that need hands first",
            shown=shown,
            every=shown + self.left_out,
        )

    @property
    def shared(self) -> tuple[SharedRow, ...]:
        """The rows below the lots, as far as they are shown."""
        return self.all_shared if self.shows_shared and self.lanes else ()

    @property
    def row_count(self) -> int:
        """Lanes and the rows below them."""
        return len(self.lanes) + len(self.shared)

    def shared_at(self, row: int) -> SharedRow | None:
        """Give the row for what lots share that stands at a place counted from the first lane."""
        at = row - len(self.lanes)
        return self.shared[at] if 0 <= at < len(self.shared) else None

    def set_now(self, now: datetime) -> None:
        """Move now; pleats follow from hour to hour, so that nothing creeps."""
        turned = _hour(now) != _hour(self.now)
        self.now = now
        self.laid.clear()
        if turned:
            self.rebuild()

    def rebuild(self) -> None:
        """Work out pleats and scale anew."""
        start, end = self._span()
        self.laid.clear()
        # Called for a new font too, whose ruler may have got the old one's id.
        self.code_room = (0, 0.0)
        self.pleats = pleats((start, *self.hands, end), _hour(self.now), self.opened)
        self.scale = time_scale(start, end, self.zoom, self.pleats, pleat_width=self.pleat_width)
        self.zoom = self.scale.zoom

    def set_zoom(self, zoom: float) -> None:
        """Set pixels an hour, held within the scale's limits; pleats do not depend on it."""
        one = self.scale
        self.laid.clear()
        self.scale = time_scale(one.start, one.end, zoom, self.pleats, pleat_width=self.pleat_width)
        self.zoom = self.scale.zoom

    def first_zoom(self, width: float) -> float:
        """Give the zoom at which all work ahead fits a width, within the share of the next 36 h.

        Far marks come into sight by their pleats; the near hours stay large enough to read.
        """
        start, end = self.now - BEFORE_NOW, self.scale.end
        folded = [pleat for pleat in self.pleats if not pleat.opened and pleat.start > start]
        flat = end - start - sum((p.end - p.start for p in folded), timedelta(0))
        fits = (width - len(folded) * self.pleat_width) / (flat / _HOUR)
        broad = min(max((width - NARROW) / (WIDE - NARROW), 0.0), 1.0)
        least = LEAST_SHARE + broad * (MOST_SHARE - LEAST_SHARE)
        least, most = (share * width / (NEXT / _HOUR) for share in (least, MOST_SHARE))
        return max(min(max(fits, least), most), 4.0)

    def toggle(self, pleat: Pleat) -> None:
        """Open a folded pleat, or fold an opened one."""
        self.opened = toggled(self.opened, pleat)
        self.rebuild()

    def open_all(self) -> None:
        """Open every pleat."""
        self.opened |= {pleat.key for pleat in self.pleats}
        self.rebuild()

    def fold_all(self) -> None:
        """Fold every pleat."""
        self.opened = frozenset()
        self.rebuild()

    @property
    def all_open(self) -> bool:
        """Whether no pleat is folded."""
        return all(pleat.opened for pleat in self.pleats)

    def row_of(self, code: str) -> int | None:
        """Find the row of a lot."""
        return self.rows.get(code)

    def widest_code(self, measure: Callable[[str], float]) -> float:
        """Give the width of the widest code; measured once for these lanes and this font."""
        if self.code_room[0] != id(measure):
            # By length first: in thousands of codes only the longest are measured.
            longest = max((len(lane.code) for lane in self.lanes), default=0)
            codes = (one.code for one in self.lanes if len(one.code) >= longest - 1)
            self.code_room = (id(measure), max(map(measure, codes), default=0.0))
        return self.code_room[1]

    def _span(self) -> tuple[datetime, datetime]:
        start = min(self.edges[0], self.now - BEFORE_NOW)
        end = max(self.edges[1], self.now + NEXT)
        return _hour(start) - timedelta(hours=2), _hour(end) + _AIR

    def _edges(self) -> tuple[datetime, datetime]:
        """Give the first and the last moment of all lanes."""
        starts, ends = [self.now], [self.now]
        for lane in self.lanes:
            for bar in lane.bars:
                starts.append(min(bar.start, bar.planned[0]) if bar.planned else bar.start)
                ends.append(max(bar.end, bar.soft_until) if bar.soft_until else bar.end)
            moments = [stitch.at for stitch in lane.stitches]
            moments += [drop.at for drop in lane.drops]
            moments += [mark.at for mark in lane.marks]
            starts += moments
            ends += moments
        return min(starts), max(ends)


def _hour(moment: datetime) -> datetime:
    return moment.replace(minute=0, second=0, microsecond=0)
