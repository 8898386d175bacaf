"""Commands about lots."""

from typing import Final

from studio_log.cli import values
from studio_log.cli.form import AT, JSON, LOT, SURE, Form, Option, UsageError, Word
from studio_log.cli.plain import instant, picked
from studio_log.cli.turn import Turn
from studio_log.domain.lots import LotState
from studio_log.domain.pieces import Weighed
from studio_log.services.commands import GoOn, NewLot, SetLot, SplitLot
from studio_log.services.joins import JoinLots
from studio_log.services.questions import (
    LotLine,
    LotLines,
    LotLinesFor,
    LotSheet,
    LotSheetFor,
    StepLine,
)

STATES: Final = (*(state.value for state in LotState), "live", "all")
WIDEST_NAME: Final = 36
LEAST_JOINED: Final = 2

METHOD: Final = Option("--method", "the method's slug; see: methods", "SLUG", required=True)
NAME: Final = Option("--name", "the lot's name", "TEXT")
WEIGHT: Final = Option("--weight", "dry weight off the scale: 412g, 14.5 oz", "WEIGHT")
WEIGHED: Final = Option(
    "--weighed", "whether it was weighed before or after scouring", "WHEN", choices=tuple(Weighed)
)
PLACE: Final = Option("--place", "where it is kept", "TEXT")
CURE: Final = Option("--cure", "the view of its cure, in days", "DAYS")
VESSEL: Final = Option("--vessel", "what the bucket holds: 20L", "VOLUME")
VESSEL_NAME: Final = Option("--vessel-name", "which bucket or pot it is", "TEXT")
AMOUNT: Final = Option(
    "--amount", "the dyer's own figure for an amount: beans=35", "NAME=VALUE", repeats=True
)


def _new(turn: Turn) -> int:
    given = turn.values
    pieces, understood = values.pieces(given["piece"])
    command = NewLot(
        method=values.slug(given["method"], "method's slug"),
        name=values.text(given["name"], "The name"),
        pieces=pieces,
        grams=values.grams(given["weight"]),
        weighed=given["weighed"],
        cure_days=values.days(given["cure"]),
        place=values.text(given["place"] or "", "The place", empty=True),
        vessel_litres=values.litres(given["vessel"]),
        vessel=values.text(given["vessel_name"] or "", "The vessel's name", empty=True),
        amounts=values.amounts(given["amount"]),
        at=turn.moment("at"),
        sure=given["sure"],
    )
    outcome = turn.do(command)
    for words in understood:
        turn.tell(words)
    return turn.finish_new(outcome)


def _go_on(turn: Turn) -> int:
    command = GoOn(
        code=values.lot_code(turn.values["code"]),
        method=values.slug(turn.values["method"], "method's slug"),
        at=turn.moment("at"),
        sure=turn.values["sure"],
    )
    return turn.finish(turn.do(command))


def _set(turn: Turn) -> int:
    given = turn.values
    command = SetLot(
        code=values.lot_code(given["code"]),
        name=None if given["name"] is None else values.text(given["name"], "The name"),
        grams=values.grams(given["weight"]),
        weighed=given["weighed"],
        place=None
        if given["place"] is None
        else values.text(given["place"], "The place", empty=True),
        cure_days=values.days(given["cure"]),
        vessel_litres=values.litres(given["vessel"]),
        vessel=None
        if given["vessel_name"] is None
        else values.text(given["vessel_name"], "The vessel's name", empty=True),
        amounts=values.amounts(given["amount"]),
        sure=given["sure"],
    )
    if command == SetLot(command.code, sure=command.sure):
        raise UsageError("Nothing to change was given. See: studio-log lot set --help")
    return turn.finish(turn.do(command))


def _split(turn: Turn) -> int:
    command = SplitLot(
        code=values.lot_code(turn.values["code"]),
        pieces=values.numbers(turn.values["pieces"], "pieces"),
        name=values.text(turn.values["name"], "The name"),
        at=turn.moment("at"),
        sure=turn.values["sure"],
    )
    return turn.finish_new(turn.do(command))


def _join(turn: Turn) -> int:
    codes = tuple(values.lot_code(code) for code in turn.values["code"])
    if len(codes) < LEAST_JOINED:
        raise UsageError("A join needs two lots or more. See: studio-log lot join --help")
    command = JoinLots(
        codes=codes,
        name=values.text(turn.values["name"], "The name"),
        at=turn.moment("at"),
        sure=turn.values["sure"],
    )
    return turn.finish_new(turn.do(command))


