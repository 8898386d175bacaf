"""Dyes, materials and ways to a colour as documents: for the screen, the clipboard and the wall."""

from collections.abc import Iterable, Sequence
from html import escape

from studio_log.domain.cautions import Caution
from studio_log.domain.dyestuffs import Dye
from studio_log.domain.materials import Material
from studio_log.language.words import tr
from studio_log.present.colour_aim import Aim, Way
from studio_log.present.dye_words import SHEET, dye_facts, material_facts


def dye_html(dye: Dye) -> str:
    """Give all that is known of a dye."""
    latin = f" <i>{escape(dye.latin)}</i>" if dye.latin else ""
    return f"<h2>{escape(dye.title)}{latin}</h2>{_facts(dye_facts(dye))}"


def material_html(material: Material, cautions: Sequence[Caution] = ()) -> str:
    """Give all that is known of a material, what to heed first."""
    heed = "".join(f"<li>{escape(one.text)}</li>" for one in cautions)
    head = tr("Heed")
    listed = f"<h4>{escape(head)}</h4><ul>{heed}</ul>" if heed else ""
    facts = _facts(material_facts(material))
    return f"<h2>{escape(material.title)}</h2>{listed}{facts}<p>{escape(tr(SHEET))}</p>"


def wall_html(materials: Iterable[Material], title: str) -> str:
    """Give one sheet for the wall: every material, its hazard, what to wear, where to put it."""
    heads = (tr("Material"), tr("Hazard"), tr("Wear and air"), tr("Store"), tr("Pour away"))
    rows = "".join(
        _row("td", (one.title, f"{one.hazard} {one.people}", f"{one.wear} {one.air}", one.store,
                    one.away))
        for one in materials
    )  # fmt: skip
    never = tr("Dye vessels never go back to food. Keep all of it from children and pets.")
    table = (
        '<table border="1" cellspacing="0" cellpadding="3" style="border-collapse: collapse">'
        f"<thead>{_row('th', heads)}</thead><tbody>{rows}</tbody></table>"
    )
    said = f"<p><b>{escape(tr(SHEET))}</b> {escape(never)}</p>"
    return f"<h2>{escape(title)}</h2>{said}{table}"


def aim_html(aim: Aim) -> str:
    """Give the comparison of ways."""
    ways = "".join(_way(one) for one in aim.ways)
    always = "".join(f"<li>{escape(one)}</li>" for one in aim.always)
    return f"<p><b>{escape(aim.summary)}</b></p>{ways}<ul>{always}</ul>"


def _way(way: Way) -> str:
    known = "".join(f"<li>{escape(one)}</li>" for one in way.known if one)
    opinion = "".join(f"<li><i>{escape(one)}</i></li>" for one in way.opinion)
    heads = escape(tr("Known")), escape(tr("Opinion"))
    return (
        f"<h3>{escape(way.title)}</h3><p>{escape(way.gives)}</p>"
        f"<p>{heads[0]}</p><ul>{known}</ul><p>{heads[1]}</p><ul>{opinion}</ul>"
    )


def _facts(facts: Iterable[tuple[str, str]]) -> str:
    rows = "".join(
        f'<tr><td style="padding-right:16px"><b>{escape(tr(head))}</b></td>'
        f"<td>{escape(said)}</td></tr>"
        for head, said in facts
    )
    return f'<table cellpadding="3">{rows}</table>'


def _row(tag: str, cells: Iterable[str]) -> str:
    return f"<tr>{''.join(f'<{tag}>{escape(cell)}</{tag}>' for cell in cells)}</tr>"
