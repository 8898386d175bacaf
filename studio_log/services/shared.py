"""Words of a studio that several laptops share on a server."""

from dataclasses import dataclass


@dataclass(frozen=True)
class ShareStudio:
    """Carry this laptop's studio to an empty database, and go on there."""

    address: str
    password: str = ""
    """"" where it stands in the address, or is known to this laptop."""


@dataclass(frozen=True)
class JoinStudio:
    """Open the studio that lies at an address, from a folder that holds none yet."""

    address: str
    password: str = ""


@dataclass(frozen=True)
class UnshareStudio:
    """Go on with this laptop's copy alone; the one on the server stays. Asked about first."""

    sure: bool = False


@dataclass(frozen=True)
class RingHere:
    """Choose whether reminders ring on this laptop."""

    rings: bool


@dataclass(frozen=True)
class SharedFor:
    """Ask where the studio lies and how it fares."""


@dataclass(frozen=True)
class SharedSeen:
    """Where the studio lies; all but `rings` are of no matter while `address` is ""."""

    address: str = ""
    away: str = ""
    """Why the server is out of reach, "" while it answers."""
    unsent: int = 0
    """Entries that wait to be sent."""
    aside: str = ""
    """What could not be written of what was sent last."""
    rings: bool = True
    held: str = ""
    """What this laptop's studio holds, in words."""
