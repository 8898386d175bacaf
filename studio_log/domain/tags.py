"""What a lot's tag says, in words already chosen; how it looks is settled elsewhere."""

import re
from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Any

from studio_log.domain.errors import Refusal

# Capitals, figures and . / - keep the QR code in its short alphanumeric form; sixteen of
# them are what the smallest symbol holds at level Q (ISO/IEC 18004).
_CODE = re.compile(r"[0-9A-Z][0-9A-Z./-]{0,15}", re.ASCII)


@dataclass(frozen=True)
class TagRow:
    """One line of the tag: a step, and when it was done."""

    title: str
    written: str = ""
    """What is known already; "" leaves a blank for date and time to fill in by hand."""


CHOICES = ("name", "weight", "method", "begun", "rows", "studio")
"""Fields that a tag may do without; code and caution always stand on it."""


@dataclass(frozen=True)
class TagFacts:
    """All a tag says. Every field but the code may be of any length and any script.

    Refusal where the code could not be read back from the tag.
    """

    code: str
    name: str
    weight: str
    method: str
    begun: str
    rows: tuple[TagRow, ...]
    caution: str
    studio: str

    def __post_init__(self) -> None:
        if not _CODE.fullmatch(self.code):
            raise Refusal(
                f"“{self.code[:24]}” cannot stand on a tag as a code. Nothing was printed. "
                "A code has up to 16 capital letters, figures, dots, strokes or hyphens, "
                "such as 26-031."
            )

    def only(self, fields: Collection[str]) -> "TagFacts":
        """Give the tag with these of `CHOICES` alone."""
        away: dict[str, Any] = {what: "" for what in CHOICES if what not in fields}
        if "rows" in away:
            away["rows"] = ()
        return replace(self, **away)
