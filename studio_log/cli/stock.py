"""Commands about materials: the stock, and what to buy."""

import re
from datetime import date
from typing import Final

from studio_log.cli import values
from studio_log.cli.form import AT, JSON, SURE, Form, Option, UsageError, Word
from studio_log.cli.plain import picked
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.domain.number_text import NUMBER, quoted, read_number
from studio_log.domain.span_text import read_span
from studio_log.services.stock import (
    MoveMaterial,
    NewMaterial,
    SetMaterial,
    ShoppingFor,
    ShoppingLine,
    StockFor,
    StockLine,
)

FIELDS: Final = (
    "code", "title", "material", "unit", "left", "low", "is_low", "price_per_unit", "batch",
    "best_before", "state", "place", "used_by", "ended",
)  # fmt: skip
SHOPPING: Final = (
    "material", "title", "unit", "needed", "there", "low", "buy", "why", "lots",
)  # fmt: skip
CODE: Final = Word("CODE", "the material's code, such as S26-004")
AMOUNT: Final = Option("--amount", "how much: 1kg, 500mL", "AMOUNT", required=True)
BOUGHT: Final = (
    Option("--price", "for all of it, in your money: 12.50", "NUMBER"),
    Option("--batch", "the supplier's batch", "TEXT"),
    Option("--best-before", "its date: 2027-03-31", "DATE"),
)
NOTE: Final = Option("--note", "a note", "TEXT")


def _quantity(typed: str) -> tuple[float, str]:
    """Give a quantity in its unit, "g" or "L"."""
    if re.fullmatch(NUMBER, typed.strip()):
        raise Refusal(f"{quoted(typed)} of what? Say a unit: 500 g or 0.5 L. {values.NOTHING}")
    try:
        return read_grams(typed), "g"
    except Refusal:
        return read_litres(typed), "L"


def _price(typed: str | None) -> float | None:
    if typed is None:
        return None
    try:
        return read_number(typed.strip())
    except ValueError:
        raise Refusal(f"{quoted(typed)} is no price, such as 12.50. {values.NOTHING}") from None


def _date(typed: str | None) -> date | None:
    if typed is None:
        return None
    try:
        return date.fromisoformat(typed.strip())
    except ValueError:
        raise Refusal(f"{quoted(typed)} is no date, such as 2027-03-31. {values.NOTHING}") from None


def _new(turn: Turn) -> int:
    given = turn.values
    amount, unit = _quantity(given["amount"]) if given["amount"] else (None, "")
    low = _quantity(given["low"]) if given["low"] else None
    if low is not None and unit not in {"", low[1]}:
        raise UsageError("--amount and --low are both weights, or both volumes")
    if given["price"] is not None and amount is None:
        raise UsageError("--price goes with --amount: it is for all of it")
    command = NewMaterial(
        title=values.text(given["title"], "The name"),
        material=values.slug(given["material"], "material") if given["material"] else "",
        unit=unit or (low[1] if low else "g"),
        amount=amount,
        price=_price(given["price"]),
        batch=given["batch"] or "",
        best_before=_date(given["best_before"]),
        low=low[0] if low else None,
        place=given["place"] or "",
        at=turn.moment("at"),
        sure=given["sure"],
    )
    return turn.finish_new(turn.do(command))


def _move(turn: Turn, act: str) -> int:
    given = turn.values
    amount, unit = _quantity(given["amount"])
    command = MoveMaterial(
        code=given["code"],
        act=act,
        amount=amount,
        unit=unit,
        price=_price(given.get("price")),
        batch=given.get("batch") or "",
        best_before=_date(given.get("best_before")),
        note=values.note(given["note"]),
        at=turn.moment("at"),
        sure=given["sure"],
    )
    return turn.finish(turn.do(command))


def _set(turn: Turn) -> int:
    given = turn.values
    if given["gone"] and given["kept"]:
        raise UsageError("Either --gone or --kept")
    low = _quantity(given["low"]) if given["low"] else None
    command = SetMaterial(
        code=given["code"],
        title=given["title"],
        low=low[0] if low else None,
        unit=low[1] if low else "",
        place=given["place"],
        ended=True if given["gone"] else False if given["kept"] else None,
    )
    if command == SetMaterial(command.code):
        raise UsageError("Nothing to change was given. See: studio-log stock set --help")
    return turn.finish(turn.do(command))


def _list(turn: Turn) -> int:
    lines: tuple[StockLine, ...] = turn.studio.ask(StockFor(ended=turn.values["all"]))
    if turn.values["json"]:
        turn.say_json([picked(line, *FIELDS) for line in lines])
    else:
        turn.say("\n".join(map(_words, lines)) or "No material is in the stock.")
    return 0


def _words(line: StockLine) -> str:
    return f"{line.code}  {line.title}: {line.left_words}, {line.state}"


def _shopping(turn: Turn) -> int:
    within = turn.values["within"]
    asked = ShoppingFor() if within is None else ShoppingFor(read_span(within))
    lines: tuple[ShoppingLine, ...] = turn.studio.ask(asked)
    if turn.values["json"]:
        turn.say_json([picked(line, *SHOPPING) for line in lines])
    else:
        told = [f"{line.title}: {line.buy_words} ({line.why})" for line in lines]
        turn.say("\n".join(told) or "Nothing is to be bought.")
    return 0


FORMS: Final = (
    Form(("stock", "list"), "List the materials.", _list,
         options=(Option("--all", "those kept no longer as well"), JSON)),
    Form(
        ("stock", "new"),
        "Take a material into the stock and print its code.",
        _new,
        (Word("TITLE", "its name, such as “alum”"),),
        (
            Option("--material", "what methods call it: soda-ash; else from the name", "NAME"),
            Option("--amount", "what is there: 1kg, 500mL", "AMOUNT"),
            *BOUGHT,
            Option("--low", "below this it is to be bought again", "AMOUNT"),
            Option("--place", "where it stands", "TEXT"),
            AT, SURE, JSON,
        ),
    ),
    Form(("stock", "buy"), "Write down what was bought.", lambda turn: _move(turn, "buy"), (CODE,),
         (AMOUNT, *BOUGHT, NOTE, AT, SURE, JSON)),
    Form(("stock", "draw"), "Write down what was taken by hand.",
         lambda turn: _move(turn, "draw"), (CODE,), (AMOUNT, NOTE, AT, SURE, JSON)),
    Form(("stock", "count"), "Write down what is there, weighed or measured.",
         lambda turn: _move(turn, "count"), (CODE,), (AMOUNT, NOTE, AT, SURE, JSON)),
    Form(
        ("stock", "set"),
        "Change a material's name, low level or place, or say that it is gone.",
        _set,
        (CODE,),
        (
            Option("--title", "its name", "TEXT"),
            Option("--low", "below this it is to be bought again", "AMOUNT"),
            Option("--place", "where it stands", "TEXT"),
            Option("--gone", "it is kept no longer"),
            Option("--kept", "it is kept after all"),
            JSON,
        ),
    ),
    Form(
        ("shopping",),
        "List what to buy for the steps ahead.",
        _shopping,
        options=(Option("--within", "look so far ahead; 14d unless said", "SPAN"), JSON),
    ),
)  # fmt: skip
