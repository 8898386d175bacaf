"""The form of a command line as data: its words, its options, and reading them.

Each command has one flat parser. Options that take a value are joined to it before argparse
sees them, so that "--at -3h" and "--name '-h & <b>'" need no special care.
"""

import argparse
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final, NoReturn

from typing_extensions import override

if TYPE_CHECKING:
    from studio_log.cli.turn import Turn

PROGRAM: Final = "studio-log"
LONGEST_MESSAGE: Final = 400


class UsageError(Exception):
    """The command line was wrong; the words say how."""


class HelpAsked(Exception):  # noqa: N818 - it is a wish, not a fault
    """Help was asked for; the text is it."""


@dataclass(frozen=True)
class Option:
    """An option. `takes` names its value, "" for a switch.

    With `repeats` it may come several times; with `spreads` it takes all words up to the
    next option.
    """

    flag: str
    says: str
    takes: str = ""
    repeats: bool = False
    spreads: bool = False
    required: bool = False
    choices: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """Its name among the values that were read."""
        return self.flag.removeprefix("--").replace("-", "_")

    @property
    def many(self) -> bool:
        """Whether several values may be given."""
        return self.repeats or self.spreads


@dataclass(frozen=True)
class Word:
    """A word without a flag, by its place; the last may be `many`."""

    name: str
    says: str
    many: bool = False
    choices: tuple[str, ...] = ()
    optional: bool = False
    """Whether it may be left out: its value is then None, of a `many` an empty list."""


NARGS: Final = {
    (False, False): None, (False, True): "?", (True, False): "+", (True, True): "*",
}  # fmt: skip
"""As argparse has it, by whether a word may come many times and whether it may be left out."""


@dataclass(frozen=True)
class Form:
    """One command: its name of one or two words, what it says of itself, how it is done."""

    name: tuple[str, ...]
    says: str
    do: "Callable[[Turn], int]"
    words: tuple[Word, ...] = ()
    options: tuple[Option, ...] = field(default=())


JSON: Final = Option("--json", "print one JSON value and nothing else")
SURE: Final = Option("--sure", "do it although it is doubtful")
AT: Final = Option("--at", "when: 13:08, -3h, 2026-06-09T13:08, “yesterday 20:00”", "TIME")
STUDIO: Final = Option("--studio", "the studio's folder, before or after the command", "WHERE")
LOT: Final = Word("CODE", "the lot's code, such as 26-031")


class _Parser(argparse.ArgumentParser):
    """An argparse that tells instead of printing and ending the program."""

    @override
    def error(self, message: str) -> NoReturn:
        cut = message if len(message) <= LONGEST_MESSAGE else f"{message[:LONGEST_MESSAGE]}…"
        raise UsageError(f"{cut[:1].upper()}{cut[1:]}. See: {self.prog} --help")

    @override
    def print_help(self, file: Any = None) -> None:
        raise HelpAsked(self.format_help())


def read(form: Form, words: Sequence[str]) -> dict[str, Any]:
    """Give the values of a command's words; UsageError or HelpAsked where there are none.

    A switch is a bool, an option that may come several times a list, any other a text or None.
    """
    parser = _parser(form)
    found = vars(parser.parse_args(joined(form, words)))
    for option in form.options:
        if option.takes and not option.many:
            given = found[option.name] or [None]
            if len(given) > 1:
                parser.error(f"{option.flag} was given {len(given)} times; once is enough")
            found[option.name] = given[0]
        elif option.takes:
            found[option.name] = found[option.name] or []
    return found


def joined(form: Form, words: Sequence[str]) -> list[str]:
    """Write each option and its value as one word; what follows "--" stays as it is."""
    options: Mapping[str, Option] = {option.flag: option for option in form.options}
    left = list(words)
    done: list[str] = []
    while left and left[0] != "--":
        word = left.pop(0)
        option = options.get(word)
        values: list[str] = []
        if option is not None and option.takes:
            while left and not _ends_values(left[0], options, first=not values):
                values.append(left.pop(0))
                if not option.spreads:
                    break
        done.extend([f"{word}={value}" for value in values] or [word])
    return done + left


def _ends_values(word: str, options: Mapping[str, Option], *, first: bool) -> bool:
    """Say whether a word is no value: an option, or after the first what looks like one."""
    if word in {"--", "--help"} or word.partition("=")[0] in options:
        return True
    return not first and word.startswith("--")


def _parser(form: Form) -> _Parser:
    parser = _Parser(
        prog=" ".join((PROGRAM, *form.name)), description=form.says, allow_abbrev=False
    )
    for word in form.words:
        parser.add_argument(
            word.name.lower(),
            metavar=word.name,
            help=_shown(word.says),
            nargs=NARGS[word.many, word.optional],
            choices=word.choices or None,
        )
    for option in form.options:
        if not option.takes:
            parser.add_argument(option.flag, help=_shown(option.says), action="store_true")
            continue
        parser.add_argument(
            option.flag,
            help=_shown(option.says),
            metavar=option.takes,
            action="append",
            required=option.required,
            choices=option.choices or None,
        )
    parser.add_argument(STUDIO.flag, help=STUDIO.says, metavar=STUDIO.takes)
    return parser


def _shown(says: str) -> str:
    """Write a text for argparse, which fills in what follows a per cent sign."""
    return says.replace("%", "%%")
