"""The start of the program.

A first word that names a command goes to the command line, without Qt. Otherwise the
window opens, in this order: options, log, Qt application and theme, one window per studio,
the studio on its worker thread, the window, its first paint, then alarm, notices and the
watch over the studio's folder (see `app.window`).
"""

import argparse
import sys
from collections.abc import Sequence

from studio_log import __version__
from studio_log.app.logs import start_logging
from studio_log.language.languages import LANGUAGES

VALUE_OPTIONS = frozenset({"--studio", "--pace", "--errand", "--language"})
"""Window options that take the next word with them."""


def first_word(argv: Sequence[str]) -> str | None:
    """Give the first word that is neither an option nor an option's value."""
    words = iter(argv)
    for word in words:
        if word in VALUE_OPTIONS:
            next(words, None)
        elif not word.startswith("-"):
            return word
    return None


def _options(argv: Sequence[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(
        prog="studio-log",
        description="A dyer's logbook with reminders. Alone it opens the window.",
        epilog="Every command: studio-log --help-commands",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"Studio Log {__version__}")
    parser.add_argument("--studio", metavar="WHERE", help="the studio's folder")
    parser.add_argument("--demo", action="store_true", help="open the invented studio")
    pace = "with --demo: let the clock run N times as fast"
    parser.add_argument("--pace", type=float, default=1.0, metavar="N", help=pace)
    parser.add_argument("--minimised", action="store_true", help="start without showing itself")
    parser.add_argument("--language", choices=tuple(LANGUAGES), help="speak it this once")
    errand = "with --demo: one lot's life off-screen, pictures into FOLDER"
    parser.add_argument("--errand", metavar="FOLDER", help=errand)
    parser.add_argument("--help-commands", action="store_true", help="show the commands")
    options = parser.parse_args(argv)
    if not 1 <= options.pace <= 100_000:
        parser.error("--pace takes a number from 1 to 100000")
    if options.errand and not options.demo:
        parser.error("--errand goes with --demo")
    return options


def main(argv: Sequence[str] | None = None) -> int:
    """Run the program; gives the exit code."""
    words = list(sys.argv[1:] if argv is None else argv)
    log = start_logging()
    if first_word(words) is not None:
        from studio_log.app.commands import run_command

        return run_command(words, log)
    options = _options(words)
    if options.help_commands:
        from studio_log.app.commands import run_command

        return run_command(["--help"], log)
    if options.errand:
        from studio_log.app.errand import run_errand

        return run_errand(options.errand)
    from studio_log.app.window import run_window

    return run_window(options)
