"""Commands about baths and vats."""

from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import AT, JSON, SURE, Form, Option, UsageError, Word
from studio_log.cli.plain import picked
from studio_log.cli.turn import Turn
from studio_log.domain.bath_kinds import KINDS
from studio_log.domain.bath_text import read_bath_celsius, read_ph, whole_bath_code
from studio_log.domain.journal import Act
from studio_log.domain.span_text import read_span
from studio_log.services.baths import (
    BathFor,
    BathLine,
    BathPage,
    BathsFor,
    MarkBath,
    NewBath,
    SetBath,
)

FIELDS: Final = (
    "code", "name", "kind", "litres", "place", "made_at", "fresh_since", "grams", "grams_since",
    "uses", "refresh_grams", "refresh_due", "next_exhaust", "ph", "temperature", "planned",
    "use_by", "finished", "lots", "words", "urgent",
)  # fmt: skip
DIARY: Final = (
    "number", "at", "written", "act", "words", "readings", "lots", "step", "grams", "exhaust",
    "note", "taken_back", "corrected_by",
)  # fmt: skip
CODE: Final = Word("CODE", "the bath's code, such as B26-001")
NOTE: Final = Option("--note", "a remark", "TEXT")
LOTS: Final = Option("--lot", "the lot whose cloth it is; may be repeated", "CODE", repeats=True)
STEP: Final = Option("--step", "the lot's step: its number, its slug, or now", "STEP")
FED: Final = Option("--with", "what went in: “fructose 5 g”; may be repeated", "TEXT", repeats=True)
READINGS: Final = (
    Option("--ph", "the pH before: 10.5", "NUMBER"),
    Option("--temperature", "the heat before: 48, 118F", "HEAT"),
    Option("--colour", "what the liquid looks like: yellow-green", "TEXT"),
    Option("--flower", "what floats on a vat: blue, coppery skin", "TEXT"),
)
NAME: Final = Option("--name", "what it is called; a dye bath by its dye", "TEXT")
LITRES: Final = Option("--litres", "how much there is of it: 20", "VOLUME")
LIMIT: Final = Option("--refresh-after", "cloth after which it wants refreshing: 10kg", "WEIGHT")
LONGEST_STEP: Final = 80
PLACE: Final = Option("--place", "where it stands", "TEXT")


def _new(turn: Turn) -> int:
    given = turn.values
    command = NewBath(
        given["kind"],
        name=_text(given["name"], "The name"),
        litres=values.litres(given["litres"]),
        refresh_grams=values.grams(given["refresh_after"]),
        place=_text(given["place"], "The place"),
        made_at=turn.moment("made_at"),
        sure=given["sure"],
    )
    return turn.finish_new(turn.do(command))


def _text(typed: str | None, what: str) -> str:
    return "" if typed is None else values.text(typed, what, empty=True)


def _set(turn: Turn) -> int:
    given = turn.values
    if given["finished"] and given["not_finished"]:
        raise UsageError("Either --finished or --not-finished")
    command = SetBath(
        whole_bath_code(given["code"]),
        name=None if given["name"] is None else _text(given["name"], "The name"),
        litres=values.litres(given["litres"]),
        refresh_grams=values.grams(given["refresh_after"]),
        place=None if given["place"] is None else _text(given["place"], "The place"),
        finished=True if given["finished"] else False if given["not_finished"] else None,
        sure=given["sure"],
    )
    if command == SetBath(command.code, sure=command.sure):
        raise UsageError("Nothing to change was given. See: studio-log bath set --help")
    return turn.finish(turn.do(command))


def _marks(act: Act, **more: Any) -> "_Marking":
    return _Marking(act, more)


class _Marking:
    """Does one command that writes an entry; `more` reads the options it has beside the usual."""

    def __init__(self, act: Act, more: dict[str, Any]) -> None:
        self.act = act
        self.more = more

    def __call__(self, turn: Turn) -> int:
        given = turn.values
        command = MarkBath(
            whole_bath_code(given["code"]),
            self.act,
            at=turn.moment("at") if "at" in given and self.act is not Act.PLAN else None,
            note=values.note(given["note"]),
            readings=_readings(given),
            lots=values.lot_codes(given.get("lot") or ()),
            sure=given["sure"],
            **{name: read(turn) for name, read in self.more.items()},
        )
        return turn.finish(turn.do(command))


def _readings(given: dict[str, Any]) -> dict[str, float | str]:
    found: dict[str, float | str] = {}
    if given.get("ph") is not None:
        found["ph"] = read_ph(given["ph"])
    if given.get("temperature") is not None:
        found["temperature"] = read_bath_celsius(given["temperature"])
    for name in ("colour", "flower"):
        if given.get(name) is not None:
            found[name] = values.text(given[name], f"The {name}")
    return found


def _span(name: str) -> Any:
    return lambda turn: None if turn.values[name] is None else read_span(turn.values[name])


def _fed(turn: Turn) -> Any:
    return tuple(values.text(one, "What was fed") for one in turn.values["with"])


def _step(turn: Turn) -> Any:
    typed = turn.values["step"]
    return "" if typed is None else values.text(typed, "The step", longest=LONGEST_STEP)


