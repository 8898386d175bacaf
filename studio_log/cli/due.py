"""What is due, and the reminder service."""

from datetime import datetime
from typing import Any, Final

from studio_log.cli.form import JSON, SURE, Form, Option, UsageError
from studio_log.cli.plain import plain
from studio_log.cli.turn import Turn
from studio_log.domain.reminders import Reminder
from studio_log.domain.span_text import read_span
from studio_log.present import words
from studio_log.services.commands import Hush
from studio_log.services.questions import RemindersFor

DAY_S: Final = 86_400.0


def _due(turn: Turn) -> int:
    within = turn.values["within"]
    question = RemindersFor(
        at=turn.moment("at", prefer="next"),
        within=DAY_S if within is None else read_span(within).total_seconds(),
    )
    found: list[tuple[Reminder, float]] = turn.studio.ask(question)
    if turn.values["json"]:
        turn.say_json([due_json(reminder, late) for reminder, late in found])
        return 0
    now, zone = turn.studio.clock.now(), turn.studio.zone
    lines = [line for reminder, late in found for line in _words(reminder, late, now, zone)]
    turn.say("\n".join(lines) or "Nothing is due.")
    return 0


def due_json(reminder: Reminder, late_seconds: float) -> dict[str, Any]:
    """Give a reminder as `due --json` promises it."""
    return {
        "lot": reminder.subject,
        "step": reminder.step,
        "kind": plain(reminder.kind),
        "urgency": plain(reminder.urgency),
        "due": plain(reminder.due),
        "rings_at": plain(reminder.rings_at),
        "earliest": plain(reminder.earliest),
        "latest": plain(reminder.latest),
        "late_seconds": int(late_seconds),
        "title": reminder.title,
        "why": reminder.why,
        "if_late": reminder.if_late,
        "key": reminder.key,
    }


def _words(reminder: Reminder, late: float, now: datetime, zone: str) -> list[str]:
    passed = f" ({words.lateness(now - reminder.due)})" if late >= 120 else ""
    first = f"{words.moment(reminder.due, now, zone)}{passed}  {reminder.title}"
    return [first, *(f"    {line}" for line in (reminder.why, reminder.if_late) if line)]


def _remind(turn: Turn) -> int:
    return turn.house.remind(turn.where, once=turn.values["once"], out=turn.out)


def _hush(turn: Turn) -> int:
    given = turn.values
    if sum(map(bool, (given["for"], given["until_morning"], given["end"]))) != 1:
        raise UsageError("Say one of --for, --until-morning and --end")
    span = read_span(given["for"]) if given["for"] else None
    return turn.finish(turn.do(Hush(span, until_morning=given["until_morning"])))


FORMS: Final = (
    Form(
        ("due",),
        "List the reminders that are due or coming, in order of time.",
        _due,
        options=(
            Option("--at", "as seen at this moment: 13:08 is the next such time", "TIME"),
            Option("--within", "how far to look ahead: 24h", "SPAN"),
            SURE,
            JSON,
        ),
    ),
    Form(
        ("remind",),
        "Ring what falls due, without a window, until it is stopped.",
        _remind,
        options=(Option("--once", "ring what is due now and end"),),
    ),
    Form(
        ("hush",),
        "Let no reminder disturb for a while; then all that is due is told at once.",
        _hush,
        options=(
            Option("--for", "for how long: 1h, at most a day", "SPAN"),
            Option("--until-morning", "until quiet hours end"),
            Option("--end", "let reminders ring again"),
            JSON,
        ),
    ),
)
