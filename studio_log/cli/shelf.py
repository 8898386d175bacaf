"""Commands that look up dyes and materials."""

from typing import TYPE_CHECKING, Any, Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, Word
from studio_log.cli.plain import plain
from studio_log.cli.turn import Turn
from studio_log.present.dye_words import SHEET, amount_words, dye_facts, light_words, material_facts
from studio_log.services.shelf import DyeFor, DyesFor, MaterialFor, MaterialsFor, MaterialSheet

if TYPE_CHECKING:
    from studio_log.domain.dyestuffs import Dye
    from studio_log.domain.materials import Material

FIND: Final = Option("--find", "a part of its name", "TEXT")


def _dyes(turn: Turn) -> int:
    found: tuple[Dye, ...] = turn.studio.ask(DyesFor(turn.values["find"] or ""))
    if turn.values["json"]:
        turn.say_json([plain(one) for one in found])
    else:
        turn.say(
            _table([(one.slug, f"light {light_words(one)}", amount_words(one)) for one in found])
            or "No such dye."
        )
    return 0


def _table(rows: list[tuple[str, str, str]]) -> str:
    widths = [max((len(row[column]) for row in rows), default=0) for column in (0, 1)]
    return "\n".join(
        f"{first:<{widths[0]}}  {second:<{widths[1]}}  {third}".rstrip()
        for first, second, third in rows
    )


def _dye(turn: Turn) -> int:
    found: Dye = turn.studio.ask(DyeFor(values.slug(turn.values["slug"], "dye's short name")))
    if turn.values["json"]:
        turn.say_json(plain(found))
    else:
        head = f"{found.title}, {found.latin}" if found.latin else found.title
        turn.say("\n".join([head, *(f"  {name}: {said}" for name, said in dye_facts(found))]))
    return 0


def _materials(turn: Turn) -> int:
    found: tuple[Material, ...] = turn.studio.ask(MaterialsFor(turn.values["find"] or ""))
    if turn.values["json"]:
        turn.say_json([plain(one) for one in found])
    else:
        rows = [(one.slug, one.sort.value, one.hazard) for one in found]
        turn.say(f"{_table(rows)}\n{SHEET}" if rows else "No such material.")
    return 0


def _material(turn: Turn) -> int:
    slug = values.slug(turn.values["slug"], "material's short name")
    found: MaterialSheet = turn.studio.ask(MaterialFor(slug))
    if turn.values["json"]:
        turn.say_json(_fields(found))
    else:
        facts = (f"  {name}: {said}" for name, said in material_facts(found.material))
        cautions = (f"  {one.title}. {one.text}" for one in found.cautions if one.slug != "sds")
        turn.say("\n".join([found.material.title, *facts, "", *cautions, "", SHEET]))
    return 0


def _fields(sheet: MaterialSheet) -> dict[str, Any]:
    whole: dict[str, Any] = plain(sheet.material)
    return {**whole, "cautions": [plain(one) for one in sheet.cautions]}


FORMS: Final = (
    Form(("dyes",), "List the dyes.", _dyes, options=(FIND, JSON)),
    Form(
        ("dye", "show"), "Show all that is known of a dye.", _dye,
        (Word("SLUG", "the dye's short name, such as madder"),), (JSON,),
    ),
    Form(("materials",), "List the materials.", _materials, options=(FIND, JSON)),
    Form(
        ("material", "show"), "Show a material: amounts, hazards, what to wear, how to store it.",
        _material, (Word("SLUG", "the material's short name, such as alum"),), (JSON,),
    ),
)  # fmt: skip
