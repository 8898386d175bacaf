"""The studio's settings: few, with sensible defaults, all changeable later."""

from dataclasses import dataclass
from datetime import time
from functools import lru_cache
from typing import Final

from studio_log.domain.quiet import QuietHours
from studio_log.domain.quiet_text import read_days

WITHOUT_TIMES: Final = frozenset(
    {"studio", "units", "welcomed", "chime", "chime_volume", "closing_said", "vessel_litres",
     "open_hours", "waking_hours", "single_days", "holiday_place",
     "vessels", "hands", "plan_goals", "plan_wanted", "plan_slow_days", "plan_visit_hours",
     "plan_milks", "line_metres", "burners", "theme", "dryings_since", "text_percent", "searches",
     "method_draft", "tag_stock", "tag_fields", "tag_printers",
     "list_sort", "list_table", "list_columns"}
)  # fmt: skip
"""Settings that move no reminder: no lot is worked out anew for them."""


@dataclass(frozen=True)
class Settings:
    """Settings as they are stored, one row each, by these names."""

    studio: str = ""
    """The studio's name; "" before the welcome."""
    units: str = "metric"
    """"metric" or "us": how figures are shown; any unit may be typed."""
    quiet_start: str = "22:00"
    quiet_end: str = "07:00"
    zone: str = ""
    """IANA zone; "" follows the system."""
    spoiling_at_night: bool = False
    """Whether what spoils may ring in quiet hours."""
    welcomed: bool = False
    quiet_days: str = ""
    """Nights that differ, by the weekday of their evening: "fri 23:30-09:00; sun off"."""
    hush_until: str = ""
    """Do not disturb until this instant, ISO 8601 with its offset; "" for not at all."""
    dryings_since: str = ""
    """Dryings that ended before this instant, ISO 8601, teach nothing; "" for all of them."""
    look_ahead: str = "08:00"
    """When the day's look-ahead is told, local wall clock; "" for never."""
    evening_look: str = "20:00"
    """When the evening says what is best started tonight; "" for never."""
    chime: bool = True
    chime_volume: int = 80
    """Percent."""
    closing_said: bool = False
    """Whether it was said that closing the window keeps reminding."""
    tag_stock: str = "tag-80x50"
    tag_printers: str = ""
    """What tags were printed on last: a name of the shipped stock, or the dyer's own measures."""
    tag_fields: str = "name,weight,method,begun,rows,studio"
    """What tags say beside code and caution."""
    vessel_litres: float = 10.0
    """The bucket offered for a new lot."""
    open_hours: str = ""
    """When the workshop is open: "mon-fri 09:00-17:00; sat 10:00-14:00"; "" for always."""
    waking_hours: str = ""
    """When somebody is awake, as `open_hours`; "" for all but the quiet hours."""
    single_days: str = ""
    """Days with other working hours, one a line: "2026-12-24 closed: fair"."""
    holiday_place: str = ""
    """Whose public holidays are closed: "GB-ENG", "DE"; "" for nobody's."""
    line_metres: float = 0.0
    """Metres of drying line; 0 where that was not said."""
    burners: int = 0
    """Burners that pots can stand on at once; 0 where that was not said."""
    vessels: str = ""
    """The studio's buckets and pots: "2 buckets of 20 L; pot 40 L"; "" where that was not said."""
    hands: int = 1
    """Pairs of hands that work at once; plans count with them."""
    plan_goals: str = ""
    """Pieces that are to be cured by a date: JSON, as domain.plan_wishes writes it."""
    plan_wanted: str = ""
    """Lots that are wanted and not made yet: JSON, as domain.plan_wishes writes it."""
    plan_slow_days: str = ""
    """Days on which cloth dries slowly: JSON, as domain.plan_wishes writes it."""
    plan_milks: str = ""
    """Milks that serve several lots: JSON, as domain.plan_wishes writes it."""
    plan_visit_hours: float = 12.0
    """A session saved is worth so many hours of one lot's waiting; the ends of a slider."""
    theme: str = "system"
    text_percent: int = 100
    searches: str = ""
    """Searches kept for another day, one a line, as they were typed."""
    list_sort: str = "need"
    """The order of the lot list: one of domain.search_text.SORTS, with " backwards" behind it."""
    list_table: bool = False
    """Whether the lot list is a table; else each lot has a row with its strip."""
    list_columns: str = "code name next when weight age shelf"
    """Columns of that table in their order, of services.search.COLUMNS."""
    method_draft: str = ""
    """The text of a method half written; "" for none."""

    def quiet(self, zone: str) -> QuietHours:
        """Give the quiet hours in the zone in force."""
        return _quiet(self.quiet_start, self.quiet_end, self.quiet_days, zone)


@lru_cache(maxsize=64)
def _quiet(start: str, end: str, days: str, zone: str) -> QuietHours:
    """Give the same hours as the same object: what is worked out for them is then found fast."""
    return QuietHours(time.fromisoformat(start), time.fromisoformat(end), zone, read_days(days))
