"""Cautions: what can hurt, in words for the screen, the step card and the tag."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from studio_log.domain.method_faults import Faults, refusal
from studio_log.domain.method_fields import Table, is_slug
from studio_log.domain.method_toml import tables_of

LONGEST_SHORT: Final = 60
"""Most letters of what is printed on a tag."""


@dataclass(frozen=True)
class Caution:
    """One danger and what to do about it."""

    slug: str
    title: str
    text: str
    """In full sentences."""
    short: str
    """For a tag: 60 letters at most."""


def read_cautions(text: str, *, name: str = "cautions.toml") -> Mapping[str, Caution]:
    """Give the cautions of a text by their slug, in its order; BadMethod with its faults."""
    faults = Faults()
    data = tables_of(text, faults)
    file = Table(data, (), faults)
    found: dict[str, Caution] = {}
    for slug in data:
        if not is_slug(slug):
            faults.add((slug,), "this is no short name", "write small letters and hyphens")
        elif (table := file.table(slug)) is not None:
            found[slug] = _caution(slug, table)
    if not found and not faults.found:
        faults.add((), "there are no cautions", "write one or more", line=1)
    if faults.found:
        raise refusal(faults, text=text, data=data, name=name)
    return MappingProxyType(found)


def _caution(slug: str, table: Table) -> Caution:
    caution = Caution(
        slug=slug,
        title=table.line("title"),
        text=table.prose("text"),
        short=table.line("short", most=LONGEST_SHORT),
    )
    table.done()
    return caution
