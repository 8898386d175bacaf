"""One command's turn: what was typed, the studio it is for, and where the answer goes."""

import contextlib
import json
import os
from datetime import datetime
from typing import Any, Final, TextIO

from studio_log.cli.house import House, StudioFace
from studio_log.cli.plain import plain
from studio_log.domain.day_text import Prefer
from studio_log.domain.errors import Question
from studio_log.domain.moment_text import read_moment
from studio_log.services.commands import Command, Outcome

INSIST: Final = "Add --sure if that is meant."


class AnswerLostError(Exception):
    """The answer could not be written; the words say why, "" where nobody wants to know."""


class Turn:
    """Holds the values of a command and opens the studio when it is first needed."""

    def __init__(
        self,
        values: dict[str, Any],
        house: House,
        where: str | None,
        out: TextIO | None,
        err: TextIO | None,
    ) -> None:
        self.values = values
        self.house = house
        self.where = where
        self.out = out
        self.err = err
        self._studio: StudioFace | None = None

    @property
    def studio(self) -> StudioFace:
        """The studio, open."""
        if self._studio is None:
            self._studio = self.house.open_studio(self.where)
        return self._studio

    def close(self) -> None:
        """Close the studio if it was opened."""
        if self._studio is not None:
            self._studio.close()
            self._studio = None

    def moment(self, name: str, *, prefer: Prefer = "past") -> datetime | None:
        """Give the moment typed for an option, None where it was not given.

        A doubtful one is a Question unless --sure was given.
        """
        typed = self.values[name]
        if typed is None:
            return None
        now, zone = self.studio.clock.now(), self.studio.zone
        reading = read_moment(typed, now=now, zone=zone, prefer=prefer)
        if reading.doubt is not None and not self.values.get("sure"):
            raise Question(f"{reading.doubt} Nothing was changed. {INSIST}")
        return reading.at

    def do(self, command: Command) -> Outcome:
        """Do a command; a Question says that --sure accepts it, where that is so."""
        try:
            return self.studio.do(command)
        except Question as question:
            if "sure" in self.values:
                raise Question(f"{question} {INSIST}") from None
            raise

    def finish(self, outcome: Outcome) -> int:
        """Say what a command did."""
        if self.values.get("json"):
            self.say_json(outcome_json(outcome))
        else:
            self.say("\n".join([outcome.words or "Done.", *outcome.advice]))
        return 0

    def finish_new(self, outcome: Outcome) -> int:
        """Print the code of what was made alone, for scripts; the words go to standard error."""
        if self.values.get("json"):
            return self.finish(outcome)
        self.tell("\n".join([outcome.words, *outcome.advice]))
        self.say(outcome.code)
        return 0

    def say(self, words: str) -> None:
        """Write a text to standard output."""
        _write(self.out, words)

    def say_json(self, value: Any) -> None:
        """Write one JSON value to standard output; plain ASCII, whatever the terminal."""
        _write(self.out, json.dumps(plain(value), indent=2, allow_nan=False))

    def tell(self, words: str) -> None:
        """Write a message to standard error; one that nobody hears is no fault."""
        with contextlib.suppress(AnswerLostError):
            _write(self.err, words)


def outcome_json(outcome: Outcome) -> dict[str, Any]:
    """Give what a command did as a JSON object."""
    return {
        "words": outcome.words,
        "advice": outcome.advice,
        "code": outcome.code,
        "lots": outcome.lots,
        "milks": outcome.milks,
        "baths": outcome.baths,
        "swatches": outcome.swatches,
        "trials": outcome.trials,
        "wants_milk": outcome.wants_milk,
    }


def _write(stream: TextIO | None, words: str) -> None:
    """Write a text and see that it has gone; what the stream cannot show is written out."""
    if stream is None:
        return
    shown = "".join(sign if sign.isprintable() or sign in "\n\t" else "�" for sign in words)
    encoding = getattr(stream, "encoding", None) or "utf-8"
    shown = shown.encode(encoding, "backslashreplace").decode(encoding)
    try:
        stream.write(f"{shown}\n")
        stream.flush()
    except BrokenPipeError:
        lead_nowhere(stream)
        raise AnswerLostError("") from None
    except (OSError, ValueError) as error:
        lead_nowhere(stream)
        reason = getattr(error, "strerror", None) or "it is closed"
        raise AnswerLostError(reason) from None


def lead_nowhere(stream: TextIO) -> None:
    """Lead a broken stream nowhere, so that nothing is written to it at the end either."""
    with contextlib.suppress(OSError, ValueError, AttributeError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)
