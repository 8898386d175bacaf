"""Commands about trials that the log keeps: planned, dyed, read blind, unveiled, reported."""

import re
from datetime import date
from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import AT, JSON, SURE, Form, Option, UsageError, Word
from studio_log.cli.plain import picked, plain
from studio_log.cli.trial_out import CODE, NAME
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import quoted
from studio_log.domain.swatch_text import read_lab, whole_swatch_code
from studio_log.domain.trial_design import (
    DEFAULT_AGES,
    MOST_ARMS,
    MOST_BLOCKS,
    MOST_REPLICATES,
    MOST_SEED,
)
from studio_log.domain.trial_text import read_ages, read_figure, whole_trial_code
from studio_log.domain.trials import MEASURES, WAYS
from studio_log.services.trials import (
    ArmLine,
    DoArm,
    GiveLot,
    GiveSwatch,
    NewTrial,
    NoteTrial,
    ReadTag,
    SetTrial,
    TrialFor,
    TrialLine,
    TrialNeeds,
    TrialNeedsFor,
    TrialPage,
    TrialPlan,
    TrialsFor,
    UnitLine,
    UnveilTrial,
)

NO_AGES: Final = "none"
"""What --ages is where every arm has a name."""
NOTE: Final = Option("--note", "a note", "TEXT")
ARM: Final = Option("--arm", "the number of an arm; may be repeated; all unless said", "NUMBER",
                    repeats=True)  # fmt: skip
BATCH: Final = Option("--batch", "the number of a batch; may be repeated; all unless said",
                      "NUMBER", repeats=True)  # fmt: skip
LINE: Final = ("code", "question", "way", "day", "arms", "blocks", "pieces", "read", "veiled",
               "unveiled", "ended", "next")  # fmt: skip


def _plan(given: dict[str, Any]) -> TrialPlan:
    batches = tuple(values.text(one, "The batch") for one in given["batch"])
    count = None if given["batches"] is None else _whole(given["batches"], MOST_BLOCKS)
    if batches and count is not None:
        raise UsageError("Either --batch, by name, or --batches, a number")
    return TrialPlan(
        ages=_ages(given["ages"]),
        others=tuple(values.text(one, "The arm") for one in given["other"]),
        blocks=batches or tuple(str(one) for one in range(1, (count or 3) + 1)),
        replicates=2 if given["each"] is None else _whole(given["each"], MOST_REPLICATES),
        way="backwards" if given["backwards"] else WAYS[0],
        day=None if given["day"] is None else _date(given["day"]),
        lead_d=3 if given["lead"] is None else values.whole(given["lead"], "the days", most=60),
        measure=given["by"] or next(iter(MEASURES)),
        control="" if given["control"] is None else values.text(given["control"], "The control"),
        seed=None
        if given["seed"] is None
        else values.whole(given["seed"], "the seed", most=MOST_SEED),
    )


def _ages(typed: str | None) -> tuple[float, ...]:
    if typed is None:
        return DEFAULT_AGES
    return () if typed.strip().casefold() == NO_AGES else read_ages(typed)


def _whole(typed: str, most: int) -> int:
    return values.whole(typed, "the number", most=most)


def _date(typed: str) -> date:
    plain_text = typed.strip()
    if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", plain_text, re.ASCII):
        try:
            return date.fromisoformat(plain_text)
        except ValueError:
            pass
    raise Refusal(
        f"{quoted(values.shown(typed[:40]))} is no day, such as 2026-07-09. {values.NOTHING}"
    )


def _new(turn: Turn) -> int:
    given = turn.values
    plan = _plan(given)
    if given["only_look"]:
        return _looked(turn, plan)
    question = values.text(given["question"], "The question")
    command = NewTrial(question, plan, at=turn.moment("at"), sure=given["sure"])
    return turn.finish_new(turn.do(command))


def _looked(turn: Turn, plan: TrialPlan) -> int:
    needs: TrialNeeds = turn.studio.ask(TrialNeedsFor(plan))
    if needs.fault:
        raise Refusal(needs.fault)
    if turn.values["json"]:
        turn.say_json({"words": needs.words, "warnings": needs.warnings})
    else:
        turn.say("\n".join([*needs.words, *needs.warnings]))
    return 0


def _set(turn: Turn) -> int:
    given = turn.values
    if given["over"] and given["not_over"]:
        raise UsageError("Either --over or --not-over")
    command = SetTrial(
        whole_trial_code(given["code"]),
        question=None
        if given["question"] is None
        else values.text(given["question"], "The question"),
        day=None if given["day"] is None else _date(given["day"]),
        control=None if given["control"] is None else values.text(given["control"], "The control"),
        ended=True if given["over"] else False if given["not_over"] else None,
    )
    if command == SetTrial(command.code):
        raise UsageError("Nothing to change was given. See: studio-log trial set --help")
    return turn.finish(turn.do(command))


