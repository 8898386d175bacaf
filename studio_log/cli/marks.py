"""Marking acts, and taking them back."""

import re
from datetime import timedelta
from typing import Final

from studio_log.cli import values
from studio_log.cli.form import AT, JSON, LOT, SURE, Form, Option, UsageError, Word
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.number_text import quoted
from studio_log.domain.span_text import read_span
from studio_log.services.commands import Correct, Mark, Redo, Undo

ACTS: Final = tuple(act.value for act in list(Act)[:12])
MORNING: Final = frozenset({"morning", "next morning", "tomorrow morning"})
MOST_OFF: Final = timedelta(days=60)
_STEP: Final = re.compile(r"[0-9]{1,5}|(?=.*[a-z])[a-z0-9][a-z0-9-]{0,79}")

NOTE: Final = Option("--note", "a remark", "TEXT")
READING: Final = Option(
    "--reading", "something measured: temperature=21; may be repeated", "NAME=VALUE", repeats=True
)


def _mark(turn: Turn) -> int:
    given = turn.values
    act = Act(given["act"])
    if (act is Act.PUTOFF) != (given["for"] is not None):
        raise UsageError("putoff takes --for, as in --for 10m or --for morning; no other act does")
    if act is Act.PLAN and given["at"] is None:
        raise UsageError("plan takes --at with the moment that is planned")
    span, until_morning = _put_off(given["for"])
    command = Mark(
        code=values.lot_code(given["code"]),
        step=_step(given["step"]),
        act=act,
        note=values.note(given["note"]),
        readings=values.readings(given["reading"]),
        put_off=span,
        until_morning=until_morning,
        at=turn.moment("at", prefer="next" if act is Act.PLAN else "past"),
        sure=given["sure"],
    )
    return turn.finish(turn.do(command))


def _step(typed: str) -> str:
    plain = typed.strip().lower()
    if not _STEP.fullmatch(plain):
        raise Refusal(
            f"{quoted(values.shown(typed))} names no step: give its number, its slug such as "
            f"first-soak, or now. {values.NOTHING}"
        )
    return plain


def _put_off(typed: str | None) -> tuple[timedelta | None, bool]:
    if typed is None:
        return None, False
    if typed.strip().casefold() in MORNING:
        return None, True
    span = read_span(typed)
    if span > MOST_OFF:
        raise Refusal(f"A reminder is put off by 60 days at most. {values.NOTHING}")
    return span, False


def _undo(turn: Turn) -> int:
    typed = turn.values["entry"]
    entry = None if typed is None else _entry(typed)
    return turn.finish(
        turn.do(Undo(values.any_code(turn.values["code"]), entry, sure=turn.values["sure"]))
    )


def _redo(turn: Turn) -> int:
    return turn.finish(
        turn.do(Redo(values.any_code(turn.values["code"]), sure=turn.values["sure"]))
    )


def _correct(turn: Turn) -> int:
    given = turn.values
    command = Correct(
        code=values.any_code(given["code"]),
        entry=_entry(given["entry"]),
        note=None if given["note"] is None else values.note(given["note"]),
        readings=values.readings(given["reading"]),
        at=turn.moment("at"),
        sure=given["sure"],
    )
    if command.at is None and not command.note and not command.readings:
        raise UsageError("Say what is corrected: --at, --note or --reading")
    return turn.finish(turn.do(command))


def _entry(typed: str) -> int:
    return values.whole(
        typed, "the number of an entry, as lot show gives it", most=values.MOST_ENTRY
    )


FORMS: Final = (
    Form(
        ("mark",),
        "Mark what was done: it goes into the lot's journal.",
        _mark,
        (
            LOT,
            Word("STEP", "the step's number, its slug, or now"),
            Word("ACT", ", ".join(ACTS), choices=ACTS),
        ),
        (
            AT,
            NOTE,
            READING,
            Option("--for", "with putoff: 10m, 1h, morning", "SPAN"),
            SURE,
            JSON,
        ),
    ),
    Form(
        ("undo",),
        "Take back a lot's latest entry; again, the one before.",
        _undo,
        (LOT,),
        (Option("--entry", "the number of an earlier entry instead", "NUMBER"), SURE, JSON),
    ),
    Form(("redo",), "Restore what was taken back last.", _redo, (LOT,), (SURE, JSON)),
    Form(
        ("correct",),
        "Correct an entry by a later one.",
        _correct,
        (LOT, Word("ENTRY", "the number of the entry")),
        (AT, NOTE, READING, SURE, JSON),
    ),
)
