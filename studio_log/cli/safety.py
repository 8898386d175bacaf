"""Tags on paper, and keeping the studio safe."""

from typing import Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, Word
from studio_log.cli.turn import Turn
from studio_log.services.commands import NoteTagsPrinted
from studio_log.services.questions import TagsFor

STOCK: Final = "tag-80x50"
"""A single tag of 80 by 50 mm."""
FILE_NAME: Final = "The name of the file"


def _tags(turn: Turn) -> int:
    codes = values.lot_codes(turn.values["code"])
    stock = values.slug(turn.values["stock"] or STOCK, "name of a stock")
    path = values.file_path(turn.values["to"], FILE_NAME)
    facts = turn.studio.ask(TagsFor(codes))
    said = turn.house.write_tags(path, facts, stock)
    turn.do(NoteTagsPrinted(tuple(fact.code for fact in facts)))
    turn.say(said)
    return 0


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
    found = turn.studio.check(repair=repair)
    left = turn.studio.check() if repair and found else found
    if turn.values["json"]:
        turn.say_json({"ok": not left, "found": found, "repaired": repair, "left": left})
    else:
        lines = found or ["All is well."]
        if repair and found:
            lines = [*found, "Worked out anew from the journal."]
            lines += [f"Still: {words}" for words in left]
        turn.say("\n".join(lines))
    return 1 if left else 0


FORMS: Final = (
    Form(
        ("tags",),
        "Write the tags of lots to a PDF.",
        _tags,
        (Word("CODE", "lot codes", many=True),),
        (
            Option("--to", "the PDF to write", "FILE", required=True),
            Option("--stock", f"what they are printed on; else {STOCK}", "NAME"),
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
            Option("--repair", "work out anew from the journal what can be worked out"),
            JSON,
        ),
    ),
)
