"""One studio for several laptops: on a server, and back."""

import os
import sys
from getpass import getpass
from typing import Final

from studio_log.cli.form import JSON, SURE, Form, Word
from studio_log.cli.turn import Turn
from studio_log.domain.server_address import read_address
from studio_log.services.shared import (
    JoinStudio,
    RingHere,
    SharedFor,
    SharedSeen,
    ShareStudio,
    UnshareStudio,
)
from studio_log.services.sharing_words import waiting_words

ADDRESS: Final = Word("ADDRESS", "as postgresql://name@host/studio")


def _shown(turn: Turn) -> int:
    seen: SharedSeen = turn.studio.ask(SharedFor())
    if turn.values["json"]:
        turn.say_json(
            {
                "address": seen.address or None,
                "answers": not seen.away if seen.address else None,
                "unsent": seen.unsent,
                "rings": seen.rings,
            }
        )
        return 0
    turn.say(
        f"This studio lies on {seen.address}."
        if seen.address
        else "This studio is on this laptop alone."
    )
    for words in (seen.away, waiting_words(seen.unsent) if seen.unsent else "", seen.aside):
        if words:
            turn.say(words)
    if not seen.rings:
        turn.say("Reminders do not ring on this laptop.")
    return 0


def _move(turn: Turn) -> int:
    return turn.finish(turn.do(ShareStudio(turn.values["address"], _password(turn))))


def _join(turn: Turn) -> int:
    return turn.finish(turn.do(JoinStudio(turn.values["address"], _password(turn))))


def _back(turn: Turn) -> int:
    return turn.finish(turn.do(UnshareStudio(sure=bool(turn.values["sure"]))))


def _ring(turn: Turn) -> int:
    return turn.finish(turn.do(RingHere(turn.values["where"] == "here")))


def _password(turn: Turn) -> str:
    """Ask for it on a terminal, unless the address or the environment has it."""
    asked_already = read_address(turn.values["address"]).password or os.environ.get("PGPASSWORD")
    if asked_already or turn.err is not sys.stderr or not sys.stdin.isatty():
        return ""
    return getpass("Password (Enter for none): ")


FORMS: Final = (
    Form(
        ("server", "show"),
        "Say on which server the studio lies, and how that fares.",
        _shown,
        options=(JSON,),
    ),
    Form(
        ("server", "move"),
        "Carry the studio to an empty database, counted, and go on there.",
        _move,
        (ADDRESS,),
    ),
    Form(
        ("server", "join"),
        "Work on the studio at an address, from a folder without one.",
        _join,
        (ADDRESS,),
    ),
    Form(
        ("server", "leave"),
        "Go on with this laptop's copy alone; what is on the server stays.",
        _back,
        options=(SURE,),
    ),
    Form(
        ("server", "ring"),
        "Choose whether reminders ring on this laptop.",
        _ring,
        (Word("WHERE", "here, or elsewhere", choices=("here", "elsewhere")),),
    ),
)
