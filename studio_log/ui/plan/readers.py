"""What is typed on the plan's page: vessels, and the days on which cloth dries slowly."""

import re
from datetime import datetime
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.moment_text import read_moment
from studio_log.domain.number_text import NUMBER, plain, read_number
from studio_log.domain.plan_wishes import LONGEST_DRYING, SlowDay
from studio_log.domain.vessel_text import OwnVessel, read_vessels
from studio_log.language.calendar_words import day_words
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.words import litres
from studio_log.ui.widgets.understood import Understood

HOW: Final = tr_later("Write a day and its hours, as in “tomorrow 20 h; 3 Dec 24 h”.")
_SLOW: Final = re.compile(rf"(?P<day>.+?)[ :]+(?P<hours>{NUMBER})\s*h(?:ours?)?", re.IGNORECASE)


def vessels(text: str) -> Understood[tuple[OwnVessel, ...]]:
    """Read "2 buckets of 20 L; pot 40 L"."""
    try:
        found = read_vessels(text)
    except (Refusal, Question) as refusal:
        return Understood(fault=str(refusal))
    together = litres(sum(one.litres for one in found))
    said = counted(len(found), tr_later("{n} vessel"), tr_later("{n} vessels"))
    return Understood(found, tr("Understood: {vessels}, {litres} together", vessels=said,
                                litres=together))  # fmt: skip


def slow_days(text: str, now: datetime, zone: str) -> Understood[tuple[SlowDay, ...]]:
    """Read "tomorrow 20 h; 3 dec 24 h": days on which drying takes so long at least."""
    found: list[SlowDay] = []
    told: list[str] = []
    for part in filter(str.strip, text.split(";")):
        match = _SLOW.fullmatch(part.strip())
        if match is None:
            return Understood(fault=tr(HOW))
        try:
            at = read_moment(f"{match['day']} 12:00", now=now, zone=zone, prefer="next").at
            hours = read_number(match["hours"])
        except (Refusal, Question) as refusal:
            return Understood(fault=str(refusal))
        if not 0 < hours <= LONGEST_DRYING:
            return Understood(fault=tr("Cloth dries in up to {n} hours here.", n=LONGEST_DRYING))
        day = at.astimezone(ZoneInfo(zone)).date()
        found.append(SlowDay(day.isoformat(), hours))
        told.append(tr("{day} {hours} h", day=day_words(day), hours=plain(hours, 1)))
    return Understood(tuple(found), tr("Understood: {days}", days=", ".join(told)))
