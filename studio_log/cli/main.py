"""The command line: finds the command, runs it, and turns every ending into words.

Exit codes: 0 done, 1 the studio refused, 2 the command line was wrong. Nothing else is
written to standard output than the answer; no traceback reaches a person.
"""

import logging
from collections.abc import Mapping, Sequence
from typing import Final, TextIO

from studio_log.cli import (
    amounts,
    baths,
    calendar,
    colour,
    colour_even,
    colour_file,
    colour_measure,
    dry,
    due,
    hours,
    lots,
    marks,
    methods,
    milks,
    moving,
    papers,
    plan,
    rang,
    safety,
    server,
    shelf,
    soak,
    stock,
    swatch_out,
    swatches,
    trial,
    trial_out,
    trials,
)
from studio_log.cli.form import PROGRAM, STUDIO, Form, HelpAsked, UsageError, read
from studio_log.cli.house import House
from studio_log.cli.turn import AnswerLostError, Turn
from studio_log.domain.errors import Refusal

DONE: Final = 0
REFUSED: Final = 1
WRONG: Final = 2

FORMS: Final[Mapping[tuple[str, ...], Form]] = {
    form.name: form
    for room in (
        due, rang, hours, methods, shelf, amounts, dry, soak, lots, marks, milks, baths, stock,
        colour_measure, colour_file, colour, colour_even, swatches, swatch_out, trial, trials,
        trial_out, plan, papers, calendar, safety, server, moving,
    )
    for form in room.FORMS
}  # fmt: skip
HELP: Final = frozenset({"--help", "-h", "help"})

_log = logging.getLogger(__name__)


def command_names() -> frozenset[str]:
    """Give the first words of all commands."""
    return frozenset(name[0] for name in FORMS)


def run(
    argv: Sequence[str],
    *,
    house: House,
    out: TextIO | None,
    err: TextIO | None,
    log: str = "",
) -> int:
    """Run one command and give the exit code.

    `out` or `err` None is a closed stream; `log` is where faults are written down, for the
    sentence that says so.
    """
    if not logging.getLogger().handlers:
        logging.getLogger().addHandler(logging.NullHandler())  # else Python writes tracebacks
    teller = Turn({}, house, None, out, err)
    try:
        return _ended(argv, teller)
    except AnswerLostError as lost:
        return _lost(teller, str(lost))
    except KeyboardInterrupt:
        return REFUSED
    except Exception:  # noqa: BLE001 - a person gets words, the log the rest
        _log.exception("a command failed")
        where = f" What went wrong is written in {log}." if log else ""
        teller.tell(
            "Studio Log made a mistake of its own and stopped. What the journal held before is "
            f"kept; look with “lot show” before you try again.{where}"
        )
        return REFUSED


def _ended(argv: Sequence[str], teller: Turn) -> int:
    """Run a command; words on its ending where it was not done."""
    try:
        where, words = take_studio(argv)
        form, rest = find_form(words)
        values = read(form, rest)
        turn = Turn(values, teller.house, where, teller.out, teller.err)
        try:
            return form.do(turn)
        finally:
            turn.close()
    except HelpAsked as asked:
        teller.say(str(asked).rstrip())
        return DONE
    except UsageError as wrong:
        teller.tell(f"{PROGRAM}: {wrong}")
        return WRONG
    except Refusal as refusal:
        teller.tell(str(refusal))
        return REFUSED


def _lost(teller: Turn, reason: str) -> int:
    """End where the answer could not be written; quietly where its reader has gone."""
    if not reason:
        return DONE
    teller.tell(f"The answer could not be written ({reason}). What the command did is kept.")
    return REFUSED


def take_studio(argv: Sequence[str]) -> tuple[str | None, list[str]]:
    """Take --studio WHERE out of the words, wherever it stands; give it and the rest."""
    found: list[str] = []
    rest: list[str] = []
    left = list(argv)
    while left and left[0] != "--":
        word = left.pop(0)
        flag, mark, value = word.partition("=")
        if flag != STUDIO.flag:
            rest.append(word)
        elif mark or left:
            found.append(value if mark else left.pop(0))
        else:
            found.append("")
    if any(not where.strip() for where in found):
        raise UsageError(f"{STUDIO.flag} takes the studio's folder")
    if len(set(found)) > 1:
        raise UsageError(f"{STUDIO.flag} was given twice")
    return (found[0] if found else None), rest + left


def find_form(words: Sequence[str]) -> tuple[Form, list[str]]:
    """Find the command that the first one or two words name; give it and the words after."""
    if not words or words[0] in HELP:
        raise HelpAsked(overview())
    for length in (2, 1):
        form = FORMS.get(tuple(words[:length]))
        if form is not None:
            return form, list(words[length:])
    nouns = [name[1] for name in FORMS if name[0] == words[0] and len(name) > 1]
    if nouns and (len(words) == 1 or words[1] not in HELP):
        raise UsageError(f"After “{words[0]}” comes one of: {', '.join(nouns)}")
    if nouns:
        raise HelpAsked(overview(words[0]))
    known = ", ".join(sorted(command_names()))
    raise UsageError(f"There is no command “{words[0][:60]}”. There are: {known}")


def overview(noun: str = "") -> str:
    """Give the list of commands, or of those that begin with a word."""
    forms = [form for name, form in FORMS.items() if noun in {"", name[0]}]
    width = max(len(" ".join(form.name)) for form in forms)
    lines = [f"  {' '.join(form.name):<{width}}  {form.says}" for form in forms]
    return "\n".join(
        [
            f"usage: {PROGRAM} [{STUDIO.flag} {STUDIO.takes}] COMMAND …",
            "",
            *lines,
            "",
            f"{PROGRAM} COMMAND --help tells more of one. Alone, {PROGRAM} opens the window.",
        ]
    )
