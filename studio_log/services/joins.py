"""Joining lots: what is asked and told beforehand, in words that screens share."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True)
class JoinLots:
    """Make one new lot of several, which end in it; the outcome's `code` is its code."""

    codes: tuple[str, ...]
    name: str
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class JoinOfferFor:
    """Which lots could be joined with this one now."""

    code: str


@dataclass(frozen=True)
class JoinOffer:
    """The lots nearest by their number that can meet it: code, name and what each is doing."""

    code: str
    name: str
    doing: str
    lots: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True)
class JoinFor:
    """What would become of these lots; nothing is written."""

    codes: tuple[str, ...]


@dataclass(frozen=True)
class JoinSeen:
    """The joined lot beforehand, in sentences; where it cannot be, why not."""

    becomes: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    refusal: str = ""
