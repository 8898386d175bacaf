"""Commands about milk."""

from typing import Final

from studio_log.cli import values
from studio_log.cli.form import JSON, SURE, Form, Option, UsageError, Word
from studio_log.cli.plain import picked
from studio_log.cli.turn import Turn
from studio_log.domain.room_text import read_celsius
from studio_log.services.commands import NewMilk, SetMilk
from studio_log.services.questions import MilkLine, MilksFor

FIELDS: Final = (
    "code", "litres", "strength", "cold", "made_at", "use_by", "lots", "finished", "words",
)  # fmt: skip
PLACES: Final = ("cold", "room")
HEAT: Final = Option("--temperature", "measured where it stands: 18, 64F", "HEAT")
PLACE: Final = Option("--place", "where it stands", "PLACE", choices=PLACES)
LOTS: Final = Option("--lots", "the lots it is for", "CODE", repeats=True, spreads=True)


def _new(turn: Turn) -> int:
    given = turn.values
    command = NewMilk(
        lots=values.lot_codes(given["lots"]),
        beans_grams=values.grams(given["beans"]),
        litres=values.litres(given["litres"]),
        strength=values.strength(given["strength"]),
        cold=given["place"] != "room",
        celsius=None if given["temperature"] is None else read_celsius(given["temperature"]),
        made_at=turn.moment("made_at"),
        sure=given["sure"],
    )
    return turn.finish_new(turn.do(command))


def _list(turn: Turn) -> int:
    lines: tuple[MilkLine, ...] = turn.studio.ask(MilksFor(finished=turn.values["all"]))
    if turn.values["json"]:
        turn.say_json([picked(line, *FIELDS) for line in lines])
    else:
        turn.say("\n".join(map(_words, lines)) or "No milk is kept.")
    return 0


def _words(line: MilkLine) -> str:
    lots = f"; for {', '.join(line.lots)}" if line.lots else ""
    return f"{line.words}{lots}{'; used up' if line.finished else ''}"


def _set(turn: Turn) -> int:
    given = turn.values
    if given["finished"] and given["not_finished"]:
        raise UsageError("Either --finished or --not-finished")
    command = SetMilk(
        code=values.milk_code(given["code"]),
        cold=None if given["place"] is None else given["place"] == "cold",
        celsius=None if given["temperature"] is None else read_celsius(given["temperature"]),
        lots=values.lot_codes(given["lots"]) or None,
        finished=True if given["finished"] else False if given["not_finished"] else None,
        sure=given["sure"],
    )
    if command == SetMilk(command.code, sure=command.sure):
        raise UsageError("Nothing to change was given. See: studio-log milk set --help")
    return turn.finish(turn.do(command))


FORMS: Final = (
    Form(
        ("milk", "new"),
        "Record a batch of milk and print its code; two of the figures give the third.",
        _new,
        options=(
            LOTS,
            Option("--beans", "weight of the dry beans: 180g", "WEIGHT"),
            Option("--litres", "how much milk: 1.8", "VOLUME"),
            Option("--strength", "grams of dry beans to the litre: 100", "NUMBER"),
            PLACE,
            HEAT,
            Option("--made-at", "when it was strained", "TIME"),
            SURE,
            JSON,
        ),
    ),
    Form(
        ("milk", "list"),
        "List the milks.",
        _list,
        options=(Option("--all", "those used up as well"), JSON),
    ),
    Form(
        ("milk", "set"),
        "Move a milk, say which lots it is for, or that it is used up.",
        _set,
        (Word("CODE", "the milk's code, such as M26-004"),),
        (
            PLACE,
            HEAT,
            LOTS,
            Option("--finished", "it is used up"),
            Option("--not-finished", "it is not used up after all"),
            SURE,
            JSON,
        ),
    ),
)
