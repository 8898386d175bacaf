"""Tags on paper, and keeping the studio safe."""

import re
from typing import Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, Word
from studio_log.cli.turn import Turn
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import quoted
from studio_log.domain.tags import CHOICES
from studio_log.services.commands import NoteTagsPrinted
from studio_log.services.questions import TagsFor

MOST_PLACES, MOST_COPIES = 400, 50
STOCK: Final = "tag-80x50"
"""A single tag of 80 by 50 mm."""
FILE_NAME: Final = "The name of the file"


def _tags(turn: Turn) -> int:
    codes = values.lot_codes(turn.values["code"])
    stock = _stock(turn.values["stock"] or STOCK)
    path = values.file_path(turn.values["to"], FILE_NAME)
    start = values.whole(turn.values["start"] or "1", "a place on the sheet", most=MOST_PLACES)
    copies = values.whole(turn.values["copies"] or "1", "a number of tags", most=MOST_COPIES)
    chosen = _fields(turn.values["fields"])
    facts = turn.studio.ask(TagsFor(codes))
    tags = [fact.only(chosen) for fact in facts for _ in range(copies)]
    said = turn.house.write_tags(path, tags, stock, start_at=start)
    turn.do(NoteTagsPrinted(tuple(fact.code for fact in facts)))
    turn.say(said)
    return 0


def _stock(typed: str) -> str:
    """Give a stock by its name or its measures; what looks like a path is neither."""
    stock = values.text(typed, "The name of a stock")
    if "/" in stock or "\\" in stock:
        raise Refusal(f"{quoted(values.shown(stock))} is no stock of tags. Nothing was printed.")
    return stock


def _fields(typed: str | None) -> frozenset[str]:
    """Give the fields named; all of them where none is."""
    if typed is None:
        return frozenset(CHOICES)
    named = [part for part in re.split(r"[,\s]+", typed.strip()) if part]
    unknown = sorted(set(named) - set(CHOICES))
    if unknown:
        raise Refusal(
            f"{quoted(values.shown(unknown[0]))} is no field of a tag: {', '.join(CHOICES)}. "
            "The code and the caution always stand on it. Nothing was printed."
        )
    return frozenset(named)


def _backup(turn: Turn) -> int:
    path = values.file_path(turn.values["to"], FILE_NAME)
    turn.say(turn.studio.backup(path))
    return 0


def _restore(turn: Turn) -> int:
    path = values.file_path(turn.values["file"], FILE_NAME)
    if turn.values["dry_run"]:
        turn.say("\n".join([*turn.house.compare(turn.where, path), "Nothing was changed."]))
    else:
        turn.say(turn.house.restore(turn.where, path))
    return 0


def _check(turn: Turn) -> int:
    repair = turn.values["repair"]
    found = left = _found(turn)
    done: list[str] = []
    if repair and found:
        turn.close()
        done = list(turn.house.repair(turn.where))
        left = turn.studio.check()
    if turn.values["json"]:
        told = {"ok": not left, "found": found, "repaired": repair, "done": done, "left": left}
        turn.say_json(told)
    else:
        lines = [*found, *done, *(f"Still: {words}" for words in left if done)]
        lines = list(dict.fromkeys(lines))  # what was looked at is said again where it is done
        turn.say("\n".join(lines or ["All is well."]))
    return 1 if left else 0


def _found(turn: Turn) -> list[str]:
    """Give what is wrong, also with a studio that does not open for damage."""
    try:
        return turn.studio.check()
    except Refusal as refusal:
        readable = turn.house.look_over(turn.where)
        if not readable:
            raise
        return [str(refusal), *readable]


FORMS: Final = (
    Form(
        ("tags",),
        "Write the tags of lots to a PDF.",
        _tags,
        (Word("CODE", "lot codes", many=True),),
        (
            Option("--to", "the PDF to write", "FILE", required=True),
            Option("--stock", f"what they are printed on; else {STOCK}", "NAME"),
            Option("--start", "the place of the first one on its sheet, from 1", "PLACE"),
            Option("--copies", "how many of each", "COUNT"),
            Option("--fields", f"what else they say: {', '.join(CHOICES)}", "LIST"),
        ),
    ),
    Form(
        ("backup",),
        "Write a copy of the studio, its photos beside it.",
        _backup,
        options=(Option("--to", "the file to write", "FILE", required=True),),
    ),
    Form(
        ("restore",),
        "Put a copy in the studio's place; what was there is kept.",
        _restore,
        (Word("FILE", "a copy"),),
        (Option("--dry-run", "only say what it would change"),),
    ),
    Form(
        ("check",),
        "Look through the studio for damage. Exit code 1 where something is wrong.",
        _check,
        options=(
            Option("--repair", "mend what can be mended; a damaged file is kept"),
            JSON,
        ),
    ),
)