def _cells(given: dict[str, Any]) -> dict[str, tuple[int, ...]]:
    return {
        "arms": tuple(_whole(one, MOST_ARMS) for one in given["arm"]),
        "blocks": tuple(_whole(one, MOST_BLOCKS) for one in given["batch"]),
    }


def _give(turn: Turn) -> int:
    given = turn.values
    code = whole_trial_code(given["code"])
    command: GiveLot | GiveSwatch
    if (given["lot"] is None) == (given["swatch"] is None):
        raise UsageError("Give --lot, with --arm and --batch where not all are of it, or --swatch")
    if given["lot"] is not None:
        command = GiveLot(code, values.lot_code(given["lot"]), **_cells(given))
    else:
        if given["tag"] is None:
            raise UsageError("--swatch needs --tag")
        command = GiveSwatch(code, given["tag"], whole_swatch_code(given["swatch"]))
    return turn.finish(turn.do(command))


def _done(turn: Turn) -> int:
    given = turn.values
    command = DoArm(
        whole_trial_code(given["code"]), given["what"], **_cells(given),
        note=values.note(given["note"]), at=turn.moment("at"), sure=given["sure"],
    )  # fmt: skip
    return turn.finish(turn.do(command))


def _read(turn: Turn) -> int:
    given = turn.values
    code = whole_trial_code(given["code"])
    ways = [one for one in ("value", "lab") if given[one] is not None]
    if given["tag"] is None:
        return _next(turn, code)
    if len(ways) + given["lost"] != 1:
        raise UsageError("Give one of --value, --lab and --lost")
    page: TrialPage = turn.studio.ask(TrialFor(code))
    value, lab = given["value"], given["lab"]
    command = ReadTag(
        code,
        given["tag"],
        value=None if value is None else read_figure(value, page.trial.measure),
        lab=None if lab is None else read_lab(lab),
        two_u=None if given["two_u"] is None else _two_u(given["two_u"]),
        lost=given["lost"],
        note=values.note(given["note"]),
        at=turn.moment("at"),
        sure=given["sure"],
    )
    return turn.finish(turn.do(command))


def _two_u(typed: str) -> float:
    found = values.readings([f"two_u={typed}"])["two_u"]
    if not isinstance(found, float):
        raise UsageError("--two-u takes a figure, such as 2.4")
    return found


def _next(turn: Turn, code: str) -> int:
    """Say which tag is to be read next."""
    page: TrialPage = turn.studio.ask(TrialFor(code))
    if turn.values["json"]:
        turn.say_json({"code": code, "next_tag": page.next_tag, "left": page.left})
    elif page.next_tag:
        turn.say(f"Read tag {page.next_tag} next; {page.left} are left.")
    else:
        turn.say(f"All tags of {code} are read.")
    return 0


def _unveil(turn: Turn) -> int:
    given = turn.values
    command = UnveilTrial(
        whole_trial_code(given["code"]), broken=given["broken"], note=values.note(given["note"])
    )
    return turn.finish(turn.do(command))


def _note(turn: Turn) -> int:
    given = turn.values
    command = NoteTrial(
        whole_trial_code(given["code"]), values.note(given["note"]), at=turn.moment("at"),
        sure=given["sure"],
    )  # fmt: skip
    return turn.finish(turn.do(command))


def _list(turn: Turn) -> int:
    found: tuple[TrialLine, ...] = turn.studio.ask(TrialsFor(ended=turn.values["all"]))
    if turn.values["json"]:
        turn.say_json([picked(one, *LINE) for one in found])
        return 0
    told = [f"{one.code}  {one.question}: {one.words}. Next: {one.next}" for one in found]
    turn.say("\n".join(told) or "No trial is kept yet.")
    return 0


def _show(turn: Turn) -> int:
    page: TrialPage = turn.studio.ask(TrialFor(turn.values["name"]))
    if turn.values["json"]:
        turn.say_json(_page_json(page))
        return 0
    line = page.line
    told = [f"{line.code}  {line.question}", *page.facts, f"Next: {line.next}", ""]
    told += [_arm_words(one) for one in page.arms]
    told += ["", "In the order of reading:", *map(_unit_words, page.units), ""]
    told += [f"{number:>3}  {when}  {words}" for number, when, words in page.history]
    turn.say("\n".join(told))
    return 0


def _arm_words(one: ArmLine) -> str:
    days = ", ".join(map(str, one.dye_days))
    soy = f", beans {one.soy_day}" if one.soy_day else ""
    tags = f"; tags {' '.join(one.tags)}" if one.tags else ""
    lots = f"; lots {', '.join(one.lots)}" if one.lots else ""
    named = f"{one.words} (control)" if one.control else one.words
    return f"{one.number:>3}  {named}: {one.state}{soy}, dyeing {days}{lots}{tags}"


