"""What rang: every reminder of a span, for people, for scripts, and as a file."""

from datetime import datetime
from pathlib import Path
from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import JSON, SURE, Form, Option
from studio_log.cli.plain import plain
from studio_log.cli.turn import INSIST, Turn
from studio_log.domain.errors import Question, Refusal
from studio_log.services.rang import Rang, Try, WhatRangFor
from studio_log.services.rang_export import rang_csv
from studio_log.services.rang_words import details, tame
from studio_log.services.whole_file import write_whole

NOTHING_RANG: Final = "Nothing rang in that time."


def _rang(turn: Turn) -> int:
    given = turn.values
    path = values.file_path(given["to"], "The name of the file") if given["to"] else None
    if path is not None and _is_file(path) and not given["sure"]:
        raise Question(f"{path} is there already. Nothing was written. Put this in its place? "
                       f"{INSIST}")  # fmt: skip
    find = given["find"] or ""
    question = WhatRangFor(
        since=_since(turn),
        find=values.text(find, "What to find", empty=True),
    )
    rows: tuple[Rang, ...] = turn.studio.ask(question)
    if path is not None:
        write_whole(path, rang_csv(rows))
        turn.tell(f"{_counted(len(rows))} written to {path}.")
    if given["json"]:
        turn.say_json([rang_json(row) for row in rows])
    elif path is None:
        now = turn.studio.clock.now()
        turn.say("\n\n".join(_block(row, now) for row in rows) or NOTHING_RANG)
    return 0


def _is_file(path: Path) -> bool:
    """Say whether something would be overwritten; what cannot be asked cannot be written."""
    try:
        return path.is_file()
    except OSError:
        return False


def _since(turn: Turn) -> datetime | None:
    since = turn.moment("since")
    if since is not None and since > turn.studio.clock.now():
        raise Refusal("--since lies ahead: nothing has rung since then. Give a time in the past.")
    return since


def _counted(count: int) -> str:
    return "1 reminder is" if count == 1 else f"{count} reminders are"


def _block(row: Rang, now: datetime) -> str:
    return "\n    ".join((tame(row.title), *details(row, now)))


def rang_json(row: Rang) -> dict[str, Any]:
    """Give a row as `rang --json` promises it: instants in UTC, durations in seconds."""
    return {
        "key": row.key,
        "lot": row.lot,
        "name": row.name,
        "step": row.step,
        "title": row.title,
        "kind": row.kind,
        "urgency": row.urgency,
        "due": plain(row.due),
        "state": row.state,
        "times": row.times,
        "rings": plain(row.rings),
        "first_rung": plain(row.first_rung),
        "last_rung": plain(row.last_rung),
        "late_seconds": None if row.late is None else int(row.late.total_seconds()),
        "quiet_until": plain(row.quiet_until),
        "rings_at": plain(row.rings_at),
        "channels": plain(row.channels),
        "answer": row.answer,
        "answered_at": plain(row.answered_at),
        "void_at": plain(row.void_at),
        "void_why": row.void_why,
        "tries": [_try_json(one) for one in row.tries],
    }


def _try_json(one: Try) -> dict[str, Any]:
    return {"at": plain(one.at), "channel": one.channel, "ok": one.ok, "words": one.words}


FORMS: Final = (
    Form(
        ("rang",),
        "List what rang and what became of it; the last 90 days.",
        _rang,
        options=(
            Option("--since", "from when on: -30d, 2026-06-09T13:08", "TIME"),
            Option("--find", "only those with these words", "TEXT"),
            Option("--to", "write them all to this file, as CSV", "FILE"),
            SURE,
            JSON,
        ),
    ),
)
