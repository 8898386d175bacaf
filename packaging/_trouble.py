"""What can go wrong while setting up, in words for the person at the keyboard."""

from __future__ import annotations

import re
from typing import Final

OFFLINE: Final = (
    "The packages could not be fetched: this machine does not reach the network. "
    "Connect it and start again."
)
DISK_FULL: Final = "The disk is full. Make some room and start again."
APT_LOCKED: Final = (
    "Another program is installing system packages just now. Wait until it is done and start again."
)
WRONG_HASH: Final = (
    "A fetched package is not the one this version was tested with (its hash differs). "
    "Nothing of it was installed. Start again on another network; if it stays, report it."
)
NO_BUILD: Final = (
    "One of the packages has no build for this Python or this kind of machine. "
    "Python 3.11 to 3.13 on a 64-bit Linux with glibc 2.34 or newer is what it is tested on."
)
CERTIFICATE: Final = (
    "The connection is not trusted: a certificate could not be checked. "
    "Set the clock right, install the package ca-certificates, and start again."
)

# The first that fits is told: a full disk or a wrong hash also ends in the vaguer errors below it.
_SIGNS: Final = (
    (r"No space left on device|Errno 28|enough free space|Disk quota exceeded", DISK_FULL),
    (r"DO NOT MATCH THE HASHES|Hashes are required in --require-hashes", WRONG_HASH),
    (r"Could not get lock|Unable to (?:acquire|lock)|is another process using it", APT_LOCKED),
    (r"CERTIFICATE_VERIFY_FAILED|SSLError|certificate verif", CERTIFICATE),
    (
        (
            r"Temporary failure (?:in name resolution|resolving)|Name or service not known"
            r"|NewConnectionError|Network is unreachable|Connection (?:refused|timed out)"
            r"|No route to|ConnectTimeout|ReadTimeout|ProxyError|Could not (?:resolve|connect)"
            r"|Unable to locate"
        ),
        OFFLINE,
    ),
    (r"No matching distribution|is not a supported wheel|requires a different Python", NO_BUILD),
)


class SetUpFailed(Exception):  # noqa: N818 - it is told to a person, not to a developer
    """Set-up cannot go on; the text says what failed and what to do."""


def told_plainly(doing: str, output: str) -> str:
    """One or two sentences on why `doing` failed, read from what the tool printed."""
    for sign, words in _SIGNS:
        if re.search(sign, output, re.IGNORECASE):
            return f"{doing} failed. {words}"
    lines = [line.strip() for line in output.splitlines() if line.strip()]
    last = lines[-1] if lines else "it ended without a word"
    return f"{doing} failed: {last}"