def _unit_words(one: UnitLine) -> str:
    dip = "" if one.dip is None else f"dip {one.dip}"
    known = ", ".join(filter(None, (dip, one.arm, one.block, one.lot, one.swatch)))
    return f"{one.read:>4}  {one.tag}  {one.words or '–'}  {known}".rstrip()


def _page_json(page: TrialPage) -> dict[str, Any]:
    trial = page.trial
    return {
        **picked(page.line, *LINE),
        "measure": trial.measure,
        "control": trial.control,
        "replicates": trial.replicates,
        "batches": trial.blocks,
        "seed": None if trial.veiled else trial.seed,
        "lead_days": trial.lead_d,
        "arms": plain(page.arms),
        "units": plain(page.units),
        "next_tag": page.next_tag,
        "left": page.left,
        "broken": trial.unveiling is not None and trial.unveiling.broken,
        "history": [{"entry": number, "when": when, "words": words}
                    for number, when, words in page.history],
        "undo": page.undo,
        "redo": page.redo,
    }  # fmt: skip


CONTROL: Final = Option("--control", "the arm that the others are held against: its name or age",
                        "ARM")  # fmt: skip
DAY: Final = Option("--day", "when the cloth is dry; with --backwards when all is dyed",
                    "DAY")  # fmt: skip
FORMS: Final = (
    Form(
        ("trial", "new"), "Plan a trial and print its code.", _new,
        (Word("QUESTION", "the one question, in words"),),
        (
            Option("--ages", "cure ages in days, or none; 0,3,7,14,30,60,90 unless said", "AGES"),
            Option("--other", "an arm that has a name: “no soy”; may be repeated", "TEXT",
                   repeats=True),
            CONTROL,
            Option("--batches", "how many batches; 3 unless said", "NUMBER"),
            Option("--batch", "or their names; may be repeated", "TEXT", repeats=True),
            Option("--each", "pieces of each arm in each batch; 2 unless said", "NUMBER"),
            Option("--backwards", "soyed on days of their own, so that all meet one bath"), DAY,
            Option("--lead", "days from beans to dry cloth; 3 unless said", "DAYS"),
            Option("--by", "what is read; chroma unless said", "MEASURE",
                   choices=tuple(MEASURES)),
            Option("--seed", "the number that orders and tags are drawn from", "NUMBER"),
            Option("--only-look", "say what it needs and what it can resolve, and keep nothing"),
            AT, SURE, JSON,
        ),
    ),
    Form(("trial", "list"), "List the trials.", _list,
         options=(Option("--all", "those that are over as well"), JSON)),
    Form(("trial", "show"), "Show one trial: its arms, its pieces, its diary.", _show, (NAME,),
         (JSON,)),
    Form(
        ("trial", "give"), "Say which lot or swatch belongs to pieces of a trial.", _give, (CODE,),
        (
            Option("--lot", "the lot that pieces come from", "CODE"), ARM, BATCH,
            Option("--swatch", "the swatch that was cut from a piece", "CODE"),
            Option("--tag", "of --swatch: the tag of the piece", "TAG"), JSON,
        ),
    ),
    Form(
        ("trial", "done"), "Write down that arms were soyed or dyed.", _done,
        (CODE, Word("WHAT", "soy or dye", choices=("soy", "dye"))),
        (ARM, BATCH, NOTE, AT, SURE, JSON),
    ),
    Form(
        ("trial", "read"), "Write down a reading of a tag; without a tag, say which comes next.",
        _read, (CODE, Word("TAG", "the tag on the piece, such as 417", optional=True)),
        (
            Option("--value", "what was read, in the trial's measure", "FIGURE"),
            Option("--lab", "or its colour: 52.1,31.8,24.0", "LAB"),
            Option("--two-u", "of --lab: twice its uncertainty, in CIEDE2000", "FIGURE"),
            Option("--lost", "the piece is lost or spoilt"), NOTE, AT, SURE, JSON,
        ),
    ),
    Form(
        ("trial", "unveil"), "Tell the tags from each other, once all are read.", _unveil, (CODE,),
        (Option("--broken", "although some are unread; the journal keeps that"), NOTE, JSON),
    ),
    Form(("trial", "note"), "Write down a remark on a trial.", _note, (CODE,),
         (NOTE, AT, SURE, JSON)),
    Form(
        ("trial", "set"), "Change a trial's question or day, or say that it is over.", _set,
        (CODE,),
        (
            Option("--question", "the question", "TEXT"), DAY, CONTROL,
            Option("--over", "it is over"), Option("--not-over", "it goes on after all"), JSON,
        ),
    ),
)  # fmt: skip
