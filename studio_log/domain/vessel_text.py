"""The studio's vessels as typed and kept: "2 buckets of 20 L; pot 40 L; bucket 60 L shared".

Kinds are two: a bucket, and a pot that goes on the fire. A shared one takes several lots while
their litres add up; any other takes one lot at a time. Empty text means that nothing was said, and
then nobody has to wait for a vessel.
"""

import re
from collections import Counter
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.mass_text import read_litres
from studio_log.domain.number_text import pointed

HOW: Final = "Write it as “2 buckets of 20 L; pot 40 L”, with “shared” where lots lie together."
MOST: Final = 40
LARGEST: Final = 5000.0
"""Litres."""
_MOST_LETTERS: Final = 1000
_ENTRY: Final = re.compile(
    r"(?:(?P<count>[0-9]{1,2})\s*[x×]?\s*)?"
    r"(?P<kind>bucket|tub|pot|eimer|wanne|topf|töpfe)(?:s|n)?\s+(?:of\s+|with\s+|zu\s+)?"
    r"(?P<litres>[^a-z]*[0-9][^;]*?)(?P<shared>[, ]+(?:shared|gemeinsam))?",
    re.IGNORECASE,
)
_KIND: Final = {
    "bucket": "bucket", "tub": "bucket", "eimer": "bucket", "wanne": "bucket",
    "pot": "pot", "topf": "pot", "töpfe": "pot",
}  # fmt: skip
"""What people type, in the languages of the window, for the two kinds."""


@dataclass(frozen=True, order=True, slots=True)
class OwnVessel:
    """One vessel of the studio: a "bucket" or a "pot", and its litres."""

    kind: str
    litres: float
    shared: bool = False


def read_vessels(text: str) -> tuple[OwnVessel, ...]:
    """Read the studio's vessels; a Refusal says what is not understood."""
    if len(text) > _MOST_LETTERS:
        raise Refusal(f"The vessels take up to {_MOST_LETTERS} letters. {HOW}")
    found: list[OwnVessel] = []
    for entry in filter(None, (part.strip() for part in text.replace("\n", ";").split(";"))):
        match = _ENTRY.fullmatch(entry)
        if match is None:
            raise Refusal(f"“{entry[:40]}” is no vessel. {HOW}")
        litres = read_litres(match["litres"].strip())
        if not 0 < litres <= LARGEST:
            raise Refusal(f"A vessel holds above 0 and up to {LARGEST:,.0f} L, not {litres:,.0f}.")
        one = OwnVessel(_KIND[match["kind"].lower()], litres, match["shared"] is not None)
        found += [one] * int(match["count"] or 1)
    if len(found) > MOST:
        raise Refusal(f"A studio has up to {MOST} vessels here; these are {len(found)}.")
    return tuple(sorted(found))


def write_vessels(vessels: tuple[OwnVessel, ...]) -> str:
    """Write vessels as they are kept and read again: "2 buckets of 20 L; pot 40 L"."""
    return "; ".join(
        (f"{count} {one.kind}s of " if count > 1 else f"{one.kind} ")
        + f"{pointed(one.litres, 2)} L"
        + (" shared" if one.shared else "")
        for one, count in Counter(vessels).items()
    )
