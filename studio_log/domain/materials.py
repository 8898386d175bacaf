"""Materials on the shelf: how much is used, what each can do to people, how it is kept.

A file of materials is a table for each, named by its short name. Nothing here replaces the
supplier's safety data sheet: codes and hazards vary with strength and supplier.
"""

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from studio_log.domain.dyestuffs import MOST_PERCENT, Sure
from studio_log.domain.method_faults import Faults, nearest, shown
from studio_log.domain.method_fields import Table
from studio_log.domain.named_tables import read_named
from studio_log.domain.ranges import Range, range_of

_CODE: Final = re.compile(r"H[2-4][0-9]{2}")
"""A hazard statement of the Globally Harmonized System: H2 physical, H3 health, H4 water."""


class MaterialSort(StrEnum):
    """What a material is for."""

    MORDANT = "mordant"
    ASSIST = "assist"
    TANNIN = "tannin"
    ALKALI = "alkali"
    ACID = "acid"
    REDUCER = "reducer"
    SOLVENT = "solvent"
    BINDER = "binder"
    SOAP = "soap"
    THICKENER = "thickener"
    DYE = "dye"
    PIGMENT = "pigment"


@dataclass(frozen=True)
class Material:
    """One material; empty words and None where nothing is known."""

    slug: str
    title: str
    name: str
    """What chemists call it, with its water."""
    sort: MaterialSort
    use: str
    cellulose: Range | None
    """% WOF on plant fibre, over all schools."""
    protein: Range | None
    """% WOF on wool and silk."""
    limit: float | None
    """% WOF that is never passed on plant fibre."""
    limit_words: str
    avoid: bool
    """Named only so that it is known what not to use."""
    hazard: str
    codes: tuple[str, ...]
    wear: str
    air: str
    people: str
    """Who is in danger: children, pets, people with an allergy."""
    store: str
    keeps: str
    away: str
    """How it is got rid of."""
    cautions: tuple[str, ...]
    """Slugs of resources/cautions.toml."""
    source: str
    sure: Sure


def read_materials(
    text: str, *, name: str = "materials.toml", cautions: Collection[str] | None = None
) -> Mapping[str, Material]:
    """Give the materials of a text by their short name; BadMethod with its faults.

    `cautions` are those that may be named; None looks at none of them.
    """

    def make(slug: str, table: Table, faults: Faults) -> Material:
        found = _material(slug, table, faults)
        _check(found, faults, cautions)
        return found

    return read_named(text, make, name=name, what="materials")


def _material(slug: str, table: Table, faults: Faults) -> Material:
    material = Material(
        slug=slug,
        title=table.line("title"),
        name=table.line("name", needed=False),
        sort=table.choice("sort", MaterialSort),
        use=table.prose("use"),
        cellulose=range_of(table, "cellulose", faults, most=MOST_PERCENT),
        protein=range_of(table, "protein", faults, most=MOST_PERCENT),
        limit=table.maybe_number("limit", most=MOST_PERCENT),
        limit_words=table.prose("limit_words", needed=False),
        avoid=table.flag("avoid", usual=False),
        hazard=table.prose("hazard"),
        codes=table.lines("codes"),
        wear=table.prose("wear"),
        air=table.prose("air", needed=False),
        people=table.prose("people", needed=False),
        store=table.prose("store"),
        keeps=table.prose("keeps", needed=False),
        away=table.prose("away"),
        cautions=table.slugs("cautions"),
        source=table.prose("source"),
        sure=table.choice("sure", Sure),
    )
    table.done()
    return material


def _check(material: Material, faults: Faults, cautions: Collection[str] | None) -> None:
    """Find what the fields of one material have to agree on, and words that nobody knows."""
    for number, code in enumerate(material.codes):
        if not _CODE.fullmatch(code):
            what = f"{shown(code)} is no hazard statement"
            faults.add((material.slug, "codes", number), what, 'write one such as "H319"')
    high = material.cellulose.high if material.cellulose else None
    if material.limit is not None and high is not None and high > material.limit:
        what = f"the usual amount reaches {high:g} %, above the limit"
        faults.add((material.slug, "limit"), what, "mend one of them")
    if (material.limit is None) != (not material.limit_words):
        what = "a limit and its reason go together"
        faults.add((material.slug, "limit"), what, "write limit and limit_words, or neither")
    for number, slug in enumerate(material.cautions):
        if cautions is not None and slug not in cautions:
            near = nearest(slug, sorted(cautions))
            fix = f'write "{near}"' if near else "write one of cautions.toml"
            path = (material.slug, "cautions", number)
            faults.add(path, f"there is no caution {shown(slug)}", fix)
