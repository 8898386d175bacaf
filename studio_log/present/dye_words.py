"""Dyes and materials in words, for the list, the page of one and the help."""

from collections.abc import Iterator
from typing import Final

from studio_log.domain.dyestuffs import ALL_FROM_MEMORY, Depths, Dye, DyeSort, Sure
from studio_log.domain.materials import Material
from studio_log.domain.number_text import plain
from studio_log.domain.ranges import Range

SORTS: Final = {
    DyeSort.ADJECTIVE: "needs a mordant",
    DyeSort.SUBSTANTIVE: "holds without a mordant, better with one",
    DyeSort.VAT: "goes through a vat",
    DyeSort.PIGMENT: "a pigment: needs a binder",
}
SURE: Final = {
    Sure.HIGH: "two sources or more agree",
    Sure.MIDDLE: "one source",
    Sure.LOW: "from memory or a thin source",
}
MEMORY: Final = "from memory"
SHEET: Final = "The supplier's safety data sheet and local rules come first."


def amount_words(dye: Dye) -> str:
    """Say how much: "plant: medium 35 to 100 %, dark 100 % and more; extract: medium 3 to 8 %"."""
    parts = (("plant", dye.plant), ("extract", dye.extract))
    said = "; ".join(f"{name}: {_depths(dye, name, one)}" for name, one in parts if one.known)
    return f"{said} ({MEMORY})" if said and ALL_FROM_MEMORY in dye.from_memory else said


def _depths(dye: Dye, form: str, depths: Depths) -> str:
    words = []
    for level, one in depths.known.items():
        memory = f" ({MEMORY})" if f"{form}.{level}" in dye.from_memory else ""
        words.append(f"{level} {one.words('%')}{memory}")
    return ", ".join(words)


def heat_words(dye: Dye) -> str:
    """Say how hot at the most and how long: "60 to 70 °C, 45 to 60 min"."""
    said = []
    if dye.heat_least is not None and dye.heat_most is not None:
        said.append(Range(dye.heat_least, dye.heat_most).words("°C"))
    elif dye.heat_most is not None:
        said.append(f"{plain(dye.heat_most, 0)} °C at most")
    if dye.hold is not None:
        said.append(dye.hold.words("min"))
    return ", ".join(said)


def light_words(dye: Dye) -> str:
    """Say its class of fastness to light: "B", "C to A"."""
    return " to ".join(dye.light)


def dye_facts(dye: Dye) -> Iterator[tuple[str, str]]:
    """Give heading and words of all that is known of a dye."""
    shifts = (("iron", dye.iron), ("acid", dye.acid), ("alkali", dye.alkali))
    facts = (
        ("C.I.", " ".join(filter(None, (", ".join(dye.index), ", ".join(dye.constitution))))),
        ("Part", dye.part),
        ("Holds", SORTS[dye.sort]),
        ("How much, of the dry cloth", amount_words(dye)),
        ("Heat", " ".join(filter(None, (_stopped(heat_words(dye)), dye.heat_words)))),
        ("pH", dye.ph.words("").strip() if dye.ph else ""),
        ("Hue on alum", dye.hue),
        ("Shifts", "; ".join(f"{name}: {said}" for name, said in shifts if said)),
        ("Bath", dye.bath),
        ("With soy", "bears tannin, and gains most from soy" if dye.tannin else ""),
        ("The bath serves again", dye.exhausts),
        ("Light", f"{light_words(dye)}. {dye.light_words}".strip()),
        ("Light, by", dye.light_source),
        ("Care", dye.care),
        ("Source", f"{dye.source}; {SURE[dye.sure]}"),
    )
    return ((head, said) for head, said in facts if said)


def _stopped(said: str) -> str:
    return f"{said}." if said else ""


def material_facts(material: Material) -> Iterator[tuple[str, str]]:
    """Give heading and words of all that is known of a material."""
    amounts = (("plant fibre", material.cellulose), ("wool and silk", material.protein))
    facts = (
        ("Not used", "named only so that it is known" if material.avoid else ""),
        ("Name", material.name),
        ("For", material.use),
        ("How much", "; ".join(f"{one.words('%')} on {fibre}" for fibre, one in amounts if one)),
        ("Never above", _limit(material)),
        ("Hazard", " ".join(filter(None, (material.hazard, ", ".join(material.codes))))),
        ("Wear", material.wear),
        ("Air", material.air),
        ("People", material.people),
        ("Store", material.store),
        ("Keeps", material.keeps),
        ("Pour away", material.away),
        ("Source", f"{material.source}; {SURE[material.sure]}"),
    )
    return ((head, said) for head, said in facts if said)


def _limit(material: Material) -> str:
    if material.limit is None:
        return ""
    return f"{plain(material.limit, 2)} % on plant fibre. {material.limit_words}"


def dye_row(dye: Dye) -> tuple[str, ...]:
    """Give a dye as a row: name, how much, heat, hue and shifts, light, how sure."""
    shifts = (("iron", dye.iron), ("acid", dye.acid), ("alkali", dye.alkali))
    hues = [dye.hue, *(f"{name}: {said}" for name, said in shifts if said)]
    return (
        f"{dye.title}, *{dye.latin}*" if dye.latin else dye.title,
        amount_words(dye) or dye.heat_words,
        heat_words(dye),
        "; ".join(hues),
        light_words(dye),
        dye.sure.value,
    )


def material_row(material: Material) -> tuple[str, ...]:
    """Give a material as a row: name, how much, hazard, what to wear and where to put it."""
    amounts = (("plant fibre", material.cellulose), ("wool and silk", material.protein))
    much = [f"{one.words('%')} on {fibre}" for fibre, one in amounts if one]
    if material.limit is not None:
        much.append(f"never above {plain(material.limit, 2)} %")
    return (
        f"{material.title} (not used)" if material.avoid else material.title,
        "; ".join(much),
        " ".join(filter(None, (material.hazard, material.people))),
        " ".join((material.wear, material.store, material.away)),
    )