def _list(turn: Turn) -> int:
    find = values.text(turn.values["find"] or "", "What to find", empty=True)
    lines: LotLines = turn.studio.ask(LotLinesFor(turn.values["state"] or "all", find))
    if turn.values["json"]:
        turn.say_json([_line_json(line) for line in lines.lines])
    else:
        turn.say("\n".join(map(_line_words, lines.lines)) or "No lots.")
    there = lines.counts.get(turn.values["state"] or "all", len(lines.lines))
    if there > len(lines.lines):
        turn.tell(f"{len(lines.lines)} of {there} lots are shown; --find or --state narrows them.")
    return 0


def _line_json(line: LotLine) -> dict[str, object]:
    fields = ("code", "name", "state", "doing", "need", "need_at", "urgency")
    strip = [{"kind": kind, "state": state} for kind, state in line.strip]
    return {**picked(line, *fields), "strip": strip}


def _line_words(line: LotLine) -> str:
    name = line.name
    if len(name) > WIDEST_NAME:
        name = f"{name[: WIDEST_NAME - 1]}…"
    start = f"{line.code}  {line.state:<8}  {name:<{WIDEST_NAME}}"
    return "  ".join(filter(None, [start, line.doing, line.need]))


def _show(turn: Turn) -> int:
    sheet: LotSheet = turn.studio.ask(LotSheetFor(values.lot_code(turn.values["code"])))
    if turn.values["json"]:
        turn.say_json(sheet.data)
    else:
        turn.say("\n".join(_sheet_words(sheet)))
    return 0


def _sheet_words(sheet: LotSheet) -> list[str]:
    head = [
        f"{sheet.code} {sheet.name} ({sheet.state})",
        sheet.heading,
        sheet.doing,
        sheet.lineage,
        sheet.plan_words,
        sheet.milk_words,
        sheet.vessel_words,
        sheet.cure_words,
    ]
    steps = [words for line in sheet.steps for words in _step_words(line)]
    entries = [
        f"  {entry.number:>3}  {instant(entry.at)}  {entry.words}"
        + ("  (taken back)" if entry.taken_back else "")
        for entry in sheet.entries
    ]
    undo = [f"Undo would take back: {sheet.undo}"] if sheet.undo else []
    cautions = [f"! {caution}" for caution in sheet.cautions]
    return [*filter(None, head), "Steps:", *steps, "Journal (UTC):", *entries, *cautions, *undo]


def _step_words(line: StepLine) -> list[str]:
    when = line.actual or line.when
    first = f"  {line.number:>3}  {line.state:<8}  {line.title}"
    more = [part for part in (when, line.planned, line.details) if part]
    amiss = [line.broken, *(one.words for one in line.warned)]
    return [" · ".join([first, *more]), *(f"       {said}" for said in amiss if said)]


FORMS: Final = (
    Form(
        ("lot", "new"),
        "Make a lot and print its code.",
        _new,
        options=(
            METHOD,
            Option("--name", "the lot's name", "TEXT", required=True),
            Option("--piece", "cloth, such as “2 x linen 180x45cm 185g/m2”", "TEXT",
                   repeats=True, spreads=True, required=True),
            WEIGHT, WEIGHED, CURE, PLACE, VESSEL, VESSEL_NAME, AMOUNT, AT, SURE, JSON,
        ),
    ),
    Form(("lot", "go-on"), "Let a lot go on to a further method.", _go_on, (LOT,),
         (METHOD, AT, SURE, JSON)),
    Form(
        ("lot", "list"),
        "List the lots.",
        _list,
        options=(
            Option("--state", "only lots in this state", "STATE", choices=STATES),
            Option("--find", "only lots in whose words this stands", "TEXT"),
            JSON,
        ),
    ),
    Form(("lot", "show"), "Show one lot, whole.", _show, (LOT,), (JSON,)),
    Form(
        ("lot", "split"),
        "Move pieces of a lot into a new one and print its code.",
        _split,
        (LOT,),
        (
            Option("--pieces", "the numbers of the pieces that move: 1,3", "NUMBERS",
                   required=True),
            Option("--name", "the new lot's name", "TEXT", required=True),
            AT, SURE, JSON,
        ),
    ),
    Form(
        ("lot", "join"),
        "Join lots that stand at the same step into a new one and print its code.",
        _join,
        (Word("CODE", "the codes of the lots", many=True),),
        (Option("--name", "the joined lot's name", "TEXT", required=True), AT, SURE, JSON),
    ),
    Form(
        ("lot", "set"),
        "Change a lot.",
        _set,
        (LOT,),
        (NAME, WEIGHT, WEIGHED, PLACE, CURE, VESSEL, VESSEL_NAME, AMOUNT, SURE, JSON),
    ),
)  # fmt: skip
