"""Ways not to be disturbed, the same in the menu and in the tray."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.language.words import tr_later
from studio_log.services.commands import Hush


@dataclass(frozen=True)
class HushRow:
    """One of them: its act, its words, its keys, what is sent."""

    slug: str
    text: str
    command: Hush
    keys: str = ""


HUSHES: Final = (
    HushRow(
        "hush_hour",
        tr_later("Do not &disturb for an hour"),
        Hush(timedelta(hours=1)),
        "Ctrl+Shift+D",
    ),
    HushRow("hush_morning", tr_later("Do not disturb until &morning"), Hush(until_morning=True)),
    HushRow("hush_end", tr_later("&Let it ring again"), Hush()),
)