def _planned(turn: Turn) -> Any:
    given = turn.values
    if (given["at"] is None) != given["withdraw"]:
        raise UsageError("Say when with --at, or --withdraw")
    return turn.moment("at", prefer="next")


def _list(turn: Turn) -> int:
    lot = turn.values["lot"]
    question = BathsFor(turn.values["all"], "" if lot is None else values.lot_code(lot))
    lines: tuple[BathLine, ...] = turn.studio.ask(question)
    if turn.values["json"]:
        turn.say_json([picked(line, *FIELDS) for line in lines])
    else:
        turn.say("\n".join(map(_words, lines)) or "No bath is kept.")
    return 0


def _words(line: BathLine) -> str:
    kind = "" if line.name == line.kind_words else f" ({line.kind_words})"
    due = f"; {line.urgent}" if line.urgent else ""
    return f"{line.code}  {line.name}{kind}: {line.words}{due}"


def _show(turn: Turn) -> int:
    page: BathPage = turn.studio.ask(BathFor(whole_bath_code(turn.values["code"])))
    if turn.values["json"]:
        told = picked(page.line, *FIELDS)
        told["facts"], told["warnings"] = list(page.facts), list(page.warnings)
        told["cautions"] = list(page.cautions)
        told["diary"] = [picked(one, *DIARY) for one in reversed(page.diary)]
        turn.say_json(told)
        return 0
    lines = [_words(page.line), *page.facts, *page.warnings]
    if page.lots:
        lines.append("Used by: " + ", ".join(f"{code} {name}" for code, name in page.lots))
    lines += [f"Caution: {one}" for one in page.cautions]
    for one in reversed(page.diary):
        gone = " (taken back)" if one.taken_back else ""
        note = f" — {one.note}" if one.note else ""
        lines.append(f"{one.number:>4}  {one.when}  {one.words}{note}{gone}")
    turn.say("\n".join(lines))
    return 0


FORMS: Final = (
    Form(
        ("bath", "new"),
        "Record a bath or vat and print its code.",
        _new,
        options=(
            Option("--kind", "what it is", "KIND", required=True, choices=tuple(KINDS)),
            NAME, LITRES, LIMIT, PLACE,
            Option("--made-at", "when it was made", "TIME"),
            SURE, JSON,
        ),
    ),
    Form(
        ("bath", "list"),
        "List the baths and vats.",
        _list,
        options=(
            Option("--all", "those that are finished as well"),
            Option("--lot", "only those that this lot used", "CODE"),
            JSON,
        ),
    ),
    Form(("bath", "show"), "Show one bath with its diary.", _show, (CODE,), (JSON,)),
    Form(
        ("bath", "use"),
        "Say what cloth went through a bath.",
        _marks(
            Act.BATH_USE,
            step=_step,
            grams=lambda turn: values.grams(turn.values["weight"]),
        ),
        (CODE,),
        (LOTS, STEP, Option("--weight", "dry weight of the cloth: 412g", "WEIGHT"), *READINGS,
         AT, NOTE, SURE, JSON),
    ),
    Form(
        ("bath", "dip"),
        "Write one dip with its airing into a vat's diary.",
        _marks(Act.BATH_DIP, dipped=_span("for"), aired=_span("air")),
        (CODE,),
        (LOTS, Option("--for", "how long it was in: 10m", "SPAN"),
         Option("--air", "how long it was aired: 15m", "SPAN"), *READINGS, AT, NOTE, SURE, JSON),
    ),
    Form(
        ("bath", "read"),
        "Write down what a bath is like: pH, heat, colour, flower.",
        _marks(Act.BATH_READ),
        (CODE,),
        (*READINGS, AT, NOTE, SURE, JSON),
    ),
    Form(
        ("bath", "feed"),
        "Say what a bath was fed.",
        _marks(Act.BATH_FEED, fed=_fed),
        (CODE,),
        (FED, AT, NOTE, SURE, JSON),
    ),
    Form(
        ("bath", "refresh"),
        "Say that a bath was refreshed: what went through counts anew.",
        _marks(Act.BATH_REFRESH, fed=_fed),
        (CODE,),
        (FED, AT, NOTE, SURE, JSON),
    ),
    Form(
        ("bath", "plan"),
        "Plan a bath's next use; a reminder to make it ready comes before.",
        _marks(Act.PLAN, planned=_planned),
        (CODE,),
        (AT, Option("--withdraw", "no use is planned any more"), NOTE, SURE, JSON),
    ),
    Form(
        ("bath", "ready"),
        "Say that a bath was made ready: warmed and fed.",
        _marks(Act.BATH_READY, fed=_fed),
        (CODE,),
        (FED, *READINGS, AT, NOTE, SURE, JSON),
    ),
    Form(
        ("bath", "note"),
        "Write a remark into a bath's diary.",
        _marks(Act.NOTE),
        (CODE,),
        (AT, NOTE, SURE, JSON),
    ),
    Form(
        ("bath", "set"),
        "Change a bath, or say that it is finished.",
        _set,
        (CODE,),
        (NAME, LITRES, LIMIT, PLACE, Option("--finished", "it is poured away"),
         Option("--not-finished", "it is not finished after all"), SURE, JSON),
    ),
)  # fmt: skip
