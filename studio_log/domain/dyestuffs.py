"""Dyestuffs: what each is called, how much of it and how hot, what shifts it, how it holds.

A file of dyes is a table for each, named by its short name. Depths are per cent of the weight
of the dry cloth. How fast a colour is to light is a judgement in three classes, A the best of
the natural dyes, C fugitive; it is no test grade, and its source stands beside it.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise
from typing import Final

from studio_log.domain.method_faults import Faults, shown
from studio_log.domain.method_fields import Table
from studio_log.domain.method_lines import Path
from studio_log.domain.named_tables import read_named
from studio_log.domain.ranges import Range, range_of

MOST_PERCENT: Final = 1_000.0
_INDEX: Final = re.compile(
    r"(?:Natural|Vat|Pigment) (?:Yellow|Orange|Red|Blue|Green|Brown|Black|Violet) [1-9][0-9]{0,2}"
)
_CONSTITUTION: Final = re.compile(r"7[0-9]{4}")
_CLASS: Final = re.compile(r"[ABC][+-]?")
ALL_FROM_MEMORY: Final = "all"
_LEVELS: Final = ("light", "medium", "dark")


class DyeSort(StrEnum):
    """How a dye holds to the fibre."""

    ADJECTIVE = "adjective"  # needs a mordant
    SUBSTANTIVE = "substantive"  # holds by itself
    VAT = "vat"
    PIGMENT = "pigment"  # needs a binder


class Sure(StrEnum):
    """How sure a figure is: see the head of sources.md."""

    HIGH = "H"
    MIDDLE = "M"
    LOW = "L"


@dataclass(frozen=True)
class Depths:
    """How much for a light, a medium and a dark shade, in % WOF; None where none is known."""

    light: Range | None
    medium: Range | None
    dark: Range | None

    @property
    def known(self) -> dict[str, Range]:
        """Give the depths that are known, by name, from light to dark."""
        levels = zip(_LEVELS, (self.light, self.medium, self.dark), strict=True)
        return {name: one for name, one in levels if one is not None}


@dataclass(frozen=True)
class Dye:
    """One dyestuff; empty words and None where nothing is known."""

    slug: str
    title: str
    latin: str
    index: tuple[str, ...]
    """C.I. generic names: "Natural Red 8"."""
    constitution: tuple[str, ...]
    """C.I. constitution numbers of five figures."""
    index_sure: Sure
    part: str
    sort: DyeSort
    plant: Depths
    """Of the dry plant, raw."""
    extract: Depths
    heat_least: float | None
    heat_most: float | None
    """°C above which it is harmed."""
    hold: Range | None
    """Minutes at its heat."""
    heat_words: str
    hue: str
    """On alum."""
    iron: str
    acid: str
    alkali: str
    bath: str
    ph: Range | None
    tannin: bool
    """Bears tannin: expected to gain most from soy."""
    light: tuple[str, ...]
    """One class of fastness to light, or the poorer and the better where sources disagree."""
    light_words: str
    light_source: str
    exhausts: str
    """How often the bath serves again, in words."""
    care: str
    from_memory: tuple[str, ...]
    """Figures of which no source was looked up: "plant.light", "all"."""
    source: str
    sure: Sure


def read_dyes(text: str, *, name: str = "dyestuffs.toml") -> Mapping[str, Dye]:
    """Give the dyes of a text by their short name, in its order; BadMethod with its faults."""
    return read_named(text, _dye, name=name, what="dyes")


def _dye(slug: str, table: Table, faults: Faults) -> Dye:
    heat = range_of(table, "heat", faults, most=100)
    heat_most = table.maybe_number("heat_most", most=100)
    dye = Dye(
        slug=slug,
        title=table.line("title"),
        latin=table.line("latin", needed=False),
        index=_matching(table, "index", _INDEX, '"Natural Red 8"', faults),
        constitution=_matching(table, "constitution", _CONSTITUTION, '"75330"', faults),
        index_sure=table.choice("index_sure", Sure),
        part=table.line("part"),
        sort=table.choice("sort", DyeSort),
        plant=_depths(table, "plant", faults),
        extract=_depths(table, "extract", faults),
        heat_least=heat.low if heat else None,
        heat_most=heat_most if heat is None else heat.high,
        hold=range_of(table, "hold", faults, most=1_440),
        heat_words=table.prose("heat_words", needed=False),
        hue=table.line("hue"),
        iron=table.line("iron", needed=False),
        acid=table.line("acid", needed=False),
        alkali=table.line("alkali", needed=False),
        bath=table.prose("bath", needed=False),
        ph=range_of(table, "ph", faults, most=14),
        tannin=table.flag("tannin", usual=False),
        light=_matching(table, "light", _CLASS, '"B" or "A-"', faults),
        light_words=table.prose("light_words", needed=False),
        light_source=table.prose("light_source"),
        exhausts=table.line("exhausts", needed=False),
        care=table.line("care", needed=False),
        from_memory=table.lines("from_memory"),
        source=table.prose("source"),
        sure=table.choice("sure", Sure),
    )
    table.done()
    if heat is not None and heat_most is not None:
        faults.add((slug, "heat_most"), "heat says it already", "take one of them out")
    _agrees(dye, faults)
    return dye


def _matching(
    table: Table, key: str, form: re.Pattern[str], example: str, faults: Faults
) -> tuple[str, ...]:
    values = table.lines(key, most=8)
    for number, value in enumerate(values):
        if not form.fullmatch(value):
            path = (*table.path, key, number)
            faults.add(path, f"{shown(value)} is not of the form used here", f"write {example}")
    return values


def _depths(table: Table, key: str, faults: Faults) -> Depths:
    inner = table.table(key)
    if inner is None:
        return Depths(None, None, None)
    light, medium, dark = (range_of(inner, one, faults, most=MOST_PERCENT) for one in _LEVELS)
    inner.done()
    depths = Depths(light, medium, dark)
    for (_, paler), (level, deeper) in pairwise(depths.known.items()):
        if deeper.low < paler.low:
            what = f"a {level} shade takes no less than a paler one"
            faults.add((*inner.path, level), what, "write the figures in order")
    return depths


def _agrees(dye: Dye, faults: Faults) -> None:
    """Find what cannot be together."""
    for path, what in _clashes(dye):
        if faults.clear(path):
            faults.add(path, what, "mend one of them")


def _clashes(dye: Dye) -> Iterator[tuple[Path, str]]:
    if not 1 <= len(dye.light) <= 2:
        yield (dye.slug, "light"), "one class is wanted, or the poorer and the better"
    if len(dye.light) == 2 and dye.light[0][:1] < dye.light[1][:1]:
        yield (dye.slug, "light"), "the poorer class comes first"
    written = {f"plant.{one}" for one in dye.plant.known}
    written |= {f"extract.{one}" for one in dye.extract.known} | {ALL_FROM_MEMORY}
    for number, one in enumerate(dye.from_memory):
        if one not in written:
            yield (dye.slug, "from_memory", number), f"no amount is written at {shown(one)}"
    if dye.sort is DyeSort.PIGMENT and (dye.plant.known or dye.extract.known):
        yield (dye.slug, "sort"), "a pigment goes by paint and not by the weight of the cloth"
